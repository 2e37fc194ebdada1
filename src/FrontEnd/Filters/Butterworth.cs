namespace FrontEnd.Filters;

/// <summary>The digital Butterworth filters of everyday use; short for <see cref="FilterDesign.Digital"/> with a <see
/// cref="ButterworthPrototype"/>.</summary>
internal static class Butterworth
{
    /// <summary>Drift out: half power at the corner, zero gain at 0 Hz.</summary>
    public static DigitalFilter HighPass(int order, Frequency corner, Frequency rate) =>
        FilterDesign.Digital(new ButterworthPrototype(order), new HighPass(corner), rate);

    /// <summary>Half power at the corner, unit gain at 0 Hz.</summary>
    public static DigitalFilter LowPass(int order, Frequency corner, Frequency rate) =>
        FilterDesign.Digital(new ButterworthPrototype(order), new LowPass(corner), rate);
}
