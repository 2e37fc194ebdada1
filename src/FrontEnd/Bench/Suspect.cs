namespace FrontEnd.Bench;

/// <summary>What may be wrong with a board, most likely first.</summary>
/// <param name="Kind">Which.</param>
/// <param name="Text">What it is and what to try.</param>
/// <param name="Evidence">The figure that points to it.</param>
internal sealed record Suspect(SuspectKind Kind, string Text, string Evidence);

/// <summary>Kinds of faults that a recording on a fixture can point to.</summary>
internal enum SuspectKind
{
    /// <summary>The mains itself and its odd harmonics below half the rate: ground lead, screen, cable.</summary>
    MainsPickup,

    /// <summary>A harmonic from above half the rate.</summary>
    Aliasing,

    /// <summary>A line that no mains harmonic explains: radio bursts, supply ripple, a clock.</summary>
    OtherLine,

    /// <summary>Every frequency is up alike: gain, reference voltage or the part that makes most of the noise.</summary>
    LouderPart,

    /// <summary>More at low frequencies: flicker, mid-rail, contact, temperature.</summary>
    LowFrequency,

    /// <summary>More at high frequencies: converter, folding, radio.</summary>
    HighFrequency,

    /// <summary>Every frequency is down: gain, a filter that is on, a channel that is not connected.</summary>
    TooQuiet,

    /// <summary>Nothing moves.</summary>
    DeadChannel,

    /// <summary>The samples stay at their extremes.</summary>
    Clipping,

    /// <summary>The unit of the reading, or of the recording's samples.</summary>
    Unit,

    /// <summary>Coefficients of a digital filter, or the rate at which it runs.</summary>
    DigitalFilter,

    /// <summary>What loads an input: leakage, capacitance, protection, bias resistor.</summary>
    InputLoad,

    /// <summary>The two inputs are swapped, or the samples' sign is turned.</summary>
    Polarity,

    /// <summary>The fixture or the generator, not the board.</summary>
    Fixture,
}
