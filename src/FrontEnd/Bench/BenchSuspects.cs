using FrontEnd.Identity;

namespace FrontEnd.Bench;

/// <summary>What may be wrong where one reading of a test does not agree, by what the test exercises.</summary>
internal static class BenchSuspects
{
    /// <summary>How near to a power of ten a ratio must lie to point at the unit, where the test has no narrower range of its own
    /// (chosen: a few per cent).</summary>
    private const double UnitWidth = 0.05;

    private static readonly double[] UnitFactors = [1e-6, 1e-3, 1e3, 1e6];

    /// <summary>Suspects of one reading, most likely first.</summary>
    /// <param name="test">The test; its name says what it exercises.</param>
    /// <param name="value">The reading in the test's SI unit.</param>
    public static IReadOnlyList<Suspect> Of(BenchReading test, double value)
    {
        double expected = Math.Abs(test.Expected!.SiValue), ratio = value / Math.Max(1e-300, expected);
        if (expected == 0)
        {
            // Of nothing there is no multiple.
            string unit = test.Expected.SiUnit;
            return [.. ByTest(test, 0 < value).Select(pair => new Suspect(pair.Kind, pair.Text, $"{QuantityText.Format(value, unit)} where {QuantityText.Format(0, unit)} is expected"))];
        }

        if (test.Name == BenchPulse.Name && value / test.Expected.SiValue < 0)
        {
            return [Turned($"{QuantityText.FormatNumber(value / test.Expected.SiValue)} times the prediction")];
        }

        double width = test is { Least: { } least, Greatest: { } greatest }
            ? Math.Max(UnitWidth, (greatest - least) / 2 / Math.Max(1e-300, expected))
            : UnitWidth;
        string evidence = $"{QuantityText.FormatNumber(ratio)} times the prediction";
        return [.. OfUnit(ratio, width), .. ByTest(test, 1 < ratio).Select(pair => new Suspect(pair.Kind, pair.Text, evidence))];
    }

    /// <summary>What to suspect of a test before it has been made.</summary>
    public static IReadOnlyList<BenchSuspicion> Plan(BenchReading test)
    {
        if (test.Expected is null && test.Step != BenchStep.BeforePower)
        {
            return [];
        }

        string[] above = [.. ByTest(test, above: true).Select(one => one.Text)], below = [.. ByTest(test, above: false).Select(one => one.Text)];
        if (test.Expected is null || above.SequenceEqual(below, StringComparer.Ordinal))
        {
            return [.. above.Select(text => new BenchSuspicion(null, text))];
        }

        // What no reading can do is not worth a suspicion.
        IEnumerable<BenchSuspicion> both = [.. test.Greatest is null ? [] : above.Select(text => new BenchSuspicion(true, text)),
            .. test.Least is null ? [] : below.Select(text => new BenchSuspicion(false, text))];
        return [.. both];
    }

    /// <summary>The polarity as the suspect.</summary>
    public static Suspect Turned(string evidence) => new(SuspectKind.Polarity,
        "the polarity: the two inputs are swapped, or the sign of the samples is inverted", evidence);

    /// <summary>The unit as the suspect where a reading is a thousand or a million times off and would agree otherwise.</summary>
    public static IEnumerable<Suspect> OfUnit(double ratio, double width) => UnitFactors
        .Where(factor => Math.Abs((ratio / factor) - 1) <= width)
        .Select(factor => new Suspect(
            SuspectKind.Unit, "the unit of the reading or of the samples (V, mV, µV or nV): the figure itself agrees",
            $"the reading is {(1 < factor ? QuantityText.FormatNumber(factor) + " times" : $"1/{QuantityText.FormatNumber(1 / factor)} of")} what is predicted, within {QuantityText.FormatPercent(Ratio.FromFraction(width), 2)}"));

    private static (SuspectKind Kind, string Text)[] ByTest(BenchReading test, bool above)
    {
        bool Is(string family) => test.Name.StartsWith(family, StringComparison.Ordinal);
        if (test.Kind == ReadingKind.Noise)
        {
            return above
                ? [
                    (SuspectKind.MainsPickup,
                        "mains pick-up: ground lead off or long, box open; a recording shows whether there is a line"),
                    (SuspectKind.LouderPart,
                        "a part is noisier than its card, or gain or converter reference differ from the design; the calibrated sine shows which"),
                    (SuspectKind.LowFrequency, "mid-rail noise, or a fixture with a bad joint")]
                : [(SuspectKind.TooQuiet,
                    "gain lower than stated, or a filter that the design does not have")];
        }

        if (Is("look") || Is("ohms") || Is("resistor"))
        {
            return Unpowered(test, above);
        }

        if (Is("point"))
        {
            return AtPoint(test, above);
        }

        if (Is("hum"))
        {
            return [
                (SuspectKind.MainsPickup,
                    "leads apart instead of twisted, something plugged in nearby, box or screens not joined to common"),
                (SuspectKind.LouderPart, "an input that is open: a lead or connector without contact picks up far more")];
        }

        if (Is(BenchPulse.Name))
        {
            return [(SuspectKind.Polarity, "the two inputs swapped, or the sign of the samples inverted")];
        }

        if (Is("dc-"))
        {
            return Direct(Is("dc-forced") || Is("dc-drive"), above);
        }

        if (Is("supply"))
        {
            return [
                (SuspectKind.LouderPart,
                    above
                        ? "a short, an oscillation, a converter at another rate"
                        : "a channel or the converter still asleep"),
                (SuspectKind.Fixture, "the meter's range, or another load on the supply")];
        }

        if (Is("corner"))
        {
            return [(SuspectKind.Aliasing, "a resistor or capacitor of the path off its value: the filter's sections, the coupling, an op-amp with less bandwidth")];
        }

        if (Is("alias"))
        {
            // One that reads low says nothing about the gain, which the calibrated sine measures by itself.
            return above
                ? [(SuspectKind.Aliasing,
                    "the anti-alias filter attenuates less than designed: a capacitor of the wrong value, a section left out, the converter's own filter set wider")]
                : [
                    (SuspectKind.Aliasing,
                        "the anti-alias filter attenuates more than designed: a capacitor above its value, the converter's own filter set narrower"),
                    (SuspectKind.Fixture,
                        "the generator's frequency or level: the line lands elsewhere in the spectrum, or is smaller than set")];
        }

        if (Is("ring"))
        {
            return [
                (SuspectKind.DigitalFilter,
                    "the digital filter's coefficients: for another width or centre, or rounded to fewer bits than the design states"),
                (SuspectKind.DigitalFilter,
                    "the filter runs at a sampling rate other than the one its coefficients were designed for")];
        }

        if (Is("drift"))
        {
            return [
                (SuspectKind.LowFrequency, "temperature: draughts, a board that is still warming up, parts next to a heat source"),
                (SuspectKind.Fixture, "the fixture's contacts: a joint or clip of unlike metals, a connector that moves"),
                (SuspectKind.InputLoad,
                    "leakage current at the inputs, which the fixture's resistance turns into volts: flux, moisture, a protection part"),
                (SuspectKind.LouderPart, "flicker of amplifier, mid-rail or converter reference above its card")];
        }

        if (Is("impedance"))
        {
            return above
                ? [(SuspectKind.Fixture, "the series part is bridged or smaller than stated, or the level was not set without it")]
                : [
                    (SuspectKind.InputLoad,
                        "leakage at the input: a protection part, the bias resistor below its value, flux or moisture on the board"),
                    (SuspectKind.InputLoad,
                        "input capacitance above the design: cable and its screen, protection parts, shunt capacitor, long traces"),
                    (SuspectKind.Fixture, "the series part above its value, or its own leads' capacitance to ground")];
        }

        if (Is("rejection"))
        {
            return [(SuspectKind.MainsPickup,
                "unequal strays of box, cable and input: bring the leads together and screen the node; then a shunt capacitor or protection resistor out of tolerance")];
        }

        if (Is("crosstalk"))
        {
            return [
                (SuspectKind.InputLoad,
                    "wires of two channels run side by side, or a reference lead with more resistance than its fixture"),
                (SuspectKind.Clipping, "a multiplexed converter that has not settled from the channel before")];
        }

        if (Is("sine-"))
        {
            string which = Is("sine-low")
                ? "coupling capacitor and its resistor, digital high-pass"
                : "anti-alias filter, converter's own filter, digital low-pass";
            return [(above
                ? SuspectKind.LouderPart
                : SuspectKind.TooQuiet,
                    $"{which}; all off alike: the gain")];
        }

        if (Is("offset") || Is("largest"))
        {
            return [(SuspectKind.Clipping, "supply or mid-rail below the design, or a gain above it")];
        }

        if (Is("step"))
        {
            return [(SuspectKind.Clipping, above
                ? "coupling capacitor or its resistor above its value, or an amplifier that recovers slowly after clipping"
                : "coupling capacitor or its resistor below its value")];
        }

        return above
            ? [(SuspectKind.LouderPart, "gain resistors, converter reference, a loaded input")]
            : [(SuspectKind.TooQuiet, "gain resistors, converter reference, a loaded input")];
    }

    private static (SuspectKind Kind, string Text)[] Unpowered(BenchReading test, bool above)
    {
        if (test.Expected is null)
        {
            return [(SuspectKind.Fixture, "a part fitted the wrong way round: do not power up until it is turned")];
        }

        if (test.Name == BenchInspection.SupplyName)
        {
            return [(SuspectKind.InputLoad, "a solder bridge, a chip or capacitor the wrong way round; do not power up until it is found")];
        }

        return above
            ? [
                (SuspectKind.InputLoad, "an open joint, or another value: read its marking"),
                (SuspectKind.Fixture, "flux or fingers at the probes, a lead that is not plugged in")]
            : [
                (SuspectKind.InputLoad, "a smaller value, solder or flux across it, a damaged input: do not wear until it is found"),
                (SuspectKind.Fixture, "the meter's zero")];
    }

    private static (SuspectKind Kind, string Text)[] AtPoint(BenchReading test, bool above)
    {
        if (test.Name == BenchRest.SupplyName)
        {
            return above
                ? [(SuspectKind.LouderPart, "the setting, the regulator's divider")]
                : [(SuspectKind.LouderPart, "the current limit reached, a regulator without its capacitor, a tripped battery protection")];
        }

        if (test.Name == BenchRest.MidName)
        {
            return [(SuspectKind.LouderPart, "divider resistors unequal, its capacitor leaking, follower loaded or oscillating")];
        }

        return test.Node == NodeId.Drive
            ? [(SuspectKind.Clipping, "at a rail: the ground lead is off, or the loop is inverted")]
            : [
                (SuspectKind.Clipping, "at a rail: an input floats, feedback open, output shorted; a few times off: leakage, a gain resistor, another op-amp than stated")];
    }

    private static (SuspectKind Kind, string Text)[] Direct(bool isForced, bool above) => (isForced, above) switch
    {
        (true, true) => [(SuspectKind.InputLoad, "the lead's resistor is below its value, bridged or shorted: the device must not be worn")],
        (true, false) => [
            (SuspectKind.Fixture, "the meter's range, a supply below its highest, or a fault that was not forced"),
            (SuspectKind.InputLoad, "the lead's resistor above its value")],
        (false, _) => [
            (SuspectKind.InputLoad,
                "a leak or a damaged input: flux, moisture, a shorted protection part, a dead input stage; do not wear the device until it is found"),
            (SuspectKind.Fixture, "the meter's zero, or a lead that is still connected elsewhere")],
    };
}
