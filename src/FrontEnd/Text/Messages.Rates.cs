namespace FrontEnd.Text;

/// <content>About choosing a sampling rate.</content>
internal static partial class Messages
{
    public const string SectionsBelongToRate = "FE0701";
    public const string RateOutOfRange = "FE0702";
    public const string ModulatorImage = "FE0703";

    internal static Finding SectionsAtOtherRate(string name, string rate) => new(
        SectionsBelongToRate, Severity.Warning, "digital", $"the sections of `{name}` are given as numbers and belong to {rate}",
        "at another rate the same numbers make a filter with other corners: such rates are shown without it",
        "state the filter by its corner, so that it follows the rate");

    internal static Finding ModulatorPasses(string clock, string attenuation, string limit) => new(
        ModulatorImage, Severity.Warning, DesignKeys.Requirements.Fold,
        $"the image at the modulator's clock of {clock} is {attenuation} down, but {limit} is required",
        "the clock is the same at every rate, so no rate cures it",
        "lower the corner of the passive filter before the converter");
}
