using System.CommandLine;
using FrontEnd.Catalogue;
using FrontEnd.Documents.Files;
using FrontEnd.Documents.Sheets;
using FrontEnd.Documents.Teaching;
using FrontEnd.Head;
using FrontEnd.Pairs;

namespace FrontEnd.App.Commands;

/// <summary><c>frontend pairs</c>: what pairs of sites show of a source, and what their reference takes away.</summary>
internal static class PairsCommand
{
    private const int MostBest = 1000;

    public static Command Make(Outlet outlet)
    {
        Argument<string?> design = new("design") { Description = "design file, TOML or plain-number JSON, whose channels are shown; or --sites", Arity = ArgumentArity.ZeroOrOne };
        Option<string?> sites = new("--sites") { Description = "pairs (\"O1-ears O1-Cz\") to show, or sites (\"O1 O2 Cz A1\") to try in every pairing; without a list, the sites of the 10-20 system. Names: 10-20 and 10-10 sites, ear-left, mastoid-right; after a hyphen also ears, mastoids, average, far", HelpName = "sites", Arity = ArgumentArity.ZeroOrOne };
        Option<string?> under = new("--under") { Description = "the site that the source lies under; default: the design's [[patches]]", HelpName = "site" };
        Option<string?> area = new("--area") { Description = "how much cortex acts together; default: 6 cm²", HelpName = "area" };
        Option<string?> wall = new("--wall-towards") { Description = "the source is the wall of a sulcus with its positive side towards this site; default: the crowns of gyri, which point outwards", HelpName = "site" };
        Option<string?> amplitude = new("--amplitude") { Description = "amplitude of the rhythm in the pair of --stated-in; default: none, and only shares are shown", HelpName = "voltage" };
        Option<string> kind = new("--amplitude-kind") { Description = "pp or rms", HelpName = "kind", DefaultValueFactory = _ => "pp" };
        Option<string?> stated = new("--stated-in") { Description = "pair in which the amplitude is stated; default: the source's site against both ears", HelpName = "pair" };
        Option<string?> band = new("--band") { Description = "the rhythm's band by name (alpha, or one of the design's); default: the design's band, without a design alpha", HelpName = "band" };
        Option<string?> best = new("--best") { Description = $"rank every pair of the sites by signal over noise and show this many; default: the design's channels, or {PairStudy.UsualBest} if sites are given", HelpName = "number" };
        Option<string?> shells = new("--shells") { Description = $"conductivities of the head: {string.Join(", ", HeadWords.Shells.Keys)}; default: the design's, four", HelpName = "set" };
        Option<string?> ratio = new("--skull-ratio") { Description = "conductivity of the brain over that of the skull, 5 to 200; default: the set's, 20 for four", HelpName = "number" };
        Option<string?> noise = new("--noise") { Description = "noise of one electrode's path in the band, rms; default: the design's; left out without a design", HelpName = "voltage" };
        Option<string?> map = new("--map") { Description = "file for the head map, .svg or .txt; an existing file is replaced", HelpName = "file" };
        Option<bool> json = OptionValues.Json();
        Command command = new("pairs",
            "Works out which pair of sites shows a rhythm at a place: how much of it is kept, how much the reference takes away, the background, the front end's noise and the ratio of signal to both. Exit code 0: done, 2: the call or the design cannot be used.") { design,
            sites, under, area, wall, amplitude, kind, stated, band, best, shells, ratio, noise, map, json };
        command.SetAction(call =>
        {
            Words words = new(call.GetValue(under), call.GetValue(area), call.GetValue(wall), call.GetValue(amplitude))
            {
                Kind = call.GetRequiredValue(kind), StatedIn = call.GetValue(stated), Band = call.GetValue(band), Shells = call.GetValue(shells),
                SkullRatio = call.GetValue(ratio), Noise = call.GetValue(noise), Best = call.GetValue(best),
                Sites = call.GetResult(sites) is null ? null : call.GetValue(sites) ?? "",
            };
            return Run(call.GetValue(design), words, call.GetValue(map), call.GetValue(json), outlet);
        });
        return command;
    }

    private static int Run(string? path, Words words, string? map, bool json, Outlet outlet)
    {
        if (path is null && words.Sites is null)
        {
            outlet.Tell(CallMessages.Call("neither a design nor --sites is given", "frontend pairs", "pairs are those of a design's channels, or of the sites that are named"));
            return ExitCode.Unusable;
        }

        Design? design = null;
        if (path is not null)
        {
            if (DesignInput.Usable(path, outlet) is not { } document)
            {
                return ExitCode.Unusable;
            }

            design = document.Design;
        }

        List<Finding> findings = [];
        PairsQuestion question = words.Question(design, findings);
        if (findings.Count == 0)
        {
            (PairsAnswer? answer, IReadOnlyList<Finding> problems) = PairStudy.Work(question, (at, key) =>
                words.Under is null ? $"patches[{at + 1}].{key}" : "--" + key);
            findings.AddRange(problems.Select(one => one.Code == Messages.NoSitesNamed ? Messages.NoSitesInCommand(one) : one));
            if (answer is not null)
            {
                return Show(answer, findings, map, json, outlet);
            }
        }

        outlet.Tell(findings);
        return ExitCode.Unusable;
    }

    private static int Show(PairsAnswer answer, List<Finding> findings, string? map, bool json, Outlet outlet)
    {
        bool letters = string.Equals(Path.GetExtension(map), ".txt", StringComparison.OrdinalIgnoreCase);
        if (map is not null && TextFiles.WriteAtomically(map, letters ? SourceMap.Text(answer) : SourceMap.Svg(answer)) is { } problem)
        {
            outlet.Tell([.. findings, problem]);
            return ExitCode.Unusable;
        }

        string[] files = map is null ? [] : [map];
        outlet.Results.Write(json ? AnswerJson.Of(answer, files) : PairsText.Of(answer));
        outlet.Tell(findings);
        outlet.NameBeside(json, files);
        return ExitCode.Met;
    }

    /// <summary>The options as they were typed.</summary>
    private sealed record Words(string? Under, string? Area, string? Wall, string? Amplitude)
    {
        public required string Kind { get; init; }

        public string? StatedIn { get; init; }

        public string? Band { get; init; }

        public string? Shells { get; init; }

        public string? SkullRatio { get; init; }

        public string? Noise { get; init; }

        public string? Best { get; init; }

        public string? Sites { get; init; }

        private (string Name, string? Value)[] OfOneSource =>
            [("--area", Area), ("--wall-towards", Wall), ("--amplitude", Amplitude), ("--stated-in", StatedIn), ("--band", Band)];

        public PairsQuestion Question(Design? design, List<Finding> findings)
        {
            HeadMeasures head = design?.Head ?? new();
            if (Shells is not null)
            {
                head = head with { Shells = OptionValues.Word(Shells, "--shells", HeadWords.Shells, findings) };
            }

            if (OptionValues.Quantity<PlainNumber>(SkullRatio, "--skull-ratio", findings) is { } ratio)
            {
                head = head with { SkullRatio = ratio.Number };
                findings.AddRange(SourceCheck.SkullRatio(ratio.Number, "--skull-ratio"));
            }

            VoltageRms? noise = OptionValues.Quantity<VoltageRms>(Noise, "--noise", findings);
            if (noise is { Volts: < 0 or > 1 })
            {
                findings.Add(SourceCheck.NoNoise("--noise", noise.Value));
            }

            findings.AddRange(new[] { ("--wall-towards", Wall), ("--stated-in", StatedIn), ("--band", Band) }
                .Where(option => option.Item2 is { } word && string.IsNullOrWhiteSpace(word)).Select(option => CallMessages.Empty(option.Item1, isEmpty: true, "frontend pairs")));
            if (Under is null && OfOneSource.FirstOrDefault(option => option.Value is not null).Name is { } alone)
            {
                findings.Add(CallMessages.OptionAlone(alone, "--under"));
            }

            return new PairsQuestion
            {
                Patches = Under is null ? design?.Patches ?? [] : [Patch(findings)], Head = head, Background = design?.Background ?? new(),
                Design = design, Noise = noise, Best = OptionValues.Whole(Best, "--best", 1, MostBest, findings, code: CallMessages.UnknownWord),
                Sites = Sites?.Split([' ', ',', ';'], StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries),
            };
        }

        private CortexPatch Patch(List<Finding> findings) => new()
        {
            Name = Under!, Under = Under!, WallTowards = Wall ?? "", StatedIn = StatedIn ?? "", Band = Band ?? "",
            Area = OptionValues.Quantity<Area>(Area, "--area", findings) ?? new CortexPatch().Area,
            Amplitude = OptionValues.Quantity<Voltage>(Amplitude, "--amplitude", findings),
            AmplitudeKind = OptionValues.Word(Kind, "--amplitude-kind", HeadWords.Amplitudes, findings),
        };
    }
}
