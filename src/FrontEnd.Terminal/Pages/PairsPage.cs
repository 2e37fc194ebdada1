using FrontEnd.Documents.Sheets;
using FrontEnd.Head;
using FrontEnd.Pairs;

namespace FrontEnd.Terminal;

/// <summary>What the design's channels show of its sources, or of a source under a site that is chosen here, and what the reference takes away.</summary>
/// <param name="Under">The site that the source lies under where the design names none.</param>
/// <param name="Best">True for the best of all pairs of the design's sites in the channels' place.</param>
internal sealed record PairsPage(string Under = "O1", bool Best = false) : StudyPage
{
    /// <summary>The way to it.</summary>
    public static readonly Act Way = new(
        '\0', [], "pairs of sites: what they show of a source, what the reference takes", model => OpenStudy(model, new PairsPage())) { Under = 'p' };

    private static readonly string[] Sites = [.. Head.Sites.Of(SiteSet.TenTwenty).Select(site => site.Name)];

    /// <inheritdoc/>
    public override string Title => "pairs of sites";

    /// <inheritdoc/>
    public override string Does => "Works out what each channel shows of a source.";

    /// <inheritdoc/>
    protected override IEnumerable<KeyHint> WishKeys => [new("+-", "source's site"), new("b", "best pairs")];

    /// <inheritdoc/>
    public override StudyOutcome Work(Design design, Action<double> progress, CancellationToken cancellation)
    {
        bool own = 0 < design.Patches.Count;
        (PairsAnswer? answer, IReadOnlyList<Finding> findings) = PairStudy.Work(
            new PairsQuestion
            {
                Design = design, Patches = own ? design.Patches : [new CortexPatch { Name = Under, Under = Under }], Head = design.Head ?? new(),
                Background = design.Background ?? new(), Best = Best ? PairStudy.UsualBest : null,
            },
            (at, key) => own ? $"patches[{at + 1}].{key}" : key);
        return answer is null
            ? Refused(findings.Select(one => one.Code == Messages.NoSitesNamed ? Messages.NoSitesOnScreens(one, $"{Act.ViewSheet.Letter}") : one), "")
            : new StudyOutcome(width => PairsText.Of(answer, width) + Found(findings, width, "\n"), [], 0);
    }

    /// <inheritdoc/>
    protected override string Wish(Model model) =>
        (model.Design.Patches.Count > 0 ? "the design's sources" : $"a source under {Under}") + (Best ? $", the {PairStudy.UsualBest} best pairs" : ", the design's channels");

    /// <inheritdoc/>
    protected override StudyPage? Wished(char letter) => letter switch
    {
        '+' or '=' or '-' => this with { Under = Sites[(Array.IndexOf(Sites, Under) + StepOf(letter) + Sites.Length) % Sites.Length] },
        'b' => this with { Best = !Best },
        _ => null,
    };
}
