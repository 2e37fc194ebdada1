using System.Text.Json;
using FrontEnd.Designs;
using FrontEnd.Reporting;
using FrontEnd.Teaching;
using FrontEnd.Teaching.Problems;
using FrontEnd.Tests.Reference;
using Xunit;

namespace FrontEnd.Tests.Teaching;

/// <summary>Explanations and glossary: nothing without a reason, no reason without a result.</summary>
public class ExplanationTests
{
    [Fact]
    public void EveryResultOfTheTestsDesigns_HasAnExplanation()
    {
        Design[] designs = [.. Designs.All, Designs.Dry with { ContactCheck = new Electrodes.ContactCheck() }];
        string[] ids = [.. designs.SelectMany(design => Evaluator.Evaluate(design).Results.Select(result => result.Id.Text)).Distinct()];
        Assert.True(100 < ids.Length);
        Assert.All(ids, id => Assert.NotNull(Explanations.Of(new(id))));
    }

    [Fact]
    public void Explanations_AreSentencesWithAKnownSource()
    {
        using JsonDocument document = JsonDocument.Parse(File.ReadAllText(Path.Combine(ReferenceTable.Folder, "sources.json")));
        HashSet<string> keys = [.. document.RootElement.EnumerateArray().Select(source => source.GetProperty("key").GetString()!)];
        Assert.All(Explanations.All, one =>
        {

            // What to read is a page about the figure, or nothing: that something is derived or usual is no page.
            Assert.True(one.Read is null || keys.Contains(one.Read.Key), one.Read?.Key);
            Assert.DoesNotContain(one.Read?.Key, (string[])["derived", "common-practice", "from-memory", "definition", "network-model"]);
            Assert.EndsWith(".", one.Reason, StringComparison.Ordinal);
            Assert.EndsWith(".", one.Assumes, StringComparison.Ordinal);
            Assert.InRange(one.Reason.Length, 40, 600);
            Assert.DoesNotContain("  ", one.Reason, StringComparison.Ordinal);
        });
        Assert.Equal(Explanations.All.Count, Explanations.All.Select(one => one.Pattern).Distinct().Count());
    }

    [Theory]
    [InlineData("noise.total", "noise.total")]
    [InlineData("noise.source.gain-2-current", "noise.source.*-current")]
    [InlineData("noise.source.protection-resistors", "noise.source.protection-resistors")]
    [InlineData("mains.harmonic.3.lands_at", "mains.harmonic.*.lands_at")]
    [InlineData("filter.gain-2.minus_3db_low", "filter.*.minus_3db*")]
    [InlineData("nothing.at.all", null)]
    public void Of_TakesTheNarrowestPattern(string id, string? pattern) => Assert.Equal(pattern, Explanations.Of(new(id))?.Pattern.Text);

    [Fact]
    public void Sources_OfAllTemplates_AreKnown()
    {
        using JsonDocument document = JsonDocument.Parse(File.ReadAllText(Path.Combine(ReferenceTable.Folder, "sources.json")));
        HashSet<string> keys = [.. document.RootElement.EnumerateArray().Select(source => source.GetProperty("key").GetString()!)];
        Assert.All(TemplateSet.All.SelectMany(template => template.For(1, "").Steps), step => Assert.Contains(step.Source.Key, keys));
    }

    [Fact]
    public void Glossary_FindsNamesSymbolsAndShortForms()
    {
        Assert.Equal("common-mode rejection", Assert.Single(Glossary.Find("cmrr")).Name);
        Assert.Equal("noise gain", Assert.Single(Glossary.Find("Noise Gain")).Name);
        Assert.Equal(2, Glossary.Find("f_c").Count);
        Assert.Empty(Glossary.Find("zzz"));
        Assert.Contains("noise gain", Glossary.NearestTo("noise gian"));
        Assert.Equal(Glossary.All.Count, Glossary.All.Select(term => term.Name).Distinct(StringComparer.OrdinalIgnoreCase).Count());
        Assert.Equal(Glossary.All.Select(term => term.Name), Glossary.All.Select(term => term.Name).Order(StringComparer.OrdinalIgnoreCase));
        Assert.All(Glossary.All, term => Assert.EndsWith(".", term.Meaning, StringComparison.Ordinal));
    }
}
