using System.Globalization;
using System.Text;

namespace FrontEnd.Numbers;

/// <summary>The state of the generator that <see cref="SeededRandom"/> describes: a value, so that a million streams take no memory of
/// their own.</summary>
internal struct RandomStream
{
    /// <summary>The hash of no names.</summary>
    public const ulong NoNames = 14695981039346656037;

    private ulong _s0, _s1, _s2, _s3;

    public RandomStream(ulong seed)
    {
        _s0 = SplitMix(ref seed);
        _s1 = SplitMix(ref seed);
        _s2 = SplitMix(ref seed);
        _s3 = SplitMix(ref seed);
    }

    public RandomStream(ulong s0, ulong s1, ulong s2, ulong s3) => (_s0, _s1, _s2, _s3) = (s0, s1, s2, s3);

    /// <summary>The stream of a seed, a name and a number in decimal digits: the one of <see cref="SeededRandom.For"/>.</summary>
    public static RandomStream Numbered(ulong seed, string name, int number)
    {
        Span<char> digits = stackalloc char[16];
        return number.TryFormat(digits, out int length, default, CultureInfo.InvariantCulture)
            ? new RandomStream(Mix(seed, Hash(Hash(NoNames, name), digits[..length])))
            : throw new ArgumentOutOfRangeException(nameof(number), number, "The number has more digits than there is room for.");
    }

    /// <summary>A name's bytes and the one that ends it added to a hash (FNV-1a).</summary>
    public static ulong Hash(ulong hash, ReadOnlySpan<char> name)
    {
        const int Short = 64, LongestCharacter = 3;
        const ulong Prime = 1099511628211;
        Span<byte> bytes = name.Length <= Short ? stackalloc byte[Short * LongestCharacter] : new byte[name.Length * LongestCharacter];
        foreach (byte one in bytes[..Encoding.UTF8.GetBytes(name, bytes)])
        {
            hash = (hash ^ one) * Prime;
        }

        return (hash ^ 255) * Prime;
    }

    /// <summary>A hash of names mixed with the seed.</summary>
    public static ulong Mix(ulong seed, ulong hash)
    {
        ulong state = seed;
        state = SplitMix(ref state) ^ hash;
        return SplitMix(ref state);
    }

    /// <summary>The next 64 bits.</summary>
    public ulong NextBits()
    {
        ulong result = ulong.RotateLeft(_s1 * 5, 7) * 9;
        ulong t = _s1 << 17;
        _s2 ^= _s0;
        _s3 ^= _s1;
        _s1 ^= _s2;
        _s0 ^= _s3;
        _s2 ^= t;
        _s3 = ulong.RotateLeft(_s3, 45);
        return result;
    }

    /// <summary>A number from 0 up to but not including 1, of 53 bits.</summary>
    public double NextUnit() => (NextBits() >> 11) * (1.0 / (1UL << 53));

    private static ulong SplitMix(ref ulong state)
    {
        state += 0x9E3779B97F4A7C15;
        ulong z = state;
        z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9;
        z = (z ^ (z >> 27)) * 0x94D049BB133111EB;
        return z ^ (z >> 31);
    }
}
