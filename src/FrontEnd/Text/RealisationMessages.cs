using System.Globalization;
using FrontEnd.Quantities;

namespace FrontEnd.Text;

/// <summary>Wording of the findings about building a filter from parts. Codes FE065x.</summary>
internal static class RealisationMessages
{
    internal static Finding NotAllPoleLowPass(string field) => new("FE0651", Severity.Error, field,
        "the filter is not a low-pass without zeros, so it cannot be built of Sallen-Key or multiple-feedback sections",
        "elliptic and inverse Chebyshev filters have zeros, which these sections lack", "choose Butterworth, Chebyshev, Bessel or critically damped");

    internal static Finding NoPartsInLimits(string field, Frequency pole, double? q) => new("FE0652", Severity.Error, field,
        $"no parts within the limits make the section with pole frequency {QuantityText.Format(pole)}{Quality(q)}",
        q is { } value ? string.Create(CultureInfo.InvariantCulture, $"one capacitor must be at least {4 * value * value:0.#} times the other (twice that for multiple feedback)") : null,
        "widen the limits on resistors or capacitors, or use a state-variable section");

    internal static Finding OpAmpTooSlow(string field, Frequency bandwidth, Frequency pole, double q) => new("FE0653", Severity.Warning, field,
        string.Create(CultureInfo.InvariantCulture, $"the op-amp's gain-bandwidth product {QuantityText.Format(bandwidth)} is less than 20 times Q·f0 = {q:0.##} · {QuantityText.Format(pole)}"),
        "the parts are corrected for it, but the stop band rises again where the op-amp gives out", "use a faster op-amp, or a filter with lower Q");

    private static string Quality(double? q) => q is { } value ? string.Create(CultureInfo.InvariantCulture, $" and Q {value:0.###}") : "";
}
