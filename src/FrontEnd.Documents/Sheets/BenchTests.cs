using FrontEnd.Designs;
using FrontEnd.Results;
using FrontEnd.Text;

namespace FrontEnd.Documents.Sheets;

/// <summary>A test at the bench and the reading to expect.</summary>
public sealed record BenchTest(string What, string Expect, string Id);

/// <summary>Tests in the order in which a board is brought up; those whose figure the assessment does not have are left out.</summary>
public static class BenchTests
{
    public static IReadOnlyList<BenchTest> Of(Assessment assessment)
    {
        Design design = assessment.Design;
        string band = $"{QuantityText.FormatPart(design.Band.Low)} to {QuantityText.FormatPart(design.Band.High)}";
        List<BenchTest> tests = [];
        Add("supply current, all channels running", "power.supply_current");
        Add("before anyone wears it: dc from each electrode to common through a milliammeter, supply at its highest", "safety.fault_current");
        Add("dc from the ground electrode to common, the driven ground forced to each rail", "safety.driven_ground_current");
        Add($"all electrode leads tied together and to common: noise of the recording in {band}, rms, divided by the gain", "noise.shorted", "about ");
        Add("the same, in bits", "converter.enob_shorted");
        Add($"a sine at {Text("gain.mid_frequency")} through a divider: samples over input", "gain.mid");
        Add("raise the sine's frequency until the analogue output is 3 dB down", "filter.path.minus_3db");
        Add("lower it until the analogue output is 3 dB down", "filter.path.minus_3db_low");
        Add($"a sine at {Text("alias.fold_frequency")}: how far its image in the band lies below one of the same size in the band", "alias.fold_attenuation", "at least ");
        Add($"a dc step of {QuantityText.FormatPart(design.Requirements.Offset)} at an input: time until the recording is back within 10 µV", "levels.recovery");
        Add("largest dc between the inputs before anything clips, both signs", "levels.offset_survived", "±");
        Add("largest sine before anything clips, peak", "levels.largest_signal");
        Add("worn, or on a resistor and capacitor like the electrodes: noise in the band, rms", "noise.total");
        Add("worn, indoors, digital filters off: mains line in the recording, rms at the electrodes, worst case", "mains.harmonic.1.converter", "up to ");
        Add("the same with the digital filters on", "mains.harmonic.1.recorded", "up to ");
        Add("active electrode taken off", "open.active");
        Add("reference electrode taken off", "open.reference");
        Add("ground electrode taken off", "open.ground");
        return tests;

        string Text(string id) => assessment.Find(id) is { } result ? Wording.Value(result) : "mid-band";

        void Add(string what, string id, string before = "")
        {
            if (assessment.Find(id) is { State: not ResultState.Missing } result)
            {
                // Where the figure is judged the reading may agree with it and still be too much.
                string asked = result.Verdict.Limit is null ? "" : $" (asked for: {Wording.Limit(result.Verdict)})";
                tests.Add(new BenchTest(what, (result.State == ResultState.Number ? before : "") + Wording.Value(result) + asked, id));
            }
        }
    }
}
