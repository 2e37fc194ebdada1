using System.Globalization;

namespace FrontEnd.Teaching.Problems;

/// <summary>What a value is measured in, as powers of the metre, kilogram, second, ampere and kelvin; nothing of any of them for a plain number.</summary>
/// <remarks>Powers are counted in twelfths, so that roots of noise densities and their roots again are exact. Decibels, degrees, bits and shares are
/// plain numbers.</remarks>
internal readonly record struct Dimension
{
    private const int Whole = 12;

    private readonly int _m, _kg, _s, _a, _k;

    private Dimension(int m, int kg, int s, int a, int k) => (_m, _kg, _s, _a, _k) = (m, kg, s, a, k);

    /// <summary>A plain number.</summary>
    public static Dimension None => default;

    private static readonly Dictionary<string, Dimension> Units = new(StringComparer.Ordinal)
    {
        ["1"] = None, ["dB"] = None, ["°"] = None, ["bit"] = None, ["%"] = None,
        ["m"] = new(12, 0, 0, 0, 0), ["s"] = new(0, 0, 12, 0, 0), ["A"] = new(0, 0, 0, 12, 0), ["K"] = new(0, 0, 0, 0, 12), ["Hz"] = new(0, 0, -12, 0, 0),
        ["V"] = new(24, 12, -36, -12, 0), ["Ω"] = new(24, 12, -36, -24, 0), ["F"] = new(-24, -12, 48, 24, 0), ["C"] = new(0, 0, 12, 12, 0),
        ["T"] = new(0, 12, -24, -12, 0), ["S"] = new(-24, -12, 36, 24, 0), ["J"] = new(24, 12, -24, 0, 0), ["W"] = new(24, 12, -36, 0, 0),
    };

    /// <summary>Units that a dimension is told in, the usual ones first.</summary>
    private static readonly string[] Told =
        ["V", "A", "Ω", "F", "s", "Hz", "C", "m", "m²", "K", "V²", "V/√Hz", "A/√Hz", "V²/Hz", "A²", "W", "J", "T", "S", "S/m", "A·m", "A/m", "V/s", "J/K", "Ω·F", "√Hz", "V·s"];

    /// <summary>Of a unit as the kinds write it: "V/√Hz", "m²", "A·m".</summary>
    public static Dimension Of(string unit)
    {
        Dimension all = None;
        int sign = 1;
        foreach (string part in unit.Replace("/", "·/", StringComparison.Ordinal).Split('·'))
        {
            string name = part;
            if (name.StartsWith('/'))
            {
                (sign, name) = (-1, name[1..]);
            }

            bool root = name.StartsWith('√');
            int power = name.EndsWith('²') ? 2 : 1;
            Dimension one = Units[name.Trim('√', '²')];
            all = all.Times(root ? one.ToThe(1, 2) : one, sign * power);
        }

        return all;
    }

    public static Dimension Of(QuantityKind kind) => Of(kind.SiUnit);

    /// <summary>Times another, to a whole power.</summary>
    public Dimension Times(Dimension other, int power = 1) => new(
        _m + (power * other._m), _kg + (power * other._kg), _s + (power * other._s), _a + (power * other._a), _k + (power * other._k));

    /// <summary>To a power that is a fraction.</summary>
    public Dimension ToThe(int over, int under) => new(_m * over / under, _kg * over / under, _s * over / under, _a * over / under, _k * over / under);

    /// <summary>To any power; null where that leaves twelfths that are no whole numbers.</summary>
    public Dimension? ToThe(double power)
    {
        double[] all = [_m * power, _kg * power, _s * power, _a * power, _k * power];
        return Array.TrueForAll(all, one => Math.Abs(one - Math.Round(one)) < 1e-9 && Math.Abs(one) < 1e6)
            ? new((int)Math.Round(all[0]), (int)Math.Round(all[1]), (int)Math.Round(all[2]), (int)Math.Round(all[3]), (int)Math.Round(all[4]))
            : null;
    }

    /// <summary>A unit for it: "V", "V²/Hz", or the base units.</summary>
    public string Unit
    {
        get
        {
            Dimension own = this;
            return own == None ? "1" : Array.Find(Told, unit => Of(unit) == own) ?? Base();
        }
    }

    /// <summary>How it is told to somebody: "V", "a plain number".</summary>
    public override string ToString() => this == None ? "a plain number" : Unit;

    private string Base() => string.Join('·', new[] { (_m, "m"), (_kg, "kg"), (_s, "s"), (_a, "A"), (_k, "K") }
        .Where(one => one.Item1 != 0)
        .Select(one => one.Item1 == Whole ? one.Item2 : $"{one.Item2}^{(one.Item1 / (double)Whole).ToString("0.###", CultureInfo.InvariantCulture)}"));
}
