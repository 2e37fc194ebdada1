using System.Text;

namespace FrontEnd.Documents.Sheets;

/// <summary>The sheet as Markdown with pipe tables, for a repository or a notebook. The plots are in the HTML sheet only.</summary>
internal static class MarkdownSheet
{
    public static string Of(Sheet sheet)
    {
        StringBuilder text = new();
        text.Append("# ").Append(Escape(sheet.Design.Name)).Append("\n\n");
        foreach (SheetPage page in SheetBody.Pages(sheet))
        {
            if (page.Stamp is { } stamp)
            {
                text.Append("> **").Append(Escape(stamp.ToUpperInvariant())).Append("**\n\n");
            }

            foreach (Block block in page.Blocks)
            {
                Write(text, block);
            }
        }

        return text.ToString();
    }

    private static void Write(StringBuilder text, Block block)
    {
        switch (block)
        {
            case Block.Heading heading:
                text.Append("## ").Append(Escape(heading.Text)).Append("\n\n");
                break;
            case Block.Paragraph paragraph:
                text.Append(Escape(paragraph.Text)).Append("\n\n");
                break;
            case Block.Warning warning:
                text.Append("> **").Append(Escape(warning.Text)).Append("**\n\n");
                break;
            case Block.Items items:
                for (int at = 0; at < items.Texts.Count; at++)
                {
                    text.Append(items.Numbered ? $"{at + 1}. " : "- ").Append(Escape(items.Texts[at])).Append('\n');
                }

                text.Append('\n');
                break;
            case Block.Table table:
                Write(text, table);
                break;
            case Block.Verdicts verdicts:
                Write(text, new Block.Table(
                    [new("verdict", true), new("what is judged", true), new("value"), new("limit"), new("margin"), new("most of it", true)],
                    [.. verdicts.Results.Select(result => new Row(
                        [$"{Wording.Sign(result.Verdict.Kind)} {Wording.Word(result.Verdict.Kind)}", $"{result.Name} ({result.Id})",
                            Wording.Value(result), Wording.Limit(result.Verdict), Wording.Margin(result),
                            result.Verdict.Dominates ?? ""]))]));
                break;
            case Block.Pair pair:
                foreach (Block one in pair.Left.Concat(pair.Right))
                {
                    Write(text, one);
                }

                break;
            case Block.Drawing { Instead: { } table } drawing:
                if (drawing.Title.Length > 0)
                {
                    Write(text, new Block.Paragraph(drawing.Title));
                }

                Write(text, table);
                break;
            case Block.Drawing or Block.Drawings:
                break;
            default:
                throw new ArgumentOutOfRangeException(nameof(block), block, "Block is not handled.");
        }
    }

    private static void Write(StringBuilder text, Block.Table table)
    {
        text.Append('|').AppendJoin('|', table.Columns.Select(column => $" {Escape(column.Head)} ")).Append("|\n|").AppendJoin('|',
            table.Columns.Select(column => column.IsText ? " --- " : " ---: ")).Append("|\n");
        foreach (Row row in table.Rows)
        {
            if (row.IsHeading)
            {
                text.Append("| **").Append(Escape(row.Cells[0])).Append("** ").Append('|', table.Columns.Count).Append('\n');
                continue;
            }

            // Of a cell with several lines each stands in a row of its own.
            string[][] lines = [.. row.Cells.Select(cell => cell.Split('\n'))];
            for (int line = 0; line < lines.Max(cell => cell.Length); line++)
            {
                text.Append('|').AppendJoin('|', lines.Select((cell, at) => table.Columns[at].IsBox ? " ........ "
                    : cell.Length <= line || cell[line].Length == 0 ? "  "
                    : row.IsSum ? $" **{Escape(cell[line])}** " : $" {Escape(cell[line])} ")).Append("|\n");
            }
        }

        text.Append('\n');
    }

    /// <summary>Every letter that Markdown or the HTML in it would act on.</summary>
    private static string Escape(string text)
    {
        StringBuilder safe = new(text.Length);
        foreach (char letter in text)
        {
            _ = letter switch
            {
                '\n' or '\r' or '\t' => safe.Append(' '),
                '\\' or '`' or '*' or '_' or '[' or ']' or '<' or '>' or '|' or '#' or '&' or '~' => safe.Append('\\').Append(letter),
                _ => safe.Append(letter),
            };
        }

        // At the start of a line these begin a list.
        return safe.Length > 0 && (safe[0] is '+' or '-') ? safe.Insert(0, '\\').ToString() : safe.ToString();
    }
}
