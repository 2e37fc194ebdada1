using System.Text.Json.Serialization;
using FrontEnd.Catalogue;
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

    /// <summary>What to order for one device; left out where nobody asked.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public OrderJson? Order { get; init; }

    /// <summary>What must be said beside every figure of what sites see; left out where there is none.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public IReadOnlyList<string>? HeadLimits { get; init; }

    /// <summary>What is not known, with the ends that it was drawn between; left out where all is known.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public IReadOnlyList<UnknownJson>? Unknowns { get; init; }

    /// <summary>How many there are; left out where all is known.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public int? UnknownsCount => Unknowns?.Count;

    /// <summary>How many designs were drawn; left out where all is known.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public int? Draws { get; init; }

    /// <summary>The channels where they have names, and the derived ones; left out where they have none. Their figures are results.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public IReadOnlyList<ChannelJson>? Channels { get; init; }

    /// <summary>Where the factors of contact over time come from; left out where no electrode has any. The figures at each time are results.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public IReadOnlyList<ContactSource>? ContactOverTime { get; init; }

    /// <summary>What the design leaves to the program, and by which source.</summary>
    public required IReadOnlyList<DefaultUsed> Defaults { get; init; }

    /// <summary>How many there are.</summary>
    public int DefaultsCount => Defaults.Count;

    public static CheckJson From(Sheet sheet) =>
        new(new DesignJson(sheet.Design, sheet.Assessment.PartlyKnown), [.. sheet.Assessment.Results.Select(ResultJson.From)], FindingJson.From(sheet.Findings))
        {
            HeadLimits = sheet.Design.Patches.Count == 0 ? null : [.. Head.HeadLimits.All, .. SourceTables.ReferenceNotes],
            DesignCautions = FrontEnd.Results.Cautions.Own(sheet.Design), Defaults = DefaultUsed.Of(sheet), Spread = sheet.Spread is null ? null : SpreadJson.From(sheet.Spread),
            Unknowns = sheet.Assessment.PartlyKnown is { } partly ? [.. partly.Unknowns.Select(UnknownJson.From)] : null,
            Draws = sheet.Assessment.PartlyKnown is null ? null : FrontEnd.Unknowns.PartlyKnownEvaluator.Draws,
            Channels = ChannelJson.From(sheet.Design),
            ContactOverTime = ContactTimesTable.Sources(sheet) is { Count: > 0 } sources ? sources : null,
            Order = sheet.Board is { } board ? OrderJson.From(board) : null,
            Bench = sheet.Bench.Count == 0 ? null : [.. sheet.Bench.Select(BenchTestJson.From)],
        };
}

/// <summary>A value that nobody knows: between two numbers in its SI unit, or one of some words.</summary>
internal sealed record UnknownJson(string Key, double? Least, double? Greatest, IReadOnlyList<string>? Words, string Source)
{
    public static UnknownJson From(UnknownField unknown) => unknown.IsChoice
        ? new(unknown.Key, null, null, Fields.FieldText.Words(unknown.Field), unknown.Source)
        : new(unknown.Key, unknown.Least, unknown.Greatest, null, unknown.Source);
}

/// <summary>One channel, recorded or derived.</summary>
/// <param name="Site">Where its electrode stands; null for a derived one, which stands nowhere.</param>
/// <param name="MadeOf">What a derived one is made of, in words; null for a recorded one.</param>
/// <param name="Weights">Of the recorded channels in their order, for a derived one.</param>
internal sealed record ChannelJson(string Name, string? Site, string? Electrode, string? MadeOf, IReadOnlyList<double>? Weights)
{
    public static IReadOnlyList<ChannelJson>? From(Designs.Design design) => design.ChannelList.Count == 0 ? null :
    [
        .. design.ChannelList.Select((channel, i) => new ChannelJson(channel.Name, ChannelTable.SiteOf(channel), ChannelTable.ElectrodeOf(design, i), null, null)),
        .. design.DerivedRows.Select(row => new ChannelJson(row.Name, null, null, ChannelTable.WeightsOf(design, row), row.Weights)),
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

    /// <summary>Where the figure lies that rests on what is not known; left out of every other, as the four below.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public double? Least { get; init; }

    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public double? Greatest { get; init; }

    /// <summary>Where the limit lies that rests on what is not known; the limit itself is null then.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public IQuantity? LimitLeast { get; init; }

    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public IQuantity? LimitGreatest { get; init; }

    /// <summary>True where it is not known whether there is a limit at all.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public bool? LimitOrNone { get; init; }

    /// <summary>Of a figure without bound which way it has none, in words.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? Unbounded { get; init; }

    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public double? P05 { get; init; }

    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public double? P95 { get; init; }

    /// <summary>The unknown that decides an open verdict.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? DecidedBy { get; init; }

    /// <summary>What would close it.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? ClosesBy { get; init; }

    public static ResultJson From(Result result) => new(
        result.Id.Text, result.Name, result.Symbol, result.Value, result.Unit, result.Equation.Text, result.Substituted,
        HandJson.From(result.Hand), result.Equation.Source)
    {
        Verdict = result.Verdict.Kind, Limit = result.Verdict.Limit, Margin = result.Verdict.Margin, State = result.State,
        Wanted = result.Verdict.Wanted, Text = result.Text,
        Finding = result.FindingCode, Because = result.Verdict.Because, Dominates = result.Verdict.Dominates,
        Helps = Wording.Helps(result.Verdict), Least = result.Interval?.Least, Greatest = result.Interval?.Greatest, P05 = result.Interval?.P05,
        P95 = result.Interval?.P95, DecidedBy = result.Verdict.DecidedBy, ClosesBy = result.Verdict.ClosesBy,
        LimitLeast = result.Verdict.LimitSpan?.Least, LimitGreatest = result.Verdict.LimitSpan?.Greatest, LimitOrNone = result.Verdict.LimitSpan?.OrNone,
        Unbounded = result.State == ResultState.Unbounded ? UnboundedWords.Of(result) : null,
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
