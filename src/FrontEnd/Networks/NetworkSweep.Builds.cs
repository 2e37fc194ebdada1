using System.Numerics;

namespace FrontEnd.Networks;

/// <summary>The second way to use a sweep: every lane is another build of the same circuit, all at one frequency.</summary>
/// <remarks>Conductances and capacitances are put together once for a group of builds and swept over the frequencies; there is no residual
/// check and no fallback here, as the drawn values stay near those of the network that has been solved with both.</remarks>
public sealed partial class NetworkSweep
{
    private Vector<double>[] _buildG = [];
    private Vector<double>[] _buildC = [];
    private Vector<double>[] _buildValue = [];

    /// <summary>Starts a group of builds with every element at the program's own value.</summary>
    internal void BeginBuilds()
    {
        if (_buildG.Length == 0)
        {
            _buildG = new Vector<double>[_program.Entries];
            _buildC = new Vector<double>[_program.Entries];
            _buildValue = new Vector<double>[_program.Elements.Length];
        }

        for (int i = 0; i < _buildG.Length; i++)
        {
            _buildG[i] = new Vector<double>(_program.G[i]);
            _buildC[i] = new Vector<double>(_program.C[i]);
        }

        for (int i = 0; i < _buildValue.Length; i++)
        {
            _buildValue[i] = new Vector<double>(_program.Elements[i].Value);
        }
    }

    /// <summary>Gives an element a value [S or F] of its own in every build.</summary>
    internal void Vary(int element, Vector<double> value)
    {
        PlacedElement placed = _program.Elements[element];
        Vector<double> change = value - _buildValue[element];
        _buildValue[element] = value;
        Vector<double>[] matrix = placed.IsCapacitor ? _buildC : _buildG;
        for (int i = 0; i < placed.Entries.Length; i++)
        {
            matrix[placed.Entries[i]] += change * placed.Weights[i];
        }
    }

    /// <summary>Factors all builds' matrices at ω [rad/s]; slots are read from the first lanes.</summary>
    internal void FactorBuilds(double omega) => FactorBuilds(new Vector<double>(omega));

    /// <summary>The same with a frequency for each build.</summary>
    internal void FactorBuilds(Vector<double> omega)
    {
        Span<Vector<double>> re = FactorRe, im = FactorIm;
        for (int i = 0; i < re.Length; i++)
        {
            re[i] = _buildG[i];
            im[i] = _buildC[i] * omega;
        }

        ReadOnlySpan<int> targets = _program.SlotEntries;
        ReadOnlySpan<double> weights = _program.SlotWeights;
        for (int i = 0; i < weights.Length; i++)
        {
            int at = targets[(2 * i) + 1] * Capacity;
            re[targets[2 * i]] += new Vector<double>(_slotRe, at) * weights[i];
            im[targets[2 * i]] += new Vector<double>(_slotIm, at) * weights[i];
        }

        Factorise();
    }

    /// <summary>Solves the adjoint of the factored builds for one output.</summary>
    internal void AdjointBuilds(int output) => AdjointSolve(_program.Outputs[output]);

    /// <summary>Transfer from a port to the output of the last adjoint solve.</summary>
    internal (Vector<double> Re, Vector<double> Im) BuildTransfer(int port) => Dot(_program.Ports[port]);

    /// <summary>Solves forward for one port.</summary>
    internal void ForwardBuilds(int port) => ForwardSolve(_program.Ports[port]);

    /// <summary>Transfer from the port of the last forward solve to an output.</summary>
    internal (Vector<double> Re, Vector<double> Im) BuildOutput(int output) => Dot(_program.Outputs[output]);
}
