#:project ../../src/FrontEnd/FrontEnd.csproj

// Designs a low-pass by what it has to do, and prints the parts to build it of: dotnet run designs/code/filter.cs
using FrontEnd.DesignedFilters;
using FrontEnd.Filters;
using FrontEnd.Findings;
using FrontEnd.Quantities;
using FrontEnd.Text;

FilterAnswer answer = new FilterWish
{
    Family = FilterFamily.Butterworth,
    Shape = FilterShape.LowPass,
    Corners = [Frequency.FromHertz(100)],
    StopEdges = [Frequency.FromHertz(400)],
    Attenuation = Decibels.FromStated(40),
}.Design();
DesignedSections? filter = answer.IsUsable ? DesignedSections.Of(answer, new FilterParts()) : null;
foreach (Finding finding in filter?.Findings ?? answer.Findings)
{
    Console.WriteLine($"{finding.Code} {finding.Severity}: {finding.Message}");
}

if (filter?.LowPass is { } built)
{
    Console.WriteLine($"order {answer.Choice?.Order}, -3 dB at {QuantityText.Format(built.HalfPower)} as built");
    foreach (BuiltSection section in built.Sections)
    {
        Console.WriteLine($"{section.Kind}: {string.Join(", ", section.Parts.Select(part => $"{part.Name} {QuantityText.FormatPart(part.Value)}"))}");
    }
}
