using FrontEnd.Bench;

namespace FrontEnd.Documents.Sheets;

/// <summary>What to record of a device that somebody else built, as plain text, 80 columns wide.</summary>
internal static class RecordingPlanText
{
    /// <param name="path">The design's file.</param>
    public static string Of(RecordingPlan plan, string path)
    {
        TextPage page = new();
        Design design = plan.Design.Given.Design;
        page.Paragraph($"what to record of {design.Name}");
        page.OwnCautions(design);
        page.Paragraph(BenchPlan.Caution);
        page.Blank();
        page.Paragraph(Messages.NotKnown(plan.NotKnown) + ", so no test has a value to agree with.");
        page.Blank();
        if (plan.Choices is [var best, ..])
        {
            Choices(page, plan, best, path);
        }
        else
        {
            page.Paragraph($"{(plan.First is { } first ? $"Any recording of the device tells {first}: set it in the file. " : "")}A recording of noise on a fixture would hardly narrow what is not known. `frontend check {path}` names what closes each open requirement; a value that you learn goes into the file.");
        }

        page.Cautions();
        return page.ToString();
    }

    private static void Choices(TextPage page, RecordingPlan plan, RecordingChoice best, string path)
    {
        page.Line("what stands in the electrodes' place, what narrows most first");
        foreach (RecordingChoice one in plan.Choices)
        {
            page.Paragraph(one.Worth.Fixture, "  ");
            page.Paragraph($"{one.Worth.Effect}; `--fixture {one.Word}`", "    ");
        }

        page.Blank();
        page.Line("how");
        if (plan.First is { } first)
        {
            page.Paragraph($"set {first} in the file first: any recording of the device tells it", "  - ");
        }

        page.Paragraph($"{Messages.OnTheTable}, with the first of these: {best.Worth.Fixture}; record a minute, if possible with its own filters off", "  - ");
        page.Paragraph("save it as .edf, as .bdf, or as a .csv of samples, the column headed with name and unit such as `ch1 [µV]` beside one headed `time` in seconds", "  - ");
        page.Paragraph("hold it against the file, and write what is left of the ranges into another:", "  - ");
        page.Line($"    frontend bench {path} --measured FILE --fixture {best.Word} --narrow narrowed.toml");
    }
}
