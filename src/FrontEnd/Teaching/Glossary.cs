namespace FrontEnd.Teaching;

/// <summary>A term of the trade.</summary>
/// <param name="Symbol">The symbol in formulas; "" for none.</param>
/// <param name="Unit">Its unit as printed; "" for none.</param>
/// <param name="Others">Other names under which it is looked up.</param>
internal sealed record Term(string Name, string Symbol, string Unit, string Meaning, params IReadOnlyList<string> Others)
{
    /// <summary>True where the name is a word of every day as well: a text that holds it need not mean the term.</summary>
    public bool IsOrdinary { get; init; }
}

/// <summary>Symbols and terms, from one table for every view.</summary>
internal static class Glossary
{
    public static IReadOnlyList<Term> All { get; } =
    [
        new("ac coupling", "", "",
            "A series capacitor with a resistor to common: passes changes and blocks dc, such as the electrodes' offset.",
        "coupling capacitor"),
        new("active site", "", "", "A place on the head whose voltage is recorded, each against the reference.", "active electrode"),
        new("alias", "", "",
            "A frequency above half the sampling rate as it appears in the recording: at its distance from the nearest multiple of the rate.",
            "folding", "fold", "folded", "image"),
        new("amplifier", "", "", "Makes a small voltage larger without changing its shape; the first one in the path also subtracts the reference."),
        new("anti-alias filter", "", "", "The low-pass before the converter that attenuates what would fold into the band."),
        new("artefact", "", "", "Something in a recording that does not come from the signal of interest: a blink, a muscle, a moving lead.", "artefacts", "artifact"),
        new("attenuation", "", "dB", "How much a filter weakens a frequency; a positive number here."),
        new("average reference", "", "", "The mean of all recorded sites, subtracted from each; noise e·√(1 − 1/N) per channel."),
        new("background", "B", "V rms", "What the rest of the brain does at the same time as the rhythm of interest; alike at neighbouring sites.", "background activity"),
        new("band", "f₁, f₂", "Hz", "The frequencies a design is for, from its lower to its upper edge."),
        new("bias current", "I_b", "A",
            "The steady current into an amplifier's input; it drops a dc voltage across every resistance it flows through."),
        new("bipolar channel", "", "", "The difference of two recorded sites; the common reference drops out.", "bipolar"),
        new("body capacitance", "C_b", "F", "Capacitance from the wearer to earth; hundreds of picofarads.", "body-to-earth"),
        new("buffer", "", "", "A follower of gain 1, at an electrode or between stages; it draws almost no current from what drives it.",
            "follower"),
        new("Butterworth", "", "", "The filter with the flattest possible pass band; as a low-pass |H|² = 1/(1 + (f/f_c)^2n)."),
        new("clipping", "", "", "When an output can go no further because it has reached the rail; what is recorded then means nothing.",
            "clip"),
        new("CMOS input", "", "", "Draws almost no input current, so high impedances cause little offset and current noise.", "CMOS"),
        new("common mode", "V_cm", "V", "What both inputs share: their mean, relative to the amplifier's common.",
            "common-mode voltage"),
        new("common-mode rejection", "CMRR", "dB",
            "Gain for the difference over gain for the common mode. For the whole system, the electrodes' imbalance counts too.", "cmrr",
        "rejection"),
        new("contact check", "", "", "A small known current through two electrodes; the resulting voltage over the current is the sum of their impedances."),
        new("contact over time", "", "", "How an electrode's impedance and excess noise change after it is put on: a dry one settles, gel soaks in and later dries.", "contact settles", "drying"),
        new("corner", "f_c", "Hz", "The frequency where a filter's power has halved, −3 dB.", "cutoff", "-3 dB"),
        new("correlation", "ρ", "", "How far two channels move together: 1 entirely, 0 not at all, −1 entirely against each other."),
        new("dc", "", "", "The steady part of a voltage or current; ac is what changes."),
        new("decibel", "dB", "dB", "20·log10 of a ratio of voltages, 10·log10 of a ratio of powers.", "db"),
        new("delta-sigma", "", "",
            "A converter that samples fast and coarsely, then averages; its decimation filter is part of the anti-aliasing.", "modulator",
        "decimator"),
        new("derivation", "", "", "What a channel shows: the voltage of one site against another, or against a mean of several; several channels can be combined into a further one."),
        new("deviation", "", "", "How far the mains frequency is from nominal."),
        new("dipole", "p", "A·m", "A current that leaves at one place and enters at another close by, as in cortex; its moment is current times distance.", "dipole density"),
        new("displacement current", "i", "A",
            "The current through the capacitances between mains, body, leads and earth, 2πf·C·V; C_p to the body, C_lead to a lead."),
        new("dither", "", "", "Noise of about half a step or more ahead of a converter; it makes the rounding error random."),
        new("driven ground", "", "",
            "An electrode through which the amplifier feeds the inverted common mode back to the body, by way of its resistor R_o, so that less of it remains.", "driven right leg", "drl"),
        new("dry electrode", "", "", "An electrode without gel or water; hundreds of kilohms and more, noisy, quick to put on.", "dry"),
        new("dynamic range", "DR", "dB", "The rms of the largest sine over the rms of the noise."),
        new("effective number of bits", "ENOB", "bit",
            "The number of bits of an ideal converter with the same ratio of signal to noise and distortion, (SINAD − 1.76)/6.02.", "enob"),
        new("electrode impedance", "Z_e", "Ω", "R_s in series with R_d and C_d in parallel; falls with frequency.", "impedance"),
        new("electrode offset", "V_off", "V",
            "The dc voltage between two electrodes, of electrochemical origin; designs allow for up to 300 mV.", "half-cell potential",
        "half-cell", "offset"),
        new("excess noise", "K, α", "V²/Hz", "An electrode's noise above its thermal noise, K/f^α: from skin and contact."),
        new("far", "", "", "The reference for a potential when no site is one: the mean over the whole sphere that represents the head.") { IsOrdinary = true },
        new("feedback", "", "", "Part of an output returned to the input; around an op-amp it sets the gain."),
        new("filter", "", "", "Lets some frequencies pass and weakens others.", "filters"),
        new("flicker noise", "f_c", "Hz", "Noise whose power rises as 1/f below its corner.", "1/f noise"),
        new("floating", "", "", "Connected to earth only through a small capacitance."),
        new("full scale", "FS", "V", "The converter's whole range, peak-to-peak."),
        new("gain", "G", "", "Output over input voltage."),
        new("gain-bandwidth product", "GBW", "Hz",
            "The frequency where an op-amp's open-loop gain has fallen to 1; divided by the noise gain it is the stage's corner.", "gbw"),
        new("Gaussian", "", "",
            "Distributed like the sum of many small independent causes: 99.9 % of the time within 3.3 times the rms to each side."),
        new("ground electrode", "Z_g", "Ω",
            "Connects the body to the amplifier's common, or to its driven ground; carries the displacement current.", "ground"),
        new("ground resistor", "R_g", "Ω",
            "The resistor in the ground electrode's lead; limits the current there. For a driven ground it is called R_o."),
        new("group delay", "", "s", "The delay of a narrow group of frequencies, −dφ/dω."),
        new("gyrus", "", "", "A fold of the cortex: on its crown, dipoles point outwards; in the wall of the adjacent sulcus, along the skin.", "sulcus", "gyri"),
        new("harmonic", "h", "", "A whole multiple of the mains frequency.", "harmonics"),
        new("headroom", "", "dB", "The swing available to the rail over the sum of all peaks."),
        new("high-pass", "", "", "Passes what is above its corner; removes drift; a step decays in it over time."),
        new("imbalance", "ΔZ", "Ω", "The difference of two electrodes' impedances; turns common mode into signal.", "mismatch"),
        new("input impedance", "Z_in", "Ω",
            "The load that one input, with its cable and parts, presents to the electrode; mostly the capacitance C_in, with the lead's C_lead."),
        new("input-referred", "RTI", "", "Divided by the gain up to that point: the voltage at the electrodes that would cause the same.", "rti",
            "referred to the input"),
        new("interferer", "", "", "A disturbance other than the mains: muscle, a radio, a switching supply."),
        new("isolation capacitance", "C_iso", "F", "Capacitance from the box to earth; small for a battery device that touches nothing.",
            "amplifier-to-earth"),
        new("kept", "k", "", "Share of the active site's own potential that a pair shows; 1 minus this is what the reference takes away.", "reference takes") { IsOrdinary = true },
        new("landmarks", "", "", "The points from which a head is measured: nasion, the hollow above the nose; inion, the bump at the back; the points in front of both ears.", "nasion", "inion", "preauricular"),
        new("latency", "", "s", "All delays from electrode to reader."),
        new("linear", "", "", "Twice the input gives twice the output, and two inputs together give the sum of their outputs."),
        new("loop gain", "T", "", "The factor by which a signal is multiplied once around a feedback loop; what the loop opposes is divided by 1 + T."),
        new("LSB", "LSB", "V", "One step of a converter, FS/2^N.", "step", "least significant bit"),
        new("mains", "f₀", "Hz", "The electricity supply, 50 or 60 Hz with harmonics; the part that appears in a recording is called hum.", "hum"),
        new("margin", "", "", "How far a figure is on the right side of its limit; for an output, how close to a rail it can get."),
        new("mid-supply", "", "V", "The voltage half-way between the rails that signals swing around: from a divider of two resistors, with a buffer or without.", "mid supply", "mid rail"),
        new("montage", "", "", "Which sites are compared with which."),
        new("multiple feedback", "", "", "A second-order low-pass of one inverting op-amp, three resistors and two capacitors."),
        new("named bands", "", "",
            "delta 0.5 to 4 Hz, theta 4 to 8, alpha 8 to 13, beta 13 to 30, gamma 30 to 80: bands of scalp rhythms; their edges are conventions and can be changed.", "delta",
        "theta", "alpha", "beta", "gamma"),
        new("noise", "σ", "V rms", "Random voltage; independent sources of noise add as squares."),
        new("noise bandwidth", "B", "Hz", "Width of the brick-wall filter that passes as much white noise; 1.57 f_c for one pole."),
        new("noise density", "e, i", "V/√Hz, A/√Hz", "Noise per hertz of bandwidth, one-sided here."),
        new("noise figure", "NF", "dB", "Total noise over the noise that the electrodes make anyway."),
        new("noise gain", "", "",
            "1 + Rf/Rg: what multiplies an op-amp's own noise and sets its bandwidth, whether the stage inverts or not."),
        new("noise-free bits", "", "bit",
            $"Bits that do not flicker with the noise: log2 of the range over {TradeConstants.NoisePeakToPeak}·σ."),
        new("notch", "f₀, Q", "Hz", "Removes one frequency; the width between its −3 dB points is f₀/Q."),
        new("Nyquist frequency", "f_s/2", "Hz", "Half the sampling rate; what lies above it folds.", "half the rate"),
        new("op-amp", "", "", "Operational amplifier: a very high gain that feedback brings down to what is needed.", "op-amps"),
        new("overhead", "", "", "What is sent in addition to the samples: framing, counters.", "framing", "packet"),
        new("oversampling", "OSR", "", "Modulator clocks per output sample.", "osr", "decimation"),
        new("patch of cortex", "A", "m²", "A piece of the brain's surface whose parts all act together; the user's assumption, never derived from a recording.", "patch", "source", "cortex"),
        new("peak-to-peak", "p-p", "V",
            $"From the lowest to the highest point, 2√2·rms of a sine. Gaussian noise has no limit; it leaves a window of {TradeConstants.NoisePeakToPeak}·rms for 0.1 % of the time.", "pp"),
        new("phase margin", "", "°", "180° plus the loop's phase where its gain is 1; below 0° it oscillates."),
        new("phasor", "", "", "A sine's size and angle as one complex number; phasors add with their angles."),
        new("pole", "", "", "A filter of order n has n of them; beyond its frequency, each makes a low-pass fall 20 dB per decade faster."),
        new("preferred values", "E12, E24 …", "", "The values in which parts are made, a fixed number per decade.", "e12", "e24"),
        new("protection resistor", "R_p", "Ω", "A resistor in series with a lead, for safety and against radio."),
        new("quality", "Q", "", "Centre frequency over width of a resonance or notch.", "q"),
        new("quantisation", "q", "V rms", "Rounding to steps; LSB/√12 rms if other noise dithers it."),
        new("rail", "", "V", "The supply's highest or lowest voltage; an output can approach it to within its margin."),
        new("reference electrode", "", "",
            "The electrode all channels are measured against; its potential v_r and its noise appear in every channel.", "reference"),
        new("referential channel", "", "", "A site against the reference electrode; noise √2·e for equal electrodes.", "unipolar", "unipolar channel"),
        new("residue", "", "V", "What is left of a disturbance after rejection or filtering."),
        new("resolution", "N", "bit", "The converter's number of bits; 2^N steps."),
        new("ripple", "", "V rms", "Small changes of the supply, for example from radio bursts; also the waves in a filter's pass band."),
        new("rms", "", "V", "Root of the mean of the squares; a sine's peak over √2.", "root mean square"),
        new("Sallen–Key", "", "", "A second-order low-pass of two resistors, two capacitors and an op-amp with unity or low gain."),
        new("sampling rate", "f_s", "Hz", "Samples per second of each channel; sampling is measuring a voltage at regular intervals.", "rate", "sampling"),
        new("section", "", "", "A first- or second-order block of a filter; several in a row make the filter."),
        new("settling", "", "s", "Time after a step until the output is within a stated share of its final value."),
        new("shell", "", "", "A layer of the sphere that represents a head: brain, fluid, skull or scalp, each with its conductivity.", "skull", "scalp", "skull ratio"),
        new("shot noise", "", "A/√Hz", "Noise of a current through a junction, √(2qI)."),
        new("sinc filter", "K", "", "K moving averages over one output period: the decimation filter of many delta-sigma converters."),
        new("single fault", "", "", "The failure of one part in the worst way; safety limits must hold even then."),
        new("skew", "Δt", "s", "Time between the samples of two channels."),
        new("successive approximation", "SAR", "",
            "A converter that samples at one moment and finds the code bit by bit; needs a full anti-alias filter.", "sar"),
        new("supply rejection", "PSRR", "dB", "Ripple on the supply over the part of it that appears at the input.", "psrr"),
        new("sweep", "", "", "One recorded response to a stimulus; many are averaged.", "evoked"),
        new("swing", "", "V", "How far an output can go to either side of mid-supply."),
        new("ten-twenty system", "", "",
            "Sites on the head in steps of 10 and 20 % of measured arcs; odd numbers left, even right, z in the middle. The letters: Fp forehead, F front, C middle, P behind it, O back of the head, T temple, A ear lobe, M bone behind the ear.", "10-20", "sites"),
        new("thermal noise", "√(4kTRB)", "V rms", "The noise of every resistance; for an impedance, its real part counts.", "johnson noise"),
        new("time constant", "τ", "s", "RC; after one time constant a step has decayed to 37 %."),
        new("tolerance", "tol", "%", "How far a part may deviate from its marked value."),
        new("undershoot", "", "", "What a high-pass leaves on the other side after a step."),
        new("unity gain", "f_u", "Hz", "A gain of 1; the frequency at which a loop has it."),
        new("variance", "σ²", "V²", "The square of an rms; variances of independent noises add."),
        new("wet electrode", "", "", "An electrode with gel, paste or salt water; a few kilohms to tens of kilohms.", "paste", "wet"),
        new("white noise", "", "", "The same density at every frequency.", "white"),
        new("yield", "", "%", "The share of many builds, each with its parts drawn within their tolerances, that meets a requirement."),
    ];

    /// <summary>Terms by name, symbol or other name, in any case; empty for none.</summary>
    public static IReadOnlyList<Term> Find(string word)
    {
        string plain = word.Trim();
        Term[] named = [.. All.Where(term => Same(term.Name, plain) || term.Others.Any(other => Same(other, plain)))];
        return named.Length > 0 ? named : [.. All.Where(term => Symbols(term).Any(symbol => Same(symbol, plain)))];
    }

    /// <summary>The terms that texts name, in the glossary's order: whole words, the plural counts.</summary>
    public static IReadOnlyList<Term> UsedIn(IEnumerable<string> texts)
    {
        string all = string.Join('\n', texts);
        return [.. All.Where(term => (!term.IsOrdinary && IsNamed(all, term.Name)) || term.Others.Any(other => IsNamed(all, other)) || Symbols(term)
            .Any(symbol => 1 < symbol.Length && Named(all, symbol, StringComparison.Ordinal)))];
    }

    /// <summary>A term with its symbol and unit: "corner, f_c [Hz]".</summary>
    public static string Head(Term term) =>
        term.Name + (term.Symbol.Length == 0 || Same(term.Symbol, term.Name) ? "" : $", {term.Symbol}")
        + (term.Unit.Length == 0 ? "" : $" [{term.Unit}]");

    private static string[] Symbols(Term term) => term.Symbol.Split(',', StringSplitOptions.TrimEntries);

    // A short form such as q is not the letter Q of something else.
    private static bool IsNamed(string text, string name) =>
        Named(text, name, name.Length <= 3 ? StringComparison.Ordinal : StringComparison.OrdinalIgnoreCase);

    private static bool Named(string text, string name, StringComparison comparison)
    {
        for (int at = text.IndexOf(name, comparison); 0 <= at; at = text.IndexOf(name, at + 1, comparison))
        {
            int behind = at + name.Length;
            behind += behind < text.Length && text[behind] == 's' ? 1 : 0;
            if ((at == 0 || !char.IsLetterOrDigit(text[at - 1])) && (behind == text.Length || !char.IsLetterOrDigit(text[behind])))
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>Terms of which a name or symbol holds the text, in any case: those whose own name begins with it first, then in the order
    /// of the table. All of them for an empty text.</summary>
    public static IReadOnlyList<Term> Search(string text)
    {
        string plain = text.Trim();
        return
        [
            .. All.Where(term => term.Others.Append(term.Name).Append(term.Symbol)
                .Any(name => name.Contains(plain, StringComparison.OrdinalIgnoreCase)))
                .OrderBy(term => !term.Name.StartsWith(plain, StringComparison.OrdinalIgnoreCase)),
        ];
    }

    /// <summary>Terms that were probably meant: the misspelt one, then those that share a word.</summary>
    public static IReadOnlyList<string> NearestTo(string word)
    {
        string[] names = [.. All.SelectMany(term => term.Others.Prepend(term.Name))];
        List<string> nearest = Nearest.Of(word, names) is { } first ? [first] : [];
        string[] parts = [.. word.Split([' ', '-'], StringSplitOptions.RemoveEmptyEntries).Where(part => part.Length > 2)];
        nearest.AddRange(names.Where(name => Array.Exists(parts, part => name.Contains(part, StringComparison.OrdinalIgnoreCase))));
        return [.. nearest.Distinct(StringComparer.Ordinal).Take(5)];
    }

    private static bool Same(string a, string b) => a.Length > 0 && string.Equals(a, b, StringComparison.OrdinalIgnoreCase);
}
