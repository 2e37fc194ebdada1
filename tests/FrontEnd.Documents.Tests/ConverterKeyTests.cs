using FrontEnd.Converter;
using FrontEnd.Documents.Reading;
using FrontEnd.Fields;
using FrontEnd.Findings;
using FrontEnd.Text;
using Xunit;

namespace FrontEnd.Documents.Tests;

/// <summary>The converter's keys in both forms of a design file.</summary>
public sealed class ConverterKeyTests
{
    [Fact]
    public void Converter_BothForms_SayTheSame()
    {
        AnalogDigitalConverter toml = Read("[converter]\ndifferential = true\nown-supply = \"5 V\"\nnoise = \"auto\"\n", DocumentFormat.Toml);
        AnalogDigitalConverter json = Read("{\"converter\": {\"differential\": true, \"own_supply\": 5, \"noise_rms\": null}}", DocumentFormat.Json);
        Assert.Equal((true, 5.0, null), (toml.Differential, toml.OwnSupply!.Value.Volts, toml.Noise));
        Assert.Equal((toml.Differential, toml.OwnSupply, toml.Noise), (json.Differential, json.OwnSupply, json.Noise));

        // Noise of 0 V is a noise that is given.
        Assert.Equal(0, Read("{\"converter\": {\"noise_rms\": 0}}", DocumentFormat.Json).Noise!.Value.Volts);
    }

    [Fact]
    public void Converter_WordsForNoValue_LeaveItToTheKind()
    {
        AnalogDigitalConverter converter = Read("[converter]\ndifferential = \"auto\"\nown-supply = \"none\"\n", DocumentFormat.Toml);
        Assert.Equal((null, null), (converter.Differential, converter.OwnSupply));
        Assert.False(ConverterSupply.IsDifferential(converter));
        Assert.True(ConverterSupply.IsDifferential(converter with { Kind = ConverterKind.DeltaSigma }));
    }

    /// <summary>No shipped design asks of a part what its card does not allow.</summary>
    [Fact]
    public void ShippedDesigns_TheirParts_AreWithinTheirCards()
    {
        foreach (string file in Directory.GetFiles(Repository.Designs, "*.toml").Where(file => !file.Contains("requirements", StringComparison.Ordinal)))
        {
            DesignDocument document = DesignDocument.Read(file);
            Assert.True(ConverterSupply.Fits(document.Design.Converter, document.Design.Supply.Lowest), file);
            Assert.DoesNotContain(document.Findings, finding => finding.Code is Messages.GainNotOffered or Messages.SupplyOutsidePart or Messages.SupplyDestroysPart
                or Messages.ConverterAboveSupply or Messages.OwnSupplyAboveHighest);
        }
    }

    // Every amplifier, op-amp and converter card says on which supply it works; what it says is the design's.
    [Theory]
    [InlineData(CardClass.Amplifier, "amplifier")]
    [InlineData(CardClass.OpAmp, "electrodes.active-buffer.opamp")]
    [InlineData(CardClass.Converter, "converter")]
    public void Cards_EachOfThem_SaysOnWhichSupplyItWorks(CardClass cardClass, string table)
    {
        foreach (string name in DesignDocument.CardNames(cardClass))
        {
            DesignDocument document = DesignDocument.Parse($"[{table}]\ncard = \"{name}\"\n", DocumentFormat.Toml);
            foreach (string key in (string[])["supply-lowest", "supply-highest"])
            {
                Assert.Equal((name, OriginKind.Card), (name, document.OriginOf($"{table}.{key}")!.Kind));
            }

            if (cardClass == CardClass.Amplifier)
            {
                // One way or the other a gain is set.
                Assert.NotEqual(document.Design.Amplifier.Gains is null, document.Design.Amplifier.GainConstant is null);
            }
        }
    }

    private static AnalogDigitalConverter Read(string text, DocumentFormat format)
    {
        DesignDocument document = DesignDocument.Parse(text, format);
        Assert.DoesNotContain(document.Findings, finding => finding.Severity == Severity.Error);
        return document.Design.Converter;
    }
}
