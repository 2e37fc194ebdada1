using System.Numerics;
using FrontEnd.Converter;
using FrontEnd.Designs;

namespace FrontEnd.Tests.Plain;

/// <summary>The path at one frequency.</summary>
/// <param name="Front">(v(A2) − v(R2)) a volt of signal.</param>
/// <param name="Transfer">From the signal to each node of the levels.</param>
/// <param name="Sources">Density at the converter's input by source, before the decimator [V²/Hz].</param>
/// <param name="Nodes">Density at each node of the levels [V²/Hz].</param>
internal sealed record PlainPoint(Complex Front, Complex[] Transfer, double[] Sources, double[] Nodes)
{
    public Complex Whole => Transfer[^1];
}

/// <summary>Every block of the path, each solved by itself; transfers multiply.</summary>
internal sealed class PlainPath
{
    private readonly Dictionary<string, int> _index = [];

    public PlainPath(Design design)
    {
        Design = design;
        Input = new PlainInput(design, new PlainSigns(1, 1, 1));
        Stages = [.. design.Stages.Select(stage => new PlainStage(stage, design.BoardTemperature.Kelvins))];
        Nodes =
        [
            .. design.Electrodes.ActiveBuffer is null ? Array.Empty<string>() : ["buffer-active"],
            .. design.Electrodes.ReferenceBuffer is null ? Array.Empty<string>() : ["buffer-reference"],
            "amplifier-inner-plus", "amplifier-inner-minus", "amplifier",
            .. Stages.SelectMany(stage => stage.Inner.Select(inner => $"{stage.Id}-{inner.Name}").Append(stage.Id)),
        ];
        Amplifiers = Array.IndexOf(Nodes, "amplifier");
        At(1);
    }

    public Design Design { get; }

    public PlainInput Input { get; }

    public PlainStage[] Stages { get; }

    /// <summary>Nodes of the levels in front of the converter's pin, in order.</summary>
    public string[] Nodes { get; }

    /// <summary>The amplifier's output among the nodes; what stands before it is the input's.</summary>
    public int Amplifiers { get; }

    /// <summary>Sources of noise, each with the lead that it belongs to behind a vertical line.</summary>
    public IEnumerable<string> Sources => _index.OrderBy(pair => pair.Value).Select(pair => pair.Key);

    public double Adc(double hertz)
    {
        AnalogDigitalConverter c = Design.Converter;
        if (c.Kind != ConverterKind.DeltaSigma)
        {
            return 1;
        }

        // sin(OSR·x)/sin(x) is the sum of OSR phasors.
        double x = Math.PI * hertz / (c.Rate.Hertz * c.Oversampling), n = c.Oversampling;
        double below = Math.IEEERemainder(x, Math.PI);
        double ratio = Math.Abs(below) < 1e-9 ? 1 : Math.Abs(Math.Sin(n * below) / (n * Math.Sin(below)));
        return Math.Pow(ratio, c.SincOrder);
    }

    public Complex Amplifier(double hertz) => Design.Amplifier.Gain / new Complex(1, hertz / Design.Amplifier.Bandwidth.Hertz);

    /// <summary>From the amplifier's input to the converter.</summary>
    public Complex Behind(double hertz) => Stages.Aggregate(Amplifier(hertz), (product, stage) => product * stage.Transfer(hertz));

    public Complex Front(double hertz, PlainInput? input = null)
    {
        PlainInput at = input ?? Input;
        PlainSolution s = at.At(hertz);
        Complex[] x = s.OfSource(at.Signal);
        return s.Volts(x, "A2") - s.Volts(x, "R2");
    }

    public Complex Whole(double hertz) => Front(hertz) * Behind(hertz);

    public PlainPoint At(double hertz)
    {
        PlainSolution s = Input.At(hertz);
        Complex gain = Amplifier(hertz);
        Complex[] signal = s.OfSource(Input.Signal);
        Complex front = s.Volts(signal, "A2") - s.Volts(signal, "R2");
        int buffers = Amplifiers - 2;
        var transfer = new Complex[Nodes.Length];
        double[] nodes = new double[Nodes.Length], sources = new double[Math.Max(64, _index.Count)];
        AtInput(s, signal, gain).CopyTo(transfer, 0);
        foreach (PlainNoise noise in Input.Noise)
        {
            double density = noise.Density(hertz);
            Complex[] at = AtInput(s, noise.Answer(s), gain);
            for (int i = 0; i < at.Length; i++)
            {
                nodes[i] += density * Square(at[i]);
            }

            sources[Of(noise.Source + "|" + noise.Side)] += density * Square(at[^1]);
        }

        Amplifier.DifferentialAmplifier a = Design.Amplifier;
        double eni = a.InputNoise.VoltsPerRootHertz, eno = a.OutputNoise.VoltsPerRootHertz / a.Gain;
        double own = ((eni * eni) + (eno * eno)) * (1 + (a.NoiseCorner.Hertz / hertz)) * Square(gain);
        sources[Of("amplifier-voltage|")] += own;
        nodes[buffers] += own / 4;
        nodes[buffers + 1] += own / 4;
        nodes[buffers + 2] += own;
        int node = buffers + 2;
        foreach (PlainStage stage in Stages)
        {
            (Complex h, List<(string Source, double Density)> more, (Complex Transfer, double Density)[] inner) = stage.At(hertz);
            double square = Square(h);
            for (int i = 0; i < inner.Length; i++)
            {
                transfer[node + 1 + i] = transfer[node] * inner[i].Transfer;
                nodes[node + 1 + i] = (nodes[node] * Square(inner[i].Transfer)) + inner[i].Density;
            }

            int to = node + inner.Length + 1;
            for (int i = 0; i < sources.Length; i++)
            {
                sources[i] *= square;
            }

            nodes[to] = nodes[node] * square;
            transfer[to] = transfer[node] * h;
            node = to;
            foreach ((string source, double density) in more)
            {
                sources[Of(source + "|")] += density;
                nodes[node] += density;
            }
        }

        return new PlainPoint(front, transfer, sources[.._index.Count], nodes);
    }

    /// <summary>An answer of the input network at the buffers' outputs, the amplifier's inner nodes and its output.</summary>
    public Complex[] AtInput(PlainSolution s, Complex[] unknowns, Complex gain)
    {
        Complex plus = s.Volts(unknowns, "A2"), minus = s.Volts(unknowns, "R2"), difference = plus - minus, mean = (plus + minus) / 2;
        return
        [
            .. Design.Electrodes.ActiveBuffer is null ? Array.Empty<Complex>() : [s.Volts(unknowns, "Ab")],
            .. Design.Electrodes.ReferenceBuffer is null ? Array.Empty<Complex>() : [s.Volts(unknowns, "Rb")],
            mean + (gain * difference / 2), mean - (gain * difference / 2), gain * difference,
        ];
    }

    public static double Square(Complex z) => (z.Real * z.Real) + (z.Imaginary * z.Imaginary);

    private int Of(string source) => _index.TryGetValue(source, out int index) ? index : _index[source] = _index.Count;
}
