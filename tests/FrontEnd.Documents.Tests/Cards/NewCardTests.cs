using System.Text.RegularExpressions;
using FrontEnd.Circuits;
using FrontEnd.Documents.Cards;
using FrontEnd.Documents.Reading;
using FrontEnd.Electrodes;
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
    [InlineData("sep=;\n1E3;50 nV/√Hz\n1E2;60 nV/√Hz\n1E1;80 nV/√Hz\n", null)]
    [InlineData("f [Hz]  noise [nV/√Hz]\n10  80\n100 60\n1000   50\n", null)]
    [InlineData("% read off page 7\n  10   80\n 100   60\n1000   50\n", "nV/√Hz")]
    [InlineData("Plot 12, page 7\nPart;typical\nPoints;3\n\nf (Hz);en (nV/√Hz)\n10;80,0\n100;60,0\n1000;50,0\n", null)]
    [InlineData("f,density\n10,80n\n100,60n\n1k,50n\n", null)]
    [InlineData("ω [rad/s],en [nV/√Hz]\n62.83185307179586,80\n628.3185307179586,60\n6283.185307179586,50\n", null)]
    [InlineData("angular frequency,en [nV/√Hz]\n62.83185307179586,80\n628.3185307179586,60\n6283.185307179586,50\n", null)]
    [InlineData("omega;nV/√Hz\n62,83185307179586;80\n628,3185307179586;60\n6283,185307179586;50\n", null)]
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
    [InlineData("frequency,magnitude,phase\n10,50k,-8.6\n50,40k,-37\n1k,3.38k,-86\n")]
    [InlineData("f [Hz],Re Z [Ω],Im Z [Ω]\n10,49864,-7541\n50,31945.420401891717,-24072.600926081933\n1000,224,-3373\n")]
    [InlineData("freq (Hz);Z' (kohm);-Z'' (kohm)\n10;49,864;7,541\n50;31,945420401891717;24,072600926081933\n1000;0,224;3,373\n")]
    [InlineData("Electrode 3\nMeter, made 1998\n\nfreq;-Zimag;Zreal\n10;7541;49864\n50;24072,600926081933;31945,420401891717\n1000;3373;224\n")]
    [InlineData("# f [Hz], |Z| [Ω], phase [°]\n10,50431,-8.6\n50,40000,-37\n1000,3381,-86.2\n")]
    [InlineData("#,f [Hz],|Z| [Ω],phase [Deg.]\n1,10,50431,-8.6\n2,50,40000,-37\n3,1000,3381,-86.2\n")]
    [InlineData("% electrode 3\n% f [Hz]   |Z| [kΩ]   phase [mrad]\n10   50.431   -150\n50   40   -645.771823237902\n1000   3.381   -1500\n")]
    [InlineData("# f, |Z|, phase\nf [Hz],|Z| [kΩ],phase [°]\n10,50.431,-8.6\n50,40,-37\n1000,3.381,-86.2\n")]
    [InlineData("f [Hz],Rs [Ω],Xs [Ω]\n10,49864,-7541\n50,31945.420401891717,-24072.600926081933\n1000,224,-3373\n")]
    [InlineData("f [Hz]  |Z| [Ω]  phase [rad]\n10  50431  -0.15\n50  40000  -0.645771823237902\n1000  3381  -1.5\n")]
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

    /// <summary>A unit that is none of the column's is never passed over: the numbers would be taken for others.</summary>
    [Theory]
    [InlineData("f [rpm],en [nV/√Hz]", "rpm")]
    [InlineData("f [Hz],en [nV]", "nV")]
    [InlineData("f [Hz],en (fA/√Hz)", "fA/√Hz")]
    [InlineData("f [Hz],en [nV²/Hz]", "nV²/Hz")]
    [InlineData("f [Hz],en, dBV/√Hz", "dBV/√Hz")]
    [InlineData("f [Hz],noise/dB", "dB")]
    [InlineData("f (decades),en [nV/√Hz]", "decades")]
    [InlineData("f,nothing [nV/√Hz (rms)]", "nV/√Hz (rms)")]
    public void Noise_InAnotherUnit_IsTold(string heads, string unit)
    {
        using TemporaryFolder folder = new();
        Finding finding = Assert.Single(PointsFile.Noise(folder.Write("points.csv", heads.Replace(", ", " ", StringComparison.Ordinal) + "\n10,80\n100,60\n1000,50\n"), QuantityKind.Of<VoltageNoiseDensity>()).Findings);
        Assert.Equal("FE1180", finding.Code);
        Assert.Contains($"`{unit}`", finding.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("f [Hz],|Z| [dBΩ],phase [°]\n10,94,-8.6\n50,92,-37\n1000,70,-86\n", "FE1180")]
    [InlineData("f [Hz],|Z| [Ω],phase [grad]\n10,50431,-8.6\n50,40000,-37\n1000,3381,-86\n", "FE1180")]
    [InlineData("f [Hz],Rp [Ω],Cp [F]\n10,50431,1e-9\n50,40000,1e-9\n1000,3381,1e-9\n", "FE1180")]
    [InlineData("f [Hz],effective [Ω],blind [Ω]\n10,50431,-8.6\n50,40000,-37\n1000,3381,-86\n", "FE1180")]
    [InlineData("log10(f),|Z| [Ω],phase [°]\n1,50431,-8.6\n2,40000,-37\n3,3381,-86\n", "FE1180")]
    [InlineData("f [Hz],20log|Z|,phase [°]\n10,94,-8.6\n50,92,-37\n1000,70,-86\n", "FE1180")]
    [InlineData("f [Hz],Re Z [Ω],Im Z [S]\n10,50431,-8.6\n50,40000,-37\n1000,3381,-86\n", "FE1180")]
    [InlineData("f,Z,phase\n10,50431,-0.15\n50,40000,-0.65\n1000,3381,-1.5\n", "FE1143")]
    [InlineData("f,Re,Im\n10,50431,7541\n50,40000,24072\n1000,3381,3373\n", "FE1144")]
    [InlineData("f,Re,Im\n10,50431,-7541\n50,0,0\n1000,3381,-3373\n", "FE1141")]
    [InlineData("f [Hz],|Z| [Ω]\n10,50431\n50,40000\n1000,3381\n", "FE1148")]
    public void Impedance_ThatCannotBeMeant_IsTold(string text, string code)
    {
        using TemporaryFolder folder = new();
        ImpedancePointsRead read = PointsFile.Impedance(folder.Write("points.csv", text));
        Assert.Equal(code, Assert.Single(read.Findings).Code);
        Assert.Empty(read.Points);
    }

    private static NewCard Fitted(Func<double, System.Numerics.Complex> z) => new(CardClass.Electrode)
    {
        Impedance = new FittedImpedance(ImpedanceFit.Of([.. Enumerable.Range(0, 25).Select(at => Math.Pow(10, at / 6.0)).Select(f => new ImpedancePoint(Frequency.FromHertz(f), z(Math.Tau * f)))]), "points.csv"),
    };

    /// <summary>An electrode that is a capacitor as far as the points go gets the largest resistance that a card may have, and is told what that does.</summary>
    [Fact]
    public void Findings_ACapacitor_IsACardWithTheLargestResistance()
    {
        NewCard card = Fitted(w => 100 + (1 / new System.Numerics.Complex(0, w * 200e-12)));
        Assert.Equal("FE1182", Assert.Single(card.Findings).Code);
        Assert.Equal(10e9, card.Values.Single(value => value.Key == "contact-resistance").Value.SiValue);
        Assert.Equal(200e-12, card.Values.Single(value => value.Key == "contact-capacitance").Value.SiValue, 1e-14);
        using TemporaryFolder folder = new();
        Assert.False(With(CardClass.Electrode, folder, card.Text).HasErrors);
    }

    /// <summary>One that is seen among the points and no card may have stays an error: the unit is another one.</summary>
    [Fact]
    public void Findings_ALargerResistanceThanAnyCardHas_IsAnError() =>
        Assert.Contains(Fitted(w => 5e10 / new System.Numerics.Complex(1, w * 0.01)).Findings, finding => (finding.Code, finding.Severity) == ("FE1149", Severity.Error));

    [Fact]
    public void Findings_AResistor_TellsThatNoContactIsSeen() =>
        Assert.Equal("FE1181", Assert.Single(Fitted(w => 1e4 * (1 + (0.004 * Math.Sin(1e3 * w)))).Findings).Code);

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
