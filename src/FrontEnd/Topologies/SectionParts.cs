using System.Numerics;
using FrontEnd.Circuits;
using FrontEnd.Filters;

namespace FrontEnd.Topologies;

/// <summary>How a part moves a section.</summary>
/// <param name="Part">"R1", "C2", "GBW".</param>
/// <param name="ToFrequency">d ln f0/d ln x.</param>
/// <param name="ToQ">d ln Q/d ln x; null for a section of first order.</param>
public sealed record PartSensitivity(string Part, double ToFrequency, double? ToQ);

/// <summary>The parts of a section as plain SI numbers, for the search's inner loop.</summary>
internal readonly record struct SectionParts(SectionKind Kind, double R1, double R2, double R3, double C1, double C2, double InverseA0,
    double Gbw)
{
    internal bool IsFirstOrder => Kind == SectionKind.Rc;

    internal double Ro { get; init; }

    internal double Rf { get; init; }

    /// <summary>Infinite for a follower.</summary>
    internal double Rg { get; init; } = double.PositiveInfinity;

    /// <summary>K = 1 + Rf/Rg.</summary>
    internal double Gain => 1 + (Rf / Rg);

    internal IReadOnlyList<string> Names => Kind switch
    {
        SectionKind.Rc => double.IsPositiveInfinity(Gbw) ? ["R", "C"] : ["R", "C", "GBW"],
        SectionKind.SallenKey => ["R1", "R2", "C1", "C2", "GBW"],
        SectionKind.SallenKeyEqual => ["R1", "R2", "C1", "C2", "Rf", "Rg", "GBW"],
        SectionKind.MultipleFeedback => ["R1", "R2", "R3", "C1", "C2", "GBW"],
        _ => throw new InvalidOperationException($"Section {Kind} is not handled."),
    };

    internal static SectionParts Of(Stage section) =>
        (section.Section
            ?? throw new ArgumentOutOfRangeException(nameof(section), section, "The section is not a low-pass of this family."))
            with { Ro = section.FittedOpAmp?.OutputResistance.Ohms ?? 0 };

    internal static SectionParts Of(SectionKind kind, OpAmp amplifier, double r1, double r2, double r3, double c1, double c2) =>
        new(kind, r1, r2, r3, c1, c2, 1 / amplifier.DcGain, amplifier.GainBandwidth.Hertz) { Ro = amplifier.OutputResistance.Ohms };

    /// <summary>The section with one part, by its place in <see cref="Names"/>, times a factor.</summary>
    internal SectionParts With(int part, double factor) => Names[part] switch
    {
        "R" or "R1" => this with { R1 = R1 * factor },
        "R2" => this with { R2 = R2 * factor },
        "R3" => this with { R3 = R3 * factor },
        "C" or "C1" => this with { C1 = C1 * factor },
        "C2" => this with { C2 = C2 * factor },
        "Rf" => this with { Rf = Rf * factor },
        "Rg" => this with { Rg = Rg * factor },
        _ => this with { Gbw = Gbw * factor },
    };

    private Complex Inverse(Complex s) => InverseA0 + (s / (2 * Math.PI * Gbw));

    /// <summary>N(s).</summary>
    internal Complex Numerator(Complex s)
    {
        switch (Kind)
        {
            case SectionKind.Rc:
                return 1;
            case SectionKind.SallenKey or SectionKind.SallenKeyEqual:
                return Ro == 0 ? 1 : 1 + (Inverse(s) * s * (Ro * C1) * (1 + (s * (R2 * C2))));
            case SectionKind.MultipleFeedback:
                return Ro == 0 ? -1 : Pull(s) - 1;
            default:
                throw new InvalidOperationException($"Section {Kind} is not handled.");
        }
    }

    /// <summary>k of multiple feedback.</summary>
    private Complex Pull(Complex s) => Inverse(s) * Ro * ((s * C2) + ((1 + (s * (R2 * C2))) / R3));

    internal Complex Denominator(Complex s)
    {
        Complex inverse = Inverse(s);
        switch (Kind)
        {
            case SectionKind.Rc:
                return (1 + (s * R1 * C1)) * (1 + inverse);
            case SectionKind.SallenKey or SectionKind.SallenKeyEqual:
                Complex sr1c1 = s * (R1 * C1);
                Complex follower = Ro == 0 ? (1 / Gain) + inverse : (1 / Gain) + (inverse * (1 + (Ro * ((s * C1) + (1 / (Rf + Rg))))));
                return ((((1 + sr1c1) * (1 + (s * (R2 * C2)))) + (s * (R1 * C2))) * follower) - (Ro == 0 ? sr1c1 : sr1c1 * Numerator(s));
            case SectionKind.MultipleFeedback:
                Complex drive = inverse + (s * (R2 * C2) * (1 + inverse)), all = (1 / R1) + (1 / R2) + (1 / R3) + (s * C1);
                if (Ro == 0)
                {
                    return R1 * ((drive * all) + (1 / R3) - (inverse / R2));
                }

                Complex pull = Pull(s);
                return R1 * (((drive + pull) * all) + ((1 - pull) / R3) - ((inverse + pull) / R2));
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
        return MathExtra.RootNear(Denominator, discriminant < 0
            ? new Complex(half, Math.Sqrt(-discriminant))
            : new Complex(half, 1e-3 * Math.Abs(half)));
    }

    /// <summary>a and b of the ideal 1 + a·s + b·s².</summary>
    private (double A, double B) Ideal() => Kind != SectionKind.MultipleFeedback
        ? ((C2 * (R1 + R2)) - ((Gain - 1) * R1 * C1), R1 * R2 * C1 * C2)
        : (C2 * (R2 + R3 + (R2 * R3 / R1)), R2 * R3 * C1 * C2);
}

/// <summary>The sections that the search builds from.</summary>
public enum SectionKind
{
    /// <summary>First order: R, C and a follower.</summary>
    Rc,

    /// <summary>Second order, gain 1; not inverting.</summary>
    SallenKey,

    /// <summary>Second order, equal resistors, equal capacitors, gain 3 − 1/Q; not inverting.</summary>
    SallenKeyEqual,

    /// <summary>Second order; inverts, gain −R3/R1.</summary>
    MultipleFeedback,
}
