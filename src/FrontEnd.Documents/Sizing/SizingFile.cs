using FrontEnd.Converter;
using FrontEnd.Designs;
using FrontEnd.Documents.Files;
using FrontEnd.Documents.Reading;
using FrontEnd.Fields;
using FrontEnd.Findings;
using FrontEnd.Quantities;
using FrontEnd.Sizing;
using FrontEnd.Text;

namespace FrontEnd.Documents.Sizing;

/// <summary>A requirements file: the keys of a design file for what is given (electrodes, band, signal, mains, supply, channels,
/// requirements), and a table <c>[sizing]</c> with what is asked besides.</summary>
/// <remarks>Keys of <c>[sizing]</c>: <c>battery-life</c>, a time; <c>parts</c>, the greatest number of parts.</remarks>
public static class SizingFile
{
    private static readonly string[] Keys = ["battery-life", "parts"];

    /// <summary>What the search decides: said in a requirements file it has no effect, and a warning says so.</summary>
    private static readonly string[] Decided = ["amplifier", "stages", "converter", "ground-drive"];

    /// <summary>The cards that come with the program.</summary>
    public static PartShelf Shelf { get; } = new(
        [.. DesignDocument.CardNames(CardClass.Amplifier).Select(name => Part($"amplifier.card = \"{name}\"", design => design.Amplifier))],
        [.. DesignDocument.CardNames(CardClass.OpAmp)
            .Select(name => Part($"[[stages]]\nkind = \"gain\"\nname = \"gain 2\"\nopamp = \"{name}\"",
            design => design.Stages[0].FittedOpAmp!))],
        [.. DesignDocument.CardNames(CardClass.Converter)
            .Select(name => Part<AnalogDigitalConverter>($"converter.card = \"{name}\"", design => design.Converter))])
    {
        Chips = new[] { CardClass.Amplifier, CardClass.Converter }
            .SelectMany(cardClass => CardShelf.Names(cardClass).Select(name => (Name: name, Chip: CardShelf.ChipOf(cardClass, name))))
            .Where(card => card.Chip.Length != 0).ToDictionary(card => card.Name, card => card.Chip, StringComparer.Ordinal),
    };

    public static (SizingRequest? Request, IReadOnlyList<Finding> Findings) Read(string path)
    {
        string? text = TextFiles.Read(path, out Finding? finding);
        return text is null ? (null, [finding!]) : Parse(text, path, Path.GetDirectoryName(Path.GetFullPath(path)));
    }

    public static (SizingRequest? Request, IReadOnlyList<Finding> Findings) Parse(string text, string? file = null, string? folder = null)
    {
        SourceText source = new(file, text);
        List<Finding> findings = [];
        TableNode root = TomlTree.Read(source, findings);
        Duration? life = null;
        int? parts = null;
        if (root.Find("sizing") is { } entry)
        {
            root.Entries.Remove(entry);
            Table(entry, source, findings, ref life, ref parts);
        }

        foreach (string key in Decided)
        {
            if (root.Find(key) is { } given)
            {
                findings.Add(source.Placed(SizingMessages.DecidedByTheSearch(key), given.KeySpan.Start));
            }
        }

        DesignBuilder builder = new(source, DocumentFormat.Toml, CardShelf.OnDisk(folder), findings);
        builder.Build(root, false);

        // What is assumed about protection and highest voltage matters to a design; here the search fits the resistor.
        findings.RemoveAll(finding => string.Equals(finding.Code, ReadingMessages.ProtectionAssumed, StringComparison.Ordinal));
        IReadOnlyList<Finding> sorted = [.. findings.OrderBy(finding => finding.Line ?? int.MaxValue)];
        return findings.Exists(finding => finding.Severity == Severity.Error)
            ? (null, sorted) : (new SizingRequest(builder.Design, Shelf) { BatteryLife = life, Parts = parts, Stated = Stated(builder) },
            sorted);
    }

    private static List<string> Stated(DesignBuilder builder) =>
    [
        .. builder.Origins.Values.Where(origin => origin.Kind == OriginKind.Given
            && !Array.Exists(Decided, table => origin.Key.StartsWith(table + ".", StringComparison.Ordinal))).Select(origin => origin.Key),
    ];

    private static void Table(Entry entry, SourceText source, List<Finding> findings, ref Duration? life, ref int? parts)
    {
        if (entry.Value is not TableNode table)
        {
            findings.Add(source.Placed(ReadingMessages.NoTable("sizing", ReadingMessages.Noun(entry.Value)), entry.Value.Span.Start));
            return;
        }

        foreach (Entry one in table.Entries)
        {
            switch (one)
            {
                case { Key: "battery-life", Value: TextNode text }:
                    if (QuantityText.TryParse(text.Value, out Duration time, out ParseProblem? problem))
                    {
                        life = time;
                    }
                    else
                    {
                        findings.Add(source.Placed(problem!.ToFinding("sizing.battery-life", text.Value), text.Span.Start));
                    }

                    break;
                case { Key: "parts", Value: NumberNode { Value: >= 1 and <= 1e6 } number } when number.Value == Math.Floor(number.Value):
                    parts = (int)number.Value;
                    break;
                case { Key: "battery-life" }:
                    findings.Add(source.Placed(ReadingMessages.Type("sizing.battery-life", ReadingMessages.Noun(one.Value), "a time",
                        "\"20 h\""), one.Value.Span.Start));
                    break;
                case { Key: "parts" }:
                    findings.Add(source.Placed(ReadingMessages.Type("sizing.parts", ReadingMessages.Noun(one.Value),
                        "a whole number above 0", "40"), one.Value.Span.Start));
                    break;
                default:
                    findings.Add(source.Placed(ReadingMessages.Unknown($"sizing.{one.Key}", Nearest.Of(one.Key, Keys), Keys, false),
                        one.KeySpan.Start));
                    break;
            }
        }
    }

    private static T Part<T>(string text, Func<Design, T> take) => take(DesignDocument.Parse(text, DocumentFormat.Toml).Design);
}
