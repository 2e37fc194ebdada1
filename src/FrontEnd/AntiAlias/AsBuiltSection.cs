using System.Numerics;
using FrontEnd.Amplifier;

namespace FrontEnd.AntiAlias;

/// <summary>Response and pole pair of one low-pass section with its real parts and its real op-amp, in closed form.</summary>
/// <remarks>Op-amp 1/A(s) = 1/A0 + s/(2π·GBW). H(s) = H0/D(s), D(0) near 1:
/// <para>RC and follower: D = (1 + sRC)·(1 + 1/A).</para>
/// <para>Sallen–Key, unity gain: D = [(1 + sR1C1)(1 + sR2C2) + sR1C2]·(1 + 1/A) − sR1C1.</para>
/// <para>Multiple feedback: D = R1·{[1/A + sR2C2(1 + 1/A)]·(1/R1 + 1/R2 + 1/R3 + sC1) + 1/R3 − 1/(A·R2)}, H0 = −1.</para>
/// Derived from the node equations; the network solver gives the same to 1e-9 (test).
/// Meant for search and sensitivity, where thousands of sections are tried; the evaluator solves the network.</remarks>
public static class AsBuiltSection
{
    /// <summary>H(j2πf) of a section.</summary>
    public static Complex Response(Stage section, double hertz)
    {
        SectionParts parts = SectionParts.Of(section);
        return parts.Numerator / parts.Denominator(new Complex(0, 2 * Math.PI * hertz));
    }

    /// <summary>H(j2πf) of a section with its own parts and an ideal op-amp.</summary>
    public static Complex IdealResponse(Stage section, double hertz)
    {
        SectionParts parts = SectionParts.Of(section) with { InverseA0 = 0, Gbw = double.PositiveInfinity };
        return parts.Numerator / parts.Denominator(new Complex(0, 2 * Math.PI * hertz));
    }

    /// <summary>True for the stages that this class knows: low-pass sections.</summary>
    public static bool Is(Stage stage) => stage is RcSection or SallenKeySection or MultipleFeedbackSection;

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

/// <summary>How a part moves a section.</summary>
/// <param name="Part">"R1", "C2", "GBW".</param>
/// <param name="ToFrequency">d ln f0/d ln x.</param>
/// <param name="ToQ">d ln Q/d ln x; null for a section of first order.</param>
public sealed record PartSensitivity(string Part, double ToFrequency, double? ToQ);

/// <summary>The parts of a section as plain SI numbers, for the search's inner loop.</summary>
internal readonly record struct SectionParts(SectionKind Kind, double R1, double R2, double R3, double C1, double C2, double InverseA0, double Gbw)
{
    internal bool IsFirstOrder => Kind == SectionKind.Rc;

    internal double Numerator => Kind == SectionKind.MultipleFeedback ? -1 : 1;

    internal IReadOnlyList<string> Names => Kind switch
    {
        SectionKind.Rc => double.IsPositiveInfinity(Gbw) ? ["R", "C"] : ["R", "C", "GBW"],
        SectionKind.SallenKey => ["R1", "R2", "C1", "C2", "GBW"],
        SectionKind.MultipleFeedback => ["R1", "R2", "R3", "C1", "C2", "GBW"],
        _ => throw new InvalidOperationException($"Section {Kind} is not handled."),
    };

    internal static SectionParts Of(Stage section) => section switch
    {
        RcSection s => new(SectionKind.Rc, s.R.Ohms, 0, 0, s.C.Farads, 0, s.OpAmp is { } a ? 1 / a.DcGain : 0, s.OpAmp?.GainBandwidth.Hertz ?? double.PositiveInfinity),
        SallenKeySection s => new(SectionKind.SallenKey, s.R1.Ohms, s.R2.Ohms, 0, s.C1.Farads, s.C2.Farads, 1 / s.OpAmp.DcGain, s.OpAmp.GainBandwidth.Hertz),
        MultipleFeedbackSection s => new(SectionKind.MultipleFeedback, s.R1.Ohms, s.R2.Ohms, s.R3.Ohms, s.C1.Farads, s.C2.Farads, 1 / s.OpAmp.DcGain, s.OpAmp.GainBandwidth.Hertz),
        _ => throw new ArgumentOutOfRangeException(nameof(section), section, "The section is not a low-pass of this family."),
    };

    internal static SectionParts Of(SectionKind kind, OpAmp amplifier, double r1, double r2, double r3, double c1, double c2) =>
        new(kind, r1, r2, r3, c1, c2, 1 / amplifier.DcGain, amplifier.GainBandwidth.Hertz);

    /// <summary>The section with one part, by its place in <see cref="Names"/>, times a factor.</summary>
    internal SectionParts With(int part, double factor) => Names[part] switch
    {
        "R" or "R1" => this with { R1 = R1 * factor },
        "R2" => this with { R2 = R2 * factor },
        "R3" => this with { R3 = R3 * factor },
        "C" or "C1" => this with { C1 = C1 * factor },
        "C2" => this with { C2 = C2 * factor },
        _ => this with { Gbw = Gbw * factor },
    };

    internal Complex Denominator(Complex s)
    {
        Complex inverse = InverseA0 + (s / (2 * Math.PI * Gbw));
        switch (Kind)
        {
            case SectionKind.Rc:
                return (1 + (s * R1 * C1)) * (1 + inverse);
            case SectionKind.SallenKey:
                Complex sr1c1 = s * (R1 * C1);
                return ((((1 + sr1c1) * (1 + (s * (R2 * C2)))) + (s * (R1 * C2))) * (1 + inverse)) - sr1c1;
            case SectionKind.MultipleFeedback:
                Complex drive = inverse + (s * (R2 * C2) * (1 + inverse));
                return R1 * ((drive * ((1 / R1) + (1 / R2) + (1 / R3) + (s * C1))) + (1 / R3) - (inverse / R2));
            default:
                throw new InvalidOperationException($"Section {Kind} is not handled.");
        }
    }

    /// <summary>The dominant pole (upper of the pair), by Newton from the ideal op-amp's.</summary>
    internal Complex Pole()
    {
        if (Kind == SectionKind.Rc)
        {
            return -1 / (R1 * C1);
        }

        (double a, double b) = Ideal();
        double half = -a / (2 * b);
        double discriminant = (half * half) - (1 / b);
        Complex pole = discriminant < 0 ? new Complex(half, Math.Sqrt(-discriminant)) : new Complex(half, 1e-3 * Math.Abs(half));
        for (int i = 0; i < 50; i++)
        {
            Complex step = 1e-6 * pole;
            Complex slope = (Denominator(pole + step) - Denominator(pole - step)) / (2 * step);
            Complex change = Denominator(pole) / slope;
            pole -= change;
            if (Complex.Abs(change) < 1e-13 * Complex.Abs(pole))
            {
                break;
            }
        }

        return pole;
    }

    /// <summary>a and b of the ideal 1 + a·s + b·s².</summary>
    private (double A, double B) Ideal() => Kind == SectionKind.SallenKey
        ? (C2 * (R1 + R2), R1 * R2 * C1 * C2)
        : (C2 * (R2 + R3 + (R2 * R3 / R1)), R2 * R3 * C1 * C2);
}

/// <summary>The sections that the search builds from.</summary>
public enum SectionKind
{
    /// <summary>First order: R, C and a follower.</summary>
    Rc,

    /// <summary>Second order, gain 1; not inverting.</summary>
    SallenKey,

    /// <summary>Second order; inverts, gain −R3/R1.</summary>
    MultipleFeedback,
}
