using System.Buffers;
using System.Text;
using System.Text.Json;
using FrontEnd.Filters;

namespace FrontEnd.Documents.Sheets;

/// <summary>FIRs, combs, notches and decimators for programs: SI units, losses in dB, null where a loss is without bound. Every number reads back as the same double.</summary>
public static class DigitalJson
{
    /// <param name="answer">One that has a filter.</param>
    public static string Of(FirAnswer answer) => Write(json =>
    {
        FirFigures figures = answer.Figures!;
        json.WriteString("kind", "fir");
        json.WriteString("method", answer.Wish.Method == FirMethod.Kaiser ? "kaiser" : "equiripple");
        json.WriteNumber("rate", answer.Wish.Rate.Hertz);
        Cost(json, answer.Filter!);
        json.WriteNumber("pass_ripple_db", figures.PassLoss);
        Loss(json, "stop_loss_db", figures.StopLoss);
        FilterJson.Numbers(json, "half_power", [.. figures.HalfPower.Select(f => f.Hertz)]);
        json.WriteNumber("dc_gain", figures.DcGain);
        FilterJson.Numbers(json, "taps", answer.Filter!.Taps.ToArray());
    });

    /// <param name="answer">One that has a comb.</param>
    public static string Of(CombAnswer answer) => Write(json =>
    {
        PeriodComb comb = answer.Comb!;
        CombFigures figures = answer.Figures;
        json.WriteString("kind", "comb");
        json.WriteNumber("rate", answer.Wish.Rate.Hertz);
        json.WriteNumber("period", comb.Period);
        json.WriteNumber("periods", comb.Periods);
        json.WriteNumber("ring_time", comb.RingTime.Seconds);
        Band(json, figures.Droop);
        json.WriteNumber("group_delay_at", figures.Middle.Hertz);
        json.WriteNumber("group_delay", figures.Delay.Seconds);
        json.WriteNumber("largest_group_delay", figures.LargestDelay.Seconds);
        json.WriteNumber("multiplications", figures.Multiplies);
        json.WriteNumber("additions", figures.Additions);
        json.WriteNumber("divisions", 1);
        json.WriteNumber("words", figures.Words);
        Depths(json, figures.Depths);
        FilterJson.Numbers(json, "taps", comb.Taps());
    });

    /// <param name="answer">One that has notches.</param>
    public static string Of(NotchAnswer answer) => Write(json =>
    {
        NotchesFigures figures = answer.Figures;
        json.WriteString("kind", "notch");
        json.WriteNumber("rate", answer.Wish.Rate.Hertz);
        json.WriteNumber("multiplications", NotchesFigures.MultipliesEach * figures.Notches.Count);
        json.WriteNumber("ring_time", figures.RingTime.Seconds);
        Band(json, figures.Droop);
        json.WriteNumber("group_delay_at", figures.Droop.Edge.Hertz);
        json.WriteNumber("group_delay", figures.DelayAtEdge.Seconds);
        json.WriteStartArray("notches");
        foreach ((NotchFigures notch, HarmonicDepth depth) in figures.Notches.Zip(figures.Depths))
        {
            json.WriteStartObject();
            json.WriteNumber("centre", depth.Frequency.Hertz);
            json.WriteNumber("width", notch.Bandwidth.Hertz);
            json.WriteNumber("time_constant", notch.TimeConstant.Seconds);
            json.WriteNumber("ring_time", notch.RingTime.Seconds);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        Depths(json, figures.Depths);
        json.WriteStartArray("sections");
        foreach (Biquad s in answer.Sections!.Sections)
        {
            FilterJson.Section(json, [s.B0, s.B1, s.B2], [1, s.A1, s.A2]);
        }

        json.WriteEndArray();
    });

    /// <param name="answer">One that has a decimator.</param>
    public static string Of(SincAnswer answer) => Write(json =>
    {
        SincFigures figures = answer.Figures;
        json.WriteString("kind", "sinc");
        json.WriteNumber("order", answer.Wish.Order);
        json.WriteNumber("ratio", answer.Wish.Ratio);
        json.WriteNumber("rate", answer.Wish.Rate.Hertz);
        json.WriteNumber("band_edge", answer.Wish.Edge.Hertz);
        json.WriteStartArray("loss");
        foreach (SincPoint point in figures.Points)
        {
            json.WriteStartObject();
            json.WriteNumber("frequency", point.At.Hertz);
            json.WriteNumber("decimator_db", point.Decimator);
            json.WriteNumber("compensated_db", point.Compensated);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteNumber("fold_loss_db", figures.FoldLoss);
        json.WriteNumber("largest_deviation_db", figures.LargestDeviation);
        json.WriteNumber("rise_at_half_rate_db", figures.RiseAtHalfRate);
        json.WriteNumber("noise_gain", figures.NoiseGain);
        json.WriteNumber("register_growth_bits", figures.GrowthBits);
        json.WriteNumber("decimator_delay", answer.Sinc!.Delay.Seconds);
        Cost(json, answer.Compensation!);
        FilterJson.Numbers(json, "taps", answer.Compensation!.Taps.ToArray());
    });

    private static string Write(Action<Utf8JsonWriter> body)
    {
        ArrayBufferWriter<byte> buffer = new();
        using (Utf8JsonWriter json = new(buffer))
        {
            json.WriteStartObject();
            body(json);
            json.WriteEndObject();
        }

        return Encoding.UTF8.GetString(buffer.WrittenSpan) + "\n";
    }

    private static void Cost(Utf8JsonWriter json, FirFilter filter)
    {
        json.WriteNumber("length", filter.Length);
        json.WriteNumber("delay", filter.Delay.Seconds);
        json.WriteNumber("multiplications", filter.Multiplies);
    }

    private static void Band(Utf8JsonWriter json, BandDroop droop)
    {
        json.WriteNumber("band_edge", droop.Edge.Hertz);
        Loss(json, "largest_loss_db", droop.Largest);
        json.WriteNumber("largest_loss_at", droop.At.Hertz);
        json.WriteNumber("lost_1db", droop.LostOne.Hertz);
        json.WriteNumber("lost_3db", droop.LostThree.Hertz);
    }

    private static void Depths(Utf8JsonWriter json, IReadOnlyList<HarmonicDepth> depths)
    {
        json.WriteStartArray("depths");
        foreach (HarmonicDepth harmonic in depths)
        {
            json.WriteStartObject();
            json.WriteNumber("harmonic", harmonic.Harmonic);
            json.WriteNumber("frequency", harmonic.Frequency.Hertz);
            json.WriteStartArray("at");
            foreach (NotchDepth depth in harmonic.Depths)
            {
                json.WriteStartObject();
                json.WriteNumber("deviation", depth.Deviation.Hertz);
                Loss(json, "loss_db", depth.Attenuation);
                json.WriteEndObject();
            }

            json.WriteEndArray();
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void Loss(Utf8JsonWriter json, string name, double? value)
    {
        if (value is { } number)
        {
            json.WriteNumber(name, number);
        }
        else
        {
            json.WriteNull(name);
        }
    }

}
