using FrontEnd.Catalogue;
using FrontEnd.Fields;
using FrontEnd.Quantities;
using FrontEnd.Terminal;
using Xunit;

namespace FrontEnd.App.Tests.Terminal;

/// <summary>A field has one unit from where it is typed to every message about it.</summary>
public class UnitTests
{
    private static readonly Model Headband = Setup.Start(Setup.Headband);

    public static TheoryData<string> Ratios =>
        [.. DesignFields.Of(Headband.Design).Where(one => one.Holds<Ratio>()).Select(one => one.Key)];

    [Theory]
    [MemberData(nameof(Ratios))]
    public void Ratio_WhateverItsValue_HasOneUnit(string key)
    {
        Field<Designs.Design> field = DesignFields.Find(Headband.Design, key)!;
        string unit = FieldText.Format(field, field.FromSi(0.5)).EndsWith('%') ? "%" : "×", other = unit == "%" ? "×" : "%";
        foreach (double si in new[] { 0, 0.004, 0.5, 1, 1.5, 2, 300 })
        {
            string text = FieldText.Format(field, field.FromSi(si));
            Assert.EndsWith(" " + unit, text, StringComparison.Ordinal);
            Assert.EndsWith(" " + unit, FieldText.FormatTrimmed(field, field.FromSi(si), 6), StringComparison.Ordinal);
            if (FieldText.TryParse(field, text, out object? value, out Findings.Finding? finding))
            {
                Assert.Equal(si, ((Ratio)value!).Fraction, 1e-12);
            }
            else
            {
                Assert.Contains($"{key} {text} is outside its range", finding!.Message, StringComparison.Ordinal);
                Assert.DoesNotContain(other, finding.Message, StringComparison.Ordinal);
            }
        }

        string described = FormRow.Describe(field, Headband.Here.Document);
        Assert.DoesNotContain(other, described[field.Meaning.Length..described.IndexOf('(', field.Meaning.Length)], StringComparison.Ordinal);
    }

    /// <summary>What is refused is told as it was typed.</summary>
    [Theory]
    [InlineData("electrodes.mismatch", "300 ×")]
    [InlineData("electrodes.mismatch", "300 %")]
    [InlineData("input.series-resistor", "47000000 MΩ")]
    [InlineData("converter.rate", "0 S/s")]
    [InlineData("converter.bits", "300")]
    public void Number_ThatIsRefused_IsToldAsItWasTyped(string key, string typed)
    {
        Assert.False(FieldText.TryParse(DesignFields.Find(Headband.Design, key)!, typed, out _, out Findings.Finding? finding));
        Assert.StartsWith($"{key} {typed} is outside its range", finding!.Message, StringComparison.Ordinal);
    }

    /// <summary>The range beside a field is the one that its message gives.</summary>
    [Fact]
    public void Range_BesideTheField_IsThatOfItsMessage()
    {
        Field<Designs.Design> field = DesignFields.Find(Headband.Design, "converter.oversampling")!;
        Assert.Contains("from 2 to 1000000", FormRow.Describe(field, Headband.Here.Document), StringComparison.Ordinal);
    }
}
