using FrontEnd.Documents.Sheets;
using FrontEnd.Documents.Sizing;
using FrontEnd.Sizing;

namespace FrontEnd.Terminal;

/// <summary>Complete designs that meet what is asked.</summary>
/// <param name="KeepAmplifier">True where the design's own amplifier is taken.</param>
/// <param name="KeepConverter">True where the design's own converter is taken.</param>
internal sealed record SizingPage(bool KeepAmplifier = false, bool KeepConverter = false) : StudyPage
{
    /// <summary>The way to it.</summary>
    public static readonly Act Way = new(
        '\0', [], "size the rest: designs that meet the requirements", model => OpenStudy(model, new SizingPage())) { Under = 'z' };

    /// <inheritdoc/>
    public override string Title => "size the rest";

    /// <inheritdoc/>
    public override string Does =>
        "Keeps what only you can know: electrodes, band, signals, mains, supply, channels, digital filters and all requirements. "
        + "Searches amplifier, gains, anti-alias filter, converter, rate, ground and protection for complete designs that meet it all. Safety limits are not part of the search.";

    /// <inheritdoc/>
    public override bool WaitsForStart => true;

    /// <inheritdoc/>
    protected override IEnumerable<KeyHint> WishKeys => Outcome is null or { Choices.Count: 0 }
        ? [new("a", "amplifier"), new("c", "converter")]
        : [];

    /// <inheritdoc/>
    public override StudyOutcome Work(Design design, Action<double> progress, CancellationToken cancellation)
    {
        PartShelf shelf = SizingFile.Shelf;
        SizingRequest request = new(design, shelf with
        {
            Amplifiers = KeepAmplifier ? [design.Amplifier] : shelf.Amplifiers,
            Converters = KeepConverter ? [design.Converter] : shelf.Converters,
            MayChangeReference = !KeepConverter,
        });
        SizingOutcome outcome = Sizer.Size(request, new Told<double>(progress), cancellation);
        return outcome.Findings.Count > 0 ? Refused(outcome.Findings, "") : new StudyOutcome(
            width => SizeText.Of(request, outcome, width),
            [
                .. outcome.Front.Select((one, at) =>
                    new StudyChoice($"design {at + 1}: {one.Summary}", one.Design, $"{one.Summary}; tightest limit: {one.LimitedBy}")),
            ],
            0);
    }

    /// <inheritdoc/>
    protected override string Wish(Model model) =>
        $"amplifier {Kept(KeepAmplifier, model.Design.Amplifier.Card)}, converter {Kept(KeepConverter, model.Design.Converter.Card)}";

    /// <inheritdoc/>
    protected override StudyPage? Wished(char letter) => letter switch
    {
        'a' => this with { KeepAmplifier = !KeepAmplifier },
        'c' => this with { KeepConverter = !KeepConverter },
        _ => null,
    };

    private static string Kept(bool kept, string card) => !kept ? "free" : "kept: " + (card.Length == 0 ? "this design's" : card);
}
