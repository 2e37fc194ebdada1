using FrontEnd.Circuits;
using FrontEnd.Fields;
using static FrontEnd.Fields.FieldRange;
using static FrontEnd.Fields.Make;

namespace FrontEnd.Topologies;

/// <summary>Fields that stages share, and the variants that a topology's rows make.</summary>
internal static class StageFields
{
    private static readonly IReadOnlyList<Field<Stage>> Any =
    [
        Wording("name", "gain 2, gain 3 …; anti-alias 1, 2 …; analogue notch 1, 2 …", "unique in the design; results are named after it",
            (Stage s) => s.Name, (s, v) => s with { Name = v }) with { DefaultIsValue = false },
        Value("resistor-tolerance", "resistor_tolerance", Below(0, 1), "1 %", Practice, "tolerance of the stage's resistors, ±",
            (Stage s) => s.ResistorTolerance, (s, v) => s with { ResistorTolerance = v }),
        Value("capacitor-tolerance", "capacitor_tolerance", Below(0, 1), "5 %", Practice, "tolerance of the stage's capacitors, ±",
            (Stage s) => s.CapacitorTolerance, (s, v) => s with { CapacitorTolerance = v }),
    ];

    /// <summary>The parts' rows between what every stage has and its op-amp's.</summary>
    public static IReadOnlyList<Field<TStage>> Of<TStage>(IReadOnlyList<Field<TStage>> parts, bool hasOpAmp = true)
        where TStage : Stage =>
    [
        .. Any.Select(AsA<TStage, Stage>),
        .. parts,
        .. hasOpAmp
            ? OpAmpFields.All.Select(field =>
                field.Within("opamp.", "opamp.", (TStage s) => s.FittedOpAmp, (s, v) => (TStage)s.WithOpAmp(v), () => OpAmp.MicropowerCmos))
            : [],
    ];

    /// <summary>A part's resistance, above zero.</summary>
    public static Field<TStage> Ohms<TStage>(string key, string json, string defaultText, string meaning,
        Func<TStage, Quantities.Resistance> get, Func<TStage, Quantities.Resistance, TStage> set) =>
        Value(key, json, Above(0, 1e10), defaultText, Practice, meaning, get, set);

    /// <summary>A part's capacitance, above zero.</summary>
    public static Field<TStage> Farads<TStage>(string key, string json, string defaultText, string meaning,
        Func<TStage, Quantities.Capacitance> get, Func<TStage, Quantities.Capacitance, TStage> set) =>
        Value(key, json, Above(0, 1e-2), defaultText, Practice, meaning, get, set);
}
