using FrontEnd.Circuits;
using FrontEnd.Textbook;

namespace FrontEnd.Topologies;

/// <summary>What a stage is there for.</summary>
public enum StageRole
{
    Gain,

    /// <summary>A section of the anti-alias filter.</summary>
    LowPass,

    /// <summary>Takes the mains out in front of the converter.</summary>
    Notch,
}

/// <summary>A block between the differential amplifier and the converter.</summary>
/// <remarks>
/// A topology is one record in one file: its values, its <see cref="Circuit"/>, the words and hand figures that go with it, its fields and
/// its line in <see cref="TopologyCatalogue"/>. Everything else follows from the circuit.
/// </remarks>
public abstract record Stage
{
    /// <summary>"gain 2", "anti-alias 1" …; unique in the design.</summary>
    public string Name { get; init; } = "";

    public Ratio ResistorTolerance { get; init; } = Ratio.FromPercent(1);

    public Ratio CapacitorTolerance { get; init; } = Ratio.FromPercent(5);

    public abstract StageRole Role { get; }

    /// <summary>The values of each of the stage's op-amps; null for a passive section.</summary>
    public abstract OpAmp? FittedOpAmp { get; }

    /// <summary>Gain at frequencies that the stage passes, by size, with ideal op-amps.</summary>
    public virtual double NominalGain => 1;

    /// <summary>Gain of a voltage in series with the op-amp's + input to the output, by size; the signal's own for a non-inverting
    /// stage.</summary>
    public virtual double NoiseGain => NominalGain;

    /// <summary>The gain in letters, as a factor: "1 + Rf/Rg"; "" where it is 1 by nature.</summary>
    public virtual string GainFormula => "";

    /// <summary>The topology in a word or two: "Sallen-Key".</summary>
    public abstract string Word { get; }

    /// <summary>The same stage with other op-amps.</summary>
    public abstract Stage WithOpAmp(OpAmp opAmp);

    /// <summary>The stage as a circuit from <see cref="Circuit.Input"/>, where the block before it drives it.</summary>
    internal abstract Circuit Circuit();

    /// <summary>Topology and gain as they stand in a sentence: "Sallen-Key, gain 1".</summary>
    public virtual string Title => Word;

    /// <summary>What the block says on a drawing of the path, one value a line.</summary>
    public virtual IReadOnlyList<string> Lines => [Word];

    /// <summary>The gain as it stands in the product of all gains, with the values put in: " · (1 + 9 kΩ/1 kΩ)"; "" where it is 1 by
    /// nature.</summary>
    public virtual string GainText => "";

    /// <summary>The parts in a sentence: "R 10 kΩ, C 100 nF".</summary>
    public virtual string PartsText => string.Join(", ",
        Circuit().Parts.Select(part => $"{part.Label.Split(',')[0]} {QuantityText.FormatPart(part.Quantity)}"));

    /// <summary>What to know of the topology before it is built; "" for nothing.</summary>
    public virtual string Remark => "";

    /// <summary>The teaching diagram that shows it; null for none.</summary>
    public virtual string? Picture => null;

    /// <summary>How a schematic draws it.</summary>
    public abstract StageShape Shape { get; }

    /// <summary>Corner or pole frequency by the textbook's formula.</summary>
    internal virtual TextbookFigure? PoleFormula => null;

    /// <summary>Q by the textbook's formula; null for a stage of first order.</summary>
    internal virtual TextbookFigure? QFormula => null;

    /// <summary>Upper −3 dB frequency by formula; null for none.</summary>
    internal virtual TextbookFigure? UpperCorner => null;

    /// <summary>Lower −3 dB frequency by formula; null for none.</summary>
    internal virtual TextbookFigure? LowerCorner => null;

    /// <summary>Where a low-pass section's stop band turns up again, by formula; null for none.</summary>
    internal virtual TextbookFigure? StopBandTurn => null;

    /// <summary>Least loss above that, by formula; null for none.</summary>
    internal virtual TextbookFigure? StopBandFloor => null;

    /// <summary>A notch's centre, Q and circuit; null for any other stage.</summary>
    internal virtual NotchFacts? Notch => null;

    /// <summary>A low-pass section as the filter search's closed forms take it; null for any other stage.</summary>
    internal virtual SectionParts? Section => null;

    /// <summary>What the values of this stage contradict among themselves.</summary>
    /// <param name="isLast">True for the last stage in front of the converter.</param>
    internal virtual IEnumerable<StageFault> Faults(bool isLast) => [];

    /// <summary>1 + Rf/Rg; 1 for a follower, which has no Rg.</summary>
    private protected static double NonInverting(Resistance feedback, Resistance? ground) => ground is { } rg ? 1 + (feedback / rg) : 1;

    /// <summary>" · (1 + Rf/Rg)".</summary>
    private protected static string NonInvertingText(Resistance feedback, Resistance? ground) =>
        ground is { } rg ? $" · (1 + {QuantityText.FormatPart(feedback)}/{QuantityText.FormatPart(rg)})" : "";

    /// <summary>", Rf …, Rg …"; nothing for a follower.</summary>
    private protected static string GainParts(Resistance feedback, Resistance? ground) =>
        ground is { } rg ? $", Rf {QuantityText.FormatPart(feedback)}, Rg {QuantityText.FormatPart(rg)}" : "";

    private protected CircuitDraft Draft() => new(ResistorTolerance, CapacitorTolerance);
}

/// <summary>What the checks of a notch need.</summary>
/// <param name="Q">For matched parts and ideal op-amps.</param>
/// <param name="Circuit">As built.</param>
internal sealed record NotchFacts(Frequency Centre, double Q, NotchCircuit Circuit);

/// <summary>A contradiction within a stage, before the design's key is put in front of its fields.</summary>
/// <param name="Help">What to change, from the stage's key.</param>
/// <param name="RestsOn">Fields of the stage that it rests on; the message falls away where one of them could not be read.</param>
internal sealed record StageFault(string Code, Severity Severity, string Message, string? Note, Func<string, string> Help,
    params IReadOnlyList<string> RestsOn);
