using FrontEnd.Filters;
using FrontEnd.Quantities;

namespace FrontEnd.DesignedFilters;

/// <summary>Digital notches at the mains and its harmonics.</summary>
/// <param name="Answer">The wish and the sections.</param>
/// <param name="Figures">Widths, depths, droop, ringing.</param>
/// <param name="Words">What finite words do to them.</param>
public sealed record DesignedNotches(NotchAnswer Answer, NotchesFigures Figures, WordStudy Words) : DesignedFilter
{
    /// <param name="answer">One that has notches.</param>
    public static DesignedNotches Of(NotchAnswer answer) =>
        new(answer, answer.Figures, WordStudy.Of(answer.Sections!)) { Findings = answer.Findings };
}

/// <summary>A comb over mains periods.</summary>
/// <param name="Answer">The wish and the comb.</param>
/// <param name="Figures">Depths, droop, delay, cost with running sums.</param>
/// <param name="TapMultiplies">Multiplications per sample by its taps, in floating point.</param>
public sealed record DesignedComb(CombAnswer Answer, CombFigures Figures, int TapMultiplies) : DesignedFilter
{
    /// <summary>Divisions per sample with running sums.</summary>
    public const int Divisions = 1;

    /// <param name="answer">One that has a comb.</param>
    public static DesignedComb Of(CombAnswer answer) =>
        new(answer, answer.Figures, new FirFilter(answer.Comb!.Taps(), answer.Comb.Rate).Multiplies) { Findings = answer.Findings };
}

/// <summary>An FIR of constant delay.</summary>
/// <param name="Answer">The wish, the taps and what they reach.</param>
/// <param name="Settled">Time after which a step has settled entirely.</param>
/// <param name="Cost">What it costs.</param>
public sealed record DesignedFir(FirAnswer Answer, Duration Settled, FirCost Cost) : DesignedFilter
{
    /// <param name="answer">One that has a filter.</param>
    public static DesignedFir Of(FirAnswer answer) =>
        new(answer, Duration.FromSeconds((answer.Filter!.Length - 1) / answer.Wish.Rate.Hertz), FirCost.Of(answer.Filter))
        {
            Findings = answer.Findings,
        };
}

/// <summary>A sinc decimator and the taps that make its band flat.</summary>
/// <param name="Answer">The wish, the decimator and the taps.</param>
/// <param name="Figures">Losses before and after the taps.</param>
/// <param name="InputRate">Rate in front of the decimator.</param>
/// <param name="SettlingWithTaps">Output samples until a step has settled behind the taps.</param>
/// <param name="Cost">What the taps cost.</param>
public sealed record DesignedSinc(SincAnswer Answer, SincFigures Figures, Frequency InputRate, int SettlingWithTaps, FirCost Cost)
    : DesignedFilter
{
    /// <param name="answer">One that has a decimator.</param>
    public static DesignedSinc Of(SincAnswer answer)
    {
        SincDecimator sinc = answer.Sinc!;
        FirFilter taps = answer.Compensation!;
        return new(
            answer, answer.Figures, Frequency.FromHertz(answer.Wish.Rate.Hertz * sinc.Ratio), sinc.SettlingSamples + taps.Length - 1,
            FirCost.Of(taps))
        {
            Findings = answer.Findings,
        };
    }
}
