using FrontEnd.Catalogue;
using FrontEnd.Designs;
using FrontEnd.Identity;
using FrontEnd.Networks;
using FrontEnd.Results;

namespace FrontEnd.Reporting;

/// <summary>One figure of many designs that are alike: worked out by the report that makes it, and nothing beside it.</summary>
internal sealed class OneFigure
{
    private readonly ResultId _id;
    private readonly Action<ResultList, List<Finding>, Evaluation> _report;

    private OneFigure(ResultId id, Action<ResultList, List<Finding>, Evaluation> report) => (_id, _report) = (id, report);

    /// <param name="design">A design that has the figure.</param>
    /// <param name="id">The figure's.</param>
    public static OneFigure Of(Design design, ResultId id)
    {
        var evaluation = new Evaluation(design);
        return new OneFigure(id, Evaluator.Reports.First(report => Made(report, evaluation).Has(id)));
    }

    /// <summary>The figure, without a verdict; null where another design has none of this id.</summary>
    /// <returns>False where the design contradicts itself or its network has no answer.</returns>
    public bool TryOf(Design design, out Result? result)
    {
        result = null;
        if (DesignCheck.Run(design).Any(finding => finding.Severity == Severity.Error))
        {
            return false;
        }

        try
        {
            ResultList made = Made(_report, new Evaluation(design));
            result = made.Has(_id) ? made[_id] : null;
            return true;
        }
        catch (NetworkHasNoAnswer)
        {
            return false;
        }
    }

    private static ResultList Made(Action<ResultList, List<Finding>, Evaluation> report, Evaluation evaluation)
    {
        var list = new ResultList();
        report(list, [], evaluation);
        return list;
    }
}
