using FrontEnd.Identity;
using FrontEnd.Results;

namespace FrontEnd.Bench;

/// <summary>Tests whose reading is a figure of the assessment as it stands, and what is looked at when the device is first worn.</summary>
internal static class BenchFigures
{
    /// <summary>Before anything else.</summary>
    internal static IEnumerable<BenchReading> First(Assessment assessment) => Of(assessment, ResultIds.Power.SupplyCurrent, "supply-current",
        "supply current", "a laboratory supply in place of the battery, current limit at twice the expected current, nobody connected",
        "all channels running; read the current", 0.3, "±30 %: cards give typical currents");

    /// <summary>After the recordings.</summary>
    internal static IEnumerable<BenchReading> Last(Assessment assessment)
    {
        const string Generator = "generator of 10 Ω or less at the active lead; reference and ground to its low side";
        IEnumerable<BenchReading> corners =
        [
            .. Of(assessment, ResultIds.Filter.Path.MinusThree, "corner-high", "upper corner of the analogue path", Generator,
                "raise the frequency of a sine until the voltage at the converter's pin is 3 dB down", 0.1, "±10 %: the parts' tolerances"),
            .. Of(assessment, ResultIds.Filter.Path.MinusThreeLow, "corner-low", "lower corner of the analogue path", Generator,
                "lower the frequency of a sine until the voltage at the converter's pin is 3 dB down", 0.1, "±10 %: the parts' tolerances"),
        ];
        foreach (BenchReading corner in corners)
        {
            yield return corner;
        }

        foreach (Lead lead in new[] { Lead.Active, Lead.Reference, Lead.Ground })
        {
            if (assessment.Find(ResultIds.Open.Of(lead)) is { State: not ResultState.Missing } open)
            {
                yield return new BenchReading($"open-{lead.Word()}", $"{lead.Word()} electrode off",
                    $"51 kΩ in parallel with 47 nF in every lead; disconnect the {lead.Word()} lead", "on battery, in the room where it is used; look at the recording: it must not look like a signal",
                    ReadingKind.Other)
                {
                    Remark = open.Text, Source = open.Equation.Source, Id = open.Id, Design = assessment.Design,
                };
            }
        }
    }

    /// <summary>What the first recordings on a wearer should show, after all tests at the bench; no bench test, and on battery alone.</summary>
    public static IReadOnlyList<WornReading> Worn(Assessment assessment)
    {
        List<WornReading> rows = [];
        Add("noise in the band, rms at the electrodes", ResultIds.Noise.Total, "about");
        Add("mains line in the recording, digital filters off, indoors, rms at the electrodes, worst case",
            ResultIds.Mains.Harmonic(1).Converter, "up to");
        Add("the same with the digital filters on", ResultIds.Mains.Harmonic(1).Recorded, "up to");
        return rows;

        void Add(string what, ResultId id, string before)
        {
            if (assessment.Find(id) is { State: not ResultState.Missing } result)
            {
                rows.Add(new WornReading(what, before, result));
            }
        }
    }

    private static IEnumerable<BenchReading> Of(Assessment assessment, ResultId id, string name, string title, string fixture, string setting,
        double tolerance, string words)
    {
        if (assessment.Find(id) is { State: ResultState.Number } result)
        {
            yield return new BenchReading(name, title, fixture, setting, ReadingKind.Other)
            {
                Expected = result.Value, Least = result.Si * (1 - tolerance), Greatest = result.Si * (1 + tolerance), Tolerance = words,
                Id = id, Design = assessment.Design,
            };
        }
    }
}

/// <summary>A figure to look for when the device is first worn.</summary>
/// <param name="What">What is looked at.</param>
/// <param name="Before">"about" or "up to".</param>
/// <param name="Figure">The assessment's.</param>
internal sealed record WornReading(string What, string Before, Result Figure);
