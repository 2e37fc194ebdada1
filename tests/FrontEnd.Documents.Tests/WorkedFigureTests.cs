using System.Globalization;
using System.Text.Json;
using FrontEnd.Documents.Reading;
using FrontEnd.Reporting;
using FrontEnd.Results;
using Xunit;

namespace FrontEnd.Documents.Tests;

/// <summary>Every figure of the three worked designs against the independent program's, to 1e-5 (reference/worked; its integrals are converged to 1e-8).</summary>
public sealed class WorkedFigureTests
{
    private const double Tolerance = 1e-5;

    private static readonly string[] Names = ["dry-headband", "gel-cap", "saline-sponge"];

    public static IEnumerable<TheoryDataRow<string, string>> Files =>
        from name in Names from path in new[] { Path.Combine(Repository.Worked, name + ".json"), Path.Combine(Repository.Designs, name + ".toml") } select new TheoryDataRow<string, string>(name, path);

    private static Assessment Assess(string path)
    {
        DesignDocument document = DesignDocument.Read(path);
        Assert.False(document.HasErrors);
        return Evaluator.Evaluate(document.Design);
    }

    private static void Near(double expected, Assessment assessment, string id)
    {
        double actual = assessment[id].Si;
        bool zero = Math.Abs(expected) < 1e-15 && Math.Abs(actual) < 1e-15;
        Assert.True(zero || Math.Abs(actual - expected) <= Tolerance * Math.Abs(expected), $"{id}: expected {expected:R}, got {actual:R}, off by {(actual / expected) - 1:g3}");
    }

    [Theory]
    [MemberData(nameof(Files))]
    public void Figures_AgreeWithTheIndependentProgram(string name, string path)
    {
        Assessment assessment = Assess(path);
        using JsonDocument file = JsonDocument.Parse(File.ReadAllText(Path.Combine(Repository.Worked, name + ".json")));
        JsonElement expected = file.RootElement.GetProperty("expected");
        int compared = 0;
        void Check(JsonElement parent, string key, string id)
        {
            Near(parent.GetProperty(key).GetDouble(), assessment, id);
            compared++;
        }

        Check(expected, "gain_mid", "gain.mid");
        Check(expected, "f_mid", "gain.mid_frequency");
        JsonElement noise = expected.GetProperty("noise");
        Check(noise, "total_rms", "noise.total");
        Check(noise, "thermal_floor_rms", "noise.thermal_floor");
        Check(noise, "electrodes_rms", "noise.electrodes");
        Check(noise, "figure_db", "noise.figure");
        foreach (JsonProperty source in noise.GetProperty("rms").EnumerateObject())
        {
            Near(source.Value.GetDouble(), assessment, "noise.source." + source.Name.Replace(' ', '-'));
            compared++;
        }

        Assert.Equal(noise.GetProperty("rms").EnumerateObject().Count(), assessment.Results.Count(result => result.Id.Text.StartsWith("noise.source.", StringComparison.Ordinal)));
        JsonElement mains = expected.GetProperty("mains");
        foreach ((string key, string id) in new[]
        {
            ("body_cm_rms", "mains.body_common_mode"), ("divider_rms", "mains.divider"), ("leads_rms", "mains.leads"), ("imbalance_rms", "mains.imbalance"),
            ("amplifier_rms", "mains.amplifier"), ("loop_rms", "mains.loop"), ("total_rms", "mains.total"), ("rss_rms", "mains.rss"), ("system_cmrr_db", "mains.system_cmrr"),
        })
        {
            Check(mains, key, id);
        }

        Assert.Equal(string.Join(", ", mains.GetProperty("signs").EnumerateArray().Select(sign => sign.GetInt32() < 0 ? "-1" : "+1")), assessment["mains.signs"].Text);
        foreach (JsonElement harmonic in expected.GetProperty("harmonics").EnumerateArray())
        {
            string id = $"mains.harmonic.{harmonic.GetProperty("h").GetInt32()}";
            Check(harmonic, "input_rms", id + ".input");
            Check(harmonic, "converter_rms", id + ".converter");
            Check(harmonic, "recorded_rms", id + ".recorded");
            Check(harmonic, "lands_at", id + ".lands_at");
        }

        JsonElement drive = expected.GetProperty("drive");
        if (drive.ValueKind == JsonValueKind.Null)
        {
            Assert.Null(assessment.Find("drive.phase_margin"));
        }
        else
        {
            Check(drive, "unity_gain_f", "drive.unity_gain_frequency");
            Check(drive, "phase_margin_deg", "drive.phase_margin");
            Check(drive, "gain_at_mains_db", "drive.gain_at_mains");
        }

        JsonElement converter = expected.GetProperty("converter");
        Check(converter, "lsb_rti", "converter.lsb");
        Check(converter, "full_scale_rti_pp", "converter.full_scale");
        Check(converter, "dynamic_range_db", "converter.dynamic_range");
        Check(converter, "enob", "converter.enob");
        Check(converter, "noise_free_bits", "converter.noise_free_bits");
        Assert.True(60 < compared, $"only {compared} figures were compared");
    }

    [Theory]
    [MemberData(nameof(Files))]
    public void FurtherFigures_AgreeWithTheSecondProgram(string name, string path)
    {
        Assessment assessment = Assess(path);
        string[][] rows = [.. File.ReadLines(Path.Combine(Repository.Worked, "further.dat")).Where(line => !line.StartsWith('#')).Select(line => line.Split(' ')).Where(row => row[0] == name)];
        Assert.True(4 <= rows.Length);
        foreach (string[] row in rows)
        {
            double expected = double.Parse(row[2], CultureInfo.InvariantCulture), tolerance = double.Parse(row[3], CultureInfo.InvariantCulture), actual = assessment[row[1]].Si;
            Assert.True(Math.Abs(actual - expected) <= tolerance, $"{row[1]}: expected {expected:R} ± {tolerance:R}, got {actual:R}");
        }
    }

    /// <summary>The worked designs are for calculation only: their resistors are too small, and nothing may say otherwise.</summary>
    [Theory]
    [MemberData(nameof(Files))]
    public void WorkedDesigns_DoNotPassTheSafetyRequirement(string name, string path) =>
        Assert.True(Assess(path)["safety.fault_current"].Verdict.Kind == VerdictKind.Fail, name);

    [Theory]
    [InlineData("starter")]
    [InlineData("minimal")]
    [InlineData("hobbyist")]
    [InlineData("engineer")]
    [InlineData("instructor")]
    public void OtherDesigns_PassTheSafetyRequirement(string name)
    {
        Assessment assessment = Assess(Path.Combine(Repository.Designs, name + ".toml"));
        Assert.NotEqual(VerdictKind.Fail, assessment["safety.fault_current"].Verdict.Kind);
        Assert.True(assessment.Find("safety.driven_ground_current")?.Verdict.Kind != VerdictKind.Fail);
    }

    [Fact]
    public void Starter_MeetsAllRequirements() =>
        Assert.True(Evaluator.Evaluate(DesignDocument.Parse(DesignDocument.StarterText, DocumentFormat.Toml).Design).AllRequirementsMet);
}
