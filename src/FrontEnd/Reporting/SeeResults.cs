using FrontEnd.Citations;
using FrontEnd.Head;
using FrontEnd.Identity;

namespace FrontEnd.Reporting;

/// <summary>What channels show of a source, as results with their ids.</summary>
internal static class SeeResults
{
    private const string Unseen = "the active site hardly sees this source";
    private const string Unstated = "not stated";

    /// <summary>Every figure of one source in one channel.</summary>
    /// <param name="patch">The source's name.</param>
    /// <param name="halfRegion">Null where it is not worked out.</param>
    public static void AddTo(ResultList list, string patch, SourceView view, SourceInChannel seen, Area? halfRegion)
    {
        string channel = seen.Channel.Derivation.Name, of = $"of {patch} in {channel}";
        SeeIds ids = ResultIds.See.Of(patch, channel);
        if (list.Has(ids.OfPeak))
        {
            return;   // the same pair twice
        }

        AddShares(list, ids, of, view, seen);
        if (halfRegion is { } region)
        {
            list.Number(ids.HalfRegion, $"area of cortex where such a patch gives {channel} at least half of its maximum", "", region, Equations.HalfRegion);
        }

        string? ears = seen.Channel.Derivation.HasEars ? HeadLimits.EarsInShort : null;
        list.Number(ids.Background, $"background in {channel} in the band of {patch}, rms", "", seen.Background, Equations.Background, text: ears);
        if (seen.Channel.Noise is { } noise)
        {
            list.Number(ids.FrontEnd, $"noise of the front end in {channel} in the band of {patch}, rms", "e", noise, Equations.DerivedNoise);
            list.Word(ids.LimitedBy, $"dominant part of the noise {of}", seen.FrontEndLimits ? "front end" : "background", Equations.SeenOverNoise);
        }

        AddRatio(list, ids, of, view, seen);
    }

    /// <summary>The density that a stated rhythm takes, once for its source.</summary>
    public static void AddDensity(ResultList list, string patch, SourceView view)
    {
        if (view.Question.Statement is { } statement && view.Density is { } density)
        {
            list.Number(ResultIds.See.Of(patch, statement.In.Name).Density, $"density of cortex that makes {patch} as large as stated in {statement.In.Name}, peak", "m",
                density, Equations.Density, text: "cortex has 1 to 2 nA·m/mm² at most (from memory)");
        }
    }

    private static void AddShares(ResultList list, SeeIds ids, string of, SourceView view, SourceInChannel seen)
    {
        Equation equation = view.Question.Source is SulcalWall ? Equations.SeenOfAWall : Equations.Seen;
        if (seen.Seen is { } volts)
        {
            list.Number(ids.Seen, $"potential {of}, signed, {(volts is VoltageRms ? "rms" : "peak-to-peak")}", "V_d", volts, equation);
        }

        Part(ids.Kept, "kept", "k", seen.Kept, Equations.Kept);
        Part(ids.ReferenceTakes, "subtracted by the reference", "t", seen.ReferenceTakes, Equations.ReferenceTakes,
            seen.Part is { } part ? HeadWords.Sentence(part) : null);
        Part(ids.AgainstEars, "against the same site's against both ears", "", seen.AgainstEars, Equations.AgainstEars);
        list.Number(ids.OfPeak, $"share {of} of the source's peak on the skin", "", seen.OfPeak, Equations.OfPeak);
        if (seen.KeptSpan is var (least, greatest))
        {
            Span(list, ids.KeptSpan, $"kept {of} with other skulls", Text(least), Text(greatest), least, greatest);
        }

        static string Text(Share share) => QuantityText.Format(share, Math.Abs(share.Fraction) < 0.995 ? 2 : 3);

        void Part(ResultId id, string what, string symbol, Share? share, Equation by, string? text = null)
        {
            if (share is { } known)
            {
                list.Number(id, $"share {of}, {what}", symbol, known, by, text: text);
            }
            else
            {
                list.Unbounded(id, $"share {of}, {what}", symbol, "1", by, Unseen);
            }
        }
    }

    private static void AddRatio(ResultList list, SeeIds ids, string of, SourceView view, SourceInChannel seen)
    {
        ResultId id = ids.SignalToNoise(view.Question.BandName);
        string name = $"signal over background and front-end noise {of}, rms over rms";
        if (seen.SignalToNoise is not { } ratio)
        {
            list.Word(id, name, Unstated, Equations.SeenOverNoise);
            return;
        }

        list.Number(ids.Signal, $"signal {of}, rms", "", seen.Signal!.Value, Equations.Seen);
        list.Number(id, name, "", PlainNumber.FromNumber(ratio), Equations.SeenOverNoise,
            text: seen.Channel.Noise is null ? "the front end's noise is left out"
                : seen.FrontEndLimits ? "the front end's noise is the larger part" : "the background is the larger part");
        if (seen.SignalToNoiseSpan is var (least, greatest))
        {
            (PlainNumber low, PlainNumber high) = (PlainNumber.FromNumber(least), PlainNumber.FromNumber(greatest));
            Span(list, ids.SignalToNoiseSpan, $"signal over noise {of} with other skulls", QuantityText.Format(low, 2), QuantityText.Format(high, 2), low, high);
        }
    }

    private static void Span(ResultList list, SpanIds ids, string name, string from, string to, IQuantity least, IQuantity greatest)
    {
        list.Word(ids.Whole, name, $"{from} to {to}", Equations.SkullSpan);
        list.Number(ids.Least, $"{name}, least", "", least, Equations.SkullSpan);
        list.Number(ids.Greatest, $"{name}, greatest", "", greatest, Equations.SkullSpan);
    }
}
