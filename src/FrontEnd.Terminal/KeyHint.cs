namespace FrontEnd.Terminal;

/// <summary>A key on the key line.</summary>
/// <param name="Message">What a click on it says; null for nothing.</param>
public sealed record KeyHint(string Key, string Does, Message? Message = null)
{
    /// <summary>The way back from where one is.</summary>
    public static KeyHint Back { get; } = Of(KeyName.Escape, "Esc", "back");

    /// <summary>The keys that scroll.</summary>
    public static KeyHint Scroll { get; } = new("up/dn", "scroll");

    /// <summary>A key that a click presses.</summary>
    public static KeyHint Of(KeyName key, string name, string does) => new(name, does, new Message.Pressed(new Keystroke(key)));

    /// <summary>A letter that a click presses.</summary>
    public static KeyHint Of(char letter, string name, string does) => new(name, does, new Message.Pressed(Keystroke.Of(letter)));

    /// <summary>Something that a click does.</summary>
    public static KeyHint Of(Act act, string name, string does) => new(name, does, new Message.Do(act));
}
