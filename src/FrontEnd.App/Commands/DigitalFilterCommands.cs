using System.CommandLine;
using FrontEnd.DesignedFilters;
using FrontEnd.Digital;
using FrontEnd.Documents.Sheets;
using FrontEnd.Filters;

namespace FrontEnd.App.Commands;

/// <summary>Notches and the filters that have no analogue model: <c>frontend filter notch</c>, <c>fir</c>, <c>comb</c> and
/// <c>sinc</c>.</summary>
internal static class DigitalFilterCommands
{
    private const string Codes = "Exit code 0: done, 2: there is no such filter.";

    public static IEnumerable<Command> Make(Outlet outlet) => [Fir(outlet), Comb(outlet), NotchFilters(outlet), Sinc(outlet)];

    private static Command Fir(Outlet outlet)
    {
        Option<string> shape = new("--shape") { Description = "what it passes: " + string.Join(", ", FilterWords.Shapes.Keys),
            Required = true, HelpName = "word" };
        Option<string> pass = new("--pass") { Description = "edge of the pass band, for a band shape both, such as 8Hz,13Hz",
            Required = true, HelpName = "F[,F]" };
        Option<string> stop = new("--stop") { Description = "edge of the stop band; as many as pass-band edges", Required = true, HelpName = "F[,F]" };
        Option<string?> ripple = new("--ripple") { Description = "maximum pass-band ripple, largest gain to smallest, such as 0.5dB; may be left out with --taps", HelpName = "dB" };
        Option<string?> attenuation = new("--attenuation") { Description = "minimum stop-band attenuation, such as 60dB; may be left out with --taps of an equiripple filter: errors then have equal weight in all bands", HelpName = "dB" };
        Option<string?> taps = new("--taps") { Description = $"number of taps, 3 to {FirWish.MostTaps}; default: the smallest odd number that meets ripple and attenuation", HelpName = "N" };
        Option<string?> method = new("--method") { Description = "design method: " + string.Join(", ", FilterWords.Methods.Keys)
            + "; default: equiripple", HelpName = "word" };
        Frame frame = new("fir", "Designs an FIR filter: no feedback, constant delay. " + Codes, outlet, sections: false,
            [shape, pass, stop, ripple, attenuation, taps, method]);
        return frame.With((call, findings) => new FirWish
        {
            Method = OptionValues.Word(call.GetValue(method) ?? "equiripple", method.Name, FilterWords.Methods, findings),
            Shape = OptionValues.Word(call.GetRequiredValue(shape), shape.Name, FilterWords.Shapes, findings),
            PassEdges = OptionValues.Frequencies(call.GetRequiredValue(pass), pass.Name, findings) ?? [],
            StopEdges = OptionValues.Frequencies(call.GetRequiredValue(stop), stop.Name, findings) ?? [],
            Ripple = OptionValues.Quantity<Decibels>(call.GetValue(ripple), ripple.Name, findings),
            Attenuation = OptionValues.Quantity<Decibels>(call.GetValue(attenuation), attenuation.Name, findings),
            Taps = OptionValues.Count(call.GetValue(taps), taps.Name, findings),
            Rate = frame.RateOf(call, findings),
        }.Design() is var answer && answer.Filter is { } filter
            ? Made.Of(answer.Findings, () => DesignedFir.Of(answer), DigitalPages.Of)
                with { Title = $"FIR {FilterWords.Of(answer.Wish.Shape)}", Export = arithmetic => TapsExport.Of(filter, "FIR", arithmetic) }
            : Made.Nothing(answer.Findings));
    }

    private static Command Comb(Outlet outlet)
    {
        Option<string?> mains = new("--mains") { Description = "mains frequency; default: 50 Hz", HelpName = "F" };
        Option<string> periods = new("--periods") { Description = "1: average over one mains period; more: subtract what repeats over that many periods", DefaultValueFactory = _ => "1", HelpName = "N" };
        Option<string?> edge = new("--edge") { Description = "upper edge of the band, for its droop; default: 40 Hz", HelpName = "F" };
        Frame frame = new("comb",
            "Designs a comb that removes the mains and all its harmonics by averaging over whole periods. " + Codes, outlet,
            sections: false, [mains, periods, edge]);
        return frame.With((call, findings) => new CombWish
        {
            Mains = OptionValues.Quantity<Frequency>(call.GetValue(mains), mains.Name, findings) ?? Frequency.FromHertz(50),
            Periods = OptionValues.Count(call.GetValue(periods), periods.Name, findings) ?? 1,
            Edge = OptionValues.Quantity<Frequency>(call.GetValue(edge), edge.Name, findings) ?? Frequency.FromHertz(40),
            Rate = frame.RateOf(call, findings),
        }.Design() is var answer && answer.Comb is { } comb
            ? Made.Of(answer.Findings, () => DesignedComb.Of(answer), DigitalPages.Of)
                with { Title = "comb over mains periods", Export = arithmetic => CombExport.Of(comb, "comb", arithmetic) }
            : Made.Nothing(answer.Findings));
    }

    private static Command NotchFilters(Outlet outlet)
    {
        Option<string?> mains = new("--mains") { Description = "mains frequency; default: 50 Hz", HelpName = "F" };
        Option<string> q = new("--q") { Description = "centre frequency over -3 dB bandwidth", DefaultValueFactory = _ =>
            "10", HelpName = "N" };
        Option<bool> common = new("--common-width") { Description = "digital: make every harmonic's notch as wide as the first; default: every notch has the same Q" };
        Option<string?> edge = new("--edge") { Description = "digital: upper edge of the band; harmonics up to it get a notch, the mains always does; default: 40 Hz", HelpName = "F" };
        Option<string?> topology = new("--topology") { Description = "analogue: the circuit: "
            + string.Join(", ", FilterParts.Notches.Keys) + "; default: the first", HelpName = "word" };
        Option<string?> opAmp = OptionValues.OpAmpOption();
        Frame frame = new(
            "notch",
            "Designs notches: with --rate, digital ones at the mains and its harmonics; without it, an analogue one at the mains, with its parts. " + Codes,
            outlet, sections: true,
            [mains, q, common, edge, topology, opAmp], "default: an analogue notch");
        return frame.With((call, findings) =>
        {
            NotchWish wish = new()
            {
                Mains = OptionValues.Quantity<Frequency>(call.GetValue(mains), mains.Name, findings) ?? Frequency.FromHertz(50),
                Q = OptionValues.Quantity<PlainNumber>(call.GetValue(q), q.Name, findings)?.Number ?? 10,
                CommonWidth = call.GetValue(common),
                Edge = OptionValues.Quantity<Frequency>(call.GetValue(edge), edge.Name, findings) ?? Frequency.FromHertz(40),
                Rate = frame.RateOf(call, findings),
            };
            bool isDigital = frame.HasRate(call);
            findings.AddRange((isDigital ? (Option[])[topology, opAmp] : [common, edge])
                .Where(o => call.GetResult(o) is { Implicit: false })
                .Select(o => CallMessages.SaysNothing(o.Name, isDigital ? "a digital notch" : "an analogue notch")));
            if (!isDigital)
            {
                FilterParts build = new()
                {
                    OpAmp = OptionValues.OpAmp(call.GetValue(opAmp), opAmp.Name, findings),
                    Notch = OptionValues.Word(call.GetValue(topology) ?? "twin-t", topology.Name, FilterParts.Notches, findings),
                };
                FilterAnswer analog = wish.DesignAnalog();
                return analog.Filter is null
                    ? Made.Nothing(analog.Findings)
                    : Made.Of(analog.Findings, () => DesignedSections.Of(analog, build), FilterPage.Of);
            }

            NotchAnswer answer = wish.Design();
            return answer.Sections is not { } sections
                ? Made.Nothing(answer.Findings)
                : Made.Of(answer.Findings, () => DesignedNotches.Of(answer), DigitalPages.Of)
                    with { Title = string.Join(", ", answer.Names), Export = arithmetic =>
                        SectionsExport.Of(sections, answer.Names, answer.Wish.Rate, arithmetic) };
        });
    }

    private static Command Sinc(Outlet outlet)
    {
        Option<string> order = new("--order") { Description = "k of sinc^k, 1 to 10", DefaultValueFactory = _ =>
            "3", HelpName = "N" };
        Option<string> ratio = new("--ratio") { Description = "modulator samples for each output sample, 2 to 65536",
            DefaultValueFactory = _ => "256", HelpName = "N" };
        Option<string?> edge = new("--edge") { Description = "upper edge of the band to flatten; default: 40 Hz", HelpName = "F" };
        Option<string> taps = new("--taps") { Description = "taps of the flattening filter, odd, 3 to 63", DefaultValueFactory = _ =>
            "11", HelpName = "N" };
        Frame frame = new("sinc",
            "Shows the droop of a delta-sigma converter's sinc decimator and designs the taps that flatten its band. --rate is the output rate. " + Codes,
            outlet, sections: false, [order, ratio, edge, taps]);
        return frame.With((call, findings) => new SincWish
        {
            Order = OptionValues.Count(call.GetValue(order), order.Name, findings) ?? 3,
            Ratio = OptionValues.Count(call.GetValue(ratio), ratio.Name, findings) ?? 256,
            Edge = OptionValues.Quantity<Frequency>(call.GetValue(edge), edge.Name, findings) ?? Frequency.FromHertz(40),
            Taps = OptionValues.Count(call.GetValue(taps), taps.Name, findings) ?? 11,
            Rate = frame.RateOf(call, findings),
        }.Design() is var answer && answer.Compensation is { } filter
            ? Made.Of(answer.Findings, () => DesignedSinc.Of(answer), DigitalPages.Of)
                with { Title = $"taps after a sinc^{answer.Wish.Order}",
                    Export = arithmetic => TapsExport.Of(filter, "compensation", arithmetic) }
            : Made.Nothing(answer.Findings));
    }

    /// <summary>What a command has made: findings, and where there is a filter its page, its JSON and its coefficients, each worked out
    /// when it is asked for.</summary>
    private sealed record Made(IReadOnlyList<Finding> Findings, Func<string>? Page, Func<string, string>? Json)
    {
        /// <summary>What is filtered, for the first lines of a coefficient file.</summary>
        public string Title { get; init; } = "";

        /// <summary>The coefficients; null for an analogue filter.</summary>
        public Func<DigitalArithmetic, FilterExport?>? Export { get; init; }

        public static Made Nothing(IReadOnlyList<Finding> findings) => new(findings, null, null);

        public static Made Of<T>(IReadOnlyList<Finding> findings, Func<T> design, Func<T, string> page)
            where T : DesignedFilter => new(findings, () => page(design()), command => AnswerJson.Of(design(), command));
    }

    /// <summary>What the four have in common: rate, JSON, coefficients, findings, exit codes.</summary>
    private sealed class Frame
    {
        private readonly Command _command;
        private readonly Outlet _outlet;
        private readonly Option<string?> _rate;
        private readonly Option<bool> _json = new("--json") { Description = "print figures and coefficients as JSON, with -o the file written; default: text, 80 columns" };
        private readonly CoefficientOutput _output = new();

        /// <param name="withoutRate">What comes of a call without a sampling rate; null where there has to be one.</param>
        public Frame(string name, string description, Outlet outlet, bool sections, IEnumerable<Option> options, string? withoutRate = null)
        {
            _rate = new Option<string?>("--rate") { Description = withoutRate is null
                ? "sampling rate"
                : $"sampling rate; {withoutRate}", Required = withoutRate is null, HelpName = "F" };
            _outlet = outlet;
            _command = new Command(name, description);
            foreach (Option option in options)
            {
                _command.Options.Add(option);
            }

            _command.Options.Add(_rate);
            _command.Options.Add(_json);
            _output.AddTo(_command, sections);
        }

        public Frequency RateOf(ParseResult call, List<Finding> findings) =>
            OptionValues.Quantity<Frequency>(call.GetValue(_rate), _rate.Name, findings) ?? default;

        public bool HasRate(ParseResult call) => call.GetValue(_rate) is not null;

        public Command With(Func<ParseResult, List<Finding>, Made> make)
        {
            _command.SetAction(call =>
            {
                List<Finding> findings = [];
                DigitalArithmetic arithmetic = _output.Arithmetic(call, findings);
                Made made = make(call, findings);
                // What follows from a value that could not be read is not told beside it.
                _outlet.Tell(findings.Count == 0 ? made.Findings : findings);
                if (findings.Count != 0 || made.Page is null)
                {
                    return ExitCode.Unusable;
                }

                if (_output.File(call) is { } file)
                {
                    if (made.Export is null)
                    {
                        _outlet.Tell(CallMessages.NoCoefficients(file));
                        return ExitCode.Unusable;
                    }

                    return CoefficientOutput.Write(file, made.Title, made.Export(arithmetic), arithmetic, ($"filter {_command.Name}", call.GetValue(_json)), _outlet);
                }

                _outlet.Results.Write(call.GetValue(_json) ? made.Json!($"filter {_command.Name}") : made.Page());
                return ExitCode.Met;
            });
            return _command;
        }
    }
}
