using System.Text;
using FrontEnd.Digital;

namespace FrontEnd.Documents.Coefficients;

/// <summary>A filter without feedback in C: memory, taps and the run function.</summary>
internal static class TapsCode
{
    public static void Write(StringBuilder text, TapsExport export, string prefix)
    {
        string upper = prefix.ToUpperInvariant(), type = CoefficientHeader.Sample(export);
        text.Append(CoefficientHeader.WideSum(export, prefix)).Append(
            $$"""
            /* The last samples, newest first from x[at], twice so that they need not be wrapped. */
            typedef struct {
                {{type}} x[2 * {{upper}}_TAPS];
                size_t at;
            } {{prefix}}_state;


            """.ReplaceLineEndings("\n"));
        CoefficientHeader.Prototypes(text, export, prefix);
        text.Append($"/* h0, h1, ... */\nstatic const {CoefficientHeader.CoefficientType(export.Arithmetic.Word)} {prefix}_coefficients[{upper}_TAPS] = {{\n");
        IEnumerable<string> taps = export.Arithmetic.IsFixed
            ? export.Taps.Words.Select(CoefficientHeader.Whole)
            : export.Taps.Rounded.Taps.ToArray().Select(h => CoefficientHeader.Value(export, h));
        CoefficientHeader.Numbers(text, "    ", [.. taps]);
        text.Append("};\n\n").Append(CoefficientHeader.FixedHelpers(export, prefix)).Append(
            $$"""
            static inline void {{prefix}}_reset({{prefix}}_state *state)
            {
                size_t k;
                for (k = 0; k < 2 * {{upper}}_TAPS; k++)
                    state->x[k] = 0;
                state->at = 0;
            }

            static inline void {{prefix}}_run({{prefix}}_state *state, const {{type}} *in, {{type}} *out, size_t count)
            {
                const {{CoefficientHeader.CoefficientType(export.Arithmetic.Word)}} *c = {{prefix}}_coefficients;
                size_t n;
                for (n = 0; n < count; n++) {
                    const {{type}} *x;
                    size_t k;
                    {{Sum(export, prefix)}};
                    state->at = state->at == 0 ? {{upper}}_TAPS - 1 : state->at - 1;
                    state->x[state->at] = in[n];
                    state->x[state->at + {{upper}}_TAPS] = in[n];
                    x = state->x + state->at;
            {{Loop(export, prefix)}}
                }
            }


            """.ReplaceLineEndings("\n"));
    }

    private static string Sum(TapsExport export, string prefix) => export.Arithmetic.Word switch
    {
        DigitalWord.Double => "double sum = 0.0",
        DigitalWord.Single => "float sum = 0.0f",
        DigitalWord.Q31 => prefix + "_sum sum = {0, 0}",
        DigitalWord.Q15 => "int64_t sum = 0",
        _ => throw new InvalidOperationException($"Word {export.Arithmetic.Word} is not handled."),
    };

    private static string Loop(TapsExport export, string prefix)
    {
        string upper = prefix.ToUpperInvariant();
        if (export.Arithmetic.IsFixed)
        {
            string add = export.Arithmetic.Word == DigitalWord.Q31
                ? $"sum = {prefix}_add(sum, (int64_t)c[k] * x[k]);"
                : "sum += (int64_t)c[k] * x[k];";
            return
                $$"""
                        for (k = 0; k < {{upper}}_TAPS; k++)
                            {{add}}
                        out[n] = {{prefix}}_round(sum, {{export.Taps.FractionBits}});
                """;
        }

        if (!export.Taps.Rounded.IsSymmetric)
        {
            return
                $$"""
                        for (k = 0; k < {{upper}}_TAPS; k++)
                            sum += c[k] * x[k];
                        out[n] = sum;
                """;
        }

        return
            $$"""
                    /* symmetric: both samples of a pair meet one tap */
                    for (k = 0; k < {{upper}}_TAPS / 2; k++)
                        sum += c[k] * (x[k] + x[{{upper}}_TAPS - 1 - k]);
                    out[n] = sum{{(export.Taps.Rounded.Length % 2 == 1 ? $" + c[{upper}_TAPS / 2] * x[{upper}_TAPS / 2]" : "")}};
            """;
    }
}

/// <summary>A comb with running sums in C.</summary>
internal static class CombCode
{
    public static void Write(StringBuilder text, CombExport export, string prefix)
    {
        string upper = prefix.ToUpperInvariant();
        text.Append(
            $$"""
            /* The last samples, the sum of all, and of each place in the period. */
            typedef struct {
                int32_t x[{{upper}}_PERIODS * {{upper}}_PERIOD];
                int64_t phase[{{upper}}_PERIOD];
                int64_t total;
                size_t at;
                size_t place;
            } {{prefix}}_state;


            """.ReplaceLineEndings("\n"));
        CoefficientHeader.Prototypes(text, export, prefix);
        text.Append(
            $$"""
            static inline void {{prefix}}_reset({{prefix}}_state *state)
            {
                size_t k;
                for (k = 0; k < {{upper}}_PERIODS * {{upper}}_PERIOD; k++)
                    state->x[k] = 0;
                for (k = 0; k < {{upper}}_PERIOD; k++)
                    state->phase[k] = 0;
                state->total = 0;
                state->at = 0;
                state->place = 0;
            }

            static inline void {{prefix}}_run({{prefix}}_state *state, const int32_t *in, int32_t *out, size_t count)
            {
                const int64_t length = (int64_t){{upper}}_PERIODS * {{upper}}_PERIOD;
                size_t n;
                for (n = 0; n < count; n++) {
                    int64_t change = (int64_t)in[n] - state->x[state->at];
                    int64_t twice, y;
                    state->total += change;
                    state->phase[state->place] += change;
                    twice = 2 * (length * in[n] - {{upper}}_PERIOD * state->phase[state->place] + state->total) + length;
                    state->x[state->at] = in[n];
                    state->at = state->at + 1 == {{upper}}_PERIODS * {{upper}}_PERIOD ? 0 : state->at + 1;
                    state->place = state->place + 1 == {{upper}}_PERIOD ? 0 : state->place + 1;
                    /* rounded half up: C divides towards zero */
                    y = twice / (2 * length);
                    if (twice < y * (2 * length))
                        y--;
                    out[n] = y < INT32_MIN ? INT32_MIN : INT32_MAX < y ? INT32_MAX : (int32_t)y;
                }
            }


            """.ReplaceLineEndings("\n"));
    }
}
