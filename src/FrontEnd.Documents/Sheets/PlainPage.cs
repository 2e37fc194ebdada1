using FrontEnd.Catalogue;
using FrontEnd.Fields;
using FrontEnd.Identity;
using FrontEnd.Teaching;
using FrontEnd.Unknowns;

namespace FrontEnd.Documents.Sheets;

/// <summary>One page for a reader who knows nothing of the trade: where the device sits, the way of a signal through it in six sentences with
/// this design's numbers, what it can show and what not. What is not known stands as the ends that it lies between.</summary>
internal static class PlainPage
{
    private const int Digits = 2;

    /// <summary>Ends that lie further apart say no more than the greater one.</summary>
    private const double Wide = 1000;

    public static IReadOnlyList<Block> Of(Sheet sheet)
    {
        Assessment assessment = sheet.Assessment;
        Design design = assessment.Design;
        IReadOnlyList<SiteChannel> channels = [.. SiteChannels.Of(design, []).Where(channel => channel.IsRecorded)];
        List<Block> blocks = [];
        if (design.Caution.Length > 0)
        {
            blocks.Add(new Block.Warning("Caution: " + design.Caution + "."));
        }

        if (design.Purpose.Length > 0)
        {
            blocks.Add(new Block.Paragraph(design.Purpose));
        }

        List<Block> path = [new Block.Heading("The path of the signal"), new Block.Items(Path(assessment, channels), Numbered: true)];
        blocks.AddRange(SiteDrawing.Of(design, channels) is { } drawing ? [new Block.Pair([new Block.Heading("Where it sits"), drawing], path)] : path);
        blocks.Add(new Block.Heading("What each electrode does"));
        blocks.Add(new Block.Items(Electrodes(design, channels)));
        blocks.Add(new Block.Heading("Hum, and what the box does to it"));
        blocks.Add(new Block.Items(Hum(assessment)));
        blocks.Add(new Block.Heading("What the reference does here"));
        blocks.Add(new Block.Items(Reference(assessment, channels)));
        blocks.Add(new Block.Heading("What it can and cannot show"));
        blocks.Add(Shows(assessment));
        blocks.Add(new Block.Items(Limits(assessment)));
        blocks.Add(new Block.Heading("Cautions"));
        blocks.Add(new Block.Items(Cautions.All, Small: true));
        IReadOnlyList<Term> terms = Glossary.UsedIn(SheetBody.Texts(blocks).Concat(blocks.OfType<Block.Items>().Where(items => !items.Small).SelectMany(items => items.Texts)).Concat(path.OfType<Block.Items>().SelectMany(items => items.Texts)));
        blocks.Add(new Block.Heading("Words on this page"));
        blocks.Add(new Block.Items([.. terms.Select(term => $"{Glossary.Head(term)}: {term.Meaning}")], Small: true, AsWritten: true));
        return blocks;
    }

    /// <summary>Six sentences.</summary>
    private static IReadOnlyList<string> Path(Assessment assessment, IReadOnlyList<SiteChannel> channels)
    {
        Design design = assessment.Design;
        string band = PartlyKnownText.Range(design.Band.Low, design.Band.High);
        string stated = design.Patches.FirstOrDefault(patch => patch.Amplitude is not null) is { } patch
            ? $"; this file states {patch.Name} to be {Patch(assessment, 1 + design.Patches.ToList().IndexOf(patch))} in {patch.EffectiveStatedIn}, which is an assumption, not a finding" : "";
        return
        [
            $"Skin: rhythms of the brain reach the skin of the head as voltages of a few millionths of a volt (µV){stated}.",
            $"Electrodes: {(design.Channels == 1 ? "one active site" : $"{design.Channels} active sites")}{At(channels)}; the contact of each with the skin resists current like {Said(assessment, DesignKeys.Electrodes.ActiveContactResistance)}, and adds noise of its own.",
            $"Amplifier: it subtracts the voltage of the reference from that of each site and makes the difference {Figure(assessment, ResultIds.Gain.Mid)} times as large.",
            $"Filter: it weakens what is too fast for the sampling; at {Figure(assessment, ResultIds.Alias.FoldFrequency)}, which would otherwise show up in the band, by {Figure(assessment, ResultIds.Alias.FoldAttenuation)}.",
            $"Sampling: each channel is measured at a rate of {Said(assessment, DesignKeys.Converter.Rate)}, in steps of {Figure(assessment, ResultIds.Converter.Lsb)} at the electrodes.",
            $"Recording: in the band of {band} it carries noise of {Figure(assessment, ResultIds.Noise.Total)} and hum of {Figure(assessment, ResultIds.Mains.Recorded)} in addition to the signal.",
        ];
    }

    private static IEnumerable<string> ElectrodeLines(Design design, IReadOnlyList<SiteChannel> channels)
    {
        yield return $"Active site{At(channels)}: its voltage is the one that is recorded.";
        yield return $"Reference ({design.ReferenceName}): all sites are measured against it; what it picks up appears in every channel, with the opposite sign.";
        yield return design.Electrodes.Ground is null
            ? "There is no ground electrode: resistors in the box hold the body near the amplifier's middle."
            : "Ground: it holds the body near the box's own zero, and is not recorded; without it hum grows and the channels stick at the ends of their range.";
    }

    private static IReadOnlyList<string> Electrodes(Design design, IReadOnlyList<SiteChannel> channels) => [.. ElectrodeLines(design, channels)];

    private static IReadOnlyList<string> Hum(Assessment assessment)
    {
        Design design = assessment.Design;
        Result largest = Sight.Hum(assessment)[0];
        string driven = assessment.PartlyKnown?.Find(DesignKeys.GroundDrive.Kind) is not null ? "It is not known whether the ground is driven, which would reduce the hum."
            : design.GroundIsDriven ? "The ground is driven: it feeds the body the inverse of the hum, so that less is left."
            : "The ground is passive: it connects the body to the box, and nothing more.";
        return
        [
            $"Hum is what the mains ({QuantityText.FormatPart(design.Mains.Frequency)}) brings in through the air: {Figure(assessment, ResultIds.Mains.Total)} at the electrodes. The largest part: {largest.Name}, {Figure(assessment, largest.Id)}.",
            $"From the box to earth there is {Said(assessment, DesignKeys.Mains.AmplifierToEarth)}; a battery-powered box that touches nothing has little; a cable to anything plugged in has far more, brings hum, and must never be connected while the device is worn.",
            driven,
            "It turns into signal where two electrodes contact the skin unequally: equal, clean contacts and leads kept together help more than anything else.",
        ];
    }

    private static List<string> Reference(Assessment assessment, IReadOnlyList<SiteChannel> channels)
    {
        List<string> lines = ["A channel is a difference: what the active site and the reference see alike is gone, whether it is hum or brain."];
        foreach ((Result ratio, _) in Sight.Sources(assessment))
        {
            if (assessment.Find(new SeeIds(ratio.Id.Stem.Stem).ReferenceTakes) is { State: ResultState.Number } taken)
            {
                lines.Add($"{PartlyKnownText.Source(ratio.Name)}: {taken.Text ?? "the reference takes part of it"} ({Figure(assessment, taken.Id)} of what the site sees).");
            }
        }

        if (lines.Count == 1)
        {
            lines.Add(channels.Count == 0 ? "The sites are not named, so nothing can be said about what the reference takes."
                : "No source is named; `frontend pairs` shows what the reference takes of a rhythm under a site.");
        }

        return lines;
    }

    private static Block.Table Shows(Assessment assessment) => new(
        [new("", true), new("what", true), new("noise, rms"), new("over noise")],
        [
            .. Sight.Bands(assessment).Select(one => new Row([Yes(one.Kind), $"{PartlyKnownText.Smallest(assessment, one.Band)} in {one.Band.Name}, {PartlyKnownText.Range(one.Band.Low, one.Band.High)}",
                Figure(assessment, one.Noise.Id), Figure(assessment, one.Ratio.Id)])),
            .. Sight.Sources(assessment).Select(one => new Row([Yes(one.Kind), PartlyKnownText.Source(one.Ratio.Name), "", $"{Figure(assessment, one.Ratio.Id)} times"])),
        ]);

    private static IReadOnlyList<string> Limits(Assessment assessment) =>
    [
        $"Signs: {PartlyKnownText.Signs}. Open: decided by something that is not known.",
        .. Open(assessment).Select(result => $"Open: {result.Name}: {result.Verdict.ClosesInPlainWords ?? result.Verdict.ClosesBy}."),
        "Muscle, eyes and movement make artefacts that are larger than any rhythm; nothing here can tell them from the brain.",
        "It shows voltages on the skin. It does not read thoughts or find illness, and no amplitude here is called normal.",
    ];

    /// <summary>Of what is open, what a wearer asks about first: whether it may be worn, and hum.</summary>
    private static IEnumerable<Result> Open(Assessment assessment)
    {
        Result[] open = [.. assessment.Judged.Where(result => result.Verdict.Kind == VerdictKind.Open)];
        return open.Where(result => ResultIds.Safety.All.Has(result.Id)).Take(1).Concat(open.Where(result => ResultIds.Mains.All.Has(result.Id)));
    }

    private static string Yes(VerdictKind kind) => $"{Wording.Sign(kind)} " + kind switch
    {
        VerdictKind.Pass => "can be seen",
        VerdictKind.Fail => "cannot",
        VerdictKind.Open => "open",
        _ => Wording.Word(kind),
    };

    private static string At(IReadOnlyList<SiteChannel> channels) =>
        channels.Count == 0 ? "" : $" ({string.Join(", ", channels.Select(channel => channel.Derivation.Active.Name))})";

    /// <summary>A figure with two digits, or the ends that it lies between.</summary>
    private static string Figure(Assessment assessment, ResultId id) => assessment.Find(id) switch
    {
        null => "-",
        { State: ResultState.Number, Value: { } value } => QuantityText.Format(value, Digits).Replace(" ×", "", StringComparison.Ordinal),
        { Interval: { } span } result when 0 <= span.Least && Wide * span.Least < span.Greatest && double.IsFinite(span.Greatest) =>
            $"up to {QuantityText.Format(span.Greatest, result.Unit, Digits)}",
        { } result => Wording.Value(result),
    };

    /// <summary>The stated amplitude of a source.</summary>
    private static string Patch(Assessment assessment, int number) => Said(assessment, DesignKeys.AmplitudeOf(number));

    /// <summary>What the file says of a field, or the ends that an unknown one lies between.</summary>
    private static string Said(Assessment assessment, string key)
    {
        if (assessment.PartlyKnown?.Find(key) is { IsChoice: false } unknown)
        {
            return $"{End(unknown, unknown.Least)} to {End(unknown, unknown.Greatest)}";
        }

        return DesignFields.Find(assessment.Design, key) is { } field ? FieldText.Format(field, field.Get(assessment.Design)) : "";

        static string End(UnknownField unknown, double si) => unknown.Field.Quantity is { } kind ? QuantityText.Format(kind.FromSi(si), Digits) : QuantityText.FormatNumber(si, Digits);
    }
}
