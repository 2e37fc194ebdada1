using FrontEnd.Amplifier;
using FrontEnd.Budgets;
using FrontEnd.Citations;
using FrontEnd.Designs;
using FrontEnd.Electrodes;
using FrontEnd.Identity;
using FrontEnd.Textbook;
using FrontEnd.Topologies;

namespace FrontEnd.Reporting;

/// <summary>Noise referred to the electrodes: total, shares, floors, bands.</summary>
internal static class NoiseReport
{
    public static void AddTo(ResultList list, Evaluation evaluation)
    {
        Design design = evaluation.Design;
        NoiseBudget noise = evaluation.Noise;
        double total = noise.Total, floor = noise.ThermalFloor, electrodes = noise.Electrodes;
        Frequency low = design.Band.Low, high = design.Band.High;
        string band = FormattableString.Invariant($"in {QuantityText.FormatPart(low)} to {QuantityText.FormatPart(high)}");
        NoiseRow[] rows = [.. noise.Rows()];
        TextbookFigure[] hands = [.. rows.Select(row => Hand(evaluation, row.Id)).OfType<TextbookFigure>().Where(hand => 0 < hand.Value)];
        TextbookFigure? together = hands.Length == 0
            ? null
            : NoiseFormulas.Together([.. hands.Select(hand => VoltageRms.FromVolts(hand.Value))]);
        string? assumption = design.Digital.Count == 0
            ? null
            : "the sum takes the band as a rectangle and the path as flat; the digital filters and the path's own response shape it";
        list.Number(ResultIds.Noise.Total, $"noise at the electrodes, rms, {band}", "σ", VoltageRms.FromVolts(total), Equations.Noise,
            $"√({string.Join(" + ", rows.Where(row => 1e-4 * total < row.Rms).OrderByDescending(row => row.Rms).Select(row => $"({QuantityText.Format(row.Rms, "V", 4)})²"))}) = {QuantityText.Format(total, "V", 4)}",
            together, assumption);
        list.Number(ResultIds.Noise.PeakToPeak, "noise at the electrodes, peak-to-peak", $"{TradeConstants.NoisePeakToPeak}·σ",
            VoltagePeakToPeak.FromVolts(TradeConstants.NoisePeakToPeak * total), Equations.PeakToPeak,
            hand: NoiseFormulas.PeakToPeak(VoltageRms.FromVolts(total)));
        list.Number(
            ResultIds.Noise.BoardShare, "noise at the electrodes without the electrodes' excess noise, peak-to-peak",
            $"{TradeConstants.NoisePeakToPeak}·σ_board", VoltagePeakToPeak.FromVolts(TradeConstants.NoisePeakToPeak * noise.WithoutExcess),
            Equations.Noise,
            text: "the electrodes' thermal noise and the board; the excess noise that skin and contact make is left out");
        list.Number(ResultIds.Noise.Shorted, "noise with every electrode a short circuit, rms, as far as the board makes it", "σ_short",
            VoltageRms.FromVolts(noise.Shorted), Equations.Noise);
        list.Number(
            ResultIds.Noise.ThermalFloor, "thermal noise of active and reference electrode, rms", "σ_th", VoltageRms.FromVolts(floor),
            Equations.Thermal,
            hand: NoiseFormulas.ElectrodeThermal([Built(design, 0), Built(design, 1)], design.SkinTemperature, low, high),
            assumption: ElectrodeAssumption(design));
        list.Decibel(ResultIds.Noise.OverThermalFloor, "noise over the electrodes' thermal floor", "", total / floor, Equations.OverFloor,
            "the electrodes have no resistance");
        list.Number(ResultIds.Noise.Electrodes, "noise of all electrodes, thermal and excess, rms", "σ_el",
            VoltageRms.FromVolts(electrodes), Equations.ElectrodeNoise);
        list.Decibel(ResultIds.Noise.Figure, "noise figure: what the design adds to what the skin gives", "NF", total / electrodes,
            Equations.NoiseFigure, "the electrodes make no noise");
        foreach (NoiseRow row in rows)
        {
            double share = total == 0 ? 0 : row.Rms * row.Rms / (total * total);
            list.Number(
                ResultIds.Noise.Source(row.Id), RowName(row), "σ", VoltageRms.FromVolts(row.Rms), Equations.ForSource(row.Id),
                hand: Hand(evaluation, row.Id), assumption: Assumption(design, row.Id),
                text: QuantityText.FormatPercent(Ratio.FromFraction(share)) + " of the variance");
            list.Share(ResultIds.Noise.Source(row.Id), total == 0 ? null : share);
        }

        AddBands(list, evaluation);
    }

    private static string RowName(NoiseRow row) =>
        row.Id == SourceId.Folded ? "noise that sampling folds into the band, rms"
        : row.Id == SourceId.Converter ? "noise of the converter itself, rms"
        : $"noise of {row.Name}, rms";

    /// <summary>An electrode with its mismatch: 0 active, 1 reference.</summary>
    public static Electrode Built(Design design, int which)
    {
        double m = design.Electrodes.EffectiveMismatch;
        return which == 0 ? design.Electrodes.Active.Scaled(1 + (m / 2)) : design.Electrodes.Reference.Scaled(1 - (m / 2));
    }

    private static void AddBands(ResultList list, Evaluation evaluation)
    {
        Design design = evaluation.Design;
        double nyquist = design.Converter.Rate.Hertz / 2;
        foreach (Band band in design.Bands)
        {
            BandIds ids = ResultIds.Noise.Band(band.Name);
            string range = $"{QuantityText.FormatPart(band.Low)} to {QuantityText.FormatPart(band.High)}";
            if (nyquist <= band.Low.Hertz)
            {
                list.Missing(ids.Noise, $"noise in {band.Name} ({range}), rms", "σ", "V", Equations.Noise, Messages.NamedBandAboveHalfRate);
                continue;
            }

            double rms = evaluation.Noise.InBand(band.Low.Hertz, band.High.Hertz);
            MainsHarmonic[] inside = [.. evaluation.Mains.Harmonics.Where(harmonic =>
                harmonic.LandsLow <= band.High.Hertz && band.Low.Hertz <= harmonic.LandsHigh)];
            string lands = inside.Length == 0
                ? $"no mains harmonic lands in it ({design.Mains.LookedAt})"
                : $"mains harmonics that land in it ({design.Mains.LookedAt}): "
                    + string.Join(", ", inside.Select(harmonic => harmonic.Order));
            list.Number(ids.Noise, $"noise in {band.Name} ({range}), rms", "σ", VoltageRms.FromVolts(rms), Equations.Noise, text: lands);
            AddRatio(list, evaluation, band, rms);
            if (band.EvokedAmplitude is { } amplitude)
            {
                TextbookFigure sweeps = NoiseFormulas.SweepsToAverage(band.EvokedRatio, VoltageRms.FromVolts(rms), amplitude);
                double count = Math.Ceiling(sweeps.Value - 1e-9);
                list.Number(ids.Sweeps, $"sweeps to average for an evoked response in {band.Name}", "N", Ratio.FromFraction(count),
                    Equations.Sweeps, hand: sweeps);
                list.Number(ids.SweepTime, $"time that the sweeps take in {band.Name}", "t",
                    Duration.FromSeconds(count / band.EvokedRate.Hertz), Equations.Sweeps);
            }
        }
    }

    /// <summary>Signal over noise in a band, both behind the same filters.</summary>
    private static void AddRatio(ResultList list, Evaluation evaluation, Band band, double noise)
    {
        ResultId id = ResultIds.Noise.Band(band.Name).Ratio;
        string name = $"smallest signal over noise in {band.Name}, both as recorded";
        double smallest = (band.SmallestSignal ?? evaluation.Design.SmallestSignal).Volts,
            share = evaluation.Noise.SignalInBand(band.Low.Hertz, band.High.Hertz);
        if (share < NoiseBudget.LeastShareOfASignal)
        {
            list.Word(id, name, "filtered out", Equations.SignalToNoise);
            return;
        }

        string left = QuantityText.FormatPercent(Ratio.FromFraction(share));
        list.Decibel(id, name, "", share * smallest / noise, Equations.SignalToNoise, "no noise in the band",
            text: share < 0.99 ? $"{left} of the signal's amplitude is left" : null);
        list.PutIn(id, $"20·log10({QuantityText.FormatNumber(share, 4)} · {QuantityText.Format(smallest, "V", 4)}/{QuantityText.Format(noise, "V", 4)})");
    }

    private static string ElectrodeAssumption(Design design) =>
        design.Digital.Count == 0
            ? "the input's load and the path's response are left out of the formula"
            : "the digital filters and the path's response are left out of the formula";

    private static string? Assumption(Design design, SourceId source) =>
        source == SourceId.ActiveElectrode || source == SourceId.ReferenceElectrode ? ElectrodeAssumption(design)
        : source == SourceId.ProtectionResistors || source == SourceId.BiasResistors || source == SourceId.AmplifierVoltage
            || source == SourceId.AmplifierCurrent
            ? "the formula takes the band as a rectangle; filters and path shape it"
        : source == SourceId.SkinResistors || source == SourceId.BufferVoltage
            || design.Stages.Any(stage => source == SourceId.ResistorsOf(stage.Name) || source == SourceId.VoltageOf(stage.Name))
            ? "the formula takes the band as a rectangle and the gain as flat"
        : null;

    /// <summary>The textbook formula of one row; null where there is none.</summary>
    private static TextbookFigure? Hand(Evaluation evaluation, SourceId source)
    {
        Design design = evaluation.Design;
        Frequency low = design.Band.Low, high = design.Band.High;
        DifferentialAmplifier amplifier = design.Amplifier;
        if (source.IsElectrode)
        {
            return source == SourceId.ActiveElectrode
                ? ElectrodeHand(design, 0)
                : source == SourceId.ReferenceElectrode
                ? ElectrodeHand(design, 1)
                : null;
        }

        if (source == SourceId.ProtectionResistors)
        {
            Resistance fitted = design.Input.SeriesResistor;
            return fitted.Ohms <= 0 ? null : NoiseFormulas.Thermal(fitted + fitted, design.BoardTemperature, low, high);
        }

        if (source == SourceId.AmplifierVoltage)
        {
            double density = NoiseFormulas.InputReferredDensity(amplifier.InputNoise, amplifier.OutputNoise, amplifier.Gain).Value;
            return NoiseFormulas.Amplifier(VoltageNoiseDensity.FromVoltsPerRootHertz(density), amplifier.NoiseCorner, low, high);
        }

        if (source == SourceId.AmplifierCurrent)
        {
            Resistance electrodes = design.Electrodes.Active.DcResistance + design.Electrodes.Reference.DcResistance;
            return NoiseFormulas.Current(amplifier.CurrentNoise, electrodes, amplifier.CurrentNoiseCorner, low, high);
        }

        return source == SourceId.Quantisation
            ? QuantisationHand(evaluation)
            : source == SourceId.Converter
            ? ConverterHand(evaluation)
            : StageHand(design, source);
    }

    private static TextbookFigure QuantisationHand(Evaluation evaluation)
    {
        Voltage step = Voltage.FromVolts(evaluation.Design.Converter.LsbVolts);
        double value = ConverterFormulas.QuantisationNoise(step).Value * Math.Sqrt(ShareOfHalfRate(evaluation.Design)) / evaluation.GainMid;
        string substituted = $"{QuantityText.Format(step.Volts, "V")}/√12 · {InTheBand(evaluation, value)}";
        return new TextbookFigure(value, "LSB/√12·√(2B/fs)/G", substituted, new SourceRef("quantisation-mt-001")) { Unit = "V" };
    }

    private static TextbookFigure ConverterHand(Evaluation evaluation)
    {
        double noise = evaluation.Design.Converter.NoiseVolts;
        double value = noise * Math.Sqrt(ShareOfHalfRate(evaluation.Design)) / evaluation.GainMid;
        string substituted = $"{QuantityText.Format(noise, "V")} · {InTheBand(evaluation, value)}";
        return new TextbookFigure(value, "σ_adc·√(2B/fs)/G", substituted, Equations.Derived) { Unit = "V" };
    }

    /// <summary>The band's width over half the sampling rate.</summary>
    private static double ShareOfHalfRate(Design design) =>
        (design.Band.High.Hertz - design.Band.Low.Hertz) / (design.Converter.Rate.Hertz / 2);

    private static string InTheBand(Evaluation evaluation, double value)
    {
        Design design = evaluation.Design;
        string width = QuantityText.FormatPart(Frequency.FromHertz(design.Band.High.Hertz - design.Band.Low.Hertz));
        return $"√(2 · {width}/{QuantityText.FormatPart(design.Converter.Rate)})/{QuantityText.FormatNumber(evaluation.GainMid, 4)} = {QuantityText.Format(value, "V", 4)}";
    }

    private static TextbookFigure ElectrodeHand(Design design, int which)
    {
        Electrode electrode = Built(design, which);
        TextbookFigure thermal = NoiseFormulas.ElectrodeThermal([electrode], design.SkinTemperature, design.Band.Low, design.Band.High);
        return electrode.ExcessNoise.VoltsSquaredPerHertz <= 0
            ? thermal
            : NoiseFormulas.Together(
                VoltageRms.FromVolts(thermal.Value),
                    VoltageRms.FromVolts(NoiseFormulas.Excess(electrode.ExcessNoise, electrode.ExcessSlope, design.Band.Low,
                        design.Band.High).Value));
    }

    /// <summary>Op-amp voltage of a stage, referred to the input by the gain in front.</summary>
    private static TextbookFigure? StageHand(Design design, SourceId source)
    {
        double before = design.Amplifier.Gain;
        foreach (Stage stage in design.Stages)
        {
            if (source == SourceId.VoltageOf(stage.Name) && stage.FittedOpAmp is { } opAmp)
            {
                return NoiseFormulas.Amplifier(VoltageNoiseDensity.FromVoltsPerRootHertz(opAmp.VoltageNoise.VoltsPerRootHertz / before),
                    opAmp.NoiseCorner, design.Band.Low, design.Band.High);
            }

            before *= stage.NominalGain;
        }

        return null;
    }
}
