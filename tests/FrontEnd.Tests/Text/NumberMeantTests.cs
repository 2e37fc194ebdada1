using System.Globalization;
using FrontEnd.Text;
using FsCheck;
using FsCheck.Xunit;
using Xunit;

namespace FrontEnd.Tests.Text;

/// <summary>Numbers as other hands and keyboards write them.</summary>
public class NumberMeantTests
{
    /// <summary>The digits of other scripts are the characters of the Unicode category Nd; each block begins with its zero.</summary>
    [Property]
    public void Plain_OfDigitsOfAnotherScript_IsTheSameNumber(int whole, byte tenths, byte script)
    {
        char zero = new[] { '٠', '۰', '०', '০', '０', '๐' }[script % 6], point = new[] { '٫', '·', '．', '.' }[script % 4];
        string number = $"{whole.ToString(CultureInfo.InvariantCulture)}.{tenths.ToString(CultureInfo.InvariantCulture)}";
        string written = string.Concat(number.Select(sign => char.IsAsciiDigit(sign) ? (char)(zero + sign - '0') : sign == '-' ? '−' : point));
        Assert.Equal(number, NumberMeant.Plain(written));
    }

    [Property]
    public void Plain_OfThousandsApart_IsTheSameNumber(int number, byte gap)
    {
        string between = new[] { " ", "\u00A0", "\u202F", "'", "’" }[gap % 5], plain = number.ToString(CultureInfo.InvariantCulture);
        string written = number.ToString("#,0", new NumberFormatInfo { NumberGroupSeparator = between, NegativeSign = "-" });
        Assert.Equal(written == plain ? null : plain, NumberMeant.Plain(written));
    }

    [Theory]
    [InlineData("3.5")]
    [InlineData("3,5")]
    [InlineData("3 50")]
    [InlineData("3  500")]
    [InlineData("1 2345")]
    [InlineData("12 34 567")]
    [InlineData("3..5")]
    [InlineData("1-2")]
    [InlineData("")]
    [InlineData(".")]
    [InlineData("-")]
    [InlineData("5 kΩ")]
    [InlineData("1e999")]
    public void Plain_OfWhatIsNoNumberOrIsPlain_IsNothing(string written) => Assert.Null(NumberMeant.Plain(written));

    [Theory]
    [InlineData("2·2 kΩ", "write `2.2 kΩ`")]
    [InlineData("２２ kΩ", "write `22 kΩ`")]
    [InlineData("2 200 Ω", "write `2200 Ω`")]
    [InlineData("٤٫٧ kΩ", "write `4.7 kΩ`")]
    public void Quantity_InOtherSigns_IsToldInPlainOnes(string text, string help)
    {
        Assert.False(QuantityText.TryParse<FrontEnd.Quantities.Resistance>(text, out _, out ParseProblem? problem));
        Assert.Equal(help, problem!.Help);
        Assert.Contains(problem.Note!, new[] { NumberMeant.Rule, "full-width letters and signs stand in it" });
    }
}
