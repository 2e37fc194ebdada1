using System.Numerics;
using FrontEnd.Networks;
using FrontEnd.Topologies;

namespace FrontEnd.Budgets;

/// <summary>One gain stage or anti-alias section solved for a group of lanes.</summary>
internal sealed class StageLanes
{
    private readonly StageModel _model;
    private readonly NetworkLanes _network;
    private readonly (int Element, int Resistor, double Nominal)[] _parts;
    private readonly (int Port, double Density)[] _resistors;
    private readonly int[] _currentPorts;
    private readonly int[] _voltagePorts;
    private readonly Vector<double>[] _resistorLevel;
    private Vector<double> _currentLevel;
    private Vector<double> _voltageLevel;

    public StageLanes(StageModel model, bool isChecked)
    {
        InnerTransfer = new ComplexLanes[model.InnerNodes.Count];
        InnerNoise = new Vector<double>[InnerTransfer.Length];
        _model = model;
        _network = new NetworkLanes(model.Program, isChecked);
        _parts = [.. model.Parts.Select(part => (part.Element, part.Resistor, model.Program.Elements[part.Element].Value))];
        _resistors = [.. model.Resistors];
        _currentPorts = [.. model.CurrentPorts];
        _voltagePorts = [.. model.VoltagePorts];
        _resistorLevel = new Vector<double>[_resistors.Length];
    }

    public bool HasOpAmp => _model.OpAmp is not null;

    /// <summary>See <see cref="NetworkLanes.Live"/>.</summary>
    public int Live
    {
        set => _network.Live = value;
    }

    /// <summary>See <see cref="NetworkLanes.Fallbacks"/>.</summary>
    public int Fallbacks => _network.Fallbacks;

    /// <summary>From the stage's input to its output.</summary>
    public ComplexLanes Transfer { get; private set; }

    /// <summary>From the stage's input to its inner nodes that can clip.</summary>
    public ComplexLanes[] InnerTransfer { get; }

    /// <summary>Noise of the stage's own parts there [V²/Hz].</summary>
    public Vector<double>[] InnerNoise { get; }

    /// <summary>Noise at the stage's output of its resistors, of its op-amp's input currents and of its voltage noise [V²/Hz].</summary>
    public Vector<double> ResistorNoise { get; private set; }

    public Vector<double> CurrentNoise { get; private set; }

    public Vector<double> VoltageNoise { get; private set; }

    /// <summary>All of it.</summary>
    public Vector<double> Noise => ResistorNoise + CurrentNoise + VoltageNoise;

    /// <summary>Puts a build on each lane.</summary>
    public void Set(StageBuildLanes build)
    {
        _network.Begin();
        for (int i = 0; i < _parts.Length; i++)
        {
            (int element, int resistor, double nominal) = _parts[i];
            Vector<double> factor = build.Factor[i];
            if (0 <= resistor)
            {
                _network.Vary(element, new Vector<double>(nominal) / factor);
                _resistorLevel[resistor] = new Vector<double>(_resistors[resistor].Density) / factor;
            }
            else
            {
                _network.Vary(element, nominal * factor);
            }
        }

        _currentLevel = build.OpAmp.CurrentNoise * build.OpAmp.CurrentNoise;
        _voltageLevel = build.OpAmp.VoltageNoise * build.OpAmp.VoltageNoise;
    }

    /// <summary>Multiplies the powers of its noise sources, after <see cref="Set"/>.</summary>
    public void Weigh(double resistors, double current, double voltage)
    {
        for (int i = 0; i < _resistorLevel.Length; i++)
        {
            _resistorLevel[i] *= resistors;
        }

        _currentLevel *= current;
        _voltageLevel *= voltage;
    }

    /// <summary>Works out the transfer at a frequency of each lane [Hz].</summary>
    public void Solve(Vector<double> hertz)
    {
        _network.Factor(2 * Math.PI * hertz);
        _network.SolveAdjoint(0);
        Transfer = _network.Transfer(_model.SignalPort);
    }

    /// <summary>Group delay from the stage's input to its output at the frequencies of the last <see cref="Solve"/>, before anything else is
    /// solved [s].</summary>
    public Vector<double> Delay() => ComplexLanes.Delay(Transfer, _network.Slope(_model.SignalPort, []));

    /// <summary>Works out the stage's own noise at the frequencies of the last <see cref="Solve"/>: resistors 4kT/R, op-amp en²·(1 +
    /// fc/f) and in²·(1 + fc/f).</summary>
    public void SolveNoise(Vector<double> hertz)
    {
        (ResistorNoise, CurrentNoise, VoltageNoise) = Noises(hertz);
    }

    /// <summary>Works out transfer and noise at the inner nodes at the frequencies of the last <see cref="Solve"/>, after <see
    /// cref="SolveNoise"/>: they share the solved network.</summary>
    public void SolveInner(Vector<double> hertz, bool withNoise)
    {
        for (int i = 0; i < InnerTransfer.Length; i++)
        {
            _network.SolveAdjoint(i + 1);
            InnerTransfer[i] = _network.Transfer(_model.SignalPort);
            if (withNoise)
            {
                (Vector<double> resistors, Vector<double> current, Vector<double> voltage) = Noises(hertz);
                InnerNoise[i] = resistors + current + voltage;
            }
        }
    }

    /// <summary>What <see cref="Solve"/>, <see cref="SolveNoise"/> and <see cref="SolveInner"/> found last.</summary>
    public StageSolution Solution
    {
        get => new(Transfer, ResistorNoise, CurrentNoise, VoltageNoise, [.. InnerTransfer], [.. InnerNoise]);
        set
        {
            (Transfer, ResistorNoise, CurrentNoise, VoltageNoise) = (value.Transfer, value.ResistorNoise, value.CurrentNoise, value.VoltageNoise);
            value.InnerTransfer.CopyTo(InnerTransfer, 0);
            value.InnerNoise.CopyTo(InnerNoise, 0);
        }
    }

    /// <summary>At the node that the network was last solved for.</summary>
    private (Vector<double> Resistors, Vector<double> Current, Vector<double> Voltage) Noises(Vector<double> hertz)
    {
        Vector<double> sum = Vector<double>.Zero;
        for (int i = 0; i < _resistorLevel.Length; i++)
        {
            sum += _resistorLevel[i] * _network.Transfer(_resistors[i].Port).Power;
        }

        if (_model.OpAmp is not { } opAmp)
        {
            return (sum, default, default);
        }

        return (
            sum,
            NoiseDensity.Flicker(_currentLevel, opAmp.CurrentNoiseCorner.Hertz, hertz) * Power(_currentPorts),
            NoiseDensity.Flicker(_voltageLevel, opAmp.NoiseCorner.Hertz, hertz) * Power(_voltagePorts));
    }

    private Vector<double> Power(int[] ports)
    {
        Vector<double> sum = Vector<double>.Zero;
        for (int i = 0; i < ports.Length; i++)
        {
            sum += _network.Transfer(ports[i]).Power;
        }

        return sum;
    }
}
