using FrontEnd.Compare;
using System.Text.Json.Serialization;

namespace FrontEnd.Documents.Sheets;

/// <summary>Members of <c>compare --json</c>: the figures that either design is judged on, what each difference alone makes of them, and
/// every change in the order in which it is printed.</summary>
internal sealed record ComparisonJson(
    string FromDesign, string ToDesign, OrderedDictionary<string, JudgedJson> From, OrderedDictionary<string, JudgedJson> To,
    IReadOnlyList<DifferenceJson> Differences)
    : CautionedJson
{
    /// <summary>All differences together, worst first.</summary>
    public required IReadOnlyList<ChangeJson> Changes { get; init; }

    /// <summary>What is not judged and matters all the same: noise, delay, supply current, battery life, data rate.</summary>
    public required IReadOnlyList<HeadlineJson> Headlines { get; init; }

    /// <summary>What is to be said about the second design and not about the first.</summary>
    public required IReadOnlyList<FindingJson> Findings { get; init; }

    // Named apart from the member `from`.
    public static ComparisonJson Of(Comparison comparison)
    {
        return new ComparisonJson(
            comparison.From.Design.Name, comparison.To.Design.Name, Judged(comparison.From), Judged(comparison.To),
            [
                .. comparison.Differences.Select(one => new DifferenceJson(one.Key, one.From, one.To, Judged(one.Alone))
                {
                    Changes = [.. comparison.Of(one).Select(ChangeJson.From)],
                    Findings = FindingJson.From(comparison.NewFindings(one.Alone)),
                }),
            ])
        {
            DesignCautions = FrontEnd.Results.Cautions.Own(comparison.From.Design, comparison.To.Design),
            Changes = [.. comparison.Together.Select(ChangeJson.From)],
            Headlines = [.. comparison.Headlines.Select(one =>
                new HeadlineJson(one.Id.Text, one.Before is { } before ? JudgedJson.Of(before) : null, one.After is { } after ? JudgedJson.Of(after) : null))],
            Findings = FindingJson.From(comparison.NewFindings(comparison.To)),
        };

        OrderedDictionary<string, JudgedJson> Judged(Assessment assessment) => new(
            comparison.JudgedIds.Select(assessment.Find).OfType<Result>()
                .Select(result => KeyValuePair.Create(result.Id.Text, JudgedJson.Of(result))));
    }
}

/// <summary>One difference and the judged figures of the first design with it alone; no figures where that is an invalid design, and a
/// finding that says why.</summary>
internal sealed record DifferenceJson(string Key, string From, string To, OrderedDictionary<string, JudgedJson> Alone)
{
    public required IReadOnlyList<ChangeJson> Changes { get; init; }

    public required IReadOnlyList<FindingJson> Findings { get; init; }
}

/// <summary>What becomes of one figure; null before or after where that design has none.</summary>
/// <param name="Id">Which; where another figure is judged in its place afterwards, that one's.</param>
/// <param name="FromId">The first design's figure.</param>
internal sealed record ChangeJson(string Id, string? FromId, ChangeKind Kind, JudgedJson? Before, JudgedJson? After)
{
    public static ChangeJson From(FigureChange change) => new(change.Id.Text, change.Before?.Id.Text, change.Kind,
        change.Before is { } before ? JudgedJson.Of(before) : null, change.After is { } after ? JudgedJson.Of(after) : null);
}

/// <summary>A figure of both designs that neither judges; null before or after where that design has none.</summary>
internal sealed record HeadlineJson(string Id, JudgedJson? Before, JudgedJson? After);

/// <summary>A judged figure in short: without a value it is unbounded, missing or a word, and its state says which.</summary>
internal sealed record JudgedJson(IQuantity? Value, string Unit, VerdictKind Verdict, ResultState State, string? Text, IQuantity? Limit)
{
    /// <summary>Of a figure without bound which way it has none, in words.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? Unbounded { get; init; }

    public static JudgedJson Of(Result result) =>
        new(result.Value, result.Unit, result.Verdict.Kind, result.State, result.Text, result.Verdict.Limit) { Unbounded = result.State == ResultState.Unbounded ? UnboundedWords.Of(result) : null };
}
