using FrontEnd.Catalogue;
using FrontEnd.Identity;
using FrontEnd.Reporting;
using FrontEnd.Results;
using FrontEnd.Spread;

namespace FrontEnd.Unknowns;

/// <summary>Figures of many designs as one result each: where they lie, and what is to be said against the limit.</summary>
/// <param name="design">What is known.</param>
/// <param name="draws">The draws that could be worked out.</param>
/// <param name="places">Where the unknown values lie in each of them.</param>
/// <param name="corners">The corners.</param>
/// <param name="correlations">How strongly each unknown value moves each figure.</param>
internal sealed class Intervals(PartlyKnownDesign design, DrawnFigures[] draws, double[][] places, DrawnFigures[] corners, Correlations correlations)
{
    /// <summary>What differs by less, as a share, is rounding.</summary>
    private const double Same = 1e-9;

    private readonly DrawnFigures[] _all = [.. draws, .. corners];

    /// <summary>The result as it stands over all designs; one that rests on nothing unknown stays the number that it is.</summary>
    public Result Of(Result like)
    {
        Result over = OnlyIf(like.Id) is { } condition ? Over(like with { Name = $"{like.Name}, {condition}" }) : Over(like);
        return like.Id == ResultIds.Levels.LeastHeadroom ? WorstNode.Named(over, _all.Select(one => one.Worst)) : over;
    }

    /// <summary>Of a figure that not every design has, what the others are lacking: "only if ground-drive.kind is driven"; null where all have
    /// it.</summary>
    private string? OnlyIf(ResultId id)
    {
        bool[] has = Array.ConvertAll(draws, one => one.Of(id) is not null);
        int with = has.Count(one => one);
        if (with == 0 || with == has.Length)
        {
            return null;
        }

        for (int i = 0; i < design.Unknowns.Count; i++)
        {
            UnknownField unknown = design.Unknowns[i];
            if (unknown.IsChoice || unknown.Field.Kind == Fields.FieldKind.Count)
            {
                object[] those = [.. Values(true).Distinct()], others = [.. Values(false).Distinct()];
                if (those.Length == 1 && !others.Contains(those[0]))
                {
                    return $"only if {unknown.Key} is {Fields.FieldText.Format(unknown.Field, those[0])}";
                }
            }

            IEnumerable<object> Values(bool having) => places.Where((_, draw) => has[draw] == having).Select(place => unknown.At(place[i]));
        }

        return "only for some unknown values";
    }

    private Result Over(Result like)
    {
        Result bare = like with { Numbers = null, Hand = null, ShareOfVariance = null, LandsInBand = null };
        double[] values = Values(_all, like.Id), drawn = values[..Count(draws, like.Id)];
        if (values.Length == 0)
        {
            return Word(like, bare);
        }

        double least = values.Min(), greatest = values.Max();
        if (greatest - least <= Same * Math.Abs(greatest) || (double.IsInfinity(least) && double.IsInfinity(greatest)))
        {
            return (like.State is ResultState.Number or ResultState.Unbounded ? like : bare) with { Verdict = Judged(like) };
        }

        return bare with
        {
            Value = null, Text = null, State = ResultState.Interval, FindingCode = null,
            Interval = new(least, greatest, Percentile(drawn, 5, least), Percentile(drawn, 95, greatest)), Verdict = Judged(like),
        };
    }

    /// <summary>Results that the design in the middle does not have, such as a driven ground's where it is not known whether the ground is
    /// driven.</summary>
    public IEnumerable<Result> Others(IReadOnlyList<Result> middle, double[][] places, DrawnFigures?[] drawn)
    {
        HashSet<ResultId> have = [.. middle.Select(result => result.Id)];
        for (int draw = 0; draw < drawn.Length; draw++)
        {
            if (drawn[draw] is not { } figures || figures.Ids.All(have.Contains))
            {
                continue;
            }

            foreach (Result result in WorstNode.Apart(Evaluator.Evaluate(PartlyKnownEvaluator.Drawn(design, places[draw])).Results))
            {
                if (have.Add(result.Id))
                {
                    yield return Of(result);
                }
            }
        }
    }

    /// <summary>The numbers of a figure, the draws' first.</summary>
    private static double[] Values(DrawnFigures[] designs, ResultId id)
    {
        var values = new double[designs.Length];
        int count = 0;
        foreach (DrawnFigures one in designs)
        {
            double value = one.Number(id);
            if (!double.IsNaN(value))
            {
                values[count++] = value;
            }
        }

        return values[..count];
    }

    private static int Count(DrawnFigures[] designs, ResultId id)
    {
        int count = 0;
        foreach (DrawnFigures one in designs)
        {
            count += double.IsNaN(one.Number(id)) ? 0 : 1;
        }

        return count;
    }

    private Result Word(Result like, Result bare)
    {
        string[] words = [.. _all.Select(one => one.Of(like.Id)?.Word).OfType<string>().Distinct(StringComparer.Ordinal)];
        return words.Length switch
        {
            0 or 1 => like with { Verdict = Judged(like) },
            <= 4 => bare with { Text = string.Join(" or ", words), Verdict = Judged(like) },
            _ => bare with { Text = "not known", Verdict = Judged(like) },
        };
    }

    /// <summary>Met where every design meets it, not met where none does, else open. Nothing that protects the wearer is met on an unknown
    /// resistor or voltage.</summary>
    private Verdict Judged(Result like)
    {
        if (like.Verdict.Requirement is null)
        {
            return like.Verdict;
        }

        DrawnFigures[] with = [.. _all.Where(one => one.Of(like.Id) is not null)];
        bool?[] met = [.. with.Select(one => Met(one.Of(like.Id)!.Value, like.Verdict))];
        if (Array.TrueForAll(met, one => one is null))
        {
            return like.Verdict;
        }

        like = like with { Verdict = Limited(like.Verdict, [.. with.Select(one => one.Of(like.Id)!.Value).Where(one => one.IsAsked)]) };
        if (like.Verdict.LimitSpan is { OrNone: true })
        {
            return WhetherLimited(like.Verdict);
        }

        bool all = Array.TrueForAll(met, one => one is not false), none = Array.TrueForAll(met, one => one is not true);
        bool isSafety = ResultIds.Safety.All.Has(like.Id);

        // The greatest figure and the least limit may meet though no draw has both.
        bool overlap = like.Verdict.LimitSpan is { } span && Overlap(Values(_all, like.Id), span, like.Verdict.LimitIsGreatest, none);
        if (!overlap && (none || (all && !(isSafety && design.LeavesSafetyOpen))))
        {
            VerdictKind kind = none ? VerdictKind.Fail : VerdictKind.Pass;
            return Of(kind, like.Verdict, () => (none ? "not met" : "met") + " whatever the unknown values are within their ranges");
        }

        UnknownField? sets = like.Verdict.LimitSpan is null ? null : design.Find(like.Verdict.Requirement!), decided = sets ?? DecidedBy(like.Id, isSafety);
        Closing closing = sets is not null ? Closing.Asked(sets) : Closing.Of(design, like, decided, with, met);
        return Of(VerdictKind.Open, like.Verdict, () => overlap && (all || none)
            ? "the figure and its limit both rest on what is not known, and their ranges overlap"
            : all
            ? "met with the usual values, but what protects the wearer is not known"
            : $"met by {met.Count(one => one is true)} of {met.Length} designs that the unknown values allow") with
        {
            DecidedBy = decided?.Key, ClosesBy = closing.Whole, ClosesInShort = closing.InShort, ClosesInPlainWords = closing.InPlainWords,
        };
    }

    /// <summary>The verdict with the limit that the designs have; where they have several, or some have none, with the ends of it and no single one, which
    /// would be that of a design in the middle.</summary>
    private Verdict Limited(Verdict like, DrawnFigures.Figure[] asked)
    {
        like = Array.Find(asked, one => one.Limit is not null) is { Limit: not null } judged ? like with { LimitIsGreatest = judged.LimitIsGreatest } : like;
        IQuantity[] limits = [.. asked.Select(one => one.Limit).OfType<IQuantity>()];
        if (limits.Length == 0)
        {
            return like;
        }

        if (design.Find(like.Requirement!) is { Field.Quantity: { } kind } sets)
        {
            return like with { Limit = null, LimitSpan = new(kind.FromSi(sets.Least), kind.FromSi(sets.Greatest), false) };
        }

        IQuantity least = limits.MinBy(one => one.SiValue)!, greatest = limits.MaxBy(one => one.SiValue)!;
        bool orNone = limits.Length < asked.Length, isOne = greatest.SiValue - least.SiValue <= Same * Math.Abs(greatest.SiValue);
        return isOne && !orNone ? like with { Limit = least } : like with { Limit = null, LimitSpan = new(least, greatest, orNone) };
    }

    /// <summary>True where some value and some limit, each within its ends, would give the other answer.</summary>
    private static bool Overlap(double[] values, LimitSpan span, bool isGreatest, bool none)
    {
        (double least, double greatest) = (values.Min(), values.Max());
        return (isGreatest, none) switch
        {
            (true, true) => least <= span.Greatest.SiValue,
            (true, false) => span.Least.SiValue < greatest,
            (false, true) => span.Least.SiValue <= greatest,
            (false, false) => least < span.Greatest.SiValue,
        };
    }

    /// <summary>Open where it is not known whether a limit applies at all: what has no limit is neither met nor failed.</summary>
    private static Verdict WhetherLimited(Verdict like)
    {
        string closes = $"set {like.Requirement}: without it a limit applies to some of the designs that the unknown values allow, and none is set for the others";
        return Of(VerdictKind.Open, like, () => "whether a limit applies depends on what is not known") with
        {
            ClosesBy = closes, ClosesInShort = $"set {like.Requirement}", ClosesInPlainWords = "say how much is allowed: a limit applies to some of the devices that this may be, and none is set for the others",
        };
    }

    private static Verdict Of(VerdictKind kind, Verdict like, Func<string> because) => new(kind, because)
    {
        Requirement = like.Requirement, Limit = like.Limit, LimitSpan = like.LimitSpan, Wanted = like.Wanted, LimitIsGreatest = like.LimitIsGreatest, LimitSource = like.LimitSource,
    };

    /// <summary>Null for what no limit is set for in this design, and for what is not judged in it and has no number to hold against the
    /// others' limit.</summary>
    private static bool? Met(DrawnFigures.Figure figure, Verdict like) => figure.Verdict switch
    {
        VerdictKind.Pass or VerdictKind.Marginal => true,
        VerdictKind.Fail => false,
        _ when !figure.IsAsked && like.Limit is { } limit && !double.IsNaN(figure.Value) =>
            like.LimitIsGreatest ? figure.Value <= limit.SiValue : limit.SiValue <= figure.Value,
        _ => null,
    };

    /// <summary>The input that moves the figure most; of a safety figure, of those that protect.</summary>
    private UnknownField? DecidedBy(ResultId id, bool isSafety)
    {
        double[] strength = correlations.Of(id);
        int[] candidates = [.. Enumerable.Range(0, strength.Length).Where(i => !isSafety || design.Unknowns[i].Field.Safety)];
        return candidates.Length == 0 ? null : design.Unknowns[candidates.MaxBy(i => Math.Abs(strength[i]))];
    }

    private static double Percentile(double[] values, double percent, double none)
    {
        if (values.Length == 0)
        {
            return none;
        }

        using var sorting = new Sorting(values.Length);
        sorting.Sort(values, values.Length);
        double at = Statistics.Percentile(sorting, values.Length, percent);
        return double.IsNaN(at) ? double.PositiveInfinity : at;
    }
}
