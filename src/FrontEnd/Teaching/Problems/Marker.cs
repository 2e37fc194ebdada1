namespace FrontEnd.Teaching.Problems;

/// <summary>An answer as it came in.</summary>
/// <param name="Line">Line in the list, from 1.</param>
internal sealed record GivenAnswer(string Student, string Question, string Text, int Line)
{
    /// <summary>Code of the sheet that was answered; "" where the list does not tell.</summary>
    public string Sheet { get; init; } = "";

    /// <summary>The text by the decimal sign of the student's other answers; null where it is the text as it is.</summary>
    public string? Told { get; init; }

    /// <summary>What is read.</summary>
    public string Read => Told ?? Text;
}

/// <summary>What one answer earned.</summary>
/// <param name="Slip">Code of the slip that explains it; "" for none.</param>
/// <param name="Remark">For the student; "" where the answer is right.</param>
internal sealed record Mark(string Student, string Name, string Question, string Answer, double Points, double Possible, string Slip,
    string Remark);

/// <summary>All marks, and what was wrong with the list.</summary>
/// <param name="Rows">Of the students who answered anything.</param>
internal sealed record Marks(IReadOnlyList<Mark> Rows, IReadOnlyList<Finding> Findings)
{
    /// <summary>Who has a sheet and answered nothing. They have no marks, so that no mean counts them.</summary>
    public IReadOnlyList<Student> Absent { get; init; } = [];
}

/// <summary>Marks answers by a key.</summary>
internal static class Marker
{
    /// <summary>The digits are right and the size is not.</summary>
    public const string PowerOfTen = "power-of-ten";

    /// <summary>Right but for the sign.</summary>
    public const string WrongSign = "wrong-sign";

    /// <summary>Rms where peak-to-peak was asked for, or the like.</summary>
    public const string KindOfVoltage = "kind-of-voltage";

    /// <summary>A number without its unit, right in the SI unit and not in the one that the sheet asks for.</summary>
    public const string UnitLeftOut = "unit-left-out";

    /// <summary>A right number whose unit stops short of what was asked for: V of V/√Hz.</summary>
    public const string PartOfUnit = "part-of-unit";

    /// <summary>The value before it was rounded to a whole number or to a part.</summary>
    public const string NotRounded = "not-rounded";

    /// <summary>Off by what rounding to two digits on the way explains.</summary>
    public const string RoundedEarly = "rounded-early";

    /// <summary>No number and no choice.</summary>
    public const string Unreadable = "unreadable";

    /// <summary>What slips that any question can have are in general: a remark on one answer has that answer's numbers and units.</summary>
    private static readonly Dictionary<string, string> General = new(StringComparer.Ordinal)
    {
        [PowerOfTen] = "the digits are right, and the power of ten is not",
        [WrongSign] = "the value is right but for its sign",
        [KindOfVoltage] = "an rms, peak or peak-to-peak value where another of these was asked for",
        [UnitLeftOut] = "no unit was written, and the number is right in an SI unit, not in the one that the sheet names",
        [PartOfUnit] = "the number is right, and a piece of its unit is missing",
        [NotRounded] = "the value before it was rounded to what can be counted or bought",
        [RoundedEarly] = "close to the answer: rounded too early on the way",
        [Unreadable] = "no number and no choice that can be read",
    };

    /// <summary>The slip in words that hold for the whole class; null for one of a question, whose remark does.</summary>
    public static string? InGeneral(string slip) => General.GetValueOrDefault(slip);

    // Written numbers end on the edge of a range as often as not; rounding must not decide there.
    private const double Slack = 1e-9;

    // Two digits are off by at most half of the second one, 5 % of 1.0; in decibels 20·log10 1.05.
    private const double TwoDigits = 0.05;
    private const double TwoDigitsDecibels = 0.4238;

    /// <summary>Marks every question of every student in the key who answered any; who shares a sheet is taken from the answers.</summary>
    /// <param name="rubric">What answers earn that are not simply right; null for what the key says.</param>
    public static Marks Mark(Key key, IReadOnlyList<GivenAnswer> answers, Rubric? rubric = null)
    {
        List<Finding> findings = [];
        bool shared = key.Sheets is [{ Student: "" }];
        KeySheet[] sheets = shared
            ? [.. answers.Select(answer => answer.Student).Distinct(StringComparer.Ordinal)
                .Select(student => key.Sheets[0] with { Student = student })]
            : [.. key.Sheets];
        AnswerSheets sorting = new(key, shared, sheets, findings);
        Dictionary<(string, string), GivenAnswer> found = WithDecimalSigns(sorting.Sort(answers));
        if (OtherHomework.Finding(sheets, [.. found.Where(one => sorting.IsOwn(one.Value) is null)], sorting.WithoutQuestion) is { } other)
        {
            findings.Insert(0, other);
        }

        // Who shares a sheet is known from the list alone, and nobody there is absent.
        HashSet<string> present = new(shared
            ? sheets.Select(sheet => sheet.Student)
            : found.Where(one => !string.IsNullOrWhiteSpace(one.Value.Text)).Select(one => one.Key.Item1), StringComparer.Ordinal);
        List<Mark> rows = [];
        foreach (KeySheet sheet in sheets.Where(sheet => present.Contains(sheet.Student)))
        {
            foreach (KeyQuestion question in sheet.Questions)
            {
                GivenAnswer? answer = found.GetValueOrDefault((sheet.Student, question.Id));
                rows.Add(One(sheet, question, answer, rubric ?? key.Rubric, findings));
            }
        }

        if (!shared && !findings.Exists(finding => finding.Code is Messages.AnotherHomework or Messages.SheetsExchanged))
        {
            IEnumerable<string> few = rows.GroupBy(row => row.Student, StringComparer.Ordinal)
                .Where(student => OtherHomework.IsFew(student.Count(row => row.Points == row.Possible), student.Count(row => row.Answer.Length > 0)))
                .Select(student => student.Key);
            findings.AddRange(OtherHomework.OfOne(sheets, found, few));
        }

        return new Marks(rows, findings)
        {
            Absent = [.. sheets.Where(sheet => !present.Contains(sheet.Student)).Select(sheet => new Student(sheet.Student, sheet.Name))],
        };
    }

    /// <summary>The answers with a comma that may be a decimal sign or part thousands as the student's other answers use it.</summary>
    private static Dictionary<(string, string), GivenAnswer> WithDecimalSigns(Dictionary<(string Student, string Question), GivenAnswer> found)
    {
        Dictionary<string, char?> signs = found.GroupBy(one => one.Key.Student, StringComparer.Ordinal)
            .ToDictionary(student => student.Key, student => DecimalSign.Of(student.Select(one => one.Value.Text)), StringComparer.Ordinal);
        return found.ToDictionary(one => one.Key, one => one.Value with { Told = DecimalSign.Read(one.Value.Text, signs[one.Key.Student]) });
    }

    /// <summary>Marks one text: points, slip and remark.</summary>
    public static (double Points, string Slip, string Remark) Judge(KeyQuestion question, string text, Rubric? rubric = null)
    {
        QuestionRubric shares = (rubric ?? Rubric.Usual).Of(question.Id);
        if (question.Options.Count > 0)
        {
            AnswerReading chosen = AnswerReader.Choice(question.Options, text);
            return chosen.State == AnswerState.Read ? Chosen(question, (int)chosen.Value) : (0, Unreadable, chosen.Problem);
        }

        QuantityKind kind = question.Kind
            ?? throw new ArgumentException("The key's question has neither choices nor a kind of quantity.", nameof(question));
        AskedUnit asked = AskedUnit.Of(kind, question);
        AnswerReading read = AnswerReader.Quantity(kind, text, asked);
        if (read.State is AnswerState.Failed && AnswerReader.OfPeak(kind, text) is { } peak && IsRight(question, peak))
        {
            return Judge(question, new AnswerReading(AnswerState.OtherKind, peak, ""), asked, shares);
        }

        return read.State is AnswerState.Failed && AnswerReader.OfPartOfUnit(kind, text) is { } value && IsRight(question, value)
            ? (shares.UnitLeftOut * question.Points, PartOfUnit, $"the number is right, but {kind.Words} is in {kind.SiUnit}")
            : Judge(question, read, asked, shares);
    }

    /// <summary>Marks a value as it was read.</summary>
    /// <param name="asked">The unit in which a number alone was read.</param>
    internal static (double Points, string Slip, string Remark) Judge(KeyQuestion question, AnswerReading read, AskedUnit asked, QuestionRubric shares) =>
        read.State switch
        {
            AnswerState.Read => Compare(question, read.Value, shares),
            AnswerState.OtherKind when IsRight(question, read.Value) =>
                (shares.OtherKind * question.Points, KindOfVoltage, $"the number is right, but {question.Kind!.Words} was asked for"),
            AnswerState.OtherKind => Compare(question, read.Value, shares),
            AnswerState.Bare => Alone(question, read.Value, asked, shares),
            AnswerState.Failed => (0, Unreadable, read.Problem),
            _ => throw new ArgumentOutOfRangeException(nameof(read), read.State, "State is not handled."),
        };

    /// <summary>A number without a unit is read in the unit that the sheet asks for. Where that explains nothing and the SI unit does, it earns the share
    /// of a unit left out.</summary>
    private static (double Points, string Slip, string Remark) Alone(KeyQuestion question, double number, AskedUnit asked, QuestionRubric shares)
    {
        (double Points, string Slip, string Remark) inAsked = Compare(question, asked.Si(number), shares);
        if (asked.IsSi || IsExplained(inAsked))
        {
            return inAsked;
        }

        (double Points, string Slip, string Remark) inSi = Compare(question, number, shares);
        string si = question.Kind!.SiUnit is "1" ? "as a plain number" : $"in {question.Kind.SiUnit}", read = $"a number without its unit is read in {asked.Name}, as the sheet asks";
        return !IsExplained(inSi) ? inAsked
            : inSi.Slip.Length == 0 ? (shares.UnitLeftOut * inSi.Points, UnitLeftOut, $"the number is right {si}, but {read}")
            : (shares.UnitLeftOut * inSi.Points, inSi.Slip, $"{inSi.Remark}; and {read}");
    }

    /// <summary>True for a value that is right, or that a slip other than a wrong power of ten explains.</summary>
    private static bool IsExplained((double Points, string Slip, string Remark) mark) => mark.Points > 0 || mark.Slip is not ("" or PowerOfTen);

    private static (double Points, string Slip, string Remark) Compare(KeyQuestion question, double value, QuestionRubric shares)
    {
        if (IsUnrounded(question, value) || (IsRight(question, value) && IsBetweenWholeNumbers(question, value)))
        {
            KeySlip? told = question.Slips.FirstOrDefault(slip => slip.Value == question.Unrounded);
            return (shares.Rounding * question.Points, told?.Code ?? NotRounded,
                told?.Remark ?? "the value was worked out but not rounded as the question asks");
        }

        if (IsRight(question, value))
        {
            return (question.Points, "", "");
        }

        if (question.Slips.FirstOrDefault(slip => slip.Low - Width(question) <= value && value <= slip.High + Width(question)) is { } known)
        {
            return (known.Points == 0 || shares.Slip is not { } share ? known.Points : share * question.Points, known.Code, known.Remark);
        }

        if (IsPowerOfTen(question, value))
        {
            return (0, PowerOfTen, "the digits are right but the size is not: check prefix and decimal point");
        }

        if (question.Value != 0 && IsRight(question, -value))
        {
            return (shares.WrongSign * question.Points, WrongSign, "the sign is the other way round");
        }

        return IsRoundedEarly(question, value)
            ? (shares.Rounding * question.Points, RoundedEarly,
                $"close to {question.Answer}, as if values on the way had been rounded: keep four digits there and round the last result")
            : (0, "", $"expected {question.Answer}");
    }

    private static (double Points, string Slip, string Remark) Chosen(KeyQuestion question, int chosen)
    {
        if (chosen == (int)question.Value)
        {
            return (question.Points, "", "");
        }

        KeySlip? slip = question.Slips.FirstOrDefault(one => (int)one.Value == chosen);
        return (slip?.Points ?? 0, slip?.Code ?? "", slip?.Remark ?? $"expected {question.Answer}");
    }

    private static bool IsRight(KeyQuestion question, double value) =>
        question.Low - Width(question) <= value && value <= question.High + Width(question);

    /// <summary>The value from before the rounding that was asked for, to three digits or more, and nearer to it than to the right
    /// one; not where the right one's three digits are the same.</summary>
    private static bool IsUnrounded(KeyQuestion question, double value) => question.Unrounded is { } unrounded
        && ThreeDigits.HalfUnit(question.Value) + Width(question) < Math.Abs(value - question.Value)
        && Math.Abs(value - unrounded) <= ThreeDigits.HalfUnit(unrounded) + Width(question)
        && Math.Abs(value - unrounded) < Math.Abs(value - question.Value);

    /// <summary>A fraction where a whole number was asked for: near as it is to the right one, nobody averages it.</summary>
    private static bool IsBetweenWholeNumbers(KeyQuestion question, double value) =>
        question.Unrounded is not null && question.Kind!.Is<Ratio>() && double.IsInteger(question.Value) && !double.IsInteger(value);

    private static bool IsRoundedEarly(KeyQuestion question, double value)
    {
        if (!question.HasIntermediates || question.Unrounded is not null)
        {
            return false;
        }

        double most = question.Kind switch
        {
            { } kind when kind.Is<Decibels>() => Math.Min(TwoDigitsDecibels, TwoDigits * Math.Abs(question.Value)),
            { ByDifference: true } => 0,
            _ => TwoDigits * Math.Abs(question.Value),
        };
        return Math.Abs(value - question.Value) <= most + Width(question);
    }

    private static bool IsPowerOfTen(KeyQuestion question, double value)
    {
        if (question.Kind is { ByDifference: true } || question.Value == 0 || value / question.Value <= 0)
        {
            return false;
        }

        double power = Math.Round(Math.Log10(value / question.Value));
        return power != 0 && IsRight(question, value / Math.Pow(10, power));
    }

    private static double Width(KeyQuestion question) => Slack * Math.Abs(question.Value);

    private static Mark One(KeySheet sheet, KeyQuestion question, GivenAnswer? answer, Rubric rubric, List<Finding> findings)
    {
        if (answer is null || string.IsNullOrWhiteSpace(answer.Text))
        {
            return new Mark(sheet.Student, sheet.Name, question.Id, "", 0, question.Points, "", "no answer");
        }

        (double points, string slip, string remark) = Judge(question, answer.Read, rubric);
        if (slip == Unreadable)
        {
            findings.Add(Messages.AnswerUnreadable(sheet.Student, question.Id, remark, answer.Line));
            slip = "";
        }

        return new Mark(sheet.Student, sheet.Name, question.Id, answer.Text.Trim(), points, question.Points, slip, remark);
    }
}
