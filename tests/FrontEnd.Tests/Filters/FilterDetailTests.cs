using System.Numerics;
using FrontEnd.Digital;
using FrontEnd.Filters;
using FrontEnd.Quantities;
using Xunit;

namespace FrontEnd.Tests.Filters;

/// <summary>The smaller figures of filters, each by a plain second way: impulse responses summed, phases differenced, bytes fed one by one.</summary>
public class FilterDetailTests
{
    private static readonly Frequency Rate = Frequency.FromHertz(250);

    public static TheoryData<FilterFamily, FilterShape> FamiliesAndShapes()
    {
        TheoryData<FilterFamily, FilterShape> all = [];
        foreach (FilterFamily family in Enum.GetValues<FilterFamily>())
        {
            foreach (FilterShape shape in Enum.GetValues<FilterShape>())
            {
                all.Add(family, shape);
            }
        }

        return all;
    }

    // --- delays -----------------------------------------------------------------------------------------------------

    [Theory]
    [InlineData(5, 2)]
    [InlineData(5, 10)]
    [InlineData(8, 3)]
    public void Comb_GroupDelayOfManyPeriods_IsTheSlopeOfItsPhase(int period, int periods)
    {
        var comb = new PeriodComb(period, periods, Rate);
        foreach (double f in (double[])[0.7, 3.1, 12.3, 31.7, 77.7, 111.1])
        {
            Complex before = Sum(comb.Taps(), f - 1e-4), after = Sum(comb.Taps(), f + 1e-4);
            Assert.Equal(-(after / before).Phase / (4 * Math.PI * 1e-4), comb.GroupDelay(f), 1e-7);
            Assert.True(Complex.Abs(comb.Response(f) - Sum(comb.Taps(), f)) < 1e-12);
        }
    }

    [Fact]
    public void Fir_GroupDelayOfUnevenTaps_IsTheSlopeOfItsPhase()
    {
        double[] taps = [.. Enumerable.Range(0, 150).Select(k => Math.Exp(-k / 20.0) * (1 + (0.3 * Math.Sin(k))))];
        var filter = new FirFilter(taps, Rate);
        Assert.False(filter.IsSymmetric);
        Assert.Equal(150, filter.Multiplies);
        foreach (double f in (double[])[0.5, 7, 33, 90])
        {
            Complex before = Sum(taps, f - 1e-4), after = Sum(taps, f + 1e-4);
            Assert.Equal(-(after / before).Phase / (4 * Math.PI * 1e-4), filter.GroupDelay(f), 1e-8);
            Assert.True(Complex.Abs(filter.Response(f) - Sum(taps, f)) < 1e-12);
        }
    }

    /// <summary>Running means one after another, convolved: their response has its middle at k·(M − 1)/2, is k·(M − 1) + 1 long, and |H| is its transform.</summary>
    [Theory]
    [InlineData(1, 4)]
    [InlineData(3, 8)]
    [InlineData(5, 3)]
    public void SincDecimator_AsConvolvedMeans_HasItsDelayGainAndSettling(int order, int ratio)
    {
        double[] taps = [1];
        for (int k = 0; k < order; k++)
        {
            double[] next = new double[taps.Length + ratio - 1];
            for (int i = 0; i < taps.Length; i++)
            {
                for (int j = 0; j < ratio; j++)
                {
                    next[i + j] += taps[i] / ratio;
                }
            }

            taps = next;
        }

        var sinc = new SincDecimator(order, ratio, Rate);
        double clock = 250.0 * ratio;
        Assert.Equal(taps.Select((h, n) => h * n).Sum() / clock, sinc.Delay.Seconds, 1e-15);
        // Whole output samples that hold the response: a step is settled when all of it has passed.
        Assert.Equal((int)Math.Ceiling(taps.Length / (double)ratio), sinc.SettlingSamples);
        foreach (double f in (double[])[0, 11, 100, 187.5, 333])
        {
            Assert.Equal(Complex.Abs(Sum(taps, f, clock)), sinc.Gain(f), 1e-12);
        }
    }

    [Theory]
    [MemberData(nameof(FamiliesAndShapes))]
    public void Figures_OfEveryFamilyAndShape_AgreeWithPolesAndZeros(FilterFamily family, FilterShape shape)
    {
        foreach (double? fs in (double?[])[null, 250])
        {
            FilterWish wish = Wish(family, shape, 3, fs);
            FilterAnswer answer = wish.Design();
            FilterFigures figures = FilterFigures.Of(answer);
            ZeroPoleGain roots = answer.ZeroPoleGain!;
            Complex At(double f) => roots.At(fs is { } rate ? Complex.FromPolarCoordinates(1, 2 * Math.PI * f / rate) : new Complex(0, 2 * Math.PI * f));

            // The delay in the middle of what passes: a hundredth of the corner, ten times it, or between.
            double middle = shape switch { FilterShape.LowPass or FilterShape.BandStop => 0.2, FilterShape.HighPass => fs is null ? 200 : 125 * (1 - 1e-9), _ => 20 * Math.Sqrt(1.5) };
            Assert.Equal(middle, figures.Middle.Hertz, middle * 1e-9);
            if (middle < 120 || fs is null)
            {
                double step = middle * 1e-5;
                Assert.Equal(-(At(middle + step) / At(middle - step)).Phase / (4 * Math.PI * step), figures.DelayAtMiddle.Seconds, 1e-4 * Math.Abs(figures.DelayAtMiddle.Seconds) + 1e-9);
            }

            Assert.All(figures.AtCorners, loss => Assert.Equal(-20 * Math.Log10(Complex.Abs(At(loss.At.Hertz))), loss.Loss!.Value.Value, 1e-6));
            Assert.All(figures.HalfPower, f => Assert.Equal(Math.Sqrt(0.5), Complex.Abs(At(f.Hertz)), 1e-7));

            // Every pole is in a section: f0 = |s|/2π and Q = |s|/(−2·Re s), s = fs·ln z for a digital one.
            List<(double F0, double? Q)> expected = [];
            Complex[] poles = [.. roots.Poles.Where(p => 1e-9 < p.Imaginary).Select(p => fs is { } rate ? Complex.Log(p) * rate : p)];
            expected.AddRange(poles.Select(p => (Complex.Abs(p) / (2 * Math.PI), (double?)(Complex.Abs(p) / (-2 * p.Real)))));
            Assert.All(expected, e => Assert.Contains(figures.Sections, s => Math.Abs(s.Pole.Hertz - e.F0) < 1e-6 * e.F0 && s.Q is { } q && Math.Abs(q - e.Q!.Value) < 1e-5 * q));
            Assert.Equal((roots.Order + 1) / 2, figures.Sections.Count);
        }
    }

    // --- sections ---------------------------------------------------------------------------------------------------

    /// <summary>Gain 1 of every section in the middle of the pass band but for the first, which carries what is left; tame sections first; zeros where the shape has them.</summary>
    [Fact]
    public void Sections_OfAButterworth_AreScaledAndOrdered()
    {
        foreach (FilterShape shape in Enum.GetValues<FilterShape>())
        {
            DigitalFilter filter = Wish(FilterFamily.Butterworth, shape, 6, 250).Design().Digital!;
            double reference = shape switch
            {
                FilterShape.HighPass => 125,
                FilterShape.BandPass => 250 / Math.PI * Math.Atan(Math.Sqrt(Math.Tan(Math.PI * 20 / 250) * Math.Tan(Math.PI * 30 / 250))),
                _ => 0,
            };
            Assert.All(filter.Sections.Sections, s => Assert.Equal(1, Math.Sqrt(new SecondOrderSections([s]).PowerResponse(reference, 250)), 1e-8));
            double[] radii = [.. filter.Sections.Sections.Select(s => s.PoleRadius)];
            Assert.Equal(radii.Order(), radii);
            ZeroPlace place = shape switch
            {
                FilterShape.LowPass => ZeroPlace.HalfRate,
                FilterShape.HighPass => ZeroPlace.ZeroHertz,
                FilterShape.BandPass => ZeroPlace.ZeroHertzAndHalfRate,
                _ => ZeroPlace.Frequency,
            };
            Assert.All(filter.Sections.Sections, s => Assert.Equal(place, SectionZeros.Of(s, 250).Place));
            Assert.All(filter.Sections.Sections.Where(_ => shape == FilterShape.BandStop), s => Assert.True(new SecondOrderSections([s]).PowerResponse(SectionZeros.Of(s, 250).At!.Value.Hertz, 250) < 1e-20));
        }
    }

    /// <summary>Each resonance takes the zero nearest to it: the sections of an elliptic low-pass have their zeros in the reverse order of their poles' Q.</summary>
    [Fact]
    public void Sections_OfAnElliptic_PairTheSharpestPoleWithTheNearestZero()
    {
        DigitalFilter filter = Wish(FilterFamily.Elliptic, FilterShape.LowPass, 7, 250).Design().Digital!;
        double[] zeros = [.. filter.Sections.Sections.Where(s => !s.IsFirstOrder).Select(s => SectionZeros.Of(s, 250).At!.Value.Hertz)];
        Assert.Equal(3, zeros.Length);
        Assert.Equal(zeros.OrderDescending(), zeros);
        Assert.True(filter.Sections[0].IsFirstOrder);
    }

    [Fact]
    public void Zeros_OfGivenSections_AreNamed()
    {
        Assert.Equal(ZeroPlace.RealAxis, SectionZeros.Of(new Biquad(1, 0.5, 0, 0, 0), 250).Place);
        Assert.Equal(ZeroPlace.HalfRate, SectionZeros.Of(new Biquad(1, 1, 0, 0, 0), 250).Place);
        Assert.Equal(ZeroPlace.ZeroHertz, SectionZeros.Of(new Biquad(1, -1, 0, 0, 0), 250).Place);
        Assert.Equal(ZeroPlace.OffCircle, SectionZeros.Of(new Biquad(1, -0.5, 0.5, 0, 0), 250).Place);
        Assert.Equal(62.5, SectionZeros.Of(new Biquad(1, 0, 1, 0, 0), 250).At!.Value.Hertz, 1e-9);
        Assert.Equal(ZeroPlace.None, SectionZeros.Of(new AnalogSection(0, 0, 1, 1, 1, 1)).Place);
        Assert.Equal(ZeroPlace.ZeroHertz, SectionZeros.Of(new AnalogSection(0, 1, 0, 1, 1, 1)).Place);
        Assert.Equal(ZeroPlace.RealAxis, SectionZeros.Of(new AnalogSection(0, 1, 1, 1, 1, 1)).Place);
        Assert.Equal(2 / (2 * Math.PI), SectionZeros.Of(new AnalogSection(1, 0, 4, 1, 1, 1)).At!.Value.Hertz, 1e-12);
    }

    // --- finite words -----------------------------------------------------------------------------------------------

    /// <summary>L1, L2 and the peak from 20 000 samples of the impulse response, run section by section as the difference equation says.</summary>
    [Fact]
    public void Norms_OfACascade_AreThoseOfItsImpulseResponse()
    {
        SecondOrderSections sections = SecondOrderSections.Cascade(
            Wish(FilterFamily.Chebyshev, FilterShape.BandPass, 2, 250).Design().Digital!.Sections, new SecondOrderSections([Notch.WithQ(Frequency.FromHertz(50), 10, Rate)]));
        IReadOnlyList<OverflowNorms> norms = RoundOff.Overflow(sections);
        for (int count = 1; count <= sections.Count; count++)
        {
            double[] h = Impulse([.. sections.Sections.Take(count)], 20_000);
            Assert.Equal(h.Sum(Math.Abs), norms[count - 1].L1, 1e-9);
            Assert.Equal(Math.Sqrt(h.Sum(x => x * x)), norms[count - 1].L2, 1e-9);
            double peak = Enumerable.Range(0, 50_001).Max(i => Math.Sqrt(new SecondOrderSections(sections.Sections.Take(count)).PowerResponse(i / 400.0, 250)));
            Assert.InRange(norms[count - 1].LInfinity, peak * (1 - 1e-4), peak * (1 + 1e-4));
            Assert.Equal(Math.Max(0, (int)Math.Ceiling(Math.Log2(h.Sum(Math.Abs)))), norms[count - 1].SafeBits);
        }

        // The rounding of each section passes its own poles and all that follows.
        WordFigures figures = WordFigures.Of(sections, NumberFormat.Q31, FilterForm.DirectI);
        double variance = 0, most = 0;
        for (int i = 0; i < sections.Count; i++)
        {
            double gain = Impulse([new Biquad(1, 0, 0, sections[i].A1, sections[i].A2), .. sections.Sections.Skip(i + 1)], 20_000).Sum(x => x * x);
            (variance, most) = (variance + (gain / 12), Math.Max(most, 0.5 * Math.Log2(gain)));
        }

        Assert.Equal(Math.Sqrt(variance), figures.RoundOff!.Value, 1e-6);
        Assert.Equal((int)Math.Ceiling(most), figures.ExtraBits);
        Assert.Equal(norms.Max(n => n.SafeBits), figures.HeadroomBits);
        Assert.Equal(Math.Max(0, (int)Math.Ceiling(most) - 2), WordFigures.Of(sections, NumberFormat.Q31 with { StateFraction = 2 }, FilterForm.DirectI).ExtraBits);
        // Two bits below: a quarter of the rms, and the last rounding's 1/12 less what the states already have.
        Assert.Equal(Math.Sqrt((variance / 16) + ((1 - (1 / 16.0)) / 12)), WordFigures.Of(sections, NumberFormat.Q31 with { StateFraction = 2 }, FilterForm.DirectI).RoundOff!.Value, 1e-6);
    }

    /// <summary>Units in the last place by hand, 24 bits of mantissa: b0·x = 0.375·2²⁰ has 2⁻⁵, the output 0.75·2²⁰ has 2⁻⁴; 1/A = 1/(1 − z⁻¹/2) sums to 4/3 in squares.
    /// Direct: one rounding of each of three products and of each of three sums. Transposed: product, sum of the state, and output.</summary>
    [Fact]
    public void FloatVariance_OfOnePole_IsTheSumByHand()
    {
        SecondOrderSections sections = new([new Biquad(0.25, 0, 0, -0.5, 0)]);
        double level = 1.5 * (1 << 20), small = Math.Pow(2, -10), large = Math.Pow(2, -8);
        Assert.Equal(4 / 3.0 * ((3 * small) + (3 * large)) / 12, RoundOff.FloatVariance(sections, FilterForm.DirectI, level, NumberFormat.Single), 1e-12);
        Assert.Equal(4 / 3.0 * (small + small + large) / 12, RoundOff.FloatVariance(sections, FilterForm.TransposedDirectII, level, NumberFormat.Single), 1e-12);

        // Second order: gain 0.5/0.75, the output is 2²⁰, of ulp 2⁻³; b2·x = 0.375·2²⁰ too; b2·x − a2·y = 2¹⁷, of ulp 2⁻⁶; −a1·y and that are 0.625·2²⁰, of ulp 2⁻⁴.
        SecondOrderSections second = new([new Biquad(0.25, 0, 0.25, -0.5, 0.25)]);
        double h = Impulse([new Biquad(1, 0, 0, -0.5, 0.25)], 400).Sum(x => x * x);
        double b = small, state2 = Math.Pow(2, -12), state1 = Math.Pow(2, -8), output = Math.Pow(2, -6);
        Assert.Equal(h * (b + state2 + state1 + b + output) / 12, RoundOff.FloatVariance(second, FilterForm.TransposedDirectII, level, NumberFormat.Single), 1e-12);
        Assert.Equal(h * ((3 * b) + (3 * output)) / 12, RoundOff.FloatVariance(second, FilterForm.DirectI, level, NumberFormat.Single), 1e-12);
    }

    /// <summary>Poles so near the circle that their response is longer than is run: the closed forms of one pole, Σ|h| = 1/(1 − p) and Σh² = 1/(1 − p²).</summary>
    [Theory]
    [InlineData(1e-3)]
    [InlineData(1e-6)]
    [InlineData(2e-8)]
    public void Norms_OfASlowPole_AreTheClosedForms(double away)
    {
        double pole = 1 - away;
        SecondOrderSections sections = new([new Biquad(1, 0, 0, -pole, 0)]);
        OverflowNorms norms = Assert.Single(RoundOff.Overflow(sections));
        Assert.Equal(1, norms.L1 * (1 - pole), 1e-6);
        Assert.Equal(1, norms.L2 * norms.L2 * (1 - (pole * pole)), 1e-6);
    }

    /// <summary>Which remedy goes with which harm.</summary>
    [Fact]
    public void Remedy_OfEachHarm_IsItsOwn()
    {
        SecondOrderSections At(double corner, double rate) => Butterworth.HighPass(2, Frequency.FromHertz(corner), Frequency.FromHertz(rate)).Sections;
        static string? Of(SecondOrderSections sections, NumberFormat format, FilterForm form = FilterForm.DirectI) => WordFigures.Of(sections, format, form).Remedy;
        Assert.Contains("longer coefficient words", Of(At(0.5, 1000), NumberFormat.Q15), StringComparison.Ordinal);
        Assert.StartsWith("keep 9 more bits below the LSB in the states, which leaves 21 for the samples", Of(At(0.5, 250), NumberFormat.Q31), StringComparison.Ordinal);
        // 22 bits more than there are: nobody can keep them.
        Assert.StartsWith("use double", Of(At(0.1, 16_000), NumberFormat.Q31), StringComparison.Ordinal);
        Assert.Contains("one fewer fraction bit", Of(At(0.5, 250), NumberFormat.Q31 with { CoefficientFraction = 31 }), StringComparison.Ordinal);
        Assert.Contains("direct form I", Of(At(0.5, 250), NumberFormat.Single, FilterForm.TransposedDirectII), StringComparison.Ordinal);
        Assert.Null(Of(At(0.5, 250), NumberFormat.Single));
        Assert.Null(Of(At(0.5, 250), NumberFormat.Double, FilterForm.TransposedDirectII));
        Assert.Null(Of(At(60, 250), NumberFormat.Q31 with { StateFraction = 1 }));
    }

    /// <summary>CRC-32 of the coefficients' bytes by the table of 256, a way of its own; its check value for "123456789" is CBF43926 (the catalogue of parametrised CRC algorithms, from memory).</summary>
    [Fact]
    public void Checksum_OfEveryWord_IsTheCrcOfItsBytes()
    {
        Assert.Equal(0xCBF43926u, Crc("123456789"u8.ToArray()));
        SecondOrderSections sections = Wish(FilterFamily.Butterworth, FilterShape.BandPass, 2, 250).Design().Digital!.Sections;
        foreach (DigitalWord word in Enum.GetValues<DigitalWord>())
        {
            DigitalArithmetic arithmetic = new() { Word = word };
            SectionsExport export = SectionsExport.Of(sections, [.. Enumerable.Repeat("band", sections.Count)], Rate, arithmetic)!;
            byte[] bytes = [.. export.Filter.Sections.Coefficients.ToArray().SelectMany((c, i) => word switch
            {
                DigitalWord.Double => BitConverter.GetBytes(c),
                DigitalWord.Single => BitConverter.GetBytes((float)c),
                DigitalWord.Q31 => BitConverter.GetBytes((int)export.Filter.Details[i / 5].Words[i % 5]),
                _ => BitConverter.GetBytes((short)export.Filter.Details[i / 5].Words[i % 5]),
            })];
            Assert.Equal(Crc(bytes), export.Checksum);
            Assert.Equal(arithmetic.IsFixed, export.Tolerance == 0);

            // What the machine must answer, by the difference equation; whole numbers to the rounding of each section.
            double[] expected = Run([.. export.Filter.Sections.Sections], [.. export.TestInput]);
            double error = expected.Zip(export.TestOutput, (e, y) => Math.Abs(e - y)).Max();
            Assert.True(error <= (arithmetic.IsFixed ? 0.5 * RoundOff.StateBound(export.Filter) * 2 : export.Tolerance), $"{word}: {error}");
            Assert.True(0 < export.TestOutput.Max(Math.Abs) && FilterExport.TestLength <= export.TestInput.Count);

            // Half of full scale at most, and more than a quarter; sixteen bits where no converter says how many.
            Assert.InRange(export.TestInput.Max(Math.Abs), arithmetic.IsFixed ? 8192 : 0.25, arithmetic.IsFixed ? 16_384 : 0.5);
            int headroom = Enumerable.Range(1, export.Filter.Sections.Count).Max(n => (int)Math.Ceiling(Math.Log2(Impulse([.. export.Filter.Sections.Sections.Take(n)], 5000).Sum(Math.Abs))));
            Assert.Equal(Math.Max(0, headroom), export.HeadroomBits);
            if (!arithmetic.IsFixed)
            {
                // Eight times half a unit of the largest value, times the root of what the sections make of it.
                double unit = word == DigitalWord.Double ? Math.Pow(2, -53) : Math.Pow(2, -24);
                double gain = Enumerable.Range(0, export.Filter.Sections.Count).Sum(i => Impulse([new Biquad(1, 0, 0, export.Filter.Sections[i].A1, export.Filter.Sections[i].A2), .. export.Filter.Sections.Sections.Skip(i + 1)], 5000).Sum(x => x * x));
                double peak = Math.Max(1, RoundOff.Overflow(export.Filter.Sections).Max(n => n.LInfinity));
                Assert.Equal(8 * unit * Math.Max(export.TestInput.Max(Math.Abs), export.TestOutput.Max(Math.Abs)) * peak * Math.Sqrt(Math.Max(1, gain)), export.Tolerance, 1e-6 * export.Tolerance);
            }
        }

        // Long samples leave no room beside the headroom: the vector has the bits that do.
        SectionsExport wide = SectionsExport.Of(sections, [.. Enumerable.Repeat("band", sections.Count)], Rate, new DigitalArithmetic { Word = DigitalWord.Q31, StateFraction = 10 }, 24)!;
        Assert.InRange(wide.TestInput.Max(Math.Abs), Math.Pow(2, 31 - 10 - wide.HeadroomBits - 3), Math.Pow(2, 31 - 10 - wide.HeadroomBits - 2));
        foreach (DigitalWord word in Enum.GetValues<DigitalWord>())
        {
            double[] taps = new PeriodComb(5, 4, Rate).Taps();
            FilterExport fir = TapsExport.Of(new FirFilter([0.5, -0.9, 0.7, 0.2], Rate), "FIR", new DigitalArithmetic { Word = word }), comb = CombExport.Of(new PeriodComb(5, 4, Rate), "comb", new DigitalArithmetic { Word = word });
            // |0.5| + |−0.9| + |0.7| + |0.2| = 2.3: two bits.
            Assert.Equal((2, (int)Math.Ceiling(Math.Log2(taps.Sum(Math.Abs)))), (fir.HeadroomBits, comb.HeadroomBits));
        }
    }

    /// <summary>Both losses given, an equiripple filter shares its error as they say: δp over δs is (R − 1)/(R + 1) over (1 + δp)/A.</summary>
    [Fact]
    public void Equiripple_OfGivenTapsAndLosses_SharesItsErrorAsTheyStand()
    {
        double ratio = Math.Pow(10, 3 / 20.0), dp = (ratio - 1) / (ratio + 1), ds = (1 + dp) / Math.Pow(10, 2);
        FirAnswer answer = new FirWish
        {
            Shape = FilterShape.LowPass, PassEdges = [Frequency.FromHertz(30)], StopEdges = [Frequency.FromHertz(38)], Rate = Rate, Taps = 31, Ripple = Decibels.FromStated(3), Attenuation = Decibels.FromStated(40),
        }.Design();
        double[] taps = answer.Filter!.Taps.ToArray();
        double pass = Enumerable.Range(0, 3001).Max(i => Math.Abs(Complex.Abs(Sum(taps, i / 100.0)) - 1)), stop = Enumerable.Range(0, 8701).Max(i => Complex.Abs(Sum(taps, 38 + (i / 100.0))));
        Assert.Equal(dp / ds, pass / stop, 0.02 * dp / ds);
    }

    // --- limits -----------------------------------------------------------------------------------------------------

    /// <summary>Each stop edge on the wrong side of its pass edge is told, for every shape and edge, and on the right side it is not.</summary>
    [Fact]
    public void StopEdges_OnEitherSide_AreJudgedShapeByShape()
    {
        (FilterShape Shape, double[] Pass, double[] Stop)[] right =
        [
            (FilterShape.LowPass, [20], [40]), (FilterShape.HighPass, [40], [20]), (FilterShape.BandPass, [20, 30], [10, 40]), (FilterShape.BandStop, [10, 40], [20, 30]),
        ];
        foreach ((FilterShape shape, double[] pass, double[] stop) in right)
        {
            string[] Codes(double[] edges) => [.. new FilterRequirement(
                FilterWish.Make(shape, [.. pass.Select(Frequency.FromHertz)]), FilterWish.Make(shape, [.. edges.Select(Frequency.FromHertz)]), Decibels.FromStated(1), Decibels.FromStated(40)).Check().Select(f => f.Code)];
            Assert.Empty(Codes(stop));
            for (int i = 0; i < pass.Length; i++)
            {
                double[] same = [.. stop], beyond = [.. stop];
                same[i] = pass[i];
                beyond[i] = pass[i] + (0.5 * (pass[i] - stop[i]));
                Assert.Equal(["FE0608"], Codes(same));
                Assert.Equal(["FE0608"], Codes(beyond));
            }
        }
    }

    [Fact]
    public void Check_AtTheEndsOfTheRanges_IsExact()
    {
        static string[] Codes(Prototype prototype, ResponseShape shape, double? rate = null) => [.. FilterDesign.Check(prototype, shape, rate is { } fs ? Frequency.FromHertz(fs) : null).Select(f => f.Code)];
        static LowPass Low(double hertz) => new(Frequency.FromHertz(hertz));
        static BandPass Band(double low, double high) => new(Frequency.FromHertz(low), Frequency.FromHertz(high));
        Assert.Empty(Codes(new ButterworthPrototype(20), Low(10)));
        Assert.Equal(["FE0601"], Codes(new ButterworthPrototype(21), Low(10)));
        Assert.Empty(Codes(new ButterworthPrototype(10), Band(10, 20)));
        Assert.Equal(["FE0601"], Codes(new ButterworthPrototype(11), Band(10, 20)));
        Assert.Equal(["FE0601"], Codes(new ButterworthPrototype(0), Low(10)));
        Assert.Equal(["FE0603"], Codes(new ButterworthPrototype(2), Low(125), 250));
        Assert.Equal(["FE0619"], Codes(new ButterworthPrototype(2), Low(125 - 2.4e-5), 250));
        Assert.Empty(Codes(new ButterworthPrototype(2), Low(125 - 2.6e-5), 250));
        Assert.Equal(["FE0619"], Codes(new ButterworthPrototype(2), Low(2.4e-5), 250));
        Assert.Empty(Codes(new ButterworthPrototype(2), Low(2.6e-5), 250));
        Assert.Equal(["FE0604"], Codes(new ButterworthPrototype(2), Band(10, 10)));
        Assert.Equal(["FE0619"], Codes(new ButterworthPrototype(2), Band(10, 10 + 0.9e-6)));
        Assert.Empty(Codes(new ButterworthPrototype(2), Band(10, 10 + 1.1e-6)));
        Assert.Empty(Codes(new ChebyshevPrototype(2, Decibels.FromStated(60)), Low(10)));
        Assert.Equal(["FE0618"], Codes(new ChebyshevPrototype(2, Decibels.FromStated(60.001)), Low(10)));
        Assert.Equal(["FE0618"], Codes(new ChebyshevPrototype(2, Decibels.FromStated(0.9e-6)), Low(10)));
        Assert.Equal(["FE0618"], Codes(new InverseChebyshevPrototype(2, Decibels.FromStated(400.001)), Low(10)));
        Assert.Equal(["FE0618"], Codes(new ButterworthPrototype(2), Low(0.9e-6)));
        Assert.Equal(["FE0618"], Codes(new ButterworthPrototype(2), Low(1.1e12)));
        Assert.Equal(["FE0607"], Codes(new EllipticPrototype(2, Decibels.FromStated(3), Decibels.FromStated(3)), Low(10)));
    }

    [Fact]
    public void Folding_OfAnInterval_IsTheRangeOfItsLandings()
    {
        Random random = new(2);
        for (int draw = 0; draw < 300; draw++)
        {
            double low = 900 * random.NextDouble(), high = low + (draw % 3 == 0 ? 300 : 20) * random.NextDouble();
            (double least, double most) = Folding.LandsWithin(low, high, 250);
            double[] lands = [.. Enumerable.Range(0, 3001).Select(i => low + ((high - low) * i / 3000.0)).Select(f => Math.Abs(f - (250 * Math.Round(f / 250))))];
            Assert.InRange(least, lands.Min() - 0.11, lands.Min() + 1e-9);
            Assert.InRange(most, lands.Max() - 1e-9, lands.Max() + 0.11);
        }
    }

    [Fact]
    public void Costs_OfCombsAndTaps_AreWhatTheirRunnersDo()
    {
        CombFigures mean = new CombWish { Rate = Rate }.Design().Figures, ten = new CombWish { Rate = Rate, Periods = 10 }.Design().Figures;
        // The mean: a ring of five samples and their sum; one sample in, one out. Ten periods: fifty, the sum, and a sum for each of five phases.
        Assert.Equal((6, 0, 2), (mean.Words, mean.Multiplies, mean.Additions));
        Assert.Equal((56, 2, 5), (ten.Words, ten.Multiplies, ten.Additions));
        SincAnswer answer = new SincWish { Rate = Rate, Edge = Frequency.FromHertz(60), Order = 4, Ratio = 100, Taps = 9 }.Design();
        SincFigures sinc = answer.Figures;
        double[] taps = answer.Compensation!.Taps.ToArray();
        Assert.Equal(Math.Sqrt(taps.Sum(h => h * h)), sinc.NoiseGain, 1e-12);
        Assert.Equal(20 * Math.Log10(Math.Abs(taps.Select((h, k) => k % 2 == 0 ? h : -h).Sum())), sinc.RiseAtHalfRate, 1e-9);
        // 4·log2 100 = 26.6.
        Assert.Equal(27, sinc.GrowthBits);
        double worst = Enumerable.Range(0, 6001).Max(i => Math.Abs(20 * Math.Log10(Complex.Abs(Sum(taps, i / 100.0)) * Math.Pow(Math.Sin(Math.PI * Math.Max(i, 1e-6) / 25_000) / (100 * Math.Sin(Math.PI * Math.Max(i, 1e-6) / 2_500_000)), 4))));
        Assert.Equal(worst, sinc.LargestDeviation, 1e-6);
        NotchesFigures notches = new NotchWish { Rate = Frequency.FromHertz(500), Edge = Frequency.FromHertz(160) }.Design().Figures;
        Assert.Equal(15, notches.Multiplies);
        Assert.Equal(notches.Notches[0].RingTime, notches.RingTime);
        FirAnswer fir = new FirWish { Shape = FilterShape.LowPass, PassEdges = [Frequency.FromHertz(30)], StopEdges = [Frequency.FromHertz(45)], Rate = Rate, Taps = 31 }.Design();
        Assert.Equal(fir.Filter!.Taps.ToArray().Sum(), fir.Figures!.DcGain, 1e-12);
        Assert.Equal(16, fir.Filter.Multiplies);
        Frequency half = Assert.Single(fir.Figures.HalfPower);
        double top = Enumerable.Range(0, 30_001).Max(i => Complex.Abs(Sum(fir.Filter.Taps.ToArray(), i / 1000.0)));
        Assert.Equal(top * Math.Sqrt(0.5), Complex.Abs(Sum(fir.Filter.Taps.ToArray(), half.Hertz)), 1e-6);
    }

    private static FilterWish Wish(FilterFamily family, FilterShape shape, int order, double? fs) => new()
    {
        Family = family,
        Shape = shape,
        Order = order,
        Corners = FilterWords.CornerCount(shape) == 1 ? [Frequency.FromHertz(20)] : [Frequency.FromHertz(20), Frequency.FromHertz(30)],
        Ripple = family is FilterFamily.Chebyshev or FilterFamily.Elliptic ? Decibels.FromStated(0.5) : null,
        Attenuation = family is FilterFamily.InverseChebyshev or FilterFamily.Elliptic ? Decibels.FromStated(50) : null,
        Rate = fs is { } rate ? Frequency.FromHertz(rate) : null,
    };

    private static Complex Sum(double[] taps, double hertz, double rate = 250)
    {
        Complex sum = 0;
        for (int k = 0; k < taps.Length; k++)
        {
            sum += taps[k] * new Complex(Math.Cos(2 * Math.PI * hertz * k / rate), -Math.Sin(2 * Math.PI * hertz * k / rate));
        }

        return sum;
    }

    private static double[] Impulse(Biquad[] sections, int length)
    {
        double[] x = new double[length];
        x[0] = 1;
        return Run(sections, x);
    }

    private static double[] Run(Biquad[] sections, double[] x)
    {
        foreach (Biquad s in sections)
        {
            double[] y = new double[x.Length];
            for (int n = 0; n < x.Length; n++)
            {
                double Before(double[] v, int k) => k <= n ? v[n - k] : 0;
                y[n] = (s.B0 * x[n]) + (s.B1 * Before(x, 1)) + (s.B2 * Before(x, 2)) - (s.A1 * Before(y, 1)) - (s.A2 * Before(y, 2));
            }

            x = y;
        }

        return x;
    }

    private static uint Crc(byte[] bytes)
    {
        uint[] table = [.. Enumerable.Range(0, 256).Select(i => Enumerable.Range(0, 8).Aggregate((uint)i, (c, _) => (c & 1) == 1 ? 0xEDB88320u ^ (c >> 1) : c >> 1))];
        return ~bytes.Aggregate(0xFFFFFFFFu, (crc, b) => table[(crc ^ b) & 0xFF] ^ (crc >> 8));
    }
}
