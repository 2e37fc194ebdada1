using System.Numerics;
using FrontEnd.Filters;

namespace FrontEnd.Digital;

/// <summary>The design's digital filters as second-order sections at the converter's rate, in the order in which they run.</summary>
internal sealed class DigitalChain
{
    private readonly double _rate;
    private readonly SecondOrderSections _all;

    /// <param name="arithmetic">Word and form of the filters; null for double.</param>
    public DigitalChain(IReadOnlyList<DigitalStage> stages, Frequency rate, DigitalArithmetic? arithmetic = null)
    {
        Arithmetic = arithmetic ?? new DigitalArithmetic();
        _rate = rate.Hertz;
        Stages = stages;
        Designed = [.. stages.Select(stage => Realise(stage, rate))];

        // Double is what the design is worked out in: nothing is rounded, and no number may change.
        Filters = Arithmetic.Word == DigitalWord.Double
            ? Designed
            : [.. Designed.Select(sections => QuantisedFilter.Of(sections, Arithmetic.Format).Sections)];
        _all = SecondOrderSections.Cascade(Filters);
    }

    /// <summary>In the order of the signal.</summary>
    public IReadOnlyList<DigitalStage> Stages { get; }

    /// <summary>How they are computed.</summary>
    public DigitalArithmetic Arithmetic { get; }

    /// <summary>The sections of each stage as designed, before their coefficients were rounded.</summary>
    public IReadOnlyList<SecondOrderSections> Designed { get; }

    /// <summary>The sections of each stage as the machine holds them.</summary>
    public IReadOnlyList<SecondOrderSections> Filters { get; }

    /// <summary>All sections, one after the other.</summary>
    public SecondOrderSections Sections => _all;

    /// <summary>|H_dig|² at a frequency [Hz].</summary>
    public double Power(double hertz) => _all.PowerResponse(hertz, _rate);

    /// <summary>Response of all, H at a frequency [Hz].</summary>
    public Complex Response(double hertz) => _all.Response(hertz, _rate);

    /// <summary>Group delay of all filters [s].</summary>
    public double GroupDelay(double hertz) => _all.GroupDelay(hertz, _rate);

    /// <summary>The stage as designed.</summary>
    internal static SecondOrderSections Realise(DigitalStage stage, Frequency rate) => stage switch
    {
        DigitalDesigned designed => designed.Wish(rate).Design().Digital?.Sections
            ?? throw new ArgumentOutOfRangeException(nameof(stage), stage, "Digital stage has no filter."),
        DigitalNotch notch => new SecondOrderSections([Notch.WithQ(notch.Centre, notch.Q, rate)]),
        DigitalSections rows => SecondOrderSections.FromRows(rows.Rows),
        _ => throw new ArgumentOutOfRangeException(nameof(stage), stage, "Digital stage is not handled."),
    };
}
