namespace FrontEnd.Documents.Sheets;

/// <summary>The paper that is printed on.</summary>
/// <param name="Word">What it is called on the command line.</param>
/// <param name="Css">What a style sheet calls it.</param>
/// <param name="Short">Its short side, in points.</param>
/// <param name="Long">Its long side, in points.</param>
internal sealed record Paper(string Word, string Css, double Short, double Long)
{
    /// <summary>ISO 216, 210 mm by 297 mm.</summary>
    public static readonly Paper A4 = new("a4", "A4", 210 / 25.4 * 72, 297 / 25.4 * 72);

    /// <summary>US letter, 8.5 by 11 inches.</summary>
    public static readonly Paper Letter = new("letter", "letter", 8.5 * 72, 11 * 72);

    public static IReadOnlyList<Paper> All { get; } = [A4, Letter];

    /// <summary>The paper of a word, in any case; null for none.</summary>
    public static Paper? Find(string word) => All.FirstOrDefault(paper => string.Equals(paper.Word, word, StringComparison.OrdinalIgnoreCase));
}
