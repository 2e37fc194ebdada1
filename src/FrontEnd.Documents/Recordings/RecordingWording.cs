using FrontEnd.Digital;
using FrontEnd.Identity;

namespace FrontEnd.Documents.Recordings;

/// <summary>How samples stand in a file, in the words that file, summary and command share.</summary>
internal static class RecordingWording
{
    /// <summary>What one of the file's numbers is, and one step of the converter.</summary>
    /// <param name="countVolts">One of the file's numbers, at the electrodes [V].</param>
    public static string Scale(double countVolts, Voltage step, bool isStep) => isStep
        ? $"one count of the file is one step of the design's converter, {Shown(step.Volts)} at the electrodes, without rounding"
        : $"one count of the file is {Shown(countVolts)} at the electrodes; the design's step is {Shown(step.Volts)}";

    /// <summary>The design's filters as EDF spells them, <c>HP:0.5Hz LP:40Hz N:50Hz</c>: of several high-passes the highest corner, of several
    /// low-passes the lowest, the analogue path's half power included, and every notch. What lies above half the rate is none of the file's.</summary>
    public static string Filters(Assessment assessment)
    {
        List<Frequency> high = [], low = [], notch = [];
        Take(assessment, ResultIds.Filter.Path.MinusThreeLow, high);
        Take(assessment, ResultIds.Filter.Path.MinusThree, low);
        foreach (DigitalStage stage in assessment.Design.Digital)
        {
            switch (stage)
            {
                case DigitalHighPass pass:
                    high.Add(pass.Corner);
                    break;
                case DigitalLowPass pass:
                    low.Add(pass.Corner);
                    break;
                case DigitalBandPass pass:
                    high.Add(pass.Low);
                    low.Add(pass.High);
                    break;
                case DigitalBandStop stop:
                    notch.Add(Frequency.FromHertz(Math.Sqrt(stop.Low.Hertz * stop.High.Hertz)));
                    break;
                case DigitalNotch one:
                    notch.Add(one.Centre);
                    break;
                default:
                    break;
            }
        }

        return string.Join(' ',
        [
            .. high.OrderByDescending(one => one.Hertz).Take(1).Select(one => Filter("HP", one)),
            .. low.Where(one => one.Hertz < assessment.Design.Converter.Rate.Hertz / 2).OrderBy(one => one.Hertz).Take(1).Select(one => Filter("LP", one)),
            .. notch.Select(one => Filter("N", one)),
        ]);
    }

    private static void Take(Assessment assessment, ResultId corner, List<Frequency> into)
    {
        if (assessment.Find(corner) is { State: ResultState.Number, Value: Frequency hertz })
        {
            into.Add(hertz);
        }
    }

    private static string Filter(string kind, Frequency corner) => $"{kind}:{QuantityText.FormatTrimmed(corner.Hertz, "1", 3)}Hz";

    private static string Shown(double volts) => QuantityText.Format(volts, "V", 4);
}
