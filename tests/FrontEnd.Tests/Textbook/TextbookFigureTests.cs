using System.Numerics;
using System.Reflection;
using FrontEnd.Electrodes;
using FrontEnd.Quantities;
using FrontEnd.Textbook;
using Xunit;

namespace FrontEnd.Tests.Textbook;

/// <summary>The substituted text, and what the reference tables do not reach: limits, definitions and second ways.</summary>
public class TextbookFigureTests
{
    private static readonly Frequency Low = Frequency.FromHertz(0.5);
    private static readonly Frequency High = Frequency.FromHertz(100);
    private static readonly Temperature Board = Temperature.FromCelsius(25);

    [Fact]
    public void Thermal_Substituted_HasTheNumbersAndTheResult()
    {
        TextbookFigure figure = NoiseFormulas.Thermal(Resistance.FromKilohms(10), Board, Low, High);
        Assert.Equal("√(4kTRB)", figure.Formula);
        Assert.Equal("√(4k · 298.15 K · 10 kΩ · 99.5 Hz) = 128.0 nV", figure.Substituted);
        Assert.Equal("V", figure.Unit);
        Assert.Equal("op-amps-for-everyone", figure.Source.Key);
    }

    [Fact]
    public void RcCorner_Substituted_HasTheNumbersAndTheResult() =>
        Assert.Equal("1/(2π · 10 kΩ · 100 nF) = 159.2 Hz", FilterFormulas.RcCorner(Resistance.FromKilohms(10), Capacitance.FromNanofarads(100)).Substituted);

    [Fact]
    public void DividerRejection_Substituted_HasTheNumbersAndTheResult()
    {
        Complex input = 1 / new Complex(0, 2 * Math.PI * 50 * 10e-12);
        Assert.Equal("20·log10(318.3 MΩ/100 kΩ) = 70.06 dB", MainsFormulas.DividerRejection(input, 100e3).Substituted);
    }

    [Fact]
    public void FaultCurrent_NoResistorFitted_HasNoBound()
    {
        TextbookFigure figure = SafetyFormulas.FaultCurrent(Voltage.FromVolts(3.3), default);
        Assert.Equal(double.PositiveInfinity, figure.Value);
        Assert.Equal("3.3 V/0 Ω = ∞", figure.Substituted);
    }

    [Fact]
    public void LandsAt_Substituted_CountsTheTurns() =>
        Assert.Equal("|240 Hz − 1 · 250 Hz| = 10.00 Hz", FilterFormulas.LandsAt(Frequency.FromHertz(240), Frequency.FromHertz(250)).Substituted);

    [Fact]
    public void ThermalParallelRc_WithoutCapacitor_IsTheResistorsNoise()
    {
        Resistance r = Resistance.FromKilohms(51);
        Assert.Equal(1, NoiseFormulas.ThermalParallelRc(r, default, Board, Low, High).Value / NoiseFormulas.Thermal(r, Board, Low, High).Value, 12);
        Assert.Equal(1, NoiseFormulas.ThermalParallelRc(r, Capacitance.FromFarads(1e-18), Board, Low, High).Value / NoiseFormulas.Thermal(r, Board, Low, High).Value, 9);
    }

    [Fact]
    public void ThermalParallelRc_OverAllFrequencies_IsTheCapacitorLimit()
    {
        Capacitance c = Capacitance.FromNanofarads(4.7);
        double all = NoiseFormulas.ThermalParallelRc(Resistance.FromKilohms(620), c, Board, default, Frequency.FromHertz(1e12)).Value;
        Assert.Equal(1, all / NoiseFormulas.CapacitorLimit(c, Board).Value, 8);
    }

    [Fact]
    public void ElectrodeThermal_TwoBlocksAndSeriesResistance_AgreesWithAPlainSum()
    {
        Electrode electrode = new()
        {
            SeriesResistance = Resistance.FromKilohms(1.2),
            ContactResistance = Resistance.FromKilohms(51),
            ContactCapacitance = Capacitance.FromNanofarads(47),
            SecondResistance = Resistance.FromKilohms(200),
            SecondCapacitance = Capacitance.FromNanofarads(10),
        };

        // Second way: midpoint sum of 4kT·Re Z, 200 000 steps; agrees to its own rounding of some 1e-8.
        const int steps = 200_000;
        double width = (High.Hertz - Low.Hertz) / steps;
        double sum = 0;
        for (int i = 0; i < steps; i++)
        {
            sum += electrode.Impedance(Frequency.FromHertz(Low.Hertz + ((i + 0.5) * width))).Real * width;
        }

        double expected = Math.Sqrt(4 * PhysicalConstants.Boltzmann * Board.Kelvins * sum);
        Assert.Equal(1, NoiseFormulas.ElectrodeThermal([electrode], Board, Low, High).Value / expected, 7);
        Assert.Equal(Math.Sqrt(2), NoiseFormulas.ElectrodeThermal([electrode, electrode], Board, Low, High).Value / NoiseFormulas.ElectrodeThermal([electrode], Board, Low, High).Value, 12);
    }

    [Fact]
    public void CurrentInElectrode_AgreesWithAPlainSum()
    {
        Electrode electrode = new() { SeriesResistance = Resistance.FromKilohms(5), ContactResistance = Resistance.FromKilohms(620), ContactCapacitance = Capacitance.FromNanofarads(4.7) };
        const int steps = 200_000;
        double width = (High.Hertz - Low.Hertz) / steps;
        double sum = 0;
        for (int i = 0; i < steps; i++)
        {
            sum += Math.Pow(electrode.Impedance(Frequency.FromHertz(Low.Hertz + ((i + 0.5) * width))).Magnitude, 2) * width;
        }

        TextbookFigure figure = NoiseFormulas.CurrentInElectrode(CurrentNoiseDensity.FromFemtoamperesPerRootHertz(100), electrode, Low, High);
        Assert.Equal(1, figure.Value / (100e-15 * Math.Sqrt(sum)), 7);
    }

    [Fact]
    public void Excess_OfAReportedRms_GivesThatRmsBack()
    {
        foreach (double slope in new[] { 0, 0.5, 1, 1.5, 2, 3 })
        {
            ExcessNoise k = ExcessNoise.FromRms(VoltageRms.FromMicrovolts(5), Low, High, slope);
            Assert.Equal(1, NoiseFormulas.Excess(k, slope, Low, High).Value / 5e-6, 12);
        }
    }

    [Fact]
    public void SallenKey_EqualResistors_HasTheQOfTheCapacitorRatio()
    {
        // R1 = R2, C1 = 2·C2 is the Butterworth section: Q = √(C1/C2)/2 = 1/√2, −3 dB at f0.
        (Resistance r, Capacitance c1, Capacitance c2) = (Resistance.FromKilohms(22), Capacitance.FromNanofarads(200), Capacitance.FromNanofarads(100));
        double f0 = FilterFormulas.SallenKeyFrequency(r, r, c1, c2).Value;
        double q = FilterFormulas.SallenKeyQ(r, r, c1, c2).Value;
        Assert.Equal(1 / Math.Sqrt(2), q, 12);
        Assert.Equal(f0, FilterFormulas.SecondOrderCorner(Frequency.FromHertz(f0), q).Value, 9);
        Assert.Equal(1 / (2 * Math.PI * 22e3 * Math.Sqrt(2e-14)), f0, 9);
    }

    [Fact]
    public void MultipleFeedback_TransferFunction_HasTheFormulasFrequencyAndQ()
    {
        // Second way: nodal equations of the circuit at 1/(2π√…): |H| is (R3/R1)·Q at f0.
        (double r1, double r2, double r3, double c1, double c2) = (10e3, 6.8e3, 20e3, 220e-9, 33e-9);
        double f0 = FilterFormulas.MultipleFeedbackFrequency(Resistance.FromOhms(r2), Resistance.FromOhms(r3), Capacitance.FromFarads(c1), Capacitance.FromFarads(c2)).Value;
        double q = FilterFormulas.MultipleFeedbackQ(Resistance.FromOhms(r1), Resistance.FromOhms(r2), Resistance.FromOhms(r3), Capacitance.FromFarads(c1), Capacitance.FromFarads(c2)).Value;
        Complex s = new(0, 2 * Math.PI * f0);

        // Virtual earth at (−): X/R2 = −s·C2·out, and (in − X)/R1 = X·s·C1 + (X − out)/R3 + X/R2.
        Complex xPerOut = -s * c2 * r2;
        Complex inPerOut = (xPerOut * (1 + (r1 * ((s * c1) + (1 / r3) + (1 / r2))))) - (r1 / r3);
        Assert.Equal(r3 / r1 * q, (1 / inPerOut).Magnitude, 9);
        Assert.Equal(90, Math.Abs((1 / inPerOut).Phase) * 180 / Math.PI, 6);
    }

    [Fact]
    public void BodyCommonMode_BoxWithTheBodysRatio_Vanishes()
    {
        double value = MainsFormulas.BodyCommonMode(VoltageRms.FromVolts(230), Frequency.FromHertz(50), Capacitance.FromPicofarads(3), Capacitance.FromPicofarads(300), Capacitance.FromPicofarads(0.1), Capacitance.FromPicofarads(10), 50e3).Value;
        Assert.True(value < 1e-15);
    }

    [Fact]
    public void BodyCommonMode_BoxThatFloatsEntirely_IsZero() =>
        Assert.Equal(0, MainsFormulas.BodyCommonMode(VoltageRms.FromVolts(230), Frequency.FromHertz(50), Capacitance.FromPicofarads(3), Capacitance.FromPicofarads(300), default, default(Capacitance), 50e3).Value);

    [Fact]
    public void DividerRejection_LittleImbalance_IsTheExactForm()
    {
        Complex input = 1 / new Complex(1e-9, 2 * Math.PI * 50 * 10e-12);
        double exact = MainsFormulas.DividerRejectionExact(input, 1000, input, 3000).Value;
        Assert.Equal(MainsFormulas.DividerRejection(input, 2000).Value, exact, 3);
    }

    [Fact]
    public void NotchTimeConstant_HighQ_IsQOverPiTimesCentre()
    {
        double tau = FilterFormulas.NotchTimeConstant(Frequency.FromHertz(50), 500, Frequency.FromHertz(250)).Value;
        Assert.Equal(1, tau / (500 / (Math.PI * 50)), 5);
    }

    [Theory]
    [InlineData(50, 10, 250)]
    [InlineData(50, 0.8, 250)]
    [InlineData(20, 0.3, 250)]
    [InlineData(100, 0.9, 250)]
    public void NotchTimeConstant_AnyWidth_IsHowFastItsImpulseResponseFalls(double centre, double q, double rate)
    {
        // Second way: run the recursion and measure the fall of its largest values over a long stretch; the two agree to 2 %, as ringing hides the exact envelope.
        double b = 1 / (1 + Math.Tan(Math.PI * centre / q / rate));
        double c = 2 * b * Math.Cos(2 * Math.PI * centre / rate);
        double[] y = new double[4000];
        for (int n = 0; n < y.Length; n++)
        {
            y[n] = (n == 0 ? 1 : 0) + (1 <= n ? c * y[n - 1] : 0) - (2 <= n ? ((2 * b) - 1) * y[n - 2] : 0);
        }

        double tau = FilterFormulas.NotchTimeConstant(Frequency.FromHertz(centre), q, Frequency.FromHertz(rate)).Value * rate;
        int start = (int)Math.Ceiling(tau) + 10;
        int later = start + (int)Math.Ceiling(12 * tau);
        double Peak(int from) => y.Skip(from).Take(12).Max(Math.Abs);
        Assert.Equal(1, (later - start) / Math.Log(Peak(start) / Peak(later)) / tau, 0.02);
    }

    [Fact]
    public void NotchTimeConstant_WiderThanHalfTheRate_HasNoBound() =>
        Assert.Equal(double.PositiveInfinity, FilterFormulas.NotchTimeConstant(Frequency.FromHertz(50), 0.3, Frequency.FromHertz(250)).Value);

    [Fact]
    public void DrivenGroundCrossing_NoOtherPole_IsTheIntegrators()
    {
        Assert.Equal(1000, MainsFormulas.DrivenGroundCrossing(Frequency.FromHertz(1000)).Value, 9);
        Assert.Equal(90, MainsFormulas.DrivenGroundPhaseMargin(Frequency.FromHertz(1000)).Value, 9);
    }

    [Fact]
    public void Rejections_OneAlone_IsItself()
    {
        Decibels only = Decibels.FromStated(80);
        Assert.Equal(80, MainsFormulas.RejectionsWorstCase(only).Value, 10);
        Assert.Equal(80, MainsFormulas.RejectionsRootSum(only).Value, 10);
    }

    [Fact]
    public void Formulas_EveryPublicOne_GivesAFigure()
    {
        MethodInfo[] formulas = [.. typeof(TextbookFigure).Assembly.GetTypes()
            .Where(type => !type.IsNested && type.Namespace is "FrontEnd.Textbook" && type.Name.EndsWith("Formulas", StringComparison.Ordinal))
            .SelectMany(type => type.GetMethods(BindingFlags.Public | BindingFlags.Static | BindingFlags.DeclaredOnly))];
        Assert.True(60 < formulas.Length, $"{formulas.Length} formulas");
        Assert.All(formulas, formula => Assert.Equal(typeof(TextbookFigure), formula.ReturnType));
    }
}
