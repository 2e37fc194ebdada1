using System.Globalization;
using System.Text;
using FrontEnd.Digital;
using FrontEnd.Documents.Files;
using FrontEnd.Filters;

namespace FrontEnd.Documents.Coefficients;

/// <summary>One line for each section, for each tap, or for a comb: coefficients as the machine holds them, a0 = 1, and the whole numbers
/// of fixed point.</summary>
internal static class CoefficientCsv
{
    public static string Of(FilterExport export) => export switch
    {
        SectionsExport sections => Of(sections),
        TapsExport taps => Of(taps),
        CombExport comb => $"filter,rate,word,period,periods\n{CsvText.Cell(comb.Names[0])},{Number(comb.Rate.Hertz)},{DigitalArithmetic.WordOf(comb.Arithmetic.Word)},{comb.Comb.Period},{comb.Comb.Periods}\n",
        _ => throw new ArgumentOutOfRangeException(nameof(export), export, "The export is not handled."),
    };

    private static string Of(TapsExport export)
    {
        StringBuilder text = new("filter,tap,rate,word,h,fraction_bits,word_h\n");
        double[] taps = export.Taps.Rounded.Taps.ToArray();
        for (int k = 0; k < taps.Length; k++)
        {
            string[] cells =
            [
                export.Names[0], $"{k}", Number(export.Rate.Hertz), DigitalArithmetic.WordOf(export.Arithmetic.Word), Number(taps[k]),
                export.Taps.FractionBits is { } bits
                    ? $"{bits}"
                    : "", export.Taps.Words.Count == 0
                    ? ""
                    : export.Taps.Words[k].ToString(CultureInfo.InvariantCulture),
            ];
            text.Row("\n", cells);
        }

        return text.ToString();
    }

    private static string Of(SectionsExport export)
    {
        StringBuilder text = new("filter,section,rate,word,form,b0,b1,b2,a0,a1,a2,fraction_bits,word_b0,word_b1,word_b2,word_a1,word_a2\n");
        for (int i = 0; i < export.Filter.Details.Count; i++)
        {
            QuantisedSection section = export.Filter.Details[i];
            Biquad s = section.Rounded;
            string[] cells =
            [
                export.Names[i], $"{i + 1}", Number(export.Rate.Hertz), DigitalArithmetic.WordOf(export.Arithmetic.Word),
                DigitalArithmetic.FormOf(export.Arithmetic.Form),
                Number(s.B0), Number(s.B1), Number(s.B2), "1", Number(s.A1), Number(s.A2), section.FractionBits is { } bits
                    ? $"{bits}"
                    : "",
                .. section.Words.Count == 0
                    ? Enumerable.Repeat("", 5)
                    : section.Words.Select(word => word.ToString(CultureInfo.InvariantCulture)),
            ];
            text.Row("\n", cells);
        }

        return text.ToString();
    }

    private static string Number(double value) => value.ToString("R", CultureInfo.InvariantCulture);
}
