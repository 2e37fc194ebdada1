using FrontEnd.Catalogue;
using FrontEnd.Converter;
using FrontEnd.Designs;
using FrontEnd.Documents.Reading;
using Xunit;

namespace FrontEnd.Documents.Tests;

/// <summary>Designs that were changed in code, and are to be written into a file.</summary>
public class TakenOverTests
{
    private static readonly DesignDocument Starter = DesignDocument.Parse(DesignDocument.Starter(DocumentFormat.Toml), DocumentFormat.Toml);

    public static TheoryData<string, Func<Design, Design>> Unwritable => new()
    {
        { "amplifier.gain", design => design with { Amplifier = design.Amplifier with { Gain = double.NaN } } },
        { "amplifier.gain", design => design with { Amplifier = design.Amplifier with { Gain = -3 } } },
        { "channels", design => design with { Channels = -3 } },
        { "mains.harmonics", design => design with { Mains = design.Mains with { Harmonics = [1, double.PositiveInfinity] } } },
        { "converter.kind", design => design with { Converter = design.Converter with { Kind = (ConverterKind)9 } } },
    };

    /// <summary>The file was written anew without its comments, with a number in it that no reader takes.</summary>
    [Theory]
    [MemberData(nameof(Unwritable))]
    public void TakeOver_WhatNoFileMayHold_IsRefused(string key, Func<Design, Design> change)
    {
        TakenOver taken = Starter.TakeOver(change(Starter.Design));
        Assert.Equal(key, taken.Finding?.Field);
        Assert.Same(Starter, taken.Document);
    }

    [Fact]
    public void Writer_OfNoNumber_SaysWhichItIs()
    {
        Design design = Starter.Design with { Amplifier = Starter.Design.Amplifier with { Gain = double.NaN } };
        Assert.Contains("amplifier.gain", Assert.Throws<ArgumentException>(() => DesignWriter.ToJson(design)).Message, StringComparison.Ordinal);
        Assert.Contains("amplifier.gain", Assert.Throws<ArgumentException>(() => DesignWriter.ToToml(design)).Message, StringComparison.Ordinal);
        Assert.NotEmpty(DesignCheck.Run(design));
    }
}
