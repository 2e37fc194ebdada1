using System.Numerics;
using FrontEnd.Quantities;
using FrontEnd.Text;

namespace FrontEnd.Filters;

/// <summary>Prototype × response -> filter. Any approximation with any shape, analogue or digital.</summary>
public static class FilterDesign
{
    /// <summary>Greatest order of a low-pass or high-pass.</summary>
    public const int MostOrder = 20;

    /// <summary>Greatest order of the prototype of a band shape; the filter has twice as many poles.</summary>
    public const int MostBandOrder = 10;

    /// <summary>What is wrong with a wish, all of it; empty where <see cref="Analog"/> or <see cref="Digital"/> will work.</summary>
    /// <param name="field">The design's key under which the filter stands, put into the findings.</param>
    public static IReadOnlyList<Finding> Check(Prototype prototype, ResponseShape shape, Frequency? rate = null, string field = "")
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
        return findings;
    }

    /// <summary>The analogue filter, corners in s = j2πf.</summary>
    public static AnalogFilter Analog(Prototype prototype, ResponseShape shape)
    {
        RequireLegal(prototype, shape, null);
        ZeroPoleGain filter = shape.Transform(prototype.Normalised(), Angular);
        return AnalogFilter.FromZeroPoleGain(filter, shape.ReferenceAngular(Angular)) with { Prototype = prototype, Shape = shape };
    }

    /// <summary>The digital filter by the bilinear transform, prewarped at every stated corner: each lands exactly where it was asked for.</summary>
    public static DigitalFilter Digital(Prototype prototype, ResponseShape shape, Frequency rate)
    {
        RequireLegal(prototype, shape, rate);
        double Warped(Frequency f) => Prewarp(f.Hertz, rate.Hertz);
        ZeroPoleGain filter = shape.Transform(prototype.Normalised(), Warped).Bilinear(rate.Hertz);
        double reference = shape.ReferenceAngular(Warped);
        Complex point = double.IsPositiveInfinity(reference) ? -1 : Complex.FromPolarCoordinates(1, 2 * Math.Atan2(reference, 2 * rate.Hertz));
        return DigitalFilter.FromZeroPoleGain(filter, rate, point) with { Prototype = prototype, Shape = shape };
    }

    /// <summary>The analogue angular frequency that the bilinear transform takes to f: ω = 2·fs·tan(π·f/fs) [rad/s].</summary>
    internal static double Prewarp(double hertz, double rate) => 2 * rate * Math.Tan(Math.PI * hertz / rate);

    internal static double Angular(Frequency frequency) => 2 * Math.PI * frequency.Hertz;

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

        if (0 < ripple && attenuation <= ripple)
        {
            findings.Add(FilterMessages.AttenuationNotAboveRipple(field, ripple.Value, attenuation.Value));
        }
    }

    private static void RequireLegal(Prototype prototype, ResponseShape shape, Frequency? rate)
    {
        IReadOnlyList<Finding> findings = Check(prototype, shape, rate);
        if (0 < findings.Count)
        {
            throw new ArgumentOutOfRangeException(nameof(shape), shape, findings[0].Message);
        }
    }
}
