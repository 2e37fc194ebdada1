namespace FrontEnd.Terminal;

/// <summary>What a piece of text is; the palette decides how it looks.</summary>
public enum Ink : byte
{
    Plain,
    Dim,
    Strong,
    Title,
    Pass,
    Marginal,
    Fail,
    Chosen,
    ChosenDim,
    Typed,
    Selected,
    Changed,
    Key,
    Grid,
    Marker,
    Curve1,
    Curve2,
    Curve3,
    Curve4,
}
