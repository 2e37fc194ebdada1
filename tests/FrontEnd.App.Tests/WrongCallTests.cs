using System.CommandLine;
using System.Text.RegularExpressions;
using FrontEnd.App.Commands;
using FrontEnd.Documents.Tests;
using Xunit;

namespace FrontEnd.App.Tests;

/// <summary>Whatever is wrong with a call is told in our form and our words: code, place, reason, remedy, exit code 2, and never a type, an exception, a
/// temporary file or a word of the library that reads calls.</summary>
public sealed partial class WrongCallTests
{
    private const string Nonsense = "§%";

    private static readonly string[] Values = [Nonsense, "x", "", " ", "-1", "1e9", "NaN", "99999999999999999999999", "2,5", "no/such/place.toml", "\u0001", new string('y', 5000)];

    /// <summary>What makes each command's call whole, but for what is tried; none of them takes long.</summary>
    private static readonly Dictionary<string, string> Whole = new(StringComparer.Ordinal)
    {
        ["check"] = "designs/minimal.toml --no-advice", ["explain"] = "designs/minimal.toml noise.total", ["sheet"] = "designs/minimal.toml -o {0}/sheet.md --plain", ["spread"] = "designs/minimal.toml --builds 8",
        ["compare"] = "designs/minimal.toml designs/minimal.toml", ["new"] = "{0}/new.toml", ["cards"] = "op-amp", ["cards new"] = "op-amp {0}/card.toml", ["coefficients"] = "designs/hobbyist.toml -o {0}/c.csv",
        ["filter"] = "--family bessel --shape low-pass --order 2 --corner 40Hz", ["filter fir"] = "--shape low-pass --pass 40Hz --stop 80Hz --ripple 1dB --attenuation 20dB --rate 500Hz", ["filter comb"] = "--rate 500Hz",
        ["filter notch"] = "--rate 500Hz", ["filter sinc"] = "--rate 500Hz", ["problems"] = "--count 1 -o {0}/p", ["mark"] = "{0}/key.json {0}/answers.csv -o {0}/marks.csv", ["sites"] = "", ["pairs"] = "--sites O1-ears --under O1",
        ["glossary"] = "CMRR", ["lesson"] = "aliasing", ["rates"] = "designs/minimal.toml --rates 500", ["bench"] = "designs/minimal.toml", ["samples"] = "designs/minimal.toml --length 8s", ["size"] = "{0}/none.toml", ["schema"] = "design",
        ["completion"] = "bash", ["manual"] = "",
    };

    /// <summary>Options whose value is a text or a file's name that anything may be: they are taken.</summary>
    private static readonly string[] Free = ["--channel", "--test", "--from", "--to"];

    /// <summary>Options that mean a list, which may be empty.</summary>
    private static readonly string[] MaybeEmpty = ["--montage", "--sites"];

    /// <summary>Options and arguments that name what is written: they stand in the test's folder.</summary>
    private static readonly string[] Written = ["--output", "--qti", "--bank", "--svg", "--map", "--narrow", "--schematic", "--netlist", "file"];

    public static TheoryData<string> Commands => [.. Tree().Select(one => one.Name)];

    [Theory]
    [MemberData(nameof(Commands))]
    public void Option_WithAWrongValue_IsToldInOurForm(string name)
    {
        Command command = Tree().Single(one => one.Name == name).Command;
        foreach (Option option in command.Options.Where(one => one.Arity.MaximumNumberOfValues > 0 && one.ValueType != typeof(bool)))
        {
            foreach (string value in Values)
            {
                using TemporaryFolder folder = new();
                string[] call = [.. name.Split(' '), .. Without(WordsOf(name, folder), option), option.Name, Placed(option.Name, value, folder)];
                Outcome outcome = Shell.Run(call);
                InForm(outcome, string.Join(' ', call));
                Assert.True(outcome.Code == 2 || value != Nonsense || Free.Contains(option.Name) || Written.Contains(option.Name), $"{string.Join(' ', call)} is taken");
                Assert.True(outcome.Code == 2 || !string.IsNullOrWhiteSpace(value) || Free.Contains(option.Name) || MaybeEmpty.Contains(option.Name), $"{string.Join(' ', call)} is taken");
                NoTemporary(folder);
            }

            if (option.Arity.MinimumNumberOfValues > 0)
            {
                using TemporaryFolder folder = new();
                IsWrong([.. name.Split(' '), .. Without(WordsOf(name, folder), option), option.Name], option.Name);
            }

            if (option.Arity.MaximumNumberOfValues == 1)
            {
                using TemporaryFolder folder = new();
                IsWrong([.. name.Split(' '), .. Without(WordsOf(name, folder), option), option.Name, "1", option.Name, "2"], option.Name);
            }
        }
    }

    [Theory]
    [MemberData(nameof(Commands))]
    public void Call_ThatLacksOrHasTooMuch_IsToldInOurForm(string name)
    {
        Command command = Tree().Single(one => one.Name == name).Command;
        string[] words = name.Split(' ');
        using TemporaryFolder folder = new();
        if (command.Arguments.Any(one => one.Arity.MinimumNumberOfValues > 0) || command.Options.Any(one => one.Required))
        {
            IsWrong(words, "");
        }

        IsWrong([.. words, "--frobnicate"], "--frobnicate");
        if (name != "check")
        {
            IsWrong([.. words, .. WordsOf(name, folder), .. Enumerable.Repeat("surplus", 3)], "");
        }

        foreach (Option flag in command.Options.Where(one => one.ValueType == typeof(bool) && one.Name is not ("--help" or "--version")))
        {
            IsWrong([.. words, .. WordsOf(name, folder), $"{flag.Name}=perhaps"], flag.Name);
            IsWrong([.. words, .. WordsOf(name, folder), $"{flag.Name}=false"], flag.Name);
        }

        for (int at = 0; at < command.Arguments.Count; at++)
        {
            foreach (string value in Values)
            {
                string[] given = WordsOf(name, folder);
                if (at < given.Length && !given[at].StartsWith('-'))
                {
                    given[at] = Placed(command.Arguments[at].Name, value, folder);
                    Outcome outcome = Shell.Run([.. words, .. given]);
                    InForm(outcome, string.Join(' ', [.. words, .. given]));
                    Assert.True(outcome.Code == 2 || value is not (Nonsense or "") || (value == Nonsense && Written.Contains(command.Arguments[at].Name)), $"{name}: `{value}` is taken for {command.Arguments[at].Name}");
                }
            }
        }
    }

    /// <summary>What the library reads as another type than text it refuses in its own words, and by the machine's language.</summary>
    [Fact]
    public void Options_AllOfThem_AreTextOrFlags() => Assert.Equal([], Tree().SelectMany(one => one.Command.Options.Where(option =>
        option.ValueType != typeof(bool) && option.ValueType != typeof(string) && option.ValueType != typeof(string[])).Select(option => $"{one.Name} {option.Name}")));

    [Theory]
    [InlineData("filter notch --q 2,5", "FE0103")]                              // not 25
    [InlineData("spread designs/minimal.toml --builds 1e3", "FE0815")]
    [InlineData("spread designs/minimal.toml --seed -1", "FE0815")]
    [InlineData("check --all=no designs/minimal.toml", "FE1081")]
    [InlineData("filter frob", "FE0001")]
    [InlineData("--json", "FE0007")]
    [InlineData("chek designs/minimal.toml --json", "FE0001")]
    [InlineData("filtr --family bessel", "FE0001")]
    [InlineData("designs/minimal.toml --json", "FE0001")]
    [InlineData("designs/minimal.toml check", "FE0001")]
    public void Call_ThatIsWrong_HasItsCodeOnce(string call, string code)
    {
        Outcome outcome = Shell.Run(call.Split(' '));
        Assert.Equal((2, ""), (outcome.Code, outcome.Output));
        Assert.StartsWith($"{code} error: ", outcome.Messages, StringComparison.Ordinal);
        Assert.Equal(1, outcome.Messages.Split(" error: ").Length - 1);
        InForm(outcome, call);
    }

    /// <summary>A command that is misspelt is what is wrong, and not the options that it would have.</summary>
    [Fact]
    public void Command_Misspelt_IsNamedBeforeItsOptions()
    {
        Assert.Contains("because  the nearest is `check`", Shell.Run("chek", "designs/minimal.toml", "--json").Messages, StringComparison.Ordinal);
        Assert.Contains("`frontend check designs/minimal.toml`", Shell.Run("designs/minimal.toml", "--json").Messages, StringComparison.Ordinal);
    }

    /// <summary>A number that is whole and written in another way is written out.</summary>
    [Theory]
    [InlineData("1e3", "write `1000`")]
    [InlineData("10 000", "write `10000`")]
    [InlineData("10,000", "write `10000`")]
    [InlineData("1.000.000", "write `1000000`")]
    [InlineData("10.000", "write `10000` if the point groups thousands, `10` if it is a decimal sign")]
    public void Builds_InAnotherForm_AreWrittenOut(string builds, string remedy) =>
        Assert.Contains("do       " + remedy, Shell.Run("spread", "designs/minimal.toml", "--builds", builds).Messages, StringComparison.Ordinal);

    /// <summary>Frequencies without commas between them, and one with a decimal comma, are told as they are to be written.</summary>
    [Theory]
    [InlineData("8Hz-13Hz", "write `8Hz,13Hz`")]
    [InlineData("8 Hz 13 Hz", "write `8 Hz,13 Hz`")]
    [InlineData("8;13 Hz", "write `8 Hz,13 Hz`")]
    [InlineData("10,5 Hz", "write `10.5 Hz` for one, `10 Hz,5 Hz` for two")]
    public void Corner_InAnotherForm_IsWrittenOut(string corner, string remedy)
    {
        Outcome outcome = Shell.Run("filter", "--family", "bessel", "--shape", "band-pass", "--order", "2", "--corner", corner);
        Assert.Equal(2, outcome.Code);
        Assert.Contains("do       " + remedy, outcome.Messages, StringComparison.Ordinal);
        Assert.Equal(1, outcome.Messages.Split(" error: ").Length - 1);
    }

    [Fact]
    public void RatesAndShares_InAnotherForm_AreWrittenOut()
    {
        Assert.Contains("write `250,500`", Shell.Run("rates", "designs/minimal.toml", "--rates", "250;500").Messages, StringComparison.Ordinal);
        Assert.Contains("write `95.5%`", Shell.Run("spread", "designs/minimal.toml", "--builds", "8", "--yield", "95,5%").Messages, StringComparison.Ordinal);
    }

    /// <summary>Places that cannot be written to, by every way of writing: the place as it was typed, why, and nothing left behind.</summary>
    [Theory]
    [InlineData("no-folder/x", "there is no folder `{0}/no-folder`")]
    [InlineData("file/x", "`{0}/file` is a file, not a folder")]
    [InlineData("folder", null)]
    [InlineData("LONG", "its name is longer than the file system takes")]
    [InlineData("/dev/full", "there is no space left where it would stand")]
    [InlineData("/proc/nothing", "its folder takes no files")]
    public void Output_ThatCannotBeWritten_SaysWhyAndLeavesNothing(string place, string? because)
    {
        string[] calls =
        [
            "schema design -o {1}", "sheet designs/minimal.toml --plain -o {1}.md", "sheet designs/minimal.toml -o {1}.pdf", "coefficients designs/hobbyist.toml -o {1}.h", "new {1}", "cards new op-amp {1}.toml", "sites --svg {1}",
            "pairs --sites O1-ears --under O1 --map {1}", "samples designs/minimal.toml --length 8s -o {1}.edf", "samples designs/minimal.toml --length 8s -o {1}.svg", "lesson aliasing -o {1}.html", "problems --count 1 --bank {1}",
            "problems --count 1 --qti {1}", "filter fir --shape low-pass --pass 40Hz --stop 80Hz --ripple 1dB --attenuation 20dB --rate 500Hz -o {1}.csv", "size --as-built designs/minimal.toml -o {1}",
        ];
        foreach (string call in calls)
        {
            using TemporaryFolder folder = new();
            folder.Write("file", "something");
            Directory.CreateDirectory(Path.Combine(folder.Path, "folder"));
            bool isBare = call.EndsWith("{1}", StringComparison.Ordinal);
            if (place.StartsWith('/') && (!OperatingSystem.IsLinux() || !(isBare || place == "/proc/nothing")) || (place == "folder" && !isBare))
            {
                continue;
            }

            string path = place == "LONG" ? Path.Combine(folder.Path, new string('n', 300)) : Path.Combine(folder.Path, place);
            string[] words = [.. call.Split(' ').Select(word => word.Replace("{1}", path, StringComparison.Ordinal))];
            Outcome outcome = Shell.Run(words);
            string shown = string.Join(' ', words);
            Assert.True(outcome.Code == 2, $"{shown}: {outcome.Code}");
            InForm(outcome, shown);
            Assert.Contains(path, outcome.Messages, StringComparison.Ordinal);
            if (because is not null && !outcome.Messages.Contains("FE0003", StringComparison.Ordinal))
            {
                Assert.Contains("because  " + because.Replace("{0}", folder.Path, StringComparison.Ordinal), outcome.Messages, StringComparison.Ordinal);
            }

            NoTemporary(folder);
            Assert.Equal("something", File.ReadAllText(Path.Combine(folder.Path, "file")));
        }
    }

    /// <summary>A device is written to and stays one; a name as long as the file system takes is no trouble for what is written beside it.</summary>
    [Fact]
    public void Output_ToADeviceOrALongName_IsWritten()
    {
        using TemporaryFolder folder = new();
        string name = Path.Combine(folder.Path, new string('n', 250) + ".toml");
        Assert.Equal(0, Shell.Run("new", name).Code);
        Assert.True(File.Exists(name));
        if (OperatingSystem.IsLinux())
        {
            Assert.Equal(0, Shell.Run("schema", "design", "-o", "/dev/null").Code);
            Assert.Equal(0, new FileInfo("/dev/null").Length);
        }
    }

    /// <summary>Files that are read and hold something else, or are none.</summary>
    [Fact]
    public void File_ThatCannotBeRead_IsToldInOurForm()
    {
        using TemporaryFolder folder = new();
        string[] texts =
        [
            "", "{", "{}", "[]", "3", "null", "\"x\"", "{\"a\":1,}}", "{\"format\":3}", "{\"format\":\"frontend-key\"}", "{\"format\":\"frontend-key\",\"version\":\"x\"}", "{\"format\":\"frontend-key\",\"version\":99999999999}",
            "{\"format\":\"frontend-key\",\"version\":3,\"seed\":-1,\"templates\":\"3\",\"sheets\":[]}", "{\"format\\ud800\":3}", "a = ", "a = \"b", "[a\nb = 1", "[[a]", "= 3", "a = [1, 2", "a = {b = 1", "a = 0x", "a = \"\\q\"", "a = \"\\uD800\"",
            "a = 2020-13-45", "a = 1 2", "a b", "}", "a = [1,,2]", "a == 2", "a = \"\u0001\"", "id,name\nx", "student,question,answer\n\"", "test,reading\nx,y", "\0", new string('[', 200), new string('{', 200) + "\"a\":1",
        ];
        List<string> paths = [folder.Path, Path.Combine(folder.Path, "none"), Path.Combine(folder.Path, new string('n', 300)), .. texts.SelectMany((text, at) => (string[])[folder.Write($"t{at}.toml", text), folder.Write($"t{at}.json", text), folder.Write($"t{at}.csv", text)])];
        string[] calls =
        [
            "check {0} --no-advice", "compare {0} {0}", "mark {0} {0} -o {1}/m.csv", "problems --homework {0} -o {1}/p", "problems --templates {0} -o {1}/p", "problems --students {0} --count 1 -o {1}/p", "bench designs/minimal.toml --measured {0} --test shorted",
            "size {0}", "sheet designs/minimal.toml --prices {0} -o {1}/s.md", "cards {0}", "cards new op-amp {1}/c.toml --noise {0}", "cards new electrode {1}/c.toml --impedance {0}", "lesson aliasing --design {0}",
            "filter --family bessel --shape low-pass --order 2 --corner 40Hz --op-amp {0}",
        ];
        foreach (string path in paths)
        {
            foreach (string call in calls)
            {
                using TemporaryFolder output = new();
                string[] words = [.. call.Split(' ').Select(word => word.Replace("{0}", path, StringComparison.Ordinal).Replace("{1}", output.Path, StringComparison.Ordinal))];
                InForm(Shell.Run(words), string.Join(' ', words));
            }
        }
    }

    private static string Placed(string name, string value, TemporaryFolder folder) =>
        Written.Contains(name) && !string.IsNullOrWhiteSpace(value) ? Path.Combine(folder.Path, value) : value;

    private static void IsWrong(string[] call, string place)
    {
        Outcome outcome = Shell.Run(call);
        string shown = string.Join(' ', call);
        Assert.True(outcome.Code == 2, $"{shown}: {outcome.Code}");
        Assert.Equal("", outcome.Output);
        Assert.Contains(place, outcome.Messages, StringComparison.Ordinal);
        Assert.Contains("\n  at ", outcome.Messages, StringComparison.Ordinal);
        Assert.Contains("\n  do ", outcome.Messages, StringComparison.Ordinal);
        InForm(outcome, shown);
    }

    private static void InForm(Outcome outcome, string call)
    {
        Assert.True(outcome.Code is 0 or 1 or 2, $"{call}: {outcome.Code}\n{outcome.Messages}");
        if (outcome.Code == 2)
        {
            Assert.True(Coded().IsMatch(outcome.Messages), $"{call}: no coded error\n{outcome.Messages}");
        }

        Match leaked = Leaked().Match(outcome.Messages + outcome.Output);
        Assert.False(leaked.Success, $"{call}: `{leaked.Value}`\n{outcome.Messages}");
        foreach (string line in outcome.Messages.Split('\n', StringSplitOptions.RemoveEmptyEntries).Where(_ => outcome.Code == 2))
        {
            Assert.True(Formed().IsMatch(line), $"{call}: {line}");
        }
    }

    private static void NoTemporary(TemporaryFolder folder) =>
        Assert.Equal([], Directory.EnumerateFileSystemEntries(folder.Path, ".*", SearchOption.AllDirectories));

    private static IEnumerable<(string Name, Command Command)> Tree()
    {
        using StringWriter nowhere = new();
        Outlet outlet = new(nowhere, nowhere);
        return [.. CommandLine.Makers.SelectMany(make => Below(make(outlet), ""))];
    }

    private static IEnumerable<(string Name, Command Command)> Below(Command command, string above) =>
        [(above + command.Name, command), .. command.Subcommands.SelectMany(inner => Below(inner, $"{above}{command.Name} "))];

    private static string[] WordsOf(string name, TemporaryFolder folder) =>
        [.. Whole[name].Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(word => word.Replace("{0}", folder.Path, StringComparison.Ordinal))];

    /// <summary>The words without an option and its value, so that it can be given another.</summary>
    private static string[] Without(string[] words, Option option)
    {
        int at = Array.FindIndex(words, word => word == option.Name || option.Aliases.Contains(word));
        return at < 0 || option.ValueType == typeof(string[]) ? words : [.. words[..at], .. words[(at + 2)..]];
    }

    [GeneratedRegex(@"^FE\d{4} error: ", RegexOptions.Multiline, 1000)]
    private static partial Regex Coded();

    [GeneratedRegex("^(FE\\d{4} (error|warning): |  (at |because |do )| {4,}|drawing |simulating |reading |kept |wrote |\\d+ builds )", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Formed();

    // Type names, exceptions, temporary files, and what the libraries for calls, JSON and TOML say.
    [GeneratedRegex(@"System\.|Int32|UInt64|Exception|\(Parameter|Option '|argument missing|Cannot parse|expected type|Unrecognized|unrecognized|was expected|\.frontend-|BytePositionInLine|LineNumber|isFinalBlock|requires an element|token: |JSON token|Eof|<eof>|could not find a part|Access to the path|null reference|the given key|InvariantGlobalization|stack trace|   at FrontEnd", RegexOptions.None, 1000)]
    private static partial Regex Leaked();
}
