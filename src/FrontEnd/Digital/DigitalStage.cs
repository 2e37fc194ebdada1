using FrontEnd.Quantities;

namespace FrontEnd.Digital;

/// <summary>A digital filter as the user names it.</summary>
public abstract record DigitalStage
{
    /// <summary>"high-pass", "notch 50 Hz" …; unique in the design.</summary>
    public string Name { get; init; } = "";
}

/// <summary>Butterworth high-pass, bilinear transform with the corner prewarped.</summary>
public sealed record DigitalHighPass : DigitalStage
{
    public Frequency Corner { get; init; } = Frequency.FromHertz(0.5);
    public int Order { get; init; } = 2;
}

/// <summary>Butterworth low-pass, bilinear transform with the corner prewarped.</summary>
public sealed record DigitalLowPass : DigitalStage
{
    public Frequency Corner { get; init; } = Frequency.FromHertz(40);
    public int Order { get; init; } = 2;
}

/// <summary>Second-order notch; Q is centre over −3 dB width.</summary>
public sealed record DigitalNotch : DigitalStage
{
    public Frequency Centre { get; init; } = Frequency.FromHertz(50);
    public double Q { get; init; } = 10;
}

/// <summary>Second-order sections given as numbers: rows of b0 b1 b2 a0 a1 a2.</summary>
public sealed record DigitalSections : DigitalStage
{
    public IReadOnlyList<IReadOnlyList<double>> Rows { get; init; } = [];
}
