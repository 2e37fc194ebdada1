using System.Text;

namespace FrontEnd.Numbers;

/// <summary>Our own generator of random numbers: the same seed gives the same numbers on every machine and in every release.</summary>
/// <remarks>
/// xoshiro256**, its four words filled by splitmix64 from the seed. A stream for named things, <see cref="For"/>, depends on the seed and
/// those names alone, so that what is drawn for one of them does not move when another one is added.
/// <para>Source: Blackman and Vigna, xoshiro256** 1.0 and splitmix64 (public domain). Test values: reference/random/generator.dat.</para>
/// </remarks>
public sealed class SeededRandom
{
    /// <summary>What is printed where the numbers must be drawn again.</summary>
    public const string Name = "xoshiro256** seeded by splitmix64";

    private ulong _s0, _s1, _s2, _s3;

    public SeededRandom(ulong seed)
    {
        _s0 = SplitMix(ref seed);
        _s1 = SplitMix(ref seed);
        _s2 = SplitMix(ref seed);
        _s3 = SplitMix(ref seed);
    }

    private SeededRandom((ulong S0, ulong S1, ulong S2, ulong S3) state) => (_s0, _s1, _s2, _s3) = state;

    /// <summary>A generator in a state given word for word; not all words may be zero. For test values.</summary>
    public static SeededRandom FromState(ulong s0, ulong s1, ulong s2, ulong s3) =>
        (s0 | s1 | s2 | s3) == 0
            ? throw new ArgumentOutOfRangeException(nameof(s0), s0, "At least one word must not be zero.") : new((s0, s1, s2, s3));

    /// <summary>The stream of a seed and some names, such as a template and a student.</summary>
    /// <remarks>The names' UTF-8 bytes, each name ended by a byte of value 255 that UTF-8 never has, are hashed by FNV-1a (64 bits) and
    /// mixed with the seed by splitmix64.</remarks>
    public static SeededRandom For(ulong seed, params ReadOnlySpan<string> names) => new(Mixed(seed, names));

    /// <summary>One number of 64 bits from a seed and some names, for orders that must not depend on what else there is.</summary>
    public static ulong Mixed(ulong seed, params ReadOnlySpan<string> names)
    {
        ulong hash = 14695981039346656037;
        foreach (string name in names)
        {
            foreach (byte one in Encoding.UTF8.GetBytes(name))
            {
                hash = (hash ^ one) * 1099511628211;
            }

            hash = (hash ^ 255) * 1099511628211;
        }

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

    /// <summary>A whole number from 0 to below <paramref name="count"/>, all alike: bits that would favour the small ones are drawn
    /// again.</summary>
    public int NextBelow(int count)
    {
        if (count < 1)
        {
            throw new ArgumentOutOfRangeException(nameof(count), count, "There must be at least one number to draw from.");
        }

        ulong range = (ulong)count;
        ulong surplus = (ulong.MaxValue % range) + 1;
        ulong last = surplus == range ? ulong.MaxValue : ulong.MaxValue - surplus;
        while (true)
        {
            ulong bits = NextBits();
            if (bits <= last)
            {
                return (int)(bits % range);
            }
        }
    }

    private static ulong SplitMix(ref ulong state)
    {
        state += 0x9E3779B97F4A7C15;
        ulong z = state;
        z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9;
        z = (z ^ (z >> 27)) * 0x94D049BB133111EB;
        return z ^ (z >> 31);
    }
}
