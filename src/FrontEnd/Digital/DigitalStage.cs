using FrontEnd.Filters;

namespace FrontEnd.Digital;

/// <summary>A digital filter as the user names it.</summary>
public abstract record DigitalStage
{
    /// <summary>"high-pass", "notch 50 Hz" …; unique in the design.</summary>
    public string Name { get; init; } = "";
}

/// <summary>A stage that is designed from family, order and corners by the bilinear transform with every corner prewarped.</summary>
public abstract record DigitalDesigned : DigitalStage
{
    /// <summary>Approximation; decides what a corner is.</summary>
    public FilterFamily Family { get; init; } = FilterFamily.Butterworth;

    /// <summary>Order of the prototype; a band shape has twice as many poles.</summary>
    public int Order { get; init; } = 2;

    /// <summary>Largest loss in the pass band: Chebyshev and elliptic only.</summary>
    public Decibels Ripple { get; init; } = Decibels.FromStated(0.5);

    /// <summary>Least loss in the stop band: inverse Chebyshev and elliptic only.</summary>
    public Decibels Attenuation { get; init; } = Decibels.FromStated(40);

    /// <summary>What it passes.</summary>
    public abstract FilterShape Shape { get; }

    /// <summary>One corner, or two for a band shape, lower first.</summary>
    public abstract IReadOnlyList<Frequency> Corners { get; }

    /// <summary>What is asked for, at a sampling rate.</summary>
    public FilterWish Wish(Frequency rate, string field = "") => new()
    {
        Family = Family,
        Shape = Shape,
        Order = Order,
        Corners = Corners,
        Rate = rate,
        Ripple = Family is FilterFamily.Chebyshev or FilterFamily.Elliptic ? Ripple : null,
        Attenuation = Family is FilterFamily.InverseChebyshev or FilterFamily.Elliptic ? Attenuation : null,
        Field = field,
    };
}

/// <summary>High-pass, Butterworth unless another family is given.</summary>
public sealed record DigitalHighPass : DigitalDesigned
{
    /// <summary>The family's corner.</summary>
    public Frequency Corner { get; init; } = Frequency.FromHertz(0.5);

    public override FilterShape Shape => FilterShape.HighPass;

    public override IReadOnlyList<Frequency> Corners => [Corner];
}

/// <summary>Low-pass, Butterworth unless another family is given.</summary>
public sealed record DigitalLowPass : DigitalDesigned
{
    /// <summary>The family's corner.</summary>
    public Frequency Corner { get; init; } = Frequency.FromHertz(40);

    public override FilterShape Shape => FilterShape.LowPass;

    public override IReadOnlyList<Frequency> Corners => [Corner];
}

/// <summary>Band-pass.</summary>
public sealed record DigitalBandPass : DigitalDesigned
{
    /// <summary>Lower corner.</summary>
    public Frequency Low { get; init; } = Frequency.FromHertz(8);

    /// <summary>Upper corner.</summary>
    public Frequency High { get; init; } = Frequency.FromHertz(13);

    public override FilterShape Shape => FilterShape.BandPass;

    public override IReadOnlyList<Frequency> Corners => [Low, High];
}

/// <summary>Band-stop.</summary>
public sealed record DigitalBandStop : DigitalDesigned
{
    /// <summary>Lower corner.</summary>
    public Frequency Low { get; init; } = Frequency.FromHertz(45);

    /// <summary>Upper corner.</summary>
    public Frequency High { get; init; } = Frequency.FromHertz(55);

    public override FilterShape Shape => FilterShape.BandStop;

    public override IReadOnlyList<Frequency> Corners => [Low, High];
}

/// <summary>Second-order notch; Q is centre over −3 dB width.</summary>
public sealed record DigitalNotch : DigitalStage
{
    /// <summary>Frequency removed.</summary>
    public Frequency Centre { get; init; } = Frequency.FromHertz(50);

    /// <summary>Centre over −3 dB width.</summary>
    public double Q { get; init; } = 10;
}

/// <summary>Second-order sections given as numbers: rows of b0 b1 b2 a0 a1 a2.</summary>
public sealed record DigitalSections : DigitalStage
{
    /// <summary>One row for each section.</summary>
    public IReadOnlyList<IReadOnlyList<double>> Rows { get; init; } = [];
}
