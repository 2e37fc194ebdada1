using FrontEnd.Advice;
using FrontEnd.Teaching;

namespace FrontEnd.Documents.Sheets;

/// <summary>Members of <c>explain --json</c>: why one figure is what it is.</summary>
/// <param name="Why">The reason in plain words; null where there is none.</param>
/// <param name="Diagram">The picture in letters; null where none helps.</param>
/// <param name="MovesWith">How the figure moves with each input raised by a tenth, temperatures by 10 K; all inputs that move it, largest
/// first.</param>
internal sealed record ExplainJson(
    string Design, ResultJson Result, SourcesJson Sources, WhyJson? Why, DiagramJson? Diagram, IReadOnlyList<MoveJson> MovesWith)
    : CautionedJson
{
    /// <summary>How many inputs move the figure.</summary>
    public int Moving => MovesWith.Count;

    /// <summary>By how much a temperature is moved [K], where the other inputs move by a tenth.</summary>
    public double TemperatureStep { get; } = Sensitivity.Kelvins;

    /// <summary>How many of them a page shows.</summary>
    public int Shown => Math.Min(Explained.MovesShown, Moving);

    public static ExplainJson From(Explained explained) => new(
        explained.Assessment.Design.Name, ResultJson.From(explained.Result), SourcesJson.From(explained.Result),
        WhyJson.From(explained.Why),
        explained.Picture is { } picture ? new DiagramJson(picture.Title, picture.Lines(explained.Assessment)) : null,
        [.. explained.Moves.Select(MoveJson.Of)])
    {
        DesignCautions = FrontEnd.Results.Cautions.Own(explained.Assessment.Design),
    };
}

/// <summary>The sources of a figure as they are printed; null where there is none.</summary>
internal sealed record SourcesJson(string Equation, string? Hand, string? Limit)
{
    public static SourcesJson From(Result result) => new(
        SourceList.Of(result.Equation.Source), result.Hand is { } hand ? SourceList.Of(hand.Source) : null,
        result.Verdict.LimitSource is { } limit ? SourceList.Of(limit) : null);
}

/// <summary>A reason, what it takes for granted, what to read; null where no page about the figure is known.</summary>
internal sealed record WhyJson(string Reason, string Assumes, string? Read)
{
    public static WhyJson? From(Explanation? why) => why is null ? null : new(why.Reason, why.Assumes, why.Read is null ? null : SourceList.Of(why.Read));
}

/// <summary>A picture line by line.</summary>
internal sealed record DiagramJson(string Title, IReadOnlyList<string> Lines);

/// <summary>What one input's step does.</summary>
/// <param name="InputUnit">Unit of <paramref name="From"/> and <paramref name="To"/>.</param>
/// <param name="Result">The figure then; null where it can no longer be computed.</param>
/// <param name="Change">As a share; for decibels, degrees and bits the plain difference.</param>
internal sealed record MoveJson(string Input, string Meaning, string InputUnit, IQuantity From, IQuantity To, IQuantity? Result,
    double Change)
{
    // Named apart from the member `from`.
    public static MoveJson Of(Sensitivity one) => new(one.Key, one.Meaning, one.From.SiUnit, one.From, one.To, one.After, one.Change);
}
