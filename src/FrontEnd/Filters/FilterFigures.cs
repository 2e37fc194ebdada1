using System.Numerics;
using FrontEnd.Quantities;

namespace FrontEnd.Filters;

/// <summary>A pole pair in words of the trade.</summary>
/// <param name="Pole">f0 [Hz]; of a digital section that of the equivalent s = fs·ln z.</param>
/// <param name="Q">Quality; null for a section of first order.</param>
public sealed record SectionFigures(Frequency Pole, double? Q);

/// <summary>What a designed filter does: sections, −3 dB points, attenuation where it was asked for, group delay.</summary>
public sealed record FilterFigures
{
    public required IReadOnlyList<SectionFigures> Sections { get; init; }

    /// <summary>Frequencies of half the greatest power, lowest first.</summary>
    public required IReadOnlyList<Frequency> HalfPower { get; init; }

    /// <summary>Loss at the edges of the pass band against the greatest gain [dB].</summary>
    public required IReadOnlyList<(Frequency At, double? Decibels)> AtCorners { get; init; }

    /// <summary>Loss at the stop edges against the greatest gain [dB], null without bound; empty where none were given.</summary>
    public required IReadOnlyList<(Frequency At, double? Decibels)> AtStopEdges { get; init; }

    /// <summary>Where the group delay in the middle of the pass band is stated.</summary>
    public required Frequency Middle { get; init; }

    public required Duration DelayAtMiddle { get; init; }

    /// <summary>Largest group delay in the range searched, and where.</summary>
    public required Duration LargestDelay { get; init; }

    public required Frequency LargestDelayAt { get; init; }

    /// <summary>The figures of an answer that has a filter.</summary>
    public static FilterFigures Of(FilterAnswer answer)
    {
        IFrequencyResponse filter = answer.Filter ?? throw new ArgumentException("The answer has no filter.", nameof(answer));
        IReadOnlyList<Frequency> corners = answer.Wish.Corners;
        double lowest = corners.Min(c => c.Hertz), highest = corners.Max(c => c.Hertz);
        double top = answer.Wish.Rate is { } rate ? rate.Hertz / 2 * (1 - 1e-9) : 100 * highest;
        double low = lowest / 100;
        var grid = new List<double>();
        for (int i = 0; i <= 4000; i++)
        {
            grid.Add(i == 4000 ? top : low * Math.Exp(Math.Log(top / low) * i / 4000));
        }

        double greatest = grid.Max(filter.PowerResponse);
        double middle = answer.Wish.Shape switch
        {
            FilterShape.LowPass => low,
            FilterShape.HighPass => Math.Min(top, 10 * highest),
            FilterShape.BandPass => Math.Sqrt(lowest * highest),
            FilterShape.BandStop => low,
            _ => throw new InvalidOperationException($"Shape {answer.Wish.Shape} is not handled."),
        };
        double slowest = grid.MaxBy(filter.GroupDelay);
        (Frequency, double?) Loss(Frequency f)
        {
            double power = filter.PowerResponse(f.Hertz) / greatest;
            return (f, power < 1e-30 ? null : -10 * Math.Log10(power));
        }

        return new FilterFigures
        {
            Sections = answer.Digital is { } digital ? [.. digital.Sections.Sections.Select(s => Of(s, digital.Rate.Hertz))] : [.. answer.Analog!.Sections.Sections.Select(s => new SectionFigures(Frequency.FromHertz(s.PoleHertz), s.Q))],
            HalfPower = FrequencyResponse.Crossings(filter, Frequency.FromHertz(low), Frequency.FromHertz(top), FrequencyResponse.HalfPower, Math.Sqrt(greatest)),
            AtCorners = [.. corners.Select(Loss)],
            AtStopEdges = [.. (answer.Wish.StopEdges ?? []).Select(Loss)],
            Middle = Frequency.FromHertz(middle),
            DelayAtMiddle = Duration.FromSeconds(filter.GroupDelay(middle)),
            LargestDelay = Duration.FromSeconds(filter.GroupDelay(slowest)),
            LargestDelayAt = Frequency.FromHertz(slowest),
        };
    }

    private static SectionFigures Of(Biquad section, double rate)
    {
        Complex pole = Complex.Log(section.Poles.First) * rate;
        double size = Complex.Abs(pole);
        if (section.A2 == 0)
        {
            return new SectionFigures(Frequency.FromHertz(size / (2 * Math.PI)), null);
        }

        if (section.Poles.First.Imaginary != 0)
        {
            return new SectionFigures(Frequency.FromHertz(size / (2 * Math.PI)), size / (-2 * pole.Real));
        }

        // Two real poles p1 and p2: f0 is their geometric mean, Q = √(p1·p2)/(p1 + p2).
        double first = -pole.Real, second = -(Complex.Log(section.Poles.Second) * rate).Real;
        return new SectionFigures(Frequency.FromHertz(Math.Sqrt(Math.Abs(first * second)) / (2 * Math.PI)), Math.Sqrt(Math.Abs(first * second)) / (first + second));
    }
}
