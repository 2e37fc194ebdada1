using FrontEnd.Converter;

namespace FrontEnd.Budgets;

/// <summary>F(f): the noise density that sampling folds onto f, at the converter's output [V²/Hz].</summary>
/// <remarks>
/// Successive approximation: Σ_{k=1..8} Σ_± S(k·fs ± f) + (2/fs)·∫_{8.5fs}^{1 GHz} S. Delta-sigma: the same terms times |H_adc|², plus
/// |H_adc(f)|²·[Σ_{m=1,2} Σ_± S(m·f_mod ± f) + (2/f_mod)·∫_{2.5f_mod}^{1 GHz} S]. The integral stands for the zones beyond, where S no
/// longer changes within a zone.
/// <para>F is smooth over the band (what folds lies far from where it lands), so it is worked out at Chebyshev points and interpolated;
/// the number of intervals is doubled until the last coefficients are below 1e-9 of the first.</para>
/// </remarks>
internal sealed class FoldedNoise
{
    internal const int Zones = 8;
    internal const int ModulatorZones = 2;
    private const double HighestHertz = 1e9;
    private const int FewestIntervals = 8, MostIntervals = 256;
    private const double FineFit = 1e-9, CoarseFit = 1e-6;

    private readonly SignalPath _path;
    private readonly AnalogDigitalConverter _converter;
    private readonly double _low;
    private readonly double _high;
    private readonly double _tail;
    private double[] _coefficients = [];

    public FoldedNoise(SignalPath path, AnalogDigitalConverter converter, double lowHertz, double highHertz)
        : this(path, converter)
    {
        (_low, _high) = (lowHertz, highHertz);
        Fit();
    }

    /// <summary>Without interpolation: for <see cref="Exact"/> alone.</summary>
    public FoldedNoise(SignalPath path, AnalogDigitalConverter converter)
    {
        _path = path;
        _converter = converter;
        double zone = converter.Kind == ConverterKind.DeltaSigma ? converter.ModulatorClock.Hertz : converter.Rate.Hertz;
        double from = zone * (converter.Kind == ConverterKind.DeltaSigma ? ModulatorZones + 0.5 : Zones + 0.5);
        _tail = from < HighestHertz ? 2 / zone * Tail(from) : 0;
    }

    /// <summary>False where the tail's integral or the interpolation did not reach its tolerance.</summary>
    public bool Converged { get; private set; } = true;

    /// <summary>2 over the zone's width, times ∫S of the zones beyond those taken one by one [V²/Hz].</summary>
    internal double TailDensity => _tail;

    /// <summary>F(f) by Clenshaw's recurrence.</summary>
    public double At(double hertz)
    {
        double x = ((2 * hertz) - _low - _high) / (_high - _low), b1 = 0, b2 = 0;
        for (int i = _coefficients.Length - 1; 1 <= i; i--)
        {
            (b1, b2) = ((2 * x * b1) - b2 + _coefficients[i], b1);
        }

        return (x * b1) - b2 + _coefficients[0];
    }

    /// <summary>F at given frequencies, term by term: what the interpolation is made from.</summary>
    internal double[] Exact(double[] hertz)
    {
        double fs = _converter.Rate.Hertz;
        var folded = new double[hertz.Length];
        bool deltaSigma = _converter.Kind == ConverterKind.DeltaSigma;
        AddZones(hertz, fs, Zones, deltaSigma ? f => Square(_converter.Response(f)) : _ => 1, folded);
        double[] beyond = Beyond(hertz);
        for (int i = 0; i < folded.Length; i++)
        {
            folded[i] += beyond[i];
        }

        return folded;
    }

    /// <summary>What of it comes from beyond the zones of the sampling rate that are taken one by one [V²/Hz].</summary>
    internal double[] Beyond(double[] hertz)
    {
        var beyond = new double[hertz.Length];
        if (_converter.Kind == ConverterKind.DeltaSigma)
        {
            AddZones(hertz, _converter.ModulatorClock.Hertz, ModulatorZones, _ => 1, beyond);
        }

        for (int i = 0; i < beyond.Length; i++)
        {
            beyond[i] = (beyond[i] + _tail) * Square(_converter.Response(hertz[i]));
        }

        return beyond;
    }

    private static double Square(double x) => x * x;

    /// <summary>Interpolates at the ends and at the extremes of Chebyshev's polynomials between them; every second point of the next finer
    /// set is one of these, so nothing is worked out twice.</summary>
    private void Fit()
    {
        double[] values = [];
        for (int intervals = FewestIntervals; ; intervals *= 2)
        {
            values = Refined(values, intervals);
            _coefficients = Coefficients(values);
            double last = Math.Abs(_coefficients[^1]) + Math.Abs(_coefficients[^2]) + Math.Abs(_coefficients[^3]);
            bool isFine = last <= FineFit * Math.Abs(_coefficients[0]);
            if (isFine || MostIntervals <= intervals)
            {
                // What folds is a part of the noise: a coarser fit of it may still do.
                Converged &= isFine || last <= CoarseFit * Math.Abs(_coefficients[0]);
                return;
            }
        }
    }

    /// <summary>F at the points of so many intervals, those known from half as many among them.</summary>
    private double[] Refined(double[] known, int intervals)
    {
        int step = known.Length == 0 ? 1 : 2;
        var values = new double[intervals + 1];
        var hertz = new double[step == 1 ? intervals + 1 : intervals / 2];
        for (int i = 0; i < hertz.Length; i++)
        {
            int at = step == 1 ? i : (2 * i) + 1;
            hertz[i] = (0.5 * (_low + _high)) + (0.5 * (_high - _low) * Math.Cos(Math.PI * at / intervals));
        }

        double[] found = Exact(hertz);
        for (int i = 0; i < values.Length; i++)
        {
            values[i] = step == 1 ? found[i] : (i % 2 == 0 ? known : found)[i / 2];
        }

        return values;
    }

    /// <summary>Of Chebyshev's polynomials, by the cosine transform: the first and the last point count half, and so do the first and the last
    /// coefficient.</summary>
    private static double[] Coefficients(double[] values)
    {
        int n = values.Length - 1;
        var coefficients = new double[n + 1];
        for (int k = 0; k <= n; k++)
        {
            double sum = (values[0] + ((k % 2 == 0 ? 1 : -1) * values[n])) / 2;
            for (int i = 1; i < n; i++)
            {
                sum += values[i] * Math.Cos(Math.PI * ((long)k * i % (2 * n)) / n);
            }

            coefficients[k] = sum * (k == 0 || k == n ? 1.0 : 2.0) / n;
        }

        return coefficients;
    }

    private void AddZones(double[] hertz, double zone, int zones, Func<double, double> weight, double[] sum)
    {
        Span<double> lanes = stackalloc double[SignalPath.Chunk], density = stackalloc double[SignalPath.Chunk];
        Span<int> owner = stackalloc int[SignalPath.Chunk];
        int n = 0;
        for (int i = 0; i < hertz.Length; i++)
        {
            for (int k = 1; k <= zones; k++)
            {
                for (int sign = -1; sign <= 1; sign += 2)
                {
                    owner[n] = i;
                    lanes[n++] = (k * zone) + (sign * hertz[i]);
                    if (n == lanes.Length || (i == hertz.Length - 1 && k == zones && sign == 1))
                    {
                        _path.SweepDensity(lanes[..n], density);
                        for (int lane = 0; lane < n; lane++)
                        {
                            sum[owner[lane]] += density[lane] * weight(lanes[lane]);
                        }

                        n = 0;
                    }
                }
            }
        }
    }

    private double Tail(double from)
    {
        BandIntegral integral = BandIntegral.Over(
            BreakPoints.Between([from, HighestHertz], _path.Bends, 6),
            1,
            (hertz, values) => _path.SweepDensity(hertz, values[0]),
            1e-7);
        Converged &= integral.Converged;
        return integral.Sum(0);
    }
}
