using Microsoft.Win32.SafeHandles;

namespace FrontEnd.Terminal.Screens;

/// <summary>The terminal that keys come from.</summary>
internal static class UnixTerminal
{
    private static readonly Lazy<SafeFileHandle?> Opened = new(Open);

    /// <summary>Its number for the calls of Unix; −1 where there is none, as on Windows.</summary>
    public static int Descriptor => OperatingSystem.IsWindows() ? -1
        : Libc.IsTerminal(0) == 1 ? 0
        : Opened.Value is { } terminal ? (int)terminal.DangerousGetHandle()
        : -1;

    /// <summary>The terminal behind an input that comes from elsewhere; open until the program ends.</summary>
    private static SafeFileHandle? Open()
    {
        try
        {
            return File.OpenHandle("/dev/tty", FileMode.Open, FileAccess.ReadWrite, FileShare.ReadWrite);
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            return null;
        }
    }
}
