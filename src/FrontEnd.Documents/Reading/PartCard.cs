using FrontEnd.Fields;

namespace FrontEnd.Documents.Reading;

/// <summary>A part card as it was read: typical or data-sheet values of one part, each with its source.</summary>
/// <param name="Chip">The chip that holds the part together with others; "" for a part of its own.</param>
/// <param name="Usual">The usual range within the part's class, a pair of values by key; "typical of the class" says little without it.</param>
internal sealed record PartCard(CardClass Class, string Title, string Chip, string Source, SourceText Text, TableNode Values,
    TableNode Usual, IReadOnlyDictionary<string, string> Sources)
{
    private const string Spread = "spread from part to part, chosen here";

    /// <summary>Of a word: no figure that could lie in a range.</summary>
    private const string Kind = "what the card represents";

    /// <summary>The source of one value; the card's own, with the range of the class, where none stands beside it.</summary>
    public string SourceOf(FieldDescription field)
    {
        // A card stands below one table of the design; its keys are the ends of the design's.
        for (string key = field.Key; ; key = key[(key.IndexOf('.', StringComparison.Ordinal) + 1)..])
        {
            if (Sources.TryGetValue(key, out string? source))
            {
                return source;
            }

            if (Usual.Find(key)?.Value is ListNode { Items: [Node low, Node high] })
            {
                return $"{Source}; the class has {Written(low)} to {Written(high)}";
            }

            if (!key.Contains('.', StringComparison.Ordinal))
            {
                return field.Kind switch
                {
                    FieldKind.Ranges => Spread,
                    FieldKind.Choice or FieldKind.Card => Kind,
                    _ => Source,
                };
            }
        }
    }

    private static string Written(Node end) => end switch
    {
        TextNode text => text.Value,
        NumberNode number => number.Written,
        _ => "",
    };
}
