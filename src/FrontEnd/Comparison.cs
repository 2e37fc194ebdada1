using FrontEnd.Fields;

namespace FrontEnd;

/// <summary>What differs between two designs, and what each difference does to each judged result of the first.</summary>
/// <param name="From">The first design's assessment.</param>
/// <param name="To">The second design's: all differences together.</param>
/// <param name="Differences">Each difference with the first design changed in it alone.</param>
public sealed record Comparison(Assessment From, Assessment To, IReadOnlyList<Difference> Differences)
{
    /// <summary>Compares field by field; a list with other elements, or a part that one design does not have, is one difference.</summary>
    public static Comparison Of(Design from, Design to, CancellationToken cancellation = default)
    {
        var found = new List<(string Key, string From, string To, Design Design)>();
        HashSet<string> whole = new(StringComparer.Ordinal);
        foreach (OptionalPart part in DesignFields.OptionalParts.Where(part => part.IsThere(from) != part.IsThere(to)))
        {
            whole.Add(part.Key + ".");
            Design changed = part.With(from, part.IsThere(to));
            foreach (Field<Design> field in DesignFields.Of(to).Where(field => field.Key.StartsWith(part.Key + ".", StringComparison.Ordinal)))
            {
                changed = field.Set(changed, field.Get(to));
            }

            found.Add((part.Key, part.IsThere(from) ? "there" : "none", part.IsThere(to) ? "there" : "none", changed));
        }

        foreach (DesignList list in DesignFields.Lists.Where(list => !SameShape(list, from, to)))
        {
            whole.Add(list.Key + "[");
            found.Add((list.Key, Names(list, from), Names(list, to), list.With(from, list.Elements(to))));
        }

        Dictionary<string, Field<Design>> others = DesignFields.Of(to).ToDictionary(field => field.Key, StringComparer.Ordinal);
        foreach (Field<Design> field in DesignFields.Of(from))
        {
            if (whole.Any(prefix => field.Key.StartsWith(prefix, StringComparison.Ordinal)) || !others.TryGetValue(field.Key, out Field<Design>? other))
            {
                continue;
            }

            string before = Written(field, from), after = Written(other, to);
            if (!string.Equals(before, after, StringComparison.Ordinal))
            {
                found.Add((field.Key, before, after, field.Set(from, other.Get(to))));
            }
        }

        Assessment start = Evaluator.Evaluate(from), end = Evaluator.Evaluate(to);
        Difference[] differences = [.. found.AsParallel().AsOrdered().WithCancellation(cancellation).Select(one => new Difference(one.Key, one.From, one.To, Evaluator.Evaluate(one.Design)))];
        return new Comparison(start, end, differences);
    }

    /// <summary>The ids that either design is judged on, in the first one's order.</summary>
    public IReadOnlyList<string> JudgedIds =>
        [.. From.Judged.Concat(To.Judged).Select(result => result.Id).Distinct(StringComparer.Ordinal)];

    private static string Written(Field<Design> field, Design design) => FieldText.Format(field, field.Get(design));

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
public sealed record Difference(string Key, string From, string To, Assessment Alone);
