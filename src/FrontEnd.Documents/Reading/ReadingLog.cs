using FrontEnd.Fields;

namespace FrontEnd.Documents.Reading;

/// <summary>What is learned while a design file is read: what is to be said, where each value comes from and stands, and what could not be
/// read.</summary>
internal sealed class ReadingLog(SourceText source, List<Finding> findings)
{
    /// <summary>The design file.</summary>
    public SourceText Source => source;

    public List<Finding> Findings => findings;

    /// <summary>Where each field's value comes from, by concrete key; fields at their default are not in it.</summary>
    public Dictionary<string, FieldOrigin> Origins { get; } = new(StringComparer.Ordinal);

    /// <summary>Where the value of a key, or the name of a table, stands in the file.</summary>
    public Dictionary<string, Span> Places { get; } = new(StringComparer.Ordinal);

    /// <summary>Keys whose values could not be read: what rests on them is not judged.</summary>
    public HashSet<string> Unread { get; } = new(StringComparer.Ordinal);

    /// <summary>What the file says of values that nobody knows, by concrete key.</summary>
    public Dictionary<string, UnknownValue> Unknown { get; } = new(StringComparer.Ordinal);

    /// <summary>The usual ranges of the classes of the cards that are named, by concrete key.</summary>
    public Dictionary<string, (double Least, double Greatest)> UsualOfCards { get; } = new(StringComparer.Ordinal);

    /// <summary>Concrete keys of values whose range the design file itself gives.</summary>
    public HashSet<string> Ranged { get; } = new(StringComparer.Ordinal);

    /// <summary>True where the file says something about keys that begin so, readable or not.</summary>
    public bool Mentions(string prefix) => Origins.Keys.Concat(Unread).Any(key => key.StartsWith(prefix, StringComparison.Ordinal));

    /// <summary>A finding about a place in the design file.</summary>
    public void Report(Finding finding, Span span) => Report(source, finding, span);

    /// <summary>A finding about a place in the design file or in a card. What is wrong inside a card is said once, however many parts take their
    /// values from it.</summary>
    public void Report(SourceText text, Finding finding, Span span)
    {
        if (ReferenceEquals(text, source) || _onCards.Add((text, finding.Code, span.Start)))
        {
            findings.Add(text.Placed(finding, span.Start));
        }
    }

    /// <summary>A card that cannot be used is one mistake, however many places name it: the first has the finding, which names the others.</summary>
    /// <param name="text">The design file, or a card that names another.</param>
    /// <param name="finding">What is wrong with naming this card.</param>
    /// <param name="card">The card's class and the name that it is given.</param>
    /// <param name="span">Where it is named.</param>
    public void ReportCard(SourceText text, Finding finding, (CardClass Class, string Name) card, Span span)
    {
        if (!ReferenceEquals(text, source) && !_onCards.Add((text, finding.Code, span.Start)))
        {
            return;   // a card that is used twice names what it names twice at one place
        }

        Finding placed = text.Placed(finding, span.Start);
        if (!_unusable.TryGetValue(card, out UnusableCard? known))
        {
            _unusable[card] = new UnusableCard(placed, placed, []);
            findings.Add(placed);
            return;
        }

        Finding[] others = [.. known.Others, placed];
        Finding said = ReadingMessages.NamedAlso(known.First, others);
        findings[findings.FindIndex(one => ReferenceEquals(one, known.Said))] = said;
        _unusable[card] = new UnusableCard(known.First, said, others);
    }

    private readonly Dictionary<(CardClass Class, string Name), UnusableCard> _unusable = [];

    /// <summary>What was said of places in cards.</summary>
    private readonly HashSet<(SourceText Card, string Code, int Place)> _onCards = [];

    /// <param name="First">Where it is named first.</param>
    /// <param name="Said">The same with the other places.</param>
    /// <param name="Others">Where else it is named.</param>
    private sealed record UnusableCard(Finding First, Finding Said, IReadOnlyList<Finding> Others);

    /// <summary>A finding about a field, placed where the file speaks of it.</summary>
    public void Report(Finding finding) => findings.Add(source.PlacedByKey(finding, Places));

    /// <summary>Where a value comes from: the card, or the design file where there is none.</summary>
    /// <param name="spokenOf">The key that the file or card speaks of, where it is not the field's own.</param>
    public void Remember(PartCard? card, FieldDescription field, string key, object? value, FieldDescription? spokenOf = null)
    {
        string text = FieldText.Format(field, value);
        Origins[key] = card is null
            ? new FieldOrigin(key, OriginKind.Given, text, "design file")
            : new FieldOrigin(key, OriginKind.Card, text, card.SourceOf(spokenOf ?? field));
    }
}
