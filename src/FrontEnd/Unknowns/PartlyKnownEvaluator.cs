using FrontEnd.Catalogue;
using FrontEnd.Designs;
using FrontEnd.Numbers;
using FrontEnd.Reporting;
using FrontEnd.Results;

namespace FrontEnd.Unknowns;

/// <summary>From a design of which some values are not known to where its figures lie. Pure: the same design gives the same intervals, on
/// however many cores.</summary>
/// <remarks>Each unknown value is drawn between its ends, <see cref="UnknownField.At"/>, 400 times, all at once; then the inputs that move a
/// judged figure most are put to both ends in every combination, the others in their middle.</remarks>
internal static class PartlyKnownEvaluator
{
    /// <summary>How many designs are drawn.</summary>
    public const int Draws = 400;

    /// <summary>How many inputs at most are put to their ends in every combination.</summary>
    public const int MostCorners = 6;

    private const ulong Seed = 1;

    /// <summary>Intervals and verdicts; the results' order is that of <see cref="Evaluator.Evaluate"/>.</summary>
    public static Assessment Evaluate(PartlyKnownDesign design)
    {
        // Where sources lie and what the sites see of them is the same in every draw, and costs more than all the rest.
        Design median = Drawn(design, Enumerable.Repeat(0.5, design.Unknowns.Count).ToArray());
        SharedSources? sources = median.Patches.Count > 0 && (median.Head ?? new()).Model is not null ? new SharedSources(median) : null;
        Assessment middle = Evaluator.EvaluateWith(median, sources);
        sources?.Told();
        double[][] places = Places(design.Unknowns.Count);
        DrawnFigures?[] drawn = InParallel.Map(places, one => DrawnFigures.Of(Drawn(design, one), sources));
        if (!middle.HasFigures || Array.TrueForAll(drawn, one => one is null))
        {
            return middle.HasFigures
                ? Evaluator.WithoutFigures(middle.Design, [.. middle.Findings, Messages.NothingDrawn(Draws)])
                : Evaluator.WithoutFigures(middle.Design, middle.Findings);
        }

        var correlations = new Correlations(places, drawn);
        IReadOnlyList<Result> like = WorstNode.Apart(middle.Results);
        Result[] judged = [.. like.Where(result => result.Verdict.Kind != VerdictKind.NotJudged)];
        DrawnFigures[] corners = Corners(design, sources, correlations.Strongest(judged.Select(result => result.Id), MostCorners));
        DrawnFigures[] draws = [.. drawn.OfType<DrawnFigures>()];
        var intervals = new Intervals(design, draws, [.. places.Where((_, draw) => drawn[draw] is not null)], corners, correlations);
        List<Result> results = [.. InParallel.Map(like, intervals.Of), .. intervals.Others(like, places, drawn)];
        return new Assessment(middle.Design, results, [.. OfSources(median), .. Certain([.. draws, .. corners])], Curves.None) { PartlyKnown = design };
    }

    /// <summary>One design that the unknown values allow. How a contact changes with time is left out: its range over the draws is wider than that, and each
    /// time would cost as much as all the rest.</summary>
    internal static Design Drawn(PartlyKnownDesign design, IReadOnlyList<double> places) =>
        design.With(places).WithElectrodes(one => one.OverTime.All.Count == 0 ? one : one with { OverTime = Fields.ContactOverTime.None });

    /// <summary>One number between 0 and 1 for each unknown of each draw, in the order of the catalogue.</summary>
    internal static double[][] Places(int unknowns)
    {
        var random = new SeededRandom(Seed);
        var places = new double[Draws][];
        for (int draw = 0; draw < Draws; draw++)
        {
            places[draw] = new double[unknowns];
            for (int i = 0; i < unknowns; i++)
            {
                places[draw][i] = random.NextUnit();
            }
        }

        return places;
    }

    private static DrawnFigures[] Corners(PartlyKnownDesign design, SharedSources? sources, IReadOnlyList<int> inputs)
    {
        var all = new double[1 << inputs.Count][];
        for (int corner = 0; corner < all.Length; corner++)
        {
            all[corner] = Enumerable.Repeat(0.5, design.Unknowns.Count).ToArray();
            for (int bit = 0; bit < inputs.Count; bit++)
            {
                all[corner][inputs[bit]] = (corner >> bit) & 1;
            }
        }

        return [.. InParallel.Map(all, one => DrawnFigures.Of(Drawn(design, one), sources)).OfType<DrawnFigures>()];
    }

    /// <summary>What the check says of head and sources, which it looks at once and not in every draw.</summary>
    private static IEnumerable<Finding> OfSources(Design median) =>
        median.Patches.Count == 0 ? [] : DesignCheck.Run(median).Except(DesignCheck.Run(median, null, withSources: false));

    /// <summary>What is to be said of every single one of them, word for word: it rests on nothing unknown.</summary>
    private static List<Finding> Certain(DrawnFigures[] all) =>
        [.. all[0].Findings.Where(finding => Array.TrueForAll(all, one => one.Findings.Contains(finding)))];
}
