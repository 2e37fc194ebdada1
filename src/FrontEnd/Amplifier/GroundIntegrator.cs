namespace FrontEnd.Amplifier;

/// <summary>The driven ground's amplifier as an inverting integrator: R_a from the mean of the inputs to its − input, R_f and C_f across
/// it.</summary>
/// <remarks>K(s) = (R_f/R_a)/(1 + s·R_f·C_f): f_u = 1/(2πR_aC_f), K0 = R_f/R_a. (Inverting integrator with a leak, any op-amp text;
/// derived.) The mean of n buffered nodes comes over n resistors of n·R_a each.</remarks>
/// <param name="Input">R_a.</param>
/// <param name="Feedback">R_f.</param>
/// <param name="Capacitor">C_f.</param>
internal sealed record GroundIntegrator(Resistance Input, Resistance Feedback, Capacitance Capacitor)
{
    /// <summary>Largest feedback resistor that leakage leaves alone [Ω] (common practice, no source).</summary>
    public static readonly Resistance LargestFeedback = Resistance.FromMegohms(10);

    /// <summary>K0.</summary>
    public double DcGain => Feedback / Input;

    /// <summary>f_u.</summary>
    public Frequency UnityGain => Frequency.FromHertz(1 / (2 * Math.PI * Input.Ohms * Capacitor.Farads));

    /// <summary>Where the gain begins to fall: f_u/K0.</summary>
    public Frequency Corner => Frequency.FromHertz(1 / (2 * Math.PI * Feedback.Ohms * Capacitor.Farads));

    /// <summary>The exact parts of a gain and a unity-gain frequency for a given R_f.</summary>
    public static GroundIntegrator Of(double dcGain, Frequency unityGain, Resistance feedback)
    {
        Resistance input = Resistance.FromOhms(feedback.Ohms / dcGain);
        return new GroundIntegrator(input, feedback, Capacitance.FromFarads(1 / (2 * Math.PI * input.Ohms * unityGain.Hertz)));
    }

    /// <summary>Each of the resistors that average some nodes, which stand in parallel for R_a.</summary>
    public Resistance Averaging(int nodes) => Resistance.FromOhms(nodes * Input.Ohms);
}
