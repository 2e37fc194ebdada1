using FrontEnd.Catalogue;
using FrontEnd.Designs;
using FrontEnd.Documents.Reading;
using FrontEnd.Fields;
using FrontEnd.Results;
using FrontEnd.Text;
using FrontEnd.Unknowns;
using Xunit;

namespace FrontEnd.Documents.Tests;

/// <summary>Values that nobody knows: read, kept, written, refused.</summary>
public sealed class UnknownValueTests
{
    private const string Known = "[electrodes]\nactive = \"gel-prepared\"\nreference = \"gel-prepared\"\nground = \"gel-prepared\"\n[supply]\nhighest = \"3.3 V\"\n[input]\nseries-resistor = \"100 kΩ\"\n[ground-drive]\nseries-resistor = \"100 kΩ\"\n";

    private static DesignDocument Toml(string text) => DesignDocument.Parse(text, DocumentFormat.Toml);

    [Fact]
    public void Value_UnknownOrBetweenTwoEnds_IsNotKnown()
    {
        DesignDocument document = Toml(Known + "[amplifier]\ninput-noise = \"unknown\"\ngain = [3, 12]   # from its page\n[converter]\nkind = \"unknown\"\n");
        Assert.Empty(document.Findings);
        Assert.Equal(["amplifier.gain", "amplifier.input-noise", "converter.kind"], document.PartlyKnown!.Unknowns.Select(one => one.Key));
        UnknownField gain = document.PartlyKnown.Find("amplifier.gain")!;
        Assert.Equal((3.0, 12.0, true), (gain.Least, gain.Greatest, gain.IsStated));
        Assert.Equal(6, document.Design.Amplifier.Gain, 9);   // by factors: √(3·12)
        Assert.Equal("3 to 12", document.OriginOf("amplifier.gain")!.Text);
        Assert.Contains("amplifier.gain", document.NotAllKnown!.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Pair_Band_IsNoUnknown()
    {
        DesignDocument document = Toml("band = [\"1 Hz\", \"30 Hz\"]\n" + Known);
        Assert.Null(document.PartlyKnown);
        Assert.Equal(30, document.Design.Band.High.Hertz);
        Assert.Equal(ReadingMessages.WrongType, Assert.Single(Toml("band = \"unknown\"\n" + Known).Findings).Code);
    }

    [Fact]
    public void Plain_NumbersAndWord_AreReadAlike()
    {
        DesignDocument document = DesignDocument.Parse("{\"amplifier\": {\"eni\": [1e-8, 4e-8], \"gain\": \"unknown\"}}", DocumentFormat.Json);
        Assert.DoesNotContain(document.Findings, finding => finding.Severity == Findings.Severity.Error);
        Assert.Equal((1e-8, 4e-8), (document.PartlyKnown!.Find("amplifier.input-noise")!.Least, document.PartlyKnown.Find("amplifier.input-noise")!.Greatest));
        Assert.False(document.PartlyKnown.Find("amplifier.gain")!.IsStated);
    }

    [Theory]
    [InlineData("channels = \"unknown\"\n", Messages.CannotBeUnknown)]
    [InlineData("[requirements]\nnoise = \"unknown\"\n", Messages.RequirementUnknown)]
    [InlineData("[requirements]\nnoise = [\"1 µV\", \"4 µV\"]\n", Messages.RequirementUnknown)]
    [InlineData("[signal]\nsmallest = \"unknown\"\n", Messages.RequirementUnknown)]
    [InlineData("[[bands]]\nname = \"a\"\nlow = [\"7 Hz\", \"9 Hz\"]\nhigh = \"13 Hz\"\n", Messages.RequirementUnknown)]
    [InlineData("[amplifier]\ngain = [5, 3]\n", Messages.RangeReversed)]
    [InlineData("[amplifier]\ngain = [5, 5]\n", Messages.RangeReversed)]
    [InlineData("[amplifier]\ngain = [0, 5]\n", Messages.OutsideRange)]
    [InlineData("[amplifier]\ngain = [1, 2, 3]\n", ReadingMessages.WrongType)]
    [InlineData("[input]\nbias-resistor = [\"none\", \"1 MΩ\"]\n", ReadingMessages.WrongType)]
    [InlineData("[bought]\nreach = \"2 mV\"\n", ReadingMessages.UnknownKey)]
    public void Value_ThatCannotBeLeftOpen_IsTold(string text, string code) =>
        Assert.Contains(Toml(text).Findings, finding => finding.Code == code && finding.Line is not null);

    [Fact]
    public void Bought_WhatItsFileDoesNotSay_IsUnknown()
    {
        DesignDocument document = Toml(DesignDocument.BoughtText);
        Assert.Empty(document.Findings);
        PartlyKnownDesign partly = document.PartlyKnown!;
        Assert.Null(partly.Find("converter.bits"));
        Assert.Null(partly.Find("bought.range"));
        Assert.NotNull(partly.Find("input.series-resistor"));
        Assert.True(partly.LeavesSafetyOpen);
        Assert.Equal((100e3, 900e3), (partly.Find("electrodes.active.contact-resistance")!.Least, partly.Find("electrodes.active.contact-resistance")!.Greatest));   // its card's
        Assert.All(partly.Unknowns, one => Assert.True(one.Least < one.Greatest, one.Key));
        Design median = partly.Median;
        Assert.Equal(2e-3, median.Converter.FullScale.Volts / (median.Amplifier.Gain * median.Stages[0].NominalGain), 9);   // the range at the electrodes
    }

    [Theory]
    [InlineData(DocumentFormat.Toml)]
    [InlineData(DocumentFormat.Json)]
    public void Written_BoughtDesign_ReadsBackTheSame(DocumentFormat format)
    {
        PartlyKnownDesign partly = Toml(DesignDocument.BoughtText).PartlyKnown!;
        string text = format == DocumentFormat.Toml ? DesignWriter.ToToml(partly) : DesignWriter.ToJson(partly);
        DesignDocument again = DesignDocument.Parse(text, format);
        Assert.Empty(again.Findings.Select(finding => finding.Message));
        Assert.Equal(partly.Unknowns.Select(Said), again.PartlyKnown!.Unknowns.Select(Said));
        Assert.Equal(DesignWriter.ToJson(partly.Median), DesignWriter.ToJson(again.PartlyKnown.Median));

        static string Said(UnknownField one) => $"{one.Key} {one.Least} {one.Greatest}";
    }

    [Fact]
    public void Change_OfBoughtText_KeepsCommentsAndWhatIsUnknown()
    {
        DesignDocument document = Toml(DesignDocument.BoughtText);
        DesignDocument changed = document.Set("converter.bits", "16").Document;
        Assert.Equal(document.Text.Replace("bits = 14", "bits = 16", StringComparison.Ordinal), changed.Text);
        Assert.Equal(document.PartlyKnown!.Unknowns.Count, changed.PartlyKnown!.Unknowns.Count);

        DesignDocument told = document.Set("mains.amplifier-to-earth", "8 pF").Document;
        Assert.Contains("amplifier-to-earth = \"8 pF\"    # a worn battery box", told.Text, StringComparison.Ordinal);
        Assert.Null(told.PartlyKnown!.Find("mains.amplifier-to-earth"));
    }

    /// <summary>Every usual range lies within what is legal, so that no draw is refused for it.</summary>
    [Fact]
    public void UsualRanges_AllOfThem_LieWithinTheLegalOnes()
    {
        FieldDescription[] usual = [.. DesignFields.Fixed.Where(field => field.Usual is not null), .. PartlyKnownDesign.OfBought];
        Assert.True(60 < usual.Length);
        Assert.All(usual, field => Assert.True(field.Usual!.Least < field.Usual.Greatest
            && (field.Range is not { } legal || (legal.Contains(field.Usual.Least) && legal.Contains(field.Usual.Greatest))), field.Key));
    }

    /// <summary>Tried as a layman would: seen or not, hum and its cause, and no sentence of safety on what nobody knows.</summary>
    [Fact]
    public void Check_OfBoughtDesign_SaysWhatIsOpenAndHowToCloseIt()
    {
        Assessment assessment = PartlyKnownEvaluator.Evaluate(Toml(DesignDocument.BoughtText).PartlyKnown!);
        Assert.True(assessment.AllRequirementsMet);
        Assert.All(assessment.Judged.Where(result => result.Verdict.Kind == VerdictKind.Open), result =>
        {
            Assert.NotNull(result.Verdict.DecidedBy);
            Assert.NotEmpty(result.Verdict.ClosesBy!);
        });
        Result[] safety = [.. assessment.Judged.Where(result => result.Id.Text.StartsWith("safety.", StringComparison.Ordinal))];
        Assert.Equal(3, safety.Length);
        Assert.All(safety, result => Assert.Equal(VerdictKind.Open, result.Verdict.Kind));
        Assert.All(safety, result => Assert.StartsWith("ask the maker", result.Verdict.ClosesBy, StringComparison.Ordinal));
        Assert.Equal(4, Sight.Hum(assessment).Count);
        Assert.Equal(5, Sight.Bands(assessment).Count);
        Assert.Equal(5, Sight.Sources(assessment).Count);
    }
}
