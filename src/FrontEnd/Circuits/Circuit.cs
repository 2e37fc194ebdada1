namespace FrontEnd.Circuits;

/// <summary>A circuit as a builder would describe it: parts with what they are there for, their nodes, values and tolerance, and
/// op-amps.</summary>
/// <remarks>
/// The one description of a topology. Its network, its gain and errors at dc, its response in time, its rows of a parts list and what a
/// spread draws of it follow from it and stand nowhere else.
/// </remarks>
/// <param name="Parts">In the order of a parts list.</param>
/// <param name="OpAmps">In the order of the signal.</param>
/// <param name="Output">The node whose voltage the next block takes.</param>
internal sealed record Circuit(IReadOnlyList<CircuitPart> Parts, IReadOnlyList<CircuitOpAmp> OpAmps, string Output)
{
    /// <summary>The node of the amplifier's common, which voltages are counted from.</summary>
    public const string Common = "common";

    /// <summary>The node of the input port.</summary>
    public const string Input = "in";

    /// <summary>The output of the op-amp that drives the next block.</summary>
    public const string Out = "out";

    /// <summary>Nodes that can clip: outputs of op-amps, in the order of the signal.</summary>
    public IEnumerable<string> Clipping => OpAmps.Select(opAmp => opAmp.Output);

    /// <summary>Nodes that can clip besides <see cref="Output"/>.</summary>
    public IEnumerable<string> InnerClipping => Clipping.Where(node => node != Output);

    /// <summary>Resistors, capacitors and op-amps to solder in.</summary>
    public int Pieces => OpAmps.Count + Parts.Sum(part => part.Pieces);

    public int Capacitors => Parts.Count(part => part.Kind == PartKind.Capacitor);

    /// <summary>True where no direct current gets from the input port into the circuit.</summary>
    public bool IsAcCoupled => Parts.Any(part => part.From == Input || part.To == Input)
        && Parts.All(part => part.Kind == PartKind.Capacitor || (part.From != Input && part.To != Input))
        && OpAmps.All(opAmp => opAmp.Plus != Input && opAmp.Minus != Input);

    /// <summary>The part of a role; null where it is not fitted.</summary>
    public CircuitPart? Find(string role) => Parts.FirstOrDefault(part => part.Role == role);
}

/// <summary>A circuit being written down, part by part.</summary>
internal sealed class CircuitDraft(Ratio resistorTolerance, Ratio capacitorTolerance)
{
    private readonly List<CircuitPart> _parts = [];
    private readonly List<CircuitOpAmp> _opAmps = [];

    public CircuitDraft Resistor(string role, string label, string from, string to, Resistance value, int pieces = 1) =>
        Add(new CircuitPart(role, label, PartKind.Resistor, from, to, value.Ohms, resistorTolerance.Fraction) { Pieces = pieces });

    public CircuitDraft Capacitor(string role, string label, string from, string to, Capacitance value, int pieces = 1) =>
        Add(new CircuitPart(role, label, PartKind.Capacitor, from, to, value.Farads, capacitorTolerance.Fraction) { Pieces = pieces });

    /// <param name="role">What it is there.</param>
    public CircuitDraft OpAmp(OpAmp model, string output, string plus, string minus, string role = "op-amp")
    {
        _opAmps.Add(new CircuitOpAmp(role, "opamp", model, output, plus, minus));
        return this;
    }

    /// <summary>A non-inverting amplifier 1 + Rf/Rg from a node to <see cref="Circuit.Out"/>; without Rg a follower, which has no Rf
    /// either.</summary>
    public CircuitDraft NonInverting(OpAmp model, string plus, Resistance feedback, Resistance? ground)
    {
        if (ground is not { } rg)
        {
            return OpAmp(model, Circuit.Out, plus, Circuit.Out);
        }

        Resistor("feedback-resistor", "Rf", Circuit.Out, "minus", feedback);
        Resistor("ground-resistor", "Rg", "minus", Circuit.Common, rg);
        return OpAmp(model, Circuit.Out, plus, "minus");
    }

    public Circuit Finish(string output = Circuit.Out) => new(_parts, _opAmps, output);

    private CircuitDraft Add(CircuitPart part)
    {
        _parts.Add(part);
        return this;
    }
}
