using System.Buffers.Binary;
using System.Text;
using FrontEnd.Numbers;

namespace FrontEnd.Teaching.Problems;

/// <summary>The seal of a key of version 2: a hash over everything in it that decides marks, so that a key changed by hand, or cut off, is told.
/// Later keys are sealed over their whole text.</summary>
/// <remarks>Names, texts, givens, the seed and the form of the file decide nothing. It keeps nobody out: whoever can write a key can seal
/// one.</remarks>
internal static class KeySeal
{
    /// <summary>64 hexadecimal digits.</summary>
    public static string Of(Key key)
    {
        List<byte> all = [];
        Add(all, "key");
        Add(all, key.Code);
        if (!key.Rubric.IsUsual)
        {
            Add(all, "rubric");
            Add(all, key.Rubric.All);
            foreach ((string question, QuestionRubric rubric) in key.Rubric.Questions.OrderBy(one => one.Key, StringComparer.Ordinal))
            {
                Add(all, question);
                Add(all, rubric);
            }
        }

        foreach (KeySheet sheet in key.Sheets)
        {
            all.AddRange(KeyedHash.Sha256(Bytes(sheet)));
        }

        return Convert.ToHexStringLower(KeyedHash.Sha256(all.ToArray()));
    }

    private static byte[] Bytes(KeySheet sheet)
    {
        List<byte> bytes = [];
        Add(bytes, sheet.Student);
        foreach (KeyQuestion question in sheet.Questions)
        {
            Add(bytes, "question");
            Add(bytes, question.Id);
            Add(bytes, question.Template);
            Add(bytes, question.Answer);
            Add(bytes, question.Kind?.Name ?? "");
            Add(bytes, question.Points, question.Value, question.Low, question.High, question.Unrounded ?? double.NaN, question.HasIntermediates ? 1 : 0);
            foreach (string option in question.Options)
            {
                Add(bytes, "option");
                Add(bytes, option);
            }

            foreach (KeySlip slip in question.Slips)
            {
                Add(bytes, "slip");
                Add(bytes, slip.Code);
                Add(bytes, slip.Remark);
                Add(bytes, slip.Value, slip.Low, slip.High, slip.Points);
            }
        }

        return [.. bytes];
    }

    private static void Add(List<byte> bytes, QuestionRubric rubric) =>
        Add(bytes, rubric.Slip ?? double.NaN, rubric.Rounding, rubric.UnitLeftOut, rubric.OtherKind, rubric.WrongSign);

    /// <summary>A text with its length in front, so that no two lists of texts are one.</summary>
    private static void Add(List<byte> bytes, string text)
    {
        byte[] letters = Encoding.UTF8.GetBytes(text);
        Add(bytes, letters.Length);
        bytes.AddRange(letters);
    }

    private static void Add(List<byte> bytes, params ReadOnlySpan<double> numbers)
    {
        Span<byte> eight = stackalloc byte[sizeof(double)];
        foreach (double number in numbers)
        {
            BinaryPrimitives.WriteDoubleLittleEndian(eight, number + 0.0);
            bytes.AddRange(eight);
        }
    }
}
