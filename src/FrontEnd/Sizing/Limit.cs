using FrontEnd.Designs;
using FrontEnd.Electrodes;
using FrontEnd.Reporting;

namespace FrontEnd.Sizing;

/// <summary>A requirement that may be relaxed: how it is read from a request, and the request with another value in its place.</summary>
/// <param name="Key">The key that sets it.</param>
/// <param name="IsGreatest">True where a value must not be above the limit, false where it must not be below.</param>
/// <param name="Lifted">A limit that stops nothing [SI].</param>
/// <param name="IsWhole">True for a number of pieces.</param>
/// <param name="Get">The limit in force [SI]; null where nothing is asked.</param>
/// <param name="With">The request with another limit [SI].</param>
/// <param name="Of">A number as the quantity that it is a limit of.</param>
internal sealed record Limit(string Key, bool IsGreatest, double Lifted, bool IsWhole, Func<SizingRequest, double?> Get,
    Func<SizingRequest, double, SizingRequest> With, Func<double, IQuantity?> Of)
{
    public const string BatteryLife = "sizing.battery-life", Parts = "sizing.parts";

    /// <summary>All of them. What protects the wearer is not among them.</summary>
    public static readonly IReadOnlyList<Limit> All =
    [
        Volts(DesignKeys.Requirements.Noise, VoltagePeakToPeak.FromVolts, NoiseOf, (r, v) => r with { Noise = v }),
        Volts(DesignKeys.Requirements.MainsAtElectrodes, VoltageRms.FromVolts, request => request.Fixed.Requirements.MainsAtElectrodes.Volts,
            (r, v) => r with { MainsAtElectrodes = v }),
        Volts(DesignKeys.Requirements.MainsRecorded, VoltageRms.FromVolts,
            request => Judge.RecordedLimit(request.Fixed).Volts, (r, v) => r with { MainsRecorded = v }),
        AtLeast(DesignKeys.Requirements.Offset, Voltage.FromVolts, request => request.Fixed.Requirements.Offset.Volts,
            (r, v) => r with { Offset = v }),
        AtLeast(DesignKeys.Requirements.Headroom, Decibels.FromStated, request => request.Fixed.Requirements.Headroom.Value,
            (r, v) => r with { Headroom = v }),
        AtLeast(DesignKeys.Requirements.Fold, Decibels.FromStated, request => request.Fixed.Requirements.Fold.Value,
            (r, v) => r with { Fold = v }),
        AtLeast(DesignKeys.Requirements.PhaseMargin, Angle.FromDegrees, request => request.Fixed.Requirements.PhaseMargin.Degrees,
            (r, v) => r with { PhaseMargin = v }),
        new(BatteryLife, false, 0, false, request => request.BatteryLife?.Seconds,
            (request, value) => request with { BatteryLife = Duration.FromSeconds(value) }, value => Duration.FromSeconds(value)),
        new(Parts, true, int.MaxValue, true, request => request.Parts, (request, value) => request with { Parts = (int)value },
            _ => null),
    ];

    public static Limit? Find(string key) => All.FirstOrDefault(limit => limit.Key == key);

    /// <summary>A limit as it is written in a file.</summary>
    public string Text(double value, int digits = 6) => Of(value) is { } quantity ? QuantityText.FormatTrimmed(quantity, digits)
        : QuantityText.FormatTrimmed(value, "1", 9);

    /// <summary>The request without this limit.</summary>
    public SizingRequest Lift(SizingRequest request) => Get(request) is null ? request : With(request, Lifted);

    /// <summary>True where a value breaks the limit that a request sets.</summary>
    public bool IsBroken(SizingRequest request, double value) => Get(request) is { } limit && (IsGreatest ? limit < value : value < limit);

    /// <summary>True where a value can be set as a limit: a headroom below 0 dB is clipping, whatever is asked.</summary>
    public bool CanBe(double value) => double.IsFinite(value) && (IsGreatest ? value <= Lifted : Lifted <= value);

    /// <summary>How far a value is from a limit: 0 where it keeps it, 1 for e times (or 8.7 dB, or a radian) too far.</summary>
    public double Excess(SizingRequest request, double value)
    {
        if (!IsBroken(request, value))
        {
            return 0;
        }

        double limit = Get(request)!.Value;
        double scale = IsLogarithmic ? 20 / Math.Log(10) : Key == DesignKeys.Requirements.PhaseMargin ? 180 / Math.PI : 0;
        return 0 < scale ? Math.Abs(limit - value) / scale
            : Math.Log(IsGreatest ? value / limit : limit / Math.Max(value, 1e-3 * limit));
    }

    /// <summary>Rounded to three digits towards the looser side.</summary>
    public double Rounded(double value)
    {
        double scale = IsWhole ? 1 : Math.Pow(10, Math.Floor(Math.Log10(Math.Max(1e-300, Math.Abs(value)))) - 2), steps = value / scale;
        return value == 0 ? 0 : (IsGreatest ? Math.Ceiling(steps - 1e-9) : Math.Floor(steps + 1e-9)) * scale;
    }

    /// <summary>A limit that a value found misses by a little: what must be reached next to count as better.</summary>
    public double Tighter(double value) => IsWhole ? value - 1
        : IsGreatest ? value * 0.995
        : IsLogarithmic || Key == DesignKeys.Requirements.PhaseMargin ? value + 0.05 : value * 1.005;

    /// <summary>A little looser.</summary>
    public double Looser(double value, double share) => Rounded(value + (Math.Abs(value) * (IsGreatest ? share : -share)));

    private bool IsLogarithmic => Key is DesignKeys.Requirements.Headroom or DesignKeys.Requirements.Fold;

    private static Limit Volts<T>(string key, Func<double, T> make, Func<SizingRequest, double?> get, Func<Requirements, T, Requirements> with)
        where T : struct, IQuantity => new(key, true, 1, false, get,
            (request, value) => request with { Fixed = request.Fixed with { Requirements = with(request.Fixed.Requirements, make(value)) } },
            value => make(value));

    private static Limit AtLeast<T>(string key, Func<double, T> make, Func<SizingRequest, double?> get, Func<Requirements, T, Requirements> with)
        where T : struct, IQuantity => new(key, false, 0, false, get,
            (request, value) => request with { Fixed = request.Fixed with { Requirements = with(request.Fixed.Requirements, make(value)) } },
            value => make(value));

    private static double? NoiseOf(SizingRequest request) => request.Fixed.Requirements.Noise?.Volts
        ?? (request.Fixed.Electrodes.Contact == ContactKind.Wet ? Judge.DefaultNoise(request.Fixed).Volts : null);
}
