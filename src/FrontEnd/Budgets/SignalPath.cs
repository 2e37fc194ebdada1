using System.Numerics;
using FrontEnd.Designs;
using FrontEnd.Inputs;

namespace FrontEnd.Budgets;

/// <summary>One build's path at many frequencies: transfer and noise density at every node, as <see cref="PathLanes"/> works them out,
/// kept in rows.</summary>
/// <remarks>One <see cref="Sweep"/> fills the arrays; they are overwritten by the next. Not for use by two threads at a time.</remarks>
internal sealed class SignalPath
{
    /// <summary>Frequencies worked on at a time: small enough for the first caches to hold every row.</summary>
    public const int Chunk = 64;

    private readonly double[][] _density;
    private readonly double[] _shared = new double[Chunk];
    private readonly double[] _suffix = new double[Chunk];
    private int _suffixBlock = -1;

    private readonly StageMemory? _memory;
    private readonly SignalPath? _other;

    /// <param name="design">The design.</param>
    /// <param name="built">What stands in its leads; null for what it is judged with.</param>
    /// <param name="other">The path of another channel of the same design, whose stages are solved for both; null for none.</param>
    /// <param name="isOneOfMany">True where paths of other channels will be made from this one.</param>
    /// <param name="weights">See <see cref="PathModel"/>.</param>
    public SignalPath(Design design, BuiltParts? built = null, SignalPath? other = null, bool isOneOfMany = false,
        IReadOnlyDictionary<Identity.SourceId, double>? weights = null)
    {
        Built = built ?? BuiltParts.Worst(design);
        _other = other;
        _memory = other?._memory ?? (isOneOfMany ? new StageMemory() : null);
        Model = new PathModel(design, Built, other?.Model, weights);
        Builds = new BuildLanes(Model, Built);
        Lanes = new PathLanes(Model, isChecked: true, other?.Lanes, _memory);
        Lanes.Set(Builds);
        _density = [.. Model.Sources.Select(_ => new double[Chunk])];
        NodeRe = [.. Enumerable.Range(0, AllNodes).Select(_ => new double[Chunk])];
        NodeIm = [.. NodeRe.Select(_ => new double[Chunk])];
        NodeDensity = [.. NodeRe.Select(_ => new double[Chunk])];
        NodeExcess = [.. NodeRe.Select(_ => new double[Chunk])];
        BlockPower = [.. Enumerable.Range(0, Nodes).Select(_ => new double[Chunk])];
        BlockDelay = [.. Enumerable.Range(0, Nodes).Select(_ => Array.Empty<double>())];
        BufferSize = [.. Model.Input.Buffers.Select(_ => new double[Chunk])];
        BufferDensity = [.. BufferSize.Select(_ => new double[Chunk])];
        BufferExcess = [.. BufferSize.Select(_ => new double[Chunk])];
    }

    public PathModel Model { get; }

    /// <summary>Where the stages' responses bend.</summary>
    public IReadOnlyList<Bend> Bends => field ??= _other?.Bends ?? BreakPoints.Of(Model.Stages.Select(stage => stage.Circuit));

    /// <summary>What stands in the build's leads, and its electrodes' size.</summary>
    public BuiltParts Built { get; }

    /// <summary>The build, the same on all lanes.</summary>
    public BuildLanes Builds { get; }

    /// <summary>The path's lanes with the build on them; a sweep uses them.</summary>
    public PathLanes Lanes { get; }

    /// <summary>Every contribution in the order of the path.</summary>
    public IReadOnlyList<NoiseSource> Sources => Model.Sources;

    /// <summary>Nodes after the amplifier (0) and each stage.</summary>
    public int Nodes => Model.Nodes;

    /// <summary>Those, and behind them the stages' inner nodes that can clip.</summary>
    public int AllNodes => Model.AllNodes;

    /// <summary>H from the site to each node, real and imaginary part.</summary>
    public double[][] NodeRe { get; }

    public double[][] NodeIm { get; }

    /// <summary>Noise density at each node [V²/Hz].</summary>
    public double[][] NodeDensity { get; }

    /// <summary>The electrodes' excess noise in it [V²/Hz].</summary>
    public double[][] NodeExcess { get; }

    /// <summary>|H| from the site to the outputs of the electrodes' buffers, as <see cref="SweepBuffers"/> found it.</summary>
    public double[][] BufferSize { get; }

    /// <summary>Noise density there, and the electrodes' excess noise in it [V²/Hz].</summary>
    public double[][] BufferDensity { get; }

    public double[][] BufferExcess { get; }

    /// <summary>|H|² of each block by itself; block 0 is input network and amplifier.</summary>
    public double[][] BlockPower { get; }

    /// <summary>Group delay of each block by itself, where a sweep was asked for it [s].</summary>
    public double[][] BlockDelay { get; }

    /// <summary>H_front: from the site to the amplifier's input, real and imaginary part.</summary>
    public double[] FrontRe { get; } = new double[Chunk];

    public double[] FrontIm { get; } = new double[Chunk];

    /// <summary>Lanes that needed the pivoted fallback so far.</summary>
    public int Fallbacks => Lanes.Fallbacks;

    /// <summary>H from the site to the converter's pin on a lane of the last sweep.</summary>
    public Complex Path(int lane) => new(NodeRe[Nodes - 1][lane], NodeIm[Nodes - 1][lane]);

    /// <summary>|H| from the site to a node on a lane of the last sweep.</summary>
    public double Size(int node, int lane) =>
        Math.Sqrt((NodeRe[node][lane] * NodeRe[node][lane]) + (NodeIm[node][lane] * NodeIm[node][lane]));

    /// <summary>Noise density at the converter's pin on each lane of the last sweep.</summary>
    public ReadOnlySpan<double> Density => NodeDensity[Nodes - 1];

    /// <summary>Works out transfers and noise, and where it is asked for the blocks' group delays, at up to <see cref="Chunk"/> frequencies
    /// [Hz].</summary>
    public void Sweep(ReadOnlySpan<double> hertz, bool withDelay = false)
    {
        _suffixBlock = -1;
        for (int block = 0; withDelay && block < BlockDelay.Length; block++)
        {
            BlockDelay[block] = BlockDelay[block].Length == 0 ? new double[Chunk] : BlockDelay[block];
        }

        for (int first = 0; first < hertz.Length; first += Vector<double>.Count)
        {
            Lanes.Solve(Group(hertz, first), withDelay);
            StoreTransfer(first);
            StoreNoise(first);
            for (int block = 0; withDelay && block < BlockDelay.Length; block++)
            {
                Lanes.BlockDelay[block].CopyTo(BlockDelay[block], first);
            }
        }
    }

    /// <summary>Works out the noise density at the converter's pin alone [V²/Hz]; the arrays stay as they were.</summary>
    public void SweepDensity(ReadOnlySpan<double> hertz, Span<double> density)
    {
        Span<double> group = stackalloc double[Vector<double>.Count];
        for (int first = 0; first < hertz.Length; first += group.Length)
        {
            Lanes.Solve(Group(hertz, first));
            Lanes.NodeDensity[Lanes.Pin].CopyTo(group);
            group[..Math.Min(group.Length, hertz.Length - first)].CopyTo(density[first..]);
        }
    }

    /// <summary>Works out the transfers alone; noise densities stay as they were.</summary>
    public void SweepTransfer(ReadOnlySpan<double> hertz)
    {
        for (int first = 0; first < hertz.Length; first += Vector<double>.Count)
        {
            Lanes.SolveTransfer(Group(hertz, first));
            StoreTransfer(first);
        }
    }

    /// <summary>Works out transfers and noise at the outputs of the electrodes' buffers; everything else stays as it was.</summary>
    public void SweepBuffers(ReadOnlySpan<double> hertz)
    {
        for (int first = 0; 0 < BufferSize.Length && first < hertz.Length; first += Vector<double>.Count)
        {
            Lanes.SolveBuffers(Group(hertz, first));
            for (int buffer = 0; buffer < BufferSize.Length; buffer++)
            {
                Lanes.BufferTransfer[buffer].Magnitude.CopyTo(BufferSize[buffer], first);
                Lanes.BufferDensity[buffer].CopyTo(BufferDensity[buffer], first);
                Lanes.BufferExcess[buffer].CopyTo(BufferExcess[buffer], first);
            }
        }
    }

    /// <summary>Group delay of each block at a frequency [s]; block 0 is input network and amplifier.</summary>
    public double[] Delays(double hertz)
    {
        Lanes.SolveDelay(new Vector<double>(hertz));
        return Array.ConvertAll(Lanes.BlockDelay, delay => delay[0]);
    }

    /// <summary>Density of one contribution of the last sweep, carried to the converter's pin [V²/Hz].</summary>
    public void SourceDensity(int source, int lanes, Span<double> destination)
    {
        Suffix(Sources[source].Block, lanes);
        double[] density = _density[source];
        for (int lane = 0; lane < lanes; lane++)
        {
            destination[lane] = density[lane] * _suffix[lane];
        }
    }

    /// <summary>Density of what the reference's side puts into every channel alike, carried to the converter's pin [V²/Hz].</summary>
    public void SharedDensity(int lanes, Span<double> destination)
    {
        Suffix(0, lanes);
        for (int lane = 0; lane < lanes; lane++)
        {
            destination[lane] = _shared[lane] * _suffix[lane];
        }
    }

    /// <summary>The same at the amplifier's output, on a lane of the last sweep [V²/Hz].</summary>
    public double SharedAtAmplifier(int lane) => _shared[lane];

    /// <summary>What a current into a port of the input network makes at the amplifier's input, as the voltage between the two sites
    /// that would make the same there [V/A].</summary>
    /// <param name="port">The port, as <see cref="InputModel"/> numbers them.</param>
    /// <param name="hertz">Frequency [Hz].</param>
    public double AtTheSites(int port, double hertz)
    {
        SweepTransfer([hertz]);
        Complex front = new(FrontRe[0], FrontIm[0]);
        return Lanes.Input.Transfer(port).Magnitude[0] / front.Magnitude;
    }

    /// <summary>The frequencies of one group of lanes; the last one is repeated where there are too few.</summary>
    private Vector<double> Group(ReadOnlySpan<double> hertz, int first)
    {
        Lanes.Live = Math.Min(Vector<double>.Count, hertz.Length - first);
        if (first + Vector<double>.Count <= hertz.Length)
        {
            return new Vector<double>(hertz[first..]);
        }

        Span<double> group = stackalloc double[Vector<double>.Count];
        group.Fill(hertz[^1]);
        hertz[first..].CopyTo(group);
        return new Vector<double>(group);
    }

    private void StoreTransfer(int first)
    {
        Lanes.Input.Front.Re.CopyTo(FrontRe, first);
        Lanes.Input.Front.Im.CopyTo(FrontIm, first);
        for (int node = 0; node < NodeRe.Length; node++)
        {
            Lanes.Node[node].Re.CopyTo(NodeRe[node], first);
            Lanes.Node[node].Im.CopyTo(NodeIm[node], first);
        }

        for (int block = 0; block < BlockPower.Length; block++)
        {
            Lanes.BlockPower[block].CopyTo(BlockPower[block], first);
        }
    }

    private void StoreNoise(int first)
    {
        Lanes.SharedDensity.CopyTo(_shared, first);
        for (int node = 0; node < NodeRe.Length; node++)
        {
            Lanes.NodeDensity[node].CopyTo(NodeDensity[node], first);
            Lanes.NodeExcess[node].CopyTo(NodeExcess[node], first);
        }

        for (int source = 0; source < _density.Length; source++)
        {
            Lanes.SourceDensity[source].CopyTo(_density[source], first);
        }
    }

    /// <summary>Product of the power transfers of the blocks after a block; kept while the block stays the same.</summary>
    private void Suffix(int block, int lanes)
    {
        if (block == _suffixBlock)
        {
            return;
        }

        _suffixBlock = block;
        Array.Fill(_suffix, 1.0, 0, lanes);
        for (int later = block + 1; later < Nodes; later++)
        {
            double[] power = BlockPower[later];
            for (int lane = 0; lane < lanes; lane++)
            {
                _suffix[lane] *= power[lane];
            }
        }
    }
}
