using System.CommandLine;
using FrontEnd.DesignedFilters;
using FrontEnd.Digital;
using FrontEnd.Documents.Sheets;
using FrontEnd.Filters;

namespace FrontEnd.App.Commands;

/// <summary><c>frontend filter</c>: one filter from what is asked of it.</summary>
internal static class FilterCommand
{
    public static Command Make(Outlet outlet)
    {
        Options options = new();
        Command command = new("filter",
            "Designs a filter and shows its response and its parts; the commands below design notches and digital filters without an analogue prototype. Exit code 0: done, 2: there is no such filter.");
        foreach (Option option in options.All)
        {
            command.Options.Add(option);
        }

        options.Output.AddTo(command, sections: true);
        foreach (Command digital in DigitalFilterCommands.Make(outlet))
        {
            command.Subcommands.Add(digital);
        }

        command.SetAction(call => Run(call, options, outlet));
        return command;
    }

    private static int Run(ParseResult call, Options options, Outlet outlet)
    {
        List<Finding> findings = [];
        DigitalArithmetic arithmetic = options.Output.Arithmetic(call, findings);
        FilterParts build = new()
        {
            OpAmp = OptionValues.OpAmp(call.GetValue(options.OpAmp), options.OpAmp.Name, findings),
            Topology = OptionValues.Word(
                call.GetValue(options.Topology) ?? "sallen-key", options.Topology.Name, FilterParts.Topologies, findings),
        };
        FilterWish wish = new()
        {
            Family = OptionValues.Word(call.GetRequiredValue(options.Family), options.Family.Name, FilterWords.Families, findings),
            Shape = OptionValues.Word(call.GetRequiredValue(options.Shape), options.Shape.Name, FilterWords.Shapes, findings),
            Corners = OptionValues.Frequencies(call.GetRequiredValue(options.Corner), options.Corner.Name, findings) ?? [],
            Order = OptionValues.Count(call.GetValue(options.Order), options.Order.Name, findings),
            StopEdges = OptionValues.Frequencies(call.GetValue(options.StopFrequency), options.StopFrequency.Name, findings),
            Rate = OptionValues.Quantity<Frequency>(call.GetValue(options.Rate), options.Rate.Name, findings),
            Ripple = OptionValues.Quantity<Decibels>(call.GetValue(options.Ripple), options.Ripple.Name, findings),
            Attenuation = OptionValues.Quantity<Decibels>(call.GetValue(options.Attenuation), options.Attenuation.Name, findings),
            Normalisation = OptionValues.Word(
                call.GetValue(options.Normalisation) ?? "magnitude", options.Normalisation.Name, FilterWords.Normalisations, findings),
        };
        FilterAnswer? answer = findings.Count == 0 ? wish.Design() : null;
        findings.AddRange(answer?.Findings ?? []);
        outlet.Tell(findings);
        if (answer?.ZeroPoleGain is null)
        {
            return ExitCode.Unusable;
        }

        if (options.Output.File(call) is { } file)
        {
            return Write(file, answer, arithmetic, call.GetValue(options.Json), outlet);
        }

        DesignedSections filter = DesignedSections.Of(answer, build);
        outlet.Results.Write(call.GetValue(options.Json) ? AnswerJson.Of(filter, "filter") : FilterPage.Of(filter));
        return ExitCode.Met;
    }

    private static int Write(string file, FilterAnswer answer, DigitalArithmetic arithmetic, bool json, Outlet outlet)
    {
        if (answer.Digital is not { } digital)
        {
            outlet.Tell(CallMessages.NoCoefficients(file));
            return ExitCode.Unusable;
        }

        string name = $"{FilterWords.Name(answer.Wish.Family)} {FilterWords.Of(answer.Wish.Shape)}, order {answer.Prototype!.Order}";
        SectionsExport? export = SectionsExport.Of(digital.Sections, [.. Enumerable.Repeat(name, digital.Sections.Count)], digital.Rate,
            arithmetic);
        return CoefficientOutput.Write(file, name, export, arithmetic, ("filter", json), outlet);
    }

    private sealed class Options
    {
        public Option<string> Family { get; } = new("--family") { Description = "approximation: "
            + string.Join(", ", FilterWords.Families.Keys), Required = true, HelpName = "word" };

        public Option<string> Shape { get; } = new("--shape") { Description = "what it passes: "
            + string.Join(", ", FilterWords.Shapes.Keys), Required = true, HelpName = "word" };

        public Option<string> Corner { get; } = new("--corner")
        {
            Description = "corner, for a band shape both, such as 8Hz,13Hz: -3 dB for butterworth, bessel and critically-damped; ripple edge for chebyshev and elliptic; stop edge for inverse-chebyshev. "
                + "With --stop-frequency: the edge of the pass band",
            Required = true,
            HelpName = "F[,F]",
        };

        public Option<string?> Order { get; } = new("--order") { Description = "order of the prototype, 1 to 20, for band shapes 1 to 10 with twice as many poles", HelpName = "N" };

        public Option<string?> StopFrequency { get; } = new("--stop-frequency") { Description = "instead of --order: edge of the stop band, for a band shape both; the lowest order that meets it is used", HelpName = "F[,F]" };

        public Option<string?> Rate { get; } = new("--rate") { Description = "sampling rate; default: an analogue filter", HelpName = "F" };

        public Option<string?> Ripple { get; } = new("--ripple") { Description = "maximum loss in the pass band, such as 0.5dB; default with --stop-frequency: half the power, 3.01 dB", HelpName = "dB" };

        public Option<string?> Attenuation { get; } = new("--attenuation") { Description = "minimum attenuation in the stop band, such as 60dB",
            HelpName = "dB" };

        public Option<string?> Normalisation { get; } = new("--normalisation") { Description = "bessel: the corner is -3 dB (magnitude) or 1/(2π·group delay at 0 Hz) (delay); default: magnitude", HelpName = "word" };

        public Option<string?> Topology { get; } = new("--topology") { Description = "circuit of an analogue low-pass: "
            + string.Join(", ", FilterParts.Topologies.Keys) + "; default: the first", HelpName = "word" };

        public Option<string?> OpAmp { get; } = OptionValues.OpAmpOption();

        public Option<bool> Json { get; } = new("--json") { Description = "print sections, zeros, poles, gain and everything on the page as JSON, with -o the file written; default: text, 80 columns" };

        public CoefficientOutput Output { get; } = new();

        public IEnumerable<Option> All =>
            [Family, Shape, Corner, Order, StopFrequency, Rate, Ripple, Attenuation, Normalisation, Topology, OpAmp, Json];
    }
}
