using System.Text;

namespace FrontEnd.App.Commands;

/// <summary>A half-typed line as a shell reads it: its words, and the one under the cursor.</summary>
/// <param name="Before">The words that are finished, without the program's name.</param>
/// <param name="Word">The word under the cursor as far as it is typed, without its quotation marks; empty where none is begun.</param>
internal sealed record CompletionLine(IReadOnlyList<string> Before, string Word)
{
    /// <param name="typed">The line up to the cursor.</param>
    public static CompletionLine Of(string typed)
    {
        List<string> words = [];
        StringBuilder word = new();
        char quote = '\0';
        bool isBegun = false;
        for (int i = 0; i < typed.Length; i++)
        {
            char letter = typed[i];
            if (quote == '\0' && char.IsWhiteSpace(letter))
            {
                if (isBegun)
                {
                    words.Add(word.ToString());
                    word.Clear();
                    isBegun = false;
                }

                continue;
            }

            isBegun = true;
            if (quote == '\0' ? letter is '"' or '\'' : letter == quote)
            {
                quote = quote == '\0' ? letter : '\0';
            }
            // Before anything else a backslash is a letter: it stands in paths where it quotes nothing.
            else if (letter == '\\' && quote != '\'' && i + 1 < typed.Length && (typed[i + 1] is '"' or '\'' or '\\' || (quote == '\0' && char.IsWhiteSpace(typed[i + 1]))))
            {
                word.Append(typed[++i]);
            }
            else
            {
                word.Append(letter);
            }
        }

        return new CompletionLine([.. words.Skip(1)], word.ToString());
    }
}
