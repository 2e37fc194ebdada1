using System.Globalization;
using Xunit;

namespace FrontEnd.Tests.Reference;

/// <summary>Every figure of the reference tables against our own, each printed with its source where they part.</summary>
public class ReferenceTests
{
    public static IEnumerable<TheoryDataRow<string, string>> Rows =>
        ReferenceTable.All().Select(row => new TheoryDataRow<string, string>(row.Table, row.Id) { TestDisplayName = row.ToString() });

    public static TheoryData<string> Tables => [.. ReferenceTable.Cases.Keys];

    [Theory]
    [MemberData(nameof(Rows))]
    public void Figure_OfTheTablesCase_Agrees(string table, string id)
    {
        ReferenceRow row = ReferenceTable.Read(table).Single(one => string.Equals(one.Id, id, StringComparison.Ordinal));
        if (Calculations.IsFactOnly(row))
        {
            Assert.True(0 < row.ExpectedSi, $"{row}: a quoted limit is above zero");
            return;
        }

        if (Calculations.WorkList(row) is { } list)
        {
            Assert.Equal(row.Expected, string.Join(", ", list.Select(member => member.ToString(CultureInfo.InvariantCulture))));
            return;
        }

        double actual = Calculations.Work(row);
        double expected = row.ExpectedSi;
        double tolerance = row.ToleranceSi(expected);
        string report = $"{row}\n  source:     {row.Source}, {row.Place} ({row.Seen}; {row.Status})\n  expected:   {row.Expected} {row.Unit}\n  actual:     {actual / ReferenceTable.Scale(row.Unit):g10} {row.Unit}\n  difference: {(actual - expected) / ReferenceTable.Scale(row.Unit):g4} {row.Unit}, allowed {row.Tolerance}";
        if (row.Status is "differs")
        {
            // The printed figure is known to be wrong or to mean something else: ours must stay away from it and at the one written beside it.
            Assert.True(tolerance < Math.Abs(actual - expected), "no longer differs from the printed figure: " + report);
            double digits = row.ToleranceSi(row.OursSi);
            Assert.True(Math.Abs(actual - row.OursSi) <= Math.Max(digits, 2e-4 * Math.Abs(row.OursSi)), $"not the figure {row.Ours} written beside it: {report}");
            return;
        }

        Assert.True(Math.Abs(actual - expected) <= tolerance, report);
    }

    [Theory]
    [MemberData(nameof(Tables))]
    public void Table_HasAllItsCasesAndTheirFields(string table)
    {
        IReadOnlyList<ReferenceRow> rows = ReferenceTable.Read(table);
        Assert.Equal(ReferenceTable.Cases[table], rows.Count);
        Assert.Equal(rows.Count, rows.Select(row => row.Id).Distinct(StringComparer.Ordinal).Count());
        Assert.All(rows, row =>
        {
            Assert.All(new[] { row.Expected, row.Unit, row.Tolerance, row.Source, row.Seen }, cell => Assert.NotEqual("", cell));
            Assert.Equal(row.Status is "differs", row.Ours.Length != 0 && row.Note.Length != 0);
        });
    }

    [Fact]
    public void Tables_AllFilesWithThisFormAreTested()
    {
        IEnumerable<string> files = Directory.EnumerateFiles(ReferenceTable.Folder, "*.txt", SearchOption.AllDirectories)
            .Select(file => Path.GetRelativePath(ReferenceTable.Folder, file).Replace('\\', '/')).Where(file => !ReferenceTable.IsSurface(file));
        Assert.Equal(ReferenceTable.Cases.Keys.Order(StringComparer.Ordinal), files.Order(StringComparer.Ordinal));
    }

    [Theory]
    [MemberData(nameof(Tables))]
    public void Table_HasTheHeaderOfAReferenceTable(string table)
    {
        string[] header = [.. File.ReadLines(Path.Combine(ReferenceTable.Folder, table)).TakeWhile(line => line.StartsWith('#'))];
        foreach (string field in new[] { "# what:", "# source:", "# made by:", "# taken:", "# digits:", "# licence:", "# revised:" })
        {
            Assert.Contains(header, line => line.StartsWith(field, StringComparison.Ordinal));
        }

        Assert.Contains($"# cases:   {ReferenceTable.Cases[table]}", header);
    }
}
