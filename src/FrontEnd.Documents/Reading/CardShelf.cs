using System.Reflection;
using FrontEnd.Documents.Files;
using FrontEnd.Fields;

namespace FrontEnd.Documents.Reading;

/// <summary>Finds part cards: by name among those that come with the program, by path among the user's own. Touches no file
/// itself.</summary>
internal sealed class CardShelf
{
    private const string Prefix = "parts/";

    private readonly Func<string, CardText>? _read;
    private readonly List<string> _wanted = [];

    /// <summary>A shelf with these cards of the user's and no others.</summary>
    public CardShelf(CardTexts texts)
        : this(texts, null)
    {
    }

    private CardShelf(CardTexts texts, Func<string, CardText>? read) => (Texts, _read) = (texts, read);

    /// <summary>A shelf that fetches from the disk what is asked for; each card once.</summary>
    /// <param name="folder">Where a card's path starts from; null where there is no such place.</param>
    public static CardShelf OnDisk(string? folder) => new(CardTexts.In(folder), name => CardTexts.Read(folder, name));

    /// <summary>The user's cards: those that it began with, and those that were fetched.</summary>
    public CardTexts Texts { get; private set; }

    /// <summary>Cards that were asked for and are not held, so that someone else may fetch them.</summary>
    public IReadOnlyList<string> Wanted => _wanted;

    // The same card is often named several times in a design.
    private readonly Dictionary<(CardClass, string), (PartCard? Card, Finding? Finding, IReadOnlyList<Finding> Inside)> _found = [];

    /// <summary>The names of the cards of a class that come with the program, in order.</summary>
    public static IReadOnlyList<string> Names(CardClass cardClass)
    {
        string prefix = Prefix + Folder(cardClass) + "/";
        return [.. Assembly.GetExecutingAssembly().GetManifestResourceNames()
            .Where(name => name.StartsWith(prefix, StringComparison.Ordinal) && name.EndsWith(".toml", StringComparison.Ordinal))
            .Select(name => name[prefix.Length..^".toml".Length])
            .Order(StringComparer.Ordinal)];
    }

    /// <summary>The card's text as it comes with the program; null where there is none of that name.</summary>
    public static string? TextOf(CardClass cardClass, string name) => Embedded.Read($"{Prefix}{Folder(cardClass)}/{name}.toml");

    /// <summary>The chip that a card that comes with the program says its part is on; "" for a part of its own.</summary>
    public static string ChipOf(CardClass cardClass, string name) =>
        new CardShelf(CardTexts.None).Find(cardClass, name, "", out _, out _)?.Chip ?? "";

    /// <param name="finding">What is wrong with naming this card; null where it was found.</param>
    /// <param name="inside">What is wrong inside the card, with places in it; only the first time it is asked for.</param>
    public PartCard? Find(CardClass cardClass, string name, string key, out Finding? finding, out IReadOnlyList<Finding> inside)
    {
        if (_found.TryGetValue((cardClass, name), out (PartCard? Card, Finding? Finding, IReadOnlyList<Finding> Inside) known))
        {
            (finding, inside) = (known.Finding is null ? null : known.Finding with { Field = key }, []);
            return known.Card;
        }

        List<Finding> findings = [];
        PartCard? card = Load(cardClass, name, key, findings, out finding);
        _found[(cardClass, name)] = (card, finding, findings);
        inside = findings;
        return card;
    }

    private PartCard? Load(CardClass cardClass, string name, string key, List<Finding> findings, out Finding? finding)
    {
        finding = null;
        SourceText? source;
        bool isPath = name.EndsWith(".toml", StringComparison.OrdinalIgnoreCase);
        if (isPath)
        {
            if (Texts.Folder is null)
            {
                finding = ReadingMessages.BadCard(key, name, "the design is not in a file, so there is no folder for the path to start from");
                return null;
            }

            CardText? held = Held(name);
            if (held?.Text is null)
            {
                string stem = Path.GetFileNameWithoutExtension(name);
                finding = ReadingMessages.BadCard(key, name, held?.Unread ?? "it has not been read yet");
                finding = TextOf(cardClass, stem) is not null ? finding with { Help = $"write \"{stem}\": the cards that come with the program are named without .toml" } : finding;
                return null;
            }

            source = new SourceText(Path.Combine(Texts.Folder, name), held.Text);
        }
        else
        {
            string? text = name.IndexOfAny(['/', '\\']) < 0 ? TextOf(cardClass, name) : null;
            if (text is null)
            {
                IReadOnlyList<string> names = Names(cardClass);
                finding = ReadingMessages.NoCard(key, name, cardClass, names, Nearest.Of(name, names));
                return null;
            }

            source = new SourceText($"part card {name}", text);
        }

        return Parse(cardClass, source, name, key, findings, out finding);
    }

    private CardText? Held(string name)
    {
        if (Texts.Of(name) is { } held)
        {
            return held;
        }

        if (_read is null)
        {
            _wanted.Add(name);
            return null;
        }

        Texts = Texts.With(name, _read(name));
        return Texts.Of(name);
    }

    internal static PartCard? Parse(CardClass cardClass, SourceText source, string name, string key, List<Finding> findings,
        out Finding? finding)
    {
        finding = null;
        TableNode root = TomlTree.Read(source, findings, WantedFile.Card);
        string title = name;
        (string chip, string from) = ("", "no source given on the card");
        TableNode values = new(new Span(0, 0), TableForm.Implied), usual = new(new Span(0, 0), TableForm.Implied);
        Dictionary<string, string> sources = new(StringComparer.Ordinal);
        foreach (Entry entry in root.Entries)
        {
            switch (entry)
            {
                case { Key: "class", Value: TextNode text }:
                    if (!string.Equals(text.Value, Word(cardClass), StringComparison.OrdinalIgnoreCase))
                    {
                        finding = ReadingMessages.BadCard(key, name, $"its class is `{text.Value}`, but {key} needs `{Word(cardClass)}`");
                        return null;
                    }

                    break;
                case { Key: "name", Value: TextNode text }:
                    title = text.Value;
                    break;
                case { Key: "chip", Value: TextNode text }:
                    chip = text.Value;
                    break;
                case { Key: "source", Value: TextNode text }:
                    from = text.Value;
                    break;
                case { Key: "values", Value: TableNode table }:
                    values = table;
                    break;
                case { Key: "usual", Value: TableNode table }:
                    usual = table;
                    break;
                case { Key: "sources", Value: TableNode table }:
                    ReadSources(table, "", source, findings, sources);
                    break;
                default:
                    findings.Add(source.Placed(ReadingMessages.Unknown(entry.Key, Nearest.Of(entry.Key, TopKeys), TopKeys,
                        entry.Value is TableNode), entry.KeySpan.Start));
                    break;
            }
        }

        if (root.Find("class") is null)
        {
            finding = ReadingMessages.BadCard(key, name, $"it has no `class = \"{Word(cardClass)}\"`");
            return null;
        }

        return new PartCard(cardClass, title, chip, from, source, values, usual, sources);
    }

    private static readonly string[] TopKeys = ["class", "name", "chip", "source", "values", "usual", "sources"];

    private static void ReadSources(TableNode table, string prefix, SourceText source, List<Finding> findings,
        Dictionary<string, string> sources)
    {
        foreach (Entry entry in table.Entries)
        {
            switch (entry.Value)
            {
                case TextNode text:
                    sources[prefix + entry.Key] = text.Value;
                    break;
                case TableNode inner:
                    ReadSources(inner, prefix + entry.Key + ".", source, findings, sources);
                    break;
                default:
                    findings.Add(source.Placed(ReadingMessages.Type($"sources.{entry.Key}", ReadingMessages.Noun(entry.Value), "a text",
                        "\"where the figure comes from\""), entry.Value.Span.Start));
                    break;
            }
        }
    }

    internal static string Word(CardClass cardClass) => cardClass switch
    {
        CardClass.Electrode => "electrode",
        CardClass.Amplifier => "amplifier",
        CardClass.OpAmp => "op-amp",
        CardClass.Converter => "converter",
        CardClass.Buffer => "buffer",
        _ => throw new ArgumentOutOfRangeException(nameof(cardClass), cardClass, "Class is not handled."),
    };

    private static string Folder(CardClass cardClass) => Word(cardClass) + "s";
}
