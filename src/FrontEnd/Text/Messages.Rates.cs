namespace FrontEnd.Text;

/// <content>About choosing a sampling rate.</content>
public static partial class Messages
{
    public const string SectionsBelongToRate = "FE0501";
    public const string RateOutOfRange = "FE0502";

    internal static Finding SectionsAtOtherRate(string name, string rate) => new(
        SectionsBelongToRate, Severity.Warning, "digital", $"the sections of `{name}` are given as numbers and belong to {rate}",
        "at another rate the same numbers are a filter with other corners: such rates are shown without it", "give the filter by its corner, so that it follows the rate");
}
