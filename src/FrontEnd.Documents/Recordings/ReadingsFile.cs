using FrontEnd.Bench;
using FrontEnd.Documents.Files;
using FrontEnd.Findings;
using FrontEnd.Quantities;
using FrontEnd.Text;

namespace FrontEnd.Documents.Recordings;

/// <summary>Readings taken at the bench: a first line <c>test,reading</c>, then a test and its reading with its unit on each
/// line.</summary>
public static class ReadingsFile
{
    /// <summary>True where the file's first line says that it holds readings.</summary>
    public static bool Is(string path) =>
        string.Equals(Path.GetExtension(path), ".csv", StringComparison.OrdinalIgnoreCase) && TextFiles.Read(path, out _) is { } text
        && CsvText.Rows(text, remarks: true).FirstOrDefault(row => row.Remark is null) is { Cells: not null } first && IsHead(first);

    /// <summary>Every reading with its test, in the order of the file, and what cannot be read.</summary>
    public static (IReadOnlyList<(BenchReading Test, IQuantity Reading)> Readings, IReadOnlyList<Finding> Findings) Read(string path,
        IReadOnlyList<BenchReading> plan)
    {
        string? text = TextFiles.Read(path, out Finding? finding);
        return text is null ? ([], [finding!]) : Parse(text, path, plan);
    }

    internal static (IReadOnlyList<(BenchReading Test, IQuantity Reading)> Readings, IReadOnlyList<Finding> Findings) Parse(string text,
        string path, IReadOnlyList<BenchReading> plan)
    {
        List<(BenchReading, IQuantity)> readings = [];
        List<Finding> findings = [];
        string[] known = [.. plan.Select(test => test.Name)];
        foreach (CsvRow row in CsvText.Rows(text, remarks: true).Where(row => row.Remark is null && !IsHead(row)))
        {
            string name = row.Cells[0].Trim(), value = string.Join(',', row.Cells.Skip(1)).Trim();
            int number = row.Line;
            if (plan.FirstOrDefault(test => string.Equals(test.Name, name, StringComparison.OrdinalIgnoreCase)) is not { } found)
            {
                findings.Add(Messages.NoTest(name, Nearest.Of(name, known), known) with { Field = "", File = path, Line = number });
                continue;
            }

            QuantityKind kind = found.Expected is null ? QuantityKind.Of<Voltage>() : QuantityKind.Of(found.Expected);
            if (value.Length == 0)
            {
                findings.Add(RecordingMessages.Reading(path, number, $"`{name}` has no reading"));
            }
            else if (QuantityText.TryParse(kind, value, out IQuantity? quantity, out ParseProblem? problem))
            {
                readings.Add((found, quantity!));
            }
            else
            {
                findings.Add(problem!.ToFinding(name, value) with { File = path, Line = number });
            }
        }

        return (readings, findings);
    }

    private static bool IsHead(CsvRow row) => row.Cells is [var test, var reading]
        && string.Equals(test.Trim(), "test", StringComparison.OrdinalIgnoreCase)
            && string.Equals(reading.Trim(), "reading", StringComparison.OrdinalIgnoreCase);
}
