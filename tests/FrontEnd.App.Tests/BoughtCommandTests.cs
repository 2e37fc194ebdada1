using FrontEnd.Documents.Tests;
using FrontEnd.Text;
using Xunit;

namespace FrontEnd.App.Tests;

/// <summary>A headset that somebody else built: written, checked, and refused by what wants every value.</summary>
public sealed class BoughtCommandTests
{
    [Theory]
    [InlineData("mine.toml")]
    [InlineData("mine.json")]
    public void New_Bought_WritesAFileThatCheckAnswers(string name)
    {
        using TemporaryFolder folder = new();
        string file = Path.Combine(folder.Path, name);
        Assert.Equal(0, Shell.Run("new", "--bought", file).Code);
        Outcome check = Shell.Run("check", file);
        Assert.Equal(0, check.Code);
        Assert.Contains("? open", check.Output, StringComparison.Ordinal);
        Assert.Contains("closed by:", check.Output, StringComparison.Ordinal);
        Assert.Contains("alpha, eyes closed in O1-A1", check.Output, StringComparison.Ordinal);
        Assert.Equal(2, Shell.Run("new", "--bought", file).Code);   // never over a file
    }

    [Theory]
    [InlineData("spread {0}")]
    [InlineData("explain {0} noise.total")]
    [InlineData("compare {0} designs/starter.toml")]
    [InlineData("coefficients {0} -o {1}")]
    [InlineData("rates {0}")]
    [InlineData("bench {0}")]
    [InlineData("sheet {0} --builds 50 -o {1}")]
    public void Command_ThatWantsEveryValue_NamesWhatIsUnknown(string call)
    {
        using TemporaryFolder folder = new();
        string output = Path.Combine(folder.Path, call.StartsWith("coef", StringComparison.Ordinal) ? "filters.csv" : "sheet.md");
        Outcome outcome = Shell.Run(string.Format(System.Globalization.CultureInfo.InvariantCulture, call, "designs/bought-headband.toml", output).Split(' '));
        Assert.Equal(2, outcome.Code);
        Assert.Contains(Messages.PartlyKnown, outcome.Messages, StringComparison.Ordinal);
        Assert.Contains("input.series-resistor", outcome.Messages, StringComparison.Ordinal);
        Assert.False(File.Exists(output));
    }
}
