using System.Globalization;
using FrontEnd.Quantities;
using FrontEnd.Text;

namespace FrontEnd.Tests.Reference;

/// <summary>One line of a table in reference/: a figure from outside, its source, and the calculation it is compared with.</summary>
public sealed record ReferenceRow(
    string Table,
    string Id,
    string Formula,
    IReadOnlyDictionary<string, string> Inputs,
    string Expected,
    string Unit,
    string Tolerance,
    string Source,
    string Place,
    string Seen,
    string Status,
    string Ours,
    string Note)
{
    public override string ToString() => $"{Table} {Id} {Formula}";

    public string Text(string name) => Inputs.TryGetValue(name, out string? text) ? text : throw new InvalidDataException($"{this}: no input {name}.");

    public bool Has(string name) => Inputs.ContainsKey(name);

    public T Get<T>(string name)
        where T : struct, IQuantity => Read<T>(Text(name));

    public double Number(string name) => double.Parse(Text(name), CultureInfo.InvariantCulture);

    public int Whole(string name) => int.Parse(Text(name), CultureInfo.InvariantCulture);

    public T[] Parts<T>(string name = "parts")
        where T : struct, IQuantity => [.. Text(name).Split(", ").Select(Read<T>)];

    /// <summary>The expected number in the SI unit of its kind. The scale is this table's own and not the parser under test.</summary>
    public double ExpectedSi => Si(Expected);

    public double OursSi => Si(Ours);

    public double ToleranceSi(double expected)
    {
        if (Tolerance is "exact")
        {
            return 1e-12 * Math.Abs(expected);
        }

        if (Tolerance.StartsWith('±'))
        {
            return Si(Tolerance[1..]);
        }

        double share = Tolerance.EndsWith('%') ? double.Parse(Tolerance[..^1], CultureInfo.InvariantCulture) / 100 : double.Parse(Tolerance, CultureInfo.InvariantCulture);
        return share * Math.Abs(expected);
    }

    private double Si(string number) => double.Parse(number, CultureInfo.InvariantCulture) * ReferenceTable.Scale(Unit);

    private T Read<T>(string text)
        where T : struct, IQuantity =>
        QuantityText.TryParse(text, out T value, out ParseProblem? problem) ? value : throw new InvalidDataException($"{this}: {problem!.Message}");
}

/// <summary>Reads the tables of reference/ that have the columns of this folder's tests.</summary>
public static class ReferenceTable
{
    /// <summary>Every table these tests compare with and the number of its cases, so that a missing file or a lost line fails.</summary>
    public static readonly IReadOnlyDictionary<string, int> Cases = new Dictionary<string, int>(StringComparer.Ordinal)
    {
        ["amplifier/gain.txt"] = 19,
        ["converter/bits.txt"] = 64,
        ["digital/notch-ring.txt"] = 24,
        ["electrodes/impedance.txt"] = 22,
        ["elementary/decibels-and-prefixes.txt"] = 16,
        ["mains/body.txt"] = 94,
        ["mains/rejection.txt"] = 47,
        ["montage/noise.txt"] = 10,
        ["noise/amplifier.txt"] = 40,
        ["noise/electrodes.txt"] = 38,
        ["noise/thermal.txt"] = 23,
        ["parts/codes.txt"] = 12,
        ["parts/preferred-values.txt"] = 14,
        ["requirements/defaults.txt"] = 26,
        ["safety/limits.txt"] = 16,
        ["sampling/aliasing.txt"] = 65,
        ["sampling/sinc.txt"] = 21,
    };

    private static readonly Dictionary<string, double> Scales = new(StringComparer.Ordinal)
    {
        ["%"] = 1e-2, ["1"] = 1, ["C"] = 1, ["F"] = 1, ["GΩ"] = 1e9, ["Hz"] = 1, ["J/K"] = 1, ["MΩ"] = 1e6, ["V"] = 1, ["V/s"] = 1, ["bit"] = 1, ["dB"] = 1, ["dBV"] = 1,
        ["h"] = 3600, ["kHz"] = 1e3, ["kbit/s"] = 1e3, ["kΩ"] = 1e3, ["mV"] = 1e-3, ["ms"] = 1e-3, ["nA"] = 1e-9, ["nF"] = 1e-9, ["nV"] = 1e-9, ["nV/√Hz"] = 1e-9, ["pA/√Hz"] = 1e-12,
        ["pF"] = 1e-12, ["s"] = 1, ["°"] = 1, ["µA"] = 1e-6, ["µV"] = 1e-6, ["µV/√Hz"] = 1e-6, ["µV²/Hz"] = 1e-12, ["Ω"] = 1,
    };

    /// <summary>The folder of the solution, found upwards from where the tests run.</summary>
    public static string Root { get; } = FindRoot();

    public static string Folder => Path.Combine(Root, "reference");

    /// <summary>What the library shows is written down there too: no figures.</summary>
    public static bool IsSurface(string file) => file.StartsWith("api/", StringComparison.Ordinal);

    public static double Scale(string unit) => Scales.TryGetValue(unit, out double scale) ? scale : throw new InvalidDataException($"Unit {unit} is not in the tests' table.");

    public static IEnumerable<ReferenceRow> All() => Cases.Keys.SelectMany(Read);

    public static IReadOnlyList<ReferenceRow> Read(string table)
    {
        List<ReferenceRow> rows = [];
        foreach (string line in File.ReadLines(Path.Combine(Folder, table)))
        {
            if (line.StartsWith('#') || line.Length == 0)
            {
                continue;
            }

            string[] cells = [.. line.Split('|').Select(cell => cell.Trim())];
            if (cells.Length != 12)
            {
                throw new InvalidDataException($"{table}: {cells.Length} columns instead of 12 in: {line}");
            }

            Dictionary<string, string> inputs = cells[2].Split(';', StringSplitOptions.RemoveEmptyEntries)
                .Select(pair => pair.Split('=', 2))
                .ToDictionary(pair => pair[0].Trim(), pair => pair[1].Trim(), StringComparer.Ordinal);
            rows.Add(new ReferenceRow(table, cells[0], cells[1], inputs, cells[3], cells[4], cells[5], cells[6], cells[7], cells[8], cells[9], cells[10], cells[11]));
        }

        return rows;
    }

    private static string FindRoot()
    {
        for (DirectoryInfo? folder = new(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            if (File.Exists(Path.Combine(folder.FullName, "FrontEnd.sln")))
            {
                return folder.FullName;
            }
        }

        throw new InvalidOperationException("FrontEnd.sln was not found above the tests.");
    }
}
