using FrontEnd.Quantities;

namespace FrontEnd.Text;

/// <summary>Wording of the findings about filters. Codes FE06xx.</summary>
internal static class FilterMessages
{
    internal static Finding OrderOutOfRange(string field, int order, int most) => Error("FE0601", field,
        $"filter order {order} is not in 1..{most}",
        most == 10 ? "a band shape has two poles for each order of its prototype" : null,
        "choose an order in the range");

    internal static Finding CornerNotAboveZero(string field, Frequency corner) => Error("FE0602", field,
        $"filter corner {Hertz(corner)} is not above 0 Hz", null, "give a corner above 0 Hz");

    internal static Finding CornerNotBelowHalfRate(string field, Frequency corner, Frequency rate) => Error("FE0603", field,
        $"filter corner {Hertz(corner)} is not below half the sampling rate, {Number(rate.Hertz / 2)} Hz",
        $"the sampling rate is {Hertz(rate)}", "lower the corner, or raise the sampling rate");

    internal static Finding EdgesNotInOrder(string field, Frequency low, Frequency high) => Error("FE0604", field,
        $"upper band edge {Hertz(high)} is not above the lower, {Hertz(low)}", null, "exchange the edges, or move them apart");

    internal static Finding RippleNotAboveZero(string field, double ripple) => Error("FE0605", field,
        $"pass-band ripple {Number(ripple)} dB is not above 0 dB", "ripple is the largest loss in the pass band", "give a ripple above 0 dB, or use a Butterworth");

    internal static Finding AttenuationNotAboveZero(string field, double attenuation) => Error("FE0606", field,
        $"stop-band attenuation {Number(attenuation)} dB is not above 0 dB", "attenuation is the least loss in the stop band, a positive number", "give an attenuation above 0 dB");

    internal static Finding AttenuationNotAboveRipple(string field, double ripple, double attenuation) => Error("FE0607", field,
        $"stop-band attenuation {Number(attenuation)} dB is not above the pass-band ripple, {Number(ripple)} dB", null, "raise the attenuation, or lower the ripple");

    internal static Finding StopEdgeOnWrongSide(string field, Frequency pass, Frequency stop) => Error("FE0608", field,
        $"stop edge {Hertz(stop)} lies in the pass band, whose edge is {Hertz(pass)}", null, "move the stop edge outside the pass band");

    internal static Finding OrderNotFound(string field, string family, int most, int? needed) => Error("FE0609", field,
        needed is { } n ? $"the requirement needs a {family} filter of order {n}, above {most}" : $"no {family} filter up to order {most} meets the requirement",
        needed is null ? "its edge does not become steep enough as the order grows" : null, "move the edges apart, or choose another family");

    private static Finding Error(string code, string field, string message, string? note, string? help) => new(code, Severity.Error, field, message, note, help);

    private static string Hertz(Frequency frequency) => QuantityText.FormatExact(frequency);

    private static string Number(double value) => value.ToString("0.######", System.Globalization.CultureInfo.InvariantCulture);
}
