using FrontEnd.Quantities;
using FrontEnd.Text;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using Xunit;

namespace FrontEnd.Tests.Text;

/// <summary>Laws of text and quantity that hold for every kind and every value.</summary>
public class QuantityTextLaws
{
    /// <summary>A finite value over many powers of ten, both signs, with zero, whole numbers and binary noise among them.</summary>
    public sealed class Values
    {
        public static Arbitrary<double> Doubles() =>
            Gen.OneOf(
                from mantissa in Gen.Choose(-9_999_999, 9_999_999)
                from power in Gen.Choose(-22, 9)
                select mantissa * Math.Pow(10, power),
                from whole in Gen.Choose(-2000, 2000)
                select (double)whole,
                from bits in ArbMap.Default.GeneratorFor<double>()
                select double.IsFinite(bits) ? bits : 0).ToArbitrary();

        public static Arbitrary<QuantityKind> Kinds() => Gen.Elements(QuantityKind.All.ToArray()).ToArbitrary();
    }

    [Property(Arbitrary = [typeof(Values)], MaxTest = 4000)]
    public void Text_ParseOfFormat_GivesSameQuantityToTheDigitsPrinted(QuantityKind kind, double si, int digitsSeed)
    {
        int digits = 1 + (int)((uint)digitsSeed % 12);
        if (1e307 < Math.Abs(si))
        {
            return;   // rounding up would leave the range of a double
        }

        string text = QuantityText.Format(kind.FromSi(si), digits);
        Assert.True(QuantityText.TryParse(kind, text, out IQuantity? again, out ParseProblem? problem), $"{kind} {si:r}: `{text}` {problem?.Code} {problem?.Note}");

        // Half a unit of the last digit, and the rounding of the scales; where decimals are limited an absolute half unit.
        double digit = Math.Pow(10, 1 - digits);
        double allowed = (Math.Abs(si) * ((0.5001 * digit) + 1e-14)) + double.Epsilon;
        if (kind.ByDifference)
        {
            allowed += 0.5001 * digit;
        }
        else if (kind.Is<Temperature>())
        {
            allowed = ((Math.Abs(si - 273.15) + 1) * 0.5001 * digit) + ((Math.Abs(si) + 273.15) * 1e-14);
        }

        Assert.True(Math.Abs(again!.SiValue - si) <= allowed, $"{kind} {si:r} printed `{text}` reads {again.SiValue:r}");
    }

    [Property(Arbitrary = [typeof(Values)], MaxTest = 4000)]
    public void Text_ParseOfFormatExact_GivesTheSameBits(QuantityKind kind, double si)
    {
        IQuantity quantity = kind.FromSi(si);
        string text = QuantityText.FormatExact(quantity);
        Assert.True(QuantityText.TryParse(kind, text, out IQuantity? again, out ParseProblem? problem), $"{kind} {si:r}: `{text}` {problem?.Code}");
        Assert.True(si == again!.SiValue, $"{kind} {si:r} printed `{text}` reads {again.SiValue:r}");
    }

    [Property(Arbitrary = [typeof(Values)], MaxTest = 2000)]
    public void Text_FormatPartOfItsOwnParse_IsTheSameText(QuantityKind kind, double si)
    {
        string text = QuantityText.FormatPart(kind.FromSi(si));
        Assert.True(QuantityText.TryParse(kind, text, out IQuantity? again, out _), text);

        // Changing unit may move the 12th digit of an hour or a charge; parts have decimal units and do not move.
        if (!kind.Is<Duration>() && !kind.Is<Charge>() && !kind.Is<Temperature>())
        {
            Assert.Equal(text, QuantityText.FormatPart(again));
        }
    }

    [Property(MaxTest = 3000)]
    public void Text_AnyString_IsReadOrIsAProblemAndNeverThrows(string? text)
    {
        foreach (QuantityKind kind in QuantityKind.All)
        {
            bool read = QuantityText.TryParse(kind, text, out IQuantity? value, out ParseProblem? problem);
            Assert.Equal(read, value is not null);
            Assert.Equal(read, problem is null);
            Assert.True(problem is null || (0 <= problem.Position && problem.Position <= (text ?? "").Length));
        }
    }

    [Property(MaxTest = 3000)]
    public void Text_AnyMixtureOfItsOwnLetters_IsReadOrIsAProblemAndNeverThrows(int seed)
    {
        const string letters = "0123456789.,eE+-− kKmMµuRΩΩFpnHzVAdB%°√/()²^sx±";
        Random random = new(seed);
        string text = new([.. Enumerable.Range(0, random.Next(12)).Select(_ => letters[random.Next(letters.Length)])]);
        foreach (QuantityKind kind in QuantityKind.All)
        {
            bool read = QuantityText.TryParse(kind, text, out IQuantity? value, out ParseProblem? problem);
            Assert.True(read != problem is not null, text);
            Assert.True(!read || double.IsFinite(value!.SiValue), text);
        }
    }

    [Property(MaxTest = 1000)]
    public void Format_AnyDigits_DoesNotThrow(double value, int digits)
    {
        foreach (string unit in new[] { "V", "Ω", "dB", "°", "1", "bit", "s", "V/√Hz", "m²", "C", "K", "" })
        {
            Assert.NotEqual("", QuantityText.Format(value, unit, digits));
            Assert.NotEqual("", QuantityText.FormatTrimmed(value, unit, digits));
        }
    }

    [Fact]
    public void Text_EveryPreferredResistance_PrintsShortAndReadsBackExactly()
    {
        foreach (double ohms in PreferredValues.Between(0.1, 100e6, PreferredSeries.E192).Concat(PreferredValues.Between(0.1, 100e6, PreferredSeries.E24)))
        {
            Resistance part = Resistance.FromOhms(ohms);
            string text = QuantityText.FormatPart(part);
            Assert.True(text.Length <= 7, text);
            Assert.True(QuantityText.TryParse(text, out Resistance again, out _));
            Assert.Equal(part, again);
            Assert.Equal(text, QuantityText.FormatExact(part));
        }
    }

    [Fact]
    public void Text_EveryPreferredCapacitance_PrintsShortAndReadsBackExactly()
    {
        foreach (double farads in PreferredValues.Between(1e-12, 1e-3, PreferredSeries.E24))
        {
            Capacitance part = Capacitance.FromFarads(farads);
            string text = QuantityText.FormatPart(part);
            Assert.True(text.Length <= 7, text);
            Assert.True(QuantityText.TryParse(text, out Capacitance again, out _));
            Assert.Equal(part, again);
        }
    }
}
