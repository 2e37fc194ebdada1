using FrontEnd.Fields;

namespace FrontEnd.Documents.Reading;

/// <summary>The second way to write an electrode's excess noise: an rms in a band. It sets <c>excess-density</c> and is no field of its
/// own.</summary>
internal static class ExcessForms
{
    /// <summary>The band in which electrode noise on skin is usually reported (abstract on Ag-AgCl electrode noise in high-resolution
    /// recordings, 0.5 to 500 Hz).</summary>
    public static readonly FrequencyRange DefaultBand = new(Frequency.FromHertz(0.5), Frequency.FromHertz(500));

    public static readonly FieldDescription Rms = new Row
    {
        Key = "excess-rms",
        JsonKey = "excess_rms",
        Kind = FieldKind.Quantity,
        Quantity = QuantityKind.Of<VoltageRms>(),
        Meaning = "the same as excess-density, given as an rms in excess-band",
        DefaultText = "none",
        DefaultSource = "the field is absent unless given",
        Range = FieldRange.Closed(0, 1),
    };

    public static readonly FieldDescription Band = new Row
    {
        Key = "excess-band",
        JsonKey = "excess_band",
        Kind = FieldKind.FrequencyRange,
        Quantity = QuantityKind.Of<Frequency>(),
        Meaning = "the band that excess-rms was measured in",
        DefaultText = "[\"0.5 Hz\", \"500 Hz\"]",
        DefaultSource = "abstract on Ag-AgCl electrode noise in high-resolution recordings",
        Range = FieldRange.Above(0, 1e6),
    };

    private sealed record Row : FieldDescription;
}
