namespace FrontEnd.Quantities;

/// <summary>Numbers that the trade has agreed on, each once: what is calculated, the formulas that are shown and the texts take them from
/// here.</summary>
public static class TradeConstants
{
    /// <summary>Peak-to-peak over rms of Gaussian noise: 0.1 % of the time lies outside. Crest factor 3.3 on each side, Baker
    /// 2008.</summary>
    public const double NoisePeakToPeak = 6.6;

    /// <summary>What one bit adds to the ratio of signal and quantisation noise [dB], 20·log10 2 rounded as in note MT-001.</summary>
    public const double DecibelsPerBit = 6.02;

    /// <summary>What a full-scale sine has over the quantisation noise of a converter of no bits [dB], 10·log10 1.5 rounded as in note
    /// MT-001.</summary>
    public const double DecibelsOfSine = 1.76;

    /// <summary>Largest current through the wearer in a single fault, dc [A]: the limit quoted for applied parts. The standard itself is
    /// not seen.</summary>
    public const double FaultAmperes = 50e-6;

    /// <summary>Largest current through the wearer in normal operation, dc [A]: the limit quoted for applied parts. The standard itself is
    /// not seen.</summary>
    public const double NormalAmperes = 10e-6;

    /// <summary>Bits of an ideal converter whose noise leaves this ratio to a full-scale sine [dB].</summary>
    public static double EffectiveBits(double decibels) => (decibels - DecibelsOfSine) / DecibelsPerBit;
}
