namespace FrontEnd.Text;

/// <summary>Messages of the evaluation: FE04xx.</summary>
internal static partial class Messages
{
    public const string NamedBandAboveHalfRate = "FE0401";
    public const string NotQuantisationLimited = "FE0402";
    public const string IntegralNotConverged = "FE0403";
    public const string HarmonicsUnreported = "FE0404";
    public const string CannotEvaluate = "FE0405";
    public const string MainsEverywhere = "FE0406";
    public const string NotSettled = "FE0407";
    public const string EarthedRecorder = "FE0408";
    public const string ContactCheckInBand = "FE0410";
    public const string MontageSites = "FE0411";
    public const string DrivenGroundOscillates = "FE0412";
    public const string NoGroundToDrive = "FE0413";
    public const string SharedFaultWithoutReturn = "FE0414";

    internal static Finding BandTooHigh(string band, string low, string half) => new(
        NamedBandAboveHalfRate, Severity.Warning, "bands", $"band `{band}` starts at {low}, which is not below half the sampling rate, {half}",
        "above half the rate nothing can be told from what folds", "raise converter.rate, or leave the band out");

    internal static Finding FewSteps(string rms, string lsb) => new(
        NotQuantisationLimited, Severity.Warning, DesignKeys.Converter.Bits,
        $"noise at the converter is {rms} rms, below half a step of {lsb}",
        "quantisation noise is white only where other noise exceeds about half a step (from memory)",
        "raise the gain before the converter, or use one with more bits");

    internal static Finding NotConverged(string what) => new(
        IntegralNotConverged, Severity.Warning, "", $"the integral of {what} did not reach its tolerance",
        "a response is extremely narrow there", "widen what is narrower than a millionth of its frequency");

    internal static Finding Fails(string problem) => new(
        CannotEvaluate, Severity.Error, "", $"the design cannot be evaluated: {problem}", null,
        "check the values; a network with no resistance anywhere has no solution");

    internal static Finding TooMuchMains(string text) => new(
        MainsEverywhere, Severity.Warning, "mains", $"the recording holds mains {text}",
        "what lies outside the band is still in the samples: on the screen, and for whatever reads them", null);

    internal static Finding DoesNotSettle(string what) => new(
        NotSettled, Severity.Warning, "digital", $"the recording after {what} never settles",
        "a stage or a digital filter keeps oscillating", "check the stages' gains and the digital filters' poles");

    internal static Finding StaysAtLimit(string step, string node, string at, string limit) => new(
        NotSettled, Severity.Warning, at, $"after an electrode offset of {step} nothing more is recorded: `{node}` stays at its limit",
        $"the offset would need {limit}", at == DesignKeys.Amplifier.Gain
            ? "lower amplifier.gain"
            : "lower the gain ahead of it, or ac-couple a stage ahead of it");

    internal static Finding Earthed(string capacitance) => new(
        EarthedRecorder, Severity.Warning, DesignKeys.Mains.AmplifierToEarth, $"the amplifier's common is tied to earth by {capacitance}",
        "nearly all of the body's displacement current then flows through the ground electrode, and the isolation that protects the wearer is gone",
        "this is a case for calculation, not a way to use the device: run it on battery with no wire to anything");

    internal static Finding NoReturnPath() => new(
        SharedFaultWithoutReturn, Severity.Warning, DesignKeys.Electrodes.GroundElectrode,
        "the current of a fault that all leads share is not computed: it has no known return path",
        "the box floats and there is no ground electrode, so all leads go to the same voltage together",
        "see safety.fault_current, whose current returns through another lead");

    internal static Finding CheckCurrentInBand(string frequency) => new(
        ContactCheckInBand, Severity.Warning, DesignKeys.ContactCheck.Frequency,
        $"the contact check's current stays on at {frequency}, inside the band", null,
        "switch it off while recording, or move it out of the band and away from the mains");

    internal static Finding Oscillates(string margin) => new(
        DrivenGroundOscillates, Severity.Warning, "ground-drive", $"the driven ground oscillates: its phase margin is {margin}",
        "noise and mains figures are those of a steady state that an oscillating loop never reaches",
        "lower ground-drive.unity-gain-frequency, or the resistance in the ground lead");

    internal static Finding NothingToDrive() => new(
        NoGroundToDrive, Severity.Warning, DesignKeys.GroundDrive.Kind, "the ground is driven, but there is no ground electrode",
        "without that electrode the drive has no effect and no figures",
        "set electrodes.ground, or set ground-drive.kind to passive");

    internal static Finding SiteCount(int sites, int channels) => new(
        MontageSites, Severity.Warning, DesignKeys.Montage.Sites, $"{sites} sites are named for {channels} channels",
        "unnamed sites are numbered; names without a channel are left out", "name one site for each channel");
}
