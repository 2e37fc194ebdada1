using FrontEnd.Catalogue;
using FrontEnd.Designs;
using FrontEnd.Head;
using FrontEnd.Networks;

namespace FrontEnd.Pairs;

/// <summary>Which pair of sites shows a source, and what does the reference take away.</summary>
internal static class PairStudy
{
    /// <summary>Rows of a ranking where no number is asked for.</summary>
    public const int UsualBest = 10;

    /// <summary>The answer, or what is wrong with the question.</summary>
    /// <param name="place">Where a word of a patch stands, by the patch's number from 0 and its key.</param>
    public static (PairsAnswer? Answer, IReadOnlyList<Finding> Findings) Work(PairsQuestion question, Func<int, string, string> place)
    {
        List<Finding> findings = [];
        if (question.Head.Model is not { } head)
        {
            return (null, [SourceCheck.NotOneHead(question.Head)]);
        }

        if (question.Patches.Count == 0)
        {
            return (null, [Messages.NoSource()]);
        }

        Band whole = question.Design?.Band ?? Band.Conventional.First(band => band.Name == UsualBand);
        IReadOnlyList<Band> bands = question.Design is { } named ? [.. named.Bands.UnionBy(Band.Conventional, band => Slug.Of(band.Name))] : Band.Conventional;
        PairCandidates? candidates = question.Sites is { } words ? PairCandidates.OfWords(words, findings)
            : question.Design is { } recorded ? PairCandidates.OfDesign(recorded, findings) : null;
        candidates ??= findings.Count == 0 ? PairCandidates.OfTenTwenty() : null;
        IReadOnlyList<Site> average = candidates?.Sites ?? [];
        SourceQuestion?[] sources = [.. question.Patches.Select((patch, at) =>
            SourceCheck.Read(patch, head, bands, whole, average, key => place(at, key), findings))];
        if (candidates is null || findings.Exists(finding => finding.Severity == Severity.Error))
        {
            return (null, findings);
        }

        try
        {
            BandNoise noise = new(question, [.. sources.Select(source => new Band(source!.BandName, source.Low, source.High))]);
            SourceTable[] tables = [.. sources.Select((source, at) => Table(question, head, candidates, noise, source!, at))];
            Warn(tables, noise, place, findings);
            return (new PairsAnswer(question, head, tables, findings), findings);
        }
        catch (NetworkHasNoAnswer problem)
        {
            return (null, [.. findings, Messages.Fails(problem.Message)]);
        }
    }

    /// <summary>The band where neither a design nor an option names one.</summary>
    private const string UsualBand = "alpha";

    private static SourceTable Table(PairsQuestion question, HeadModel head, PairCandidates candidates, BandNoise noise,
        SourceQuestion source, int at)
    {
        bool ranked = question.Best is not null || candidates.AreTried;
        IReadOnlyList<NoisyChannel> channels = [.. (ranked ? candidates.Pairs : candidates.Channels)
            .Select(pair => new NoisyChannel(pair.Derivation, noise.Of(pair, source.Low, source.High)))];
        int tried = channels.Count;
        BackgroundField background = new(head, question.Background, channels.Select(one => one.Derivation));
        if (ranked)
        {
            channels = [.. SourceView.Best(head, source, background, channels).Take(question.Best ?? UsualBest)];
        }

        SourceView view = new(head, source, background, channels);
        return new SourceTable(question.Patches[at], view, [.. view.Channels.Select(seen => new SourceRow(seen, view.HalfRegion(seen.Channel.Derivation)))],
            ranked ? tried : null)
        {
            ByDistance = view.ByDistance(),
        };
    }

    private static void Warn(SourceTable[] tables, BandNoise noise, Func<int, string, string> place, List<Finding> findings)
    {
        for (int at = 0; at < tables.Length; at++)
        {
            SourceCheck.Warn(tables[at].View, key => place(at, key), findings);
            SourceQuestion source = tables[at].View.Question;
            if (noise.IsFilteredOut(source.Low, source.High))
            {
                findings.Add(Messages.NotRecorded(place(at, SourceCheck.BandKey), $"{QuantityText.FormatPart(source.Low)} to {QuantityText.FormatPart(source.High)}"));
            }
        }
    }
}
