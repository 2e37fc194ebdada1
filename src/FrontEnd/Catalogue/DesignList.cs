using System.Collections.Concurrent;
using FrontEnd.Designs;
using FrontEnd.Digital;
using FrontEnd.Fields;
using FrontEnd.Interference;
using FrontEnd.Topologies;

namespace FrontEnd.Catalogue;

/// <summary>A list in a design whose elements have fields of their own.</summary>
public sealed class DesignList
{
    /// <summary>The key of what has to be seen.</summary>
    public const string SeeKey = "requirements.see";

    /// <summary>In the order of the design file. Set from the static constructor so that the tables it needs are there.</summary>
    public static readonly IReadOnlyList<DesignList> All =
    [
        Make<Stage>("stages", design =>
            design.Stages, (design, value) =>
                design with { Stages = value }, stage => stage.Name, (stage, name) => stage with { Name = name }, StageName,
            TopologyCatalogue.Variants),
        Make<DigitalStage>("digital", design =>
            design.Digital, (design, value) =>
                design with { Digital = value }, filter => filter.Name, (filter, name) => filter with { Name = name }, FilterName,
        [
            Variant.Make("high-pass", null, "a digital high-pass", () =>
                new DigitalHighPass(), PathFields.HighPass, filter => filter is DigitalHighPass),
            Variant.Make("low-pass", null, "a digital low-pass", () =>
                new DigitalLowPass(), PathFields.LowPass, filter => filter is DigitalLowPass),
            Variant.Make("band-pass", null, "a digital band-pass", () =>
                new DigitalBandPass(), PathFields.BandPass, filter => filter is DigitalBandPass),
            Variant.Make("band-stop", null, "a digital band-stop", () =>
                new DigitalBandStop(), PathFields.BandStop, filter => filter is DigitalBandStop),
            Variant.Make("notch", null, "a digital notch", () => new DigitalNotch(), PathFields.Notch, filter => filter is DigitalNotch),
            Variant.Make("sections", null, "second-order sections", () =>
                new DigitalSections(), PathFields.Sections, filter => filter is DigitalSections),
        ]),
        Make<Band>("bands", design =>
            design.Bands, (design, value) =>
                design with { Bands = value }, band => band.Name, (band, name) => band with { Name = name },
                (_, index) => $"band {index + 1}",
        [
            Variant.Make("", null, "a band", () =>
                new Band("", new Design().Band.Low, new Design().Band.High), PathFields.NamedBand, _ => true),
        ]),
        Make<Interferer>("interferers", design =>
            design.Interferers, (design, value) =>
                design with { Interferers = value }, one => one.Name, (one, name) => one with { Name = name },
                (_, index) => $"interferer {index + 1}",
        [
            Variant.Make("", null, "an interferer", () => Interferer.Muscle with { Name = "" }, PathFields.Interferer, _ => true),
        ]),
        Make<CortexPatch>("patches", design =>
            design.Patches, (design, value) =>
                design with { Patches = value }, patch => patch.Name, (patch, name) => patch with { Name = name },
                (_, index) => $"patch {index + 1}",
        [
            Variant.Make("", null, "a source", () => new CortexPatch(), HeadFields.Patch, _ => true),
        ])
        .Beginning(design => new CortexPatch { Under = SiteChannels.Of(design, []) is [var first, ..] ? first.Derivation.Active.Name : UsualSite }),
        Make<SeeRequirement>(DesignList.SeeKey, design =>
            design.Requirements.See, (design, value) =>
                design with { Requirements = design.Requirements with { See = value } }, one => $"{one.Patch} in {one.Channel}", (one, _) => one,
                (_, index) => $"see {index + 1}",
        [
            Variant.Make("", null, "a source to be seen", () => new SeeRequirement(), HeadFields.See, _ => true),
        ])
        .Beginning(design => new SeeRequirement
        {
            Patch = design.Patches is [var patch, ..] ? patch.Name : "", Channel = SiteChannels.Of(design, []) is [var first, ..] ? first.Derivation.Name : "",
        }),
        Make<Channel>(ChannelsKey, design =>
            design.ChannelList, (design, value) =>
                design with { ChannelList = value }, channel => channel.Name, (channel, name) => channel with { Name = name },
                (elements, index) => ((Channel)elements[index]).Site is { Length: > 0 } site ? site : $"channel {index + 1}",
        [
            Variant.Make("", null, "a channel", () => new Channel(), ChannelFields.Channel, _ => true, parts: ChannelFields.Parts),
        ]),
        Make<DerivedChannel>("derived", design =>
            design.Derived, (design, value) =>
                design with { Derived = value }, one => one.Name, (one, name) => one with { Name = name },
                (_, index) => $"derived {index + 1}",
        [
            Variant.Make("", null, "a derived channel", () => new DerivedChannel(), ChannelFields.Derived, _ => true),
        ]),
    ];

    private DesignList(
        string key,
        Func<Design, IReadOnlyList<object>> get,
        Func<Design, IReadOnlyList<object>, Design> set,
        Func<object, string> name,
        Func<object, string, object> rename,
        Func<IReadOnlyList<object>, int, string> defaultName,
        IReadOnlyList<Variant> variants) =>
        (Key, Elements, With, NameOf, Renamed, DefaultName, Variants) = (key, get, set, name, rename, defaultName, variants);

    /// <summary>The key of the named channels, which their bare number has too.</summary>
    public const string ChannelsKey = "channels";

    private readonly ConcurrentDictionary<(Variant Variant, int Index), Field<Design>[]> _fields = [];

    /// <summary>Where a new source lies in a design whose sites are not known: in the middle at the back.</summary>
    private const string UsualSite = "Oz";

    private Func<Design, object>? _begin;

    private DesignList Beginning(Func<Design, object> begin)
    {
        _begin = begin;
        return this;
    }

    /// <summary>"stages".</summary>
    public string Key { get; }

    /// <summary>What an element can be.</summary>
    public IReadOnlyList<Variant> Variants { get; }

    /// <summary>The elements, boxed as their base type's objects.</summary>
    public Func<Design, IReadOnlyList<object>> Elements { get; }

    /// <summary>The design with the list replaced.</summary>
    public Func<Design, IReadOnlyList<object>, Design> With { get; }

    /// <summary>An element's name.</summary>
    public Func<object, string> NameOf { get; }

    /// <summary>The element with another name.</summary>
    public Func<object, string, object> Renamed { get; }

    /// <summary>The name of an element that was given none, from the elements and its place among them (from 0).</summary>
    public Func<IReadOnlyList<object>, int, string> DefaultName { get; }

    /// <summary>An element of a variant as it is put into a design that shows where it begins: with every field at its default, or with what it
    /// must name taken from the design.</summary>
    public object New(Design design, Variant variant) => _begin is { } begin ? begin(design) : variant.Create();

    /// <summary>True where an element says with <c>kind</c> what it is.</summary>
    public bool HasKinds => Variants[0].Kind.Length > 0;

    /// <summary>How many elements the design has.</summary>
    public int Count(Design design) => Elements(design).Count;

    /// <summary>The variant that an element is.</summary>
    public Variant VariantOf(object element) => Variants.First(variant => variant.Matches(element));

    /// <summary>The fields of one element (counted from 0) as fields of the design.</summary>
    public IReadOnlyList<Field<Design>> FieldsAt(Design design, int index)
    {
        object element = Elements(design)[index];
        Variant variant = VariantOf(element);
        Field<Design>[] fields = FieldsAt(variant, index);
        return variant.Parts.Count == 0 ? fields : [.. fields.Where((_, i) => variant.IsPresent(element, variant.Fields[i]))];
    }

    /// <summary>An element's fields depend on what it is and on its place alone, and are made once.</summary>
    private Field<Design>[] FieldsAt(Variant variant, int index) =>
        _fields.GetOrAdd((variant, index), key => [.. key.Variant.Fields.Select(field => At(field, key.Index))]);

    internal Field<Design>? Find(Design design, string rest)
    {
        IReadOnlyList<object> elements = Elements(design);
        if (rest.StartsWith('[') && rest.IndexOf(']') is var close and > 0 && int.TryParse(rest.AsSpan(1, close - 1), out int number)
            && 1 <= number && number <= elements.Count && close + 1 < rest.Length && rest[close + 1] == '.')
        {
            return FieldOf(elements, number - 1, rest[(close + 2)..]);
        }

        if (!rest.StartsWith('.'))
        {
            return null;
        }

        for (int index = 0; index < elements.Count; index++)
        {
            string slug = Slug.Of(NameOf(elements[index]));
            if (slug.Length > 0 && rest.Length > slug.Length + 2 && rest[slug.Length + 1] == '.'
                && string.CompareOrdinal(rest, 1, slug, 0, slug.Length) == 0)
            {
                return FieldOf(elements, index, rest[(slug.Length + 2)..]);
            }
        }

        return null;
    }

    private Field<Design>? FieldOf(IReadOnlyList<object> elements, int index, string key)
    {
        Field<object>? field = VariantOf(elements[index]).Fields.FirstOrDefault(field =>
            string.Equals(field.Key, key, StringComparison.Ordinal));
        return field is null ? null : At(field, index);
    }

    private Field<Design> At(Field<object> field, int index) => field.Redirected<Design>(
        $"{Key}[{index + 1}].{field.Key}",
        $"{Key}[{index + 1}].{field.JsonKey}",
        design => index < Count(design) ? field.Get(Elements(design)[index]) : null,
        (design, value) =>
        {
            object[] elements = [.. Elements(design)];
            elements[index] = field.Set(elements[index], value);
            return With(design, elements);
        });

    private static DesignList Make<TElement>(
        string key,
        Func<Design, IReadOnlyList<TElement>> get,
        Func<Design, IReadOnlyList<TElement>, Design> set,
        Func<TElement, string> name,
        Func<TElement, string, TElement> rename,
        Func<IReadOnlyList<object>, int, string> defaultName,
        IReadOnlyList<Variant> variants)
        where TElement : class =>
        new(
            key,
            get,
            (design, value) => set(design, [.. value.Cast<TElement>()]),
            element => name((TElement)element),
            (element, text) => rename((TElement)element, text),
            defaultName,
            variants);

    /// <summary>The differential amplifier is the first gain, so gain stages count from 2.</summary>
    private static string StageName(IReadOnlyList<object> elements, int index)
    {
        StageRole role = ((Stage)elements[index]).Role;
        int before = elements.Take(index).Count(element => ((Stage)element).Role == role);
        return role switch
        {
            StageRole.Gain => $"gain {before + 2}",
            StageRole.Notch => $"analogue notch {before + 1}",
            _ => $"anti-alias {before + 1}",
        };
    }

    private static string FilterName(IReadOnlyList<object> elements, int index) => elements[index] switch
    {
        DigitalHighPass => "high-pass",
        DigitalLowPass => "low-pass",
        DigitalBandPass => "band-pass",
        DigitalBandStop => "band-stop",
        DigitalNotch notch => $"notch {notch.Centre.Hertz:0.###} Hz",
        DigitalSections => "sections",
        _ => throw new ArgumentOutOfRangeException(nameof(index), elements[index], "Filter is not handled."),
    };
}
