using FrontEnd.Designs;
using FrontEnd.Fields;
using FrontEnd.Numbers;
using FrontEnd.Reporting;
using FrontEnd.Results;

namespace FrontEnd.Unknowns;

/// <summary>From a design of which some values could not be read to the figures that do not rest on them; all others are missing. Pure.</summary>
/// <remarks>Each such field is put to other values that a user may write, alone and together with the others, and the design is evaluated
/// with each. What is the same in all of them rests on none of the values; what moves is withheld. Where a field has too few such values,
/// or the design contradicts itself with them, all is withheld.</remarks>
internal static class PartlyReadEvaluator
{
    /// <summary>With more fields than these too little of a design is left to be worth the evaluations.</summary>
    public const int MostFields = 8;

    /// <summary>Values of a field that must have given figures: with fewer nothing is said of what rests on it.</summary>
    private const int LeastTried = 3;

    /// <summary>Two figures that differ by less than this share are one: an integral's steps follow everything that it is made of.</summary>
    private const double SameFigure = 1e-9;

    /// <summary>Factors from the value that stands in for one that could not be read.</summary>
    private static readonly double[] Factors = [1.1, 0.5, 3, 0.03, 30];

    /// <summary>The figures that stand, the others missing with the code of what is wrong.</summary>
    public static Assessment Evaluate(PartlyReadDesign design)
    {
        Finding[] problems = [.. design.Unread.Select(one => one.Problem)];
        (PartlyReadTry Try, Assessment Figures)[] tried =
            [.. InParallel.Map(design.Tries, one => (one, Evaluator.Evaluate(one.Design))).Where(one => one.Item2.HasFigures)];
        bool enough = Enumerable.Range(0, design.Unread.Count)
            .All(field => LeastTried <= tried.Select(one => one.Try.Places[field]).Distinct().Count());
        if (!enough || tried.Length == 0)
        {
            // Why is what could not be read: of a value that stands in its place nothing is said.
            return Evaluator.WithoutFigures(design.Design, problems);
        }

        Assessment first = tried[0].Figures;
        List<Result> results = [.. first.Results.Select(result => Standing(result, design.Unread, tried))];
        bool moved = results.Exists(result => result.State == ResultState.Missing);
        Finding[] findings =
            [.. problems, .. first.Findings.Where(finding => tried.All(one => one.Figures.Findings.Contains(finding)))];
        return new Assessment(design.Design, results, findings, moved ? Curves.None : first.Curves);
    }

    /// <summary>The result where it is the same in all tries; without its verdict where only that is not; else missing.</summary>
    private static Result Standing(Result result, IReadOnlyList<UnreadField> unread, (PartlyReadTry Try, Assessment Figures)[] tried)
    {
        bool sameVerdict = true;
        foreach ((PartlyReadTry one, Assessment figures) in tried)
        {
            Result? other = figures.Find(result.Id);
            if (other is null || !IsSame(result, other))
            {
                return new Result { Id = result.Id, Name = result.Name, Symbol = result.Symbol, Unit = result.Unit, State = ResultState.Missing,
                    Equation = result.Equation, FindingCode = unread[one.Moved].Problem.Code };
            }

            sameVerdict &= IsSame(result.Verdict, other.Verdict);
        }

        return sameVerdict ? result : result with { Verdict = new Verdict(VerdictKind.NotJudged, Messages.LimitUnread) { Requirement = result.Verdict.Requirement } };
    }

    private static bool IsSame(Result one, Result other) =>
        one.State == other.State && IsSame(one.Value?.SiValue, other.Value?.SiValue) && Same(one.Name, other.Name) && Same(one.Text, other.Text)
        && Same(one.Channel, other.Channel) && Same(one.WhatLands, other.WhatLands) && one.LandsInBand == other.LandsInBand
        && IsSame(one.ShareOfVariance, other.ShareOfVariance) && Same(one.Substituted, other.Substituted)
        && IsSame(one.Hand?.Value.SiValue, other.Hand?.Value.SiValue) && Same(one.Hand?.Substituted, other.Hand?.Substituted)
        && Same(one.Verdict.Dominates, other.Verdict.Dominates) && Same(one.FindingCode, other.FindingCode);

    private static bool IsSame(Verdict one, Verdict other) =>
        one.Kind == other.Kind && Same(one.Requirement, other.Requirement) && IsSame(one.Limit?.SiValue, other.Limit?.SiValue)
        && Same(one.Wanted, other.Wanted) && one.LimitIsGreatest == other.LimitIsGreatest && IsSame(one.Margin, other.Margin);

    private static bool Same(string? one, string? other) => string.Equals(one, other, StringComparison.Ordinal);

    private static bool IsSame(double? one, double? other) => one is { } mine && other is { } theirs
        ? mine.Equals(theirs) || Math.Abs(mine - theirs) <= SameFigure * Math.Abs(mine)
        : one is null && other is null;

    /// <summary>Legal values of a field, the default first; none for what has no such values, as a list or a part card.</summary>
    /// <param name="design">A design that has it.</param>
    /// <param name="field">The field.</param>
    public static IReadOnlyList<object?> Values(Design design, Field<Design> field)
    {
        object? own = field.Get(design);
        List<object?> all = [own];
        foreach (string word in FieldText.Words(field))
        {
            if (FieldText.TryParse(field, word, out object? value, out _))
            {
                all.Add(value);
            }
        }

        switch (field.Kind)
        {
            case FieldKind.Quantity or FieldKind.Number or FieldKind.Count:
                all.AddRange(Numbers(field, field.SiValue(design)).Where(double.IsFinite).Select(field.FromSi));
                break;
            case FieldKind.FrequencyRange when own is FrequencyRange band:
                all.AddRange(Factors.Select(factor => (object)new FrequencyRange(
                    Frequency.FromHertz(band.Low.Hertz * factor), Frequency.FromHertz(band.High.Hertz * factor))));
                all.Add(new FrequencyRange(band.Low, Frequency.FromHertz((band.Low.Hertz + band.High.Hertz) / 2)));
                break;
            case FieldKind.Text:
                all.AddRange(["first", "second"]);
                break;
            case FieldKind.Flag or FieldKind.Choice:
                break;
            default:
                return [];
        }

        return [.. all.Where(value => FieldText.CheckRange(field, value) is null).DistinctBy(value => FieldText.Format(field, value))];
    }

    /// <summary>Numbers around one, and the ends of what is legal and usual.</summary>
    private static IEnumerable<double> Numbers(FieldDescription field, double? around)
    {
        double from = around is { } si && si != 0 ? si
            : field.Usual is { } usual ? (usual.Least + usual.Greatest) / 2
            : field.Range is { Least: > 0 } range ? Math.Sqrt(range.Least * range.Greatest)
            : 1;
        return Factors.Select(factor => from * factor).Concat(
        [
            field.Range?.Least ?? double.NaN, field.Range?.Greatest ?? double.NaN, field.Usual?.Least ?? double.NaN,
            field.Usual?.Greatest ?? double.NaN,
        ]);
    }
}
