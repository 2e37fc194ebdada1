namespace FrontEnd.Text;

/// <content>About sizing from requirements.</content>
internal static partial class Messages
{
    public const string LifeNeedsBattery = "FE0721";

    internal static Finding LifeWithoutBattery() => new(
        LifeNeedsBattery, Severity.Error, "sizing.battery-life", "a battery life is required, but no battery is given",
        "battery life is the usable capacity over the supply current", "set supply.battery-capacity");
}
