using System.Buffers.Binary;
using System.Text;
using FrontEnd.Numbers;

namespace FrontEnd.Teaching;

/// <summary>Where all numbers of a homework come from: a seed, which the key tells, and a secret, which nobody is told.</summary>
/// <remarks>
/// Every stream is HMAC-SHA-256 of the stream's names (template, copy, student …) under a key that is HMAC-SHA-256 of the seed under the
/// secret. Who has a sheet, this program and the seed can therefore not draw another sheet, nor the key, without the secret.
/// </remarks>
internal sealed class DrawSource
{
    // Ends a name; UTF-8 has no such byte.
    private const byte EndOfName = 255;

    private readonly byte[] _key;

    /// <param name="seed">The number that makes one homework another.</param>
    /// <param name="secret">The bytes of the secret; blanks and line ends around them, and a byte order mark, do not count. Empty for none:
    /// then anyone who knows the seed can draw the sheets.</param>
    public DrawSource(ulong seed, ReadOnlySpan<byte> secret = default)
    {
        Seed = seed;
        ReadOnlySpan<byte> plain = Trimmed(secret);
        HasSecret = !plain.IsEmpty;
        Span<byte> number = stackalloc byte[sizeof(ulong)];
        BinaryPrimitives.WriteUInt64LittleEndian(number, seed);
        _key = KeyedHash.Of(plain, [.. "homework"u8, EndOfName, .. number]);
    }

    public ulong Seed { get; }

    public bool HasSecret { get; }

    /// <summary>What of a secret's file counts.</summary>
    public static ReadOnlySpan<byte> Trimmed(ReadOnlySpan<byte> secret)
    {
        ReadOnlySpan<byte> mark = [0xEF, 0xBB, 0xBF];
        return (secret.StartsWith(mark) ? secret[mark.Length..] : secret).Trim(" \t\r\n\0"u8);
    }

    /// <summary>The generator for something with these names.</summary>
    public SeededRandom Stream(params ReadOnlySpan<string> names)
    {
        byte[] hash = Hash("numbers", names);
        Span<ulong> words = stackalloc ulong[4];
        for (int i = 0; i < words.Length; i++)
        {
            words[i] = BinaryPrimitives.ReadUInt64LittleEndian(hash.AsSpan(sizeof(ulong) * i));
        }

        return SeededRandom.FromState(words[0], words[1], words[2], words[3]);
    }

    /// <summary>A number to sort something with these names by, so that its place does not depend on what else there is.</summary>
    public ulong Order(params ReadOnlySpan<string> names) => BinaryPrimitives.ReadUInt64LittleEndian(Hash("order", names));

    /// <summary>A code that tells something with these names from everything else, and tells nothing about it.</summary>
    internal byte[] Code(params ReadOnlySpan<string> names) => Hash("code", names);

    private byte[] Hash(string use, ReadOnlySpan<string> names)
    {
        List<byte> message = [.. Encoding.UTF8.GetBytes(use), EndOfName];
        foreach (string name in names)
        {
            message.AddRange(Encoding.UTF8.GetBytes(name));
            message.Add(EndOfName);
        }

        return KeyedHash.Of(_key, message.ToArray());
    }
}
