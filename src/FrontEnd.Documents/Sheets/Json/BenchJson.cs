using System.Text.Json.Serialization;
using FrontEnd.Bench;

namespace FrontEnd.Documents.Sheets;

/// <summary>Members of <c>bench --json</c>: tests and what came of them.</summary>
internal sealed record BenchJson(
    string Design, string Caution, IReadOnlyList<BenchTestJson> Tests, IReadOnlyList<BenchResultJson> Results,
    IReadOnlyList<FindingJson> Findings)
    : CautionedJson
{
    /// <summary>Of channels that are unlike each other the one that everything is predicted for; left out where all are alike.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? Channel { get; init; }

    public static BenchJson From(Design design, IReadOnlyList<BenchReading> plan, IReadOnlyList<BenchResult> results,
        IReadOnlyList<Finding> findings) => new(
        design.Name, BenchPlan.Caution, [.. plan.Select(BenchTestJson.From)], [.. results.Select(BenchResultJson.From)],
            FindingJson.From(findings))
    {
        DesignCautions = FrontEnd.Results.Cautions.Own(design), Channel = plan.Select(test => test.Channel).FirstOrDefault(),
    };
}

/// <summary>One test and the reading to expect.</summary>
internal sealed record BenchTestJson(
    string Name, string Title, string Fixture, string Setting, IQuantity? Expected, string? Unit, double? Least, double? Greatest,
    string Tolerance)
{
    public double Spread { get; init; }

    public required string Source { get; init; }

    /// <summary>True where the expected reading is the most that noise and steps let one read.</summary>
    public bool IsBound { get; init; }

    /// <summary>The figure of the assessment that the test reads; null for none.</summary>
    public string? Id { get; init; }

    public string? Remark { get; init; }

    /// <summary>When its turn comes: <c>before-power</c>, <c>power</c>, <c>resting-voltages</c>, <c>faults</c>, <c>noise</c>, <c>gain</c>, <c>hum</c>,
    /// <c>further</c>.</summary>
    public required string Step { get; init; }

    /// <summary>The node of the path that a meter is put to; null for none.</summary>
    public string? Node { get; init; }

    /// <summary>The test point that the probe is put to, and its net; null for none.</summary>
    public TestPoint? At { get; init; }

    /// <summary>What tells it from others that are set up alike, such as a resistor's designator; null for nothing.</summary>
    public string? Particular { get; init; }

    /// <summary>What to suspect where a reading does not agree.</summary>
    public required IReadOnlyList<BenchSuspicion> IfOff { get; init; }

    public static BenchTestJson From(BenchReading test) => new(
        test.Name, test.Title, test.Fixture, test.Setting, test.Expected, test.Expected?.SiUnit, test.Least, test.Greatest, test.Tolerance)
    {
        Spread = test.Spread, Source = test.Source.Key, Remark = test.Remark, IsBound = test.IsBound, Id = test.Id?.Text,
        Step = BenchWording.Word(test.Step), Node = test.Node?.Text, At = test.At, Particular = test.Particular, IfOff = test.IfOff,
    };
}

/// <summary>A reading or a recording against what was expected.</summary>
internal sealed record BenchResultJson(string Name, VerdictKind Verdict, IQuantity Measured, string Unit, double Spread, string Because,
    string? Taken)
{
    public required IReadOnlyList<Suspect> Suspects { get; init; }

    public required IReadOnlyList<LineJson> Lines { get; init; }

    /// <summary>Of the recording; left out for a reading alone. Not <c>measured</c>, which is the reading.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public SpectrumJson? MeasuredSpectrum { get; init; }

    /// <summary>The spectrum that the design should give; left out for a reading alone.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public SpectrumJson? Predicted { get; init; }

    /// <summary>Both in rows of equal ratio, as they are printed; empty for a reading alone.</summary>
    public required IReadOnlyList<SpectrumRowJson> Rows { get; init; }

    public static BenchResultJson From(BenchResult result) => new(
        result.Reading.Name, result.Verdict, result.Measured, result.Measured.SiUnit, result.Spread, result.Because, result.Taken)
    {
        Suspects = result.Suspects, Rows = [.. SpectrumRow.Of(result).Select(SpectrumRowJson.From)],
        Lines = [.. result.Lines.Select(line => new LineJson(line.Frequency, line.Rms, line.Harmonic, line.Mains, line.Folded))],
        MeasuredSpectrum = result.Spectra is [{ } measured, _] ? SpectrumJson.From(measured) : null,
        Predicted = result.Spectra is [_, { } predicted] ? SpectrumJson.From(predicted) : null,
    };
}

/// <summary>A line found in a recording.</summary>
internal sealed record LineJson(IQuantity Frequency, IQuantity Rms, int? Harmonic, IQuantity? Mains, bool Folded);

/// <summary>Densities over a range of frequencies; the difference in decibels, null where one of them is 0.</summary>
internal sealed record SpectrumRowJson(IQuantity Hertz, IQuantity Measured, IQuantity Predicted, IQuantity? Difference)
{
    public static SpectrumRowJson From(SpectrumRow row) => new(row.From, row.Measured, row.Predicted, row.Difference);
}

/// <summary>An amplitude density [V/√Hz] against frequency [Hz].</summary>
internal sealed record SpectrumJson(IReadOnlyList<double> Hertz, IReadOnlyList<double> Density)
{
    public static SpectrumJson From(Curve curve) => new(curve.X, curve.Y);
}
