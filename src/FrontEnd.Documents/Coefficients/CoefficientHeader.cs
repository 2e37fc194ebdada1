using System.Globalization;
using System.Text;
using FrontEnd.Digital;
using FrontEnd.Filters;
using FrontEnd.Text;

namespace FrontEnd.Documents.Coefficients;

/// <summary>The filters as a C99 header without dependencies: coefficients, a run function bit for bit like the program's own runner, and a self-test.</summary>
/// <remarks>No behaviour that C leaves open is relied on: right shifts of negative numbers are written out, and what does not fit into 64 bits is summed in two words.
/// The prototypes are plain <c>static</c> and the definitions add <c>inline</c>, so that a compiler does not complain about functions that are not called.</remarks>
internal static class CoefficientHeader
{
    private const int NumbersPerLine = 4;

    /// <param name="file">The file's name without extension: the prefix of every name in it.</param>
    public static string Of(FilterExport export, string design, string file)
    {
        string prefix = Identifier(file);
        StringBuilder text = new();
        Head(text, export, design, prefix);
        Types(text, export, prefix);
        Coefficients(text, export, prefix);
        text.Append(export.Arithmetic.IsFixed ? FixedHelpers(export, prefix) : "");
        text.Append(Code(export, prefix));
        SelfTest(text, export, prefix);
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
    private static string Comment(string text) => new([.. text.Select(letter => letter is '*' or '/' or '\\' or '?' || char.IsControl(letter) ? '_' : letter)]);

    private static void Head(StringBuilder text, FilterExport export, string design, string prefix)
    {
        DigitalArithmetic arithmetic = export.Arithmetic;
        string guard = prefix.ToUpperInvariant() + "_H";
        text.Append("/* Digital filters of \"").Append(Comment(design)).Append("\".\n *\n");
        Line("sampling rate", QuantityText.FormatPart(export.Rate));
        Line("form", arithmetic.Form == FilterForm.DirectI ? "direct form I" : "transposed direct form II");
        Line("word", arithmetic.Word switch
        {
            DigitalWord.Double => "double, 64-bit floating point",
            DigitalWord.Single => "float, 32-bit floating point; compile without fused multiply-add (-ffp-contract=off) for the same bits",
            DigitalWord.Q31 => "Q31: 32-bit whole coefficients and states, exact sums",
            DigitalWord.Q15 => "Q15: 16-bit whole coefficients, 32-bit states, 64-bit sums",
            _ => throw new InvalidOperationException($"Word {arithmetic.Word} is not handled."),
        });
        Line("samples", arithmetic.IsFixed ? "converter counts in int32_t" : "any unit; the filters are linear");
        if (arithmetic.IsFixed)
        {
            Line("scaling", "coefficient = word / 2^fraction, the fraction chosen for each section so that its largest coefficient fits");
            Line("states", $"{arithmetic.StateFraction} bits below the sample's LSB, rounded half up, saturating");
        }

        Line("headroom", $"{export.HeadroomBits} bits above full scale rule out overflow for any input");
        Line("checksum", $"CRC-32 (IEEE 802.3) of the coefficients, little-endian: 0x{export.Checksum:X8}");
        text.Append(" *\n * Sections in the order in which they run, a0 = 1,\n * y[n] = b0 x[n] + b1 x[n-1] + b2 x[n-2] - a1 y[n-1] - a2 y[n-2]:\n");
        for (int i = 0; i < export.Names.Count; i++)
        {
            text.Append(CultureInfo.InvariantCulture, $" *   {i + 1}: {Comment(export.Names[i])}\n");
        }

        text.Append(
            $$"""
             */
            #ifndef {{guard}}
            #define {{guard}}

            #include <stddef.h>
            #include <stdint.h>

            #define {{prefix.ToUpperInvariant()}}_SECTIONS {{export.Names.Count}}
            #define {{prefix.ToUpperInvariant()}}_RATE_HZ {{Real(export.Rate.Hertz, "")}}
            #define {{prefix.ToUpperInvariant()}}_CHECKSUM UINT32_C(0x{{export.Checksum:X8}})


            """.ReplaceLineEndings("\n"));

        void Line(string name, string value) => text.Append($" * {name + ":",-15}{value}\n");
    }

    private static string Sample(FilterExport export) => export.Arithmetic.Word switch
    {
        DigitalWord.Double => "double",
        DigitalWord.Single => "float",
        _ => "int32_t",
    };

    private static void Types(StringBuilder text, FilterExport export, string prefix)
    {
        bool direct = export.Arithmetic.Form == FilterForm.DirectI;
        string state = direct
            ? $"    {Sample(export)} x1, x2, y1, y2;   /* the last two inputs and outputs */"
            : $"    {(export.Arithmetic.Word switch { DigitalWord.Q31 => prefix + "_sum", DigitalWord.Q15 => "int64_t", _ => Sample(export) })} s1, s2;   /* the two sums */";
        string wide = export.Arithmetic.Word == DigitalWord.Q31 ? $"/* high * 2^32 + low: five products of 62 bits do not fit into 64 */\ntypedef struct {{\n    int64_t high;\n    uint32_t low;\n}} {prefix}_sum;\n\n" : "";
        text.Append(wide).Append(
            $$"""
            /* One section's memory; a channel needs {{prefix.ToUpperInvariant()}}_SECTIONS of them. */
            typedef struct {
            {{state}}
            } {{prefix}}_section;

            typedef struct {
                {{prefix}}_section section[{{prefix.ToUpperInvariant()}}_SECTIONS];
            } {{prefix}}_state;

            /* Back to rest. */
            static void {{prefix}}_reset({{prefix}}_state *state);

            /* Filters count samples of one channel; the state carries over to the next call. in and out may be the same. */
            static void {{prefix}}_run({{prefix}}_state *state, const {{Sample(export)}} *in, {{Sample(export)}} *out, size_t count);

            /* 0 where the compiled code answers as it must, else the number of the first wrong sample, from 1. */
            static int {{prefix}}_self_test(void);


            """.ReplaceLineEndings("\n"));
    }

    private static void Coefficients(StringBuilder text, FilterExport export, string prefix)
    {
        string upper = prefix.ToUpperInvariant();
        string type = export.Arithmetic.Word switch
        {
            DigitalWord.Double => "double",
            DigitalWord.Single => "float",
            DigitalWord.Q31 => "int32_t",
            DigitalWord.Q15 => "int16_t",
            _ => throw new InvalidOperationException($"Word {export.Arithmetic.Word} is not handled."),
        };
        text.Append($"/* b0, b1, b2, a1, a2 */\nstatic const {type} {prefix}_coefficients[{upper}_SECTIONS][5] = {{\n");
        foreach (QuantisedSection section in export.Filter.Details)
        {
            Biquad s = section.Rounded;
            IEnumerable<string> numbers = section.Words.Count != 0 ? section.Words.Select(Whole) : new[] { s.B0, s.B1, s.B2, s.A1, s.A2 }.Select(c => Value(export, c));
            text.Append("    {").AppendJoin(", ", numbers).Append("},\n");
        }

        text.Append("};\n\n");
        if (export.Arithmetic.IsFixed)
        {
            text.Append($"/* fraction bits of each section's coefficients */\nstatic const int {prefix}_fraction[{upper}_SECTIONS] = {{")
                .AppendJoin(", ", export.Filter.Details.Select(section => section.FractionBits)).Append("};\n\n");
        }
    }

    private static string FixedHelpers(FilterExport export, string prefix)
    {
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

    private static string Code(FilterExport export, string prefix)
    {
        bool direct = export.Arithmetic.Form == FilterForm.DirectI;
        bool wide = export.Arithmetic.Word == DigitalWord.Q31;
        string coefficient = export.Arithmetic.Word switch { DigitalWord.Double => "double", DigitalWord.Single => "float", DigitalWord.Q31 => "int32_t", _ => "int16_t" };
        string type = Sample(export);
        string zero = wide && !direct ? $"{prefix}_sum zero = {{0, 0}};" : "";
        string nothing = wide && !direct ? "zero" : "0";
        // Floating point is not associative: each word adds in the order of this program's own runner.
        string firstSum = export.Arithmetic.Word == DigitalWord.Single ? "c[1] * x - c[3] * y + s->s2" : "c[1] * x + s->s2 - c[3] * y";
        string clear = direct ? "s->x1 = s->x2 = s->y1 = s->y2 = 0;" : $"s->s1 = s->s2 = {nothing};";
        string body = (export.Arithmetic.IsFixed, wide, direct) switch
        {
            (false, _, true) =>
                """
                            y = c[0] * x + c[1] * s->x1 + c[2] * s->x2 - c[3] * s->y1 - c[4] * s->y2;
                            s->x2 = s->x1;
                            s->x1 = x;
                            s->y2 = s->y1;
                            s->y1 = y;
                """,
            (false, _, false) =>
                $$"""
                            y = c[0] * x + s->s1;
                            s->s1 = {{firstSum}};
                            s->s2 = c[2] * x - c[4] * y;
                """,
            (true, false, true) =>
                $$"""
                            y = {{prefix}}_round((int64_t)c[0] * x + (int64_t)c[1] * s->x1 + (int64_t)c[2] * s->x2
                                - (int64_t)c[3] * s->y1 - (int64_t)c[4] * s->y2, {{prefix}}_fraction[i]);
                            s->x2 = s->x1;
                            s->x1 = x;
                            s->y2 = s->y1;
                            s->y1 = y;
                """,
            (true, false, false) =>
                $$"""
                            y = {{prefix}}_round((int64_t)c[0] * x + s->s1, {{prefix}}_fraction[i]);
                            s->s1 = (int64_t)c[1] * x - (int64_t)c[3] * y + s->s2;
                            s->s2 = (int64_t)c[2] * x - (int64_t)c[4] * y;
                """,
            (true, true, true) =>
                $$"""
                            {{prefix}}_sum sum = {0, 0};
                            sum = {{prefix}}_add(sum, (int64_t)c[0] * x);
                            sum = {{prefix}}_add(sum, (int64_t)c[1] * s->x1);
                            sum = {{prefix}}_add(sum, (int64_t)c[2] * s->x2);
                            sum = {{prefix}}_add(sum, -((int64_t)c[3] * s->y1));
                            sum = {{prefix}}_add(sum, -((int64_t)c[4] * s->y2));
                            y = {{prefix}}_round(sum, {{prefix}}_fraction[i]);
                            s->x2 = s->x1;
                            s->x1 = x;
                            s->y2 = s->y1;
                            s->y1 = y;
                """,
            (true, true, false) =>
                $$"""
                            {{prefix}}_sum none = {0, 0};
                            y = {{prefix}}_round({{prefix}}_add(s->s1, (int64_t)c[0] * x), {{prefix}}_fraction[i]);
                            s->s1 = {{prefix}}_add({{prefix}}_add(s->s2, (int64_t)c[1] * x), -((int64_t)c[3] * y));
                            s->s2 = {{prefix}}_add({{prefix}}_add(none, (int64_t)c[2] * x), -((int64_t)c[4] * y));
                """,
        };
        int fraction = export.Arithmetic.StateFraction;
        string first = export.Arithmetic.IsFixed && fraction != 0 ? $"{prefix}_clamp((int64_t)in[n] * ((int64_t)1 << {fraction}))" : "in[n]";
        string last = export.Arithmetic.IsFixed && fraction != 0 ? $"{prefix}_clamp({prefix}_shift((int64_t)x + ((int64_t)1 << {fraction - 1}), {fraction}))" : "x";
        return
            $$"""
            static inline void {{prefix}}_reset({{prefix}}_state *state)
            {
                {{(zero.Length == 0 ? "" : zero + "\n    ")}}int i;
                for (i = 0; i < {{prefix.ToUpperInvariant()}}_SECTIONS; i++) {
                    {{prefix}}_section *s = &state->section[i];
                    {{clear}}
                }
            }

            static inline void {{prefix}}_run({{prefix}}_state *state, const {{type}} *in, {{type}} *out, size_t count)
            {
                size_t n;
                for (n = 0; n < count; n++) {
                    {{type}} x = {{first}};
                    int i;
                    for (i = 0; i < {{prefix.ToUpperInvariant()}}_SECTIONS; i++) {
                        const {{coefficient}} *c = {{prefix}}_coefficients[i];
                        {{prefix}}_section *s = &state->section[i];
                        {{type}} y;
            {{body}}
                        x = y;
                    }

                    out[n] = {{last}};
                }
            }


            """.ReplaceLineEndings("\n");
    }

    private static void SelfTest(StringBuilder text, FilterExport export, string prefix)
    {
        string type = Sample(export);
        string compare = export.Arithmetic.IsFixed
            ? "        if (out[n] != expected[n])\n            return (int)n + 1;\n"
            : "        /* written so that a NaN fails */\n        if (!(out[n] - expected[n] <= tolerance && expected[n] - out[n] <= tolerance))\n            return (int)n + 1;\n";
        text.Append($"static inline int {prefix}_self_test(void)\n{{\n");
        Array("in", export.TestInput);
        Array("expected", export.TestOutput);
        if (!export.Arithmetic.IsFixed)
        {
            text.Append($"    /* room for rounding at other places; without fused multiply-add the bits are the same */\n    static const {type} tolerance = {Value(export, export.Tolerance)};\n");
        }

        text.Append($"    {prefix}_state state;\n    {type} out[{FilterExport.TestLength}];\n    size_t n;\n    {prefix}_reset(&state);\n    {prefix}_run(&state, in, out, {FilterExport.TestLength});\n")
            .Append($"    for (n = 0; n < {FilterExport.TestLength}; n++) {{\n").Append(compare).Append("    }\n\n    return 0;\n}\n");

        void Array(string name, IReadOnlyList<double> values)
        {
            text.Append($"    static const {type} {name}[{FilterExport.TestLength}] = {{\n");
            for (int i = 0; i < values.Count; i += NumbersPerLine)
            {
                text.Append("        ").AppendJoin(", ", values.Skip(i).Take(NumbersPerLine).Select(v => export.Arithmetic.IsFixed ? Whole((long)v) : Value(export, v))).Append(",\n");
            }

            text.Append("    };\n");
        }
    }

    private static string Value(FilterExport export, double value) =>
        export.Arithmetic.Word == DigitalWord.Single ? Mended(((float)value).ToString("R", CultureInfo.InvariantCulture), "f") : Real(value, "");

    private static string Real(double value, string suffix) => Mended(value.ToString("R", CultureInfo.InvariantCulture), suffix);

    // "1" would be a whole number in C.
    private static string Mended(string text, string suffix) => (text.AsSpan().IndexOfAny('.', 'E', 'e') < 0 ? text + ".0" : text) + suffix;

    // −2^31 is no constant in C: it is the negation of one that does not fit.
    private static string Whole(long value) => value == int.MinValue ? "(-2147483647 - 1)" : value.ToString(CultureInfo.InvariantCulture);
}
