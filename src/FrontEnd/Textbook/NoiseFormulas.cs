using FrontEnd.Electrodes;

namespace FrontEnd.Textbook;

/// <summary>Noise by the formulas of the textbooks. All densities are one-sided; k is the Boltzmann constant.</summary>
internal static class NoiseFormulas
{
    /// <summary>Noise density of a resistor, e = √(4kTR) [V/√Hz].</summary>
    /// <remarks>Source: SLOD006, section 10.3.2; k from CODATA 2018.</remarks>
    public static TextbookFigure ThermalDensity(Resistance resistance, Temperature temperature)
    {
        double value = Math.Sqrt(PhysicalConstants.ThermalPower(temperature) * resistance.Ohms);
        return TextbookFigure.Of(value, "V/√Hz", "√(4kTR)", () => $"√(4k · {Kelvins(temperature)} · {Put.In(resistance)})",
            Sources.OpAmpsThermal);
    }

    /// <summary>Noise of a resistor in a band, √(4kTRB) [V rms], B the width of the band.</summary>
    /// <remarks>Source: SLOD006, section 10.3.2; k from CODATA 2018.</remarks>
    public static TextbookFigure Thermal(Resistance resistance, Temperature temperature, Frequency low, Frequency high)
    {
        double width = high.Hertz - low.Hertz;
        double value = Math.Sqrt(PhysicalConstants.ThermalPower(temperature) * resistance.Ohms * width);
        return TextbookFigure.Of(value, "V", "√(4kTRB)", () => $"√(4k · {Kelvins(temperature)} · {Put.In(resistance)} · {Put.In(width, "Hz")})",
            Sources.OpAmpsThermal);
    }

    /// <summary>Noise of a resistor with a capacitor across it in a band [V rms]: √((2kT/πC)·(atan 2πf₂RC − atan 2πf₁RC)), from the
    /// integral of 4kT·Re Z.</summary>
    /// <remarks>
    /// Also the noise of a bias resistor driven through a series capacitor, whose density is √(4kTR)/√(1 + (f/fc)²).
    /// With C = 0 it is <see cref="Thermal"/>. Derived from SLOD006, section 10.3.2.
    /// </remarks>
    public static TextbookFigure ThermalParallelRc(Resistance resistance, Capacitance capacitance, Temperature temperature, Frequency low,
        Frequency high)
    {
        double value = Math.Sqrt(PhysicalConstants.ThermalPower(temperature) * RealPartIntegral(resistance, capacitance, low,
            high));
        return TextbookFigure.Of(
            value,
            "V",
            "√((2kT/πC)·(atan 2πf₂RC − atan 2πf₁RC))",
            () => $"√((2k · {Kelvins(temperature)}/(π · {Put.In(capacitance)}))·(atan(2π · {Put.In(high)} · {Put.In(resistance)} · {Put.In(capacitance)}) − atan(2π · {Put.In(low)} · {Put.In(resistance)} · {Put.In(capacitance)})))",
            Sources.Derived);
    }

    /// <summary>All the noise of a resistor and capacitor in parallel, whatever the resistor: √(kT/C) [V rms].</summary>
    /// <remarks>Source: derived, the limit of <see cref="ThermalParallelRc"/> from 0 Hz upwards.</remarks>
    public static TextbookFigure CapacitorLimit(Capacitance capacitance, Temperature temperature) =>
        TextbookFigure.Of(
            Math.Sqrt(PhysicalConstants.Boltzmann * temperature.Kelvins / capacitance.Farads),
            "V",
            "√(kT/C)",
            () => $"√(k · {Kelvins(temperature)}/{Put.In(capacitance)})",
            Sources.Derived);

    /// <summary>Thermal noise of electrodes in series in a band [V rms]: √(4kT·∫Re Z df), each electrode's integral in closed form. Excess
    /// noise is left out.</summary>
    /// <remarks>∫Re Z df = Rs·B + Σ (atan 2πf₂RdCd − atan 2πf₁RdCd)/(2πCd). Derived from SLOD006, section 10.3.2.</remarks>
    public static TextbookFigure ElectrodeThermal(IReadOnlyList<Electrode> electrodes, Temperature temperature, Frequency low,
        Frequency high)
    {
        double integral = electrodes.Sum(electrode => RealPartIntegral(electrode, low, high));
        double value = Math.Sqrt(PhysicalConstants.ThermalPower(temperature) * integral);
        return TextbookFigure.Of(
            value,
            "V",
            "√(4kT·Σ∫Re Z df)",
            () => $"√(4k · {Kelvins(temperature)} · ({string.Join(" + ", electrodes.Select(electrode => Put.In(RealPartIntegral(electrode, low, high) / (high.Hertz - low.Hertz), "Ω")))}) · {Put.In(high.Hertz - low.Hertz, "Hz")})",
            Sources.Derived);
    }

    /// <summary>Noise of an amplifier's voltage density with flicker in a band, e·√(f₂ − f₁ + f_c·ln(f₂/f₁)) [V rms].</summary>
    /// <param name="density">e: the density well above the corner.</param>
    /// <param name="corner">f_c: where flicker and white noise are alike; 0 Hz for none.</param>
    /// <remarks>Source: Franco, Example 7.1; SLOD006, Eqs. 10-14 to 10-16.</remarks>
    public static TextbookFigure Amplifier(VoltageNoiseDensity density, Frequency corner, Frequency low, Frequency high) =>
        TextbookFigure.Of(
            density.VoltsPerRootHertz * Math.Sqrt(FlickerBand(corner, low, high)),
            "V",
            "e·√(f₂ − f₁ + f_c·ln(f₂/f₁))",
            () => $"{Put.In(density)} · {FlickerText(corner, low, high)}",
            Sources.FrancoFlicker);

    /// <summary>Noise of an amplifier's input current in a source resistance in a band, i·R·√(f₂ − f₁ + f_c·ln(f₂/f₁)) [V rms].</summary>
    /// <remarks>Source: Franco, Example 7.1, with i·R for e.</remarks>
    public static TextbookFigure Current(CurrentNoiseDensity density, Resistance source, Frequency corner, Frequency low, Frequency high) =>
        TextbookFigure.Of(
            density.AmperesPerRootHertz * source.Ohms * Math.Sqrt(FlickerBand(corner, low, high)),
            "V",
            "i·R·√(f₂ − f₁ + f_c·ln(f₂/f₁))",
            () => $"{Put.In(density)} · {Put.In(source)} · {FlickerText(corner, low, high)}",
            Sources.FrancoFlicker);

    /// <summary>Noise of the input currents of an amplifier in the leads of its two inputs, i·√(Z_a² + N·Z_r²)·√(f₂ − f₁ + f_c·ln(f₂/f₁))
    /// [V rms]; the currents are independent, and N inputs share the reference's lead.</summary>
    /// <remarks>Source: Franco, Example 7.1, with i·Z for e; independent noises add as squares.</remarks>
    public static TextbookFigure CurrentInLeads(CurrentNoiseDensity density, Frequency corner, Resistance active, Resistance reference,
        int inputs, Frequency low, Frequency high)
    {
        double impedance = Math.Sqrt(Square(active.Ohms) + (inputs * Square(reference.Ohms)));
        (string n, string count) = inputs == 1 ? ("", "") : ("N·", $"{inputs} · ");
        return TextbookFigure.Of(
            density.AmperesPerRootHertz * impedance * Math.Sqrt(FlickerBand(corner, low, high)),
            "V",
            $"i·√(Z_a² + {n}Z_r²)·√(f₂ − f₁ + f_c·ln(f₂/f₁))",
            () => $"{Put.In(density)} · √(({Put.In(active)})² + {count}({Put.In(reference)})²) · {FlickerText(corner, low, high)}",
            Sources.FrancoFlicker);
    }

    /// <summary>Noise of an input current in an electrode, i·√(∫|Z|² df) [V rms]; for Rd ‖ Cd without Rs ∫|Z|² df is Rd·∫Re Z df. White
    /// current noise.</summary>
    /// <remarks>∫|Z|² df = Rs²·B + (2·Rs + Rd)·∫Re(Rd‖Cd) df. One contact block; a second one is left out. Derived.</remarks>
    public static TextbookFigure CurrentInElectrode(CurrentNoiseDensity density, Electrode electrode, Frequency low, Frequency high)
    {
        double block = RealPartIntegral(electrode.ContactResistance, electrode.ContactCapacitance, low, high);
        double rs = electrode.SeriesResistance.Ohms;
        double squares = (rs * rs * (high.Hertz - low.Hertz)) + (((2 * rs) + electrode.ContactResistance.Ohms) * block);
        return TextbookFigure.Of(
            density.AmperesPerRootHertz * Math.Sqrt(squares),
            "V",
            "i·√(∫|Z|² df)",
            () => $"{Put.In(density)} · {Put.In(Math.Sqrt(squares / (high.Hertz - low.Hertz)), "Ω")} · √{Put.In(high.Hertz - low.Hertz, "Hz")}",
            Sources.Derived);
    }

    /// <summary>Shot noise density of a current through a junction, √(2qI) [A/√Hz]; the least that a bias current of a bipolar input
    /// brings.</summary>
    /// <remarks>Source: SLOD006, Eq. 10-9; q from CODATA 2018.</remarks>
    public static TextbookFigure ShotDensity(Current current) =>
        TextbookFigure.Of(
            Math.Sqrt(2 * PhysicalConstants.ElementaryCharge * Math.Abs(current.Amperes)),
            "A/√Hz",
            "√(2qI)",
            () => $"√(2q · {Put.In(current)})",
            Sources.OpAmpsShot);

    /// <summary>Flicker corner from one point of a data sheet's curve, f_c = f₁·(e₁² − e²)/e² [Hz].</summary>
    /// <param name="point">e₁: the density read off the curve where it rises.</param>
    /// <param name="at">f₁: the frequency of that point.</param>
    /// <param name="white">e: the density well above the corner.</param>
    /// <remarks>Source: SLOD006, Eqs. 10-15 and 10-16.</remarks>
    public static TextbookFigure FlickerCorner(VoltageNoiseDensity point, Frequency at, VoltageNoiseDensity white)
    {
        double ratio = point.VoltsPerRootHertz / white.VoltsPerRootHertz;
        return TextbookFigure.Of(
            at.Hertz * ((ratio * ratio) - 1),
            "Hz",
            "f₁·(e₁² − e²)/e²",
            () => $"{Put.In(at)} · (({Put.In(point)}/{Put.In(white)})² − 1)",
            Sources.OpAmpsFlicker);
    }

    /// <summary>Density of an instrumentation amplifier referred to its input, √(e_ni² + (e_no/G)²) [V/√Hz].</summary>
    /// <remarks>Source: derived; the example of an instrumentation amplifier's data sheet is in
    /// reference/noise/amplifier-noise.txt.</remarks>
    public static TextbookFigure InputReferredDensity(VoltageNoiseDensity input, VoltageNoiseDensity output, double gain) =>
        TextbookFigure.Of(
            Math.Sqrt(Square(input.VoltsPerRootHertz) + Square(output.VoltsPerRootHertz / gain)),
            "V/√Hz",
            "√(e_ni² + (e_no/G)²)",
            () => $"√(({Put.In(input)})² + ({Put.In(output)}/{Put.In(gain)})²)",
            Sources.Derived);

    /// <summary>Excess noise K/f^α in a band, √(K·∫f^-α df) [V rms]: (f₂^(1−α) − f₁^(1−α))/(1−α), or ln(f₂/f₁) for α = 1.</summary>
    /// <remarks>The form K/f^α is reported for electrodes on skin, α about 2 (NASICON and Ag-AgCl electrodes, abstract only); the integral
    /// is derived.</remarks>
    public static TextbookFigure Excess(ExcessNoise atOneHertz, double slope, Frequency low, Frequency high)
    {
        double integral = PowerIntegral(slope, low, high);
        return TextbookFigure.Of(
            Math.Sqrt(atOneHertz.VoltsSquaredPerHertz * integral),
            "V",
            "√(K·∫f^-α df)",
            () => $"√({Put.In(atOneHertz)} · ∫f^-{Put.In(slope)} df from {Put.In(low)} to {Put.In(high)})",
            Sources.Derived);
    }

    /// <summary>Independent noises together, √(σ₁² + σ₂² + …) [V rms].</summary>
    /// <remarks>Source: common practice; variances of independent noises add.</remarks>
    public static TextbookFigure Together(params IReadOnlyList<VoltageRms> parts) =>
        TextbookFigure.Of(
            Math.Sqrt(parts.Sum(part => Square(part.Volts))),
            "V",
            "√(σ₁² + σ₂² + …)",
            () => $"√({string.Join(" + ", parts.Select(part => $"({Put.In(part.Volts, "V")})²"))})",
            Sources.CommonPractice);

    /// <summary>Peak-to-peak of Gaussian noise, <see cref="TradeConstants.NoisePeakToPeak"/>·σ [V p-p]: 0.1 % of the time lies
    /// outside.</summary>
    /// <remarks>Source: Baker 2008, crest factor 3.3 on each side.</remarks>
    public static TextbookFigure PeakToPeak(VoltageRms noise) =>
        TextbookFigure.Of(noise.NoisePeakToPeak.Volts, "V", $"{TradeConstants.NoisePeakToPeak}·σ",
            () => $"{TradeConstants.NoisePeakToPeak} · {Put.In(noise.Volts, "V")}", Sources.CrestFactor);

    /// <summary>Noise bandwidth over −3 dB frequency of a Butterworth low-pass of order n, (π/2n)/sin(π/2n).</summary>
    /// <remarks>1.57, 1.11, 1.05, 1.03 … Two equal RC sections are another filter: see <see cref="BandwidthFactorEqualPoles"/>. Source:
    /// note MT-006, Fig. 2.</remarks>
    public static TextbookFigure BandwidthFactorButterworth(int order)
    {
        double x = Math.PI / (2 * Require.InRange(order, 1, 100));
        return TextbookFigure.Of(x / Math.Sin(x), "1", "(π/2n)/sin(π/2n)", () => $"(π/{2 * order})/sin(π/{2 * order})", Sources.NoiseBandwidth);
    }

    /// <summary>Noise bandwidth over −3 dB frequency of n equal first-order low-passes in a row.</summary>
    /// <remarks>
    /// ∫dx/(1 + x²)ⁿ = (π/2)·(1·3…(2n−3))/(2·4…(2n−2)) over √(2^(1/n) − 1): 1.57, 1.22, 1.16 … Source: Kay, brick-wall correction factors.
    /// </remarks>
    public static TextbookFigure BandwidthFactorEqualPoles(int sections)
    {
        double integral = Math.PI / 2;
        for (int k = 1; k < Require.InRange(sections, 1, 100); k++)
        {
            integral *= (2 * k - 1) / (2.0 * k);
        }

        return TextbookFigure.Of(
            integral / Math.Sqrt(Math.Pow(2, 1.0 / sections) - 1),
            "1",
            "∫dx/(1 + x²)ⁿ / √(2^(1/n) − 1)",
            () => $"{Put.In(integral)} / √(2^(1/{sections}) − 1)",
            Sources.NoiseBandwidthEqualPoles);
    }

    /// <summary>Sweeps to average for an evoked response, N = (S·σ/A)², rounded up by the caller.</summary>
    /// <param name="ratio">S: response over remaining noise that is wanted.</param>
    /// <param name="noise">σ: noise of one sweep.</param>
    /// <param name="amplitude">A: the response.</param>
    /// <remarks>Source: derived; noise after N sweeps is σ/√N.</remarks>
    public static TextbookFigure SweepsToAverage(double ratio, VoltageRms noise, Voltage amplitude) =>
        TextbookFigure.Of(
            Square(ratio * noise.Volts / amplitude.Volts),
            "1",
            "(S·σ/A)²",
            () => $"({Put.In(ratio)} · {Put.In(noise.Volts, "V")}/{Put.In(amplitude)})²",
            Sources.Derived);

    private static double Square(double x) => x * x;

    private static string Kelvins(Temperature temperature) => $"{temperature.Kelvins:0.##} K";

    private static double FlickerBand(Frequency corner, Frequency low, Frequency high) =>
        high.Hertz - low.Hertz + (corner.Hertz == 0 ? 0 : corner.Hertz * Math.Log(high.Hertz / low.Hertz));

    private static string FlickerText(Frequency corner, Frequency low, Frequency high) => corner.Hertz == 0
        ? $"√({Put.In(high)} − {Put.In(low)})"
        : $"√({Put.In(high)} − {Put.In(low)} + {Put.In(corner)} · ln({Put.In(high)}/{Put.In(low)}))";

    private static double PowerIntegral(double slope, Frequency low, Frequency high) => Math.Abs(slope - 1) < 1e-12
        ? Math.Log(high.Hertz / low.Hertz)
        : (Math.Pow(high.Hertz, 1 - slope) - Math.Pow(low.Hertz, 1 - slope)) / (1 - slope);

    private static double RealPartIntegral(Electrode electrode, Frequency low, Frequency high) =>
        (electrode.SeriesResistance.Ohms * (high.Hertz - low.Hertz))
        + RealPartIntegral(electrode.ContactResistance, electrode.ContactCapacitance, low, high)
        + (electrode.SecondResistance is { } second ? RealPartIntegral(second, electrode.SecondCapacitance ?? default, low, high) : 0);

    /// <summary>∫Re(R‖C) df [Ω·Hz].</summary>
    private static double RealPartIntegral(Resistance resistance, Capacitance capacitance, Frequency low, Frequency high)
    {
        double tau = 2 * Math.PI * resistance.Ohms * capacitance.Farads;
        double span = high.Hertz - low.Hertz;
        if (tau == 0)
        {
            return resistance.Ohms * span;
        }

        // atan b − atan a as one arctangent, so that a small RC does not lose its digits in the difference.
        double difference = Math.Atan2(tau * span, 1 + (tau * high.Hertz * tau * low.Hertz));
        return resistance.Ohms * difference / tau;
    }
}
