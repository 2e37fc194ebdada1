namespace FrontEnd.Terminal;

/// <summary>A key as it was pressed, in no widget library's terms.</summary>
/// <param name="Key">What sort of key.</param>
/// <param name="Letter">The character for <see cref="KeyName.Letter"/>; '\0' for all others.</param>
public readonly record struct Keystroke(KeyName Key, char Letter = '\0', bool Alt = false, bool Ctrl = false, bool Shift = false)
{
    /// <summary>A plain character, such as <c>n</c>.</summary>
    public static Keystroke Of(char letter) => new(KeyName.Letter, letter);

    /// <summary>The key as the help writes it: <c>n</c>, <c>Alt+n</c>, <c>PgUp</c>.</summary>
    public override string ToString()
    {
        string name = Key switch
        {
            KeyName.Letter => Letter == ' ' ? "Space" : Letter.ToString(),
            KeyName.Escape => "Esc",
            KeyName.PageUp => "PgUp",
            KeyName.PageDown => "PgDn",
            _ => Key.ToString(),
        };
        return (Ctrl ? "Ctrl+" : "") + (Alt ? "Alt+" : "") + (Shift ? "Shift+" : "") + name;
    }
}

/// <summary>The sorts of keys that the interface knows.</summary>
public enum KeyName
{
    None,
    Letter,
    Enter,
    Escape,
    Tab,
    Backspace,
    Delete,
    Up,
    Down,
    Left,
    Right,
    Home,
    End,
    PageUp,
    PageDown,
    F1,
    F5,
    F10,
}
