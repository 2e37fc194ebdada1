using FrontEnd.Bench;
using FrontEnd.Documents.Files;

namespace FrontEnd.Documents.Recordings;

/// <summary>Readings taken at the bench: a first line <c>test,reading</c>, then a test and its reading with its unit on each
/// line.</summary>
internal static class ReadingsFile
{
    /// <summary>True where the first row says that readings follow.</summary>
    public static bool Is(TextReader text)
    {
        CsvReader reader = new(text, remarks: true, longest: 4096);
        while (reader.Next())
        {
            if (!reader.IsRemark)
            {
                return IsHead(reader.Cells());
            }
        }

        return false;
    }

    /// <summary>Every reading with its test, in the order of the file, and what cannot be read.</summary>
    public static (IReadOnlyList<(BenchReading Test, IQuantity Reading)> Readings, IReadOnlyList<Finding> Findings) Parse(string text,
        string path, IReadOnlyList<BenchReading> plan)
    {
        List<(BenchReading, IQuantity)> readings = [];
        List<Finding> findings = [];
        string[] known = [.. plan.Select(test => test.Name)];
        foreach (CsvRow row in CsvText.Rows(text, remarks: true).Where(row => row.Remark is null && !IsHead(row.Cells)))
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

    private static bool IsHead(IReadOnlyList<string> cells) => cells is [var test, var reading]
        && string.Equals(test.Trim(), "test", StringComparison.OrdinalIgnoreCase)
            && string.Equals(reading.Trim(), "reading", StringComparison.OrdinalIgnoreCase);
}
