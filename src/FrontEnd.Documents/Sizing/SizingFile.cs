using FrontEnd.Catalogue;
using FrontEnd.Converter;
using FrontEnd.Documents.Files;
using FrontEnd.Documents.Reading;
using FrontEnd.Fields;
using FrontEnd.Sizing;

namespace FrontEnd.Documents.Sizing;

/// <summary>A requirements file: the keys of a design file for what is given (electrodes, band, signal, mains, supply, channels,
/// requirements), and a table <c>[sizing]</c> with what is asked besides, see <see cref="SizingFields"/>.</summary>
internal static class SizingFile
{
    /// <summary>What the search decides: said in a requirements file it has no effect, and a warning says so.</summary>
    private static readonly string[] Decided = ["amplifier", "stages", DesignFields.AntiAliasKey, "converter", "ground-drive"];

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
        TableNode root = TomlTree.Read(source, findings, WantedFile.Sizing);
        SizingRequest asked = new(new Design(), Shelf);
        if (root.Find(SizingFields.Table) is { } entry)
        {
            root.Entries.Remove(entry);
            Table(entry, source, findings, ref asked);
        }

        foreach (string key in Decided)
        {
            if (root.Find(key) is { } given)
            {
                findings.Add(source.Placed(SizingMessages.DecidedByTheSearch(key), given.KeySpan.Start));
                root.Entries.Remove(given);
            }
        }

        // What rests on a part that the search is still to choose is not to be judged now.
        DesignBuilder builder = new(source, DocumentFormat.Toml, CardShelf.OnDisk(folder), findings, DecidedFields, [SizingFields.Table]);
        builder.Build(root, false);

        if (builder.PartlyKnown is { } partly)
        {
            string[] open = [.. partly.Unknowns.Select(one => one.Key)];
            findings.Add(open.Length > 0 ? Messages.NeedsAll(open) : SizingMessages.DecidedByTheSearch(FrontEnd.Catalogue.PartlyKnownDesign.BoughtKey));
        }

        // What is assumed about protection and highest voltage matters to a design; here the search fits the resistor.
        findings.RemoveAll(finding => string.Equals(finding.Code, ReadingMessages.ProtectionAssumed, StringComparison.Ordinal));
        IReadOnlyList<Finding> sorted = [.. findings.OrderBy(finding => finding.Line ?? int.MaxValue)];
        return findings.Exists(finding => finding.Severity == Severity.Error)
            ? (null, sorted) : (asked with { Fixed = builder.Design, Stated = Stated(builder) }, sorted);
    }

    private static List<string> Stated(DesignBuilder builder) =>
    [
        .. builder.Origins.Values.Where(origin => origin.Kind == OriginKind.Given
            && !Array.Exists(Decided, table => origin.Key.StartsWith(table + ".", StringComparison.Ordinal))).Select(origin => origin.Key),
    ];

    private static void Table(Entry entry, SourceText source, List<Finding> findings, ref SizingRequest asked)
    {
        if (entry.Value is not TableNode table)
        {
            findings.Add(source.Placed(ReadingMessages.NoTable(SizingFields.Table, ReadingMessages.Noun(entry.Value)), entry.Value.Span.Start));
            return;
        }

        SlipRemedy.Apply(table, SizingFields.Table + ".", SizingFields.All, findings);
        foreach (Entry one in table.Entries)
        {
            string key = $"{SizingFields.Table}.{one.Key}";
            if (SizingFields.All.FirstOrDefault(field => string.Equals(field.Key, one.Key, StringComparison.Ordinal)) is not { } field)
            {
                string[] keys = [.. SizingFields.All.Select(other => other.Key)];
                findings.Add(source.Placed(ReadingMessages.Unknown(key, Nearest.Of(one.Key, keys), keys, false), one.KeySpan.Start));
            }
            else if (NodeValue.Read(field, key, one.Value, DocumentFormat.Toml, out object? value, out Node place) is { } wrong)
            {
                findings.Add(source.Placed(wrong, place.Span.Start));
            }
            else
            {
                asked = field.Set(asked, value);
            }
        }
    }

    /// <summary>The keys of the parts that the search chooses.</summary>
    private static readonly IReadOnlyList<string> DecidedFields =
        [.. DesignFields.Fixed.Select(field => field.Key).Where(key => Array.Exists(Decided, table => key.StartsWith(table + ".", StringComparison.Ordinal)))];

    private static T Part<T>(string text, Func<Design, T> take) => take(DesignDocument.Parse(text, DocumentFormat.Toml).Design);
}
