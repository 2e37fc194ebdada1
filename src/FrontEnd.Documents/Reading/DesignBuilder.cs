using FrontEnd.Catalogue;
using FrontEnd.Digital;
using FrontEnd.Electrodes;
using FrontEnd.Fields;
using FrontEnd.Topologies;
using FrontEnd.Unknowns;

namespace FrontEnd.Documents.Reading;

/// <summary>Walks a file's tree with the catalogue of fields and builds the design. Whatever it does not use becomes a finding.</summary>
internal sealed class DesignBuilder
{
    private readonly ReadingLog _log;
    private readonly DocumentFormat _format;
    private readonly FieldSets _sets;
    private readonly TableReader _tables;
    private AntiAliasWish? _antiAlias;
    private BoughtDevice? _bought;

    /// <param name="besides">Tables that the file may have besides a design's, read elsewhere.</param>
    /// <param name="undecided">Keys of which nothing is known yet: what rests on them is not judged.</param>
    public DesignBuilder(SourceText source, DocumentFormat format, CardShelf shelf, List<Finding> findings,
        IReadOnlyList<string>? undecided = null, IReadOnlyList<string>? besides = null)
    {
        _format = format;
        _log = new ReadingLog(source, findings);
        _log.Unread.UnionWith(undecided ?? []);
        _sets = FieldSets.For(format);
        _tables = new TableReader(_log, format, shelf) { List = List, Besides = besides ?? [] };
        Design = format == DocumentFormat.Json ? PlainStart() : new Design();
    }

    public Design Design { get; private set; }

    /// <summary>What of it is not known; null where all is.</summary>
    public PartlyKnownDesign? PartlyKnown { get; private set; }

    /// <summary>Where each field's value comes from, by concrete key; fields at their default are not in it.</summary>
    public IReadOnlyDictionary<string, FieldOrigin> Origins => _log.Origins;

    /// <summary>Where the value of a key, or the name of a table, stands in the file.</summary>
    public IReadOnlyDictionary<string, Span> Places => _log.Places;

    /// <summary>Fields whose values stand in the file and could not be read.</summary>
    public IReadOnlyList<UnreadField> Unread { get; private set; } = [];

    /// <summary>What is wrong with the file beyond those values, so that nobody can say which device it means; null for nothing.</summary>
    public Finding? Undecided { get; private set; }

    private bool IsPlain => _format == DocumentFormat.Json;

    public void Build(TableNode root, bool complete)
    {
        Design design = Design;
        _tables.Walk(PlaceOf(_sets.Design, ""), root, ref design, TopLevel);
        if (_tables.GroundLeftOut)
        {
            design = design with { Electrodes = design.Electrodes with { Ground = null } };
            string? described = _log.Origins.Keys.FirstOrDefault(key => key.StartsWith("electrodes.ground.", StringComparison.Ordinal));
            if (described is not null)
            {
                _log.Report(ReadingMessages.BothForms(DesignKeys.Electrodes.GroundElectrode, "electrodes.ground-electrode = false",
                    "[electrodes.ground]"), _log.Places[DesignKeys.Electrodes.GroundElectrode]);
            }
        }

        Design = Realise(Settle(design));
        PartlyKnown = new UnknownsReader(_log).Read(Design, _bought);
        Design = PartlyKnown?.Median ?? Design;
        if (complete)
        {
            Assumptions();
        }

        NoteUnread();
        foreach (Finding finding in DesignCheck.Run(Design, _log.Unread))
        {
            _log.Report(finding);
        }
    }

    /// <summary>What goes wrong with the value of one field leaves all other fields as they are; whatever else goes wrong while the file is read, such as a
    /// key that nobody knows, may be meant for any of them.</summary>
    private void NoteUnread()
    {
        List<UnreadField> unread = [];
        foreach (Finding problem in _log.Findings.Where(finding => finding.Severity == Severity.Error))
        {
            bool isOfField = _log.Unread.Contains(problem.Field) && _log.Places.ContainsKey(problem.Field)
                && string.Equals(DesignFields.Find(Design, problem.Field)?.Key, problem.Field, StringComparison.Ordinal);
            if (isOfField)
            {
                unread.Add(new UnreadField(problem.Field, problem));
            }
            else
            {
                Undecided ??= problem;
            }
        }

        Unread = unread;
        if (_log.Unread.Except(unread.Select(one => one.Key), StringComparer.Ordinal).Any())
        {
            Undecided ??= _log.Findings.Find(finding => finding.Severity == Severity.Error);
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

    /// <summary>Stages from the place on where they are realised from [anti-alias], counted from 0; null where all stand in the
    /// file.</summary>
    public int? FirstRealised { get; private set; }

    /// <summary>An anti-alias filter given by what it has to do becomes stages behind those in the file.</summary>
    private Design Realise(Design design)
    {
        if (_antiAlias is not { } wish)
        {
            return design;
        }

        if (design.Stages.FirstOrDefault(stage => stage.Role == StageRole.LowPass) is { } section)
        {
            _log.Report(ReadingMessages.BothForms(DesignFields.AntiAliasKey, $"the stage `{section.Name}`",
                $"[{DesignFields.AntiAliasKey}]"));
            return design;
        }

        List<Finding> wrong = [.. DesignFields.AntiAlias.Where(field => !_log.Unread.Contains(WishKey(field)))
            .Select(field => FieldText.CheckRange(field, field.Get(wish)) is { } one
            ? one with { Field = WishKey(field) } : null).OfType<Finding>()];
        bool isRead = wrong.Count == 0
            && !_log.Unread.Any(key => key.StartsWith(DesignFields.AntiAliasKey + ".", StringComparison.Ordinal)
            || key is "band" or DesignKeys.Converter.Rate)
            && 0 < design.Band.High.Hertz && design.Band.High.Hertz < AntiAliasWish.FoldOf(design).Hertz;
        (IReadOnlyList<Stage> stages, IReadOnlyList<Finding> findings) = isRead
            ? wish.Realise(design, DesignFields.AntiAliasKey) : ([], wrong);
        foreach (Finding finding in findings)
        {
            _log.Report(finding);
        }

        FirstRealised = design.Stages.Count;
        design = design with { Stages = [.. design.Stages, .. stages] };
        foreach (Field<Design> field in DesignFields.Of(design).Where(field => IsRealised(field.Key)))
        {
            _log.Origins[field.Key] =
                new FieldOrigin(field.Key, OriginKind.Given, FieldText.Format(field, field.Get(design)),
                $"realised from [{DesignFields.AntiAliasKey}]");
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
        SettleChannels(ref design);
        bool channelsGiven = _log.Origins.ContainsKey("channels");
        if (IsPlain && !channelsGiven && design.Input.ReferenceInputs is { } inputs)
        {
            design = design with { Channels = Math.Max(1, inputs) };
        }

        return design;
    }

    /// <summary>A channel's electrode that is given by values, without a card, is the design's active electrode where nothing is said of it.</summary>
    private void SettleChannels(ref Design design)
    {
        DesignList list = DesignFields.Lists.First(one => string.Equals(one.Key, DesignList.ChannelsKey, StringComparison.Ordinal));
        for (int i = 0; i < design.ChannelList.Count; i++)
        {
            Channel channel = design.ChannelList[i];
            if (channel.Electrode is not null)
            {
                design = Completed(design, list, i, "electrode.", "electrodes.active.");
            }

            if (channel.Minus?.Electrode is not null)
            {
                design = Completed(design, list, i, "minus.electrode.", channel.Electrode is null ? "electrodes.active." : $"channels[{i + 1}].electrode.");
            }
        }
    }

    private Design Completed(Design design, DesignList list, int index, string part, string from)
    {
        string prefix = $"{list.Key}[{index + 1}].{part}";
        if (_log.Origins.ContainsKey(prefix + "card"))
        {
            return design;
        }

        Design completed = design;
        foreach (Field<Design> field in list.FieldsAt(design, index).Where(field =>
            field.Key.StartsWith(prefix, StringComparison.Ordinal) && !_log.Origins.ContainsKey(field.Key)))
        {
            completed = field.Set(completed, DesignFields.Find(design, from + field.Key[prefix.Length..])!.Get(design));
        }

        return completed;
    }

    /// <summary>A step size without a word length says the word length.</summary>
    private void SettleStep(ref Design design)
    {
        if (design.Converter.Lsb is not { } lsb || _log.Origins.ContainsKey(DesignKeys.Converter.Bits) || lsb.Volts <= 0)
        {
            return;
        }

        design = design with { Converter = design.Converter.WithBitsOf(lsb, IsPlain) };
    }

    private void Assumptions()
    {
        foreach ((string which, Electrode? electrode) in new[] { ("active", Design.Electrodes.Active),
            ("reference", Design.Electrodes.Reference), ("ground", Design.Electrodes.Ground) })
        {
            string prefix = $"electrodes.{which}";
            bool isUsed = which != "active" || Design.ChannelList.Count == 0 || Design.ChannelList.Any(channel => channel.Electrode is null);
            if (isUsed && electrode is not null && !_log.Unread.Contains(prefix) && !_log.Mentions(prefix + "."))
            {
                string values = $"{QuantityText.FormatExact(electrode.ContactResistance)} in parallel with {QuantityText.FormatExact(electrode.ContactCapacitance)}";
                _log.Report(ReadingMessages.AssumedElectrode(which, values));
            }
        }

        if (!_log.Mentions(DesignKeys.Supply.Highest))
        {
            _log.Report(ReadingMessages.AssumedHighest(QuantityText.FormatExact(Design.Supply.Highest)));
        }

        Protection();
    }

    /// <summary>Each measuring lead has a resistor of its own: the protection resistor, or the one at the skin in front of a
    /// buffer.</summary>
    private void Protection()
    {
        (string Lead, bool IsBuffered, string Key)[] leads = [.. Design.Leads.Select(lead =>
            (lead.Channel is null || lead.IsMinus ? "reference" : "active", lead.Buffer is not null,
                lead.Buffer is null ? DesignKeys.Input.SeriesResistor : lead.SkinResistorKey)).Distinct()];
        foreach (IGrouping<string, (string Lead, bool IsBuffered, string Key)> one in leads.Where(lead =>
            !_log.Mentions(lead.Key) && !(lead.IsBuffered && _log.Unread.Contains(Table(lead.Key)))).GroupBy(lead => lead.Key, StringComparer.Ordinal))
        {
            _log.Report(ReadingMessages.NoProtection(one.Key, [.. one.Select(lead => lead.Lead)], one.First().IsBuffered));
        }

        static string Table(string key) => key[..key.LastIndexOf('.')];
    }

    /// <summary>A table of the design file.</summary>
    private TablePlace<TOwner> PlaceOf<TOwner>(FieldSet<TOwner> set, string display) => new(_log.Source, null, set, "", display);

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

        if (string.Equals(entry.Key, PartlyKnownDesign.BoughtKey, StringComparison.Ordinal))
        {
            Bought(entry);
            return true;
        }

        return false;
    }

    /// <summary>The design with one of its lists as the file has it.</summary>
    private Design List(DesignList list, Entry entry, Design design)
    {
        _log.Places.TryAdd(list.Key, entry.KeySpan);
        switch (entry.Value)
        {
            case NullNode:
                return design;
            case ListNode { Items.Count: > NodeValue.ListLimit }:
                _log.Report(ReadingMessages.Many(list.Key, NodeValue.ListLimit), entry.KeySpan);
                return design;
            case ListNode elements:
                return list.With(design, new ListReader(_log, _sets, _tables).Elements(list, elements));
            default:
                _log.Report(ReadingMessages.NoTableList(list.Key, ReadingMessages.Noun(entry.Value)), entry.Value.Span);
                return design;
        }
    }

    private void AntiAlias(Entry entry) => _antiAlias = OwnTable(entry, DesignFields.AntiAliasKey, _sets.AntiAlias) ?? _antiAlias;

    private void Bought(Entry entry) => _bought = OwnTable(entry, PartlyKnownDesign.BoughtKey, _sets.Bought) ?? _bought;

    /// <summary>A table that is no part of the design once it is read; null where there is none.</summary>
    private T? OwnTable<T>(Entry entry, string key, FieldSet<T> set)
        where T : class, new()
    {
        _log.Places[key] = entry.KeySpan;
        switch (entry.Value)
        {
            case NullNode:
                return null;
            case TableNode table:
                T read = new();
                _tables.Walk(PlaceOf(set, key + "."), table, ref read);
                return read;
            default:
                _log.Unread.Add(key);
                _log.Report(ReadingMessages.NoTable(key, ReadingMessages.Noun(entry.Value)), entry.Value.Span);
                return null;
        }
    }

    /// <summary>The plain-number form's digital filters: all rows in one element named "digital".</summary>
    private void PlainSections(Entry entry, ref Design design)
    {
        if (entry.Value is NullNode or ListNode { Items.Count: 0 })
        {
            return;
        }

        if (design.Digital.Count > 0 || _log.Places.ContainsKey("digital"))
        {
            _log.Report(ReadingMessages.BothForms("digital", "digital", "digital_sos"), entry.KeySpan);
            return;
        }

        _log.Places["digital"] = entry.KeySpan;
        Variant variant = DesignFields.Lists.First(list => string.Equals(list.Key, "digital", StringComparison.Ordinal))
            .VariantOf(new DigitalSections());
        object element = new DigitalSections { Name = "digital" };
        Field<object> rows = variant.Fields.First(field => field.Kind == FieldKind.SectionRows);
        _tables.SetField(PlaceOf(_sets.Element(variant), "digital[1]."), entry, rows, ref element);
        design = design with { Digital = [(DigitalSections)element] };
    }
}
