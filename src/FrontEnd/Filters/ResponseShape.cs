using System.Numerics;

namespace FrontEnd.Filters;

/// <summary>What a filter passes: low-pass, high-pass, band-pass or band-stop, with its corners. Composed with a <see
/// cref="Prototype"/>.</summary>
/// <remarks>What a corner means is the prototype's business (<see cref="Prototype.CornerMeaning"/>). The transforms of the normalised
/// low-pass (corner 1 rad/s) are
/// s → s/ω0, s → ω0/s, s → (s² + ω0²)/(s·B) and its inverse, ω0² = ω1·ω2, B = ω2 − ω1.
/// Source: R. Schaumann, M. E. Van Valkenburg, Design of Analog Filters, chapter 9 (from memory).</remarks>
public abstract record ResponseShape
{
    /// <summary>Poles of the finished filter for each pole of the prototype: 2 for band shapes.</summary>
    public abstract int OrderFactor { get; }

    /// <summary>The corners in hertz, lowest first.</summary>
    public abstract IReadOnlyList<Frequency> Corners { get; }

    /// <summary>The normalised low-pass, transformed.</summary>
    /// <param name="angular">Angular frequency [rad/s] of a corner: 2π·f, or prewarped for the bilinear transform.</param>
    internal abstract ZeroPoleGain Transform(ZeroPoleGain prototype, Func<Frequency, double> angular);

    /// <summary>Where the pass band is looked at for scaling: 0, ∞ or ω0 [rad/s].</summary>
    internal abstract double ReferenceAngular(Func<Frequency, double> angular);

    private protected static Complex Ratio(IEnumerable<Complex> zeros, IReadOnlyList<Complex> poles)
    {
        Complex value = 1;
        int i = 0;
        foreach (Complex zero in zeros)
        {
            value *= -zero;
            value /= -poles[i++];
        }

        while (i < poles.Count)
        {
            value /= -poles[i++];
        }

        return value;
    }

    /// <summary>The two roots that each of a prototype's gives, in its order.</summary>
    private protected static List<Complex> BandRoots(IEnumerable<Complex> halves, double centre)
    {
        List<Complex> roots = [];
        foreach (Complex half in halves)
        {
            (Complex first, Complex second) = BandRoots(half, centre);
            roots.AddRange([first, second]);
        }

        return roots;
    }

    /// <summary>The two roots of s² − 2·half·s + ω0² = 0.</summary>
    /// <remarks>The larger root is formed without cancellation and the smaller as ω0² over it: a narrow low edge keeps its
    /// digits.</remarks>
    private static (Complex First, Complex Second) BandRoots(Complex half, double centre)
    {
        Complex root = Complex.Sqrt((half * half) - (centre * centre));
        if (half.Imaginary == 0 && root.Real == 0)
        {
            return (half + root, half - root);
        }

        if (half.Real == 0)
        {
            // A zero on the imaginary axis stays on it exactly.
            double r = Math.Sqrt((half.Imaginary * half.Imaginary) + (centre * centre));
            double large = half.Imaginary < 0 ? half.Imaginary - r : half.Imaginary + r;
            return (new Complex(0, large), new Complex(0, -(centre * centre) / large));
        }

        Complex plus = half + root;
        Complex minus = half - root;
        Complex larger = Complex.Abs(plus) < Complex.Abs(minus) ? minus : plus;
        return (larger, centre * centre / larger);
    }
}

/// <summary>Passes what is below the corner.</summary>
internal sealed record LowPass(Frequency Corner) : ResponseShape
{
    public override int OrderFactor => 1;
    public override IReadOnlyList<Frequency> Corners => [Corner];

    internal override ZeroPoleGain Transform(ZeroPoleGain prototype, Func<Frequency, double> angular)
    {
        double w0 = angular(Corner);
        double gain = prototype.Gain * Math.Pow(w0, prototype.Poles.Count - prototype.Zeros.Count);
        return new ZeroPoleGain([.. prototype.Zeros.Select(z => z * w0)], [.. prototype.Poles.Select(p => p * w0)], gain);
    }

    internal override double ReferenceAngular(Func<Frequency, double> angular) => 0;
}

/// <summary>Passes what is above the corner.</summary>
internal sealed record HighPass(Frequency Corner) : ResponseShape
{
    public override int OrderFactor => 1;
    public override IReadOnlyList<Frequency> Corners => [Corner];

    internal override ZeroPoleGain Transform(ZeroPoleGain prototype, Func<Frequency, double> angular)
    {
        double w0 = angular(Corner);
        var zeros = prototype.Zeros.Select(z => Reciprocal(z, w0)).ToList();
        while (zeros.Count < prototype.Poles.Count)
        {
            zeros.Add(Complex.Zero);
        }

        double gain = prototype.Gain * Ratio(prototype.Zeros, prototype.Poles).Real;
        return new ZeroPoleGain(zeros, [.. prototype.Poles.Select(p => Reciprocal(p, w0))], gain);
    }

    internal override double ReferenceAngular(Func<Frequency, double> angular) => double.PositiveInfinity;

    private static Complex Reciprocal(Complex root, double w0) => root.Real == 0 ? new Complex(0, -w0 / root.Imaginary) : w0 / root;
}

/// <summary>Passes what is between the corners; geometrically symmetric about √(low·high).</summary>
internal sealed record BandPass(Frequency Low, Frequency High) : ResponseShape
{
    public override int OrderFactor => 2;
    public override IReadOnlyList<Frequency> Corners => [Low, High];

    internal override ZeroPoleGain Transform(ZeroPoleGain prototype, Func<Frequency, double> angular)
    {
        double bandwidth = angular(High) - angular(Low);
        double centre = Math.Sqrt(angular(Low) * angular(High));
        List<Complex> zeros = BandRoots(prototype.Zeros.Select(zero => zero * (bandwidth / 2)), centre);
        List<Complex> poles = BandRoots(prototype.Poles.Select(pole => pole * (bandwidth / 2)), centre);
        int degree = prototype.Poles.Count - prototype.Zeros.Count;
        zeros.AddRange(Enumerable.Repeat(Complex.Zero, degree));
        return new ZeroPoleGain(zeros, poles, prototype.Gain * Math.Pow(bandwidth, degree));
    }

    internal override double ReferenceAngular(Func<Frequency, double> angular) => Math.Sqrt(angular(Low) * angular(High));
}

/// <summary>Stops what is between the corners.</summary>
internal sealed record BandStop(Frequency Low, Frequency High) : ResponseShape
{
    public override int OrderFactor => 2;
    public override IReadOnlyList<Frequency> Corners => [Low, High];

    internal override ZeroPoleGain Transform(ZeroPoleGain prototype, Func<Frequency, double> angular)
    {
        double bandwidth = angular(High) - angular(Low);
        double centre = Math.Sqrt(angular(Low) * angular(High));
        List<Complex> poles = BandRoots(prototype.Poles.Select(pole => bandwidth / 2 / pole), centre);
        List<Complex> zeros = BandRoots(
            prototype.Zeros.Select(zero => zero.Real == 0 ? new Complex(0, -bandwidth / 2 / zero.Imaginary) : bandwidth / 2 / zero),
                centre);
        for (int i = prototype.Zeros.Count; i < prototype.Poles.Count; i++)
        {
            zeros.Add(new Complex(0, centre));
            zeros.Add(new Complex(0, -centre));
        }

        return new ZeroPoleGain(zeros, poles, prototype.Gain * Ratio(prototype.Zeros, prototype.Poles).Real);
    }

    internal override double ReferenceAngular(Func<Frequency, double> angular) => 0;
}
