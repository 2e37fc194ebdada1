namespace FrontEnd.Interference;

/// <summary>A disturbance other than the mains: at one frequency, or spread evenly over a range.</summary>
public sealed record Interferer(string Name, Frequency Low, Frequency High, VoltageRms Amplitude)
{
    /// <summary>Scalp muscle, 20–300 Hz, 20 µV rms (from memory).</summary>
    public static readonly Interferer Muscle =
        new("muscle", Frequency.FromHertz(20), Frequency.FromHertz(300), VoltageRms.FromMicrovolts(20));
}
