using FrontEnd.Compare;
using FrontEnd.Documents.Sheets;
using FrontEnd.Reporting;

namespace FrontEnd.Terminal;

/// <summary>The design with values that can be bought, and what they change.</summary>
internal sealed record BoughtPage : StudyPage
{
    /// <summary>The way to it.</summary>
    public static readonly Act Way = new(
        '\0', [], "values that can be bought, and what they change", model => OpenStudy(model, new BoughtPage())) { Under = 'v' };

    private const string Adopts = "Enter takes them over";

    /// <inheritdoc/>
    public override string Title => "values that can be bought";

    /// <inheritdoc/>
    public override string Does => "Replaces the design's values with the nearest that can be bought, and shows what that changes.";

    /// <inheritdoc/>
    public override StudyOutcome Work(Design design, Action<double> progress, CancellationToken cancellation)
    {
        Assessment assessment = Evaluator.Evaluate(design);
        if (!assessment.HasFigures)
        {
            return Refused(assessment.Findings, "");
        }

        AsBuilt built = AsBuilt.Of(assessment);
        return new StudyOutcome(
            width => AsBuiltText.Page(built, width, Adopts),
            built.Values.Count == 0 ? [] : [new StudyChoice("values that can be bought", built.Built.Design, $"{Adopts}; u undoes it")], 0);
    }
}
