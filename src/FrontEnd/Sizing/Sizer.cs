using FrontEnd.Amplifier;
using FrontEnd.Budgets;
using FrontEnd.Catalogue;
using FrontEnd.Designs;
using FrontEnd.Inputs;
using FrontEnd.Numbers;

namespace FrontEnd.Sizing;

/// <summary>From requirements to complete designs: a search over part cards, gain split, rate, order of the anti-alias filter, its
/// topology, preferred values and ground.</summary>
/// <remarks>
/// Each family (amplifier, ground, converter, rate, filter) is walked in the order of a bound on its noise, which no limit moves. A
/// candidate that a bound rules out (first-stage gain against offset and swing, noise floor, full scale, current, parts) is not evaluated;
/// the first that passes the full evaluation is its family's. So a looser requirement meets the same candidates in the same order and stops
/// no later. A design passes where it has no error and no verdict of its assessment is a fail. Safety limits are not searched over: every
/// lead gets the preferred resistor that the quoted limit needs, and nothing is connected to earth. Parts are taken on the supply that
/// their cards allow, at the gains that they have.
/// </remarks>
internal static class Sizer
{
    /// <summary>Designs shown of a front.</summary>
    private const int Shown = 6;

    /// <summary>Searches; the same request gives the same outcome.</summary>
    /// <param name="request">What is given and what is asked.</param>
    /// <param name="progress">Told the share that is done, 0…1, from any thread.</param>
    /// <param name="cancellation">Ends the search with <see cref="OperationCanceledException"/>.</param>
    public static SizingOutcome Size(SizingRequest request, IProgress<double>? progress = null, CancellationToken cancellation = default)
    {
        if (Impossible(request) is { } finding)
        {
            return new SizingOutcome([], [], 0, 0, [finding]);
        }

        var grid = new SizingGrid(request);
        SizingGroup[] groups = Groups(grid, request);
        SizingGroup[] stable = [.. groups.Where(group => !group.IsUnstable(request))];
        int done = 0, all = stable.Sum(group => group.Families.Count);
        Walk[] walks =
        [
            .. InParallel.Map(
                stable,
                group => group.Walk(grid, request, cancellation, () => progress?.Report((double)Interlocked.Increment(ref done) / all)),
                cancellation).SelectMany(group => group),
        ];
        SizedDesign[] found = [.. walks.Select(walk => walk.Found).OfType<SizedDesign>()];
        var obstacles = new Obstacles(request, grid.Parts, walks, groups.Where(group => group.IsUnstable(request)));
        IReadOnlyList<Relaxation> relaxations = found.Length == 0 ? LeastRelaxations.Of(grid, request, groups, cancellation) : [];
        return new SizingOutcome(Spread(Front(found)), obstacles.List(found.Length != 0, relaxations), walks.Sum(walk => walk.Candidates),
            walks.Sum(walk => walk.Evaluated), []);
    }

    /// <summary>What contradicts itself whatever the search decides.</summary>
    private static Finding? Impossible(SizingRequest request)
    {
        Design design = request.Fixed;
        string[] decided = ["amplifier", "converter", "stages", "ground-drive"];
        double rate = SizingGrid.Rates(new Converter.AnalogDigitalConverter(), design).Max();
        Finding? wrong = DesignCheck.Run(design with { Converter = new() { Rate = Frequency.FromHertz(rate) }, Amplifier = new(), Stages = [] })
            .FirstOrDefault(finding => finding.Severity == Severity.Error
                && !Array.Exists(decided, table => finding.Field.StartsWith(table, StringComparison.Ordinal)));
        return wrong
            ?? (request.BatteryLife is not null && design.Supply.BatteryCapacity is null ? Messages.LifeWithoutBattery() : null);
    }

    /// <summary>Every amplifier on every ground with every converter. The driven ground's phase margin does not depend on gain, rate or
    /// filter, so it is decided once.</summary>
    private static SizingGroup[] Groups(SizingGrid grid, SizingRequest request)
    {
        (Design Base, DifferentialAmplifier Amplifier)[] pairs =
        [
            .. from ground in grid.Grounds()
               let design = grid.Base(ground)
               from amplifier in grid.Parts.Amplifiers
               select (design, amplifier),
        ];
        double?[] margins = InParallel.Map(
            pairs,
            pair => pair.Base.GroundDrive.Kind == GroundKind.Driven
                ? WorstPhaseMargin(pair.Base with { Amplifier = pair.Amplifier })
                : null);
        return
        [
            .. from at in Enumerable.Range(0, pairs.Length)
               from converter in grid.Parts.Converters
               where request.Shelf.Belong(pairs[at].Amplifier, converter)
               select new SizingGroup(pairs[at].Base, pairs[at].Amplifier, converter, margins[at]),
        ];
    }

    private static double? WorstPhaseMargin(Design design)
    {
        var built = BuiltParts.Worst(design);
        return new DriveBudget(new PathModel(design, built), built).WorstPhaseMargin;
    }

    /// <summary>Share by which a figure must differ to count as better (common practice, no source): parts are off by more.</summary>
    private const double Same = 0.005;

    /// <summary>The designs that no other one equals or beats in all figures, least noise first.</summary>
    /// <remarks>
    /// Differences below <see cref="Same"/> do not count, so "no worse" is not transitive, and leaving out all that is beaten at once might
    /// leave nothing. One design after the other is held against those that are left, the noisiest first: what goes is beaten by one that
    /// stays, but by at most <see cref="Same"/> in noise for the quietest.
    /// </remarks>
    internal static SizedDesign[] Front(IEnumerable<SizedDesign> found)
    {
        List<SizedDesign> left = [.. found.OrderBy(one => one.Noise.Volts).ThenBy(one => one.Current.Amperes).ThenBy(one => one.Parts)];
        for (int at = left.Count - 1; 0 <= at; at--)
        {
            SizedDesign one = left[at];
            if (left.Exists(other => !ReferenceEquals(other, one) && IsNoWorse(other, one)))
            {
                left.RemoveAt(at);
            }
        }

        return [.. left];
    }

    /// <summary>True where a is as good as b in every figure, differences below <see cref="Same"/> aside; decibels are compared as the
    /// ratios they stand for.</summary>
    private static bool IsNoWorse(SizedDesign a, SizedDesign b)
    {
        bool AtMost(double mine, double theirs) => mine <= theirs * (1 + Same);

        return AtMost(a.Noise.Volts, b.Noise.Volts) && AtMost(a.Current.Amperes, b.Current.Amperes) && AtMost(a.Parts, b.Parts)
            && AtMost(b.MainsMargin.VoltageRatio, a.MainsMargin.VoltageRatio);
    }

    /// <summary>The best by each figure first, then those with the least noise, in order of noise.</summary>
    private static SizedDesign[] Spread(SizedDesign[] front)
    {
        if (front.Length <= Shown)
        {
            return front;
        }

        IEnumerable<SizedDesign> best = [front[0], front.MinBy(one => one.Current.Amperes)!, front.MinBy(one => one.Parts)!,
            front.MaxBy(one => one.MainsMargin.Value)!];
        return [.. best.Concat(front).Distinct().Take(Shown).OrderBy(one => one.Noise.Volts)];
    }
}
