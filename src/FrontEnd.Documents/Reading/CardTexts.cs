using System.Collections.Immutable;
using FrontEnd.Documents.Files;

namespace FrontEnd.Documents.Reading;

/// <summary>The user's own part cards as they stood when they were read: their texts by the name that a design gives them. Immutable, so
/// that one design and its figures belong to one state of the cards.</summary>
public sealed class CardTexts
{
    private readonly ImmutableSortedDictionary<string, CardText> _texts;

    private CardTexts(string? folder, ImmutableSortedDictionary<string, CardText> texts) => (Folder, _texts) = (folder, texts);

    /// <summary>No cards, and no place where a path could start from.</summary>
    public static CardTexts None { get; } = new(null, ImmutableSortedDictionary.Create<string, CardText>(StringComparer.Ordinal));

    /// <summary>Where a card's path starts from; null where there is no such place.</summary>
    public string? Folder { get; }

    /// <summary>The names of the cards that are held, in order.</summary>
    public IEnumerable<string> Names => _texts.Keys;

    /// <summary>No cards yet, with a place where their paths start from.</summary>
    public static CardTexts In(string? folder) => new(folder, None._texts);

    /// <summary>What is held of a card; null for one that was never read.</summary>
    public CardText? Of(string name) => _texts.GetValueOrDefault(name);

    /// <summary>The same with one card more, or with another text for it.</summary>
    public CardTexts With(string name, CardText text) => new(Folder, _texts.SetItem(name, text));

    /// <summary>The same with the cards of another set that are not held here.</summary>
    public CardTexts And(CardTexts others) => new(Folder, _texts.AddRange(others._texts.Where(pair => !_texts.ContainsKey(pair.Key))));

    /// <summary>The cards of these names as they stand on the disk now. Reads files: not for code that must be pure.</summary>
    public CardTexts Read(IEnumerable<string> names) => names.Aggregate(this, (texts, name) => texts.With(name, Read(Folder, name)));

    /// <summary>The names of cards whose texts another set holds otherwise; cards that only one of them holds do not count.</summary>
    public IReadOnlyList<string> DifferingFrom(CardTexts other) =>
        [.. _texts.Where(pair => other.Of(pair.Key) is { } there && there != pair.Value).Select(pair => pair.Key)];

    /// <summary>One card as it stands on the disk.</summary>
    internal static CardText Read(string? folder, string name)
    {
        if (folder is null)
        {
            return new CardText(null, null);
        }

        string path = Path.Combine(folder, name);
        if (TextFiles.Read(path, out Finding? unread) is { } text)
        {
            return new CardText(text, null);
        }

        // By the name that the design gives it: the folder is one that nobody typed.
        string why = unread!.Note is { } note ? $"{unread.Message}: {note}" : unread.Message;
        return new CardText(null, why.Replace(path, name, StringComparison.Ordinal));
    }
}

/// <summary>A part card as it was read.</summary>
/// <param name="Text">The file's text; null where it could not be read.</param>
/// <param name="Unread">Why it could not be read; null where it was.</param>
public sealed record CardText(string? Text, string? Unread);
