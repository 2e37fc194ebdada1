using FrontEnd.Budgets;
using FrontEnd.Converter;
using FrontEnd.Designs;
using FrontEnd.Inputs;
using FrontEnd.Reporting;

namespace FrontEnd.Spread;

/// <summary>What all builds of a run share: the device with every part at its nominal value, and the cheap rules made from it.</summary>
/// <remarks>
/// From build to build only the ratio of a density to the nominal one changes, and that ratio is smooth in log f. So the density is
/// worked out at few points (Chebyshev–Lobatto in log f) and its ratio to the nominal density is interpolated by a polynomial; the
/// integrals of the basis polynomials times the nominal density, digital filters and converter included, are worked out once by adaptive
/// quadrature and are the weights of the points. The band takes one set of points. What folds takes another, from the fold frequency to
/// the end of the zones that are summed one by one, weighted with all zones at once; the tail beyond takes the ratio at the last point.
/// </remarks>
internal sealed class SpreadSetup
{
    /// <summary>Points in the band; an odd number makes the middle one the band's geometric centre.</summary>
    public const int BandPoints = 7;

    /// <summary>The point in the middle of the band.</summary>
    public const int Middle = BandPoints / 2;

    public const int FoldPoints = 7;

    /// <summary>Surroundings of the driven ground's loop that a build's least margin is looked for in.</summary>
    private const int WorstCandidates = 3;

    public SpreadSetup(Design design, PartList parts)
    {
        Design = design;
        Parts = parts;
        Nominal = new Evaluation(design, BuiltParts.Balanced(design));
        double low = design.Band.Low.Hertz, high = design.Band.High.Hertz;
        AnalogDigitalConverter converter = design.Converter;
        double rate = converter.Rate.Hertz;
        BandHertz = Lobatto(low, high, BandPoints);
        double top = converter.Kind == ConverterKind.DeltaSigma
            ? converter.ModulatorClock.Hertz * (FoldedNoise.ModulatorZones + 0.5) : rate * (FoldedNoise.Zones + 0.5);
        FoldHertz = Lobatto(rate - high, Math.Max(top, 2 * (rate - high)), FoldPoints);
        MakeBandWeights();
        MakeFoldWeights();
        Harmonics = [.. Nominal.Mains.Harmonics];
        MakeNodeWeights();
        if (Nominal.Drive is { } drive)
        {
            Loop = drive.Point;
            WorstLoops = drive.LeastPoints(WorstCandidates);
        }
    }

    public Design Design { get; }

    public PartList Parts { get; }

    public Evaluation Nominal { get; }

    public double[] BandHertz { get; }

    public double[] FoldHertz { get; }

    /// <summary>Weight of the density at each point of the band [Hz].</summary>
    public double[] BandWeights { get; } = new double[BandPoints];

    public double[] FoldWeights { get; } = new double[FoldPoints];

    /// <summary>Weight of the density without the electrodes' excess noise at each point of the band [Hz].</summary>
    public double[] BoardWeights { get; } = new double[BandPoints];

    /// <summary>Weight of the electrodes' excess noise at each node at each point of the band, for the same [Hz].</summary>
    public double[][] NodeExcessWeights { get; } = new double[BandPoints][];

    /// <summary>Weight of each node's density without the electrodes' excess noise at each point of the band for the node's rms from 0.01
    /// Hz to half the rate [Hz].</summary>
    public double[][] NodeWeights { get; } = new double[BandPoints][];

    /// <summary>A node's largest gain in the band over the largest at the band's points.</summary>
    public double[] SignalGainScale { get; private set; } = [];

    /// <summary>What the digital filters leave of noise that is white to half the rate, within the band, over all of it.</summary>
    public double WhitePower { get; private set; }

    public MainsHarmonic[] Harmonics { get; }

    /// <summary>The loop as the design stands; null where its gain stays below 1 or nothing drives the ground.</summary>
    public LoopPoint? Loop { get; }

    /// <summary>The surroundings in which the nominal device's margin is least, the least first: a build's own least is looked for among
    /// these.</summary>
    public IReadOnlyList<LoopPoint> WorstLoops { get; } = [];

    /// <summary>
    /// Each node's noise is cut into cells about the band's points, halfway between them in log f; the first begins at the levels' lowest
    /// frequency, the last ends at half the rate. A cell's nominal power over the nominal density at its point is the point's weight. It
    /// is a small part of a level, so that this is enough; but the electrodes' excess, which stands far below the band, is weighted apart
    /// from the rest.
    /// </summary>
    private void MakeNodeWeights()
    {
        double[] edges =
        [
            LevelsBudget.LowestNoiseHertz,
            .. Enumerable.Range(0, BandPoints - 1).Select(i => Math.Sqrt(BandHertz[i] * BandHertz[i + 1])),
            Design.Converter.Rate.Hertz / 2,
        ];
        SignalPath path = Nominal.Path;
        int nodes = path.Model.LevelNodes;
        BandIntegral integral = BandIntegral.Over(edges, 2 * nodes, NodeDensities, 1e-4);
        double[][] density = [.. Enumerable.Range(0, 2 * nodes).Select(_ => new double[BandPoints])];
        NodeDensities(BandHertz, density);
        double[] most = new double[nodes];
        for (int i = 0; i < BandPoints; i++)
        {
            (NodeWeights[i], NodeExcessWeights[i]) = (new double[nodes], new double[nodes]);
            for (int node = 0; node < nodes; node++)
            {
                NodeWeights[i][node] = Weight(node, i);
                NodeExcessWeights[i][node] = Weight(nodes + node, i);
                most[node] = Math.Max(most[node], node < path.AllNodes ? path.Size(node, i) : path.BufferSize[node - path.AllNodes][i]);
            }
        }

        SignalGainScale = [.. Nominal.Levels.SignalGain.Zip(most, (gain, at) => at == 0 ? 1 : gain / at)];

        double Weight(int quantity, int i) =>
            density[quantity][i] == 0 ? 0 : integral.Sum(quantity, edges[i], edges[i + 1]) / density[quantity][i];
    }

    /// <summary>Density at every node without the electrodes' excess noise, then their excess noise at every node.</summary>
    private void NodeDensities(ReadOnlySpan<double> hertz, double[][] values)
    {
        SignalPath path = Nominal.Path;
        int nodes = path.Model.LevelNodes, behind = path.AllNodes;
        path.Sweep(hertz);
        path.SweepBuffers(hertz);
        for (int node = 0; node < nodes; node++)
        {
            (double[] density, double[] excess) = node < behind
                ? (path.NodeDensity[node], path.NodeExcess[node])
                : (path.BufferDensity[node - behind], path.BufferExcess[node - behind]);
            for (int lane = 0; lane < hertz.Length; lane++)
            {
                values[nodes + node][lane] = excess[lane];
                values[node][lane] = density[lane] - excess[lane];
            }
        }
    }

    /// <summary>Points from low to high, both included, in log f.</summary>
    private static double[] Lobatto(double low, double high, int points)
    {
        var hertz = new double[points];
        for (int i = 0; i < points; i++)
        {
            hertz[i] = Math.Exp((0.5 * Math.Log(low * high)) - (0.5 * Math.Log(high / low) * Math.Cos(Math.PI * i / (points - 1))));
        }

        return hertz;
    }

    /// <summary>The basis polynomials at one frequency; held at the ends outside the points.</summary>
    private static void Basis(double[] points, double hertz, Span<double> basis)
    {
        double x = Math.Log(Math.Clamp(hertz, points[0], points[^1]));
        for (int i = 0; i < points.Length; i++)
        {
            double product = 1;
            for (int j = 0; j < points.Length; j++)
            {
                product *= j == i ? 1 : (x - Math.Log(points[j])) / Math.Log(points[i] / points[j]);
            }

            basis[i] = product;
        }
    }

    private void MakeBandWeights()
    {
        AnalogDigitalConverter converter = Design.Converter;
        double half = converter.Rate.Hertz / 2;
        var basis = new double[BandPoints];
        int nodes = Nominal.Path.Model.LevelNodes, pin = Nominal.Path.Nodes - 1;
        double[][] density = [.. Enumerable.Range(0, 2 * nodes).Select(_ => new double[SignalPath.Chunk])];
        BandIntegral integral = BandIntegral.Over(Nominal.Noise.BandBreaks, (2 * BandPoints) + 1, (hertz, values) =>
        {
            NodeDensities(hertz, density);
            for (int lane = 0; lane < hertz.Length; lane++)
            {
                double power = Nominal.Digital.Power(hertz[lane]), response = converter.Response(hertz[lane]);
                Basis(BandHertz, hertz[lane], basis);
                for (int i = 0; i < BandPoints; i++)
                {
                    double weight = basis[i] * power * response * response;
                    values[i][lane] = weight * Nominal.Path.Density[lane];
                    values[BandPoints + i][lane] = weight * density[pin][lane];
                }

                values[2 * BandPoints][lane] = power / half;
            }
        }, 1e-6);
        NodeDensities(BandHertz, density);
        for (int i = 0; i < BandPoints; i++)
        {
            BandWeights[i] = integral.Sum(i) / Nominal.Path.Density[i];
            BoardWeights[i] = integral.Sum(BandPoints + i) / density[pin][i];
        }

        WhitePower = integral.Sum(2 * BandPoints);
    }

    private double[] Densities(double[] hertz)
    {
        Nominal.Path.Sweep(hertz);
        return Nominal.Path.Density[..hertz.Length].ToArray();
    }

    private void MakeFoldWeights()
    {
        AnalogDigitalConverter converter = Design.Converter;
        bool deltaSigma = converter.Kind == ConverterKind.DeltaSigma;
        double rate = converter.Rate.Hertz, clock = converter.ModulatorClock.Hertz, tail = Nominal.Noise.Folds.TailDensity;
        var basis = new double[FoldPoints];
        BandIntegral integral = BandIntegral.Over(Nominal.Noise.BandBreaks, FoldPoints, (hertz, values) =>
        {
            for (int lane = 0; lane < hertz.Length; lane++)
            {
                double f = hertz[lane], power = Nominal.Digital.Power(f), own = converter.Response(f);
                for (int i = 0; i < FoldPoints; i++)
                {
                    values[i][lane] = 0;
                }

                Zones(f, rate, FoldedNoise.Zones, image => deltaSigma ? Math.Pow(converter.Response(image), 2) : 1, values, lane);
                if (deltaSigma)
                {
                    Zones(f, clock, FoldedNoise.ModulatorZones, _ => own * own, values, lane);
                }

                values[FoldPoints - 1][lane] += tail * (deltaSigma ? own * own : 1);
                for (int i = 0; i < FoldPoints; i++)
                {
                    values[i][lane] *= power;
                }
            }
        }, 1e-6);
        double[] density = Densities(FoldHertz);
        for (int i = 0; i < FoldPoints; i++)
        {
            FoldWeights[i] = density[i] == 0 ? 0 : integral.Sum(i) / density[i];
        }

        void Zones(double f, double zone, int zones, Func<double, double> weight, double[][] values, int lane)
        {
            double[] images = [.. Enumerable.Range(1, zones).SelectMany(k => new[] { (k * zone) - f, (k * zone) + f })];
            double[] at = Densities(images);
            for (int n = 0; n < images.Length; n++)
            {
                Basis(FoldHertz, images[n], basis);
                for (int i = 0; i < FoldPoints; i++)
                {
                    values[i][lane] += basis[i] * at[n] * weight(images[n]);
                }
            }
        }
    }
}
