using FrontEnd.Amplifier;
using FrontEnd.Budgets;
using FrontEnd.Converter;
using FrontEnd.Designs;
using FrontEnd.Electrodes;
using FrontEnd.Fields;
using FrontEnd.Quantities;
using FrontEnd.Results;
using FrontEnd.Text;
using FrontEnd.Textbook;
using FrontEnd.Topologies;

namespace FrontEnd.Reporting;

/// <summary>Gain and noise.</summary>
internal static class NoiseReport
{
    public static void AddTo(ResultList list, Evaluation evaluation)
    {
        Design design = evaluation.Design;
        NoiseBudget noise = evaluation.Noise;
        AddGain(list, evaluation);
        double total = noise.Total, floor = noise.ThermalFloor, electrodes = noise.Electrodes;
        Frequency low = design.Band.Low, high = design.Band.High;
        string band = FormattableString.Invariant($"in {QuantityText.FormatPart(low)} to {QuantityText.FormatPart(high)}");
        (string Name, double Rms)[] rows = [.. noise.Rows()];
        TextbookFigure[] hands = [.. rows.Select(row => Hand(evaluation, row.Name)).OfType<TextbookFigure>().Where(hand => 0 < hand.Value)];
        TextbookFigure? together = hands.Length == 0 ? null : NoiseFormulas.Together([.. hands.Select(hand => VoltageRms.FromVolts(hand.Value))]);
        string? assumption = design.Digital.Count == 0 ? null : "the sum takes the band as a rectangle and the path as flat; the digital filters and the path's own response shape it";
        list.Number("noise.total", $"noise at the electrodes, rms, {band}", "σ", VoltageRms.FromVolts(total), Equations.Noise,
            $"√({string.Join(" + ", rows.Where(row => 1e-4 * total < row.Rms).OrderByDescending(row => row.Rms).Select(row => $"({QuantityText.Format(row.Rms, "V", 4)})²"))}) = {QuantityText.Format(total, "V", 4)}",
            together, assumption);
        list.Number("noise.peak_to_peak", "noise at the electrodes, peak-to-peak", $"{TradeConstants.NoisePeakToPeak}·σ", VoltagePeakToPeak.FromVolts(TradeConstants.NoisePeakToPeak * total), Equations.PeakToPeak, hand: NoiseFormulas.PeakToPeak(VoltageRms.FromVolts(total)));
        list.Number(
            "noise.board_share", "noise at the electrodes without the electrodes' excess noise, peak-to-peak", $"{TradeConstants.NoisePeakToPeak}·σ_board", VoltagePeakToPeak.FromVolts(TradeConstants.NoisePeakToPeak * noise.WithoutExcess), Equations.Noise,
            text: "the board's share: what better parts can change");
        list.Number("noise.shorted", "noise with every electrode a short circuit, rms, as far as the board makes it", "σ_short", VoltageRms.FromVolts(noise.Shorted), Equations.Noise);
        list.Number(
            "noise.thermal_floor", "thermal noise of active and reference electrode, rms", "σ_th", VoltageRms.FromVolts(floor), Equations.Thermal,
            hand: NoiseFormulas.ElectrodeThermal([Built(design, 0), Built(design, 1)], design.SkinTemperature, low, high),
            assumption: ElectrodeAssumption(design));
        list.Decibel("noise.over_thermal_floor", "noise over the electrodes' thermal floor", "", total, floor, Equations.OverFloor, "the electrodes have no resistance");
        list.Number("noise.electrodes", "noise of all electrodes, thermal and excess, rms", "σ_el", VoltageRms.FromVolts(electrodes), Equations.ElectrodeNoise);
        list.Decibel("noise.figure", "noise figure: what the design adds to what the skin gives", "NF", total, electrodes, Equations.NoiseFigure, "the electrodes make no noise");
        foreach ((string name, double rms) in rows)
        {
            double share = total == 0 ? 0 : rms * rms / (total * total);
            list.Number(
                "noise.source." + DesignFields.Slug(name), RowName(name), "σ", VoltageRms.FromVolts(rms), Equations.ForSource(name), hand: Hand(evaluation, name), assumption: Assumption(design, name),
                text: QuantityText.FormatPercent(Ratio.FromFraction(share)) + " of the variance");
        }

        AddBands(list, evaluation);
    }

    private static string RowName(string name) => name switch
    {
        "folded" => "noise that sampling folds into the band, rms",
        "quantisation" => "noise of quantisation, rms",
        "converter" => "noise of the converter itself, rms",
        _ => $"noise of {name}, rms",
    };

    /// <summary>An electrode with its mismatch: 0 active, 1 reference.</summary>
    public static Electrode Built(Design design, int which)
    {
        double m = design.Electrodes.EffectiveMismatch;
        return which == 0 ? design.Electrodes.Active.Scaled(1 + (m / 2)) : design.Electrodes.Reference.Scaled(1 - (m / 2));
    }

    private static void AddGain(ResultList list, Evaluation evaluation)
    {
        Design design = evaluation.Design;
        double nominal = design.Amplifier.Gain * design.Stages.Aggregate(1.0, (product, stage) => product * stage.NominalGain);
        string substituted = QuantityText.FormatNumber(design.Amplifier.Gain, 4) + string.Concat(design.Stages.Select(stage => stage.GainText));
        var hand = new TextbookFigure(nominal, "G1·Π(1 + Rf/Rg)", $"{substituted} = {QuantityText.FormatNumber(nominal, 4)}", Equations.CommonPractice) { Unit = "1" };
        const string Assumption = "the formula leaves out the electrode divider, the coupling's corner and the op-amps' finite gain";
        list.Number("gain.mid", "gain from the electrodes to the samples, mid-band", "G_mid", Ratio.FromFraction(evaluation.GainMid), Equations.GainMid, hand: hand, assumption: Assumption);
        list.Number("gain.mid_frequency", "geometric centre of the band", "f_mid", design.Band.Centre, Equations.CentreFrequency,
            $"√({QuantityText.FormatPart(design.Band.Low)} · {QuantityText.FormatPart(design.Band.High)})");
        list.Number("gain.total_analog", "analogue gain to the converter's pin, mid-band", "|H_path|", Ratio.FromFraction(evaluation.PathGain), Equations.GainTotal, hand: hand, assumption: Assumption);
    }

    private static void AddBands(ResultList list, Evaluation evaluation)
    {
        Design design = evaluation.Design;
        double nyquist = design.Converter.Rate.Hertz / 2;
        foreach (Band band in design.Bands)
        {
            string slug = "noise.band." + DesignFields.Slug(band.Name);
            string range = $"{QuantityText.FormatPart(band.Low)} to {QuantityText.FormatPart(band.High)}";
            if (nyquist <= band.Low.Hertz)
            {
                list.Missing(slug, $"noise in {band.Name} ({range}), rms", "σ", "V", Equations.Noise, Messages.NamedBandAboveHalfRate);
                continue;
            }

            double rms = evaluation.Noise.InBand(band.Low.Hertz, band.High.Hertz);
            MainsHarmonic[] inside = [.. evaluation.Mains.Harmonics.Where(harmonic => harmonic.LandsLow <= band.High.Hertz && band.Low.Hertz <= harmonic.LandsHigh)];
            string lands = inside.Length == 0 ? "no mains harmonic lands in it" : "mains harmonics that land in it: " + string.Join(", ", inside.Select(harmonic => harmonic.Order));
            list.Number(slug, $"noise in {band.Name} ({range}), rms", "σ", VoltageRms.FromVolts(rms), Equations.Noise, text: lands);
            VoltageRms smallest = band.SmallestSignal ?? design.SmallestSignal;
            list.Decibel(slug + ".ratio", $"smallest signal over noise in {band.Name}", "", smallest.Volts, rms, Equations.SignalToNoise, "no noise in the band");
            if (band.EvokedAmplitude is { } amplitude)
            {
                TextbookFigure sweeps = NoiseFormulas.SweepsToAverage(band.EvokedRatio, VoltageRms.FromVolts(rms), amplitude);
                double count = Math.Ceiling(sweeps.Value - 1e-9);
                list.Number(slug + ".sweeps", $"sweeps to average for an evoked response in {band.Name}", "N", Ratio.FromFraction(count), Equations.Sweeps, hand: sweeps);
                list.Number(slug + ".sweep_time", $"time that the sweeps take in {band.Name}", "t", Duration.FromSeconds(count / band.EvokedRate.Hertz), Equations.Sweeps);
            }
        }
    }

    private static string ElectrodeAssumption(Design design) =>
        design.Digital.Count == 0 ? "the input's load and the path's response are left out of the formula" : "the digital filters and the path's response are left out of the formula";

    private static string? Assumption(Design design, string name) => name switch
    {
        "active electrode" or "reference electrode" => ElectrodeAssumption(design),
        "protection resistors" or "amplifier voltage" or "amplifier current" or "bias resistors" => "the formula takes the band as a rectangle; filters and path shape it",
        _ when name.EndsWith(" resistors", StringComparison.Ordinal) || name.EndsWith(" voltage", StringComparison.Ordinal) => "the formula takes the band as a rectangle and the gain as flat",
        _ => null,
    };

    /// <summary>The textbook formula of one row.</summary>
    private static TextbookFigure? Hand(Evaluation evaluation, string name)
    {
        Design design = evaluation.Design;
        Frequency low = design.Band.Low, high = design.Band.High;
        DifferentialAmplifier amplifier = design.Amplifier;
        AnalogDigitalConverter converter = design.Converter;
        double share = (high.Hertz - low.Hertz) / (converter.Rate.Hertz / 2);
        switch (name)
        {
            case "active electrode":
                return ElectrodeHand(design, 0);
            case "reference electrode":
                return ElectrodeHand(design, 1);
            case "protection resistors" when 0 < design.Input.SeriesResistor.Ohms:
                return NoiseFormulas.Thermal(design.Input.SeriesResistor + design.Input.SeriesResistor, design.BoardTemperature, low, high);
            case "amplifier voltage":
                return NoiseFormulas.Amplifier(
                    VoltageNoiseDensity.FromVoltsPerRootHertz(NoiseFormulas.InputReferredDensity(amplifier.InputNoise, amplifier.OutputNoise, amplifier.Gain).Value), amplifier.NoiseCorner, low, high);
            case "amplifier current":
                {
                    Resistance source = design.Electrodes.Active.DcResistance + design.Electrodes.Reference.DcResistance;
                    return NoiseFormulas.Current(amplifier.CurrentNoise, source, amplifier.CurrentNoiseCorner, low, high);
                }

            case "quantisation":
                {
                    double q = ConverterFormulas.QuantisationNoise(Voltage.FromVolts(converter.LsbVolts)).Value;
                    double value = q * Math.Sqrt(share) / evaluation.GainMid;
                    return new TextbookFigure(
                        value, "LSB/√12·√(2B/fs)/G",
                        $"{QuantityText.Format(converter.LsbVolts, "V")}/√12 · √(2 · {QuantityText.FormatPart(Frequency.FromHertz(high.Hertz - low.Hertz))}/{QuantityText.FormatPart(converter.Rate)})/{QuantityText.FormatNumber(evaluation.GainMid, 4)} = {QuantityText.Format(value, "V", 4)}",
                        new SourceRef("quantisation-mt-001")) { Unit = "V" };
                }

            case "converter":
                {
                    double value = converter.Noise.Volts * Math.Sqrt(share) / evaluation.GainMid;
                    return new TextbookFigure(
                        value, "σ_adc·√(2B/fs)/G",
                        $"{QuantityText.Format(converter.Noise.Volts, "V")} · √(2 · {QuantityText.FormatPart(Frequency.FromHertz(high.Hertz - low.Hertz))}/{QuantityText.FormatPart(converter.Rate)})/{QuantityText.FormatNumber(evaluation.GainMid, 4)} = {QuantityText.Format(value, "V", 4)}",
                        Equations.Derived) { Unit = "V" };
                }

            default:
                return StageHand(design, name);
        }
    }

    private static TextbookFigure ElectrodeHand(Design design, int which)
    {
        Electrode electrode = Built(design, which);
        TextbookFigure thermal = NoiseFormulas.ElectrodeThermal([electrode], design.SkinTemperature, design.Band.Low, design.Band.High);
        return electrode.ExcessNoise.VoltsSquaredPerHertz <= 0
            ? thermal
            : NoiseFormulas.Together(
                VoltageRms.FromVolts(thermal.Value), VoltageRms.FromVolts(NoiseFormulas.Excess(electrode.ExcessNoise, electrode.ExcessSlope, design.Band.Low, design.Band.High).Value));
    }

    /// <summary>Op-amp voltage and resistors of a gain stage, referred to the input by the gain in front.</summary>
    private static TextbookFigure? StageHand(Design design, string name)
    {
        double before = design.Amplifier.Gain;
        foreach (Stage stage in design.Stages)
        {
            if (name == stage.Name + " voltage" && stage.FittedOpAmp is { } opAmp)
            {
                return NoiseFormulas.Amplifier(VoltageNoiseDensity.FromVoltsPerRootHertz(opAmp.VoltageNoise.VoltsPerRootHertz / before), opAmp.NoiseCorner, design.Band.Low, design.Band.High);
            }

            before *= stage.NominalGain;
        }

        return null;
    }
}
