using FrontEnd.Catalogue;
using FrontEnd.Designs;
using FrontEnd.Head;
using FrontEnd.Identity;

namespace FrontEnd.Reporting;

/// <summary>What the design's channels show of the sources that it names. A design that names none pays for nothing here.</summary>
internal static class SeeReport
{
    /// <summary>Every figure, and what is to be said of the sources.</summary>
    public static void AddTo(ResultList list, List<Finding> findings, Evaluation evaluation)
    {
        Design design = evaluation.Design;
        if (design.Patches.Count == 0)
        {
            return;
        }

        SharedSources sources = evaluation.Sources is { } shared && shared.Fits(design) ? shared : new(design);
        (HeadModel head, IReadOnlyList<SiteChannel> channels, BackgroundField background) = (sources.Head, sources.Channels, sources.Background);
        if (!sources.IsTold)
        {
            AddHead(list, head, channels);
        }

        for (int i = 0; i < design.Patches.Count; i++)
        {
            CortexPatch patch = design.Patches[i];
            int number = i;
            SourceView view = View(evaluation, head, patch, channels, (question, noisy) => sources.View(number, question, noisy));
            SeeResults.AddDensity(list, patch.Name, view);
            foreach (SourceInChannel seen in view.Channels)
            {
                SeeResults.AddTo(list, patch.Name, view, seen, view.HalfRegion(seen.Channel.Derivation));
                AddRequired(list, design, patch, view, seen);
            }

            Warn(findings, evaluation, view, $"patches[{i + 1}].");
        }

        AddChannels(list, evaluation, background, channels);
    }

    /// <summary>The ratios that are asked for alone: what the adviser tries changes with.</summary>
    public static void AddRequired(ResultList list, Evaluation evaluation)
    {
        Design design = evaluation.Design;
        if (design.Requirements.See.Count == 0)
        {
            return;
        }

        HeadModel head = (design.Head ?? new()).Model!;
        IReadOnlyList<SiteChannel> channels = [.. SiteChannels.Of(design, []).Where(channel => design.Requirements.See.Any(one => SourceCheck.SameWord(one.Channel, channel.Derivation.Name)))];
        BackgroundField background = new(head, design.Background ?? new(), channels.Select(one => one.Derivation));
        foreach (CortexPatch patch in design.Patches)
        {
            SourceView view = View(evaluation, head, patch, channels, (question, noisy) => new(head, question, background, noisy));
            foreach (SourceInChannel seen in view.Channels)
            {
                AddRequired(list, design, patch, view, seen);
            }
        }
    }

    /// <summary>The id of the ratio that a requirement judges.</summary>
    public static ResultId IdOf(Design design, SeeRequirement required)
    {
        CortexPatch patch = design.Patches.First(one => SourceCheck.SameWord(one.Name, required.Patch));
        return ResultIds.See.Of(patch.Name, required.Channel).SignalToNoiseLevel(BandOf(design, patch).Name);
    }

    private static SourceView View(Evaluation evaluation, HeadModel head, CortexPatch patch, IReadOnlyList<SiteChannel> channels,
        Func<SourceQuestion, IReadOnlyList<NoisyChannel>, SourceView> make)
    {
        Design design = evaluation.Design;
        Band band = BandOf(design, patch);
        SourceQuestion question = SourceCheck.Read(patch, head, design.Bands, design.Band,
            [.. channels.Where(one => one.IsRecorded).Select(one => one.Derivation.Active)], key => key, [])!;
        bool isRecorded = band.Low.Hertz < design.Converter.Rate.Hertz / 2;
        DerivedNoise? noise = isRecorded ? DerivedNoise.InBand(evaluation, band.Low.Hertz, band.High.Hertz) : null;
        return make(question,
            [.. channels.Select(one => new NoisyChannel(one.Derivation, noise is null ? null : VoltageRms.FromVolts(noise.Rms(one.Weights))))]);
    }

    private static void AddRequired(ResultList list, Design design, CortexPatch patch, SourceView view, SourceInChannel seen)
    {
        string channel = seen.Channel.Derivation.Name;
        ResultId id = ResultIds.See.Of(patch.Name, channel).SignalToNoiseLevel(view.Question.BandName);
        if (list.Has(id) || !design.Requirements.See.Any(one => SourceCheck.SameWord(one.Patch, patch.Name) && SourceCheck.SameWord(one.Channel, channel)))
        {
            return;
        }

        string name = $"signal over background and front-end noise of {patch.Name} in {channel}";
        if (seen.SignalToNoise is { } ratio)
        {
            // What is not seen at all is a ratio of nothing: as low as a ratio is told.
            const double least = 1e-15;
            list.Number(id, name, "", Decibels.FromVoltageRatio(Math.Max(least, ratio)), Equations.SeenOverNoiseLevel,
                text: seen.FrontEndLimits ? "the front end's noise is the larger part" : "the background is the larger part");
        }
        else
        {
            list.Word(id, name, "not stated", Equations.SeenOverNoiseLevel);
        }
    }

    /// <summary>The sphere, and how far the two sites of a channel are apart.</summary>
    private static void AddHead(ResultList list, HeadModel head, IReadOnlyList<SiteChannel> channels)
    {
        HeadResults.AddSphere(list, head.Sphere);
        foreach (Derivation derivation in channels.Select(one => one.Derivation).Where(one => one.Turned is not null))
        {
            HeadResults.AddDistance(list, SiteDistance.Of(derivation.Active, derivation.Turned!.Active, head.Sphere, head.Rule));
        }
    }

    /// <summary>Background of each channel in the design's band, and how alike each is to the next.</summary>
    private static void AddChannels(ResultList list, Evaluation evaluation, BackgroundField background, IReadOnlyList<SiteChannel> channels)
    {
        Band band = evaluation.Design.Band;
        var noise = DerivedNoise.Of(evaluation);
        VoltageRms site = background.Activity.Rms(band.Low, band.High);
        for (int i = 0; i < channels.Count; i++)
        {
            SiteChannel channel = channels[i];
            ResultId id = ResultIds.See.Background(channel.Derivation.Name);
            if (list.Has(id))
            {
                continue;
            }

            list.Number(id, $"background in {channel.Derivation.Name} in the design's band, rms", "", background.Of(channel.Derivation, band.Low, band.High), Equations.Background,
                text: channel.Derivation.HasEars ? HeadLimits.EarsInShort : null);
            if (0 < i && ResultIds.See.CorrelationOf(channels[i - 1].Derivation.Name, channel.Derivation.Name) is var pair && !list.Has(pair))
            {
                SiteChannel before = channels[i - 1];
                double correlation = background.Correlation(before.Derivation, channel.Derivation, site, noise.Covariance(before.Weights, before.Weights),
                    noise.Covariance(channel.Weights, channel.Weights), noise.Covariance(before.Weights, channel.Weights));
                list.Number(pair, $"correlation of {before.Derivation.Name} and {channel.Derivation.Name}, background and front end", "", PlainNumber.FromNumber(correlation), Equations.SiteCorrelation);
            }
        }
    }

    private static void Warn(List<Finding> findings, Evaluation evaluation, SourceView view, string key)
    {
        SourceQuestion question = view.Question;
        SourceCheck.Warn(view, word => key + word, findings);
        bool isRecorded = question.Low.Hertz < evaluation.Design.Converter.Rate.Hertz / 2;
        if (!isRecorded || evaluation.Noise.SignalInBand(question.Low.Hertz, question.High.Hertz) < Budgets.NoiseBudget.LeastShareOfASignal)
        {
            findings.Add(Messages.NotRecorded(key + SourceCheck.BandKey, $"{QuantityText.FormatPart(question.Low)} to {QuantityText.FormatPart(question.High)}"));
        }
    }

    private static Band BandOf(Design design, CortexPatch patch) =>
        patch.Band.Length == 0 ? design.Band : design.Bands.First(band => SourceCheck.SameWord(band.Name, patch.Band));
}
