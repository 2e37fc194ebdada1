namespace FrontEnd.Text;

/// <summary>Messages of problem sheets, marking, glossary and sites: FE08xx.</summary>
internal static partial class Messages
{
    public const string AnswerNotRead = "FE0801";
    public const string StudentUnknown = "FE0802";
    public const string QuestionUnknown = "FE0803";
    public const string QuestionTwice = "FE0804";
    public const string RowFields = "FE0805";
    public const string ColumnMissing = "FE0806";
    public const string StudentId = "FE0807";
    public const string KeyUnreadable = "FE0808";
    public const string TopicUnknown = "FE0809";
    public const string TermUnknown = "FE0810";
    public const string SiteUnknown = "FE0811";
    public const string HeadMeasure = "FE0812";
    public const string HeadMeasuresApart = "FE0440";
    public const string NoRows = "FE0813";
    public const string QuoteOpen = "FE0814";
    public const string TooFewTemplates = "FE0816";
    public const string AnotherSheet = "FE1070";
    public const string KeyEdited = "FE1071";
    public const string KeyUnsealed = "FE1072";
    public const string KeyMarksSealed = "FE1084";
    public const string WritesInput = "FE1073";
    public const string FolderHasAnswers = "FE1074";
    public const string SecretMissing = "FE1086";
    public const string SecretEmpty = "FE1087";
    public const string SecretShort = "FE1088";
    public const string SecretHandedOut = "FE1089";
    public const string TemplateUnknown = "FE1130";
    public const string TemplatesTooMany = "FE1131";
    public const string BesideHomework = "FE1132";
    public const string RubricQuestion = "FE1133";
    public const string SheetFields = "FE1134";

    public const string AnotherHomework = "FE1150";
    public const string SheetsExchanged = "FE1151";
    public const string SheetOfAnother = "FE1075";

    public const string LessonUnknown = "FE1110";
    public const string LessonKeyAbsent = "FE1111";
    public const string LessonChangesNothing = "FE1112";
    public const string LessonFigureAbsent = "FE1113";

    public static Finding NoLesson(string name, string? nearest, IEnumerable<string> known) =>
        new(LessonUnknown, Severity.Error, "", $"there is no lesson `{name}`", nearest is null ? null : $"the nearest is `{nearest}`",
            $"use one of {string.Join(", ", known)}");

    public static Finding NothingToChange(string lesson, string key) =>
        new(LessonKeyAbsent, Severity.Error, key, $"the lesson {lesson} changes {key}, and the design has no such value", null,
            "take another design, or leave out --design");

    public static Finding ChangesNothing(string lesson, string key, string value) =>
        new(LessonChangesNothing, Severity.Error, key, $"the lesson {lesson} would set {key} to {value}, which it is already", null,
            "give another value with --to");

    public static Finding NoFigureToWatch(string lesson, string figure, string because) =>
        new(LessonFigureAbsent, Severity.Error, "", $"the lesson {lesson} is about {figure}, which neither the design nor the changed one has", because,
            "take another design, or leave out --design");

    public static Finding AskedAgain(int count, int templates) =>
        new(TooFewTemplates, Severity.Warning, "--count", $"{count} questions are requested, but only {templates} templates fit",
            "templates are used again with other numbers", "choose more topics, or leave out the level");

    public static Finding NoTemplateOf(string id, string? nearest) =>
        new(TemplateUnknown, Severity.Error, "templates", $"there is no kind of problem `{id}`",
            nearest is null ? null : $"the nearest is `{nearest}`", "`frontend problems --list` shows them all");

    public static Finding MoreTemplatesThanQuestions(int templates, int questions) =>
        new(TemplatesTooMany, Severity.Error, "count", $"{Count(templates, "template")} are listed and {Count(questions, "question")} asked for",
            "every listed template is asked", "raise count, or leave it out");

    public static Finding NoQuestionOf(string key, string id, string last) =>
        new(RubricQuestion, Severity.Error, key, $"there is no question `{id}` on the sheets", $"they have q1 to {last}",
            "name a question of the sheets, or raise count");

    public static Finding FieldsUnfit(int fields, int most, int longest) =>
        new(SheetFields, Severity.Error, "fields", $"the {Count(fields, "field")} do not fit the top of a sheet", $"there is room for {most}, each of 1 to {longest} letters",
            "leave some out, or name them more shortly");

    public static Finding SaidInHomework(string option, string path) =>
        new(BesideHomework, Severity.Error, option, $"{option} is given beside --homework", "the homework's file says it, so that it stands in one place",
            $"write it into the file, or leave out {option}") { File = path };

    public static Finding NoSecret() =>
        new(SecretMissing, Severity.Warning, "--secret", "the sheets are drawn without a secret",
            "anyone who has this program and guesses the seed can draw the key", $"write {SecretBytes} or more letters that nobody can guess into a file, give it with --secret FILE, and keep it: the same secret and seed give the same sheets");

    public static Finding EmptySecret(string path) =>
        new(SecretEmpty, Severity.Error, "--secret", "the secret file is empty", null,
            $"write {SecretBytes} or more letters that nobody can guess into it") { File = path };

    public static Finding ShortSecret(string path, int bytes) =>
        new(SecretShort, Severity.Warning, "--secret", $"the secret has only {Count(bytes, "byte")}; {SecretBytes} or more cannot be found by trial",
            "a sheet's numbers show whether a guess is right", "use a longer one for the next homework: another secret gives other sheets") { File = path };

    public static Finding SecretInFolder(string path, string folder) =>
        new(SecretHandedOut, Severity.Warning, "--secret", $"the secret is in `{folder}`, the folder from which sheets are handed out", null,
            "keep it somewhere else") { File = path };

    /// <summary>A secret shorter than this may be found by trying.</summary>
    public const int SecretBytes = 16;

    public static Finding NoTemplate() =>
        new(TooFewTemplates, Severity.Error, "--topic", "no template has this topic and level", null,
            "leave out the level, or choose more topics");

    public static Finding NoTopic(string word, string? nearest, IEnumerable<string> known) =>
        new(TopicUnknown, Severity.Error, "--topic", $"there is no topic `{word}`", nearest is null ? null : $"the nearest is `{nearest}`",
            $"use one of {string.Join(", ", known)}");

    public static Finding FieldCount(string path, int line, int fields, int expected) =>
        new(RowFields, Severity.Warning, "", $"the row has {Count(fields, "field")}, the first row has {expected}; it is left out",
            "a comma inside an answer splits it", "put text with a comma in double quotes, and use a decimal point")
        { File = path, Line = line };

    public static Finding NoColumn(string path, string column, IEnumerable<string> wanted) =>
        new(ColumnMissing, Severity.Error, "", $"the first row has no column `{column}`", null,
            $"start the file with the line {string.Join(",", wanted)}") { File = path, Line = 1 };

    public static Finding OpenQuote(string path, int line) =>
        new(QuoteOpen, Severity.Warning, "", "a double quote is never closed; the row and all that follow are left out", null,
            "close it, or double it if it is part of the text") { File = path, Line = line };

    public static Finding EmptyTable(string path) => new(NoRows, Severity.Error, "", "the file has no rows", null, null) { File = path };

    public static Finding BadStudent(string path, int line, string what) =>
        new(StudentId, Severity.Warning, "id", $"{what}; the row is left out", "a student's numbers follow from the id",
            "give every student a different id") { File = path, Line = line };

    public static Finding BadKey(string path, string what) =>
        new(KeyUnreadable, Severity.Error, "", $"the key cannot be used: {what}", null,
            "use the key.json that was written with the sheets, unchanged") { File = path };

    public static Finding NoTerm(string term, IReadOnlyList<string> nearest) =>
        new(TermUnknown, Severity.Error, "", $"the glossary has no term `{term}`",
            nearest.Count == 0 ? null : $"the nearest are {string.Join(", ", nearest.Select(one => $"`{one}`"))}",
            "`frontend glossary` lists all terms");

    public static Finding NoSite(string site, string? nearest) =>
        new(SiteUnknown, Severity.Error, "", $"there is no site `{site}` in the 10-20 system",
            nearest is null ? null : $"the nearest is `{nearest}`", "`frontend sites` lists the sites");

    /// <param name="circumferences">What would go with the other two measures; null where these two alone are no head's.</param>
    public static Finding NotOneHead(string circumference, (string Least, string Most)? circumferences) =>
        new(HeadMeasuresApart, Severity.Error, "--circumference", "the three measures do not fit one head",
            circumferences is var (least, most)
                ? $"on a head with the other two measures the ring is {least} to {most} long, but {circumference} is given"
                : "one arc over the vertex is more than twice the other",
            "measure all three again, along the skin: nasion to inion, ear to ear over the vertex, and around through Fpz, T7, Oz and T8");

    public static Finding HeadSize(string option, string value, string range) =>
        new(HeadMeasure, Severity.Error, option, $"{value} is not a measure of a head",
            $"heads measure {range} there (common practice, no source)", "measure along the skin, in centimetres");

    internal static Finding AnswerUnreadable(string student, string question, string problem, int line) =>
        new(AnswerNotRead, Severity.Warning, question, $"the answer of `{student}` cannot be read: {problem}", null, null) { Line = line };

    internal static Finding NoStudent(string student, string? nearest, int rows, int line) =>
        new(StudentUnknown, Severity.Warning, "student",
            $"the key has no student `{student}`; {(rows == 1 ? "the row is" : $"the student's {rows} rows are")} left out",
            nearest is null ? null : $"the nearest is `{nearest}`",
            "correct the id; who joined late is added at the end of the list of students and gets a sheet with `frontend problems` and --again, and nobody else's numbers change") { Line = line };

    internal static Finding AnswersOfAnotherHomework(int rows, int line) =>
        new(AnotherSheet, Severity.Error, "sheet", $"these are answers to another homework: none of {Count(rows, "row")} has the code of a sheet of this key",
            "a sheet's code follows from its homework and its student", "mark them with the key of their own homework") { Line = line };

    /// <param name="values">Answers that could tell.</param>
    /// <param name="fitting">Those of them that their question explains.</param>
    /// <param name="byChance">So many of them a question with other numbers explains.</param>
    internal static Finding ProbablyAnotherHomework(int values, int fitting, double byChance, int least, int students, int line) =>
        new(AnotherHomework, Severity.Warning, "answer",
            $"these are probably answers to another homework: {fitting} of {Count(values, "value")} {(fitting == 1 ? "fits its" : "fit their")} question of this key, and by chance {QuantityText.FormatTrimmed(Math.Round(byChance, 1), "1", 4)} would",
            $"a value fits that is right or that a slip, a sign, a power of ten or a rounding explains; this is said of {least} values or more, of {students} students or more, where no more fit than by chance: even a class that did badly shows so few only once in a hundred times",
            "mark them with the key of their own homework; the column `sheet` of answers-blank.csv tells it for certain") { Line = line };

    /// <param name="pairs">Whose answers fit whose sheet.</param>
    internal static Finding AnswersFitOtherSheets(int students, int of, IReadOnlyList<(string Student, string Sheet)> pairs, int line) =>
        new(SheetsExchanged, Severity.Warning, "student",
            $"the answers of {students} of {Count(of, "student")} that were looked at fit the sheet of somebody else: {string.Join(", ", pairs.Select(pair => $"those of `{pair.Student}` the sheet of `{pair.Sheet}`"))}{(pairs.Count < students ? " …" : "")}",
            "at least three of a student's values, and half of them, are right on the other sheet and not on the student's own",
            "see whether the column of students has slipped by a row, or whether the list is in another order than the answers") { Line = line };

    /// <param name="there">Answers that are right on the other's sheet.</param>
    /// <param name="here">Those that are right on the student's own.</param>
    internal static Finding AnswersOfOneFitAnotherSheet(string student, string other, int there, int here, int values, int line) =>
        new(SheetOfAnother, Severity.Warning, "student",
            $"the answers of `{student}` fit the sheet of `{other}`: {there} of {Count(values, "value")} are right there, and {here} on the student's own",
            "every student has other numbers; the marks are by the student's own sheet",
            "see whether the two have exchanged their sheets, or whether the answers were typed into the wrong rows") { Line = line };

    internal static Finding AnswersOfAnotherSheet(string student, int rows, int line) =>
        new(AnotherSheet, Severity.Warning, "sheet",
            $"`{student}` has {Count(rows, "answer")} to another sheet; {(rows == 1 ? "it is" : "they are")} left out",
            "the code in the list is not that of the student's sheet of this homework",
            "mark them with the key of their own homework, or put the sheet's own student there") { Line = line };

    internal static Finding MoreAnswersOfAnotherSheet(int students, int line) =>
        new(AnotherSheet, Severity.Warning, "sheet", $"{Count(students, "more student")} answered other sheets; their rows are left out", null,
            "check that list and key are of one homework") { Line = line };

    public static Finding EditedKey(string path, bool isTrusted) => Key(KeyEdited, path, isTrusted,
        "the key was changed after it was written: its seal does not fit what it holds",
        "the seal is a hash over what the file holds, questions, givens and solutions included");

    /// <summary>The seal fits, and says less than today's.</summary>
    public static Finding MarksSealedKey(string path) => new(KeyMarksSealed, Severity.Warning, "",
        "the key's seal is of an older version, and covers what decides marks alone",
        "answers, ranges, slips and points are as they were written; the questions' texts, what they give and their worked solutions may have been changed", null) { File = path };

    public static Finding UnsealedKey(string path, bool isTrusted) => Key(KeyUnsealed, path, isTrusted,
        "the key is of an older version and has no seal, so that nothing tells whether it was changed",
        "keys are sealed from version 2 on");

    private static Finding Key(string code, string path, bool isTrusted, string message, string because) =>
        isTrusted
            ? new(code, Severity.Warning, "", message, because, null) { File = path }
            : new(code, Severity.Error, "", message, because,
                "use the key.json that was written with the sheets, or give --trust-key if it was changed on purpose") { File = path };

    public static Finding OutputIsInput(string output, string input) =>
        new(WritesInput, Severity.Error, "-o", $"`{output}` is the file `{input}` that is read here", "what is read is never written over",
            "name another file") { File = output };

    public static Finding FolderHasInput(string folder, string input) =>
        new(WritesInput, Severity.Error, "-o", $"`{input}`, which is read here, stands where files of the homework are written in `{folder}`",
            "what is read is never written over", "name another folder") { File = input };

    public static Finding OutputIsList(string output, string what) =>
        new(WritesInput, Severity.Error, "-o", $"`{output}` is there and is {what}, no list of marks", "it would be lost",
            "name another file") { File = output };

    public static Finding AnswersInFolder(string folder, IReadOnlyList<string> files) =>
        new(FolderHasAnswers, Severity.Error, "-o", $"`{folder}` already holds answers: {string.Join(", ", files.Select(file => $"`{file}`"))}",
            "sheets and key written anew may not be those that were answered",
            "name another folder, or give --again: what was filled in is then kept under another name");

    internal static Finding MoreStudentsUnknown(int more, int line) =>
        new(StudentUnknown, Severity.Warning, "student", $"the key has none of {Count(more, "more student")}; their rows are left out", null,
            "check that list and key are of one class") { Line = line };

    internal static Finding NoQuestion(string question, int count, int line) =>
        new(QuestionUnknown, Severity.Warning, "question", $"the sheet has no question `{question}`; the row is left out",
            $"its questions are q1 to q{count}", null) { Line = line };

    internal static Finding AnsweredTwice(string student, string question, int line) =>
        new(QuestionTwice, Severity.Warning, question, $"`{student}` answers it twice; the first answer counts", null,
            "remove one of the rows") { Line = line };

    private static string Count(int number, string noun) => number == 1 ? $"1 {noun}" : $"{number} {noun}s";
}
