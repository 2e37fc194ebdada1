namespace FrontEnd.Text;

/// <summary>Why a text is not the quantity that was asked for. The user's mistake, so it is returned and never thrown.</summary>
/// <param name="Code">Stable code, FE01 and two digits; see <see cref="Messages"/>.</param>
/// <param name="Message">What is wrong, with the text in backticks; lower case, no full stop.</param>
/// <param name="Note">The fact it rests on, such as the readings that fit; null for none.</param>
/// <param name="Help">What to write instead.</param>
/// <param name="Position">Index into the text of the first character that does not fit, from 0; the text's length where something is
/// missing at its end.</param>
/// <param name="Expected">A text that would be read, such as <c>40 µV</c>.</param>
public sealed record ParseProblem(string Code, string Message, string? Note, string Help, int Position, string Expected)
{
    /// <summary>True where the help names a value to write instead, and not the form alone.</summary>
    internal bool NamesValue { get; init; }

    /// <summary>The value that the help names, where it is one.</summary>
    internal string? Meant { get; init; }

    /// <summary>The two values that stand in the text where one is wanted; null for any other problem.</summary>
    internal (string Low, string High)? Ends { get; init; }

    /// <summary>The text in quotes with a caret before the place that does not fit: <c>"40 ^uW"</c>.</summary>
    public string Excerpt(string text)
    {
        int place = Math.Clamp(Position, 0, text.Length);
        return $"\"{text[..place]}^{text[place..]}\"";
    }

    /// <summary>The problem as a finding of severity error at a key of the design.</summary>
    public Finding ToFinding(string field, string text) =>
        new(Code, Severity.Error, field, Message, Note, Help) { Excerpt = Excerpt(text) };
}
