using System.Globalization;
using System.Text.RegularExpressions;
using FrontEnd.Catalogue;
using FrontEnd.Designs;
using FrontEnd.Documents.Reading;
using FrontEnd.Fields;
using FrontEnd.Findings;
using FrontEnd.Quantities;
using Xunit;

namespace FrontEnd.Documents.Tests;

/// <summary>The part cards that come with the program, and the user's own.</summary>
public sealed class PartCardTests
{
    private static readonly (CardClass Class, string Folder, string Table)[] Classes =
    [
        (CardClass.Electrode, "electrodes", "electrodes.active"), (CardClass.Amplifier, "amplifiers", "amplifier"), (CardClass.OpAmp, "op-amps", "electrodes.active-buffer.opamp"),
        (CardClass.Converter, "converters", "converter"), (CardClass.Buffer, "buffers", "electrodes.active-buffer"),
    ];

    public static TheoryData<CardClass, string, string> Cards
    {
        get
        {
            TheoryData<CardClass, string, string> cards = [];
            foreach ((CardClass cardClass, _, string table) in Classes)
            {
                foreach (string name in DesignDocument.CardNames(cardClass))
                {
                    cards.Add(cardClass, name, table);
                }
            }

            return cards;
        }
    }

    [Theory]
    [MemberData(nameof(Cards))]
    public void Card_ThatComesWithTheProgram_FitsItsTableAndNamesSources(CardClass cardClass, string name, string table)
    {
        Assert.NotNull(DesignDocument.CardText(cardClass, name));
        DesignDocument document = DesignDocument.Parse($"[{table}]\ncard = \"{name}\"\n", DocumentFormat.Toml);
        Assert.DoesNotContain(document.Findings, finding => finding.Severity == Severity.Error);
        FieldOrigin[] fromCard = [.. document.Origins.Where(origin => origin.Kind == OriginKind.Card)];
        Assert.True(fromCard.Length >= 4, $"{name} sets {fromCard.Length} fields");
        Assert.All(fromCard, origin => Assert.DoesNotContain("no source given", origin.Source, StringComparison.Ordinal));
        Assert.All(fromCard.Where(origin => origin.Key.EndsWith("excess-density", StringComparison.Ordinal)), origin => Assert.DoesNotContain("typical", origin.Source, StringComparison.Ordinal));
    }

    /// <summary>A slip on a card has one finding, with a remedy that its field takes; what rests on it, such as its range, is not complained of.</summary>
    [Theory]
    [InlineData("cmrr = \"105 dB\"", "cmrr = 105 dB", "write \"105 dB\"")]
    [InlineData("cmrr = \"105 dB\"", "CMRR = \"105 dB\"", "write `cmrr`")]
    [InlineData("cmrr = \"105 dB\"", "cmrr_db = 105", "write cmrr = \"105 db\"")]
    [InlineData("gain = 5", "gain = 5 V/V", "write 5 if that is intended")]
    [InlineData("ranges.gain = [4.975, 5.025]", "ranges.gain = \"4.975-5.025\"", "write gain = [least, greatest]")]
    public void Card_WithASlip_HasOneFindingWithItsRemedy(string right, string wrong, string help)
    {
        using TemporaryFolder folder = new();
        string card = DesignDocument.CardText(CardClass.Amplifier, "low-noise-zero-drift-cmos")!;
        Assert.Contains(right + "\n", card, StringComparison.Ordinal);
        folder.Write("a.toml", card.Replace(right + "\n", wrong + "\n", StringComparison.Ordinal));
        DesignDocument document = DesignDocument.Read(folder.Write("d.toml", DesignDocument.StarterText.Replace("\"low-noise-zero-drift-cmos\"", "\"a.toml\"", StringComparison.Ordinal)));
        Finding finding = Assert.Single(document.Findings);
        Assert.Equal(Severity.Error, finding.Severity);
        Assert.Contains(help, finding.Help, StringComparison.Ordinal);
    }

    // A figure of no source of its own was chosen: then the class's range says what it was chosen from, the figure lies in it, and has
    // two digits at most, so that no card is one product's data sheet.
    [Theory]
    [MemberData(nameof(Cards))]
    public void Card_FigureChosenHere_IsRoundAndLiesInTheRangeOfItsClass(CardClass cardClass, string name, string table)
    {
        DesignDocument document = DesignDocument.Parse($"[{table}]\ncard = \"{name}\"\n", DocumentFormat.Toml);
        foreach (FieldOrigin origin in document.Origins.Where(origin => origin.Kind == OriginKind.Card))
        {
            Assert.DoesNotContain("common practice", origin.Source, StringComparison.Ordinal);
            Field<Design> field = DesignFields.Find(document.Design, origin.Key)!;
            const string chosen = "typical of the class, chosen here";
            if (field.Kind is FieldKind.Choice or FieldKind.Card or FieldKind.Ranges || !origin.Source.StartsWith(chosen, StringComparison.Ordinal))
            {
                continue;
            }

            Match range = Regex.Match(origin.Source, $"^{chosen}; the class has (?<low>.+) to (?<high>.+)$", RegexOptions.ExplicitCapture, TimeSpan.FromSeconds(1));
            Assert.True(range.Success, $"{cardClass} {name}: {origin.Key} has neither a source nor a range of the class under [usual]");
            double low = Si(field, range.Groups["low"].Value), value = Si(field, origin.Text), high = Si(field, range.Groups["high"].Value);
            Assert.True(low <= value && value <= high && low < high, $"{name}: {origin.Key} {origin.Text} is outside {range.Value}");
            Assert.True(IsRound(value), $"{name}: {origin.Key} {origin.Text} has more digits than a figure of a class can");
        }
    }

    // Two digits; decibels in steps of five and powers of two are as round.
    private static bool IsRound(double si) =>
        Math.Abs(double.Parse(si.ToString("E1", CultureInfo.InvariantCulture), CultureInfo.InvariantCulture) - si) <= Math.Abs(si) * 1e-9
            || si % 5 == 0 || double.IsPow2(si);

    private static double Si(Field<Design> field, string text)
    {
        Assert.True(FieldText.TryParse(field, text, out object? value, out _), $"{field.Key}: `{text}`");
        return value is IQuantity quantity ? quantity.SiValue : Convert.ToDouble(value, CultureInfo.InvariantCulture);
    }

    [Fact]
    public void OwnCard_UsualRanges_AreReadLikeValues()
    {
        using TemporaryFolder folder = new();
        string design = folder.Write("design.toml", "[amplifier]\ncard = \"mine.toml\"\n");
        folder.Write("mine.toml", "class = \"amplifier\"\nsource = \"chosen\"\n[values]\ngain = 7\n[usual]\ngain = [2, 20]\n");
        Assert.Equal("chosen; the class has 2 to 20", DesignDocument.Read(design).OriginOf("amplifier.gain")!.Source);
        folder.Write("mine.toml", "class = \"amplifier\"\n[values]\ngain = 7\n[usual]\ngian = [2, 20]\ncmrr = \"90 dB\"\noffset-voltage = [\"1 µV\", \"3 s\"]\n");
        Assert.Equal([5, 6, 7], DesignDocument.Read(design).Findings.Where(finding => finding.Severity == Severity.Error).Select(finding => finding.Line));
    }

    [Fact]
    public void Cards_InTheFolder_AreTheEmbeddedOnes()
    {
        foreach ((CardClass cardClass, string folder, _) in Classes)
        {
            string[] files = [.. Directory.GetFiles(Path.Combine(Repository.Parts, folder), "*.toml").Select(path => Path.GetFileNameWithoutExtension(path)).Order(StringComparer.Ordinal)];
            Assert.Equal(files, DesignDocument.CardNames(cardClass), StringComparer.Ordinal);
            Assert.All(files, name => Assert.Equal(File.ReadAllText(Path.Combine(Repository.Parts, folder, name + ".toml")), DesignDocument.CardText(cardClass, name)));
        }
    }

    [Fact]
    public void Card_FieldGivenInLine_OverridesTheCard_WhereverItStands()
    {
        DesignDocument document = DesignDocument.Parse("[electrodes.active]\ncontact-resistance = \"7 kΩ\"\ncard = \"dry-multipin\"\n", DocumentFormat.Toml);
        Assert.Equal(7000, document.Design.Electrodes.Active.ContactResistance.Ohms);
        Assert.Equal(4.7e-9, document.Design.Electrodes.Active.ContactCapacitance.Farads);
        Assert.Equal("dry-multipin", document.Design.Electrodes.Active.Card);
        Assert.Equal(OriginKind.Given, document.OriginOf("electrodes.active.contact-resistance")!.Kind);
        Assert.Equal(OriginKind.Card, document.OriginOf("electrodes.active.contact-capacitance")!.Kind);
    }

    // K = σ²/(1/fl − 1/fh) for α = 2; 5 µV in 0.5 to 500 Hz give 12.51 µV²·Hz. Derived.
    [Fact]
    public void Card_ExcessAsRms_IsTheDensityAtOneHertz()
    {
        DesignDocument document = DesignDocument.Parse("[electrodes.active]\ncard = \"dry-multipin\"\n", DocumentFormat.Toml);
        Assert.Equal(12.51e-12, document.Design.Electrodes.Active.ExcessNoise.VoltsSquaredPerHertz, 0.005e-12);
        DesignDocument flat = DesignDocument.Parse("[electrodes.active]\nexcess-rms = \"5 µV\"\nexcess-slope = 1\n", DocumentFormat.Toml);
        Assert.Equal(25e-12 / Math.Log(1000), flat.Design.Electrodes.Active.ExcessNoise.VoltsSquaredPerHertz, 1e-20);
    }

    [Fact]
    public void Card_FromJson_IsReadToo()
    {
        DesignDocument document = DesignDocument.Parse("{\"electrodes\": {\"active\": {\"card\": \"dry-multipin\", \"Rs\": 10}, \"reference\": \"gel-prepared\"}}", DocumentFormat.Json);
        Assert.False(document.HasErrors);
        Assert.Equal(620e3, document.Design.Electrodes.Active.ContactResistance.Ohms);
        Assert.Equal(10, document.Design.Electrodes.Active.SeriesResistance.Ohms);
        Assert.Equal(5e3, document.Design.Electrodes.Reference.ContactResistance.Ohms);
    }

    [Fact]
    public void OwnCard_BesideTheDesign_IsReadByPath_AndItsMistakesHaveItsPlaces()
    {
        using TemporaryFolder folder = new();
        folder.Write("mine.toml", "class = \"amplifier\"\nname = \"mine\"\nsource = \"data sheet, revision A\"\n[values]\ngain = 7\ncmrr = \"90 dB\"\ngian = 3\n[sources]\ncmrr = \"page 4\"\n");
        folder.Write("wrong.toml", "class = \"op-amp\"\n[values]\ndc-gain = 7\n");
        DesignDocument document = DesignDocument.Read(folder.Write("design.toml", "[amplifier]\ncard = \"mine.toml\"\n"));
        Assert.Equal(7, document.Design.Amplifier.Gain);
        Assert.Equal("page 4", document.OriginOf("amplifier.cmrr")!.Source);
        Assert.Equal("data sheet, revision A", document.OriginOf("amplifier.gain")!.Source);
        Finding inside = Assert.Single(document.Findings, finding => finding.Severity == Severity.Error);
        Assert.Equal(("FE0121", 7, true), (inside.Code, inside.Line, inside.File!.EndsWith("mine.toml", StringComparison.Ordinal)));

        Finding wrong = Assert.Single(DesignDocument.Read(folder.Write("design.toml", "[amplifier]\ncard = \"wrong.toml\"\n")).Findings, finding => finding.Severity == Severity.Error);
        Assert.Equal("FE0145", wrong.Code);
        Assert.Contains("its class is `op-amp`", wrong.Message, StringComparison.Ordinal);
        Finding missing = Assert.Single(DesignDocument.Read(folder.Write("design.toml", "[amplifier]\ncard = \"none.toml\"\n")).Findings, finding => finding.Severity == Severity.Error);
        Assert.Contains("there is no file", missing.Message, StringComparison.Ordinal);
    }
}
