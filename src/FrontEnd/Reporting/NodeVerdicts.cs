using FrontEnd.Identity;
using FrontEnd.Results;

namespace FrontEnd.Reporting;

/// <summary>How each node of the path stands against the headroom that is asked of all of them. Among the verdicts stands the node that clips first
/// alone; a picture of the path shows every block by its own nodes.</summary>
internal static class NodeVerdicts
{
    /// <summary>A result's own verdict; of the headroom of a node without one, what that verdict would be. Not judged for everything else, and where the
    /// design was read in part.</summary>
    public static VerdictKind Of(Assessment assessment, Result result)
    {
        if (result.Verdict.Requirement is not null || !ResultIds.Levels.IsHeadroom(result.Id) || !assessment.HasFigures
            || assessment.Findings.Any(finding => finding.Severity == Severity.Error))
        {
            return result.Verdict.Kind;
        }

        return result.State switch
        {
            ResultState.Number => Judge.Weigh(result.Si, assessment.Design.Requirements.Headroom, greatest: false).Kind,
            ResultState.Unbounded => VerdictKind.Pass,
            ResultState.Interval => Over(assessment, result.Interval!),
            _ => VerdictKind.NotJudged,
        };
    }

    /// <summary>Of a node whose headroom rests on what is not known.</summary>
    private static VerdictKind Over(Assessment assessment, Interval span)
    {
        double limit = assessment.Design.Requirements.Headroom.Value;
        return assessment.PartlyKnown?.Find(DesignKeys.Requirements.Headroom) is not null ? VerdictKind.Open
            : limit <= span.Least ? VerdictKind.Pass
            : span.Greatest < limit ? VerdictKind.Fail
            : VerdictKind.Open;
    }
}
