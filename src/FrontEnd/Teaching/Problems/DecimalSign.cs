using System.Text.RegularExpressions;

namespace FrontEnd.Teaching.Problems;

/// <summary>With which sign a student writes decimals, as all of the student's answers tell: by it <c>2,879</c> is read, which alone may as well be a number
/// with its thousands parted.</summary>
internal static partial class DecimalSign
{
    /// <summary>The decimal sign of all these answers; null where none tells, or where they use both.</summary>
    public static char? Of(IEnumerable<string> answers)
    {
        bool hasPoint = false, hasComma = false;
        foreach (string number in answers.SelectMany(answer => Numbers().Matches(answer).Select(match => match.Value)))
        {
            switch (Told(number))
            {
                case '.':
                    hasPoint = true;
                    break;
                case ',':
                    hasComma = true;
                    break;
            }
        }

        return hasPoint == hasComma ? null : hasComma ? ',' : '.';
    }

    /// <summary>The answer with a comma that could be either as the point that it is, or without it.</summary>
    public static string Read(string answer, char? sign) => sign is not { } known ? answer
        : Numbers().Replace(answer, match => IsEither(match.Value) && match.Value.Contains(',', StringComparison.Ordinal)
            ? match.Value.Replace(",", known == ',' ? "." : "", StringComparison.Ordinal)
            : match.Value);

    /// <summary>The decimal sign that a number has for certain: 28,4; 0,125; 1.234,5.</summary>
    private static char? Told(string number)
    {
        char last = number[number.LastIndexOfAny(['.', ','])];
        bool isOne = number.Count(letter => letter is '.' or ',') == 1;
        return isOne ? IsEither(number) ? null : last
            : number.Count(letter => letter == last) == 1 ? last
            : null;
    }

    /// <summary>True for one to three digits, a sign, and three more: 2,879 but not 0,879.</summary>
    private static bool IsEither(string number) => number[0] != '0' && number.IndexOfAny(['.', ',']) is >= 1 and <= 3 and var at
        && number.Length - at - 1 == 3 && number.LastIndexOfAny(['.', ',']) == at;

    // Digits with points or commas between them.
    [GeneratedRegex(@"(?<![0-9.,])[0-9]+(?:[.,][0-9]+)+(?![0-9])", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Numbers();
}
