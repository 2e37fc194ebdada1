using FrontEnd.Identity;

namespace FrontEnd.Results;

/// <summary>What stands in place of a figure without bound: a few words that say which way it has none, the same in every view. Why stands in <see
/// cref="Result.Text"/>.</summary>
internal static class UnboundedWords
{
    private const string NoneIsEnough = "none is enough";

    /// <summary>In place of this result's figure.</summary>
    public static string Of(Result result) => Of(result.Id, result.Unit, result.IsBelowAll);

    /// <summary>In place of any figure with this id.</summary>
    /// <param name="id">Which figure.</param>
    /// <param name="unit">Its unit.</param>
    /// <param name="below">True where it is below every number, false where it is above every one.</param>
    public static string Of(ResultId id, string unit, bool below = false) =>
        id == ResultIds.Mains.CmrrNeeded ? below ? "none is needed" : NoneIsEnough
        : id == ResultIds.Safety.SeriesResistanceNeeded ? NoneIsEnough
        : id == ResultIds.Converter.BitsNeeded ? "above 40 bit"
        : ResultIds.Limit.All.Has(id) ? "no limit found"   // a search, which looked no further
        : id == ResultIds.Levels.Recovery ? "never recovers"
        : ResultIds.Drive.All.Has(id) ? "no crossing"
        : Is(id, ResultIds.Levels.LeastHeadroom) || ResultIds.Levels.IsHeadroom(id) ? "no voltage"
        : Is(id, ResultIds.Mains.SystemCmrr) ? "none is left"   // of a common mode, be there one or not
        : id == ResultIds.Levels.LargestSignal ? "any signal"
        : ResultIds.See.All.Has(id) ? "hardly seen"
        : unit switch
        {
            "A" => "not limited",
            "V" => "any offset",
            "s" => "never settles",
            "Hz" => "above 1 GHz",
            "dB" => below ? "below -300 dB" : "above 300 dB",
            _ => "without bound",
        };

    /// <summary>True for the design's own figure and for the same of a channel.</summary>
    private static bool Is(ResultId id, ResultId figure) => id == figure || id.Text.EndsWith($".{figure.Text}", StringComparison.Ordinal);
}
