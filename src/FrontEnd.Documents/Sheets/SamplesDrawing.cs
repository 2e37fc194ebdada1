using FrontEnd.Documents.Drawing;
using FrontEnd.Simulation;

namespace FrontEnd.Documents.Sheets;

/// <summary>Simulated samples as a picture: the beginning of each channel in time, and the spectrum of one against the noise budget; with another design beside it
/// two lines in each.</summary>
internal static class SamplesDrawing
{
    /// <summary>Extension of its file.</summary>
    public const string Extension = ".svg";

    /// <summary>How much of the beginning is drawn: a second or two of a rhythm, of hum and of noise can be told apart.</summary>
    public static readonly Duration Shown = Duration.FromSeconds(2);

    private const double Width = 780, Margin = 10, ChartHeight = 200, Gap = 8, LineHeight = 16;

    private const int MostChannels = 4;

    /// <summary>The file: the picture, with the cautions in it and, whole, in a comment.</summary>
    /// <param name="assessment">Of the design.</param>
    /// <param name="look">Its samples.</param>
    /// <param name="name">What its lines are called.</param>
    /// <param name="beside">Another design's, or the same with something left out; null for none.</param>
    public static string FileOf(Assessment assessment, SampleLook look, string name, (SampleLook Look, string Name)? beside) =>
        Svg.File(Of(assessment, look, name, beside), [RecordedNobody, Cautions.OfFile(assessment), .. Cautions.Own(assessment.Design), .. Cautions.All]);

    internal const string RecordedNobody = "Simulated; nobody was recorded.";

    private static Picture Of(Assessment assessment, SampleLook look, string name, (SampleLook Look, string Name)? beside)
    {
        int channels = Math.Min(MostChannels, look.Traces.Count);
        List<Picture> charts = [.. Enumerable.Range(0, channels).Select(channel => Time(look, name, beside, channel)), Spectrum(look, name, beside)];
        string[] head =
        [
            $"Samples of {assessment.Design.Name}, at the electrodes. {RecordedNobody} Seed {look.Run.Wish.Seed}.",
            .. TextPage.Wrap(Cautions.OfPicture(assessment), 120),
            .. look.Traces.Count <= channels ? Array.Empty<string>() : [$"The first {channels} of {look.Traces.Count} channels in time."],
        ];
        double top = Margin + (head.Length * LineHeight) + Gap;
        Picture picture = new(Width, top + (charts.Count * (ChartHeight + Gap)) + Margin, $"Simulated samples of {assessment.Design.Name}");
        picture.Rectangle(0, 0, picture.Width, picture.Height, null, Fill.White);
        for (int i = 0; i < head.Length; i++)
        {
            picture.Text(Margin, Margin + ((i + 0.8) * LineHeight), head[i], bold: i == 0);
        }

        for (int i = 0; i < charts.Count; i++)
        {
            picture.Place(charts[i], Margin, top + (i * (ChartHeight + Gap)));
        }

        return picture;
    }

    /// <summary>The charts alone, one below the other: the first channel in time, and its spectrum.</summary>
    internal static Picture Charts(SampleLook look, string name, (SampleLook Look, string Name)? beside)
    {
        Picture[] charts = [Time(look, name, beside, 0), Spectrum(look, name, beside)];
        Picture picture = new(Width, charts.Length * (ChartHeight + Gap), $"Simulated samples of {look.Run.Design.Name}");
        for (int i = 0; i < charts.Length; i++)
        {
            picture.Place(charts[i], 0, i * (ChartHeight + Gap));
        }

        return picture;
    }

    private static Picture Time(SampleLook look, string name, (SampleLook Look, string Name)? beside, int channel)
    {
        List<Curve> curves = [look.Traces[channel] with { Name = name }];
        if (beside is { } other && channel < other.Look.Traces.Count)
        {
            curves.Add(other.Look.Traces[channel] with { Name = other.Name });
        }

        string channelName = Called(look.Traces[channel].Name);
        double last = Math.Min(Shown.Seconds, look.Run.Wish.Length.Seconds), low = curves.Min(curve => curve.Y.Min()), high = curves.Max(curve => curve.Y.Max());
        Chart chart = new($"{channelName} in time", new Axis("time, s", "s", 0, last, IsLog: false), Axis.Steps10($"{channelName}, V", "V", low, high));
        Add(chart, curves);
        return chart.Draw();
    }

    private static Picture Spectrum(SampleLook look, string name, (SampleLook Look, string Name)? beside)
    {
        List<Curve> curves = [look.Spectrum(0, name), look.Budget(0)];
        if (beside is { } other)
        {
            curves.Add(other.Look.Spectrum(0, other.Name));
        }

        double[] positive = [.. curves.SelectMany(curve => curve.Y).Where(value => 0 < value)];
        double high = positive.Length == 0 ? 1e-6 : positive.Max(), low = Math.Max(positive.Length == 0 ? 1e-9 : positive.Min(), high / 1e5);
        string channel = look.Traces.Count == 1 ? "" : $" of {Called(look.Traces[0].Name)}";
        Chart chart = new($"spectrum{channel}", Axis.Decades("frequency, Hz", "Hz", curves[0].X[0], curves[0].X[^1]), Axis.Decades($"density{channel}, V/√Hz", "V/√Hz", low, high));
        Add(chart, curves);
        return chart.Draw();
    }

    /// <summary>A channel that has a number for a name.</summary>
    private static string Called(string name) => name.All(char.IsAsciiDigit) ? $"channel {name}" : name;

    private static void Add(Chart chart, List<Curve> curves)
    {
        foreach (Curve curve in curves)
        {
            chart.Curve(curve.Name, curve.X, curve.Y);
        }
    }
}
