using FrontEnd.Budgets;
using FrontEnd.Converter;
using FrontEnd.Designs;
using FrontEnd.Filters;
using FrontEnd.Identity;
using FrontEnd.Interference;
using FrontEnd.Textbook;

namespace FrontEnd.Reporting;

/// <summary>Where frequencies land after sampling and what is left of them.</summary>
internal static class AliasReport
{
    /// <summary>Zones of the sampling rate that are worked out one by one for an interferer that reaches far.</summary>
    private const int MostImages = 16;

    /// <summary>Of an interferer's integral; and the greatest ratio of a panel's ends before it is halved.</summary>
    private const double Tolerance = 1e-7, PanelRatio = 6;

    private const string NoPath = "nothing passes at that frequency";

    public static void AddTo(ResultList list, List<Finding> findings, Evaluation evaluation)
    {
        Design design = evaluation.Design;
        AddFold(list, evaluation);
        double fs = design.Converter.Rate.Hertz, f1 = design.Band.Low.Hertz, f2 = design.Band.High.Hertz;
        IReadOnlyList<MainsHarmonic> harmonics = evaluation.Mains.Harmonics;
        double[] gains = evaluation.PathAndConverter([fs - f2, fs - f1, .. harmonics.Select(harmonic => harmonic.Hertz)]);
        AddPoint(list, evaluation, ResultIds.Alias.LowEdge, "image of the band's lower edge", fs - f1, gains[1], null);
        AddPoint(list, evaluation, ResultIds.Alias.HighEdge, "image of the band's upper edge", fs - f2, gains[0], null);
        for (int i = 0; i < harmonics.Count; i++)
        {
            AddPoint(list, evaluation, ResultIds.Alias.Harmonic(harmonics[i].Order), $"mains harmonic {harmonics[i].Order}",
                harmonics[i].Hertz, gains[2 + i], harmonics[i].AtInput.Total);
        }

        foreach (Interferer interferer in design.Interferers)
        {
            AddInterferer(list, findings, evaluation, interferer);
        }
    }

    /// <summary>The fold frequency and its attenuation; for delta-sigma the modulator's too.</summary>
    public static void AddFold(ResultList list, Evaluation evaluation)
    {
        Design design = evaluation.Design;
        AnalogDigitalConverter converter = design.Converter;
        double fold = converter.Rate.Hertz - design.Band.High.Hertz, modulator = converter.ModulatorClock.Hertz - design.Band.High.Hertz;
        double[] gains = evaluation.PathAndConverter([fold, modulator]);
        list.Number(ResultIds.Alias.FoldFrequency, "lowest frequency that folds onto the band", "f_fold", Frequency.FromHertz(fold),
            Equations.Fold, hand: FilterFormulas.FoldFrequency(converter.Rate, design.Band.High));
        list.Decibel(ResultIds.Alias.FoldAttenuation, "attenuation at the fold frequency, path and converter", "A_fold",
            evaluation.GainMid / gains[0], Equations.FoldAttenuation, NoPath);
        if (converter.Kind == ConverterKind.DeltaSigma)
        {
            list.Number(ResultIds.Alias.ModulatorFoldFrequency, "lowest frequency that folds at the modulator's clock", "",
                Frequency.FromHertz(modulator), Equations.ModulatorFold,
                () => $"{QuantityText.FormatPart(converter.ModulatorClock)} − {QuantityText.FormatPart(design.Band.High)}");

            // Around the modulator's clock the decimator's response repeats, so only the analogue path and the droop at the landing
            // attenuate.
            list.Decibel(ResultIds.Alias.ModulatorFoldAttenuation, "attenuation where the modulator's clock folds, path and converter",
                "", evaluation.GainMid / gains[1], Equations.FoldAttenuation, NoPath);
        }
    }

    private static void AddPoint(ResultList list, Evaluation evaluation, AliasIds ids, string name, double hertz, double gain,
        double? amplitude)
    {
        double fs = evaluation.Design.Converter.Rate.Hertz;
        list.Number(ids.LandsAt, $"{name} lands at", "", Frequency.FromHertz(Folding.LandsAt(hertz, fs)), Equations.LandsAt,
            hand: FilterFormulas.LandsAt(Frequency.FromHertz(hertz), evaluation.Design.Converter.Rate));
        list.Lands(ids.LandsAt, name);
        list.Decibel(ids.Attenuation, $"{name}: attenuation, path and converter", "", evaluation.GainMid / gain,
            Equations.AliasAttenuation, NoPath);
        if (amplitude is { } volts)
        {
            list.Number(ids.Residue, $"{name}: residue where it lands, rms", "",
                VoltageRms.FromVolts(volts * gain / evaluation.GainMid), Equations.AliasResidue);
        }
    }

    private static void AddInterferer(ResultList list, List<Finding> findings, Evaluation evaluation, Interferer interferer)
    {
        Design design = evaluation.Design;
        double fs = design.Converter.Rate.Hertz, low = interferer.Low.Hertz, high = Math.Max(low, interferer.High.Hertz);
        AliasIds ids = ResultIds.Alias.Interferer(interferer.Name);
        (double least, double most) = Folding.LandsWithin(low, high, fs);
        string range = high == low
            ? QuantityText.Format(interferer.Low)
            : $"{QuantityText.Format(least, "Hz")} to {QuantityText.Format(most, "Hz")}";
        if (high == low)
        {
            list.Number(ids.LandsAt, $"{interferer.Name} lands at", "", Frequency.FromHertz(least), Equations.LandsAt);
            list.Lands(ids.LandsAt, interferer.Name);
            double left = evaluation.RecordedAt(interferer.Amplitude.Volts, low);
            bool inBand = design.Band.Low.Hertz <= least && least <= design.Band.High.Hertz;
            list.Number(ids.Residue, $"{interferer.Name}: residue, rms", "", VoltageRms.FromVolts(left), Equations.LineResidue,
                text: inBand ? "in the band" : "outside the band");
            return;
        }

        list.Word(ids.LandsAt, $"{interferer.Name} lands at", range, Equations.LandsAt);
        (double direct, double folded, bool converged) = InBand(evaluation, low, high, interferer.Amplitude.Volts);
        if (!converged)
        {
            findings.Add(Messages.NotConverged($"residue of interferer `{interferer.Name}` in the band"));
        }

        list.Number(ids.Residue, $"{interferer.Name} folded into the band, rms", "", VoltageRms.FromVolts(folded),
            Equations.InterfererResidue);
        list.Number(ids.InBand, $"{interferer.Name} that lies in the band itself, rms", "", VoltageRms.FromVolts(direct),
            Equations.InterfererResidue, text: 0 < direct ? "no filter can remove what shares the signal's frequencies" : null);
    }

    /// <summary>An evenly spread interferer inside the band: what was there and what folds there.</summary>
    private static (double Direct, double Folded, bool Converged) InBand(Evaluation evaluation, double low, double high, double amplitude)
    {
        Design design = evaluation.Design;
        double fs = design.Converter.Rate.Hertz, f1 = design.Band.Low.Hertz, f2 = Math.Min(design.Band.High.Hertz, fs / 2),
            density = amplitude * amplitude / (high - low);
        int images = (int)Math.Min(MostImages, Math.Ceiling((high + f2) / fs));
        double direct = 0, folded = 0, beyond = (MostImages + 0.5) * fs;
        IReadOnlyList<Bend> digital = BreakPoints.Of(evaluation.Digital.Sections, fs);
        bool converged = true;
        for (int k = 0; k <= images; k++)
        {
            for (int sign = k == 0 ? 1 : -1; sign <= 1; sign += 2)
            {
                double from = (k * fs) + (sign * (sign < 0 ? f2 : f1)), to = (k * fs) + (sign * (sign < 0 ? f1 : f2));
                from = Math.Max(from, low);
                to = Math.Min(to, high);
                if (to <= from || from <= 0)
                {
                    continue;
                }

                double zone = k * fs, side = sign;
                double power = density * Power(from, to, digital.Select(bend => bend with { Hertz = zone + (side * bend.Hertz) }),
                    f => evaluation.Digital.Power(Folding.LandsAt(f, fs)));
                if (k == 0)
                {
                    direct += power;
                }
                else
                {
                    folded += power;
                }
            }
        }

        // Far zones: the share of each zone that lands in the band, the digital filters taken as 1 there.
        if (beyond < high)
        {
            folded += density * 2 * (f2 - f1) / fs * Power(Math.Max(beyond, low), high, [], _ => 1);
        }

        return (Math.Sqrt(direct), Math.Sqrt(folded), converged);

        double Power(double from, double to, IEnumerable<Bend> bends, Func<double, double> filters)
        {
            var integral = BandIntegral.Over(
                BreakPoints.Between([from, to], evaluation.Path.Bends.Concat(bends), PanelRatio),
                1,
                (hertz, values) =>
                {
                    evaluation.Path.SweepTransfer(hertz);
                    for (int lane = 0; lane < hertz.Length; lane++)
                    {
                        double gain = evaluation.Path.Path(lane).Magnitude * design.Converter.Response(hertz[lane]) / evaluation.GainMid;
                        values[0][lane] = gain * gain * filters(hertz[lane]);
                    }
                },
                Tolerance);
            converged &= integral.Converged;
            return integral.Sum(0);
        }
    }
}
