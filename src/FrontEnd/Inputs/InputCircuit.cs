using FrontEnd.Amplifier;
using FrontEnd.Circuits;
using FrontEnd.Designs;
using FrontEnd.Electrodes;

namespace FrontEnd.Inputs;

/// <summary>What is soldered between the electrodes and the differential amplifier: buffers, protection resistors, capacitors, bias
/// resistors and the ground electrode's resistor, as one circuit.</summary>
/// <remarks>The body, the electrodes, the couplings to the mains and the amplifier's own input impedance are no parts: <see
/// cref="InputModel"/> adds them. Roles are the keys that a spread draws by.</remarks>
internal static class InputCircuit
{
    // Roles.
    public const string ActiveResistor = "input.series-resistor (active)", ReferenceResistor = "input.series-resistor (reference)";
    public const string ActiveShunt = "input.shunt-capacitor (active)", ReferenceShunt = "input.shunt-capacitor (reference)";
    public const string ActiveBias = "input.bias-resistor (active)", ReferenceBias = "input.bias-resistor (reference)";
    public const string Differential = DesignKeys.Input.DifferentialCapacitor, GroundResistor = DesignKeys.GroundDrive.SeriesResistor;

    // Nodes: the leads behind the electrodes (or their buffers), the amplifier's inputs, the ground electrode's lead, the driving
    // amplifier's output.
    public const string ActiveLead = "A1", ReferenceLead = "R1", ActiveInput = "A2", ReferenceInput = "R2", GroundLead = "G1", Drive = "D";

    // The two sides of the pair, as a buffer's role names them.
    public const string ActiveSide = "active", ReferenceSide = "reference";

    private static readonly (string Which, string Lead, bool IsShared)[] Sides = [(ActiveSide, ActiveLead, false),
        (ReferenceSide, ReferenceLead, true)];

    /// <summary>The node at an electrode: its lead, or the input of its buffer.</summary>
    /// <param name="which"><see cref="ActiveSide"/> or <see cref="ReferenceSide"/>.</param>
    public static string Top(string which) => which + " electrode";

    /// <summary>Role of the skin resistor of a buffer.</summary>
    public static string SkinResistor(string which) => $"{Key(which)}.skin-resistor";

    /// <summary>One buffer of the circuit, with its parts.</summary>
    internal static Circuit Buffer(Circuit circuit, CircuitOpAmp opAmp) =>
        new([.. circuit.Parts.Where(part => part.Role.StartsWith(Key(opAmp.Role) + ".", StringComparison.Ordinal))], [opAmp], opAmp.Output);

    /// <summary>The circuit without its buffers and without what stands between the amplifier's inputs.</summary>
    internal static Circuit Leads(Circuit circuit) =>
        circuit with { Parts = [.. circuit.Parts.Where(part =>
            part.Role != Differential && !part.Role.StartsWith("electrodes.", StringComparison.Ordinal))], OpAmps = [] };

    private static string Key(string which) => $"electrodes.{which}-buffer";

    /// <summary>With nominal values.</summary>
    public static Circuit Of(Design design) => Of(design, null);

    /// <param name="design">The design.</param>
    /// <param name="built">What stands in the leads of one device; null for the nominal values.</param>
    internal static Circuit Of(Design design, BuiltParts? built)
    {
        InputNetwork input = design.Input;
        Ratio resistors = input.ResistorTolerance, capacitors = input.CapacitorTolerance;
        double series = input.SeriesResistor.Ohms, shunt = input.ShuntCapacitor.Farads;
        List<CircuitPart> parts =
        [
            Resistor(ActiveResistor, "protection resistor in each lead", ActiveLead, ActiveInput, series,
                resistors) with { Key = DesignKeys.Input.SeriesResistor, AsBuilt = built?.ActiveOhms },
            Resistor(ReferenceResistor, "protection resistor in each lead", ReferenceLead, ReferenceInput, series, resistors)
                with { Key = DesignKeys.Input.SeriesResistor, IsShared = true, AsBuilt = built?.ReferenceOhms },
        ];
        List<CircuitOpAmp> opAmps = [];
        foreach ((string which, string lead, bool isShared) in Sides)
        {
            if ((isShared ? design.Electrodes.ReferenceBuffer : design.Electrodes.ActiveBuffer) is { } buffer)
            {
                AddBuffer(parts, opAmps, buffer, which, lead, isShared, resistors);
            }
        }

        parts.Add(Capacitor(ActiveShunt, "capacitor from each input to common", ActiveInput, Circuit.Common, shunt,
            capacitors) with { Key = DesignKeys.Input.ShuntCapacitor, AsBuilt = built?.ActiveFarads });
        parts.Add(Capacitor(ReferenceShunt, "capacitor from each input to common", ReferenceInput, Circuit.Common, shunt,
            capacitors) with { Key = DesignKeys.Input.ShuntCapacitor, AsBuilt = built?.ReferenceFarads });
        parts.Add(Capacitor(Differential, "capacitor between the inputs", ActiveInput, ReferenceInput, input.DifferentialCapacitor.Farads,
            capacitors));
        if (input.BiasResistor is { } bias)
        {
            parts.Add(Resistor(ActiveBias, "bias resistor from each input to common", ActiveInput, Circuit.Common, bias.Ohms,
                resistors) with { Key = DesignKeys.Input.BiasResistor, AsBuilt = built?.ActiveBiasOhms });
            parts.Add(Resistor(ReferenceBias, "bias resistor from each input to common", ReferenceInput, Circuit.Common, bias.Ohms,
                resistors) with { Key = DesignKeys.Input.BiasResistor, AsBuilt = built?.ReferenceBiasOhms });
        }

        if (design.Electrodes.Ground is not null)
        {
            string end = design.GroundIsDriven ? Drive : Circuit.Common;
            parts.Add(Resistor(GroundResistor, "resistor to the ground electrode", GroundLead, end, design.GroundDrive.SeriesResistor.Ohms,
                design.GroundDrive.ResistorTolerance) with { IsShared = true });
        }

        return new Circuit(parts, opAmps, ActiveInput);
    }

    private static void AddBuffer(List<CircuitPart> parts, List<CircuitOpAmp> opAmps, ElectrodeBuffer buffer, string which, string lead,
        bool isShared, Ratio tolerance)
    {
        string key = Key(which), plus = Top(which), output = $"buffer-{which}";
        if (0 < buffer.SkinResistor.Ohms)
        {
            plus = $"{output} input";
            parts.Add(Resistor(SkinResistor(which), $"skin resistor at the {which} electrode's buffer", Top(which), plus,
                buffer.SkinResistor.Ohms, tolerance) with { IsShared = isShared });
        }

        // Properties of the buffer as a part, not parts of their own.
        parts.Add(Resistor($"{key}.input-resistance", "", plus, Circuit.Common, buffer.InputResistance.Ohms,
            default) with { IsFitted = false });
        parts.Add(Capacitor($"{key}.input-capacitance", "", plus, Circuit.Common, buffer.InputCapacitance.Farads,
            default) with { IsFitted = false });
        parts.Add(Resistor($"{key}.output-resistance", "", output, lead, buffer.OutputResistance.Ohms, default) with { IsFitted = false });
        opAmps.Add(new CircuitOpAmp(which, $"{key}.opamp", buffer.OpAmp, output, plus, output));
    }

    private static CircuitPart Resistor(string role, string label, string from, string to, double ohms, Ratio tolerance) =>
        new(role, label, PartKind.Resistor, from, to, ohms, tolerance.Fraction);

    private static CircuitPart Capacitor(string role, string label, string from, string to, double farads, Ratio tolerance) =>
        new(role, label, PartKind.Capacitor, from, to, farads, tolerance.Fraction);
}
