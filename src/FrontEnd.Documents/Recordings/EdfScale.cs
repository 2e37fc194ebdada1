namespace FrontEnd.Documents.Recordings;

/// <summary>How the 16-bit numbers of one signal stand for its samples.</summary>
/// <remarks>
/// Where every sample is a whole step and the steps fit into 16 bits, the number in the file is the step itself, so that nothing is lost.
/// Other samples are scaled so that what is expected of them fills the range. Zero is always zero. A file says its range as two numbers of
/// eight letters for two whole numbers, and whole numbers are chosen for which the eight letters are next to exact.
/// </remarks>
internal sealed class EdfScale
{
    private const int Most = short.MaxValue;

    /// <summary>The file's edges are taken as near to those of 16 bits as this, while eight letters are looked for that say them well.</summary>
    private const int LeastEdge = 32_440;

    /// <summary>What a range may be called: the first in which it has the digits that eight letters can show.</summary>
    private static readonly (string Unit, double Volts)[] Units = [("uV", 1e-6), ("mV", 1e-3), ("V", 1), ("nV", 1e-9)];

    private readonly double _countsPerStep;
    private readonly int _least, _most;

    private EdfScale(int least, int most, double countsPerStep) => (_least, _most, _countsPerStep) = (least, most, countsPerStep);

    /// <summary>The range in the file's numbers.</summary>
    public (int Least, int Most) Digital => (_least, _most);

    /// <summary>The same in the unit, as the header says it.</summary>
    public required (string Least, string Most) Physical { get; init; }

    /// <summary>Unit of the samples as EDF spells it; "" for converter steps, which are what EDF calls uncalibrated.</summary>
    public required string Unit { get; init; }

    /// <summary>True where a number of the file is a step of the converter.</summary>
    public bool IsStep { get; private init; }

    /// <summary>Steps of the converter that one number of the file stands for.</summary>
    public double StepsPerCount => 1 / _countsPerStep;

    /// <summary>Samples that did not fit so far.</summary>
    public long Held { get; private set; }

    /// <summary>The scale of one channel; null where eight letters cannot say it.</summary>
    public static EdfScale? Of(RecordedChannel channel, bool areWhole, bool inSteps)
    {
        double largest = Math.Max(1, channel.Largest);
        bool fits = areWhole && largest <= Most + 1;
        return (fits, inSteps) switch
        {
            (true, true) => Exact(largest),
            (true, false) => Exact(channel.Step.Volts, largest),
            (false, true) => Scaled(largest),
            (false, false) => Scaled(channel.Step.Volts, largest),
        };
    }

    /// <summary>The number for a sample; one that does not fit is held at the edge and counted. Where samples are rounded anyway, what is rounded
    /// to the edge and what to one beyond it is not told apart.</summary>
    public short Of(double step)
    {
        double count = Math.Round(step * _countsPerStep);
        if (count < _least || _most < count)
        {
            int slack = IsStep ? 0 : 1;
            Held += count < _least - slack || _most + slack < count ? 1 : 0;
            return (short)(count < _least ? _least : _most);
        }

        return (short)count;
    }

    /// <summary>Steps as they are.</summary>
    private static EdfScale Exact(double largest)
    {
        int least = largest <= Most ? -Most : -Most - 1;
        return new EdfScale(least, Most, 1) { Physical = (EdfNumber.Text(least)!, EdfNumber.Text(Most)!), Unit = "", IsStep = true };
    }

    /// <summary>Steps as they are, told in volts: of the edges near those of 16 bits the one whose eight letters are nearest to it.</summary>
    private static EdfScale Exact(double volts, double largest)
    {
        (string unit, double one) = UnitOf(volts * Most);
        double step = volts / one;
        if (Most < largest)
        {
            // All of 16 bits: the upper edge follows from the letters of the lower one, so that zero stays zero.
            string lower = EdfNumber.Text(-step * (Most + 1))!;
            return new EdfScale(-Most - 1, Most, 1)
            {
                Physical = (lower, EdfNumber.Text(-EdfNumber.Value(lower) * Most / (Most + 1))!), Unit = unit, IsStep = true,
            };
        }

        int best = Most;
        double bestError = double.PositiveInfinity;
        for (int edge = Most; Math.Max(LeastEdge, largest) <= edge; edge--)
        {
            double exact = edge * step, error = Math.Abs(EdfNumber.Value(EdfNumber.Text(-exact)!) + exact) / exact;
            (best, bestError) = error < bestError ? (edge, error) : (best, bestError);
        }

        string text = EdfNumber.Text(-best * step)!;
        return new EdfScale(-best, best, 1) { Physical = (text, text[1..]), Unit = unit, IsStep = true };
    }

    /// <summary>Scaled steps: a power of two of them is one number, or one of them that many numbers.</summary>
    private static EdfScale? Scaled(double largest)
    {
        int power = (int)Math.Floor(Math.Log2((Most + 1) / largest));
        double countsPerStep = Math.Pow(2, power);
        int most = 0 < power ? (int)(Most / countsPerStep) * (int)countsPerStep : Most, least = 0 < power ? -most : -Most - 1;
        return EdfNumber.Text(least / countsPerStep) is { } lower && EdfNumber.Text(most / countsPerStep) is { } upper
            ? new EdfScale(least, most, countsPerStep) { Physical = (lower, upper), Unit = "" }
            : null;
    }

    /// <summary>Scaled volts: the edge is the next number above the largest sample that has four digits.</summary>
    private static EdfScale Scaled(double volts, double largest)
    {
        (string unit, double one) = UnitOf(volts * largest);
        double most = Math.Max(volts * largest / one, 1e-3);
        double place = Math.Pow(10, Math.Ceiling(Math.Log10(most)) - 4);
        string edge = EdfNumber.Text(Math.Ceiling(most / place) * place)!;
        return new EdfScale(-Most, Most, Most * volts / (EdfNumber.Value(edge) * one)) { Physical = ("-" + edge, edge), Unit = unit };
    }

    private static (string Unit, double Volts) UnitOf(double largest) =>
        Units.FirstOrDefault(one => one.Volts * 0.1 <= largest && largest < one.Volts * 999_999, Units[^1]);
}
