using FrontEnd.Results;

namespace FrontEnd.Teaching.Problems;

/// <summary>A template that an instructor has written: givens with the values they may have, steps and answer as expressions, slips.</summary>
internal sealed record OwnTemplate(string Id, Topic Topic, int Level, string Title, string Text)
{
    /// <summary>Combinations of values that are looked at before a template is taken.</summary>
    private const int MostLookedAt = 20_000;

    /// <summary>Draws until values are found that the answer can be worked out with.</summary>
    private const int MostDraws = 100;

    /// <summary>The same where each is a design to evaluate, which takes some milliseconds.</summary>
    private const int MostEvaluated = 48;

    public required IReadOnlyList<OwnGiven> Givens { get; init; }

    public required IReadOnlyList<OwnStep> Steps { get; init; }

    public required OwnAnswer Answer { get; init; }

    public required IReadOnlyList<OwnSlip> Slips { get; init; }

    /// <summary>The design that it draws values of and asks figures of; null where it needs none.</summary>
    public OwnDesign? Design { get; init; }

    /// <summary>The text that it was read from: another text is another template, whatever its id.</summary>
    public required string Source { get; init; }

    /// <summary>How many combinations of values there are; as a number that cannot overflow.</summary>
    private double Combinations => Givens.Aggregate(1.0, (all, given) => all * given.Values.Count);

    /// <summary>The template as homework takes it.</summary>
    public Template Make() => new(Id, Topic, Level, Title, Write) { Origin = Source };

    /// <summary>Works the answer out for what may be drawn, up to <see cref="MostLookedAt"/> combinations of values.</summary>
    public OwnTemplateLook Look()
    {
        HashSet<string> answers = new(StringComparer.Ordinal);
        bool[] told = new bool[Slips.Count];
        QuantityAnswer shown = new(Answer.Kind, 0, 0, 0, Answer.Digits);
        (int looked, int without, int byHand) = (0, 0, 0);
        string? first = null;
        foreach (IReadOnlyDictionary<string, double> values in Draws())
        {
            looked++;
            double right = Answer.Formula.Value(values);
            if (!IsAnswer(right))
            {
                without++;
                first ??= Described(values);
                if (Design is null)
                {
                    break;
                }

                continue;
            }

            answers.Add(shown.Write(right));
            double within = Within(right);
            byHand += ByHand(values) is { } hand && within < Math.Abs(hand - right) ? 1 : 0;
            for (int i = 0; i < told.Length; i++)
            {
                double wrong = Slips[i].Formula.Value(values);
                told[i] |= double.IsFinite(wrong) && within < Math.Abs(wrong - right);
            }
        }

        HashSet<string> used = [.. Steps.Select(step => step.Formula).Append(Answer.Formula).OfType<Arithmetic>().SelectMany(formula => formula.Names)];
        double share = looked == without ? 0 : answers.Count / (double)(looked - without);
        return new OwnTemplateLook((int)Math.Min(share * Combinations, Design is null ? answers.Count : int.MaxValue), told,
            Design is null || looked < 2 * without ? first : null,
            [.. Givens.Where(given => given.Key.Length == 0).Select(given => given.Symbol).Where(symbol => !used.Contains(symbol))])
        {
            Looked = looked, PutBack = without, FirstPutBack = first ?? "", OutsideByHand = byHand, NotOnSheet = NotOnSheet(),
        };
    }

    /// <summary>Keys of the design that are none of the givens and move the answer further than it may be off: a student who has only the sheet cannot know
    /// them.</summary>
    private IReadOnlyList<string> NotOnSheet()
    {
        if (Design is not { } design || Draws().FirstOrDefault(values => IsAnswer(Answer.Formula.Value(values))) is not { } values)
        {
            return [];
        }

        double right = Answer.Formula.Value(values), within = Within(right);
        return [.. design.WithOneMoved(values).Where(one => within < Math.Abs(With(values, one.Figures) - right)).Select(one => one.Key)];
    }

    /// <summary>The answer with other figures of the design.</summary>
    private double With(IReadOnlyDictionary<string, double> values, OwnFigures figures)
    {
        Dictionary<string, double> others = new(values, StringComparer.Ordinal);
        foreach (OwnStep step in Steps.Where(step => step.Symbol.Length > 0))
        {
            others[step.Symbol] = step.Result.Length > 0 ? figures.Value(step.Result) : step.Formula!.Value(others);
        }

        return Answer.Formula.Value(others);
    }

    /// <summary>What an answer may be off by.</summary>
    private double Within(double right) => Answer.IsShare ? Math.Abs(right) * Answer.Tolerance : Answer.Tolerance;

    /// <summary>The textbook's figure where a figure of the design is the answer and has one.</summary>
    private double? ByHand(IReadOnlyDictionary<string, double> values) => Design is not null && Answer.Formula is Arithmetic.Name name
        && Steps.FirstOrDefault(step => step.Symbol == name.Text) is { Result.Length: > 0 } step
        ? Design.With(values).Results.GetValueOrDefault(step.Result)?.Hand?.Value.SiValue
        : null;

    private string Described(IReadOnlyDictionary<string, double> values)
    {
        string drawn = string.Join(", ", Givens.Select(given => $"{given.Symbol} = {QuantityText.FormatTrimmed(given.Kind.FromSi(values[given.Symbol]), 6)}"));
        return Design?.With(values).Problem is { Length: > 0 } problem ? $"{drawn} ({problem})" : drawn;
    }

    /// <summary>The values that are drawn, combination by combination; of too many, as many as are looked at, evenly.</summary>
    private IEnumerable<IReadOnlyDictionary<string, double>> Draws()
    {
        double all = Combinations;
        int most = Design is null ? MostLookedAt : MostEvaluated;
        long count = (long)Math.Min(all, most);
        for (long i = 0; i < count; i++)
        {
            double left = all <= most ? i : Math.Floor(i * (all / count));
            Dictionary<string, double> values = new(StringComparer.Ordinal);
            foreach (OwnGiven given in Givens)
            {
                values[given.Symbol] = given.Values[(int)(left % given.Values.Count)];
                left = Math.Floor(left / given.Values.Count);
            }

            yield return WithSteps(values);
        }
    }

    /// <summary>The values of the steps that have a symbol, added to those that are given.</summary>
    private Dictionary<string, double> WithSteps(Dictionary<string, double> values)
    {
        foreach (OwnStep step in Steps.Where(step => step.Symbol.Length > 0))
        {
            values[step.Symbol] = step.Result.Length > 0 ? Design!.With(values).Value(step.Result) : step.Formula!.Value(values);
        }

        return values;
    }

    private ProblemText Write(Draw draw)
    {
        Dictionary<string, IQuantity> quantities;
        Dictionary<string, double> values;
        int draws = 0;
        do
        {
            quantities = Givens.ToDictionary(given => given.Symbol, given => draw.OneOf(given.Kind, given.Symbol, given.Name, given.Values), StringComparer.Ordinal);
            values = WithSteps(quantities.ToDictionary(one => one.Key, one => one.Value.SiValue, StringComparer.Ordinal));
        }
        while (!IsAnswer(Answer.Formula.Value(values)) && ++draws < MostDraws && draw.Again());

        Dictionary<string, string> written = quantities.ToDictionary(one => one.Key, one => Put(one.Value), StringComparer.Ordinal);
        ProblemText text = new(Text);
        foreach (OwnStep step in Steps)
        {
            Add(text, step, values, written);
        }

        double value = Answer.Formula.Value(values);
        string symbol = Steps.Count > 0 ? Steps[^1].Symbol : "";
        if (!(Answer.Formula is Arithmetic.Name name && name.Text == symbol && symbol.Length > 0))
        {
            Add(text, new OwnStep("the answer", "", Answer.Formula, Answer.Kind.SiUnit), values, written);
        }

        text.AnswersWithin(Answer.Kind, value, Within(value), Answer.Digits);
        foreach (OwnSlip slip in Slips)
        {
            text.Slip(slip.Kind, slip.Formula.Value(values), slip.Share);
        }

        return text;
    }

    /// <summary>Something to answer with: a number, and not 0, of which no share is right.</summary>
    private static bool IsAnswer(double value) => double.IsFinite(value) && value != 0;

    private void Add(ProblemText text, OwnStep step, Dictionary<string, double> values, Dictionary<string, string> written)
    {
        if (step.Result.Length > 0)
        {
            Add(text, step, Design!.With(values).Results[step.Result]);
            written[step.Symbol] = QuantityText.FormatTrimmed(Design.With(values).Results[step.Result].Value, 4);
            return;
        }

        if (step.Formula is not { } formula)
        {
            text.Say(step.Says);
            return;
        }

        double value = formula.Value(values);
        if (formula is Arithmetic.Call call && NamedFormula.Find(call.Function) is { } named)
        {
            text.Step(step.Says, named.Work([.. call.Arguments.Select(one => one.Value(values))]));
        }
        else
        {
            string before = step.Symbol.Length == 0 ? "" : $"{step.Symbol} = ";
            text.Step(step.Says, before + formula.Formula, formula.Substituted(written), value, step.Unit);
        }

        if (step.Symbol.Length > 0)
        {
            written[step.Symbol] = QuantityText.FormatTrimmed(value, step.Unit, 4);
        }
    }

    /// <summary>A figure of the design: by the textbook's formula, where there is one, and as the program solves it where that comes out elsewhere.</summary>
    private static void Add(ProblemText text, OwnStep step, Result result)
    {
        string value = QuantityText.FormatTrimmed(result.Value, 4);
        bool isSame = result.Hand is { } hand && QuantityText.FormatTrimmed(hand.Value, 3) == QuantityText.FormatTrimmed(result.Value, 3);
        if (result.Hand is { } formula)
        {
            text.Worked(isSame ? step.Says : $"{step.Says}, by hand", formula.Formula, formula.Substituted, formula.Source);
        }

        if (!isSame)
        {
            string why = result.Hand?.Assumption is { Length: > 0 } assumption ? $"; {assumption}" : "";
            text.Worked($"{(result.Hand is null ? step.Says : "The whole circuit, solved")}{why}", result.Equation.Text,
                result.Substituted.Length > 0 ? result.Substituted : $"{(result.Symbol.Length > 0 ? result.Symbol : step.Symbol)} = {value}", result.Equation.Source);
        }
    }

    /// <summary>A value as it stands in a formula; a temperature in kelvins, as the formulas take it.</summary>
    internal static string Put(IQuantity quantity) =>
        quantity is Temperature temperature ? QuantityText.FormatTrimmed(temperature.Kelvins, "1", 5) + " K" : QuantityText.FormatTrimmed(quantity, 6);
}

/// <summary>What a template's draws lead to.</summary>
/// <param name="Answers">Different answers, as they are printed.</param>
/// <param name="IsTold">For each slip, whether it ever leads elsewhere than the right way.</param>
/// <param name="Without">Values with which there is no answer, in words; null where there always is one.</param>
/// <param name="Unused">Symbols of givens that stand in no formula.</param>
internal sealed record OwnTemplateLook(int Answers, IReadOnlyList<bool> IsTold, string? Without, IReadOnlyList<string> Unused)
{
    /// <summary>Combinations that were looked at.</summary>
    public int Looked { get; init; }

    /// <summary>Those of them whose design cannot be used: they are put back when they are drawn.</summary>
    public int PutBack { get; init; }

    /// <summary>The first of these in words.</summary>
    public string FirstPutBack { get; init; } = "";

    /// <summary>How many have an answer that the textbook's formula misses by more than may be.</summary>
    public int OutsideByHand { get; init; }

    /// <summary>Keys of the design that the answer follows from and that do not stand on the sheet.</summary>
    public IReadOnlyList<string> NotOnSheet { get; init; } = [];
}

/// <summary>A value that is drawn.</summary>
/// <param name="Values">All that it may be, in the SI unit.</param>
internal sealed record OwnGiven(string Symbol, string Name, QuantityKind Kind, IReadOnlyList<double> Values)
{
    /// <summary>The design's key whose value it is; "" for a value of the question alone.</summary>
    public string Key { get; init; } = "";

    /// <summary>The members of a series between two values; none where the least is not above 0.</summary>
    public static double[] Preferred(IQuantity least, IQuantity greatest, PreferredSeries series) =>
        least.SiValue <= 0 ? [] : [.. PreferredValues.Between(least.SiValue, greatest.SiValue, series)];

    /// <summary>The first kind that a text is one of by its unit: 10 kΩ is a resistance; null where no unit stands there (4k7 may be of several
    /// kinds).</summary>
    public static QuantityKind? KindOf(string text) => Fitting(text).OrderBy(kind => Dimension.Of(kind) == Dimension.None).FirstOrDefault();

    private static IEnumerable<QuantityKind> Fitting(string text) => QuantityKind.All.Where(kind =>
        EndsInUnit(kind, kind.Suffix.Length == 0 ? text : text.Replace(kind.Suffix, "", StringComparison.Ordinal)) && QuantityText.IsRead(kind, text, out _));

    private static bool EndsInUnit(QuantityKind kind, string text) =>
        Array.Exists(kind.Units, unit => Array.Exists(unit.Spellings, spelling => text.TrimEnd().EndsWith(spelling, StringComparison.Ordinal)));
}

/// <summary>A step of the solution.</summary>
/// <param name="Symbol">What later expressions call its value; "" for nothing.</param>
/// <param name="Formula">Null for a step in words.</param>
/// <param name="Unit">What its value is told in.</param>
internal sealed record OwnStep(string Says, string Symbol, Arithmetic? Formula, string Unit)
{
    /// <summary>Id of the design's figure that the step gives; "" for a formula or words.</summary>
    public string Result { get; init; } = "";
}

/// <summary>What is right.</summary>
/// <param name="Tolerance">Share of the value, or an amount in the kind's own unit.</param>
internal sealed record OwnAnswer(QuantityKind Kind, Arithmetic Formula, double Tolerance, bool IsShare, int Digits);

/// <summary>A wrong way, what is said about it, and the share of the points that it still earns.</summary>
internal sealed record OwnSlip(SlipKind Kind, Arithmetic Formula, double Share);
