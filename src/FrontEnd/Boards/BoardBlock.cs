using FrontEnd.Designs;

namespace FrontEnd.Boards;

/// <summary>What a block of the board is there for, in the order of its hundreds of designators.</summary>
internal enum BlockKind
{
    /// <summary>From the electrodes to the amplifier's inputs, buffers included: 1xx.</summary>
    Input,

    /// <summary>The differential amplifier: 2xx.</summary>
    Amplifier,

    /// <summary>A gain stage or a section of a filter: 3xx to 6xx, from the fifth on 10xx and up.</summary>
    Stage,

    /// <summary>Converter, its reference and its data lines: 7xx.</summary>
    Converter,

    /// <summary>The ground electrode and what drives it: 8xx.</summary>
    Ground,

    /// <summary>Battery, regulators and the middle of the supply: 9xx.</summary>
    Supply,
}

/// <summary>A block of the board.</summary>
/// <param name="Kind">What it is there for.</param>
/// <param name="Stage">Which stage, counted from 0; 0 for any other block.</param>
internal readonly record struct BoardBlock(BlockKind Kind, int Stage = 0)
{
    private const int Hundred = 100;

    /// <summary>Stages that have a hundred below the converter's.</summary>
    private const int LowStages = 4;

    /// <summary>The first designator's number less one: adding a stage leaves the numbers of the blocks before it alone.</summary>
    public int Base => Hundred * Kind switch
    {
        BlockKind.Input => 1,
        BlockKind.Amplifier => 2,
        BlockKind.Stage => Stage < LowStages ? 3 + Stage : 10 + Stage - LowStages,
        BlockKind.Converter => 7,
        BlockKind.Ground => 8,
        _ => 9,
    };

    /// <summary>What a reader calls it.</summary>
    public string Words(Design design) => Kind switch
    {
        BlockKind.Input => "input",
        BlockKind.Amplifier => "differential amplifier",
        BlockKind.Stage => design.Stages[Stage].Name,
        BlockKind.Converter => "converter",
        BlockKind.Ground => design.GroundIsDriven ? "driven ground" : "ground electrode",
        _ => "supply",
    };
}
