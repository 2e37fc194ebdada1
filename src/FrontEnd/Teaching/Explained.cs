using FrontEnd.Advice;
using FrontEnd.Identity;
using FrontEnd.Results;

namespace FrontEnd.Teaching;

/// <summary>Why one figure of a design is what it is.</summary>
/// <param name="Assessment">The assessment, with the change that helps the figure.</param>
/// <param name="Result">The figure.</param>
/// <param name="Moves">What moves it, largest first; empty where no input does by itself, and where none is looked for.</param>
internal sealed record Explained(Assessment Assessment, Result Result, IReadOnlyList<Sensitivity> Moves)
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
    /// <param name="cancellation">Ends the work with an <see cref="OperationCanceledException"/>.</param>
    /// <remarks>Works out what this one figure needs: the change that helps it where it is judged, one limit of use where it is one, and its
    /// report alone for every input that is moved.</remarks>
    public static Explained? Of(Assessment assessment, string id, CancellationToken cancellation = default)
    {
        ResultId asked = new(id);
        Assessment shown = ResultIds.Limit.All.Has(asked)
            ? LimitsOfUse.Add(assessment, asked, cancellation)
            : Advisor.Advise(assessment, asked, cancellation);
        return shown.Find(asked) is { } result ? new Explained(shown, result, Sensitivity.Of(assessment, asked, cancellation)) : null;
    }
}
