using FrontEnd.Compare;

namespace FrontEnd.Documents.Sheets;

/// <summary>What changes when a design is built of parts that can be bought, as sentences.</summary>
internal static class AsBuiltText
{
    /// <summary>So many figures are named; the rest is counted.</summary>
    private const int Named = 8;

    private const string Command = "frontend size --as-built DESIGN -o FILE";

    /// <summary>As plain text, with what the design says of itself.</summary>
    /// <param name="adopts">What adopts the values, for whoever reads it: a command or a key.</param>
    public static string Page(AsBuilt built, int width = TextPage.Width, string adopts = Command)
    {
        TextPage page = new(width);
        page.OwnCautions(built.Built.Design);
        foreach (string sentence in Of(built, adopts))
        {
            page.Paragraph(sentence);
        }

        page.Cautions();
        return page.ToString();
    }

    /// <summary>One sentence for the values, one for the figures; what takes the values over.</summary>
    /// <param name="adopts">The command or the key that does.</param>
    public static IReadOnlyList<string> Of(AsBuilt built, string adopts = Command)
    {
        if (built.Values.Count == 0)
        {
            return ["Every value of the design can be bought as it is."];
        }

        string moved = built.Moved.Count == 0
            ? "No figure moves by more than 1 %."
            : $"Figures that move by more than 1 %: {string.Join("; ", built.Moved.Take(Named).Select(Change))}"
                + (built.Moved.Count <= Named ? "." : $"; and {built.Moved.Count - Named} more.");
        return
        [
            $"The board is built of values that can be bought: {string.Join("; ", built.Values.Select(one => $"{one.Key} {one.From} becomes {one.To}"))}.",
            moved,
            $"The design stays as it is until these values are adopted: {adopts}.",
        ];
    }

    private static string Change(FigureChange change) =>
        $"{change.Before!.Name} from {Wording.Value(change.Before)} to {Wording.Value(change.After!)}";
}
