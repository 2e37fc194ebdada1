using FrontEnd.AntiAlias;
using FrontEnd.Designs;
using FrontEnd.Fields;
using FrontEnd.Identity;
using FrontEnd.Results;

namespace FrontEnd.App.Terminal;

/// <summary>Where the user is: a block of the signal's path or a view across it. Says which fields and which results belong there.</summary>
/// <param name="Id">Stable word; for stages the number of the first one as well.</param>
/// <param name="Fields">Beginnings of the fields' keys, in the order of the form.</param>
/// <param name="Results">Beginnings of the results' ids.</param>
/// <param name="Judges">Beginnings of the ids of the judged results that make the block's verdict on the strip.</param>
/// <param name="Letter">The key that leads there; '\0' for the blocks of the path.</param>
public sealed record Place(string Id, string Title, IReadOnlyList<string> Fields, IReadOnlyList<string> Results, IReadOnlyList<string> Judges, PlotKind Plot, char Letter = '\0')
{
    public const string Scalp = "scalp";
    public const string Electrodes = "electrodes";
    public const string Input = "input";
    public const string Amplifier = "amplifier";
    public const string Converter = "converter";
    public const string Digital = "digital";
    public const string Verdicts = "verdicts";

    /// <summary>Numbers of the stages (from 0) that the block stands for.</summary>
    public IReadOnlyList<int> Stages { get; init; } = [];

    public bool IsBlock => Letter == '\0';

    private static readonly Place ScalpPlace = new(Scalp, "scalp", ["signal.", "band", "skin-temperature", "bands["],
        ["noise.total", "noise.peak_to_peak", "noise.band.", "levels.largest_signal", "alias.muscle"], [], PlotKind.Noise);

    private static readonly Place ElectrodesPlace = new(Electrodes, "electrodes", ["electrodes.mismatch", "electrodes.offset", "electrodes.", "contact-check."],
        [
            "mains.total", "noise.total", "noise.board_share", "levels.offset_survived", "noise.electrodes", "noise.thermal_floor", "noise.figure", "noise.source.active", "noise.source.reference-electrode",
            "noise.source.ground-electrode", "mains.divider", "mains.system_cmrr", "open.", "contact.",
        ],
        ["mains.total", "noise.board_share"], PlotKind.Electrodes);

    private static readonly Place InputPlace = new(Input, "input", ["input."],
        ["mains.total", "mains.divider", "mains.leads", "mains.imbalance", "mains.loop", "mains.system_cmrr", "input.", "noise.source.protection", "safety.fault_current", "safety.series", "safety.sum"],
        ["mains.total", "safety.fault_current"], PlotKind.Mains);

    private static readonly Place AmplifierPlace = new(Amplifier, "amplifier", ["amplifier.", "ground-drive.", "board-temperature"],
        [
            "levels.amplifier", "levels.offset_survived", "levels.first", "noise.board_share", "noise.source.amplifier", "noise.shorted", "mains.amplifier", "mains.cmrr_needed", "filter.amplifier", "drive.", "levels.drive",
            "safety.driven", "noise.source.ground-resistor",
        ],
        ["levels.amplifier", "levels.offset_survived", "noise.board_share", "drive.", "safety.driven"], PlotKind.Drive);

    private static readonly Place ConverterPlace = new(Converter, "converter", ["converter.", "channels"],
        ["converter.", "levels.converter", "alias.fold", "alias.modulator", "noise.source.converter", "noise.source.quantisation", "noise.source.folded", "skew.", "supply.reference_noise"],
        ["converter.", "levels.converter", "alias.fold", "alias.modulator"], PlotKind.Response);

    private static readonly Place DigitalPlace = new(Digital, "digital", ["digital[", "digital", "packet-time"],
        ["mains.recorded", "digital.", "latency.", "filter.path"], ["mains.recorded"], PlotKind.Response);

    /// <summary>The views across the path, in the order of the key line.</summary>
    public static readonly IReadOnlyList<Place> Views =
    [
        new(Verdicts, "verdicts", ["requirements."], [""], [], PlotKind.Response, 'v'),
        new("noise", "noise", ["band", "signal.smallest", "board-temperature", "skin-temperature", "requirements.noise", "bands["], ["noise."], ["noise."], PlotKind.Noise, 'n'),
        new("mains", "mains", ["mains.", "requirements.mains"], ["mains.", "drive."], ["mains."], PlotKind.Mains, 'm'),
        new("levels", "levels", ["signal.largest", "electrodes.offset", "supply.lowest", "supply.mid-rail", "requirements.offset", "requirements.headroom"], ["levels.", "gain.", "input.bias"], ["levels."], PlotKind.Step, 'l'),
        new("aliases", "aliases", ["converter.rate", "band", "requirements.fold", "interferers["], ["alias.", "mains.harmonic."], ["alias."], PlotKind.Response, 'a'),
        new("safety", "safety", ["supply.highest", "input.series-resistor", "input.resistor-tolerance", "ground-drive.series-resistor", "ground-drive.resistor-tolerance", "electrodes.active-buffer.skin-resistor", "electrodes.reference-buffer.skin-resistor", "requirements.fault", "requirements.driven"],
            ["safety.", "contact.adds"], ["safety."], PlotKind.Drive, 'f'),
        new("power", "power", ["supply."], ["power.", "data.", "supply.", "latency."], ["power."], PlotKind.Step, 'p'),
        new("sheet", "sheet", ["name", "purpose", "caution", "channels", "montage."], ["montage.", "gain.mid", "latency.total"], [], PlotKind.Response, 's'),
    ];

    /// <summary>The blocks of a design's path, in order. Neighbouring anti-alias sections share one block.</summary>
    public static IReadOnlyList<Place> Blocks(Design design)
    {
        List<Place> blocks = [ScalpPlace, ElectrodesPlace, InputPlace, AmplifierPlace];
        for (int at = 0; at < design.Stages.Count;)
        {
            bool gain = design.Stages[at] is GainStage;
            List<int> group = [at++];
            while (!gain && at < design.Stages.Count && design.Stages[at] is not GainStage)
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

    /// <summary>True where the key or id begins like this: at the end of a word, or where the beginning ends with a dot or a bracket.</summary>
    public static bool Begins(string text, string beginning) =>
        beginning.Length == 0
        || (text.StartsWith(beginning, StringComparison.Ordinal)
            && (beginning[^1] is '.' or '[' || text.Length == beginning.Length || text[beginning.Length] is '.' or '-' or '_'));

    /// <summary>The results that belong here: judged ones worst first, then the others in the order of the place.</summary>
    public IReadOnlyList<Result> ResultsOf(Assessment assessment)
    {
        List<Result> mine = [];
        IEnumerable<Result> judged = assessment.Judged;
        mine.AddRange(judged.Where(result => Results.Any(beginning => Begins(result.Id.Text, beginning))));
        if (Id == Verdicts)
        {
            return mine;
        }

        HashSet<ResultId> seen = [.. mine.Select(result => result.Id)];
        foreach (string beginning in Results)
        {
            mine.AddRange(assessment.Results.Where(result => Begins(result.Id.Text, beginning) && seen.Add(result.Id)));
        }

        return mine;
    }

    /// <summary>The worst verdict that the block answers for.</summary>
    public VerdictKind Worst(Assessment assessment) =>
        assessment.Results.Where(result => result.Verdict.Requirement is not null && Judges.Any(beginning => Begins(result.Id.Text, beginning)))
            .Select(result => result.Verdict.Kind).DefaultIfEmpty(VerdictKind.NotJudged).Max();

    private static Place OfStages(Design design, List<int> stages, bool gain)
    {
        List<string> results = [], judges = [], noise = [];
        foreach (int stage in stages)
        {
            string slug = DesignFields.Slug(design.Stages[stage].Name);
            results.AddRange([$"levels.{slug}", $"filter.{slug}"]);
            judges.Add($"levels.{slug}");
            noise.Add($"noise.source.{slug}");
        }

        string title = gain || stages.Count == 1 ? design.Stages[stages[0]].Name : "anti-alias";
        return new Place(
            $"stage {stages[0] + 1}",
            gain ? title : "anti-alias",
            [.. stages.Select(stage => $"stages[{stage + 1}].")],
            gain ? [.. results, .. noise, "gain."] : ["alias.fold", "alias.high", "alias.low", "alias.muscle", .. results, "filter.path", .. noise],
            gain ? judges : [.. judges, "alias.fold"],
            PlotKind.Response)
        {
            Stages = stages,
        };
    }
}

/// <summary>The kinds of plot.</summary>
public enum PlotKind
{
    Response,
    Delay,
    Noise,
    Mains,
    Electrodes,
    Drive,
    Step,
}
