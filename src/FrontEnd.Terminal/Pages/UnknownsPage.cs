using FrontEnd.Documents;
using FrontEnd.Documents.Sheets;
using FrontEnd.Unknowns;

namespace FrontEnd.Terminal;

/// <summary>Where the figures of a design lie of which not everything is known: what it can see, what is open and what would close it.</summary>
/// <param name="Document">The design as it stands; null before it is opened.</param>
internal sealed record UnknownsPage(DesignDocument? Document = null) : StudyPage
{
    /// <summary>The way to it.</summary>
    public static readonly Act Way = new(
        '\0', [], "what is not known: intervals, what is open and what would close it",
        model => OpenStudy(model, new UnknownsPage(model.Here.Document), takesUnknown: true)) { Under = 'u' };

    /// <inheritdoc/>
    public override string Title => "what is not known";

    /// <inheritdoc/>
    public override string Does => "Draws every unknown value from its range and shows where the figures lie.";

    /// <inheritdoc/>
    public override StudyOutcome Work(Design design, Action<double> progress, CancellationToken cancellation)
    {
        if (Document?.HasErrors == true)
        {
            return Refused(Document.Findings, "");
        }

        return Document?.PartlyKnown is { } partly
            ? Written(new Sheet(Document, PartlyKnownEvaluator.Evaluate(partly)))
            : Refused([], "Every value of this design is known; its figures are next to the form.");

        static StudyOutcome Written(Sheet sheet) => new(width => PartlyKnownText.Of(sheet, width, listsAll: ""), [], 0);
    }
}
