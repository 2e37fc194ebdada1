#:project ../../src/FrontEnd/FrontEnd.csproj

// Sweeps the resistor in each lead and writes a table: what protects the wearer makes noise.
// dotnet run designs/code/sweep.cs > sweep.csv
using System.Globalization;
using FrontEnd.Catalogue;
using FrontEnd.Designs;
using FrontEnd.Fields;
using FrontEnd.Quantities;
using FrontEnd.Reporting;
using FrontEnd.Results;

string[] ids = ["noise.total", "mains.total", "safety.fault_current"];
Design design = new() { GroundDrive = new() { SeriesResistor = Resistance.FromKilohms(100) } };
Field<Design> field = DesignFields.Find(design, "input.series-resistor")!;
Assessment plain = Evaluator.Evaluate(design);
Console.WriteLine($"{field.Key} [Ω],{string.Join(',', ids.Select(id => $"{id} [{plain[id].Unit}]"))}");
foreach (double ohms in PreferredValues.Between(10e3, 220e3, PreferredSeries.E6))
{
    Assessment assessment = Evaluator.Evaluate(field.WithSiValue(design, ohms));
    double?[] row = [ohms, .. ids.Select(id => assessment.Find(id)?.Value?.SiValue)];
    Console.WriteLine(string.Join(',', row.Select(value => value?.ToString("G6", CultureInfo.InvariantCulture))));
}
