using FrontEnd.Circuits;
using FrontEnd.Designs;
using FrontEnd.Quantities;
using FrontEnd.Text;
using FrontEnd.Topologies;

namespace FrontEnd.Building;

/// <summary>The parts of a design in the order of the path.</summary>
public static class PartsList
{
    /// <summary>All of them; a part that is not fitted is left out.</summary>
    public static IReadOnlyList<ListedPart> Of(Design design)
    {
        List<ListedPart> parts = [];
        Ratio resistors = design.Input.ResistorTolerance, capacitors = design.Input.CapacitorTolerance;

        // One reference lead serves all channels.
        Add(parts, "protection resistor in each lead", "input.series-resistor", design.Input.SeriesResistor, resistors, 1, 1);
        if (design.Electrodes.ActiveBuffer is { } active)
        {
            Add(parts, "skin resistor at the active electrode's buffer", "electrodes.active-buffer.skin-resistor", active.SkinResistor, resistors, 1, 0);
            parts.Add(Active("buffer at the active electrode", "electrodes.active-buffer.card", active.Card, 1, 0));
        }

        if (design.Electrodes.ReferenceBuffer is { } reference)
        {
            Add(parts, "skin resistor at the reference electrode's buffer", "electrodes.reference-buffer.skin-resistor", reference.SkinResistor, resistors, 0, 1);
            parts.Add(Active("buffer at the reference electrode", "electrodes.reference-buffer.card", reference.Card, 0, 1));
        }

        Add(parts, "capacitor from each input to common", "input.shunt-capacitor", design.Input.ShuntCapacitor, capacitors, 2, 0);
        Add(parts, "capacitor between the inputs", "input.differential-capacitor", design.Input.DifferentialCapacitor, capacitors, 1, 0);
        if (design.Input.BiasResistor is { } bias)
        {
            Add(parts, "bias resistor from each input to common", "input.bias-resistor", bias, resistors, 2, 0);
        }

        parts.Add(Active("differential amplifier", "amplifier.card", design.Amplifier.Card, 1, 0));
        if (design.Electrodes.Ground is not null)
        {
            Add(parts, "resistor to the ground electrode", "ground-drive.series-resistor", design.GroundDrive.SeriesResistor, design.GroundDrive.ResistorTolerance, 0, 1);
            if (design.GroundDrive.Kind == Amplifier.GroundKind.Driven)
            {
                parts.Add(Active("op-amp of the driven ground", "ground-drive", "", 0, 1));
            }
        }

        for (int index = 0; index < design.Stages.Count; index++)
        {
            AddStage(parts, design.Stages[index], $"stages[{index + 1}]");
        }

        parts.Add(Active($"converter, {design.Converter.Bits:0.##} bit, {QuantityText.FormatPart(design.Converter.Rate)} a channel", "converter.card", design.Converter.Card, 0, 1));
        return parts;
    }

    private static void AddStage(List<ListedPart> parts, Stage stage, string key)
    {
        Circuit circuit = stage.Circuit();
        foreach (CircuitPart part in circuit.Parts)
        {
            Add(parts, $"{stage.Name}: {part.Label}", $"{key}.{part.Role}", part.Quantity, Ratio.FromFraction(part.Tolerance), 1, 0);
        }

        foreach (CircuitOpAmp opAmp in circuit.OpAmps)
        {
            parts.Add(Active($"{stage.Name}: {opAmp.Role}", $"{key}.{opAmp.Key}.card", opAmp.Model.Card, 1, 0));
        }
    }

    /// <summary>A value of zero is a part that is not fitted.</summary>
    private static void Add(List<ListedPart> parts, string where, string key, IQuantity value, Ratio tolerance, int perChannel, int once)
    {
        if (value.SiValue <= 0)
        {
            return;
        }

        parts.Add(new ListedPart(where, key, perChannel, once) { Value = PartValue.Of(value, tolerance) });
    }

    private static ListedPart Active(string where, string key, string card, int perChannel, int once) =>
        new(where, key, perChannel, once) { Card = card };
}
