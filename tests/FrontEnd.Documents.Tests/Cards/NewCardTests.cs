using System.Text.RegularExpressions;
using FrontEnd.Circuits;
using FrontEnd.Documents.Cards;
using FrontEnd.Documents.Reading;
using FrontEnd.Fields;
using FrontEnd.Findings;
using FrontEnd.Quantities;
using FrontEnd.Text;
using Xunit;

namespace FrontEnd.Documents.Tests.Cards;

/// <summary>Part cards that are written to be filled, and points that values are fitted to.</summary>
public sealed partial class NewCardTests
{
    public static TheoryData<CardClass> Classes => [.. CardPlace.Classes];

    private static DesignDocument With(CardClass cardClass, TemporaryFolder folder, string card)
    {
        folder.Write("card.toml", card);
        return DesignDocument.Read(folder.Write("design.toml", CardPlace.DesignWith(cardClass, "card.toml")));
    }

    [Fact]
    public void Classes_AllThereAre_HaveAPlace() => Assert.Equal(Enum.GetValues<CardClass>().Order(), CardPlace.Classes.Order());

    [Theory]
    [MemberData(nameof(Classes))]
    public void Text_OfAnyClass_IsACardAtOnce(CardClass cardClass)
    {
        using TemporaryFolder folder = new();
        DesignDocument document = With(cardClass, folder, new NewCard(cardClass).Text);
        Assert.False(document.HasErrors, document.Findings.FirstOrDefault(finding => finding.Severity == Severity.Error)?.Message);
        Assert.DoesNotContain(document.Origins, origin => origin.Kind == OriginKind.Card);
    }

    /// <summary>What stands behind a key as a remark can be read as it stands.</summary>
    [Theory]
    [MemberData(nameof(Classes))]
    public void Text_WithEveryRemarkTakenOff_IsRead(CardClass cardClass)
    {
        using TemporaryFolder folder = new();
        string text = Key().Replace(new NewCard(cardClass).Text, match => match.Groups["key"].Value is "excess-rms" or "excess-band" or "chip" ? match.Value : match.Groups["line"].Value);
        DesignDocument document = With(cardClass, folder, text);
        Assert.False(document.HasErrors, string.Join("\n", document.Findings.Select(finding => finding.Message)));
        string[] set = [.. document.Origins.Where(origin => origin.Kind == OriginKind.Card).Select(origin => origin.Key)];
        Assert.Equal(CardPlace.Fields(cardClass).Select(field => field.Key).Except(set), CardPlace.Fields(cardClass).Where(field => field.Key.EndsWith(".card", StringComparison.Ordinal)).Select(field => field.Key).Except(set));
    }

    [Theory]
    [MemberData(nameof(Classes))]
    public void Text_OfAnyClass_TellsOfEveryKey(CardClass cardClass)
    {
        string text = new NewCard(cardClass).Text;
        Assert.All(CardPlace.Fields(cardClass), field =>
        {
            string key = CardPlace.KeyOn(cardClass, field);
            Assert.Contains(field.Kind == FieldKind.Ranges ? $"\n# {key}.{field.Ranged[0].Key} = [" : $"\n# {key} = ", text, StringComparison.Ordinal);
            Assert.Contains($"# {field.Meaning}\n", text, StringComparison.Ordinal);
        });
    }

    /// <summary>Every card that comes with the program is shown, each value with its source.</summary>
    [Fact]
    public void Shown_EveryCard_HasValuesWithSources()
    {
        Assert.Equal(CardPlace.Classes.Sum(cardClass => DesignDocument.CardNames(cardClass).Count), ShownCard.All.Count);
        Assert.All(ShownCard.All, card =>
        {
            Assert.True(3 < card.Values.Count && card.Title.Length != 0 && card.Figures.Length != 0, card.Name);
            Assert.All(card.Values.Concat(card.Defaults), value => Assert.NotEmpty(value.Source));
            Assert.Equal(CardPlace.Fields(card.Class).Count(field => field.Kind != FieldKind.Ranges), card.Values.Concat(card.Defaults).Count(value => !value.Key.EndsWith("ranges", StringComparison.Ordinal)));
        });
        Assert.Equal("5", ShownCard.Of(CardClass.Amplifier).Single(card => card.Name == "low-noise-cmos").Values.Single(value => value.Key == "gain").Text);
    }

    [Theory]
    [InlineData("ear-clip")]
    [InlineData("dry-comb")]
    [InlineData("water-sponge")]
    [InlineData("conductive-foam")]
    [InlineData("knitted-textile")]
    public void Electrodes_OfManyHeadsets_AreThere(string name) => Assert.Contains(name, DesignDocument.CardNames(CardClass.Electrode));

    /// <summary>Forms in which tables of points come, all of them 50 nV/√Hz at 1 kHz.</summary>
    [Theory]
    [InlineData("frequency,density\n10,80e-9\n100,60e-9\n1000,50e-9\n", "V/√Hz")]
    [InlineData("frequency,density\n10,80\n100,60\n1000,50\n", "nV/√Hz")]
    [InlineData("10,80\n100,60\n1000,50\n", "nV/√Hz")]
    [InlineData("# read off page 7\nf (Hz);en (nV/√Hz)\n10;80,0\n100;60,0\n1000;50,0\n", null)]
    [InlineData("freq [kHz]\tnoise [µV/rtHz]\n0.01\t0.08\n0.1\t0.06\n1\t0.05\n", null)]
    [InlineData("Hz,nV/√Hz\n10,80\n100,60\n1000,50\n", null)]
    [InlineData("density_nV/sqrt(Hz),frequency_hz,remark\n80,10,a\n60,100,b\n50,1000,c\n", null)]
    [InlineData("frequency,density\n10 Hz,80 nV/√Hz\n100 Hz,60 nV/√Hz\n1 kHz,50 nV/√Hz\n", null)]
    [InlineData("sep=;\nfrequency;density (nV/√Hz)\n1E3;50\n1E2;60\n1E1;80\n", null)]
    public void Noise_InAnyForm_IsRead(string text, string? unit)
    {
        using TemporaryFolder folder = new();
        NoisePointsRead read = PointsFile.Noise(folder.Write("points.csv", text), QuantityKind.Of<VoltageNoiseDensity>());
        Assert.Equal([], read.Findings.Select(finding => finding.Message));
        Assert.Equal(unit, read.UnitRead);
        NoisePoint point = Assert.Single(read.Points, one => Math.Abs(one.Frequency.Hertz - 1000) < 1e-6);
        Assert.Equal(50e-9, point.Density.SiValue, 1e-18);
    }

    /// <summary>Forms in which spectra come, all of them 40 kΩ at −37° and 50 Hz.</summary>
    [Theory]
    [InlineData("frequency,magnitude,phase\n10,50431,-8.6\n50,40000,-37\n1000,3381,-86.2\n")]
    [InlineData("10,50431,-8.6\n50,40000,-37\n1000,3381,-86.2\n")]
    [InlineData("freq (Hz);|Z| (kΩ);theta (rad)\n10;50,4;-0,15\n50;40;-0,645771823237902\n1000;3,4;-1,5\n")]
    [InlineData("phase of impedance (deg),impedance (ohm),f\n-8.6,50431,10\n-37,40000,50\n-86.2,3381,1000\n")]
    [InlineData("f [kHz],Z [kΩ],-phase [°]\n0.01,50.431,8.6\n0.05,40,37\n1,3.381,86.2\n")]
    [InlineData("frequency,magnitude,phase\n10,50k,-8.6°\n50,40 kΩ,-37°\n1 kHz,3.38 kΩ,-86°\n")]
    public void Impedance_InAnyForm_IsRead(string text)
    {
        using TemporaryFolder folder = new();
        ImpedancePointsRead read = PointsFile.Impedance(folder.Write("points.csv", text));
        Assert.Equal([], read.Findings.Select(finding => finding.Message));
        System.Numerics.Complex z = Assert.Single(read.Points, one => Math.Abs(one.Frequency.Hertz - 50) < 1e-6).Impedance;
        Assert.Equal(40e3, System.Numerics.Complex.Abs(z), 1e-6);
        Assert.Equal(-37, z.Phase * 180 / Math.PI, 1e-9);
    }

    [Theory]
    [InlineData("frequency,density\n10,80\n100,1e-7\n1000,50\n", "FE1143", null)]
    [InlineData("frequency,density\n10,0.001\n100,0.001\n1000,0.001\n", "FE1143", null)]
    [InlineData("frequency,density\n10,80 nV/√Hz\n100,60\n1000,50 nV/√Hz\n", "FE1143", null)]
    [InlineData("frequency,density\n10,80\n100,60\n", "FE1142", null)]
    [InlineData("frequency,density\n10,80\n10,60\n10,61\n", "FE1142", null)]
    [InlineData("", "FE1142", null)]
    [InlineData("frequency,density\n10,80\n100,six\n1000,50\n", "FE1141", 3)]
    [InlineData("frequency,density\n10,80\n0,60\n1000,50\n", "FE1141", 3)]
    [InlineData("frequency,density\n10,80\n100,-60\n1000,50\n", "FE1141", 3)]
    [InlineData("frequency,density\n10,80\n1e99,60\n1000,50\n", "FE1141", 3)]
    [InlineData("frequency,density\n10,80\n100,6,5\n1000,50\n", "FE1141", 3)]
    [InlineData("frequency,temperature,place\n10,80,1\n100,60,1\n1000,50,1\n", "FE1148", 1)]
    public void Noise_ThatCannotBeMeant_IsTold(string text, string code, int? line)
    {
        using TemporaryFolder folder = new();
        NoisePointsRead read = PointsFile.Noise(folder.Write("points.csv", text), QuantityKind.Of<VoltageNoiseDensity>());
        Finding finding = Assert.Single(read.Findings);
        Assert.Equal((code, line), (finding.Code, finding.Line));
        Assert.Empty(read.Points);
    }

    [Fact]
    public void Points_TooManyOrUpsideDown_AreTold()
    {
        using TemporaryFolder folder = new();
        string many = folder.Write("many.csv", "frequency,density\n" + string.Concat(Enumerable.Range(1, PointsFile.Most + 1).Select(at => $"{at},50\n")));
        Assert.Equal("FE1142", Assert.Single(PointsFile.Noise(many, QuantityKind.Of<VoltageNoiseDensity>()).Findings).Code);
        string turned = folder.Write("turned.csv", "frequency,magnitude,phase\n10,50431,8.6\n50,40000,37\n1000,3381,86.2\n");
        Assert.Equal("FE1144", Assert.Single(PointsFile.Impedance(turned).Findings).Code);
    }

    /// <summary>The unit of a current's density cannot be told from its size but in amperes.</summary>
    [Theory]
    [InlineData("frequency,density\n10,80\n100,60\n1000,50\n", "FE1143")]
    [InlineData("frequency,density\n10,8e-14\n100,6e-14\n1000,5e-14\n", null)]
    [InlineData("frequency,density (fA/√Hz)\n10,80\n100,60\n1000,50\n", null)]
    public void CurrentNoise_WithoutAUnit_IsInAmperesOrAsksForOne(string text, string? code)
    {
        using TemporaryFolder folder = new();
        NoisePointsRead read = PointsFile.Noise(folder.Write("points.csv", text), QuantityKind.Of<CurrentNoiseDensity>());
        Assert.Equal(code, read.Findings.SingleOrDefault()?.Code);
        Assert.True(code is not null || Math.Abs(read.Points[2].Density.SiValue - 5e-14) < 1e-20);
    }

    [GeneratedRegex("^# (?<line>(?<key>[a-z.-]+) = [^…\\n]+)$", RegexOptions.Multiline | RegexOptions.ExplicitCapture, 5000)]
    private static partial Regex Key();
}
