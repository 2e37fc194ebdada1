using Terminal.Gui.Drawing;
using Attribute = Terminal.Gui.Drawing.Attribute;

namespace FrontEnd.Terminal.Screens;

/// <summary>How each ink looks. The terminal's own sixteen colours, which its owner has chosen to be readable on light or on dark; the
/// background is never set.</summary>
internal sealed class Palette
{
    private readonly Attribute[] _attributes;

    /// <param name="colour">False for a terminal that must show none: bold, underline and reverse remain.</param>
    public Palette(bool colour)
    {
        _attributes = [.. Enum.GetValues<Ink>().Select(ink => colour ? Coloured(ink) : Plain(ink))];
    }

    /// <summary>How an ink looks.</summary>
    public Attribute this[Ink ink] => _attributes[(int)ink];

    // Yellow and bright colours vanish on white, dark blue on black: bright black is the background itself in some
    // schemes: only colours that read on both are used, with bold where it must stand out and faint where it must not.
    private static Attribute Coloured(Ink ink) => ink switch
    {
        Ink.Plain => Make(Color.None, TextStyle.None),
        Ink.Dim or Ink.Grid => Make(Color.None, TextStyle.Faint),
        Ink.Strong => Make(Color.None, TextStyle.Bold),
        Ink.Title => Make(Color.None, TextStyle.Bold | TextStyle.Underline),
        Ink.Pass or Ink.Curve3 => Make(new Color(ColorName16.Green), TextStyle.None),
        Ink.Marginal => Make(new Color(ColorName16.Magenta), TextStyle.None),
        Ink.Fail => Make(new Color(ColorName16.Red), TextStyle.Bold),
        Ink.Changed or Ink.Key => Make(new Color(ColorName16.Cyan), TextStyle.None),
        Ink.Marker => Make(new Color(ColorName16.Magenta), TextStyle.None),
        Ink.Curve1 => Make(Color.None, TextStyle.Bold),
        Ink.Curve2 => Make(new Color(ColorName16.Cyan), TextStyle.None),
        Ink.Curve4 => Make(new Color(ColorName16.Red), TextStyle.None),
        _ => Plain(ink),
    };

    private static Attribute Plain(Ink ink) => ink switch
    {
        Ink.Chosen or Ink.Selected => Make(Color.None, TextStyle.Reverse),
        Ink.ChosenDim => Make(Color.None, TextStyle.Underline),
        Ink.Typed => Make(Color.None, TextStyle.Underline),
        Ink.Strong or Ink.Fail or Ink.Changed or Ink.Curve1 => Make(Color.None, TextStyle.Bold),
        Ink.Title => Make(Color.None, TextStyle.Bold | TextStyle.Underline),
        _ => Make(Color.None, TextStyle.None),
    };

    private static Attribute Make(Color colour, TextStyle style) => new(colour, Color.None, style);
}
