using System.Numerics;
using FrontEnd.Converter;
using FrontEnd.Designs;

namespace FrontEnd.Tests.Plain;

/// <summary>Every figure of a design a second time: slow, plain, from the calculation model's text. A number is a double; "unbounded" and other words are texts.</summary>
internal sealed partial class PlainFigures
{
    private readonly Dictionary<string, object> _figures = [];
    private readonly Design _design;
    private readonly PlainPath _path;
    private readonly PlainDigital[] _digital;
    private readonly double _f1;
    private readonly double _f2;
    private readonly double _mid;
    private readonly double _fs;
    private readonly double _gainMid;

    private PlainFigures(Design design)
    {
        (_design, _f1, _f2, _fs) = (design, design.Band.Low.Hertz, design.Band.High.Hertz, design.Converter.Rate.Hertz);
        _mid = Math.Sqrt(_f1 * _f2);
        _path = new PlainPath(design);
        _digital = [.. design.Digital.Select(stage => PlainDigital.Of(stage, _fs))];
        _gainMid = _path.Whole(_mid).Magnitude * _path.Adc(_mid);
    }

    public static IReadOnlyDictionary<string, object> Of(Design design)
    {
        PlainFigures plain = new(design);
        plain.Gain();
        plain.Noise();
        plain.Mains();
        plain.Drive();
        plain.Levels();
        plain.Aliases();
        plain.Filters();
        plain.StagesAlone();
        plain.Recovery();
        plain.Safety();
        plain.SupplyAndPower();
        plain.Montage();
        plain.Contact();
        return plain._figures;
    }

    private double Step => _design.Converter.Lsb?.Volts ?? (_design.Converter.FullScale.Volts / Math.Pow(2, _design.Converter.Bits));

    private double Clock => _fs * _design.Converter.Oversampling;

    private bool IsDeltaSigma => _design.Converter.Kind == ConverterKind.DeltaSigma;

    private Complex Digital(double hertz) => _digital.Aggregate(Complex.One, (product, filter) => product * filter.At(hertz));

    /// <summary>Where it is after sampling.</summary>
    private double Lands(double hertz) => Math.Abs(hertz - (_fs * Math.Round(hertz / _fs)));

    private static double Decibels(double ratio) => 20 * Math.Log10(ratio);

    /// <summary>A ratio in decibels; beyond 300 dB it has no bound.</summary>
    private static object Bounded(double decibels) => double.IsNaN(decibels) || 300 < Math.Abs(decibels) ? "unbounded" : decibels;

    private double Figure(string id) => (double)_figures[id];

    private void Gain()
    {
        _figures["gain.mid"] = _gainMid;
        _figures["gain.mid_frequency"] = _mid;
        _figures["gain.total_analog"] = _path.Whole(_mid).Magnitude;
        _figures["converter.lsb"] = Step / _gainMid;
        _figures["converter.full_scale"] = _design.Converter.FullScale.Volts / _gainMid;
        _figures["skew.leak"] = 2 * Math.Sin(Math.PI * _design.Mains.Frequency.Hertz * _design.Converter.Skew.Seconds);
    }
}
