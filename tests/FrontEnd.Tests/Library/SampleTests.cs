using System.Globalization;
using System.Text.RegularExpressions;
using FrontEnd.Catalogue;
using FrontEnd.DesignedFilters;
using FrontEnd.Designs;
using FrontEnd.Fields;
using FrontEnd.Filters;
using FrontEnd.Quantities;
using FrontEnd.Reporting;
using FrontEnd.Results;
using FrontEnd.Tests.Reference;
using FrontEnd.Text;
using Xunit;

namespace FrontEnd.Tests.Library;

/// <summary>The library as somebody sees it who has its README and the samples: every piece of code is compiled against what is public, and run.</summary>
public partial class SampleTests
{
    private static readonly string Readme = ReadmeOf("FrontEnd");

    /// <summary>Each piece of code, with the output that the page shows behind it.</summary>
    /// <remarks>Where a figure has moved, FRONTEND_ACCEPT=1 writes the outputs anew.</remarks>
    [Theory]
    [InlineData("FrontEnd")]
    [InlineData("FrontEnd.Documents")]
    public void Readme_Code_PrintsWhatIsShownBehindIt(string project)
    {
        string readme = ReadmeOf(project), page = File.ReadAllText(readme).ReplaceLineEndings("\n");
        MatchCollection pieces = Piece().Matches(page);
        Assert.InRange(pieces.Count, 3, 10);
        Assert.Equal(pieces.Count, page.Split("```csharp").Length - 1);

        // Apart from the settings of the sources, as in a project of one's own, and beside a design file.
        string folder = Path.Combine(AppContext.BaseDirectory, "readme-program", project), file = Path.Combine(folder, "readme.cs");
        if (Directory.Exists(folder))
        {
            Directory.Delete(folder, recursive: true);
        }

        Directory.CreateDirectory(folder);
        File.Copy(Path.Combine(ReferenceTable.Root, "designs", "starter.toml"), Path.Combine(folder, "headset.toml"));
        File.WriteAllText(Path.Combine(folder, "Directory.Build.props"), "<Project />");
        File.WriteAllText(file, SampleProgram.Joined(pieces.Select(piece => piece.Groups["code"].Value), project));
        string[] printed = string.Join('\n', SampleProgram.Run(file, folder)).Split(SampleProgram.Between);
        int at = 0;
        string wanted = Piece().Replace(page, piece => $"```csharp\n{piece.Groups["code"].Value}```\n\n```text\n{printed[at++].Trim('\n')}\n```\n");
        if (Environment.GetEnvironmentVariable("FRONTEND_ACCEPT") is "1")
        {
            File.WriteAllText(readme, wanted);
            return;
        }

        Assert.Equal(wanted, page);
    }

    private static string ReadmeOf(string project) => Path.Combine(ReferenceTable.Root, "src", project, "README.md");

    /// <summary>What a newcomer is shown first: from a design to verdicts in about ten lines.</summary>
    [Fact]
    public void Readme_FirstPiece_IsShort()
    {
        string[] lines = [.. Piece().Match(File.ReadAllText(Readme).ReplaceLineEndings("\n")).Groups["code"].Value.Split('\n')
            .Where(line => line.Trim(' ', '{', '}', ';').Length > 0 && !line.StartsWith("using ", StringComparison.Ordinal))];
        Assert.InRange(lines.Length, 6, 12);
    }

    [Fact]
    public void Evaluate_Sample_TellsVerdictsFindingsAndWhatAChangeDoes()
    {
        IReadOnlyList<string> lines = Sample("evaluate");
        Assert.Contains(lines, line => line.StartsWith("Marginal  safety.fault_current: 49.0 µA", StringComparison.Ordinal));
        Assert.Contains(lines, line => line.StartsWith("noise.board_share: ", StringComparison.Ordinal) && line.Contains(" makes it ", StringComparison.Ordinal));
        Assert.Equal(2, lines.Count(line => line.Contains(" -> ", StringComparison.Ordinal) && line.StartsWith("after the change, ", StringComparison.Ordinal)));
    }

    /// <summary>The table is read back and each figure worked out again.</summary>
    [Fact]
    public void Sweep_Sample_WritesATableOfWhatEvaluationGives()
    {
        string[][] rows = [.. Sample("sweep").Select(line => line.Split(','))];
        Assert.Equal(["input.series-resistor [Ω]", "noise.total [V]", "mains.total [V]", "safety.fault_current [A]"], rows[0]);
        Assert.Equal(9, rows.Length - 1);
        Design design = new() { GroundDrive = new() { SeriesResistor = Resistance.FromKilohms(100) } };
        Field<Design> field = DesignFields.Find(design, "input.series-resistor")!;
        foreach (double[] row in rows.Skip(1).Select(row => row.Select(cell => double.Parse(cell, CultureInfo.InvariantCulture)).ToArray()))
        {
            Assessment assessment = Evaluator.Evaluate(field.WithSiValue(design, row[0]));
            double[] figures = [assessment["noise.total"].Si, assessment["mains.total"].Si, assessment["safety.fault_current"].Si];
            Assert.All(row.Skip(1).Zip(figures), pair => Assert.Equal(pair.Second, pair.First, 1e-5 * pair.Second));
        }
    }

    [Fact]
    public void Filter_Sample_PrintsThePartsOfEachSection()
    {
        FilterAnswer answer = new FilterWish { Shape = FilterShape.LowPass, Corners = [Frequency.FromHertz(100)], StopEdges = [Frequency.FromHertz(400)], Attenuation = Decibels.FromStated(40) }.Design();
        BuiltLowPass built = DesignedSections.Of(answer, new FilterParts()).LowPass!;
        string[] expected = [.. built.Sections.Select(section => $"{section.Kind}: {string.Join(", ", section.Parts.Select(part => $"{part.Name} {QuantityText.FormatPart(part.Value)}"))}")];
        IReadOnlyList<string> lines = Sample("filter");
        Assert.StartsWith($"order {answer.Choice!.Order}, -3 dB at ", lines[0], StringComparison.Ordinal);
        Assert.Equal(expected, lines.Skip(1));
    }

    private static IReadOnlyList<string> Sample(string name) => SampleProgram.Run(Path.Combine("designs", "code", name + ".cs"));

    [GeneratedRegex(@"```csharp\n(?<code>.*?)```\n\n```text\n.*?```\n", RegexOptions.Singleline | RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Piece();
}
