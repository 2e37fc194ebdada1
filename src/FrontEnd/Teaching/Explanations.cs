using FrontEnd.Identity;
using FrontEnd.Quantities;

namespace FrontEnd.Teaching;

/// <summary>A short reason for every result: one table for every view.</summary>
public static class Explanations
{
    private const string Linear = "Everything up to the converter is linear and clips nowhere.";
    private const string Gaussian = "The noises are Gaussian, steady and independent of each other.";
    private const string WorstCase = "Mismatch and tolerances have the signs that make the sum largest, and all parts add in phase.";
    private const string BuiltParts = "Parts have the values that are fitted, op-amps their real gain and bandwidth.";

    // The first pattern that fits counts, so the narrower ones stand first.
    private static readonly Explanation[] Table =
    [
        new(ResultIds.Gain.Mid, "The signal is divided a little between electrode and input, then multiplied by every stage, and weighed by the converter's own response. The figure is taken at the geometric centre of the band, where couplings and low-passes act least. Everything that is known at the converter is divided by it to be compared with what is at the electrodes.", Linear, new("op-amps-for-everyone", "ch. 16")),
        new(ResultIds.Gain.MidFrequency, "Bands span decades, so their middle is where both edges are the same factor away: the root of the product of the edges.", "None.", new("op-amps-for-everyone", "ch. 16")),
        new(ResultIds.Gain.TotalAnalog, "The product of what all analogue blocks do to the signal up to the converter's pin, without the converter's own response.", Linear + " " + BuiltParts, new("op-amps-for-everyone", "ch. 16")),

        new(ResultIds.Noise.Total, "Electrodes, resistors and amplifiers each make a noise that has nothing to do with the others, so their variances add: the total is the root of the sum of squares, and the largest one nearly decides it. What lies above half the sampling rate folds down into the band and counts too. It is divided by the gain to be compared with the signal.", Gaussian, new("op-amps-for-everyone", "ch. 10")),
        new(ResultIds.Noise.PeakToPeak, "A trace of Gaussian noise has no greatest value; it stays within 3.3 times its rms to each side for 99.9 % of the time. That width is what the eye takes for the thickness of the trace.", Gaussian, new("baker-2008")),
        new(ResultIds.Noise.BoardShare, "The skin's own excess noise is taken out, so that what is left is what better parts could change.", Gaussian, new("op-amps-for-everyone", "ch. 10")),
        new(ResultIds.Noise.Shorted, "With every electrode replaced by a wire only the board makes noise. This is what a bench test with shorted inputs should read.", Gaussian, new("op-amps-for-everyone", "ch. 10")),
        new(ResultIds.Noise.ThermalFloor, "Any resistance above absolute zero makes noise in proportion to the root of resistance, temperature and bandwidth. For an electrode only the real part of its impedance counts, so a capacitor across the contact lowers it. No amplifier can go below this.", "Skin and electrode at the stated temperature.", new("op-amps-for-everyone", "sec. 10.3.2")),
        new(ResultIds.Noise.OverThermalFloor, "How many decibels the whole chain lies above the electrodes' thermal noise: what is lost to skin, board and converter together.", Gaussian, new("op-amps-for-everyone", "ch. 10")),
        new(ResultIds.Noise.Electrodes, "Thermal noise and, on skin, a larger one that rises towards low frequencies. With dry electrodes it is often above everything the board makes: then contact and pressure help and a better amplifier does not.", "The excess noise follows the stated power of the frequency.", new("huigen-2002")),
        new(ResultIds.Noise.Figure, "What the design adds to what the skin gives anyway. Near 0 dB the board is good enough; further money belongs to the contact.", Gaussian, new("op-amps-for-everyone", "ch. 10")),
        new(ResultIds.Noise.Source(SourceId.ActiveElectrode), "Thermal noise of the active electrode's real part and its excess noise, carried to the input. Lower impedance, larger area and better contact lower it.", "Skin at the stated temperature.", new("huigen-2002")),
        new(ResultIds.Noise.Source(SourceId.ReferenceElectrode), "The reference electrode's noise. It stands in every channel, since every channel is measured against it.", "Skin at the stated temperature.", new("huigen-2002")),
        new(ResultIds.Noise.Source(SourceId.GroundElectrode), "The ground electrode's noise moves body and amplifier together, so only what the imbalance turns into a difference is left.", "Skin at the stated temperature.", new("op-amps-for-everyone", "ch. 10")),
        new(ResultIds.Noise.Source(SourceId.ProtectionResistors), "Both protection resistors stand in series with the signal and make thermal noise. They are there for safety and against radio; larger ones protect more and make more noise.", "Resistors at board temperature, without excess noise of their own.", new("op-amps-for-everyone", "sec. 10.3.2")),
        new(ResultIds.Noise.Source(SourceId.BiasResistors), "A bias resistor's noise current flows into the electrode beside it; the larger the resistor, the smaller that noise.", "Resistors at board temperature.", new("op-amps-for-everyone", "sec. 10.3.2")),
        new(ResultIds.Noise.Source(SourceId.GroundResistor), "The resistor in the ground lead moves the common mode; only the imbalance makes a difference of it.", "Resistors at board temperature.", new("op-amps-for-everyone", "ch. 10")),
        new(ResultIds.Noise.AnyCurrent, "The input currents fluctuate and make a voltage in every impedance they flow through, so this grows with the source's impedance. CMOS inputs have next to none, bipolar ones are for wet electrodes.", "Both inputs' currents are independent.", new("franco-op-amps", "Example 7.1, p. 317")),
        new(ResultIds.Noise.AnyVoltage, "The amplifier's own voltage noise, white from its flicker corner upwards and larger below. Behind a stage with gain it counts less, by that gain.", "Flicker falls as 1/f in power.", new("franco-op-amps", "Example 7.1, p. 317")),
        new(ResultIds.Noise.AnyResistors, "The stage's resistors make thermal noise. Smaller resistors make less and load the op-amp more; ahead of it stands the gain that divides them.", "Resistors at board temperature.", new("op-amps-for-everyone", "sec. 10.3.2")),
        new(ResultIds.Noise.Source(SourceId.Quantisation), "Rounding to steps is an error spread evenly over one step: its rms is the step over √12, spread over 0 to half the rate. Gain in front of the converter makes it smaller at the input.", "About half a step of other noise is there to dither it.", new("quantisation-mt-001")),
        new(ResultIds.Noise.Source(SourceId.Converter), "The converter's own noise, divided by the gain in front of it. With the low gain that electrode offsets allow, it often matters more than the number of bits.", "White over 0 to half the rate.", new("op-amps-for-everyone", "ch. 10")),
        new(ResultIds.Noise.Source(SourceId.Folded), "Sampling cannot tell f from fs − f. What the anti-alias filter leaves above half the rate therefore lands in the band.", "The zones beyond the eighth are taken together.", new("folding-tutorials")),
        new(ResultIds.Noise.Sources, "One part of the noise, carried to the input and integrated over the band. Its share of the variance says how much the total could fall without it.", Gaussian, new("op-amps-for-everyone", "ch. 10")),
        new(ResultIds.Noise.Bands, "The same noise within one of the named bands, and how the smallest signal compares with it. Band edges are conventions and can be changed.", Gaussian, new("op-amps-for-everyone", "ch. 10")),

        new(ResultIds.Converter.Lsb, "One step of the converter, divided by the gain: the smallest change at the electrodes that moves the code by one.", "Ideal steps.", new("common-practice")),
        new(ResultIds.Converter.FullScale, "The converter's range divided by the gain: what can stand at the electrodes, offset included where the path passes dc.", "None.", new("quantisation-mt-001")),
        new(ResultIds.Converter.DynamicRange, "The rms of the largest sine over the rms of the noise, in decibels. A sine that fills the range has an rms of its peak-to-peak over 2√2.", Gaussian, new("common-practice")),
        new(ResultIds.Converter.Enob.AndMore, "The bits an ideal converter would need for that dynamic range: 6.02 dB a bit, after 1.76 dB for the sine. With the electrodes in it is a figure of the whole chain, with shorted inputs one of the board.", Gaussian, new("quantisation-mt-001")),
        new(ResultIds.Converter.NoiseFreeBits, $"Bits that do not flicker with the noise: the range over the noise's peak-to-peak. It is log2({TradeConstants.NoisePeakToPeak}), 2.7 bits, below what the rms noise would give.", Gaussian, new("delta-sigma-sbas350g", "Tables 7-1 and 7-2, their definitions")),
        new(ResultIds.Converter.BitsNeeded, "The least resolution whose rounding adds little to the noise that is there anyway. More bits only resolve noise more finely.", "The quantisation error is white.", new("quantisation-mt-001")),

        new(ResultIds.Mains.BodyCommonMode, "The body is a plate of a capacitor to the mains wiring. The current through it must return through the ground electrode, and the voltage it makes there stands between body and amplifier. A floating box lets little current return.", "Cables and body are small capacitances; the box is where the design says.", new("metting-van-rijn-1990", "sec. 2.1")),
        new(ResultIds.Mains.Divider, "Each electrode with its input's impedance is a voltage divider. Unequal electrodes divide the same common mode unequally, and the difference looks like signal. No amplifier can remove it; input impedance and equal contact can.", WorstCase, new("haberman-spinelli-2010", "Eq. 1")),
        new(ResultIds.Mains.Leads, "Each lead picks up a displacement current of its own, which flows through its electrode. Unequal electrodes make unequal voltages of it. Shields, short leads and buffers at the electrode help.", WorstCase, new("huhta-webster-1973")),
        new(ResultIds.Mains.Imbalance, "Divider and leads together as the network has them, with their phases.", WorstCase, new("metting-van-rijn-1990")),
        new(ResultIds.Mains.Amplifier, "The amplifier answers a little to the mean of its inputs; its rejection falls with frequency from its corner on.", WorstCase, new("common-practice")),
        new(ResultIds.Mains.Loop, "A changing magnetic field induces a voltage around the area between the leads. Twisting the leads makes the area small; no rejection acts on it, for it is a true difference.", "The field is square to the loop and even over it.", new("metting-van-rijn-1990")),
        new(ResultIds.Mains.Total, "What of the mains looks like signal at the electrodes: imbalance, amplifier and loop, added as if all were in phase.", WorstCase, new("metting-van-rijn-1990")),
        new(ResultIds.Mains.Rss, "The same parts added as squares: what is likely where their phases are unrelated.", "Phases are unrelated.", new("metting-van-rijn-1990")),
        new(ResultIds.Mains.SystemCmrr, "Common mode over what of it becomes signal, the electrodes included. It is mostly set by the electrodes' imbalance and the input's capacitance, not by the amplifier's data sheet.", WorstCase, new("metting-van-rijn-1990")),
        new(ResultIds.Mains.CmrrNeeded, "The common mode over what may be left of it. Where leads and loop alone leave more, no rejection is enough.", "The residue that is asked for is the smallest signal unless set.", new("metting-van-rijn-1990")),
        new(ResultIds.Mains.Signs, "Mismatch and tolerances may go either way. All eight cases are worked out and the one with the most mains is kept.", "Each tolerance is at one of its ends.", new("metting-van-rijn-1990")),
        new(ResultIds.Mains.Recorded, "What of all mains harmonics ends in the band after filters, sampling and digital filters. A harmonic above half the rate can land in the middle of the band.", WorstCase + " The mains is off by its stated deviation, so a notch's exact null promises nothing.", new("metting-van-rijn-1990")),
        new(ResultIds.Mains.RecordedEverywhere, "The same over the whole record, in the band or not. It can hide a small signal on the screen although the band itself is clean.", WorstCase, new("metting-van-rijn-1990")),
        new(ResultIds.Mains.AnyHarmonic.LandsAt, "Sampling keeps only the distance to the nearest multiple of the rate.", "The rate is exact.", new("common-practice")),
        new(ResultIds.Mains.Harmonics, "Displacement current grows with frequency, and so does what the divider makes of it: a harmonic of one per cent in the wall is more at the input.", WorstCase, new("en-50160")),

        new(ResultIds.Drive.UnityGainFrequency, "The driven ground is a loop: what the inputs have in common is amplified, inverted and given back to the body. This is the highest frequency where it still has a gain of 1.", Linear, new("winter-webster-1983")),
        new(ResultIds.Drive.PhaseMargin, "How many degrees are left before the loop gives back what goes in with the same sign, where its gain is 1. Body and electrode capacitances each turn the phase; below 0° it oscillates.", Linear, new("winter-webster-1983")),
        new(ResultIds.Drive.WorstPhaseMargin, "The phase margin over bodies and electrodes of all sizes, on battery and with the box earthed: a loop must hold on every wearer and with a bad contact.", "100 pF to 1 nF from body to earth, 1 kΩ to 1 MΩ for the electrodes.", new("winter-webster-1983")),
        new(ResultIds.Drive.GainAtMains, "The common mode at the mains is divided by about this.", Linear, new("winter-webster-1983")),
        new(ResultIds.Drive.SwingNeeded, "The driven output must carry the body's current through its own resistor and electrode. If it reaches its rail the loop is open and the common mode returns at full size.", "All harmonics peak together.", new("winter-webster-1983")),

        new(ResultIds.Levels.FirstGainLimit, "The first stage amplifies the electrodes' offset too. Half the supply less the output's margin, over offset and signal, is the most gain it can have.", "The reference sits at mid-supply; the battery is at its lowest.", new("in-amp-mt-061")),
        new(ResultIds.Levels.FirstToClip, "The node where dc, signal, mains and noise come nearest to the rail.", "All peaks meet.", new("in-amp-mt-061")),
        new(ResultIds.Levels.OffsetSurvived, "How large the electrodes' offset may become before anything clips. A clipped stage records nothing, however good the rest is.", "All other peaks are there at the same time; battery at its lowest.", new("in-amp-mt-061")),
        new(ResultIds.Levels.LargestSignal, "How large the signal may become before anything clips, with the offset there.", "All other peaks are there at the same time; battery at its lowest.", new("in-amp-mt-061")),
        new(ResultIds.Levels.Recovery, "After a jump of the offset what is left of it decays in the ac coupling and the high-pass filters. Lower corners take longer; several in a row undershoot.", "No stage clips during the jump.", new("common-practice")),
        new(ResultIds.Levels.AnyHeadroom, "The room to the rail over the sum of all peaks at this node, in decibels.", "All peaks meet; battery at its lowest.", new("in-amp-mt-061")),

        new(ResultIds.Alias.FoldFrequency, "The lowest frequency above the band that sampling puts into it: the rate less the band's high edge, not half the rate.", "The rate is exact.", new("common-practice")),
        new(ResultIds.Alias.FoldAttenuation, "How much path and converter weaken that frequency beside the middle of the band. Order, corner and rate of the anti-alias filter set it.", BuiltParts, new("folding-tutorials")),
        new(ResultIds.Alias.AnyModulatorFold, "A delta-sigma converter samples at its modulator's clock. Around that clock its own decimator does not help, so the analogue filter alone must.", BuiltParts, new("folding-tutorials")),
        new(ResultIds.Alias.Any.LandsAt, "Sampling keeps only the distance to the nearest multiple of the rate.", "The rate is exact.", new("common-practice")),
        new(ResultIds.Alias.Any.Attenuation, "What path and converter leave of it before it folds.", BuiltParts, new("folding-tutorials")),
        new(ResultIds.Alias.Any.InBand, "A wide interferer is followed piece by piece through filter and folding; what lands in the band counts.", "It is spread evenly over its range.", new("folding-tutorials")),
        new(ResultIds.Alias.All, "Its size at the input times what path and converter leave of it, referred to the electrodes.", BuiltParts, new("folding-tutorials")),

        new(ResultIds.Filter.Any.MinusThree.AndMore, "Where the block's power has fallen to half of that in the middle of the band.", BuiltParts, new("op-amps-for-everyone", "ch. 16")),
        new(ResultIds.Filter.Any.StopBandTurn, "Above the op-amp's bandwidth its output no longer obeys, and the input gets through the section's own parts to an output that only its resistance holds: the stop band turns up again.", BuiltParts, new("sallen-key-sloa024")),
        new(ResultIds.Filter.Any.StopBandFloor, "What is left of the stop band above the turn. A multiple-feedback section, larger resistors or a plain RC behind it lower it.", BuiltParts, new("sallen-key-sloa024")),
        new(ResultIds.Filter.Any.NotchDepth.AndMore, "How much an analogue notch takes off the mains. Its parts do not match, and the mains is never exactly where it was tuned to: a narrow notch is deep only there.", BuiltParts, new("op-amps-for-everyone", "ch. 16")),
        new(ResultIds.Filter.Any.Settling, "How long the block needs after a step until it is within one part in a thousand. Narrow and steep filters take longer.", Linear, new("op-amps-for-everyone", "ch. 16")),
        new(ResultIds.Filter.Any.GroupDelay, "How late the block passes a narrow group of frequencies around the middle of the band.", Linear, new("op-amps-for-everyone", "ch. 16")),
        new(ResultIds.Digital.Any.RingTime, "A narrow filter has poles close to the unit circle and goes on swinging after a blink; the narrower, the longer. What it leaves looks like data.", "Numbers without rounding.", new("orfanidis-1996", "Eqs. 8.2.22 and 8.2.23")),
        new(ResultIds.Digital.Any.NotchDepth, "The mains is never exactly at the notch. Beside its centre a narrow notch removes little.", "The mains is off by its stated deviation.", new("orfanidis-1996", "Eqs. 8.2.22 and 8.2.23")),
        new(ResultIds.Digital.All, "How late the digital filter passes the middle of the band, or what else it does there.", "Numbers without rounding.", new("orfanidis-1996", "Eqs. 8.2.22 and 8.2.23")),
        new(ResultIds.Latency.Total, "All delays between electrode and reader: analogue filters, the converter's averaging, digital filters and packets. Feedback to the wearer must live with it.", "The time of the computer and the screen is not in it.", new("oppenheim-schafer")),
        new(ResultIds.Skew.Leak, "Channels that are sampled one after another and subtracted later see a common voltage at two moments; what it has changed meanwhile stays.", "The signal is the mains.", new("derived")),

        new(ResultIds.Input.BiasOffset, "The inputs draw a steady current through electrodes and resistors; unequal resistances make a dc difference of it, which drifts with the contact.", "Both inputs draw the stated current.", new("in-amp-mt-061")),
        new(ResultIds.Input.ImpedanceAtMains, "Everything from one input to common at the mains frequency: amplifier, cable, protection, bias resistor. Capacitances dominate; ten picofarads are 318 MΩ at 50 Hz.", BuiltParts, new("metting-van-rijn-1990")),
        new(ResultIds.Montage.Correlation, "Channels that share a reference share its noise, so they move together although the sites do not.", Gaussian, new("derived")),
        new(ResultIds.Montage.Any.SharedReference, "What the reference electrode and its input put into this channel. A bad reference puts the same noise into every channel.", Gaussian, new("derived")),
        new(ResultIds.Montage.All, "A derived channel is a sum of recorded ones with weights; its noise is the root of the sum of the squared weights times that of one site.", Gaussian, new("derived")),
        new(ResultIds.Open.All, "With one electrode off, its lead floats to where bias currents and mains take it: what then clips, and whether it can be seen that it is off.", "The other electrodes stay.", new("in-amp-mt-061")),
        new(ResultIds.Contact.All, "A small known current flows in at one electrode and out at another; the voltage it makes is the sum of both impedances.", "The current is small beside the safety limits, and counted there.", new("luck-2005")),

        new(ResultIds.Safety.SeriesResistanceNeeded, "The highest voltage anywhere in the box over the quoted limit, with the resistor at its lower tolerance. Rounding is upwards.", "Electrode, skin and body count as 0 Ω. A design aid, no safety assessment.", new("iec-60601-1", "limits; the quotient is Ohm's law")),
        new(ResultIds.Safety.DrivenGroundCurrent, "The amplifier at its rail is normal operation for a driven ground: a lead that falls off drives it there. So the lower limit applies.", "Electrode, skin and body count as 0 Ω. A design aid, no safety assessment.", new("iec-60601-1", "limits; the quotient is Ohm's law")),
        new(ResultIds.Safety.SumOfLeads, "One fault can reach several leads at once, and their currents add in the wearer.", "All leads are at the highest voltage. A design aid, no safety assessment.", new("iec-60601-1", "limits; the quotient is Ohm's law")),
        new(ResultIds.Safety.All, "One part fails and the highest voltage of the box, charger and boost converter included, stands on a lead. Only the resistors fitted in that lead limit the current.", "Electrode, skin and body count as 0 Ω. A design aid, no safety assessment; the dc limits are quoted from memory.", new("iec-60601-1", "limits; the quotient is Ohm's law")),

        new(ResultIds.Supply.RippleResidue, "Ripple on the supply appears at the input, divided by the supply rejection at its frequency. Radio bursts come at ten to a hundred hertz, in the middle of the band.", "The rejection is that at the ripple's frequency.", new("common-practice")),
        new(ResultIds.Supply.ReferenceNoise, "The converter compares with its reference, so the reference's noise multiplies whatever dc stands at the converter.", Gaussian, new("derived")),
        new(ResultIds.Supply.MidRailNoise, "The mid-rail is common to both inputs; its noise is rejected like any common mode.", Gaussian, new("derived")),
        new(ResultIds.Power.SupplyCurrent, "The sum of what all parts draw from the battery; the radio and the processor are usually most of it.", "Typical currents; radio bursts are in the stated average.", new("derived")),
        new(ResultIds.Power.BatteryLife, "The usable part of the charge over the current. Cold, age and bursts take more.", "The usable share is as stated.", new("common-practice")),
        new(ResultIds.Data.BitRate, "Channels times samples a second times bits, with framing and counters.", "Nothing is compressed.", new("derived")),
    ];

    public static IReadOnlyList<Explanation> All => Table;

    /// <summary>The explanation of a result; null for an id that no pattern fits.</summary>
    public static Explanation? Of(ResultId resultId) => Array.Find(Table, explanation => explanation.Pattern.Fits(resultId));
}
