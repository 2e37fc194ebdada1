using System.Numerics;

namespace FrontEnd.Filters;

/// <summary>A digital filter as a cascade of second-order sections: the form in which filters are worked with.</summary>
/// <remarks>Held as one flat array, b0 b1 b2 a1 a2 for each section, a0 = 1. The product of the sections is the whole filter, gain
/// included.
/// Coefficients only: a running filter is another thing (the runners).</remarks>
public sealed class SecondOrderSections
{
    /// <summary>Numbers held per section.</summary>
    public const int Stride = 5;

    private readonly double[] coefficients;

    /// <param name="coefficients">b0 b1 b2 a1 a2 of each section, finite.</param>
    public SecondOrderSections(ReadOnlySpan<double> coefficients)
    {
        if (coefficients.Length % Stride != 0)
        {
            throw new ArgumentOutOfRangeException(nameof(coefficients), coefficients.Length, "The length must be a multiple of 5.");
        }

        foreach (double coefficient in coefficients)
        {
            Require.Finite(coefficient);
        }

        this.coefficients = coefficients.ToArray();
    }

    /// <summary>The sections in the order of the signal.</summary>
    public SecondOrderSections(IEnumerable<Biquad> sections)
        : this(Flatten(sections))
    {
    }

    /// <summary>The cascade of no sections: passes everything.</summary>
    public static SecondOrderSections Empty { get; } = new(ReadOnlySpan<double>.Empty);

    /// <summary>Number of sections.</summary>
    public int Count => coefficients.Length / Stride;

    /// <summary>b0 b1 b2 a1 a2 of each section.</summary>
    public ReadOnlySpan<double> Coefficients => coefficients;

    /// <summary>The section at a place, from 0.</summary>
    public Biquad this[int index]
    {
        get
        {
            int i = Require.InRange(index, 0, Count - 1) * Stride;
            return new Biquad(coefficients[i], coefficients[i + 1], coefficients[i + 2], coefficients[i + 3], coefficients[i + 4]);
        }
    }

    /// <summary>In the order of the signal.</summary>
    public IEnumerable<Biquad> Sections
    {
        get
        {
            for (int i = 0; i < Count; i++)
            {
                yield return this[i];
            }
        }
    }

    /// <summary>Largest distance of a pole from the origin; 0 without sections.</summary>
    public double PoleRadius => Sections.Select(s => s.PoleRadius).DefaultIfEmpty(0).Max();

    /// <summary>True where every pole lies inside the unit circle.</summary>
    public bool IsStable => PoleRadius < 1;

    /// <summary>Gain at 0 Hz.</summary>
    public double DcGain => Sections.Aggregate(1.0, (gain, s) => gain * s.DcGain);

    /// <summary>All poles of the sections; the empty second place of a first-order section is left out.</summary>
    public IReadOnlyList<Complex> Poles =>
        [.. Sections.SelectMany(s => s.IsFirstOrder ? new[] { s.Poles.First } : [s.Poles.First, s.Poles.Second])];

    /// <summary>Sections from rows of b0 b1 b2 a0 a1 a2, divided by a0.</summary>
    public static SecondOrderSections FromRows(IEnumerable<IReadOnlyList<double>> rows) =>
        new(rows.Select(r => new Biquad(r[0] / r[3], r[1] / r[3], r[2] / r[3], r[4] / r[3], r[5] / r[3])));

    /// <summary>Several filters one after the other.</summary>
    public static SecondOrderSections Cascade(params IEnumerable<SecondOrderSections> filters) => new(filters.SelectMany(f => f.Sections));

    /// <summary>|H|² at a frequency.</summary>
    /// <remarks>With u = 4·sin²(πf/fs) and S = b0 + b1 + b2: |B|² = (S − u·(b0 + b2)/2)² + (b0 − b2)²·u·(1 − u/4), a sum of squares. Unlike
    /// the sum of b_k·e^(−jkω) this keeps its digits near
    /// 0 Hz, where the terms of a high-pass cancel and its poles lie next to z = 1, and in a notch. Derived.</remarks>
    /// <param name="hertz">Frequency [Hz]; any real number, the response repeats at the rate.</param>
    /// <param name="rate">Sampling rate fs [Hz].</param>
    public double PowerResponse(double hertz, double rate)
    {
        double sine = Math.Sin(Math.PI / rate * hertz);
        return PowerAt(coefficients, 4 * sine * sine);
    }

    /// <summary>|H|² at many frequencies; allocates nothing.</summary>
    public void PowerResponse(ReadOnlySpan<double> hertz, double rate, Span<double> destination)
    {
        if (destination.Length < hertz.Length)
        {
            throw new ArgumentOutOfRangeException(
                nameof(destination), destination.Length, "The destination must be as long as the frequencies.");
        }

        ReadOnlySpan<double> c = coefficients;
        double scale = Math.PI / rate;
        for (int i = 0; i < hertz.Length; i++)
        {
            double sine = Math.Sin(scale * hertz[i]);
            destination[i] = PowerAt(c, 4 * sine * sine);
        }
    }

    /// <summary>H at a frequency, with v = z⁻¹ written as 1 + d for the same reason as in <see cref="PowerResponse(double,
    /// double)"/>.</summary>
    public Complex Response(double hertz, double rate)
    {
        double half = Math.PI * hertz / rate;
        Complex d = new Complex(0, -2 * Math.Sin(half)) * Complex.FromPolarCoordinates(1, -half);
        Complex value = 1;
        for (int i = 0; i < coefficients.Length; i += Stride)
        {
            Complex numerator = Around(coefficients[i], coefficients[i + 1], coefficients[i + 2], d);
            value *= numerator / Around(1, coefficients[i + 3], coefficients[i + 4], d);
        }

        return value;
    }

    /// <summary>Group delay −dφ/dω [s], worked out from the coefficients, not by differences.</summary>
    /// <remarks>For a polynomial B(v) the delay is Re(v·B'/B) samples; a section's is its numerator's less its denominator's. A numerator
    /// with zeros on the unit circle
    /// has the constant delay of its symmetry, also at the zero itself. Derived.</remarks>
    public double GroupDelay(double hertz, double rate)
    {
        double sine = Math.Sin(Math.PI * hertz / rate);
        double u = 4 * sine * sine;
        double samples = 0;
        for (int i = 0; i < coefficients.Length; i += Stride)
        {
            samples += NumeratorDelay(coefficients[i], coefficients[i + 1], coefficients[i + 2], u);
            samples -= PolynomialDelay(1, coefficients[i + 3], coefficients[i + 4], u);
        }

        return samples / rate;
    }

    internal static double PowerAt(ReadOnlySpan<double> c, double u)
    {
        double value = 1;
        for (int i = 0; i + Stride <= c.Length; i += Stride)
        {
            value *= Power(c[i], c[i + 1], c[i + 2], u) / Power(1, c[i + 3], c[i + 4], u);
        }

        return value;
    }

    internal static double Power(double c0, double c1, double c2, double u)
    {
        double sum = c0 + c1 + c2;
        double difference = c0 - c2;
        double even = sum - (0.5 * u * (c0 + c2));
        return (even * even) + (difference * difference * u * (1 - (0.25 * u)));
    }

    private static Complex Around(double c0, double c1, double c2, Complex d) => c0 + c1 + c2 + (d * (c1 + (2 * c2) + (d * c2)));

    private static double NumeratorDelay(double b0, double b1, double b2, double u)
    {
        if (b2 == b0 || (b1 == 0 && b2 == -b0))
        {
            return 1;
        }

        if (b2 == 0 && Math.Abs(b1) == Math.Abs(b0))
        {
            return 0.5;
        }

        return PolynomialDelay(b0, b1, b2, u);
    }

    private static double PolynomialDelay(double c0, double c1, double c2, double u)
    {
        double power = Power(c0, c1, c2, u);
        if (power == 0)
        {
            return 0;
        }

        double sum = c0 + c1 + c2;
        double difference = c0 - c2;
        double weighted = (sum * (sum - difference))
            - (0.5 * u * ((sum * (c0 + (3 * c2))) - (difference * (c0 - (3 * c2)))))
            + (u * u * c0 * c2);
        return weighted / power;
    }

    private static double[] Flatten(IEnumerable<Biquad> sections)
    {
        var flat = new List<double>();
        foreach (Biquad s in sections)
        {
            flat.AddRange([s.B0, s.B1, s.B2, s.A1, s.A2]);
        }

        return [.. flat];
    }
}
