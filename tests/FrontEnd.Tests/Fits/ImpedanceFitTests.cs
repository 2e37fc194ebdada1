using System.Numerics;
using FrontEnd.Electrodes;
using FrontEnd.Quantities;
using FsCheck.Xunit;
using Xunit;

namespace FrontEnd.Tests.Fits;

/// <summary>An electrode's resistances and capacitances from a measured spectrum.</summary>
public sealed class ImpedanceFitTests
{
    private static ImpedancePoint[] Points(double low, double high, int count, Func<double, Complex> z) =>
        [.. Enumerable.Range(0, count).Select(at => low * Math.Pow(high / low, at / (count - 1.0))).Select(f => new ImpedancePoint(Frequency.FromHertz(f), z(2 * Math.PI * f)))];

    private static Complex Pair(double r, double tau, double w) => r / new Complex(1, w * tau);

    private static double Seconds(double corner) => 1 / (2 * Math.PI * corner);

    private static Func<Complex> Meter(Random random, double share) => () => 1 + (share * new Complex(random.NextDouble() - 0.5, random.NextDouble() - 0.5) * 2);

    [Property(MaxTest = 60)]
    public void Fit_OneExactPair_IsTheModel(int seed)
    {
        var random = new Random(seed);
        double r = Math.Pow(10, 3 + (4 * random.NextDouble())), corner = Math.Pow(10, 3 * random.NextDouble()), series = random.Next(3) == 0 ? 0 : r * Math.Pow(10, -4 * random.NextDouble());
        ImpedanceFit fit = ImpedanceFit.Of(Points(corner / 30, corner * 100, random.Next(6, 40), w => series + Pair(r, Seconds(corner), w)));
        Assert.Equal(1, fit.Pairs);
        Assert.Equal(1, fit.Electrode.ContactResistance.Ohms / r, 1e-6);
        Assert.Equal(1, fit.Electrode.ContactCapacitance.Farads * r / Seconds(corner), 1e-6);
        Assert.Equal(series, fit.Electrode.SeriesResistance.Ohms, (1e-5 * series) + (1e-6 * r));
        Assert.True(fit.Rms.Fraction < 1e-5 && fit.IsSeen);
    }

    [Property(MaxTest = 40)]
    public void Fit_TwoExactPairs_IsTheModel(int seed)
    {
        var random = new Random(seed);
        double r = Math.Pow(10, 4 + (2 * random.NextDouble())), second = r * (0.1 + (0.6 * random.NextDouble())), low = 1 + (3 * random.NextDouble()), high = low * (20 + (100 * random.NextDouble()));
        bool isSlow = random.Next(2) == 0;
        (double a, double b) = isSlow ? (low, high) : (high, low);
        ImpedanceFit fit = ImpedanceFit.Of(Points(0.1, 1e4, 30, w => (r / 100) + Pair(r, Seconds(a), w) + Pair(second, Seconds(b), w)));
        Assert.Equal(2, fit.Pairs);
        Assert.Equal(1, fit.Electrode.ContactResistance.Ohms / r, 1e-5);
        Assert.Equal(1, fit.Electrode.ContactCapacitance.Farads * r / Seconds(a), 1e-5);
        Assert.Equal(1, fit.Electrode.SecondResistance!.Value.Ohms / second, 1e-5);
        Assert.Equal(1, fit.Electrode.SecondCapacitance!.Value.Farads * second / Seconds(b), 1e-5);
        Assert.Equal(1, fit.Electrode.SeriesResistance.Ohms * 100 / r, 1e-4);
    }

    /// <summary>A meter's errors are no second pair, and move the values by no more than some times what they are.</summary>
    [Property(MaxTest = 60)]
    public void Fit_OnePairMeasured_StaysOne(int seed)
    {
        var random = new Random(seed);
        double corner = 5 + (40 * random.NextDouble());
        Func<Complex> error = Meter(random, 0.03);
        ImpedanceFit fit = ImpedanceFit.Of(Points(0.5, 5e3, random.Next(12, 60), w => (1e3 + Pair(2e5, Seconds(corner), w)) * error()));
        Assert.Equal(1, fit.Pairs);
        Assert.Equal(1, fit.Electrode.ContactResistance.Ohms / 2e5, 0.05);
        Assert.Equal(1, fit.Electrode.ContactCapacitance.Farads * 2e5 / Seconds(corner), 0.06);
        Assert.InRange(fit.Rms.Fraction, 0.01, 0.04);
    }

    [Property(MaxTest = 40)]
    public void Fit_TwoPairsMeasured_AreBothFound(int seed)
    {
        var random = new Random(seed);
        Func<Complex> error = Meter(random, 0.02);
        ImpedanceFit fit = ImpedanceFit.Of(Points(0.2, 1e4, 30, w => (500 + Pair(1.5e5, Seconds(5), w) + Pair(4e4, Seconds(500), w)) * error()));
        Assert.Equal(2, fit.Pairs);
        Assert.Equal(1, fit.Electrode.ContactResistance.Ohms / 1.5e5, 0.06);
        Assert.Equal(1, fit.Electrode.SecondResistance!.Value.Ohms / 4e4, 0.1);
        Assert.True(2 * fit.RmsOfTwo!.Value.Fraction < fit.RmsOfOne.Fraction);
    }

    /// <summary>A resistor's spectrum has no contact in it, whatever the meter's errors make of one; a pair among the points has.</summary>
    [Property(MaxTest = 40)]
    public void Contact_OfAResistanceAlone_IsNotSeen(int seed)
    {
        var random = new Random(seed);
        Func<Complex> error = Meter(random, 0.02);
        ImpedanceFit resistor = ImpedanceFit.Of(Points(1, 1e4, random.Next(6, 40), _ => 10e3 * error()));
        Assert.False(resistor.IsContactSeen);
        Assert.Equal(10e3, resistor.Alone.Ohms, 200.0);
        ImpedanceFit electrode = ImpedanceFit.Of(Points(1, 1e4, 20, w => (500 + Pair(5e4, Seconds(60), w)) * error()));
        Assert.True(electrode.IsContactSeen && electrode.RmsOfOne.Fraction < electrode.RmsOfAlone.Fraction / 2);
    }

    /// <summary>What a meter shows of the skin-electrode surrogate, 51 kΩ in parallel with 47 nF (AAMI TIR60): worked out apart from the program, TV-B2 of reference/electrodes, with a real part of 32545 Ω at 50 Hz.</summary>
    [Fact]
    public void Fit_SurrogateAsReferenceHasIt_GivesItsParts()
    {
        ImpedancePoint[] points =
        [
            .. Points(1, 1e3, 20, w => Pair(51e3, 51e3 * 47e-9, w)),
            new(Frequency.FromHertz(50), new Complex(32545, -Math.Sqrt((40740.0 * 40740) - (32545.0 * 32545)))),
        ];
        ImpedanceFit fit = ImpedanceFit.Of(points);
        Assert.Equal((1, 0), (fit.Pairs, fit.Electrode.SeriesResistance.Ohms));
        Assert.Equal(51e3, fit.Electrode.ContactResistance.Ohms, 5.0);
        Assert.Equal(47e-9, fit.Electrode.ContactCapacitance.Farads, 5e-12);
        Assert.True(fit.Worst.Left.Fraction < 1e-4);
    }

    /// <summary>Nothing that can be measured makes it throw: a resistor, a capacitor, a coil, points of chance.</summary>
    [Property(MaxTest = 40)]
    public void Fit_AnyPoints_Answers(int seed)
    {
        var random = new Random(seed);
        double size = Math.Pow(10, 9 * random.NextDouble());
        ImpedanceFit fit = ImpedanceFit.Of(random.Next(4) switch
        {
            0 => Points(1, 1e3, 10, _ => size),
            1 => Points(1, 1e3, 10, w => new Complex(0, -size / w)),
            2 => Points(1, 1e3, 10, w => new Complex(size, size * w)),
            _ => Points(1, 1e3, 3 + random.Next(20), _ => Complex.FromPolarCoordinates(size * (0.1 + random.NextDouble()), -random.NextDouble())),
        });
        Assert.True(double.IsFinite(fit.Rms.Fraction) && 0 <= fit.Electrode.SeriesResistance.Ohms);
    }
}
