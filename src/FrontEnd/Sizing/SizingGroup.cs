using FrontEnd.Amplifier;
using FrontEnd.Catalogue;
using FrontEnd.Converter;
using FrontEnd.Designs;
using FrontEnd.Identity;
using FrontEnd.Results;

namespace FrontEnd.Sizing;

/// <summary>What a walk through a family found and what stopped the rest.</summary>
/// <param name="Found">The family's design; null where none passes.</param>
/// <param name="Failed">Those that were worked out and do not.</param>
/// <param name="Bounds">How many a bound ruled out, by requirement, and the best of them.</param>
/// <param name="Contradictions">Candidates that contradict themselves: the first error of each.</param>
internal sealed record Walk(SizedDesign? Found, List<Tried> Failed, Dictionary<Limit, (int Count, double Best)> Bounds,
    List<Finding> Contradictions, int Candidates, int Evaluated);

/// <summary>A rate and a filter of a group.</summary>
internal sealed record Family(double Rate, int Filter);

/// <summary>The candidates of one amplifier, ground and converter, family by family.</summary>
/// <param name="Base">The design without them, on its ground.</param>
/// <param name="PhaseMargin">Least phase margin of its driven ground [°]; null where there is none.</param>
internal sealed record SizingGroup(Design Base, DifferentialAmplifier Amplifier, AnalogDigitalConverter Converter, double? PhaseMargin)
{
    /// <summary>Full evaluations that one family may take.</summary>
    private const int MostInFamily = 12;

    public IReadOnlyList<Family> Families { get; } =
    [
        .. from rate in SizingGrid.Rates(Converter, Base)
           from filter in SizingGrid.Filters(Converter)
           select new Family(rate, filter),
    ];

    public bool IsUnstable(SizingRequest request) => PhaseMargin is { } margin && margin < request.Fixed.Requirements.PhaseMargin.Degrees;

    /// <summary>True where the family's filter attenuates what folds enough.</summary>
    public bool Reaches(SizingGrid grid, Family family, SizingRequest request) =>
        grid.Reaches(Base, Converter, family.Rate, family.Filter, request.Fixed.Requirements.Fold.Value);

    public IReadOnlyList<SizingCandidate> Candidates(SizingGrid grid, Family family) =>
        grid.At(Base, Amplifier, Converter, family.Rate, family.Filter);

    /// <summary>One family after the other; what clips in one holds for the others too.</summary>
    public Walk[] Walk(SizingGrid grid, SizingRequest request, CancellationToken cancellation, Action? told = null)
    {
        var limits = new GainLimits();
        return
        [
            .. Families.Select(family =>
            {
                cancellation.ThrowIfCancellationRequested();
                Walk walk = Reaches(grid, family, request)
                    ? Follow(Candidates(grid, family), request, limits)
                    : new Walk(null, [], new() { [Limit.Find(DesignKeys.Requirements.Fold)!] = (1, 0) }, [], 0, 0);
                told?.Invoke();
                return walk;
            }),
        ];
    }

    private static Walk Follow(IReadOnlyList<SizingCandidate> candidates, SizingRequest request, GainLimits limits)
    {
        Dictionary<Limit, (int, double)> bounds = [];
        List<Tried> failed = [];
        List<Finding> contradictions = [];
        int evaluated = 0;
        foreach (SizingCandidate candidate in candidates)
        {
            if (RuledOut(candidate, request) is { } rule)
            {
                (int count, double best) = bounds.GetValueOrDefault(rule.Limit, (0, rule.Best));
                bounds[rule.Limit] = (count + 1, rule.Limit.IsGreatest ? Math.Min(best, rule.Best) : Math.Max(best, rule.Best));
                continue;
            }

            if (limits.Exclude(candidate))
            {
                continue;
            }

            if (MostInFamily <= evaluated)
            {
                break;
            }

            evaluated++;
            if (Tried.Of(candidate) is not { } tried)
            {
                // Rate and filters decide on it, which the family shares.
                contradictions.AddRange(DesignCheck.Run(candidate.Design).Where(finding => finding.Severity == Severity.Error).Take(1));
                break;
            }

            if (!tried.FailsForGood && !tried.Broken(request).Any())
            {
                return new Walk(SizedDesigns.Of(tried), failed, bounds, contradictions, candidates.Count, evaluated);
            }

            failed.Add(tried);
            if (EndsFamily(tried, request))
            {
                break;
            }

            limits.Learn(tried, request);
        }

        return new Walk(null, failed, bounds, contradictions, candidates.Count, evaluated);
    }

    /// <summary>The first bound that a candidate does not keep, and what it reaches of it at best; null where it keeps all.</summary>
    public static (Limit Limit, double Best)? RuledOut(SizingCandidate candidate, SizingRequest request)
    {
        foreach ((Limit limit, double best) in candidate.Bounds())
        {
            if (limit.IsBroken(request, best))
            {
                return (limit, best);
            }
        }

        return null;
    }

    /// <summary>True where what amplifier, ground, rate and filter share stops the whole family; but not before it is seen without
    /// clipping: only then is it known whether it stops it alone.</summary>
    public static bool EndsFamily(Tried tried, SizingRequest request)
    {
        string[] broken = [.. tried.Broken(request).Select(limit => limit.Key)];
        return !Array.Exists(broken, key => Levels.Contains(key)) && (tried.FailsForGood || Array.Exists(broken, key => Shared.Contains(key)));
    }

    private static readonly string[] Levels = [DesignKeys.Requirements.Offset, DesignKeys.Requirements.Headroom];

    /// <summary>Does not depend on the gain split, or only gets worse along the walk.</summary>
    private static readonly string[] Shared = [DesignKeys.Requirements.MainsAtElectrodes, DesignKeys.Requirements.Noise,
        DesignKeys.Requirements.Fold, DesignKeys.Requirements.PhaseMargin];
}

/// <summary>What clipping at one rate and filter tells about the others of the same amplifier, converter and ground: levels hardly depend
/// on either.</summary>
internal sealed class GainLimits
{
    /// <summary>The nodes that the first stage's gain alone decides.</summary>
    private static readonly ResultId[] AmplifierHeadrooms =
        [ResultIds.Levels.Headroom(NodeId.AmplifierInnerPlus), ResultIds.Levels.Headroom(NodeId.AmplifierInnerMinus),
            ResultIds.Levels.Headroom(NodeId.Amplifier)];

    private double _first = double.PositiveInfinity, _total = double.PositiveInfinity;

    public bool Exclude(SizingCandidate candidate) => _first < candidate.Design.Amplifier.Gain || _total < candidate.TotalGain;

    /// <summary>A level is a + b·G with a ≥ 0: where it is L and may be L*, the gain must not be above G·L*/L. Two per cent are left for
    /// what rate and filter do to noise and mains.</summary>
    public void Learn(Tried tried, SizingRequest request)
    {
        double first = tried.Design.Amplifier.Gain, asked = request.Fixed.Requirements.Headroom.Value;
        Result? headroom = tried.Judged.Values.FirstOrDefault(result => ResultIds.Levels.IsHeadroom(result.Id));
        if (headroom is { State: ResultState.Number } && headroom.Si < asked)
        {
            double factor = 1.02 * Math.Pow(10, (headroom.Si - asked) / 20);
            if (AmplifierHeadrooms.Contains(headroom.Id))
            {
                _first = Math.Min(_first, first * factor);
            }
            else
            {
                _total = Math.Min(_total, tried.Candidate.TotalGain * factor);
            }
        }
        else if (tried.Judged.TryGetValue(ResultIds.Levels.OffsetSurvived, out Result? offset) && offset.State == ResultState.Number
            && offset.Si < request.Fixed.Requirements.Offset.Volts)
        {
            _first = Math.Min(_first, first * 0.999);
        }
    }
}
