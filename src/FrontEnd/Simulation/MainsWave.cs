using FrontEnd.Budgets;
using FrontEnd.Designs;
using FrontEnd.Reporting;

namespace FrontEnd.Simulation;

/// <summary>The mains with its harmonics in time: every harmonic at the worst case of the budget, its frequency wandering slowly within the deviation
/// that the design states.</summary>
/// <remarks>f(t) = f0·(1 + δ·u(t)), u the mean of three sines with periods of 97, 211 and 463 s: between −1 and 1. Phases are drawn once. A harmonic's size
/// follows its frequency, drawn straight between 17 points across the deviation. All channels are in phase.</remarks>
internal sealed class MainsWave
{
    private const int Points = 17;

    /// <summary>Samples over which a size goes straight from one value to the next.</summary>
    private const int Piece = 64;

    private static readonly double[] Periods = [97, 211, 463];

    private readonly double _hertz, _deviation;
    private readonly int[] _orders;
    private readonly double[][][] _peaks;
    private readonly double[] _turns, _wander;

    /// <param name="design">Whose mains it is.</param>
    /// <param name="peaks">For each kind of channel and each harmonic its peak at so many points across the deviation, as <see cref="Spans"/> has them.</param>
    /// <param name="seed">Of the phases.</param>
    public MainsWave(Design design, double[][][] peaks, ulong seed)
    {
        (_hertz, _deviation, _peaks) = (design.Mains.Frequency.Hertz, design.Mains.Deviation.Fraction, peaks);
        _orders = [.. Enumerable.Range(0, peaks[0].Length).Where(i => peaks.Any(kind => kind[i].Any(peak => peak != 0)))];
        var random = Numbers.SeededRandom.For(seed, "mains");
        _wander = [.. Periods.Select(_ => 2 * Math.PI * random.NextUnit())];
        _turns = [.. Enumerable.Range(0, peaks[0].Length).Select(_ => random.NextUnit())];
    }

    /// <summary>Factors of a harmonic's frequency at which its size is asked for.</summary>
    public static double[] Spans(Design design) => design.Mains.Deviation.Fraction == 0 ? [1]
        : [.. Enumerable.Range(0, Points).Select(i => 1 + (design.Mains.Deviation.Fraction * ((2.0 * i / (Points - 1)) - 1)))];

    /// <summary>Peaks of every harmonic across the deviation, as the mains of one kind of channel gives them [V].</summary>
    /// <param name="kind">The kind of channel.</param>
    /// <param name="open">True with the active electrode off: the difference of the amplifier's inputs.</param>
    /// <param name="size">What a harmonic of a size at the electrodes, rms, becomes where the wave is added: frequency, what the budget says there.</param>
    public static double[][] Peaks(ChannelBudgets kind, bool open, Func<double, MainsAtInput, double> size)
    {
        double[] spans = Spans(kind.Design);
        MainsAtInput[]? off = open ? kind.Mains.WithOpenElectrode(InputLanes.Active) : null;
        return [.. kind.Mains.Harmonics.Select((harmonic, i) =>
        {
            MainsAtInput[] at = off is null ? kind.Mains.At(harmonic.Order, spans) : [.. spans.Select(_ => off[i])];
            return spans.Select((factor, j) => Math.Sqrt(2) * size(harmonic.Hertz * factor, at[j])).ToArray();
        })];
    }

    /// <summary>Adds the wave of each kind of channel to its row.</summary>
    /// <param name="first">Time of the first sample [s].</param>
    /// <param name="step">From sample to sample [s].</param>
    /// <param name="rows">One for each kind; null for none wanted.</param>
    public void AddTo(double first, double step, int count, double[]?[] rows)
    {
        if (_orders.Length == 0)
        {
            return;
        }

        int highest = _orders[^1] + 1;
        Span<double> cosines = stackalloc double[highest + 1], sines = stackalloc double[highest + 1];
        double[] now = new double[_orders.Length * rows.Length], slope = new double[now.Length];
        for (int i = 0; i < count; i++)
        {
            if (i % Piece == 0)
            {
                Sizes(first + (i * step), step * Math.Min(Piece, count - i), rows.Length, now, slope, Math.Min(Piece, count - i));
            }

            (double sine, double cosine) = Math.SinCos(2 * Math.PI * Phase(first + (i * step)));
            (cosines[0], sines[0]) = (1, 0);
            for (int h = 1; h <= highest; h++)
            {
                cosines[h] = (cosines[h - 1] * cosine) - (sines[h - 1] * sine);
                sines[h] = (sines[h - 1] * cosine) + (cosines[h - 1] * sine);
            }

            Sum(cosines, sines, rows, i, now, slope);
        }
    }

    private void Sum(ReadOnlySpan<double> cosines, ReadOnlySpan<double> sines, double[]?[] rows, int at, double[] now, double[] slope)
    {
        for (int kind = 0; kind < rows.Length; kind++)
        {
            double sum = 0;
            for (int o = 0; o < _orders.Length; o++)
            {
                int place = (kind * _orders.Length) + o;
                sum += now[place] * ((cosines[_orders[o] + 1] * Cosine(o)) - (sines[_orders[o] + 1] * Sine(o)));
                now[place] += slope[place];
            }

            if (rows[kind] is { } row)
            {
                row[at] += sum;
            }
        }
    }

    private double[]? _phaseCosines, _phaseSines;

    private double Cosine(int order) => (_phaseCosines ??= [.. _orders.Select(o => Math.Cos(2 * Math.PI * _turns[o]))])[order];

    private double Sine(int order) => (_phaseSines ??= [.. _orders.Select(o => Math.Sin(2 * Math.PI * _turns[o]))])[order];

    /// <summary>Turns of the fundamental up to a time: f0·∫(1 + δu).</summary>
    private double Phase(double time)
    {
        double sum = time;
        for (int i = 0; i < Periods.Length && _deviation != 0; i++)
        {
            double rate = 2 * Math.PI / Periods[i];
            sum -= _deviation / Periods.Length * (Math.Cos((rate * time) + _wander[i]) - Math.Cos(_wander[i])) / rate;
        }

        double turns = _hertz * sum;
        return turns - Math.Floor(turns);
    }

    /// <summary>u(t).</summary>
    private double Wander(double time)
    {
        double sum = 0;
        for (int i = 0; i < Periods.Length; i++)
        {
            sum += Math.Sin((2 * Math.PI * time / Periods[i]) + _wander[i]);
        }

        return sum / Periods.Length;
    }

    private void Sizes(double start, double seconds, int kinds, double[] now, double[] slope, int samples)
    {
        double from = Wander(start), to = Wander(start + seconds);
        for (int kind = 0; kind < kinds; kind++)
        {
            for (int o = 0; o < _orders.Length; o++)
            {
                double[] peaks = _peaks[kind][_orders[o]];
                int place = (kind * _orders.Length) + o;
                now[place] = Between(peaks, from);
                slope[place] = (Between(peaks, to) - now[place]) / samples;
            }
        }
    }

    private static double Between(double[] peaks, double wander)
    {
        if (peaks.Length == 1)
        {
            return peaks[0];
        }

        double at = (wander + 1) / 2 * (peaks.Length - 1);
        int below = Math.Clamp((int)at, 0, peaks.Length - 2);
        return peaks[below] + ((peaks[below + 1] - peaks[below]) * (at - below));
    }
}
