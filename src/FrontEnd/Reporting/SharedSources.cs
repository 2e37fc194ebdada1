using FrontEnd.Designs;
using FrontEnd.Head;

namespace FrontEnd.Reporting;

/// <summary>Head, channels, background and what they see of each source of one design, for others that differ from it in the front end alone, or
/// in how large a source is. Once its own design is evaluated it is only read, so many evaluations may share it.</summary>
internal sealed class SharedSources
{
    private readonly Design _design;
    private readonly Dictionary<int, SourceView> _views = [];

    public SharedSources(Design design)
    {
        _design = design;
        Head = (design.Head ?? new()).Model!;
        Channels = SiteChannels.Of(design, []);
        Background = new BackgroundField(Head, design.Background ?? new(), Channels.Select(one => one.Derivation));
    }

    public HeadModel Head { get; }

    /// <summary>True once the first design's assessment has said of the head what the others would say again.</summary>
    public bool IsTold { get; private set; }

    public IReadOnlyList<SiteChannel> Channels { get; }

    public BackgroundField Background { get; }

    /// <summary>True where the other's sources lie where these do, in the same head and under the same channels.</summary>
    public bool Fits(Design design) => design.Channels == _design.Channels && ReferenceEquals(design.ChannelList, _design.ChannelList) && ReferenceEquals(design.Derived, _design.Derived) && design.Montage == _design.Montage && design.Head == _design.Head
        && design.Background == _design.Background && design.Band == _design.Band && ReferenceEquals(design.Bands, _design.Bands)
        && design.Patches.Select(Place).SequenceEqual(_design.Patches.Select(Place));

    /// <summary>What the channels see of the source of a number, worked out anew only the first time.</summary>
    public SourceView View(int number, SourceQuestion question, IReadOnlyList<NoisyChannel> channels) =>
        _views.TryGetValue(number, out SourceView? view) ? view.With(question, channels) : _views[number] = new SourceView(Head, question, Background, channels);

    /// <summary>The first design is evaluated: the others only read, and say nothing of the head.</summary>
    public void Told() => IsTold = true;

    private static CortexPatch Place(CortexPatch patch) => patch with { Amplitude = null };
}
