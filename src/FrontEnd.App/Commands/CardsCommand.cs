using System.CommandLine;
using FrontEnd.Circuits;
using FrontEnd.Documents.Cards;
using FrontEnd.Documents.Reading;
using FrontEnd.Documents.Sheets;
using FrontEnd.Electrodes;
using FrontEnd.Fields;

namespace FrontEnd.App.Commands;

/// <summary><c>frontend cards</c>: part cards, listed, shown and made.</summary>
internal static class CardsCommand
{
    /// <summary>The kinds of cards.</summary>
    public static IEnumerable<string> Words => CardPlace.Classes.Select(CardPlace.Word);

    /// <summary>The names of the cards that come with the program.</summary>
    public static IEnumerable<string> Names => CardPlace.Classes.SelectMany(CardShelf.Names).Distinct(StringComparer.Ordinal);

    private static string Kinds => string.Join(", ", Words);

    public static Command Make(Outlet outlet)
    {
        Argument<string?> which = new("which") { Description = $"a kind ({Kinds}), a card's name, or the file of one of yours; default: list all", Arity = ArgumentArity.ZeroOrOne };
        Option<bool> json = OptionValues.Json();
        Command command = new("cards", "Lists part cards by kind, or shows one with its values and where each comes from. Exit code 0: done, 2: there is no such card.") { which, json };
        command.Subcommands.Add(New(outlet));
        command.SetAction(call => Show(call.GetValue(which), call.GetValue(json), outlet));
        return command;
    }

    private static int Show(string? which, bool json, Outlet outlet)
    {
        bool isList = which is null || ShownCard.ClassOf(which) is not null;
        (IReadOnlyList<ShownCard> cards, IReadOnlyList<Finding> findings) = which is null ? (ShownCard.All, [])
            : ShownCard.ClassOf(which) is { } kind ? (ShownCard.Of(kind), [])
            : ShownCard.Find(which);
        outlet.Tell(findings);
        if (cards.Count == 0)
        {
            return ExitCode.Unusable;
        }

        outlet.Results.Write(json ? AnswerJson.Of(cards) : isList ? CardsText.List(cards) : CardsText.Shown(cards));
        return ExitCode.Met;
    }

    private static Command New(Outlet outlet)
    {
        Argument<string> kind = new("kind") { Description = $"which kind: {Kinds}" };
        Argument<string> file = new("file") { Description = "the file to write, which ends in .toml; it must not exist" };
        Option<string?> noise = new("--noise")
        {
            Description = "points read off the plot of the voltage noise, a table with columns frequency and density: white noise and corner are fitted to them; for an op-amp, an amplifier or a buffer", HelpName = "file",
        };
        Option<string?> current = new("--current-noise") { Description = "the same of the current noise", HelpName = "file" };
        Option<string?> impedance = new("--impedance")
        {
            Description = "a measured spectrum, a table with columns frequency, magnitude and phase, or frequency, real and imaginary part: the electrode's resistance in series and one or two pairs of R in parallel with C are fitted to it", HelpName = "file",
        };
        Option<bool> json = OptionValues.Json();
        Command command = new("new", "Writes a part card to be filled from a data sheet: every key with its meaning, unit, range and default. Never overwrites a file. Exit code 0: done, 2: something cannot be used.")
        {
            kind, file, noise, current, impedance, json,
        };
        command.SetAction(call => Write(new Asked(call.GetRequiredValue(kind), call.GetRequiredValue(file))
        {
            Noise = call.GetValue(noise), Current = call.GetValue(current), Impedance = call.GetValue(impedance), Json = call.GetValue(json),
        }, outlet));
        return command;
    }

    /// <summary>A call as it was typed.</summary>
    private sealed record Asked(string Kind, string File)
    {
        public string? Noise { get; init; }

        public string? Current { get; init; }

        public string? Impedance { get; init; }

        public bool Json { get; init; }
    }

    private static int Write(Asked asked, Outlet outlet)
    {
        List<Finding> wrong = [];
        NewCard? card = Worked(asked, wrong);
        if (wrong.Count == 0 && card is not null)
        {
            wrong.AddRange(card.Findings.Where(finding => finding.Severity == Severity.Error));
            if (wrong.Count == 0 && card.Write(asked.File) is { } problem)
            {
                wrong.Add(problem);
            }
        }

        if (wrong.Count != 0 || card is null)
        {
            outlet.Tell(wrong);
            return ExitCode.Unusable;
        }

        outlet.Results.Write(asked.Json ? AnswerJson.Of(card, asked.File) : CardsText.Fitted(card));
        outlet.Tell(card.Findings);
        outlet.NameBeside(asked.Json, [asked.File], $"; a design names it as card = \"{Path.GetFileName(asked.File)}\", `frontend cards {asked.File}` shows it");
        return ExitCode.Met;
    }

    /// <summary>The card with its fits; null where something is wrong with the call or the points.</summary>
    private static NewCard? Worked(Asked asked, List<Finding> wrong)
    {
        if (ShownCard.ClassOf(asked.Kind) is not { } kind)
        {
            wrong.Add(CardMessages.NoKind(asked.Kind, Nearest.Of(asked.Kind, Words)));
            return null;
        }

        string about = $"a card of the kind {CardPlace.Word(kind)}";
        bool hasNoise = NewCard.HasNoise(kind);
        wrong.AddRange(new[] { ("--noise", asked.Noise, hasNoise), ("--current-noise", asked.Current, hasNoise), ("--impedance", asked.Impedance, kind == CardClass.Electrode) }
            .Where(one => one.Item2 is not null && !one.Item3).Select(one => CallMessages.SaysNothing(one.Item1, about)));
        if (!asked.File.EndsWith(".toml", StringComparison.OrdinalIgnoreCase))
        {
            wrong.Add(CardMessages.NotToml(asked.File));
        }
        else if (Path.Exists(asked.File))
        {
            wrong.Add(CallMessages.Exists(asked.File) with { Note = "a card is never overwritten" });
        }

        return wrong.Count != 0 ? null : new NewCard(kind)
        {
            Voltage = Noise(asked.Noise, QuantityKind.Of<VoltageNoiseDensity>(), wrong),
            Current = Noise(asked.Current, QuantityKind.Of<CurrentNoiseDensity>(), wrong),
            Impedance = Impedance(asked.Impedance, wrong),
        };
    }

    private static FittedNoise? Noise(string? file, QuantityKind kind, List<Finding> wrong)
    {
        if (file is null)
        {
            return null;
        }

        NoisePointsRead read = PointsFile.Noise(file, kind);
        wrong.AddRange(read.Findings);
        return read.Findings.Count != 0 ? null : new FittedNoise(NoiseFit.Of(read.Points), file) { UnitRead = read.UnitRead };
    }

    private static FittedImpedance? Impedance(string? file, List<Finding> wrong)
    {
        if (file is null)
        {
            return null;
        }

        ImpedancePointsRead read = PointsFile.Impedance(file);
        wrong.AddRange(read.Findings);
        return read.Findings.Count != 0 ? null : new FittedImpedance(ImpedanceFit.Of(read.Points), file);
    }
}
