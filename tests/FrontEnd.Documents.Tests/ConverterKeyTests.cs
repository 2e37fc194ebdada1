using FrontEnd.Converter;
using FrontEnd.Documents.Reading;
using FrontEnd.Findings;
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

    /// <summary>No shipped design's converter is wider than its supply.</summary>
    [Fact]
    public void ShippedDesigns_TheirConverters_FitTheirSupply()
    {
        foreach (string file in Directory.GetFiles(Repository.Designs, "*.toml").Where(file => !file.Contains("requirements", StringComparison.Ordinal)))
        {
            DesignDocument document = DesignDocument.Read(file);
            Assert.True(ConverterSupply.Fits(document.Design.Converter, document.Design.Supply.Lowest), file);
        }
    }

    private static AnalogDigitalConverter Read(string text, DocumentFormat format)
    {
        DesignDocument document = DesignDocument.Parse(text, format);
        Assert.DoesNotContain(document.Findings, finding => finding.Severity == Severity.Error);
        return document.Design.Converter;
    }
}
