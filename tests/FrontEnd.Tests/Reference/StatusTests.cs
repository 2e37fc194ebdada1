using System.Text.Json;
using System.Text.RegularExpressions;
using Xunit;

namespace FrontEnd.Tests.Reference;

/// <summary>A status says no more than how the figure was seen: every row of every file in reference/ against the table in its README.</summary>
public partial class StatusTests
{
    /// <summary>What each status allows in the column "seen", as reference/README.md has it.</summary>
    private static readonly Dictionary<string, string[]> Allowed = ReadTable();

    private static readonly Dictionary<string, string> Sources = ReadSources();

    /// <summary>The tests that call their figures published, and the cases that they compare with.</summary>
    private static readonly Dictionary<string, string[]> Named = new(StringComparer.Ordinal)
    {
        ["BesselPoles_PublishedTable_Agrees"] = ["T4-BD", "T4-BM"],
        ["MinimumOrder_PublishedRequirement_Agrees"] = ["T4-O"],
        ["SincDecimator_HalfPower_IsAtThePublishedShare"] = ["T3-19", "TV-E3k"],
        ["Template_WithABooksNumbers_HasTheBooksAnswer"] = [],   // takes the rows of status published only
    };

    public static TheoryData<string> Files => [.. DataFiles];

    private static IEnumerable<string> DataFiles => Directory.EnumerateFiles(ReferenceTable.Folder, "*", SearchOption.AllDirectories)
        .Select(file => Path.GetRelativePath(ReferenceTable.Folder, file).Replace('\\', '/'))
        .Where(file => (Path.GetExtension(file) is ".txt" or ".csv" or ".dat") && !ReferenceTable.IsSurface(file));

    [Fact]
    public void Statuses_InTheReadme_AreDecidedByHowAFigureWasSeen()
    {
        Assert.Equal(["published", "differs", "computed", "inferred", "from memory", "common practice"], Allowed.Keys);
        Assert.Equal(Allowed["published"], Allowed["differs"]);
        string[] seen = [.. Allowed.Where(pair => pair.Key != "differs").SelectMany(pair => pair.Value)];
        Assert.Equal(seen.Length, seen.Distinct(StringComparer.Ordinal).Count());
        Assert.All(Allowed["published"], word => Assert.DoesNotMatch("memory|worked out|inferred", word));
    }

    [Theory]
    [MemberData(nameof(Files))]
    public void Rows_OfTheFile_HaveTheStatusOfHowTheyWereSeen(string file)
    {
        Row[] rows = [.. RowsOf(file)];
        Assert.NotEmpty(rows);
        Assert.All(rows, row =>
        {
            Assert.True(Allowed.ContainsKey(row.Status), $"{file} {row.Id}: status `{row.Status}` is not in reference/README.md");
            bool isPrinted = row.Status is "published" or "differs";
            Assert.True(row.Seen is null ? !isPrinted : Allowed[row.Status].Contains(row.Seen, StringComparer.Ordinal), $"{file} {row.Id}: seen `{row.Seen}` is not `{row.Status}`");
            Assert.False(isPrinted && row.Source is { } source && NotRead().IsMatch(Sources[source]), $"{file} {row.Id}: {row.Source} itself is {(row.Source is null ? "" : Sources[row.Source])}");
        });
    }

    /// <summary>JSON has no room for a header: its folder's line in the README says it.</summary>
    [Fact]
    public void WorkedDesigns_AreCalledComputed() =>
        Assert.Contains("| `worked/` | computed:", File.ReadAllText(Path.Combine(ReferenceTable.Folder, "README.md")), StringComparison.Ordinal);

    /// <summary>What python3 worked-out.py works out a second time is every computed row that is arithmetic.</summary>
    [Fact]
    public void ComputedRows_HaveTheirFormulaInThePythonFile()
    {
        string python = File.ReadAllText(Path.Combine(ReferenceTable.Folder, "worked-out.py"));
        Assert.All(ReferenceTable.All().Where(row => row.Status is "computed"), row => Assert.True(python.Contains($"\"{row.Formula}\"", StringComparison.Ordinal), $"{row}"));
    }

    [Fact]
    public void Tests_NamedAfterAPublishedFigure_CompareWithPublishedRows()
    {
        string[] found = [.. Directory.EnumerateFiles(Path.Combine(ReferenceTable.Root, "tests"), "*Tests.cs", SearchOption.AllDirectories)
            .Where(file => Path.GetFileName(file) is not "StatusTests.cs" && !file.Split(Path.DirectorySeparatorChar).Contains("obj"))
            .SelectMany(file => TestMethod().Matches(File.ReadAllText(file)).Select(match => match.Groups["name"].Value))];
        Assert.Equal(Named.Keys.Order(StringComparer.Ordinal), found.Order(StringComparer.Ordinal));
        Row[] rows = [.. DataFiles.SelectMany(RowsOf)];
        Assert.All(Named.Values.SelectMany(ids => ids), id =>
        {
            Row[] cases = [.. rows.Where(row => row.Id.StartsWith(id, StringComparison.Ordinal))];
            Assert.NotEmpty(cases);
            Assert.All(cases, row => Assert.True(row.Status is "published" or "differs", $"{row.Id} is {row.Status}"));
        });
    }

    private sealed record Row(string Id, string Status, string? Seen = null, string? Source = null);

    private static IEnumerable<Row> RowsOf(string file)
    {
        if (ReferenceTable.Cases.ContainsKey(file))
        {
            return ReferenceTable.Read(file).Select(row => new Row(row.Id, row.Status, row.Seen, row.Source));
        }

        string[] lines = File.ReadAllLines(Path.Combine(ReferenceTable.Folder, file));
        string[] header = [.. lines.TakeWhile(line => line.StartsWith('#'))];
        string[][] Cells(char separator) => [.. lines.Skip(header.Length).Where(line => line.Length != 0).Select(line => line.Split(separator))];
        if (header.Any(line => line.EndsWith("| status", StringComparison.Ordinal)))
        {
            return Cells('|').Select(row => new Row(row[1].Trim(), row[^1].Trim()));
        }

        string[] columns = [.. (header.FirstOrDefault(line => line.StartsWith("# columns:", StringComparison.Ordinal)) ?? "").Split(';')];
        if (Array.IndexOf(columns, "status") is var status and > 0)
        {
            return Cells(';').Select(row => new Row(row[0], row[status].Split(':')[0], row[Array.IndexOf(columns, "seen")]));
        }

        const string whole = "# status:";
        return [new Row(file, header.FirstOrDefault(line => line.StartsWith(whole, StringComparison.Ordinal))?[whole.Length..].Trim() ?? "none")];
    }

    private static Dictionary<string, string[]> ReadTable()
    {
        Dictionary<string, string[]> table = new(StringComparer.Ordinal);
        foreach (string line in File.ReadLines(Path.Combine(ReferenceTable.Folder, "README.md"))
            .SkipWhile(line => !line.StartsWith("| status |", StringComparison.Ordinal)).Skip(2).TakeWhile(line => line.StartsWith('|')))
        {
            string[] cells = [.. line.Trim('|').Split('|').Select(cell => cell.Trim())];
            string[] seen = [.. Quoted().Matches(cells[2]).Select(match => match.Groups["text"].Value)];
            table[cells[0].Trim('`')] = seen is [var other] && table.TryGetValue(other, out string[]? same) ? same : seen;
        }

        return table;
    }

    private static Dictionary<string, string> ReadSources()
    {
        using JsonDocument document = JsonDocument.Parse(File.ReadAllText(Path.Combine(ReferenceTable.Folder, "sources.json")));
        return document.RootElement.EnumerateArray().ToDictionary(source => source.GetProperty("key").GetString()!, source => source.GetProperty("seen").GetString()!, StringComparer.Ordinal);
    }

    [GeneratedRegex("`(?<text>[^`]+)`", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Quoted();

    [GeneratedRegex("^(from memory|derived|no source)", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex NotRead();

    [GeneratedRegex("public (void|Task|async Task) (?<name>\\w*(Published|TheBook)\\w*)\\(", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex TestMethod();
}
