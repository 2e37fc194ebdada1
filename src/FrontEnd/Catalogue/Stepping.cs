using FrontEnd.Designs;
using FrontEnd.Fields;

namespace FrontEnd.Catalogue;

/// <summary>The next value up or down: parts walk through their preferred values, words through their list.</summary>
/// <remarks>No series has a member 0. Where 0 is legal it lies below the smallest value that a builder would still choose, a tenth of the least
/// usual one; where nothing usual is known, a hundredth of the default, and of a default that is 0 the least that such parts have. From there
/// a step down goes to 0, and a step up from 0 goes there; where values below 0 are legal too, the same holds on their side.</remarks>
internal static class Stepping
{
    // Sampling rates that converters offer: powers of two times 125 and the round decimal ones (common practice, no source).
    private static readonly double[] Rates = [100, 125, 128, 200, 250, 256, 500, 512, 1000, 1024, 2000, 2048, 4000, 4096, 8000, 16000];

    // Gains and plain numbers: the 1-2-5 rule with the steps that programmable amplifiers have between (common practice, no source).
    private static readonly double[] Gains = [1, 2, 3, 4, 5, 6, 8, 10, 12, 16, 20, 24, 25, 32, 40, 50, 64, 80, 100];

    // What parts' tolerances and the mains' deviation are stated as (common practice, no source).
    private static readonly double[] Tolerances = [0, 0.0001, 0.0002, 0.0005, 0.001, 0.002, 0.0025, 0.005, 0.01, 0.02, 0.05, 0.1, 0.2, 0.3, 0.5];

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

        double next = field.Key == "converter.rate" ? InList(Rates, si, up) ?? Series(field, si, PreferredSeries.E6, up) : field switch
        {
            _ when field.Holds<Resistance>() => Series(field, si, PreferredSeries.E24, up),
            _ when field.Holds<Capacitance>() => Series(field, si, PreferredSeries.E12, up),
            { Kind: FieldKind.Count } => si + (up ? 1 : -1),
            { Kind: FieldKind.Number } => InList(Gains, si, up) ?? Series(field, si, PreferredSeries.E6, up),
            _ when field.Holds<Decibels>() => Whole(si, 1, up),
            _ when field.Holds<Angle>() => Whole(si, 5, up),
            _ when field.Holds<Temperature>() => si + (up ? 1 : -1),
            _ when field.Holds<Ratio>() && Default(field) is 0.002 or 0.004 or 0.01 or 0.05 => InList(Tolerances, si, up) ?? Whole(si, 0.05, up),
            _ when field.Holds<Ratio>() => Whole(si, 0.05, up),
            _ => Series(field, si, PreferredSeries.E12, up),
        };
        return field.Range is { } range && !range.Contains(next) ? null : FieldText.Format(field, field.FromSi(next));
    }

    private static double Series(Field<Design> field, double si, PreferredSeries series, bool up)
    {
        if (si < 0)
        {
            return -Series(field, -si, series, !up);
        }

        bool mayBeNothing = field.Range is not { } range || range.Contains(0);
        double least = mayBeNothing ? PreferredValues.AtLeast(Smallest(field), series) : 0;
        if (si == 0)
        {
            return up ? least : -least;
        }

        double next = up ? PreferredValues.NextUp(si, series) : PreferredValues.NextDown(si, series);
        return !up && next < least * (1 - 1e-9) ? 0 : next;
    }

    /// <summary>The smallest value above 0 that is worth a step [SI].</summary>
    private static double Smallest(Field<Design> field) =>
        field.Kind == FieldKind.Number ? 1
        : field.Usual is { Least: > 0 and var usual } ? usual / 10
        : Default(field) is > 0 and var stated ? stated / 100
        : field switch
        {
            _ when field.Holds<Resistance>() => 10,
            _ when field.Holds<Capacitance>() || field.Holds<Current>() => 1e-12,
            _ when field.Holds<Frequency>() => 0.1,
            _ when field.Holds<VoltageNoiseDensity>() => 1e-9,
            _ when field.Holds<CurrentNoiseDensity>() => 1e-16,
            _ => 1e-6,
        };

    /// <summary>The field's default [SI]; null where it is no number.</summary>
    private static double? Default(Field<Design> field) =>
        FieldText.TryParse(field, field.DefaultText, out object? value, out _) ? FieldKinds.SiValue(value) : null;

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
