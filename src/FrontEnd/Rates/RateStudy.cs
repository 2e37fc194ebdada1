using FrontEnd.Catalogue;
using FrontEnd.Converter;
using FrontEnd.Designs;
using FrontEnd.Digital;
using FrontEnd.Identity;
using FrontEnd.Interference;
using FrontEnd.Numbers;
using FrontEnd.Reporting;
using FrontEnd.Results;

namespace FrontEnd.Rates;

/// <summary>Works a design out at several sampling rates and recommends one.</summary>
/// <remarks>The analogue path stays as it stands. Digital filters given by frequency follow the rate. A delta-sigma converter keeps its
/// modulator clock, so its oversampling follows, and its noise density, so that its rms grows with the square root of the rate.</remarks>
internal static class RateStudy
{
    /// <summary>Harmonics that a sentence names; the table has them all.</summary>
    private const int LandingsNamed = 3;

    /// <summary>The rates in use on small recorders (common practice, no source).</summary>
    public static readonly IReadOnlyList<Frequency> Candidates =
        [.. new double[] { 125, 128, 200, 250, 256, 500, 512, 1000, 1024, 2000 }.Select(Frequency.FromHertz)];

    private static readonly ResultId[] DependOnRate = [ResultIds.Alias.FoldAttenuation, ResultIds.Mains.Recorded,
        ResultIds.Converter.BitsNeeded];

    private static readonly double[] MainsFrequencies = [50, 60];

    /// <summary>Half-power corner where the path itself has none between band and fold, over the band's upper edge (common practice, no
    /// source).</summary>
    private const double CornerOverBand = 1.5;

    /// <summary>The design at each rate, in rising order; rates that cannot be worked out say why.</summary>
    public static RateComparison Compare(Design design, IReadOnlyList<Frequency>? rates = null, CancellationToken cancellation = default)
    {
        Frequency[] sorted = [.. (rates ?? Candidates).Distinct().OrderBy(rate => rate.Hertz)];
        List<Finding> findings = [];
        foreach (DigitalSections sections in design.Digital.OfType<DigitalSections>())
        {
            findings.Add(Messages.SectionsAtOtherRate(sections.Name, QuantityText.FormatPart(design.Converter.Rate)));
        }

        (Frequency corner, string cornerIs) = Corner(design);
        RateOption[] options = InParallel.Map(sorted, rate => Work(design, rate, corner), cancellation);
        if (options.FirstOrDefault(option =>
            option.ModulatorAttenuation is { } image && image.Value < design.Requirements.Fold.Value) is { } passing)
        {
            findings.Add(Messages.ModulatorPasses(QuantityText.FormatPart(design.Converter.ModulatorClock),
                QuantityText.Format(passing.ModulatorAttenuation), QuantityText.Format(design.Requirements.Fold)));
        }

        RateOption[] ranked = [.. options.Where(option =>
            option.IsWorkedOut).OrderBy(Rank).ThenBy(option => option.Unmet).ThenBy(OwnOrder).ThenBy(option => option.Rate.Hertz)];
        RateOption? pick = ranked.FirstOrDefault(), runnerUp = ranked.Skip(1).FirstOrDefault();
        return new RateComparison(design, corner, cornerIs, options, pick, runnerUp, Recommendation(pick, runnerUp), findings);
    }

    /// <summary>The design at another rate: see the remarks of the class.</summary>
    public static Design AtRate(Design design, Frequency rate)
    {
        if (rate == design.Converter.Rate)
        {
            return design;
        }

        AnalogDigitalConverter converter = design.Converter with { Rate = rate };
        if (converter.Kind == ConverterKind.DeltaSigma)
        {
            double factor = rate / design.Converter.Rate;
            converter = converter with
            {
                Oversampling = Math.Max(1, (int)Math.Round(design.Converter.Oversampling / factor)),
                Noise = converter.Noise is { } noise ? VoltageRms.FromVolts(noise.Volts * Math.Sqrt(factor)) : null,
            };
        }

        return design with { Converter = converter, Digital = [.. design.Digital.Where(stage => stage is not DigitalSections)] };
    }

    /// <summary>Share of the common mode that leaks between two channels sampled a time Δt apart and subtracted later,
    /// 2·sin(πf·Δt).</summary>
    public static Ratio SkewLeak(Frequency frequency, Duration skew) =>
        Ratio.FromFraction(2 * Math.Abs(Math.Sin(Math.PI * frequency.Hertz * skew.Seconds)));

    /// <summary>Worst verdict last. Marginal counts as met, as everywhere.</summary>
    private static int Rank(RateOption option) => option.Verdict == VerdictKind.Fail ? 1 : 0;

    /// <summary>What a rate costs in analogue parts where the filter as it stands is not enough.</summary>
    private static int OwnOrder(RateOption option) =>
        option.Verdict == VerdictKind.Fail ? option.Orders[0].Order ?? AntiAliasOrder.Most + 1 : 0;

    private static string Recommendation(RateOption? pick, RateOption? runnerUp)
    {
        if (pick is null)
        {
            return "none of the rates can be evaluated";
        }

        string first = QuantityText.FormatPart(pick.Rate);
        string then = runnerUp is null ? "" : $"; next {QuantityText.FormatPart(runnerUp.Rate)}";
        return pick.Verdict == VerdictKind.Fail
            ? $"no rate meets every requirement with the path as it is; {first} needs least: {pick.Because}{then}"
            : $"{first} is the lowest rate that meets every requirement that depends on it: {pick.Because}{then}";
    }

    private static (Frequency Corner, string Is) Corner(Design design)
    {
        double high = design.Band.High.Hertz;
        if (Evaluator.Whole(design) is { } evaluation)
        {
            var list = new ResultList();
            FilterReport.AddTo(list, [], evaluation);
            if (list.Has(ResultIds.Filter.Path.MinusThree)
                && list[ResultIds.Filter.Path.MinusThree] is { State: ResultState.Number, Si: var corner } && high < corner
                && corner < 4 * high)
            {
                return (Frequency.FromHertz(corner), "the path's own half-power frequency");
            }
        }

        return (Frequency.FromHertz(CornerOverBand * high),
            $"{QuantityText.FormatNumber(CornerOverBand)} times the band's upper edge, as the path has none near the band");
    }

    private static RateOption Work(Design original, Frequency rate, Frequency corner)
    {
        Design design = AtRate(original, rate);
        Finding[] errors = [.. DesignCheck.Run(design).Where(finding => finding.Severity == Severity.Error)];
        if (errors.Length != 0)
        {
            return new RateOption(rate) { Because = errors[0].Message, Findings = errors };
        }

        if (Evaluator.Whole(design) is not { } evaluation)
        {
            return new RateOption(rate) { Because = "the network has no solution at this rate",
                Findings = [Messages.Fails("the network has no solution")] };
        }

        var list = new ResultList();
        GainReport.AddTo(list, evaluation.ForNoise);
        NoiseReport.AddTo(list, evaluation.ForNoise);
        ConverterReport.AddTo(list, evaluation.ForNoise);
        MainsReport.AddTo(list, evaluation.ForMains);
        DriveReport.AddTo(list, evaluation.ForMains);
        LevelsReport.AddLimits(list, evaluation.ForLevels);
        AliasReport.AddTo(list, [], evaluation.ForNoise);
        FilterReport.AddTo(list, [], evaluation.ForNoise);
        LatencyReport.AddTo(list, evaluation.ForNoise);
        SafetyReport.AddTo(list, [], evaluation);
        SupplyReport.AddTo(list, evaluation.ForNoise);
        SupplyReport.AddPower(list, design);
        Judge.AddTo(list, evaluation);

        double[] edges = evaluation.PathAndConverter([design.Band.Low.Hertz, design.Band.High.Hertz]);
        double fold = rate.Hertz - design.Band.High.Hertz;
        double share = 20 * Math.Log10(design.Converter.Response(evaluation.CentreHertz) / Math.Max(1e-15,
            design.Converter.Response(fold)));
        MainsAtRate own = At(evaluation);
        var mains = new List<MainsAtRate> { own };
        foreach (double other in MainsFrequencies.Where(other => 1e-9 < Math.Abs(other - design.Mains.Frequency.Hertz)))
        {
            if (Evaluator.Whole(WithMains(design, other)) is { } there)
            {
                mains.Add(At(there));
            }
        }

        var option = new RateOption(rate)
        {
            Fold = Frequency.FromHertz(fold),
            FoldAttenuation = list[ResultIds.Alias.FoldAttenuation].Value as Decibels?,
            ConverterShare = Decibels.FromStated(share),
            ModulatorAttenuation = list.Has(ResultIds.Alias.ModulatorFoldAttenuation)
                ? list[ResultIds.Alias.ModulatorFoldAttenuation].Value as Decibels?
                : null,
            Orders = AntiAliasOrder.For(corner, Frequency.FromHertz(fold), Decibels.FromStated(design.Requirements.Fold.Value - share)),
            Mains = mains,
            Interferers = [.. design.Interferers.Select(interferer => At(list, interferer))],
            DroopLow = Decibels.FromVoltageRatio(evaluation.GainMid / Math.Max(1e-300, edges[0])),
            DroopHigh = Decibels.FromVoltageRatio(evaluation.GainMid / Math.Max(1e-300, edges[1])),
            Delay = Duration.FromSeconds(list[ResultIds.Latency.Total].Si),
            Noise = VoltageRms.FromVolts(list[ResultIds.Noise.Total].Si),
            DataRate = DataRate.FromBitsPerSecond(list[ResultIds.Data.BitRate].Si),
            BatteryLife = list.Has(ResultIds.Power.BatteryLife) ? Duration.FromSeconds(list[ResultIds.Power.BatteryLife].Si) : null,
        };
        return Judged(option, list, own, design);
    }

    /// <summary>The design under the other mains: usual voltage there, notches on the mains and its harmonics moved with it.</summary>
    private static Design WithMains(Design design, double hertz)
    {
        double f0 = design.Mains.Frequency.Hertz;
        return design with
        {
            Mains = design.Mains with { Frequency = Frequency.FromHertz(hertz), Voltage = VoltageRms.FromVolts(hertz == 50 ? 230 : 120) },
            Digital =
            [
                .. design.Digital
                    .Select(stage =>
                        stage is DigitalNotch notch && OnMains(notch.Centre.Hertz / f0)
                            ? notch with { Centre = Frequency.FromHertz(notch.Centre.Hertz / f0 * hertz) }
                            : stage)
                    .Where(stage => stage is not DigitalNotch notch || notch.Centre.Hertz < design.Converter.Rate.Hertz / 2),
            ],
        };
    }

    private static bool OnMains(double order) => Math.Abs(order - Math.Round(order)) < 0.02 && 0.5 < order;

    private static MainsAtRate At(Evaluation evaluation)
    {
        Mains mains = evaluation.Design.Mains;
        double fs = evaluation.Design.Converter.Rate.Hertz, periods = fs / mains.Frequency.Hertz;
        return new MainsAtRate(
            mains.Frequency,
            mains.Voltage,
            [
                .. evaluation.Mains.Harmonics.Select(harmonic => new MainsLanding(
                    harmonic.Order, Frequency.FromHertz(harmonic.Hertz), Frequency.FromHertz(harmonic.LandsAt),
                    Frequency.FromHertz(harmonic.LandsLow), Frequency.FromHertz(harmonic.LandsHigh),
                    harmonic.InBand, VoltageRms.FromVolts(harmonic.Recorded))),
            ],
            VoltageRms.FromVolts(evaluation.Mains.Recorded),
            VoltageRms.FromVolts(evaluation.Mains.RecordedEverywhere),
            Math.Abs(periods - Math.Round(periods)) < 1e-9 && 2 <= periods ? (int)Math.Round(periods) : null,
            SkewLeak(mains.Frequency, evaluation.Design.Converter.Skew));
    }

    private static InterfererAtRate At(ResultList list, Interferer interferer)
    {
        AliasIds ids = ResultIds.Alias.Interferer(interferer.Name);
        Result lands = list[ids.LandsAt];
        return new InterfererAtRate(
            interferer.Name, lands.Text is { Length: > 0 } text
                ? text
                : QuantityText.Format(lands.Value), VoltageRms.FromVolts(list[ids.Residue].Si),
            list.Has(ids.InBand) ? VoltageRms.FromVolts(list[ids.InBand].Si) : null);
    }

    private static RateOption Judged(RateOption option, ResultList list, MainsAtRate own, Design design)
    {
        Result[] judged = [.. DependOnRate.Where(list.Has).Select(id => list[id])];
        Result[] failing = [.. judged.Where(result => result.Verdict.Kind == VerdictKind.Fail)];
        VerdictKind kind = failing.Length != 0
            ? VerdictKind.Fail
            : judged.Any(result => result.Verdict.Kind == VerdictKind.Marginal)
            ? VerdictKind.Marginal
            : VerdictKind.Pass;
        string because = failing.Length != 0
            ? string.Join("; ", failing.Select(result => Trouble(result, option, own)))
            : Fold(option);
        because += failing.Any(result => result.Id == ResultIds.Mains.Recorded) ? "" : $"; {Landed(own, design)}";
        return option with { Verdict = kind, Unmet = failing.Length, Because = because };
    }

    private static string Trouble(Result result, RateOption option, MainsAtRate own)
    {
        if (result.Id == ResultIds.Alias.FoldAttenuation)
        {
            return $"{QuantityText.Format(option.Fold)} folds onto the band's edge only {QuantityText.Format(result.Value)} down, {QuantityText.Format(-result.Verdict.Margin ?? 0, "dB")} short; "
                + (option.Orders[0].Order is { } order
                    ? $"a Butterworth of order {order} would be enough"
                    : $"no Butterworth up to order {AntiAliasOrder.Most} would be enough");
        }

        return result.Id != ResultIds.Mains.Recorded ? $"the converter's steps are too coarse: {QuantityText.Format(result.Value)} needed"
            : own.Landings.Where(landing => landing.InBand).MaxBy(landing => landing.Residue.Volts) is { } worst
                ? $"mains harmonic {worst.Harmonic} ({QuantityText.FormatPart(worst.Frequency)}) is recorded at {QuantityText.Format(worst.LandsAt)} with {QuantityText.Format(worst.Residue)}"
                : "the mains in the band is too large";
    }

    private static string Fold(RateOption option) =>
        option.FoldAttenuation is { } attenuation
            ? $"the fold at {QuantityText.Format(option.Fold)} is {QuantityText.Format(attenuation)} down"
            : $"nothing passes at the fold, {QuantityText.Format(option.Fold)}";

    private static string Landed(MainsAtRate own, Design design)
    {
        // A harmonic that lies in the band before sampling is there at every rate and says nothing about this one.
        MainsLanding[] folded = [.. own.Landings.Where(landing =>
            landing.InBand && 1e-6 < Math.Abs(landing.LandsAt.Hertz - landing.Frequency.Hertz))];
        MainsLanding[] largest = [.. folded.OrderByDescending(landing => landing.Residue.Volts).Take(LandingsNamed)];
        return folded.Length == 0
            ? $"no harmonic of {QuantityText.FormatPart(own.Frequency)}, {design.Mains.LookedAt}, folds into {QuantityText.FormatPart(design.Band.Low)} to {QuantityText.FormatPart(design.Band.High)}"
            : (largest.Length < folded.Length ? $"{folded.Length} harmonics fold into the band, the largest: " : "")
                + string.Join(", ", largest.Select(landing =>
                    $"{QuantityText.FormatPart(landing.Frequency)} lands at {QuantityText.FormatPart(landing.LandsAt)}{Named(design, landing)}"))
                + $", at most {QuantityText.Format(largest[0].Residue)} left (of {design.Mains.LookedAt})";
    }

    /// <summary>The named band that a landing lies in, as ", in the alpha band"; "" for none.</summary>
    private static string Named(Design design, MainsLanding landing) =>
        design.Bands.FirstOrDefault(band =>
            band.Low.Hertz <= landing.LandsAt.Hertz && landing.LandsAt.Hertz < band.High.Hertz) is { } named ? $" ({named.Name})" : "";
}
