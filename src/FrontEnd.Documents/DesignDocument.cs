using FrontEnd.Catalogue;
using FrontEnd.Circuits;
using FrontEnd.Documents.Files;
using FrontEnd.Documents.Reading;
using FrontEnd.Fields;
using FrontEnd.Unknowns;

namespace FrontEnd.Documents;

/// <summary>A design file as it was read: the design, what is to be said about it, where each value comes from, and its text for writing
/// back. Immutable.</summary>
public sealed class DesignDocument
{
    private readonly SourceText _source;
    private readonly TableNode _root;
    private readonly IReadOnlyDictionary<string, FieldOrigin> _given;
    private readonly IReadOnlyDictionary<string, Span> _places;
    private readonly Func<string, bool> _isRealised;

    private DesignDocument(SourceText source, DocumentFormat format, CardShelf shelf, TableNode root, DesignBuilder? builder,
        IReadOnlyList<Finding> findings)
    {
        (_source, Format, _root, Findings) = (source, format, root, findings);
        (Cards, CardsWanted) = (shelf.Texts, shelf.Wanted);
        Design = builder?.Design ?? new Design();
        PartlyKnown = builder?.PartlyKnown;
        _isRealised = builder is null ? _ => false : builder.IsRealised;
        _given = builder?.Origins ?? new Dictionary<string, FieldOrigin>(StringComparer.Ordinal);
        _places = builder?.Places ?? new Dictionary<string, Span>(StringComparer.Ordinal);
        Unread = builder?.Unread ?? [];
        Undecided = builder is not null ? builder.Undecided : findings is [var first, ..] ? first : null;
        Origins = [.. DesignFields.Of(Design).Select(Origin)];
    }

    /// <summary>The design. Values that could not be read are at their defaults, and a finding says so.</summary>
    public Design Design { get; }

    /// <summary>The design with what is not known of it; null where all is known. Then <see cref="Design"/> stands in the middle of what is
    /// unknown and is no device's.</summary>
    public PartlyKnownDesign? PartlyKnown { get; }

    /// <summary>What a command says that wants every value; null where every value is known.</summary>
    public Finding? NotAllKnown => NotKnown.Count == 0 ? null : Messages.NeedsAll(NotKnown);

    /// <summary>The keys of what is not known: first what could protect or harm, then what the maker can say, then the rest.</summary>
    public IReadOnlyList<string> NotKnown => PartlyKnown is not { } partly ? []
        : [.. partly.Unknowns.OrderBy(one => one.Field.Safety ? 0 : one.KnownBy == FrontEnd.Fields.KnownBy.Maker ? 1 : 2).Select(one => one.Key)];

    /// <summary>Fields whose values stand in the file and could not be read.</summary>
    internal IReadOnlyList<UnreadField> Unread { get; }

    /// <summary>What is wrong with the file beyond <see cref="Unread"/>, such as a key that nobody knows: it may be meant for any field, so that nobody
    /// can say which device the file means. Null for nothing.</summary>
    internal Finding? Undecided { get; }

    /// <summary>Why no figure of this design can be given that rests on nothing made up; null where some can.</summary>
    internal Finding? WithoutFigures => Undecided ?? NotAllKnown;

    /// <summary>True where the file says nothing that is a design's: it is empty, or some other kind of file.</summary>
    public bool IsNoDesign => !_root.Entries.Exists(entry => IsOfDesign(entry.Key, HasErrors));

    /// <summary>Everything wrong or assumed, in the order of the file; findings without a place come last.</summary>
    public IReadOnlyList<Finding> Findings { get; }

    public bool HasErrors => Findings.Any(finding => finding.Severity == Severity.Error);

    /// <summary>Every field of the design with its value in words and where it comes from, in the catalogue's order.</summary>
    public IReadOnlyList<FieldOrigin> Origins { get; }

    /// <summary>The form that the text is written in.</summary>
    public DocumentFormat Format { get; }

    /// <summary>The user's own part cards that the design was read with. A change to the text is read with the same, whatever the files say
    /// meanwhile.</summary>
    public CardTexts Cards { get; }

    /// <summary>Cards that the text names and that are not among <see cref="Cards"/>: they are to be read from the disk first.</summary>
    public IReadOnlyList<string> CardsWanted { get; }

    /// <summary>The file as the user named it; null where the text is in no file.</summary>
    public string? File => _source.File;

    /// <summary>The file's text, with all changes made so far.</summary>
    public string Text => _source.Text;

    /// <summary>The design that a new project starts from, commented line by line.</summary>
    internal static string StarterText =>
        Embedded.Read("designs/starter.toml") ?? throw new InvalidOperationException("The starter design is not in the assembly.");

    /// <summary>The same in either form; the plain-number form has no comments and says every field, as its defaults are others.</summary>
    public static string Starter(DocumentFormat format) => format == DocumentFormat.Toml ? StarterText
        : DesignWriter.ToJson(Parse(StarterText, DocumentFormat.Toml).Design);

    /// <summary>A short file for a headset that somebody else built, with an invented example.</summary>
    internal static string BoughtText =>
        Embedded.Read("designs/bought-headband.toml") ?? throw new InvalidOperationException("The bought design is not in the assembly.");

    /// <summary>The same in either form; the plain-number form has no comments.</summary>
    public static string Bought(DocumentFormat format) => format == DocumentFormat.Toml ? BoughtText
        : DesignWriter.ToJson(Parse(BoughtText, DocumentFormat.Toml).PartlyKnown!);

    /// <summary>Reads a file. Never throws for what is in it or for what is wrong with it.</summary>
    public static DesignDocument Read(string path)
    {
        string? text = TextFiles.Read(path, out Finding? finding);
        return text is null ? Unreadable(path, finding!)
            : Parse(text, FormatOf(path, text), path, CardShelf.OnDisk(Path.GetDirectoryName(Path.GetFullPath(path))), isFile: true);
    }

    /// <summary>What cannot be had.</summary>
    private static DesignDocument Unreadable(string name, Finding why) =>
        new(new SourceText(name, ""), FormatOf(name, ""), new CardShelf(CardTexts.None), new TableNode(default, TableForm.Header), null, [why]);

    /// <summary>Reads a text, and from the disk the part cards that it names by a path.</summary>
    /// <param name="file">The name for findings; null for none.</param>
    /// <param name="folder">Where relative paths of part cards start; null where there is no such place.</param>
    public static DesignDocument ReadText(string text, DocumentFormat format, string? file = null, string? folder = null) =>
        Parse(text, format, file, CardShelf.OnDisk(folder));

    /// <summary>Reads what came in by the standard input: as a file it must say something.</summary>
    internal static DesignDocument ReadInput(Func<Stream> open, string name, string folder) =>
        TextFiles.Read(open, name, out Finding? why) is { } text ? Parse(text, FormatOf("", text), name, CardShelf.OnDisk(folder), isFile: true) : Unreadable(name, why!);

    /// <summary>Reads a text. Touches no file.</summary>
    /// <param name="file">The name for findings; null for none.</param>
    /// <param name="cards">The user's own part cards that it may name; null for none.</param>
    public static DesignDocument Parse(string text, DocumentFormat format, string? file = null, CardTexts? cards = null) =>
        Parse(text, format, file, new CardShelf(cards ?? CardTexts.None));

    /// <param name="isFile">True for a file as it stands on the disk, which must say something; a text may be empty.</param>
    private static DesignDocument Parse(string text, DocumentFormat format, string? file, CardShelf shelf, bool isFile = false)
    {
        SourceText source = new(file, text);
        List<Finding> findings = [];
        TableNode root = format == DocumentFormat.Toml ? TomlTree.Read(source, findings) : JsonTree.Read(source, findings);
        bool complete = findings.TrueForAll(finding => finding.Severity != Severity.Error);
        if (isFile && complete && (root.Entries.Count == 0 ? ReadingMessages.NotADesign(file) : OtherFiles.Of(file, root, WantedFile.Design)) is { } other)
        {
            return new DesignDocument(source, format, shelf, root, null, [other]);
        }

        TableNode designTable = format == DocumentFormat.Json ? PlainDesign(source, root, findings) : root;
        DesignBuilder builder = new(source, format, shelf, findings);
        builder.Build(designTable, complete);

        // What is assumed for what is not there follows from a mistake where there is one: a table that is misspelt holds it.
        if (findings.Exists(finding => finding.Severity == Severity.Error))
        {
            findings.RemoveAll(finding => ReadingMessages.IsAssumption(finding.Code));
        }

        return new DesignDocument(source, format, shelf, designTable, builder,
            [.. findings.OrderBy(finding => finding.Line ?? int.MaxValue)]);
    }

    /// <summary>Values that could not be read, and the file with others in their place: with as many values of each field as may be told apart, one field
    /// at a time, and then all at once.</summary>
    internal PartlyReadDesign AsFarAsRead()
    {
        const int Together = 6;
        Field<Design>?[] fields = [.. Unread.Select(one => DesignFields.Find(Design, one.Key))];
        string[][] literals = [.. fields.Select(field => field is null ? [] : (string[])[.. PartlyReadEvaluator.Values(Design, field).Select(value =>
            Literals.Of(field, value, Format)).Distinct(StringComparer.Ordinal)])];
        if (PartlyReadEvaluator.MostFields < Unread.Count || Array.Exists(literals, one => one.Length == 0))
        {
            return new PartlyReadDesign(Design, Unread, []);
        }

        List<PartlyReadTry> tries = [];
        Add(new int[Unread.Count], 0);
        for (int moved = 0; moved < Unread.Count; moved++)
        {
            for (int value = 1; value < literals[moved].Length; value++)
            {
                int[] places = new int[Unread.Count];
                places[moved] = value;
                Add(places, moved);
            }
        }

        for (int turn = 1; 1 < Unread.Count && turn <= Together; turn++)
        {
            // A step of its own for each field, so that they do not all go up and down together.
            Add([.. literals.Select((values, at) => turn * (at + 1) % values.Length)], 0);
        }

        return new PartlyReadDesign(Design, Unread, tries);

        void Add(int[] places, int moved)
        {
            string text = Text;
            foreach ((Span span, int at) in Unread.Select((one, at) => (_places[one.Key], at)).OrderByDescending(one => one.Item1.Start))
            {
                text = string.Concat(text.AsSpan(0, span.Start), literals[at][places[at]], text.AsSpan(span.End));
            }

            if (WithText(text) is { HasErrors: false, PartlyKnown: null } read)
            {
                tries.Add(new PartlyReadTry(read.Design, places, moved));
            }
        }
    }

    /// <summary>What stands in the file for a field's value, without the quotes of a text; null where the file does not speak of it.</summary>
    internal string? WrittenAt(string key)
    {
        if (!_places.TryGetValue(key, out Span span) || span.Length <= 0 || Text.Length < span.End)
        {
            return null;
        }

        string written = Text[span.Start..span.End];
        return written.Length >= 2 && written[0] is '"' or '\'' && written[^1] == written[0] ? written[1..^1] : written;
    }

    /// <summary>By extension; where that says nothing, by the first character that is no blank.</summary>
    public static DocumentFormat FormatOf(string path, string text) => Path.GetExtension(path).ToUpperInvariant() switch
    {
        ".JSON" => DocumentFormat.Json,
        ".TOML" => DocumentFormat.Toml,
        _ => text.AsSpan().TrimStart() is ['{', ..] ? DocumentFormat.Json : DocumentFormat.Toml,
    };

    /// <summary>The names of the part cards of a class that come with the program.</summary>
    public static IReadOnlyList<string> CardNames(CardClass cardClass) => CardShelf.Names(cardClass);

    /// <summary>The text of a part card that comes with the program; null where there is none of that name.</summary>
    public static string? CardText(CardClass cardClass, string name) => CardShelf.TextOf(cardClass, name);

    /// <summary>The op-amp of a part card; the default op-amp together with findings where the card cannot be used.</summary>
    /// <param name="card">Its name, or the path of a file.</param>
    /// <param name="folder">Where a path starts from.</param>
    public static (OpAmp OpAmp, IReadOnlyList<Finding> Findings) OpAmpCard(string card, string? folder)
    {
        string quoted = card.Replace("\\", "\\\\", StringComparison.Ordinal).Replace("\"", "\\\"", StringComparison.Ordinal);
        DesignDocument document = ReadText($"[[stages]]\nkind = \"gain\"\nopamp.card = \"{quoted}\"\n", DocumentFormat.Toml, null, folder);
        Finding[] wrong = [.. document.Findings.Where(finding => finding.Severity == Severity.Error)
            .Select(finding => finding.File is null ? finding with { Line = null } : finding)];
        return wrong.Length == 0 && document.Design.Stages is [{ FittedOpAmp: { } opAmp }] ? (opAmp, []) : (OpAmp.MicropowerCmos, wrong);
    }

    /// <summary>True where a value that was set is read again; ranges stand beside the card's others.</summary>
    private static bool Arrived(Field<Design> field, object? read, object? set) => (read, set) switch
    {
        (PartRanges ranges, PartRanges given) => given.All.All(range => range == ranges.Of(range.Key)),
        _ => string.Equals(FieldText.Format(field, read), FieldText.Format(field, set), StringComparison.Ordinal),
    };

    /// <summary>The keys whose values stand in the text, those of what follows from them left out.</summary>
    internal IReadOnlyList<string> Stated => [.. Origins.Where(origin => origin.Kind == OriginKind.Given && !_isRealised(origin.Key)).Select(origin => origin.Key)];

    /// <summary>Where a list stands that is written as one value, <c>[{ … }, { … }]</c>, and where its elements do; null for one that is not, and for
    /// one with comments between its elements.</summary>
    internal (Span Whole, IReadOnlyList<Span> Elements)? InOneValue(string list)
    {
        if (_root.Find(list)?.Value is not ListNode { Items.Count: > 0 } node || !node.Items.TrueForAll(item => item is TableNode { Form: TableForm.Inline }))
        {
            return null;
        }

        Span[] elements = [.. node.Items.Select(item => item.Span)];
        int[] from = [node.Span.Start, .. elements.Select(one => one.End)], to = [.. elements.Select(one => one.Start), node.Span.End];
        return from.Zip(to).Any(gap => Text[gap.First..gap.Second].Contains('#', StringComparison.Ordinal)) ? null : (node.Span, elements);
    }

    /// <summary>Where a field's value comes from; null for a key that the design does not have.</summary>
    public FieldOrigin? OriginOf(string key) => DesignFields.Find(Design, key) is { } field ? Origin(field) : null;

    /// <summary>Changes one value in the text and reads it again. Comments, blanks, order and all other values stay to the character; a key
    /// that is not there yet is added to its table.</summary>
    /// <param name="key">Concrete key: <c>input.series-resistor</c>, <c>stages[1].r1</c>, <c>stages.anti-alias-1.r1</c>.</param>
    /// <param name="text">The value as it is typed: <c>68 kΩ</c>, <c>true</c>, <c>0.5 Hz, 40 Hz</c>.</param>
    /// <remarks>Touches no file: a part card of your own that is named so is read when the changed text is.</remarks>
    public EditResult Set(string key, string text)
    {
        if (DesignFields.Find(Design, key) is not { } field)
        {
            return new EditResult(this, ReadingMessages.NoField(key, Nearest.Of(key, DesignFields.Of(Design).Select(one => one.Key))));
        }

        if (_isRealised(field.Key))
        {
            return new EditResult(this,
                ReadingMessages.NotEditable(field.Key, $"it follows from [{DesignFields.AntiAliasKey}]; change that instead"));
        }

        if (!FieldText.TryParse(field, text, out object? value, out Finding? finding))
        {
            return new EditResult(this, finding);
        }

        // A line that could not be read is in nobody's way where it is known which field's it is.
        if (Findings.Any(one => string.Equals(one.Code, ReadingMessages.Syntax, StringComparison.Ordinal) && !Unread.Any(unread => unread.Problem == one)))
        {
            return new EditResult(this, ReadingMessages.NotEditable(field.Key, "its syntax errors must be fixed first"));
        }

        DesignDocument document = this;
        if (DesignFields.Lists.FirstOrDefault(list => field.Key.StartsWith(list.Key + "[", StringComparison.Ordinal)) is { } owner
            && _root.Find(owner.Key) is null && Format == DocumentFormat.Toml)
        {
            // The list is the default one and in no file yet: it is written out before one of its elements is changed.
            string gap = Text.Length == 0 || Text.EndsWith('\n') ? "" : "\n";
            document = WithText(Text + gap + DesignWriter.ListText(owner, Design));
        }

        string literal = Literals.Of(field, value, Format, text);
        string? changed = new DesignEdit(document.Text, Format, document._root).Set(field, literal, value);
        DesignDocument? edited = changed is null ? null : document.WithText(changed);
        if (edited is null || !Arrived(field, field.Get(edited.Design), value))
        {
            return new EditResult(this, ReadingMessages.NotEditable(field.Key, "its layout has no place for the key"));
        }

        return new EditResult(edited, null);
    }

    /// <summary>Writes into the file what another design has different: values one by one, elements of lists table by table, so that comments
    /// stay. Where the file's form leaves no place for a change it is written anew, its comments at the end, and the outcome says so.
    /// A value outside its range is refused, and the document is as it was.</summary>
    public TakenOver TakeOver(Design wanted) => Edits.TakeOver(this, wanted);

    /// <summary>The document with other ends of what is not known; all else stays to the character. What the file's form leaves no place for stays as it
    /// is, and a finding says so.</summary>
    /// <param name="unknowns">Unknown values of <see cref="PartlyKnown"/> with their new ends.</param>
    internal (DesignDocument Document, IReadOnlyList<Finding> Findings) WithEnds(IEnumerable<UnknownField> unknowns)
    {
        DesignDocument document = this;
        List<Finding> findings = [];
        foreach (UnknownField unknown in unknowns)
        {
            string? changed = new DesignEdit(document.Text, Format, document._root).Set(unknown.Field, UnknownValue.Literal(unknown, Format));
            DesignDocument? edited = changed is null ? null : document.WithText(changed);
            bool arrived = edited?.PartlyKnown?.Find(unknown.Key) is { } read && Same(read.Least, unknown.Least) && Same(read.Greatest, unknown.Greatest)
                && edited.PartlyKnown.Unknowns.Count == PartlyKnown?.Unknowns.Count;
            document = arrived ? edited! : document;
            if (!arrived)
            {
                findings.Add(Placed(Messages.NoPlace(unknown.Key)));
            }
        }

        return (document, findings);

        // Written in decimal digits.
        static bool Same(double one, double other) => Math.Abs(one - other) <= 1e-9 * Math.Abs(other);
    }

    /// <summary>Takes a key out of the text, so that its default or its card's value holds again. Its line goes, with the comment on it;
    /// everything else stays.</summary>
    public EditResult Clear(string key)
    {
        if (DesignFields.Find(Design, key) is not { } field)
        {
            return new EditResult(this, ReadingMessages.NoField(key, Nearest.Of(key, DesignFields.Of(Design).Select(one => one.Key))));
        }

        if (OriginOf(field.Key)?.Kind != OriginKind.Given && !Unread.Any(one => string.Equals(one.Key, field.Key, StringComparison.Ordinal)))
        {
            return new EditResult(this, null);   // nothing to take out
        }

        string? changed = new DesignEdit(Text, Format, _root).Remove(field);
        return changed is null ? new EditResult(this,
            ReadingMessages.NotEditable(field.Key, "it is inside a value that also holds other keys"))
            : new EditResult(WithText(changed), null);
    }

    /// <summary>True where the design, or a card of it, names this card.</summary>
    internal bool NamesCard(string name) =>
        DesignFields.Of(Design).Any(field =>
            field.Kind == FieldKind.Card && string.Equals(field.Get(Design) as string, name, StringComparison.Ordinal));

    /// <summary>Another text under the same name, read with the same cards.</summary>
    public DesignDocument WithText(string text) => Parse(text, Format, File, Cards);

    /// <summary>The same text read with other cards.</summary>
    public DesignDocument WithCards(CardTexts cards) => Parse(Text, Format, File, cards);

    /// <summary>A finding of the evaluation with the place in this file that it is about: its key, or the nearest table above it.</summary>
    public Finding Placed(Finding finding) => _source.PlacedByKey(finding, _places);

    /// <summary>The file's findings and those of its evaluation, placed; what both say stands once.</summary>
    public IReadOnlyList<Finding> With(IEnumerable<Finding> evaluation) =>
    [
        .. Findings,
        .. evaluation.Where(one =>
            !Findings.Any(mine => string.Equals(mine.Code, one.Code, StringComparison.Ordinal)
            && string.Equals(mine.Message, one.Message, StringComparison.Ordinal))).Select(Placed),
    ];

    /// <summary>Writes the text so that the file is never half written.</summary>
    /// <returns>What went wrong; null for nothing.</returns>
    public Finding? Save(string path) => TextFiles.WriteAtomically(path, Text);

    /// <summary>An object that holds the design under "design" may hold beside it what an independent program worked out for it, or what
    /// this one did.</summary>
    private static readonly string[] BesideTheDesign = ["command", "version", "design", "expected", "results", "spread", "bench", "findings",
        "channels", "defaults", "defaults_count", "cautions", "design_cautions", "unknowns", "unknowns_count", "draws", "head_limits", "contact_over_time", "order"];

    /// <summary>True for the name of a key or table that is a design's; where the file is wrong its name and the like are not enough, since other files
    /// have them too.</summary>
    private bool IsOfDesign(string key, bool isWrong)
    {
        string name = key.Replace('_', '-');
        return !(isWrong && name is "name" or "purpose" or "caution")
            && (FieldSets.For(Format).Design.Children("").Contains(key, StringComparer.Ordinal)
            || DesignFields.Lists.Any(list => string.Equals(list.Key, name, StringComparison.Ordinal))
            || name is DesignFields.AntiAliasKey or PartlyKnownDesign.BoughtKey or "digital-sos");
    }

    private static TableNode PlainDesign(SourceText source, TableNode root, List<Finding> findings)
    {
        if (root.Find("design") is not { Value: TableNode design })
        {
            return root;
        }

        foreach (Entry entry in root.Entries)
        {
            if (!BesideTheDesign.Contains(entry.Key, StringComparer.Ordinal))
            {
                Finding unknown = ReadingMessages.Unknown(entry.Key, Nearest.Of(entry.Key, ["design", "expected"]), ["design", "expected"],
                    false);
                findings.Add(source.Placed(unknown, entry.KeySpan.Start));
            }
        }

        return design;
    }

    private FieldOrigin Origin(Field<Design> field)
    {
        if (_given.TryGetValue(field.Key, out FieldOrigin? origin))
        {
            return origin;
        }

        bool isCard = field.Kind == FieldKind.Card;
        string text = field.DefaultIsValue || isCard ? FieldText.Format(field, field.Get(Design)) : field.DefaultText;
        return Format == DocumentFormat.Json && field.Key is DesignKeys.Electrodes.Offset or DesignKeys.GroundDrive.AveragingBandwidth
            ? new FieldOrigin(field.Key, OriginKind.Default, FieldText.Format(field, field.Get(Design)),
                "the plain-number form leaves dc errors out and assumes unlimited averaging bandwidth")
            : new FieldOrigin(field.Key, OriginKind.Default, text, field.DefaultSource);
    }
}
