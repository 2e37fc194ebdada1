using System.Numerics;
using FrontEnd.Converter;
using FrontEnd.Designs;
using FrontEnd.Digital;
using FrontEnd.Electrodes;
using FrontEnd.Interference;
using FrontEnd.Quantities;
using FrontEnd.Reporting;
using FrontEnd.Results;
using FrontEnd.Text;
using FrontEnd.Topologies;
using Xunit;

namespace FrontEnd.Tests.Reporting;

/// <summary>Bands, delays, aliases and supply a second time: Simpson's rule, a phase followed in small steps, and the definitions written out.</summary>
public sealed class ChainFigureTests
{
    private static readonly Band[] Bands =
    [
        new("delta", Frequency.FromHertz(0.5), Frequency.FromHertz(4)), new("alpha", Frequency.FromHertz(8), Frequency.FromHertz(13)),
        new("whole", Designs.Dry.Band.Low, Designs.Dry.Band.High),
        new("beyond", Frequency.FromHertz(30), Frequency.FromHertz(400)) { SmallestSignal = VoltageRms.FromMicrovolts(2) },
        new("high", Frequency.FromHertz(2000), Frequency.FromHertz(3000)),
    ];

    private static readonly (string Name, Design Design)[] Cases =
    [
        ("dry", Designs.Dry with { Bands = Bands }),
        ("gel", Designs.Gel with { Bands = Bands, PacketTime = Duration.FromMilliseconds(20) }),
        ("shaped", Designs.Shaped with { Bands = Bands }),
        ("high-pass at 20 Hz", Designs.Gel with { Bands = Bands, Digital = [new DigitalHighPass { Name = "high-pass", Corner = Frequency.FromHertz(20), Order = 4 }] }),
        ("low-pass at 3 Hz", Designs.Dry with { Bands = Bands, Digital = [new DigitalLowPass { Name = "low-pass", Corner = Frequency.FromHertz(3), Order = 4 }] }),
    ];

    public static IEnumerable<TheoryDataRow<string>> Names => Cases.Select(item => new TheoryDataRow<string>(item.Name));

    private static Design Of(string name) => Cases.Single(item => item.Name == name).Design;

    private static double Square(double x) => x * x;

    private static double Chain(Evaluation evaluation, double f) =>
        evaluation.PathAndConverter([f])[0] / evaluation.GainMid * Math.Sqrt(evaluation.Digital.Power(f));

    private static double KeptShare(Design design, Band band)
    {
        var evaluation = new Evaluation(design);
        const int Steps = 2000;
        double low = band.Low.Hertz, high = Math.Min(band.High.Hertz, design.Converter.Rate.Hertz / 2 * 0.999999), sum = 0, width = Math.Log(high / low);
        for (int i = 0; i <= Steps; i++)
        {
            double f = low * Math.Exp(width * i / Steps);
            sum += (i is 0 or Steps ? 1 : i % 2 == 1 ? 4 : 2) * f * Square(Chain(evaluation, f));
        }

        return Math.Sqrt(sum * width / Steps / 3 / (band.High.Hertz - low));
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Band_SignalAndNoise_PassTheSameFilters(string name)
    {
        Design design = Of(name);
        Assessment assessment = Evaluator.Evaluate(design);
        foreach (Band band in Bands.Where(band => band.Low.Hertz < design.Converter.Rate.Hertz / 2))
        {
            Result ratio = assessment[$"noise.band.{band.Name}.ratio"];
            double share = KeptShare(design, band), signal = (band.SmallestSignal ?? design.SmallestSignal).Volts;
            if (share < 0.1)
            {
                Assert.Equal((ResultState.Word, "filtered out"), (ratio.State, ratio.Text));
                continue;
            }

            Assert.Equal(20 * Math.Log10(share * signal / assessment[$"noise.band.{band.Name}"].Si), ratio.Si, 1e-4);
        }

        Assert.Equal(assessment["noise.total"].Si, assessment["noise.band.whole"].Si, 1e-6 * assessment["noise.total"].Si);
    }

    [Fact]
    public void Band_BehindAHighPassAboveIt_IsFilteredOutAndItsDelayLiesOutsideThePassband()
    {
        Assessment assessment = Evaluator.Evaluate(Of("high-pass at 20 Hz"));
        Assert.Equal("filtered out", assessment["noise.band.delta.ratio"].Text);
        Assert.Contains("outside the passband", assessment["latency.band.delta"].Text, StringComparison.Ordinal);
        Assert.Null(assessment["latency.band.beyond"].Text);
    }

    /// <summary>-dφ/dω of everything that the samples pass, from the phase a little below and above.</summary>
    private static double Delay(Design design, double f)
    {
        var evaluation = new Evaluation(design);
        double step = f * 1e-3;
        Complex low = Response(f - step), high = Response(f + step);
        double delay = -(high / low).Phase / (4 * Math.PI * step) + (design.PacketTime?.Seconds ?? 0);
        AnalogDigitalConverter converter = design.Converter;

        // The decimator: a moving mean over OSR clocks, `order` times; the middle of n samples lies (n - 1)/2 behind the last.
        return converter.Kind == ConverterKind.DeltaSigma ? delay + (converter.SincOrder * 0.5 * (converter.Oversampling - 1) / (converter.Rate.Hertz * converter.Oversampling)) : delay;

        Complex Response(double hertz)
        {
            evaluation.Path.SweepTransfer([hertz]);
            return evaluation.Path.Path(0) * evaluation.Digital.Response(hertz);
        }
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Latency_TotalAndBands_AreTheSlopeOfThePhase(string name)
    {
        Design design = Of(name);
        Assessment assessment = Evaluator.Evaluate(design);
        Near(Delay(design, design.Band.Centre.Hertz), "latency.total");
        double half = design.Converter.Rate.Hertz / 2;
        foreach (Band band in Bands.Where(band => band.Centre.Hertz < half))
        {
            Near(Delay(design, band.Centre.Hertz), $"latency.band.{band.Name}");
        }

        Assert.Equal(ResultState.Missing, assessment["latency.band.high"].State);
        Assert.Equal(Messages.NamedBandAboveHalfRate, assessment["latency.band.high"].FindingCode);

        void Near(double expected, string id) => Assert.Equal(expected, assessment[id].Si, 1e-3 * Math.Abs(expected));
    }

    [Fact]
    public void Latency_OfABandAcrossHalfTheRate_SaysThatItsCentreLiesAbove()
    {
        Design design = Designs.Gel with { Bands = [new Band("wide", Frequency.FromHertz(100), Frequency.FromHertz(400))] };
        Result delay = Evaluator.Evaluate(design)["latency.band.wide"];
        Assert.Equal(ResultState.Word, delay.State);
        Assert.Contains("above half the sampling rate, 125 Hz", delay.Text, StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Aliases_OfEdgesAndHarmonics_AreTheDefinitions(string name)
    {
        Design design = Of(name);
        var evaluation = new Evaluation(design);
        Assessment assessment = Evaluator.Evaluate(design);
        double fs = design.Converter.Rate.Hertz, f1 = design.Band.Low.Hertz, f2 = design.Band.High.Hertz;
        double Loss(double f) => -20 * Math.Log10(evaluation.PathAndConverter([f])[0] / evaluation.GainMid);
        double Lands(double f) => Math.Abs(f - (fs * Math.Round(f / fs)));
        Near(fs - f2, "alias.fold_frequency");
        Near(Loss(fs - f2), "alias.fold_attenuation");
        Near(f1, "alias.low-edge.lands_at");
        Near(Loss(fs - f1), "alias.low-edge.attenuation");
        Near(f2, "alias.high-edge.lands_at");
        Near(Loss(fs - f2), "alias.high-edge.attenuation");
        if (design.Converter.Kind == ConverterKind.DeltaSigma)
        {
            double modulator = (fs * design.Converter.Oversampling) - f2;
            Near(modulator, "alias.modulator_fold_frequency");
            Near(Loss(modulator), "alias.modulator_fold_attenuation");
        }

        for (int h = 1; h <= 9; h++)
        {
            double f = h * design.Mains.Frequency.Hertz;
            Near(Lands(f), $"alias.h{h}.lands_at");
            if (300 < Loss(f))
            {
                // A zero of the decimator.
                Assert.Equal(ResultState.Unbounded, assessment[$"alias.h{h}.attenuation"].State);
                continue;
            }

            Near(Loss(f), $"alias.h{h}.attenuation");
            Near(assessment[$"mains.harmonic.{h}.input"].Si * Math.Pow(10, -Loss(f) / 20), $"alias.h{h}.residue");
            Near(assessment[$"mains.harmonic.{h}.input"].Si * Math.Pow(10, -Loss(f) / 20), $"mains.harmonic.{h}.converter");
        }

        void Near(double expected, string id) => Assert.Equal(expected, assessment[id].Si, (1e-6 * Math.Abs(expected)) + 1e-12);
    }

    /// <summary>A line and a wide interferer: what is left, what lies in the band and what folds there.</summary>
    [Theory]
    [MemberData(nameof(Names))]
    public void Interferers_LineAndWide_AreTheDefinitions(string name)
    {
        Design design = Of(name);
        double fs = design.Converter.Rate.Hertz, f1 = design.Band.Low.Hertz, f2 = design.Band.High.Hertz, line = fs - 11;
        design = design with
        {
            Interferers =
            [
                new Interferer("line", Frequency.FromHertz(line), Frequency.FromHertz(line), VoltageRms.FromMicrovolts(30)),
                new Interferer("muscle", Frequency.FromHertz(20), Frequency.FromHertz(fs + 30), VoltageRms.FromMicrovolts(20)),
            ],
        };
        var evaluation = new Evaluation(design);
        Assessment assessment = Evaluator.Evaluate(design);
        double left = 30e-6 * evaluation.PathAndConverter([line])[0] / evaluation.GainMid * Math.Sqrt(evaluation.Digital.Power(11));
        Assert.Equal(left, assessment["alias.line.residue"].Si, 1e-6 * left);
        Assert.Equal(11, assessment["alias.line.lands_at"].Si, 1e-9);
        Assert.Equal("in the band", assessment["alias.line.residue"].Text);
        double density = Square(20e-6) / (fs + 10);
        double direct = Power(20, f2), folded = Power(fs - f2, fs - f1) + Power(fs + f1, fs + 30);
        Assert.Equal(Math.Sqrt(direct), assessment["alias.muscle.in_band"].Si, 1e-3 * Math.Sqrt(direct));
        Assert.Equal(Math.Sqrt(folded), assessment["alias.muscle.residue"].Si, 1e-3 * Math.Sqrt(folded));

        double Power(double low, double high)
        {
            const int Steps = 2000;
            double sum = 0;
            for (int i = 0; i <= Steps; i++)
            {
                double f = low + ((high - low) * i / Steps), lands = Math.Abs(f - (fs * Math.Round(f / fs)));
                sum += (i is 0 or Steps ? 1 : i % 2 == 1 ? 4 : 2) * Square(evaluation.PathAndConverter([f])[0] / evaluation.GainMid) * evaluation.Digital.Power(lands);
            }

            return density * sum * (high - low) / Steps / 3;
        }
    }

    [Fact]
    public void Supply_RippleReferenceMidRailAndPower_AreTheDefinitions()
    {
        Design design = Designs.Gel with
        {
            Electrodes = Designs.Gel.Electrodes with { Offset = Voltage.FromMillivolts(100) },
            Supply = Designs.Gel.Supply with
            {
                Ripple = VoltageRms.FromVolts(0.02), RippleFrequency = Frequency.FromHertz(227), MidRailNoise = VoltageRms.FromMicrovolts(10),
                BatteryCapacity = Charge.FromCoulombs(3600), UsableShare = Ratio.FromFraction(0.8), OtherCurrent = Current.FromMilliamperes(4), DataOverhead = Ratio.FromFraction(0.2),
            },
            Amplifier = Designs.Gel.Amplifier with { SupplyRejection = Decibels.FromStated(80), SupplyCurrent = Current.FromMicroamperes(50), OffsetVoltage = default, BiasCurrent = default },
            Converter = Designs.Gel.Converter with { ReferenceNoise = VoltageRms.FromMicrovolts(5), ReferenceVoltage = Voltage.FromVolts(2.5), SupplyCurrent = Current.FromMicroamperes(200) },
        };
        Assessment assessment = Evaluator.Evaluate(design);
        Near(20e-3 / 1e4, "supply.ripple_residue");
        Assert.Contains("lands at 23.0 Hz, in the band", assessment["supply.ripple_residue"].Text, StringComparison.Ordinal);

        // Gain 4 behind the electrodes' divider, a passive section of gain 1: the offset stands at the converter nearly four times.
        double dc = 0.1 * 4;
        Assert.Equal(5e-6 * dc / 2.5 / assessment["gain.mid"].Si, assessment["supply.reference_noise"].Si, 0.01 * 5e-6 * dc / 2.5 / 4);
        Near(10e-6 / Math.Pow(10, assessment["mains.system_cmrr"].Si / 20), "supply.mid_rail_noise");
        double current = (8 * 50e-6) + 200e-6 + 4e-3;
        Near(current, "power.supply_current");
        Near(3600 * 0.8 / current, "power.battery_life");
        Near(8 * 250 * 24 * 1.2, "data.bit_rate");

        void Near(double expected, string id) => Assert.Equal(expected, assessment[id].Si, 1e-6 * expected);
    }

    /// <summary>An interferer that reaches over eighty zones of the rate: those beyond the sixteenth are taken together, and come to the same.</summary>
    [Fact]
    public void Interferer_OverManyZones_IsTheSumOfTheZones()
    {
        Design design = Designs.Dry with
        {
            Stages = [new RcSection { Name = "anti-alias 1", R = Resistance.FromKilohms(1), C = Capacitance.FromNanofarads(10) }],
            Converter = Designs.Dry.Converter with { Rate = Frequency.FromHertz(125) }, Digital = [],
            Interferers = [new Interferer("radio", Frequency.FromHertz(200), Frequency.FromHertz(10_000), VoltageRms.FromMicrovolts(50))],
        };
        var evaluation = new Evaluation(design);
        double fs = 125, f1 = design.Band.Low.Hertz, f2 = design.Band.High.Hertz, sum = 0;
        for (int k = 1; k <= 80; k++)
        {
            foreach ((double from, double to) in new[] { ((k * fs) - f2, (k * fs) - f1), ((k * fs) + f1, (k * fs) + f2) })
            {
                double low = Math.Max(from, 200), high = Math.Min(to, 10_000);
                double middle = evaluation.PathAndConverter([(low + high) / 2])[0] / evaluation.GainMid;
                sum += low < high ? Square(middle) * (high - low) : 0;
            }
        }

        double expected = 50e-6 * Math.Sqrt(sum / 9800);
        Assessment assessment = Evaluator.Evaluate(design);
        Assert.Equal(expected, assessment["alias.radio.residue"].Si, 0.005 * expected);
        Assert.Equal(0, assessment["alias.radio.in_band"].Si);
    }

    [Fact]
    public void Latency_WhereTheCentreIsTakenOut_SaysThatItLiesOutsideThePassband()
    {
        Assert.Contains("outside the passband: the digital filters pass less than a tenth at 4.47 Hz", Evaluator.Evaluate(Of("high-pass at 20 Hz"))["latency.total"].Text, StringComparison.Ordinal);
        Assert.DoesNotContain("outside", Evaluator.Evaluate(Of("dry"))["latency.total"].Text, StringComparison.Ordinal);
        Design notched = Designs.Dry with { Bands = Bands, Digital = [new DigitalNotch { Name = "notch", Centre = Bands[1].Centre, Q = 30 }] };
        Assert.Equal("outside the passband: less than a tenth of a sine there remains", Evaluator.Evaluate(notched)["latency.band.alpha"].Text);
    }

    [Fact]
    public void Sweeps_OfAnEvokedResponse_AreTheSquareRoundedUp()
    {
        Design design = Designs.Gel with
        {
            Bands = [new Band("erp", Frequency.FromHertz(1), Frequency.FromHertz(20)) { EvokedAmplitude = Voltage.FromVolts(300e-9), EvokedRatio = 4, EvokedRate = Frequency.FromHertz(2.5) }],
        };
        Assessment assessment = Evaluator.Evaluate(design);
        double sweeps = Math.Ceiling(Square(4 * assessment["noise.band.erp"].Si / 300e-9));
        Assert.True(2 < sweeps);
        Assert.Equal(sweeps, assessment["noise.band.erp.sweeps"].Si);
        Assert.Equal(sweeps / 2.5, assessment["noise.band.erp.sweep_time"].Si, 1e-9);
        Assert.Equal($"{sweeps}", QuantityText.Format(assessment["noise.band.erp.sweeps"].Value));
    }

    /// <summary>Readings: the current through both electrodes and what stands in their leads; behind a buffer that is its skin resistor.</summary>
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void ContactCheck_Readings_AreTheCurrentThroughBothContacts(bool buffered)
    {
        Design design = Designs.Gel with
        {
            ContactCheck = new ContactCheck { Current = Current.FromNanoamperes(6), Frequency = Frequency.FromHertz(31) },
            Electrodes = Designs.Gel.Electrodes with { ActiveBuffer = buffered ? new ElectrodeBuffer { SkinResistor = Resistance.FromKilohms(150) } : null },
        };
        ElectrodeSet set = design.Electrodes;
        Frequency f = design.ContactCheck!.Frequency;
        double m = set.EffectiveMismatch;
        Complex active = set.Active.Impedance(f) * (1 + (m / 2)), reference = set.Reference.Impedance(f) * (1 - (m / 2)), ground = set.Ground!.Impedance(f);
        double lead = design.Input.SeriesResistor.Ohms, atActive = buffered ? 150e3 : lead, back = design.GroundDrive.SeriesResistor.Ohms;
        Assessment assessment = Evaluator.Evaluate(design);
        Near(active + atActive + ground + back, "contact.active.good");
        Near((10 * active) + atActive + ground + back, "contact.active.poor");
        Near(reference + lead + ground + back, "contact.reference.good");
        Near(ground + back + active + atActive, "contact.ground.good");
        Near((10 * ground) + back + active + atActive, "contact.ground.poor");

        // At 250 S/s the fourth of 50 Hz lands at 50 Hz, the third at 100 Hz, the second at 100 Hz, the fifth at dc: 50 Hz is nearest.
        Assert.Equal(19, assessment["contact.beat"].Si, 1e-9);

        void Near(Complex ohms, string id) => Assert.Equal(6e-9 * ohms.Magnitude, assessment[id].Si, 1e-9 * 6e-9 * ohms.Magnitude);
    }

    [Fact]
    public void SupplyCurrent_OfOpAmpsBuffersAndDrive_CountsEachAsOftenAsItIsFitted()
    {
        Design design = Designs.Dry with { Channels = 3, Electrodes = Designs.Dry.Electrodes with { ActiveBuffer = new ElectrodeBuffer(), ReferenceBuffer = new ElectrodeBuffer() } };
        double opAmps = design.Stages.Sum(stage => stage.FittedOpAmp!.SupplyCurrent.Amperes), buffer = new ElectrodeBuffer().OpAmp.SupplyCurrent.Amperes;
        double expected = (3 * (design.Amplifier.SupplyCurrent.Amperes + opAmps)) + (4 * buffer) + design.GroundDrive.SupplyCurrent.Amperes + design.Converter.SupplyCurrent.Amperes + design.Supply.OtherCurrent.Amperes;
        Assert.Equal(expected, Evaluator.Evaluate(design)["power.supply_current"].Si, 1e-12);
    }

    [Fact]
    public void Skew_OfAMultiplexedConverter_LeaksTwoSines()
    {
        Design design = Designs.Gel with { Converter = Designs.Gel.Converter with { Skew = Duration.FromSeconds(2e-3) } };
        Assert.Equal(2 * Math.Sin(Math.PI * 50 * 2e-3), Evaluator.Evaluate(design)["skew.leak"].Si, 1e-12);
    }
}
