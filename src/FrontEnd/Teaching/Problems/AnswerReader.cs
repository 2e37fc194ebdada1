using System.Globalization;

namespace FrontEnd.Teaching.Problems;

/// <summary>How an answer was read.</summary>
internal enum AnswerState
{
    /// <summary>As what was asked for.</summary>
    Read,

    /// <summary>The same unit, but another kind: rms where peak-to-peak was asked for, or the like.</summary>
    OtherKind,

    /// <summary>A number alone: in which unit it is read, the question says.</summary>
    Bare,

    /// <summary>Nothing that was asked for, or more than one thing.</summary>
    Failed,
}

/// <summary>An answer as it was read.</summary>
/// <param name="Value">In the SI unit; for a choice its index; for a number alone the number; 0 where it failed.</param>
/// <param name="Problem">Why it failed; "" where it did not.</param>
internal readonly record struct AnswerReading(AnswerState State, double Value, string Problem)
{
    internal static AnswerReading Failed(string problem) => new(AnswerState.Failed, 0, problem);
}

/// <summary>Reads an answer's whole line as people write it: <c>V = 27 nV.</c>, <c>2.7×10⁻⁸ V</c>, <c>110 000 Ω (E24)</c>, <c>74 sweeps</c>,
/// <c>6th</c>, <c>B: electrodes of half the impedance</c>.</summary>
/// <remarks>
/// What stands around number and unit is taken off here; number and unit are then read as a design's are. One line is one answer: where two
/// values that differ, or two choices, stand on it, none is read. A comma is a decimal sign, but for one before three digits, which may as well part
/// thousands.
/// </remarks>
internal static class AnswerReader
{
    /// <summary>Values on one line that differ by more are two answers; two digits differ from three by less.</summary>
    private const double SameValue = 0.05;

    private static readonly string[] Counted =
    [
        "zero", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve",
    ];

    private static readonly string[] Ordinals =
    [
        "zeroth", "first", "second", "third", "fourth", "fifth", "sixth", "seventh", "eighth", "ninth", "tenth", "eleventh", "twelfth",
    ];

    /// <summary>Signs that say "is" or "about".</summary>
    private static readonly char[] IsSigns = ['=', '≈', '≅', '≃', '≙', '→', '⇒', '~', ':'];

    /// <summary>An answer to a question for a quantity.</summary>
    /// <param name="asked">The unit that the sheet asks for, in which a number alone is to be read: it is told as one, whatever the quantity. Null where none
    /// is known: what may stand without its unit in a design is then read as there.</param>
    public static AnswerReading Quantity(QuantityKind kind, string text, AskedUnit? asked = null) => Line(kind, text, asked) switch
    {
        { State: AnswerState.Bare } alone when asked is null && MayBeAlone(kind) => alone with { State = AnswerState.Read },
        var read => read,
    };

    /// <summary>Decibels, degrees and bits take no prefix, so that their unit may be left out.</summary>
    private static bool MayBeAlone(QuantityKind kind) => kind.Bare || kind.ByDifference;

    private static AnswerReading Line(QuantityKind kind, string text, AskedUnit? asked)
    {
        string clean = ForeignWords.InEnglish(AnswerText.Clean(text));
        if (kind.SiUnit is "1" && clean.Contains(':', StringComparison.Ordinal) && clean[(clean.LastIndexOf(':') + 1)..].Trim() is "1")
        {
            // A ratio of 13:1.
            clean = clean[..clean.LastIndexOf(':')].TrimEnd();
        }

        if (clean.Length == 0)
        {
            return AnswerReading.Failed($"there is no text where {kind.Words} is expected");
        }

        // The last of "V = sqrt(4kTRB) = 27 nV" is the answer; what else on the line is a value must be the same one.
        string[] parts = [.. clean.Split(IsSigns, StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries)];
        int end = parts.Length;
        while (1 < end && !parts[end - 1].Any(char.IsAsciiDigit) && parts[..(end - 1)].Any(part => part.Any(char.IsAsciiDigit)))
        {
            end--;
        }

        AnswerReading last = end == 0 ? AnswerReading.Failed($"`{clean}` does not hold a number") : Piece(kind, parts[end - 1]);
        foreach (string part in parts.Take(end - 1))
        {
            AnswerReading other = Piece(kind, part);
            if (last.State is AnswerState.Failed || other.State is AnswerState.Failed or AnswerState.OtherKind || (other.State is AnswerState.Bare && !MayBeAlone(kind)))
            {
                continue;
            }

            if (!IsSame(last, other, asked))
            {
                return AnswerReading.Failed("two values stand on the line");
            }

            last = last.State is AnswerState.Bare ? other : last;
        }

        return last;
    }

    /// <summary>True for a number with a unit that this kind of quantity does not have.</summary>
    public static bool IsOfOtherUnit(QuantityKind? kind, string text) => QuantityKind.All.Any(other =>
        !string.Equals(other.SiUnit, kind?.SiUnit, StringComparison.Ordinal) && Line(other, text, null).State is AnswerState.Read);

    /// <summary>A value whose unit stops short of what was asked for, as V of V/√Hz, or V/Hz without the root: the value in that unit; null for any other
    /// text.</summary>
    public static double? OfPartOfUnit(QuantityKind kind, string text) => QuantityKind.All
        .Where(part => kind.SiUnit.StartsWith(part.SiUnit + "/", StringComparison.Ordinal))
        .Select(part => Line(part, text, null))
        .Concat(kind.SiUnit.EndsWith("/√Hz", StringComparison.Ordinal) ? [Line(kind, AnswerText.WithRoot(text), null)] : [])
        .Where(read => read.State is AnswerState.Read)
        .Select(read => (double?)read.Value)
        .FirstOrDefault();

    /// <summary>A voltage that is called a peak, which is no kind of its own: its number in volts; null for any other text.</summary>
    public static double? OfPeak(QuantityKind kind, string text) =>
        kind.SiUnit is "V" && AnswerText.WithoutPeak(ForeignWords.InEnglish(AnswerText.Clean(text))) is { } volts && Line(kind, volts, null) is { State: AnswerState.Read } read
            ? read.Value
            : null;

    /// <summary>True for one letter alone.</summary>
    public static bool IsLetter(string text) => AnswerText.Phrase(AnswerText.Clean(text)) is [var letter] && char.IsAsciiLetter(letter);

    /// <summary>True for two values that are one, rounded differently; a number alone may be meant in the SI unit or in the one that is asked for.</summary>
    private static bool IsSame(AnswerReading one, AnswerReading other, AskedUnit? asked)
    {
        bool isAlike = Math.Abs(other.Value - one.Value) <= SameValue * Math.Max(Math.Abs(other.Value), Math.Abs(one.Value));
        return isAlike || asked is null || (one.State is AnswerState.Bare) == (other.State is AnswerState.Bare)
            ? isAlike
            : IsSame(InUnit(one, asked), InUnit(other, asked), null);
    }

    private static AnswerReading InUnit(AnswerReading read, AskedUnit asked) => read.State is AnswerState.Bare ? new(AnswerState.Read, asked.Si(read.Value), "") : read;

    /// <summary>What stands between two equals signs.</summary>
    private static AnswerReading Piece(QuantityKind kind, string piece)
    {
        AnswerNumber? found = AnswerNumber.Find(piece);
        bool isAlone = found is { Before.Length: 0, After.Length: 0 };
        if (!isAlone && Known(kind, piece) is { } asWritten)
        {
            return asWritten;
        }

        if (found is not { } number)
        {
            return Words(kind, piece) ?? AnswerReading.Failed(Problem(kind, piece));
        }

        if (number.Problem.Length > 0)
        {
            return AnswerReading.Failed(number.Problem);
        }

        if (number.IsAttached || !AnswerText.IsLead(number.Before))
        {
            return AnswerReading.Failed(Problem(kind, piece));
        }

        // A unit that is only to be made out, as the ? that is left of Ω, comes before none.
        bool isCount = kind.SiUnit is "1", isBare = false;
        foreach (string unit in AnswerText.Units(number.After, isCount))
        {
            isBare |= unit.Length == 0;
            if (unit.Length > 0 && Known(kind, $"{number.Digits} {unit}") is { } read)
            {
                return read;
            }
        }

        if (isBare && double.TryParse(number.Digits, NumberStyles.Float, CultureInfo.InvariantCulture, out double bare) && double.IsFinite(bare))
        {
            return new AnswerReading(AnswerState.Bare, bare, "");
        }

        return AnswerReading.Failed(AnswerText.HasSecondValue(number.After) ? "more than one value stands on the line"
            : Problem(kind, number.After.Length == 0 ? number.Digits : $"{number.Digits} {number.After}"));
    }

    /// <summary>Number and unit by the reader of designs; null where it cannot read them.</summary>
    private static AnswerReading? Known(QuantityKind kind, string text)
    {
        if (QuantityText.IsRead(kind, text, out IQuantity? value))
        {
            return new AnswerReading(AnswerState.Read, value.SiValue, "");
        }

        foreach (QuantityKind other in QuantityKind.All)
        {
            if (other != kind && string.Equals(other.SiUnit, kind.SiUnit, StringComparison.Ordinal)
                && QuantityText.IsRead(other, text, out value))
            {
                return new AnswerReading(AnswerState.OtherKind, value.SiValue, "");
            }
        }

        return null;
    }

    /// <summary>A count in words: six, sixth order.</summary>
    private static AnswerReading? Words(QuantityKind kind, string piece)
    {
        string[] words = piece.ToLowerInvariant().Split(' ', StringSplitOptions.RemoveEmptyEntries);
        if (kind.SiUnit is not "1" || words.Length is 0 or > 3)
        {
            return null;
        }

        int count = Math.Max(Array.IndexOf(Counted, words[0]), Array.IndexOf(Ordinals, words[0]));
        return 0 <= count && words.Skip(1).All(AnswerText.IsRemark) ? new AnswerReading(AnswerState.Read, count, "") : null;
    }

    private static string Problem(QuantityKind kind, string text) =>
        QuantityText.TryParse(kind, text, out _, out ParseProblem? why)
            ? $"`{text}` cannot be read"
            : why!.Message + (why.Help is null ? "" : $": {why.Help}");

    /// <summary>An answer to a question with choices: a letter, the choice's text, or both; the index of the choice.</summary>
    public static AnswerReading Choice(IReadOnlyList<string> options, string text)
    {
        string plain = AnswerText.Phrase(AnswerText.Clean(text));
        string[] phrases = [.. options.Select(AnswerText.Phrase)];
        foreach (string tried in AnswerText.WithoutLead(plain))
        {
            if (Array.IndexOf(phrases, tried) is var whole and >= 0)
            {
                return new AnswerReading(AnswerState.Read, whole, "");
            }
        }

        string answer = AnswerText.WithoutLead(plain).Last();
        if (ByLetter(phrases, answer) is { } byLetter)
        {
            return byLetter;
        }

        int[] fitting = [.. Enumerable.Range(0, phrases.Length).Where(i =>
            AnswerText.WithoutLead(plain).Any(tried => Begins(phrases[i], tried)) || answer.Contains(phrases[i], StringComparison.Ordinal))];
        return fitting.Length == 1 && !answer.StartsWith("not ", StringComparison.Ordinal)
            ? new AnswerReading(AnswerState.Read, fitting[0], "")
            : AnswerReading.Failed($"`{text.Trim()}` is none of the choices A to {ChoiceAnswer.Letter(options.Count - 1)}");
    }

    /// <summary>A letter, alone or with what follows it; null where none begins the answer.</summary>
    private static AnswerReading? ByLetter(string[] phrases, string answer)
    {
        string opened = answer.TrimStart('(', '[', ' ');
        if (opened.Length == 0 || opened[0] - 'a' is not (>= 0 and var letter) || phrases.Length <= letter
            || (1 < opened.Length && char.IsLetterOrDigit(opened[1])))
        {
            return null;
        }

        string tail = opened[1..], rest = tail.TrimStart(')', ']', '.', ':', '-', ',', ';', '=', ' ', '/', '&');
        AnswerReading chosen = new(AnswerState.Read, letter, "");
        if (rest.Length == 0)
        {
            return chosen;
        }

        string[] words = AnswerText.WordsOf(rest);
        if (words.All(word => word is "or" or "and" or "maybe" or "both" or "perhaps" or "oder" or "und" or "ou" or "et" or "possibly" or "also" or "vielleicht"
                or "auch" or "beide" || (word.Length == 1 && char.IsAsciiLetter(word[0])))
            || NamesAnother(phrases.Length, letter, words))
        {
            return AnswerReading.Failed("more than one choice stands on the line");
        }

        int[] named = [.. Enumerable.Range(0, phrases.Length).Where(i => Begins(phrases[i], rest) || rest.Contains(phrases[i], StringComparison.Ordinal))];
        if (named.Length > 0)
        {
            return named.Contains(letter) ? chosen : AnswerReading.Failed("letter and text are not the same choice");
        }

        // "A bigger resistor" is no letter, "a) a bigger resistor" is one.
        return tail[0] is not ' ' || rest[0] is '(' || words[0] is "because" or "since" or "as" ? chosen : null;
    }

    /// <summary>True where another choice's letter stands behind the first, and no word that sets it apart: "C, but maybe B". An "a" may be an article.</summary>
    private static bool NamesAnother(int options, int letter, string[] words) =>
        words.Any(word => word is [var other] && 'a' < other && other - 'a' < options && other - 'a' != letter)
        && !words.Any(word => word is "because" or "since" or "as" or "than" or "not" or "weil" or "da" or "nicht" or "als" or "car" or "pas" or "que" or "instead" or "statt");

    /// <summary>True where a text is a choice's beginning, long enough to be told by.</summary>
    private static bool Begins(string phrase, string text) => 8 <= text.Length && phrase.StartsWith(text, StringComparison.Ordinal);
}
