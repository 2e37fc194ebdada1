namespace FrontEnd.Simulation;

/// <summary>One shape again and again, at times that are drawn once.</summary>
internal sealed class Pulses
{
    private readonly double[] _times;
    private readonly double _before, _after;
    private readonly Func<double, double> _shape;

    /// <param name="times">When, rising [s].</param>
    /// <param name="before">How long before its time a shape begins [s].</param>
    /// <param name="after">How long after it it ends [s].</param>
    /// <param name="shape">Its height at a time from its own on.</param>
    private Pulses(double[] times, double before, double after, Func<double, double> shape) =>
        (_times, _before, _after, _shape) = (times, before, after, shape);

    /// <summary>When.</summary>
    public IReadOnlyList<double> Times => _times;

    /// <summary>How long one lasts [s].</summary>
    public double Length => _before + _after;

    /// <summary>Blinks: a third of a second, every 3 to 6 seconds (chosen).</summary>
    public static Pulses Blinks(double length, ulong seed) => new(Drawn("blink", 3, 6, length, seed), 0, 0.35, t => Hill(t / 0.35));

    /// <summary>Bursts of a second and a half, every 5 to 9 seconds, as what they are multiplied by (chosen).</summary>
    public static Pulses Bursts(double length, ulong seed) => new(Drawn("muscle", 5, 9, length, seed), 0, 1.5, t => Hill(t / 1.5));

    /// <summary>Heart beats: the sharp wave, the dip after it and the slow one (chosen to look like one).</summary>
    public static Pulses Beats(double length) => new(Every(60.0 / 66, 0.4, length), 0.1, 0.5, t =>
        Bell(t, 0.012) - (0.3 * Bell(t - 0.03, 0.012)) + (0.25 * Bell(t - 0.25, 0.05)));

    /// <summary>A response: down at 100 ms, up at 300 ms after the stimulus (chosen to look like one).</summary>
    public static Pulses Responses(double length) => new(Every(1, 1, length), 0, 0.6, t => Bell(t - 0.3, 0.06) - (0.5 * Bell(t - 0.1, 0.02)));

    /// <summary>A square wave of 1 Hz: half a second up, half a second down.</summary>
    public static Pulses Square(double length) => new(Every(1, 0, length), 0, 1, t => t < 0.5 ? 1 : -1);

    /// <summary>Up after a quarter of the time, back after three quarters.</summary>
    public static Pulses Step(double length) => new([length / 4], 0, length / 2, _ => 1);

    /// <summary>After a third of the time, for a sixth of it, at most ten seconds.</summary>
    public static Pulses Off(double length) => new([length / 3], 0, Math.Min(10, length / 6), _ => 1);

    /// <summary>The height at a time [s].</summary>
    public double At(double time)
    {
        int at = Array.BinarySearch(_times, time + _before);
        at = at < 0 ? ~at - 1 : at;
        return 0 <= at && time < _times[at] + _after ? _shape(time - _times[at]) : 0;
    }

    private static double Hill(double share) => 0.5 - (0.5 * Math.Cos(2 * Math.PI * share));

    private static double Bell(double time, double width) => Math.Exp(-time * time / (2 * width * width));

    private static double[] Every(double period, double first, double length) =>
        [.. Enumerable.Range(0, (int)Math.Ceiling(Math.Max(0, (length - first) / period))).Select(i => first + (i * period))];

    private static double[] Drawn(string name, double least, double most, double length, ulong seed)
    {
        var random = Numbers.SeededRandom.For(seed, name, "times");
        List<double> times = [];
        for (double time = 1 + random.NextUnit(); time < length; time += least + ((most - least) * random.NextUnit()))
        {
            times.Add(time);
        }

        return [.. times];
    }
}
