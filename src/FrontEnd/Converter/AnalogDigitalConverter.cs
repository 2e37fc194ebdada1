using FrontEnd.Circuits;
using FrontEnd.Fields;

namespace FrontEnd.Converter;

/// <summary>How the converter works: it decides what folds into the band.</summary>
public enum ConverterKind
{
    /// <summary>Samples once and decides bit by bit.</summary>
    SuccessiveApproximation,

    /// <summary>A fast modulator of few bits, averaged by a sinc filter.</summary>
    DeltaSigma,
}

/// <summary>The analogue-to-digital converter.</summary>
public sealed record AnalogDigitalConverter
{
    /// <summary>Name of the part card; "" for none.</summary>
    public string Card { get; init; } = "";

    /// <summary>How far its values go from piece to piece; see <see cref="PartRanges"/>.</summary>
    public PartRanges Ranges { get; init; } = PartRanges.None;

    /// <summary>How it converts.</summary>
    public ConverterKind Kind { get; init; } = ConverterKind.SuccessiveApproximation;

    /// <summary>fs: the output rate.</summary>
    public Frequency Rate { get; init; } = Frequency.FromHertz(250);

    /// <summary>N, the word length.</summary>
    public double Bits { get; init; } = 12;

    /// <summary>One step where it is not full scale over 2^N; null for that.</summary>
    public Voltage? Lsb { get; init; }

    /// <summary>From the lowest to the highest code at its input [V p-p].</summary>
    public VoltagePeakToPeak FullScale { get; init; } = VoltagePeakToPeak.FromVolts(3);

    /// <summary>The converter's own noise, rms over half the rate, without quantisation; null where neither design nor card gives
    /// it.</summary>
    public VoltageRms? Noise { get; init; }

    /// <summary>True where full scale is the difference of two pins, which may each go from rail to rail; null where the kind
    /// decides.</summary>
    public bool? Differential { get; init; }

    /// <summary>The voltage of a supply of its own, which the full scale must fit; null where it hangs on the analogue rails.</summary>
    public Voltage? OwnSupply { get; init; }

    /// <summary>True where it is part of the microcontroller: the board then brings it the signals, and holds no converter of its own.</summary>
    public bool InController { get; init; }

    /// <summary>Delta-sigma: modulator clock over output rate, OSR.</summary>
    public int Oversampling { get; init; } = 256;

    /// <summary>Delta-sigma: order of the sinc decimator.</summary>
    public int SincOrder { get; init; } = 3;

    /// <summary>Time between the samples of two neighbouring channels; zero for simultaneous sampling.</summary>
    public Duration Skew { get; init; }

    /// <summary>Rms noise of the reference in the band; null where not given.</summary>
    public VoltageRms? ReferenceNoise { get; init; }

    /// <summary>Voltage of the reference [V]; null where it is not given.</summary>
    public Voltage? ReferenceVoltage { get; init; }

    /// <summary>Supply current with its reference [A].</summary>
    public Current SupplyCurrent { get; init; } = Current.FromMicroamperes(200);

    /// <summary>The supply that its figures hold on and that it stands.</summary>
    public SupplyRange SupplyRange { get; init; } = SupplyRange.Any;

    /// <summary>The converter's own noise, given or not [V rms]: where it is not, 0.4 steps, and never less than what leaves 19 bits free of
    /// noise (common practice, no source).</summary>
    internal double NoiseVolts => Noise?.Volts ?? Math.Max(UsualSteps * LsbVolts, FullScale.Volts / (TradeConstants.NoisePeakToPeak * MostNoiseFreeCodes));

    private const double UsualSteps = 0.4;

    /// <summary>2^19.</summary>
    private const double MostNoiseFreeCodes = 1 << 19;

    /// <summary>Size of one step.</summary>
    internal double LsbVolts => Lsb?.Volts ?? (FullScale.Volts / Math.Pow(2, Bits));

    /// <summary>Clock of a delta-sigma modulator: rate times oversampling [Hz].</summary>
    public Frequency ModulatorClock => Frequency.FromHertz(Rate.Hertz * Oversampling);

    /// <summary>The same with the word length that a step says, log2(full scale/LSB); unchanged where that is not above 0 and at most
    /// 64.</summary>
    /// <param name="step">One step, above 0 V.</param>
    /// <param name="wholeSaysIt">True to leave the step out where a whole word length gives exactly it.</param>
    public AnalogDigitalConverter WithBitsOf(Voltage step, bool wholeSaysIt)
    {
        double bits = Math.Log2(FullScale.Volts / step.Volts);
        double whole = Math.Round(bits);
        bool isWhole = FullScale.Volts / Math.Pow(2, whole) == step.Volts;
        return bits is > 0 and <= 64
            ? this with { Bits = isWhole ? whole : bits, Lsb = isWhole && wholeSaysIt ? null : step }
            : this;
    }

    /// <summary>|sin(πf·OSR/f_mod)/(OSR·sin(πf/f_mod))|^order for a delta-sigma converter, before folding; 1 otherwise.</summary>
    public double Response(double hertz)
    {
        if (Kind == ConverterKind.SuccessiveApproximation)
        {
            return 1;
        }

        // Whole turns are taken off first: π times a whole number has a sine of 1e-16, and its fifth power is not the null that it is.
        double turn = Math.PI * Part(hertz / ModulatorClock.Hertz), turns = Math.PI * Part(hertz / Rate.Hertz);
        double one = Math.Abs(turn) < 1e-12 ? 1 : Math.Sin(turns) / (Oversampling * Math.Sin(turn));
        return Math.Pow(Math.Abs(one), SincOrder);

        static double Part(double turns) => turns - Math.Round(turns);
    }
}
