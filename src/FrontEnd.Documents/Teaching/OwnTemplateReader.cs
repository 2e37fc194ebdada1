using System.Text;
using FrontEnd.Catalogue;
using FrontEnd.Fields;
using FrontEnd.Identity;
using FrontEnd.Reporting;
using FrontEnd.Teaching;
using FrontEnd.Teaching.Problems;

namespace FrontEnd.Documents.Teaching;

/// <summary>Reads one template and checks it: kinds, ranges, expressions with their dimensions, and that there is an answer for whatever is
/// drawn.</summary>
/// <param name="table">Its table.</param>
/// <param name="ids">Ids that are taken; its own is added.</param>
/// <param name="folder">Where the file is, from which it names a design; null for the current folder.</param>
internal sealed class OwnTemplateReader(KeyReader table, HashSet<string> ids, string? folder)
{
    /// <summary>A template should have as many different answers, so that a class does not share them.</summary>
    private const int EnoughAnswers = 200;

    /// <summary>Combinations of drawn values that a design is tried with for a figure.</summary>
    private const int MostTried = 5;

    private const double UsualTolerance = 0.02, UsualAmount = 0.1, UsualShare = 0.5;

    private readonly Dictionary<string, Dimension> _known = new(StringComparer.Ordinal);

    /// <summary>Keys of the design by the symbols of the givens, and ids of the figures that are asked of it.</summary>
    private readonly Dictionary<string, string> _keys = new(StringComparer.Ordinal);
    private readonly List<string> _figures = [];

    /// <summary>The design as it stands, with its figures, and the text of its file.</summary>
    private Design _design = new();
    private readonly List<(string Key, double[] Values)> _drawn = [];
    private readonly List<Assessment> _tried = [];
    private string _designText = "";
    private bool _hasNoDesign;

    /// <summary>Kinds by the words that files use: resistance, voltage-rms.</summary>
    public static IReadOnlyDictionary<string, QuantityKind> Kinds { get; } = QuantityKind.All.ToDictionary(kind => Word(kind), StringComparer.Ordinal);

    /// <summary>The template; null where something is wrong with it.</summary>
    public OwnTemplate? Read()
    {
        string? id = ReadId(), title = table.Text("title", "Noise of a contact"), text = table.Text("text", "How large is the noise in the band, rms?");
        Topic? topic = Topics.Find(ReadWord("topic", Topics.Words, "noise") ?? "");
        double? level = table.Number("level", 1, 3, isWhole: true, "2");
        ReadDesign();
        List<OwnGiven> givens = [.. table.Tables("givens").Select(ReadGiven).OfType<OwnGiven>()];
        if (!table.Failed && !_failed && givens.Count == 0)
        {
            table.Fail(OwnTemplateMessages.MissingKey(table.KeyOf("givens"), "givens = [{ symbol = \"R\", name = \"resistance\", values = [\"10 kΩ\", \"22 kΩ\"] }]"), "givens");
        }

        List<OwnStep> steps = [.. table.Tables("steps").Select(ReadStep).OfType<OwnStep>()];
        KeyReader? answerTable = table.Table("answer", "answer = { kind = \"voltage-rms\", formula = \"e*sqrt(B)\" }");
        OwnAnswer? answer = answerTable is null ? null : ReadAnswer(answerTable, steps);
        List<KeyReader> slipTables = table.Tables("slips");
        List<OwnSlip> slips = [.. slipTables.Select((slip, at) => ReadSlip(slip, at + 1, id, answer)).OfType<OwnSlip>()];
        table.End();
        if (_failed || table.Failed || id is null || title is null || text is null || topic is null || level is null || answer is null)
        {
            return null;
        }

        OwnTemplate template = new(id, topic.Value, (int)level.Value, title, text) 
        {
            Givens = givens, Steps = steps, Answer = answer, Slips = slips, Source = table.Written + _designText,
            Design = _figures.Count == 0 ? null : new OwnDesign(_design, _keys, [.. _figures.Distinct(StringComparer.Ordinal)]),
        };
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

    /// <summary>The design that the template names; where it names none, the one that a file without a word is.</summary>
    private void ReadDesign()
    {
        if (table.Text("design", null) is not { } named)
        {
            return;
        }

        DesignDocument document = DesignDocument.Read(Path.Combine(folder ?? "", named));
        string? why = document.Findings.FirstOrDefault(finding => finding.Severity == Severity.Error)?.Message ?? document.NotAllKnown?.Message;
        if (why is not null)
        {
            table.Fail(OwnTemplateMessages.BadDesign(table.KeyOf("design"), named, why), "design");
            _hasNoDesign = true;
            return;
        }

        (_design, _designText) = (document.Design, document.Text);
    }

    /// <summary>The figure of the design that a step or the answer asks for; null where there is none, of which the findings say.</summary>
    private Result? ReadFigure(KeyReader from)
    {
        if (from.Text("result", null) is not { } id)
        {
            return null;
        }

        if (_hasNoDesign)
        {
            // What is wrong with the design is told; of what it would have nothing can be said.
            from.Stop();
            return null;
        }

        ResultId asked = new(id.Trim());
        if (Tried().Select(assessment => assessment.Find(asked)).FirstOrDefault(one => one is { State: ResultState.Number }) is { } result)
        {
            _figures.Add(result.Id.Text);
            return result;
        }

        string? nearest = Nearest.Of(id, _tried[0].Results.Where(one => one.State == ResultState.Number).Select(one => one.Id.Text));
        string why = _tried.TrueForAll(assessment => assessment.Find(asked) is null) ? ""
            : _tried.SelectMany(assessment => assessment.Findings).FirstOrDefault(finding => finding.Severity == Severity.Error)?.Message ?? "it is a word, or without bound";
        from.Fail(OwnTemplateMessages.NoFigure(from.KeyOf("result"), id, nearest, why), "result");
        return null;
    }

    /// <summary>The design with some of the values that are drawn, worked out as far as somebody looks: not every one of them has every figure.</summary>
    private IEnumerable<Assessment> Tried()
    {
        for (int at = 0; at < MostTried; at++)
        {
            if (_tried.Count <= at)
            {
                _tried.Add(Evaluator.Evaluate(_drawn.Aggregate(_design, (before, one) =>
                    DesignFields.Find(before, one.Key)!.WithSiValue(before, one.Values[at * (one.Values.Length - 1) / (MostTried - 1)]))));
            }

            yield return _tried[at];
        }
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
        Field<Design>? field = ReadField(given);
        string? symbol = ReadSymbol(given, "R"), name = given.Text("name", field is null && !given.Failed ? "resistance of the contact" : null) ?? field?.Meaning;
        IReadOnlyList<(string Text, int At)>? listed = given.Texts("values");
        string? least = given.Text("least", null), greatest = given.Text("greatest", null);
        string? first = listed is [var (text, _), ..] ? text : least;
        QuantityKind? kind = field is null ? ReadKind(given, null) : field.Quantity ?? QuantityKind.Of<PlainNumber>();
        if (kind is null && !given.Failed && first is not null && (kind = OwnGiven.KindOf(first)) is null)
        {
            given.Fail(OwnTemplateMessages.WantsKind(given.KeyOf("kind"), first), listed is null ? "least" : "values");
        }

        double[]? values = kind is null ? null : listed is not null ? Listed(given, kind, listed) : Ranged(given, kind, least, greatest);
        if (field is not null)
        {
            values = OfDesign(given, field, values, first is null);
        }
        else if (first is null && !given.Failed)
        {
            given.Fail(OwnTemplateMessages.Empty(given.Path, "neither values nor least and greatest are given", "add values = [\"10 kΩ\", \"22 kΩ\"], or least, greatest and series"), "values");
        }

        _ = given.Text("series", null);
        given.End();
        _failed |= given.Failed;
        if (symbol is not null && kind is not null)
        {
            _known[symbol] = Dimension.Of(kind);
            if (field is not null && values is { Length: > 0 })
            {
                _keys[symbol] = field.Key;
                _drawn.Add((field.Key, values));
            }
        }

        return given.Failed || symbol is null || name is null || kind is null || values is null ? null : new OwnGiven(symbol, name, kind, values) { Key = field?.Key ?? "" };
    }

    /// <summary>The design's field that a given names; null where it names none.</summary>
    private Field<Design>? ReadField(KeyReader given)
    {
        if (given.Text("key", null) is not { } key)
        {
            return null;
        }

        if (_hasNoDesign)
        {
            given.Stop();
            return null;
        }

        if (DesignFields.IsPresent(_design, key.Trim()) && DesignFields.Find(_design, key.Trim()) is { IsNumeric: true } field)
        {
            return field;
        }

        given.Fail(OwnTemplateMessages.NoField(given.KeyOf("key"), key, Nearest.Of(key, DesignFields.Of(_design).Where(one => one.IsNumeric).Select(one => one.Key))), "key");
        return null;
    }

    /// <summary>The values that a field of the design may be drawn from: the design's own where none are said, and none that the field cannot have.</summary>
    private double[]? OfDesign(KeyReader given, Field<Design> field, double[]? values, bool isOwn)
    {
        if (isOwn && !given.Failed)
        {
            values = field.SiValue(_design) is { } own ? [own] : null;
            if (values is null)
            {
                given.Fail(OwnTemplateMessages.NotGiven(given.Path, field.Key), "key");
            }
        }

        foreach (double value in values ?? [])
        {
            if (FieldText.CheckRange(field, field.FromSi(value)) is { } outside)
            {
                given.Fail(outside with { Field = given.KeyOf("values") }, "values");
                return null;
            }
        }

        return values;
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
        Result? figure = ReadFigure(step);
        (Arithmetic Formula, Dimension Dimension)? read = ReadFormula(step, isWanted: symbol is not null && figure is null && !step.Failed);
        string? unit = step.Text("unit", null);
        step.End();
        if (figure is not null && read is not null)
        {
            step.Fail(OwnTemplateMessages.NotBoth(step.KeyOf("result"), "result", "formula"), "result");
        }

        if (figure is not null)
        {
            return OfFigure(step, says, symbol, figure);
        }

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

    /// <summary>A step that gives a figure of the design.</summary>
    private OwnStep? OfFigure(KeyReader step, string? says, string? symbol, Result figure)
    {
        symbol ??= SymbolOf(figure);
        _known[symbol] = Dimension.Of(QuantityKind.Of(figure.Value!));
        _failed |= step.Failed;
        return step.Failed || says is null ? null : new OwnStep(says, symbol, null, figure.Unit) { Result = figure.Id.Text };
    }

    /// <summary>A name for a figure that nobody has named: its own symbol, where a formula may name it.</summary>
    private string SymbolOf(Result figure)
    {
        bool IsFree(string name) => name.Length > 0 && Arithmetic.Read(name, out _) is Arithmetic.Name && !Arithmetic.IsTaken(name) && !_known.ContainsKey(name);
        return IsFree(figure.Symbol) ? figure.Symbol : Enumerable.Range(1, _known.Count + 1).Select(number => $"x_{number}").First(IsFree);
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

    private OwnAnswer? ReadAnswer(KeyReader answer, List<OwnStep> steps)
    {
        Result? figure = ReadFigure(answer);
        QuantityKind? kind = ReadKind(answer, figure is null && !answer.Failed ? "voltage-rms" : null) ?? (figure is null ? null : QuantityKind.Of(figure.Value!));
        (Arithmetic Formula, Dimension Dimension)? read = ReadFormula(answer, isWanted: figure is null && !answer.Failed);
        if (figure is not null && read is not null)
        {
            answer.Fail(OwnTemplateMessages.NotBoth(answer.KeyOf("result"), "result", "formula"), "result");
        }

        if (figure is not null)
        {
            OwnStep? step = steps.Find(one => one.Result == figure.Id.Text);
            if (step is null && OfFigure(answer, char.ToUpperInvariant(figure.Name[0]) + figure.Name[1..], null, figure) is { } own)
            {
                steps.Add(step = own);
            }

            read = step is null ? null : (new Arithmetic.Name(0, step.Symbol), Dimension.Of(QuantityKind.Of(figure.Value!)));
        }

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

        if (look.PutBack > 0)
        {
            answer.Fail(OwnTemplateMessages.PutBack(answer.Path, look.PutBack, look.Looked, look.FirstPutBack), "result");
        }

        if (look.NotOnSheet.Count > 0)
        {
            answer.Fail(OwnTemplateMessages.NotOnSheet(answer.Path, look.NotOnSheet), "result");
        }

        if (look.OutsideByHand > 0)
        {
            answer.Fail(OwnTemplateMessages.MissedByHand(answer.KeyOf("tolerance"), look.OutsideByHand, look.Looked), "tolerance");
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
