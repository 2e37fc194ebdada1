using FrontEnd.Catalogue;
using FrontEnd.Documents.Drawing;
using FrontEnd.Unknowns;

namespace FrontEnd.Documents.Sheets;

/// <summary>The page of a sheet on what is not known: verdicts with what would close them, figures as bars against their limits, and what each
/// unknown value was drawn between.</summary>
internal static class OpenPage
{
    private const double Left = 190, Width = 520, Bar = 9, Line = 20, Decades = 3;

    public static IEnumerable<Block> Of(Sheet sheet)
    {
        Assessment assessment = sheet.Assessment;
        PartlyKnownDesign design = assessment.PartlyKnown!;
        yield return new Block.Heading("What is required, and what is open   " + Wording.Counts(assessment));
        yield return new Block.Verdicts(assessment.Judged);
        yield return new Block.Drawing("range of each judged figure, as a share of its limit; dark: nine in ten of the draws", Bars(assessment), null);
        Row[] open = [.. assessment.Judged.Where(result => result.Verdict.Kind == VerdictKind.Open)
            .Select(result => new Row([result.Id.Text, result.Verdict.DecidedBy ?? "", result.Verdict.ClosesBy ?? ""]))];
        if (open.Length > 0)
        {
            yield return new Block.Heading("What would close it");
            yield return new Block.Table([new("figure", true), new("decided by", true), new("closed by", true)], open, Small: true);
        }

        yield return new Block.Heading($"What is not known, and the range it was drawn from, {PartlyKnownEvaluator.Draws} times");
        yield return new Block.Table([new("value", true), new("between", true), new("source", true)],
            [.. design.Unknowns.Select(one => new Row([one.Key, PartlyKnownText.Ends(one), one.Source]))], Small: true);
    }

    /// <summary>A bar a figure over three decades to each side of its limit.</summary>
    private static Picture Bars(Assessment assessment)
    {
        Result[] shown = [.. assessment.Judged.Where(result => result.Interval is { Greatest: > 0 } && result.Verdict.Limit is { SiValue: > 0 } && result.Unit is not ("dB" or "°" or "bit"))];
        double height = (Line * shown.Length) + 24;
        Picture picture = new(Left + Width, height, "figures as intervals against their limits");
        picture.Line(At(1), 0, At(1), height - 16, new Pen("#111", 1.2));
        for (int decade = (int)-Decades; decade <= Decades; decade++)
        {
            picture.Text(At(Math.Pow(10, decade)), height - 4, decade == 0 ? "limit" : QuantityText.FormatNumber(Math.Pow(10, decade), 1), Anchor.Middle, 9.5);
        }

        for (int at = 0; at < shown.Length; at++)
        {
            (Interval span, double limit, double top) = (shown[at].Interval!, shown[at].Verdict.Limit!.SiValue, (Line * at) + 4);
            picture.Text(0, top + Bar, $"{Wording.Sign(shown[at].Verdict.Kind)} {shown[at].Id}", Anchor.Start, 9.5);
            Piece(span.Least / limit, span.Greatest / limit, new Fill("#9ab8d6"));
            Piece(span.P05 / limit, span.P95 / limit, new Fill("#2a5f95"));

            void Piece(double from, double to, Fill fill) => picture.Rectangle(At(from), top, Math.Max(1, At(to) - At(from)), Bar, null, fill);
        }

        return picture;
    }

    private static double At(double share) =>
        Left + 20 + ((Width - 40) * (Math.Clamp(Math.Log10(Math.Max(share, 1e-12)), -Decades, Decades) + Decades) / (2 * Decades));
}
