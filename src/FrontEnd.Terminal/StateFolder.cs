namespace FrontEnd.Terminal;

/// <summary>The folder for what the program remembers between sessions.</summary>
internal static class StateFolder
{
    /// <summary><c>$XDG_STATE_HOME/frontend</c>, else <c>~/.local/state/frontend</c>; on Windows the local application data. Null where
    /// there is no home.</summary>
    public static string? Path
    {
        get
        {
            string? given = Environment.GetEnvironmentVariable("XDG_STATE_HOME");
            if (!string.IsNullOrEmpty(given))
            {
                return System.IO.Path.Combine(given, "frontend");
            }

            string home = Environment.GetFolderPath(
                OperatingSystem.IsWindows() ? Environment.SpecialFolder.LocalApplicationData : Environment.SpecialFolder.UserProfile);
            return home.Length == 0 ? null
                : OperatingSystem.IsWindows() ? System.IO.Path.Combine(home, "frontend")
                : System.IO.Path.Combine(home, ".local", "state", "frontend");
        }
    }
}
