using FrontEnd.Documents.Files;
using FrontEnd.Documents.Reading;
using FrontEnd.Fields;

namespace FrontEnd.Documents.Cards;

/// <summary>A part card as it is shown: what it is, what it has and where each value comes from.</summary>
/// <param name="Name">The name by which a design names it; a file's path for one of the user's own.</param>
/// <param name="Title">What the part is.</param>
/// <param name="Source">Where its values come from, if nothing else is said beside one.</param>
/// <param name="Chip">The chip that holds the part together with others; "" for a part of its own.</param>
/// <param name="Values">What the card has, in the order of the key table.</param>
/// <param name="Defaults">What it does not have: the default that holds then, and where it comes from.</param>
internal sealed record ShownCard(CardClass Class, string Name, string Title, string Source, string Chip, IReadOnlyList<CardValue> Values,
    IReadOnlyList<CardValue> Defaults)
{
    /// <summary>Digits of a value as text; all of them stand beside it.</summary>
    private const int Digits = 6;

    /// <summary>The figures that decide a choice, in a line.</summary>
    public string Figures => CardFigures.Of(Class, Name);

    /// <summary>Cards that come with the program: of a class, by name.</summary>
    public static IReadOnlyList<ShownCard> Of(CardClass cardClass) => [.. CardShelf.Names(cardClass).Select(name => Of(cardClass, name, null, []))];

    /// <summary>Every card that comes with the program.</summary>
    public static IReadOnlyList<ShownCard> All => [.. CardPlace.Classes.SelectMany(Of)];

    /// <summary>The class of a word, its plural too; null for none.</summary>
    public static CardClass? ClassOf(string word)
    {
        string plain = Plain(word);
        foreach (CardClass cardClass in CardPlace.Classes)
        {
            if (Plain(CardPlace.Word(cardClass)) is var known && (plain == known || plain == known + "s"))
            {
                return cardClass;
            }
        }

        return null;

        static string Plain(string text) => string.Concat(text.Where(char.IsAsciiLetter)).ToLowerInvariant();
    }

    /// <summary>Cards of this name, of whichever class, or the user's own card of this path; none with what is wrong with it.</summary>
    public static (IReadOnlyList<ShownCard> Cards, IReadOnlyList<Finding> Findings) Find(string name)
    {
        if (name.EndsWith(".toml", StringComparison.OrdinalIgnoreCase))
        {
            List<Finding> findings = [];
            return OwnClass(name, findings) is { } own && Of(own, name, name, findings) is var card && !findings.Exists(one => one.Severity == Severity.Error)
                ? ([card], findings) : ([], findings);
        }

        ShownCard[] cards = [.. from cardClass in CardPlace.Classes
                                where CardShelf.Names(cardClass).Contains(name, StringComparer.OrdinalIgnoreCase)
                                select Of(cardClass, name.ToLowerInvariant(), null, [])];
        string[] words = [.. CardPlace.Classes.Select(CardPlace.Word), .. CardPlace.Classes.SelectMany(CardShelf.Names)];
        return cards.Length != 0 ? (cards, []) : ([], [CardMessages.NoCard(name, Nearest.Of(name, words))]);
    }

    private static CardClass? OwnClass(string path, List<Finding> findings)
    {
        if (TextFiles.Read(path, out Finding? unread) is not { } text)
        {
            findings.Add(unread!);
            return null;
        }

        string? word = (TomlTree.Read(new SourceText(path, text), findings).Find("class")?.Value as TextNode)?.Value;
        CardClass? found = word is null ? null : CardPlace.Classes.Cast<CardClass?>().FirstOrDefault(one => string.Equals(CardPlace.Word(one!.Value), word, StringComparison.OrdinalIgnoreCase));
        if (found is null && findings.Count == 0)
        {
            findings.Add(CardMessages.NoClass(path, word));
        }

        return found;
    }

    private static ShownCard Of(CardClass cardClass, string name, string? path, List<Finding> findings)
    {
        string card = path is null ? name : Path.GetFileName(path);
        CardTexts texts = path is null ? CardTexts.None : CardTexts.In(Path.GetDirectoryName(Path.GetFullPath(path))).Read([card]);
        DesignDocument document = DesignDocument.Parse(CardPlace.DesignWith(cardClass, card), DocumentFormat.Toml, null, texts);
        findings.AddRange(document.Findings.Where(finding => finding.File is not null || finding.Severity == Severity.Error));
        PartCard? read = new CardShelf(texts).Find(cardClass, card, "", out _, out _);
        ILookup<bool, CardValue> values = CardPlace.Fields(cardClass).Where(field => field.Kind is not FieldKind.Ranges || document.OriginOf(field.Key)!.Kind == OriginKind.Card)
            .Select(field => (Origin: document.OriginOf(field.Key)!, Value: Shown(field)))
            .ToLookup(pair => pair.Origin.Kind != OriginKind.Default, pair => pair.Value);
        return new ShownCard(cardClass, name, read?.Title ?? name, read?.Source ?? "", read?.Chip ?? "", [.. values[true]], [.. values[false]]);

        CardValue Shown(Field<Design> field)
        {
            FieldOrigin origin = document.OriginOf(field.Key)!;
            double? number = origin.Kind == OriginKind.Default && !field.DefaultIsValue ? null : field.SiValue(document.Design);
            string text = number is null ? origin.Text : FieldText.FormatTrimmed(field, field.Get(document.Design), Digits);
            return new CardValue(CardPlace.KeyOn(cardClass, field), text, number, origin.Source);
        }
    }
}

/// <summary>A value of a card.</summary>
/// <param name="Key">The key that the card uses.</param>
/// <param name="Text">The value as text.</param>
/// <param name="Number">The same in SI units; null for what is no number.</param>
/// <param name="Source">Where it comes from.</param>
internal sealed record CardValue(string Key, string Text, double? Number, string Source);
