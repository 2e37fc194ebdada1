namespace FrontEnd.Documents.Sheets;

/// <summary>One axis of a chart: range, unit and scale, and where its ticks stand.</summary>
/// <param name="Unit">SI unit of the numbers; "" for none.</param>
internal sealed record Axis(string Title, string Unit, double Low, double High, bool IsLog)
{
    private const int FewDecades = 2;
    private const int Steps = 6;

    /// <summary>0 at the low end, 1 at the high end.</summary>
    public double At(double value) => IsLog ? Math.Log10(value / Low) / Math.Log10(High / Low) : (value - Low) / (High - Low);

    /// <summary>Ticks with their labels; those without are drawn fainter.</summary>
    public IEnumerable<(double Value, string Label)> Ticks() => IsLog ? LogTicks() : LinearTicks();

    /// <summary>A range of whole decades around positive numbers.</summary>
    public static Axis Decades(string title, string unit, double low, double high)
    {
        double first = Math.Pow(10, Math.Floor(Math.Log10(low))), last = Math.Pow(10, Math.Ceiling(Math.Log10(high)));
        return new Axis(title, unit, first, first < last ? last : first * 10, IsLog: true);
    }

    /// <summary>A linear range widened to whole steps.</summary>
    public static Axis Steps10(string title, string unit, double low, double high)
    {
        double span = high - low;
        double step = Step(span <= 0 ? Math.Max(1e-12, Math.Abs(high)) : span);
        return new Axis(title, unit, Math.Floor(low / step) * step, Math.Max(Math.Ceiling(high / step), Math.Floor(low / step) + 1) * step,
            IsLog: false);
    }

    private IEnumerable<(double, string)> LogTicks()
    {
        double decades = Math.Log10(High / Low);

        // Over many decades every second or third is labelled, so that labels keep apart.
        int every = Math.Max(1, (int)Math.Ceiling(decades / 8));
        int first = (int)Math.Floor(Math.Log10(Low) + 1e-9), last = (int)Math.Ceiling(Math.Log10(High) - 1e-9);
        for (int power = first; power <= last; power++)
        {
            for (int digit = 1; digit < 10; digit++)
            {
                double value = digit * Math.Pow(10, power);
                if (value < Low * (1 - 1e-9) || High * (1 + 1e-9) < value || (every > 1 && digit > 1))
                {
                    continue;
                }

                bool labelled = (digit == 1 && (power - first) % every == 0) || (decades <= FewDecades && digit is 2 or 5);
                yield return (value, labelled ? Label(value) : "");
            }
        }
    }

    private IEnumerable<(double, string)> LinearTicks()
    {
        double step = Step(High - Low);
        for (double at = Math.Ceiling((Low / step) - 1e-9); at * step <= High + (step * 1e-9); at++)
        {
            yield return (at * step, Label(at * step));
        }
    }

    /// <summary>A label is read and not copied, so that a negative one has a minus sign, as wide as a digit.</summary>
    private string Label(double value)
    {
        string text = QuantityText.FormatTrimmed(value, Unit.Length == 0 ? "1" : Unit, 3);
        return text.StartsWith('-') ? "−" + text[1..] : text;
    }

    /// <summary>1, 2 or 5 times a power of ten, so that there are about six ticks.</summary>
    private static double Step(double span)
    {
        double raw = span / Steps, power = Math.Pow(10, Math.Floor(Math.Log10(raw)));
        double lead = raw / power;
        return power * (lead <= 1 ? 1 : lead <= 2 ? 2 : lead <= 5 ? 5 : 10);
    }
}
