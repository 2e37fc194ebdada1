using FrontEnd.Citations;
using FrontEnd.Designs;

namespace FrontEnd.Results;

/// <summary>How a result stands against its requirement. Its sentences are made when they are first read: most of the designs that are tried
/// are only counted.</summary>
public sealed record Verdict
{
    private readonly Func<string> _because;
    private readonly Func<string?>? _dominates;

    /// <param name="kind">The word.</param>
    /// <param name="because">One line with the value, the limit and where the limit comes from.</param>
    public Verdict(VerdictKind kind, string because)
        : this(kind, () => because)
    {
    }

    /// <param name="kind">The word.</param>
    /// <param name="because">Makes the line.</param>
    /// <param name="dominates">Makes <see cref="Dominates"/>; null for nothing.</param>
    internal Verdict(VerdictKind kind, Func<string> because, Func<string?>? dominates = null) =>
        (Kind, _because, _dominates) = (kind, because, dominates);

    /// <summary>The word.</summary>
    public VerdictKind Kind { get; }

    /// <summary>One line with the value, the limit and where the limit comes from.</summary>
    public string Because => field ??= _because();

    /// <summary>No limit is set: says nothing about the result, and is never a pass.</summary>
    public static readonly Verdict NotJudged = new(VerdictKind.NotJudged, "");

    /// <summary>The key in the design that sets the limit, such as <c>requirements.noise</c>; null where nothing is judged.</summary>
    public string? Requirement { get; init; }

    /// <summary>The limit it was held against; null where none is set.</summary>
    public IQuantity? Limit { get; init; }

    /// <summary>Where the limit lies that itself rests on what is not known; then <see cref="Limit"/> is null.</summary>
    public LimitSpan? LimitSpan { get; init; }

    /// <summary>The word that is asked for, where the result is a word; null where the limit is a quantity or none is set.</summary>
    public string? Wanted { get; init; }

    /// <summary>True where the value must not be above the limit, false where it must not be below.</summary>
    public bool LimitIsGreatest { get; init; }

    /// <summary>How far the value is on the right side of the limit, in the result's own unit without a prefix: volts, decibels; negative where the limit is
    /// passed. Null where nothing is judged, where a word is, and where the value has no bound.</summary>
    public double? Margin { get; init; }

    /// <summary>True where the value lies above its limit; at the limit it counts as on the right side.</summary>
    public bool IsAboveLimit => Margin is { } margin && (margin < 0) == LimitIsGreatest;

    /// <summary>Where the limit comes from.</summary>
    public SourceRef? LimitSource { get; init; }

    /// <summary>What contributes most to the figure, in a few words.</summary>
    public string? Dominates => field ??= _dominates?.Invoke();

    /// <summary>Of an open verdict the key of the unknown value that moves the figure most; else null.</summary>
    public string? DecidedBy { get; init; }

    /// <summary>Of an open verdict the single fact or measurement that would close it; else null.</summary>
    public string? ClosesBy { get; init; }

    /// <summary>The same with what a field means in place of its key, for a reader who has no design file.</summary>
    internal string? ClosesInPlainWords { get; init; }

    /// <summary>The same in a few words, without how it is done.</summary>
    internal string? ClosesInShort { get; init; }

    /// <summary>The single change that helps most, with its effect computed; null where none was looked for or none helps.</summary>
    public Improvement? Improvement { get; init; }
}

/// <summary>The five words of a verdict. Marginal counts as met; open, as not judged.</summary>
public enum VerdictKind
{
    /// <summary>No limit is set.</summary>
    NotJudged,

    /// <summary>Within the limit, with room.</summary>
    Pass,

    /// <summary>What is not known decides.</summary>
    Open,

    /// <summary>Within the limit, barely.</summary>
    Marginal,

    /// <summary>Beyond the limit.</summary>
    Fail,
}

/// <summary>A change to the design and what it does to one judged result, found by evaluating the changed design.</summary>
/// <param name="Change">The change in words: "series resistors in the leads 10 kΩ -> 68 kΩ".</param>
/// <param name="Design">The design with the change made.</param>
/// <param name="Before">The judged result's value now.</param>
/// <param name="After">Its value with the change made.</param>
/// <param name="Verdict">Its verdict word with the change made.</param>
/// <param name="SideEffect">Another requirement's verdict that the change makes worse, in words; null for none.</param>
public sealed record Improvement(string Change, Design Design, IQuantity? Before, IQuantity? After, VerdictKind Verdict,
    string? SideEffect)
{
    /// <summary>What stands in place of a value without bound; null where there is a value.</summary>
    public string? AfterInWords { get; init; }
}
