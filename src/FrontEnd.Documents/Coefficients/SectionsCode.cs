using System.Text;
using FrontEnd.Digital;
using FrontEnd.Filters;

namespace FrontEnd.Documents.Coefficients;

/// <summary>Second-order sections in C: memory, coefficients and the run function.</summary>
internal static class SectionsCode
{
    public static void Write(StringBuilder text, SectionsExport export, string prefix)
    {
        Types(text, export, prefix);
        Coefficients(text, export, prefix);
        text.Append(CoefficientHeader.FixedHelpers(export, prefix));
        text.Append(Code(export, prefix));
    }

    private static void Types(StringBuilder text, SectionsExport export, string prefix)
    {
        bool direct = export.Arithmetic.Form == FilterForm.DirectI;
        string state = direct
            ? $"    {CoefficientHeader.Sample(export)} x1, x2, y1, y2;   /* the last two inputs and outputs */"
            : $"    {(export.Arithmetic.Word switch { DigitalWord.Q31 => prefix + "_sum", DigitalWord.Q15 => "int64_t", _ => CoefficientHeader.Sample(export) })} s1, s2;   /* the two sums */";
        text.Append(CoefficientHeader.WideSum(export, prefix)).Append(
            $$"""
            /* One section's memory; a channel needs {{prefix.ToUpperInvariant()}}_SECTIONS of them. */
            typedef struct {
            {{state}}
            } {{prefix}}_section;

            typedef struct {
                {{prefix}}_section section[{{prefix.ToUpperInvariant()}}_SECTIONS];
            } {{prefix}}_state;


            """.ReplaceLineEndings("\n"));
        CoefficientHeader.Prototypes(text, export, prefix);
    }

    private static void Coefficients(StringBuilder text, SectionsExport export, string prefix)
    {
        string upper = prefix.ToUpperInvariant();
        string type = CoefficientHeader.CoefficientType(export.Arithmetic.Word);
        text.Append($"/* b0, b1, b2, a1, a2 */\nstatic const {type} {prefix}_coefficients[{upper}_SECTIONS][5] = {{\n");
        foreach (QuantisedSection section in export.Filter.Details)
        {
            Biquad s = section.Rounded;
            IEnumerable<string> numbers = section.Words.Count != 0
                ? section.Words.Select(CoefficientHeader.Whole)
                : new[] { s.B0, s.B1, s.B2, s.A1, s.A2 }.Select(c => CoefficientHeader.Value(export, c));
            text.Append("    {").AppendJoin(", ", numbers).Append("},\n");
        }

        text.Append("};\n\n");
        if (export.Arithmetic.IsFixed)
        {
            text.Append($"/* fraction bits of each section's coefficients */\nstatic const int {prefix}_fraction[{upper}_SECTIONS] = {{")
                .AppendJoin(", ", export.Filter.Details.Select(section => section.FractionBits)).Append("};\n\n");
        }
    }

    private static string Code(SectionsExport export, string prefix)
    {
        bool direct = export.Arithmetic.Form == FilterForm.DirectI;
        bool wide = export.Arithmetic.Word == DigitalWord.Q31;
        string coefficient = CoefficientHeader.CoefficientType(export.Arithmetic.Word);
        string type = CoefficientHeader.Sample(export);
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
        string first = export.Arithmetic.IsFixed && fraction != 0
            ? $"{prefix}_clamp((int64_t)in[n] * ((int64_t)1 << {fraction}))"
            : "in[n]";
        string last = export.Arithmetic.IsFixed && fraction != 0
            ? $"{prefix}_clamp({prefix}_shift((int64_t)x + ((int64_t)1 << {fraction - 1}), {fraction}))"
            : "x";
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
}
