using System.Text.RegularExpressions;
using FrontEnd.Tests.Reference;
using FrontEnd.Topologies;
using Xunit;

namespace FrontEnd.Tests.Architecture;

/// <summary>A topology is one file and a line in the catalogue.</summary>
public sealed class TopologyTests
{
    /// <summary>Files that make a stage of a particular topology because choosing it is what they are for; they ask nothing of it.</summary>
    private static readonly string[] Makers =
    [
        "src/FrontEnd/AntiAlias/RealisationSearch.cs", // low-pass sections from poles
        "src/FrontEnd/AntiAlias/NotchSearch.cs", // notches from centre and Q
        "src/FrontEnd/Sizing/SizingGrid.cs", // the second gain and the RC at a delta-sigma converter's pin
        "src/FrontEnd/Designs/BoughtDevice.cs", // gain and filter of a device that somebody else built
        "src/FrontEnd/Advice/Candidates.cs", // "one more anti-alias section"
        "src/FrontEnd/Teaching/Problems/QuestionSchematic.cs", // the circuits that problems are asked about
        "src/FrontEnd/Teaching/Problems/TeachingChain.cs", // the chain that judgements are about
        "src/FrontEnd/Teaching/Problems/JudgementProblems.cs", // "two more, equal RC sections"
    ];

    [Fact]
    public void Topologies_NoneOfThem_IsNamedOutsideItsFileAndTheCatalogue()
    {
        string[] names = [.. typeof(Stage).Assembly.GetTypes().Where(type => type.IsSubclassOf(typeof(Stage))).Select(type => type.Name)];
        Assert.Equal(TopologyCatalogue.Variants.Select(variant => variant.Create().GetType().Name).Distinct().Order(), names.Order());
        var word = new Regex($@"\b({string.Join('|', names)})\b", RegexOptions.None, TimeSpan.FromSeconds(5));
        List<string> faults = [];
        foreach (string path in Directory.EnumerateFiles(Path.Combine(ReferenceTable.Root, "src"), "*.cs", SearchOption.AllDirectories))
        {
            string file = Path.GetRelativePath(ReferenceTable.Root, path).Replace('\\', '/');
            string own = Path.GetFileNameWithoutExtension(file);
            if (file == "src/FrontEnd/Topologies/TopologyCatalogue.cs" || Makers.Contains(file) || file.Contains("/obj/", StringComparison.Ordinal))
            {
                continue;
            }

            faults.AddRange(word.Matches(File.ReadAllText(path)).Where(match => match.Value != own).Select(match => $"{file} names {match.Value}"));
        }

        Assert.Empty(faults);
    }
}
