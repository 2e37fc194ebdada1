using System.Numerics;

namespace FrontEnd.Filters;

/// <summary>A section in words of the trade.</summary>
/// <param name="Pole">f0; of a digital section that of the equivalent s = fs·ln z.</param>
/// <param name="Q">Quality of the pole pair; null for a section of first order.</param>
/// <param name="Zeros">Where its zeros lie.</param>
public sealed record SectionFigures(Frequency Pole, double? Q, SectionZeros Zeros);

/// <summary>What a designed filter does: sections, −3 dB points, attenuation where it was asked for, group delay.</summary>
/// <remarks>Losses are against the greatest gain, which every prototype has at 1 and no shape changes: it is known, and not read off a
/// grid.</remarks>
public sealed record FilterFigures
{
    private const int GridSteps = 4000;

    /// <summary>Poles and zeros, section by section.</summary>
    public required IReadOnlyList<SectionFigures> Sections { get; init; }

    /// <summary>Frequencies of half the greatest power, lowest first.</summary>
    public required IReadOnlyList<Frequency> HalfPower { get; init; }

    /// <summary>Loss at the edges of the pass band against the greatest gain.</summary>
    public required IReadOnlyList<LossAt> AtCorners { get; init; }

    /// <summary>Loss at the stop edges against the greatest gain; empty where none were given.</summary>
    public required IReadOnlyList<LossAt> AtStopEdges { get; init; }

    /// <summary>Where the group delay in the middle of the pass band is stated.</summary>
    public required Frequency Middle { get; init; }

    /// <summary>Group delay there.</summary>
    public required Duration DelayAtMiddle { get; init; }

    /// <summary>Largest group delay in the range searched.</summary>
    public required Duration LargestDelay { get; init; }

    /// <summary>Where it is.</summary>
    public required Frequency LargestDelayAt { get; init; }

    /// <summary>The figures of an answer that has a filter.</summary>
    /// <exception cref="ArgumentException">There is no filter: <see cref="FilterAnswer.IsUsable"/> is to be asked first.</exception>
    public static FilterFigures Of(FilterAnswer answer)
    {
        IFrequencyResponse filter = answer.Filter ?? throw new ArgumentException(
            $"The answer has no filter{(answer.Findings.Count == 0 ? "" : ": " + answer.Findings[0].Message)}; {nameof(answer.IsUsable)} is to be asked first.", nameof(answer));
        IReadOnlyList<Frequency> corners = answer.Wish.Corners;
        double? fs = answer.Wish.Rate?.Hertz;
        double lowest = corners.Min(c => c.Hertz), highest = corners.Max(c => c.Hertz);

        // Poles far from the corners, as of a Chebyshev with hardly a ripple, have their half power there.
        double[] poles = [.. answer.ZeroPoleGain!.Poles.Select(p => ResponseExtremes.InHertz(p, fs) is var (f, width)
            ? Math.Sqrt((f * f) + (width * width)) : 0)];
        double top = fs / 2 * (1 - 1e-9) ?? 100 * Math.Max(highest, poles.Max());
        double low = lowest / 100, from = Math.Min(low, Math.Max(poles.Min() / 100, low * 1e-9));
        double[] grid = [0, .. ResponseExtremes.AboutPoles(answer.ZeroPoleGain, from, top, fs, GridSteps)];
        (double slowestAt, double slowest) = ResponseExtremes.Greatest(filter.GroupDelay, grid);
        if (slowest * (1 - 1e-9) <= filter.GroupDelay(0))
        {
            // Flat to rounding, as a Bessel's: what is stated is where it begins.
            (slowestAt, slowest) = (0, filter.GroupDelay(0));
        }

        double middle = answer.Wish.Shape switch
        {
            FilterShape.LowPass or FilterShape.BandStop => low,
            FilterShape.HighPass => Math.Min(top, 10 * highest),
            FilterShape.BandPass => Math.Sqrt(lowest * highest),
            _ => throw new InvalidOperationException($"Shape {answer.Wish.Shape} is not handled."),
        };
        LossAt Loss(Frequency f)
        {
            double power = filter.PowerResponse(f.Hertz);
            return new LossAt(f, power < 1e-30 ? null : Decibels.FromStated(-10 * Math.Log10(power)));
        }

        return new FilterFigures
        {
            Sections = answer.Digital is { } digital
                ? [.. digital.Sections.Sections.Select(s => Of(s, digital.Rate.Hertz))]
                : [.. answer.Analog!.Sections.Sections.Select(
                    s => new SectionFigures(Frequency.FromHertz(s.PoleHertz), s.Q, SectionZeros.Of(s)))],
            HalfPower = [.. ResponseExtremes.Crossings(filter.PowerResponse, 0.5, grid).Select(Frequency.FromHertz)],
            AtCorners = [.. corners.Select(Loss)],
            AtStopEdges = [.. (answer.Wish.StopEdges ?? []).Select(Loss)],
            Middle = Frequency.FromHertz(middle),
            DelayAtMiddle = Duration.FromSeconds(filter.GroupDelay(middle)),
            LargestDelay = Duration.FromSeconds(slowest),
            LargestDelayAt = Frequency.FromHertz(slowestAt),
        };
    }

    private static SectionFigures Of(Biquad section, double rate)
    {
        Complex pole = Complex.Log(section.Poles.First) * rate;
        double size = Complex.Abs(pole);
        (double angular, double? q) = (size, null);
        if (section.A2 != 0 && section.Poles.First.Imaginary != 0)
        {
            q = size / (-2 * pole.Real);
        }
        else if (section.A2 != 0)
        {
            // Two real poles p1 and p2: f0 is their geometric mean, Q = √(p1·p2)/(p1 + p2).
            double first = -pole.Real, second = -(Complex.Log(section.Poles.Second) * rate).Real;
            angular = Math.Sqrt(Math.Abs(first * second));
            q = angular / (first + second);
        }

        return new SectionFigures(Frequency.FromHertz(angular / (2 * Math.PI)), q, SectionZeros.Of(section, rate));
    }
}
