using FrontEnd.Catalogue;

namespace FrontEnd.Bench;

/// <summary>What the owner of a device that somebody else built can record of it on a fixture, and what each recording would tell.</summary>
/// <param name="Design">What is known of the device.</param>
/// <param name="NotKnown">Keys of what is not, what the owner can ask for first.</param>
/// <param name="Choices">What narrows most first; none where no recording of noise on a fixture is likely to narrow anything.</param>
internal sealed record RecordingPlan(PartlyKnownDesign Design, IReadOnlyList<string> NotKnown, IReadOnlyList<RecordingChoice> Choices)
{
    /// <summary>What must be known before a recording can be read; null for nothing.</summary>
    public string? First => Design.Find(DesignKeys.Converter.Rate) is null ? null : DesignKeys.Converter.Rate;

    /// <param name="notKnown">Keys of what is not known.</param>
    public static RecordingPlan Of(PartlyKnownDesign design, IReadOnlyList<string> notKnown) => new(design, notKnown, RecordingChoice.Of(design));
}
