using System.Diagnostics;
using Xunit;

namespace FrontEnd.App.Tests.Terminal;

/// <summary>The real program in a real terminal, as a user would have it. Needs tmux; skipped with a reason where there is none.</summary>
public sealed class SmokeTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory().FullName;
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
        Keys("q");
        WaitFor("yes, quit");
        Keys("y");
        WaitFor("exit 0 icanon");   // the program's code, and the terminal is back in line mode

        string saved = File.ReadAllText(Path.Combine(_folder, "design.toml"));
        Assert.Contains("lead-to-mains = \"0.1 fF\"", saved, StringComparison.Ordinal);
        Assert.Contains("# It teaches that dry skin, not the amplifier, makes the noise", saved, StringComparison.Ordinal);
        Assert.Empty(Recovery());
    }

    [Theory]
    [InlineData("TERM", 143)]
    [InlineData("HUP", 129)]
    [InlineData("INT", 130)]
    public void Program_Signal_PutsTheTerminalBack_AndKeepsUnsavedWork(string signal, int code)
    {
        Start("80", "24");
        WaitFor("38.3 µV rms");
        Keys("+");
        WaitFor("*changed");

        using (Process kill = Process.Start("kill", ["-" + signal, File.ReadAllText(Path.Combine(_folder, "pid")).Trim()]))
        {
            kill.WaitForExit();
        }

        WaitFor($"exit {code} icanon");

        Assert.Contains("mismatch = \"25 %\"", File.ReadAllText(Assert.Single(Recovery())), StringComparison.Ordinal);
    }

    public void Dispose()
    {
        if (HasTmux)
        {
            Run("kill-server");
        }

        Directory.Delete(_folder, recursive: true);
    }

    private static bool HasTmux => (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator).Any(folder => File.Exists(Path.Combine(folder, "tmux")));

    private string[] Recovery() => Directory.Exists(Path.Combine(_folder, "state")) ? Directory.GetFiles(Path.Combine(_folder, "state"), "*.recovery", SearchOption.AllDirectories) : [];

    private void Start(string width, string height)
    {
        Assert.SkipUnless(HasTmux, "tmux is not installed");
        File.Copy(Setup.Headband, Path.Combine(_folder, "design.toml"));
        string program = Path.Combine(AppContext.BaseDirectory, "frontend.dll");

        // The shell notes its number and becomes the program, so that a signal reaches it and nobody else.
        string shell = $"env -u DisableRealDriverIO LANG=C.UTF-8 LC_ALL=C.UTF-8 XDG_STATE_HOME='{_folder}/state' NO_COLOR= sh -c 'echo $$ > pid; exec dotnet \"{program}\" design.toml'; echo exit $? $(stty -a | grep -o -e '-*icanon'); sleep 60";
        Tmux("-f", "/dev/null", "new-session", "-d", "-s", "s", "-x", width, "-y", height, "-c", _folder, shell);
    }

    private string Screen() => Tmux("capture-pane", "-p", "-t", "s:0");

    private void Keys(params string[] keys) => Tmux(["send-keys", "-t", "s:0", .. keys]);

    private void Literal(string text) => Tmux("send-keys", "-t", "s:0", "-l", text);

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
