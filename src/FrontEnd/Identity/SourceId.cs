using FrontEnd.Text;

namespace FrontEnd.Identity;

/// <summary>Which source of noise a row of the budget is.</summary>
/// <param name="Text">The word that stands in the result's id, such as <c>active-electrode</c>.</param>
public readonly record struct SourceId(string Text)
{
    public static readonly SourceId ActiveElectrode = new("active-electrode");
    public static readonly SourceId ReferenceElectrode = new("reference-electrode");
    public static readonly SourceId GroundElectrode = new("ground-electrode");
    public static readonly SourceId ProtectionResistors = new("protection-resistors");
    public static readonly SourceId BiasResistors = new("bias-resistors");
    public static readonly SourceId BufferCurrent = new("buffer-current");
    public static readonly SourceId BufferVoltage = new("buffer-voltage");
    public static readonly SourceId SkinResistors = new("skin-resistors");
    public static readonly SourceId AmplifierCurrent = new("amplifier-current");
    public static readonly SourceId AmplifierVoltage = new("amplifier-voltage");
    public static readonly SourceId GroundResistor = new("ground-resistor");
    public static readonly SourceId Folded = new("folded");
    public static readonly SourceId Quantisation = new("quantisation");
    public static readonly SourceId Converter = new("converter");

    /// <summary>Every source that is there without a stage, fitted or not.</summary>
    public static readonly IReadOnlyList<SourceId> BuiltIn =
    [
        ActiveElectrode, ReferenceElectrode, GroundElectrode, ProtectionResistors, BiasResistors, BufferCurrent, BufferVoltage,
        SkinResistors, AmplifierCurrent, AmplifierVoltage, GroundResistor,
        Folded, Quantisation, Converter,
    ];

    /// <summary>True for the three electrodes.</summary>
    public bool IsElectrode => this == ActiveElectrode || this == ReferenceElectrode || this == GroundElectrode;

    /// <summary>The resistors of the stage of this name.</summary>
    public static SourceId ResistorsOf(string stage) => new(Slug.Of(stage) + "-resistors");

    /// <summary>The current noise of the stage's op-amp.</summary>
    public static SourceId CurrentOf(string stage) => new(Slug.Of(stage) + "-current");

    /// <summary>The voltage noise of the stage's op-amp.</summary>
    public static SourceId VoltageOf(string stage) => new(Slug.Of(stage) + "-voltage");

    /// <summary>All that a stage of this name may have.</summary>
    public static IReadOnlyList<SourceId> Of(string stage) => [ResistorsOf(stage), CurrentOf(stage), VoltageOf(stage)];

    /// <summary>In words: "active electrode".</summary>
    public string Words => Text.Replace('-', ' ');

    public override string ToString() => Text;
}
