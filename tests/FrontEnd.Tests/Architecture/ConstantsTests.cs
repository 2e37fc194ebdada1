using System.Text.RegularExpressions;
using FrontEnd.Tests.Reference;
using Xunit;

namespace FrontEnd.Tests.Architecture;

/// <summary>A number that the trade or nature fixes stands once in the program, texts and comments included.</summary>
public class ConstantsTests
{
    /// <summary>The look-behind and look-ahead leave longer numbers alone, and sizes of print.</summary>
    [Theory]
    [InlineData("6.6", "TradeConstants.cs")]
    [InlineData("1.380649e-23", "PhysicalConstants.cs")]
    [InlineData("1.602176634e-19", "PhysicalConstants.cs")]
    public void Constants_EachOfThem_StandsInItsFileOnly(string number, string home)
    {
        Regex regex = new($@"(?<![\d.]){Regex.Escape(number)}(?!\d|pt)", RegexOptions.None, TimeSpan.FromSeconds(1));
        IEnumerable<string> files = Directory.EnumerateFiles(Path.Combine(ReferenceTable.Root, "src"), "*.cs", SearchOption.AllDirectories)
            .Where(path => !path.Contains(Path.Combine("obj", ""), StringComparison.Ordinal) && regex.IsMatch(File.ReadAllText(path)));
        Assert.Equal([home], files.Select(path => Path.GetFileName(path)));
    }
}
