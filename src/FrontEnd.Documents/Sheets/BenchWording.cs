using FrontEnd.Bench;

namespace FrontEnd.Documents.Sheets;

/// <summary>A test at the bench in words: the same in the command and on the sheet.</summary>
internal static class BenchWording
{
    /// <summary>The reading to expect.</summary>
    public static string Expected(BenchReading test) => test.Expected is null
        ? "no figure"
        : (test.IsBound ? "at most " : "") + QuantityText.Format(test.Expected);

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

    /// <summary>One row of the sheet: what to set up, do and read; what to expect; the test's word and its figure.</summary>
    public static Row Row(BenchReading test) => new(
    [
        $"{test.Title}: {test.Fixture}; {test.Setting}",
        test.Expected is null
            ? test.Remark ?? "no figure"
            : $"{Expected(test)} ({Agrees(test)})" + (test.Remark is null ? "" : $"; {test.Remark}"),
        test.Id is { } id ? $"{test.Name}, {id}" : test.Name,
    ]);

    /// <summary>What to look for when the device is first worn.</summary>
    public static Row Row(WornReading worn) => new(
    [
        worn.What, (worn.Figure.State == ResultState.Number ? worn.Before + " " : "") + Wording.Value(worn.Figure), worn.Figure.Id.Text,
    ]);
}
