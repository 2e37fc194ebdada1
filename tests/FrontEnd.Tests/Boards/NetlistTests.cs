using System.Numerics;
using FrontEnd.Boards;
using FrontEnd.Budgets;
using FrontEnd.Catalogue;
using FrontEnd.Designs;
using FrontEnd.Electrodes;
using FrontEnd.Findings;
using FrontEnd.Inputs;
using FrontEnd.Quantities;
using FrontEnd.Tests.Laws;
using FrontEnd.Tests.Plain;
using Xunit;

namespace FrontEnd.Tests.Boards;

/// <summary>The netlist solved by the tests' plain second way, from pins and values alone, has the figures of the evaluated design that can be
/// bought: what is drawn is what was computed.</summary>
public sealed class NetlistTests
{
    /// <summary>Common at small signals: supplies, and the middle, which a follower holds.</summary>
    private static readonly string[] Rails =
        [Nets.Common, Nets.Middle, Nets.Analogue, Nets.Digital, Nets.ConverterAnalogue, Nets.Battery, Nets.Protected, Nets.ReferenceVoltage];

    private static readonly double[] Hertz = [0.05, 0.5, 7, 50, 300, 5000];

    private const double Ohms = 0.1;

    public static IEnumerable<TheoryDataRow<int>> Seeds => Enumerable.Range(0, 60).Select(seed => new TheoryDataRow<int>(seed));

    [Fact]
    public void Netlist_OfTheWorkedDesigns_HasTheirTransfer() => Assert.All(Designs.All, design => Compare(OneChannel(design)));

    [Theory]
    [MemberData(nameof(Seeds))]
    public void Netlist_OfAnyDesign_HasItsTransfer(int seed)
    {
        Design design = OneChannel(DrawnDesigns.Draw(seed));
        if (DesignCheck.Run(design).All(finding => finding.Severity != Severity.Error))
        {
            Compare(design);
        }
    }

    /// <summary>Between the supplies at dc the divider and its follower give the middle that the design is evaluated with.</summary>
    [Theory]
    [MemberData(nameof(Seeds))]
    public void Netlist_OfAnyDesign_HasItsMiddle(int seed)
    {
        Design design = OneChannel(DrawnDesigns.Draw(seed));
        if (DesignCheck.Run(design).Any(finding => finding.Severity == Severity.Error))
        {
            return;
        }

        Board board = Board.Of(design);
        PlainCircuit circuit = new();
        circuit.Join(Nets.Common, PlainCircuit.Common);
        int supply = circuit.Source(Nets.Analogue, Nets.Common);
        Add(circuit, board, board.Parts.Where(part => part.Block.Kind == BlockKind.Supply), section => section.Role == BoardRoles.Follower);
        PlainSolution solution = circuit.At(0);
        double lowest = board.Design.Supply.Lowest.Volts;
        Agree(board.Design.Supply.MidRailVolts, lowest * solution.Volts(solution.OfSource(supply), Nets.Middle), $"middle of {design.Name}");
    }

    /// <summary>The design as its first channel sees it. The evaluation takes the output of each block as stiff, and so do op-amps here: one with an
    /// output resistance gives way to the next block by some 1e-4.</summary>
    private static Design OneChannel(Design design) => design.AsSeenBy(0) with
    {
        Channels = 1, Montage = new(), Input = design.Input with { ReferenceInputs = null },
        GroundDrive = design.GroundDrive with { AveragingUnlimited = true },
        Stages = [.. design.Stages.Select(stage => stage.FittedOpAmp is { } opAmp ? stage.WithOpAmp(opAmp with { OutputResistance = default }) : stage)],
    };

    private static void Compare(Design stated)
    {
        Design fixture = Fixture.With(stated, Fixture.Of(Resistance.FromOhms(Ohms), default));
        Board board = Board.Of(fixture);
        Design design = board.Design;
        SignalPath path = new(design, BuiltParts.Balanced(design));
        path.Sweep(Hertz);
        (PlainCircuit circuit, int signal) = Solved(board);
        for (int at = 0; at < Hertz.Length; at++)
        {
            Complex s = new(0, 2 * Math.PI * Hertz[at]);
            PlainSolution solution = circuit.At(s);
            Complex[] answer = solution.OfSource(signal);
            for (int node = 0; node <= design.Stages.Count; node++)
            {
                string net = node == 0 ? Nets.AmplifierOf(design) : Nets.Stage(design, node - 1);
                Agree(new Complex(path.NodeRe[node][at], path.NodeIm[node][at]), solution.Volts(answer, net), $"{net} of {stated.Name} at {Hertz[at]} Hz");
            }

            if (design.GroundIsDriven)
            {
                // The mean of the inputs is 0 in a balanced circuit: held at 1 V each it shows K.
                PlainCircuit held = Held(board, out int mean);
                PlainSolution driven = held.At(s);
                Agree(-new GroundDriveGain(design).At(Hertz[at]), driven.Volts(driven.OfSource(mean), Nets.Drive), $"K of {stated.Name} at {Hertz[at]} Hz");
            }
        }
    }

    /// <summary>Board, short circuits in place of the electrodes, the signal in the active one, and what of the amplifier is no part: its gain over
    /// the frequency and its input impedances.</summary>
    private static (PlainCircuit Circuit, int Signal) Solved(Board board)
    {
        Design design = board.Design;
        PlainCircuit circuit = SmallSignal();
        int signal = circuit.Source("metal", "body");
        Electrode(BoardRoles.Active, design.Electrodes.ActiveBuffer, "metal");
        Electrode(BoardRoles.Reference, design.Electrodes.ReferenceBuffer, "body");
        if (design.Electrodes.Ground is not null)
        {
            circuit.Resistor("body", board.Find(0, new(BlockKind.Ground), BoardRoles.At(BoardRoles.Socket, BoardRoles.Ground))!.Pins[0].Net, Ohms);
        }

        // The body and the box hang on earth, away from the mains.
        double earth = design.Mains.BodyToEarth.Farads, box = design.Mains.AmplifierToEarth.Farads;
        if (0 < earth + box)
        {
            circuit.Capacitor("body", PlainCircuit.Common, earth * box / (earth + box));
        }

        Add(circuit, board, board.Parts.Where(part => part.Block.Kind is BlockKind.Input or BlockKind.Amplifier or BlockKind.Stage or BlockKind.Ground),
            section => section.Role != BoardRoles.Follower && section.Role != BoardRoles.Unused);
        AmplifierPart(circuit, board);
        return (circuit, signal);

        void Electrode(string electrode, ElectrodeBuffer? buffer, string from)
        {
            BoardBlock block = new(BlockKind.Input);
            string lead = board.Find(0, block, BoardRoles.At(BoardRoles.Socket, electrode))!.Pins[0].Net;
            string touched = buffer is null ? lead : board.Find(0, block, BoardRoles.At(BoardRoles.Contact, electrode))!.Pins[0].Net;
            circuit.Resistor(from, touched, Ohms);
            circuit.Capacitor(lead, PlainCircuit.Common, design.Input.LeadToCommon.Farads * (1 - design.Input.DrivenShield.Fraction));
            if (buffer is not null)
            {
                string plus = board.FindOpAmp(0, block, BoardRoles.At(BoardRoles.Buffer, electrode))!.Value.Section.Plus.Net;
                circuit.Resistor(plus, PlainCircuit.Common, buffer.InputResistance.Ohms);
                circuit.Capacitor(plus, PlainCircuit.Common, buffer.InputCapacitance.Farads);
            }
        }
    }

    /// <summary>The driven ground alone, both inputs held at the same voltage.</summary>
    private static PlainCircuit Held(Board board, out int mean)
    {
        PlainCircuit circuit = SmallSignal();
        BoardPart amplifier = board.Find(0, new(BlockKind.Amplifier), BoardRoles.Amplifier)!;
        mean = circuit.Source(amplifier.Net("+IN"), PlainCircuit.Common);
        circuit.Join(amplifier.Net("+IN"), amplifier.Net("−IN"));
        Add(circuit, board, board.Parts.Where(part => part.Block.Kind == BlockKind.Ground), section => section.Block.Kind == BlockKind.Ground);
        return circuit;
    }

    private static PlainCircuit SmallSignal()
    {
        PlainCircuit circuit = new();
        foreach (string rail in Rails)
        {
            circuit.Join(rail, PlainCircuit.Common);
        }

        return circuit;
    }

    private static void AmplifierPart(PlainCircuit circuit, Board board)
    {
        Design design = board.Design;
        BoardPart part = board.Find(0, new(BlockKind.Amplifier), BoardRoles.Amplifier)!;
        string plus = part.Net("+IN"), minus = part.Net("−IN");
        double gain = board.Find(0, part.Block, BoardRoles.GainResistor) is { Value: Resistance resistor }
            ? 1 + (design.Amplifier.GainConstant!.Value.Ohms / resistor.Ohms)
            : design.Amplifier.Gain;
        foreach (string input in new[] { plus, minus })
        {
            circuit.Resistor(input, PlainCircuit.Common, design.Amplifier.CommonModeResistance.Ohms);
            circuit.Capacitor(input, PlainCircuit.Common, design.Amplifier.CommonModeCapacitance.Farads);
        }

        circuit.Resistor(plus, minus, design.Amplifier.DifferentialResistance.Ohms);
        circuit.Capacitor(plus, minus, design.Amplifier.DifferentialCapacitance.Farads);
        circuit.Controlled(part.Net("OUT"), part.Net("REF"), s => (1 + (s / (2 * Math.PI * design.Amplifier.Bandwidth.Hertz))) / gain, (plus, 1), (minus, -1));
    }

    /// <summary>Resistors and capacitors by their pins' nets, and op-amps by theirs; one without figures is ideal.</summary>
    private static void Add(PlainCircuit circuit, Board board, IEnumerable<BoardPart> parts, Func<BoardSection, bool> wanted)
    {
        foreach (BoardPart part in parts.Where(part => part.Value is not null && part.Role != BoardRoles.GainResistor))
        {
            if (part.Class == PieceClass.Resistor)
            {
                circuit.Resistor(part.Pins[0].Net, part.Pins[1].Net, part.Value!.SiValue);
            }
            else
            {
                circuit.Capacitor(part.Pins[0].Net, part.Pins[1].Net, part.Value!.SiValue);
            }
        }

        foreach (BoardSection section in board.Parts.SelectMany(part => part.Sections).Where(wanted))
        {
            if (section.Model is { } model)
            {
                circuit.OpAmp(section.Output.Net, section.Plus.Net, section.Minus.Net, model);
            }
            else
            {
                circuit.Controlled(section.Output.Net, PlainCircuit.Common, _ => 0, (section.Plus.Net, 1), (section.Minus.Net, -1));
            }
        }
    }

    private static void Agree(Complex expected, Complex actual, string what) =>
        Assert.True((expected - actual).Magnitude <= (1e-6 * expected.Magnitude) + 1e-15, $"{what}: {expected} and {actual}, {(expected - actual).Magnitude / expected.Magnitude:0.#e0} apart");
}
