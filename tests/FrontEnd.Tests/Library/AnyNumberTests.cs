using FrontEnd.Catalogue;
using FrontEnd.Designs;
using FrontEnd.Digital;
using FrontEnd.Fields;
using FrontEnd.Findings;
using FrontEnd.Reporting;
using FrontEnd.Results;
using FrontEnd.Topologies;
using Xunit;

namespace FrontEnd.Tests.Library;

/// <summary>A file's numbers are checked while it is read; those of a design made in code are what they are.</summary>
public class AnyNumberTests
{
    private static readonly Design Whole = new()
    {
        Channels = 2, Electrodes = new() { ActiveBuffer = new(), ReferenceBuffer = new() },
        Stages = [new GainStage { Name = "gain" }, new SallenKeySection { Name = "section" }, new RcSection { Name = "rc" }],
        Digital = [new DigitalHighPass { Name = "high-pass" }, new DigitalNotch { Name = "notch" }],
        Montage = new() { Sites = ["O1", "O2"], Reference = "A1" },
    };

    /// <summary>A number cast to a choice is none of those that are worked out.</summary>
    [Fact]
    public void Evaluate_AnyChoiceThatIsNone_IsAFindingAndThrowsNothing()
    {
        Assert.True(Evaluator.Evaluate(Whole).HasFigures);
        Field<Design>[] choices = [.. DesignFields.Of(Whole).Where(field => field.Kind == FieldKind.Choice && field.Choices[^1].Value is Enum)];
        Assert.InRange(choices.Length, 10, 100);
        foreach (Field<Design> field in choices)
        {
            Design design = field.Set(Whole, Enum.ToObject(field.Choices[^1].Value.GetType(), 99));
            Assessment assessment = Evaluator.Evaluate(design);
            Assert.False(assessment.HasFigures || assessment.AllRequirementsMet, field.Key);
            Assert.Contains(assessment.Findings, finding => finding.Severity == Severity.Error && finding.Field == field.Key && finding.Message.Contains("`99`", StringComparison.Ordinal));
        }
    }

    [Fact]
    public void Evaluate_AnyFieldBeyondItsRange_IsAFindingAndThrowsNothing()
    {
        Assert.True(Evaluator.Evaluate(Whole).HasFigures);
        foreach (Field<Design> field in DesignFields.Of(Whole).Where(field => field.IsNumeric))
        {
            FieldRange range = field.Range!.Value;
            foreach (double value in new[] { range.Least - 1 - Math.Abs(range.Least), (2 * range.Greatest) + 1, 1e300 })
            {
                Design design = field.WithSiValue(Whole, value);
                if (FieldText.CheckRange(field, field.Get(design)) is null)
                {
                    // Some ranges have no end that a number lies beyond.
                    continue;
                }

                Assessment assessment = Evaluator.Evaluate(design);
                Assert.False(assessment.HasFigures, $"{field.Key} = {value}");
                Assert.Contains(assessment.Findings, finding => finding.Severity == Severity.Error && finding.Field == field.Key);
            }
        }
    }
}
