using System.Globalization;
using System.Numerics;
using System.Text.Json;
using FrontEnd.Documents;
using FrontEnd.Documents.Reading;
using FrontEnd.Documents.Tests;
using FrontEnd.Fields;
using Xunit;

namespace FrontEnd.App.Tests;

/// <summary><c>frontend cards</c>: cards listed, shown and made.</summary>
public sealed class CardsCommandTests
{
    private const string Noise = "frequency (Hz),density (nV/√Hz)\n1,548\n10,180\n100,77.8\n1000,57.9\n10000,55.3\n";

    private static string Spectrum(double series, double error, params (double R, double C)[] pairs)
    {
        Random random = new(7);
        return "frequency,magnitude,phase\n" + string.Concat(Enumerable.Range(0, 25).Select(at => Math.Pow(10, -0.5 + (at / 6.0))).Select(f =>
        {
            Complex z = pairs.Aggregate((Complex)series, (sum, pair) => sum + (pair.R / new Complex(1, 2 * Math.PI * f * pair.R * pair.C))) * (1 + (error * (random.NextDouble() - 0.5)));
            return string.Create(CultureInfo.InvariantCulture, $"{f:R},{z.Magnitude:R},{z.Phase * 180 / Math.PI:R}\n");
        }));
    }

    [Fact]
    public void List_HasEveryCardOfEveryKind_InEightyColumns()
    {
        Outcome all = Shell.Run("cards");
        Assert.Equal(0, all.Code);
        foreach (CardClass cardClass in CardPlace.Classes)
        {
            Outcome one = Shell.Run("cards", CardPlace.Word(cardClass));
            Assert.All(DesignDocument.CardNames(cardClass), name =>
            {
                Assert.Contains($"  {name}  ", all.Output, StringComparison.Ordinal);
                Assert.Contains($"  {name}  ", one.Output, StringComparison.Ordinal);
                Outcome shown = Shell.Run("cards", name);
                Assert.Equal(0, shown.Code);
                Assert.All(shown.Output.Split('\n'), line => Assert.True(line.Length <= 80, line));
            });
            Assert.Equal(one.Output, Shell.Run("cards", CardPlace.Word(cardClass) + "s").Output);
        }

        Assert.All(all.Output.Split('\n'), line => Assert.True(line.Length <= 80, line));
    }

    [Fact]
    public void Name_OfTwoKinds_ShowsBoth()
    {
        using JsonDocument json = JsonDocument.Parse(Shell.Run("cards", "precision-bipolar", "--json").Output);
        Assert.Equal(["amplifier", "op-amp"], json.RootElement.GetProperty("cards").EnumerateArray().Select(card => card.GetProperty("class").GetString()));
    }

    [Theory]
    [InlineData("dry-multpin", "FE1140", "dry-multipin")]
    [InlineData("electode", "FE1140", "electrode")]
    [InlineData("nowhere.toml", "FE0140", "nowhere.toml")]
    public void Name_OfNothing_TellsTheNearest(string name, string code, string told)
    {
        Outcome outcome = Shell.Run("cards", name);
        Assert.Equal(2, outcome.Code);
        Assert.Contains(code, outcome.Messages, StringComparison.Ordinal);
        Assert.Contains(told, outcome.Messages, StringComparison.Ordinal);
    }

    public static TheoryData<CardClass> Classes => [.. CardPlace.Classes];

    /// <summary>A new card of each kind is shown, and used by a design, at once.</summary>
    [Theory]
    [MemberData(nameof(Classes))]
    public void New_OfAnyKind_IsUsedAtOnce_AndNeverWrittenOver(CardClass cardClass)
    {
        using TemporaryFolder folder = new();
        string file = Path.Combine(folder.Path, "mine.toml");
        Assert.Equal(0, Shell.Run("cards", "new", CardPlace.Word(cardClass), file).Code);
        Assert.Equal(0, Shell.Run("cards", file).Code);
        string text = File.ReadAllText(file);
        Assert.DoesNotContain(Shell.Run("check", folder.Write("design.toml", CardPlace.DesignWith(cardClass, "mine.toml")), "--no-advice").Messages.Split('\n'), line => line.Contains(" error", StringComparison.Ordinal));
        Outcome again = Shell.Run("cards", "new", CardPlace.Word(cardClass), file);
        Assert.Equal(2, again.Code);
        Assert.Contains("FE0003", again.Messages, StringComparison.Ordinal);
        Assert.Equal(text, File.ReadAllText(file));
    }

    [Theory]
    [InlineData("op-amp", "voltage-noise", "noise-corner")]
    [InlineData("amplifier", "input-noise", "noise-corner")]
    [InlineData("buffer", "opamp.voltage-noise", "opamp.noise-corner")]
    public void NewNoise_OfPoints_StandsInTheCardWithItsSource(string kind, string white, string corner)
    {
        using TemporaryFolder folder = new();
        string points = folder.Write("points.csv", Noise), file = Path.Combine(folder.Path, "mine.toml");
        Outcome outcome = Shell.Run("cards", "new", kind, file, "--noise", points);
        Assert.Equal((0, 0), (outcome.Code, outcome.Messages.Split('\n').Count(line => line.StartsWith("FE", StringComparison.Ordinal))));
        using JsonDocument shown = JsonDocument.Parse(Shell.Run("cards", file, "--json").Output);
        JsonElement[] values = [.. shown.RootElement.GetProperty("cards")[0].GetProperty("values").EnumerateArray()];
        Assert.Equal([white, corner], values.Select(value => value.GetProperty("key").GetString()));
        Assert.All(values, value => Assert.Equal("fitted to points of points.csv", value.GetProperty("source").GetString()));
        // e0 = 55 nV/√Hz and fc = 100 Hz, with what three digits leave of them.
        Assert.Equal(55e-9, values[0].GetProperty("value").GetDouble(), 0.5e-9);
        Assert.Equal(100, values[1].GetProperty("value").GetDouble(), 3.0);
        Assert.Equal(5, File.ReadLines(file).Count(line => line.StartsWith("#   ", StringComparison.Ordinal) && line.Contains(", fit ", StringComparison.Ordinal)));
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    public void NewImpedance_OfASpectrum_StandsInTheCard(int pairs)
    {
        using TemporaryFolder folder = new();
        string points = folder.Write("spectrum.csv", pairs == 1 ? Spectrum(1e3, 0.02, (2e5, 15e-9)) : Spectrum(1e3, 0.02, (2e5, 150e-9), (5e4, 4e-9))), file = Path.Combine(folder.Path, "mine.toml");
        using JsonDocument json = JsonDocument.Parse(Shell.Run("cards", "new", "electrode", file, "--impedance", points, "--json").Output);
        JsonElement fit = json.RootElement.GetProperty("impedance");
        Assert.Equal((pairs, 25), (fit.GetProperty("pairs").GetInt32(), fit.GetProperty("points").GetArrayLength()));
        DesignDocument document = DesignDocument.Read(folder.Write("design.toml", CardPlace.DesignWith(CardClass.Electrode, "mine.toml")));
        Assert.False(document.HasErrors);
        Electrodes.Electrode electrode = document.Design.Electrodes.Active;
        Assert.Equal(2e5, electrode.ContactResistance.Ohms, 6e3);
        Assert.Equal(pairs == 2 ? 5e4 : 0, electrode.SecondResistance?.Ohms ?? 0, 2500.0);
    }

    [Fact]
    public void New_Fit_HasEveryNumberInJson()
    {
        using TemporaryFolder folder = new();
        string noise = folder.Write("points.csv", Noise), one = folder.Write("one.csv", Spectrum(1e3, 0.02, (2e5, 15e-9))), two = folder.Write("two.csv", Spectrum(1e3, 0.02, (2e5, 150e-9), (5e4, 4e-9)));
        string bare = folder.Write("bare.csv", "1,548\n10,180\n100,77.8\n1000,57.9\n");
        string current = folder.Write("current.csv", "f (Hz),in (fA/√Hz)\n1,90\n10,70\n100,66\n");
        foreach (string[] call in new[] { new[] { "op-amp", "--noise", noise, "--current-noise", current }, ["amplifier", "--noise", bare], ["electrode", "--impedance", one], ["electrode", "--impedance", two] })
        {
            string[] words = ["cards", "new", call[0]];
            string text = Shell.Run([.. words, Path.Combine(folder.Path, Path.GetRandomFileName() + ".toml"), .. call[1..]]).Output;
            Assert.NotEmpty(text);
            Assert.All(text.Split('\n'), line => Assert.True(line.Length <= 80, line));
            EveryNumberInJson.IsTold(text, Shell.Run([.. words, Path.Combine(folder.Path, Path.GetRandomFileName() + ".toml"), .. call[1..], "--json"]).Output);
        }
    }

    /// <summary>What does not show the value is a warning, what no card may have an error and no file.</summary>
    [Theory]
    [InlineData("op-amp", "--noise", "frequency,density\n1,1000\n10,316.5\n100,101\n", 0, "FE1145")]
    [InlineData("op-amp", "--noise", "frequency,density\n1,100\n10,300\n100,50\n1000,300\n", 0, "FE1146")]
    [InlineData("op-amp", "--noise", "frequency,density (mV/√Hz)\n1,100\n10,100\n100,100\n", 2, "FE1149")]
    [InlineData("electrode", "--impedance", "frequency,magnitude,phase\n1,1e5,-5\n2,9.9e4,-9\n3,9.8e4,-12\n", 0, "FE1145")]
    [InlineData("electrode", "--impedance", "frequency,magnitude,phase\n1,1e5,-50\n10,9.9e4,-9\n100,9.8e4,-42\n1000,5e4,-1\n", 0, "FE1146")]
    [InlineData("electrode", "--impedance", "frequency,magnitude,phase\n1,1e5,5\n10,9.9e4,9\n100,9.8e4,12\n", 2, "FE1144")]
    public void New_FitThatDoesNotHold_IsTold(string kind, string option, string points, int code, string finding)
    {
        using TemporaryFolder folder = new();
        string file = Path.Combine(folder.Path, "mine.toml");
        Outcome outcome = Shell.Run("cards", "new", kind, file, option, folder.Write("points.csv", points));
        Assert.Equal((code, code == 0), (outcome.Code, File.Exists(file)));
        Assert.Contains(finding, outcome.Messages, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("resistor mine.toml", "FE1140")]
    [InlineData("op-amp mine.json", "FE1147")]
    [InlineData("op-amp mine.toml --impedance a.csv", "FE0001")]
    [InlineData("converter mine.toml --noise a.csv", "FE0001")]
    [InlineData("op-amp mine.toml --noise nowhere.csv", "FE0140")]
    public void New_CallThatCannotBeMeant_WritesNothing(string call, string code)
    {
        using TemporaryFolder folder = new();
        string[] words = call.Split(' ');
        words[1] = Path.Combine(folder.Path, words[1]);
        Outcome outcome = Shell.Run(["cards", "new", .. words]);
        Assert.Equal(2, outcome.Code);
        Assert.Contains(code, outcome.Messages, StringComparison.Ordinal);
        Assert.False(File.Exists(words[1]));
    }
}
