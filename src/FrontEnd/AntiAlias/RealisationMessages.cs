using System.Globalization;

namespace FrontEnd.AntiAlias;

/// <summary>Wording of the findings about building a filter from parts. Codes FE065x.</summary>
internal static class RealisationMessages
{
    /// <param name="withoutZeros">The Chebyshev low-pass that meets the same; null where there is none, or the filter is no
    /// low-pass.</param>
    /// <param name="most">Greatest order whose parts are sought.</param>
    internal static Finding NotAllPoleLowPass(string field, SubstituteLowPass? withoutZeros, int most) =>
        new("FE0651", Severity.Error, field,
        "the filter is not a low-pass without zeros, so it cannot be built of Sallen-Key or multiple-feedback sections",
        "elliptic and inverse Chebyshev filters have zeros, which these sections cannot make; a section with a zero needs three op-amps or more, and its zero holds only if the parts match",
        withoutZeros switch
        {
            null => "choose Butterworth, Chebyshev, Bessel or critically damped",
            { Order: var order } other when most < order =>
                $"a Chebyshev low-pass that meets the same edges, {Edges(other)}, is of order {order}, above the {most} for which parts are found; filter with zeros after the converter, with a sampling rate, or move the edges apart",
            { } other =>
                $"a Chebyshev low-pass of order {other.Order} meets the same edges, {Edges(other)}; or filter with zeros after the converter, with a sampling rate",
        });

    private static string Edges(SubstituteLowPass other) =>
        $"{QuantityText.FormatTrimmed(other.Pass, 4)} and {QuantityText.FormatTrimmed(other.Stop, 4)} (at most {QuantityText.FormatTrimmed(other.Ripple.Value, "dB", 4)} and at least {QuantityText.FormatTrimmed(other.Attenuation.Value, "dB", 4)})";

    internal static Finding NoPartsInLimits(string field, Frequency pole, double? q, bool equal) => new("FE0652", Severity.Error, field,
        $"no parts within the limits give the section with pole frequency {QuantityText.Format(pole)}{Quality(q)}",
        q is { } value && !equal
            ? string.Create(CultureInfo.InvariantCulture,
                $"one capacitor must be at least {4 * value * value:0.#} times the other (twice that for multiple feedback)")
            : null,
        "widen the limits on resistors or capacitors, or use a state-variable section");

    internal static Finding OpAmpTooSlow(string field, Frequency bandwidth, Frequency pole, double q) =>
        new("FE0653", Severity.Warning, field,
        string.Create(CultureInfo.InvariantCulture,
            $"the op-amp's gain-bandwidth product {QuantityText.Format(bandwidth)} is less than 20 times Q·f0 = {q:0.##} · {QuantityText.Format(pole)}"),
        "the parts are corrected for it, but the stop band rises again where the op-amp runs out of gain",
            "use a faster op-amp, or a filter with lower Q");

    internal static Finding StopBandRises(string field, Frequency turn, double lossAtTurn, double least, Frequency at, Decibels wanted) =>
        new("FE0654", Severity.Warning, field,
        $"the anti-alias filter's stop band rises again at {QuantityText.Format(turn)}, {QuantityText.Format(lossAtTurn, "dB")} down, and the whole path is only {QuantityText.Format(least, "dB")} down at {QuantityText.Format(at)}",
        $"above the op-amp's bandwidth only its output resistance holds the output; {QuantityText.Format(wanted)} is required at the fold (requirements.fold)",
        "use a multiple-feedback section, larger resistors, an op-amp of lower output resistance or higher bandwidth, or end the filter with a passive RC at the converter's pin");

    internal static Finding NotchQ(string field, double q, double least, double most) => new("FE0655", Severity.Error, field,
        string.Create(CultureInfo.InvariantCulture, $"an analogue notch of Q {q:0.###} cannot be built with this circuit"),
        string.Create(CultureInfo.InvariantCulture, $"it can have a Q from {least:0.##} to {most:0.#}"),
        "choose a Q in this range, or filter after the converter, with a sampling rate");

    private static string Quality(double? q) => q is { } value ? string.Create(CultureInfo.InvariantCulture, $" and Q {value:0.###}") : "";
}
