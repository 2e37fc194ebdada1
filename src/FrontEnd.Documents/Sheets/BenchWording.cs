using FrontEnd.Bench;

namespace FrontEnd.Documents.Sheets;

/// <summary>A test at the bench in words: the same in the command and on the sheet.</summary>
internal static class BenchWording
{
    /// <summary>The reading to expect.</summary>
    public static string Expected(BenchReading test) => test.Expected is null
        ? "no figure"
        : Bound(test) + QuantityText.Format(test.Expected);

    /// <summary>The steps as headings.</summary>
    public static string Heading(BenchStep step) => step switch
    {
        BenchStep.BeforePower => "before power",
        BenchStep.Power => "power on",
        BenchStep.RestingVoltages => "dc at the test points, at rest",
        BenchStep.Faults => "dc through the electrodes, supply at its highest",
        BenchStep.Noise => "noise",
        BenchStep.Gain => "gain, response, polarity",
        BenchStep.Hum => "hum",
        BenchStep.Further => "further tests, for a first board",
        _ => throw new ArgumentOutOfRangeException(nameof(step), step, "Step is not handled."),
    };

    /// <summary>A step as programs read it.</summary>
    public static string Word(BenchStep step) => step switch
    {
        BenchStep.BeforePower => "before-power",
        BenchStep.Power => "power",
        BenchStep.RestingVoltages => "resting-voltages",
        BenchStep.Faults => "faults",
        BenchStep.Noise => "noise",
        BenchStep.Gain => "gain",
        BenchStep.Hum => "hum",
        BenchStep.Further => "further",
        _ => throw new ArgumentOutOfRangeException(nameof(step), step, "Step is not handled."),
    };

    /// <summary>What to suspect first on either side; "" for nothing.</summary>
    public static string IfOff(BenchReading test) => string.Join("; ", test.IfOff.GroupBy(one => one.IsAbove).Select(side =>
        (side.Key switch { true => "above: ", false => "below: ", null => "" }) + side.First().Text));

    private static string Bound(BenchReading test) => !test.IsBound ? "" : test.Greatest is null ? "at least " : "at most ";

    /// <summary>The readings that agree, in as few words as a narrow column has room for.</summary>
    public static string Range(BenchReading test)
    {
        if (test.Expected is null)
        {
            return test.Remark ?? "no figure";
        }

        string unit = test.Expected.SiUnit;
        return (test.Least, test.Greatest) switch
        {
            ({ } least, { } greatest) when least == -greatest => $"±{QuantityText.Format(greatest, unit)}",
            ({ } least, { } greatest) => $"{QuantityText.Format(test.Expected)} ({Ends(QuantityText.Format(test.Expected), QuantityText.Format(least, unit), QuantityText.Format(greatest, unit))})",
            ({ } least, null) => $"at least {QuantityText.Format(least, unit)}",
            (null, { } greatest) => $"at most {QuantityText.Format(greatest, unit)}",
            _ => QuantityText.Format(test.Expected),
        };
    }

    /// <summary>Whose readings these are, where channels are unlike each other.</summary>
    public static string OfChannel(string channel) =>
        $"Readings are those of channel {channel}, which has the most noise of the board; channels with other buffers or electrodes of their own read differently.";

    /// <summary>The readings that agree, and why they may differ.</summary>
    public static string Agrees(BenchReading test)
    {
        string unit = test.Expected!.SiUnit;
        string range = (test.Least, test.Greatest) switch
        {
            ({ } least, { } greatest) => $"{QuantityText.Format(least, unit)} to {QuantityText.Format(greatest, unit)}",
            ({ } least, null) => $"at least {QuantityText.Format(least, unit)}",
            (null, { } greatest) => $"at most {QuantityText.Format(greatest, unit)}",
            _ => "any reading",
        };
        return test.Tolerance.Length == 0 ? range : $"{range}; {test.Tolerance}";
    }

    /// <summary>Both ends of a range; their unit is left out where it is the expected reading's.</summary>
    private static string Ends(string expected, string least, string greatest)
    {
        (string unit, string own) = (Unit(expected), Unit(least));
        return own.Length > 0 && own == Unit(greatest) && (unit == own || unit.StartsWith(own + " ", StringComparison.Ordinal))
            ? $"{least[..^(own.Length + 1)]} to {greatest[..^(own.Length + 1)]}"
            : $"{least} to {greatest}";

        static string Unit(string text) => text.IndexOf(' ') is var blank and > 0 ? text[(blank + 1)..] : "";
    }

    /// <summary>One row of the further tests: what to set up, do and read; what to expect; the test's word and its figure.</summary>
    public static Row Whole(BenchReading test) => new(
    [
        $"{test.Title}: {test.Fixture}; {test.Setting}",
        test.Expected is null
            ? test.Remark ?? "no figure"
            : $"{Expected(test)} ({Agrees(test)})" + (test.Remark is null ? "" : $"; {test.Remark}"),
        test.Id is { } id ? $"{test.Name}, {id}" : test.Name,
    ]);
}
