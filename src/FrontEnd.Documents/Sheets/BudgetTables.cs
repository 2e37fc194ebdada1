using FrontEnd.Identity;

namespace FrontEnd.Documents.Sheets;

/// <summary>All results of an assessment as budgets: every result stands in exactly one table, or is a sum in several.</summary>
internal static class BudgetTables
{
    /// <summary>Of the variance.</summary>
    private const double LeastShareShown = 1e-5;

    /// <summary>Title of the limits of use.</summary>
    public const string BeforeARecording = "before a recording, check";

    private static readonly (string Title, ResultFamily[] Families)[] Plain =
    [
        (BeforeARecording, [ResultIds.Limit.All]),
        ("noise, other figures", [ResultIds.Noise.All]),
        ("converter", [ResultIds.Converter.All]),
        ("mains, other figures", [ResultIds.Mains.All]),
        ("driven ground", [ResultIds.Drive.All]),
        ("filters and delays", [ResultIds.Filter.All, ResultIds.Digital.All, ResultIds.Latency.All, ResultIds.Skew.All]),
        ("safety: dc through the wearer", [ResultIds.Safety.All]),
        ("montage", [ResultIds.Montage.All]),
        ("sites on the head", [ResultIds.Head.All, ResultIds.See.All]),
        ("contact and open electrodes", [ResultIds.Contact.All, ResultIds.Open.All]),
        ("supply, power, data", [ResultIds.Power.All, ResultIds.Supply.All, ResultIds.Data.All]),
    ];

    /// <summary>The same with what the document knows of where the tables' values come from.</summary>
    public static IReadOnlyList<BudgetTable> Of(Sheet sheet) =>
        [.. Of(sheet.Assessment).Select(table => table.Title == ContactTimesTable.Title ? ContactTimesTable.WithSources(table, sheet) : table)];

    public static IReadOnlyList<BudgetTable> Of(Assessment assessment)
    {
        HashSet<ResultId> taken = [];
        List<BudgetTable?> tables =
        [
            ChannelTable.Of(assessment, taken),
            ChannelTable.OfDerived(assessment, taken),
            Levels(assessment, taken),
            Noise(assessment, taken),
            Bands(assessment, taken),
            Mains(assessment, taken),
            Harmonics(assessment, taken),
            Aliases(assessment, taken),
            ContactTimesTable.Of(assessment, taken),
            .. SourceTables.Of(assessment, taken),
        ];
        tables.AddRange(Plain.Select(group => Listed(assessment, taken, group.Title, group.Families)));
        tables.Add(Listed(assessment, taken, "further results", [new("")]));
        return [.. Ordered(tables.OfType<BudgetTable>())];
    }

    /// <summary>A "other figures" table follows the budget that it belongs to.</summary>
    private static IEnumerable<BudgetTable> Ordered(IEnumerable<BudgetTable> tables)
    {
        string[] order = [ChannelTable.Title, ChannelTable.DerivedTitle, BeforeARecording, "gain and levels", "noise by source", "noise, other figures", "bands", "mains at the electrodes",
            "mains harmonics", "mains, other figures", "converter", "aliases", ContactTimesTable.Title, SourceTables.Title, SourceTables.ReferenceTitle];
        return tables.OrderBy(table => Array.IndexOf(order, table.Title) is var at and >= 0 ? at : order.Length);
    }

    private static BudgetTable? Levels(Assessment assessment, HashSet<ResultId> taken)
    {
        ResultFamily[] families = [ResultIds.Gain.All, ResultIds.Levels.All, ResultIds.Input.All];
        List<Row> rows = [];
        foreach (Result result in assessment.Results.Where(result => Array.Exists(families, family => family.Has(result.Id))))
        {
            taken.Add(result.Id);

            // The names of the nodes' headrooms differ in the node only, and that is the label; what adds up to the level is in the remark.
            bool isNode = ResultIds.Levels.IsHeadroom(result.Id) && result.Text is not null;
            rows.Add(new Row([ResultIds.Levels.All.Rest(result.Id), Wording.Value(result), isNode
                ? result.Text!
                : Wording.Description(result)]));
        }

        return rows.Count == 0
            ? null
            : new BudgetTable("gain and levels", Patterns(families), [new("", true), new("value"), new("what it is", true)], rows);
    }

    private static BudgetTable? Noise(Assessment assessment, HashSet<ResultId> taken)
    {
        if (assessment.Find(ResultIds.Noise.Total) is not { Value: not null } total)
        {
            return null;
        }

        ResultFamily sources = ResultIds.Noise.Sources;
        List<Row> rows = [];
        foreach (Result result in assessment.Results.Where(result =>
            sources.Has(result.Id)).OrderByDescending(result => result.Value?.SiValue ?? 0))
        {
            taken.Add(result.Id);

            // A share below 0.001 % is said as such: its digits would only look like knowledge.
            double part = result.ShareOfVariance ?? 0;
            string share = result.ShareOfVariance < LeastShareShown ? "< 0.001 %" : QuantityText.FormatPercent(Ratio.FromFraction(part));
            rows.Add(new Row([sources.Rest(result.Id), Wording.Value(result), share]));
        }

        rows.Add(new Row(["total, root sum of squares", Wording.Value(total), "100 %"], IsSum: true));
        taken.Add(total.Id);
        return new BudgetTable("noise by source", sources + "*", [new("source", true), new("at the electrodes"), new("of the variance")],
            rows);
    }

    private static BudgetTable? Bands(Assessment assessment, HashSet<ResultId> taken)
    {
        ResultFamily bands = ResultIds.Noise.Bands;
        List<Row> rows = [];
        foreach (Result result in assessment.Results.Where(result => bands.Has(result.Id)))
        {
            taken.Add(result.Id);
            if (BandIds.IsRatio(result.Id))
            {
                continue;
            }

            string ratio = assessment.Find(new BandIds(result.Id).Ratio) is { } found ? Wording.Value(found) : "";
            rows.Add(new Row([bands.Rest(result.Id), Wording.Value(result), ratio, Wording.Description(result)]));
        }

        return rows.Count == 0
            ? null
            : new BudgetTable("bands", bands + "*, *.ratio",
                [new("band", true), new("noise"), new("signal/noise"), new("what it is", true)], rows);
    }

    private static BudgetTable? Mains(Assessment assessment, HashSet<ResultId> taken)
    {
        if (assessment.Find(ResultIds.Mains.Total) is not { Value: not null } total)
        {
            return null;
        }

        List<Row> rows = [];
        foreach (ResultId id in new[] { ResultIds.Mains.Imbalance, ResultIds.Mains.Amplifier, ResultIds.Mains.Loop })
        {
            if (assessment.Find(id) is { } result)
            {
                taken.Add(id);
                rows.Add(new Row([ResultIds.Mains.All.Rest(id), Wording.Value(result), Wording.Description(result)]));
            }
        }

        taken.Add(total.Id);
        rows.Add(new Row(["total", Wording.Value(total), Wording.Description(total)], IsSum: true));
        return new BudgetTable("mains at the electrodes", ResultIds.Mains.All + "*",
            [new("", true), new("value"), new("what it is", true)], rows);
    }

    /// <summary>So many harmonics stand where not all are asked for.</summary>
    private const int HarmonicsShown = 6;

    /// <summary>The harmonics of the mains with the fundamental and the largest of those recorded in the band, the rest in one line; null for
    /// none.</summary>
    public static BudgetTable? HarmonicsThatMatter(Assessment assessment)
    {
        ResultId[] all = [.. Stems(assessment, ResultIds.Mains.Harmonics)];
        HashSet<ResultId> shown = [.. all.Take(1), .. all.Skip(1).Where(stem => assessment.Find(new HarmonicIds(stem).LandsAt)?.LandsInBand == true)
            .OrderByDescending(Recorded).Take(HarmonicsShown - 1)];
        Row[] others = [.. all.Where(stem => !shown.Contains(stem)).OrderByDescending(Recorded).Take(1).Select(largest =>
            new Row([$"{all.Length - shown.Count} more, up to", "", "", Cell(assessment, new HarmonicIds(largest).Recorded), "", ""]))];
        return Harmonics(assessment, [], [.. all.Where(shown.Contains)], others);

        double Recorded(ResultId stem) => assessment.Find(new HarmonicIds(stem).Recorded)?.Value?.SiValue ?? 0;
    }

    /// <summary>What the path and the converter come to: corners, delay, steps and bits; null for none.</summary>
    public static BudgetTable? PathFigures(Assessment assessment)
    {
        ResultId[] ids =
        [
            ResultIds.Gain.Mid, ResultIds.Filter.Path.MinusThreeLow, ResultIds.Filter.Path.MinusThree, ResultIds.Latency.Total,
            ResultIds.Levels.Recovery, ResultIds.Converter.Lsb, ResultIds.Converter.DynamicRange, ResultIds.Converter.Enob,
            ResultIds.Power.SupplyCurrent,
        ];
        Row[] rows = [.. ids.Select(assessment.Find).OfType<Result>().Where(result => result.State != ResultState.Missing)
            .Select(result => new Row([result.Id.Text, Wording.Value(result)]))];
        return rows.Length == 0 ? null : new BudgetTable("path and converter", string.Join(", ", ids), [new("", true), new("value")], rows);
    }

    private static BudgetTable? Harmonics(Assessment assessment, HashSet<ResultId> taken) =>
        Harmonics(assessment, taken, [.. Stems(assessment, ResultIds.Mains.Harmonics)], []);

    private static BudgetTable? Harmonics(Assessment assessment, HashSet<ResultId> taken, ResultId[] stems, Row[] others)
    {
        ResultFamily harmonics = ResultIds.Mains.Harmonics;
        List<Row> rows = [];
        foreach (ResultId stem in stems)
        {
            HarmonicIds ids = new(stem);
            Result? lands = assessment.Find(ids.LandsAt);
            rows.Add(new Row(
            [
                harmonics.Rest(stem), Cell(assessment, ids.Input), Cell(assessment, ids.Converter), Cell(assessment, ids.Recorded),
                lands is null ? "" : Wording.Value(lands),
                lands?.LandsInBand == true ? "yes" : "",
            ]));
        }

        rows.AddRange(others);

        if (rows.Count == 0)
        {
            return null;
        }

        taken.UnionWith(assessment.Results.Where(result => harmonics.Has(result.Id)).Select(result => result.Id));
        foreach ((ResultId id, string label) in new[] { (ResultIds.Mains.RecordedEverywhere, "all of them"),
            (ResultIds.Mains.Recorded, "those in the band") })
        {
            if (assessment.Find(id) is { } sum)
            {
                rows.Add(new Row([label, "", "", Wording.Value(sum), "", ""], IsSum: true));
            }
        }

        return new BudgetTable(
            "mains harmonics", $"{harmonics}*.*, {ResultIds.Mains.Recorded}*",
                [new(assessment.Design.Mains.LookedAt, true), new("electrodes"), new("converter"), new("recorded"), new("lands at"), new("in band")], rows);
    }

    private static BudgetTable? Aliases(Assessment assessment, HashSet<ResultId> taken)
    {
        ResultFamily aliases = ResultIds.Alias.All;
        List<Row> rows = [];
        foreach (Result result in assessment.Results.Where(result => aliases.Has(result.Id) && !HasStem(aliases, result.Id)))
        {
            taken.Add(result.Id);
            rows.Add(new Row([aliases.Rest(result.Id), "", result.Unit is "dB"
                ? Wording.Value(result)
                : "", result.Unit is "dB"
                ? ""
                : Wording.Value(result), result.Name]));
        }

        foreach (ResultId stem in Stems(assessment, aliases))
        {
            AliasIds ids = new(stem);
            // What has a width lands in a range: a word, which has no place in a column of numbers.
            Result? lands = assessment.Find(ids.LandsAt), inBand = assessment.Find(ids.InBand);
            bool isRange = lands?.State == ResultState.Word;
            string name = isRange ? $"{lands!.Name} {lands.Text}" : lands?.WhatLands ?? "";
            rows.Add(new Row(
            [
                aliases.Rest(stem), isRange
                    ? ""
                    : Cell(assessment, ids.LandsAt), Cell(assessment, ids.Attenuation), Cell(assessment, ids.Residue),
                inBand is null ? name : $"{name}; {Wording.Value(inBand)} lies in the band itself: {inBand.Text}",
            ]));
            taken.UnionWith([ids.LandsAt, ids.Attenuation, ids.Residue, ids.InBand]);
        }

        return rows.Count == 0
            ? null
            : new BudgetTable("aliases", aliases + "*",
                [new("", true), new("lands at"), new("attenuation"), new("what is left"), new("what it is", true)], rows);
    }

    private static BudgetTable? Listed(Assessment assessment, HashSet<ResultId> taken, string title, ResultFamily[] families)
    {
        List<Row> rows = [];
        ResultFamily strip = families.Length == 1 ? families[0] : new("");
        foreach (Result result in assessment.Results.Where(result =>
            !taken.Contains(result.Id) && Array.Exists(families, family => family.Has(result.Id))))
        {
            taken.Add(result.Id);
            bool isWord = result.State == ResultState.Word;
            rows.Add(new Row([strip.Rest(result.Id), isWord
                ? ""
                : Wording.Value(result), isWord
                ? $"{result.Name}: {result.Text}"
                : Wording.Description(result)]));
        }

        return rows.Count == 0
            ? null
            : new BudgetTable(title, Patterns(families), [new("", true), new("value"), new("what it is", true)], rows);
    }

    private static string Patterns(IEnumerable<ResultFamily> families) => string.Join(", ", families.Select(family => family + "*"));

    private static string Cell(Assessment assessment, ResultId id) => assessment.Find(id) is { } result ? Wording.Value(result) : "";

    /// <summary>True where an id has more than one word behind the family's beginning.</summary>
    private static bool HasStem(ResultFamily family, ResultId id) => family.Rest(id).Contains('.');

    /// <summary>The ids of a family without their last word, in their order.</summary>
    private static IEnumerable<ResultId> Stems(Assessment assessment, ResultFamily family) =>
        assessment.Results.Select(result => result.Id).Where(id => family.Has(id) && HasStem(family, id)).Select(id => id.Stem).Distinct();
}
