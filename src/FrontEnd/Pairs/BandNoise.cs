using FrontEnd.Budgets;
using FrontEnd.Designs;
using FrontEnd.Reporting;

namespace FrontEnd.Pairs;

/// <summary>The front end's noise in the bands that are asked about: a design's, or what was said of one electrode's path.</summary>
internal sealed class BandNoise
{
    private readonly Evaluation? _evaluation;
    private readonly double? _path;
    private readonly double _halfRate = double.PositiveInfinity;

    public BandNoise(PairsQuestion question, IReadOnlyList<Band> bands)
    {
        _path = question.Noise?.Volts;
        if (_path is null && question.Design is { } design)
        {
            // The budget's integrals end where a band does: a band that the design does not report is put among them.
            Band[] more = [.. bands.Where(band => !design.Bands.Any(one => one.Low == band.Low && one.High == band.High))];
            _halfRate = design.Converter.Rate.Hertz / 2;
            _evaluation = new Evaluation(design with { Bands = [.. design.Bands, .. more] });
        }
    }

    /// <summary>True where next to nothing of a band is recorded.</summary>
    public bool IsFilteredOut(Frequency low, Frequency high) =>
        _evaluation is not null && (_halfRate <= low.Hertz || _evaluation.Noise.SignalInBand(low.Hertz, high.Hertz) < NoiseBudget.LeastShareOfASignal);

    /// <summary>Noise of a derivation; null where nothing is known of it.</summary>
    public VoltageRms? Of(CandidatePair pair, Frequency low, Frequency high)
    {
        if (_evaluation is null)
        {
            return _path is { } volts ? VoltageRms.FromVolts(volts * Math.Sqrt(pair.Derivation.PowerSum)) : null;
        }

        if (_halfRate <= low.Hertz)
        {
            return null;
        }

        // A pair that the design does not have is taken for one of its channels, whose two electrodes' paths have half of its power each.
        return VoltageRms.FromVolts(pair.Weights.Count > 0 ? DerivedNoise.InBand(_evaluation, low.Hertz, high.Hertz).Rms(pair.Weights)
            : _evaluation.Noise.InBand(low.Hertz, high.Hertz) * Math.Sqrt(pair.Derivation.PowerSum / 2));
    }
}
