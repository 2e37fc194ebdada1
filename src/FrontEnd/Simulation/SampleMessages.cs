namespace FrontEnd.Simulation;

/// <summary>What is wrong with a wish for samples.</summary>
internal static class SampleMessages
{
    private const string SignalOption = "--signal", WithoutOption = "--without", LengthOption = "--length";

    public static Finding NoSignal(string word, string? near, IEnumerable<string> known) => Finding.Error("FE1090", SignalOption,
        $"`{word}` is not a signal of the simulated head", null,
        near is null ? $"write one of {string.Join(", ", known)}" : $"did you mean `{near}`? there are {string.Join(", ", known)}");

    public static Finding NoAmplitudeWanted(string word) => Finding.Error("FE1091", SignalOption,
        $"`{word}` has no amplitude", "where its input drifts follows from the design", $"write `{word}` alone");

    public static Finding NoSuchAmplitude(string word, string amplitude) => Finding.Error("FE1092", SignalOption,
        $"an amplitude of {amplitude} for `{word}` is out of range", "it must be above 0 V and at most 2 V", "use one such as `20 µV`");

    public static Finding NothingOfThatName(string name, string? near, IEnumerable<string> known) => Finding.Error("FE1093", WithoutOption,
        $"nothing in the design called `{name}` can be left out", null,
        near is null ? $"write one of {string.Join(", ", known)}" : $"did you mean `{near}`? there are {string.Join(", ", known)}");

    public static Finding NoLength(string length) => Finding.Error("FE1094", LengthOption,
        $"a length of {length} is out of range", "it must hold at least 16 samples and be at most 24 h", "use one such as `60 s`");

    public static Finding PatchWithoutAmplitude(string key, string name) => Finding.Warning("FE1095", key,
        $"the patch {name} is left out of the samples: the amplitude of its rhythm is not given", null, $"set {key}, such as `20 µV`");

    public static Finding PatchNotSeen(string key, string name) => Finding.Warning("FE1096", key,
        $"the patch {name} is left out of the samples: no channel is at a known site of the head", null,
        "name the channels' sites and the reference's");
}
