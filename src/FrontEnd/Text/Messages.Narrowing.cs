namespace FrontEnd.Text;

/// <summary>About recordings on a fixture that narrow what is not known: FE0960 to FE0966.</summary>
internal static partial class Messages
{
    public const string ContradictsFacts = "FE0960";
    public const string NothingToNarrow = "FE0961";
    public const string FixtureNeeded = "FE0962";
    public const string NoNoiseInBand = "FE0963";
    public const string RateUnknown = "FE0964";
    public const string AtLimits = "FE0965";
    public const string NotNarrowed = "FE0966";

    /// <summary>Fewer draws agree than ranges could be read from.</summary>
    internal static Finding Contradicts(string measured, string least, string greatest, int agree, int draws, int wanted, IReadOnlyList<string> facts) =>
        Finding.Error(ContradictsFacts, facts.Count == 0 ? "" : facts[0].Split(' ')[0],
            $"the recording contradicts the file: it has {measured} in the band, and the designs that the file allows give {least} to {greatest}; {agree} of {draws} agree, but {wanted} are needed",
            facts.Count == 0 ? "no stated fact would bring it closer if it were wrong: the usual ranges do not fit this device"
                : $"of the facts in the file, these would bring it closest if they were wrong: {Listed(facts).Replace(" or ", " and ", StringComparison.Ordinal)}",
            "check these facts, the unit of the samples and the fixture; if all are right, give the unknown values wider ranges of your own");

    /// <summary>A design of which every value is known.</summary>
    public static Finding AllIsKnown(string option) =>
        Finding.Error(NothingToNarrow, option, "there is nothing to narrow: every value of the design is known", "a recording narrows only what is unknown or a range",
            "leave the option out, and name the test with `--test`: the recording is then compared with the design");

    /// <summary>A recording on what, nobody has said.</summary>
    public static Finding NeedsFixture(IReadOnlyList<string> tests) =>
        Finding.Error(FixtureNeeded, "--fixture", "the fixture of the recording is not named",
            "only a recording on a known fixture, with nobody connected, narrows what is known of the device; nothing is derived from a recording of a person",
            $"give `--fixture shorted` or the resistor that was in every lead, such as `--fixture 10k`, or one of the tests {Listed(tests)} with `--test`");

    /// <summary>A test whose recording is not noise on a fixture.</summary>
    public static Finding NoNoiseTest(string name, IReadOnlyList<string> tests) =>
        Finding.Error(FixtureNeeded, "--test", $"a recording of `{name}` narrows nothing: only noise on a fixture does", null,
            $"record one of {Listed(tests)}, or name a resistor with `--fixture`");

    /// <summary>Two options that name different fixtures.</summary>
    public static Finding TwoFixtures() =>
        Finding.Error(FixtureNeeded, "--fixture", "`--test` and `--fixture` both name the fixture", null, "give one of them");

    /// <summary>A file of readings where a recording is wanted.</summary>
    public static Finding ReadingsNarrowNothing() =>
        Finding.Error(FixtureNeeded, "--measured", "a file of readings narrows nothing: only a recording does", "the uncertainty of a reading follows from the length of the record",
            "give the recording from which the reading was taken");

    internal static Finding NothingInBand(string band) =>
        Finding.Error(NoNoiseInBand, "", $"the recording has no noise between {band}", "no sample differs from the first, or what differs lies outside the band",
            "record the channel on the fixture with the device on, and its own filters off if possible");

    internal static Finding NeedsRate(string recorded) =>
        Finding.Error(RateUnknown, DesignKeys.Converter.Rate, $"converter.rate is not known, but the recording has {recorded}",
            "the recorded noise depends on it", $"set converter.rate to the recording's");

    internal static Finding StandsAtLimits(long samples) =>
        Finding.Error(AtLimits, "", $"{samples} samples are at a limit that noise would exceed", "a clipped recording has less noise than the device",
            "record again with the inputs on the fixture and inside the range");

    /// <summary>A range that the file's form has no place for.</summary>
    public static Finding NoPlace(string key) =>
        Finding.Warning(NotNarrowed, key, $"the range of {key} is not written: the file's layout has no place for the key", null, "write it by hand");
}
