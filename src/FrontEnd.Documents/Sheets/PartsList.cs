using FrontEnd.AntiAlias;
using FrontEnd.Circuits;
using FrontEnd.Designs;
using FrontEnd.Quantities;
using FrontEnd.Text;
using FrontEnd.Topologies;

namespace FrontEnd.Documents.Sheets;

/// <summary>A part to buy.</summary>
/// <param name="Where">The block and what it does there.</param>
/// <param name="Value">As it stands on the part; the part card for active parts.</param>
/// <param name="Preferred">The series that has the value, or the nearest value of the series that fits the tolerance.</param>
/// <param name="PerChannel">Pieces for each channel.</param>
/// <param name="Once">Pieces for the device, whatever the number of channels.</param>
public sealed record Part(string Where, string Key, string Value, string Tolerance, string Preferred, int PerChannel, int Once);

/// <summary>The parts of a design in the order of the path.</summary>
public static class PartsList
{
    private const string Class = "of the class assumed";

    public static IReadOnlyList<Part> Of(Design design)
    {
        List<Part> parts = [];
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

    private static void AddStage(List<Part> parts, Stage stage, string key)
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
    private static void Add(List<Part> parts, string where, string key, IQuantity value, Ratio tolerance, int perChannel, int once)
    {
        if (value.SiValue <= 0)
        {
            return;
        }

        // Resistors of 1 % and better come in E96, of 5 % in E24; capacitors in E24 at best (common practice, no source).
        (PreferredSeries Series, string Name)[] series = value is Resistance && tolerance.Fraction <= 0.02
            ? [(PreferredSeries.E24, "E24"), (PreferredSeries.E96, "E96")]
            : [(PreferredSeries.E12, "E12"), (PreferredSeries.E24, "E24")];
        (PreferredSeries Series, string Name)? member = series.Where(one => PreferredValues.IsMember(value.SiValue, one.Series)).Select(one => ((PreferredSeries, string)?)one).FirstOrDefault();
        string preferred = member is { } found
            ? found.Name
            : $"nearest {QuantityText.FormatTrimmed(PreferredValues.Nearest(value.SiValue, series[^1].Series), value.SiUnit, 6)} ({series[^1].Name})";
        parts.Add(new Part(where, key, QuantityText.FormatPart(value), "±" + QuantityText.FormatTrimmed(tolerance, 3), preferred, perChannel, once));
    }

    private static Part Active(string where, string key, string card, int perChannel, int once) => new(where, key, card.Length == 0 ? Class : card, "", "", perChannel, once);
}
