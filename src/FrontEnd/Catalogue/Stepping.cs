using FrontEnd.Designs;
using FrontEnd.Fields;

namespace FrontEnd.Catalogue;

/// <summary>The next value up or down: parts walk through their preferred values, words through their list.</summary>
internal static class Stepping
{
    // Sampling rates that converters offer: powers of two times 125 and the round decimal ones (common practice, no source).
    private static readonly double[] Rates = [100, 125, 128, 200, 250, 256, 500, 512, 1000, 1024, 2000, 2048, 4000, 4096, 8000, 16000];

    // Gains and plain numbers: the 1-2-5 rule with the steps that programmable amplifiers have between (common practice, no source).
    private static readonly double[] Gains = [1, 2, 3, 4, 5, 6, 8, 10, 12, 16, 20, 24, 25, 32, 40, 50, 64, 80, 100];

    /// <summary>The text of the neighbouring value; null where there is none in that direction or the field knows no order.</summary>
    public static string? Next(Field<Design> field, Design design, bool up, IReadOnlyList<string>? words = null)
    {
        object? value = field.Get(design);
        if (field.Kind is FieldKind.Choice or FieldKind.Flag or FieldKind.Card)
        {
            return NextWord(field, value, up, words ?? []);
        }

        if (FieldKinds.SiValue(value) is not { } si || !field.IsNumeric)
        {
            return null;
        }

        double next = field.Key == "converter.rate" ? InList(Rates, si, up) ?? Series(si, PreferredSeries.E6, up) : field switch
        {
            _ when field.Holds<Resistance>() => Series(si, PreferredSeries.E24, up),
            _ when field.Holds<Capacitance>() => Series(si, PreferredSeries.E12, up),
            { Kind: FieldKind.Count } => si + (up ? 1 : -1),
            { Kind: FieldKind.Number } => InList(Gains, si, up) ?? Series(si, PreferredSeries.E6, up),
            _ when field.Holds<Decibels>() => Whole(si, 1, up),
            _ when field.Holds<Angle>() => Whole(si, 5, up),
            _ when field.Holds<Temperature>() => si + (up ? 1 : -1),
            _ when field.Holds<Ratio>() => Whole(si, 0.05, up),
            _ => Series(si, PreferredSeries.E12, up),
        };
        return field.Range is { } range && !range.Contains(next) ? null : FieldText.Format(field, field.FromSi(next));
    }

    private static double Series(double si, PreferredSeries series, bool up) => si switch
    {
        0 => 0,
        < 0 => -(up ? PreferredValues.NextDown(-si, series) : PreferredValues.NextUp(-si, series)),
        _ => up ? PreferredValues.NextUp(si, series) : PreferredValues.NextDown(si, series),
    };

    private static double Whole(double si, double step, bool up)
    {
        double steps = Math.Round(si / step, 6);
        double next = up ? Math.Floor(steps) + 1 : Math.Ceiling(steps) - 1;

        // 0.15 typed and 3 · 0.05 must be the same number.
        return Math.Round(next * step, 9);
    }

    private static double? InList(double[] list, double si, bool up)
    {
        double? found = up
            ? list.Where(one => si * (1 + 1e-9) < one).Cast<double?>().Min()
            : list.Where(one => one < si * (1 - 1e-9)).Cast<double?>().Max();
        return found;
    }

    private static string? NextWord(Field<Design> field, object? value, bool up, IReadOnlyList<string> words)
    {
        int at = words.ToList().FindIndex(word => string.Equals(word, FieldText.Format(field, value), StringComparison.Ordinal));
        int next = at + (up ? 1 : -1);
        return 0 <= next && next < words.Count ? words[next] : null;
    }
}
