using FrontEnd.Quantities;

namespace FrontEnd.Text;

/// <summary>The table of kinds: units, spellings, examples.</summary>
internal static class Kinds
{
    // Which prefixes a unit takes is narrower than SI allows: nobody here means a megavolt or a megafarad,
    // so "10 MV" and "10 MF" are asked about and not believed.
    private static readonly string[] OhmSpellings = ["Ω", "ohm", "ohms", "Ohm", "R"];

    private static readonly string[] RootHertz = ["√Hz", "rtHz", "sqrt(Hz)", "√(Hz)", "sqrtHz", "rt(Hz)", "Hz^0.5", "Hz^½", "Hz½", "Hz^(1/2)"];

    // IEC 60062 letters. K and k are both read; R is the decimal point of a resistance in ohms; L47 is 0.47 mΩ.
    private static readonly Dictionary<char, int> ResistanceLetters =
        new() { ['L'] = -3, ['m'] = -3, ['R'] = 0, ['Ω'] = 0, ['K'] = 3, ['k'] = 3, ['M'] = 6, ['G'] = 9, ['T'] = 12 };

    private static readonly Dictionary<char, int> CapacitanceLetters =
        new() { ['p'] = -12, ['n'] = -9, ['µ'] = -6, ['u'] = -6, ['m'] = -3, ['F'] = 0 };

    private static readonly KindInfo[] Table =
    [
        new(QuantityKind.Voltage, typeof(Voltage), si => Voltage.FromVolts(si), NumberForm.Prefixed, "a voltage", "a number and a voltage unit",
            ["40 µV", "40 uV"], [new(["V", "volt", "volts", "Vdc", "VDC"], "fpnµmk")]),
        new(QuantityKind.VoltageRms, typeof(VoltageRms), si => VoltageRms.FromVolts(si), NumberForm.Prefixed, "an rms voltage", "a number and a voltage unit",
            ["1.5 µV rms", "230 V"], [new(["V", "Vrms", "VRMS", "Vr.m.s.", "volt", "volts"], "fpnµmk")], suffix: " rms"),
        new(QuantityKind.VoltagePeakToPeak, typeof(VoltagePeakToPeak), si => VoltagePeakToPeak.FromVolts(si), NumberForm.Prefixed, "a peak-to-peak voltage", "a number and a voltage unit",
            ["1.5 µV p-p", "1.5 uVpp"], [new(["V", "Vpp", "Vp-p", "VPP", "VP-P", "Vpk-pk", "Vpeak-to-peak", "Vpkpk"], "fpnµmk")], suffix: " p-p"),
        new(QuantityKind.Current, typeof(Current), si => Current.FromAmperes(si), NumberForm.Prefixed, "a current", "a number and a current unit",
            ["50 µA", "50 uA"], [new(["A", "amp", "amps"], "fpnµmk")]),
        new(QuantityKind.Resistance, typeof(Resistance), si => Resistance.FromOhms(si), NumberForm.Prefixed, "a resistance", "a number and a resistance unit",
            ["4.7 kΩ", "4k7"], [new(OhmSpellings, "µmkMGT")], bare: true, barePrefixes: "mkMGT", codeLetters: ResistanceLetters),
        new(QuantityKind.Capacitance, typeof(Capacitance), si => Capacitance.FromFarads(si), NumberForm.Prefixed, "a capacitance", "a number and a capacitance unit",
            ["220 nF", "4n7"], [new(["F", "farad", "farads"], "fpnµm")], barePrefixes: "pnµm", codeLetters: CapacitanceLetters),
        new(QuantityKind.Frequency, typeof(Frequency), si => Frequency.FromHertz(si), NumberForm.Prefixed, "a frequency", "a number and a frequency unit",
            ["50 Hz", "500 S/s"], [new(["Hz", "S/s", "SPS", "Sps", "Sa/s", "samples/s", "hertz"], "µmkMG")]),
        new(QuantityKind.Duration, typeof(Duration), si => Duration.FromSeconds(si), NumberForm.Time, "a time", "a number and a unit of time",
            ["20 ms", "8 h"], [new(["s", "sec", "second", "seconds"], "fpnµm"), new(["min", "minute", "minutes"], "", 0, 60), new(["h", "hour", "hours"], "", 0, 3600), new(["d", "day", "days"], "", 0, 86400)]),
        new(QuantityKind.Charge, typeof(Charge), si => Charge.FromCoulombs(si), NumberForm.Capacity, "a charge", "a number and a unit of charge",
            ["200 mAh", "1.2 Ah"], [new(["C", "coulomb", "coulombs"], "fpnµmk"), new(["Ah"], "", 0, 3600), new(["mAh"], "", 0, 3.6), new(["µAh", "uAh"], "", -3, 3.6)]),
        new(QuantityKind.Length, typeof(Length), si => Length.FromMetres(si), NumberForm.Prefixed, "a length", "a number and a unit of length",
            ["12 mm", "1.2 m"], [new(["m", "metre", "metres", "meter", "meters"], "pnµmck")]),
        new(QuantityKind.Area, typeof(Area), si => Area.FromSquareMetres(si), NumberForm.Square, "an area", "a number and a unit of area",
            ["20 cm²", "20 cm2"], [new(["m²", "m2"], "µmc", Power: 2)]),
        new(QuantityKind.MagneticFluxDensity, typeof(MagneticFluxDensity), si => MagneticFluxDensity.FromTeslas(si), NumberForm.Prefixed, "a magnetic flux density", "a number and a unit of flux density",
            ["0.1 µT", "0.1 uT"], [new(["T", "Trms", "tesla"], "fpnµm")], suffix: " rms"),
        new(QuantityKind.Temperature, typeof(Temperature), si => Temperature.FromKelvins(si), NumberForm.Plain, "a temperature", "a number and a unit of temperature",
            ["25 °C", "298.15 K"], [new(["°C", "C", "degC", "℃"], Offset: Celsius), new(["K", "kelvin"])]),
        new(QuantityKind.Ratio, typeof(Ratio), si => Ratio.FromFraction(si), NumberForm.Fraction, "a ratio", "a number with or without a percent sign",
            ["5 %", "0.05"], [new(["×", "x", "X", "V/V"]), new(["%", "percent"], "", -2), new(["‰"], "", -3), new(["ppm"], "", -6)], bare: true),
        new(QuantityKind.Decibels, typeof(Decibels), si => Decibels.FromStated(si), NumberForm.Plain, "a ratio in decibels", "a number of decibels",
            ["-110 dB", "-3 dB"], [new(["dB"])]),
        new(QuantityKind.Angle, typeof(Angle), si => Angle.FromDegrees(si), NumberForm.Degrees, "an angle", "a number of degrees",
            ["45°", "45 deg"], [new(["°", "deg", "degree", "degrees"]), new(["rad"], "", 0, 180 / Math.PI)]),
        new(QuantityKind.BitCount, typeof(BitCount), si => BitCount.FromBits(si), NumberForm.Count, "a number of bits", "a number of bits",
            ["12 bit", "12"], [new(["bit", "bits", "b"])], bare: true),
        new(QuantityKind.DataRate, typeof(DataRate), si => DataRate.FromBitsPerSecond(si), NumberForm.Prefixed, "a data rate", "a number of bits per second",
            ["96 kbit/s", "96 kbps"], [new(["bit/s", "bits/s", "bps"], "kMG")]),
        new(QuantityKind.VoltageNoiseDensity, typeof(VoltageNoiseDensity), si => VoltageNoiseDensity.FromVoltsPerRootHertz(si), NumberForm.Prefixed, "a voltage noise density", "a number and a unit of voltage noise density",
            ["50 nV/√Hz", "50 nV/rtHz"], [new(PerRootHertz("V"), "fpnµm")]),
        new(QuantityKind.CurrentNoiseDensity, typeof(CurrentNoiseDensity), si => CurrentNoiseDensity.FromAmperesPerRootHertz(si), NumberForm.Prefixed, "a current noise density", "a number and a unit of current noise density",
            ["100 fA/√Hz", "100 fA/rtHz"], [new(PerRootHertz("A"), "afpnµm")]),
        new(QuantityKind.ExcessNoise, typeof(ExcessNoise), si => ExcessNoise.FromVoltsSquaredPerHertz(si), NumberForm.Scientific, "an excess noise density", "a number and the unit V²/Hz",
            ["2.5e-12 V²/Hz", "2.5e-12 V^2/Hz"], [new(["V²/Hz", "V2/Hz"], "nµm", Power: 2)]),
    ];

    private static readonly Dictionary<Type, KindInfo> ByType = Table.ToDictionary(info => info.Type);
    private static readonly Dictionary<QuantityKind, KindInfo> ByKind = Table.ToDictionary(info => info.Kind);

    /// <summary>0 °C in kelvins, exact by definition. SI Brochure, 9th edition (2019), section 2.3.1; from memory.</summary>
    internal const double Celsius = 273.15;

    internal static IReadOnlyList<KindInfo> All => Table;

    internal static KindInfo Of(QuantityKind kind) =>
        ByKind.TryGetValue(kind, out KindInfo? info) ? info : throw new ArgumentOutOfRangeException(nameof(kind), kind, "Not a kind of quantity.");

    internal static KindInfo Of(Type type) =>
        Find(type) ?? throw new ArgumentOutOfRangeException(nameof(type), type, "Not a quantity that has a text.");

    internal static KindInfo? Find(Type type) => ByType.GetValueOrDefault(type);

    /// <summary>The first kind whose quantities print this SI unit; null for none. V finds the plain voltage.</summary>
    internal static KindInfo? FindUnit(string siUnit) => siUnit switch
    {
        "K" => null,   // a plain number of kelvins is a difference more often than a temperature
        _ => Array.Find(Table, info => string.Equals(info.Units[0].Spellings[0], siUnit, StringComparison.Ordinal)),
    };

    private static string[] PerRootHertz(string unit) =>
        [.. RootHertz.Select(root => $"{unit}/{root}")];
}
