using FrontEnd.Converter;
using FrontEnd.Designs;
using FrontEnd.Identity;

namespace FrontEnd.Reporting;

/// <summary>The delay from the electrode to the filtered sample.</summary>
internal static class LatencyReport
{
    /// <summary>The path's delay is the filters' result and must stand in the list already.</summary>
    public static void AddTo(ResultList list, Evaluation evaluation)
    {
        double pathDelay = list[ResultIds.Filter.Path.GroupDelay].Si;
        Design design = evaluation.Design;
        AnalogDigitalConverter converter = design.Converter;
        double own = converter.Kind == ConverterKind.DeltaSigma
            ? converter.SincOrder * (converter.Oversampling - 1) / 2.0 / converter.ModulatorClock.Hertz
            : 0;
        double digital = evaluation.Digital.GroupDelay(evaluation.CentreHertz), packet = design.PacketTime?.Seconds ?? 0;
        list.Number(
            ResultIds.Latency.Total, "delay from the electrode to the filtered sample", "",
            Duration.FromSeconds(pathDelay + own + digital + packet), Equations.Latency,
            $"{QuantityText.Format(pathDelay, "s")} + {QuantityText.Format(own, "s")} + {QuantityText.Format(digital, "s")} + {QuantityText.Format(packet, "s")}",
            text: $"path {QuantityText.Format(pathDelay, "s")}, converter {QuantityText.Format(own, "s")}, digital filters {QuantityText.Format(digital, "s")}{(design.PacketTime is null ? "" : $", packets {QuantityText.Format(packet, "s")}")}");
    }
}
