using FrontEnd.Electrodes;
using FrontEnd.Identity;

namespace FrontEnd.Documents.Sheets;

/// <summary>The channels of a design that names them, each in a row, and the derived ones below.</summary>
internal static class ChannelTable
{
    public const string Title = "channels";

    /// <summary>Title of the table of what is computed from the channels.</summary>
    public const string DerivedTitle = "derived channels";

    /// <summary>Null for a design whose channels have no names.</summary>
    public static BudgetTable? Of(Assessment assessment, HashSet<ResultId> taken)
    {
        Design design = assessment.Design;
        if (design.ChannelList.Count == 0 || assessment.Find(ResultIds.Channel.Verdict(design.ChannelList[0].Name)) is null)
        {
            return null;
        }

        List<Row> rows = [];
        for (int i = 0; i < design.ChannelList.Count; i++)
        {
            Channel channel = design.ChannelList[i];
            string name = channel.Name, verdict = assessment.Find(ResultIds.Channel.Verdict(name))?.Text ?? "";
            rows.Add(new Row(
            [
                name, SiteOf(channel), ElectrodeOf(design, i), Cell(ResultIds.Channel.Of(name, ResultIds.Noise.Total)), Cell(ResultIds.Channel.Of(name, ResultIds.Mains.Total)),
                Cell(ResultIds.Channel.OffsetToSpare(name)), verdict,
            ]));
            ResultFamily family = ResultIds.Channel.OfChannel(name);
            taken.UnionWith(assessment.Results.Where(result => family.Has(result.Id)).Select(result => result.Id));
        }

        return new BudgetTable(Title, $"{ResultIds.Channel.All}<channel>.*",
            [new("channel", true), new("site", true), new("electrode", true), new("noise"), new("mains"), new("to spare"), new("verdict", true)], rows)
        {
            Notes = ["To spare: how far the electrodes' offset may exceed the required one.", "The design's noise, mains and levels are those of the worst channel for each; each says which channel that is."],
        };

        string Cell(ResultId id) => assessment.Find(id) is { } result ? Wording.Value(result) : UnboundedWords.Of(id, "V");
    }

    /// <summary>The channels that are computed from named ones, each with what it is made of; null for a design whose channels have no names, and for
    /// one without such channels.</summary>
    public static BudgetTable? OfDerived(Assessment assessment, HashSet<ResultId> taken)
    {
        Design design = assessment.Design;
        if (design.ChannelList.Count == 0 || assessment.Find(ResultIds.Channel.Verdict(design.ChannelList[0].Name)) is null)
        {
            return null;
        }

        List<Row> rows = [];
        foreach (DerivedRow row in design.DerivedRows)
        {
            MontageIds ids = ResultIds.Montage.Channel(row.Name);
            rows.Add(new Row([row.Name, WeightsOf(design, row), Cell(ids.Noise), Cell(ids.Mains)]));
            taken.UnionWith([ids.Noise, ids.Mains]);
        }

        return rows.Count == 0 ? null : new BudgetTable(DerivedTitle, ResultIds.Montage.All + "*",
            [new("channel", true), new("made of", true), new("noise"), new("mains")], rows);

        string Cell(ResultId id) => assessment.Find(id) is { } result ? Wording.Value(result) : "";
    }

    /// <summary>Where a channel's electrode stands, and where its minus electrode.</summary>
    public static string SiteOf(Channel channel) =>
        channel.Minus is { } minus ? $"{channel.EffectiveSite} - {minus.Site}" : channel.EffectiveSite;

    /// <summary>What the electrode of a channel is: its card or its values, and whether a buffer stands at it.</summary>
    public static string ElectrodeOf(Design design, int channel)
    {
        ElectrodeSet set = design.AsSeenBy(channel).Electrodes;
        Electrode one = set.Active;
        string what = one.Card.Length > 0 ? one.Card : $"{QuantityText.FormatPart(one.ContactResistance)} ‖ {QuantityText.FormatPart(one.ContactCapacitance)}";
        return set.ActiveBuffer is null ? what : what + ", buffer";
    }

    /// <summary>"½(O1 + O2) − …" as numbers and names; a row of many channels by their count.</summary>
    public static string WeightsOf(Design design, DerivedRow row)
    {
        IReadOnlyList<string> names = design.ChannelNames;
        (string Name, double Weight)[] some = [.. row.Weights.Select((weight, i) => (names[i], weight)).Where(one => one.weight != 0)];
        return some.Length > 4 ? $"of {some.Length} channels" : string.Join(" ", some.Select((one, i) =>
            $"{(one.Weight < 0 ? "−" : i == 0 ? "" : "+")}{(Math.Abs(one.Weight) == 1 ? "" : QuantityText.FormatNumber(Math.Abs(one.Weight), 3) + "·")}{one.Name}"));
    }
}
