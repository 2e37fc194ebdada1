using FrontEnd.Fields;

namespace FrontEnd.Terminal;

/// <summary>A line of text that is being typed: text, caret, and whether all of it is selected. Immutable.</summary>
/// <param name="Caret">Place in the text, 0 to its length.</param>
/// <param name="AllSelected">True where the next character replaces the text.</param>
public sealed record Line(string Text, int Caret, bool AllSelected)
{
    /// <summary>Longer than any value; keeps a stray paste of a whole file out.</summary>
    public const int Most = 2000;

    /// <summary>A text that the next character replaces.</summary>
    public static Line Of(string text) => new(text, text.Length, text.Length > 0);

    /// <summary>The line after a key; the same line where the key does nothing here.</summary>
    public Line Press(Keystroke key) => key switch
    {
        { Key: KeyName.Letter, Ctrl: true, Letter: 'a' } => this with { AllSelected = Text.Length > 0 },
        { Key: KeyName.Letter, Ctrl: true, Letter: 'u' } => new("", 0, false),
        { Ctrl: true } or { Alt: true } => this,
        { Key: KeyName.Letter } when !char.IsControl(key.Letter) => Insert(key.Letter.ToString()),
        { Key: KeyName.Backspace } when AllSelected => new("", 0, false),
        { Key: KeyName.Delete } when AllSelected => new("", 0, false),
        { Key: KeyName.Backspace } when Caret > 0 => new(Text.Remove(Caret - Before, Before), Caret - Before, false),
        { Key: KeyName.Delete } when Caret < Text.Length => new(Text.Remove(Caret, After), Caret, false),
        { Key: KeyName.Left } => new(Text, Math.Max(0, Caret - Before), false),
        { Key: KeyName.Right } => new(Text, AllSelected ? Text.Length : Math.Min(Text.Length, Caret + After), false),
        { Key: KeyName.Home } => new(Text, 0, false),
        { Key: KeyName.End } => new(Text, Text.Length, false),
        _ => this,
    };

    /// <summary>The line with a text put in at the caret, on one line, without control characters.</summary>
    public Line Insert(string text)
    {
        string clean = new([.. text.TakeWhile(letter => letter is not ('\r' or '\n')).Where(letter => !char.IsControl(letter))]);
        string whole = AllSelected ? clean : Text.Insert(Caret, clean);
        int caret = (AllSelected ? 0 : Caret) + clean.Length;
        return Most < whole.Length ? this : new Line(whole, caret, false);
    }

    // A character outside the basic plane is two chars and goes as one.
    private int Before => Caret > 1 && char.IsLowSurrogate(Text[Caret - 1]) && char.IsHighSurrogate(Text[Caret - 2])
        ? 2
        : Math.Min(1, Caret);

    private int After => Caret + 1 < Text.Length && char.IsHighSurrogate(Text[Caret]) && char.IsLowSurrogate(Text[Caret + 1])
        ? 2
        : Math.Min(1, Text.Length - Caret);
}

/// <summary>A field that is being typed in.</summary>
/// <param name="Key">The field's key in the design.</param>
/// <param name="Problem">Why the text so far will not do; null where it will.</param>
public sealed record FieldEditor(string Key, Line Line, Finding? Problem)
{
    /// <summary>The editor with another line, checked on the spot with the same messages as the command.</summary>
    public FieldEditor With(Line line, FieldDescription field)
    {
        return new FieldEditor(Key, line, FieldText.TryParse(field, line.Text, out _, out Finding? problem) ? null : problem);
    }
}
