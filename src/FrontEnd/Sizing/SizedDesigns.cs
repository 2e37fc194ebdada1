using FrontEnd.Amplifier;
using FrontEnd.Catalogue;
using FrontEnd.Converter;
using FrontEnd.Designs;
using FrontEnd.Identity;
using FrontEnd.Reporting;
using FrontEnd.Results;
using FrontEnd.Topologies;

namespace FrontEnd.Sizing;

/// <summary>A candidate that passes, as it is shown.</summary>
internal static class SizedDesigns
{
    public static SizedDesign Of(Tried tried)
    {
        (Design design, Dictionary<ResultId, Result> judged) = (tried.Design, tried.Judged);
        Result tightest = judged.Values.Where(result =>
            result.Verdict.Margin is not null && result.Verdict.Limit is { SiValue: not 0 }).MinBy(Spare) ?? judged.Values.First();
        Result mains = judged[ResultIds.Mains.Total];
        var evaluation = new Evaluation(design);
        return new SizedDesign(
            Named(design), VoltageRms.FromVolts(evaluation.Noise.Total),
            VoltageRms.FromVolts(evaluation.Noise.WithoutExcess).NoisePeakToPeak, Current.FromAmperes(SupplyReport.TotalAmperes(design)),
            tried.Candidate.Parts,
            Decibels.FromVoltageRatio(Math.Max(1e-9, mains.Verdict.Limit!.SiValue / Math.Max(1e-18, mains.Si))),
            $"{tightest.Name}: {tightest.Verdict.Because}")
        {
            Summary = Summary(design),
        };
    }

    /// <summary>What is left of the limit, as a share; decibels, degrees and bits by their own scale.</summary>
    private static double Spare(Result result) => result.Verdict.Limit switch
    {
        Decibels => result.Verdict.Margin!.Value / 20,
        BitCount => result.Verdict.Margin!.Value / 4,
        var limit => result.Verdict.Margin!.Value / Math.Abs(limit!.SiValue),
    };

    private static Design Named(Design design) =>
        DesignFields.WithoutStaleRanges(design) with { Name = design.Name.Length == 0 || design.Name == new Design().Name
            ? "sized from requirements"
            : design.Name };

    private static string Summary(Design design)
    {
        string gains = string.Join(" × ",
            new[] { QuantityText.FormatTrimmed(design.Amplifier.Gain, "1", 3) }.Concat(design.Stages.Where(stage =>
                stage.Role == StageRole.Gain).Select(stage => QuantityText.FormatTrimmed(stage.NominalGain, "1", 3))));
        Stage[] sections = [.. design.Stages.Where(stage => stage.Role == StageRole.LowPass)];
        int order = sections.Sum(stage => stage.Circuit().Capacitors);
        string filter = design.Converter.Kind == ConverterKind.DeltaSigma
            ? "RC at the pin"
            : $"order {order} {sections.MaxBy(stage => stage.Circuit().Capacitors)?.Word ?? "Sallen-Key"}";
        string ground = design.Electrodes.Ground is null
            ? "no ground electrode"
            : design.GroundDrive.Kind == GroundKind.Driven
            ? $"driven ground {QuantityText.FormatPart(design.GroundDrive.UnityGainFrequency)}"
            : "passive ground";
        string buffers = (design.Electrodes.ActiveBuffer, design.Electrodes.ReferenceBuffer) switch
        {
            (not null, not null) => "buffered electrodes, ",
            (not null, null) => "buffered active electrodes, ",
            (null, not null) => "buffered reference, ",
            _ => "",
        };
        return $"{buffers}{design.Amplifier.Card}, gain {gains}, {filter}, {design.Converter.Card}, {QuantityText.FormatPart(design.Converter.FullScale)}, at {QuantityText.FormatPart(design.Converter.Rate)}, {ground}";
    }
}
