using FrontEnd.Catalogue;
using FrontEnd.Designs;
using FrontEnd.Fields;
using FrontEnd.Sizing;
using Xunit;

namespace FrontEnd.Documents.Tests;

/// <summary>The key table in designs/README.md is the catalogue's.</summary>
public sealed class KeyTableTests
{
    private const string Marker = "## All keys\n";

    [Fact]
    public void Readme_KeyTable_EqualsCatalogue()
    {
        string path = Path.Combine(Repository.Designs, "README.md");
        string text = File.ReadAllText(path);
        int section = text.IndexOf(Marker, StringComparison.Ordinal);
        Assert.True(section >= 0, $"{path} has no \"All keys\"");
        int table = text.IndexOf("\n### ", section, StringComparison.Ordinal);
        string head = table < 0 ? text : text[..table];
        string expected = head + KeyTable.ToMarkdown();
        if (Environment.GetEnvironmentVariable("UPDATE_KEY_TABLE") is "1")
        {
            File.WriteAllText(path, expected);
        }

        Assert.True(string.Equals(expected, File.ReadAllText(path), StringComparison.Ordinal), "designs/README.md differs from the catalogue; run this test with UPDATE_KEY_TABLE=1 and read the change");
    }

    [Fact]
    public void Table_EveryKeyOfTheCatalogue_StandsInIt()
    {
        string table = KeyTable.ToMarkdown();
        foreach (Field<Design> field in DesignFields.Fixed)
        {
            Assert.Contains($"| `{field.Key[(field.Key.LastIndexOf('.') + 1)..]}`", table, StringComparison.Ordinal);
        }

        string sizing = table[table.IndexOf("[sizing]", StringComparison.Ordinal)..];
        Assert.All(SizingFields.All, field => Assert.Contains($"| `{field.Key}`", sizing, StringComparison.Ordinal));
    }
}
