using System.Runtime.InteropServices;

namespace FrontEnd.Documents.Reading;

/// <summary>A stretch of the file's text: UTF-16 offsets, end excluded.</summary>
[StructLayout(LayoutKind.Auto)]
internal readonly record struct Span(int Start, int End)
{
    public int Length => End - Start;
}

/// <summary>A value in a design file, whatever the format: what the reader walks over.</summary>
internal abstract record Node(Span Span);

internal sealed record TextNode(Span Span, string Value) : Node(Span);

/// <param name="Written">The number as it stands in the file.</param>
internal sealed record NumberNode(Span Span, double Value, string Written) : Node(Span);

internal sealed record FlagNode(Span Span, bool Value) : Node(Span);

internal sealed record NullNode(Span Span) : Node(Span);

/// <summary>A value that no field takes, such as a date. <paramref name="Noun"/> names it.</summary>
/// <param name="Written">As it stands in the file.</param>
internal sealed record OtherNode(Span Span, string Noun, string Written) : Node(Span)
{
    /// <summary>True for nan, inf and what is too large for a number.</summary>
    public bool IsNoNumber { get; init; }
}

internal sealed record ListNode(Span Span, List<Node> Items) : Node(Span);

/// <summary>Keys and values in the order of the file.</summary>
/// <param name="Form">How the table is written, which decides how a key is added to it.</param>
internal sealed record TableNode(Span Span, TableForm Form) : Node(Span)
{
    public List<Entry> Entries { get; } = [];

    /// <summary>Lines of the table that could not be read, and whose key is known all the same.</summary>
    public List<Slip> Slips { get; } = [];

    /// <summary>True where a header of its own opened the table; a second header of the same name is then an error.</summary>
    public bool Opened { get; set; }

    /// <summary>Where the line after the table's last own key begins; for a table with a header only.</summary>
    public int InsertAt { get; set; } = -1;

    public Entry? Find(string key) => Entries.Find(entry => string.Equals(entry.Key, key, StringComparison.Ordinal));
}

/// <summary>A line that the parser refuses, and whose key is known all the same.</summary>
/// <param name="Key">The key as it is to be written, dots and all, within its table.</param>
/// <param name="Whole">Key and value.</param>
/// <param name="Value">The value alone; of no length where there is none.</param>
/// <param name="NeedsKey">True where key or sign are what is wrong: a value that takes the place of this one needs them written anew.</param>
/// <param name="Problem">What is wrong with it, as it stands among the findings.</param>
internal sealed record Slip(string Key, Span Whole, Span Value, bool NeedsKey, Finding Problem)
{
    /// <summary>The value as it was probably meant, in TOML; null where nobody knows.</summary>
    public string? Meant { get; init; }
}

internal enum TableForm
{
    /// <summary>[table], [[table]] or the top of the file.</summary>
    Header,

    /// <summary>The parent of a header, without a header of its own so far.</summary>
    Implied,

    /// <summary>Made by a dotted key: it cannot be given a header.</summary>
    Dotted,

    /// <summary>{ … } in one value; every table of a JSON file.</summary>
    Inline,
}

internal sealed record Entry(string Key, Span KeySpan, Node Value);
