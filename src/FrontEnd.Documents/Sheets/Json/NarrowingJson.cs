using FrontEnd.Bench;

namespace FrontEnd.Documents.Sheets;

/// <summary>Members of <c>bench --json</c> where a recording on a fixture narrows what is not known.</summary>
internal sealed record NarrowingJson(string Design, string Caution, string Fixture, string Taken, IReadOnlyList<FindingJson> Findings)
    : CautionedJson
{
    /// <summary>Noise in the band at the electrodes; of a recording in steps by the step of the design in the middle.</summary>
    public required IQuantity Measured { get; init; }

    public required bool AreSteps { get; init; }

    /// <summary>The channel that it is held against; null where the channels have no names.</summary>
    public required string? Channel { get; init; }

    public required DesignBandJson Band { get; init; }

    /// <summary>Lines that were taken out.</summary>
    public required IReadOnlyList<LineJson> Lines { get; init; }

    /// <summary>What the draws give on the fixture.</summary>
    public required Interval Predicted { get; init; }

    public required int Draws { get; init; }

    public required int Agree { get; init; }

    /// <summary>How far a draw may be off and agree, and the parts of that.</summary>
    public required double Width { get; init; }

    public required double Tolerance { get; init; }

    public required double Spread { get; init; }

    /// <summary>Share by which a range must become narrower to be told.</summary>
    public required double LeastNarrower { get; init; }

    /// <summary>How many unknown values stay as they are.</summary>
    public required int Unchanged { get; init; }

    public required IReadOnlyList<NarrowedJson> Unknowns { get; init; }

    /// <summary>Recordings that would narrow what is left, the most first.</summary>
    public required IReadOnlyList<RecordingChoiceJson> Next { get; init; }

    public static NarrowingJson From(Narrowing narrowing, IReadOnlyList<RecordingChoice> next, IReadOnlyList<Finding> findings)
    {
        Design design = narrowing.Design.Given.Design;
        FixtureRecording recording = narrowing.Recording;
        return new(design.Name, BenchPlan.Caution, recording.Fixture.Words, recording.Taken, FindingJson.From(findings))
        {
            DesignCautions = FrontEnd.Results.Cautions.Own(design), Measured = narrowing.Measured, AreSteps = recording.AreSteps, Channel = narrowing.Channel,
            Band = new(design.Band.Low, design.Band.High), Predicted = narrowing.Predicted, Draws = narrowing.Drawn, Agree = narrowing.Agree,
            Lines = [.. recording.Lines.Select(line => new LineJson(line.Frequency, line.Rms, line.Harmonic, line.Mains, line.Folded))],
            Width = recording.Width.Fraction, Tolerance = BenchPlan.NoiseTolerance, Spread = recording.Spread.Fraction,
            LeastNarrower = Narrowing.LeastNarrower.Fraction, Unknowns = [.. narrowing.Fields.Select(NarrowedJson.From)],
            Unchanged = narrowing.Fields.Count(one => !one.IsNarrower),
            Next = RecordingChoiceJson.From(next),
        };
    }
}

/// <summary>A recording on a fixture that could be made.</summary>
/// <param name="Option">What <c>--fixture</c> takes for it.</param>
/// <param name="Share">Share of the readings that the file allows in which it narrows anything.</param>
/// <param name="Narrower">By how much of themselves ranges become narrower, added up, on average over these readings.</param>
internal sealed record RecordingChoiceJson(string Option, string Fixture, double Share, double Narrower, IReadOnlyList<string> Keys)
{
    public static IReadOnlyList<RecordingChoiceJson> From(IReadOnlyList<RecordingChoice> choices) =>
        [.. choices.Select(one => new RecordingChoiceJson(one.Word, one.Fixture.Words, one.Share, one.Narrower, one.Keys))];
}

/// <summary>The edges of a band.</summary>
internal sealed record DesignBandJson(IQuantity Low, IQuantity High);

/// <summary>An unknown value before and after, in its SI unit; ends of words are null.</summary>
internal sealed record NarrowedJson(string Key, bool Narrower, double? LeastBefore, double? GreatestBefore, double? Least, double? Greatest, IReadOnlyList<string>? Words)
{
    public static NarrowedJson From(NarrowedField field) => field.Before.IsChoice
        ? new(field.Before.Key, false, null, null, null, null, Fields.FieldText.Words(field.Before.Field))
        : new(field.Before.Key, field.IsNarrower, field.Before.Least, field.Before.Greatest, field.After.Least, field.After.Greatest, null);
}
