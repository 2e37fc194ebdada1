using Terminal.Gui.Drivers;
using Terminal.Gui.Input;

namespace FrontEnd.Terminal.Screens;

/// <summary>The widget library's keys as ours.</summary>
public static class Keys
{
    /// <summary>The key in our terms.</summary>
    public static Keystroke From(Key key)
    {
        bool alt = key.IsAlt, ctrl = key.IsCtrl, shift = key.IsShift;
        KeyName name = key.NoAlt.NoCtrl.NoShift.KeyCode switch
        {
            KeyCode.Enter => KeyName.Enter,
            KeyCode.Esc => KeyName.Escape,
            KeyCode.Tab => KeyName.Tab,
            KeyCode.Backspace => KeyName.Backspace,
            KeyCode.Delete => KeyName.Delete,
            KeyCode.CursorUp => KeyName.Up,
            KeyCode.CursorDown => KeyName.Down,
            KeyCode.CursorLeft => KeyName.Left,
            KeyCode.CursorRight => KeyName.Right,
            KeyCode.Home => KeyName.Home,
            KeyCode.End => KeyName.End,
            KeyCode.PageUp => KeyName.PageUp,
            KeyCode.PageDown => KeyName.PageDown,
            KeyCode.F1 => KeyName.F1,
            KeyCode.F5 => KeyName.F5,
            KeyCode.F10 => KeyName.F10,
            _ => KeyName.None,
        };
        if (name != KeyName.None)
        {
            return new Keystroke(name, Alt: alt, Ctrl: ctrl, Shift: shift);
        }

        // With Ctrl or Alt the character is the letter of the key.
        if (ctrl || alt)
        {
            int code = (int)key.NoAlt.NoCtrl.NoShift.KeyCode;
            return code is >= 0x20 and < 0x7F
                ? new Keystroke(KeyName.Letter, char.ToLowerInvariant((char)code), alt, ctrl, shift)
                : default;
        }

        System.Text.Rune rune = key.AsRune;
        return rune.Value is >= 0x20 and <= 0xFFFF and not 0x7F ? new Keystroke(KeyName.Letter, (char)rune.Value) : default;
    }
}
