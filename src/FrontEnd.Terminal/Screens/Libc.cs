using System.Runtime.InteropServices;

namespace FrontEnd.Terminal.Screens;

/// <summary>Calls to Unix that the framework has no form of. All blittable: the generated form would need unsafe code in the whole
/// project.</summary>
internal static class Libc
{
    /// <summary>Larger than what any system keeps of a terminal's settings.</summary>
    public const int SettingsLength = 256;

    /// <summary>At once, in <see cref="SetSettings"/>.</summary>
    public const int Now = 0;

    /// <summary>There is something to read, in <see cref="Poll"/>.</summary>
    public const short ToRead = 1;

    [DllImport("libc", EntryPoint = "isatty")]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    public static extern int IsTerminal(int descriptor);

    [DllImport("libc", EntryPoint = "poll")]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    public static extern int Poll([In, Out] Waiting[] waiting, nuint count, int milliseconds);

    [DllImport("libc", EntryPoint = "pipe")]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    public static extern int Pipe([Out] int[] ends);

    [DllImport("libc", EntryPoint = "close")]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    public static extern int Close(int descriptor);

    [DllImport("libc", EntryPoint = "read")]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    public static extern nint Read(int descriptor, byte[] buffer, nuint length);

    [DllImport("libc", EntryPoint = "tcgetattr")]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    public static extern int GetSettings(int descriptor, byte[] settings);

    [DllImport("libc", EntryPoint = "tcsetattr")]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    public static extern int SetSettings(int descriptor, int when, byte[] settings);

    [DllImport("libc", EntryPoint = "killpg")]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    public static extern int Signal(int group, int signal);

    [DllImport("libc", EntryPoint = "getsid")]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    public static extern int SessionOf(int process);

    [DllImport("libc", EntryPoint = "getpgid")]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    public static extern int GroupOf(int process);

    /// <summary>What is waited for, and what of it came.</summary>
    [StructLayout(LayoutKind.Sequential)]
    public struct Waiting
    {
        public int Descriptor;
        public short Wanted;
        public short Came;
    }
}
