using FrontEnd.Amplifier;
using FrontEnd.Budgets;
using FrontEnd.Catalogue;
using FrontEnd.Converter;
using FrontEnd.Designs;
using FrontEnd.Electrodes;
using FrontEnd.Identity;
using FrontEnd.Inputs;
using FrontEnd.Numbers;
using FrontEnd.Reporting;
using FrontEnd.Results;
using FrontEnd.Topologies;

namespace FrontEnd.Sizing;

/// <summary>From requirements to complete designs: a search over part cards, gain split, rate, order of the anti-alias filter, its
/// topology, preferred values and ground.</summary>
/// <remarks>
/// Each family (amplifier, ground, converter, rate, filter) is walked in the order of a bound on its noise, which no limit moves. A
/// candidate that a bound rules out (first-stage gain against offset and swing, noise floor, full scale, current, parts) is not evaluated;
/// the first that passes the full evaluation is its family's. So a looser requirement meets the same candidates in the same order and stops
/// no later. Safety limits are not searched over: every lead gets the preferred resistor that the quoted limit needs, and nothing is
/// connected to earth.
/// </remarks>
public static class Sizer
{
    /// <summary>Designs shown of a front.</summary>
    private const int Shown = 6;

    /// <summary>Full evaluations that one family may take.</summary>
    private const int MostInFamily = 12;

    private sealed record Family(Design Base, DifferentialAmplifier Amplifier, AnalogDigitalConverter Converter, double Rate, int Filter);

    /// <summary>What clipping at one rate and filter tells about the others of the same amplifier, converter and ground: levels hardly
    /// depend on either.</summary>
    private sealed class GainLimits
    {
        public double First { get; set; } = double.PositiveInfinity;

        public double Total { get; set; } = double.PositiveInfinity;
    }

    private sealed record Tried(Design Design, Dictionary<ResultId, Result> Judged);

    private sealed record Walk(SizedDesign? Found, List<Tried> Failed, Dictionary<string, (int Count, double Best)> Bounds, int Candidates,
        int Evaluated);

    /// <summary>Searches; the same request gives the same outcome.</summary>
    /// <param name="request">What is given and what is asked.</param>
    /// <param name="progress">Told the share that is done, 0…1, from any thread.</param>
    /// <param name="cancellation">Ends the search with <see cref="OperationCanceledException"/>.</param>
    public static SizingOutcome Size(SizingRequest request, IProgress<double>? progress = null, CancellationToken cancellation = default)
    {
        Design start = request.Fixed;
        if (Impossible(request) is { } finding)
        {
            return new SizingOutcome([], [], 0, 0, [finding]);
        }

        var grid = new SizingGrid(request);
        (List<(Design Base, DifferentialAmplifier Amplifier)> grounds, Walk unstable) = Stable(grid, request);
        Family[][] groups =
        [
            .. from pair in grounds
               from converter in request.Shelf.Converters
               where request.Shelf.Belong(pair.Amplifier, converter)
               select (Family[])[
                   .. from rate in SizingGrid.Rates(converter, start)
                      from filter in SizingGrid.Filters(converter)
                      select new Family(pair.Base, pair.Amplifier, converter, rate, filter)],
        ];
        int done = 0, all = groups.Sum(group => group.Length);
        Walk[] walks =
        [
            unstable,
            .. InParallel.Map(
                groups,
                group =>
                {
                    var limits = new GainLimits();
                    return Array.ConvertAll(group, family =>
                    {
                        cancellation.ThrowIfCancellationRequested();
                        Walk walk = Follow(family, grid, request, limits);
                        progress?.Report((double)Interlocked.Increment(ref done) / all);
                        return walk;
                    });
                },
                cancellation).SelectMany(group => group),
        ];
        SizedDesign[] found = [.. walks.Select(walk => walk.Found).OfType<SizedDesign>()];
        return new SizingOutcome(Spread(Front(found)), Obstacles(walks, request, found.Length != 0), walks.Sum(walk => walk.Candidates),
            walks.Sum(walk => walk.Evaluated), []);
    }

    private static Finding? Impossible(SizingRequest request)
    {
        Finding? wrong = DesignCheck.Run(request.Fixed with { Converter = request.Fixed.Converter with { Rate = Frequency.FromHertz(Math.Max(2000, 4 * request.Fixed.Band.High.Hertz)) } })
            .FirstOrDefault(finding =>
                finding.Severity == Severity.Error && !finding.Field.StartsWith("amplifier", StringComparison.Ordinal));
        return wrong
            ?? (request.BatteryLife is not null && request.Fixed.Supply.BatteryCapacity is null ? Messages.LifeWithoutBattery() : null);
    }

    private static double? WorstPhaseMargin(Design design)
    {
        var built = BuiltParts.Worst(design);
        return new DriveBudget(new PathModel(design, built), built).WorstPhaseMargin;
    }

    /// <summary>Every amplifier on every ground that it is stable with: the driven ground's phase margin does not depend on gain, rate or
    /// filter, so it is decided once.</summary>
    private static (List<(Design Base, DifferentialAmplifier Amplifier)> Stable, Walk Unstable) Stable(SizingGrid grid,
        SizingRequest request)
    {
        (Design Base,
            DifferentialAmplifier Amplifier)[] pairs = [.. from ground in grid.Grounds() let design = grid.Base(ground) from amplifier in request.Shelf.Amplifiers select (design, amplifier)];
        double?[] margins = InParallel.Map(
            pairs,
            pair => pair.Base.GroundDrive.Kind == GroundKind.Driven
                ? WorstPhaseMargin(pair.Base with { Amplifier = pair.Amplifier })
                : null);
        List<(Design, DifferentialAmplifier)> stable = [];
        (int count, double best) = (0, double.NegativeInfinity);
        for (int i = 0; i < pairs.Length; i++)
        {
            if (margins[i] is { } margin && margin < pairs[i].Base.Requirements.PhaseMargin.Degrees)
            {
                (count, best) = (count + 1, Math.Max(best, margin));
            }
            else
            {
                stable.Add(pairs[i]);
            }
        }

        var bounds = new Dictionary<string, (int, double)>(StringComparer.Ordinal);
        if (0 < count)
        {
            bounds[DesignKeys.Requirements.PhaseMargin] = (count, best);
        }

        return (stable, new Walk(null, [], bounds, 0, 0));
    }

    private static Walk Follow(Family family, SizingGrid grid, SizingRequest request, GainLimits limits)
    {
        var bounds = new Dictionary<string, (int, double)>(StringComparer.Ordinal);
        List<Tried> failed = [];
        IReadOnlyList<SizingCandidate> candidates = grid.At(family.Base, family.Amplifier, family.Converter, family.Rate, family.Filter);
        if (candidates.Count == 0)
        {
            bounds[DesignKeys.Requirements.Fold] = (1, 0);
        }

        int evaluated = 0;
        foreach (SizingCandidate candidate in candidates)
        {
            Design design = candidate.Design;
            if (RuledOut(candidate, request) is { } rule)
            {
                (int count, double best) = bounds.GetValueOrDefault(rule.Key, (0, rule.Best));
                bounds[rule.Key] = (count + 1, rule.LeastIsBest ? Math.Min(best, rule.Best) : Math.Max(best, rule.Best));
                continue;
            }

            double total = TotalGain(design);
            if (limits.First < design.Amplifier.Gain || limits.Total < total)
            {
                continue;
            }

            if (MostInFamily <= evaluated)
            {
                break;
            }

            evaluated++;
            if (Evaluator.Judged(design) is not { } judged)
            {
                continue;
            }

            ResultId[] failing = [.. judged.Values.Where(result => result.Verdict.Kind == VerdictKind.Fail).Select(result => result.Id)];
            if (failing.Length == 0)
            {
                return new Walk(Describe(candidate, judged), failed, bounds, candidates.Count, evaluated);
            }

            failed.Add(new Tried(design, judged));
            // What amplifier, ground, rate and filter share stops the whole family, but not before it is seen without clipping: only then
            // is it known whether it stops it alone.
            if (!Array.Exists(failing, IsLevel) && Array.Exists(failing, IsShared))
            {
                break;
            }

            if (judged.Values.FirstOrDefault(result =>
                ResultIds.Levels.IsHeadroom(result.Id)) is { State: ResultState.Number, Verdict.Kind: VerdictKind.Fail } headroom)
            {
                Tighten(limits, headroom, design.Amplifier.Gain, total);
            }
            else if (failing.Contains(ResultIds.Levels.OffsetSurvived))
            {
                limits.First = Math.Min(limits.First, design.Amplifier.Gain * 0.999);
            }
        }

        return new Walk(null, failed, bounds, candidates.Count, evaluated);
    }

    private static bool IsLevel(ResultId id) => ResultIds.Levels.All.Has(id);

    /// <summary>Does not depend on the gain split, or only gets worse along the walk.</summary>
    private static bool IsShared(ResultId id) =>
        id == ResultIds.Mains.Total || id == ResultIds.Noise.BoardShare || ResultIds.Alias.All.Has(id) || ResultIds.Drive.All.Has(id)
            || ResultIds.Safety.All.Has(id);

    /// <summary>The nodes that the first stage's gain alone decides.</summary>
    private static readonly ResultId[] AmplifierHeadrooms =
        [ResultIds.Levels.Headroom(NodeId.AmplifierInnerPlus), ResultIds.Levels.Headroom(NodeId.AmplifierInnerMinus),
            ResultIds.Levels.Headroom(NodeId.Amplifier)];

    /// <summary>A level is a + b·G with a ≥ 0: where it is L and may be L*, the gain must not be above G·L*/L. Two per cent are left for
    /// what rate and filter do to noise and mains.</summary>
    private static void Tighten(GainLimits limits, Result headroom, double first, double total)
    {
        double factor = 1.02 * Math.Pow(10, headroom.Verdict.Margin!.Value / 20);
        if (AmplifierHeadrooms.Contains(headroom.Id))
        {
            limits.First = Math.Min(limits.First, Math.Max(first * factor, 0));
        }
        else
        {
            limits.Total = Math.Min(limits.Total, total * factor);
        }
    }

    private static double TotalGain(Design design) =>
        design.Stages.Where(stage =>
            stage.Role == StageRole.Gain).Aggregate(design.Amplifier.Gain, (gain, stage) => gain * stage.NominalGain);

    /// <summary>Bounds that need no network; the requirement's key and how near the candidate comes.</summary>
    private static (string Key, double Best, bool LeastIsBest)? RuledOut(SizingCandidate candidate, SizingRequest request)
    {
        Design design = candidate.Design;
        Requirements requirements = design.Requirements;
        double half = design.Supply.HalfRailVolts, g1 = design.Amplifier.Gain;
        double margin = Math.Max(design.Amplifier.OutputMargin.Volts, 0), signal = design.LargestSignal.Volts;

        // (V_s/2 − h)/G − V_sig is the offset that the first stage survives at best; every other node only lowers it.
        double survived = ((half - margin) / g1) - signal;
        survived = design.Stages.Any(stage => stage.Circuit().IsAcCoupled)
            ? survived
            : Math.Min(survived, (design.Converter.FullScale.Volts / 2 / g1) - signal);
        if (survived < requirements.Offset.Volts)
        {
            return (DesignKeys.Requirements.Offset, Math.Max(0, survived), false);
        }

        double total = TotalGain(design);
        double swing = Math.Min(design.Converter.FullScale.Volts / 2, half);
        if (swing < signal * total)
        {
            return (DesignKeys.Requirements.Headroom, 20 * Math.Log10(swing / (signal * total)), false);
        }

        VoltagePeakToPeak? noise = requirements.Noise ?? (design.Electrodes.Contact == ContactKind.Wet ? Judge.DefaultNoise(design) : null);

        // A tenth below: the band's edges are rounded off by the filters.
        if (noise is { } limit && limit.Volts < 0.9 * TradeConstants.NoisePeakToPeak * candidate.NoiseBound)
        {
            return (DesignKeys.Requirements.Noise, TradeConstants.NoisePeakToPeak * candidate.NoiseBound, true);
        }

        if (request.BatteryLife is { } wanted && design.Supply.BatteryCapacity is { } capacity)
        {
            double seconds = capacity.Coulombs * design.Supply.UsableShare.Fraction / SupplyReport.TotalAmperes(design);
            if (seconds < wanted.Seconds)
            {
                return ("sizing.battery-life", seconds, false);
            }
        }

        return request.Parts is { } most && most < candidate.Parts ? ("sizing.parts", candidate.Parts, true) : null;
    }

    private static SizedDesign Describe(SizingCandidate candidate, Dictionary<ResultId, Result> judged)
    {
        Design design = candidate.Design;
        Result tightest = judged.Values.Where(result =>
            result.Verdict.Margin is not null && result.Verdict.Limit is { SiValue: not 0 }).MinBy(Spare) ?? judged.Values.First();
        Result mains = judged[ResultIds.Mains.Total];
        var evaluation = new Evaluation(design);
        return new SizedDesign(
            Named(design), VoltageRms.FromVolts(evaluation.Noise.Total),
            VoltageRms.FromVolts(evaluation.Noise.WithoutExcess).NoisePeakToPeak, Current.FromAmperes(SupplyReport.TotalAmperes(design)),
            candidate.Parts,
            Decibels.FromVoltageRatio(Math.Max(1e-9, mains.Verdict.Limit!.SiValue / Math.Max(1e-18, mains.Si))),
            $"{tightest.Name}: {tightest.Verdict.Because}")
        {
            Summary = Summary(design),
        };
    }

    /// <summary>What is left of the limit, as a share; decibels, degrees and bits by their own scale.</summary>
    private static double Spare(Result result) => result.Verdict.Limit switch
    {
        Decibels => result.Verdict.Margin!.Value / 20,
        BitCount => result.Verdict.Margin!.Value / 4,
        var limit => result.Verdict.Margin!.Value / Math.Abs(limit!.SiValue),
    };

    private static Design Named(Design design) =>
        DesignFields.WithoutStaleRanges(design) with { Name = design.Name.Length == 0 || design.Name == new Design().Name
            ? "sized from requirements"
            : design.Name };

    private static string Summary(Design design)
    {
        string gains = string.Join(" × ",
            new[] { QuantityText.FormatTrimmed(design.Amplifier.Gain, "1", 3) }.Concat(design.Stages.Where(stage =>
                stage.Role == StageRole.Gain).Select(stage => QuantityText.FormatTrimmed(stage.NominalGain, "1", 3))));
        Stage[] sections = [.. design.Stages.Where(stage => stage.Role == StageRole.LowPass)];
        int order = sections.Sum(stage => stage.Circuit().Capacitors);
        string filter = design.Converter.Kind == ConverterKind.DeltaSigma
            ? "RC at the pin"
            : $"order {order} {sections.MaxBy(stage => stage.Circuit().Capacitors)?.Word ?? "Sallen-Key"}";
        string ground = design.Electrodes.Ground is null
            ? "no ground electrode"
            : design.GroundDrive.Kind == GroundKind.Driven
            ? $"driven ground {QuantityText.FormatPart(design.GroundDrive.UnityGainFrequency)}"
            : "passive ground";
        return $"{design.Amplifier.Card}, gain {gains}, {filter}, {design.Converter.Card} at {QuantityText.FormatPart(design.Converter.Rate)}, {ground}";
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

    /// <summary>Requirements that bounds decide on, in the order of the search: grounds, filters, then <see cref="RuledOut"/>.</summary>
    private static readonly string[] BoundOrder =
        [DesignKeys.Requirements.PhaseMargin, DesignKeys.Requirements.Fold, DesignKeys.Requirements.Offset,
            DesignKeys.Requirements.Headroom, DesignKeys.Requirements.Noise,
            "sizing.battery-life", "sizing.parts"];

    private static List<Obstacle> Obstacles(Walk[] walks, SizingRequest request, bool isAnyFound)
    {
        var stopped = new Dictionary<string, int>(StringComparer.Ordinal);
        var alone = new Dictionary<string, Result>(StringComparer.Ordinal);
        var nearest = new Dictionary<string, Result>(StringComparer.Ordinal);
        Tried[] all = [.. walks.SelectMany(walk => walk.Failed)];
        foreach (Tried tried in all)
        {
            Result[] failing = [.. tried.Judged.Values.Where(result => result.Verdict.Kind == VerdictKind.Fail)];
            foreach (Result result in failing)
            {
                string key = result.Verdict.Requirement!;
                stopped[key] = stopped.GetValueOrDefault(key) + 1;
                Keep(nearest, key, result);
                if (failing.Length == 1)
                {
                    Keep(alone, key, result);
                }
            }
        }

        List<Obstacle> obstacles = [.. stopped.Select(pair =>
            OfResult(pair.Key, pair.Value, nearest[pair.Key], alone.GetValueOrDefault(pair.Key)))];
        foreach (IGrouping<string, (string Key, int Count, double Best)> bound in walks.SelectMany(walk =>
            walk.Bounds.Select(pair => (pair.Key, pair.Value.Count, pair.Value.Best))).GroupBy(row => row.Key, StringComparer.Ordinal))
        {
            if (!stopped.ContainsKey(bound.Key))
            {
                obstacles.Add(OfBound(bound.Key, bound.Sum(row => row.Count), bound.Min(row => row.Best), bound.Max(row => row.Best),
                    request));
            }
        }

        // Some combination meets each requirement: nothing needs to be relaxed.
        if (isAnyFound)
        {
            return [.. obstacles.Select(obstacle => obstacle with { Relaxation = null }).OrderByDescending(obstacle => obstacle.Stopped)];
        }

        // The bounds stand in the order in which a combination meets them. Each but the last that stopped any has let some through; the
        // last has stopped all that were left, unless some were worked out in full.
        string? last = all.Length == 0
            ? BoundOrder.LastOrDefault(key =>
                obstacles.Exists(obstacle => string.Equals(obstacle.Requirement, key, StringComparison.Ordinal)))
            : null;
        bool StopsTheRest(Obstacle obstacle) =>
            all.Length == 0
                ? string.Equals(obstacle.Requirement, last, StringComparison.Ordinal)
                : stopped.GetValueOrDefault(obstacle.Requirement) == all.Length;

        return
        [
            .. obstacles.Select(obstacle =>
                StopsTheRest(obstacle) || alone.ContainsKey(obstacle.Requirement) ? obstacle : obstacle with { Relaxation = null })
                .OrderByDescending(StopsTheRest).ThenByDescending(obstacle =>
                    obstacle.Relaxation is not null).ThenByDescending(obstacle => obstacle.Stopped),
        ];
    }

    private static void Keep(Dictionary<string, Result> best, string key, Result result)
    {
        if (!best.TryGetValue(key, out Result? old)
            || (old.Verdict.Margin ?? double.NegativeInfinity) < (result.Verdict.Margin ?? double.NegativeInfinity))
        {
            best[key] = result;
        }
    }

    private static Obstacle OfResult(string key, int count, Result nearest, Result? alone)
    {
        string text = $"{nearest.Name}: {QuantityText.Format(nearest.Verdict.Limit)} asked, {QuantityText.Format(nearest.Value)} reached at best among those stopped";
        bool mayRelax = alone is { State: ResultState.Number } && !ResultIds.Safety.All.Has(alone.Id)
            && key.StartsWith("requirements.", StringComparison.Ordinal);
        return new Obstacle(key, count, text, mayRelax
            ? $"{key} = {QuantityText.Format(Rounded(alone!), alone!.Unit)} alone would let a design through"
            : null);
    }

    /// <summary>Rounded to three digits towards the looser side.</summary>
    private static double Rounded(Result result)
    {
        double value = result.Si, scale = Math.Pow(10, Math.Floor(Math.Log10(Math.Max(1e-300, Math.Abs(value)))) - 2);
        return (result.Verdict.LimitIsGreatest ? Math.Ceiling(value / scale) : Math.Floor(value / scale)) * scale;
    }

    private static Obstacle OfBound(string key, int count, double least, double greatest, SizingRequest request) => key switch
    {
        DesignKeys.Requirements.Offset => new(key, count,
            $"the first stage clips: {QuantityText.Format(request.Fixed.Requirements.Offset)} of electrode offset asked, {QuantityText.Format(greatest, "V")} survived at best among those stopped",
            "raise supply.lowest, or ask less of requirements.offset"),
        DesignKeys.Requirements.PhaseMargin => new(key, count,
            $"driven grounds that are not stable over all loads: {QuantityText.Format(request.Fixed.Requirements.PhaseMargin)} asked, {QuantityText.Format(greatest, "°")} at best among those stopped",
            null),
        DesignKeys.Requirements.Headroom => new(key, count,
            "the largest signal does not fit between the rails or into the converter with that much gain", null),
        DesignKeys.Requirements.Noise => new(key, count,
            $"the noise floor of parts and protection resistors: {QuantityText.Format(VoltagePeakToPeak.FromVolts(least))} at best among those stopped",
            null),
        DesignKeys.Requirements.Fold => new(key, count, "no filter of up to order 5 reaches the attenuation at that rate", null),
        "sizing.battery-life" => new(key, count,
            $"{QuantityText.Format(request.BatteryLife)} asked, {QuantityText.Format(Duration.FromSeconds(greatest))} reached at best among those stopped",
            "a larger battery, or less supply.other-current"),
        _ => new(key, count, $"{request.Parts} parts allowed, {QuantityText.FormatNumber(least)} needed at least among those stopped",
            $"sizing.parts = {QuantityText.FormatTrimmed(least, "1", 6)}"),
    };
}
