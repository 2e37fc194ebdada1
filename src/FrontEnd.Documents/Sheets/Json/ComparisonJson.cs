using FrontEnd.Compare;
using FrontEnd.Quantities;
using FrontEnd.Results;

namespace FrontEnd.Documents.Sheets;

/// <summary>Members of <c>compare --json</c>: the figures that either design is judged on, and what each difference alone makes of
/// them.</summary>
internal sealed record ComparisonJson(
    string FromDesign, string ToDesign, OrderedDictionary<string, JudgedJson> From, OrderedDictionary<string, JudgedJson> To,
    IReadOnlyList<DifferenceJson> Differences)
{
    // Named apart from the member `from`.
    public static ComparisonJson Of(Comparison comparison)
    {
        return new ComparisonJson(
            comparison.From.Design.Name, comparison.To.Design.Name, Judged(comparison.From), Judged(comparison.To),
            [.. comparison.Differences.Select(one => new DifferenceJson(one.Key, one.From, one.To, Judged(one.Alone)))]);

        OrderedDictionary<string, JudgedJson> Judged(Assessment assessment) => new(
            comparison.JudgedIds.Select(assessment.Find).OfType<Result>()
                .Select(result => KeyValuePair.Create(result.Id.Text, new JudgedJson(result.Value, result.Unit, result.Verdict.Kind))));
    }
}

/// <summary>One difference and the judged figures of the first design with it alone.</summary>
internal sealed record DifferenceJson(string Key, string From, string To, OrderedDictionary<string, JudgedJson> Alone);

/// <summary>A judged figure in short.</summary>
internal sealed record JudgedJson(IQuantity? Value, string Unit, VerdictKind Verdict);
