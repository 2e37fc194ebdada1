using FrontEnd.Budgets;
using FrontEnd.Designs;
using FrontEnd.Electrodes;
using FrontEnd.Identity;
using FrontEnd.Textbook;

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
        var hands = new NoiseHands(evaluation);
        list.Number(ResultIds.Noise.Total, $"noise at the electrodes, rms, {band}", "σ", VoltageRms.FromVolts(total), Equations.Noise,
            () => $"√({string.Join(" + ", rows.Where(row => 1e-4 * total < row.Rms).OrderByDescending(row => row.Rms).Select(row => $"({QuantityText.Format(row.Rms, "V", 4)})²"))}) = {QuantityText.Format(total, "V", 4)}",
            hands.Total(rows), new(() => hands.TotalReason(rows)));
        list.Number(ResultIds.Noise.PeakToPeak, "noise at the electrodes, peak-to-peak", $"{TradeConstants.NoisePeakToPeak}·σ",
            VoltagePeakToPeak.FromVolts(TradeConstants.NoisePeakToPeak * total), Equations.PeakToPeak,
            hand: NoiseFormulas.PeakToPeak(VoltageRms.FromVolts(total)));
        AddBoardShare(list, evaluation);
        list.Number(ResultIds.Noise.Shorted, "noise without that of the electrodes, rms", "σ_short",
            VoltageRms.FromVolts(noise.Shorted), Equations.Noise);
        list.Number(
            ResultIds.Noise.ThermalFloor, "thermal noise of active and reference electrode, rms", "σ_th", VoltageRms.FromVolts(floor),
            Equations.Thermal,
            hand: NoiseFormulas.ElectrodeThermal([Built(design, 0), Built(design, 1)], design.SkinTemperature, low, high),
            assumption: new(() => hands.ThermalReason));
        list.Decibel(ResultIds.Noise.OverThermalFloor, "noise over the electrodes' thermal floor", "", total / floor, Equations.OverFloor,
            "the electrodes have no resistance");
        list.Number(ResultIds.Noise.Electrodes, "noise of all electrodes, thermal and excess, rms", "σ_el",
            VoltageRms.FromVolts(electrodes), Equations.ElectrodeNoise);
        list.Decibel(ResultIds.Noise.Figure, "noise figure: what the design adds to the skin's noise", "NF", total / electrodes,
            Equations.NoiseFigure, "the electrodes make no noise");
        foreach (NoiseRow row in rows)
        {
            double share = total == 0 ? 0 : row.Rms * row.Rms / (total * total);
            list.Number(
                ResultIds.Noise.Source(row.Id), RowName(row), "σ", VoltageRms.FromVolts(row.Rms), Equations.ForSource(row.Id),
                hand: hands.Of(row.Id), assumption: new(() => hands.Reason(row.Id)),
                text: QuantityText.FormatPercent(Ratio.FromFraction(share)) + " of the variance");
            list.Share(ResultIds.Noise.Source(row.Id), total == 0 ? null : share);
        }

        AddBands(list, evaluation);
    }

    /// <summary>The noise that is judged.</summary>
    public static void AddBoardShare(ResultList list, Evaluation evaluation) => list.Number(
        ResultIds.Noise.BoardShare, "noise at the electrodes without the electrodes' excess noise, peak-to-peak",
        $"{TradeConstants.NoisePeakToPeak}·σ_board",
        VoltagePeakToPeak.FromVolts(TradeConstants.NoisePeakToPeak * evaluation.Noise.WithoutExcess), Equations.Noise,
        text: "the electrodes' thermal noise and the board's; the excess noise of skin and contact is left out");

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
                list.Number(ids.Sweeps, $"sweeps to average for an evoked response in {band.Name}", "N", PlainNumber.FromNumber(count),
                    Equations.Sweeps, hand: sweeps, assumption: "the number of sweeps is rounded up");
                list.Number(ids.SweepTime, $"time needed for the sweeps in {band.Name}", "t",
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
            text: share < 0.99 ? $"{left} of the signal's amplitude remains" : null);
        list.PutIn(id, () => $"20·log10({QuantityText.FormatNumber(share, 4)} · {QuantityText.Format(smallest, "V", 4)}/{QuantityText.Format(noise, "V", 4)})");
    }
}
