namespace FrontEnd.Documents.Endings;

/// <summary>What the caller's shell is told. A signal ends the program with 128 + its number, as the system does it.</summary>
internal static class ExitCode
{
    /// <summary>All requirements are met; for commands that judge nothing: done.</summary>
    public const int Met = 0;

    /// <summary>A requirement is not met.</summary>
    public const int NotMet = 1;

    /// <summary>The call or the input cannot be used.</summary>
    public const int Unusable = 2;

    /// <summary>Ctrl-C: 128 + SIGINT.</summary>
    public const int Interrupted = 130;

    /// <summary>Ended by another program: 128 + SIGTERM.</summary>
    public const int Terminated = 143;

    /// <summary>A fault of the program itself; the number is EX_SOFTWARE of sysexits.h.</summary>
    public const int Internal = 70;
}
