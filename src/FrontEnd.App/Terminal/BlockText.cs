using FrontEnd.AntiAlias;
using FrontEnd.Electrodes;
using FrontEnd.Quantities;
using FrontEnd.Text;

namespace FrontEnd.App.Terminal;

/// <summary>The two lines under a block's name on the strip: its gain or level, and its headroom or kind.</summary>
public static class BlockText
{
    /// <param name="room">Columns that there are.</param>
    public static (string Figure, string Second) Of(Place block, Design design, Assessment? shown, int room)
    {
        return block.Id switch
        {
            Place.Scalp => ($"to {QuantityText.FormatTrimmed(design.LargestSignal, 3)}", QuantityText.FormatTrimmed(design.Band.High, 3)),
            Place.Electrodes => (QuantityText.FormatTrimmed(design.Electrodes.Active.ContactResistance, 3), design.Electrodes.Contact == ContactKind.Wet ? "wet" : "dry"),
            Place.Input => (QuantityText.FormatTrimmed(design.Input.SeriesResistor, 3), QuantityText.FormatTrimmed(design.Input.ShuntCapacitor, 3)),
            Place.Amplifier => (Times(Ratio.FromFraction(design.Amplifier.Gain)), Room("amplifier", shown, room)),
            Place.Converter => ($"{design.Converter.Bits} bit", QuantityText.FormatTrimmed(design.Converter.Rate, 4)),
            Place.Digital => design.Digital.Count switch
            {
                0 => ("none", ""),
                1 => (design.Digital[0].Name, ""),
                _ => (design.Digital[0].Name, $"{design.Digital.Count} filters"),
            },
            _ => OfStages(block, design, shown, room),
        };
    }

    private static (string, string) OfStages(Place block, Design design, Assessment? shown, int room)
    {
        string last = DesignFields.Slug(design.Stages[block.Stages[^1]].Name);
        if (design.Stages[block.Stages[0]] is GainStage stage)
        {
            return (Times(Ratio.FromFraction(stage.NominalGain)), Room(last, shown, room));
        }

        string corner = shown?.Find($"filter.{last}.minus_3db")?.Value is { } hertz ? QuantityText.Format(hertz) : "";
        return (corner, Room(last, shown, room));
    }

    private static string Times(Ratio gain) => "x " + QuantityText.FormatTrimmed(gain.Fraction, "1", 4);

    /// <summary>The headroom: how far the node is from its rails.</summary>
    private static string Room(string node, Assessment? shown, int room) => shown?.Find($"levels.{node}.headroom")?.Value is { } headroom
        ? (room < 11 ? "" : "room ") + QuantityText.Format(headroom, 2) + (room < 11 ? " up" : "")
        : "";
}
