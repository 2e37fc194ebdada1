using static FrontEnd.Findings.Finding;

namespace FrontEnd.Filters;

/// <summary>Wording of the findings about filters. Codes FE0601 to FE0619, FE0640 to FE0650, FE1183 and FE1184.</summary>
internal static class FilterMessages
{
    internal static Finding OrderOutOfRange(string field, int order, int most) => Error("FE0601", field,
        $"filter order {order} is outside 1..{most}",
        most == 10 ? "a band shape has two poles for each order of its prototype" : null,
        "choose an order in the range");

    internal static Finding CornerNotAboveZero(string field, Frequency corner) => Error("FE0602", field,
        $"filter corner {Hertz(corner)} is not above 0 Hz", null, "give a corner above 0 Hz");

    internal static Finding CornerNotBelowHalfRate(string field, Frequency corner, Frequency rate) => Error("FE0603", field,
        $"filter corner {Hertz(corner)} is not below half the sampling rate, {Number(rate.Hertz / 2)} Hz",
        $"the sampling rate is {Hertz(rate)}", "lower the corner, or raise the sampling rate");

    internal static Finding EdgesNotInOrder(string field, Frequency low, Frequency high) => Error("FE0604", field,
        $"upper band edge {Hertz(high)} is not above the lower, {Hertz(low)}", null, "swap the edges, or move them apart");

    internal static Finding RippleNotAboveZero(string field, double ripple) => Error("FE0605", field,
        $"pass-band ripple {Number(ripple)} dB is not above 0 dB", "ripple is the maximum loss in the pass band",
            "give a ripple above 0 dB, or use a Butterworth");

    internal static Finding AttenuationNotAboveZero(string field, double attenuation) => Error("FE0606", field,
        $"stop-band attenuation {Number(attenuation)} dB is not above 0 dB",
            "attenuation is the minimum loss in the stop band, a positive number", "give an attenuation above 0 dB");

    internal static Finding AttenuationNotAboveRipple(string field, double ripple, double attenuation) => Error("FE0607", field,
        $"stop-band attenuation {Number(attenuation)} dB is not above the pass-band ripple, {Number(ripple)} dB", null,
            "raise the attenuation, or lower the ripple");

    internal static Finding StopEdgeOnWrongSide(string field, Frequency pass, Frequency stop) => Error("FE0608", field,
        $"stop edge {Hertz(stop)} lies in the pass band, whose edge is {Hertz(pass)}", null, "move the stop edge outside the pass band");

    internal static Finding OrderNotFound(string field, string family, int most, int? needed) => Error("FE0609", field,
        needed is { } n
            ? $"the requirement needs a {family} filter of order {n}, above {most}"
            : $"no {family} filter up to order {most} meets the requirement",
        needed is null
            ? "its edge gets steeper only slowly with the order, and towards a limit"
            : null, "move the edges apart, or choose another family");

    internal static Finding EdgeCount(string field, string what, string shape, int wanted, int given) => Error("FE0610", field,
        $"a {shape} has {wanted} {what}{(wanted == 1 ? "" : "s")}, but {given} {(given == 1 ? "is" : "are")} given", wanted == 2
            ? "lower first"
            : null,
        wanted == 2 ? "write both, such as 8 Hz and 13 Hz" : "give one frequency");

    internal static Finding NoOrder(string field) => Error("FE0611", field, "neither an order nor a stop edge is given", null,
        "give the order, or the stop edge together with the attenuation to find the lowest order");

    internal static Finding OrderAndEdges(string field) =>
        Error("FE0612", field, "both an order and a stop edge are given", "a stop edge asks for the lowest order", "leave one of the two out");

    internal static Finding RateNotAboveZero(string field, Frequency rate) =>
        Error("FE0613", field, $"sampling rate {Hertz(rate)} is not above 0 Hz", null,
            "give a rate above 0 Hz, or none for an analogue filter");

    internal static Finding LossMissing(string field, string family, string what, string meaning, string example) => Error("FE0614", field,
        $"{(family == "stop edge" ? "a stop edge" : $"the {family} filter")} needs the {what}", $"{what} is {meaning}",
            $"give the {what}, such as {example}");

    internal static Finding LossUnused(string field, string family, string what) => new("FE0615", Severity.Warning, field,
        $"the {what} is not used in a {family} filter of given order", null,
            $"leave the {what} out, or give a stop edge instead of the order");

    internal static Finding DelayNotHere(string field, bool isBessel) => Error("FE0616", field,
        isBessel ? "the delay normalisation cannot be combined with a stop edge" : "only a Bessel filter has a delay normalisation",
        isBessel
            ? "its corner is 1/(2π·group delay), not the edge of a pass band"
            : null, isBessel
            ? "give the order, or use the magnitude normalisation"
            : "use the magnitude normalisation");

    internal static Finding OutOfNumbers(string field) => Error("FE0617", field, "the filter's numbers leave the range of double precision",
        "its poles must lie on the stable side and every coefficient must be finite",
            "bring corners, rate, losses or order closer together");

    internal static Finding OutOfRange(string field, string what, string least, string most) =>
        Error("FE0618", field, $"{what} is not between {least} and {most}", null, "give a value in the range");

    internal static Finding TooNear(string field, string what, string end, double share) =>
        Error("FE0619", field, $"{what} is too close to {end}",
        $"within a relative distance of {share:0e0}, coefficients in double precision can no longer represent the filter",
            "lower the rate, or move the corners apart");

    internal static Finding NotInRange(string what, int value, int least, int most) =>
        Error("FE0640", "", $"{what} {value} is outside {least}..{most}", null, "choose a number in this range");

    internal static Finding EvenTaps(int taps, bool anyShape) => Error("FE0641", "", $"the number of taps, {taps}, is even",
        anyShape
            ? null
            : "an even number of symmetric taps has gain 0 at half the rate, which a high-pass and a band-stop cannot use",
                "use one tap more or one fewer");

    internal static Finding TooManyTaps(int most) =>
        Error("FE0642", "", $"no filter up to {most} taps meets the requirement",
            "the number of taps grows with the rate over the distance between pass and stop edge",
        "move the edges apart, decimate first, or use sections with feedback");

    internal static Finding NoEquiripple(int taps) =>
        Error("FE0643", "", $"there is no equiripple filter of {taps} taps for these bands",
            "the exchange algorithm found no alternation, as happens when a band is left without an extreme",
        "use another number of taps, move the edges, or use a Kaiser window");

    internal static Finding TapsTooFew(int taps, double passLoss, double? stopLoss, Decibels ripple, Decibels attenuation) =>
        new("FE0644", Severity.Warning, "",
        $"{taps} taps reach {Number(passLoss)} dB in the pass band and {(stopLoss is { } stop ? $"{Number(stop)} dB" : "no bound")} in the stop band",
        $"{Number(ripple.Value)} dB and {Number(attenuation.Value)} dB are required",
            "use more taps, or leave their number out to find the fewest");

    internal static Finding NoWholePeriods(Frequency mains, Frequency rate)
    {
        double below = Math.Max(2, Math.Floor(rate / mains)) * mains.Hertz, above = Math.Max(3, Math.Floor(rate / mains) + 1) * mains.Hertz;
        return Error("FE0645", "", $"sampling rate {Hertz(rate)} is not a whole multiple of the mains frequency {Hertz(mains)}",
            $"a period has {Number(rate / mains)} samples, and a comb averages over whole periods",
            $"sample at {Number(below)} Hz or {Number(above)} Hz, or use notches");
    }

    internal static Finding CombTooLong(long samples, int most) =>
        Error("FE0646", "", $"the comb remembers {samples} samples, above {most}", null, "average over fewer periods, or decimate first");

    internal static Finding EdgeOutOfBand(Frequency edge, Frequency rate) =>
        Error("FE0647", "", $"band edge {Hertz(edge)} is not above 0 Hz and below half the sampling rate, {Number(rate.Hertz / 2)} Hz",
            null,
        "give the upper edge of the band that is recorded");

    internal static Finding QOutOfRange(double q, double most) =>
        Error("FE0648", "", $"Q {Number(q)} is outside the range above 0 up to {Number(most)}",
            "Q is the centre frequency over the width between the -3 dB points", "use a Q of 5 to 50");

    internal static Finding NotchTooWide(Frequency mains, double q, Frequency rate) =>
        Error("FE0649", "",
            $"a notch at {Hertz(mains)} with Q {Number(q)} is {Number(mains.Hertz / q)} Hz wide, which is not below half the sampling rate, {Number(rate.Hertz / 2)} Hz",
        null, "raise Q");

    /// <param name="harmonics">Those that land in the band and at no notch, at least one.</param>
    /// <param name="most">The highest that was looked at.</param>
    internal static Finding HarmonicsFold(IReadOnlyList<(int Harmonic, Frequency At, Frequency Landing)> harmonics, int most) =>
        new("FE0650", Severity.Warning, "",
            harmonics is [var one]
                ? $"mains harmonic {one.Harmonic}, {Hertz(one.At)}, lands at {Hertz(one.Landing)} after sampling, in the band and on no notch"
                : "mains harmonics land in the band and on no notch after sampling: "
                    + string.Join("; ", harmonics.Select(h => $"harmonic {h.Harmonic}, {Hertz(h.At)}, lands at {Hertz(h.Landing)}")),
            $"a frequency above half the rate is recorded as its distance to the nearest multiple of the rate; checked up to harmonic {most}",
            "keep it out before the converter, or sample at another rate");

    internal static string Hertz(Frequency frequency) => QuantityText.FormatExact(frequency);

    /// <summary>Six places at most; by its power of ten where that would be a row of zeros.</summary>
    internal static string Number(double value) =>
        value.ToString(Math.Abs(value) is 0 or (>= 1e-6 and < 1e15) ? "0.######" : "0.#####e0", System.Globalization.CultureInfo.InvariantCulture);

    /// <summary>A choice that is none of those there are, as a number cast to it is; null for one that is.</summary>
    internal static Finding? Unknown<T>(string field, string what, T given, IReadOnlyDictionary<string, T> words)
        where T : struct, Enum =>
        words.Values.Contains(given) ? null : Error("FE1183", field, $"`{given}` is no {what} that is worked out here", null, $"use one of {string.Join(", ", words.Keys)}");

    internal static Finding NoPartsSought(string field, string what, int mostOrder) => Warning("FE1184", field, $"parts of {what} are not sought",
        $"they are for an analogue low-pass up to order {mostOrder} and for an analogue notch", "build it by the f0 and Q of its sections");
}
