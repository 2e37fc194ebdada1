using FrontEnd.Designs;
using FrontEnd.Head;
using FrontEnd.Reporting;
using FrontEnd.Results;

namespace FrontEnd.Pairs;

/// <summary>What pairs of sites show of sources.</summary>
/// <param name="Head">The head as worked with.</param>
/// <param name="Findings">Warnings.</param>
internal sealed record PairsAnswer(PairsQuestion Question, HeadModel Head, IReadOnlyList<SourceTable> Sources, IReadOnlyList<Finding> Findings)
{
    /// <summary>What must be said beside every figure.</summary>
    public IReadOnlyList<string> Limits => [.. HeadLimits.All, .. Sources.Any(one => one.Rows.Any(row => row.Seen.Channel.Derivation.HasEars)) ? (string[])[HeadLimits.Ears] : []];

    /// <summary>Every figure with its id.</summary>
    public IReadOnlyList<Result> Results
    {
        get
        {
            ResultList list = new();
            HashSet<string> named = [];
            foreach (SourceTable table in Sources.Where(table => named.Add(Slug.Of(table.Patch.Name))))
            {
                SeeResults.AddDensity(list, table.Patch.Name, table.View);
                foreach (SourceRow row in table.Rows)
                {
                    SeeResults.AddTo(list, table.Patch.Name, table.View, row.Seen, row.HalfRegion);
                }
            }

            return list.Results;
        }
    }

    /// <summary>The head in a sentence.</summary>
    public string HeadSentence =>
        $"head {Cm(Question.Head.NasionInion)} from nasion to inion, {Cm(Question.Head.Preauricular)} from ear to ear, {Cm(Question.Head.Circumference)} around: a sphere of {Cm(Head.Sphere.Radius)}; shells `{HeadWords.Of(Question.Head.Shells)}`, "
        + $"the brain conducts {QuantityText.FormatTrimmed(Head.Conductor.Shells.SkullRatio, "1", 3)} times as well as the skull";

    private static string Cm(Length length) => $"{QuantityText.FormatTrimmed(length.Centimetres, "1", 3)} cm";
}

/// <summary>One source and a row for each pair.</summary>
/// <param name="Tried">How many pairs were ranked, best first; null where they stand in their own order.</param>
internal sealed record SourceTable(CortexPatch Patch, SourceView View, IReadOnlyList<SourceRow> Rows, int? Tried)
{
    /// <summary>How k falls where the reference comes near: the active site over a patch, the reference so far from it over the skin; empty for
    /// a wall.</summary>
    public IReadOnlyList<KeptAtDistance> ByDistance { get; init; } = [];

    /// <summary>What the best of the pairs shows of such a source under each site of the scalp.</summary>
    public IReadOnlyList<(Site Site, Share Seen)> Sensitivity =>
        Rows.Count == 0 ? [] : View.Sensitivity([.. Sites.Of(SiteSet.TenTen).Where(site => site.Arc != SiteArc.Ear)]);

    /// <summary>The source in a sentence.</summary>
    public string SourceSentence
    {
        get
        {
            SourceQuestion question = View.Question;
            string what = Patch.WallTowards.Length == 0 ? $"{QuantityText.FormatPart(Patch.Area)} of cortex under {Patch.Under}"
                : $"the wall of a sulcus under {Patch.Under}, positive towards {Patch.WallTowards}, {QuantityText.FormatPart(Patch.Area)}";
            string size = question.Statement is { } stated
                ? $"; {QuantityText.FormatPart(stated.Amplitude)} {(stated.Kind == AmplitudeKind.Rms ? "rms" : "p-p")} in {stated.In.Name}" : "; no amplitude is given, so only shares are shown";
            string band = Patch.Band.Length == 0 && question.BandName == Design.WholeBand ? "" : question.BandName + ", ";
            return $"{what}{size}; {band}{QuantityText.FormatPart(question.Low)} to {QuantityText.FormatPart(question.High)}";
        }
    }

    /// <summary>How dense the dipoles have to be; null where no amplitude is stated.</summary>
    public string? DensitySentence => View.Density is { } density
        ? $"this needs {QuantityText.Format(density, 2)} in the cortex, which has 1 to 2 nA·m/mm² at most (from memory of Murakami and Okada 2015)" : null;
}

/// <summary>One pair and what it shows of a source.</summary>
/// <param name="HalfRegion">Part of the patches' sphere that it sees at least half as well as its best; null for a wall.</param>
internal sealed record SourceRow(SourceInChannel Seen, Area? HalfRegion);
