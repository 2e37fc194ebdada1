using System.Text;
using FrontEnd.Teaching;
using FrontEnd.Teaching.Problems;

namespace FrontEnd.Documents.Teaching;

/// <summary>Reads one template and checks it: kinds, ranges, expressions with their dimensions, and that there is an answer for whatever is
/// drawn.</summary>
/// <param name="table">Its table.</param>
/// <param name="ids">Ids that are taken; its own is added.</param>
internal sealed class OwnTemplateReader(KeyReader table, HashSet<string> ids)
{
    /// <summary>A template should have as many different answers, so that a class does not share them.</summary>
    private const int EnoughAnswers = 200;

    private const double UsualTolerance = 0.02, UsualAmount = 0.1, UsualShare = 0.5;

    private readonly Dictionary<string, Dimension> _known = new(StringComparer.Ordinal);

    /// <summary>Kinds by the words that files use: resistance, voltage-rms.</summary>
    public static IReadOnlyDictionary<string, QuantityKind> Kinds { get; } = QuantityKind.All.ToDictionary(kind => Word(kind), StringComparer.Ordinal);

    /// <summary>The template; null where something is wrong with it.</summary>
    public OwnTemplate? Read()
    {
        string? id = ReadId(), title = table.Text("title", "Noise of a contact"), text = table.Text("text", "How large is the noise in the band, rms?");
        Topic? topic = Topics.Find(ReadWord("topic", Topics.Words, "noise") ?? "");
        double? level = table.Number("level", 1, 3, isWhole: true, "2");
        List<OwnGiven> givens = [.. table.Tables("givens").Select(ReadGiven).OfType<OwnGiven>()];
        if (!table.Failed && givens.Count == 0)
        {
            table.Fail(OwnTemplateMessages.MissingKey(table.KeyOf("givens"), "givens = [{ symbol = \"R\", name = \"resistance\", values = [\"10 kΩ\", \"22 kΩ\"] }]"), "givens");
        }

        List<OwnStep> steps = [.. table.Tables("steps").Select(ReadStep).OfType<OwnStep>()];
        KeyReader? answerTable = table.Table("answer", "answer = { kind = \"voltage-rms\", formula = \"e*sqrt(B)\" }");
        OwnAnswer? answer = answerTable is null ? null : ReadAnswer(answerTable);
        List<KeyReader> slipTables = table.Tables("slips");
        List<OwnSlip> slips = [.. slipTables.Select((slip, at) => ReadSlip(slip, at + 1, id, answer)).OfType<OwnSlip>()];
        table.End();
        if (_failed || table.Failed || id is null || title is null || text is null || topic is null || level is null || answer is null)
        {
            return null;
        }

        OwnTemplate template = new(id, topic.Value, (int)level.Value, title, text) { Givens = givens, Steps = steps, Answer = answer, Slips = slips, Source = table.Written };
        return Check(template, answerTable!, slipTables) ? template : null;
    }

    private bool _failed;

    private static string Word(QuantityKind kind)
    {
        StringBuilder word = new();
        foreach (char letter in kind.Name)
        {
            word.Append(char.IsUpper(letter) && word.Length > 0 ? "-" : "").Append(char.ToLowerInvariant(letter));
        }

        return word.ToString();
    }

    private string? ReadId()
    {
        if (table.Text("id", "contact-noise") is not { } id)
        {
            return null;
        }

        string? why = !id.All(letter => char.IsAsciiLetterLower(letter) || char.IsAsciiDigit(letter) || letter == '-') ? "is no id: it has other letters than a to z, digits and hyphens"
            : !ids.Add(id) ? "is the id of another template" : null;
        if (why is not null)
        {
            table.Fail(OwnTemplateMessages.BadId(table.KeyOf("id"), id, why), "id");
            return null;
        }

        return id;
    }

    private string? ReadWord(string key, IReadOnlyList<string> words, string example) => ReadWord(table, key, words, example);

    private static string? ReadWord(KeyReader from, string key, IReadOnlyList<string> words, string? example)
    {
        if (from.Text(key, example) is not { } word)
        {
            return null;
        }

        if (words.FirstOrDefault(one => string.Equals(one, word.Trim(), StringComparison.OrdinalIgnoreCase)) is { } known)
        {
            return known;
        }

        from.Fail(OwnTemplateMessages.NotOneOf(from.KeyOf(key), word, Nearest.Of(word, words), words), key);
        return null;
    }

    private static QuantityKind? ReadKind(KeyReader from, string? example)
    {
        if (from.Text("kind", example) is not { } word)
        {
            return null;
        }

        if (Kinds.TryGetValue(word.Trim(), out QuantityKind? kind))
        {
            return kind;
        }

        from.Fail(OwnTemplateMessages.NoKind(from.KeyOf("kind"), word, Nearest.Of(word, Kinds.Keys), Kinds.Keys), "kind");
        return null;
    }

    private OwnGiven? ReadGiven(KeyReader given)
    {
        string? symbol = ReadSymbol(given, "R"), name = given.Text("name", "resistance of the contact");
        IReadOnlyList<(string Text, int At)>? listed = given.Texts("values");
        string? least = given.Text("least", null), greatest = given.Text("greatest", null);
        string? first = listed is [var (text, _), ..] ? text : least;
        QuantityKind? kind = ReadKind(given, null);
        if (kind is null && !given.Failed && first is not null && (kind = OwnGiven.KindOf(first)) is null)
        {
            given.Fail(OwnTemplateMessages.WantsKind(given.KeyOf("kind"), first), listed is null ? "least" : "values");
        }

        double[]? values = kind is null ? null : listed is not null ? Listed(given, kind, listed) : Ranged(given, kind, least, greatest);
        if (first is null && !given.Failed)
        {
            given.Fail(OwnTemplateMessages.Empty(given.Path, "neither values nor least and greatest are given", "add values = [\"10 kΩ\", \"22 kΩ\"], or least, greatest and series"), "values");
        }

        _ = given.Text("series", null);
        given.End();
        _failed |= given.Failed;
        if (symbol is not null && kind is not null)
        {
            _known[symbol] = Dimension.Of(kind);
        }

        return given.Failed || symbol is null || name is null || kind is null || values is null ? null : new OwnGiven(symbol, name, kind, values);
    }

    private string? ReadSymbol(KeyReader from, string? example)
    {
        if (from.Text("symbol", example) is not { } symbol)
        {
            return null;
        }

        string? why = Arithmetic.Read(symbol, out _) is not Arithmetic.Name ? "formulas could not name it"
            : Arithmetic.IsTaken(symbol) ? "it is the name of a constant or a function"
            : _known.ContainsKey(symbol) ? "another value has it" : null;
        if (why is not null)
        {
            from.Fail(OwnTemplateMessages.BadSymbol(from.KeyOf("symbol"), symbol, why), "symbol");
            return null;
        }

        return symbol;
    }

    private static double[]? Listed(KeyReader given, QuantityKind kind, IReadOnlyList<(string Text, int At)> texts)
    {
        List<double> values = [];
        foreach ((string text, int at) in texts)
        {
            if (QuantityText.TryParse(kind, text, out IQuantity? value, out ParseProblem? problem))
            {
                values.Add(value!.SiValue);
            }
            else
            {
                given.FailAt(problem!.ToFinding(given.KeyOf("values"), text), at);
            }
        }

        if (texts.Count == 0)
        {
            given.Fail(OwnTemplateMessages.Empty(given.KeyOf("values"), "the list of values is empty", "put at least one value into it"), "values");
        }

        return given.Failed ? null : [.. values.Distinct()];
    }

    private static double[]? Ranged(KeyReader given, QuantityKind kind, string? least, string? greatest)
    {
        if (least is null || greatest is null)
        {
            if (least is not null || greatest is not null)
            {
                string missing = least is null ? "least" : "greatest";
                given.Fail(OwnTemplateMessages.MissingKey(given.KeyOf(missing), $"{missing} = \"{kind.Example}\""), missing);
            }

            return null;
        }

        string word = ReadWord(given, "series", Enum.GetNames<PreferredSeries>(), null) ?? nameof(PreferredSeries.E12);
        if (Value(given, kind, "least", least) is not { } low || Value(given, kind, "greatest", greatest) is not { } high || given.Failed)
        {
            return null;
        }

        double[] values = OwnGiven.Preferred(kind.FromSi(low), kind.FromSi(high), Enum.Parse<PreferredSeries>(word));
        if (values.Length == 0)
        {
            given.Fail(low <= 0
                ? OwnTemplateMessages.Empty(given.KeyOf("least"), "a preferred series has no values at 0 or below", "give values one by one")
                : OwnTemplateMessages.Empty(given.KeyOf("least"), $"no member of {word} lies from {least} to {greatest}", "make the range wider, or the series finer"), "least");
        }

        return given.Failed ? null : values;
    }

    private static double? Value(KeyReader from, QuantityKind kind, string key, string text)
    {
        if (QuantityText.TryParse(kind, text, out IQuantity? value, out ParseProblem? problem))
        {
            return value!.SiValue;
        }

        from.Fail(problem!.ToFinding(from.KeyOf(key), text), key);
        return null;
    }

    private OwnStep? ReadStep(KeyReader step)
    {
        string? says = step.Text("says", "The contact makes thermal noise"), symbol = ReadSymbol(step, null);
        (Arithmetic Formula, Dimension Dimension)? read = ReadFormula(step, isWanted: symbol is not null);
        string? unit = step.Text("unit", null);
        step.End();
        if (symbol is not null && read is { } one)
        {
            _known[symbol] = one.Dimension;
        }

        if (unit is not null && read is { } formula && (OwnGiven.KindOf("1 " + unit) is not { } kind || Dimension.Of(kind) != formula.Dimension))
        {
            step.Fail(OwnTemplateMessages.AnswerOf(step.KeyOf("unit"), "the step", "told", unit, formula.Dimension.ToString()), "unit");
        }

        _failed |= step.Failed;
        return step.Failed || says is null ? null : new OwnStep(says, symbol ?? "", read?.Formula, unit ?? read?.Dimension.Unit ?? "1");
    }

    /// <summary>An expression and its dimension; null where there is none, or something is wrong with it.</summary>
    private (Arithmetic Formula, Dimension Dimension)? ReadFormula(KeyReader from, bool isWanted)
    {
        if (from.Text("formula", isWanted ? "sqrt(4*k_B*T*R)" : null) is not { } text)
        {
            return null;
        }

        if (Arithmetic.Read(text, out ArithmeticProblem? unread) is not { } formula)
        {
            from.Fail(Said(from, unread!), "formula", unread!.At);
            return null;
        }

        List<ArithmeticProblem> problems = [];
        Dimension? dimension = formula.DimensionOf(_known, problems);
        foreach (ArithmeticProblem problem in problems)
        {
            from.Fail(Said(from, problem), "formula", problem.At);
        }

        return dimension is { } known ? (formula, known) : null;
    }

    private static Finding Said(KeyReader from, ArithmeticProblem problem)
    {
        string key = from.KeyOf("formula");
        return problem.Fault switch
        {
            ArithmeticFault.Unread => OwnTemplateMessages.NotRead(key, problem.Message),
            ArithmeticFault.UnknownName => OwnTemplateMessages.UnknownName(key, problem.Message, problem.Near, problem.Known),
            ArithmeticFault.Arguments => OwnTemplateMessages.Given(key, problem.Message, problem.Known),
            ArithmeticFault.Dimensions => OwnTemplateMessages.Wrong(key, problem.Message),
            _ => throw new ArgumentOutOfRangeException(nameof(problem), problem.Fault, "The fault is not handled."),
        };
    }

    private OwnAnswer? ReadAnswer(KeyReader answer)
    {
        QuantityKind? kind = ReadKind(answer, "voltage-rms");
        (Arithmetic Formula, Dimension Dimension)? read = ReadFormula(answer, isWanted: true);
        double digits = answer.Number("digits", 1, 9, isWhole: true, null) ?? 3;
        string? tolerance = answer.Text("tolerance", null);
        answer.End();
        if (kind is not null && read is { } formula && formula.Dimension != Dimension.Of(kind))
        {
            answer.Fail(OwnTemplateMessages.AnswerOf(answer.KeyOf("formula"), "the answer", kind.Words, kind.SiUnit, formula.Dimension.ToString()), "formula", 0);
        }

        (double size, bool isShare) = kind is { ByDifference: true } ? (UsualAmount, false) : (UsualTolerance, true);
        if (tolerance is not null && kind is not null)
        {
            if (QuantityText.TryParse(tolerance, out Share share, out _) && tolerance.Contains('%', StringComparison.Ordinal))
            {
                (size, isShare) = (share.Fraction, true);
            }
            else if (Value(answer, kind, "tolerance", tolerance) is { } amount)
            {
                (size, isShare) = (amount, false);
            }

            if (size < 0 || (isShare && 0.5 < size))
            {
                answer.Fail(OwnTemplateMessages.Empty(answer.KeyOf("tolerance"), $"`{tolerance}` is no tolerance", "give a share up to 50 %, or an amount in the answer's unit"), "tolerance");
            }
        }

        _failed |= answer.Failed;
        return answer.Failed || kind is null || read is not { } right ? null : new OwnAnswer(kind, right.Formula, size, isShare, (int)digits);
    }

    private OwnSlip? ReadSlip(KeyReader slip, int number, string? id, OwnAnswer? answer)
    {
        string? remark = slip.Text("remark", "the square root was left out");
        (Arithmetic Formula, Dimension Dimension)? read = ReadFormula(slip, isWanted: true);
        double share = slip.Number("share", 0, 1, isWhole: false, null) ?? UsualShare;
        slip.End();
        _failed |= slip.Failed;

        // A slip may come out in another unit: who leaves a root out answers with the number all the same.
        return slip.Failed || remark is null || read is not { } wrong || answer is null ? null : new OwnSlip(new SlipKind($"{id}-{number}", remark), wrong.Formula, share);
    }

    /// <summary>Tells what the draws lead to: false where some of them have no answer.</summary>
    private static bool Check(OwnTemplate template, KeyReader answer, List<KeyReader> slips)
    {
        OwnTemplateLook look = template.Look();
        if (look.Without is { } values)
        {
            answer.Fail(OwnTemplateMessages.NotWorkedOut(answer.KeyOf("formula"), values), "formula", 0);
            return false;
        }

        for (int i = 0; i < look.IsTold.Count; i++)
        {
            if (!look.IsTold[i])
            {
                slips[i].Fail(OwnTemplateMessages.SlipNeverTold(slips[i].Path), "formula");
            }
        }

        foreach (string symbol in look.Unused)
        {
            answer.Fail(OwnTemplateMessages.NotUsed(answer.KeyOf("formula"), symbol), "formula");
        }

        if (look.Answers < EnoughAnswers)
        {
            answer.Fail(OwnTemplateMessages.Few(answer.Path, look.Answers, EnoughAnswers), "formula");
        }

        return true;
    }
}
