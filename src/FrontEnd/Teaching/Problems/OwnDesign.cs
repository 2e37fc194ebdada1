using System.Collections.Concurrent;
using System.Globalization;
using FrontEnd.Catalogue;
using FrontEnd.Designs;
using FrontEnd.Fields;
using FrontEnd.Identity;
using FrontEnd.Reporting;
using FrontEnd.Results;

namespace FrontEnd.Teaching.Problems;

/// <summary>A design of which a template draws some values, and the figures that it asks of it: each draw is evaluated as any design is.</summary>
/// <param name="design">The design as its file has it.</param>
/// <param name="keys">Keys of the values that are given, by their symbols.</param>
/// <param name="asked">Ids of the figures that the template uses.</param>
internal sealed class OwnDesign(Design design, IReadOnlyDictionary<string, string> keys, IReadOnlyList<string> asked)
{
    private readonly ConcurrentDictionary<string, OwnFigures> _worked = new(StringComparer.Ordinal);

    public Design Design => design;

    /// <summary>The figures with these values; each combination is worked out once.</summary>
    /// <param name="values">In SI units, by symbol.</param>
    public OwnFigures With(IReadOnlyDictionary<string, double> values) => _worked.GetOrAdd(
        string.Join(' ', keys.Select(one => values[one.Key].ToString("R", CultureInfo.InvariantCulture))), _ => Work(values));

    /// <summary>The figures where one value of the design is another, which is none of the givens: for each such value, by its key. What cannot be moved, or
    /// makes a design of no use, is left out.</summary>
    /// <param name="values">In SI units, by symbol.</param>
    public IEnumerable<(string Key, OwnFigures Figures)> WithOneMoved(IReadOnlyDictionary<string, double> values)
    {
        Design drawn = Drawn(values);
        HashSet<string> given = new(keys.Values, StringComparer.Ordinal);
        foreach (Field<Design> field in DesignFields.Numeric(drawn).Where(field => !given.Contains(field.Key)))
        {
            if (Moved(drawn, field) is { } moved && Of(moved) is { Problem: "" } figures)
            {
                yield return (field.Key, figures);
            }
        }
    }

    /// <summary>With a value by half more, or less where it may be no more; null where it has none or may be neither.</summary>
    private static Design? Moved(Design drawn, Field<Design> field)
    {
        if (field.SiValue(drawn) is not { } si || si == 0)
        {
            return null;
        }

        foreach (double to in (double[])[si * MoreBy, si / MoreBy])
        {
            double whole = double.IsInteger(si) && field.Quantity is null ? Math.Round(to) : to;
            if (whole != si && FieldText.CheckRange(field, field.FromSi(whole)) is null)
            {
                return DesignFields.WithoutStaleRanges(field.WithSiValue(drawn, whole));
            }
        }

        return null;
    }

    private const double MoreBy = 1.5;

    private Design Drawn(IReadOnlyDictionary<string, double> values) => DesignFields.WithoutStaleRanges(keys.Aggregate(
        design, (before, one) => DesignFields.Find(before, one.Value)!.WithSiValue(before, values[one.Key])));

    private OwnFigures Work(IReadOnlyDictionary<string, double> values) => Of(Drawn(values));

    private OwnFigures Of(Design drawn)
    {
        Assessment assessment = Evaluator.Evaluate(drawn);
        if (assessment.Findings.FirstOrDefault(finding => finding.Severity == Severity.Error) is { } error)
        {
            return new OwnFigures(error.Message);
        }

        Dictionary<string, Result> figures = new(StringComparer.Ordinal);
        foreach (string id in asked)
        {
            if (assessment.Find(new ResultId(id)) is not { State: ResultState.Number } result)
            {
                return new OwnFigures($"{id} has no number");
            }

            figures[id] = result;
        }

        return new OwnFigures("") { Results = figures };
    }
}

/// <summary>What a draw of a design leads to.</summary>
/// <param name="Problem">Why there are no figures; "" where there are.</param>
internal sealed record OwnFigures(string Problem)
{
    /// <summary>By their ids.</summary>
    public IReadOnlyDictionary<string, Result> Results { get; init; } = new Dictionary<string, Result>(StringComparer.Ordinal);

    /// <summary>A figure in SI units; no number where the design cannot be used.</summary>
    public double Value(string id) => Results.TryGetValue(id, out Result? result) ? result.Si : double.NaN;
}
