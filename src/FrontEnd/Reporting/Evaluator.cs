using FrontEnd.Catalogue;
using FrontEnd.Designs;
using FrontEnd.Identity;
using FrontEnd.Networks;
using FrontEnd.Results;

namespace FrontEnd.Reporting;

/// <summary>From a design to everything that follows from it. Pure: the same design gives the same assessment.</summary>
public static class Evaluator
{
    /// <summary>Works out all results, verdicts, findings and curves of a design; what a user can write gives findings; whatever is thrown
    /// is a fault of the program.</summary>
    /// <remarks>Where the design contradicts itself the findings say so and no figure is given.</remarks>
    public static Assessment Evaluate(Design design) => EvaluateWith(design, null);

    /// <param name="design">The design.</param>
    /// <param name="sources">What channels see of sources, for designs that differ in the front end alone; null to work it out.</param>
    internal static Assessment EvaluateWith(Design design, SharedSources? sources)
    {
        List<Finding> findings = [.. DesignCheck.Run(design, null, withSources: sources?.IsTold != true || !sources.Fits(design))];
        if (findings.Exists(finding => finding.Severity == Severity.Error))
        {
            return WithoutFigures(design, findings);
        }

        try
        {
            return Work(design, findings, sources);
        }
        catch (NetworkHasNoAnswer problem)
        {
            // Values within their ranges can still make a network without an answer, such as zeros in all the wrong places.
            return WithoutFigures(design, [.. findings, Messages.Fails(problem.Message)]);
        }
    }

    /// <summary>The assessment of a design that no figure can be given for: the judged ones are missing, and the first error says
    /// why.</summary>
    public static Assessment WithoutFigures(Design design, IReadOnlyList<Finding> findings) =>
        new(design, MissingHeadlines(findings.First(finding => finding.Severity == Severity.Error).Code), findings, Curves.None);

    /// <summary>The judged results alone, by id; null where the design cannot be evaluated. What the adviser tries changes with.</summary>
    /// <param name="design">The design.</param>
    /// <param name="like">A design that it differs little from, evaluated; null for none.</param>
    internal static Dictionary<ResultId, Result>? Judged(Design design, Evaluation? like = null)
    {
        if (DesignCheck.Run(design).Any(finding => finding.Severity == Severity.Error))
        {
            return null;
        }

        try
        {
            var evaluation = new Evaluation(design, null, like);
            var list = new ResultList();
            NoiseReport.AddBoardShare(list, evaluation.ForNoise);
            MainsReport.AddTotal(list, evaluation.Mains);
            MainsReport.AddRecorded(list, evaluation.ForMains);
            ConverterReport.AddFit(list, design);
            ConverterReport.AddBitsNeeded(list, evaluation.ForNoise);
            if (evaluation.Drive is { } drive)
            {
                DriveReport.AddWorst(list, design, drive);
            }

            LevelsReport.AddJudged(list, evaluation.Levels);
            AliasReport.AddFold(list, evaluation.ForNoise);
            SafetyReport.AddTo(list, [], evaluation);
            SeeReport.AddRequired(list, evaluation);
            Judge.AddTo(list, evaluation);
            return list.Results.Where(result => result.Verdict.Requirement is not null).ToDictionary(result => result.Id);
        }
        catch (NetworkHasNoAnswer)
        {
            return null;
        }
    }

    /// <summary>The design with one kind of channel, for what works on one: of channels that are unlike each other as the one with the most noise of
    /// the board sees it.</summary>
    /// <param name="design">The design.</param>
    /// <param name="channel">That channel's name; null where all are alike.</param>
    /// <exception cref="NetworkHasNoAnswer">See <see cref="Evaluate"/>.</exception>
    internal static Design WithOneKindOfChannel(Design design, out string? channel)
    {
        channel = null;
        if (design.ChannelList.Count == 0)
        {
            return design.AsSeenBy(0);
        }

        var evaluation = new Evaluation(design);
        channel = evaluation.EveryKind.Count == 1 ? null : evaluation.ChannelOf(evaluation.ForNoise);
        return evaluation.ForNoise.Design;
    }

    /// <summary>A design's budgets, all worked out, as <see cref="Judged"/> may take them over; null where it has none.</summary>
    internal static Evaluation? Whole(Design design)
    {
        try
        {
            return DesignCheck.Run(design).Any(finding => finding.Severity == Severity.Error) ? null : new Evaluation(design).Whole();
        }
        catch (NetworkHasNoAnswer)
        {
            return null;
        }
    }

    /// <summary>One report after the other, in the order of the results; each reads the evaluation alone, and no other's results. Only the verdicts
    /// behind them do. Where channels are unlike each other a family's reports read the one channel that it is worst in.</summary>
    internal static IReadOnlyList<Action<ResultList, List<Finding>, Evaluation>> Reports { get; } =
    [
        Of(one => one.ForNoise, (list, _, evaluation) => GainReport.AddTo(list, evaluation)),
        Of(one => one.ForNoise, (list, _, evaluation) => NoiseReport.AddTo(list, evaluation)),
        Of(one => one.ForNoise, (list, _, evaluation) => ConverterReport.AddTo(list, evaluation)),
        Of(one => one.ForMains, (list, _, evaluation) => MainsReport.AddTo(list, evaluation)),
        Of(one => one.ForMains, (list, _, evaluation) => DriveReport.AddTo(list, evaluation)),
        Of(one => one.ForLevels, (list, _, evaluation) => LevelsReport.AddTo(list, evaluation)),
        Of(one => one.ForMains, (list, _, evaluation) => InputReport.AddTo(list, evaluation)),
        Of(one => one.ForLevels, LevelsReport.AddRecovery),
        Of(one => one.ForNoise, AliasReport.AddTo),
        Of(one => one.ForNoise, FilterReport.AddTo),
        Of(one => one.ForNoise, (list, _, evaluation) => LatencyReport.AddTo(list, evaluation)),
        Of(one => one.ForNoise, (list, _, evaluation) => LatencyReport.AddBands(list, evaluation)),
        (list, _, evaluation) => SkewReport.AddTo(list, evaluation.Design),
        SafetyReport.AddTo,
        (list, _, evaluation) => ChannelReport.AddTo(list, evaluation),
        MontageReport.AddTo,
        SeeReport.AddTo,
        Of(one => one.ForNoise, ContactReport.AddTo),
        (list, _, evaluation) => ContactTimesReport.AddTo(list, evaluation),
        Of(one => one.ForLevels, (list, _, evaluation) => OpenReport.AddTo(list, evaluation)),
        Of(one => one.ForNoise, (list, _, evaluation) => SupplyReport.AddTo(list, evaluation)),
        (list, _, evaluation) => SupplyReport.AddPower(list, evaluation.Design),
    ];

    /// <summary>A report of one channel's figures, which say whose they are where the channels have names.</summary>
    private static Action<ResultList, List<Finding>, Evaluation> Of(Func<Evaluation, Evaluation> family,
        Action<ResultList, List<Finding>, Evaluation> report) => (list, findings, evaluation) =>
    {
        int from = list.Results.Count;
        Evaluation one = family(evaluation);
        report(list, findings, one);
        if (evaluation.ChannelOf(one) is { } channel)
        {
            list.SayChannel(from, channel);
        }
    };

    private static Assessment Work(Design design, List<Finding> findings, SharedSources? sources)
    {
        var evaluation = new Evaluation(design) { Sources = sources };
        var list = new ResultList();
        foreach (Action<ResultList, List<Finding>, Evaluation> report in Reports)
        {
            report(list, findings, evaluation);
        }

        Judge.AddTo(list, evaluation);
        AddFindings(findings, evaluation);
        return new Assessment(design, list.Results, findings, new Lazy<Curves>(() => CurveMaker.Make(evaluation)), list.Index);
    }

    private static void AddFindings(List<Finding> findings, Evaluation evaluation)
    {
        Design design = evaluation.Design;
        if (!evaluation.EveryKind.All(kind => kind.Noise.Converged))
        {
            findings.Add(Messages.NotConverged("noise"));
        }

        if (!evaluation.EveryKind.All(kind => kind.Levels.Converged))
        {
            findings.Add(Messages.NotConverged("the noise at the nodes"));
        }

        double half = design.Converter.Rate.Hertz / 2;
        foreach (Band band in design.Bands.Where(band => half <= band.Low.Hertz))
        {
            findings.Add(Messages.BandTooHigh(band.Name, QuantityText.FormatPart(band.Low),
                QuantityText.FormatPart(Frequency.FromHertz(half))));
        }

        // The part of the noise that dithers the steps: all that stands at the converter's pin up to half the rate, and the converter's
        // own.
        double pin = evaluation.Levels.NoiseAtConverter, own = design.Converter.NoiseVolts;
        double rms = Math.Sqrt((pin * pin) + (own * own)), lsb = design.Converter.LsbVolts;
        if (rms < 0.5 * lsb)
        {
            findings.Add(Messages.FewSteps(QuantityText.Format(rms, "V"), QuantityText.Format(lsb, "V")));
        }

        if (evaluation.Drive is { PhaseMarginDegrees: <= 0 } drive)
        {
            findings.Add(Messages.Oscillates(QuantityText.Format(Angle.FromDegrees(drive.PhaseMarginDegrees!.Value))));
        }

        if (design.GroundDrive.Kind == Amplifier.GroundKind.Driven && design.Electrodes.Ground is null)
        {
            findings.Add(Messages.NothingToDrive());
        }

        if (MainsReport.Everywhere(design, evaluation.Mains) is { } text)
        {
            findings.Add(Messages.TooMuchMains(text));
        }

        if (design.Mains.CommonIsEarthed)
        {
            findings.Add(Messages.Earthed(QuantityText.FormatPart(design.Mains.AmplifierToEarth)));
        }
    }

    /// <summary>The judged figures as missing: a result is never left out silently.</summary>
    private static List<Result> MissingHeadlines(string code)
    {
        var list = new ResultList();
        list.Missing(ResultIds.Gain.Mid, "gain from the electrodes to the samples, mid-band", "G_mid", "1", Equations.GainMid, code);
        list.Missing(ResultIds.Noise.Total, "noise at the electrodes, rms", "σ", "V", Equations.Noise, code);
        list.Missing(ResultIds.Noise.BoardShare, "noise at the electrodes without the electrodes' excess noise, peak-to-peak",
            $"{TradeConstants.NoisePeakToPeak}·σ_board", "V", Equations.Noise, code);
        list.Missing(ResultIds.Mains.Total, "mains at the electrodes, worst case, rms", "", "V", Equations.MainsTotal, code);
        list.Missing(ResultIds.Mains.Recorded, "mains recorded in the band, worst-case sum, rms", "", "V", Equations.Recorded, code);
        list.Missing(ResultIds.Levels.OffsetSurvived, "largest electrode offset before anything clips, ±", "", "V",
            Equations.OffsetSurvived, code);
        list.Missing(ResultIds.Alias.FoldAttenuation, "attenuation at the fold frequency, path and converter", "A_fold", "dB",
            Equations.FoldAttenuation, code);
        list.Missing(ResultIds.Converter.BitsNeeded, "resolution needed", "N", "bit", Equations.BitsNeeded, code);
        list.Missing(ResultIds.Converter.FitsSupply, "full scale fits the converter's supply", "", "", Equations.FitsSupply, code);
        list.Missing(ResultIds.Safety.FaultCurrent, "dc through one electrode after a single fault", "I", "A", Equations.FaultCurrent,
            code);
        list.Missing(ResultIds.Safety.SharedFaultCurrent, SafetyReport.SharedFaultName, "I", "A", Equations.SharedFaultByGround, code);
        return [.. list.Results];
    }
}
