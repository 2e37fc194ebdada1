using FrontEnd.Catalogue;
using FrontEnd.Designs;
using FrontEnd.Fields;
using FrontEnd.Identity;
using FrontEnd.Numbers;
using FrontEnd.Reporting;
using FrontEnd.Results;

namespace FrontEnd.Compare;

/// <summary>What differs between two designs, and what each difference does to each judged result of the first.</summary>
/// <param name="From">The first design's assessment.</param>
/// <param name="To">The second design's: all differences together.</param>
/// <param name="Differences">Each difference with the first design changed in it alone.</param>
internal sealed record Comparison(Assessment From, Assessment To, IReadOnlyList<Difference> Differences)
{
    /// <summary>Compares field by field; a list with other elements, or a part that one design does not have, is one difference.</summary>
    public static Comparison Of(Design from, Design to, CancellationToken cancellation = default)
    {
        Assessment start = Evaluator.Evaluate(from), end = Evaluator.Evaluate(to);
        IReadOnlyList<Differing> found = Differing(from, to);
        Difference[] differences = InParallel.Map(found, one =>
            new Difference(one.Key, one.From, one.To, Evaluator.Evaluate(one.Alone)), cancellation);
        return new Comparison(start, end, differences);
    }

    /// <summary>What all differences together make of the first design's figures, worst first.</summary>
    public IReadOnlyList<FigureChange> Together => FigureChanges.Between(From, To);

    /// <summary>What is not judged and matters all the same, of both designs.</summary>
    public IReadOnlyList<Headline> Headlines => Headline.Of(From, To);

    /// <summary>What one difference alone makes of them, worst first.</summary>
    public IReadOnlyList<FigureChange> Of(Difference difference) => FigureChanges.Between(From, difference.Alone);

    /// <summary>What is to be said about an assessment, and not about the first design; errors first.</summary>
    public IReadOnlyList<Finding> NewFindings(Assessment assessment) =>
        [.. assessment.Findings.Except(From.Findings).OrderByDescending(finding => finding.Severity)];

    /// <summary>What differs between two designs, in the order of the catalogue; nothing is evaluated.</summary>
    public static IReadOnlyList<Differing> Differing(Design from, Design to)
    {
        List<Differing> found = [];
        HashSet<string> whole = new(StringComparer.Ordinal);
        foreach (OptionalPart part in DesignFields.OptionalParts.Where(part => part.IsThere(from) != part.IsThere(to)))
        {
            whole.Add(part.Key + ".");
            Design changed = part.With(from, part.IsThere(to));
            foreach (Field<Design> field in DesignFields.Of(to).Where(field =>
                field.Key.StartsWith(part.Key + ".", StringComparison.Ordinal)))
            {
                changed = field.Set(changed, field.Get(to));
            }

            found.Add(new Differing(part.Key, part.IsThere(from)
                ? "there"
                : "none", part.IsThere(to)
                ? "there"
                : "none", changed) { Within = Within(from, to, part.Key + ".") });
        }

        foreach (DesignList list in DesignFields.Lists.Where(list => !SameShape(list, from, to)))
        {
            whole.Add(list.Key + "[");
            found.Add(new Differing(list.Key, Names(list, from), Names(list, to),
                list.With(from, list.Elements(to))) { Within = Within(from, to, list.Key + "[") });
        }

        Dictionary<string, Field<Design>> others = DesignFields.Of(to).ToDictionary(field => field.Key, StringComparer.Ordinal);
        foreach (Field<Design> field in DesignFields.Of(from))
        {
            if (whole.Any(prefix => field.Key.StartsWith(prefix, StringComparison.Ordinal))
                || !others.TryGetValue(field.Key, out Field<Design>? other))
            {
                continue;
            }

            if (Written(field, field.Get(from), other.Get(to)) is { } pair)
            {
                found.Add(new Differing(field.Key, pair.From, pair.To, field.Set(from, other.Get(to))));
            }
        }

        return found;
    }

    /// <summary>The values inside a part or list that only one design has, or that are not the same in both; of what is gone, the
    /// names.</summary>
    private static List<FieldPair> Within(Design from, Design to, string beginning)
    {
        Dictionary<string, string> before = Texts(from, beginning), after = Texts(to, beginning);
        IEnumerable<FieldPair> there = after.Where(pair => before.GetValueOrDefault(pair.Key) != pair.Value)
            .Select(pair => new FieldPair(pair.Key, before.GetValueOrDefault(pair.Key), pair.Value));
        IEnumerable<FieldPair> gone = before.Where(pair =>
            !after.ContainsKey(pair.Key) && pair.Key.EndsWith(".name", StringComparison.Ordinal))
            .Select(pair => new FieldPair(pair.Key, pair.Value, null));
        return [.. there, .. gone];
    }

    private static Dictionary<string, string> Texts(Design design, string beginning) => DesignFields.Of(design)
        .Where(field => field.Key.StartsWith(beginning, StringComparison.Ordinal) && DesignFields.IsPresent(design, field.Key))
        .ToDictionary(field => field.Key, field => FieldText.Format(field, field.Get(design)), StringComparer.Ordinal);

    /// <summary>The ids that either design is judged on, in the first one's order.</summary>
    public IReadOnlyList<ResultId> JudgedIds =>
        [.. From.Judged.Concat(To.Judged).Select(result => result.Id).Distinct()];

    /// <summary>Share of a value below which two of them are the same: it comes from arithmetic, and no one writes so many
    /// digits.</summary>
    private const double SameValue = 1e-9;

    /// <summary>The same for numbers that are written in full, such as the coefficients of filters.</summary>
    private const double SameNumber = 1e-13;

    /// <summary>Both values with as many digits as tell them apart; null where they are the same.</summary>
    private static (string From, string To)? Written(Field<Design> field, object? a, object? b)
    {
        if (a is not null && b is not null && AreSame(a, b))
        {
            return null;
        }

        string from = FieldText.Format(field, a), to = FieldText.Format(field, b);
        if (string.Equals(from, to, StringComparison.Ordinal))
        {
            return null;
        }

        for (int digits = 6; digits < 15; digits += 3)
        {
            (string shortFrom, string shortTo) = (Short(a, from, digits), Short(b, to, digits));
            if (!string.Equals(shortFrom, shortTo, StringComparison.Ordinal))
            {
                return (shortFrom, shortTo);
            }
        }

        return (from, to);
    }

    private static bool AreSame(object a, object b) => (a, b) switch
    {
        (IReadOnlyList<double> x, IReadOnlyList<double> y) => AreNear(x, y),
        (IReadOnlyList<IReadOnlyList<double>> x, IReadOnlyList<IReadOnlyList<double>> y) =>
            x.Count == y.Count && x.Zip(y).All(rows => AreNear(rows.First, rows.Second)),
        _ => FieldKinds.SiValue(a) is { } x && FieldKinds.SiValue(b) is { } y
            && Math.Abs(x - y) <= SameValue * Math.Max(Math.Abs(x), Math.Abs(y)),
    };

    private static bool AreNear(IReadOnlyList<double> a, IReadOnlyList<double> b) =>
        a.Count == b.Count
            && a.Zip(b).All(pair =>
                Math.Abs(pair.First - pair.Second) <= SameNumber * Math.Max(Math.Abs(pair.First), Math.Abs(pair.Second)));

    /// <summary>What arithmetic made longer than anyone types, in fewer digits.</summary>
    private static string Short(object? value, string text, int digits) =>
        text.Length <= LongestTyped ? text
        : value is Quantities.IQuantity quantity ? Text.QuantityText.FormatTrimmed(quantity, digits)
        : value is double number ? Text.QuantityText.FormatTrimmed(number, "1", digits)
        : text;

    private const int LongestTyped = 14;

    private static bool SameShape(DesignList list, Design from, Design to)
    {
        IReadOnlyList<object> a = list.Elements(from), b = list.Elements(to);
        return a.Count == b.Count && a.Zip(b).All(pair => ReferenceEquals(list.VariantOf(pair.First), list.VariantOf(pair.Second)));
    }

    private static string Names(DesignList list, Design design) =>
        list.Count(design) == 0 ? "none" : string.Join(", ", list.Elements(design).Select(list.NameOf));
}

/// <summary>One difference between two designs.</summary>
/// <param name="Key">The field, list or part that differs.</param>
/// <param name="From">Its value in the first design, as written.</param>
/// <param name="To">Its value in the second.</param>
/// <param name="Alone">The first design with this difference alone.</param>
internal sealed record Difference(string Key, string From, string To, Assessment Alone);

/// <summary>A value that differs between two designs, not yet evaluated.</summary>
/// <param name="Key">The field, list or part that differs.</param>
/// <param name="From">Its value in the first design, as written.</param>
/// <param name="To">Its value in the second.</param>
/// <param name="Alone">The first design with this difference alone.</param>
internal sealed record Differing(string Key, string From, string To, Design Alone)
{
    /// <summary>What differs inside, where it is a whole part or list; empty for a field.</summary>
    public IReadOnlyList<FieldPair> Within { get; init; } = [];
}

/// <summary>A field's value in two designs, as written.</summary>
/// <param name="Key">The field.</param>
/// <param name="From">In the first design; null where it has no such field.</param>
/// <param name="To">In the second.</param>
internal sealed record FieldPair(string Key, string? From, string? To);
