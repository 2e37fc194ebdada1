using FrontEnd.Designs;
using FrontEnd.Identity;

namespace FrontEnd.Simulation;

/// <summary>What is left out of a simulated recording.</summary>
internal sealed record LeftOut
{
    /// <summary>The words for what is no source of noise by itself.</summary>
    public const string HumWord = "hum", ElectrodesWord = "electrodes";

    public bool Hum { get; private init; }

    public bool Folds { get; private init; }

    public bool Rounding { get; private init; }

    public bool ConverterNoise { get; private init; }

    /// <summary>What the power of each source is multiplied by.</summary>
    public IReadOnlyDictionary<SourceId, double> Weights { get; private init; } = new Dictionary<SourceId, double>();

    /// <summary>True where a source of noise is left out: the samples then have less than the budget says.</summary>
    public bool IsQuieter => Weights.Values.Contains(0);

    private string[] Names { get; init; } = [];

    /// <summary>Every word that can be left out of a design.</summary>
    public static IReadOnlyList<string> WordsOf(Design design) =>
    [
        HumWord, ElectrodesWord, .. SourceId.BuiltIn.Select(source => source.Text), .. design.Stages.SelectMany(stage => SourceId.Of(stage.Name)).Select(source => source.Text),
        .. design.Stages.Select(stage => Slug.Of(stage.Name)), .. design.Digital.Select(filter => Slug.Of(filter.Name)), .. design.Patches.Select(patch => Slug.Of(patch.Name)),
    ];

    /// <summary>What a wish leaves out; null where the design has nothing of a name.</summary>
    public static LeftOut? Of(Design design, SampleWish wish, ICollection<Finding> findings)
    {
        IReadOnlyList<string> known = WordsOf(design);
        string[] names = [.. wish.Without.Select(Slug.Of)];
        bool isKnown = true;
        for (int i = 0; i < names.Length; i++)
        {
            if (!known.Contains(names[i], StringComparer.Ordinal))
            {
                findings.Add(SampleMessages.NothingOfThatName(wish.Without[i], Nearest.Of(names[i], known), known.Distinct(StringComparer.Ordinal)));
                isKnown = false;
            }
        }

        if (!isKnown)
        {
            return null;
        }

        var weights = new Dictionary<SourceId, double>(wish.Louder);
        SourceId[] electrodes = [.. SourceId.BuiltIn.Where(source => source.IsElectrode)];
        SourceId[] sources = [.. SourceId.BuiltIn, .. design.Stages.SelectMany(stage => SourceId.Of(stage.Name))];
        foreach (SourceId source in sources.Where(source => names.Contains(source.Text, StringComparer.Ordinal))
            .Concat(names.Contains(ElectrodesWord, StringComparer.Ordinal) ? electrodes : []))
        {
            weights[source] = 0;
        }

        bool Has(SourceId source) => names.Contains(source.Text, StringComparer.Ordinal);
        return new LeftOut
        {
            Hum = names.Contains(HumWord, StringComparer.Ordinal), Folds = Has(SourceId.Folded), Rounding = Has(SourceId.Quantisation),
            ConverterNoise = Has(SourceId.Converter), Weights = weights, Names = names,
        };
    }

    /// <summary>The design without the stages, filters and patches of those names.</summary>
    public Design From(Design design) => Names.Length == 0 ? design : design with
    {
        Stages = Kept(design.Stages, stage => stage.Name), Digital = Kept(design.Digital, filter => filter.Name), Patches = Kept(design.Patches, patch => patch.Name),
    };

    private IReadOnlyList<T> Kept<T>(IReadOnlyList<T> all, Func<T, string> name)
    {
        T[] kept = [.. all.Where(one => !Names.Contains(Slug.Of(name(one)), StringComparer.Ordinal))];
        return kept.Length == all.Count ? all : kept;
    }
}
