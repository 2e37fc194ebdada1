using FrontEnd.AntiAlias;
using FrontEnd.Circuits;
using FrontEnd.Designs;
using FrontEnd.Digital;
using FrontEnd.Electrodes;
using FrontEnd.Fields;
using FrontEnd.Findings;
using FrontEnd.Quantities;
using FrontEnd.Text;

namespace FrontEnd.Documents.Reading;

/// <summary>Walks a file's tree with the catalogue of fields and builds the design. Whatever it does not use becomes a finding.</summary>
internal sealed class DesignBuilder
{
    private readonly SourceText _source;
    private readonly DocumentFormat _format;
    private readonly CardShelf _shelf;
    private readonly List<Finding> _findings;
    private readonly FieldSets _sets;
    private readonly Dictionary<string, FieldOrigin> _origins = new(StringComparer.Ordinal);
    private readonly Dictionary<string, Span> _places = new(StringComparer.Ordinal);
    private readonly HashSet<string> _unread = new(StringComparer.Ordinal);
    private bool _groundLeftOut;
    private AntiAliasWish? _antiAlias;

    public DesignBuilder(SourceText source, DocumentFormat format, CardShelf shelf, List<Finding> findings)
    {
        (_source, _format, _shelf, _findings) = (source, format, shelf, findings);
        _sets = FieldSets.For(format);
        Design = format == DocumentFormat.Json ? PlainStart() : new Design();
    }

    public Design Design { get; private set; }

    /// <summary>Where each field's value comes from, by concrete key; fields at their default are not in it.</summary>
    public IReadOnlyDictionary<string, FieldOrigin> Origins => _origins;

    /// <summary>Where the value of a key, or the name of a table, stands in the file.</summary>
    public IReadOnlyDictionary<string, Span> Places => _places;

    /// <summary>The word for a part that is not there: <c>ground = "none"</c>.</summary>
    internal const string NoPart = "none";

    private bool IsPlain => _format == DocumentFormat.Json;

    public void Build(TableNode root, bool complete)
    {
        Design design = Design;
        Walk(new Context(_source, null), root, "", _sets.Design, "", ref design, (entry, ref owner) => TopLevel(entry, ref owner));
        if (_groundLeftOut)
        {
            design = design with { Electrodes = design.Electrodes with { Ground = null } };
            string? described = _origins.Keys.FirstOrDefault(key => key.StartsWith("electrodes.ground.", StringComparison.Ordinal));
            if (described is not null)
            {
                Report(ReadingMessages.BothForms("electrodes.ground-electrode", "electrodes.ground-electrode = false", "[electrodes.ground]"), _places["electrodes.ground-electrode"]);
            }
        }

        Design = Realise(Settle(design));
        if (complete)
        {
            Assumptions();
        }

        foreach (Finding finding in DesignCheck.Run(Design, _unread))
        {
            _findings.Add(Place(finding));
        }
    }

    /// <summary>The plain-number form leaves out dc errors, and takes the averaging of a driven ground as infinitely fast.</summary>
    private static Design PlainStart()
    {
        Design design = new();
        return design with
        {
            Electrodes = design.Electrodes with { Offset = default },
            GroundDrive = design.GroundDrive with { AveragingUnlimited = true },
        };
    }

    /// <summary>Stages from the place on where they are realised from [anti-alias], counted from 0; null where all stand in the file.</summary>
    public int? FirstRealised { get; private set; }

    /// <summary>An anti-alias filter given by what it has to do becomes stages behind those in the file.</summary>
    private Design Realise(Design design)
    {
        if (_antiAlias is not { } wish)
        {
            return design;
        }

        if (design.Stages.FirstOrDefault(stage => stage is not (GainStage or TwinTNotch)) is { } section)
        {
            _findings.Add(Place(ReadingMessages.BothForms(DesignFields.AntiAliasKey, $"the stage `{section.Name}`", $"[{DesignFields.AntiAliasKey}]")));
            return design;
        }

        List<Finding> wrong = [.. DesignFields.AntiAlias.Where(field => !_unread.Contains(WishKey(field))).Select(field => FieldText.CheckRange(field, field.Get(wish)) is { } one ? one with { Field = WishKey(field) } : null).OfType<Finding>()];
        bool isRead = wrong.Count == 0 && !_unread.Any(key => key.StartsWith(DesignFields.AntiAliasKey + ".", StringComparison.Ordinal) || key is "band" or "converter.rate")
            && 0 < design.Band.High.Hertz && design.Band.High.Hertz < AntiAliasWish.FoldOf(design).Hertz;
        (IReadOnlyList<Stage> stages, IReadOnlyList<Finding> findings) = isRead ? wish.Realise(design, DesignFields.AntiAliasKey) : ([], wrong);
        _findings.AddRange(findings.Select(Place));
        FirstRealised = design.Stages.Count;
        design = design with { Stages = [.. design.Stages, .. stages] };
        foreach (Field<Design> field in DesignFields.Of(design).Where(field => IsRealised(field.Key)))
        {
            _origins[field.Key] = new FieldOrigin(field.Key, OriginKind.Given, FieldText.Format(field, field.Get(design)), $"realised from [{DesignFields.AntiAliasKey}]");
        }

        return design;
    }

    /// <summary>True for a field of a stage that does not stand in the file.</summary>
    public bool IsRealised(string key) => FirstRealised is { } first && key.StartsWith("stages[", StringComparison.Ordinal)
        && int.TryParse(key.AsSpan(7, Math.Max(0, key.IndexOf(']') - 7)), out int number) && first < number;

    private static string WishKey(FieldDescription field) => $"{DesignFields.AntiAliasKey}.{field.Key}";

    private Design Settle(Design design)
    {
        SettleStep(ref design);
        bool channelsGiven = _origins.ContainsKey("channels");
        if (IsPlain && !channelsGiven && design.Input.ReferenceInputs is { } inputs)
        {
            design = design with { Channels = Math.Max(1, inputs) };
        }

        return design;
    }

    /// <summary>A step size without a word length says the word length, log2(full scale / LSB).</summary>
    private void SettleStep(ref Design design)
    {
        if (design.Converter.Lsb is not { } lsb || _origins.ContainsKey("converter.bits") || lsb.Volts <= 0)
        {
            return;
        }

        double bits = Math.Log2(design.Converter.FullScale.Volts / lsb.Volts);
        double whole = Math.Round(bits);
        bool isWhole = design.Converter.FullScale.Volts / Math.Pow(2, whole) == lsb.Volts;
        if (bits is > 0 and <= 64)
        {
            design = design with { Converter = design.Converter with { Bits = isWhole ? whole : bits, Lsb = isWhole && IsPlain ? null : lsb } };
        }
    }

    private void Assumptions()
    {
        foreach ((string which, Electrode? electrode) in new[] { ("active", Design.Electrodes.Active), ("reference", Design.Electrodes.Reference), ("ground", Design.Electrodes.Ground) })
        {
            string prefix = $"electrodes.{which}";
            if (electrode is not null && !_unread.Contains(prefix) && !Mentioned(prefix + "."))
            {
                string values = $"{QuantityText.FormatExact(electrode.ContactResistance)} in parallel with {QuantityText.FormatExact(electrode.ContactCapacitance)}";
                _findings.Add(Place(ReadingMessages.AssumedElectrode(which, values)));
            }
        }

        if (!Mentioned("supply.highest"))
        {
            _findings.Add(Place(ReadingMessages.AssumedHighest(QuantityText.FormatExact(Design.Supply.Highest))));
        }

        if (!Mentioned("input.series-resistor"))
        {
            _findings.Add(Place(ReadingMessages.NoProtection()));
        }
    }

    private bool Mentioned(string prefix) =>
        _origins.Keys.Any(key => key.StartsWith(prefix, StringComparison.Ordinal)) || _unread.Any(key => key.StartsWith(prefix, StringComparison.Ordinal));

    private Finding Place(Finding finding) => _source.PlacedByKey(finding, _places);

    private static string Parent(string key)
    {
        int dot = key.LastIndexOf('.');
        return dot < 0 ? "" : key[..dot];
    }

    private void Report(Finding finding, Span span) => Report(new Context(_source, null), finding, span);

    private void Report(Context context, Finding finding, Span span) => _findings.Add(context.Source.Placed(finding, span.Start));

    /// <summary>What a walk goes over: the design file, or a card on its behalf.</summary>
    private sealed record Context(SourceText Source, PartCard? Card);

    private delegate bool Special<TOwner>(Entry entry, ref TOwner owner);

    /// <param name="path">The table's path in the field set, without the last dot.</param>
    /// <param name="display">What stands before the path in keys: "stages[1]." or nothing.</param>
    /// <param name="special">Keys that are no fields; true where it took the entry.</param>
    private void Walk<TOwner>(Context context, TableNode table, string path, FieldSet<TOwner> set, string display, ref TOwner owner, Special<TOwner>? special)
    {
        if (set.CardOf(path) is { } card && table.Find("card") is { } named)
        {
            ApplyCard(context, named.Value, path, set, card, display, ref owner);
        }

        foreach (Entry entry in table.Entries)
        {
            string full = path.Length == 0 ? entry.Key : $"{path}.{entry.Key}";
            if (special is not null && special(entry, ref owner))
            {
                continue;
            }

            if (set.Find(full) is { } field)
            {
                if (field.Kind != FieldKind.Card)
                {
                    SetField(context, entry, field, set, display, ref owner);
                }
            }
            else if (set.IsTable(full))
            {
                Inner(context, entry, full, set, display, ref owner);
            }
            else if (!IsExcess(set, path, entry.Key))
            {
                Unknown(context, entry, path, set, display, owner);
            }
        }

        Excess(context, table, path, set, display, ref owner);
    }

    private void Inner<TOwner>(Context context, Entry entry, string full, FieldSet<TOwner> set, string display, ref TOwner owner)
    {
        string key = display + KeyOf(full);
        if (context.Card is null)
        {
            _places.TryAdd(key, entry.KeySpan);
        }

        OptionalPart? part = owner is Design ? DesignFields.OptionalParts.FirstOrDefault(part => string.Equals(part.Key, key, StringComparison.Ordinal)) : null;
        switch (entry.Value)
        {
            case TableNode inner:
                if (part is not null)
                {
                    owner = (TOwner)(object)part.With((Design)(object)owner!, true);
                }

                Walk(context, inner, full, set, display, ref owner, null);
                break;
            case TextNode { Value: NoPart } or FlagNode { Value: false } when part is not null:
                owner = (TOwner)(object)part.With((Design)(object)owner!, false);
                break;
            case TextNode when set.CardOf(full) is { } card:
                if (part is not null)
                {
                    owner = (TOwner)(object)part.With((Design)(object)owner!, true);
                }

                ApplyCard(context, entry.Value, full, set, card, display, ref owner);
                break;
            case NullNode when part is not null:
                owner = (TOwner)(object)part.With((Design)(object)owner!, false);
                break;
            case NullNode:
                break;   // as if not given
            default:
                _unread.Add(key);
                Report(context, ReadingMessages.NoTable(key, ReadingMessages.Noun(entry.Value)), entry.Value.Span);
                break;
        }
    }

    private void SetField<TOwner>(Context context, Entry entry, Field<TOwner> field, FieldSet<TOwner> set, string display, ref TOwner owner)
    {
        string key = display + field.Key;
        if (context.Card is null)
        {
            _places[key] = entry.Value.Span;
        }

        if (entry.Value is NullNode && field.NullWord is null)
        {
            return;   // as if not given
        }

        if (NodeValue.Read(field, key, entry.Value, context.Card is null ? _format : DocumentFormat.Toml, out object? value, out Node place) is { } finding)
        {
            _unread.Add(key);
            Report(context, finding, place.Span);
            return;
        }

        if (owner is Design && string.Equals(key, "electrodes.ground-electrode", StringComparison.Ordinal))
        {
            _groundLeftOut = value is false;   // decided when all of the file is read
        }
        else
        {
            // Ranges in the file stand before the card's, field by field.
            value = value is PartRanges ranges ? ((PartRanges)field.Get(owner)!).With(ranges) : value;
            owner = field.Set(owner, value);
        }

        Remember(context, field, key, value);
        DropRange(context, field, set, display, ref owner);
    }

    /// <summary>A value that the file gives is another part's than the card's: the card's range does not hold for it.</summary>
    private void DropRange<TOwner>(Context context, FieldDescription given, FieldSet<TOwner> set, string display, ref TOwner owner)
    {
        string parent = Parent(given.Key), key = parent.Length == 0 ? "ranges" : parent + ".ranges";
        if (context.Card is null && _origins.TryGetValue(display + key, out FieldOrigin? origin) && origin.Kind == OriginKind.Card
            && set.AsToml.Find(key) is { Kind: FieldKind.Ranges } field && field.Get(owner) is PartRanges ranges)
        {
            owner = field.Set(owner, ranges.Without(given.Key[(parent.Length == 0 ? 0 : parent.Length + 1)..]));
        }
    }

    private void Remember(Context context, FieldDescription field, string key, object? value)
    {
        string text = FieldText.Format(field, value);
        _origins[key] = context.Card is { } card
            ? new FieldOrigin(key, OriginKind.Card, text, card.SourceOf(field.Key))
            : new FieldOrigin(key, OriginKind.Given, text, "design file");
    }

    private void ApplyCard<TOwner>(Context context, Node node, string path, FieldSet<TOwner> set, Field<TOwner> field, string display, ref TOwner owner)
    {
        string key = display + field.Key;
        if (context.Card is null)
        {
            _places[key] = node.Span;
        }

        if (node is NullNode)
        {
            return;
        }

        if (node is not TextNode named)
        {
            _unread.Add(key);
            Report(context, ReadingMessages.Type(key, ReadingMessages.Noun(node), FieldKinds.Noun(FieldKind.Card), FieldKinds.Example(FieldKind.Card)), node.Span);
            return;
        }

        string name = named.Value;
        owner = field.Set(owner, name);
        _origins[key] = new FieldOrigin(key, context.Card is null ? OriginKind.Given : OriginKind.Card, name, context.Card is null ? "design file" : context.Card.SourceOf(field.Key));
        if (name.Length == 0)
        {
            return;
        }

        PartCard? card = _shelf.Find(field.CardClass!.Value, name, key, out Finding? finding, out IReadOnlyList<Finding> inside);
        _findings.AddRange(inside);
        if (finding is not null)
        {
            // Without the card nothing is known about the part: neither complain that nothing is said, nor judge its defaults.
            _unread.Add(Parent(key));
            Report(context, finding, node.Span);
        }

        if (card is not null)
        {
            // Cards are TOML whatever the design file is.
            Walk(new Context(card.Text, card), card.Values, KeyOf(path), set.AsToml, display, ref owner, null);
        }
    }

    private void Unknown<TOwner>(Context context, Entry entry, string path, FieldSet<TOwner> set, string display, TOwner owner)
    {
        IReadOnlyList<string> known = set.Children(path);
        string prefix = display + (path.Length == 0 ? "" : path + ".");
        bool isTable = entry.Value is TableNode or ListNode { Items: [TableNode, ..] };
        if (owner is not FrontEnd.Designs.Design && display.Length > 0 && path.Length == 0 && VariantWith(owner!, entry.Key) is { } mine)
        {
            Report(context, ReadingMessages.OtherKind(prefix + entry.Key, entry.Key, mine.Noun, known), entry.KeySpan);
            return;
        }

        IEnumerable<string> candidates = owner is Design && path.Length == 0 ? known.Concat(DesignFields.Lists.Select(list => list.Key)).Append(DesignFields.AntiAliasKey) : known;
        string? nearest = Nearest.Of(entry.Key, candidates);
        if (nearest is null && owner is Design)
        {
            // A key in the wrong table: the same last word elsewhere.
            string? elsewhere = set.Paths.FirstOrDefault(other => other.EndsWith("." + entry.Key, StringComparison.Ordinal) || string.Equals(other, entry.Key, StringComparison.Ordinal));
            if (elsewhere is not null)
            {
                Finding moved = ReadingMessages.Unknown(prefix + entry.Key, elsewhere, known, isTable);
                Report(context, moved with { Help = $"move it to its table if `{elsewhere}` is meant, or remove it" }, entry.KeySpan);
                return;
            }
        }

        Report(context, ReadingMessages.Unknown(prefix + entry.Key, nearest is null ? null : prefix + nearest, [.. candidates], isTable), entry.KeySpan);
    }

    /// <summary>The element's own variant where another variant of its list knows the key; null where none does.</summary>
    private static Variant? VariantWith(object element, string key)
    {
        foreach (DesignList list in DesignFields.Lists.Where(list => list.HasKinds))
        {
            Variant? mine = list.Variants.FirstOrDefault(variant => variant.Matches(element));
            bool other = list.Variants.Any(variant => variant.Fields.Any(field =>
                string.Equals(field.Key, key, StringComparison.Ordinal) || field.Key.StartsWith(key + ".", StringComparison.Ordinal) || string.Equals(field.JsonKey, key, StringComparison.Ordinal)));
            if (mine is not null && other)
            {
                return mine;
            }
        }

        return null;
    }

    private static string KeyOf(string path) => path.Replace('_', '-');

    // --- excess noise as an rms in a band -------------------------------------------------------------------------

    private static bool IsExcess<TOwner>(FieldSet<TOwner> set, string path, string key) =>
        key.Replace('_', '-') is "excess-rms" or "excess-band" && DensityField(set, path) is not null;

    private static Field<TOwner>? DensityField<TOwner>(FieldSet<TOwner> set, string path)
    {
        string prefix = path.Length == 0 ? "" : path + ".";
        return set.Find(prefix + "excess-density") ?? set.Find(prefix + "excess_density");
    }

    /// <summary>K from a reported rms between two frequencies, with the slope that holds after everything else was read.</summary>
    private void Excess<TOwner>(Context context, TableNode table, string path, FieldSet<TOwner> set, string display, ref TOwner owner)
    {
        Entry? rmsEntry = table.Entries.Find(entry => entry.Key.Replace('_', '-') is "excess-rms");
        Entry? bandEntry = table.Entries.Find(entry => entry.Key.Replace('_', '-') is "excess-band");
        if ((rmsEntry is null && bandEntry is null) || DensityField(set, path) is not { } density)
        {
            return;
        }

        string prefix = display + density.Key[..^"excess-density".Length];
        string key = prefix + "excess-density";
        DocumentFormat format = context.Card is null ? _format : DocumentFormat.Toml;
        FrequencyRange band = ExcessForms.DefaultBand;
        if (bandEntry is not null)
        {
            if (NodeValue.Read(ExcessForms.Band, prefix + "excess-band", bandEntry.Value, format, out object? read, out Node place) is { } wrong)
            {
                _unread.Add(key);
                Report(context, wrong, place.Span);
                return;
            }

            band = (FrequencyRange)read!;
            if (band.High.Hertz <= band.Low.Hertz)
            {
                _unread.Add(key);
                Report(context, Messages.EdgesReversed(prefix + "excess-band", band.Low, band.High), bandEntry.Value.Span);
                return;
            }
        }

        if (rmsEntry is null)
        {
            Report(context, ReadingMessages.BandAlone(prefix + "excess-band", prefix + "excess-rms"), bandEntry!.KeySpan);
            return;
        }

        if ((table.Find("excess-density") ?? table.Find("excess_density") ?? table.Find("excess_psd_1hz")) is not null)
        {
            Report(context, ReadingMessages.BothForms(prefix + "excess-rms", prefix + "excess-density", prefix + "excess-rms"), rmsEntry.KeySpan);
            return;
        }

        if (NodeValue.Read(ExcessForms.Rms, prefix + "excess-rms", rmsEntry.Value, format, out object? rms, out Node where) is { } finding)
        {
            _unread.Add(key);
            Report(context, finding, where.Span);
            return;
        }

        string slopePath = (path.Length == 0 ? "" : path + ".") + "excess-slope";
        double slope = (set.Find(slopePath) ?? set.Find(slopePath.Replace('-', '_')))?.Get(owner) is double given ? given : 2;
        ExcessNoise value = ExcessNoise.FromRms((VoltageRms)rms!, band.Low, band.High, slope);
        if (!density.Range!.Value.Contains(value.VoltsSquaredPerHertz))
        {
            _unread.Add(key);
            Report(context, Messages.OutsideFor(density, key, QuantityText.FormatExact(value)), rmsEntry.Value.Span);
            return;
        }

        owner = density.Set(owner, value);
        if (context.Card is null)
        {
            _places[key] = rmsEntry.Value.Span;
        }

        Remember(context, density, key, value);
        DropRange(context, density, set, display, ref owner);
    }

    // --- lists of elements ----------------------------------------------------------------------------------------

    private bool TopLevel(Entry entry, ref Design design)
    {
        if (IsPlain && string.Equals(entry.Key, "digital_sos", StringComparison.Ordinal))
        {
            PlainSections(entry, ref design);
            return true;
        }

        if (string.Equals(entry.Key.Replace('_', '-'), DesignFields.AntiAliasKey, StringComparison.Ordinal))
        {
            AntiAlias(entry);
            return true;
        }

        DesignList? list = DesignFields.Lists.FirstOrDefault(list => string.Equals(list.Key, entry.Key, StringComparison.Ordinal));
        if (list is null)
        {
            return false;
        }

        _places.TryAdd(list.Key, entry.KeySpan);
        switch (entry.Value)
        {
            case NullNode:
                break;
            case ListNode { Items.Count: > NodeValue.ListLimit }:
                Report(ReadingMessages.Many(list.Key, NodeValue.ListLimit), entry.KeySpan);
                break;
            case ListNode elements:
                design = list.With(design, Elements(list, elements));
                break;
            default:
                Report(ReadingMessages.NoTableList(list.Key, ReadingMessages.Noun(entry.Value)), entry.Value.Span);
                break;
        }

        return true;
    }

    private void AntiAlias(Entry entry)
    {
        _places[DesignFields.AntiAliasKey] = entry.KeySpan;
        switch (entry.Value)
        {
            case NullNode:
                break;
            case TableNode table:
                AntiAliasWish wish = new();
                Walk(new Context(_source, null), table, "", _sets.AntiAlias, DesignFields.AntiAliasKey + ".", ref wish, null);
                _antiAlias = wish;
                break;
            default:
                _unread.Add(DesignFields.AntiAliasKey);
                Report(ReadingMessages.NoTable(DesignFields.AntiAliasKey, ReadingMessages.Noun(entry.Value)), entry.Value.Span);
                break;
        }
    }

    private List<object> Elements(DesignList list, ListNode nodes)
    {
        List<object> elements = [];
        for (int index = 0; index < nodes.Items.Count; index++)
        {
            string key = $"{list.Key}[{index + 1}]";
            Node node = nodes.Items[index];
            if (node is not TableNode table)
            {
                Report(ReadingMessages.NoTableList(list.Key, $"a list with {ReadingMessages.Noun(node)} in it"), node.Span);
                continue;
            }

            _places[key] = table.Span with { End = table.Span.Start };
            if (VariantOf(list, table, key) is not { } variant)
            {
                _unread.Add(key);
                continue;
            }

            object element = variant.Create();
            Walk(new Context(_source, null), table, "", _sets.Element(variant), key + ".", ref element, (entry, ref _) => Discriminates(list, variant, entry));
            if (!list.HasKinds)
            {
                Edges(table, key);
            }

            elements.Add(element);
        }

        Name(list, elements);
        return elements;
    }

    private static bool Discriminates(DesignList list, Variant variant, Entry entry) =>
        list.HasKinds && (string.Equals(entry.Key, "kind", StringComparison.Ordinal) || (variant.Topology is not null && string.Equals(entry.Key, "topology", StringComparison.Ordinal)));

    private void Edges(TableNode table, string key)
    {
        foreach (string edge in new[] { "low", "high" })
        {
            if (table.Find(edge) is null)
            {
                _unread.Add($"{key}.{edge}");
                Report(ReadingMessages.NoEdge(key, edge), table.Span);
            }
        }
    }

    private static void Name(DesignList list, List<object> elements)
    {
        HashSet<string> taken = new(elements.Select(list.NameOf), StringComparer.Ordinal);
        for (int index = 0; index < elements.Count; index++)
        {
            if (list.NameOf(elements[index]).Length > 0)
            {
                continue;
            }

            string wanted = list.DefaultName(elements, index);
            string name = wanted;
            for (int again = 2; !taken.Add(name); again++)
            {
                name = $"{wanted} {again}";
            }

            elements[index] = list.Renamed(elements[index], name);
        }
    }

    private Variant? VariantOf(DesignList list, TableNode table, string key)
    {
        if (!list.HasKinds)
        {
            return list.Variants[0];
        }

        string[] kinds = [.. list.Variants.Select(variant => variant.Kind).Distinct(StringComparer.Ordinal)];
        if (Word(table, key, "kind", kinds, () => ReadingMessages.NoKind(key, kinds, list.Key)) is not { } kind)
        {
            return null;
        }

        Variant[] candidates = [.. list.Variants.Where(variant => string.Equals(variant.Kind, kind, StringComparison.Ordinal))];
        if (candidates is [{ Topology: null } only])
        {
            return only;
        }

        string[] topologies = [.. candidates.Select(variant => variant.Topology!)];
        return Word(table, key, "topology", topologies, () => ReadingMessages.NoTopology(key, topologies)) is { } topology
            ? Array.Find(candidates, variant => string.Equals(variant.Topology, topology, StringComparison.Ordinal))
            : null;
    }

    private string? Word(TableNode table, string key, string name, string[] words, Func<Finding> missing)
    {
        switch (table.Find(name))
        {
            case null or { Value: NullNode }:
                Report(missing(), table.Span);
                return null;
            case { Value: TextNode text }:
                string? known = Array.Find(words, word => string.Equals(Bare(word), Bare(text.Value), StringComparison.Ordinal));
                if (known is null)
                {
                    Report(ReadingMessages.WrongKind($"{key}.{name}", text.Value, words, Nearest.Of(text.Value, words)), text.Span);
                }

                return known;
            case { Value: var node }:
                Report(ReadingMessages.Type($"{key}.{name}", ReadingMessages.Noun(node), "a word", Messages.Listed(words)), node.Span);
                return null;
        }
    }

    // "lowpass", "low-pass" and "Low pass" are the same word.
    private static string Bare(string word) => word.Replace("-", "", StringComparison.Ordinal).Replace(" ", "", StringComparison.Ordinal).Replace("_", "", StringComparison.Ordinal).ToLowerInvariant();

    /// <summary>The plain-number form's digital filters: all rows in one element named "digital".</summary>
    private void PlainSections(Entry entry, ref Design design)
    {
        if (entry.Value is NullNode or ListNode { Items.Count: 0 })
        {
            return;
        }

        if (design.Digital.Count > 0 || _places.ContainsKey("digital"))
        {
            Report(ReadingMessages.BothForms("digital", "digital", "digital_sos"), entry.KeySpan);
            return;
        }

        _places["digital"] = entry.KeySpan;
        Variant variant = DesignFields.Lists.First(list => string.Equals(list.Key, "digital", StringComparison.Ordinal)).VariantOf(new DigitalSections());
        object element = new DigitalSections { Name = "digital" };
        Field<object> rows = variant.Fields.First(field => field.Kind == FieldKind.SectionRows);
        SetField(new Context(_source, null), entry, rows, _sets.Element(variant), "digital[1].", ref element);
        design = design with { Digital = [(DigitalSections)element] };
    }
}
