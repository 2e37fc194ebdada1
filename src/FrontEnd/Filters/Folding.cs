namespace FrontEnd.Filters;

/// <summary>Where sampling puts a frequency.</summary>
internal static class Folding
{
    /// <summary>|f − fs·round(f/fs)| [Hz], between 0 and fs/2.</summary>
    /// <param name="hertz">Frequency before sampling, f [Hz].</param>
    /// <param name="rate">Sampling rate, fs [Hz].</param>
    public static double LandsAt(double hertz, double rate) => Math.Abs(hertz - (rate * Math.Round(hertz / rate)));

    /// <summary>The set of landings of all frequencies from one to another: an interval.</summary>
    public static (double Low, double High) LandsWithin(double low, double high, double rate)
    {
        double a = LandsAt(low, rate), b = LandsAt(high, rate);
        double least = Math.Min(a, b), most = Math.Max(a, b);

        // Between two neighbouring multiples of fs/2 the landing is monotone; a multiple inside is a turning point.
        if (Math.Ceiling(low / rate) * rate <= high)
        {
            least = 0;
        }

        if ((Math.Ceiling((low / rate) - 0.5) + 0.5) * rate <= high)
        {
            most = rate / 2;
        }

        return (least, most);
    }
}
