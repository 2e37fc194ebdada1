using FrontEnd.Identity;
using FrontEnd.Results;

namespace FrontEnd.Teaching;

/// <summary>The lessons there are, in the order of the signal's path. Their designs stand in files of the same names.</summary>
internal static class Lessons
{
    /// <summary>What a driven ground is expected to leave of the body's common mode at most.</summary>
    private const double Held = 0.2;

    /// <summary>The mains harmonic that is sampled too seldom: at 60 Hz the third is 180 Hz.</summary>
    private const int Folding = 3;

    /// <summary>Names in the files that results carry.</summary>
    private const string Channel = "back", Broad = "broad rhythm", Spot = "spot", HighPass = "high-pass";

    public static readonly IReadOnlyList<Lesson> All =
        [ElectrodeNoise(), Imbalance(), DrivenGround(), Offset(), Aliasing(), Quantisation(), Bipolar(), FixedPoint()];

    /// <summary>A lesson by its name; null for none.</summary>
    public static Lesson? Find(string name) => All.FirstOrDefault(lesson => string.Equals(lesson.Name, name.Trim(), StringComparison.OrdinalIgnoreCase));

    private static Lesson ElectrodeNoise() => new("electrode-noise", "electrode noise: what a contact's resistance makes")
    {
        Setting = "A contact on the skin is a resistance, and any resistance makes noise. The two contacts of this exercise are plain resistances, without the further noise that real skin makes.",
        Question = "One of the two contacts, the active one, gets four times the resistance. What does the noise that this electrode makes do?",
        Shown = [DesignKeys.Electrodes.ActiveContactResistance, DesignKeys.Electrodes.ReferenceContactResistance, DesignKeys.Input.SeriesResistor],
        Key = DesignKeys.Electrodes.ActiveContactResistance,
        Value = "400 kΩ",
        Choices =
        [
            new("it stays about the same", "Noise does not need a current through the contact: a resistance makes it by being warm.", outcome => outcome.Asked.Stays),
            new("it gets about twice as large", "Power grows with the resistance, and voltage with the root of power.", outcome => outcome.Asked.IsTimes(1.5, 2.5)),
            new("it gets about four times as large", "That is the power. The voltage is its root.", outcome => outcome.Asked.IsTimes(3.5, 4.5)),
        ],
        Asked = ResultIds.Noise.Source(SourceId.ActiveElectrode),
        Others = [ResultIds.Noise.Source(SourceId.ReferenceElectrode), ResultIds.Noise.Source(SourceId.ProtectionResistors), ResultIds.Noise.Total],
        Reason = ResultIds.Noise.ThermalFloor,
        Why = "A resistance makes noise in proportion to its root: four times the ohms are twice the volts. The contact's capacitance shorts a little of it at the band's upper edge. The total moves by less: noises of different parts add as squares, and the other parts have stayed as they were.",
        NextValue = "25 kΩ",
        Next = "A quarter of the resistance halves this electrode's noise. How much of that arrives in the total?",
    };

    private static Lesson Imbalance() => new("mains-and-imbalance", "mains and imbalance: hum from contacts that are unlike")
    {
        Setting = "Leads pick up the mains, and the current flows through the contacts to the body. The two contacts are nearly alike, and the amplifier rejects what both inputs share very well.",
        Question = "The contacts become ten times as unlike. What does the hum at the electrodes do?",
        Shown = [DesignKeys.Electrodes.Mismatch, DesignKeys.Amplifier.Cmrr, DesignKeys.Mains.LeadToMains],
        Key = DesignKeys.Electrodes.Mismatch,
        Value = "50 %",
        Choices =
        [
            new("it stays about the same: the amplifier rejects it", "The amplifier rejects what both inputs share. What the contacts have made different is signal to it.", outcome => outcome.Asked.Stays),
            new("it grows, but does not double", "Nearly all of this hum comes from the difference, so it follows the difference.", outcome => outcome.Asked.Grows(2)),
            new("it grows several times over", "The same current makes unlike voltages in unlike contacts, and the difference is signal.", outcome => outcome.Asked.IsTimes(2, 20)),
        ],
        Asked = ResultIds.Mains.Total,
        Others = [ResultIds.Mains.Leads, ResultIds.Mains.Divider, ResultIds.Mains.Amplifier, ResultIds.Mains.Loop, ResultIds.Mains.SystemCmrr],
        Reason = ResultIds.Mains.Leads,
        Why = "Each lead carries its own current into its contact. If the contacts were alike, both inputs would move alike and the amplifier would reject it. Their difference turns the shared hum into a signal before any amplifier sees it, so better contacts help and a better amplifier does not.",
        NextValue = "0 %",
        Next = "With contacts exactly alike, which part of the hum is left?",
        HasPicture = true,
    };

    private static Lesson DrivenGround() => new("driven-ground", "driven ground: the body is held, the leads are not")
    {
        Setting = "The third electrode ties the body to the middle of the amplifier's supply through a resistor. What the mains drives through the body flows over it and lifts the body.",
        Question = "The ground electrode is driven: an amplifier gives the body the opposite of what both inputs share, through the same resistor. What does the body's common mode do?",
        Shown = [DesignKeys.GroundDrive.Kind, DesignKeys.GroundDrive.SeriesResistor, DesignKeys.GroundDrive.UnityGainFrequency, DesignKeys.Mains.Frequency],
        Key = DesignKeys.GroundDrive.Kind,
        Value = "driven",
        Choices =
        [
            new("it falls to a fifth or less, and the hum at the electrodes with it", "The body is held, but hum that the leads pick up does not come from the body.", outcome => outcome.Asked.IsTimes(0, Held) && outcome.Of(ResultIds.Mains.Total).IsTimes(0, Held)),
            new("it falls to a fifth or less, the hum at the electrodes by less", "The drive holds the body. What the leads pick up themselves it does not reach.", outcome => outcome.Asked.IsTimes(0, Held) && !outcome.Of(ResultIds.Mains.Total).IsTimes(0, Held)),
            new("it stays about the same: the resistor is still there", "The amplifier pushes through the resistor, and the loop makes it look smaller by its gain.", outcome => outcome.Asked.Stays),
        ],
        Asked = ResultIds.Mains.BodyCommonMode,
        Others =
        [
            ResultIds.Mains.Total, ResultIds.Mains.Divider, ResultIds.Mains.Leads, ResultIds.Mains.SystemCmrr, ResultIds.Drive.GainAtMains,
            ResultIds.Drive.WorstPhaseMargin, ResultIds.Safety.DrivenGroundCurrent,
        ],
        Reason = ResultIds.Drive.GainAtMains,
        Why = "The loop divides the resistance that the body sees by its gain at the mains and 1 more. The hum that came from the body's movement falls as much. The leads carry currents of their own into unlike contacts, and these are as they were. The loop must also stay steady on any body, and its resistor bounds the current if its amplifier fails.",
        NextLesson = "mains-and-imbalance",
        Next = "The leads' part is left. This lesson changes what turns it into a signal.",
    };

    private static Lesson Offset() => new("offset-and-gain", "offset and gain: dc eats the room")
    {
        Setting = "Two electrodes never have the same voltage against the skin. Hundreds of millivolts of dc may stand under signals of microvolts, and an amplifier that lets dc through amplifies both.",
        Question = "The first stage gets four times the gain. What does the largest electrode offset that it survives do?",
        Shown = [DesignKeys.Amplifier.Gain, DesignKeys.Electrodes.Offset, DesignKeys.Signal.Largest, DesignKeys.Supply.Lowest],
        Key = DesignKeys.Amplifier.Gain,
        Value = "14",
        Choices =
        [
            new("it falls to about a quarter", "The swing at the output is what it was, and the offset takes gain times itself of it.", outcome => outcome.Asked.IsTimes(0.2, 0.3)),
            new("it stays: an offset does not move, so it does not count", "A stage that passes dc amplifies the offset like anything else.", outcome => outcome.Asked.Stays),
            new("it gets four times as large: more gain, more room", "Gain makes more of what comes in; the rails stay where they are.", outcome => outcome.Asked.IsTimes(3, 5)),
        ],
        Asked = ResultIds.Levels.OffsetSurvived,
        Others = [ResultIds.Levels.Headroom(NodeId.Amplifier), ResultIds.Levels.FirstGainLimit, ResultIds.Converter.Lsb, ResultIds.Noise.Total],
        Reason = ResultIds.Levels.OffsetSurvived,
        Why = "An output can swing from its middle to near a rail, and offset times gain must fit into that. So the offset bounds the gain, not the signal. More gain makes the converter's steps finer at the electrodes, and where electrodes and resistors make most of the noise that buys nothing.",
        NextValue = "4.2",
        Next = "How close to the greatest gain that the offset allows can one go, and is the headroom then still met?",
    };

    private static Lesson Aliasing() => new("aliasing", "aliasing: what is sampled too seldom comes back lower")
    {
        Setting = "The mains carries harmonics, and the third of them lies well above the band. The converter takes each sample at one instant, and the one resistor and capacitor in front of it attenuate little there.",
        Question = "To save power the rate is lowered, so that half of it lies below that harmonic. What happens to the harmonic in the recording?",
        Shown = [DesignKeys.Band, DesignKeys.Mains.Frequency, DesignKeys.Converter.Rate],
        Key = DesignKeys.Converter.Rate,
        Value = "200 Hz",
        Choices =
        [
            new("it is gone: a recording holds nothing above half its rate", "Nothing above half the rate can be shown, but whatever comes in is sampled, and the samples show it elsewhere.", outcome => outcome.Asked.After is not { State: ResultState.Number }),
            new("it stays where it was", "At fewer samples a second than twice its frequency it cannot be told from a lower one.", outcome => outcome.Asked.Stays),
            new("it comes back at a lower frequency, inside the band", "Its samples are those of a slower wave, and that wave lies where the brain's rhythms do.", outcome => outcome.Asked is { Ratio: < 1, After.LandsInBand: true }),
        ],
        Asked = ResultIds.Mains.Harmonic(Folding).LandsAt,
        Others = [ResultIds.Mains.Harmonic(Folding).Recorded, ResultIds.Mains.Recorded, ResultIds.Alias.Harmonic(Folding).Attenuation, ResultIds.Noise.Source(SourceId.Folded)],
        Reason = ResultIds.Mains.Harmonic(Folding).LandsAt,
        Why = "Samples at a rate cannot tell a frequency from its distance to the nearest multiple of that rate. The harmonic is as large as before, only elsewhere, and once it lies in the band no digital filter can take it out and leave the rhythm. It must be gone before the converter: by a filter in front of it, or by a rate that leaves it outside.",
        NextValue = "250 Hz",
        Next = "Where does the harmonic land at this rate, and is that in the band?",
        HasPicture = true,
    };

    private static Lesson Quantisation() => new("quantisation", "quantisation: when the converter's steps begin to count")
    {
        Setting = "A converter rounds to steps. With many bits the noise of that rounding is far below the noise that is there anyway.",
        Question = "The converter loses six bits, so that its steps become 64 times as large. What does the noise at the electrodes do?",
        Shown = [DesignKeys.Converter.Bits, DesignKeys.Converter.FullScale, DesignKeys.Amplifier.Gain],
        Key = DesignKeys.Converter.Bits,
        Value = "12",
        Choices =
        [
            new("it stays about the same: the noise hides the rounding", "It did before. Now look at the rounding beside it.", outcome => outcome.Asked.Stays),
            new("it grows, but far less than the steps", "The rounding grew as the steps did, from next to nothing, and is added as a square.", outcome => outcome.Asked.Grows(32)),
            new("it grows as much as the steps", "The rounding does. The rest of the noise does not come from the steps, and stays as it was.", outcome => outcome.Asked.IsTimes(32, 128)),
        ],
        Asked = ResultIds.Noise.Total,
        Others = [ResultIds.Noise.Source(SourceId.Quantisation), ResultIds.Noise.Source(SourceId.Converter), ResultIds.Converter.Lsb, ResultIds.Converter.Enob],
        Reason = ResultIds.Noise.Source(SourceId.Quantisation),
        Why = "Rounding errs by up to half a step, evenly, which is a noise of the step over √12, spread over 0 to half the rate. It adds to the other noise as squares: below it, it does not count; above it, it is nearly all. Bits beyond what the noise asks for say nothing, and bits short of it hide the signal; gain in front of the converter makes the steps at the electrodes smaller.",
        NextValue = "15",
        Next = "Three bits fewer: does the noise rise by more than a tenth? And two?",
        HasPicture = true,
    };

    private static Lesson Bipolar() => new("referential-bipolar", "referential against bipolar: what a near reference takes")
    {
        Setting = "A channel is a difference of two sites. At the back of the head, O1 is recorded against an ear, which is far from two made-up sources: a broad one between O1 and its neighbour P3, and a small one under O1 alone.",
        Question = "The reference moves from the ear to the neighbouring site. How much of the broad source does the channel still show?",
        Shown = [DesignKeys.Montage.Reference],
        Key = DesignKeys.Montage.Reference,
        Value = "P3",
        Choices =
        [
            new("about as much: the source has not moved", "The source has not, but the other end of the difference has: it now sees the source as well.", outcome => outcome.Asked.Stays),
            new("less than half", "Both sites see it nearly alike, and what both see alike is gone.", outcome => outcome.Asked.IsTimes(-0.5, 0.5)),
            new("more: two sites near the source see more than one", "They would in a sum. A channel is a difference.", outcome => outcome.Asked.Grows(double.MaxValue)),
        ],
        Asked = ResultIds.See.Of(Broad, Channel).Kept,
        Others = [ResultIds.See.Of(Spot, Channel).Kept, ResultIds.See.Of(Broad, Channel).Seen, ResultIds.See.Of(Spot, Channel).Seen, ResultIds.See.Background(Channel), ResultIds.Mains.Total],
        Reason = ResultIds.See.Of(Broad, Channel).Kept,
        Why = "What the active site and the reference see alike is subtracted away. A near reference takes what is broad, rhythm or background, and leaves what lies under one of its two sites; a far one leaves both and brings in whatever it sees itself. Hum is no reason to choose: it comes from the contacts, not from the distance.",
        NextValue = "Fz",
        Next = "A reference far in front: how much of either source is kept then?",
    };

    private static Lesson FixedPoint() => new("fixed-point", "fixed point: a slow filter in short numbers")
    {
        Setting = "A digital high-pass is computed in whole numbers. Its states keep six bits below the last place of a sample.",
        Question = "The states keep no such bits any more: everything is rounded to the sample's last place. What does the noise of the filter's own rounding do?",
        Shown = [DesignKeys.DigitalWord, DesignKeys.DigitalStateFraction, DesignKeys.Converter.Rate],
        Key = DesignKeys.DigitalStateFraction,
        Value = "0",
        Choices =
        [
            new("it stays: samples are whole numbers anyway", "Input and output are. In between each rounding goes round the filter many times before it has died away.", outcome => outcome.Asked.Stays),
            new("it about doubles", "Each bit doubles it, and six were taken.", outcome => outcome.Asked.IsTimes(1.5, 2.5)),
            new("it grows more than thirty times", "Each bit that is taken doubles every rounding.", outcome => outcome.Asked.IsTimes(30, double.MaxValue)),
        ],
        Asked = ResultIds.Digital.Of(HighPass).RoundOff,
        Others = [ResultIds.Digital.Of(HighPass).DeadBand, ResultIds.Digital.Of(HighPass).PoleMovement, ResultIds.Converter.Lsb, ResultIds.Noise.Total],
        Reason = ResultIds.Digital.Of(HighPass).RoundOff,
        Why = "Each rounding errs by up to half of the last place that is kept, so each bit less doubles it. A filter whose corner lies far below its rate keeps its poles close to the unit circle, and an error goes round many times before it has died away: it is amplified by far more than one. The output can even hang at a value that no longer decays, the dead band. The noise of the design does not count it in; it is a figure of its own.",
        NextValue = "3",
        Next = "Each bit halves it. How many bits bring it below the noise at the electrodes?",
    };
}
