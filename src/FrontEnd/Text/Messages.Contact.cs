namespace FrontEnd.Text;

/// <summary>Codes of contact over time: FE0958 and FE0959.</summary>
internal static partial class Messages
{
    public const string TimesDoNotRise = "FE0958";
    public const string FactorOutside = "FE0959";
}
