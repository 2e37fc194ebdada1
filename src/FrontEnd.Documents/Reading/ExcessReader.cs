using FrontEnd.Fields;

namespace FrontEnd.Documents.Reading;

/// <summary>Reads an electrode's excess noise given as an rms in a band, see <see cref="ExcessForms"/>.</summary>
internal sealed class ExcessReader(ReadingLog log, DocumentFormat format)
{
    /// <summary>True for one of its two keys, in a table that has the density.</summary>
    public static bool Takes<TOwner>(TablePlace<TOwner> place, string key) =>
        key.Replace('_', '-') is "excess-rms" or "excess-band" && DensityField(place) is not null;

    private static Field<TOwner>? DensityField<TOwner>(TablePlace<TOwner> place) => Find(place, "excess-density");

    private static Field<TOwner>? Find<TOwner>(TablePlace<TOwner> place, string name)
    {
        string path = (place.Path.Length == 0 ? "" : place.Path + ".") + name;
        return place.Set.Find(path) ?? place.Set.Find(path.Replace('-', '_'));
    }

    /// <summary>K from a reported rms between two frequencies, with the slope that holds after everything else was read.</summary>
    /// <returns>The field that was set; null where none was.</returns>
    public Field<TOwner>? Read<TOwner>(TablePlace<TOwner> place, TableNode table, ref TOwner owner)
    {
        Entry? rmsEntry = table.Entries.Find(entry => entry.Key.Replace('_', '-') is "excess-rms");
        Entry? bandEntry = table.Entries.Find(entry => entry.Key.Replace('_', '-') is "excess-band");
        if ((rmsEntry is null && bandEntry is null) || DensityField(place) is not { } density)
        {
            return null;
        }

        string prefix = place.Display + density.Key[..^"excess-density".Length];
        string key = prefix + "excess-density";
        if (BandOf(place, bandEntry, prefix) is not { } band)
        {
            log.Unread.Add(key);
            return null;
        }

        if (rmsEntry is null)
        {
            log.Report(place.Text, ReadingMessages.BandAlone(prefix + "excess-band", prefix + "excess-rms"), bandEntry!.KeySpan);
            return null;
        }

        if ((table.Find("excess-density") ?? table.Find("excess_density") ?? table.Find("excess_psd_1hz")) is not null)
        {
            log.Report(place.Text, ReadingMessages.BothForms(prefix + "excess-rms", prefix + "excess-density", prefix + "excess-rms"),
                rmsEntry.KeySpan);
            return null;
        }

        if (NodeValue.Read(ExcessForms.Rms, prefix + "excess-rms", rmsEntry.Value, place.FormatOf(format), out object? rms,
            out Node where) is { } finding)
        {
            log.Unread.Add(key);
            log.Report(place.Text, finding, where.Span);
            return null;
        }

        double slope = Find(place, "excess-slope")?.Get(owner) is double given ? given : 2;
        ExcessNoise value = ExcessNoise.FromRms((VoltageRms)rms!, band.Low, band.High, slope);
        if (!density.Range!.Value.Contains(value.VoltsSquaredPerHertz))
        {
            log.Unread.Add(key);
            log.Report(place.Text, FieldMessages.Outside(density, key, QuantityText.FormatExact(value)), rmsEntry.Value.Span);
            return null;
        }

        owner = density.Set(owner, value);
        if (place.Card is null)
        {
            log.Places[key] = rmsEntry.Value.Span;
        }

        log.Remember(place.Card, density, key, value, ExcessForms.Rms);
        return density;
    }

    /// <summary>The band that is given, the usual one where none is; null, with a finding, where it cannot be read.</summary>
    private FrequencyRange? BandOf<TOwner>(TablePlace<TOwner> place, Entry? entry, string prefix)
    {
        if (entry is null)
        {
            return ExcessForms.DefaultBand;
        }

        if (NodeValue.Read(ExcessForms.Band, prefix + "excess-band", entry.Value, place.FormatOf(format), out object? read,
            out Node where) is { } wrong)
        {
            log.Report(place.Text, wrong, where.Span);
            return null;
        }

        FrequencyRange band = (FrequencyRange)read!;
        if (band.High.Hertz <= band.Low.Hertz)
        {
            log.Report(place.Text, Messages.EdgesReversed(prefix + "excess-band", band.Low, band.High), entry.Value.Span);
            return null;
        }

        return band;
    }
}
