using System.Numerics;

namespace FrontEnd.Spread;

/// <summary>Random numbers of one build: xoshiro256**, its state filled by splitmix64 from the run's seed and the build's number.</summary>
/// <remarks>
/// A build's numbers depend on nothing but seed and number, so the result is the same whatever the number of threads. Not for secrets.
/// <para>Source: D. Blackman, S. Vigna, Scrambled linear pseudorandom number generators, ACM Trans. Math. Softw. 47 (2021), Fig. 1 (xoshiro256**);
/// G. Steele, D. Lea, C. Flood, Fast splittable pseudorandom number generators (2014) for splitmix64; both in the public domain. From memory.</para>
/// </remarks>
public sealed class BuildRandom
{
    private const ulong Golden = 0x9E3779B97F4A7C15;

    private ulong _a;
    private ulong _b;
    private ulong _c;
    private ulong _d;

    /// <summary>The stream of one build.</summary>
    /// <param name="seed">The run's seed.</param>
    /// <param name="build">The build's number, from 0.</param>
    public BuildRandom(ulong seed, long build) => Restart(seed, build);

    private BuildRandom(ulong a, ulong b, ulong c, ulong d) => (_a, _b, _c, _d) = (a, b, c, d);

    /// <summary>A generator in a given state, not all zero; for checking it against published values.</summary>
    public static BuildRandom FromState(ulong a, ulong b, ulong c, ulong d) => new(a, b, c, d);

    /// <summary>One step of splitmix64: moves the state on and returns its hash.</summary>
    public static ulong SplitMix(ref ulong state)
    {
        ulong z = state += Golden;
        z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9;
        z = (z ^ (z >> 27)) * 0x94D049BB133111EB;
        return z ^ (z >> 31);
    }

    /// <summary>Starts the stream of another build.</summary>
    public void Restart(ulong seed, long build)
    {
        // Seed and number are hashed apart, so that neighbouring seeds do not share builds.
        ulong first = seed, state = SplitMix(ref first) ^ ((ulong)build * Golden);
        _a = SplitMix(ref state);
        _b = SplitMix(ref state);
        _c = SplitMix(ref state);
        _d = SplitMix(ref state);
    }

    /// <summary>The next 64 bits.</summary>
    public ulong Next()
    {
        ulong result = BitOperations.RotateLeft(_b * 5, 7) * 9, t = _b << 17;
        _c ^= _a;
        _d ^= _b;
        _b ^= _c;
        _a ^= _d;
        _c ^= t;
        _d = BitOperations.RotateLeft(_d, 45);
        return result;
    }

    /// <summary>Evenly spread over 0 ≤ u &lt; 1, with 53 bits.</summary>
    public double Uniform() => (Next() >> 11) * (1.0 / (1UL << 53));

    /// <summary>Normal with mean 0 and standard deviation 1, by Box and Muller (1958).</summary>
    public double Normal()
    {
        double radius = Math.Sqrt(-2 * Math.Log(1 - Uniform()));
        return radius * Math.Cos(2 * Math.PI * Uniform());
    }
}
