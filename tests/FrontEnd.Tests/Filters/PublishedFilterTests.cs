using System.Globalization;
using System.Numerics;
using FrontEnd.Filters;
using FrontEnd.Quantities;
using Xunit;

namespace FrontEnd.Tests.Filters;

/// <summary>Handbook tables and worked examples, reference/filters/published.csv. Misprints are asserted to differ.</summary>
public class PublishedFilterTests
{
    private static readonly Frequency OneRadian = Frequency.FromHertz(1 / (2 * Math.PI));

    public static TheoryData<string> SectionTables =>
        [.. FilterReference.Rows("published.csv").Select(r => r[0]).Where(id => id.Length == 8 && (id[3..6] is "BES" or "BUT" || id[3] == 'C')).Distinct(StringComparer.Ordinal)];

    [Theory]
    [MemberData(nameof(SectionTables))]
    public void SectionTable_Row_AgreesWithHandbook(string id)
    {
        int order = int.Parse(id[^2..], CultureInfo.InvariantCulture);
        (Prototype prototype, double ratio) = TablePrototype(id, order);
        AnalogFilter filter = FilterDesign.Analog(prototype, new LowPass(Frequency.FromHertz(OneRadian.Hertz / ratio)));
        // 1/(1 + a·S + b·S²): a = a1/a2, b = 1/a2; of first order 1/(1 + S/a2).
        double[] a = [.. filter.Sections.Sections.Select(s => s.IsFirstOrder ? 1 / s.A2 : s.A1 / s.A2)];
        double[] b = [.. filter.Sections.Sections.Select(s => s.IsFirstOrder ? 0 : 1 / s.A2)];
        double[] k = [.. a.Zip(b, SectionHalfPower)];
        double[] q = [.. filter.Sections.Sections.Select(s => s.Q ?? 0)];
        foreach ((string quantity, double[] actual) in (ReadOnlySpan<(string, double[])>)[("a", a), ("b", b), ("k", k), ("Q", q)])
        {
            Published published = FilterReference.Case(id, quantity);
            if (published.IsMisprint)
            {
                published.AssertDiffers(actual);
            }
            else
            {
                published.AssertEqual(actual);
            }
        }
    }

    [Theory]
    [InlineData("T4-BD", BesselNormalisation.Delay)]
    [InlineData("T4-BM", BesselNormalisation.Magnitude)]
    public void BesselPoles_PublishedTable_Agrees(string table, BesselNormalisation normalisation)
    {
        Published[] rows = [.. FilterReference.Cases(table).Where(c => c.Quantity is "re")];
        Assert.True(6 < rows.Length);
        foreach (Published re in rows)
        {
            int order = int.Parse(re.Id[^2..], CultureInfo.InvariantCulture);
            Published im = FilterReference.Case(re.Id, "im");
            Complex[] poles = [.. new BesselPrototype(order, normalisation).Normalised().Poles.Where(p => 0 <= p.Imaginary).OrderByDescending(p => p.Imaginary)];
            re.AssertEqual([.. poles.Select(p => p.Real)]);
            im.AssertEqual([.. poles.Select(p => p.Imaginary)]);
        }
    }

    [Fact]
    public void BesselPolynomial_SixthOrder_Agrees() =>
        FilterReference.Case("T4-BPOLY", "den").AssertEqual([.. BesselPolynomial.Coefficients(6).Reverse().Select(c => (double)c)]);

    [Theory]
    [InlineData("T4-O01", FilterFamily.Butterworth, 1, 40, 1, 2, 0)]
    [InlineData("T4-O05", FilterFamily.Chebyshev, 1, 40, 1, 2, 0)]
    [InlineData("T4-O07", FilterFamily.Butterworth, 3, 60, 0.2, 0.3, 2)]
    [InlineData("T4-O08", FilterFamily.Chebyshev, 3, 60, 0.2, 0.3, 2)]
    [InlineData("T4-O10", FilterFamily.Elliptic, 3, 60, 0.2, 0.3, 2)]
    [InlineData("T4-O11", FilterFamily.Butterworth, 3, 60, 200, 600, 0)]
    [InlineData("T4-O13", FilterFamily.Butterworth, 1, 80, 1, 1.2, 0)]
    [InlineData("T4-O14", FilterFamily.Chebyshev, 1, 80, 1, 1.2, 0)]
    public void MinimumOrder_PublishedRequirement_Agrees(string id, FilterFamily family, double ripple, double attenuation, double pass, double stop, double rate)
    {
        OrderChoice choice = MinimumOrder.Find(family, Requirement(ripple, attenuation, pass, stop), rate == 0 ? null : Frequency.FromHertz(rate));
        FilterReference.Case(id, "N").AssertEqual(choice.Order!.Value);
    }

    [Fact]
    public void MinimumOrder_FractionRoundedDownInPrint_Differs()
    {
        OrderChoice choice = MinimumOrder.Find(FilterFamily.Chebyshev, Requirement(1, 40, 1, 2));
        FilterReference.Case("T4-O06", "N").AssertDiffers(choice.Order!.Value);
        Assert.Equal(4.54, choice.Exact!.Value, 0.005);
    }

    [Fact]
    public void MinimumOrder_HalfPowerAt500_GivesOrderAndPoles()
    {
        OrderChoice choice = MinimumOrder.Find(FilterFamily.Butterworth, Requirement(FrequencyResponse.HalfPower.Value, 40, 500, 1000));
        FilterReference.Case("T4-O02", "N").AssertEqual(choice.Order!.Value);
        FilterReference.Case("T4-O02", "N_real").AssertEqual(choice.Exact!.Value);
        Complex[] poles = [.. FilterDesign.Analog(choice.Prototype!, choice.Shape!).ZeroPoleGain.Poles.Where(p => 0 <= p.Imaginary).OrderByDescending(p => p.Imaginary)];
        FilterReference.Case("T4-O02", "pole re").AssertEqual([.. poles.Select(p => p.Real)]);
        FilterReference.Case("T4-O02", "pole im").AssertEqual([.. poles.Select(p => p.Imaginary)]);
    }

    [Fact]
    public void MinimumOrder_TwoDecibelsAt20_GivesOrderAndCorner()
    {
        OrderChoice choice = MinimumOrder.Find(FilterFamily.Butterworth, Requirement(2, 10, 20, 30));
        FilterReference.Case("T4-O04", "N").AssertEqual(choice.Order!.Value);
        FilterReference.Case("T4-O04", "oc").AssertEqual(choice.Shape!.Corners[0].Hertz);
    }

    [Fact]
    public void Chebyshev_SixthOrderOneDecibel_SectionsAtRippleEdge()
    {
        AnalogFilter filter = FilterDesign.Analog(new ChebyshevPrototype(6, Decibels.FromStated(1)), new LowPass(Frequency.FromHertz(1)));
        FilterReference.Case("T4-F01", "f0").AssertEqual([.. filter.Sections.Sections.Reverse().Select(s => s.PoleHertz)]);
        FilterReference.Case("T4-F01", "Q").AssertEqual([.. filter.Sections.Sections.Reverse().Select(s => s.Q!.Value)]);
    }

    [Fact]
    public void Chebyshev_ThirdOrderTenthDecibel_SectionFrequencies()
    {
        AnalogFilter filter = FilterDesign.Analog(new ChebyshevPrototype(3, Decibels.FromStated(0.1)), new LowPass(Frequency.FromHertz(1)));
        FilterReference.Case("T4-F04", "f0/fc").AssertEqual(filter.Sections[1].PoleHertz, filter.Sections[0].PoleHertz);
        FilterReference.Case("T4-F04", "Q").AssertEqual(filter.Sections[1].Q!.Value);
    }

    /// <summary>This quotation counts 3 dB from the top of the ripple, the section tables from the gain at 0 Hz: 1.9432 against 1.9625 for an even order.</summary>
    [Fact]
    public void Chebyshev_SecondOrderTenthDecibel_QuotationHasDigitsTransposed()
    {
        var prototype = new ChebyshevPrototype(2, Decibels.FromStated(0.1));
        AnalogFilter filter = FilterDesign.Analog(prototype, new LowPass(Frequency.FromHertz(1)));
        Frequency corner = Assert.Single(FrequencyResponse.Crossings(filter, Frequency.FromHertz(0.1), Frequency.FromHertz(10), FrequencyResponse.HalfPower, reference: 1));
        FilterReference.Case("T4-C01", "ratio").AssertDiffers(corner.Hertz);
        Assert.Equal(1.9625, prototype.Minus3DbOverRippleEdge, 5e-5);
    }

    [Fact]
    public void BandPass_SixthOrderButterworth_SectionData()
    {
        // 1 kHz and 100 Hz wide: edges about the geometric centre.
        double low = (Math.Sqrt(1e4 + 4e6) - 100) / 2;
        AnalogFilter filter = FilterDesign.Analog(new ButterworthPrototype(3), new BandPass(Frequency.FromHertz(low), Frequency.FromHertz(low + 100)));
        AnalogSection[] sections = [.. filter.Sections.Sections.OrderBy(s => s.PoleHertz)];
        FilterReference.Case("T4-F05", "f0").AssertEqual([.. sections.Select(s => s.PoleHertz)]);
        FilterReference.Case("T4-F05", "Q").AssertEqual([.. sections.Select(s => s.Q!.Value)]);
    }

    [Fact]
    public void DigitalButterworth_FifthOrder_Polynomials()
    {
        DigitalFilter filter = Butterworth.LowPass(5, Frequency.FromHertz(0.4), Frequency.FromHertz(2));
        FilterReference.Case("T4-F07", "b").AssertEqual(Multiply(filter.Sections.Sections.Select(s => new[] { s.B0, s.B1, s.B2 }), 6));
        FilterReference.Case("T4-F07", "a").AssertEqual(Multiply(filter.Sections.Sections.Select(s => new[] { 1, s.A1, s.A2 }), 6));
    }

    [Fact]
    public void Elliptic_FifthOrder_Polynomials()
    {
        AnalogFilter filter = FilterDesign.Analog(new EllipticPrototype(5, Decibels.FromStated(3), Decibels.FromStated(26)), new LowPass(OneRadian));
        double[] numerator = Multiply(filter.Sections.Sections.Select(s => new[] { s.B2, s.B1, s.B0 }), 6);
        double[] denominator = Multiply(filter.Sections.Sections.Select(s => new[] { s.A2, s.A1, s.A0 }), 6);
        FilterReference.Case("T4-F08", "num").AssertEqual(numerator[4], numerator[2], numerator[0]);
        FilterReference.Case("T4-F08", "den").AssertEqual([.. denominator.Reverse()]);
    }

    [Fact]
    public void Bilinear_AnalogNotch_Agrees()
    {
        double w = Math.Sqrt(.174075);
        double re = -.184606 / 2;
        double im = Math.Sqrt(.174075 - (re * re));
        ZeroPoleGain digital = new ZeroPoleGain([new(0, w), new(0, -w)], [new(re, im), new(re, -im)], 1).Bilinear(0.5);
        SecondOrderSections sections = DigitalFilter.FromZeroPoleGain(digital, Frequency.FromHertz(0.5), 1).Sections;
        Biquad s = sections[0];
        FilterReference.Case("T4-F10", "b").AssertEqual(s.B0, s.B1, s.B2);
        FilterReference.Case("T4-F10", "a").AssertEqual(1, s.A1, s.A2);
    }

    [Fact]
    public void Bilinear_WithoutPrewarp_SinglePole()
    {
        ZeroPoleGain digital = new ZeroPoleGain([], [-0.2 * Math.PI], 0.2 * Math.PI).Bilinear(1);
        FilterReference.Case("T4-F11", "b0").AssertEqual(digital.Gain);
        FilterReference.Case("T4-F11", "pole").AssertEqual(digital.Poles[0].Real);
    }

    [Fact]
    public void Bilinear_ResonanceAtFourRadians_LandsAtQuarterRateForHalfSecond()
    {
        double period = FilterReference.Case("T4-F13", "T").Values[0];
        ZeroPoleGain digital = new ZeroPoleGain([], [new(0, 4), new(0, -4)], 1).Bilinear(1 / period);
        Assert.Equal(Math.PI / 2, digital.Poles[0].Phase, 1e-12);
    }

    [Fact]
    public void Requirement_AnalogButterworth_GivesWorkedSections()
    {
        OrderChoice choice = MinimumOrder.Find(FilterFamily.Butterworth, Requirement(7, 16, 0.2 * Math.PI, 0.3 * Math.PI, radians: true));
        FilterReference.Case("T4-I01", "N").AssertEqual(choice.Order!.Value);
        AnalogFilter filter = FilterDesign.Analog(choice.Prototype!, choice.Shape!);
        FilterReference.Case("T4-I01", "gain").AssertEqual(filter.ZeroPoleGain.Gain);
        FilterReference.Case("T4-I01", "a1").AssertEqual(filter.Sections[1].A1);
        FilterReference.Case("T4-I01", "a0").AssertEqual(filter.Sections[1].A2);
    }

    [Fact]
    public void Requirement_AnalogInverseChebyshev_GivesWorkedSections()
    {
        OrderChoice choice = MinimumOrder.Find(FilterFamily.InverseChebyshev, Requirement(1, 16, 0.2 * Math.PI, 0.3 * Math.PI, radians: true));
        FilterReference.Case("T4-I03", "N").AssertEqual(choice.Order!.Value);
        AnalogFilter filter = FilterDesign.Analog(choice.Prototype!, choice.Shape!);
        FilterReference.Case("T4-I03", "gain").AssertEqual(filter.ZeroPoleGain.Gain);
        FilterReference.Case("T4-I03", "zeros^2").AssertEqual([.. filter.ZeroPoleGain.Zeros.Where(z => 0 < z.Imaginary).Select(z => z.Imaginary * z.Imaginary).OrderDescending()]);
        FilterReference.Case("T4-I03", "a1").AssertEqual([.. filter.Sections.Sections.Select(s => s.A1)]);
        FilterReference.Case("T4-I03", "a0").AssertEqual([.. filter.Sections.Sections.Select(s => s.A2)]);
    }

    /// <summary>From requirement to sections: order, prewarp, transform and pairing in one; the pass edge is met exactly.</summary>
    [Fact]
    public void Requirement_DigitalButterworth_GivesWorkedSections()
    {
        var requirement = new FilterRequirement(new LowPass(Frequency.FromHertz(0.1)), new LowPass(Frequency.FromHertz(0.15)), Decibels.FromStated(1), Decibels.FromStated(15));
        OrderChoice choice = MinimumOrder.Find(FilterFamily.Butterworth, requirement, Frequency.FromHertz(1));
        FilterReference.Case("T4-I04", "N").AssertEqual(choice.Order!.Value);
        DigitalFilter filter = FilterDesign.Digital(choice.Prototype!, choice.Shape!, Frequency.FromHertz(1));
        FilterReference.Case("T4-I04", "C").AssertEqual(filter.ZeroPoleGain.Gain);
        FilterReference.Case("T4-I04", "a1").AssertEqual([.. filter.Sections.Sections.Select(s => s.A1)]);
        FilterReference.Case("T4-I04", "a2").AssertEqual([.. filter.Sections.Sections.Select(s => s.A2)]);
    }

    [Fact]
    public void Requirement_DigitalChebyshevHighPass_GivesWorkedSections()
    {
        DigitalFilter filter = FilterDesign.Digital(new ChebyshevPrototype(4, Decibels.FromStated(1)), new HighPass(Frequency.FromHertz(0.3)), Frequency.FromHertz(1));
        FilterReference.Case("T4-I06", "C").AssertEqual(filter.ZeroPoleGain.Gain);
        FilterReference.Case("T4-I06", "a1").AssertEqual([.. filter.Sections.Sections.Select(s => s.A1)]);
        FilterReference.Case("T4-I06", "a2").AssertEqual([.. filter.Sections.Sections.Select(s => s.A2)]);
    }

    [Fact]
    public void Notch_TangentForm_Agrees()
    {
        Biquad notch = Notch.WithQ(Frequency.FromHertz(0.06), 30, Frequency.FromHertz(2));
        FilterReference.Case("T4-N01", "b").AssertEqual(notch.B0, notch.B1, notch.B2);
        FilterReference.Case("T4-N01", "a").AssertEqual(1, notch.A1, notch.A2);
    }

    /// <summary>The other definition of Q, α = sin ω0/(2Q), gives another filter: written down as a difference, with its width measured.</summary>
    [Theory]
    [InlineData("T4-N03", 50, 250)]
    [InlineData("T4-N04", 60, 256)]
    [InlineData("T4-N06", 60, 1000)]
    public void Notch_SineForm_IsAnotherFilter(string id, double centre, double rate)
    {
        double w0 = 2 * Math.PI * centre / rate;
        double alpha = Math.Sin(w0) / 60;
        FilterReference.Case(id, "b0").AssertEqual(1 / (1 + alpha));
        FilterReference.Case(id, "a2").AssertEqual((1 - alpha) / (1 + alpha));
        Biquad ours = Notch.WithQ(Frequency.FromHertz(centre), 30, Frequency.FromHertz(rate));
        Assert.True(1e-4 < Math.Abs(ours.B0 - FilterReference.Case(id, "b0").Values[0]));
        // Its width: tan(Δω/2) = α in place of tan(π·f0/(Q·fs)).
        double width = rate / Math.PI * Math.Atan(alpha);
        Assert.True(width < 0.99 * centre / 30);
    }

    [Fact]
    public void Bessel_SecondOrder_HalfPowerOverPoleFrequency()
    {
        AnalogSection section = FilterDesign.Analog(new BesselPrototype(2), new LowPass(Frequency.FromHertz(1))).Sections[0];
        FilterReference.Case("T4-B01", "kf").AssertEqual(section.PoleHertz);
        FilterReference.Case("T4-B01", "alpha").AssertEqual(1 / section.Q!.Value);
    }

    [Fact]
    public void Bessel_FifthOrderInOneTextbook_IsOtherwiseNormalised()
    {
        AnalogFilter filter = FilterDesign.Analog(new BesselPrototype(5), new LowPass(Frequency.FromHertz(1)));
        FilterReference.Case("T4-B02", "kf").AssertDiffers([.. filter.Sections.Sections.Select(s => s.PoleHertz)]);
        double[] alphas = [.. filter.Sections.Sections.Skip(1).Select(s => 1 / s.Q!.Value)];
        Assert.Equal(FilterReference.Case("T4-B02", "alpha").Values, alphas, (a, b) => Math.Abs(a - b) < 0.001);
    }

    /// <summary>Stagger-tuning factor α of a fourth-order band-pass: the upper pole pair's frequency over the centre.</summary>
    [Theory]
    [InlineData("Butterworth")]
    [InlineData("Bessel")]
    [InlineData("Chebyshev 3 dB")]
    public void BandPass_FourthOrder_StaggerFactor(string family)
    {
        Prototype prototype = family switch
        {
            "Butterworth" => new ButterworthPrototype(2),
            "Bessel" => new BesselPrototype(2),
            _ => new ChebyshevPrototype(2, Decibels.FromStated(3)),
        };
        double ratio = prototype is ChebyshevPrototype c ? c.Minus3DbOverRippleEdge : 1;
        double[] alphas = [.. new[] { 100.0, 10, 1 }.Select(q =>
        {
            double width = 1 / q / ratio;
            double low = (Math.Sqrt((width * width) + 4) - width) / 2;
            AnalogFilter filter = FilterDesign.Analog(prototype, new BandPass(Frequency.FromHertz(low), Frequency.FromHertz(low + width)));
            return filter.Sections.Sections.Max(s => s.PoleHertz);
        })];
        FilterReference.Case("T4-E08", family).AssertEqual(alphas);
    }

    private static FilterRequirement Requirement(double ripple, double attenuation, double pass, double stop, bool radians = false)
    {
        double unit = radians ? 2 * Math.PI : 1;
        return new(new LowPass(Frequency.FromHertz(pass / unit)), new LowPass(Frequency.FromHertz(stop / unit)), Decibels.FromStated(ripple), Decibels.FromStated(attenuation));
    }

    private static (Prototype Prototype, double Ratio) TablePrototype(string id, int order)
    {
        if (id.Contains("BES", StringComparison.Ordinal))
        {
            return (new BesselPrototype(order), 1);
        }

        if (id.Contains("BUT", StringComparison.Ordinal))
        {
            return (new ButterworthPrototype(order), 1);
        }

        double ripple = id[4..6] switch { "05" => 0.5, "10" => 1, "20" => 2, "30" => 3, _ => throw new InvalidOperationException(id) };
        var prototype = new ChebyshevPrototype(order, Decibels.FromStated(ripple));
        return (prototype, prototype.Minus3DbOverRippleEdge);
    }

    /// <summary>−3 dB frequency of one section: b²x² + (a² − 2b)·x − 1 = 0, x = S².</summary>
    private static double SectionHalfPower(double a, double b)
    {
        if (b == 0)
        {
            return 1 / a;
        }

        double half = ((a * a) - (2 * b)) / 2;
        return Math.Sqrt(((-half) + Math.Sqrt((half * half) + (b * b))) / (b * b));
    }

    private static double[] Multiply(IEnumerable<double[]> factors, int length)
    {
        double[] product = new double[length + 4];
        product[0] = 1;
        foreach (double[] factor in factors)
        {
            for (int i = product.Length - 1; 0 <= i; i--)
            {
                double sum = 0;
                for (int j = 0; j < factor.Length && j <= i; j++)
                {
                    sum += factor[j] * product[i - j];
                }

                product[i] = sum;
            }
        }

        return product[..length];
    }
}
