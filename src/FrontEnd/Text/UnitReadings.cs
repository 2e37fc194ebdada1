namespace FrontEnd.Text;

/// <summary>A unit without prefix: how it is printed and read, and what it is in SI.</summary>
/// <param name="Spellings">All spellings without spaces; the first is printed.</param>
/// <param name="Prefixes">Prefix letters it takes, besides none; µ stands for all its spellings, k for K too.</param>
/// <param name="Exponent">Power of ten in the SI unit.</param>
/// <param name="Factor">Further factor that is no power of ten, such as 3600 for Ah.</param>
/// <param name="Offset">Added after scaling, the kelvins of 0 °C for °C.</param>
/// <param name="Power">The power the prefix takes with it: 2 for m², as a cm² is (cm)².</param>
internal sealed record Unit(string[] Spellings, string Prefixes = "", int Exponent = 0, double Factor = 1, double Offset = 0,
    int Power = 1);

/// <summary>What a written unit means: value = number · 10^Exponent · Factor + Offset.</summary>
/// <param name="Prefix">The prefix as printed; "" for none.</param>
/// <param name="Symbol">Prefix and unit as printed.</param>
internal readonly record struct Reading(string Prefix, string Symbol, int Exponent, double Factor, double Offset);

/// <summary>Every spelling of a kind's units, with and without prefixes, and what it means.</summary>
internal sealed class UnitReadings
{
    private readonly Dictionary<string, Reading> _exact = new(StringComparer.Ordinal);
    private readonly Dictionary<string, List<(string Written, Reading Reading)>> _anyCase = new(StringComparer.OrdinalIgnoreCase);

    /// <param name="units">The units of one kind.</param>
    /// <param name="barePrefixes">Prefix letters that stand for the first unit, as 220n.</param>
    internal UnitReadings(Unit[] units, string barePrefixes)
    {
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
    }

    internal IEnumerable<string> Spellings => _exact.Keys;

    internal bool TryExact(string unit, out Reading reading) => _exact.TryGetValue(unit, out reading);

    /// <summary>The readings that fit when case is ignored, each with the spelling that fits.</summary>
    internal IReadOnlyList<(string Written, Reading Reading)> AnyCase(string unit) => _anyCase.GetValueOrDefault(unit, []);

    private void AddPrefixed(char prefix, string spelling, Unit unit)
    {
        Reading reading = new(
            prefix.ToString(), prefix + unit.Spellings[0], unit.Exponent + (unit.Power * Prefixes.Exponent(prefix)), unit.Factor,
            unit.Offset);
        Add(prefix + spelling, reading);
        if (prefix == 'µ')
        {
            Add("u" + spelling, reading);
        }

        if (prefix == 'M')
        {
            // As circuit descriptions have it, whose letters know no case.
            Add("Meg" + spelling, reading);
            Add("meg" + spelling, reading);
            Add("MEG" + spelling, reading);
        }

        if (prefix == 'k')
        {
            Add("K" + spelling, reading);
        }

        if (spelling.Length > 0)
        {
            string word = Prefixes.Word(prefix);
            Add(word + spelling, reading);

            // kilohm and megohm lose a vowel
            if (word[^1] is 'o' or 'a' && spelling.StartsWith("ohm", StringComparison.OrdinalIgnoreCase))
            {
                Add(word[..^1] + spelling, reading);
            }
        }
    }

    private void Add(string spelling, Reading reading)
    {
        _exact[spelling] = reading;
        if (!_anyCase.TryGetValue(spelling, out List<(string Written, Reading Reading)>? readings))
        {
            _anyCase[spelling] = readings = [];
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

    /// <summary>The prefix in full, as in nanovolts.</summary>
    internal static string Word(char prefix) => prefix switch
    {
        'a' => "atto",
        'f' => "femto",
        'p' => "pico",
        'n' => "nano",
        'µ' => "micro",
        'm' => "milli",
        'c' => "centi",
        'k' => "kilo",
        'M' => "mega",
        'G' => "giga",
        'T' => "tera",
        _ => throw new ArgumentOutOfRangeException(nameof(prefix), prefix, "Not a prefix in use."),
    };
}
