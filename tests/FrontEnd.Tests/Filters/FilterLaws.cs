using System.Numerics;
using FrontEnd.Filters;
using FrontEnd.Findings;
using FrontEnd.Quantities;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using Xunit;

namespace FrontEnd.Tests.Filters;

/// <summary>A legal filter: any family, shape, order and corners, with a sampling rate.</summary>
public sealed record FilterCase(Prototype Prototype, ResponseShape Shape, Frequency Rate)
{
    internal DigitalFilter Digital => FilterDesign.Digital(Prototype, Shape, Rate);

    internal AnalogFilter Analog => FilterDesign.Analog(Prototype, Shape);
}

/// <summary>Generates legal filters. Corners reach from 1/500 to 0.45 of the rate, orders up to 12 (6 for bands), ripple 0.1…3 dB, attenuation 20…90 dB.</summary>
public static class FilterCases
{
    public static Arbitrary<FilterCase> Filter() => Cases(Gen.Choose(0, 5)).ToArbitrary();

    internal static Gen<FilterCase> Cases(Gen<int> families) =>
        from family in families
        from shape in Gen.Choose(0, 3)
        from order in Gen.Choose(1, shape < 2 ? 12 : 6)
        from ripple in Gen.Choose(1, 30)
        from attenuation in Gen.Choose(20, 90)
        from low in Gen.Choose(2, 200)
        from width in Gen.Choose(10, 200)
        from rate in Gen.Elements(125.0, 250, 256, 500, 1000, 16000)
        select new FilterCase(Make(family, order, ripple / 10.0, attenuation), Shape(shape, low * rate / 1000, width * rate / 1000), Frequency.FromHertz(rate));

    internal static Prototype Make(int family, int order, double ripple, double attenuation) => family switch
    {
        0 => new ButterworthPrototype(order),
        1 => new ChebyshevPrototype(order, Decibels.FromStated(ripple)),
        2 => new InverseChebyshevPrototype(order, Decibels.FromStated(attenuation)),
        3 => new EllipticPrototype(order, Decibels.FromStated(ripple), Decibels.FromStated(attenuation)),
        4 => new BesselPrototype(order),
        5 => new CriticallyDampedPrototype(order),
        _ => throw new ArgumentOutOfRangeException(nameof(family), family, "The family is not handled."),
    };

    internal static ResponseShape Shape(int shape, double low, double width) => shape switch
    {
        0 => new LowPass(Frequency.FromHertz(low)),
        1 => new HighPass(Frequency.FromHertz(low)),
        2 => new BandPass(Frequency.FromHertz(low), Frequency.FromHertz(low + width)),
        3 => new BandStop(Frequency.FromHertz(low), Frequency.FromHertz(low + width)),
        _ => throw new ArgumentOutOfRangeException(nameof(shape), shape, "The shape is not handled."),
    };
}

/// <summary>Families whose corner is half power: Butterworth, Bessel, critically damped.</summary>
public static class HalfPowerCases
{
    public static Arbitrary<FilterCase> Filter() => FilterCases.Cases(Gen.Elements(0, 4, 5)).ToArbitrary();
}

/// <summary>Wishes near and far out: numbers between 1e-300 and 1e300 beside sensible ones, orders that no filter has, edges in any order.</summary>
public static class FarOut
{
    private static readonly Gen<double> Number = Gen.Frequency(
        (6, Gen.Choose(-100, 1000).Select(n => Math.Pow(10, n / 200.0))),
        (2, Gen.Choose(-100, 150).Select(n => Math.Pow(10, n / 10.0))),
        (1, Gen.Choose(-300, 300).Select(n => Math.Pow(10, n))),
        (1, Gen.Elements(0, -1, double.Epsilon, double.MaxValue, 1 - 1e-12, 1 + 1e-12, 1)));

    private static readonly Gen<Frequency> Hertz = Number.Select(Frequency.FromHertz);

    private static readonly Gen<int> Order = Gen.Frequency((8, Gen.Choose(1, 12)), (2, Gen.Choose(-1, 25)));

    public static Arbitrary<FilterWish> Wish() => (
        from family in Gen.Elements(Enum.GetValues<FilterFamily>())
        from shape in Gen.Elements(Enum.GetValues<FilterShape>())
        from order in Order
        from seeks in Gen.Choose(0, 1)
        from corners in Hertz.Two()
        from stops in Hertz.Two()
        from losses in Number.Two()
        from rate in Hertz
        from digital in Gen.Choose(0, 2)
        let band = shape is FilterShape.BandPass or FilterShape.BandStop
        select new FilterWish
        {
            Family = family,
            Shape = shape,
            Order = seeks == 0 ? order : null,
            StopEdges = seeks == 0 ? null : band ? Sorted(stops) : [stops.Item1],
            Corners = band ? Sorted(corners) : [corners.Item1],
            Ripple = Decibels.FromStated(losses.Item1),
            Attenuation = Decibels.FromStated(losses.Item2),
            Rate = digital == 0 ? null : rate,
        }).ToArbitrary();

    public static Arbitrary<FilterCase> Case() => (
        from family in Gen.Choose(0, 5)
        from shape in Gen.Choose(0, 3)
        from order in Order
        from losses in Number.Two()
        from edges in Gen.Two(Number).Where(e => double.IsFinite(e.Item1 + e.Item2))
        from rate in Hertz
        select new FilterCase(FilterCases.Make(family, order, losses.Item1, losses.Item2), FilterCases.Shape(shape, edges.Item1, edges.Item2), rate)).ToArbitrary();

    private static Frequency[] Sorted((Frequency First, Frequency Second) edges) => [.. new[] { edges.First, edges.Second }.OrderBy(f => f.Hertz)];
}

/// <summary>Statements that hold for every legal filter. Each was seen to fail with the code broken on purpose.</summary>
public class FilterLaws
{
    [Property(Arbitrary = [typeof(FilterCases)])]
    public void Digital_AnyLegalDesign_HasPolesInsideTheCircle(FilterCase c)
    {
        Assert.All(c.Digital.ZeroPoleGain.Poles, p => Assert.True(Complex.Abs(p) < 1, $"{p}"));
        Assert.True(c.Digital.Sections.IsStable);
    }

    [Property(Arbitrary = [typeof(FilterCases)])]
    public void Analog_AnyLegalDesign_HasPolesInTheLeftHalfPlane(FilterCase c) =>
        Assert.All(c.Analog.ZeroPoleGain.Poles, p => Assert.True(p.Real < 0, $"{p}"));

    /// <summary>The gain in the middle of the pass band (0 Hz, half the rate, geometric centre of the prewarped edges) is 1, for even orders with ripple −ripple.</summary>
    [Property(Arbitrary = [typeof(FilterCases)])]
    public void Digital_AnyLegalDesign_HasItsGainAtTheReference(FilterCase c)
    {
        double rate = c.Rate.Hertz;
        double reference = c.Shape switch
        {
            HighPass => rate / 2,
            BandPass b => rate / Math.PI * Math.Atan(Math.Sqrt(Math.Tan(Math.PI * b.Low.Hertz / rate) * Math.Tan(Math.PI * b.High.Hertz / rate))),
            _ => 0,
        };
        double? ripple = c.Prototype switch { ChebyshevPrototype p => p.Ripple.Value, EllipticPrototype p => p.Ripple.Value, _ => null };
        double expected = c.Prototype.Order % 2 == 0 && ripple is { } r ? Math.Pow(10, -r / 10) : 1;
        // Coefficients near 2 hold 1 + a1 + a2 to 1e-16/(πf/fs)², the power of 12 sections to ten times that.
        Assert.Equal(expected, c.Digital.PowerResponse(reference), 1e-7);
    }

    [Property(Arbitrary = [typeof(HalfPowerCases)])]
    public void Digital_HalfPowerFamilies_HaveHalfPowerAtEveryStatedCorner(FilterCase c) =>
        Assert.All(c.Shape.Corners, corner => Assert.Equal(0.5, c.Digital.PowerResponse(corner.Hertz), 1e-7));

    [Property(Arbitrary = [typeof(HalfPowerCases)])]
    public void Analog_HalfPowerFamilies_HaveHalfPowerAtEveryStatedCorner(FilterCase c) =>
        Assert.All(c.Shape.Corners, corner => Assert.Equal(0.5, c.Analog.PowerResponse(corner.Hertz), 1e-10));

    /// <summary>Corner meaning of the other families: loss = ripple at a ripple edge, = attenuation at a stop edge.</summary>
    [Property(Arbitrary = [typeof(FilterCases)])]
    public void Digital_RippleAndStopFamilies_MeetTheirLossAtEveryStatedCorner(FilterCase c)
    {
        double? loss = c.Prototype switch
        {
            ChebyshevPrototype p => p.Ripple.Value,
            EllipticPrototype p => p.Ripple.Value,
            InverseChebyshevPrototype p => p.Attenuation.Value,
            _ => null,
        };
        if (loss is { } decibels)
        {
            Assert.All(c.Shape.Corners, corner => Assert.Equal(1, c.Digital.PowerResponse(corner.Hertz) * Math.Pow(10, decibels / 10), 1e-5));
        }
    }

    /// <summary>No gain above 1 anywhere, and no loss beyond the ripple within the pass band.</summary>
    [Property(Arbitrary = [typeof(FilterCases)])]
    public void Digital_AnyLegalDesign_NeverGainsAndKeepsItsRipple(FilterCase c)
    {
        DigitalFilter filter = c.Digital;
        double floor = c.Prototype switch
        {
            ChebyshevPrototype p => Math.Pow(10, -p.Ripple.Value / 10),
            EllipticPrototype p => Math.Pow(10, -p.Ripple.Value / 10),
            InverseChebyshevPrototype => 0,
            _ => 0.5,
        };
        for (int i = 0; i <= 300; i++)
        {
            double f = c.Rate.Hertz / 2 * i / 300;
            double power = filter.PowerResponse(f);
            Assert.True(power <= 1 + 1e-7, $"{power} at {f} Hz");
            if (IsPassed(c.Shape, f))
            {
                Assert.True(floor * (1 - 1e-6) <= power, $"{power} at {f} Hz is below {floor}");
            }
        }
    }

    [Property(Arbitrary = [typeof(FilterCases)])]
    public void Elliptic_StopBand_NeverRisesAboveItsAttenuation(FilterCase c)
    {
        if (c.Prototype is EllipticPrototype elliptic)
        {
            double floor = Math.Pow(10, -elliptic.Attenuation.Value / 10);
            Assert.Equal(floor, elliptic.PowerResponse(elliptic.StopEdge), floor * 1e-9);
            for (int i = 1; i <= 200; i++)
            {
                Assert.True(elliptic.PowerResponse(elliptic.StopEdge * Math.Pow(1.03, i)) <= floor * (1 + 1e-9));
            }
        }
    }

    [Property(Arbitrary = [typeof(HalfPowerCases)])]
    public void LowPass_HalfPowerFamilies_FallMonotonically(FilterCase c)
    {
        double previous = 1 + 1e-12;
        for (int i = 1; i < 200; i++)
        {
            double power = c.Prototype.PowerResponse(0.02 * i);
            Assert.True(power <= previous * (1 + 1e-12), $"rises at {0.02 * i}");
            previous = power;
        }
    }

    /// <summary>The sections' product is the filter of record, gain included, on the unit circle and off it.</summary>
    [Property(Arbitrary = [typeof(FilterCases)])]
    public void Sections_Product_EqualsPolesAndZeros(FilterCase c)
    {
        DigitalFilter filter = c.Digital;
        foreach (double share in (ReadOnlySpan<double>)[0.01, 0.11, 0.23, 0.37, 0.49])
        {
            Complex z = Complex.FromPolarCoordinates(1, 2 * Math.PI * share);
            Complex record = filter.ZeroPoleGain.At(z);
            Assert.True(Complex.Abs(filter.Response(share * c.Rate.Hertz) - record) < 1e-9, $"{record} at {share}");
        }

        AnalogFilter analog = c.Analog;
        foreach (double ratio in (ReadOnlySpan<double>)[0.1, 0.9, 1.3, 7])
        {
            double f = ratio * c.Shape.Corners[0].Hertz;
            Assert.True(Complex.Abs(analog.Response(f) - analog.ZeroPoleGain.At(new Complex(0, 2 * Math.PI * f))) < 1e-10);
        }
    }

    /// <summary>Second way: the group delay from the coefficients against differences of the phase.</summary>
    [Property(Arbitrary = [typeof(FilterCases)])]
    public void GroupDelay_FromCoefficients_EqualsSlopeOfPhase(FilterCase c)
    {
        foreach (double share in (ReadOnlySpan<double>)[0.07, 0.19, 0.33, 0.46])
        {
            Check(c.Digital, share * c.Rate.Hertz, c.Rate.Hertz * 1e-6);
            Check(c.Analog, share * c.Rate.Hertz, c.Rate.Hertz * 1e-6);
        }

        static void Check(IFrequencyResponse filter, double f, double step)
        {
            Complex before = filter.Response(f - step);
            Complex after = filter.Response(f + step);
            // Where the response is below 1e-6 rounding turns its phase; at a zero on the axis it jumps.
            if (1e-6 < Math.Min(Complex.Abs(before), Complex.Abs(after)) && Math.Abs((after / before).Phase) < 1)
            {
                double slope = -(after / before).Phase / (4 * Math.PI * step);
                double delay = filter.GroupDelay(f);
                Assert.True(Math.Abs(slope - delay) < (1e-3 * Math.Abs(delay)) + (1e-3 / f), $"{slope} against {delay} at {f} Hz");
            }
        }
    }

    /// <summary>z maps back to s: every pole of the bilinear transform's image is the prewarped analogue pole.</summary>
    [Property(Arbitrary = [typeof(FilterCases)])]
    public void Bilinear_ResponseAtAFrequency_IsTheAnalogueResponseAtTheWarpedOne(FilterCase c)
    {
        ZeroPoleGain analog = c.Analog.ZeroPoleGain;
        ZeroPoleGain digital = analog.Bilinear(c.Rate.Hertz);
        foreach (double share in (ReadOnlySpan<double>)[0.05, 0.2, 0.4])
        {
            Complex expected = analog.At(new Complex(0, 2 * c.Rate.Hertz * Math.Tan(Math.PI * share)));
            Assert.True(Complex.Abs(digital.At(Complex.FromPolarCoordinates(1, 2 * Math.PI * share)) - expected) < 1e-9);
        }
    }

    /// <summary>A harder requirement never needs a lower order.</summary>
    [Property]
    public void MinimumOrder_MoreAttenuation_NeverLowersTheOrder(PositiveInt attenuation, PositiveInt more, NonNegativeInt family)
    {
        var f = (FilterFamily)(family.Get % 4);
        double first = 10 + (attenuation.Get % 60);
        double? low = MinimumOrder.Find(f, Requirement(1, first, 10, 20)).Order;
        double? high = MinimumOrder.Find(f, Requirement(1, first + (more.Get % 40), 10, 20)).Order;
        Assert.True(low <= high);
    }

    /// <summary>The filter chosen meets the requirement; one order less does not.</summary>
    [Property]
    public void MinimumOrder_AnyFamily_MeetsTheRequirementAndIsLeast(PositiveInt attenuation, PositiveInt ratio, NonNegativeInt family, bool digital)
    {
        var kind = (FilterFamily)(family.Get % 6);
        double stop = 10 * (1.2 + (ratio.Get % 30 / 10.0));
        FilterRequirement requirement = Requirement(1, 10 + (attenuation.Get % 60), 10, stop);
        var rate = Frequency.FromHertz(200);
        OrderChoice choice = MinimumOrder.Find(kind, requirement, digital ? rate : null);
        if (choice.Prototype is not { } prototype)
        {
            Assert.Contains(choice.Findings, f => f.Code is "FE0609");
            return;
        }

        Assert.True(Meets(prototype));
        // One order less with the same rule for the corner; order 1 has none below it.
        if (1 < prototype.Order && kind is not (FilterFamily.Bessel or FilterFamily.CriticallyDamped or FilterFamily.Butterworth))
        {
            Assert.False(Meets(prototype with { Order = prototype.Order - 1 }));
        }

        bool Meets(Prototype p)
        {
            IFrequencyResponse filter = digital ? FilterDesign.Digital(p, choice.Shape!, rate) : FilterDesign.Analog(p, choice.Shape!);
            double loss = -10 * Math.Log10(filter.PowerResponse(10));
            double attenuated = -10 * Math.Log10(filter.PowerResponse(stop));
            return loss < 1 + 1e-6 && requirement.Attenuation.Value - 1e-6 < attenuated;
        }
    }

    /// <summary>Band shapes with edges in no symmetry: every edge is met, on the worse side barely.</summary>
    [Property]
    public void MinimumOrder_BandShapes_MeetEveryEdge(PositiveInt lowGap, PositiveInt highGap, NonNegativeInt family, bool stop, bool digital)
    {
        var kind = (FilterFamily)(family.Get % 4);
        Frequency[] inner = [Frequency.FromHertz(20), Frequency.FromHertz(30)];
        Frequency[] outer = [Frequency.FromHertz(20 - (3 + (lowGap.Get % 13))), Frequency.FromHertz(30 + 3 + (highGap.Get % 40))];
        FilterRequirement requirement = stop
            ? new(new BandStop(outer[0], outer[1]), new BandStop(inner[0], inner[1]), Decibels.FromStated(1), Decibels.FromStated(30))
            : new(new BandPass(inner[0], inner[1]), new BandPass(outer[0], outer[1]), Decibels.FromStated(1), Decibels.FromStated(30));
        var rate = Frequency.FromHertz(250);
        OrderChoice choice = MinimumOrder.Find(kind, requirement, digital ? rate : null);
        if (choice.Prototype is not { } prototype)
        {
            Assert.True(FilterDesign.MostBandOrder < choice.Order);
            return;
        }

        Assert.True(Meets(prototype));
        if (1 < prototype.Order && kind != FilterFamily.Butterworth)
        {
            Assert.False(Meets(prototype with { Order = prototype.Order - 1 }));
        }

        bool Meets(Prototype p)
        {
            IFrequencyResponse filter = digital ? FilterDesign.Digital(p, choice.Shape!, rate) : FilterDesign.Analog(p, choice.Shape!);
            return requirement.Pass.Corners.All(f => -10 * Math.Log10(filter.PowerResponse(f.Hertz)) < 1 + 1e-6)
                && requirement.Stop.Corners.All(f => 30 - 1e-6 < -10 * Math.Log10(filter.PowerResponse(f.Hertz)));
        }
    }

    [Property]
    public void Notch_AnyLegalDesign_HasUnitGainAtZeroHertzAndHalfRate(PositiveInt centre, PositiveInt q)
    {
        Biquad notch = Notch.WithQ(Frequency.FromHertz(1 + (centre.Get % 120)), 1 + (q.Get % 60), Frequency.FromHertz(250));
        var sections = new SecondOrderSections([notch]);
        Assert.Equal(1, sections.PowerResponse(0, 250), 1e-10);
        Assert.Equal(1, sections.PowerResponse(125, 250), 1e-10);
    }

    [Property]
    public void Notch_AnyLegalDesign_HasItsWidthBetweenHalfPowerPointsExactly(PositiveInt centre, PositiveInt q)
    {
        double f0 = 5 + (centre.Get % 100);
        double width = f0 / (2 + (q.Get % 60));
        var filter = new SecondOrderSections([Notch.Coefficients(Frequency.FromHertz(f0), Frequency.FromHertz(width), Frequency.FromHertz(250))]);
        double low = MathExtra.Bisect(f => filter.PowerResponse(f, 250) - 0.5, 0, f0);
        double high = MathExtra.Bisect(f => filter.PowerResponse(f, 250) - 0.5, f0, 125);
        Assert.Equal(width, high - low, 1e-9 * f0);

        // The zeros stand on the circle but for the rounding of one coefficient, 2e-16, over the slope of the denominator there.
        double rounding = 4e-16 / (Math.Sin(2 * Math.PI * f0 / 250) * Math.Tan(Math.PI * width / 250));
        Assert.True(filter.PowerResponse(f0, 250) < rounding * rounding);
    }

    [Property]
    public void Comb_EveryHarmonic_IsNulledAndZeroHertzIsKept(PositiveInt period, PositiveInt periods)
    {
        int m = 2 + (period.Get % 30);
        var comb = new PeriodComb(m, 1 + (periods.Get % 20), Frequency.FromHertz(50.0 * m));
        Assert.Equal(1, comb.PowerResponse(0), 1e-12);
        for (int h = 1; h <= m / 2; h++)
        {
            Assert.True(comb.PowerResponse(50.0 * h) < 1e-24, $"harmonic {h}");
        }

        Assert.Equal(1, comb.Taps().Sum(), 1e-12);
    }

    [Property]
    public void Comb_ClosedForm_EqualsItsTaps(PositiveInt period, PositiveInt periods, PositiveInt frequency)
    {
        int m = 2 + (period.Get % 12);
        var rate = Frequency.FromHertz(50.0 * m);
        var comb = new PeriodComb(m, 1 + (periods.Get % 8), rate);
        var fir = new FirFilter(comb.Taps(), rate);
        double f = (frequency.Get % 1000) / 1000.0 * rate.Hertz / 2;
        Assert.True(Complex.Abs(comb.Response(f) - fir.Response(f)) < 1e-12);
        if (1e-6 < comb.PowerResponse(f))
        {
            Assert.Equal(fir.GroupDelay(f), comb.GroupDelay(f), 1e-9);
        }
    }

    /// <summary>The runner's response to a sine is what the response says.</summary>
    [Property(MaxTest = 30, Arbitrary = [typeof(HalfPowerCases)])]
    public void Runner_ImpulseTransformed_EqualsTheResponse(FilterCase c)
    {
        SecondOrderSections sections = c.Digital.Sections;
        int length = (int)Math.Min(200_000, 10 + (40 * (1 + sections.Count) / (1 - Math.Min(sections.PoleRadius, 0.9999))));
        double[] h = new double[length];
        h[0] = 1;
        new SectionRunner(sections).Run(h, h);
        double f = 0.13 * c.Rate.Hertz;
        Complex sum = 0;
        for (int n = 0; n < length; n++)
        {
            sum += h[n] * Complex.FromPolarCoordinates(1, -2 * Math.PI * 0.13 * n);
        }

        Assert.True(Complex.Abs(sum - c.Digital.Response(f)) < 1e-8, $"{sum} against {c.Digital.Response(f)}");
    }

    [Property(MaxTest = 30, Arbitrary = [typeof(HalfPowerCases)])]
    public void Runner_BlockByBlock_GivesTheSameBitsAsAtOnce(FilterCase c)
    {
        var random = new Random(1);
        double[] x = [.. Enumerable.Range(0, 1000).Select(_ => random.NextDouble() - 0.5)];
        double[] whole = new double[1000];
        double[] parts = new double[1000];
        new SectionRunner(c.Digital.Sections).Run(x, whole);
        var runner = new SectionRunner(c.Digital.Sections);
        runner.Run(x.AsSpan(0, 333), parts);
        runner.Run(x.AsSpan(333), parts.AsSpan(333));
        Assert.Equal(whole, parts);
    }

    /// <summary>The forecast of the round-off against the difference of a fixed-point runner and the same rounded coefficients in double precision.</summary>
    [Property(MaxTest = 25)]
    public void FixedRunner_AnyButterworth_StaysWithinItsRoundOffForecast(PositiveInt corner, PositiveInt order, NonNegativeInt fraction, bool high)
    {
        var rate = Frequency.FromHertz(250);
        int n = 1 + (order.Get % 4);
        var f = Frequency.FromHertz(3 + (corner.Get % 80));
        SecondOrderSections sections = (high ? Butterworth.HighPass(n, f, rate) : Butterworth.LowPass(n, f, rate)).Sections;
        var quantised = QuantisedFilter.Of(sections, NumberFormat.Q31 with { StateFraction = fraction.Get % 7 });
        const int Length = 8000;
        var random = new Random(corner.Get + (1000 * order.Get));
        int[] x = [.. Enumerable.Range(0, Length).Select(_ => random.Next(-20000, 20001))];
        int[] y = new int[Length];
        var runner = new FixedRunner(quantised);
        runner.Run(x, y);
        double[] exact = [.. x.Select(v => (double)v)];
        new SectionRunner(quantised.Sections).Run(exact, exact);
        double mean = Enumerable.Range(1000, Length - 1000).Average(i => y[i] - exact[i]);
        double measured = Enumerable.Range(1000, Length - 1000).Average(i => (y[i] - exact[i] - mean) * (y[i] - exact[i] - mean));
        double forecast = RoundOff.FixedVariance(quantised);
        Assert.Equal(0, runner.Overflows);
        // 7000 samples, correlated over the filter's memory of up to 30: the estimate scatters by 10 % rms.
        Assert.True(0.55 * forecast < measured && measured < 1.6 * forecast, $"measured {measured}, forecast {forecast}");
    }

    [Property(MaxTest = 30, Arbitrary = [typeof(HalfPowerCases)])]
    public void FixedRunner_BothForms_GiveTheSameBits(FilterCase c)
    {
        var quantised = QuantisedFilter.Of(c.Digital.Sections, NumberFormat.Q31 with { StateFraction = 4, StateBits = 32 });
        var random = new Random(7);
        int[] x = [.. Enumerable.Range(0, 600).Select(_ => random.Next(-10000, 10001))];
        int[] direct = new int[600];
        int[] transposed = new int[600];
        new FixedRunner(quantised, FilterForm.DirectI).Run(x, direct);
        new FixedRunner(quantised, FilterForm.TransposedDirectII).Run(x, transposed);
        Assert.Equal(direct, transposed);
    }

    /// <summary>L1 bounds every output; L∞ ≤ L1 and L2 ≤ L1.</summary>
    [Property(MaxTest = 30, Arbitrary = [typeof(HalfPowerCases)])]
    public void OverflowNorms_AnyFilter_BoundTheOutput(FilterCase c)
    {
        IReadOnlyList<OverflowNorms> norms = RoundOff.Overflow(c.Digital.Sections);
        Assert.All(norms, n => Assert.True(n.LInfinity <= n.L1 * (1 + 1e-9) && n.L2 <= n.L1 * (1 + 1e-9)));
        var random = new Random(3);
        double[] x = [.. Enumerable.Range(0, 2000).Select(_ => random.Next(2) == 0 ? -1.0 : 1.0)];
        new SectionRunner(c.Digital.Sections).Run(x, x);
        Assert.True(x.Max(Math.Abs) <= norms[^1].L1 * (1 + 1e-9));
    }

    /// <summary>Wherever a high-pass is rounded to words, its zero at 0 Hz stays.</summary>
    [Property(Arbitrary = [typeof(HalfPowerCases)])]
    public void Quantised_HighPass_KeepsItsZeroAtZeroHertz(FilterCase c)
    {
        if (c.Shape is HighPass or BandPass)
        {
            foreach (NumberFormat format in (NumberFormat[])[NumberFormat.Q15, NumberFormat.Q31, NumberFormat.Single])
            {
                var quantised = QuantisedFilter.Of(c.Digital.Sections, format);
                Assert.DoesNotContain(quantised.Details, d => d.DcZeroLost);
                Assert.Contains(quantised.Details, d => d.Rounded.B0 + d.Rounded.B1 + d.Rounded.B2 == 0);
            }
        }
    }

    /// <summary>A wish, however far out, is a filter with stable poles or a finding, never an exception.</summary>
    [Property(Arbitrary = [typeof(FarOut)], MaxTest = 2000)]
    public void Design_AnyWish_IsUsableOrAFinding(FilterWish wish)
    {
        FilterAnswer answer = wish.Design();
        Assert.True(answer.IsUsable || answer.Findings.Any(f => f.Severity == Severity.Error));
        Assert.True(!answer.IsUsable || answer.Findings.All(f => f.Severity != Severity.Error));
    }

    /// <summary>What <see cref="FilterDesign.Check"/> lets through can be built; what it finds wrong is refused.</summary>
    [Property(Arbitrary = [typeof(FarOut)], MaxTest = 2000)]
    public void Check_AnyFilter_TellsWhetherItCanBeBuilt(FilterCase c)
    {
        if (FilterDesign.Check(c.Prototype, c.Shape, c.Rate).Count == 0)
        {
            Assert.All(c.Digital.ZeroPoleGain.Poles, p => Assert.True(Complex.Abs(p) < 1));
        }
        else
        {
            Assert.Throws<ArgumentOutOfRangeException>(() => c.Digital);
        }
    }

    private static FilterRequirement Requirement(double ripple, double attenuation, double pass, double stop) =>
        new(new LowPass(Frequency.FromHertz(pass)), new LowPass(Frequency.FromHertz(stop)), Decibels.FromStated(ripple), Decibels.FromStated(attenuation));

    private static bool IsPassed(ResponseShape shape, double f) => shape switch
    {
        LowPass s => f <= s.Corner.Hertz,
        HighPass s => s.Corner.Hertz <= f,
        BandPass s => s.Low.Hertz <= f && f <= s.High.Hertz,
        BandStop s => f <= s.Low.Hertz || s.High.Hertz <= f,
        _ => throw new ArgumentOutOfRangeException(nameof(shape), shape, "The shape is not handled."),
    };
}
