using FrontEnd.Converter;
using FrontEnd.Designs;
using FrontEnd.Digital;
using FrontEnd.Interference;
using FrontEnd.Topologies;

namespace FrontEnd.Reporting;

/// <summary>Which budgets of one design hold for another that differs from it somewhere: those that read nothing of what differs.</summary>
/// <remarks>What a budget is known not to read is set alike in both designs, and the rest is compared; a field that is added later counts as
/// read until it is listed here.</remarks>
internal static class UnchangedInputs
{
    private static readonly Supply AnySupply = new();
    private static readonly Requirements AnyRequirements = new();
    private static readonly AnalogDigitalConverter AnyConverter = new();
    private static readonly DigitalArithmetic AnyArithmetic = new();
    private static readonly Band AnyBand = new("any", default, default);
    private static readonly BoardChoices AnyBoard = new();
    private static readonly IReadOnlyList<Band> NoBands = [];
    private static readonly IReadOnlyList<Interferer> NoInterferers = [];
    private static readonly IReadOnlyList<Stage> NoStages = [];
    private static readonly IReadOnlyList<DigitalStage> NoFilters = [];

    /// <summary>True where the noise, and the noise and the gains at every node, are the same.</summary>
    public static bool OfNoise(Design one, Design other) => ReadByNoise(one) == ReadByNoise(other);

    /// <summary>True where the mains is the same from the room to the recording.</summary>
    public static bool OfMains(Design one, Design other) => ReadByMains(one) == ReadByMains(other);

    /// <summary>True where the driven ground's loop is the same.</summary>
    public static bool OfDrive(Design one, Design other) => ReadByDrive(one) == ReadByDrive(other);

    private static Design ReadByMains(Design design) => design with
    {
        Name = "", Purpose = "", Caution = "", SmallestSignal = default, LargestSignal = default, Supply = AnySupply,
        Requirements = AnyRequirements, Board = AnyBoard, Interferers = NoInterferers, ContactCheck = null, PacketTime = null,
        Electrodes = design.Electrodes with { Offset = default },
    };

    private static Design ReadByNoise(Design design)
    {
        Design read = ReadByMains(design);
        return read with
        {
            Mains = read.Mains with
            {
                Voltage = default, Field = default, LoopArea = default, Harmonics = Mains.StandardHarmonics, FieldHarmonics = null,
                Deviation = default,
            },
        };
    }

    private static Design ReadByDrive(Design design) => ReadByNoise(design) with
    {
        Stages = NoStages, Converter = AnyConverter, Digital = NoFilters, Arithmetic = AnyArithmetic, Band = AnyBand, Bands = NoBands,
    };
}
