namespace FrontEnd.Textbook;

/// <summary>Battery and supply by the formulas of the textbooks.</summary>
internal static class PowerFormulas
{
    /// <summary>Time on one charge, Q·share/I [s].</summary>
    /// <param name="usableShare">Share of the rated charge that can be used; 0.8 is common practice, no source.</param>
    /// <remarks>Source: arithmetic.</remarks>
    public static TextbookFigure BatteryLife(Charge capacity, Ratio usableShare, Current load) =>
        TextbookFigure.Of(
            load.Amperes == 0 ? double.PositiveInfinity : capacity.Coulombs * usableShare.Fraction / load.Amperes,
            "s",
            "Q·share/I",
            () => $"{Put.In(capacity)} · {Put.In(usableShare)}/{Put.In(load)}",
            Sources.Derived);
}
