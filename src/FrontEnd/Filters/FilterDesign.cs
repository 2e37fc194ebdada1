using System.Numerics;

namespace FrontEnd.Filters;

/// <summary>Prototype × response -> filter. Any approximation with any shape, analogue or digital.</summary>
internal static class FilterDesign
{
    /// <summary>Greatest order of a low-pass or high-pass.</summary>
    public const int MostOrder = 20;

    /// <summary>Greatest order of the prototype of a band shape; the filter has twice as many poles.</summary>
    public const int MostBandOrder = 10;

    /// <summary>Lowest and highest frequency a filter may name.</summary>
    internal static readonly (Frequency Least, Frequency Most) Frequencies = (Frequency.FromHertz(1e-6), Frequency.FromHertz(1e12));

    /// <summary>Least distance of a corner from 0 Hz and from half the rate, as a share of the rate, and least width of a band, as a share
    /// of its lower edge.</summary>
    /// <remarks>At θ = 2π·1e-7 a section's coefficients, near −2 and 1, carry 1 − a1 + a2 = θ² = 4e-13 to a share of 5e-4: nearer, double
    /// precision no longer holds the filter.</remarks>
    internal const double LeastShare = 1e-7;

    /// <summary>Least and greatest ripple, and least and greatest attenuation, that may be asked for [dB]. With more ripple than 60 dB the
    /// poles all but stand on the axis.</summary>
    internal static readonly (double Least, double Most) Ripples = (1e-6, 60), Attenuations = (1e-6, 400);

    /// <summary>What is wrong with a wish, all of it; empty where <see cref="Analog"/> or <see cref="Digital"/> will work.</summary>
    /// <param name="field">The design's key under which the filter stands, put into the findings.</param>
    public static IReadOnlyList<Finding> Check(Prototype prototype, ResponseShape shape, Frequency? rate = null, string field = "")
    {
        List<Finding> findings = CheckRanges(prototype, shape, rate, field);
        return findings.Count == 0 && Roots(prototype, shape, rate) is null ? [FilterMessages.OutOfNumbers(field)] : findings;
    }

    private static List<Finding> CheckRanges(Prototype prototype, ResponseShape shape, Frequency? rate, string field)
    {
        var findings = new List<Finding>();
        int most = shape.OrderFactor == 1 ? MostOrder : MostBandOrder;
        if (prototype.Order < 1 || most < prototype.Order)
        {
            findings.Add(FilterMessages.OrderOutOfRange(field, prototype.Order, most));
        }

        foreach (Frequency corner in shape.Corners)
        {
            if (corner.Hertz <= 0)
            {
                findings.Add(FilterMessages.CornerNotAboveZero(field, corner));
            }
            else if (rate is { } fs && fs.Hertz / 2 <= corner.Hertz)
            {
                findings.Add(FilterMessages.CornerNotBelowHalfRate(field, corner, fs));
            }
        }

        if (shape.Corners.Count == 2 && shape.Corners[1].Hertz <= shape.Corners[0].Hertz)
        {
            findings.Add(FilterMessages.EdgesNotInOrder(field, shape.Corners[0], shape.Corners[1]));
        }

        CheckLosses(prototype, field, findings);
        if (findings.Count == 0)
        {
            CheckNumbers(shape, rate, field, findings);
        }

        return findings;
    }

    /// <summary>The analogue filter, corners in s = j2πf.</summary>
    public static AnalogFilter Analog(Prototype prototype, ResponseShape shape) =>
        AnalogFilter.FromZeroPoleGain(
            LegalRoots(prototype, shape, null), shape.ReferenceAngular(Angular)) with { Prototype = prototype, Shape = shape };

    /// <summary>The digital filter by the bilinear transform, prewarped at every stated corner: each lands exactly where it was asked
    /// for.</summary>
    public static DigitalFilter Digital(Prototype prototype, ResponseShape shape, Frequency rate)
    {
        ZeroPoleGain roots = LegalRoots(prototype, shape, rate);
        double reference = shape.ReferenceAngular(f => Prewarp(f.Hertz, rate.Hertz));
        Complex point = double.IsPositiveInfinity(reference)
            ? -1
            : Complex.FromPolarCoordinates(1, 2 * Math.Atan2(reference, 2 * rate.Hertz));
        return DigitalFilter.FromZeroPoleGain(roots, rate, point) with { Prototype = prototype, Shape = shape };
    }

    /// <summary>Poles, zeros and gain of a filter whose ranges were checked; null where its numbers leave double precision all the
    /// same.</summary>
    private static ZeroPoleGain? Roots(Prototype prototype, ResponseShape shape, Frequency? rate)
    {
        ZeroPoleGain roots = rate is { } fs
            ? shape.Transform(prototype.Normalised(), f => Prewarp(f.Hertz, fs.Hertz)).Bilinear(fs.Hertz)
            : shape.Transform(prototype.Normalised(), Angular);
        return roots.IsSound(rate is not null) ? roots : null;
    }

    private static ZeroPoleGain LegalRoots(Prototype prototype, ResponseShape shape, Frequency? rate)
    {
        List<Finding> findings = CheckRanges(prototype, shape, rate, "");
        return findings.Count == 0 && Roots(prototype, shape, rate) is { } roots
            ? roots
            : throw new ArgumentOutOfRangeException(
                nameof(shape), shape, findings is [var first, ..] ? first.Message : FilterMessages.OutOfNumbers("").Message);
    }

    /// <summary>The analogue angular frequency that the bilinear transform takes to f: ω = 2·fs·tan(π·f/fs) [rad/s].</summary>
    internal static double Prewarp(double hertz, double rate) => 2 * rate * Math.Tan(Math.PI * hertz / rate);

    internal static double Angular(Frequency frequency) => 2 * Math.PI * frequency.Hertz;

    private static void CheckNumbers(ResponseShape shape, Frequency? rate, string field, List<Finding> findings)
    {
        foreach (Frequency f in rate is { } given ? [.. shape.Corners, given] : shape.Corners)
        {
            if (f.Hertz < Frequencies.Least.Hertz || Frequencies.Most.Hertz < f.Hertz)
            {
                findings.Add(FilterMessages.OutOfRange(
                    field, FilterMessages.Hertz(f), FilterMessages.Hertz(Frequencies.Least), FilterMessages.Hertz(Frequencies.Most)));
            }
            else if (rate is { } fs && Math.Min(f.Hertz, (fs.Hertz / 2) - f.Hertz) < LeastShare * fs.Hertz && f != fs)
            {
                string limit = f.Hertz < fs.Hertz / 4 ? $"0 Hz at a rate of {FilterMessages.Hertz(fs)}" : "half the sampling rate";
                findings.Add(FilterMessages.TooNear(field, $"filter corner {FilterMessages.Hertz(f)}", limit, LeastShare));
            }
        }

        if (shape.Corners is [var low, var high] && high.Hertz - low.Hertz < LeastShare * low.Hertz)
        {
            findings.Add(FilterMessages.TooNear(
                field, $"the upper band edge {FilterMessages.Hertz(high)}", $"the lower, {FilterMessages.Hertz(low)}", LeastShare));
        }
    }

    private static void CheckLosses(Prototype prototype, string field, List<Finding> findings)
    {
        (double? ripple, double? attenuation) = prototype switch
        {
            ChebyshevPrototype c => (c.Ripple.Value, (double?)null),
            InverseChebyshevPrototype c => ((double?)null, c.Attenuation.Value),
            EllipticPrototype e => (e.Ripple.Value, e.Attenuation.Value),
            _ => ((double?)null, (double?)null),
        };
        if (ripple is <= 0)
        {
            findings.Add(FilterMessages.RippleNotAboveZero(field, ripple.Value));
        }

        if (attenuation is <= 0)
        {
            findings.Add(FilterMessages.AttenuationNotAboveZero(field, attenuation.Value));
        }

        CheckLoss(ripple, Ripples, "a ripple", field, findings);
        CheckLoss(attenuation, Attenuations, "an attenuation", field, findings);
        if (0 < ripple && attenuation <= ripple)
        {
            findings.Add(FilterMessages.AttenuationNotAboveRipple(field, ripple.Value, attenuation.Value));
        }
    }

    private static void CheckLoss(double? loss, (double Least, double Most) range, string what, string field, List<Finding> findings)
    {
        if (0 < loss && (loss < range.Least || range.Most < loss))
        {
            findings.Add(FilterMessages.OutOfRange(field, $"{what} of {FilterMessages.Number(loss.Value)} dB",
                $"{FilterMessages.Number(range.Least)} dB", $"{range.Most} dB"));
        }
    }
}
