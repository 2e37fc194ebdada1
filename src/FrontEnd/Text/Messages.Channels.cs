namespace FrontEnd.Text;

/// <summary>Codes of channels at sites: FE0950 to FE0969.</summary>
internal static partial class Messages
{
    public const string SiteTwice = "FE0950";
    public const string ReferenceIsChannel = "FE0951";
    public const string SiteNearMiss = "FE0952";
    public const string SitesBesideChannels = "FE0953";
    public const string DerivedOfUnknown = "FE0954";
    public const string DerivedOfNothing = "FE0955";
    public const string MinusIsOwnSite = "FE0956";
    public const string DerivedNamesTwice = "FE0957";
}
