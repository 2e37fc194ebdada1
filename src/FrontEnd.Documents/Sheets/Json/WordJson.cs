using FrontEnd.DesignedFilters;
using FrontEnd.Digital;
using FrontEnd.Filters;

namespace FrontEnd.Documents.Sheets;

/// <summary>What one word does to a digital filter of sections; levels are in LSB of the sample.</summary>
internal sealed record WordJson(
    string Word, double PoleMovement, string Poles, double? DcGain, string DcZero, int? HeadroomBits, IReadOnlyList<FormJson> Forms,
    LimitCycleJson? LimitCycle,
    bool? LimitCycleSearchComplete, IReadOnlyList<string> Remedies)
{
    public static IReadOnlyList<WordJson>? From(WordStudy? study) =>
        study is null ? null : [.. study.Words.Select(word => From(word, study))];

    private static WordJson From(WordResult word, WordStudy study)
    {
        WordFigures figures = word.Coefficients;
        return new(
            DigitalArithmetic.WordOf(word.Word), figures.PoleMovement, Standing(figures.Standing), figures.DcGain,
            WordTables.Word(word.DcZero),
            figures.IsStable ? figures.HeadroomBits : null,
            [.. word.Forms.Select(
                form => new FormJson(DigitalArithmetic.FormOf(form.Form), form.RoundOff, form.ConstantRoundOff, form.DeadBand))],
            word.LimitCycles?.Largest is { } cycle ? new LimitCycleJson(cycle.Amplitude, cycle.Period) : null, word.LimitCycles?.IsComplete,
            [.. study.Remedies.Where(remedy => remedy.Word == word.Word).Select(remedy => remedy.Remedy)]);
    }

    private static string Standing(PoleStanding standing) => standing switch
    {
        PoleStanding.InsideCircle => "inside",
        PoleStanding.OnCircle => "on",
        PoleStanding.OutsideCircle => "outside",
        _ => throw new ArgumentOutOfRangeException(nameof(standing), standing, "The standing is not handled."),
    };
}

/// <summary>Round-off in one form: in LSB for whole numbers, as a share of a dc level for floating point.</summary>
internal sealed record FormJson(string Form, double? RoundOffLsb, double? RoundOffShareOfDc, double? DeadBandLsb);

/// <summary>The largest limit cycle found; period 1 is a constant.</summary>
internal sealed record LimitCycleJson(double AmplitudeLsb, int Period);

/// <summary>Growth from the input to the output of a section, numbered from 1: for any input, for white noise (rms), for a sine.</summary>
internal sealed record GrowthJson(int Section, double L1, double L2, double LInfinity)
{
    public static IReadOnlyList<GrowthJson>? From(WordStudy? study) =>
        study is null ? null : [.. study.Growth.Select((n, i) => new GrowthJson(i + 1, n.L1, n.L2, n.LInfinity))];
}

/// <summary>What rounding to a word does to taps: the largest change of the response.</summary>
internal sealed record TapWordJson(string Word, double LargestChange)
{
    public static IReadOnlyList<TapWordJson> From(FirCost cost) =>
        [.. cost.Words.Select(one => new TapWordJson(DigitalArithmetic.WordOf(one.Word), one.LargestChange))];
}
