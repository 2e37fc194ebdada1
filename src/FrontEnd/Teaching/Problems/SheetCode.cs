using System.Buffers.Binary;
using System.Text;
using FrontEnd.Numbers;

namespace FrontEnd.Teaching.Problems;

/// <summary>The codes that stand on sheets: short, of letters and digits that are not taken for one another, and empty of anything that
/// would give a sheet away.</summary>
/// <remarks>The homework has a code, from secret, seed, template set and questions; a sheet's follows from it and the student's id alone, so
/// that a key, which has the homework's code, can check a sheet's.</remarks>
internal static class SheetCode
{
    /// <summary>Letters and digits of a code.</summary>
    public const int Length = 8;

    // Without 0 O, 1 I L, 2 Z, 5 S, 8 B and U: 24 signs, 24^8 = 1.1·10¹¹ codes.
    private const string Signs = "34679ACDEFGHJKMNPQRTVWXY";

    /// <summary>The code of a student's sheet.</summary>
    /// <param name="homework">The homework's code.</param>
    /// <param name="student">The student's id; "" for a sheet that all share.</param>
    public static string Of(string homework, string student) =>
        Of(KeyedHash.Of(Encoding.UTF8.GetBytes(Plain(homework)), Encoding.UTF8.GetBytes(student)));

    /// <summary>A code as somebody typed it, made comparable: capitals, without blanks, hyphens and a dot.</summary>
    public static string Plain(string typed) => string.Concat(typed.Where(char.IsAsciiLetterOrDigit)).ToUpperInvariant();

    /// <summary>The code of a hash.</summary>
    internal static string Of(ReadOnlySpan<byte> hash)
    {
        ulong bits = BinaryPrimitives.ReadUInt64LittleEndian(hash);
        Span<char> code = stackalloc char[Length];
        for (int i = 0; i < code.Length; i++)
        {
            (bits, ulong sign) = Math.DivRem(bits, (ulong)Signs.Length);
            code[i] = Signs[(int)sign];
        }

        return code.ToString();
    }
}
