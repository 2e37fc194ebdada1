using System.Globalization;
using System.Text;
using FrontEnd.Digital;
using FrontEnd.Filters;
using FrontEnd.Text;

namespace FrontEnd.Documents.Coefficients;

/// <summary>The filters as a C99 header without dependencies: coefficients, a run function bit for bit like the program's own runner, and a
/// self-test.</summary>
/// <remarks>No behaviour that C leaves open is relied on: right shifts of negative numbers are written out, and what does not fit into 64
/// bits is summed in two words. The prototypes are plain <c>static</c> and the definitions add <c>inline</c>, so that a compiler does not
/// complain about functions that are not called.</remarks>
internal static class CoefficientHeader
{
    private const int NumbersPerLine = 4;

    /// <param name="file">The file's name without extension: the prefix of every name in it.</param>
    public static string Of(FilterExport export, string design, string file)
    {
        string prefix = Identifier(file);
        StringBuilder text = new();
        Head(text, export, design, prefix);
        switch (export)
        {
            case SectionsExport sections:
                SectionsCode.Write(text, sections, prefix);
                break;
            case TapsExport taps:
                TapsCode.Write(text, taps, prefix);
                break;
            case CombExport comb:
                CombCode.Write(text, comb, prefix);
                break;
            default:
                throw new ArgumentOutOfRangeException(nameof(export), export, "The export is not handled.");
        }

        SelfTest(text, export, prefix);
        Main(text, prefix, file);
        text.Append("\n#endif\n");
        return text.ToString();
    }

    /// <summary>A name that C takes: lower-case letters, digits and underscores, no digit first.</summary>
    internal static string Identifier(string file)
    {
        StringBuilder name = new();
        foreach (char letter in file.ToLowerInvariant())
        {
            name.Append(char.IsAsciiLetterOrDigit(letter) ? letter : '_');
        }

        string bare = name.ToString().Trim('_');
        return bare.Length == 0 ? "filters" : char.IsAsciiDigit(bare[0]) ? "filters_" + bare : bare;
    }

    // A comment must not end early, open another, or join lines.
    private static string Comment(string text) =>
        new([.. text.Select(letter => letter is '*' or '/' or '\\' or '?' || char.IsControl(letter) ? '_' : letter)]);

    private static void Head(StringBuilder text, FilterExport export, string design, string prefix)
    {
        DigitalArithmetic arithmetic = export.Arithmetic;
        string guard = prefix.ToUpperInvariant() + "_H";
        text.Append("/* Digital filters of \"").Append(Comment(design)).Append("\".\n *\n");
        Line("sampling rate", QuantityText.FormatPart(export.Rate));
        Line("form", export switch
        {
            SectionsExport => arithmetic.Form == FilterForm.DirectI ? "direct form I" : "transposed direct form II",
            TapsExport { Taps.Rounded.IsSymmetric: true } taps => $"{taps.Taps.Rounded.Length} symmetric taps",
            TapsExport taps => $"{taps.Taps.Rounded.Length} taps",
            CombExport comb => $"running sums over {comb.Comb.Periods} x {comb.Comb.Period} samples",
            _ => throw new ArgumentOutOfRangeException(nameof(export), export, "The export is not handled."),
        });
        Line("word", export is CombExport ? "32-bit whole samples, 64-bit sums; no coefficient is rounded" : arithmetic.Word switch
        {
            DigitalWord.Double => "double, 64-bit floating point",
            DigitalWord.Single => "float, 32-bit floating point; compile without fused multiply-add (-ffp-contract=off) for the same bits",
            DigitalWord.Q31 => "Q31: 32-bit whole coefficients and states, exact sums",
            DigitalWord.Q15 => "Q15: 16-bit whole coefficients, 32-bit states, 64-bit sums",
            _ => throw new InvalidOperationException($"Word {arithmetic.Word} is not handled."),
        });
        Line("samples", arithmetic.IsFixed ? "converter counts in int32_t" : "any unit; the filters are linear");
        if (arithmetic.IsFixed && export is not CombExport)
        {
            Line("scaling", export is TapsExport
                ? "tap = word / 2^fraction, the fraction chosen so that the largest tap fits"
                : "coefficient = word / 2^fraction, the fraction chosen for each section so that its largest coefficient fits");
        }

        if (arithmetic.IsFixed)
        {
            Line(export is SectionsExport
                ? "states"
                : "rounding", export is SectionsExport
                ? $"{arithmetic.StateFraction} bits below the sample's LSB, rounded half up, saturating"
                : "the exact sum once, half up, saturating");
        }

        Line("headroom", $"{export.HeadroomBits} bits above full scale rule out overflow for any input");
        Line("checksum", $"CRC-32 (IEEE 802.3) of the coefficients, little-endian: 0x{export.Checksum:X8}");
        switch (export)
        {
            case SectionsExport:
                text.Append(" *\n * Sections in the order in which they run, a0 = 1,\n * y[n] = b0 x[n] + b1 x[n-1] + b2 x[n-2] - a1 y[n-1] - a2 y[n-2]:\n");
                for (int i = 0; i < export.Names.Count; i++)
                {
                    text.Append(CultureInfo.InvariantCulture, $" *   {i + 1}: {Comment(export.Names[i])}\n");
                }

                break;
            case TapsExport:
                text.Append(" *\n * y[n] = h0 x[n] + h1 x[n-1] + ...\n");
                break;
            default:
                text.Append(" *\n * y[n] = (K M x[n] - M P + T) / (K M), T the sum of the last K M samples,\n * P of every M-th of them, x[n] included.\n");
                break;
        }

        text.Append(
            $$"""
             */
            #ifndef {{guard}}
            #define {{guard}}

            #include <stddef.h>
            #include <stdint.h>

            {{Sizes(export, prefix.ToUpperInvariant())}}
            #define {{prefix.ToUpperInvariant()}}_RATE_HZ {{Real(export.Rate.Hertz, "")}}
            #define {{prefix.ToUpperInvariant()}}_CHECKSUM UINT32_C(0x{{export.Checksum:X8}})


            """.ReplaceLineEndings("\n"));

        void Line(string name, string value) => text.Append($" * {name + ":",-15}{value}\n");
    }

    private static string Sizes(FilterExport export, string upper) => export switch
    {
        SectionsExport => $"#define {upper}_SECTIONS {export.Names.Count}",
        TapsExport taps => $"#define {upper}_TAPS {taps.Taps.Rounded.Length}",
        CombExport comb => $"#define {upper}_PERIOD {comb.Comb.Period}\n#define {upper}_PERIODS {comb.Comb.Periods}",
        _ => throw new ArgumentOutOfRangeException(nameof(export), export, "The export is not handled."),
    };

    /// <summary>What the code that uses the filter calls.</summary>
    internal static void Prototypes(StringBuilder text, FilterExport export, string prefix) => text.Append(
        $$"""
        /* Back to rest. */
        static void {{prefix}}_reset({{prefix}}_state *state);

        /* Filters count samples of one channel; the state carries over to the next call. in and out may be the same. */
        static void {{prefix}}_run({{prefix}}_state *state, const {{Sample(export)}} *in, {{Sample(export)}} *out, size_t count);

        /* 0 where the compiled code answers as it must, else the number of the first wrong sample, from 1. */
        static int {{prefix}}_self_test(void);


        """.ReplaceLineEndings("\n"));

    /// <summary>The word of a coefficient in C.</summary>
    internal static string CoefficientType(DigitalWord word) => word switch
    {
        DigitalWord.Double => "double",
        DigitalWord.Single => "float",
        DigitalWord.Q31 => "int32_t",
        DigitalWord.Q15 => "int16_t",
        _ => throw new ArgumentOutOfRangeException(nameof(word), word, "The word is not handled."),
    };

    /// <summary>A sum of products of 32-bit words, for Q31 alone.</summary>
    internal static string WideSum(FilterExport export, string prefix) => export.Arithmetic.Word == DigitalWord.Q31
        ? $"/* high * 2^32 + low: sums of products of 62 bits do not fit into 64 */\ntypedef struct {{\n    int64_t high;\n    uint32_t low;\n}} {prefix}_sum;\n\n"
        : "";

    internal static string Sample(FilterExport export) => export.Arithmetic.Word switch
    {
        DigitalWord.Double => "double",
        DigitalWord.Single => "float",
        _ => "int32_t",
    };

    /// <summary>Shifts and rounding that C leaves open, written out; empty for floating point.</summary>
    internal static string FixedHelpers(FilterExport export, string prefix)
    {
        if (!export.Arithmetic.IsFixed)
        {
            return "";
        }

        string clamp =
            $$"""
            /* floor(value / 2^bits); what >> makes of negative numbers is left open by C */
            static inline int64_t {{prefix}}_shift(int64_t value, int bits)
            {
                return 0 <= value ? value >> bits : -1 - ((-1 - value) >> bits);
            }

            static inline int32_t {{prefix}}_clamp(int64_t value)
            {
                return value < INT32_MIN ? INT32_MIN : INT32_MAX < value ? INT32_MAX : (int32_t)value;
            }


            """;
        string narrow =
            $$"""
            /* sum / 2^bits, rounded half up, saturating */
            static inline int32_t {{prefix}}_round(int64_t sum, int bits)
            {
                return {{prefix}}_clamp({{prefix}}_shift(bits == 0 ? sum : sum + ((int64_t)1 << (bits - 1)), bits));
            }


            """;
        string wide =
            $$"""
            static inline {{prefix}}_sum {{prefix}}_add({{prefix}}_sum sum, int64_t product)
            {
                uint64_t low = (uint64_t)sum.low + ((uint64_t)product & UINT64_C(0xFFFFFFFF));
                sum.high += {{prefix}}_shift(product, 32) + (int64_t)(low >> 32);
                sum.low = (uint32_t)(low & UINT64_C(0xFFFFFFFF));
                return sum;
            }

            /* sum / 2^bits, rounded half up, saturating; bits 0 to 31 */
            static inline int32_t {{prefix}}_round({{prefix}}_sum sum, int bits)
            {
                if (bits != 0)
                    sum = {{prefix}}_add(sum, (int64_t)1 << (bits - 1));
                if (INT32_MAX < sum.high)
                    return INT32_MAX;
                if (sum.high < INT32_MIN)
                    return INT32_MIN;
                return {{prefix}}_clamp((sum.high * ((int64_t)1 << (32 - bits))) + (int64_t)(sum.low >> bits));
            }


            """;
        return (clamp + (export.Arithmetic.Word == DigitalWord.Q31 ? wide : narrow)).ReplaceLineEndings("\n");
    }

    private static void SelfTest(StringBuilder text, FilterExport export, string prefix)
    {
        string type = Sample(export);
        string compare = export.Arithmetic.IsFixed
            ? "        if (out != expected[n])\n            return (int)n + 1;\n"
            : "        /* written so that a NaN fails */\n        if (!(out - expected[n] <= tolerance && expected[n] - out <= tolerance))\n            return (int)n + 1;\n";
        text.Append($"static inline int {prefix}_self_test(void)\n{{\n");
        Array("in", export.TestInput);
        Array("expected", export.TestOutput);
        if (!export.Arithmetic.IsFixed)
        {
            text.Append($"    /* room for rounding at other places; without fused multiply-add the bits are the same */\n    static const {type} tolerance = {Value(export, export.Tolerance)};\n");
        }

        // A long filter's memory is static: a microcontroller's stack is short.
        text.Append($"    {(export is SectionsExport ? "" : "static ")}{prefix}_state state;\n    {type} out;\n    size_t n;\n    {prefix}_reset(&state);\n")
            .Append($"    for (n = 0; n < {export.TestInput.Count}; n++) {{\n        {prefix}_run(&state, &in[n], &out, 1);\n").Append(compare).Append("    }\n\n    return 0;\n}\n");

        void Array(string name, IReadOnlyList<double> values)
        {
            text.Append($"    static const {type} {name}[{values.Count}] = {{\n");
            Numbers(text, "        ", [.. values.Select(v => export.Arithmetic.IsFixed ? Whole((long)v) : Value(export, v))]);
            text.Append("    };\n");
        }
    }

    private static void Main(StringBuilder text, string prefix, string file) => text.Append(
        $$"""

        #ifdef {{prefix.ToUpperInvariant()}}_SELF_TEST
        /* cc -std=c99 -D{{prefix.ToUpperInvariant()}}_SELF_TEST -x c {{Comment(file)}}.h -o self-test && ./self-test */
        #include <stdio.h>
        int main(void)
        {
            int wrong = {{prefix}}_self_test();
            if (wrong == 0)
                printf("{{prefix}}: self-test passed\n");
            else
                printf("{{prefix}}: sample %d is wrong\n", wrong);
            return wrong != 0;
        }
        #endif

        """.ReplaceLineEndings("\n"));

    /// <summary>Numbers in lines of four.</summary>
    internal static void Numbers(StringBuilder text, string indent, IReadOnlyList<string> numbers)
    {
        for (int i = 0; i < numbers.Count; i += NumbersPerLine)
        {
            text.Append(indent).AppendJoin(", ", numbers.Skip(i).Take(NumbersPerLine)).Append(",\n");
        }
    }

    internal static string Value(FilterExport export, double value) =>
        export.Arithmetic.Word == DigitalWord.Single
            ? Mended(((float)value).ToString("R", CultureInfo.InvariantCulture), "f")
            : Real(value, "");

    internal static string Real(double value, string suffix) => Mended(value.ToString("R", CultureInfo.InvariantCulture), suffix);

    // "1" would be a whole number in C.
    internal static string Mended(string text, string suffix) =>
        (text.AsSpan().IndexOfAny('.', 'E', 'e') < 0 ? text + ".0" : text) + suffix;

    // −2^31 is no constant in C: it is the negation of one that does not fit.
    internal static string Whole(long value) => value == int.MinValue ? "(-2147483647 - 1)" : value.ToString(CultureInfo.InvariantCulture);
}
