namespace FrontEnd.Findings;

/// <summary>Something the user should know about the design: wrong input, a model that does not hold, a missing figure.</summary>
/// <param name="Code">Stable code, FE and four digits; the wording may change, the code does not.</param>
/// <param name="Field">The place: the design's key, such as <c>anti-alias.corner</c>; "" for the whole design.</param>
/// <param name="Message">What is wrong, with both numbers and their units; lower case, no full stop.</param>
/// <param name="Note">The fact it rests on; null for none.</param>
/// <param name="Help">What to change; null where there is nothing to do.</param>
public sealed record Finding(string Code, Severity Severity, string Field, string Message, string? Note, string? Help)
{
    /// <summary>The file as the user named it; null where the design did not come from a file.</summary>
    public string? File { get; init; }

    /// <summary>Line in the file, from 1; null where unknown.</summary>
    public int? Line { get; init; }

    /// <summary>The offending text with a caret before the place that will not parse; null where there is none.</summary>
    public string? Excerpt { get; init; }

    /// <summary>A finding that makes the input unusable.</summary>
    public static Finding Error(string code, string field, string message, string? note, string? help) =>
        new(code, Severity.Error, field, message, note, help);

    /// <summary>A finding that leaves figures standing.</summary>
    public static Finding Warning(string code, string field, string message, string? note, string? help) =>
        new(code, Severity.Warning, field, message, note, help);
}

/// <summary>An error makes the input unusable; a warning leaves figures standing that are to be read with care.</summary>
public enum Severity
{
    /// <summary>Figures stand, with care.</summary>
    Warning,

    /// <summary>The input is unusable.</summary>
    Error,
}
