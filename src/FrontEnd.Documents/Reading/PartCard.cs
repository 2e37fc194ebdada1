using FrontEnd.Fields;

namespace FrontEnd.Documents.Reading;

/// <summary>A part card as it was read: typical or data-sheet values of one part, each with its source.</summary>
/// <param name="Chip">The chip that holds the part together with others; "" for a part of its own.</param>
internal sealed record PartCard(CardClass Class, string Title, string Chip, string Source, SourceText Text, TableNode Values,
    IReadOnlyDictionary<string, string> Sources)
{
    /// <summary>The source of one value; the card's own where none stands beside it.</summary>
    public string SourceOf(string fieldKey)
    {
        for (string key = fieldKey; ; key = key[(key.IndexOf('.', StringComparison.Ordinal) + 1)..])
        {
            if (Sources.TryGetValue(key, out string? source))
            {
                return source;
            }

            if (!key.Contains('.', StringComparison.Ordinal))
            {
                return Source;
            }
        }
    }
}
