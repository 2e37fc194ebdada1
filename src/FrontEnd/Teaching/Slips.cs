namespace FrontEnd.Teaching;

/// <summary>The slips that are looked for, each with its remark: one table for keys, marks and the class's summary.</summary>
internal static class Slips
{
    public static readonly SlipKind RmsForPeak =
        new("rms-for-peak", "rms and peak values were exchanged: a peak is √2 times the rms of a sine");
    public static readonly SlipKind SineForNoise =
        new("sine-for-noise", $"noise is no sine: its peak-to-peak is {TradeConstants.NoisePeakToPeak} times its rms, not 2√2 times");
    public static readonly SlipKind OneSidedPeak = new("one-sided-peak", "that is the peak to one side; peak-to-peak is twice that");
    public static readonly SlipKind PeakToPeakForRms =
        new("peak-to-peak-for-rms", "the rms value was asked for, not the peak-to-peak value");
    public static readonly SlipKind TenForTwentyLog =
        new("ten-for-twenty-log", "10·log10 is for powers; a ratio of voltages takes 20·log10");
    public static readonly SlipKind TwentyForTenLog =
        new("twenty-for-ten-log", "20·log10 is for voltages; a ratio of powers or variances takes 10·log10");
    public static readonly SlipKind NaturalForTenLog = new("natural-for-ten-log", "the natural logarithm was taken where log10 belongs");
    public static readonly SlipKind TenForNaturalLog = new("ten-for-natural-log", "log10 was taken where the natural logarithm belongs");
    public static readonly SlipKind TwoForTenLog = new("wrong-base-log", "bits count in powers of two: the logarithm is log2");
    public static readonly SlipKind HalfTheBand =
        new("half-the-band", "half the variance was counted, as for two-sided densities: those here are one-sided, over the whole width f2 − f1");
    public static readonly SlipKind NoRootOfBand =
        new("no-root-of-band", "noise grows with the square root of the bandwidth, not with the bandwidth");
    public static readonly SlipKind NoRoot = new("no-root", "the square root was left out");
    public static readonly SlipKind NoFour = new("no-four", "the factor 4 of 4kTRB was left out");
    public static readonly SlipKind NoFlicker = new("no-flicker", "the flicker noise below its corner was left out");
    public static readonly SlipKind LinearSum = new("linear-sum", "independent noises add as squares, not one to one");
    public static readonly SlipKind LargestAlone = new("largest-alone", "only the largest part was counted");
    public static readonly SlipKind NotReferred =
        new("not-referred-to-input", "the figure behind the amplifier was not divided by the gain");
    public static readonly SlipKind GainTwice = new("multiplied-by-gain", "going back to the input divides by the gain; it was multiplied");
    public static readonly SlipKind NoSquare = new("no-square", "the square was left out");
    public static readonly SlipKind NoNoiseBandwidth =
        new("corner-for-noise-bandwidth", "the −3 dB corner was taken for the noise bandwidth");
    public static readonly SlipKind SignalForNoiseGain =
        new("signal-for-noise-gain", "the bandwidth follows the noise gain 1 + Rf/Rg, not the signal gain");
    public static readonly SlipKind InvertingGain =
        new("inverting-gain", "that is the gain of an inverting stage; the non-inverting one has 1 more");
    public static readonly SlipKind NoHalfSupply =
        new("whole-supply", "the output rests at the middle of the supply: only half the supply is there in each direction");
    public static readonly SlipKind NoOffset = new("offset-forgotten", "the electrode offset was left out of what the stage must carry");
    public static readonly SlipKind NoHeadroom = new("margin-forgotten", "nothing swings up to the rails: the margin to them was left out");
    public static readonly SlipKind InnerFactor = new("inner-node-factor", "each inner node carries half of G·V_d");
    public static readonly SlipKind FarRail = new("far-rail", "the nearer rail limits, not the farther one");
    public static readonly SlipKind NoTwoPi =
        new("no-two-pi", "the factor 2π was left out: frequency and angular frequency were exchanged");
    public static readonly SlipKind OneTimeConstant = new("one-time-constant", "one time constant brings it to 37 % only");
    public static readonly SlipKind WrongStep = new("wrong-power-of-two", "N bits make 2^N steps, not 2^(N − 1)");
    public static readonly SlipKind HalfStep = new("half-step", "half a step is the greatest error, not its rms");
    public static readonly SlipKind NoSquareRootOfTwelve = new("twelve-without-root", "the rms of a uniform error is LSB/√12, not LSB/12");
    public static readonly SlipKind NoOffsetOfSine = new("no-1.76", "the 1.76 dB that a full-scale sine brings were forgotten");
    public static readonly SlipKind EffectiveForNoiseFree =
        new("effective-for-noise-free",
        $"that counts the rms noise: noise-free bits count its {TradeConstants.NoisePeakToPeak}-fold peak-to-peak");
    public static readonly SlipKind PeakToPeakForSine =
        new("peak-to-peak-for-sine-rms", "a full-scale sine has an rms of FS/(2√2), not FS");
    public static readonly SlipKind PeakForSine = new("peak-for-sine-rms", "a full-scale sine has an rms of FS/(2√2), not its peak FS/2");
    public static readonly SlipKind NoOverhead = new("overhead-forgotten", "framing and counters are sent too: the overhead was left out");
    public static readonly SlipKind Bytes = new("bytes-for-bits", "bytes were counted where bits were asked for");
    public static readonly SlipKind OneChannel = new("one-channel", "one channel was counted instead of all");
    public static readonly SlipKind WrongSide =
        new("fold-on-wrong-side", "the distance to the nearest multiple of the rate counts, not that to the one on the other side");
    public static readonly SlipKind FoldsLater =
        new("folds-later", "f_s + f2 lands in the band as well, but f_s − f2 comes first");
    public static readonly SlipKind FoldAtHalf =
        new("fold-at-half-rate", "the distance to a whole multiple of the rate counts, not that to half the rate");
    public static readonly SlipKind HalfTheRate =
        new("half-the-rate", "half the rate was taken; what lands in the band first is at f_s − f2");
    public static readonly SlipKind RoundedDown = new("rounded-down", "rounded the wrong way: the requirement is then not met");
    public static readonly SlipKind OnePole = new("one-pole", "a filter of the first order was taken instead of the order given");
    public static readonly SlipKind OneAverage = new("one-average", "one moving average was counted instead of all K");
    public static readonly SlipKind WantedForReached =
        new("wanted-for-reached", "that is what was wanted; the whole order that is built reaches more");
    public static readonly SlipKind HalfTheRateForOrder =
        new("half-the-rate-for-order", "the order was chosen for half the rate; what lands in the band first is at f_s − f2");
    public static readonly SlipKind SigmaForPeak =
        new("sigma-for-peak",
            $"σ was taken for the peak and doubled; peak-to-peak of noise is {TradeConstants.NoisePeakToPeak}σ");
    public static readonly SlipKind WhiteNotTakenAway =
        new("white-not-taken-away", "the white part e² belongs to e₁² too: take it away before the flicker part is scaled");
    public static readonly SlipKind SwappedResistors =
        new("swapped-resistors", "the two resistors were exchanged: the gain is 1 + Rf/Rg");
    public static readonly SlipKind TwoPiTooMuch =
        new("two-pi-too-much", "R·C is the time constant itself; 1/f_c is 2π times as long");
    public static readonly SlipKind FullScaleTaken =
        new("full-scale-taken", "that is the ratio of a full-scale sine; this one stays below it");
    public static readonly SlipKind PowerForBit =
        new("power-for-bit", "one more bit doubles a voltage, which is 6.02 dB, not the 3.01 dB of a doubled power");
    public static readonly SlipKind NoiseOfOneElectrode =
        new("noise-of-one-electrode", "the noise of one electrode was counted: a channel has two, and their variances add");
    public static readonly SlipKind NoSeries = new("no-series-resistance", "R_s, in series with the pair, was left out");
    public static readonly SlipKind SwappedCapacitors =
        new("swapped-capacitors", "the two capacitors were exchanged: both resistors load the one to common, C2");
    public static readonly SlipKind EqualResistors =
        new("equal-resistors", "½·√(C1/C2) holds for equal resistors; these differ");
    public static readonly SlipKind OneResistorOfTwo =
        new("one-resistor-of-two", "C2 is loaded by R1 + R2, not by R2 alone");
    public static readonly SlipKind NoPi = new("no-pi", "the time constant is Q/(π·f0): the π was left out");
    public static readonly SlipKind TwoTooMuch =
        new("two-too-much", "the amplitude's time constant is Q/(π·f0), not Q/(2π·f0)");
    public static readonly SlipKind NoGroundElectrode =
        new("no-ground-electrode", "the ground electrode, in series with the resistor, was left out");
    public static readonly SlipKind OnePoleOfTwo = new("one-pole-of-two", "the pole at f2 takes phase as well, and was left out");
    public static readonly SlipKind BatteryAndSkin =
        new("battery-and-skin", "neither the battery nor the skin decides: the highest voltage counts, and skin and electrode as 0 Ω");
    public static readonly SlipKind DividerAlone =
        new("divider-alone", "only the unequal electrodes were counted: what the amplifier's rejection leaves adds to it");
    public static readonly SlipKind AmplifierAlone =
        new("amplifier-alone", "only the amplifier's rejection was counted: unequal electrodes turn common mode into signal too");
    public static readonly SlipKind Asymptote =
        new("asymptote", "the straight line of n·20 dB a decade was taken, without the corner's own 3 dB");
    public static readonly SlipKind NoFactorTwo = new("no-factor-two", "the factor 2 was left out");
    public static readonly SlipKind HalfPhase =
        new("half-phase",
            "the difference of two samples is 2·sin(πf·Δt); the whole phase 2πf·Δt was taken as its half, or the other way round");
    public static readonly SlipKind AveragedRejections = new("smallest-alone", "the weakest rejection alone was counted: every path leaks");
    public static readonly SlipKind RootSumForWorst =
        new("root-sum-for-worst", "the worst case has all leaks in phase: they add one to one, not as squares");
    public static readonly SlipKind WholeImpedance =
        new("impedance-for-imbalance", "the difference of the electrodes counts, not their impedance");
    public static readonly SlipKind OneResistor = new("one-ratio", "all four resistors may be off in the worst way: 4·tol, not tol");
    public static readonly SlipKind TwoRatios = new("two-resistors", "all four resistors may be off in the worst way: 4·tol, not 2·tol");
    public static readonly SlipKind NoShared =
        new("not-shared", "the reference carries all N inputs, and the difference to one input counts");
    public static readonly SlipKind ResistanceOnly = new("capacitor-forgotten", "the capacitor across the contact was left out");
    public static readonly SlipKind NotComplex =
        new("added-as-real", "resistance and reactance stand at right angles: they do not add one to one");
    public static readonly SlipKind NoPermittivity = new("no-permittivity", "the relative permittivity was left out");
    public static readonly SlipKind OneElectrode = new("one-electrode", "a current needs two electrodes: both are in its path");
    public static readonly SlipKind BothElectrodes =
        new("both-electrodes", "one electrode was asked for, and each input draws its own current");
    public static readonly SlipKind Product = new("product-for-quotient", "quotient and product were exchanged");
    public static readonly SlipKind OnePair =
        new("one-pair", "one resistor and one capacitor were counted: both pairs count, by their geometric mean");
    public static readonly SlipKind OneSection =
        new("corner-of-one-section", "that is the corner of one section; several in a row are 3 dB down earlier");
    public static readonly SlipKind DividedByCount =
        new("divided-by-count", "n equal sections have √(2^(1/n) − 1) of one section's corner, not an n-th of it");
    public static readonly SlipKind NotPreferred =
        new("not-preferred", "the value was worked out but not rounded to a part that can be bought");
    public static readonly SlipKind NextPreferred = new("next-preferred", "not the nearest member of the series, by ratio");
    public static readonly SlipKind BandwidthForHalf = new("half-bandwidth", "Δf = f0/Q is the whole width between the −3 dB points");
    public static readonly SlipKind AveragingFactor =
        new("averaging-factor", "two averaging resistors in parallel make the loop's gain 2·Rf/Ra");
    public static readonly SlipKind NoLoop = new("no-loop", "the loop's gain was left out: the driven ground divides by 1 + T");
    public static readonly SlipKind NoIntegrator = new("integrator-forgotten", "the integrator's own 90° were left out");
    public static readonly SlipKind NotAtCrossing =
        new("phase-at-f-u", "the phase counts where the loop gain is 1, which the other poles move below f_u");
    public static readonly SlipKind WrongVoltage =
        new("not-the-highest-voltage", "a fault brings the highest voltage in the box: charger and boost converter count");
    public static readonly SlipKind SkinCounts =
        new("skin-counted", "skin and electrode count as 0 Ω: only resistors that are fitted protect");
    public static readonly SlipKind NoTolerance = new("tolerance-forgotten", "the resistor may be at its lower tolerance");
    public static readonly SlipKind NormalForFault =
        new("normal-for-fault",
            "the limit for normal operation was taken where the single-fault limit was asked for, or the other way round");
    public static readonly SlipKind OneLead = new("one-lead", "all leads that share the fault stand side by side");
    public static readonly SlipKind NoWayBack = new("no-way-back", "the current needs a way back, and what stands in that way limits it too");
    public static readonly SlipKind Judgement =
        new("judgement", "this change helps less: the solution shows the figure after each of them");
    public static readonly SlipKind Dominant = new("dominant-source", "another source is larger: the solution lists them all");
    public static readonly SlipKind ZeroPhase = new("wrong-sign", "the sign or the direction is the other way round");
}
