using FrontEnd.Electrodes;
using FrontEnd.Identity;
using FrontEnd.Topologies;

namespace FrontEnd.Terminal;

/// <summary>The two lines under a block's name on the strip: its gain or level, and its headroom or kind.</summary>
internal static class BlockText
{
    public static (string Figure, string Second) Of(Place block, Design design, Assessment? shown)
    {
        return block.Id switch
        {
            Place.Scalp => ($"to {QuantityText.FormatTrimmed(design.LargestSignal, 3)}", QuantityText.FormatTrimmed(design.Band.High, 3)),
            Place.Electrodes => OfElectrodes(design.AsSeenBy(shown?.Find(ResultIds.Noise.Total)?.Channel).Electrodes),
            Place.Input => (
                QuantityText.FormatTrimmed(design.Input.SeriesResistor, 3), QuantityText.FormatTrimmed(design.Input.ShuntCapacitor, 3)),
            Place.Amplifier => (Times(Ratio.FromFraction(design.Amplifier.Gain)), Room(NodeId.Amplifier, shown)),
            Place.Converter => ($"{design.Converter.Bits} bit", QuantityText.FormatTrimmed(design.Converter.Rate, 4)),
            Place.Digital => design.Digital.Count switch
            {
                0 => ("none", ""),
                1 => (design.Digital[0].Name, ""),
                _ => (design.Digital[0].Name, $"{design.Digital.Count} filters"),
            },
            _ => OfStages(block, design, shown),
        };
    }

    /// <summary>Of the channel that the noise is of.</summary>
    private static (string, string) OfElectrodes(ElectrodeSet set) =>
        (QuantityText.FormatTrimmed(set.Active.ContactResistance, 3), set.Contact == ContactKind.Wet ? "wet" : "dry");

    private static (string, string) OfStages(Place block, Design design, Assessment? shown)
    {
        NodeId last = NodeId.Of(design.Stages[block.Stages[^1]].Name);
        if (design.Stages[block.Stages[0]] is { Role: StageRole.Gain } stage)
        {
            return (Times(Ratio.FromFraction(stage.NominalGain)), Room(last, shown));
        }

        string corner = shown?.Find(ResultIds.Filter.Of(last).MinusThree)?.Value is { } hertz ? QuantityText.Format(hertz) : "";
        return (corner, Room(last, shown));
    }

    private static string Times(Ratio gain) => "x " + QuantityText.FormatTrimmed(gain.Fraction, "1", 4);

    /// <summary>The headroom: how far the node is from its rails.</summary>
    private static string Room(NodeId node, Assessment? shown) =>
        shown?.Find(ResultIds.Levels.Headroom(node))?.Value is { } headroom
        ? QuantityText.Format(headroom, 2) + " room"
        : "";
}
