using FrontEnd.Advice;
using FrontEnd.Identity;
using FrontEnd.Results;

namespace FrontEnd.Teaching;

/// <summary>Why one figure of a design is what it is.</summary>
/// <param name="Assessment">The assessment with the changes that help.</param>
/// <param name="Result">The figure.</param>
/// <param name="Moves">What moves it, largest first; empty where no input does by itself, and where none is looked for.</param>
public sealed record Explained(Assessment Assessment, Result Result, IReadOnlyList<Sensitivity> Moves)
{
    /// <summary>Inputs that a page shows.</summary>
    public const int MovesShown = 12;

    /// <summary>The reason in plain words; null where there is none.</summary>
    public Explanation? Why => Explanations.Of(Result.Id);

    /// <summary>The picture that shows it; null where none helps.</summary>
    public Diagram? Picture => Diagrams.Of(Assessment, Result.Id);

    /// <summary>Null where the assessment has no such figure.</summary>
    /// <param name="assessment">The design's figures.</param>
    /// <param name="id">The figure's id as a user writes it.</param>
    public static Explained? Of(Assessment assessment, string id)
    {
        ResultId asked = new(id);
        if (!ResultIds.Limit.All.Has(asked) && assessment.Find(asked) is null)
        {
            return null;
        }

        Assessment advised = Advisor.Advise(assessment);
        return advised.Find(asked) is { } result ? new Explained(advised, result, Sensitivity.Of(assessment, asked)) : null;
    }
}
