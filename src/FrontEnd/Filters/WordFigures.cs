namespace FrontEnd.Filters;

/// <summary>What finite words do to a digital filter: coefficients, round-off, dead band, overflow.</summary>
public sealed record WordFigures
{
    /// <summary>The filter before and after rounding.</summary>
    public required QuantisedFilter Filter { get; init; }

    /// <summary>The form it is computed in.</summary>
    public required FilterForm Form { get; init; }

    /// <summary>Largest distance that a pole moves in the z plane.</summary>
    public double PoleMovement => Filter.Details.Count == 0 ? 0 : Filter.Details.Max(d => d.PoleMovement);

    /// <summary>Where its rounded poles stand.</summary>
    public PoleStanding Standing => Filter.Standing;

    /// <summary>Gain at 0 Hz as rounded; null with a pole there.</summary>
    public double? DcGain => Filter.DcGain;

    /// <summary>The design has gain 0 at 0 Hz and the rounded filter has not.</summary>
    public bool DcZeroLost => Filter.Details.Any(d => d.DcZeroLost);

    /// <summary>A coefficient did not fit into its word.</summary>
    public bool Saturated => Filter.Details.Any(d => d.Saturated);

    /// <summary>Round-off at the output, rms, in LSB of the sample; null for floating point, whose round-off follows the signal, and where
    /// a pole is not inside the circle.</summary>
    public double? RoundOff { get; init; }

    /// <summary>Floating point: round-off at the output, rms, as a share of a large constant at the input; null for fixed point and where a
    /// pole is not inside the circle.</summary>
    public double? ConstantRoundOff { get; init; }

    /// <summary>Level above which the output cannot hang, in LSB of the sample: a bound, all sections together; null likewise.</summary>
    public double? DeadBand { get; init; }

    /// <summary>From the input to each section's output; empty where a pole is not inside the circle.</summary>
    public IReadOnlyList<OverflowNorms> Overflow { get; init; } = [];

    /// <summary>Bits of headroom above full scale that rule out overflow at every section's output.</summary>
    public int HeadroomBits => Overflow.Count == 0 ? 0 : Overflow.Max(n => n.SafeBits);

    /// <summary>Bits below the LSB that bring the round-off down to the size of one rounding; 0 for floating point.</summary>
    public int ExtraBits { get; init; }

    /// <summary>Every rounded pole is inside the unit circle.</summary>
    public bool IsStable => Standing == PoleStanding.InsideCircle;

    /// <summary>What to do about it; null where nothing is wrong. Which remedy goes with which failure: common practice, no
    /// source.</summary>
    public string? Remedy => Standing switch
    {
        PoleStanding.OutsideCircle or PoleStanding.OnCircle => WordMessages.LongerWords,
        _ when Saturated => WordMessages.LessFraction,
        _ when DcZeroLost => WordMessages.KeepDcZero,
        _ when 0 < ExtraBits && Filter.Format is FixedFormat format => WordMessages.MoreStateBits(
            ExtraBits, format.StateBits - HeadroomBits - format.StateFraction - ExtraBits,
            format.StateFraction + ExtraBits <= FixedFormat.MostStateFraction),
        _ when Filter.Format is SingleFormat && Form == FilterForm.TransposedDirectII && Filter.Ideal.Sections.Any(IsNearDc) =>
            WordMessages.DirectForm,
        _ => null,
    };

    /// <summary>All but the limit cycles, which are sought by <see cref="SearchLimitCycles"/>.</summary>
    public static WordFigures Of(SecondOrderSections sections, NumberFormat format, FilterForm form)
    {
        QuantisedFilter filter = QuantisedFilter.Of(sections, format);
        var figures = new WordFigures { Filter = filter, Form = form };
        if (!figures.IsStable)
        {
            return figures;
        }

        figures = figures with { Overflow = FrontEnd.Filters.RoundOff.Overflow(filter.Sections) };
        if (format is not FixedFormat fixedPoint)
        {
            return figures.InForm(form);
        }

        RoundOffPaths paths = FrontEnd.Filters.RoundOff.Paths(filter);
        return figures with
        {
            RoundOff = Math.Sqrt(paths.Variance(fixedPoint)),
            DeadBand = FrontEnd.Filters.RoundOff.HangingAt(paths.StateBound, fixedPoint.StateFraction),
            ExtraBits = Math.Max(0, (int)Math.Ceiling(paths.ExtraBits) - fixedPoint.StateFraction),
        };
    }

    /// <summary>The same in another form: coefficients, poles and headroom do not change with it, and in whole numbers nothing does.</summary>
    public WordFigures InForm(FilterForm form) => Filter.Format is FixedFormat || !IsStable
        ? this with { Form = form }
        : this with
        {
            Form = form,
            ConstantRoundOff = Math.Sqrt(FrontEnd.Filters.RoundOff.FloatVariance(Filter.Sections, form, 1, Filter.Format)),
        };

    /// <summary>The largest limit cycle that a run of the whole filter finds, at its output; only for fixed point. Takes up to some tenths of
    /// a second, so it is no part of <see cref="Of"/>.</summary>
    public LimitCycleSearch SearchLimitCycles()
    {
        if (Filter.Format is not FixedFormat format)
        {
            throw new InvalidOperationException("Only whole numbers have limit cycles of their own.");
        }

        return CycleSearch.Of(Filter.Details, format, MostSteps);
    }

    // About a third of a second (measured: 6 ns a step).
    private const long MostSteps = 50_000_000;

    // Σh² of 1/A above 1000: poles within about a per cent of z = 1 (judgement; no source).
    private static bool IsNearDc(Biquad s) => s.DcGain == 0 && Math.Abs(1 + s.A1 + s.A2) < 1e-2;
}
