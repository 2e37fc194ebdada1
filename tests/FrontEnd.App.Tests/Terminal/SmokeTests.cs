using System.Diagnostics;
using Xunit;

namespace FrontEnd.App.Tests.Terminal;

/// <summary>The real program in a real terminal, as a user would have it. Needs tmux; skipped with a reason where there is none.</summary>
public sealed class SmokeTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory().FullName;
    private string _window = "s:0";
    private readonly string _socket = "frontend-" + Guid.NewGuid().ToString("N");

    [Fact]
    public void Program_OpenEditSaveQuit_InTmux()
    {
        Start("80", "24");
        WaitFor("38.3 µV rms");

        // To the mains, six fields down, 0.1 fF from the mains to each lead instead of 2 fF: the verdict turns.
        Keys("m");
        WaitFor("lead to mains");
        Keys("Down", "Down", "Down", "Down", "Down", "Down");
        Literal("0.1 fF");
        WaitFor("0.1 fF");
        Keys("Enter");
        WaitFor("was 38.3 µV rms, fail");
        Assert.Contains("*changed", Screen(), StringComparison.Ordinal);

        Keys("w");
        WaitFor("saved ");
        Keys("q");   // nothing would be lost: no question
        WaitFor("exit 0 icanon");   // the program's code, and the terminal is back in line mode

        string saved = File.ReadAllText(Path.Combine(_folder, "design.toml"));
        Assert.Contains("lead-to-mains = \"0.1 fF\"", saved, StringComparison.Ordinal);
        Assert.Contains("# It teaches that dry skin makes the noise, not the amplifier", saved, StringComparison.Ordinal);
        Assert.Empty(Recovery());
    }

    [Theory]
    [InlineData("TERM", 143)]
    [InlineData("HUP", 129)]
    [InlineData("INT", 130)]
    [InlineData("QUIT", 131)]
    [InlineData("USR1", 138)]
    [InlineData("USR2", 140)]
    [InlineData("ALRM", 142)]
    public void Program_Signal_PutsTheTerminalBack_AndKeepsUnsavedWork(string signal, int code)
    {
        Start("80", "24");
        WaitFor("38.3 µV rms");
        Keys("+");
        WaitFor("*changed");

        Signal(signal);
        WaitFor($"exit {code} icanon");

        Assert.Contains("mismatch = \"25 %\"", File.ReadAllText(Assert.Single(Recovery())), StringComparison.Ordinal);
    }

    /// <summary>Keys that ended the program inside the widget library: rxvt's Home, F13, Menu, reports of a mouse that is nowhere. A pipe without a reader
    /// ends nothing either.</summary>
    [Fact]
    public void Program_KeysItDoesNotKnow_AreDropped_AndAPasteIsAskedAbout()
    {
        Start("80", "24");
        WaitFor("38.3 µV rms");
        Send("\u001b[7~", "\u001b[25~", "\u001b[29~", "\u001b[<99999999999;99999999999;1M", "\u001bOz");
        Signal("PIPE");
        Keys("m");
        WaitFor("lead to mains");

        Keys("Left");
        Tmux("set-buffer", "35 %\nand a line more");
        Tmux("paste-buffer", "-p", "-t", "s:0");
        WaitFor("Set it to the pasted value, 35 %?");
        Keys("Enter");
        WaitFor("*changed");

        // Sent in one piece: the second is no answer to the question that the first one asks.
        Keys("q", "y");
        WaitFor("Not saved: design. Quit?");
        Keys("y");
        WaitFor("exit 0 icanon");
    }

    /// <summary>A shell with jobs gets the terminal back as it was, and the screen comes back with fg; where there is none, the key says so.</summary>
    [Fact]
    public void Program_Suspended_GivesTheTerminalBack_AndComesBackWithFg()
    {
        Start("80", "24");
        WaitFor("38.3 µV rms");
        Keys("C-z");
        WaitFor("no shell here could bring a suspended program back");

        // Bash and its job; the program's own number is of no matter here.
        Tmux("-f", "/dev/null", "new-window", "-t", "s:1", "-c", _folder, $"{Settings} PS1='$(stty -a | grep -o -e -*icanon)> ' bash --norc -i");
        _window = "s:1";
        WaitFor("icanon>");
        Literal($"dotnet '{Program}' design.toml");
        Keys("Enter");
        WaitFor("38.3 µV rms");
        Keys("Right", "C-z");
        WaitFor("Stopped");
        Literal("stty -a | grep -o -e -*icanon | tr a-z A-Z");
        Keys("Enter");
        WaitFor("\nICANON");
        Assert.Equal("0 0 1", Tmux("display", "-p", "-t", _window, "#{alternate_on} #{mouse_any_flag} #{cursor_flag}").Trim());

        Literal("fg");
        Keys("Enter");
        WaitFor("38.3 µV rms");
        Assert.Contains("series resistor", Screen(), StringComparison.Ordinal);
        Keys("q");
        WaitFor("\nICANON");   // the shell's screen is back
    }

    /// <summary>A word sent in one piece, and a paste of a terminal that does not say that it pastes, are no commands; the wheel scrolls what it points at.</summary>
    [Fact]
    public void Program_Words_AreNoCommands_AndTheWheelScrollsWhatItPointsAt()
    {
        Start("80", "24");
        WaitFor("38.3 µV rms");
        Literal("hello");
        WaitFor("\"hello\" was typed as a word");
        Thread.Sleep(600);
        Tmux("set-buffer", "delete all");
        Tmux("paste-buffer", "-t", "s:0");
        WaitFor("\"delete all\" was typed as a word");
        Assert.DoesNotContain("*changed", Screen(), StringComparison.Ordinal);
        Assert.Contains("> mismatch", Screen(), StringComparison.Ordinal);
        Send("\u001b[<65;60;12M");
        WaitFor(" levels.offset_survived: ");
        Send("\u001b[<65;10;12M");
        WaitFor("> offset");
        Thread.Sleep(600);
        Keys("q");
        WaitFor("exit 0 icanon");
    }

    /// <summary>A crash on a thread of the background: the work is kept, the terminal put back, and the end is the same as after any other fault.</summary>
    [Fact]
    public void Program_CrashOnAThread_PutsTheTerminalBack_AndKeepsUnsavedWork()
    {
        string crash = Path.Combine(_folder, "crash");
        Start("80", "24", $"DOTNET_STARTUP_HOOKS='{typeof(StartupHook).Assembly.Location}' {StartupHook.Switch}='{crash}'");
        WaitFor("38.3 µV rms");
        Keys("+");
        WaitFor("*changed");
        Keys("+", "+", "+", "+");   // pictures are on their way while it crashes
        File.WriteAllText(crash, "");
        Stopwatch clock = Stopwatch.StartNew();
        WaitFor("exit 70 icanon");
        Assert.True(clock.Elapsed < TimeSpan.FromSeconds(5), $"{clock.Elapsed.TotalSeconds:0.0} s");   // two on a machine that does nothing else
        Assert.Contains("the terminal was restored and unsaved work was kept", Screen(), StringComparison.Ordinal);
        Assert.DoesNotContain("Unhandled exception", Screen(), StringComparison.Ordinal);
        Assert.Equal("0 0 1", Tmux("display", "-p", "-t", _window, "#{alternate_on} #{mouse_any_flag} #{cursor_flag}").Trim());
        Assert.Contains("mismatch = \"", File.ReadAllText(Assert.Single(Recovery())), StringComparison.Ordinal);
    }

    /// <summary>The window is closed: the terminal hangs up and is gone, with the signal heard or ignored as under nohup.</summary>
    [Theory]
    [InlineData("")]
    [InlineData("trap \"\" HUP; ")]
    public void Program_WhoseTerminalIsClosed_Ends_AndKeepsUnsavedWork(string before)
    {
        Start("80", "24", "", before);
        WaitFor("38.3 µV rms");
        Keys("+");
        WaitFor("*changed");
        int program = int.Parse(File.ReadAllText(Path.Combine(_folder, "pid")), System.Globalization.CultureInfo.InvariantCulture);
        using Process process = Process.GetProcessById(program);
        Stopwatch clock = Stopwatch.StartNew();
        Tmux("kill-pane", "-t", _window);
        Assert.True(process.WaitForExit(TimeSpan.FromSeconds(5)), "still there after five seconds");   // two on a machine that does nothing else
        Assert.Contains("mismatch = \"25 %\"", File.ReadAllText(Assert.Single(Recovery())), StringComparison.Ordinal);
        string code = Path.Combine(_folder, "code");
        while (!File.Exists(code) && clock.Elapsed < TimeSpan.FromSeconds(20))
        {
            Thread.Sleep(20);
        }

        Assert.Equal("129", File.ReadAllText(code).Trim());
    }

    public void Dispose()
    {
        if (HasTmux)
        {
            Run("kill-server");
        }

        Directory.Delete(_folder, recursive: true);
    }

    private static string Program => Path.Combine(AppContext.BaseDirectory, "frontend.dll");

    private string Settings => $"env -u DisableRealDriverIO LANG=C.UTF-8 LC_ALL=C.UTF-8 XDG_STATE_HOME='{_folder}/state' NO_COLOR=";

    private static bool HasTmux => (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator).Any(folder => File.Exists(Path.Combine(folder, "tmux")));

    private string[] Recovery() => Directory.Exists(Path.Combine(_folder, "state")) ? Directory.GetFiles(Path.Combine(_folder, "state"), "*.recovery", SearchOption.AllDirectories) : [];

    /// <param name="environment">More of it.</param>
    /// <param name="before">What its shell does first.</param>
    private void Start(string width, string height, string environment = "", string before = "")
    {
        Assert.SkipUnless(HasTmux, "tmux is not installed");
        File.Copy(Setup.Headband, Path.Combine(_folder, "design.toml"));

        // The shell notes its number and becomes the program, so that a signal reaches it and nobody else.
        string shell = $"trap : HUP; {Settings} {environment} sh -c '{before}echo $$ > pid; exec dotnet \"{Program}\" design.toml'; code=$?; echo $code > code.part; mv code.part code; echo exit $code $(stty -a | grep -o -e '-*icanon'); sleep 60";
        Tmux("-f", "/dev/null", "new-session", "-d", "-s", "s", "-x", width, "-y", height, "-c", _folder, shell);
    }

    private string Screen() => Tmux("capture-pane", "-p", "-t", _window);

    private void Keys(params string[] keys) => Tmux(["send-keys", "-t", _window, .. keys]);

    private void Literal(string text) => Tmux("send-keys", "-t", _window, "-l", text);

    /// <summary>Bytes, each text for itself and with a pause behind it, as from keys.</summary>
    private void Send(params string[] texts)
    {
        foreach (string text in texts)
        {
            Tmux(["send-keys", "-t", _window, "-H", .. System.Text.Encoding.UTF8.GetBytes(text).Select(one => one.ToString("x2", System.Globalization.CultureInfo.InvariantCulture))]);
            Thread.Sleep(150);
        }
    }

    private void Signal(string signal)
    {
        using Process kill = Process.Start("kill", ["-" + signal, File.ReadAllText(Path.Combine(_folder, "pid")).Trim()]);
        kill.WaitForExit();
    }

    private void WaitFor(string text)
    {
        Stopwatch clock = Stopwatch.StartNew();
        string screen = "";
        while (clock.Elapsed < TimeSpan.FromSeconds(40))
        {
            screen = Screen();
            if (screen.Contains(text, StringComparison.Ordinal))
            {
                return;
            }

            Thread.Sleep(50);
        }

        Assert.Fail($"`{text}` did not come:\n{screen}");
    }

    private string Tmux(params string[] arguments)
    {
        (int code, string output, string error) = Run(arguments);
        Assert.True(code == 0, $"tmux {string.Join(' ', arguments)}: {error}");
        return output;
    }

    private (int Code, string Output, string Error) Run(params string[] arguments)
    {
        ProcessStartInfo start = new("tmux") { UseShellExecute = false, RedirectStandardOutput = true, RedirectStandardError = true, StandardOutputEncoding = System.Text.Encoding.UTF8 };
        foreach (string argument in (string[])["-L", _socket, "-u", .. arguments])
        {
            start.ArgumentList.Add(argument);
        }

        using Process process = Process.Start(start)!;
        string output = process.StandardOutput.ReadToEnd(), error = process.StandardError.ReadToEnd();
        process.WaitForExit();
        return (process.ExitCode, output, error);
    }
}
