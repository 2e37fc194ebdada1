using System.Runtime.CompilerServices;
using FrontEnd.Documents;
using FrontEnd.Documents.Reading;
using FrontEnd.Documents.Sheets;

namespace FrontEnd.Terminal.Screens;

/// <summary>The front door of the executable with the screens: <c>frontend</c> hands over to it, with a design or without.</summary>
internal static class TerminalProgram
{
    public static int Main(string[] arguments) => Run(arguments is [var design, ..] ? design : null);

    /// <summary>Opens the interface over a design file, or over the starter where none is named. Returns the exit code.</summary>
    private static int Run(string? path)
    {
        if (Environment.GetEnvironmentVariable("TERM") is null or "" or "dumb" && !OperatingSystem.IsWindows())
        {
            Console.Error.WriteLine("frontend: this terminal (TERM unset or dumb) cannot show screens.");
            Console.Error.WriteLine("  do       `frontend check DESIGN` prints the verdicts, `frontend --help` lists the commands");
            return ExitCode.Unusable;
        }

        DesignDocument document = path is null
            ? DesignDocument.Parse(DesignDocument.StarterText, DocumentFormat.Toml)
            : DesignDocument.Read(path);
        if (document.IsNoDesign)
        {
            foreach (Finding finding in document.Findings.Where(finding => finding.Severity == Severity.Error))
            {
                Console.Error.Write(FindingText.Of(finding));
            }

            return ExitCode.Unusable;
        }

        return Show(document, path);
    }

    private static readonly string[] LocaleVariables = ["LC_ALL", "LC_CTYPE", "LANG"];

    /// <summary>True where the locale says that only ASCII can be shown.</summary>
    public static bool WantsAscii
    {
        get
        {
            string locale = LocaleVariables
                .Select(Environment.GetEnvironmentVariable).FirstOrDefault(value => !string.IsNullOrEmpty(value)) ?? "";
            return !OperatingSystem.IsWindows() && !locale.Contains("UTF-8", StringComparison.OrdinalIgnoreCase)
                && !locale.Contains("utf8", StringComparison.OrdinalIgnoreCase);
        }
    }

    /// <summary>True where no colour is wanted (no-color.org: the variable is set and not empty).</summary>
    public static bool WantsNoColour => Environment.GetEnvironmentVariable("NO_COLOR") is { Length: > 0 };

    // Apart, so that the widget library is loaded only where the checks above have passed.
    [MethodImpl(MethodImplOptions.NoInlining)]
    private static int Show(DesignDocument document, string? path) => TerminalHost.Run(document, path, WantsAscii, !WantsNoColour);
}
