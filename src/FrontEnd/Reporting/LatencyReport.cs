using FrontEnd.Budgets;
using FrontEnd.Converter;
using FrontEnd.Designs;
using FrontEnd.Identity;

namespace FrontEnd.Reporting;

/// <summary>The delay from the electrode to the filtered sample, in the middle of the band and of every named band.</summary>
internal static class LatencyReport
{
    /// <summary>What is left of a sine's amplitude below which its frequency lies outside the passband; that of a band's signal, too.</summary>
    private const double LeastShare = NoiseBudget.LeastShareOfASignal;

    /// <summary>The delay in the middle of the design's band.</summary>
    public static void AddTo(ResultList list, Evaluation evaluation)
    {
        ChainDelay delay = At(evaluation, evaluation.CentreHertz);
        list.Number(
            ResultIds.Latency.Total, "delay from the electrode to the filtered sample", "", Duration.FromSeconds(delay.Total),
            Equations.Latency, () => delay.Substituted, text: delay.Parts(evaluation) + (delay.Share < LeastShare
                ? $"; outside the passband: the digital filters pass less than a tenth at {Hertz(evaluation.CentreHertz)}"
                : ""));
    }

    /// <summary>The delays in the middle of the named bands.</summary>
    public static void AddBands(ResultList list, Evaluation evaluation)
    {
        Design design = evaluation.Design;
        double nyquist = design.Converter.Rate.Hertz / 2;
        foreach (Band band in design.Bands)
        {
            ResultId id = ResultIds.Latency.Band(band.Name);
            double centre = band.Centre.Hertz;
            string name = $"delay of the whole chain in {band.Name}, at {Hertz(centre)}";
            if (nyquist <= band.Low.Hertz)
            {
                list.Missing(id, name, "", "s", Equations.Latency, Messages.NamedBandAboveHalfRate);
            }
            else if (nyquist <= centre)
            {
                list.Word(id, name, $"the band's centre lies above half the sampling rate, {Hertz(nyquist)}", Equations.Latency);
            }
            else
            {
                ChainDelay delay = At(evaluation, centre);
                string outside = evaluation.Noise.SignalInBand(band.Low.Hertz, band.High.Hertz) < LeastShare
                    ? "outside the passband: the band is filtered out"
                    : delay.Share < LeastShare
                    ? "outside the passband: less than a tenth of a sine there remains"
                    : "";
                list.Number(id, name, "", Duration.FromSeconds(delay.Total), Equations.Latency, () => delay.Substituted,
                    text: outside.Length == 0 ? null : outside);
            }
        }
    }

    /// <summary>All of it in the middle of the band [s].</summary>
    public static double Seconds(Evaluation evaluation) => At(evaluation, evaluation.CentreHertz).Total;

    private static ChainDelay At(Evaluation evaluation, double hertz)
    {
        Design design = evaluation.Design;
        AnalogDigitalConverter converter = design.Converter;
        double path = evaluation.Path.Delays(hertz).Sum();
        double own = converter.Kind == ConverterKind.DeltaSigma
            ? converter.SincOrder * (converter.Oversampling - 1) / 2.0 / converter.ModulatorClock.Hertz
            : 0;
        double share = evaluation.PathAndConverter([hertz])[0] / evaluation.GainMid * Math.Sqrt(evaluation.Digital.Power(hertz));
        return new ChainDelay(path, own, evaluation.Digital.GroupDelay(hertz), design.PacketTime?.Seconds ?? 0, share);
    }

    private static string Hertz(double hertz) => QuantityText.Format(hertz, "Hz");

    /// <summary>What the parts of the chain delay [s], and what they leave of a sine.</summary>
    private readonly record struct ChainDelay(double Path, double Converter, double Digital, double Packet, double Share)
    {
        public double Total => Path + Converter + Digital + Packet;

        public string Substituted => $"{Text(Path)} + {Text(Converter)} + {Text(Digital)} + {Text(Packet)}";

        public string Parts(Evaluation evaluation) =>
            $"path {Text(Path)}, converter {Text(Converter)}, digital filters {Text(Digital)}"
                + (evaluation.Design.PacketTime is null ? "" : $", packets {Text(Packet)}");

        private static string Text(double seconds) => QuantityText.Format(seconds, "s");
    }
}
