namespace FrontEnd.Teaching.Problems;

/// <summary>Puts each answer to its student and question.</summary>
internal sealed class AnswerSheets
{
    // So many unknown students are told one by one; a list of another class has hundreds.
    private const int MostTold = 20;

    private readonly List<Finding> _findings;
    private readonly Dictionary<string, KeySheet> _exact = new(StringComparer.Ordinal);

    /// <summary>By their plain ids; null where two share one.</summary>
    private readonly Dictionary<string, KeySheet?> _plain = new(StringComparer.Ordinal);

    public AnswerSheets(IReadOnlyList<KeySheet> sheets, List<Finding> findings)
    {
        _findings = findings;
        foreach (KeySheet sheet in sheets)
        {
            _exact.TryAdd(sheet.Student, sheet);
            if (!_plain.TryAdd(Plain(sheet.Student), sheet))
            {
                _plain[Plain(sheet.Student)] = null;
            }
        }
    }

    /// <summary>The answers that are for somebody; the first of two counts. What is for nobody is told.</summary>
    public Dictionary<(string Student, string Question), GivenAnswer> Sort(IReadOnlyList<GivenAnswer> answers)
    {
        Dictionary<(string, string), GivenAnswer> found = [];
        Dictionary<string, (int Line, int Rows)> unknown = new(StringComparer.Ordinal);
        foreach (GivenAnswer answer in answers)
        {
            if (Find(answer.Student) is not { } sheet)
            {
                (int line, int rows) = unknown.GetValueOrDefault(answer.Student, (answer.Line, 0));
                unknown[answer.Student] = (line, rows + 1);
            }
            else if (Question(sheet, answer.Question) is not { } question)
            {
                _findings.Add(Messages.NoQuestion(answer.Question, sheet.Questions.Count, answer.Line));
            }
            else if (!found.TryAdd((sheet.Student, question.Id), answer))
            {
                // A line copied twice, or one left empty and filled in below, is no second answer.
                GivenAnswer first = found[(sheet.Student, question.Id)];
                bool isSame = string.Equals(first.Text.Trim(), answer.Text.Trim(), StringComparison.Ordinal);
                if (string.IsNullOrWhiteSpace(first.Text))
                {
                    found[(sheet.Student, question.Id)] = answer;
                }
                else if (!isSame && !string.IsNullOrWhiteSpace(answer.Text))
                {
                    _findings.Add(Messages.AnsweredTwice(answer.Student, question.Id, answer.Line));
                }
            }
        }

        foreach ((string student, (int line, int rows)) in unknown.Take(MostTold))
        {
            _findings.Add(Messages.NoStudent(student, Nearest.Of(student, _exact.Keys), rows, line));
        }

        if (MostTold < unknown.Count)
        {
            _findings.Add(Messages.MoreStudentsUnknown(unknown.Count - MostTold, unknown.Skip(MostTold).First().Value.Line));
        }

        return found;
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
