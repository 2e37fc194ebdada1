using System.Numerics;
using FrontEnd.Digital;
using FrontEnd.Filters;

namespace FrontEnd.Tests.Plain;

/// <summary>A digital filter by its roots: a normalised low-pass, its corners moved and the bilinear transform applied root by root. Double precision, nothing rounded.</summary>
internal sealed class PlainDigital
{
    private readonly Complex[] _zeros;
    private readonly Complex[] _poles;
    private readonly double _gain;
    private readonly double _rate;

    private PlainDigital(string name, Complex[] zeros, Complex[] poles, double gain, double rate) => (Name, _zeros, _poles, _gain, _rate) = (name, zeros, poles, gain, rate);

    public string Name { get; }

    /// <summary>Where it is moved by a factor on the mains: the notch's centre; null for others.</summary>
    public double? NotchCentre { get; private init; }

    /// <summary>Frequencies about which it changes quickly.</summary>
    public double[] Features { get; private init; } = [];

    /// <summary>Time in which its slowest pole falls to a hundredth.</summary>
    public double RingTime => _poles.Length == 0 ? 0 : Math.Log(100) / (-_rate * Math.Log(_poles.Max(p => p.Magnitude)));

    /// <summary>Slowest time constant [s].</summary>
    public double Slowest => RingTime / Math.Log(100);

    public static PlainDigital Of(DigitalStage stage, double rate)
    {
        switch (stage)
        {
            case DigitalNotch notch:
                double f0 = notch.Centre.Hertz, b = 1 / (1 + Math.Tan(Math.PI * f0 / notch.Q / rate)), cos = Math.Cos(2 * Math.PI * f0 / rate);
                double width = f0 / notch.Q;
                return Section(notch.Name, rate, [b, -2 * b * cos, b, 1, -2 * b * cos, (2 * b) - 1], f0, [f0, f0 - width, f0 + width, f0 - (width / 4), f0 + (width / 4), f0 - (5 * width), f0 + (5 * width)]);
            case DigitalSections sections:
                return Cascade(sections.Name, [.. sections.Rows.Select(row => Section("", rate, row, null, []))], rate);
            case DigitalDesigned designed:
                return Designed(designed, rate);
            default:
                throw new InvalidOperationException($"{stage.GetType()} is not handled.");
        }
    }

    public Complex At(double hertz) => AtPoint(Complex.Exp(new Complex(0, 2 * Math.PI * hertz / _rate)));

    /// <summary>Group delay [s]: the sum of every root's own.</summary>
    public double Delay(double hertz)
    {
        var z = Complex.Exp(new Complex(0, 2 * Math.PI * hertz / _rate));
        double Of(Complex root) => (z / (z - root)).Real;
        return (_poles.Sum(Of) - _zeros.Where(zero => 1e-12 < (z - zero).Magnitude).Sum(Of) - (0.5 * _zeros.Count(zero => (z - zero).Magnitude <= 1e-12))) / _rate;
    }

    /// <summary>The filter as something that runs: from rest, sample by sample.</summary>
    public Func<double, double> Run()
    {
        var states = new Complex[_poles.Length];
        Complex[] zeros = [.. _zeros, .. Enumerable.Repeat(Complex.Zero, Math.Max(0, _poles.Length - _zeros.Length))];
        return x =>
        {
            Complex y = x * _gain;
            for (int i = 0; i < states.Length; i++)
            {
                Complex w = y + (_poles[i] * states[i]);
                y = w - (zeros[i] * states[i]);
                states[i] = w;
            }

            return y.Real;
        };
    }

    private static PlainDigital Section(string name, double rate, IReadOnlyList<double> row, double? notch, double[] features)
    {
        double a0 = row[3];
        (Complex[] zeros, double lead) = Roots(row[0] / a0, row[1] / a0, row[2] / a0);
        (Complex[] poles, _) = Roots(1, row[4] / a0, row[5] / a0);
        return new PlainDigital(name, zeros, poles, lead, rate) { NotchCentre = notch, Features = features };
    }

    /// <summary>Roots in z of a + b/z + c/z² and its leading number; delays without a root of their own are not allowed for.</summary>
    private static (Complex[] Roots, double Lead) Roots(double a, double b, double c)
    {
        if (a == 0)
        {
            throw new InvalidOperationException("A section whose first number is 0 is not handled.");
        }

        Complex root = Complex.Sqrt(new Complex((b * b) - (4 * a * c), 0));
        return ([(-b + root) / (2 * a), (-b - root) / (2 * a)], a);
    }

    private static PlainDigital Cascade(string name, PlainDigital[] parts, double rate) =>
        new(name, [.. parts.SelectMany(p => p._zeros)], [.. parts.SelectMany(p => p._poles)], parts.Aggregate(1.0, (product, p) => product * p._gain), rate);

    private static PlainDigital Designed(DigitalDesigned stage, double rate)
    {
        (Complex[] zeros, Complex[] poles, double gain) = PlainPrototype.Of(stage.Family, stage.Order, stage.Ripple.Value, stage.Attenuation.Value);
        double[] edges = [.. stage.Corners.Select(f => Math.Tan(Math.PI * f.Hertz / rate))];

        // What the low-pass's variable is, in the bilinear s = (z − 1)/(z + 1).
        (Func<Complex, Complex> variable, Func<Complex, Complex[]> back) = stage.Shape switch
        {
            FilterShape.LowPass => ((Func<Complex, Complex>)(s => s / edges[0]), (Func<Complex, Complex[]>)(p => [p * edges[0]])),
            FilterShape.HighPass => (s => edges[0] / s, p => [edges[0] / p]),
            FilterShape.BandPass => (s => ((s * s) + (edges[0] * edges[1])) / (s * (edges[1] - edges[0])), p => Pair(p * (edges[1] - edges[0]), edges[0] * edges[1])),
            FilterShape.BandStop => (s => s * (edges[1] - edges[0]) / ((s * s) + (edges[0] * edges[1])), p => Pair((edges[1] - edges[0]) / p, edges[0] * edges[1])),
            _ => throw new InvalidOperationException($"{stage.Shape} is not handled."),
        };
        int missing = poles.Length - zeros.Length;
        Complex j0 = Complex.ImaginaryOne * Math.Sqrt(edges[0] * edges[^1]);

        // A zero of the low-pass at infinity lies where the variable is infinite.
        Complex[] infinite = stage.Shape switch
        {
            FilterShape.LowPass => [-1],
            FilterShape.HighPass => [1],
            FilterShape.BandPass => [1, -1],
            _ => [ToZ(j0), ToZ(-j0)],
        };
        Complex[] zzeros = [.. zeros.SelectMany(back).Select(ToZ), .. Enumerable.Repeat(infinite, missing).SelectMany(x => x)];
        Complex[] zpoles = [.. poles.SelectMany(back).Select(ToZ)];
        var unit = new PlainDigital(stage.Name, zzeros, zpoles, 1, rate);

        // The gain is what makes one value right: at 1.1 rad a sample, or beside it.
        Complex at = Complex.Exp(new Complex(0, 1.1)), low = variable((at - 1) / (at + 1));
        Complex wanted = gain * zeros.Aggregate(Complex.One, (product, z) => product * (low - z)) / poles.Aggregate(Complex.One, (product, p) => product * (low - p));
        return new PlainDigital(stage.Name, zzeros, zpoles, (wanted / unit.AtPoint(at)).Real, rate)
        {
            Features = [.. stage.Corners.Select(f => f.Hertz), .. zzeros.Select(z => Math.Abs(z.Phase) * rate / (2 * Math.PI)), .. zpoles.Select(p => Math.Abs(p.Phase) * rate / (2 * Math.PI))],
        };
    }

    private static Complex ToZ(Complex s) => (1 + s) / (1 - s);

    /// <summary>Both s of s² − sum·s + product = 0.</summary>
    private static Complex[] Pair(Complex sum, double product)
    {
        Complex root = Complex.Sqrt((sum * sum) - (4 * product));
        Complex far = ((sum + root).Magnitude < (sum - root).Magnitude ? sum - root : sum + root) / 2;
        return [far, product / far];
    }

    private Complex AtPoint(Complex z)
    {
        Complex value = _gain;
        for (int i = 0; i < Math.Max(_zeros.Length, _poles.Length); i++)
        {
            value *= i < _zeros.Length ? z - _zeros[i] : z;
            value /= i < _poles.Length ? z - _poles[i] : z;
        }

        return value;
    }
}

/// <summary>Normalised low-passes, corner 1 rad/s, greatest gain 1.</summary>
internal static class PlainPrototype
{
    public static (Complex[] Zeros, Complex[] Poles, double Gain) Of(FilterFamily family, int order, double ripple, double attenuation)
    {
        double epsilon = Math.Sqrt(Math.Pow(10, ripple / 10) - 1), stop = Math.Sqrt(Math.Pow(10, attenuation / 10) - 1);
        switch (family)
        {
            case FilterFamily.Butterworth:
                return AtDc([], [.. Angles(order).Select(a => Complex.FromPolarCoordinates(1, a))], 1);
            case FilterFamily.Chebyshev:
                return AtDc([], Chebyshev(order, epsilon), order % 2 == 1 ? 1 : 1 / Math.Sqrt(1 + (epsilon * epsilon)));
            case FilterFamily.InverseChebyshev:
                Complex[] zeros = [.. Enumerable.Range(1, order).Where(i => (2 * i) - 1 != order).Select(i => Complex.ImaginaryOne / Math.Cos(Math.PI * ((2 * i) - 1) / (2 * order)))];
                return AtDc(zeros, [.. Chebyshev(order, 1 / stop).Select(p => 1 / p)], 1);
            case FilterFamily.Elliptic:
                return Elliptic(order, epsilon, stop);
            case FilterFamily.CriticallyDamped:
                return AtDc([], [.. Enumerable.Repeat(new Complex(-1 / Math.Sqrt(Math.Pow(2, 1.0 / order) - 1), 0), order)], 1);
            case FilterFamily.Bessel:
                return Bessel(order);
            default:
                throw new InvalidOperationException($"{family} is not handled.");
        }
    }

    private static IEnumerable<double> Angles(int order) => Enumerable.Range(1, order).Select(i => (Math.PI / 2) + (Math.PI * ((2 * i) - 1) / (2 * order)));

    private static Complex[] Chebyshev(int order, double epsilon)
    {
        double a = Math.Asinh(1 / epsilon) / order;
        return [.. Angles(order).Select(t => new Complex(Math.Sinh(a) * Math.Cos(t), Math.Cosh(a) * Math.Sin(t)))];
    }

    private static (Complex[] Zeros, Complex[] Poles, double Gain) AtDc(Complex[] zeros, Complex[] poles, double wanted)
    {
        Complex at = zeros.Aggregate(Complex.One, (product, z) => product * -z) / poles.Aggregate(Complex.One, (product, p) => product * -p);
        return (zeros, poles, wanted / at.Real);
    }

    /// <summary>Roots of the reverse Bessel polynomial Σ (2n − k)!/(2^(n−k)·k!·(n − k)!)·s^k by simultaneous iteration, then half power at 1.</summary>
    private static (Complex[] Zeros, Complex[] Poles, double Gain) Bessel(int order)
    {
        double Factorial(int n) => n < 2 ? 1 : n * Factorial(n - 1);
        double[] c = [.. Enumerable.Range(0, order + 1).Select(k => Factorial((2 * order) - k) / (Math.Pow(2, order - k) * Factorial(k) * Factorial(order - k)))];
        Complex[] roots = [.. Enumerable.Range(0, order).Select(i => order * Complex.Pow(new Complex(0.4, 0.9), i) * -1)];
        Complex Value(Complex s) => c.Reverse().Aggregate(Complex.Zero, (sum, k) => (sum * s) + k);
        for (int pass = 0; pass < 500; pass++)
        {
            for (int i = 0; i < order; i++)
            {
                Complex others = roots.Where((_, j) => j != i).Aggregate(Complex.One, (product, r) => product * (roots[i] - r));
                roots[i] -= Value(roots[i]) / others;
            }
        }

        double low = 0, high = 100;
        for (int i = 0; i < 200; i++)
        {
            double middle = (low + high) / 2;
            (low, high) = 0.5 < Math.Pow(c[0] / Value(new Complex(0, middle)).Magnitude, 2) ? (middle, high) : (low, middle);
        }

        return AtDc([], [.. roots.Select(r => r / low)], 1);
    }

    /// <summary>Cauer's filter: zeros and poles by Jacobi's functions, which descending Landen steps give.</summary>
    private static (Complex[] Zeros, Complex[] Poles, double Gain) Elliptic(int order, double epsilon, double stop)
    {
        double k1 = epsilon / stop, k = Degree(order, k1);
        int pairs = order / 2;
        Complex v0 = -Complex.ImaginaryOne * ArcSn(new Complex(0, 1 / epsilon), k1) / order;
        List<Complex> zeros = [], poles = [];
        for (int i = 1; i <= pairs; i++)
        {
            double u = ((2 * i) - 1.0) / order;
            Complex zero = Complex.ImaginaryOne / (k * Cd(u, k)), pole = Complex.ImaginaryOne * Cd(u - (Complex.ImaginaryOne * v0), k);
            zeros.AddRange([zero, Complex.Conjugate(zero)]);
            poles.AddRange([pole, Complex.Conjugate(pole)]);
        }

        if (order % 2 == 1)
        {
            poles.Add(new Complex((Complex.ImaginaryOne * Sn(Complex.ImaginaryOne * v0, k)).Real, 0));
        }

        return AtDc([.. zeros], [.. poles], order % 2 == 1 ? 1 : 1 / Math.Sqrt(1 + (epsilon * epsilon)));
    }

    /// <summary>k of the degree equation: k' = k1'^n·Π sn⁴(u_i, k1'), its complement taken in turn.</summary>
    private static double Degree(int order, double k1)
    {
        double complement = Math.Sqrt(1 - (k1 * k1)), product = 1;
        for (int i = 1; i <= order / 2; i++)
        {
            product *= Sn(((2 * i) - 1.0) / order, complement).Real;
        }

        double kc = Math.Pow(complement, order) * Math.Pow(product, 4);
        return Math.Sqrt(1 - (kc * kc));
    }

    private static List<double> Landen(double k)
    {
        List<double> steps = [];
        while (1e-17 < k && steps.Count < 30)
        {
            double kc = Math.Sqrt((1 - k) * (1 + k));
            k = k / (1 + kc) * (k / (1 + kc));
            steps.Add(k);
        }

        return steps;
    }

    /// <summary>cd(u·K, k).</summary>
    private static Complex Cd(Complex u, double k) => Up(Complex.Cos(u * Math.PI / 2), k);

    /// <summary>sn(u·K, k).</summary>
    private static Complex Sn(Complex u, double k) => Up(Complex.Sin(u * Math.PI / 2), k);

    private static Complex Up(Complex w, double k)
    {
        List<double> steps = Landen(k);
        for (int i = steps.Count - 1; 0 <= i; i--)
        {
            w = (1 + steps[i]) * w / (1 + (steps[i] * w * w));
        }

        return w;
    }

    /// <summary>u with sn(u·K, k) = w.</summary>
    private static Complex ArcSn(Complex w, double k)
    {
        double before = k;
        foreach (double next in Landen(k))
        {
            w = 2 * w / ((1 + next) * (1 + Complex.Sqrt(1 - (before * before * w * w))));
            before = next;
        }

        return 2 / Math.PI * Complex.Asin(w);
    }
}
