using FrontEnd.Designs;
using FrontEnd.Digital;
using FrontEnd.Filters;
using FrontEnd.Findings;
using FrontEnd.Quantities;
using FrontEnd.Reporting;
using FrontEnd.Results;
using Xunit;

namespace FrontEnd.Tests.Digital;

/// <summary>The digital filters as rounded: what is worked out from them, and what is said where the word is too short.</summary>
public sealed class WordTests
{
    private static Design With(DigitalWord word, double rate, int fraction = 0, FilterForm form = FilterForm.DirectI) => Designs.Dry with
    {
        Converter = Designs.Dry.Converter with { Rate = Frequency.FromHertz(rate) },
        Arithmetic = new DigitalArithmetic { Word = word, Form = form, StateFraction = fraction },
    };

    [Fact]
    public void Double_Chain_IsTheDesignToTheBit()
    {
        DigitalChain chain = new(Designs.Dry.Digital, Designs.Dry.Converter.Rate, new DigitalArithmetic());
        Assert.Equal(Butterworth.HighPass(2, Frequency.FromHertz(0.5), Designs.Dry.Converter.Rate).Sections.Coefficients.ToArray(), chain.Filters[0].Coefficients.ToArray());
        Assert.DoesNotContain(Evaluator.Evaluate(Designs.Dry).Results, result => result.Id.Text.EndsWith(".round_off", StringComparison.Ordinal));
    }

    /// <summary>a1 = −32695/16384, a2 = 16311/16384 at 1 kHz: 1 + a1 + a2 = 0 (worked by hand).</summary>
    [Fact]
    public void SixteenBits_HalfHertzAtOneKilohertz_PoleOnTheCircleIsError()
    {
        Assessment assessment = Evaluator.Evaluate(With(DigitalWord.Q15, 1000));
        Finding finding = Assert.Single(assessment.Findings, one => one.Code == "FE0620");
        Assert.Equal("digital[1]", finding.Field);
        Assert.Contains("decimate", finding.Help, StringComparison.Ordinal);
    }

    /// <summary>At 250 S/s the same words do: the corner moves to 0.509 Hz (worked out apart, at -3.0 dB: the gain of the rounded section).</summary>
    [Fact]
    public void SixteenBits_HalfHertzAtQuarterKilohertz_IsUsedAsRounded()
    {
        Design design = With(DigitalWord.Q15, 250);
        DigitalChain chain = new(design.Digital, design.Converter.Rate, design.Arithmetic);
        double corner = MathExtra.Bisect(f => chain.Filters[0].PowerResponse(f, 250) - Math.Pow(10, -0.3), 0.3, 0.8);
        Assert.Equal(0.509, corner, 5e-4);
        Assessment assessment = Evaluator.Evaluate(design);
        Assert.Equal(0, assessment.Results.Single(result => result.Id.Text == "digital.high-pass.dc_gain").Si);
        Assert.Contains(assessment.Findings, one => one.Code == "FE0622" && one.Field == "digital[1]");
    }

    /// <summary>Σh² of 1/A is 1.8e5 for 0.5 Hz at 250 S/s: √(1.8e5/12) = 122 LSB over all frequencies. In the band 0.5 to 40 Hz a part of it is left; each bit below the LSB halves it.</summary>
    [Fact]
    public void RoundOff_OfAHighPass_IsPartOfTheNoiseGainAndHalvesWithEachBit()
    {
        Assessment none = Evaluator.Evaluate(With(DigitalWord.Q31, 250)), four = Evaluator.Evaluate(With(DigitalWord.Q31, 250, 4));
        double Of(Assessment assessment) => assessment.Results.Single(result => result.Id.Text == "digital.high-pass.round_off").Si;
        Design design = With(DigitalWord.Q31, 250);
        double step = design.Converter.LsbVolts / none.Results.Single(result => result.Id.Text == "gain.mid").Si;
        Assert.InRange(Of(none) / step, 122 * 0.3, 122);
        Assert.Equal(16, Of(none) / Of(four), 1e-3);
    }

    /// <summary>The same by a plain sum over the band: one rounding is white, 2^(−2F)/12 LSB² over half the rate, and passes its own poles and the filters behind.</summary>
    [Fact]
    public void RoundOff_InTheBand_IsThePlainSum()
    {
        Design design = With(DigitalWord.Q31, 250, 3);
        Assessment assessment = Evaluator.Evaluate(design);
        DigitalChain chain = new(design.Digital, design.Converter.Rate, design.Arithmetic);
        double step = design.Converter.LsbVolts / assessment.Results.Single(result => result.Id.Text == "gain.mid").Si;
        double low = design.Band.Low.Hertz, high = design.Band.High.Hertz, sum = 0;
        const int Points = 400_000;
        Biquad first = chain.Filters[0][0];
        var path = new SecondOrderSections([new Biquad(1, 0, 0, first.A1, first.A2), .. chain.Filters.Skip(1).SelectMany(f => f.Sections)]);
        for (int i = 0; i < Points; i++)
        {
            sum += path.PowerResponse(low + ((high - low) * (i + 0.5) / Points), 250) * (high - low) / Points;
        }

        Assert.Equal(1, chain.Filters[0].Count);
        Assert.Equal(step * Math.Sqrt(Math.Pow(2, -6) / 12 / 125 * sum), assessment.Results.Single(result => result.Id.Text == "digital.high-pass.round_off").Si, step * 1e-5);
    }

    /// <summary>The notch's loss at both flanks of its moved frequency, by its own formula: the smaller counts.</summary>
    [Fact]
    public void NotchDepth_InADesign_IsTheWorseFlank()
    {
        Design design = Designs.Dry with { Digital = [new DigitalNotch { Name = "notch", Centre = Frequency.FromHertz(100), Q = 4 }], Mains = Designs.Dry.Mains with { Frequency = Frequency.FromHertz(50), Deviation = Ratio.FromFraction(0.03) } };
        double fs = design.Converter.Rate.Hertz, b = 1 / (1 + Math.Tan(Math.PI * 25 / fs)), cosine = Math.Cos(2 * Math.PI * 100 / fs);
        double Loss(double f)
        {
            var z = System.Numerics.Complex.FromPolarCoordinates(1, 2 * Math.PI * f / fs);
            return -20 * Math.Log10(System.Numerics.Complex.Abs(b * ((z * z) - (2 * cosine * z) + 1) / ((z * z) - (2 * b * cosine * z) + (2 * b) - 1)));
        }

        Assert.NotEqual(Loss(97), Loss(103), 1e-3);
        Assert.Equal(Math.Min(Loss(97), Loss(103)), Evaluator.Evaluate(design).Results.Single(result => result.Id.Text == "digital.notch.notch_depth").Si, 1e-6);
    }

    /// <summary>The forecast in the band against a run of the fixed-point filter itself: rounding as noise, so within a fifth.</summary>
    [Fact]
    public void RoundOff_ForecastOverTheWholeBand_AgreesWithARun()
    {
        SecondOrderSections sections = Butterworth.HighPass(2, Frequency.FromHertz(0.5), Frequency.FromHertz(250)).Sections;
        WordFigures figures = WordFigures.Of(sections, NumberFormat.Q31, FilterForm.DirectI);
        int[] input = new int[400_000], output = new int[input.Length];
        Random random = new(1);
        for (int n = 0; n < input.Length; n++)
        {
            input[n] = random.Next(-20000, 20000);
        }

        double[] exact = [.. input.Select(x => (double)x)];
        new FixedRunner(figures.Filter).Run(input, output);
        new SectionRunner(figures.Filter.Sections).Run(exact, exact);
        double[] error = [.. output.Zip(exact, (y, e) => y - e).Skip(5000)];
        double mean = error.Average(), rms = Math.Sqrt(error.Average(e => (e - mean) * (e - mean)));
        Assert.InRange(figures.RoundOff!.Value / rms, 0.8, 1.25);
    }

    /// <summary>A constant up to 0.5/|1 + a1 + a2| stays for ever: from there the section does not move, from twice there it does.</summary>
    [Fact]
    public void DeadBand_ForecastOfAnIntegerSection_IsWhereItStops()
    {
        SecondOrderSections sections = Butterworth.LowPass(1, Frequency.FromHertz(0.5), Frequency.FromHertz(250)).Sections;
        QuantisedFilter filter = QuantisedFilter.Of(sections, NumberFormat.Q31);
        double band = WordFigures.Of(sections, NumberFormat.Q31, FilterForm.DirectI).DeadBand!.Value;
        int[] samples = new int[4000];
        Array.Fill(samples, 2000, 0, 2000);
        new FixedRunner(filter).Run(samples, samples);
        Assert.InRange(samples[^1], band * 0.9, band * 1.1);
        Assert.Equal(samples[^1], samples[^2]);
    }

    /// <summary>Advice that is followed ends: with the bits that it names nothing is said any more; where it says double, no number of bits says nothing.</summary>
    [Theory]
    [InlineData(DigitalWord.Q31, 12, 250)]
    [InlineData(DigitalWord.Q31, 16, 250)]
    [InlineData(DigitalWord.Q31, 18, 1000)]
    [InlineData(DigitalWord.Q31, 24, 250)]
    [InlineData(DigitalWord.Q15, 12, 250)]
    [InlineData(DigitalWord.Q15, 20, 250)]
    public void StateBits_AsAdvised_EndTheWarnings(DigitalWord word, int bits, double rate)
    {
        List<Finding> Said(int fraction)
        {
            Design design = With(word, rate, fraction);
            return [.. Evaluator.Evaluate(design with { Converter = design.Converter with { Bits = bits, Lsb = null } }).Findings.Where(f => f.Code is "FE0622" or "FE0623" or "FE0624")];
        }

        Finding[][] all = [.. Enumerable.Range(0, 17).Select(fraction => Said(fraction).ToArray())];
        int[] quiet = [.. Enumerable.Range(0, 17).Where(fraction => all[fraction].Length == 0)];
        Assert.Contains(all, said => said.Length != 0);
        foreach (Finding finding in all.SelectMany(said => said))
        {
            if (quiet.Length == 0)
            {
                Assert.StartsWith("use double (digital-word): the filters need", finding.Help, StringComparison.Ordinal);
            }
            else
            {
                string range = quiet[0] == quiet[^1] ? $"keep {quiet[0]} bit" : $"keep {quiet[0]} to {quiet[^1]} bits";
                Assert.StartsWith(range, finding.Help, StringComparison.Ordinal);
            }
        }
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(4)]
    [InlineData(5)]
    [InlineData(7)]
    [InlineData(10)]
    public void Runner_ManySections_GivesTheBitsOfOneAfterTheOther(int count)
    {
        SecondOrderSections sections = FilterDesign.Digital(new ButterworthPrototype(2 * count), new LowPass(Frequency.FromHertz(40)), Frequency.FromHertz(250)).Sections;
        foreach (int length in (int[])[1, 7, 8, 9, 100])
        {
            double[] x = [.. Enumerable.Range(0, length).Select(n => Math.Sin(n * n))];
            double[] expected = [.. x];
            var runner = new SectionRunner(sections);
            (double S1, double S2)[] state = new (double, double)[count];
            for (int again = 0; again < 2; again++)
            {
                double[] output = new double[length];
                runner.Run(x, output);
                for (int n = 0; n < length; n++)
                {
                    double value = x[n];
                    for (int i = 0; i < count; i++)
                    {
                        Biquad s = sections[i];
                        double y = (s.B0 * value) + state[i].S1;
                        state[i] = ((s.B1 * value) + state[i].S2 - (s.A1 * y), (s.B2 * value) - (s.A2 * y));
                        value = y;
                    }

                    expected[n] = value;
                }

                Assert.Equal(expected.Select(BitConverter.DoubleToInt64Bits), output.Select(BitConverter.DoubleToInt64Bits));
            }
        }
    }

    [Fact]
    public void EllipticBandPass_InADesign_IsTheFilterOfThatName()
    {
        DigitalBandPass stage = new() { Name = "alpha", Family = FilterFamily.Elliptic, Order = 4, Ripple = Decibels.FromStated(0.5), Attenuation = Decibels.FromStated(60) };
        DigitalChain chain = new([stage], Frequency.FromHertz(250));
        Assert.Equal(4, chain.Filters[0].Count);
        Assert.Equal(-0.5, 10 * Math.Log10(chain.Power(8)), 1e-6);
        Assert.Equal(-0.5, 10 * Math.Log10(chain.Power(13)), 1e-6);
    }

    [Fact]
    public void Elliptic_AttenuationBelowRipple_IsFindingAtTheFilter()
    {
        Design design = Designs.Dry with { Digital = [new DigitalLowPass { Name = "low", Family = FilterFamily.Elliptic, Ripple = Decibels.FromStated(3), Attenuation = Decibels.FromStated(2) }] };
        Assert.Contains(Evaluator.Evaluate(design).Findings, one => one.Code == "FE0607" && one.Field == "digital[1]");
    }

    /// <summary>Ripple and attenuation have values in every stage; a family that has no use for them is not asked with them, or every design would be warned.</summary>
    [Fact]
    public void Wish_OfEachFamily_AsksForItsOwnLossesAlone()
    {
        foreach (FilterFamily family in Enum.GetValues<FilterFamily>())
        {
            FilterWish wish = new DigitalLowPass { Family = family }.Wish(Frequency.FromHertz(250));
            Assert.Equal(family is FilterFamily.Chebyshev or FilterFamily.Elliptic, wish.Ripple is not null);
            Assert.Equal(family is FilterFamily.InverseChebyshev or FilterFamily.Elliptic, wish.Attenuation is not null);
            Assert.Empty(wish.Design().Findings);
        }
    }

    /// <summary>A section of zeros alone, b = 0, 0, 0, once had its zeros divided by themselves.</summary>
    [Fact]
    public void FloatVariance_SectionThatLetsNothingThrough_IsNone() =>
        Assert.Equal(0, RoundOff.FloatVariance(new SecondOrderSections([new Biquad(0, 0, 0, -1, 0.5)]), FilterForm.DirectI, 1e4, NumberFormat.Single), 1e-60);
}
