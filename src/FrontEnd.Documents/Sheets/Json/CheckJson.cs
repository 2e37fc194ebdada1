using System.Text.Json.Serialization;
using FrontEnd.Citations;

namespace FrontEnd.Documents.Sheets;

/// <summary>Members of <c>check --json</c> and of a sheet for programs.</summary>
internal sealed record CheckJson(DesignJson Design, IReadOnlyList<ResultJson> Results, IReadOnlyList<FindingJson> Findings)
    : CautionedJson
{
    /// <summary>How the figures of many builds spread; left out where nobody asked.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public SpreadJson? Spread { get; init; }

    /// <summary>What the built board is put through; left out where nobody asked.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public IReadOnlyList<BenchTestJson>? Bench { get; init; }

    /// <summary>What must be said beside every figure of what sites see; left out where there is none.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public IReadOnlyList<string>? HeadLimits { get; init; }

    /// <summary>The channels where they have names, and the derived ones; left out where they have none. Their figures are results.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public IReadOnlyList<ChannelJson>? Channels { get; init; }

    /// <summary>What the design leaves to the program, and by which source.</summary>
    public required IReadOnlyList<DefaultUsed> Defaults { get; init; }

    public static CheckJson From(Sheet sheet) =>
        new(new DesignJson(sheet.Design), [.. sheet.Assessment.Results.Select(ResultJson.From)], FindingJson.From(sheet.Findings))
        {
            HeadLimits = sheet.Design.Patches.Count == 0 ? null : [.. Head.HeadLimits.All, .. SourceTables.ReferenceNotes],
            DesignCautions = FrontEnd.Results.Cautions.Own(sheet.Design), Defaults = DefaultUsed.Of(sheet), Spread = sheet.Spread is null ? null : SpreadJson.From(sheet.Spread),
            Channels = ChannelJson.From(sheet.Design),
            Bench = sheet.Bench.Count == 0 ? null : [.. sheet.Bench.Select(BenchTestJson.From)],
        };
}

/// <summary>One channel, recorded or derived.</summary>
/// <param name="Weights">Of the recorded channels in their order, for a derived one.</param>
internal sealed record ChannelJson(string Name, string Site, string? Electrode, IReadOnlyList<double>? Weights)
{
    public static IReadOnlyList<ChannelJson>? From(Designs.Design design) => design.ChannelList.Count == 0 ? null :
    [
        .. design.ChannelList.Select((channel, i) => new ChannelJson(channel.Name, ChannelTable.SiteOf(channel), ChannelTable.ElectrodeOf(design, i), null)),
        .. design.DerivedRows.Select(row => new ChannelJson(row.Name, ChannelTable.WeightsOf(design, row), null, row.Weights)),
    ];
}

/// <summary>One figure with what is known of it.</summary>
internal sealed record ResultJson(
    string Id, string Name, string Symbol, IQuantity? Value, string Unit, string Equation, string Substituted, HandJson? Hand,
    SourceRef Source)
{
    public VerdictKind Verdict { get; init; }

    public IQuantity? Limit { get; init; }

    public double? Margin { get; init; }

    public ResultState State { get; init; }

    public string? Text { get; init; }

    public string? Finding { get; init; }

    public required string Because { get; init; }

    public string? Dominates { get; init; }

    /// <summary>The word that is asked for, where the result is a word.</summary>
    public string? Wanted { get; init; }

    public string? Helps { get; init; }

    public static ResultJson From(Result result) => new(
        result.Id.Text, result.Name, result.Symbol, result.Value, result.Unit, result.Equation.Text, result.Substituted,
        HandJson.From(result.Hand), result.Equation.Source)
    {
        Verdict = result.Verdict.Kind, Limit = result.Verdict.Limit, Margin = result.Verdict.Margin, State = result.State,
        Wanted = result.Verdict.Wanted, Text = result.Text,
        Finding = result.FindingCode, Because = result.Verdict.Because, Dominates = result.Verdict.Dominates,
        Helps = Wording.Helps(result.Verdict),
    };
}

/// <summary>The same figure by the textbook formula.</summary>
internal sealed record HandJson(IQuantity Value, string Formula, string Substituted, SourceRef Source, double Difference,
    string? Assumption)
{
    public static HandJson? From(HandFigure? hand) =>
        hand is null ? null : new(hand.Value, hand.Formula, hand.Substituted, hand.Source, hand.Difference, hand.Assumption);
}

/// <summary>What every answer says of a finding.</summary>
internal sealed record FindingJson(
    string Code, Severity Severity, string Field, string Message, string? Note, string? Help, string? File, int? Line, string? Excerpt)
{
    public static IReadOnlyList<FindingJson> From(IEnumerable<Finding> findings) =>
    [
        .. findings.Select(one =>
            new FindingJson(one.Code, one.Severity, one.Field, one.Message, one.Note, one.Help, one.File, one.Line, one.Excerpt)),
    ];
}
