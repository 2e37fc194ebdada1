using System.Reflection;
using System.Text.Json;
using System.Text.RegularExpressions;
using FrontEnd.Citations;
using FrontEnd.Tests.Reference;
using Xunit;

namespace FrontEnd.Tests.Architecture;

/// <summary>Every source that is cited is listed, and listed whole.</summary>
public partial class SourcesTests
{
    private static readonly string[] Fields = ["key", "author", "title", "number", "year", "seen"];

    private static readonly HashSet<string> Keys = [.. Entries().Select(entry => entry.GetProperty("key").GetString()!)];

    [Fact]
    public void Sources_EveryEntry_HasItsFields()
    {
        JsonElement[] entries = [.. Entries()];
        Assert.True(50 < entries.Length, $"{entries.Length} sources");
        Assert.Equal(entries.Length, Keys.Count);
        Assert.All(entries, entry =>
        {
            string text = entry.GetRawText();
            Assert.All(Fields, field => Assert.True(entry.TryGetProperty(field, out JsonElement value) && value.ValueKind == JsonValueKind.String, $"{field} in {text}"));
            Assert.Matches(KeyForm(), entry.GetProperty("key").GetString());
            Assert.NotEqual("", entry.GetProperty("title").GetString());
            Assert.NotEqual("", entry.GetProperty("seen").GetString());
            Assert.True(entry.GetProperty("year").GetString() is "" or { Length: 4 }, text);
        });
    }

    /// <summary>What someone read can be found again: author, title and the place in it. Anything else is from memory, derived or no document.</summary>
    [Fact]
    public void Sources_ThatWereRead_CanBeFoundAgain() => Assert.All(Entries(), entry =>
    {
        string Of(string field) => entry.GetProperty(field).GetString()!;
        if (NoDocument().IsMatch(Of("seen")))
        {
            return;
        }

        Assert.True(Of("author").Length != 0 && Of("number").Length != 0, $"{Of("key")}: neither author and place nor from memory");
        Assert.False(Anonymous().IsMatch(Of("title")), $"{Of("key")}: `{Of("title")}` names no document");
    });

    [Theory]
    [InlineData("common-practice")]
    [InlineData("from-memory")]
    [InlineData("derived")]
    public void Sources_TheWordsThatAreNoDocument_AreListed(string key) => Assert.Contains(key, Keys);

    [Fact]
    public void Sources_EveryKeyInTheCode_IsListed()
    {
        Dictionary<string, string> cited = new(StringComparer.Ordinal);
        foreach (string file in Directory.EnumerateFiles(Path.Combine(ReferenceTable.Root, "src"), "*.cs", SearchOption.AllDirectories).Where(file => !file.Split(Path.DirectorySeparatorChar).Contains("obj")))
        {
            foreach (Match match in CitedInCode().Matches(File.ReadAllText(file)))
            {
                cited[match.Groups["key"].Value] = Path.GetFileName(file);
            }
        }

        Assert.True(20 < cited.Count, $"{cited.Count} keys cited");
        Assert.Empty(cited.Where(pair => !Keys.Contains(pair.Key)).Select(pair => $"{pair.Key} in {pair.Value}"));
    }

    [Fact]
    public void Sources_EveryKeyHeldInAStaticField_IsListed()
    {
        SourceRef[] held = [.. typeof(SourceRef).Assembly.GetTypes()
            .Where(type => !type.ContainsGenericParameters)
            .SelectMany(type => type.GetFields(BindingFlags.Static | BindingFlags.Public | BindingFlags.NonPublic | BindingFlags.DeclaredOnly))
            .Select(field => field.FieldType == typeof(SourceRef) ? (SourceRef?)field.GetValue(null) : field.FieldType == typeof(Equation) ? ((Equation?)field.GetValue(null))?.Source : null)
            .OfType<SourceRef>()];
        Assert.NotEmpty(held);
        Assert.All(held, source => Assert.Contains(source.Key, Keys));
    }

    [Fact]
    public void Sources_EveryKeyInTheTables_IsListed() => Assert.All(ReferenceTable.All(), row => Assert.Contains(row.Source, Keys));

    private static IEnumerable<JsonElement> Entries()
    {
        using JsonDocument document = JsonDocument.Parse(File.ReadAllText(Path.Combine(ReferenceTable.Folder, "sources.json")));
        return [.. document.RootElement.EnumerateArray().Select(element => element.Clone())];
    }

    [GeneratedRegex("^(from memory|derived|no source|given by the user)$", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex NoDocument();

    /// <summary>A kind of document in place of a title: "sampling tutorials", "homework page", "data sheet of another converter".</summary>
    [GeneratedRegex("^(data sheet of an?(other)? |newsletter|tutorials?|homework|glossary|abstract of|project documents|sampling tutorials|.* tutorials$)", RegexOptions.ExplicitCapture | RegexOptions.IgnoreCase, 1000)]
    private static partial Regex Anonymous();

    [GeneratedRegex("^[a-z0-9]+(-[a-z0-9]+)*$", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex KeyForm();

    /// <summary>new SourceRef("key" … and SourceRef Name = new("key" ….</summary>
    [GeneratedRegex("SourceRef(\\s+\\w+\\s*=\\s*new)?\\s*\\(\\s*\"(?<key>[^\"]+)\"", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex CitedInCode();
}
