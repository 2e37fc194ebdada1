namespace FrontEnd.Fields;

/// <summary>How an electrode's contact changes from when it is put on: by which factors its impedance and its excess noise stand above what its
/// other values say, time by time.</summary>
/// <remarks>Equal where all times and factors are.</remarks>
public sealed class ContactOverTime : IEquatable<ContactOverTime>
{
    /// <summary>Nothing is known of it: the contact stays as it is.</summary>
    public static readonly ContactOverTime None = new([]);

    /// <summary>A factor that stands for "as designed".</summary>
    private static readonly ContactFactors AsDesigned = new(1, 1);

    private readonly ContactAt[] _all;

    public ContactOverTime(IEnumerable<ContactAt> all) => _all = [.. all];

    /// <summary>Every time, in the order given: they rise.</summary>
    public IReadOnlyList<ContactAt> All => _all;

    /// <summary>The factors at any time: as given before the first and after the last, between two by powers, straight where time and factor are both
    /// drawn in decades.</summary>
    public ContactFactors At(Duration after)
    {
        if (_all.Length == 0)
        {
            return AsDesigned;
        }

        int next = Array.FindIndex(_all, one => after.Seconds <= one.After.Seconds);
        if (next is 0 || (0 < next && _all[next].After == after))
        {
            return _all[next].Factors;
        }

        if (next < 0)
        {
            return _all[^1].Factors;
        }

        (ContactAt from, ContactAt to) = (_all[next - 1], _all[next]);
        double share = Math.Log(after.Seconds / from.After.Seconds) / Math.Log(to.After.Seconds / from.After.Seconds);
        return new ContactFactors(Between(from.Factors.Impedance, to.Factors.Impedance), Between(from.Factors.Excess, to.Factors.Excess));

        double Between(double first, double second) => first == second ? first : first * Math.Pow(second / first, share);
    }

    /// <summary>A time in the largest unit that it is a whole number of, in full precision: "10 min", "1 h".</summary>
    public static string Words(Duration time)
    {
        foreach ((string unit, double seconds) in new[] { ("d", 86400.0), ("h", 3600), ("min", 60) })
        {
            double count = time.Seconds / seconds;
            if (1 <= count && Math.Floor(count) == count && count * seconds == time.Seconds)
            {
                return $"{count.ToString("R", System.Globalization.CultureInfo.InvariantCulture)} {unit}";
            }
        }

        return QuantityText.FormatExact(time);
    }

    public bool Equals(ContactOverTime? other) => other is not null && _all.SequenceEqual(other._all);

    public override bool Equals(object? obj) => Equals(obj as ContactOverTime);

    public override int GetHashCode() => _all.Aggregate(0, (hash, one) => HashCode.Combine(hash, one));
}

/// <summary>An electrode's contact at one time.</summary>
/// <param name="After">Time since it was put on, above 0.</param>
/// <param name="Factors">Against the electrode's own values.</param>
public readonly record struct ContactAt(Duration After, ContactFactors Factors);

/// <summary>What a contact is multiplied by.</summary>
/// <param name="Impedance">Factor of all its resistances; the time constants stay.</param>
/// <param name="Excess">Factor of its excess noise, in volts.</param>
public readonly record struct ContactFactors(double Impedance, double Excess);
