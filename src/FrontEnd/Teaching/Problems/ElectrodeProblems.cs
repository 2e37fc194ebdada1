using System.Numerics;
using FrontEnd.Electrodes;
using FrontEnd.Textbook;

namespace FrontEnd.Teaching.Problems;

/// <summary>Problems about electrodes.</summary>
internal static class ElectrodeProblems
{
    public static IReadOnlyList<Template> All { get; } =
    [
        new("electrode-bias", Topic.Electrodes, 1, "Bias current in an electrode", d =>
        {
            Current bias = d.Part<Current>("I_b", "bias current of the input", 10e-12, 2.2e-9, PreferredSeries.E24);
            Resistance electrode = d.Part<Resistance>("R", "dc resistance of a dry electrode", 220e3, 2.2e6);
            TextbookFigure figure = AmplifierFormulas.BiasOffset(bias, electrode);
            return new ProblemText("Which dc voltage does the input's bias current make across the electrode?")
                .Step("Ohm's law", figure)
                .Answers<Voltage>(figure.Value)
                .Slip(Slips.BothElectrodes, 2 * figure.Value);
        }),
        new("electrode-impedance", Topic.Electrodes, 2, "Impedance of an electrode", d =>
        {
            (Electrode electrode, Frequency f) = (Contact(d), d.OneOf<Frequency>("f", "frequency", 10, 20, 30, 40, 50, 60, 100));
            TextbookFigure figure = ElectrodeFormulas.Impedance(electrode, f);
            (double rs, double rd) = (electrode.SeriesResistance.Ohms, electrode.ContactResistance.Ohms);
            double x = 1 / (2 * Math.PI * f.Hertz * electrode.ContactCapacitance.Farads);
            double real = rd * x * x / ((rd * rd) + (x * x)), imaginary = rd * rd * x / ((rd * rd) + (x * x));
            return new ProblemText("An electrode on skin is R_s in series with R_d and C_d in parallel. What is the size of its impedance?")
                .Step("The reactance of the capacitor", "1/(2πf·C_d)", $"1/(2π · {Put.In(f)} · {Put.In(electrode.ContactCapacitance)})", x,
                    "Ω", Sources.CommonPractice)
                .Step("R_s and the parallel pair, added as complex numbers", figure)
                .Answers<Resistance>(figure.Value, 0.01)
                .Slip(Slips.ResistanceOnly, rs + rd)
                .Slip(Slips.NotComplex, rs + (rd * x / (rd + x)))
                .Slip(Slips.NoTwoPi, (rs + (rd / new Complex(1, rd / (2 * Math.PI * x)))).Magnitude)
                .Slip(Slips.NoSeries, Math.Sqrt((real * real) + (imaginary * imaginary)));
        }),
        new("electrode-plate", Topic.Electrodes, 2, "An electrode that does not touch", d =>
        {
            Area area = d.OneOf<Area>("A", "area of the electrode", 0.5e-4, 1e-4, 1.5e-4, 2e-4, 2.5e-4, 3e-4, 4e-4, 5e-4, 7e-4, 8e-4);
            Length distance = d.OneOf<Length>("d", "thickness of hair or cloth under it", 0.2e-3, 0.3e-3, 0.4e-3, 0.5e-3, 0.7e-3, 0.9e-3, 1.1e-3, 1.3e-3, 1.7e-3, 2e-3);
            Ratio permittivity = d.OneOf<Ratio>("εr", "relative permittivity of the layer", 1.3, 1.5, 1.8, 2, 2.2, 2.5, 3);
            TextbookFigure figure = ElectrodeFormulas.PlateCapacitance(area, distance, permittivity.Fraction);
            return new ProblemText("A capacitive electrode lies on hair. Which capacitance couples it to the skin? The edges are left out.")
                .Step("A plate capacitor, ε0 = 8.854 pF/m", figure)
                .Answers<Capacitance>(figure.Value)
                .Slip(Slips.NoPermittivity, figure.Value / permittivity.Fraction)
                .Slip(Slips.Product, figure.Value / permittivity.Fraction / permittivity.Fraction);
        }),
        new("electrode-contact-check", Topic.Electrodes, 2, "Reading of a contact check", d =>
        {
            Current test = d.OneOf<Current>("I", "test current, rms", 5e-9, 6e-9, 10e-9, 20e-9, 24e-9);
            Resistance first = d.Part<Resistance>("Z₁", "active electrode, resistive", 5e3, 100e3, PreferredSeries.E24);
            Resistance second = d.Part<Resistance>("Z₂", "reference electrode, resistive", 5e3, 100e3);
            TextbookFigure figure = ElectrodeFormulas.ContactReading(test, first.Ohms, second.Ohms);
            return new ProblemText("A contact check sends a small current in at one electrode and out at another. Which voltage is read, rms?")
                .Step("The current flows through both electrodes", figure)
                .Answers<VoltageRms>(figure.Value)
                .Slip(Slips.OneElectrode, test.Amperes * first.Ohms)
                .Slip(Slips.OneElectrode, test.Amperes * second.Ohms)
                .Slip(Slips.RmsForPeak, figure.Value * Math.Sqrt(2));
        }),
        new("electrode-pair-noise", Topic.Electrodes, 3, "Thermal noise of a pair of electrodes", d =>
        {
            Resistance rd = d.OneOf<Resistance>("R_d", "contact resistance of each electrode", 51e3, 75e3, 100e3, 150e3, 220e3, 330e3, 470e3, 620e3, 820e3);
            Capacitance cd = d.OneOf<Capacitance>("C_d", "capacitance across it", 4.7e-9, 10e-9, 22e-9, 47e-9);
            Temperature t = d.OneOf<Temperature>("T", "temperature of the skin", 306.15);
            (Frequency low, Frequency high) = NoiseProblems.Band(d);
            Electrode electrode = new() { ContactResistance = rd, ContactCapacitance = cd };
            TextbookFigure figure = NoiseFormulas.ElectrodeThermal([electrode, electrode], t, low, high);
            return new ProblemText("A channel has two equal electrodes, each R_d and C_d in parallel. How large is their thermal noise together in the band, rms?")
                .Say("Only the real part of an impedance makes noise: Re Z = R_d/(1 + (2πf·R_d·C_d)²)")
                .Say("Its integral is (atan 2πf₂R_dC_d − atan 2πf₁R_dC_d)/(2πC_d) for each electrode; over the width of the band that is the mean of Re Z, which stands below")
                .Step("Two electrodes in series: their integrals add", figure)
                .Answers<VoltageRms>(figure.Value)
                .Slip(Slips.NoiseOfOneElectrode, NoiseFormulas.ElectrodeThermal([electrode], t, low, high).Value)
                .Slip(Slips.ResistanceOnly, Math.Sqrt(2) * NoiseFormulas.Thermal(rd, t, low, high).Value)
                .Slip(Slips.LinearSum, 2 * NoiseFormulas.ElectrodeThermal([electrode], t, low, high).Value)
                .Slip(Slips.PeakToPeakForRms, TradeConstants.NoisePeakToPeak * figure.Value);
        }),
    ];

    private static Electrode Contact(Draw d) => new()
    {
        SeriesResistance = d.OneOf<Resistance>("R_s", "series resistance", 500, 1000, 2000, 5000),
        ContactResistance = d.OneOf<Resistance>("R_d", "contact resistance", 100e3, 150e3, 220e3, 470e3, 620e3),
        ContactCapacitance = d.OneOf<Capacitance>("C_d", "capacitance across it", 22e-9, 33e-9, 47e-9),
    };
}
