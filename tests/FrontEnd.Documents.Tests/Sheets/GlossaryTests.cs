using System.Text.RegularExpressions;
using FrontEnd.Documents.Sheets;
using FrontEnd.Reporting;
using FrontEnd.Results;
using FrontEnd.Teaching;
using Xunit;

namespace FrontEnd.Documents.Tests.Sheets;

/// <summary>No sheet and no explanation uses a term that the glossary does not have.</summary>
public sealed partial class GlossaryTests
{
    /// <summary>Words between digits and signs; a low line belongs to a symbol.</summary>
    [GeneratedRegex(@"\p{L}[\p{L}_]*", RegexOptions.None, 10_000)]
    private static partial Regex Word();

    /// <summary>Short forms such as CMRR, and symbols with an index such as C_iso.</summary>
    [GeneratedRegex(@"(?<![\p{L}\d])(?:[A-Z]{2,}|\p{L}_[\p{L}\d]+)(?![\p{L}\d_])", RegexOptions.None, 10_000)]
    private static partial Regex Sign();

    private static readonly Assessment[] Assessments = [.. Directory.GetFiles(Repository.Designs, "*.toml").Order(StringComparer.Ordinal).Select(DesignDocument.Read).Where(document => !document.HasErrors).Select(document => Evaluator.Evaluate(document.Design))];

    /// <summary>
    /// Every word is in the glossary or in a list of words that need no explanation. A word that is new comes up here: a person puts it into the glossary, or
    /// runs the test with FRONTEND_ACCEPT=1 and reads what is added to the list.
    /// </summary>
    [Fact]
    public void EveryWord_OfSheetsAndExplanations_IsPlainOrInTheGlossary()
    {
        HashSet<string> explained = [.. Glossary.All.SelectMany(term => term.Others.Prepend(term.Name).Prepend(term.Symbol)).SelectMany(text => Word().Matches(text)).Select(word => word.Value.ToLowerInvariant())];
        string[] words =
        [
            .. Texts().SelectMany(text => Word().Matches(text)).Select(word => word.Value).Where(word => word.Length > 2 && !word.Contains('_', StringComparison.Ordinal)).Select(word => word.ToLowerInvariant())
                .Where(word => !explained.Contains(word) && !(word[^1] == 's' && explained.Contains(word[..^1]))).Distinct().Order(StringComparer.Ordinal),
        ];
        ExpectedText.Matches(string.Join('\n', words) + "\n", "FrontEnd.Documents.Tests", "plain-words.txt");
    }

    [Fact]
    public void EveryShortForm_OfSheetsAndExplanations_IsInTheGlossary()
    {
        // A number for an index only tells like things apart: e_1, e_2.
        string[] known = [.. Glossary.All.SelectMany(term => Sign().Matches($"{term.Symbol} {term.Meaning} {term.Name} {string.Join(' ', term.Others)}")).Select(sign => sign.Value), "RC"];
        string[] missing =
        [
            .. Explained().Concat(Assessments.SelectMany(assessment => assessment.Results).Select(result => result.Name)).SelectMany(text => Sign().Matches(text)).Select(sign => sign.Value).Distinct(StringComparer.Ordinal)
                .Where(sign => !char.IsAsciiDigit(sign[^1]) && Glossary.Find(sign).Count == 0 && !known.Contains(sign, StringComparer.Ordinal)).Order(StringComparer.Ordinal),
        ];
        Assert.Equal([], missing);
    }

    [Fact]
    public void Sheet_TermsListed_AreThoseUsed()
    {
        Assert.Equal(["corner", "filter", "headroom"], Glossary.UsedIn(["Headroom; the corners of filters, equality"]).Select(term => term.Name));
        Assert.Equal(["common-mode rejection"], Glossary.UsedIn(["a CMRR of"]).Select(term => term.Name));
        Assert.Empty(Glossary.UsedIn(["cornering", "Qx and lsbx", "overheadroom"]));
        Assert.Empty(Glossary.UsedIn(["it has far more of it, and is kept together"]));
        foreach (string name in new[] { "hobbyist", "gel-cap" })
        {
            DesignDocument document = DesignDocument.Read(Path.Combine(Repository.Designs, name + ".toml"));
            Sheet sheet = new(document, Evaluator.Evaluate(document.Design)) { Bench = FrontEnd.Bench.BenchPlan.Of(document.Design).Readings, HasAppendix = true };
            string markdown = MarkdownSheet.Of(sheet), html = HtmlSheet.Of(sheet);
            string[] lines = [.. markdown[markdown.IndexOf("## terms and symbols", StringComparison.Ordinal)..].Split('\n').Where(line => line.StartsWith("- ", StringComparison.Ordinal))];
            Assert.InRange(lines.Length, 20, Glossary.All.Count);
            Assert.Contains(lines, line => line.StartsWith("- headroom", StringComparison.Ordinal));
            Assert.Equal(name == "hobbyist", lines.Any(line => line.StartsWith("- driven ground", StringComparison.Ordinal)));
            Assert.Contains("<li>headroom [dB]: ", html, StringComparison.Ordinal);
        }
    }

    private static IEnumerable<string> Explained() =>
        Explanations.All.SelectMany(one => new[] { one.Reason, one.Assumes }).Concat(Diagrams.All.SelectMany(diagram => new[] { diagram.Title, Regex.Replace(diagram.Art, @"\{\w+\}", "", RegexOptions.None, TimeSpan.FromSeconds(10)) }));

    private static IEnumerable<string> Texts() =>
        Explained().Concat(Assessments.SelectMany(assessment => assessment.Results).Select(result => result.Name)).Concat(Assessments.SelectMany(BudgetTables.Of).SelectMany(table => table.Columns.Select(column => column.Head).Prepend(table.Title)));
}
