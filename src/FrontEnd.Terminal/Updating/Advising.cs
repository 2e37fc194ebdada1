using FrontEnd.Documents;

namespace FrontEnd.Terminal;

/// <summary>The change that helps most, and whole designs taken over.</summary>
internal static class Advising
{
    /// <summary>The figure that the change which helps most would be made for: the one in hand; in the form the first that there is a
    /// change for.</summary>
    public static Result? FixInHand(Model model) => model switch
    {
        { Page: WhyPage why } => model.Here.Shown?.Find(why.ResultId),
        { OnResults: true } => Whereabouts.ResultInHand(model),
        _ => Whereabouts.ResultsOf(model).FirstOrDefault(one => one.Verdict.Improvement is not null),
    };

    /// <summary>Makes the change that helps most for the figure in hand.</summary>
    public static (Model Model, Effect? Effect) Apply(Model model)
    {
        if (Errors.InTheWay(model.Here) is { } wrong)
        {
            return (model.Complain(wrong), null);
        }

        Result? result = FixInHand(model);
        if (result?.Verdict.Kind == VerdictKind.Pass)
        {
            return (model.Tell($"{result.Name}: already meets its limit, nothing changed"), null);
        }

        if (result is not null && result.Verdict.Requirement is null)
        {
            return (model.Tell($"{result.Name}: no limit is set for it, nothing to fix; up goes to the figures that are judged"), null);
        }

        if (result?.Verdict.Improvement is not { } improvement)
        {
            return (model.Tell(!model.Here.Advised || !model.Here.IsFresh
                ? "still looking for the change that helps most; try again in a moment"
                : "no single change was found that helps here"), null);
        }

        if (!model.Here.IsFresh)
        {
            return (model.Tell("the figures are being recomputed; try again in a moment"), null);
        }

        return TakeOver(model with { Page = null }, improvement.Design, improvement.Change, $"done: {improvement.Change}. u undoes it.");
    }

    /// <summary>Takes another design's values into the document; asks first where the file would have to be written anew.</summary>
    public static (Model Model, Effect? Effect) TakeOver(Model model, Design wanted, string label, string status)
    {
        TakenOver taken = Edits.TakeOver(model.Here.Document, wanted);
        return taken switch
        {
            { Finding: { } finding } => (model.Complain(finding), null),
            { Comments: > 0 and var comments } => (model with
            {
                Editing = null,
                Page = new QuestionPage(
                    $"The layout of this file has no place for the change ({label}): the file would be rewritten, and {(comments == 1 ? "its comment" : $"its {comments} comments")} would move to its end.",
                    [new('n', "no, leave it as it is", new Message.Dismiss()),
                        new('y', "yes, rewrite it", new Message.Take(taken.Document, label))]),
            }, null),
            _ => Changes.Change(model, taken.Document, label, status),
        };
    }
}
