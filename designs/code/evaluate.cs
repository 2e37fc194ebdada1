#:project ../../src/FrontEnd/FrontEnd.csproj

// Evaluates a design that is made in code, changes it, and tells what the change did: dotnet run designs/code/evaluate.cs
using FrontEnd.Advice;
using FrontEnd.Catalogue;
using FrontEnd.Converter;
using FrontEnd.Designs;
using FrontEnd.Fields;
using FrontEnd.Findings;
using FrontEnd.Quantities;
using FrontEnd.Reporting;
using FrontEnd.Results;
using FrontEnd.Text;

// What is not said has a default. A quantity knows its unit, so that kilohms cannot be taken for ohms.
Design design = new()
{
    Name = "two-channel headset",
    Channels = 2,
    Amplifier = new() { Gain = 3.5 },
    Converter = new() { Kind = ConverterKind.DeltaSigma, Bits = 24, FullScale = VoltagePeakToPeak.FromVolts(2.4) },
    Input = new() { SeriesResistor = Resistance.FromKilohms(68) },
    GroundDrive = new() { SeriesResistor = Resistance.FromKilohms(100) },
    Supply = new() { Lowest = Voltage.FromVolts(2.7), Highest = Voltage.FromVolts(3.3) },
};
Assessment assessment = Evaluator.Evaluate(design);
foreach (Result result in assessment.Judged)
{
    Console.WriteLine($"{result.Verdict.Kind,-9} {result.Id}: {result.Verdict.Because}");
}

// A design that contradicts itself throws nothing: its findings say what is wrong, where, and what to do.
foreach (Finding finding in assessment.Findings)
{
    Console.WriteLine($"{finding.Code} {finding.Severity} {finding.Field}: {finding.Message}");
}

// What would help most, each suggestion evaluated before it is made.
foreach (Result result in Advisor.Advise(assessment).Judged)
{
    if (result.Verdict.Improvement is { } improvement)
    {
        Console.WriteLine($"{result.Id}: {improvement.Change} makes it {QuantityText.Format(improvement.After)}, {improvement.Verdict}");
    }
}

// A design is never changed: another one is made, by property or by the key that a design file has.
Design other = design with { Amplifier = design.Amplifier with { InputNoise = VoltageNoiseDensity.FromNanovoltsPerRootHertz(20) } };
Field<Design> resistor = DesignFields.Find(other, "input.series-resistor")!;
other = resistor.WithSiValue(other, 100e3);
Assessment changed = Evaluator.Evaluate(other);
foreach (string id in new[] { "noise.total", "safety.fault_current" })
{
    Result before = assessment[id], after = changed[id];
    Console.WriteLine($"after the change, {before.Name}: {QuantityText.Format(before.Value)} -> {QuantityText.Format(after.Value)}");
}
