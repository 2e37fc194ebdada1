namespace FrontEnd.Text;

/// <summary>Wording for field values and for checks between fields that need no evaluation.</summary>
internal static partial class Messages
{
    public const string OutsideRange = "FE0110";
    public const string UnknownWord = "FE0111";
    public const string NotANumberText = "FE0112";
    public const string NotAWholeNumber = "FE0113";
    public const string NotAFlag = "FE0114";
    public const string BadList = "FE0115";

    public const string BandOrder = "FE0301";
    public const string BandAboveHalfRate = "FE0302";
    public const string NameTwice = "FE0303";
    public const string PassiveNotLast = "FE0304";
    public const string NoDcPath = "FE0305";
    public const string CornerAboveHalfRate = "FE0306";
    public const string SupplyOrder = "FE0307";
    public const string FeedbackWithoutGround = "FE0308";
    public const string StageOscillates = "FE0330";
    public const string HalfABlock = "FE0309";
    public const string StepDisagrees = "FE0310";
    public const string BadRow = "FE0311";
    public const string UnstableSection = "FE0312";
    public const string SitesCount = "FE0313";
    public const string TooFewChannels = "FE0314";
    public const string SignalOrder = "FE0315";
    public const string MidRailOutside = "FE0316";
    public const string NoFundamental = "FE0317";
    public const string LimitRaised = "FE0318";
    public const string EarthedWithoutCaution = "FE0319";
    public const string CheckAboveHalfRate = "FE0320";
    public const string RateTooLow = "FE1170";
    public const string ReferenceInputsAboveChannels = "FE0321";
    public const string ShieldWithoutLead = "FE0322";
    public const string NameMissing = "FE0323";
    public const string MarginsExceedSupply = "FE0324";
    public const string RangeWithoutValue = "FE0325";
    public const string NameReserved = "FE0326";
    public const string GainNotOffered = "FE0327";
    public const string SupplyOutsidePart = "FE0328";
    public const string SupplyDestroysPart = "FE0329";
    public const string ConverterAboveSupply = "FE0817";
    public const string OwnSupplyAboveHighest = "FE0818";

    /// <summary>Two edges in the wrong order.</summary>
    public static Finding EdgesReversed(string key, Frequency low, Frequency high) =>
        Finding.Error(BandOrder, key, $"{key} starts at {QuantityText.Format(low)}, but ends at {QuantityText.Format(high)}", null,
            "write the lower frequency first");

    /// <summary>`a`, `b` or `c`.</summary>
    public static string Listed(IReadOnlyList<string> words) => words.Count switch
    {
        0 => "",
        1 => $"`{words[0]}`",
        _ => string.Join(", ", words.Take(words.Count - 1).Select(word => $"`{word}`")) + $" or `{words[^1]}`",
    };
}
