using FrontEnd.Amplifier;
using FrontEnd.Budgets;
using FrontEnd.Converter;
using FrontEnd.Reporting;

namespace FrontEnd.Spread;

/// <summary>What all builds of a run share: the device with every part at its nominal value, and the cheap rules made from it.</summary>
/// <remarks>
/// From build to build only the ratio of a density to the nominal one changes, and that ratio is smooth in log f. So the density is worked out at few
/// points (Chebyshev–Lobatto in log f) and its ratio to the nominal density is interpolated by a polynomial; the integrals of the basis polynomials
/// times the nominal density, digital filters and converter included, are worked out once by adaptive quadrature and are the weights of the points.
/// The band takes one set of points. What folds takes another, from the fold frequency to the end of the zones that are summed one by one, weighted
/// with all zones at once; the tail beyond takes the ratio at the last point.
/// </remarks>
internal sealed class SpreadSetup
{
    /// <summary>Points in the band; an odd number makes the middle one the band's geometric centre.</summary>
    public const int BandPoints = 7;

    public const int FoldPoints = 7;

    public SpreadSetup(Design design, PartList parts)
    {
        Design = design;
        Parts = parts;
        Nominal = new Evaluation(design, BuiltParts.Balanced(design));
        double low = design.Band.Low.Hertz, high = design.Band.High.Hertz;
        AnalogDigitalConverter converter = design.Converter;
        double rate = converter.Rate.Hertz;
        BandHertz = Lobatto(low, high, BandPoints);
        double top = converter.Kind == ConverterKind.DeltaSigma ? converter.ModulatorClock.Hertz * (FoldedNoise.ModulatorZones + 0.5) : rate * (FoldedNoise.Zones + 0.5);
        FoldHertz = Lobatto(rate - high, Math.Max(top, 2 * (rate - high)), FoldPoints);
        MakeBandWeights();
        MakeFoldWeights();
        Harmonics = [.. Nominal.Mains.Harmonics];
        Nominal.Path.Sweep([low]);
        NominalLowest = Nominal.Path.NodeDensity[0][0];
        if (Nominal.Drive is { UnityGainHertz: { } unity } drive)
        {
            LoopAtUnity = drive.LoopAt([unity])[0];
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

    /// <summary>Quantisation and the converter's own noise after the digital filters [V²].</summary>
    public double ConverterPower { get; private set; }

    public MainsHarmonic[] Harmonics { get; }

    /// <summary>Noise density at the amplifier's output at the band's lower edge [V²/Hz].</summary>
    public double NominalLowest { get; }

    /// <summary>The driven ground's return ratio at the nominal crossing of 1.</summary>
    public System.Numerics.Complex LoopAtUnity { get; }

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
        double white = ((converter.LsbVolts * converter.LsbVolts / 12) + (converter.Noise.Volts * converter.Noise.Volts)) / half;
        var basis = new double[BandPoints];
        BandIntegral integral = BandIntegral.Over(Nominal.Noise.BandBreaks, BandPoints + 1, (hertz, values) =>
        {
            Nominal.Path.Sweep(hertz);
            for (int lane = 0; lane < hertz.Length; lane++)
            {
                double power = Nominal.Digital.Power(hertz[lane]), response = converter.Response(hertz[lane]);
                Basis(BandHertz, hertz[lane], basis);
                for (int i = 0; i < BandPoints; i++)
                {
                    values[i][lane] = basis[i] * power * response * response * Nominal.Path.Density[lane];
                }

                values[BandPoints][lane] = power * white;
            }
        }, 1e-6);
        double[] density = Densities(BandHertz);
        for (int i = 0; i < BandPoints; i++)
        {
            BandWeights[i] = integral.Sum(i) / density[i];
        }

        ConverterPower = integral.Sum(BandPoints);
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
