using System.Numerics;
using FrontEnd.Citations;

namespace FrontEnd.Textbook;

/// <summary>A figure worked out by a formula of the textbooks, with the formula shown and the numbers put in.</summary>
/// <param name="value">The figure in the SI unit, decibels, degrees or bits. Infinite where the formula has no bound (a rejection with
/// nothing to reject), for the caller to show as that.</param>
/// <param name="formula">The formula in the symbols of the trade, such as <c>√(4kTRB)</c>.</param>
/// <param name="substituted">Makes <see cref="Substituted"/>.</param>
/// <param name="source">Where the formula is written down.</param>
public sealed class TextbookFigure(double value, string formula, Func<string> substituted, SourceRef source)
{
    /// <summary>The figure in the SI unit, decibels, degrees or bits; infinite where the formula has no bound.</summary>
    public double Value => value;

    /// <summary>The formula in the symbols of the trade.</summary>
    public string Formula => formula;

    /// <summary>The formula with the numbers put in and the result behind the equals sign; made when it is first read, since most are
    /// never shown.</summary>
    public string Substituted => field ??= substituted();

    /// <summary>Where the formula is written down.</summary>
    public SourceRef Source => source;

    /// <summary>The unit of the value: V, Hz, dB, bit …; "1" for a plain number.</summary>
    public required string Unit { get; init; }

    internal static TextbookFigure Of(double value, string unit, string formula, Func<string> substituted, SourceRef source) =>
        new(value, formula, () => $"{substituted()} = {QuantityText.Format(value, unit, 4)}", source) { Unit = unit };
}

/// <summary>Short names for the pieces of a substituted formula.</summary>
internal static class Put
{
    internal static string In(IQuantity quantity) => QuantityText.FormatTrimmed(quantity, 4);

    internal static string In(double number) => QuantityText.FormatTrimmed(number, "1", 4);

    internal static string In(double number, string unit) => QuantityText.FormatTrimmed(number, unit, 4);

    /// <summary>An impedance as size and angle: 40.7 kΩ∠-37.0°.</summary>
    internal static string In(Complex ohms) =>
        ohms.Imaginary == 0 ? In(ohms.Real, "Ω") : $"{In(ohms.Magnitude, "Ω")}∠{In(ohms.Phase * 180 / Math.PI, "°")}";

    internal static double Decibels(double voltageRatio) => 20 * Math.Log10(voltageRatio);
}

/// <summary>Keys of reference/sources.json that the formulas cite.</summary>
internal static class Sources
{
    internal static readonly SourceRef Derived = new("derived");
    internal static readonly SourceRef CommonPractice = new("common-practice");
    internal static readonly SourceRef FromMemory = new("from-memory");
    internal static readonly SourceRef OpAmpsShot = new("op-amps-for-everyone", "sec. 10.3.1, Eq. 10-9");
    internal static readonly SourceRef OpAmpsThermal = new("op-amps-for-everyone", "sec. 10.3.2");
    internal static readonly SourceRef OpAmpsFlicker = new("op-amps-for-everyone", "sec. 10.5.2, Eqs. 10-14 to 10-16");
    internal static readonly SourceRef OpAmpsCascade = new("op-amps-for-everyone", "sec. 16.2");
    internal static readonly SourceRef Butterworth = new("op-amps-for-everyone", "sec. 16.2, Butterworth magnitude");
    internal static readonly SourceRef SallenKey = new("op-amps-for-everyone", "sec. 16.3, unity-gain Sallen-Key and multiple feedback");
    internal static readonly SourceRef StopBandRise = new("sallen-key-sloa024", "stop band above the op-amp's bandwidth");
    internal static readonly SourceRef FrancoFlicker = new("franco-op-amps", "Example 7.1, p. 317");
    internal static readonly SourceRef FrancoResistors = new("franco-op-amps", "Eq. 2.26, p. 76");
    internal static readonly SourceRef FrancoConverter = new("franco-op-amps", "Example 12.2, p. 567");
    internal static readonly SourceRef IdealSnr = new("quantisation-mt-001", "expanded in note MT-229");
    internal static readonly SourceRef ConverterBits = new("delta-sigma-sbas350g", "Tables 7-1 and 7-2, their definitions");
    internal static readonly SourceRef BodyCurrent = new("metting-van-rijn-1990", "sec. 2.1");
    internal static readonly SourceRef Divider = new("haberman-spinelli-2010", "Eq. 1");
    internal static readonly SourceRef DrivenGround = new("webster-medical-instrumentation", "driven-right-leg figure");
    internal static readonly SourceRef LeadCurrent = new("huhta-webster-1973");
    internal static readonly SourceRef InnerNodes = new("pga-sbas683b", "common-mode requirements");
    internal static readonly SourceRef InAmpGuide = new("in-amp-mt-061");
    internal static readonly SourceRef NoiseBandwidth = new("noise-figure-mt-006", "Fig. 2");
    internal static readonly SourceRef NoiseBandwidthEqualPoles = new("kay-op-amp-noise", "brick-wall correction factors");
    internal static readonly SourceRef CrestFactor = new("baker-2008");
    internal static readonly SourceRef Notch = new("orfanidis-1996", "Eqs. 8.2.22 and 8.2.23");
    internal static readonly SourceRef Sinc = new("delta-sigma-sbasak4b", "Table 7-14");
    internal static readonly SourceRef FaultLimit = new("iec-60601-1", "limits; the quotient is Ohm's law");
}
