using System.Buffers;
using System.Buffers.Binary;
using System.Text.Json;
using FrontEnd.Documents.Files;
using FrontEnd.Numbers;

namespace FrontEnd.Documents.Teaching;

/// <summary>The seal of a JSON text: a hash over every name and every value in it, in their order, but the seal's own. White space between
/// them, and how a letter is escaped, change nothing; any other change does.</summary>
/// <remarks>It keeps nobody out: whoever can write such a file can seal one. Written to as a stream, it takes a file of any size as it is
/// made.</remarks>
internal sealed class JsonSeal : WriteOnlyStream
{
    /// <summary>The member of the outermost object that holds the seal.</summary>
    public const string Member = "seal";

    /// <summary>Bytes of names and values that are hashed at once.</summary>
    private const int Piece = 1 << 16;

    private static readonly JsonReaderOptions Options = new() { MaxDepth = 64 };

    private readonly ArrayBufferWriter<byte> _piece = new();
    private readonly List<byte> _hashes = [];
    private byte[] _rest = [];
    private JsonReaderState _state = new(Options);
    private bool _isSealNext, _hasSeal;

    /// <summary>64 hexadecimal digits, of a whole text.</summary>
    public static string Of(ReadOnlySpan<byte> json)
    {
        using JsonSeal seal = new();
        Utf8JsonReader reader = new(json, Options);
        while (reader.Read())
        {
            seal.Take(ref reader);
        }

        return seal.Hash();
    }

    /// <summary>The same of what was written, which is whole now.</summary>
    public string Finish()
    {
        Read([], isLast: true);
        return Hash();
    }

    public override void Write(ReadOnlySpan<byte> buffer) => Read(buffer, isLast: false);

    private void Read(ReadOnlySpan<byte> more, bool isLast)
    {
        byte[] all = [.. _rest, .. more];
        Utf8JsonReader reader = new(all, isLast, _state);
        while (reader.Read())
        {
            Take(ref reader);
        }

        _state = reader.CurrentState;
        _rest = all[(int)reader.BytesConsumed..];
    }

    private void Take(ref Utf8JsonReader reader)
    {
        bool isSeal = _isSealNext && reader.TokenType == JsonTokenType.String;
        _isSealNext = false;
        _piece.Write([(byte)reader.TokenType]);
        switch (reader.TokenType)
        {
            case JsonTokenType.PropertyName:
                // The first one alone: a second is a value like any other.
                _isSealNext = !_hasSeal && reader.CurrentDepth == 1 && reader.ValueTextEquals(Member);
                _hasSeal |= _isSealNext;
                AddText(ref reader);
                break;
            case JsonTokenType.String when !isSeal:
                AddText(ref reader);
                break;
            case JsonTokenType.Number:
                AddLength(reader.ValueSpan.Length);
                _piece.Write(reader.ValueSpan);
                break;
        }

        if (Piece <= _piece.WrittenCount)
        {
            HashPiece();
        }
    }

    /// <summary>A text without its escapes, its length in front, so that no two lists of texts are one.</summary>
    private void AddText(ref Utf8JsonReader reader)
    {
        byte[] letters = ArrayPool<byte>.Shared.Rent(reader.ValueSpan.Length);
        int length = reader.CopyString(letters);
        AddLength(length);
        _piece.Write(letters.AsSpan(0, length));
        ArrayPool<byte>.Shared.Return(letters);
    }

    private void AddLength(int length)
    {
        BinaryPrimitives.WriteInt32LittleEndian(_piece.GetSpan(sizeof(int)), length);
        _piece.Advance(sizeof(int));
    }

    private void HashPiece()
    {
        _hashes.AddRange(KeyedHash.Sha256(_piece.WrittenSpan));
        _piece.ResetWrittenCount();
    }

    private string Hash()
    {
        HashPiece();
        return Convert.ToHexStringLower(KeyedHash.Sha256([.. _hashes]));
    }

    public override void Flush()
    {
        // Nothing is held that could go anywhere.
    }
}
