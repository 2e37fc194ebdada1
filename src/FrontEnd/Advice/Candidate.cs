using FrontEnd.Designs;

namespace FrontEnd.Advice;

/// <summary>A change that someone could make to the design, in words.</summary>
internal sealed record Candidate(string Change, Design Design)
{
    /// <summary>True where it makes another kind of thing of a part: gel electrodes of dry ones, a buffer at the electrode, a driven ground, a
    /// shield that is driven, a stage that is coupled by a capacitor. False where a value, a part's data, a rate or a filter changes.</summary>
    public bool IsOfKind { get; init; }
}
