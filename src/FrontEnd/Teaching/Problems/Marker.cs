using System.Globalization;
using FrontEnd.Findings;
using FrontEnd.Quantities;
using FrontEnd.Text;

namespace FrontEnd.Teaching.Problems;

/// <summary>An answer as it came in.</summary>
/// <param name="Line">Line in the list, from 1.</param>
public sealed record GivenAnswer(string Student, string Question, string Text, int Line);

/// <summary>What one answer earned.</summary>
/// <param name="Slip">Code of the slip that explains it; "" for none.</param>
/// <param name="Remark">For the student; "" where the answer is right.</param>
public sealed record Mark(string Student, string Name, string Question, string Answer, double Points, double Possible, string Slip,
    string Remark);

/// <summary>All marks, and what was wrong with the list.</summary>
public sealed record Marks(IReadOnlyList<Mark> Rows, IReadOnlyList<Finding> Findings);

/// <summary>Marks answers by a key.</summary>
public static class Marker
{
    /// <summary>The digits are right and the size is not.</summary>
    public const string PowerOfTen = "power-of-ten";

    /// <summary>Right but for the sign.</summary>
    public const string WrongSign = "wrong-sign";

    /// <summary>Rms where peak-to-peak was asked for, or the like.</summary>
    public const string KindOfVoltage = "kind-of-voltage";

    /// <summary>A number without its unit.</summary>
    public const string UnitLeftOut = "unit-left-out";

    /// <summary>No number and no choice.</summary>
    public const string Unreadable = "unreadable";

    // Written numbers end on the edge of a range as often as not; rounding must not decide there.
    private const double Slack = 1e-9;

    /// <summary>Marks every question of every student in the key; who shares a sheet is taken from the answers.</summary>
    public static Marks Mark(Key key, IReadOnlyList<GivenAnswer> answers)
    {
        List<Finding> findings = [];
        bool shared = key.Sheets is [{ Student: "" }];
        KeySheet[] sheets = shared
            ? [.. answers.Select(answer => answer.Student).Distinct(StringComparer.Ordinal)
                .Select(student => key.Sheets[0] with { Student = student })]
            : [.. key.Sheets];
        Dictionary<(string, string), GivenAnswer> found = Sort(answers, sheets, findings);
        List<Mark> rows = [];
        foreach (KeySheet sheet in sheets)
        {
            foreach (KeyQuestion question in sheet.Questions)
            {
                GivenAnswer? answer = found.GetValueOrDefault((sheet.Student, question.Id));
                rows.Add(One(sheet, question, answer, findings));
            }
        }

        return new Marks(rows, findings);
    }

    /// <summary>Marks one text: points, slip and remark.</summary>
    public static (double Points, string Slip, string Remark) Judge(KeyQuestion question, string text)
    {
        if (question.Options.Count > 0)
        {
            return Chosen(question, text);
        }

        QuantityKind kind = question.Kind
            ?? throw new ArgumentException("The key's question has neither choices nor a kind of quantity.", nameof(question));
        string plain = Reading.Plain(text);
        return Reading.Of(kind, plain, out double value, out string problem) switch
        {
            Reading.Result.Read => Compare(question, value),
            Reading.Result.OtherVoltage when question.Low - Width(question) <= value && value <= question.High + Width(question) =>
                (question.Points / 2.0, KindOfVoltage, $"the number is right, but {kind.Words} was asked for"),
            Reading.Result.OtherVoltage => Compare(question, value),
            _ when Reading.IsBare(plain, out double bare) =>
                question.Low - Width(question) <= bare && bare <= question.High + Width(question)
                ? (question.Points / 2.0, UnitLeftOut, $"the number is right without a prefix, but {kind.Words} needs its unit")
                : (0, Unreadable, $"a number alone: {kind.Words} needs its unit"),
            _ => (0, Unreadable, problem),
        };
    }

    private static (double Points, string Slip, string Remark) Compare(KeyQuestion question, double value)
    {
        if (question.Low - Width(question) <= value && value <= question.High + Width(question))
        {
            return (question.Points, "", "");
        }

        if (question.Slips.FirstOrDefault(slip => slip.Low - Width(question) <= value && value <= slip.High + Width(question)) is { } known)
        {
            return (known.Points, known.Code, known.Remark);
        }

        if (IsPowerOfTen(question, value))
        {
            return (0, PowerOfTen, "the digits are right but the size is not: check prefix and decimal point");
        }

        return question.Low <= -value && -value <= question.High && question.Value != 0
            ? (question.Points / 2.0, WrongSign, "the sign is the other way round")
            : (0, "", $"expected {question.Answer}");
    }

    private static (double Points, string Slip, string Remark) Chosen(KeyQuestion question, string text)
    {
        string plain = text.Trim().Trim('(', ')', '.', ':', '"').Trim();
        int chosen = plain.Length == 1 && char.IsAsciiLetter(plain[0])
            ? char.ToUpperInvariant(plain[0]) - 'A'
            : Enumerable.Range(0, question.Options.Count)
                .FirstOrDefault(i => string.Equals(question.Options[i], plain, StringComparison.OrdinalIgnoreCase), -1);
        if (chosen < 0 || question.Options.Count <= chosen)
        {
            return (0, Unreadable, $"`{text.Trim()}` is none of the choices A to {ChoiceAnswer.Letter(question.Options.Count - 1)}");
        }

        if (chosen == (int)question.Value)
        {
            return (question.Points, "", "");
        }

        KeySlip? slip = question.Slips.FirstOrDefault(one => (int)one.Value == chosen);
        return (slip?.Points ?? 0, slip?.Code ?? "", slip?.Remark ?? $"expected {question.Answer}");
    }

    private static bool IsPowerOfTen(KeyQuestion question, double value)
    {
        if (question.Kind is { ByDifference: true } || question.Value == 0 || value / question.Value <= 0)
        {
            return false;
        }

        double power = Math.Round(Math.Log10(value / question.Value));
        double scaled = value / Math.Pow(10, power);
        return power != 0 && question.Low - Width(question) <= scaled && scaled <= question.High + Width(question);
    }

    private static double Width(KeyQuestion question) => Slack * Math.Abs(question.Value);

    private static Mark One(KeySheet sheet, KeyQuestion question, GivenAnswer? answer, List<Finding> findings)
    {
        if (answer is null || string.IsNullOrWhiteSpace(answer.Text))
        {
            return new Mark(sheet.Student, sheet.Name, question.Id, "", 0, question.Points, "", "no answer");
        }

        (double points, string slip, string remark) = Judge(question, answer.Text);
        if (slip == Unreadable)
        {
            findings.Add(Messages.AnswerUnreadable(sheet.Student, question.Id, remark, answer.Line));
            slip = "";
        }

        return new Mark(sheet.Student, sheet.Name, question.Id, answer.Text.Trim(), points, question.Points, slip, remark);
    }

    private static Dictionary<(string Student, string Question),
        GivenAnswer> Sort(IReadOnlyList<GivenAnswer> answers, KeySheet[] sheets, List<Finding> findings)
    {
        Dictionary<(string, string), GivenAnswer> found = [];
        ILookup<string, KeySheet> byStudent = sheets.ToLookup(sheet => sheet.Student, StringComparer.Ordinal);
        foreach (GivenAnswer answer in answers)
        {
            if (byStudent[answer.Student].FirstOrDefault() is not { } sheet)
            {
                findings.Add(Messages.NoStudent(answer.Student, Nearest.Of(answer.Student, sheets.Select(one => one.Student)),
                    answer.Line));
            }
            else if (FindQuestion(sheet, answer.Question) is not { } question)
            {
                findings.Add(Messages.NoQuestion(answer.Question, sheet.Questions.Count, answer.Line));
            }
            else if (!found.TryAdd((sheet.Student, question.Id), answer))
            {
                findings.Add(Messages.AnsweredTwice(answer.Student, question.Id, answer.Line));
            }
        }

        return found;
    }

    /// <summary>A question by its id, its number, or the template where it stands on the sheet once.</summary>
    private static KeyQuestion? FindQuestion(KeySheet sheet, string name)
    {
        string plain = name.Trim().TrimEnd('.', ')', ':');
        KeyQuestion[] fitting = [.. sheet.Questions.Where(question => string.Equals(question.Id, plain, StringComparison.OrdinalIgnoreCase)
            || string.Equals(question.Id, "q" + plain, StringComparison.OrdinalIgnoreCase))];
        if (fitting.Length == 0)
        {
            fitting = [.. sheet.Questions.Where(question => string.Equals(question.Template, plain, StringComparison.OrdinalIgnoreCase))];
        }

        return fitting.Length == 1 ? fitting[0] : null;
    }

    /// <summary>Reads an answer's text.</summary>
    private static class Reading
    {
        internal enum Result
        {
            Read,

            /// <summary>A voltage, but rms where peak-to-peak was asked for or the like.</summary>
            OtherVoltage,
            Failed,
        }

        /// <summary>Without signs in front; a decimal comma becomes a point. One comma before three digits may as well part thousands and
        /// stays, but for 0,125.</summary>
        internal static string Plain(string text)
        {
            string plain = text.Trim().TrimStart('=', '≈', '~').Trim();
            int comma = plain.IndexOf(',');
            if (comma < 1 || plain.Contains('.') || comma != plain.LastIndexOf(',') || !char.IsAsciiDigit(plain[comma - 1]))
            {
                return plain;
            }

            int digits = plain[(comma + 1)..].TakeWhile(char.IsAsciiDigit).Count();
            bool isZero = plain[comma - 1] == '0' && (comma == 1 || !char.IsAsciiDigit(plain[comma - 2]));
            return 0 < digits && (digits != 3 || isZero) ? plain[..comma] + "." + plain[(comma + 1)..] : plain;
        }

        /// <summary>A number alone, as 8.2e-6.</summary>
        internal static bool IsBare(string plain, out double value) =>
            double.TryParse(plain, NumberStyles.Float, CultureInfo.InvariantCulture, out value) && double.IsFinite(value);

        /// <param name="plain">As <see cref="Plain"/> makes it.</param>
        internal static Result Of(QuantityKind kind, string plain, out double value, out string problem)
        {
            // Decibels, degrees and bits take no prefix, so their unit may be left out.
            if (TryRead(kind, plain, out value, out problem)
                || (kind.ByDifference && TryRead(kind, $"{plain} {kind.SiUnit}", out value, out _)))
            {
                return Result.Read;
            }

            foreach (QuantityKind other in QuantityKind.All.Where(other => other != kind
                && string.Equals(other.SiUnit, kind.SiUnit, StringComparison.Ordinal)))
            {
                if (TryRead(other, plain, out value, out _))
                {
                    return Result.OtherVoltage;
                }
            }

            return Result.Failed;
        }

        private static bool TryRead(QuantityKind kind, string text, out double value, out string problem)
        {
            bool read = QuantityText.TryParse(kind, text, out IQuantity? quantity, out ParseProblem? why);
            value = read ? quantity!.SiValue : 0;
            problem = read ? "" : why!.Message + (why.Help is null ? "" : $": {why.Help}");
            return read;
        }
    }
}
