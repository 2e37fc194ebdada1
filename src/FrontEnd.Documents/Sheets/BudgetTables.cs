using FrontEnd.Results;

namespace FrontEnd.Documents.Sheets;

/// <summary>All results of an assessment as budgets: every result stands in exactly one table, or is a sum in several.</summary>
public static class BudgetTables
{
    private const string Variance = " of the variance";

    private static readonly (string Title, string[] Prefixes)[] Plain =
    [
        ("noise, other figures", ["noise."]),
        ("converter", ["converter."]),
        ("mains, other figures", ["mains."]),
        ("driven ground", ["drive."]),
        ("filters and delays", ["filter.", "digital.", "latency.", "skew."]),
        ("safety: dc through the wearer", ["safety."]),
        ("montage", ["montage."]),
        ("contact and open electrodes", ["contact.", "open."]),
        ("supply, power, data", ["power.", "supply.", "data."]),
    ];

    public static IReadOnlyList<BudgetTable> Of(Assessment assessment)
    {
        HashSet<string> taken = new(StringComparer.Ordinal);
        List<BudgetTable?> tables =
        [
            Levels(assessment, taken),
            Noise(assessment, taken),
            Bands(assessment, taken),
            Mains(assessment, taken),
            Harmonics(assessment, taken),
            Aliases(assessment, taken),
        ];
        tables.AddRange(Plain.Select(group => Listed(assessment, taken, group.Title, group.Prefixes)));
        tables.Add(Listed(assessment, taken, "further results", [""]));
        return [.. Ordered(tables.OfType<BudgetTable>())];
    }

    /// <summary>A "other figures" table follows the budget that it belongs to.</summary>
    private static IEnumerable<BudgetTable> Ordered(IEnumerable<BudgetTable> tables)
    {
        string[] order = ["gain and levels", "noise by source", "noise, other figures", "bands", "mains at the electrodes", "mains harmonics", "mains, other figures", "converter", "aliases"];
        return tables.OrderBy(table => Array.IndexOf(order, table.Title) is var at and >= 0 ? at : order.Length);
    }

    private static BudgetTable? Levels(Assessment assessment, HashSet<string> taken)
    {
        List<Row> rows = [];
        foreach (Result result in assessment.Results.Where(result => result.Id.StartsWith("gain.", StringComparison.Ordinal) || result.Id.StartsWith("levels.", StringComparison.Ordinal) || result.Id.StartsWith("input.", StringComparison.Ordinal)))
        {
            taken.Add(result.Id);

            // The names of the nodes' headrooms differ in the node only, and that is the label; what adds up to the level is in the remark.
            bool isNode = result.Id.EndsWith(".headroom", StringComparison.Ordinal) && result.Text is not null;
            rows.Add(new Row([Label(result.Id, "levels."), Wording.Value(result), isNode ? result.Text! : Wording.Description(result)]));
        }

        return rows.Count == 0 ? null : new BudgetTable("gain and levels", "gain.*, levels.*, input.*", [new("", true), new("value"), new("what it is", true)], rows);
    }

    private static BudgetTable? Noise(Assessment assessment, HashSet<string> taken)
    {
        if (assessment.Find("noise.total") is not { Value: not null } total)
        {
            return null;
        }

        const string Prefix = "noise.source.";
        List<Row> rows = [];
        foreach (Result result in assessment.Results.Where(result => result.Id.StartsWith(Prefix, StringComparison.Ordinal)).OrderByDescending(result => result.Value?.SiValue ?? 0))
        {
            taken.Add(result.Id);

            // A share below 0.001 % is said as such: its digits would only look like knowledge.
            bool tiny = result.Value is not null && result.Si * result.Si < 1e-5 * total.Si * total.Si;
            string share = tiny ? "< 0.001 %" : (result.Text ?? "").Replace(Variance, "", StringComparison.Ordinal);
            rows.Add(new Row([result.Id[Prefix.Length..], Wording.Value(result), share]));
        }

        rows.Add(new Row(["total, root sum of squares", Wording.Value(total), "100 %"], IsSum: true));
        taken.Add(total.Id);
        return new BudgetTable("noise by source", Prefix + "*", [new("source", true), new("at the electrodes"), new("of the variance")], rows);
    }

    private static BudgetTable? Bands(Assessment assessment, HashSet<string> taken)
    {
        const string Prefix = "noise.band.";
        List<Row> rows = [];
        foreach (Result result in assessment.Results.Where(result => result.Id.StartsWith(Prefix, StringComparison.Ordinal)))
        {
            taken.Add(result.Id);
            if (result.Id.EndsWith(".ratio", StringComparison.Ordinal))
            {
                continue;
            }

            string ratio = assessment.Find(result.Id + ".ratio") is { } found ? Wording.Value(found) : "";
            rows.Add(new Row([result.Id[Prefix.Length..], Wording.Value(result), ratio, Wording.Description(result)]));
        }

        return rows.Count == 0 ? null : new BudgetTable("bands", Prefix + "*, *.ratio", [new("band", true), new("noise"), new("signal/noise"), new("what it is", true)], rows);
    }

    private static BudgetTable? Mains(Assessment assessment, HashSet<string> taken)
    {
        if (assessment.Find("mains.total") is not { Value: not null } total)
        {
            return null;
        }

        List<Row> rows = [];
        foreach (string id in new[] { "mains.imbalance", "mains.amplifier", "mains.loop" })
        {
            if (assessment.Find(id) is { } result)
            {
                taken.Add(id);
                rows.Add(new Row([Label(id, "mains."), Wording.Value(result), Wording.Description(result)]));
            }
        }

        taken.Add(total.Id);
        rows.Add(new Row(["total", Wording.Value(total), Wording.Description(total)], IsSum: true));
        return new BudgetTable("mains at the electrodes", "mains.*", [new("", true), new("value"), new("what it is", true)], rows);
    }

    private static BudgetTable? Harmonics(Assessment assessment, HashSet<string> taken)
    {
        const string Prefix = "mains.harmonic.";
        List<Row> rows = [];
        foreach (string stem in Stems(assessment, Prefix))
        {
            Result? lands = assessment.Find(stem + ".lands_at");
            rows.Add(new Row(
            [
                stem[Prefix.Length..], Cell(assessment, stem + ".input"), Cell(assessment, stem + ".converter"), Cell(assessment, stem + ".recorded"), lands is null ? "" : Wording.Value(lands),
                lands?.Text?.Contains("in the band", StringComparison.Ordinal) == true ? "yes" : "",
            ]));
        }

        if (rows.Count == 0)
        {
            return null;
        }

        taken.UnionWith(assessment.Results.Where(result => result.Id.StartsWith(Prefix, StringComparison.Ordinal)).Select(result => result.Id));
        foreach ((string id, string label) in new[] { ("mains.recorded_everywhere", "all"), ("mains.recorded", "in the band") })
        {
            if (assessment.Find(id) is { } sum)
            {
                rows.Add(new Row([label, "", "", Wording.Value(sum), "", ""], IsSum: true));
            }
        }

        return new BudgetTable(
            "mains harmonics", Prefix + "*.*, mains.recorded*", [new("harmonic", true), new("electrodes"), new("converter"), new("recorded"), new("lands at"), new("in band")], rows);
    }

    private static BudgetTable? Aliases(Assessment assessment, HashSet<string> taken)
    {
        const string Prefix = "alias.";
        List<Row> rows = [];
        foreach (Result result in assessment.Results.Where(result => result.Id.StartsWith(Prefix, StringComparison.Ordinal) && result.Id.LastIndexOf('.') < Prefix.Length))
        {
            taken.Add(result.Id);
            rows.Add(new Row([result.Id[Prefix.Length..], "", result.Unit is "dB" ? Wording.Value(result) : "", result.Unit is "dB" ? "" : Wording.Value(result), result.Name]));
        }

        foreach (string stem in Stems(assessment, Prefix))
        {
            // What has a width lands in a range: a word, which has no place in a column of numbers.
            Result? lands = assessment.Find(stem + ".lands_at"), inBand = assessment.Find(stem + ".in_band");
            bool isRange = lands?.State == ResultState.Word;
            string name = isRange ? $"{lands!.Name} {lands.Text}" : lands?.Name.Replace(" lands at", "", StringComparison.Ordinal) ?? "";
            rows.Add(new Row(
            [
                stem[Prefix.Length..], isRange ? "" : Cell(assessment, stem + ".lands_at"), Cell(assessment, stem + ".attenuation"), Cell(assessment, stem + ".residue"),
                inBand is null ? name : $"{name}; {Wording.Value(inBand)} lies in the band itself: {inBand.Text}",
            ]));
            taken.UnionWith(assessment.Results.Where(result => result.Id.StartsWith(stem + ".", StringComparison.Ordinal)).Select(result => result.Id));
        }

        return rows.Count == 0
            ? null
            : new BudgetTable("aliases", "alias.*", [new("", true), new("lands at"), new("attenuation"), new("what is left"), new("what it is", true)], rows);
    }

    private static BudgetTable? Listed(Assessment assessment, HashSet<string> taken, string title, string[] prefixes)
    {
        List<Row> rows = [];
        string strip = prefixes.Length == 1 ? prefixes[0] : "";
        foreach (Result result in assessment.Results.Where(result => !taken.Contains(result.Id) && Array.Exists(prefixes, prefix => result.Id.StartsWith(prefix, StringComparison.Ordinal))))
        {
            taken.Add(result.Id);
            bool isWord = result.State == ResultState.Word;
            rows.Add(new Row([Label(result.Id, strip), isWord ? "" : Wording.Value(result), isWord ? $"{result.Name}: {result.Text}" : Wording.Description(result)]));
        }

        return rows.Count == 0
            ? null
            : new BudgetTable(title, string.Join(", ", prefixes.Select(prefix => prefix + "*")), [new("", true), new("value"), new("what it is", true)], rows);
    }

    private static string Label(string id, string prefix) => id.StartsWith(prefix, StringComparison.Ordinal) ? id[prefix.Length..] : id;

    private static string Cell(Assessment assessment, string id) => assessment.Find(id) is { } result ? Wording.Value(result) : "";

    /// <summary>The ids below a prefix without their last word, in their order.</summary>
    private static IEnumerable<string> Stems(Assessment assessment, string prefix) => assessment.Results
        .Select(result => result.Id)
        .Where(id => id.StartsWith(prefix, StringComparison.Ordinal) && prefix.Length < id.LastIndexOf('.'))
        .Select(id => id[..id.LastIndexOf('.')])
        .Distinct(StringComparer.Ordinal);
}
