namespace FrontEnd.Teaching.Problems;

/// <summary>Whether answers that name no sheet belong to another homework, or to other sheets of this one.</summary>
/// <remarks>
/// Nothing but the values can tell. What answers to other numbers of the same questions would fit by chance is counted on other sheets of the key, and where
/// there are too few, on numbers drawn anew. A class that did badly must not be suspected, so that much has to come together: no more values fit than by
/// chance, which no class reaches that made known slips; and so few that a class of which a fifth is explained would show them once in a hundred times. One or
/// two students can be as wrong as that.
/// </remarks>
internal static class OtherHomework
{
    /// <summary>Fewer values, or those of fewer students, tell nothing.</summary>
    public const int LeastValues = 20, LeastStudents = 3;

    // A class that did badly has at least this share of right and explained values, beyond chance.
    private const double LeastExplained = 0.2;

    // Deviations that leave one case of a hundred on one side, and of fifty.
    private const double OneInAHundred = 2.33, OneInFifty = 2;

    private const int MostOthers = 12, MostStudents = 40, MostPairs = 3, LeastOnOther = 3;

    // One student alone: so many values, and of them three in four, are no chance, where no more than one in four is right on the own sheet.
    private const int LeastOfOne = 4;
    private const double MostOwn = 0.25, LeastShareOnOther = 0.75;

    /// <summary>What is said; null where nothing speaks for it.</summary>
    /// <param name="sheets">One for each student.</param>
    /// <param name="answers">By student and question, none of them known to be of its sheet.</param>
    /// <param name="withoutQuestion">Further answers, for questions that the sheets do not have.</param>
    public static Finding? Finding(IReadOnlyList<KeySheet> sheets, IReadOnlyList<KeyValuePair<(string Student, string Question), GivenAnswer>> answers, int withoutQuestion)
    {
        Dictionary<string, KeySheet> bySheet = sheets.ToDictionary(sheet => sheet.Student, StringComparer.Ordinal);
        Telling[] telling = [.. answers.Select(answer => Of(bySheet[answer.Key.Student], answer.Key.Question, answer.Value)).OfType<Telling>()];
        int values = telling.Length + withoutQuestion, fitting = telling.Count(one => one.Fits(one.Question));
        bool isEnough = LeastValues <= values && LeastStudents <= telling.Select(one => one.Student).Distinct(StringComparer.Ordinal).Count();
        if (!isEnough || LeastExplained * values < fitting)
        {
            return null;
        }

        int line = telling.Min(one => one.Line);
        if (Exchanged(sheets, telling) is var (looked, pairs) && looked <= 2 * pairs.Count)
        {
            return Messages.AnswersFitOtherSheets(pairs.Count, looked, [.. pairs.Take(MostPairs)], line);
        }

        Dictionary<(string, string), KeyQuestion[]> others = [];
        double byChance = telling.Sum(one => Share(one, others, sheets));
        double share = LeastExplained + (byChance / values), ofBadClass = values * share, spread = Math.Sqrt(values * share * (1 - share));
        return fitting <= byChance + (OneInFifty * Math.Sqrt(byChance)) && fitting <= ofBadClass - (OneInAHundred * spread)
            ? Messages.ProbablyAnotherHomework(values, fitting, byChance, LeastValues, LeastStudents, line)
            : null;
    }

    /// <summary>Students whose answers are right on somebody else's sheet and not on their own, each told alone: of two exchanged sheets, or of one that was
    /// copied, the rest of the class shows nothing.</summary>
    /// <param name="few">Who has no more right than <see cref="MostOwn"/> of the answers.</param>
    public static IEnumerable<Finding> OfOne(IReadOnlyList<KeySheet> sheets, IReadOnlyDictionary<(string Student, string Question), GivenAnswer> found, IEnumerable<string> few)
    {
        Dictionary<string, KeySheet> bySheet = sheets.ToDictionary(sheet => sheet.Student, StringComparer.Ordinal);
        foreach (KeySheet own in few.Take(MostStudents).Select(student => bySheet[student]))
        {
            Telling[] values =
            [
                .. own.Questions.Select(question => found.TryGetValue((own.Student, question.Id), out GivenAnswer? answer) ? Of(own, question.Id, answer) : null)
                    .OfType<Telling>().Where(one => one.Read.State is not AnswerState.Failed),
            ];
            int least = Math.Max(LeastOfOne, (int)Math.Ceiling(LeastShareOnOther * values.Length)), right = values.Count(one => one.IsRight(one.Question));
            if (values.Length < least || MostOwn * values.Length < right)
            {
                continue;
            }

            (KeySheet Sheet, int Right)? fits = sheets.Where(sheet => sheet != own).Select(sheet => (Sheet: sheet, Right: RightOn(sheet, values, least)))
                .Where(one => least <= one.Right).Select(one => ((KeySheet, int)?)one).FirstOrDefault();
            if (fits is var (other, there))
            {
                yield return Messages.AnswersOfOneFitAnotherSheet(own.Student, other.Student, there, right, values.Length, values.Min(one => one.Line));
            }
        }
    }

    /// <summary>True for a share of right answers that says nothing for a student's own sheet.</summary>
    public static bool IsFew(int right, int answered) => LeastOfOne <= answered && right <= MostOwn * answered;

    /// <summary>How many values are right on another sheet; 0 as soon as they can be no <paramref name="least"/>.</summary>
    private static int RightOn(KeySheet sheet, Telling[] values, int least)
    {
        int right = 0, left = values.Length;
        foreach (Telling one in values)
        {
            KeyQuestion? other = sheet.Questions.FirstOrDefault(question => string.Equals(question.Id, one.Question.Id, StringComparison.Ordinal));
            right += other is not null && other.Value != one.Question.Value && one.IsRight(other) ? 1 : 0;
            left--;
            if (right + left < least)
            {
                return 0;
            }
        }

        return right;
    }

    /// <summary>An answer that can tell: a value, or what this question cannot have as its answer. Null for a choice, which is right by chance too often, and for
    /// what is no answer.</summary>
    private static Telling? Of(KeySheet sheet, string id, GivenAnswer answer)
    {
        KeyQuestion question = sheet.Questions.First(one => string.Equals(one.Id, id, StringComparison.Ordinal));
        if (string.IsNullOrWhiteSpace(answer.Text))
        {
            return null;
        }

        if (question.Kind is not { } kind)
        {
            return AnswerReader.IsOfOtherUnit(null, answer.Read) && AnswerReader.Choice(question.Options, answer.Read).State is AnswerState.Failed
                ? new Telling(sheet.Student, question, AnswerReading.Failed(""), answer.Line)
                : null;
        }

        AnswerReading read = AnswerReader.Quantity(kind, answer.Read, AskedUnit.Of(kind, question));
        return read.State is not AnswerState.Failed || AnswerReader.IsOfOtherUnit(kind, answer.Read) || AnswerReader.IsLetter(answer.Text)
            ? new Telling(sheet.Student, question, read, answer.Line)
            : null;
    }

    /// <summary>Share of the same questions with other numbers that explain an answer.</summary>
    private static double Share(Telling answer, Dictionary<(string, string), KeyQuestion[]> known, IReadOnlyList<KeySheet> sheets)
    {
        (string Id, string Template) place = (answer.Question.Id, answer.Question.Template);
        if (answer.Read.State is AnswerState.Failed)
        {
            return 0;
        }

        if (!known.TryGetValue(place, out KeyQuestion[]? others))
        {
            known[place] = others = Others(answer.Question, sheets);
        }

        KeyQuestion[] different = [.. others.Where(one => one.Value != answer.Question.Value)];
        return different.Length == 0 ? 0 : different.Count(answer.Fits) / (double)different.Length;
    }

    /// <summary>The same question with other numbers: of other sheets, and where these are few, drawn anew.</summary>
    private static KeyQuestion[] Others(KeyQuestion question, IReadOnlyList<KeySheet> sheets)
    {
        KeyQuestion[] ofKey =
        [
            .. sheets.SelectMany(sheet => sheet.Questions)
                .Where(one => string.Equals(one.Id, question.Id, StringComparison.Ordinal) && string.Equals(one.Template, question.Template, StringComparison.Ordinal))
                .DistinctBy(one => one.Value).Take(MostOthers + 1),
        ];
        return ofKey.Length <= MostOthers && TemplateSet.Find(question.Template) is { } template
            ? [.. ofKey, .. Enumerable.Range(1, MostOthers).Select(seed => Key.QuestionOf(new Question(question.Id, template.For((ulong)seed, ""))))]
            : ofKey;
    }

    /// <summary>Students whose answers are right on another sheet of the key and not on their own, and how many were looked at.</summary>
    private static (int Looked, IReadOnlyList<(string Student, string Sheet)> Pairs) Exchanged(IReadOnlyList<KeySheet> sheets, Telling[] telling)
    {
        List<(string, string)> pairs = [];
        int looked = 0;
        foreach (IGrouping<string, Telling> student in telling.GroupBy(one => one.Student, StringComparer.Ordinal).Take(MostStudents))
        {
            looked++;
            Telling[] values = [.. student.Where(one => one.Read.State is not AnswerState.Failed)];
            int least = Math.Max(LeastOnOther, (values.Length + 1) / 2);
            if (values.Length < least || least <= values.Count(one => one.IsRight(one.Question)))
            {
                continue;
            }

            KeySheet? fits = sheets.FirstOrDefault(sheet => !string.Equals(sheet.Student, student.Key, StringComparison.Ordinal)
                && least <= values.Count(one => sheet.Questions.FirstOrDefault(question => string.Equals(question.Id, one.Question.Id, StringComparison.Ordinal)) is { Value: var value } other
                    && value != one.Question.Value && one.IsRight(other)));
            if (fits is not null)
            {
                pairs.Add((student.Key, fits.Student));
            }
        }

        return (looked, pairs);
    }

    /// <summary>An answer that can tell.</summary>
    /// <param name="Read">Failed for what this question cannot have as its answer.</param>
    private sealed record Telling(string Student, KeyQuestion Question, AnswerReading Read, int Line)
    {
        public bool Fits(KeyQuestion question) => Mark(question) is var (points, slip) && (points > 0 || slip.Length > 0);

        public bool IsRight(KeyQuestion question) => Mark(question).Points == question.Points;

        private (double Points, string Slip) Mark(KeyQuestion question)
        {
            if (Read.State is AnswerState.Failed || question.Kind is not { } kind)
            {
                return (0, "");
            }

            (double points, string slip, _) = Marker.Judge(question, Read, AskedUnit.Of(kind, question), new QuestionRubric());
            return (points, slip);
        }
    }
}
