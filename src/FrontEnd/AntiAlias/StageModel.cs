using FrontEnd.Circuits;
using FrontEnd.Networks;
using FrontEnd.Quantities;

namespace FrontEnd.AntiAlias;

/// <summary>One gain stage or anti-alias section as a network with its noise sources.</summary>
internal sealed class StageModel
{
    private const int Common = Network.Common;
    private readonly Network _network = new();
    private readonly List<(int Port, double Density)> _resistors = [];
    private readonly List<(string Part, int Element, int Resistor)> _parts = [];
    private readonly List<int> _currentPorts = [];
    private readonly double _boardKelvins;
    private int _voltagePort = -1;

    public StageModel(Stage stage, Temperature board)
    {
        Stage = stage;
        _boardKelvins = board.Kelvins;
        int input = _network.Node("in");
        SignalPort = _network.Source(input);
        int output = stage switch
        {
            GainStage gain => Build(gain, input),
            RcSection rc => Build(rc, input),
            SallenKeySection section => Build(section, input),
            MultipleFeedbackSection section => Build(section, input),
            TwinTNotch notch => Build(notch, input),
            _ => throw new ArgumentOutOfRangeException(nameof(stage), stage, "Stage is not handled."),
        };
        _network.Output(output);
        Program = NetworkProgram.Compile(_network);
    }

    public Stage Stage { get; }

    public NetworkProgram Program { get; }

    /// <summary>Port of the stage's input voltage.</summary>
    public int SignalPort { get; }

    /// <summary>Current ports of the resistors with 4kT/R [A²/Hz].</summary>
    public IReadOnlyList<(int Port, double Density)> Resistors => _resistors;

    /// <summary>The stage's parts by their key: the network's element, and the number among <see cref="Resistors"/> or −1.</summary>
    public IReadOnlyList<(string Part, int Element, int Resistor)> Parts => _parts;

    /// <summary>Ports of the op-amp's input currents.</summary>
    public IReadOnlyList<int> CurrentPorts => _currentPorts;

    /// <summary>Port of en; −1 for a passive section.</summary>
    public int VoltagePort => _voltagePort;

    public OpAmp? OpAmp { get; private set; }

    private int Build(GainStage stage, int input)
    {
        int plus = input;
        if (stage.CouplingCapacitor is { } coupling)
        {
            plus = _network.Node("plus");
            AddCapacitor("coupling-capacitor", input, plus, coupling);
            AddResistor("coupling-resistor", plus, Common, stage.CouplingResistor);
        }

        OpAmp = stage.OpAmp;
        int output = _network.Node("out"), minus = AddFeedback(output, stage.FeedbackResistor, stage.GroundResistor);
        if (minus != output && stage.FeedbackCapacitor is { } cf)
        {
            AddCapacitor("feedback-capacitor", output, minus, cf);
        }

        AddOpAmp(output, plus, minus);
        return output;
    }

    private int Build(RcSection stage, int input)
    {
        int point = _network.Node("P");
        AddResistor("r", input, point, stage.R);
        AddCapacitor("c", point, Common, stage.C);
        if (stage.OpAmp is null)
        {
            return point;
        }

        OpAmp = stage.OpAmp;
        int output = _network.Node("out");
        AddOpAmp(output, point, output);
        return output;
    }

    private int Build(SallenKeySection stage, int input)
    {
        int x = _network.Node("X"), point = _network.Node("P"), output = _network.Node("out");
        AddResistor("r1", input, x, stage.R1);
        AddResistor("r2", x, point, stage.R2);
        AddCapacitor("c1", x, output, stage.C1);
        AddCapacitor("c2", point, Common, stage.C2);
        OpAmp = stage.OpAmp;
        AddOpAmp(output, point, AddFeedback(output, stage.FeedbackResistor, stage.GroundResistor));
        return output;
    }

    private int Build(TwinTNotch stage, int input)
    {
        int resistors = _network.Node("between the resistors"), capacitors = _network.Node("between the capacitors"), point = _network.Node("P"), output = _network.Node("out");
        AddResistor("r1", input, resistors, stage.R1);
        AddResistor("r2", resistors, point, stage.R2);
        AddResistor("r3", capacitors, output, stage.R3);
        AddCapacitor("c1", input, capacitors, stage.C1);
        AddCapacitor("c2", capacitors, point, stage.C2);
        AddCapacitor("c3", resistors, Common, stage.C3);
        OpAmp = stage.OpAmp;
        AddOpAmp(output, point, AddFeedback(output, stage.FeedbackResistor, stage.GroundResistor));
        return output;
    }

    private int Build(MultipleFeedbackSection stage, int input)
    {
        int x = _network.Node("X"), minus = _network.Node("minus"), output = _network.Node("out");
        AddResistor("r1", input, x, stage.R1);
        AddResistor("r2", x, minus, stage.R2);
        AddResistor("r3", x, output, stage.R3);
        AddCapacitor("c1", x, Common, stage.C1);
        AddCapacitor("c2", minus, output, stage.C2);
        OpAmp = stage.OpAmp;
        AddOpAmp(output, Common, minus);
        return output;
    }

    /// <summary>Rf and Rg of a non-inverting amplifier; the node of its − input, which is the output itself without Rg.</summary>
    private int AddFeedback(int output, Resistance feedback, Resistance? ground)
    {
        if (ground is not { } rg)
        {
            return output;
        }

        int minus = _network.Node("minus");
        AddResistor("feedback-resistor", output, minus, feedback);
        AddResistor("ground-resistor", minus, Common, rg);
        return minus;
    }

    private void AddCapacitor(string part, int from, int to, Capacitance capacitance) => _parts.Add((part, _network.Capacitor(from, to, capacitance.Farads), -1));

    private void AddResistor(string part, int from, int to, Resistance resistance)
    {
        double ohms = Math.Max(1e-3, resistance.Ohms);
        _parts.Add((part, _network.Resistor(from, to, ohms), _resistors.Count));
        _resistors.Add((_network.CurrentPort(from, to), 4 * PhysicalConstants.Boltzmann * _boardKelvins / ohms));
    }

    private void AddOpAmp(int output, int plus, int minus)
    {
        OpAmp opAmp = OpAmp ?? throw new InvalidOperationException("The stage's op-amp is set before it is added.");
        int inner = output;
        if (0 < opAmp.OutputResistance.Ohms)
        {
            // No part of the board and no noise: it does not go through AddResistor.
            inner = _network.Node("before Ro");
            _network.Resistor(inner, output, opAmp.OutputResistance.Ohms);
        }

        _voltagePort = _network.OpAmp(inner, plus, minus, opAmp.DcGain, opAmp.GainBandwidth.Hertz);
        if (plus != Common)
        {
            _currentPorts.Add(_network.CurrentPort(plus, Common));
        }

        // A follower's − input hangs on its output, where a current does nothing.
        if (minus != output)
        {
            _currentPorts.Add(_network.CurrentPort(minus, Common));
        }
    }
}
