using FrontEnd.Boards;
using FrontEnd.Circuits;
using FrontEnd.Designs;
using FrontEnd.Inputs;
using FrontEnd.Topologies;

namespace FrontEnd.Building;

/// <summary>The parts of a design in the order of the path.</summary>
public static class PartsList
{
    /// <summary>All of them; a part that is not fitted is left out.</summary>
    public static IReadOnlyList<ListedPart> Of(Design design)
    {
        List<ListedPart> parts = [];
        Circuit input = InputCircuit.Of(design);
        AddParts(DesignKeys.Input.SeriesResistor);
        if (0 < design.ChannelList.Count)
        {
            AddNamedBuffers(parts, design);
        }

        foreach ((string which, Electrodes.ElectrodeBuffer? buffer,
            int perChannel) in new[] { ("active", design.Electrodes.ActiveBuffer, 1), ("reference", design.Electrodes.ReferenceBuffer, 0) })
        {
            if (buffer is not null && design.ChannelList.Count == 0)
            {
                AddParts(InputCircuit.SkinResistor(which));
                parts.Add(Active($"buffer at the {which} electrode", $"electrodes.{which}-buffer.card", buffer.Card, perChannel,
                    1 - perChannel));
            }
        }

        AddParts(DesignKeys.Input.ShuntCapacitor);
        AddParts(InputCircuit.Differential);
        AddParts(DesignKeys.Input.BiasResistor);
        parts.Add(Active("differential amplifier", DesignKeys.Amplifier.Card, design.Amplifier.Card, 1, 0));
        if (design.Amplifier.GainResistor is { } resistor)
        {
            Add(parts, "gain resistor, k/(G − 1)", DesignKeys.Amplifier.GainConstant, resistor, Ratio.FromPercent(1), 1, 0);
        }

        AddParts(InputCircuit.GroundResistor);
        if (design.GroundIsDriven)
        {
            parts.Add(Active("op-amp of the driven ground", "ground-drive", "", 0, 1));
        }

        for (int index = 0; index < design.Stages.Count; index++)
        {
            AddStage(parts, design.Stages[index], $"stages[{index + 1}]");
        }

        parts.Add(Active($"converter, {design.Converter.Bits:0.##} bit, {QuantityText.FormatPart(design.Converter.Rate)} a channel",
            DesignKeys.Converter.Card, design.Converter.Card, 0, 1));
        return parts;

        // One reference lead serves all channels but those with a minus electrode of their own; of the ground's there is one.
        void AddParts(string key)
        {
            CircuitPart[] alike = [.. input.Parts.Where(part => part.Key == key)];
            if (alike.Length != 0)
            {
                Add(parts, alike[0].Label, key, alike[0].Quantity, Ratio.FromFraction(alike[0].Tolerance),
                    alike.Count(part => !part.IsShared), alike.Count(part => part.IsShared) * (key == InputCircuit.GroundResistor ? 1 : design.Leads.Count - design.Channels));
            }
        }
    }

    /// <summary>Buffers that are alike together, wherever they stand.</summary>
    private static void AddNamedBuffers(List<ListedPart> parts, Design design)
    {
        foreach (IGrouping<Electrodes.ElectrodeBuffer, MeasuringLead> alike in design.Leads.Where(lead => lead.Buffer is not null).GroupBy(lead => lead.Buffer!))
        {
            MeasuringLead[] leads = [.. alike];
            string key = leads[0].SkinResistorKey;
            string where = string.Join(", ", leads.Select(lead => lead.Channel is { } channel
                ? design.ChannelList[channel].Name + (lead.IsMinus ? " minus" : "") : "reference"));
            Add(parts, $"skin resistor at the buffers of {where}", key, alike.Key.SkinResistor, design.Input.ResistorTolerance, 0,
                leads.Length);
            parts.Add(Active($"buffer at the electrodes of {where}", key[..key.LastIndexOf('.')] + ".card", alike.Key.Card, 0, leads.Length));
        }
    }

    private static void AddStage(List<ListedPart> parts, Stage stage, string key)
    {
        Circuit circuit = stage.Circuit();
        foreach (CircuitPart part in circuit.Parts)
        {
            Add(parts, $"{stage.Name}: {part.Label}", $"{key}.{part.Role}", part.OnePiece, Ratio.FromFraction(part.Tolerance), part.Pieces, 0);
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
