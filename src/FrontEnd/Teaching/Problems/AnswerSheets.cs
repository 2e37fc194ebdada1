using System.Globalization;

namespace FrontEnd.Teaching.Problems;

/// <summary>Puts each answer to its student and question.</summary>
internal sealed class AnswerSheets
{
    // So many are told one by one; a list of another class has hundreds.
    private const int MostTold = 20;

    private readonly Key _key;
    private readonly bool _isShared;
    private readonly List<Finding> _findings;
    private readonly Dictionary<string, KeySheet> _exact = new(StringComparer.Ordinal);

    /// <summary>By their plain ids; null where two share one.</summary>
    private readonly Dictionary<string, KeySheet?> _plain = new(StringComparer.Ordinal);

    /// <summary>Codes of the sheets, by student.</summary>
    private readonly Dictionary<string, string> _codes = new(StringComparer.Ordinal);

    /// <param name="sheets">The key's, or where all share one, one for each who answered.</param>
    public AnswerSheets(Key key, bool isShared, IReadOnlyList<KeySheet> sheets, List<Finding> findings)
    {
        (_key, _isShared, _findings) = (key, isShared, findings);
        foreach (KeySheet sheet in sheets)
        {
            _exact.TryAdd(sheet.Student, sheet);
            if (!_plain.TryAdd(Plain(sheet.Student), sheet))
            {
                _plain[Plain(sheet.Student)] = null;
            }
        }
    }

    /// <summary>Rows for a question that the sheet does not have.</summary>
    public int WithoutQuestion { get; private set; }

    /// <summary>The answers that are for somebody; the first of two counts. What is for nobody is told, and so is what was answered on another
    /// sheet.</summary>
    public Dictionary<(string Student, string Question), GivenAnswer> Sort(IReadOnlyList<GivenAnswer> answers)
    {
        Dictionary<(string, string), GivenAnswer> found = [];
        Dictionary<string, (int Line, int Rows)> unknown = new(StringComparer.Ordinal), foreign = new(StringComparer.Ordinal);
        foreach (GivenAnswer answer in answers)
        {
            if (IsOwn(answer) is false)
            {
                Count(foreign, answer);
            }
            else if (Find(answer.Student) is not { } sheet)
            {
                Count(unknown, answer);
            }
            else if (Question(sheet, answer.Question) is not { } question)
            {
                WithoutQuestion += IsOwn(answer) is null ? 1 : 0;
                _findings.Add(Messages.NoQuestion(answer.Question, sheet.Questions.Count, answer.Line));
            }
            else if (!found.TryAdd((sheet.Student, question.Id), answer))
            {
                Again(found, sheet, question, answer);
            }
        }

        TellForeign(foreign, found.Count == 0 && unknown.Count == 0);
        TellUnknown(unknown);
        return found;
    }

    private static void Count(Dictionary<string, (int Line, int Rows)> rows, GivenAnswer answer)
    {
        (int line, int before) = rows.GetValueOrDefault(answer.Student, (answer.Line, 0));
        rows[answer.Student] = (line, before + 1);
    }

    /// <summary>A line copied twice, or one left empty and filled in below, is no second answer.</summary>
    private void Again(Dictionary<(string, string), GivenAnswer> found, KeySheet sheet, KeyQuestion question, GivenAnswer answer)
    {
        GivenAnswer first = found[(sheet.Student, question.Id)];
        if (string.IsNullOrWhiteSpace(first.Text))
        {
            found[(sheet.Student, question.Id)] = answer;
        }
        else if (!string.IsNullOrWhiteSpace(answer.Text) && !string.Equals(first.Text.Trim(), answer.Text.Trim(), StringComparison.Ordinal))
        {
            _findings.Add(Messages.AnsweredTwice(answer.Student, question.Id, answer.Line));
        }
    }

    /// <summary>True for an answer with the code of the student's sheet of this homework, false for one with another code; null where no code
    /// tells.</summary>
    public bool? IsOwn(GivenAnswer answer)
    {
        // A spreadsheet takes a code such as 34679E46 for a number and saves another text.
        string code = double.TryParse(answer.Sheet, NumberStyles.Float, CultureInfo.InvariantCulture, out _) ? "" : SheetCode.Plain(answer.Sheet);
        if (code.Length == 0 || _key.Code.Length == 0)
        {
            return null;
        }

        if (string.Equals(code, SheetCode.Plain(_key.Code), StringComparison.Ordinal))
        {
            return true;
        }

        string student = _isShared ? "" : Find(answer.Student)?.Student ?? answer.Student;
        if (!_codes.TryGetValue(student, out string? own))
        {
            _codes[student] = own = SheetCode.Of(_key.Code, student);
        }

        return string.Equals(code, own, StringComparison.Ordinal);
    }

    private void TellForeign(Dictionary<string, (int Line, int Rows)> foreign, bool isAll)
    {
        if (foreign.Count > 0 && isAll)
        {
            _findings.Add(Messages.AnswersOfAnotherHomework(foreign.Values.Sum(one => one.Rows), foreign.First().Value.Line));
            return;
        }

        foreach ((string student, (int line, int rows)) in foreign.Take(MostTold))
        {
            _findings.Add(Messages.AnswersOfAnotherSheet(student, rows, line));
        }

        if (MostTold < foreign.Count)
        {
            _findings.Add(Messages.MoreAnswersOfAnotherSheet(foreign.Count - MostTold, foreign.Skip(MostTold).First().Value.Line));
        }
    }

    private void TellUnknown(Dictionary<string, (int Line, int Rows)> unknown)
    {
        foreach ((string student, (int line, int rows)) in unknown.Take(MostTold))
        {
            _findings.Add(Messages.NoStudent(student, Nearest.Of(student, _exact.Keys), rows, line));
        }

        if (MostTold < unknown.Count)
        {
            _findings.Add(Messages.MoreStudentsUnknown(unknown.Count - MostTold, unknown.Skip(MostTold).First().Value.Line));
        }
    }

    /// <summary>A student by the id as it is, or as a spreadsheet or a person leaves it: other case, without leading zeros.</summary>
    private KeySheet? Find(string student) => _exact.GetValueOrDefault(student) ?? _plain.GetValueOrDefault(Plain(student));

    private static string Plain(string id)
    {
        string plain = id.Trim().ToUpperInvariant();
        return plain.Length > 0 && plain.All(char.IsAsciiDigit) ? plain.TrimStart('0') : plain;
    }

    /// <summary>A question by its id, its number, or the template where it stands on the sheet once.</summary>
    private static KeyQuestion? Question(KeySheet sheet, string name)
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
}
