using FrontEnd.Documents.Sheets;

namespace FrontEnd.Terminal;

/// <summary>The strip: the blocks of the signal's path, those around the one in hand where not all fit.</summary>
internal static class StripPainter
{
    // In a window of fewer rows than this the strip is one line: names and signs.
    private const int TallEnough = 18;

    /// <summary>Rows that it takes.</summary>
    public static int RowsOf(Model model) => IsFolded(model) ? 1 : 4;

    /// <summary>True in a low window, where the strip is one line.</summary>
    public static bool IsFolded(Model model) => model.Height < TallEnough;

    /// <summary>Draws the strip below the title.</summary>
    /// <param name="top">Its first row.</param>
    public static void Strip(Canvas canvas, Model model, int top)
    {
        IReadOnlyList<Place> blocks = Place.Blocks(model.Design);
        int inHand = Math.Max(0, blocks.ToList().FindIndex(block => block.Id == model.BlockId));
        bool folded = IsFolded(model);
        List<Cell> cells = [.. blocks.Select(block => folded ? FoldedCell(model, block) : CellOf(canvas, model, block, wide: true))];
        if (!folded && canvas.Width < cells.Sum(cell => cell.Width + 1))
        {
            cells = [.. blocks.Select(block => CellOf(canvas, model, block, wide: false))];
        }

        (int first, int last) = Whole(cells, inHand, canvas.Width);
        int left = first > 0 || last < cells.Count - 1 ? HiddenWidth : 0;
        Hidden(canvas, model, 0, top, first, $"< {first}", blocks[Math.Max(0, inHand - 1)].Id);
        Hidden(
            canvas, model, canvas.Width - HiddenWidth, top, cells.Count - 1 - last, $"{cells.Count - 1 - last} >",
            blocks[Math.Min(blocks.Count - 1, inHand + 1)].Id);
        int used = cells[first..(last + 1)].Sum(cell => cell.Width + 1);
        int gap = 1 + Math.Clamp((canvas.Width - (2 * left) - used) / Math.Max(1, last - first + 1), 0, 8);
        int x = left;
        bool here = Whereabouts.PlaceOf(model).IsBlock;
        for (int i = first; i <= last; i++)
        {
            int room = Math.Min(cells[i].Width + gap - 1, canvas.Width - x);
            Block(canvas, cells[i], blocks[i].Id, x, top, room, blocks[i].Id == model.BlockId, here);
            x += cells[i].Width + gap;
        }
    }

    /// <summary>Columns of the count of hidden blocks, at either end.</summary>
    private const int HiddenWidth = 4;

    /// <summary>The blocks that are shown: all, or the one in hand and as many neighbours on both sides as fit whole.</summary>
    private static (int First, int Last) Whole(List<Cell> cells, int inHand, int width)
    {
        if (cells.Sum(cell => cell.Width + 1) <= width + 1)
        {
            return (0, cells.Count - 1);
        }

        int first = inHand, last = inHand, room = width - (2 * HiddenWidth) - cells[inHand].Width - 1;
        for (bool grew = true; grew;)
        {
            grew = false;
            if (last + 1 < cells.Count && cells[last + 1].Width + 1 <= room)
            {
                room -= cells[++last].Width + 1;
                grew = true;
            }

            if (0 < first && cells[first - 1].Width + 1 <= room)
            {
                room -= cells[--first].Width + 1;
                grew = true;
            }
        }

        return (first, last);
    }

    /// <summary>What stands in one cell of the strip.</summary>
    /// <param name="Below">Figure, second figure and verdict; nothing where the strip is folded.</param>
    private sealed record Cell(string Title, IReadOnlyList<string> Below, Ink Ink, int Width);

    private static Cell CellOf(Canvas canvas, Model model, Place block, bool wide)
    {
        (string figure, string second) = Errors.Hide(model.Here.Document, block)
            ? (Errors.Unsure, "") : BlockText.Of(block, model.Design, model.Here.Shown);
        VerdictKind kind = model.Here.Shown is { } shown ? block.Worst(shown) : VerdictKind.NotJudged;
        string sign = Wording.Sign(kind).ToString(), word = Wording.Word(kind);
        bool wrong = Errors.AreIn(model.Here.Document, block);
        string verdict = wrong ? $"{Wording.Sign(VerdictKind.Fail)} error"
            : wide || sign.Length + word.Length + 1 < 10 ? $"{sign} {word}"
            // Where nothing is judged there is nothing to say for which other blocks would have to make room.
            : kind == VerdictKind.NotJudged ? ""
            : sign + word;
        string title = canvas.Fit(block.Title, 12);
        string[] below = [canvas.Fit(figure, 12), canvas.Fit(second, 12), verdict];
        return new Cell(title, below, wrong ? Ink.Fail : ResultText.Ink(kind), below.Append(title).Max(Lettering.Columns));
    }

    /// <summary>A block in one line: its name, and its sign where it is judged.</summary>
    private static Cell FoldedCell(Model model, Place block)
    {
        VerdictKind kind = Errors.AreIn(model.Here.Document, block) ? VerdictKind.Fail
            : model.Here.Shown is { } shown ? block.Worst(shown) : VerdictKind.NotJudged;
        string title = kind == VerdictKind.NotJudged ? block.Title : $"{Wording.Sign(kind)} {block.Title}";
        return new Cell(title, [], ResultText.Ink(kind), Lettering.Columns(title));
    }

    private static void Hidden(Canvas canvas, Model model, int x, int top, int count, string text, string next)
    {
        if (count > 0)
        {
            canvas.Put(x, top, text, Ink.Key);
            canvas.Zone(x, top, HiddenWidth, RowsOf(model), new Message.GoTo(next));
        }
    }

    private static void Block(Canvas canvas, Cell cell, string id, int x, int top, int room, bool chosen, bool here)
    {
        // The name's whole cell, so that the block in hand stands out without colour as well.
        Ink ink = !chosen ? cell.Below.Count == 0 ? cell.Ink : Ink.Strong : here ? Ink.Chosen : Ink.ChosenDim;
        int end = canvas.Put(x, top, cell.Title, ink, room);
        if (chosen)
        {
            canvas.Put(end, top, new string(' ', Math.Max(0, x + Math.Min(room, cell.Width) - end)), ink);
        }

        Ink[] inks = [Ink.Plain, Ink.Dim, cell.Ink];
        for (int i = 0; i < cell.Below.Count; i++)
        {
            canvas.Put(x, top + 1 + i, cell.Below[i], inks[i], room);
        }

        canvas.Zone(x, top, room, 1 + cell.Below.Count, new Message.GoTo(id));
    }
}
