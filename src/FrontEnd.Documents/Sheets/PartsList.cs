using FrontEnd.Circuits;
using FrontEnd.Designs;
using FrontEnd.Inputs;
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
        Circuit input = InputCircuit.Of(design);
        AddParts("input.series-resistor");
        foreach ((string which, Electrodes.ElectrodeBuffer? buffer, int perChannel) in new[] { ("active", design.Electrodes.ActiveBuffer, 1), ("reference", design.Electrodes.ReferenceBuffer, 0) })
        {
            if (buffer is not null)
            {
                AddParts(InputCircuit.SkinResistor(which));
                parts.Add(Active($"buffer at the {which} electrode", $"electrodes.{which}-buffer.card", buffer.Card, perChannel, 1 - perChannel));
            }
        }

        AddParts("input.shunt-capacitor");
        AddParts(InputCircuit.Differential);
        AddParts("input.bias-resistor");
        parts.Add(Active("differential amplifier", "amplifier.card", design.Amplifier.Card, 1, 0));
        AddParts(InputCircuit.GroundResistor);
        if (design.GroundIsDriven)
        {
            parts.Add(Active("op-amp of the driven ground", "ground-drive", "", 0, 1));
        }

        for (int index = 0; index < design.Stages.Count; index++)
        {
            AddStage(parts, design.Stages[index], $"stages[{index + 1}]");
        }

        parts.Add(Active($"converter, {design.Converter.Bits:0.##} bit, {QuantityText.FormatPart(design.Converter.Rate)} a channel", "converter.card", design.Converter.Card, 0, 1));
        return parts;

        // One reference lead serves all channels.
        void AddParts(string key)
        {
            CircuitPart[] alike = [.. input.Parts.Where(part => part.Key == key)];
            if (alike.Length != 0)
            {
                Add(parts, alike[0].Label, key, alike[0].Quantity, Ratio.FromFraction(alike[0].Tolerance), alike.Count(part => !part.IsShared), alike.Count(part => part.IsShared));
            }
        }
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
