using System.Buffers;
using System.Numerics;
using System.Text;
using System.Text.Json;
using FrontEnd.Filters;

namespace FrontEnd.Documents.Sheets;

/// <summary>A filter for programs: sections, zeros, poles, gain, order and rate. Every number reads back as the same double.</summary>
/// <remarks>Digital: powers of z⁻¹, a0 = 1, a section of first order has b2 = a2 = 0. Analogue: b0·s² + b1·s + b2 over a0·s² + a1·s + a2, s in rad/s, a0 = 1; a section of first order has a0 = b0 = 0 and a1 = 1.
/// The product of the sections is the whole filter, and so is gain·Π(x − zeros)/Π(x − poles); zeros at infinity are left out. The order is the prototype's.</remarks>
public static class FilterJson
{
    /// <param name="answer">One that has a filter.</param>
    public static string Of(FilterAnswer answer)
    {
        ZeroPoleGain roots = answer.ZeroPoleGain ?? throw new ArgumentException("The answer has no filter.", nameof(answer));
        ArrayBufferWriter<byte> buffer = new();
        using (Utf8JsonWriter json = new(buffer))
        {
            json.WriteStartObject();
            json.WriteStartArray("sections");
            if (answer.Digital is { } digital)
            {
                foreach (Biquad s in digital.Sections.Sections)
                {
                    Section(json, [s.B0, s.B1, s.B2], [1, s.A1, s.A2]);
                }
            }
            else
            {
                foreach (AnalogSection s in answer.Analog!.Sections.Sections)
                {
                    Section(json, [s.B0, s.B1, s.B2], [s.A0, s.A1, s.A2]);
                }
            }

            json.WriteEndArray();
            Roots(json, "zeros", roots.Zeros);
            Roots(json, "poles", roots.Poles);
            json.WriteNumber("gain", roots.Gain);
            json.WriteNumber("order", answer.Prototype!.Order);
            if (answer.Wish.Rate is { } rate)
            {
                json.WriteNumber("rate", rate.Hertz);
            }
            else
            {
                json.WriteNull("rate");
            }

            json.WriteEndObject();
        }

        return Encoding.UTF8.GetString(buffer.WrittenSpan) + "\n";
    }

    internal static void Section(Utf8JsonWriter json, ReadOnlySpan<double> b, ReadOnlySpan<double> a)
    {
        json.WriteStartObject();
        Numbers(json, "b", b);
        Numbers(json, "a", a);
        json.WriteEndObject();
    }

    internal static void Numbers(Utf8JsonWriter json, string name, ReadOnlySpan<double> values)
    {
        json.WriteStartArray(name);
        foreach (double value in values)
        {
            // −0 is a number of its own in JSON text and surprises readers.
            json.WriteNumberValue(value == 0 ? 0.0 : value);
        }

        json.WriteEndArray();
    }

    private static void Roots(Utf8JsonWriter json, string name, IReadOnlyList<Complex> roots)
    {
        json.WriteStartArray(name);
        foreach (Complex root in roots)
        {
            json.WriteStartArray();
            json.WriteNumberValue(root.Real == 0 ? 0.0 : root.Real);
            json.WriteNumberValue(root.Imaginary == 0 ? 0.0 : root.Imaginary);
            json.WriteEndArray();
        }

        json.WriteEndArray();
    }
}
