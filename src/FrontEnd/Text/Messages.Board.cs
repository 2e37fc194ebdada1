namespace FrontEnd.Text;

/// <summary>Codes of the board: FE1020 to FE1029.</summary>
internal static partial class Messages
{
    public const string GainResistorUnknown = "FE1020";
    public const string GroundGainTooLarge = "FE1021";
    public const string GroundFrequencyTooLow = "FE1022";
    public const string GroundFrequencyTooHigh = "FE1023";
    public const string OddPackage = "FE1024";
    public const string ReferencePartUnknown = "FE1025";
    public const string PriceUnreadable = "FE1026";
    public const string NoPrices = "FE1027";
}
