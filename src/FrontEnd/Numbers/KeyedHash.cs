using System.Buffers.Binary;
using System.Numerics;

namespace FrontEnd.Numbers;

/// <summary>SHA-256, and with a key HMAC-SHA-256: what nobody can turn round or make without the key.</summary>
/// <remarks>
/// Our own, as the framework's needs a library of the system that a bare machine need not have.
/// <para>Source: FIPS 180-4 and RFC 2104, from memory; the tests compare with the framework's.</para>
/// </remarks>
internal static class KeyedHash
{
    /// <summary>Bytes of a hash.</summary>
    public const int Size = 32;

    private const int Block = 64;

    // The first bits behind the point of the cube roots of the first 64 primes.
    private static ReadOnlySpan<uint> Rounds =>
    [
        0x428a2f98, 0x71374491, 0xb5c0fbcf, 0xe9b5dba5, 0x3956c25b, 0x59f111f1, 0x923f82a4, 0xab1c5ed5,
        0xd807aa98, 0x12835b01, 0x243185be, 0x550c7dc3, 0x72be5d74, 0x80deb1fe, 0x9bdc06a7, 0xc19bf174,
        0xe49b69c1, 0xefbe4786, 0x0fc19dc6, 0x240ca1cc, 0x2de92c6f, 0x4a7484aa, 0x5cb0a9dc, 0x76f988da,
        0x983e5152, 0xa831c66d, 0xb00327c8, 0xbf597fc7, 0xc6e00bf3, 0xd5a79147, 0x06ca6351, 0x14292967,
        0x27b70a85, 0x2e1b2138, 0x4d2c6dfc, 0x53380d13, 0x650a7354, 0x766a0abb, 0x81c2c92e, 0x92722c85,
        0xa2bfe8a1, 0xa81a664b, 0xc24b8b70, 0xc76c51a3, 0xd192e819, 0xd6990624, 0xf40e3585, 0x106aa070,
        0x19a4c116, 0x1e376c08, 0x2748774c, 0x34b0bcb5, 0x391c0cb3, 0x4ed8aa4a, 0x5b9cca4f, 0x682e6ff3,
        0x748f82ee, 0x78a5636f, 0x84c87814, 0x8cc70208, 0x90befffa, 0xa4506ceb, 0xbef9a3f7, 0xc67178f2,
    ];

    // The same of the square roots of the first 8 primes.
    private static ReadOnlySpan<uint> Start =>
    [
        0x6a09e667, 0xbb67ae85, 0x3c6ef372, 0xa54ff53a, 0x510e527f, 0x9b05688c, 0x1f83d9ab, 0x5be0cd19,
    ];

    /// <summary>SHA-256.</summary>
    public static byte[] Sha256(ReadOnlySpan<byte> message)
    {
        Span<uint> state = stackalloc uint[8];
        Start.CopyTo(state);
        int whole = message.Length / Block * Block;
        for (int at = 0; at < whole; at += Block)
        {
            Mix(state, message.Slice(at, Block));
        }

        // The rest, a single bit, zeros, and the length in bits.
        Span<byte> end = stackalloc byte[2 * Block];
        ReadOnlySpan<byte> rest = message[whole..];
        rest.CopyTo(end);
        end[rest.Length] = 0x80;
        int length = rest.Length < Block - sizeof(ulong) ? Block : 2 * Block;
        BinaryPrimitives.WriteUInt64BigEndian(end[(length - sizeof(ulong))..], 8 * (ulong)message.Length);
        for (int at = 0; at < length; at += Block)
        {
            Mix(state, end.Slice(at, Block));
        }

        byte[] hash = new byte[Size];
        for (int i = 0; i < state.Length; i++)
        {
            BinaryPrimitives.WriteUInt32BigEndian(hash.AsSpan(sizeof(uint) * i), state[i]);
        }

        return hash;
    }

    /// <summary>HMAC-SHA-256; a key of any length, also none.</summary>
    public static byte[] Of(ReadOnlySpan<byte> key, ReadOnlySpan<byte> message)
    {
        const byte Inner = 0x36, Outer = 0x5c;
        ReadOnlySpan<byte> shortKey = Block < key.Length ? Sha256(key) : key;
        byte[] inside = new byte[Block + message.Length], outside = new byte[Block + Size];
        shortKey.CopyTo(inside);
        shortKey.CopyTo(outside);
        for (int i = 0; i < Block; i++)
        {
            inside[i] ^= Inner;
            outside[i] ^= Outer;
        }

        message.CopyTo(inside.AsSpan(Block));
        Sha256(inside).CopyTo(outside, Block);
        return Sha256(outside);
    }

    private static void Mix(Span<uint> state, ReadOnlySpan<byte> block)
    {
        Span<uint> w = stackalloc uint[Block];
        for (int i = 0; i < 16; i++)
        {
            w[i] = BinaryPrimitives.ReadUInt32BigEndian(block[(sizeof(uint) * i)..]);
        }

        for (int i = 16; i < w.Length; i++)
        {
            uint early = BitOperations.RotateRight(w[i - 15], 7) ^ BitOperations.RotateRight(w[i - 15], 18) ^ (w[i - 15] >> 3);
            uint late = BitOperations.RotateRight(w[i - 2], 17) ^ BitOperations.RotateRight(w[i - 2], 19) ^ (w[i - 2] >> 10);
            w[i] = w[i - 16] + early + w[i - 7] + late;
        }

        uint a = state[0], b = state[1], c = state[2], d = state[3], e = state[4], f = state[5], g = state[6], h = state[7];
        for (int i = 0; i < w.Length; i++)
        {
            uint chosen = (e & f) ^ (~e & g), most = (a & b) ^ (a & c) ^ (b & c);
            uint sumOfE = BitOperations.RotateRight(e, 6) ^ BitOperations.RotateRight(e, 11) ^ BitOperations.RotateRight(e, 25);
            uint sumOfA = BitOperations.RotateRight(a, 2) ^ BitOperations.RotateRight(a, 13) ^ BitOperations.RotateRight(a, 22);
            uint first = h + sumOfE + chosen + Rounds[i] + w[i];
            (h, g, f, e, d, c, b, a) = (g, f, e, d + first, c, b, a, first + sumOfA + most);
        }

        ReadOnlySpan<uint> mixed = [a, b, c, d, e, f, g, h];
        for (int i = 0; i < state.Length; i++)
        {
            state[i] += mixed[i];
        }
    }
}
