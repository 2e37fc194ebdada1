namespace FrontEnd.Quantities;

/// <summary>Constants of nature. Edition: CODATA 2018 (reference/sources.json, key codata-2018); both are exact since the SI of
/// 2019.</summary>
public static class PhysicalConstants
{
    /// <summary>Boltzmann constant, k = 1.380649e-23 J/K, exact.</summary>
    public const double Boltzmann = 1.380649e-23;

    /// <summary>4kT [W/Hz]: times a resistance the squared voltage density [V²/Hz], times a conductance the squared current density
    /// [A²/Hz] (Johnson, Nyquist 1928).</summary>
    public static double ThermalPower(Temperature temperature) => 4 * Boltzmann * temperature.Kelvins;

    /// <summary>Elementary charge, e = 1.602176634e-19 C, exact.</summary>
    public const double ElementaryCharge = 1.602176634e-19;
}
