using FrontEnd.Identity;
using FrontEnd.Interference;
using FrontEnd.Reporting;
using FrontEnd.Topologies;

namespace FrontEnd.Terminal;

/// <summary>Where the user is: a block of the signal's path or a view across it. Says which fields and which results belong
/// there.</summary>
/// <param name="Id">Stable word; for stages the number of the first one as well.</param>
/// <param name="Fields">Beginnings of the fields' keys, in the order of the form.</param>
/// <param name="Results">Which results, in their order.</param>
/// <param name="Judges">The judged results that make the block's verdict on the strip.</param>
/// <param name="Letter">The key that leads there; '\0' for the blocks of the path.</param>
internal sealed record Place(
    string Id, string Title, IReadOnlyList<string> Fields, IReadOnlyList<ResultPattern> Results, IReadOnlyList<ResultPattern> Judges,
    PlotKind Plot,
    char Letter = '\0')
{
    /// <summary>The block of the signal's source.</summary>
    public const string Scalp = "scalp";
    /// <summary>The block of contacts and their mismatch.</summary>
    public const string Electrodes = "electrodes";
    /// <summary>The block of protection and input network.</summary>
    public const string Input = "input";
    /// <summary>The block of the first amplifier and the driven ground.</summary>
    public const string Amplifier = "amplifier";
    /// <summary>The block of the converter.</summary>
    public const string Converter = "converter";
    /// <summary>The block of the digital filters.</summary>
    public const string Digital = "digital";
    /// <summary>The view of all verdicts.</summary>
    public const string Verdicts = "verdicts";

    /// <summary>Numbers of the stages (from 0) that the block stands for.</summary>
    public IReadOnlyList<int> Stages { get; init; } = [];

    /// <summary>True for a block of the path, false for a view across it.</summary>
    public bool IsBlock => Letter == '\0';

    private static readonly ResultPattern[] AmplifierHeadrooms =
        [
            ResultIds.Levels.Headroom(NodeId.AmplifierInnerPlus), ResultIds.Levels.Headroom(NodeId.AmplifierInnerMinus),
            ResultIds.Levels.Headroom(NodeId.Amplifier),
        ];

    private static readonly ResultPattern[] Folds = [ResultIds.Alias.FoldFrequency, ResultIds.Alias.FoldAttenuation];

    /// <summary>What the interferer of every new design does.</summary>
    private static readonly ResultPattern MuscleAlias = ResultIds.Alias.Interferer(Interferer.Muscle.Name).Family;

    private static readonly Place ScalpPlace = new(Scalp, "scalp", ["signal.", "band", "skin-temperature", "bands["],
        [
            ResultIds.Noise.Total, ResultIds.Noise.PeakToPeak, ResultIds.Noise.Bands, ResultIds.Levels.LargestSignal, MuscleAlias,
        ], [ResultIds.See.All], PlotKind.Noise);

    private static readonly Place ElectrodesPlace = new(
        Electrodes, "electrodes", [DesignKeys.Electrodes.Mismatch, DesignKeys.Electrodes.Offset, "electrodes.", "contact-check."],
        [
            ResultIds.Mains.Total, ResultIds.Noise.Total, ResultIds.Noise.BoardShare, ResultIds.Levels.OffsetSurvived,
            ResultIds.Levels.Headroom(NodeId.ActiveBuffer), ResultIds.Levels.Headroom(NodeId.ReferenceBuffer),
            ResultIds.Noise.Electrodes, ResultIds.Noise.ThermalFloor, ResultIds.Noise.Figure,
            ResultIds.Noise.Source(SourceId.ActiveElectrode), ResultIds.Noise.Source(SourceId.ReferenceElectrode),
            ResultIds.Noise.Source(SourceId.GroundElectrode), ResultIds.Mains.Divider, ResultIds.Mains.SystemCmrr, ResultIds.Open.All,
            ResultIds.Contact.All,
        ],
        [
            ResultIds.Mains.Total, ResultIds.Noise.BoardShare, ResultIds.Channel.All, ResultIds.Levels.Headroom(NodeId.ActiveBuffer),
            ResultIds.Levels.Headroom(NodeId.ReferenceBuffer),
        ], PlotKind.Electrodes);

    private static readonly Place InputPlace = new(Input, "input", ["input."],
        [
            ResultIds.Mains.Total, ResultIds.Mains.Divider, ResultIds.Mains.Leads, ResultIds.Mains.Imbalance, ResultIds.Mains.Loop,
            ResultIds.Mains.SystemCmrr, ResultIds.Input.All, ResultIds.Noise.Source(SourceId.ProtectionResistors),
            ResultIds.Safety.FaultCurrent.AndMore, ResultIds.Safety.SharedFaultCurrent, ResultIds.Safety.SeriesResistanceNeeded,
        ],
        [ResultIds.Mains.Total, ResultIds.Safety.FaultCurrent.AndMore, ResultIds.Safety.SharedFaultCurrent], PlotKind.Mains);

    private static readonly Place AmplifierPlace = new(Amplifier, "amplifier", ["amplifier.", "ground-drive.", "board-temperature"],
        [
            .. AmplifierHeadrooms, ResultIds.Levels.OffsetSurvived, ResultIds.Levels.FirstToClip, ResultIds.Levels.FirstGainLimit,
            ResultIds.Noise.BoardShare, ResultIds.Noise.Source(SourceId.AmplifierCurrent),
            ResultIds.Noise.Source(SourceId.AmplifierVoltage), ResultIds.Noise.Shorted, ResultIds.Mains.Amplifier,
            ResultIds.Mains.CmrrNeeded, ResultIds.Filter.Figures(NodeId.Amplifier), ResultIds.Drive.All,
            ResultIds.Levels.Headroom(NodeId.Drive), ResultIds.Safety.DrivenGroundCurrent,
            ResultIds.Noise.Source(SourceId.GroundResistor),
        ],
        [
            .. AmplifierHeadrooms, ResultIds.Levels.OffsetSurvived, ResultIds.Noise.BoardShare, ResultIds.Drive.All,
            ResultIds.Levels.Headroom(NodeId.Drive), ResultIds.Safety.DrivenGroundCurrent,
        ], PlotKind.Drive);

    private static readonly Place ConverterPlace = new(Converter, "converter", ["converter.", "channels"],
        [
            ResultIds.Converter.All, ResultIds.Levels.Headroom(NodeId.Converter), ResultIds.Alias.FoldFrequency,
            ResultIds.Alias.FoldAttenuation, ResultIds.Alias.AnyModulatorFold, ResultIds.Noise.Source(SourceId.Converter),
            ResultIds.Noise.Source(SourceId.Quantisation), ResultIds.Noise.Source(SourceId.Folded), ResultIds.Skew.All,
            ResultIds.Supply.ReferenceNoise,
        ],
        [
            ResultIds.Converter.All, ResultIds.Levels.Headroom(NodeId.Converter), ResultIds.Alias.FoldFrequency,
            ResultIds.Alias.FoldAttenuation, ResultIds.Alias.AnyModulatorFold,
        ], PlotKind.Response);

    private static readonly Place DigitalPlace = new(Digital, "digital", ["digital[", "digital", "packet-time"],
        [
            ResultIds.Mains.Recorded, ResultIds.Mains.RecordedEverywhere, ResultIds.Digital.All, ResultIds.Latency.All,
            ResultIds.Filter.Figures(NodeId.Path),
        ], [ResultIds.Mains.Recorded, ResultIds.Mains.RecordedEverywhere], PlotKind.Response);

    /// <summary>The views across the path, in the order of the key line.</summary>
    public static readonly IReadOnlyList<Place> Views =
    [
        new(Verdicts, "verdicts", ["requirements."], [ResultIds.Limit.All, new ResultFamily("")], [], PlotKind.Response, 'v'),
        new(
            "noise", "noise",
            ["band", DesignKeys.Signal.Smallest, "board-temperature", "skin-temperature", DesignKeys.Requirements.Noise, "bands["],
            [ResultIds.Noise.All], [ResultIds.Noise.All], PlotKind.Noise, 'n'),
        new("mains", "mains", ["mains.", "requirements.mains"], [ResultIds.Mains.All, ResultIds.Drive.All], [ResultIds.Mains.All],
            PlotKind.Mains, 'm'),
        new(
            "levels", "levels",
            [DesignKeys.Signal.Largest, DesignKeys.Electrodes.Offset, DesignKeys.Supply.Lowest, DesignKeys.Supply.MidRail,
                DesignKeys.Requirements.Offset, DesignKeys.Requirements.Headroom],
            [ResultIds.Levels.All, ResultIds.Gain.All, ResultIds.Input.BiasOffset], [ResultIds.Levels.All], PlotKind.Step, 'l'),
        new(
            "aliases", "aliases", [DesignKeys.Converter.Rate, "band", DesignKeys.Requirements.Fold, "interferers["],
            [ResultIds.Alias.All, ResultIds.Mains.Harmonics], [ResultIds.Alias.All], PlotKind.Response, 'a'),
        new(
            "safety", "safety",
            [
                DesignKeys.Supply.Highest, DesignKeys.Input.SeriesResistor, DesignKeys.Input.ResistorTolerance,
                DesignKeys.GroundDrive.SeriesResistor,
                DesignKeys.GroundDrive.ResistorTolerance, DesignKeys.Electrodes.ActiveBufferSkinResistor,
                DesignKeys.Electrodes.ReferenceBufferSkinResistor,
                "requirements.fault", "requirements.driven",
            ],
            [ResultIds.Safety.All, ResultIds.Contact.AddsInBand], [ResultIds.Safety.All], PlotKind.Drive, 'f'),
        new(
            "power", "power", ["supply."],
            [ResultIds.Power.All, ResultIds.Data.All, ResultIds.Supply.All, ResultIds.Latency.All], [ResultIds.Power.All], PlotKind.Step,
            'p'),
        new(
            "sheet", "sheet", ["name", "purpose", "caution", "channels", "montage.", "board."],
            [ResultIds.Montage.All, ResultIds.Gain.Mid, ResultIds.Gain.MidFrequency, ResultIds.Latency.Total], [], PlotKind.Response, 's'),
    ];

    /// <summary>The blocks of a design's path, in order. Neighbouring anti-alias sections share one block.</summary>
    public static IReadOnlyList<Place> Blocks(Design design)
    {
        List<Place> blocks = [ScalpPlace, ElectrodesPlace, InputPlace, AmplifierPlace];
        for (int at = 0; at < design.Stages.Count;)
        {
            bool gain = design.Stages[at].Role == StageRole.Gain;
            List<int> group = [at++];
            while (!gain && at < design.Stages.Count && design.Stages[at].Role != StageRole.Gain)
            {
                group.Add(at++);
            }

            blocks.Add(OfStages(design, group, gain));
        }

        return [.. blocks, ConverterPlace, DigitalPlace];
    }

    /// <summary>The place with this id in this design; the electrodes where the design has no such block any more.</summary>
    public static Place Find(Design design, string id) =>
        Views.FirstOrDefault(view => view.Id == id) ?? Blocks(design).FirstOrDefault(block => block.Id == id) ?? ElectrodesPlace;

    /// <summary>True where the key or id begins like this: at the end of a word, or where the beginning ends with a dot or a
    /// bracket.</summary>
    public static bool Begins(string text, string beginning) =>
        beginning.Length == 0
        || (text.StartsWith(beginning, StringComparison.Ordinal)
            && (beginning[^1] is '.' or '[' || text.Length == beginning.Length || text[beginning.Length] is '.' or '-' or '_'));

    /// <summary>The results that belong here: judged ones worst first, then the others in the order of the place.</summary>
    public IReadOnlyList<Result> ResultsOf(Assessment assessment)
    {
        List<Result> mine = [];
        IEnumerable<Result> judged = assessment.Judged;
        mine.AddRange(judged.Where(result => Results.Any(pattern => pattern.Fits(result.Id))));
        if (Id == Verdicts)
        {
            return mine;
        }

        HashSet<ResultId> seen = [.. mine.Select(result => result.Id)];
        foreach (ResultPattern pattern in Results)
        {
            mine.AddRange(assessment.Results.Where(result => pattern.Fits(result.Id) && seen.Add(result.Id)));
        }

        // A frequency stands in the row of what is at it, and comes after it.
        return
        [
            .. mine.Where(result => ResultPairs.FigureAt(assessment, result) is not { } figure || !seen.Contains(figure.Id))
                .SelectMany(result => ResultPairs.FrequencyOf(assessment, result) is { } frequency && seen.Contains(frequency.Id) ? [result, frequency] : (Result[])[result]),
        ];
    }

    /// <summary>The worst verdict that the block answers for: as bad as the worst of its nodes, also where another block's clips first.</summary>
    public VerdictKind Worst(Assessment assessment) =>
        assessment.Results.Where(result => Judges.Any(pattern => pattern.Fits(result.Id)) || (result.Id == ResultIds.Levels.OffsetSurvived && HoldsBackTheOffset(assessment)))
            .Select(result => NodeVerdicts.Of(assessment, result)).DefaultIfEmpty(VerdictKind.NotJudged).Max();

    /// <summary>True where one of the block's nodes holds back the offset that is survived.</summary>
    private bool HoldsBackTheOffset(Assessment assessment) =>
        assessment.Results.Any(result => ResultIds.Levels.IsHeadroom(result.Id) && Judges.Any(pattern => pattern.Fits(result.Id))
            && result.Id == ResultIds.Levels.Headroom(new NodeId(assessment.Find(ResultIds.Levels.OffsetSurvived)?.Verdict.Dominates ?? "")));

    private static Place OfStages(Design design, List<int> stages, bool gain)
    {
        List<ResultPattern> results = [], judges = [], noise = [];
        foreach (int stage in stages)
        {
            string name = design.Stages[stage].Name;
            NodeId node = NodeId.Of(name);
            results.AddRange([ResultIds.Levels.Headroom(node), ResultIds.Filter.Figures(node)]);
            judges.Add(ResultIds.Levels.Headroom(node));
            noise.AddRange(SourceId.Of(name).Select(source => (ResultPattern)ResultIds.Noise.Source(source)));
        }

        string title = gain || stages.Count == 1 ? design.Stages[stages[0]].Name : "anti-alias";
        return new Place(
            $"stage {stages[0] + 1}",
            gain ? title : "anti-alias",
            [.. stages.Select(stage => $"stages[{stage + 1}].")],
            gain ? [.. results, .. noise, ResultIds.Gain.All]
                : [.. Folds, ResultIds.Alias.HighEdge.Family, ResultIds.Alias.LowEdge.Family, MuscleAlias, .. results,
                    ResultIds.Filter.Figures(NodeId.Path), .. noise],
            gain ? judges : [.. judges, .. Folds],
            PlotKind.Response)
        {
            Stages = stages,
        };
    }
}

/// <summary>The kinds of plot.</summary>
internal enum PlotKind
{
    Response,
    Delay,
    Noise,
    Mains,
    Electrodes,
    Drive,
    Step,
}
