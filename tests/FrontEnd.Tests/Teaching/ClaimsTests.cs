using System.Globalization;
using FrontEnd.Identity;
using FrontEnd.Quantities;
using FrontEnd.Teaching;
using Xunit;

namespace FrontEnd.Tests.Teaching;

/// <summary>What glossary and explanations state as a number is worked out here, and what they once stated wrongly stays mended.</summary>
public class ClaimsTests
{
    private static string Meaning(string term) => Glossary.Find(term).Single(one => string.Equals(one.Name, term, StringComparison.Ordinal)).Meaning;

    private static string Reason(ResultId id) => Explanations.Of(id)!.Reason;

    private static string Written(double value, string format) => value.ToString(format, CultureInfo.InvariantCulture);

    // The share of a Gaussian within k times its rms to each side, by summing the bell: no formula of the program.
    private static double Within(double k)
    {
        const int steps = 100_000;
        double width = 2 * k / steps;
        return Enumerable.Range(0, steps).Sum(i => Math.Exp(-0.5 * Math.Pow(-k + ((i + 0.5) * width), 2))) * width / Math.Sqrt(2 * Math.PI);
    }

    [Fact]
    public void Numbers_OfTheGlossary_AreRight()
    {
        Assert.Contains($"{Written(100 * Within(3.3), "0.0")} % of the time within 3.3 times", Meaning("Gaussian"), StringComparison.Ordinal);
        Assert.Contains($"·rms for {Written(100 * (1 - Within(TradeConstants.NoisePeakToPeak / 2)), "0.0")} % of the time", Meaning("peak-to-peak"), StringComparison.Ordinal);
        Assert.Contains($"{Written(Math.PI / 2, "0.00")} f_c for one pole", Meaning("noise bandwidth"), StringComparison.Ordinal);
        Assert.Contains($"{Written(100 * Math.Exp(-1), "0")} %", Meaning("time constant"), StringComparison.Ordinal);
        Assert.Contains("(SINAD − 1.76)/6.02", Meaning("effective number of bits"), StringComparison.Ordinal);
        Assert.Equal(1.76, 20 * Math.Log10(Math.Sqrt(1.5)), 0.005);
        Assert.Equal(6.02, 20 * Math.Log10(2), 0.005);
    }

    [Fact]
    public void Numbers_OfTheExplanations_AreRight()
    {
        Assert.Contains($"ten picofarads are {Written(1e-6 / (2 * Math.PI * 50 * 10e-12), "0")} MΩ at 50 Hz", Reason(ResultIds.Input.ImpedanceAtMains), StringComparison.Ordinal);
        Assert.Contains($"{Written(Math.Log2(TradeConstants.NoisePeakToPeak), "0.0")} bits", Reason(ResultIds.Converter.NoiseFreeBits), StringComparison.Ordinal);
        Assert.Contains($"within ±3.3 times its rms for {Written(100 * Within(3.3), "0.0")} % of the time", Reason(ResultIds.Noise.PeakToPeak), StringComparison.Ordinal);
    }

    /// <summary>A voltage is no sum of impedances; a loop divides by one more than its gain; a buffer draws a little.</summary>
    [Fact]
    public void Sentences_ThatWereFalse_AreMended()
    {
        Assert.Contains("over the current is the sum of their impedances", Meaning("contact check"), StringComparison.Ordinal);
        Assert.Contains("over the current is the sum of both impedances", Reason(ResultIds.Contact.Of(Lead.Active).Good), StringComparison.Ordinal);
        Assert.Contains("divided by 1 + T", Meaning("loop gain"), StringComparison.Ordinal);
        Assert.Contains("almost no current", Meaning("buffer"), StringComparison.Ordinal);
        Assert.Contains("−1 entirely against", Meaning("correlation"), StringComparison.Ordinal);
    }
}
