using System.Globalization;

namespace FrontEnd.Quantities;

/// <summary>Preferred values of parts, E3 to E192: the members of a series, the nearest to a value, the next above and below.</summary>
/// <remarks>
/// E3 to E24 are tabulated, as 27…47 and 82 are not the rounded geometric series. E48 to E192 are round(100·10^(i/n)) with one exception:
/// 920 in E192, where the rule gives 919.
/// <para>Source: IEC 60063 (standard not seen; the lists in a public copy).</para>
/// Values are made as a whole number times or over a power of ten, so that 220 nF here is the same double as 220 nF read from a text.
/// </remarks>
public static class PreferredValues
{
    // The same part value after some arithmetic may be off by rounding; 1e-9 is far below the step of E192, 1.2 %.
    private const double Same = 1e-9;

    private static readonly int[] TwoDigits =
        [10, 11, 12, 13, 15, 16, 18, 20, 22, 24, 27, 30, 33, 36, 39, 43, 47, 51, 56, 62, 68, 75, 82, 91];

    // Members in hundredths, 100..999, E24 and below as three digits too.
    private static readonly Dictionary<PreferredSeries, int[]> Members = new()
    {
        [PreferredSeries.E3] = EveryOf24(8),
        [PreferredSeries.E6] = EveryOf24(4),
        [PreferredSeries.E12] = EveryOf24(2),
        [PreferredSeries.E24] = EveryOf24(1),
        [PreferredSeries.E48] = Geometric(48),
        [PreferredSeries.E96] = Geometric(96),
        [PreferredSeries.E192] = Geometric(192),
    };

    /// <summary>The members of one decade as three-digit whole numbers, 100 to below 1000, ascending.</summary>
    public static IReadOnlyList<int> Decade(PreferredSeries series) => In(series);

    /// <summary>The member nearest to a value above zero, by ratio; at a tie (the value is the geometric mean of two members) the
    /// larger.</summary>
    public static double Nearest(double value, PreferredSeries series)
    {
        double below = AtMost(value, series);
        double above = AtLeast(value, series);
        return value / below < above / value * (1 - Same) ? below : above;
    }

    /// <summary>The smallest member that is not below a value above zero.</summary>
    public static double AtLeast(double value, PreferredSeries series)
    {
        (int index, int decade) = LastNotAbove(value, series);
        return Value(series, index, decade) < value * (1 - Same) ? Value(series, index + 1, decade) : Value(series, index, decade);
    }

    /// <summary>The largest member that is not above a value above zero.</summary>
    public static double AtMost(double value, PreferredSeries series)
    {
        (int index, int decade) = LastNotAbove(value, series);
        return Value(series, index, decade);
    }

    /// <summary>The next member above a value above zero; a member's next is its neighbour.</summary>
    public static double NextUp(double value, PreferredSeries series)
    {
        (int index, int decade) = LastNotAbove(value, series);
        return Value(series, index + 1, decade);
    }

    /// <summary>The next member below a value above zero; a member's next is its neighbour.</summary>
    public static double NextDown(double value, PreferredSeries series)
    {
        (int index, int decade) = LastNotAbove(value, series);
        double last = Value(series, index, decade);
        return last < value * (1 - Same) ? last : Value(series, index - 1, decade);
    }

    /// <summary>True where a value is a member of the series, to 1e-9.</summary>
    public static bool IsMember(double value, PreferredSeries series) =>
        0 < value && double.IsFinite(value) && Math.Abs((Nearest(value, series) / value) - 1) < Same;

    /// <summary>The nearest resistance of a series, by ratio; see <see cref="Nearest(double, PreferredSeries)"/>.</summary>
    public static Resistance Nearest(Resistance resistance, PreferredSeries series) =>
        Resistance.FromOhms(Nearest(resistance.Ohms, series));

    /// <summary>The nearest capacitance of a series, by ratio; see <see cref="Nearest(double, PreferredSeries)"/>.</summary>
    public static Capacitance Nearest(Capacitance capacitance, PreferredSeries series) =>
        Capacitance.FromFarads(Nearest(capacitance.Farads, series));

    public static Resistance NextUp(Resistance resistance, PreferredSeries series) => Resistance.FromOhms(NextUp(resistance.Ohms, series));

    public static Resistance NextDown(Resistance resistance, PreferredSeries series) =>
        Resistance.FromOhms(NextDown(resistance.Ohms, series));

    public static Capacitance NextUp(Capacitance capacitance, PreferredSeries series) =>
        Capacitance.FromFarads(NextUp(capacitance.Farads, series));

    public static Capacitance NextDown(Capacitance capacitance, PreferredSeries series) =>
        Capacitance.FromFarads(NextDown(capacitance.Farads, series));

    /// <summary>The smallest resistance of a series that is not below the one given, for limits that must be kept.</summary>
    public static Resistance AtLeast(Resistance resistance, PreferredSeries series) =>
        Resistance.FromOhms(AtLeast(resistance.Ohms, series));

    /// <summary>The largest resistance of a series that is not above the one given.</summary>
    public static Resistance AtMost(Resistance resistance, PreferredSeries series) => Resistance.FromOhms(AtMost(resistance.Ohms, series));

    /// <summary>The smallest capacitance of a series that is not below the one given.</summary>
    public static Capacitance AtLeast(Capacitance capacitance, PreferredSeries series) =>
        Capacitance.FromFarads(AtLeast(capacitance.Farads, series));

    /// <summary>The largest capacitance of a series that is not above the one given.</summary>
    public static Capacitance AtMost(Capacitance capacitance, PreferredSeries series) =>
        Capacitance.FromFarads(AtMost(capacitance.Farads, series));

    /// <summary>Every member from one value to another, both included where they are members, ascending.</summary>
    public static IEnumerable<double> Between(double least, double greatest, PreferredSeries series)
    {
        for (double value = AtLeast(least, series); value <= greatest * (1 + Same); value = NextUp(value, series))
        {
            yield return value;
        }
    }

    private static int[] In(PreferredSeries series) =>
        Members.TryGetValue(series, out int[]? members)
            ? members : throw new ArgumentOutOfRangeException(nameof(series), series, "Not a series of IEC 60063.");

    private static int[] EveryOf24(int step) => [.. TwoDigits.Where((_, index) => index % step == 0).Select(member => member * 10)];

    private static int[] Geometric(int count)
    {
        int[] members = [.. Enumerable.Range(0, count).Select(i => (int)Math.Round(100 * Math.Pow(10, (double)i / count)))];
        if (count == 192)
        {
            members[185] = 920;   // the standard's own exception; the rule gives 919.48, rounded 919
        }

        return members;
    }

    private static (int Index, int Decade) LastNotAbove(double value, PreferredSeries series)
    {
        Require.Positive(value);
        int[] members = In(series);
        double raised = value * (1 + Same);
        int decade = (int)Math.Floor(Math.Log10(raised));

        // The logarithm may round to the wrong side of a power of ten.
        while (raised < Value(series, 0, decade))
        {
            decade--;
        }

        while (Value(series, members.Length, decade) <= raised)
        {
            decade++;
        }

        int index = members.Length - 1;
        while (raised < Value(series, index, decade))
        {
            index--;
        }

        return (index, decade);
    }

    /// <summary>A member as a number; an index beyond the decade runs on into the next.</summary>
    private static double Value(PreferredSeries series, int index, int decade)
    {
        int[] members = In(series);
        if (index < 0 || members.Length <= index)
        {
            int shift = index < 0 ? -1 : 1;
            (index, decade) = (index - (shift * members.Length), decade + shift);
        }

        int power = decade - 2;
        return Math.Abs(power) <= 22   // to 10^22 powers of ten are exact, so one rounding is made
            ? power < 0 ? members[index] / Math.Pow(10, -power) : members[index] * Math.Pow(10, power)
            : double.Parse($"{members[index]}e{power}", CultureInfo.InvariantCulture);
    }
}
