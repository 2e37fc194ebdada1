using FrontEnd.Catalogue;
using FrontEnd.Fields;

namespace FrontEnd.Documents.Reading;

/// <summary>The fields of one record by the path that they have in a file of one format.</summary>
internal sealed class FieldSet<TOwner>
{
    private readonly Dictionary<string, Field<TOwner>> _byPath = new(StringComparer.Ordinal);
    private readonly IReadOnlyList<(string Key, Func<TOwner, bool, TOwner> With)> _parts;
    private readonly Dictionary<string, List<string>> _children = new(StringComparer.Ordinal) { [""] = [] };

    /// <param name="parts">Parts that may be absent, and how to put them in or leave them out.</param>
    public FieldSet(IReadOnlyList<Field<TOwner>> fields, DocumentFormat format, IReadOnlyList<(string Key, Func<TOwner, bool, TOwner> With)>? parts = null)
    {
        _parts = parts ?? [];
        AsToml = format == DocumentFormat.Toml ? this : new FieldSet<TOwner>(fields, DocumentFormat.Toml, parts);
        foreach (Field<TOwner> field in fields)
        {
            if (format == DocumentFormat.Toml)
            {
                Add(field.Key, field);
                continue;
            }

            Add(field.JsonKey, field);
            Add(field.Key.Replace('-', '_'), field);
        }
    }

    /// <summary>The same fields as a TOML file names them: part cards are always TOML.</summary>
    public FieldSet<TOwner> AsToml { get; }

    public Field<TOwner>? Find(string path) => _byPath.GetValueOrDefault(path);

    /// <summary>True where the path is that of a table with fields in it.</summary>
    public bool IsTable(string path) => _children.ContainsKey(path);

    /// <summary>The card field of a table's path; null where the table's part has no cards.</summary>
    public Field<TOwner>? CardOf(string path) =>
        Find(path.Length == 0 ? "card" : path + ".card") is { Kind: FieldKind.Card } field ? field : null;

    /// <summary>Puts the part at a path into its owner or leaves it out; null where what stands there is always there.</summary>
    public Func<TOwner, bool, TOwner>? PartOf(string path)
    {
        string key = path.Replace('_', '-');
        foreach ((string part, Func<TOwner, bool, TOwner> with) in _parts)
        {
            if (string.Equals(part, key, StringComparison.Ordinal))
            {
                return with;
            }
        }

        return null;
    }

    /// <summary>The names of the keys and tables in a table.</summary>
    public IReadOnlyList<string> Children(string path) => _children.TryGetValue(path, out List<string>? names) ? names : [];

    public IEnumerable<string> Paths => _byPath.Keys;

    public IEnumerable<string> Tables => _children.Keys;

    private void Add(string path, Field<TOwner> field)
    {
        if (!_byPath.TryAdd(path, field))
        {
            return;   // a JSON key that is the same in both spellings
        }

        string table = path;
        while (table.Length > 0)
        {
            int dot = table.LastIndexOf('.');
            string parent = dot < 0 ? "" : table[..dot];
            if (!_children.TryGetValue(parent, out List<string>? names))
            {
                _children[parent] = names = [];
            }

            string name = table[(dot + 1)..];
            if (!names.Contains(name, StringComparer.Ordinal))
            {
                names.Add(name);
            }

            table = parent;
        }
    }
}

/// <summary>The field sets of a design and its list elements, built once for each format.</summary>
internal sealed class FieldSets
{
    private static readonly Lazy<FieldSets> Toml = new(() => new FieldSets(DocumentFormat.Toml));
    private static readonly Lazy<FieldSets> Json = new(() => new FieldSets(DocumentFormat.Json));
    private readonly Dictionary<Variant, FieldSet<object>> _elements = [];

    private FieldSets(DocumentFormat format)
    {
        Design = new FieldSet<Design>(DesignFields.Fixed, format, [.. DesignFields.OptionalParts.Select(part => (part.Key, part.With))]);
        AntiAlias = new FieldSet<AntiAliasWish>(DesignFields.AntiAlias, format);
        Bought = new FieldSet<BoughtDevice>(PartlyKnownDesign.BoughtTable, format);
        foreach (Variant variant in DesignFields.Lists.SelectMany(list => list.Variants))
        {
            _elements[variant] = new FieldSet<object>(variant.Fields, format, [.. variant.Parts.Select(part => (part.Key, part.With))]);
        }
    }

    public FieldSet<Design> Design { get; }

    public FieldSet<AntiAliasWish> AntiAlias { get; }

    public FieldSet<BoughtDevice> Bought { get; }

    public static FieldSets For(DocumentFormat format) => format == DocumentFormat.Toml ? Toml.Value : Json.Value;

    public FieldSet<object> Element(Variant variant) => _elements[variant];
}
