using System.Numerics;
using FrontEnd.Filters;
using FrontEnd.Quantities;

namespace FrontEnd.Digital;

/// <summary>The design's digital filters as second-order sections at the converter's rate, in the order in which they run.</summary>
public sealed class DigitalChain
{
    private readonly double _rate;
    private readonly SecondOrderSections _all;

    public DigitalChain(IReadOnlyList<DigitalStage> stages, Frequency rate)
    {
        _rate = rate.Hertz;
        Stages = stages;
        Filters = [.. stages.Select(stage => Realise(stage, rate))];
        _all = SecondOrderSections.Cascade(Filters);
    }

    public IReadOnlyList<DigitalStage> Stages { get; }

    /// <summary>The sections of each stage.</summary>
    public IReadOnlyList<SecondOrderSections> Filters { get; }

    /// <summary>All sections, one after the other.</summary>
    public SecondOrderSections Sections => _all;

    /// <summary>|H_dig|² at a frequency [Hz].</summary>
    public double Power(double hertz) => _all.PowerResponse(hertz, _rate);

    public Complex Response(double hertz) => _all.Response(hertz, _rate);

    /// <summary>Group delay of all filters [s].</summary>
    public double GroupDelay(double hertz) => _all.GroupDelay(hertz, _rate);

    private static SecondOrderSections Realise(DigitalStage stage, Frequency rate) => stage switch
    {
        DigitalHighPass high => Butterworth.HighPass(high.Order, high.Corner, rate).Sections,
        DigitalLowPass low => Butterworth.LowPass(low.Order, low.Corner, rate).Sections,
        DigitalNotch notch => new SecondOrderSections([Notch.WithQ(notch.Centre, notch.Q, rate)]),
        DigitalSections rows => SecondOrderSections.FromRows(rows.Rows),
        _ => throw new ArgumentOutOfRangeException(nameof(stage), stage, "Digital stage is not handled."),
    };
}
