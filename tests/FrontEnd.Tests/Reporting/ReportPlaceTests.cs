using FrontEnd.Findings;
using FrontEnd.Reporting;
using Xunit;

namespace FrontEnd.Tests.Reporting;

/// <summary>A figure stands in the report that its id names.</summary>
public class ReportPlaceTests
{
    [Fact]
    public void Reports_OfAllDesigns_AddTheirOwnFiguresOnly() => Assert.All(Designs.All, design =>
    {
        Evaluation evaluation = new(design);
        ResultList list = new();
        List<Finding> findings = [];
        Own("gain", () => GainReport.AddTo(list, evaluation));
        Own("noise", () => NoiseReport.AddTo(list, evaluation));
        Own("converter", () => ConverterReport.AddTo(list, evaluation));
        Own("mains", () => MainsReport.AddTo(list, evaluation));
        Own("drive", () => DriveReport.AddTo(list, evaluation));
        Own("levels", () => LevelsReport.AddTo(list, evaluation));
        Own("input", () => InputReport.AddTo(list, evaluation));
        Own("alias", () => AliasReport.AddTo(list, [], evaluation));
        Own("latency", () => LatencyReport.AddTo(list, evaluation), () => FilterReport.AddTo(list, findings, evaluation));
        Own("skew", () => SkewReport.AddTo(list, design));
        Own("safety", () => SafetyReport.AddTo(list, findings, evaluation));
        Own("montage", () => MontageReport.AddTo(list, findings, evaluation));
        Own("contact", () => ContactReport.AddTo(list, findings, evaluation));
        Own("open", () => OpenReport.AddTo(list, evaluation));

        void Own(string family, Action add, Action? before = null)
        {
            before?.Invoke();
            int count = list.Results.Count;
            add();
            Assert.All(list.Results.Skip(count), result => Assert.StartsWith(family + ".", result.Id.Text, StringComparison.Ordinal));
        }
    });
}
