using FrontEnd.Compare;

namespace FrontEnd.Documents.Sheets;

/// <summary>Members of <c>size --as-built --json</c>: the fields that change, the figures that move by more than 1 %, what cannot be built as
/// stated.</summary>
internal sealed record BoughtDesignJson(string Name, IReadOnlyList<BoughtValueJson> Values, IReadOnlyList<ChangeJson> Moved, IReadOnlyList<FindingJson> Findings)
    : CautionedJson
{
    /// <summary>Share from which a figure counts as moved.</summary>
    public double ToldShare { get; init; } = AsBuilt.Told;

    public static BoughtDesignJson From(AsBuilt built) => new(
        built.Built.Design.Name, [.. built.Values.Select(one => new BoughtValueJson(one.Key, one.From, one.To))],
        [.. built.Moved.Select(ChangeJson.From)], FindingJson.From(built.Built.Findings))
    {
        DesignCautions = FrontEnd.Results.Cautions.Own(built.Built.Design),
    };
}

/// <summary>A field that changes, in the text of the design file.</summary>
internal sealed record BoughtValueJson(string Key, string From, string To);
