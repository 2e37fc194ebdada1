using FrontEnd.Head;
using FrontEnd.Identity;

namespace FrontEnd.Documents.Sheets;

/// <summary>What the channels show of the design's sources: first whether it stands out, then what the reference does. The rest of each is told by id.</summary>
internal static class SourceTables
{
    /// <summary>Title of the signal against background and front end.</summary>
    public const string Title = "will I see it?";

    /// <summary>Title of what is kept and taken.</summary>
    public const string ReferenceTitle = "what the reference takes";

    /// <summary>What must be said with what the reference takes.</summary>
    public static readonly IReadOnlyList<string> ReferenceNotes =
    [
        "Least and most: with a brain that conducts 15, 20 and 80 times as well as the skull. A dash: the active site hardly sees the source.", HeadLimits.Ears,
    ];

    public static IEnumerable<BudgetTable> Of(Assessment assessment, HashSet<ResultId> taken)
    {
        ResultFamily family = ResultIds.See.All;
        SeeIds[] seen = [.. assessment.Results.Where(result => result.Id.Figure == new SeeIds(result.Id.Stem).OfPeak.Figure && family.Has(result.Id))
            .Select(result => new SeeIds(result.Id.Stem))];
        if (seen.Length == 0)
        {
            yield break;
        }

        string Cell(ResultId id) => assessment.Find(id) is { } result ? result.State switch
        {
            ResultState.Word => result.Text!,
            ResultState.Number => Wording.Value(result),
            _ => "-",
        } : "-";
        string[] Names(SeeIds ids) => family.Rest(ids.Stem).Split('.');
        string stems = $"{family}<source>.<channel>.*";
        yield return new BudgetTable(
            Title, $"{stems}",
            [new("source", true), new("channel", true), new("signal"), new("background"), new("front end"), new("ratio"), new("more of the noise", true)],
            [.. seen.Select(ids => new Row([.. Names(ids), Cell(ids.Signal), Cell(ids.Background), Cell(ids.FrontEnd), Cell(Ratio(assessment, ids)), Cell(ids.LimitedBy)]))])
        {
            Notes = HeadLimits.All,
        };
        yield return new BudgetTable(
            ReferenceTitle, $"{stems}",
            [new("source", true), new("channel", true), new("kept"), new("least"), new("most"), new("taken"), new("of peak"), new("half at")],
            [.. seen.Select(ids => new Row([.. Names(ids), Cell(ids.Kept), Cell(ids.KeptSpan.Least), Cell(ids.KeptSpan.Greatest), Cell(ids.ReferenceTakes), Cell(ids.OfPeak), Cell(ids.HalfRegion)]))])
        {
            Notes = ReferenceNotes,
        };
        // A sphere's distances are good to two figures, which the page of the sites prints.
        taken.UnionWith(assessment.Results.Select(result => result.Id).Where(ResultIds.Head.Distances.Has));
        foreach (SeeIds ids in seen)
        {
            string start = ids.Stem + ".";
            taken.UnionWith(assessment.Results.Select(result => result.Id).Where(id => id.Text.StartsWith(start, StringComparison.Ordinal)));
        }
    }

    /// <summary>The ratio's id ends with its band: the one figure of this channel that does.</summary>
    private static ResultId Ratio(Assessment assessment, SeeIds ids)
    {
        string start = ids.SignalToNoise("").Text;
        return assessment.Results.Select(result => result.Id).FirstOrDefault(id => id.Text.StartsWith(start, StringComparison.Ordinal));
    }
}
