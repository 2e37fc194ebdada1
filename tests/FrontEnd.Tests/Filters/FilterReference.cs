using System.Globalization;
using System.Numerics;
using Xunit;

namespace FrontEnd.Tests.Filters;

/// <summary>Reads the tables of reference/filters: rows of fields separated by semicolons, header lines begin with #.</summary>
internal static class FilterReference
{
    internal static IEnumerable<string[]> Rows(string file) =>
        File.ReadLines(Path.Combine(Root, "reference", "filters", file)).Where(line => line.Length != 0 && line[0] != '#').Select(line => line.Split(';'));

    internal static double[] Numbers(string field) =>
        [.. field.Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(w => double.Parse(w, CultureInfo.InvariantCulture))];

    internal static Complex[] Complexes(string field)
    {
        double[] numbers = Numbers(field);
        return [.. Enumerable.Range(0, numbers.Length / 2).Select(i => new Complex(numbers[2 * i], numbers[(2 * i) + 1]))];
    }

    internal static Published Case(string id, string quantity) => Published.FromRow(Rows("published.csv").Single(r => string.Equals(r[0], id, StringComparison.Ordinal) && string.Equals(r[1], quantity, StringComparison.Ordinal)));

    internal static IEnumerable<Published> Cases(string idPrefix) => Rows("published.csv").Where(r => r[0].StartsWith(idPrefix, StringComparison.Ordinal)).Select(Published.FromRow);

    /// <summary>The folder that holds the solution file, upwards from the test's own.</summary>
    internal static string Root { get; } = FindRoot();

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

/// <summary>One quantity of the table with its tolerance, source and status.</summary>
internal sealed record Published(string Id, string Quantity, double[] Values, bool Relative, double Tolerance, string Status, double[] True, string Source)
{
    internal bool IsMisprint => Status.StartsWith("differs", StringComparison.Ordinal);

    internal static Published FromRow(string[] r) => new(
        r[0], r[1], FilterReference.Numbers(r[2]), r[4] is "rel", double.Parse(r[5], CultureInfo.InvariantCulture), r[6], FilterReference.Numbers(r[7]), r[8]);

    /// <summary>The printed figures within their tolerance; the failure names source, expected, actual and difference.</summary>
    internal void AssertEqual(params double[] actual)
    {
        Assert.False(IsMisprint, $"{Id} differs: it must not be asserted as right");
        AssertEqualTo(Values, actual);
    }

    /// <summary>A misprint: what we compute agrees with the true figure and differs from the printed one.</summary>
    internal void AssertDiffers(params double[] actual)
    {
        Assert.True(IsMisprint, $"{Id} is not said to differ");
        AssertEqualTo(True, actual);
        Assert.Contains(Values.Zip(actual), p => Limit(p.First) < Math.Abs(p.First - p.Second));
    }

    private double Limit(double expected) => Relative ? Tolerance * Math.Abs(expected) : Tolerance;

    private void AssertEqualTo(double[] expected, double[] actual)
    {
        Assert.Equal(expected.Length, actual.Length);
        for (int i = 0; i < expected.Length; i++)
        {
            // The printed tolerance is exact in decimal only: allow its own rounding.
            Assert.True(Math.Abs(expected[i] - actual[i]) <= Limit(expected[i]) * (1 + 1e-9),
                $"{Id} {Quantity}[{i}]: expected {expected[i]}, actual {actual[i]}, difference {actual[i] - expected[i]:g3}; {Source}");
        }
    }
}
