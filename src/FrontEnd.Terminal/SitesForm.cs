using FrontEnd.Documents.Teaching;
using FrontEnd.Head;

namespace FrontEnd.Terminal;

/// <summary>The fields of a question about sites, in the order of the form.</summary>
internal static class SitesForm
{
    /// <summary>The fields, in order.</summary>
    public static readonly IReadOnlyList<SitesField> Fields =
    [
        new("nasion-inion", one => one.NasionInion, (one, text) => one with { NasionInion = text }),
        new("preauricular", one => one.Preauricular, (one, text) => one with { Preauricular = text }),
        new("circumference", one => one.Circumference, (one, text) => one with { Circumference = text }),
        new("from", one => one.From, (one, text) => one with { From = text }),
        new("to", one => one.To, (one, text) => one with { To = text }),
        new("montage", one => one.Montage, (one, text) => one with { Montage = text }) { Words = ["", .. Sites.Montages.Keys] },
        new(
            "F3, F4 halfway", one => one.Rule == SiteRule.Row ? Row : Column,
            (one, text) => one with { Rule = text == Column ? SiteRule.Column : SiteRule.Row }) { Words = [Row, Column], IsWord = true },
    ];

    private const string Row = "Fz to F7";
    private const string Column = "Fp1 to C3";
}

/// <summary>One field of the question.</summary>
internal sealed record SitesField(string Label, Func<SitesRequest, string> Get, Func<SitesRequest, string, SitesRequest> Set)
{
    /// <summary>What + and - go through; empty for a field that is only typed.</summary>
    public IReadOnlyList<string> Words { get; init; } = [];

    /// <summary>True where only the words will do.</summary>
    public bool IsWord { get; init; }
}
