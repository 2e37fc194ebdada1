namespace FrontEnd.Numbers;

/// <summary>Our own generator of random numbers: the same seed gives the same numbers on every machine and in every release.</summary>
/// <remarks>
/// xoshiro256**, its four words filled by splitmix64 from the seed. A stream for named things, <see cref="For"/>, depends on the seed and
/// those names alone, so that what is drawn for one of them does not move when another one is added.
/// <para>Source: Blackman and Vigna, xoshiro256** 1.0 and splitmix64 (public domain). Test values: reference/random/generator.dat.</para>
/// </remarks>
internal sealed class SeededRandom
{
    /// <summary>What is printed where the numbers must be drawn again.</summary>
    public const string Name = "xoshiro256** seeded by splitmix64";

    private RandomStream _stream;

    public SeededRandom(ulong seed) => _stream = new RandomStream(seed);

    private SeededRandom(RandomStream stream) => _stream = stream;

    internal ref RandomStream Stream => ref _stream;

    /// <summary>A generator in a state given word for word; not all words may be zero. For test values.</summary>
    public static SeededRandom FromState(ulong s0, ulong s1, ulong s2, ulong s3) =>
        (s0 | s1 | s2 | s3) == 0
            ? throw new ArgumentOutOfRangeException(nameof(s0), s0, "At least one word must not be zero.")
            : new(new RandomStream(s0, s1, s2, s3));

    /// <summary>The stream of a seed and some names, such as a template and a student.</summary>
    /// <remarks>The names' UTF-8 bytes, each name ended by a byte of value 255 that UTF-8 never has, are hashed by FNV-1a (64 bits) and
    /// mixed with the seed by splitmix64.</remarks>
    public static SeededRandom For(ulong seed, params ReadOnlySpan<string> names) => new(Mixed(seed, names));

    /// <summary>One number of 64 bits from a seed and some names, for orders that must not depend on what else there is.</summary>
    public static ulong Mixed(ulong seed, params ReadOnlySpan<string> names)
    {
        ulong hash = RandomStream.NoNames;
        foreach (string name in names)
        {
            hash = RandomStream.Hash(hash, name);
        }

        return RandomStream.Mix(seed, hash);
    }

    /// <summary>The next 64 bits.</summary>
    public ulong NextBits() => _stream.NextBits();

    /// <summary>A number from 0 up to but not including 1, of 53 bits.</summary>
    public double NextUnit() => _stream.NextUnit();

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
}
