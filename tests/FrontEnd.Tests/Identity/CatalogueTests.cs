using System.Reflection;
using System.Text.RegularExpressions;
using FrontEnd.Catalogue;
using FrontEnd.Findings;
using FrontEnd.Identity;
using FrontEnd.Reporting;
using FrontEnd.Tests.Reference;
using Xunit;

namespace FrontEnd.Tests.Identity;

/// <summary>Ids are spelt in the catalogue and nowhere else.</summary>
public sealed partial class CatalogueTests
{
    private static readonly FieldInfo[] Members = [.. typeof(ResultIds).GetNestedTypes().SelectMany(type => type.GetFields(BindingFlags.Public | BindingFlags.Static))];

    private static IEnumerable<T> Of<T>() => Members.Where(member => member.FieldType == typeof(T)).Select(member => (T)member.GetValue(null)!);

    /// <summary>No text of the sources is a result's id or begins like one of a family; keys of the design that begin alike are another matter.</summary>
    [Fact]
    public void Sources_OutsideTheCatalogue_SpellNoId()
    {
        // Tables of the design are called the same, and so are some keys: there only whole ids count that are no keys.
        string[] ids = [.. Of<ResultId>().Select(id => id.Text).Except(DesignFields.Fixed.Select(field => field.Key))];
        string[] tables = ["converter.", "mains.", "input.", "supply.", "montage.", "head."];
        string[] families = [.. Of<ResultFamily>().Select(family => family.Start).Where(start => !tables.Contains(start))];
        Assert.True(60 < ids.Length && 10 < families.Length);
        string root = Path.GetDirectoryName(ReferenceTable.Folder)!;
        List<string> spelt = [];
        foreach (string file in Directory.EnumerateFiles(Path.Combine(root, "src"), "*.cs", SearchOption.AllDirectories))
        {
            string[] folders = Path.GetRelativePath(root, file).Split(Path.DirectorySeparatorChar);
            if (folders.Contains("Identity") || folders.Contains("obj"))
            {
                continue;
            }

            foreach (string line in File.ReadLines(file).Select(line => line.TrimStart()).Where(line => !line.StartsWith("//", StringComparison.Ordinal)))
            {
                spelt.AddRange(Literal().Matches(line).Select(match => match.Groups["text"].Value)
                    .Where(text => ids.Contains(text) || families.Any(start => text.StartsWith(start, StringComparison.Ordinal) && !text.Contains(' ', StringComparison.Ordinal)))
                    .Select(text => $"{Path.GetFileName(file)}: {text}"));
            }
        }

        Assert.Equal([], spelt);
    }

    [Fact]
    public void Ids_OfTheCatalogue_AreAllDifferent() => Assert.Equal(Of<ResultId>().Count(), Of<ResultId>().Distinct().Count());

    /// <summary>Every figure of the tests' designs is in a family of the catalogue.</summary>
    [Fact]
    public void Results_OfAllDesigns_AreInAFamily()
    {
        ResultFamily[] families = [.. Of<ResultFamily>()];
        Assert.All(Designs.All.SelectMany(design => Evaluator.Evaluate(design).Results), result => Assert.True(Array.Exists(families, family => family.Has(result.Id)), result.Id.Text));
    }

    /// <summary>A key that the sources name stands in <see cref="DesignKeys"/>, and every key there is one of a design.</summary>
    [Fact]
    public void Sources_OutsideTheirCatalogue_SpellNoKey()
    {
        string[] named = [.. typeof(DesignKeys).GetNestedTypes().SelectMany(type => type.GetFields()).Select(field => (string)field.GetRawConstantValue()!)];
        string[] known = [.. DesignFields.Fixed.Select(field => field.Key).Where(key => key.Contains('.', StringComparison.Ordinal))];
        Assert.Equal([], named.Except(known));
        string root = Path.GetDirectoryName(ReferenceTable.Folder)!;
        string[] made = ["DesignKeys.cs", "Catalogue", "Identity", "obj"];
        IEnumerable<string> spelt = Directory.EnumerateFiles(Path.Combine(root, "src"), "*.cs", SearchOption.AllDirectories)
            .Where(file => !Path.GetRelativePath(root, file).Split(Path.DirectorySeparatorChar).Intersect(made).Any())
            .SelectMany(file => File.ReadLines(file).Where(line => !line.TrimStart().StartsWith("//", StringComparison.Ordinal))
                .SelectMany(line => Literal().Matches(line).Select(match => match.Groups["text"].Value)).Where(text => known.Contains(text))
                .Select(text => $"{Path.GetFileName(file)}: {text}"));
        Assert.Equal([], spelt);
    }

    [GeneratedRegex("\"(?<text>(?:[^\"\\\\]|\\\\.)*)\"", RegexOptions.ExplicitCapture, 5000)]
    private static partial Regex Literal();
}
