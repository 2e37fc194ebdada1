using System.Numerics;
using FrontEnd.Topologies;

namespace FrontEnd.AntiAlias;

/// <summary>Response and pole pair of one low-pass section with its real parts and its real op-amp, in closed form.</summary>
/// <remarks>Op-amp 1/A(s) = 1/A0 + s/(2π·GBW) behind Ro. H(s) = N(s)/D(s), with u = 1 + sR2C2:
/// <para>RC and follower: N = 1, D = (1 + sRC)·(1 + 1/A); Ro carries no current.</para>
/// <para>Sallen–Key of gain K = 1 + Rf/Rg: N = 1 + sRoC1·u/A, m = 1/K + [1 + Ro·(sC1 + 1/(Rf + Rg))]/A, D = [(1 + sR1C1)·u + sR1C2]·m −
/// sR1C1·N.</para>
/// <para>Multiple feedback: k = Ro·(sC2 + u/R3)/A, N = −(1 − k), D = R1·{(1/R1 + 1/R2 + 1/R3 + sC1)·(u/A + sR2C2 + k) + (1 − k)/R3 − (1/A +
/// k)/R2}.</para>
/// Derived from the node equations; the network solver gives the same to 1e-9 (test).
/// Meant for search and sensitivity, where thousands of sections are tried; the evaluator solves the network.</remarks>
internal static class AsBuiltSection
{
    /// <summary>H(j2πf) of a section.</summary>
    public static Complex Response(Stage section, double hertz)
    {
        SectionParts parts = SectionParts.Of(section);
        var s = new Complex(0, 2 * Math.PI * hertz);
        return parts.Numerator(s) / parts.Denominator(s);
    }

    private static SectionParts Ideal(Stage section) =>
        SectionParts.Of(section) with { InverseA0 = 0, Gbw = double.PositiveInfinity, Ro = 0 };

    /// <summary>|H|² of several sections one after the other, with their own parts and ideal op-amps, at many frequencies [Hz].</summary>
    public static double[] IdealPower(IReadOnlyList<Stage> sections, double[] hertz)
    {
        var power = new double[hertz.Length];
        Array.Fill(power, 1);
        foreach (Stage section in sections)
        {
            SectionParts parts = Ideal(section);
            for (int i = 0; i < power.Length; i++)
            {
                var s = new Complex(0, 2 * Math.PI * hertz[i]);
                Complex numerator = parts.Numerator(s), denominator = parts.Denominator(s);
                power[i] *= Square(numerator) / Square(denominator);
            }
        }

        return power;

        static double Square(Complex z) => (z.Real * z.Real) + (z.Imaginary * z.Imaginary);
    }

    /// <summary>True for the stages that this class knows: low-pass sections.</summary>
    public static bool Is(Stage stage) => stage.Section is not null;

    /// <summary>|H|² of several sections one after the other.</summary>
    public static double PowerResponse(IEnumerable<Stage> sections, double hertz)
    {
        double power = 1;
        foreach (Stage section in sections)
        {
            Complex h = Response(section, hertz);
            power *= (h.Real * h.Real) + (h.Imaginary * h.Imaginary);
        }

        return power;
    }

    /// <summary>Pole frequency f0 [Hz] and Q as built, op-amp included; Q is null for a section of first order.</summary>
    public static (double PoleHertz, double? Q) Poles(Stage section)
    {
        SectionParts parts = SectionParts.Of(section);
        Complex pole = parts.Pole();
        return (Complex.Abs(pole) / (2 * Math.PI), parts.IsFirstOrder ? null : Complex.Abs(pole) / (-2 * pole.Real));
    }

    /// <summary>What each part does to f0 and Q: d ln f0/d ln x and d ln Q/d ln x, the op-amp's GBW among the parts.</summary>
    /// <remarks>A part x that is 1 % high moves f0 by S·1 %. Central differences of 1e-4 on the poles as built.</remarks>
    public static IReadOnlyList<PartSensitivity> Sensitivities(Stage section)
    {
        SectionParts parts = SectionParts.Of(section);
        return [.. parts.Names.Select((name, i) =>
        {
            const double Step = 1e-4;
            Complex up = parts.With(i, 1 + Step).Pole();
            Complex down = parts.With(i, 1 - Step).Pole();
            double frequency = (Math.Log(Complex.Abs(up)) - Math.Log(Complex.Abs(down))) / (2 * Step);
            double quality = (Math.Log(-Complex.Abs(up) / up.Real) - Math.Log(-Complex.Abs(down) / down.Real)) / (2 * Step);
            return new PartSensitivity(name, frequency, parts.IsFirstOrder ? null : quality);
        })];
    }
}
