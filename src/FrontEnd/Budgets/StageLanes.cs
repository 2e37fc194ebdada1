using System.Numerics;
using FrontEnd.Topologies;
using FrontEnd.Networks;

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

    /// <summary>Works out the transfer at a frequency of each lane [Hz].</summary>
    public void Solve(Vector<double> hertz)
    {
        _network.Factor(2 * Math.PI * hertz);
        _network.SolveAdjoint(0);
        Transfer = _network.Transfer(_model.SignalPort);
    }

    /// <summary>Works out the stage's own noise at the frequencies of the last <see cref="Solve"/>: resistors 4kT/R, op-amp en²·(1 +
    /// fc/f) and in²·(1 + fc/f).</summary>
    public void SolveNoise(Vector<double> hertz)
    {
        Vector<double> sum = Vector<double>.Zero;
        for (int i = 0; i < _resistorLevel.Length; i++)
        {
            sum += _resistorLevel[i] * _network.Transfer(_resistors[i].Port).Power;
        }

        ResistorNoise = sum;
        if (_model.OpAmp is not { } opAmp)
        {
            return;
        }

        CurrentNoise = NoiseDensity.Flicker(_currentLevel, opAmp.CurrentNoiseCorner.Hertz, hertz) * Power(_currentPorts);
        VoltageNoise = NoiseDensity.Flicker(_voltageLevel, opAmp.NoiseCorner.Hertz, hertz) * Power(_voltagePorts);
    }

    private Vector<double> Power(int[] ports)
    {
        Vector<double> sum = Vector<double>.Zero;
        foreach (int port in ports)
        {
            sum += _network.Transfer(port).Power;
        }

        return sum;
    }
}
