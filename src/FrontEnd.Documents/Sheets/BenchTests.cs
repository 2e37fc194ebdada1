using FrontEnd.Identity;

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
        Add("supply current, all channels running", ResultIds.Power.SupplyCurrent);
        Add("before anyone wears it: dc from each electrode to common through a milliammeter, supply at its highest",
            ResultIds.Safety.FaultCurrent);
        Add("dc from the ground electrode to common, the driven ground forced to each rail", ResultIds.Safety.DrivenGroundCurrent);
        Add($"all electrode leads tied together and to common: noise of the recording in {band}, rms, divided by the gain",
            ResultIds.Noise.Shorted, "about ");
        Add("the same, in bits", ResultIds.Converter.EnobShorted);
        Add($"a sine at {Text(ResultIds.Gain.MidFrequency)} through a divider: samples over input", ResultIds.Gain.Mid);
        Add("raise the sine's frequency until the analogue output is 3 dB down", ResultIds.Filter.Path.MinusThree);
        Add("lower it until the analogue output is 3 dB down", ResultIds.Filter.Path.MinusThreeLow);
        Add($"a sine at {Text(ResultIds.Alias.FoldFrequency)}: how far its image in the band lies below one of the same size in the band",
            ResultIds.Alias.FoldAttenuation, "at least ");
        Add($"a dc step of {QuantityText.FormatPart(design.OffsetStep)} at an input: time until the recording is within 10 µV of where it ends", ResultIds.Levels.Recovery);
        Add("largest dc between the inputs before anything clips, both signs", ResultIds.Levels.OffsetSurvived, "±");
        Add("largest sine before anything clips, peak", ResultIds.Levels.LargestSignal);
        Add("worn, or on a resistor and capacitor like the electrodes: noise in the band, rms", ResultIds.Noise.Total);
        Add("worn, indoors, digital filters off: mains line in the recording, rms at the electrodes, worst case",
            ResultIds.Mains.Harmonic(1).Converter, "up to ");
        Add("the same with the digital filters on", ResultIds.Mains.Harmonic(1).Recorded, "up to ");
        Add("active electrode taken off", ResultIds.Open.Of(Lead.Active));
        Add("reference electrode taken off", ResultIds.Open.Of(Lead.Reference));
        Add("ground electrode taken off", ResultIds.Open.Of(Lead.Ground));
        return tests;

        string Text(ResultId id) => assessment.Find(id) is { } result ? Wording.Value(result) : "mid-band";

        void Add(string what, ResultId id, string before = "")
        {
            if (assessment.Find(id) is { State: not ResultState.Missing } result)
            {
                // Where the figure is judged the reading may agree with it and still be too much.
                string asked = result.Verdict.Limit is null ? "" : $" (asked for: {Wording.Limit(result.Verdict)})";
                tests.Add(new BenchTest(what, (result.State == ResultState.Number ? before : "") + Wording.Value(result) + asked, id.Text));
            }
        }
    }
}
