using System.Text.Json;
using FrontEnd.Advice;
using FrontEnd.Documents;
using FrontEnd.Documents.Reading;
using FrontEnd.Documents.Sheets;
using FrontEnd.Documents.Tests;
using FrontEnd.Numbers;
using FrontEnd.Reporting;
using FrontEnd.Results;
using FrontEnd.Teaching;
using Xunit;

namespace FrontEnd.App.Tests;

/// <summary>Every number a command prints is in its <c>--json</c>.</summary>
public class EveryNumberTests
{
    public static TheoryData<string> Designs => [.. Directory.GetFiles(Path.Combine(Repository.Root, "designs"), "*.toml")
        .Where(file => !file.EndsWith("-requirements.toml", StringComparison.Ordinal) && !file.EndsWith("wrong-in-six-ways.toml", StringComparison.Ordinal)).Select(file => "designs/" + Path.GetFileName(file)).Order()];

    [Theory]
    [MemberData(nameof(Designs))]
    public void Check_AnyDesign_HasEveryNumberInJson(string design) 
    {
        Holds("check", design);
        Holds("check", design, "--all");
    }

    /// <summary>Sources, what they need, and the limits beside them.</summary>
    [Fact]
    public void Check_DesignWithSources_HasEveryNumberInJson()
    {
        using TemporaryFolder folder = new();
        string file = folder.Write("sources.toml", File.ReadAllText(Path.Combine(Repository.Root, "designs", "instructor.toml"))
            + "\n[[patches]]\nname = \"alpha\"\nunder = \"O1\"\narea = \"25 cm²\"\namplitude = \"30 µV\"\nstated-in = \"O1-A1\"\nband = \"alpha\"\n"
            + "[[patches]]\nname = \"wall\"\nunder = \"C3\"\nwall-towards = \"Cz\"\n[[requirements.see]]\npatch = \"alpha\"\nchannel = \"O1-A1\"\nratio = \"6 dB\"\n");
        Assert.Contains("will I see it?", Shell.Run("check", file, "--all", "--no-advice").Output, StringComparison.Ordinal);
        Holds("check", file, "--all", "--no-advice");
    }

    [Fact]
    public void Spread_Design_HasEveryNumberInJson() => Holds("spread", "designs/dry-headband.toml", "--builds", "200");

    [Fact]
    public void Compare_Designs_HasEveryNumberInJson() => Holds("compare", "designs/dry-headband.toml", "designs/gel-cap.toml");

    [Theory]
    [InlineData("designs/engineer.toml")]
    [InlineData("designs/dry-headband.toml")]
    public void Rates_Design_HasEveryNumberInJson(string design) => Holds("rates", design);

    public static TheoryData<string> LessonNames => [.. Lessons.All.Select(lesson => lesson.Name)];

    [Theory]
    [MemberData(nameof(LessonNames))]
    public void Lesson_AnyOfThem_HasEveryNumberInJson(string name) => Holds("lesson", name);

    [Theory]
    [InlineData("designs/engineer.toml")]
    [InlineData("designs/dry-headband.toml")]
    [InlineData("designs/bought-headband.toml")]
    public void Bench_Design_HasEveryNumberInJson(string design) => Holds("bench", design);

    /// <summary>Noise of a known kind, so that the page has its spectrum.</summary>
    [Fact]
    public void Bench_Recording_HasEveryNumberInJson()
    {
        using TemporaryFolder folder = new();
        string file = Path.Combine(folder.Path, "shorted.csv");
        SeededRandom random = SeededRandom.For(7, "recording");
        File.WriteAllLines(file, ["# rate: 250 Hz", "ch1 [µV]", .. Enumerable.Range(0, 5000).Select(_ => $"{random.NextUnit() - 0.5:0.000}")]);
        string[] call = ["bench", "designs/engineer.toml", "--measured", file, "--test", "shorted"];
        using JsonDocument json = JsonDocument.Parse(Shell.Run([.. call, "--json"]).Output);
        Assert.NotEqual(0, json.RootElement.GetProperty("results")[0].GetProperty("rows").GetArrayLength());
        Assert.Equal(JsonValueKind.Number, json.RootElement.GetProperty("results")[0].GetProperty("measured").ValueKind);
        Holds(call);
    }

    [Theory]
    [InlineData("2.5")]
    [InlineData("80")]
    public void Bench_RecordingThatNarrows_HasEveryNumberInJson(string microvolts)
    {
        using TemporaryFolder folder = new();
        string file = BenchNarrowingTests.White(folder, double.Parse(microvolts, System.Globalization.CultureInfo.InvariantCulture));
        string[] call = ["bench", "designs/bought-headband.toml", "--measured", file, "--fixture", "shorted"];
        using JsonDocument json = JsonDocument.Parse(Shell.Run([.. call, "--json"]).Output);
        Assert.Equal(microvolts == "80", json.RootElement.GetProperty("findings").GetArrayLength() == 1);
        Holds(call);
    }

    /// <summary>Noise against the budget, mains, clips, events, and files with their scales.</summary>
    [Theory]
    [InlineData("designs/mixed-headset.toml")]
    [InlineData("designs/minimal.toml --length 8.5s --signal blink --signal muscle=30uV --without folded --beside designs/engineer.toml")]
    [InlineData("designs/engineer.toml --length 20s --signal offset=400mV --signal lead-off --seed 77")]
    public void Samples_Design_HasEveryNumberInJson(string call)
    {
        using TemporaryFolder folder = new();
        Holds(["samples", .. call.Split(' '), "-o", Path.Combine(folder.Path, "a.edf"), "-o", Path.Combine(folder.Path, "a.csv")]);
    }

    [Theory]
    [InlineData("hobbyist")]
    [InlineData("engineer")]
    public void Size_Requirements_HasEveryNumberInJson(string name) => Holds("size", $"designs/{name}-requirements.toml");

    [Theory]
    [InlineData("hobbyist")]
    [InlineData("dry-headband")]
    public void SizeAsBuilt_Design_HasEveryNumberInJson(string name) => Holds("size", "--as-built", $"designs/{name}.toml");

    /// <summary>Ids of the starter, all of them, a quarter of them each, so that the cases run side by side.</summary>
    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    public void Explain_EveryIdOfTheStarter_HasEveryNumberInJson(int part)
    {
        Assessment assessment = Advisor.Advise(Evaluator.Evaluate(DesignDocument.Parse(DesignDocument.StarterText, DocumentFormat.Toml).Design), TestContext.Current.CancellationToken);
        foreach (Result result in assessment.Results.Where((_, at) => at % 4 == part))
        {
            Explained explained = new(assessment, result, part == 0 && result.Id.Text.StartsWith("noise.total", StringComparison.Ordinal) ? Sensitivity.Of(assessment, result.Id, TestContext.Current.CancellationToken) : []);
            EveryNumberInJson.IsTold(ExplainText.Of(explained), AnswerJson.Of(explained));
        }
    }

    [Theory]
    [InlineData("noise.total")]
    [InlineData("safety.fault_current")]
    [InlineData("mains.recorded")]
    public void Explain_Command_HasEveryNumberInJson(string id) => Holds("explain", "designs/starter.toml", id);

    [Theory]
    [InlineData("sites")]
    [InlineData("sites --from F3 --to T4 --montage chains --ten-ten")]
    [InlineData("pairs --sites --under O1 --area 25cm2 --amplitude 30uV --noise 0.5uV --best 12")]
    [InlineData("pairs --sites O1-ears,O1-P3,Cz-far --under O1 --wall-towards Pz --amplitude 5uV --amplitude-kind rms --stated-in O1-Pz --skull-ratio 37 --shells stok")]
    [InlineData("pairs designs/starter.toml --under Oz --amplitude 30uV --stated-in O1-Cz")]
    [InlineData("problems --list")]
    [InlineData("glossary")]
    [InlineData("glossary CMRR")]
    [InlineData("cards")]
    [InlineData("cards op-amp")]
    [InlineData("cards saline-sponge")]
    [InlineData("cards delta-sigma-24-biopotential")]
    public void Teaching_Command_HasEveryNumberInJson(string call) => Holds(call.Split(' '));

    [Fact]
    public void Mark_Class_HasEveryNumberInJson()
    {
        using TemporaryFolder folder = new();
        Assert.Equal(0, Shell.Run("problems", "--homework", "designs/classroom/homework.toml", "--secret", "designs/classroom/secret.txt", "--students", "designs/classroom/class.csv", "-o", folder.Path).Code);
        string key = Path.Combine(folder.Path, "key", "key.json"), marks = Path.Combine(folder.Path, "marks.csv");
        Holds("mark", key, "designs/classroom/answers.csv", "-o", marks);
    }

    /// <summary>Runs a call without and with <c>--json</c> and compares the two.</summary>
    private static void Holds(params string[] call) => EveryNumberInJson.IsTold(Shell.Run(call).Output, Shell.Run([.. call, "--json"]).Output);
}
