using FrontEnd.Designs;
using FrontEnd.Identity;
using FrontEnd.Textbook;

namespace FrontEnd.Reporting;

/// <summary>What unequal sampling times of the channels leak.</summary>
internal static class SkewReport
{
    public static void AddTo(ResultList list, Design design)
    {
        double skew = design.Converter.Skew.Seconds;
        list.Number(
            ResultIds.Skew.Leak,
            "share of the common mode that leaks between neighbouring channels through unequal sampling times, at the mains frequency", "",
            Share.FromFraction(2 * Math.Sin(Math.PI * design.Mains.Frequency.Hertz * skew)), Equations.SkewLeak,
            hand: MainsFormulas.SkewLeak(design.Mains.Frequency, design.Converter.Skew), text: skew == 0
                ? "simultaneous sampling"
                : $"between channels {QuantityText.Format(design.Converter.Skew)} apart");
    }
}
