using FrontEnd.Citations;
using FrontEnd.Identity;

namespace FrontEnd.Reporting;

/// <summary>The equations behind the results, each with its source: one table, so that every view prints the same.</summary>
internal static class Equations
{
    public static readonly SourceRef Derived = new("derived");
    public static readonly SourceRef CommonPractice = new("common-practice");
    public static readonly SourceRef FromMemory = new("from-memory");

    public static readonly Equation GainMid = new("G_mid = |H_path·H_adc| at √(f1·f2)", Derived);
    public static readonly Equation CentreFrequency = new("√(f1·f2)", Derived);
    public static readonly Equation GainTotal = new("|H_path| at √(f1·f2), nodal analysis of each block", Derived);

    public static readonly Equation Noise = new("σ² = 1/G_mid² · ∫ |H_dig|²·[S·|H_adc|² + F + LSB²/(6·fs) + 2σ_adc²/fs] df over f1…f2",
        Derived);
    public static readonly Equation PeakToPeak = new($"{TradeConstants.NoisePeakToPeak}·σ", new SourceRef("baker-2008"));
    public static readonly Equation Thermal = new("σ² = 1/G_mid² · ∫ |H_dig·H_adc|²·4kT·Re Z·|H|² df",
        new SourceRef("op-amps-for-everyone", "sec. 10.3.2"));
    public static readonly Equation ElectrodeNoise = new("S = 4kT·Re Z + K/f^α for each electrode, carried to the input",
        new SourceRef("huigen-2002"));
    public static readonly Equation NoiseFigure = new("20·log10(total / electrodes' thermal and excess noise)", Derived);
    public static readonly Equation OverFloor = new("20·log10(total / thermal floor)", Derived);
    public static readonly Equation SourceNoise = new("σ² = 1/G_mid² · ∫ |H_dig·H_adc|²·S_source·|H|² df", Derived);
    public static readonly Equation Folded = new("σ² = 1/G_mid² · ∫ |H_dig|²·F df, F = Σ S(k·fs ± f)", Derived);
    public static readonly Equation Quantisation = new("σ² = 1/G_mid² · ∫ |H_dig|²·LSB²/12/(fs/2) df",
        new SourceRef("quantisation-mt-001"));
    public static readonly Equation ConverterNoise = new("σ² = 1/G_mid² · ∫ |H_dig|²·σ_adc²/(fs/2) df", Derived);
    public static readonly Equation Sweeps = new("N = (S·σ/A)²", CommonPractice);
    public static readonly Equation SignalToNoise = new("20·log10(A·√(∫|H_path·H_adc·H_dig|² df/(f_b − f_a))/G_mid / σ in the band)", Derived);

    public static readonly Equation HeadRadius = new("R with 4·R·∫ √(((a_K − a_S)·sin 2t)² + sin²α(t)) dt = U over 0…π/2, α = a_S·cos²t + a_K·sin²t", Derived);
    public static readonly Equation HeadRingFront = new("a_S = 0.4·S/R", Derived);
    public static readonly Equation HeadRingSide = new("a_K = 0.4·K/R", Derived);
    public static readonly Equation Seen = new("V_d = Σ w_i·V_i, V = m·A/(4πσ_1R²)·Σ n·H_n·f^(n−1)·g_n·P_n(x)", Derived);
    public static readonly Equation SeenOfAWall = new("V_d = Σ w_i·V_i, V = m·A/(4πσ_1R²)·t·r̂·Σ H_n·f^(n−1)·P_n′(x)", Derived);
    public static readonly Equation Kept = new("k = V_d/V_A", Derived);
    public static readonly Equation ReferenceTakes = new("t = 1 − k", Derived);
    public static readonly Equation AgainstEars = new("V_d/(V_A − ½·V_A1 − ½·V_A2)", Derived);
    public static readonly Equation OfPeak = new("|V_d|/V_0", Derived);
    public static readonly Equation Density = new("m = amplitude/|V_d0 of m = 1|", Derived);
    public static readonly Equation HalfRegion = new("4πr_c²·count/10,000 of |V_d| ≥ ½·max", Derived);
    public static readonly Equation Background = new("B·√(wᵀρw), B² = S_10·10^χ·(f_2^(1−χ) − f_1^(1−χ))/(1−χ)", Derived);
    public static readonly Equation SeenOverNoise = new("s·|V_d/V_d0|/√(B²·wᵀρw + e²)", Derived);
    public static readonly Equation SeenOverNoiseLevel = new("20·log10(s·|V_d/V_d0|/√(B²·wᵀρw + e²))", Derived);
    public static readonly Equation SkullSpan = new("least and greatest with σ_brain/σ_skull = 15, 20, 80", new SourceRef("oostendorp-2000"));
    public static readonly Equation SiteCorrelation = new("w_aᵀMw_b/√(w_aᵀMw_a·w_bᵀMw_b), M = B²ρ and the front end's noise", Derived);
    public static readonly Equation DerivedNoise = new("√(own²·Σc² + shared²·(Σc)²) in the band", Derived);
    public static readonly Equation HeadTape = new("share of the arc · its length", new SourceRef("roth-10-20"));
    public static readonly Equation HeadSkin = new("R·θ", Derived);
    public static readonly Equation HeadStraight = new("2R·sin(θ/2)", Derived);

    public static readonly Equation Lsb = new("LSB/G_mid", Derived);
    public static readonly Equation FullScale = new("FS/G_mid", Derived);
    public static readonly Equation DynamicRange = new("20·log10(FS_rti/(2√2·σ))", Derived);
    public static readonly Equation Enob = new("(DR − 1.76)/6.02", new SourceRef("quantisation-mt-001"));
    public static readonly Equation NoiseFreeBits = new($"log2(FS_rti/({TradeConstants.NoisePeakToPeak}·σ))",
        new SourceRef("delta-sigma-sbas350g", "Tables 7-1 and 7-2, their definitions"));
    public static readonly Equation BitsNeeded = new("least N with √(1 + q²/σ0²) below the setting, q from LSB = FS/2^N", Derived);

    public static readonly Equation FitsSupply = new("FS ≤ V_lowest for a single-ended input, 2·V_lowest for a differential one", CommonPractice);

    public static readonly Equation BodyCommonMode = new("|v(B) − v(C)| with V_mains at M, leads uncoupled",
        new SourceRef("metting-van-rijn-1990", "sec. 2.1"));
    public static readonly Equation Divider = new("|v(A2) − v(R2)|/|H_front|, leads uncoupled",
        new SourceRef("haberman-spinelli-2010", "Eq. 1"));
    public static readonly Equation Leads = new("|Δ(v(A2) − v(R2))|/|H_front| that the leads' coupling adds",
        new SourceRef("huhta-webster-1973"));
    public static readonly Equation Imbalance = new("|v(A2) − v(R2)|/|H_front|, everything coupled", Derived);
    public static readonly Equation AmplifierRejection = new("|½(v(A2) + v(R2))|/CMRR(f)/|H_front|, CMRR = CMRR_dc/√(1 + (f/f_cm)²)",
        CommonPractice);
    public static readonly Equation Loop = new("2πf·B·A", Derived);
    public static readonly Equation MainsTotal = new("imbalance + amplifier + loop", Derived);
    public static readonly Equation MainsRss = new("√(imbalance² + amplifier² + loop²)", Derived);
    public static readonly Equation SystemCmrr = new("20·log10(body-to-common/(divider + amplifier))", Derived);
    public static readonly Equation CmrrNeeded = new("20·log10(body-to-common/residue)", Derived);
    public static readonly Equation Signs = new("the signs of mismatch, R and C tolerance with the largest mains.total", Derived);
    public static readonly Equation HarmonicInput = new("imbalance + amplifier + loop at h·f0 with V_h and B_h", new SourceRef("en-50160"));
    public static readonly Equation HarmonicConverter = new("input·|H_path·H_adc|/G_mid at h·f0", Derived);
    public static readonly Equation HarmonicRecorded = new("larger of converter·|H_dig| at h·f0·(1 ± δ)", Derived);
    public static readonly Equation LandsAt = new("|f − fs·round(f/fs)|", CommonPractice);
    public static readonly Equation Recorded = new("Σ recorded over the harmonics that can land in f1…f2", Derived);
    public static readonly Equation RecordedEverywhere = new("Σ recorded over all harmonics", Derived);

    public static readonly Equation UnityGain = new("highest f with |T| = 1, T = K·½(v(A2) + v(R2))/v(D)", Derived);
    public static readonly Equation PhaseMargin = new("180° + arg T there, followed from dc", Derived);
    public static readonly Equation WorstMargin = new("least phase margin over C body-to-earth 100 pF…1 nF × R electrode 1 kΩ…1 MΩ, battery and earthed", Derived);
    public static readonly Equation DriveGain = new("20·log10|T| at f0", Derived);
    public static readonly Equation DriveSwing = new("√2·Σ_h |v(D) − v(C)| + dc from the electrodes' offset", Derived);

    public static readonly Equation Headroom = new("20·log10(swing/(dc + signal + mains + noise peaks))", Derived);
    public static readonly Equation FirstToClip = new("the node with the least headroom", Derived);
    public static readonly Equation OffsetSurvived = new("least (swing − everything else)/dc gain over the nodes", Derived);
    public static readonly Equation LargestSignal = new("least (swing − everything else)/gain over the nodes", Derived);
    public static readonly Equation Recovery = new(
        "last k/fs after a step of the offset at which the recording is more than 10 µV, at the input, from its end; every node limited to its swing",
        Derived);
    public static readonly Equation BiasOffset = new("bias currents through the input network at dc: the amplifier's two inputs draw equal currents, buffers add by size", Derived);
    public static readonly Equation InputImpedance = new("1/|Y| of one input to common at f0: bias, shunt, lead and amplifier", Derived);
    public static readonly Equation BufferImpedance = new("1/|Y| of the active electrode's buffer at its input at f0: R_in and C_in to common", Derived);
    public static readonly Equation GainLimit = new("(V_s/2 − h)/(V_off + V_sig)", Derived);

    public static readonly Equation Fold = new("fs − f2", CommonPractice);
    public static readonly Equation FoldAttenuation = new("20·log10(G_mid/|H_path·H_adc|) at the fold frequency", Derived);
    public static readonly Equation AliasAttenuation = new("20·log10(G_mid/|H_path·H_adc|) at its frequency before sampling", Derived);
    public static readonly Equation ModulatorFold = new("f_mod − f2", Derived);
    public static readonly Equation AliasResidue = new("amplitude·|H_path·H_adc|/G_mid where it lands", Derived);
    public static readonly Equation LineResidue = new("A·|H_path·H_adc|/G_mid before sampling·|H_dig| where it lands", Derived);
    public static readonly Equation InterfererResidue = new("√∫ A²/(f_high − f_low)·|H_path·H_adc·H_dig/G_mid|² over what lands in the band", Derived);

    public static readonly Equation MinusThree = new("|H|² = ½ of its value at the band's centre", Derived);
    public static readonly Equation StopBandTurn = new("least |H| of the anti-alias section above its poles, before it rises", Derived);
    public static readonly Equation StopBandFloor = new("20·log10(|H(0)|/|H|), the least above that frequency, to 1 GHz", Derived);
    public static readonly Equation AnalogNotchDepth = new("20·log10(|H(0)|/|H|) at h·f0·(1 ± δ), h the mains harmonic it is tuned to, the smaller", Derived);
    public static readonly Equation AnalogNotchCorners = new("the same, the least over every part at ± its tolerance", Derived);
    public static readonly Equation Settling = new(
        "time from a step until within 0.1 % of the end value, or of the greatest value where the end is below 1e-4 of it", Derived);
    public static readonly Equation GroupDelay = new("−dφ/dω at √(f1·f2)", Derived);
    public static readonly Equation RingTime = new("4.6·τ, τ = −1/(fs·ln r): time to 1 %",
        new SourceRef("orfanidis-1996", "Eqs. 8.2.22 and 8.2.23"));
    public static readonly Equation NotchDepth = new("−20·log10|H| at f0·(1 ± δ), the smaller", Derived);
    public static readonly Equation PoleMovement = new("max |p_rounded − p|, p = −a1/2 ± √(a1²/4 − a2)", Derived);
    public static readonly Equation DigitalDcGain = new("Π (b0 + b1 + b2)/(1 + a1 + a2), coefficients as rounded", Derived);
    public static readonly Equation FixedRoundOff = new("LSB/G_mid·√(Σ 2^(−2F)/6/fs·∫|H_behind/A|² df over f1…f2)",
        new SourceRef("oppenheim-schafer", "sec. 6.9"));
    public static readonly Equation SimulatedRoundOff = new("LSB/G_mid·rms in f1…f2 of the fixed-point filter minus the same filter without rounding, on the design's own simulated noise", Derived);
    public static readonly Equation SingleRoundOff = new("LSB/G_mid·√(Σ ulp²/12·Σh²), the dc at the converter in its sums", Derived);
    public static readonly Equation DeadBand = new(
        "LSB/G_mid·⌊2^(−F)·½·Σ Σ|h_i| + ½·[F > 0]⌋, h_i from the rounding of section i to the recorded output", Derived);
    public static readonly Equation OverflowBits = new("⌈log2 Σ|h|⌉ from the filter's input to each section's output, the largest",
        new SourceRef("oppenheim-schafer", "sec. 6.9"));
    public static readonly Equation Latency = new("group delay of path, converter and digital filters + packet time", Derived);
    public static readonly Equation SkewLeak = new("2·sin(πf·Δt)", Derived);
    public static readonly Equation MontageNoise = new("√(σ_own²·Σc² + σ_shared²·(Σc)²)", Derived);
    public static readonly Equation OffsetToSpare = new("V_survived − V_required", Derived);
    public static readonly Equation ChannelVerdict = new("the worst of the channel's verdicts, against the design's limits", Derived);
    public static readonly Equation MontageMains = new(
        "|Σc·(v_i − v_R,i)/H_i| + Σ|c|·(V_amp,i + V_loop,i), the largest over the electrodes' and parts' signs", Derived);
    public static readonly Equation SharedReference = new("σ_shared·|Σc|", Derived);
    public static readonly Equation Correlation = new("σ_shared²/σ²", Derived);
    public static readonly Equation DerivedCorrelation = new("(σ_own²·Σc·d + σ_shared²·Σc·Σd)/(σ_c·σ_d)", Derived);

    public static readonly Equation FaultCurrent = new("I = V_max/R_series, skin and body counted as 0 Ω",
        new SourceRef("iec-60601-1", "limits; the quotient is Ohm's law"));
    public static readonly Equation SharedFaultByGround = new("I = V_max/(1/(n/R_active + 1/R_reference) + R_ground), all measuring leads at V_max, back through the ground lead", new SourceRef("iec-60601-1", "limits; the quotient is Ohm's law"));
    public static readonly Equation SharedFaultByEarth = new("I = V_max·(n/R_active + 1/R_reference), all measuring leads at V_max, back through the earth", new SourceRef("iec-60601-1", "limits; the quotient is Ohm's law"));
    public static readonly Equation SeriesNeeded = new("R = V_max/I_limit/(1 − tolerance)",
        new SourceRef("iec-60601-1", "limits; the quotient is Ohm's law"));
    public static readonly Equation ContactAdds =
        new("I/√2·|v(A2) − v(R2)|/I/|H_front|·|H_path·H_adc·H_dig|/G_mid where it lands", Derived);
    public static readonly Equation Beat = new("|f_check − f_h|, each where it lands: |f − fs·round(f/fs)|", CommonPractice);
    public static readonly Equation ContactReading = new("I·|Z1 + R1 + Z2 + R2|", new SourceRef("luck-2005"));
    public static readonly Equation Open = new("dc and mains with that electrode's impedance without bound, inputs held at the rails", Derived);
    public static readonly Equation OpenNode = new("|dc| + √2·Σ_h of the mains with that electrode off, each node passing on what its swing leaves", Derived);

    public static readonly Equation ReferenceNoise = new("reference noise·|dc at the converter|/V_ref/G_mid", Derived);
    public static readonly Equation Ripple = new("ripple/10^(PSRR/20)", CommonPractice);
    public static readonly Equation MidRail = new("mid-rail noise/10^(CMRR_system/20)", Derived);
    public static readonly Equation ContactAfter = new("f·(Rs + Rd + Rd2), f the contact's factor at the time; the time constants stay", Derived);
    public static readonly Equation ExcessAfter = new("√(f²·K·∫ f^-α df) over f1…f2, f the factor of the excess noise at the time", Derived);
    public static readonly Equation NoiseAfter = new("the noise at the electrodes, computed with the contact at that time", Derived);
    public static readonly Equation MainsAfter = new("the mains recorded, computed with the contact at that time", Derived);
    public static readonly Equation LimitOfUse =
        new("the last value at which every verdict that is met still is, by bisection, nothing else changed", Derived);
    public static readonly Equation SupplyCurrent = new("Σ of all parts", Derived);
    public static readonly Equation BatteryLife = new("capacity·usable share/current", CommonPractice);
    public static readonly Equation BitRate = new("channels·fs·bits·(1 + overhead)", Derived);

    /// <summary>Electrode thermal noise, amplifier and resistor rows: the formula of the row's hand figure is beside it.</summary>
    public static Equation ForSource(SourceId source) =>
        source == SourceId.Folded
            ? Folded
            : source == SourceId.Quantisation
            ? Quantisation
            : source == SourceId.Converter
            ? ConverterNoise
            : SourceNoise;
}
