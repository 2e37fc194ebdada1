using FrontEnd.Teaching;
using Xunit;

namespace FrontEnd.Tests.Teaching;

/// <summary>Searching the glossary letter by letter.</summary>
public class GlossarySearchTests
{
    [Fact]
    public void Search_Nothing_GivesAllTerms() => Assert.Equal(Glossary.All.Count, Glossary.Search(" ").Count);

    [Fact]
    public void Search_PartOfAName_PutsNamesThatBeginWithItFirst()
    {
        List<string> found = [.. Glossary.Search("Noise").Select(term => term.Name)];

        Assert.Equal("noise", found[0]);
        Assert.Contains("thermal noise", found);
        Assert.True(found.IndexOf("noise gain") < found.IndexOf("excess noise"));
    }

    /// <summary>Whatever the command finds by its whole name, symbol or other name, the search finds too.</summary>
    [Fact]
    public void Search_AnyNameOrSymbol_FindsItsTerm() =>
        Assert.All(Glossary.All, term => Assert.All(term.Others.Append(term.Name), name => Assert.Contains(term, Glossary.Search(name))));
}
