using FrontEnd.Documents.Reading;
using FrontEnd.Fields;
using FrontEnd.Text;

namespace FrontEnd.Documents;

/// <summary>A design file as it was read: the design, what is to be said about it, where each value comes from, and its text for writing back. Immutable.</summary>
public sealed class DesignDocument
{
    private readonly SourceText _source;
    private readonly TableNode _root;
    private readonly string? _folder;
    private readonly IReadOnlyDictionary<string, FieldOrigin> _given;

    private DesignDocument(SourceText source, DocumentFormat format, string? folder, TableNode root, Design design, IReadOnlyList<Finding> findings, IReadOnlyDictionary<string, FieldOrigin> given)
    {
        (_source, Format, _folder, _root, Design, Findings, _given) = (source, format, folder, root, design, findings, given);
        Origins = [.. DesignFields.Of(design).Select(Origin)];
    }

    /// <summary>The design. Values that could not be read are at their defaults, and a finding says so.</summary>
    public Design Design { get; }

    /// <summary>Everything wrong or assumed, in the order of the file; findings without a place come last.</summary>
    public IReadOnlyList<Finding> Findings { get; }

    public bool HasErrors => Findings.Any(finding => finding.Severity == Severity.Error);

    /// <summary>Every field of the design with its value in words and where it comes from, in the catalogue's order.</summary>
    public IReadOnlyList<FieldOrigin> Origins { get; }

    public DocumentFormat Format { get; }

    /// <summary>The file as the user named it; null where the text is in no file.</summary>
    public string? File => _source.File;

    /// <summary>The file's text, with all changes made so far.</summary>
    public string Text => _source.Text;

    /// <summary>The design that a new project starts from, commented line by line.</summary>
    public static string StarterText => Embedded.Read("designs/starter.toml") ?? throw new InvalidOperationException("The starter design is not in the assembly.");

    /// <summary>Reads a file. Never throws for what is in it or for what is wrong with it.</summary>
    public static DesignDocument Read(string path)
    {
        string? text = TextFiles.Read(path, out Finding? finding);
        if (text is null)
        {
            SourceText nothing = new(path, "");
            return new DesignDocument(nothing, FormatOf(path, ""), null, new TableNode(default, TableForm.Header), new Design(), [finding!], new Dictionary<string, FieldOrigin>(StringComparer.Ordinal));
        }

        return Parse(text, FormatOf(path, text), path, Path.GetDirectoryName(Path.GetFullPath(path)));
    }

    /// <summary>Reads a text.</summary>
    /// <param name="file">The name for findings; null for none.</param>
    /// <param name="folder">Where relative paths of part cards start; null where there is no such place.</param>
    public static DesignDocument Parse(string text, DocumentFormat format, string? file = null, string? folder = null)
    {
        SourceText source = new(file, text);
        List<Finding> findings = [];
        TableNode root = format == DocumentFormat.Toml ? TomlTree.Read(source, findings) : JsonTree.Read(source, findings);
        bool complete = findings.TrueForAll(finding => finding.Severity != Severity.Error);
        TableNode designTable = format == DocumentFormat.Json ? PlainDesign(source, root, findings) : root;
        DesignBuilder builder = new(source, format, new CardShelf(folder), findings);
        builder.Build(designTable, complete);
        return new DesignDocument(source, format, folder, designTable, builder.Design, [.. findings.OrderBy(finding => finding.Line ?? int.MaxValue)], builder.Origins);
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

    /// <summary>Where a field's value comes from; null for a key that the design does not have.</summary>
    public FieldOrigin? OriginOf(string key) => DesignFields.Find(Design, key) is { } field ? Origin(field) : null;

    /// <summary>Changes one value in the text and reads it again. Comments, blanks, order and all other values stay to the character; a key that is not there yet is added to its table.</summary>
    /// <param name="key">Concrete key: <c>input.series-resistor</c>, <c>stages[1].r1</c>, <c>stages.anti-alias-1.r1</c>.</param>
    /// <param name="text">The value as it is typed: <c>68 kΩ</c>, <c>true</c>, <c>0.5 Hz, 40 Hz</c>.</param>
    public EditResult Set(string key, string text)
    {
        if (DesignFields.Find(Design, key) is not { } field)
        {
            return new EditResult(this, ReadingMessages.NoField(key, Nearest.Of(key, DesignFields.Of(Design).Select(one => one.Key))));
        }

        if (!FieldText.TryParse(field, text, out object? value, out Finding? finding))
        {
            return new EditResult(this, finding);
        }

        if (Findings.Any(one => string.Equals(one.Code, ReadingMessages.Syntax, StringComparison.Ordinal)))
        {
            return new EditResult(this, ReadingMessages.NotEditable(field.Key, "its syntax must be mended first"));
        }

        DesignDocument document = this;
        if (DesignFields.Lists.FirstOrDefault(list => field.Key.StartsWith(list.Key + "[", StringComparison.Ordinal)) is { } owner && _root.Find(owner.Key) is null && Format == DocumentFormat.Toml)
        {
            // The list is the default one and in no file yet: it is written out before one of its elements is changed.
            string gap = Text.Length == 0 || Text.EndsWith('\n') ? "" : "\n";
            document = WithText(Text + gap + DesignWriter.ListText(owner, Design));
        }

        string literal = Literals.Of(field, value, Format, text);
        string? changed = new DesignEdit(document.Text, Format, document._root).Set(field, literal);
        DesignDocument? edited = changed is null ? null : document.WithText(changed);
        if (edited is null || !string.Equals(FieldText.Format(field, field.Get(edited.Design)), FieldText.Format(field, value), StringComparison.Ordinal))
        {
            return new EditResult(this, ReadingMessages.NotEditable(field.Key, "its form leaves no place for the key"));
        }

        return new EditResult(edited, null);
    }

    /// <summary>Takes one key out of the text, so that its card's or its default value holds again; the same document where the key is not in it.</summary>
    /// <param name="key">Concrete key: <c>input.series-resistor</c>, <c>stages[1].r1</c>.</param>
    public EditResult Clear(string key)
    {
        if (DesignFields.Find(Design, key) is not { } field)
        {
            return new EditResult(this, ReadingMessages.NoField(key, Nearest.Of(key, DesignFields.Of(Design).Select(one => one.Key))));
        }

        string? changed = new DesignErase(Text, Format, _root).Clear(Format == DocumentFormat.Toml ? field.Key : field.JsonKey);
        if (string.Equals(changed, Text, StringComparison.Ordinal))
        {
            return new EditResult(this, null);
        }

        DesignDocument? edited = changed is null ? null : WithText(changed);
        bool broken = edited is null || edited.Findings.Count(finding => finding.Severity == Severity.Error) > Findings.Count(finding => finding.Severity == Severity.Error);
        return broken ? new EditResult(this, ReadingMessages.NotEditable(field.Key, "its form does not let the key be taken out by itself")) : new EditResult(edited!, null);
    }

    /// <summary>Another text under the same name and folder.</summary>
    public DesignDocument WithText(string text) => Parse(text, Format, File, _folder);

    /// <summary>Writes the text so that the file is never half written.</summary>
    /// <returns>What went wrong; null for nothing.</returns>
    public Finding? Save(string path) => TextFiles.WriteAtomically(path, Text);

    // An object that holds the design under "design" may hold beside it what an independent program worked out for it.
    private static TableNode PlainDesign(SourceText source, TableNode root, List<Finding> findings)
    {
        if (root.Find("design") is not { Value: TableNode design })
        {
            return root;
        }

        foreach (Entry entry in root.Entries)
        {
            if (entry.Key is not ("design" or "expected"))
            {
                findings.Add(source.Placed(ReadingMessages.Unknown(entry.Key, Nearest.Of(entry.Key, ["design", "expected"]), ["design", "expected"], false), entry.KeySpan.Start));
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
        return new FieldOrigin(field.Key, OriginKind.Default, text, field.DefaultSource);
    }
}
