using System.Diagnostics;
using System.Runtime.InteropServices;
using FrontEnd.App.Commands;

namespace FrontEnd.App;

/// <summary>The executable with the screens, which stands beside this one, and how the terminal is handed over to it.</summary>
/// <remarks>It is apart because a native executable runs the start-up code of every library that it is linked with, and the widget
/// library's looks for files and takes longer than most commands.</remarks>
internal static class ScreensProgram
{
    private const string Name = "frontend-screens";

    /// <summary>Opens the screens over a design file, or over the starter where none is named; gives the exit code.</summary>
    /// <param name="folder">Where the executables stand; null for this one's own folder.</param>
    /// <remarks>On Unix this program becomes the screens' one and does not come back: one process, so that signals, exit codes and a
    /// suspended job are the screens' own. Windows cannot do that: there it waits for them.</remarks>
    public static int Open(string? design, Outlet outlet, string? folder = null)
    {
        folder ??= AppContext.BaseDirectory;
        foreach (string[] call in Calls(folder))
        {
            string[] words = design is null ? call : [.. call, design];
            if (OperatingSystem.IsWindows())
            {
                return WaitFor(words);
            }

            Become(words);
        }

        outlet.Tell(CallMessages.NoScreens(Name, folder));
        return ExitCode.Unusable;
    }

    /// <summary>How the screens can be called: as an executable, or, where only the assembly is there as in a package for any system,
    /// by the runtime's own host.</summary>
    private static IEnumerable<string[]> Calls(string folder)
    {
        string executable = Path.Combine(folder, OperatingSystem.IsWindows() ? Name + ".exe" : Name);
        if (File.Exists(executable))
        {
            yield return [executable];
        }

        string assembly = Path.Combine(folder, Name + ".dll");
        if (File.Exists(assembly))
        {
            yield return [Host(), assembly];
        }
    }

    /// <summary>The host that runs assemblies: this process, or the one of the installation whose runtime this process has loaded.</summary>
    private static string Host()
    {
        string name = OperatingSystem.IsWindows() ? "dotnet.exe" : "dotnet";
        return Path.GetFileName(Environment.ProcessPath) == name
            ? Environment.ProcessPath!
            : Path.GetFullPath(Path.Combine(RuntimeEnvironment.GetRuntimeDirectory(), "..", "..", "..", name));
    }

    private static int WaitFor(string[] call)
    {
        // Ctrl-C goes to both, and is the screens' business.
        using PosixSignalRegistration interrupt = PosixSignalRegistration.Create(PosixSignal.SIGINT, signal => signal.Cancel = true);
        using PosixSignalRegistration quit = PosixSignalRegistration.Create(PosixSignal.SIGQUIT, signal => signal.Cancel = true);
        using Process screens = Process.Start(new ProcessStartInfo(call[0], call[1..]) { UseShellExecute = false })!;
        screens.WaitForExit();
        return screens.ExitCode;
    }

    /// <summary>Puts another program in this one's place; comes back only where that cannot be done.</summary>
    private static void Become(string[] call)
    {
        nint[] words = [.. call.Select(Marshal.StringToCoTaskMemUTF8), 0];
        _ = Execute(words[0], words);
        Array.ForEach(words, Marshal.FreeCoTaskMem);
    }

    // Blittable; the generated form would need unsafe code in the whole project. The framework has no call of its own for it.
    [DllImport("libc", EntryPoint = "execv")]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int Execute(nint path, nint[] words);
}
