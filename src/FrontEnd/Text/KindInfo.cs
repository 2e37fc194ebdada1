using FrontEnd.Quantities;

namespace FrontEnd.Text;

/// <summary>How the numbers of a kind are printed.</summary>
internal enum NumberForm
{
    /// <summary>With engineering prefixes: 4.70 kΩ.</summary>
    Prefixed,

    /// <summary>Power of ten, as a squared unit takes no readable prefix: 2.50e-12 V²/Hz.</summary>
    Scientific,

    /// <summary>No prefix, decimals limited: dB, °C. A difference near zero is not stretched to full digits.</summary>
    Plain,

    /// <summary>As <see cref="Plain"/>, unit written close to the number: 45.0°.</summary>
    Degrees,

    /// <summary>A whole number has no decimals: 12 bit.</summary>
    Count,

    /// <summary>% below 1, × from 1 on.</summary>
    Fraction,

    /// <summary>s with prefixes below two minutes, then min, then h.</summary>
    Time,

    /// <summary>mAh and Ah from 1 µAh on, C below.</summary>
    Capacity,

    /// <summary>m², cm², mm².</summary>
    Square,
}

/// <summary>A unit without prefix: how it is printed and read, and what it is in SI.</summary>
/// <param name="Spellings">All spellings without spaces; the first is printed.</param>
/// <param name="Prefixes">Prefix letters it takes, besides none; µ stands for all its spellings, k for K too.</param>
/// <param name="Exponent">Power of ten in the SI unit.</param>
/// <param name="Factor">Further factor that is no power of ten, such as 3600 for Ah.</param>
/// <param name="Offset">Added after scaling, 273.15 for °C.</param>
/// <param name="Power">The power the prefix takes with it: 2 for m², as a cm² is (cm)².</param>
internal sealed record Unit(string[] Spellings, string Prefixes = "", int Exponent = 0, double Factor = 1, double Offset = 0, int Power = 1);

/// <summary>What a written unit means: value = number · 10^Exponent · Factor + Offset.</summary>
/// <param name="Prefix">The prefix as printed; "" for none.</param>
/// <param name="Symbol">Prefix and unit as printed.</param>
internal readonly record struct Reading(string Prefix, string Symbol, int Exponent, double Factor, double Offset);

/// <summary>All that is known about writing and reading one kind of quantity.</summary>
internal sealed class KindInfo
{
    private readonly Dictionary<string, Reading> exact = new(StringComparer.Ordinal);
    private readonly Dictionary<string, List<(string Written, Reading Reading)>> anyCase = new(StringComparer.OrdinalIgnoreCase);

    /// <param name="words">"a voltage".</param>
    /// <param name="asked">"a number and a voltage unit".</param>
    /// <param name="bare">True where a number without unit is read in the SI unit.</param>
    /// <param name="barePrefixes">Prefix letters that are read without unit, as 220n.</param>
    /// <param name="codeLetters">Letters of the IEC 60062 code, each with its power of ten.</param>
    internal KindInfo(
        QuantityKind kind,
        Type type,
        Func<double, IQuantity> make,
        NumberForm form,
        string words,
        string asked,
        string[] examples,
        Unit[] units,
        string suffix = "",
        bool bare = false,
        string barePrefixes = "",
        IReadOnlyDictionary<char, int>? codeLetters = null)
    {
        (Kind, Type, Make, Form, Words, Asked, Units, Suffix, Bare) = (kind, type, make, form, words, asked, units, suffix, bare);
        (Example, SecondExample) = (examples[0], examples.Length < 2 ? null : examples[1]);
        CodeLetters = codeLetters;
        foreach (Unit unit in units)
        {
            foreach (string spelling in unit.Spellings)
            {
                Add(spelling, new Reading("", unit.Spellings[0], unit.Exponent, unit.Factor, unit.Offset));
                foreach (char prefix in unit.Prefixes)
                {
                    AddPrefixed(prefix, spelling, unit);
                }
            }
        }

        foreach (char prefix in barePrefixes)
        {
            AddPrefixed(prefix, "", units[0]);
        }

        UnitExamples = kind == QuantityKind.Temperature ? ["°C", "K"] : [.. examples.Take(1).Select(example => QuantityText.UnitOfExample(example))];
    }

    internal QuantityKind Kind { get; }
    internal Type Type { get; }
    internal Func<double, IQuantity> Make { get; }
    internal NumberForm Form { get; }
    internal string Words { get; }
    internal string Asked { get; }
    internal string Example { get; }
    internal string? SecondExample { get; }
    internal Unit[] Units { get; }
    internal IReadOnlyList<string> UnitExamples { get; }

    /// <summary>" rms" or " p-p", after the unit in print.</summary>
    internal string Suffix { get; }
    internal bool Bare { get; }
    internal IReadOnlyDictionary<char, int>? CodeLetters { get; }

    internal bool TryExact(string unit, out Reading reading) => exact.TryGetValue(unit, out reading);

    /// <summary>The readings that fit when case is ignored, each with the spelling that fits.</summary>
    internal IReadOnlyList<(string Written, Reading Reading)> AnyCase(string unit) =>
        anyCase.TryGetValue(unit, out List<(string, Reading)>? readings) ? readings : [];

    private void AddPrefixed(char prefix, string spelling, Unit unit)
    {
        Reading reading = new(prefix.ToString(), prefix + unit.Spellings[0], unit.Exponent + (unit.Power * Prefixes.Exponent(prefix)), unit.Factor, unit.Offset);
        Add(prefix + spelling, reading);
        if (prefix == 'µ')
        {
            Add("u" + spelling, reading);
        }

        if (prefix == 'k')
        {
            Add("K" + spelling, reading);
        }
    }

    private void Add(string spelling, Reading reading)
    {
        exact[spelling] = reading;
        if (!anyCase.TryGetValue(spelling, out List<(string Written, Reading Reading)>? readings))
        {
            anyCase[spelling] = readings = [];
        }

        if (!readings.Exists(known => known.Reading == reading))
        {
            readings.Add((spelling, reading));
        }
    }
}

/// <summary>The SI prefixes in use, engineering ones and centi. SI Brochure, 9th edition (2019), table 7; from memory.</summary>
internal static class Prefixes
{
    internal static int Exponent(char prefix) => prefix switch
    {
        'a' => -18,
        'f' => -15,
        'p' => -12,
        'n' => -9,
        'µ' => -6,
        'm' => -3,
        'c' => -2,
        'k' => 3,
        'M' => 6,
        'G' => 9,
        'T' => 12,
        _ => throw new ArgumentOutOfRangeException(nameof(prefix), prefix, "Not a prefix in use."),
    };
}
