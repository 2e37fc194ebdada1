using System.Numerics;
using FrontEnd.Circuits;
using FrontEnd.Electrodes;

namespace FrontEnd.Documents.Cards;

/// <summary>Reads points of a plot or of a meter: a table with a line that names the columns and their units, or without one.</summary>
/// <remarks>What stands before that line is passed over. Units stand behind a column's name, in brackets or not, or behind each number. A frequency without is in hertz, a magnitude in ohms, a phase in
/// degrees, unless its size would do for radians. A unit of another kind is told and never taken for none. A voltage density without is in V/√Hz or in nV/√Hz: none is a tenth of a millivolt, and none a hundredth of a nanovolt, so that its size tells
/// which; a current density is in A/√Hz or has none that could be told.</remarks>
internal static class PointsFile
{
    /// <summary>Points that are read.</summary>
    public const int Most = 10_000;

    /// <summary>Lines that are complained of; what is wrong with one is mostly wrong with all.</summary>
    private const int MostTold = 5;

    private const string Phases = "phase";

    /// <summary>A spectrum that is wholly resistive apart, some phase is beyond this many radians; in degrees hardly any is within.</summary>
    private const double MostRadians = 1.6;

    private static readonly PointColumn FrequencyColumn = new("frequency", QuantityKind.Of<Frequency>(), true, ["freq", "angular"], ["f", "omega", "ω", "w"])
    {
        Scales = new Dictionary<string, double> { ["rad/s"] = 1 / Math.Tau, ["angular"] = 1 / Math.Tau, ["omega"] = 1 / Math.Tau, ["ω"] = 1 / Math.Tau },
    };

    private static readonly PointColumn[] Polar =
    [
        FrequencyColumn,
        new("magnitude", QuantityKind.Of<Resistance>(), true, ["magnitude", "impedance", "modulus", "|z|", "mag"], ["z", "zmod", "abs", "abs(z)"]),
        new(Phases, QuantityKind.Of<Angle>(), false, ["phase", "angle", "theta", "phi"], ["θ", "φ", "arg", "arg(z)"]) { Scales = new Dictionary<string, double> { ["mrad"] = 0.18 / Math.PI } },
    ];

    private static readonly PointColumn[] Parts =
    [
        FrequencyColumn,
        new("real part", QuantityKind.Of<Resistance>(), false, ["real", "resistance"], ["re", "re z", "re(z)", "z'", "z′", "zre", "zr", "r", "rs"]),
        new("imaginary part", QuantityKind.Of<Resistance>(), false, ["imag", "reactance"], ["im", "im z", "im(z)", "z''", "z″", "z\"", "zim", "zi", "x", "xs"]),
    ];

    /// <summary>Points of a noise plot: frequency and density.</summary>
    /// <param name="kind">The kind of the densities: of a voltage or of a current.</param>
    public static NoisePointsRead Noise(string path, QuantityKind kind)
    {
        PointColumn density = new("density", kind, true, ["density", "noise"], ["e", "en", "i", "in", "vn"]);
        PointTable table = PointTable.Read(path, [[FrequencyColumn, density]], NoiseFit.LeastPoints);
        List<Finding> findings = [.. table.Findings.Take(MostTold)];
        (double factor, string? read) = (1, null);
        if (findings.Count == 0 && !table.HasUnit[1])
        {
            (factor, read) = UnitBySize(kind, table.Rows);
            if (read is null)
            {
                string unit = kind.SiUnit;
                findings.Add(CardMessages.NoUnit(path, kind == QuantityKind.Of<VoltageNoiseDensity>() ? ["n" + unit] : ["f" + unit, "p" + unit]));
            }
        }

        return findings.Count != 0 ? new([], null, findings)
            : new([.. table.Rows.Select(row => new NoisePoint(Frequency.FromHertz(row[0]), kind.FromSi(row[1] * factor)))], read, []);
    }

    /// <summary>Points of an impedance spectrum: frequency with magnitude and phase, or with real and imaginary part.</summary>
    public static ImpedancePointsRead Impedance(string path)
    {
        PointTable table = PointTable.Read(path, [Polar, Parts], ImpedanceFit.LeastPoints);
        bool isPolar = table.Form == 0;
        List<Finding> findings = [.. table.Findings.Take(MostTold)];
        if (findings.Count == 0 && table.Rows.All(row => 0 < row[2]))
        {
            findings.Add(CardMessages.Inductive(path, isPolar ? Phases : Parts[2].Name));
        }
        else if (findings.Count == 0 && isPolar && !table.HasUnit[2] && table.Rows.Max(row => Math.Abs(row[2])) is > 0 and <= MostRadians)
        {
            findings.Add(CardMessages.PhaseUnit(path));
        }
        else if (findings.Count == 0 && !isPolar && table.Rows.Any(row => row[1] == 0 && row[2] == 0))
        {
            findings.Add(CardMessages.NoImpedance(path));
        }

        return findings.Count != 0 ? new([], findings)
            : new([.. table.Rows.Select(row => new ImpedancePoint(Frequency.FromHertz(row[0]), isPolar ? Complex.FromPolarCoordinates(row[1], row[2] * Math.PI / 180) : new Complex(row[1], row[2])))], []);
    }

    /// <summary>The unit of densities that have none, as its factor and in words; null where it cannot be told.</summary>
    private static (double Factor, string? Read) UnitBySize(QuantityKind kind, IReadOnlyList<double[]> rows)
    {
        double least = rows.Min(row => row[1]), most = rows.Max(row => row[1]);
        (double largest, double smallest) = kind == QuantityKind.Of<VoltageNoiseDensity>() ? (1e-4, 1e-2) : (1e-9, double.PositiveInfinity);
        return most <= largest ? (1, kind.SiUnit) : smallest <= least ? (1e-9, "n" + kind.SiUnit) : (1, null);
    }
}

/// <summary>Points of a noise plot as they were read.</summary>
/// <param name="UnitRead">The unit that densities without one were read in; null where each has one.</param>
/// <param name="Findings">What is wrong with them; there are no points then.</param>
internal sealed record NoisePointsRead(IReadOnlyList<NoisePoint> Points, string? UnitRead, IReadOnlyList<Finding> Findings);

/// <summary>Points of an impedance spectrum as they were read.</summary>
/// <param name="Findings">What is wrong with them; there are no points then.</param>
internal sealed record ImpedancePointsRead(IReadOnlyList<ImpedancePoint> Points, IReadOnlyList<Finding> Findings);
