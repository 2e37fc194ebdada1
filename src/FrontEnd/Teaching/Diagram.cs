using FrontEnd.Identity;
using FrontEnd.Results;

namespace FrontEnd.Teaching;

/// <summary>A picture that shows why a result is what it is.</summary>
/// <param name="Id">Stable word, such as lead-network.</param>
/// <param name="For">Patterns of the results it belongs to, as in <see cref="Explanation.Pattern"/>.</param>
/// <param name="Art">
/// The picture on a grid of letters, the one description of it. Lines are box-drawing letters; <c>&gt; &lt; ^ v</c> at the end of one are
/// arrowheads;
/// <c>[R]</c> is a part with its name, <c>(~)</c> a source or an adder, ┤├ or ─┴─ above ─┬─ a capacitor, ┷ common, ╧ earth; all else is
/// text.
/// <c>{name}</c> is a value of the design.
/// </param>
/// <param name="Values">The values by their names in the art.</param>
/// <param name="When">True for the results and designs that it fits; null for all that the patterns name.</param>
internal sealed record Diagram(
    string Id, string Title, IReadOnlyList<ResultPattern> For, string Art, Func<Assessment, IReadOnlyDictionary<string, string>> Values,
    Func<Assessment, ResultId, bool>? When = null)
{
    /// <summary>The picture of one design, line by line, without blanks at the end.</summary>
    /// <remarks>A value longer than its place takes the blanks that follow it inside a frame.</remarks>
    public IReadOnlyList<string> Lines(Assessment assessment)
    {
        IReadOnlyDictionary<string, string> values = Values(assessment);
        return [.. Art.Split('\n').Select(line => Fill(line, values).TrimEnd())];
    }

    private static string Fill(string line, IReadOnlyDictionary<string, string> values)
    {
        for (int from = line.IndexOf('{', StringComparison.Ordinal); 0 <= from; from = line.IndexOf('{', StringComparison.Ordinal))
        {
            int behind = line.IndexOf('}', from) + 1;
            string value = values[line[(from + 1)..(behind - 1)]];
            int wanted = from + value.Length, end = behind;
            while (end < wanted && end < line.Length && line[end] == ' ' && line.AsSpan(end).Contains('│'))
            {
                end++;
            }

            line = line[..from] + value.PadRight(behind - from) + line[end..];
        }

        return line;
    }
}
