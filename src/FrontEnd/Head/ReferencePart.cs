namespace FrontEnd.Head;

/// <summary>What the other side of a derivation does to a source, by the share t of the active site's potential that it takes. Names only: none
/// is better than another.</summary>
internal enum ReferencePart
{
    /// <summary>t below −0.05: it has the opposite sign there.</summary>
    Adds,

    /// <summary>t up to 0.05.</summary>
    Quiet,

    /// <summary>t up to 0.5.</summary>
    TakesPart,

    /// <summary>t up to 1.</summary>
    CancelsMost,

    /// <summary>t above 1: the reference sees more of it than the active site.</summary>
    TurnsOver,
}
