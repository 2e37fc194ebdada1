using FrontEnd.Compare;
using FrontEnd.Designs;
using FrontEnd.Documents.Sheets;
using FrontEnd.Quantities;
using Xunit;

namespace FrontEnd.Documents.Tests.Sheets;

/// <summary>What <c>compare</c> prints: the worst first, and nothing about a design that is none.</summary>
public class CompareTextTests
{
    private static Design Starter { get; } = DesignDocument.Read(Path.Combine(Repository.Designs, "starter.toml")).Design;

    private static string Text(Design to) => CompareText.Of(Comparison.Of(Starter, to, TestContext.Current.CancellationToken));

    [Fact]
    public void AMarginThatClips_FailsFirst()
    {
        string text = Text(Starter with { Amplifier = Starter.Amplifier with { OutputMargin = Voltage.FromVolts(1) } });
        string[] lines = text.Split('\n');
        int heading = Array.FindIndex(lines, line => line.Trim() == "fails now");
        Assert.True(0 < heading && lines[heading + 1].Contains("(fail)", StringComparison.Ordinal), text);
        Assert.Contains("levels.offset_survived: ", text, StringComparison.Ordinal);
        Assert.True(heading < (Array.FindIndex(lines, line => line.Trim() == "better") is var better and >= 0 ? better : lines.Length), text);
    }

    [Fact]
    public void ALimitOfSafety_IsNoSilentChange()
    {
        string text = Text(Starter with { Requirements = Starter.Requirements with { FaultCurrent = Current.FromAmperes(400e-6) } });
        Assert.DoesNotContain("no judged figure changes", text, StringComparison.Ordinal);
        Assert.Contains("safety.fault_current: ", text, StringComparison.Ordinal);
    }

    [Fact]
    public void AnInvalidDesignHalfWay_HasItsFindingAndNoFigures()
    {
        string text = Text(Starter with
        {
            Band = Starter.Band with { High = Frequency.FromHertz(10) }, Digital = [],
            Converter = Starter.Converter with { Rate = Frequency.FromHertz(50) },
        });
        string half = text[text.IndexOf("converter.rate alone", StringComparison.Ordinal)..];
        half = half[..(half.IndexOf("\n\n", StringComparison.Ordinal) is var end and > 0 ? end : half.Length)];
        Assert.Contains("error FE0302", half, StringComparison.Ordinal);
        Assert.Contains("no figures: a design with this difference is invalid", half, StringComparison.Ordinal);
        Assert.DoesNotContain("no limit found", half, StringComparison.Ordinal);
    }

    [Fact]
    public void NoDifference_IsSaid() => Assert.StartsWith("the designs do not differ", Text(Starter with { }), StringComparison.Ordinal);
}
