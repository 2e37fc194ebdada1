namespace FrontEnd.Documents.Endings;

/// <summary>What is said of a fault of the program, in the command and in the interface.</summary>
internal static class Fault
{
    public const string Code = "FE0070";

    private const string Switch = "FRONTEND_TRACE";

    /// <summary>True where the user wants the place in the program with it.</summary>
    public static bool IsTraced => !string.IsNullOrEmpty(Environment.GetEnvironmentVariable(Switch));

    /// <summary>The fault as a finding: of work done on several threads the first thing that went wrong.</summary>
    public static Finding Of(Exception fault)
    {
        Exception first = fault is AggregateException several ? several.Flatten().InnerExceptions[0] : fault;
        string note = "this is a fault of the program, not of the design";
        if (IsTraced)
        {
            note += $"; {first.GetType().Name} {first.StackTrace?.Split('\n')[0].Trim()}";
        }

        return new Finding(Code, Severity.Error, "", $"the program failed: {first.Message}", note,
            $"set {Switch}=1 for the place in the program, and report it with the design");
    }
}
