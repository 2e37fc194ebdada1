using FrontEnd.Digital;
using FrontEnd.Filters;
using FrontEnd.Quantities;
using Xunit;

namespace FrontEnd.Tests.Digital;

/// <summary>What a microcontroller gets, worked out a second way: sections by their difference equation, the checksum by polynomial division from the other end, headroom by adding up impulse responses.</summary>
public sealed class ExportTests
{
    private static readonly Frequency Rate = Frequency.FromHertz(250);

    private static readonly DigitalStage[] Filters = [new DigitalLowPass { Name = "low", Corner = Frequency.FromHertz(30), Order = 4 }, new DigitalNotch { Name = "notch", Q = 4 }];

    private static SectionsExport Export(DigitalWord word, FilterForm form = FilterForm.TransposedDirectII) =>
        SectionsExport.Of(Filters, Rate, new DigitalArithmetic { Word = word, Form = form, StateFraction = word is DigitalWord.Q31 or DigitalWord.Q15 ? 4 : 0 }, 16)!;

    /// <summary>y = b0·x + b1·x₁ + b2·x₂ − a1·y₁ − a2·y₂, section after section, in double precision.</summary>
    private static double[] Run(SecondOrderSections sections, IEnumerable<double> input)
    {
        double[] signal = [.. input];
        foreach (Biquad s in sections.Sections)
        {
            double[] output = new double[signal.Length];
            for (int n = 0; n < signal.Length; n++)
            {
                double X(int back) => back <= n ? signal[n - back] : 0;
                double Y(int back) => back <= n ? output[n - back] : 0;
                output[n] = (s.B0 * X(0)) + (s.B1 * X(1)) + (s.B2 * X(2)) - (s.A1 * Y(1)) - (s.A2 * Y(2));
            }

            signal = output;
        }

        return signal;
    }

    [Theory]
    [InlineData(DigitalWord.Single, 1e-4)]
    [InlineData(DigitalWord.Double, 1e-12)]
    public void TestOutput_OfAFloatingWord_IsTheDifferenceEquationsWithinTheTolerance(DigitalWord word, double most)
    {
        foreach (FilterForm form in Enum.GetValues<FilterForm>())
        {
            SectionsExport export = Export(word, form);
            Assert.InRange(export.Tolerance, double.Epsilon, most);
            Assert.Equal(FilterExport.TestLength, export.TestInput.Count);
            Assert.All(Run(export.Filter.Sections, export.TestInput).Zip(export.TestOutput), pair => Assert.Equal(pair.First, pair.Second, export.Tolerance));
        }
    }

    /// <summary>With four bits below the LSB each rounding is a thirty-second of it or less; a few of them add up.</summary>
    [Theory]
    [InlineData(DigitalWord.Q31)]
    [InlineData(DigitalWord.Q15)]
    public void TestOutput_OfAFixedWord_IsWholeAndNearTheDifferenceEquations(DigitalWord word)
    {
        foreach (FilterForm form in Enum.GetValues<FilterForm>())
        {
            SectionsExport export = Export(word, form);
            Assert.Equal(0, export.Tolerance);
            Assert.All(export.TestInput.Concat(export.TestOutput), value => Assert.Equal(value, Math.Round(value)));
            Assert.True(export.TestInput.Max(Math.Abs) > 1000);
            Assert.All(Run(export.Filter.Sections, export.TestInput).Zip(export.TestOutput), pair => Assert.Equal(pair.First, pair.Second, 3.0));
        }
    }

    /// <summary>More sections round more: what is allowed for two filters is above what is allowed for the first alone.</summary>
    [Fact]
    public void Tolerance_OfTwoFilters_IsAboveThatOfTheFirst()
    {
        var single = new DigitalArithmetic { Word = DigitalWord.Single };
        Assert.True(SectionsExport.Of(Filters[..1], Rate, single, 16)!.Tolerance < SectionsExport.Of(Filters, Rate, single, 16)!.Tolerance);
    }

    [Fact]
    public void Names_OfFilters_StandOnceForEachSection() => Assert.Equal(["low", "low", "notch"], Export(DigitalWord.Double).Names);

    /// <summary>Σ|h| from the first input to a section's output is by how much the largest input can grow there; a bit doubles.</summary>
    [Fact]
    public void HeadroomBits_OfSections_HoldTheSumOfTheImpulseResponse()
    {
        SectionsExport export = Export(DigitalWord.Double);
        IEnumerable<double> impulse = Enumerable.Range(0, 4000).Select(n => n == 0 ? 1.0 : 0);
        double most = Enumerable.Range(1, export.Filter.Sections.Count).Max(count => Run(Take(export.Filter.Sections, count), impulse).Sum(Math.Abs));
        Assert.InRange(most, Math.Pow(2, export.HeadroomBits - 1), Math.Pow(2, export.HeadroomBits));
    }

    private static SecondOrderSections Take(SecondOrderSections sections, int count) => new([.. sections.Sections.Take(count)]);

    /// <summary>The remainder of the message by x³² + x²⁶ + x²³ … + 1, bit after bit from the most significant end, on reversed bytes (IEEE 802.3's check).</summary>
    [Theory]
    [InlineData(DigitalWord.Double)]
    [InlineData(DigitalWord.Single)]
    [InlineData(DigitalWord.Q31)]
    [InlineData(DigitalWord.Q15)]
    public void Checksum_OfSections_IsTheRemainder(DigitalWord word)
    {
        SectionsExport export = Export(word);
        IEnumerable<double> numbers = export.Filter.Sections.Sections.SelectMany(s => new[] { s.B0, s.B1, s.B2, s.A1, s.A2 });
        IEnumerable<long> whole = export.Filter.Details.SelectMany(detail => detail.Words);
        byte[] bytes = word switch
        {
            DigitalWord.Double => [.. numbers.SelectMany(BitConverter.GetBytes)],
            DigitalWord.Single => [.. numbers.SelectMany(x => BitConverter.GetBytes((float)x))],
            DigitalWord.Q31 => [.. whole.SelectMany(x => BitConverter.GetBytes((int)x))],
            _ => [.. whole.SelectMany(x => BitConverter.GetBytes((short)x))],
        };
        Assert.Equal(Remainder(bytes), export.Checksum);
    }

    [Fact]
    public void Remainder_OfTheNineDigits_IsTheCheckValue() => Assert.Equal(0xCBF43926u, Remainder("123456789"u8.ToArray()));

    private static uint Remainder(byte[] bytes)
    {
        bool[] bits = [.. bytes.SelectMany(one => Enumerable.Range(0, 8).Select(k => ((one >> k) & 1) == 1)), .. new bool[32]];
        for (int i = 0; i < 32; i++)
        {
            bits[i] = !bits[i];
        }

        for (int i = 0; i + 32 < bits.Length; i++)
        {
            if (bits[i])
            {
                foreach (int power in new[] { 32, 26, 23, 22, 16, 12, 11, 10, 8, 7, 5, 4, 2, 1, 0 })
                {
                    bits[i + 32 - power] = !bits[i + 32 - power];
                }
            }
        }

        return ~Enumerable.Range(0, 32).Aggregate(0u, (sum, k) => sum | (bits[bits.Length - 32 + k] ? 1u << k : 0));
    }
}
