using FrontEnd.Bench;

namespace FrontEnd.Documents.Sheets;

/// <summary>Members of <c>bench --json</c> for a design with values that are not known, without a recording.</summary>
/// <param name="NotKnownCount">How many values are not known.</param>
/// <param name="NotKnown">Their keys, what the owner can ask for first.</param>
/// <param name="First">What must be known before a recording can be read; null for nothing.</param>
/// <param name="Next">Recordings that would narrow what is not known, the most first.</param>
internal sealed record RecordingPlanJson(string Design, string Caution, int NotKnownCount, IReadOnlyList<string> NotKnown, string? First, IReadOnlyList<RecordingChoiceJson> Next) : CautionedJson
{
    public static RecordingPlanJson From(RecordingPlan plan) =>
        new(plan.Design.Given.Design.Name, BenchPlan.Caution, plan.NotKnown.Count, plan.NotKnown, plan.First, RecordingChoiceJson.From(plan.Choices))
        {
            DesignCautions = FrontEnd.Results.Cautions.Own(plan.Design.Given.Design),
        };
}
