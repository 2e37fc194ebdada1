using FrontEnd.Digital;
using FrontEnd.Filters;
using FrontEnd.Reporting;

namespace FrontEnd.Bench;

/// <summary>What may be wrong with the digital filters, each fault as the spectrum that shows with it.</summary>
internal sealed class DigitalFaults
{
    /// <summary>Factors by which the corners of a filter are off, as those of coefficients for another rate.</summary>
    private static readonly double[] CornerFactors =
    [
        0.05, 0.1, 0.15, 0.2, 0.25, 0.3, 0.4, 0.5, 0.6, 0.7, 0.78, 50.0 / 60, 0.9, 0.95, 1.05, 1.1, 60.0 / 50, 1.3, 1.45, 1.6, 1.8, 2, 2.3, 2.6, 3, 4, 5, 7, 10, 15, 20,
    ];

    private static readonly double[] MainsFrequencies = [50, 60];

    /// <summary>Powers of f/fc in the loss of filters of first, second and fourth order.</summary>
    private static readonly int[] LowPassPowers = [2, 4, 8], HighPassPowers = [2, 4];

    private readonly PredictedSpectrum _predicted;
    private readonly SecondOrderSections[] _filters;
    private readonly IReadOnlyList<DigitalStage> _stages;
    private readonly bool _isFiltered;
    private readonly SpectrumRows _rows;
    private readonly double _step, _rate, _floor;
    private readonly double[] _density;

    /// <summary>Each filter's response at every quarter of a bin.</summary>
    private readonly double[][] _power;

    /// <param name="predicted">What the recording is held against.</param>
    /// <param name="evaluation">The design with its fixture.</param>
    /// <param name="isFiltered">True where the design's filters should be on.</param>
    /// <param name="rows">The recording's.</param>
    /// <param name="step">Distance of the spectrum's bins [Hz].</param>
    /// <param name="density">The predicted density at them [V²/Hz].</param>
    /// <param name="floor">What it holds of rounding in the file [V²/Hz].</param>
    public DigitalFaults(PredictedSpectrum predicted, Evaluation evaluation, bool isFiltered, SpectrumRows rows, double step, double[] density, double floor)
    {
        (_predicted, _isFiltered, _rows, _step, _density) = (predicted, isFiltered, rows, step, density);
        (_filters, _stages, _rate) = ([.. evaluation.Digital.Filters], evaluation.Digital.Stages, evaluation.Design.Converter.Rate.Hertz);
        _floor = floor;
        _power = [.. _filters.Select(filter => Enumerable.Range(0, (density.Length * PredictedSpectrum.Parts) + 1)
            .Select(i => filter.PowerResponse(Math.Min(_rate / 2, i * step / PredictedSpectrum.Parts), _rate)).ToArray())];
    }

    public IEnumerable<FaultFamily> All()
    {
        yield return ExtraLowPass();
        yield return ExtraHighPass();
        yield return Listed("a notch at {0} Hz that the design does not have",
            MainsFrequencies.Where(centre => centre < _rate / 2).Select(centre => (Behind(Notch.WithQ(Frequency.FromHertz(centre), 10, Frequency.FromHertz(_rate))), centre)));
        if (_filters.Length == 0)
        {
            yield break;
        }

        yield return Listed(_isFiltered ? "all of them off" : "all of them on", [(at => _isFiltered ? 1 : Whole(at), 1)]);
        if (!_isFiltered)
        {
            yield break;
        }

        for (int i = 0; i < _filters.Length; i++)
        {
            int which = i;
            string name = _stages[i].Name;
            if (1 < _filters.Length)
            {
                yield return Listed($"{name} off", [(at => Others(which, at), 1)]);
            }

            yield return Listed($"{name} with corners at {{0}} times the design's, as for another rate",
                CornerFactors.Select(factor => ((Func<int, double>)(at => Others(which, at) * Moved(which, at / factor)), factor)));
        }

        if (1 < _filters.Length)
        {
            yield return Listed("all corners at {0} times the design's, as for another rate",
                CornerFactors.Select(factor => ((Func<int, double>)(at => Whole(at / factor)), factor)));
        }

        yield return RoundOff();
    }

    private MixedFaults RoundOff() => new(SuspectKind.DigitalFilter, "rounding inside the filters, {0} times the predicted noise where it is strongest",
        [.. _rows.Hertz.Select(_ => 1.0)], Relative(_rows.Hertz, _predicted.RoundingGain), 1e-3, 1e9, Math.Sqrt);

    /// <summary>Something behind the filters over the predicted density in the rows, its largest 1.</summary>
    private double[] Relative(double[] hertz, Func<double, double> density)
    {
        double[] over = [.. hertz.Select((one, i) => density(one) / _rows.Bins[i].Average(bin => _density[bin - 1]))];
        double most = over.Max();
        return [.. over.Select(one => one / most)];
    }

    private ListedFaults ExtraLowPass()
    {
        double[] corners = [.. Enumerable.Range(0, 10).Select(i => 4 * Math.Pow(_rate / 2 / 4, i / 10.0))];
        return new ListedFaults(SuspectKind.DigitalFilter, "a low-pass of {0} Hz that the design does not have",
            [.. corners.SelectMany(corner => LowPassPowers.Select(order => _rows.Hertz.Select(hertz => -10 * Math.Log10(1 + Math.Pow(hertz / corner, order))).ToArray()))],
            [.. corners.SelectMany(corner => new[] { corner, corner, corner })]);
    }

    private ListedFaults ExtraHighPass()
    {
        double[] corners = [0.3, 0.5, 1, 2, 3, 5, 8, 12, 20, 30];
        return new ListedFaults(SuspectKind.DigitalFilter, "a high-pass of {0} Hz that the design does not have",
            [.. corners.SelectMany(corner => HighPassPowers.Select(order => _rows.Hertz.Select(hertz => -10 * Math.Log10(1 + Math.Pow(corner / hertz, order))).ToArray()))],
            [.. corners.SelectMany(corner => new[] { corner, corner })]);
    }

    private ListedFaults Listed(string words, IEnumerable<(Func<int, double> Power, double Size)> faults)
    {
        (Func<int, double> Power, double Size)[] all = [.. faults];
        return new ListedFaults(SuspectKind.DigitalFilter, words,
            [.. all.Select(fault => _rows.Over([.. _predicted.Seen(_step, _density.Length, fault.Power).Select(density => density + _floor)], _density))],
            [.. all.Select(fault => fault.Size)]);
    }

    private Func<int, double> Behind(Biquad extra)
    {
        SecondOrderSections section = new([extra]);
        return at => (_isFiltered ? Whole(at) : 1) * section.PowerResponse(Math.Min(_rate / 2, at * _step / PredictedSpectrum.Parts), _rate);
    }

    private double Whole(double at)
    {
        double power = 1;
        for (int i = 0; i < _power.Length; i++)
        {
            power *= Moved(i, at);
        }

        return power;
    }

    private double Others(int but, int at)
    {
        double power = 1;
        for (int i = 0; i < _power.Length; i++)
        {
            power *= i == but ? 1 : _power[i][at];
        }

        return power;
    }

    /// <summary>A filter's response between two quarters of a bin; that at half the rate beyond.</summary>
    private double Moved(int filter, double at)
    {
        double[] power = _power[filter];
        int below = (int)at;
        return power.Length - 1 <= below ? power[^1] : power[below] + ((at - below) * (power[below + 1] - power[below]));
    }
}
