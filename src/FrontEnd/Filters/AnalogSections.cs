using System.Numerics;
using System.Runtime.InteropServices;

namespace FrontEnd.Filters;

/// <summary>One analogue section: H(s) = (b0·s² + b1·s + b2)/(a0·s² + a1·s + a2), s in rad/s. a0 = 1; a section of first order has a0 = b0
/// = 0 and a1 = 1.</summary>
[StructLayout(LayoutKind.Auto)]
public readonly record struct AnalogSection(double B0, double B1, double B2, double A0, double A1, double A2)
{
    /// <summary>True for a section with one pole.</summary>
    public bool IsFirstOrder => A0 == 0;

    /// <summary>Pole frequency ω0 = √a2 [rad/s]; for a section of first order |pole| = a2.</summary>
    public double PoleAngular => IsFirstOrder ? A2 : Math.Sqrt(A2);

    /// <summary>Pole frequency f0 [Hz].</summary>
    internal double PoleHertz => PoleAngular / (2 * Math.PI);

    /// <summary>Quality Q = ω0/a1 of the pole pair; null for a section of first order.</summary>
    public double? Q => IsFirstOrder ? null : Math.Sqrt(A2) / A1;

    internal Complex At(Complex s) => ((((B0 * s) + B1) * s) + B2) / ((((A0 * s) + A1) * s) + A2);
}

/// <summary>An analogue filter as a cascade of sections; their product is the whole filter, gain included.</summary>
public sealed class AnalogSections
{
    /// <summary>The sections in the order of the signal.</summary>
    public AnalogSections(IEnumerable<AnalogSection> sections) => Sections = [.. sections];

    /// <summary>In the order of the signal.</summary>
    public IReadOnlyList<AnalogSection> Sections { get; }

    /// <summary>Number of sections.</summary>
    public int Count => Sections.Count;

    /// <summary>The section at a place, from 0.</summary>
    public AnalogSection this[int index] => Sections[index];

    /// <summary>H(j2πf).</summary>
    public Complex Response(double hertz)
    {
        var s = new Complex(0, 2 * Math.PI * hertz);
        Complex value = 1;
        foreach (AnalogSection section in Sections)
        {
            value *= section.At(s);
        }

        return value;
    }

    /// <summary>|H(j2πf)|².</summary>
    public double PowerResponse(double hertz)
    {
        double w = 2 * Math.PI * hertz;
        double value = 1;
        foreach (AnalogSection c in Sections)
        {
            value *= Power(c.B0, c.B1, c.B2, w) / Power(c.A0, c.A1, c.A2, w);
        }

        return value;
    }

    /// <summary>Group delay −dφ/dω [s]: for c0·s² + c1·s + c2 the phase turns by c1·(c2 + c0·ω²)/|P|². Derived.</summary>
    public double GroupDelay(double hertz)
    {
        double w = 2 * Math.PI * hertz;
        return Sections.Sum(c => Turn(c.A0, c.A1, c.A2, w) - Turn(c.B0, c.B1, c.B2, w));
    }

    private static double Power(double c0, double c1, double c2, double w)
    {
        double real = c2 - (c0 * w * w);
        double imaginary = c1 * w;
        return (real * real) + (imaginary * imaginary);
    }

    // A numerator on the imaginary axis (c1 = 0, or c1 alone) has no delay of its own.
    private static double Turn(double c0, double c1, double c2, double w) =>
        c1 == 0 || (c0 == 0 && c2 == 0) ? 0 : c1 * (c2 + (c0 * w * w)) / Power(c0, c1, c2, w);
}
