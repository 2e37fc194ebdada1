using FrontEnd.Identity;
using FrontEnd.Topologies;

namespace FrontEnd.Documents.Sheets;

/// <summary>A block of the signal's path as the drawing shows it.</summary>
/// <param name="Lines">What it is, one value a line.</param>
/// <param name="Headroom">Distance from clipping at its output; "" where it cannot clip.</param>
/// <param name="Levels">What adds up at its output, one part a line.</param>
internal sealed record ChainBlock(string Name, IReadOnlyList<string> Lines, string Headroom, IReadOnlyList<string> Levels);

/// <summary>The path from the scalp to the digital filters.</summary>
internal static class ChainBlocks
{
    public static IReadOnlyList<ChainBlock> Of(Assessment assessment)
    {
        Design design = assessment.Design;

        // The levels in the drawing are one channel's, and so is the electrode that they begin at.
        string? channel = assessment.Find(ResultIds.Levels.OffsetSurvived)?.Channel;
        Electrodes.Electrode active = design.AsSeenBy(channel).Electrodes.Active;
        List<ChainBlock> blocks =
        [
            new("scalp",
                [$"from {QuantityText.FormatPart(design.SmallestSignal)}", $"to ±{QuantityText.FormatPart(design.LargestSignal)}"], "", []),
            new("electrodes",
                [QuantityText.FormatPart(active.ContactResistance), "‖ " + QuantityText.FormatPart(active.ContactCapacitance),
                    $"offset ±{QuantityText.FormatPart(design.Electrodes.Offset)}", .. channel is null ? Array.Empty<string>() : [Of(channel)]],
                "", []),
            new("input",
                [$"leads {QuantityText.FormatPart(design.Input.SeriesResistor)}",
                    $"shunt {QuantityText.FormatPart(design.Input.ShuntCapacitor)}"],
                "", []),
            Block(assessment, "amplifier", NodeId.Amplifier, [$"gain {QuantityText.FormatNumber(design.Amplifier.Gain)}"]),
        ];
        blocks.AddRange(design.Stages.Select(stage => Block(assessment, stage.Name, NodeId.Of(stage.Name), Describe(assessment, stage))));
        blocks.Add(Block(
            assessment, "converter", NodeId.Converter,
                [$"{design.Converter.Bits:0.##} bit", $"{QuantityText.FormatPart(design.Converter.Rate)}",
                    QuantityText.FormatPart(design.Converter.FullScale)]));
        blocks.Add(new ChainBlock("digital", design.Digital.Count == 0
            ? ["no filters"]
            : [.. design.Digital.Select(filter => filter.Name)], "", []));
        return blocks;
    }

    private static string Of(string channel) => $"channel {channel}";

    private static List<string> Describe(Assessment assessment, Stage stage)
    {
        string corner = assessment.Find(ResultIds.Filter.Of(NodeId.Of(stage.Name)).MinusThree) is { } found ? Wording.Value(found) : "";
        List<string> lines = [.. stage.Lines];
        if (corner.Length > 0)
        {
            lines.Add("to " + corner);
        }

        return lines;
    }

    private static ChainBlock Block(Assessment assessment, string name, NodeId node, IReadOnlyList<string> lines)
    {
        Result? headroom = assessment.Find(ResultIds.Levels.Headroom(node));
        return headroom is null
            ? new ChainBlock(name, lines, "", [])
            : new ChainBlock(name, lines, Wording.Value(headroom),
                [.. (headroom.Text ?? "").Split([", ", "; "], StringSplitOptions.RemoveEmptyEntries).Where(part => headroom.Channel is null || part != Of(headroom.Channel))]);
    }
}
