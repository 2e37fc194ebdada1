namespace FrontEnd.Identity;

/// <summary>Which figure of a design this is: a stable dotted word, the same on screens, in the command, in sheets and in tests, such as
/// <c>noise.total</c>. All of them come from <see cref="ResultIds"/>.</summary>
/// <param name="Text">The word as it is printed and as a user writes it.</param>
public readonly record struct ResultId(string Text)
{
    /// <summary>The last word: <c>ring_time</c> of <c>digital.notch.ring_time</c>.</summary>
    public string Figure => Text[(Text.LastIndexOf('.') + 1)..];

    /// <summary>The id without its last word: what the figures of one thing have in common.</summary>
    public ResultId Stem => new(Text[..Math.Max(0, Text.LastIndexOf('.'))]);

    /// <summary>This id, and those that go on where it ends.</summary>
    public ResultPattern AndMore => new(Text + "*");

    /// <summary>The figure of this id that is another one's part, such as a band's ratio.</summary>
    internal ResultId With(string figure) => new($"{Text}.{figure}");

    public override string ToString() => Text;
}

/// <summary>All ids that begin alike: a table of a sheet, the figures of one block.</summary>
/// <param name="Start">Their beginning, with its last dot; "" for all ids.</param>
public readonly record struct ResultFamily(string Start)
{
    /// <summary>True where the id is one of this family.</summary>
    public bool Has(ResultId id) => id.Text.StartsWith(Start, StringComparison.Ordinal);

    /// <summary>What an id of this family has behind the common beginning; the whole id where it is of another.</summary>
    public string Rest(ResultId id) => Has(id) ? id.Text[Start.Length..] : id.Text;

    /// <summary>The beginning as a word: <c>noise.source</c>.</summary>
    public string Name => Start.TrimEnd('.');

    /// <summary>All ids of the family.</summary>
    public ResultPattern Any => new(Start + "*");

    internal ResultId Of(string rest) => new(Start + rest);

    public override string ToString() => Start;
}
