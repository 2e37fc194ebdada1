namespace FrontEnd.Text;

/// <summary>The table of kinds, one row for each struct in FrontEnd.Quantities: units, spellings, examples. Nothing else lists the
/// quantities.</summary>
internal static class Kinds
{
    // Which prefixes a unit takes is narrower than SI allows: nobody here means a megavolt or a megafarad,
    // so "10 MV" and "10 MF" are asked about and not believed.
    private static readonly string[] OhmSpellings = ["Ω", "ohm", "ohms", "Ohm", "R"];

    private static readonly string[] RootHertz =
        ["√Hz", "rtHz", "sqrt(Hz)", "√(Hz)", "sqrtHz", "rt(Hz)", "Hz^0.5", "Hz^½", "Hz½", "Hz^(1/2)"];

    // IEC 60062 letters. K and k are both read; R is the decimal point of a resistance in ohms; L47 is 0.47 mΩ.
    private static readonly Dictionary<char, int> ResistanceLetters =
        new() { ['L'] = -3, ['m'] = -3, ['R'] = 0, ['Ω'] = 0, ['K'] = 3, ['k'] = 3, ['M'] = 6, ['G'] = 9, ['T'] = 12 };

    private static readonly Dictionary<char, int> CapacitanceLetters =
        new() { ['p'] = -12, ['n'] = -9, ['µ'] = -6, ['u'] = -6, ['m'] = -3, ['F'] = 0 };

    private static readonly QuantityKind[] Table =
    [
        new QuantityKind<Voltage>(Voltage.FromVolts, NumberForm.Prefixed, new Unit(["V", "volt", "volts", "Vdc", "VDC"], "fpnµmk"))
        {
            Words = "a voltage", Asked = "a number and a voltage unit", Examples = ["40 µV", "40 uV"],
        },
        new QuantityKind<VoltageRms>(VoltageRms.FromVolts, NumberForm.Prefixed,
            new Unit(["V", "Vrms", "VRMS", "Vr.m.s.", "volt", "volts", "voltrms", "voltsrms"], "fpnµmk"))
        {
            Words = "an rms voltage", Asked = "a number and a voltage unit", Examples = ["1.5 µV rms", "230 V"], Suffix = " rms",
        },
        new QuantityKind<VoltagePeakToPeak>(VoltagePeakToPeak.FromVolts, NumberForm.Prefixed,
            new Unit(["V", "Vpp", "Vp-p", "VPP", "VP-P", "Vpk-pk", "Vpeak-to-peak", "Vpkpk", "Vptp", "Vpeaktopeak", "voltspp", "voltsp-p", "voltspeak-to-peak",
                "voltspeaktopeak"], "fpnµmk"))
        {
            Words = "a peak-to-peak voltage", Asked = "a number and a voltage unit",
            Examples = ["1.5 µV p-p", "1.5 uVpp"], Suffix = " p-p",
        },
        new QuantityKind<Current>(Current.FromAmperes, NumberForm.Prefixed, new Unit(["A", "amp", "amps", "ampere", "amperes"], "fpnµmk"))
        {
            Words = "a current", Asked = "a number and a current unit", Examples = ["50 µA", "50 uA"],
        },
        new QuantityKind<Resistance>(Resistance.FromOhms, NumberForm.Prefixed, new Unit(OhmSpellings, "µmkMGT"))
        {
            Words = "a resistance", Asked = "a number and a resistance unit",
            Examples = ["4.7 kΩ", "4k7"], Bare = true, BarePrefixes = "mkMGT", CodeLetters = ResistanceLetters,
        },
        new QuantityKind<Capacitance>(Capacitance.FromFarads, NumberForm.Prefixed, new Unit(["F", "farad", "farads"], "fpnµm"))
        {
            Words = "a capacitance", Asked = "a number and a capacitance unit",
            Examples = ["220 nF", "4n7"], BarePrefixes = "pnµm", CodeLetters = CapacitanceLetters,
        },
        new QuantityKind<Frequency>(Frequency.FromHertz, NumberForm.Prefixed,
            new Unit(["Hz", "S/s", "SPS", "Sps", "Sa/s", "samples/s", "hertz"], "µmkMG"))
        {
            Words = "a frequency", Asked = "a number and a frequency unit", Examples = ["50 Hz", "500 S/s"], PlainDownTo = -3,
        },
        new QuantityKind<Duration>(Duration.FromSeconds, NumberForm.Time,
            new Unit(["s", "sec", "second", "seconds"], "fpnµm"),
            new Unit(["min", "minute", "minutes"], "", 0, 60),
            new Unit(["h", "hour", "hours"], "", 0, 3600),
            new Unit(["d", "day", "days"], "", 0, 86400))
        {
            Words = "a time", Asked = "a number and a unit of time", Examples = ["20 ms", "8 h"],
        },
        new QuantityKind<Charge>(Charge.FromCoulombs, NumberForm.Capacity,
            new Unit(["C", "coulomb", "coulombs"], "fpnµmk"),
            new Unit(["Ah"], "", 0, 3600),
            new Unit(["mAh"], "", 0, 3.6),
            new Unit(["µAh", "uAh"], "", -3, 3.6))
        {
            Words = "a charge", Asked = "a number and a unit of charge", Examples = ["200 mAh", "1.2 Ah"],
        },
        new QuantityKind<Length>(Length.FromMetres, NumberForm.Prefixed, new Unit(["m", "metre", "metres", "meter", "meters"], "pnµmck"))
        {
            Words = "a length", Asked = "a number and a unit of length", Examples = ["12 mm", "1.2 m"],
        },
        new QuantityKind<Area>(Area.FromSquareMetres, NumberForm.Square, new Unit(["m²", "m2"], "µmc", Power: 2))
        {
            Words = "an area", Asked = "a number and a unit of area", Examples = ["20 cm²", "20 cm2"],
        },
        new QuantityKind<MagneticFluxDensity>(MagneticFluxDensity.FromTeslas, NumberForm.Prefixed,
            new Unit(["T", "Trms", "tesla"], "fpnµm"))
        {
            Words = "a magnetic flux density", Asked = "a number and a unit of flux density",
            Examples = ["0.1 µT", "0.1 uT"], Suffix = " rms",
        },
        new QuantityKind<Temperature>(Temperature.FromKelvins, NumberForm.Temperature,
            new Unit(["°C", "C", "degC", "℃"], Offset: Temperature.ZeroCelsius), new Unit(["K", "kelvin"]))
        {
            Words = "a temperature", Asked = "a number and a unit of temperature", Examples = ["25 °C", "298.15 K"],
        },
        new QuantityKind<Ratio>(Ratio.FromFraction, NumberForm.Fraction,
            new Unit(["×", "x", "X", "V/V"]), new Unit(["%", "percent"], "", -2), new Unit(["‰"], "", -3), new Unit(["ppm"], "", -6))
        {
            Words = "a ratio", Asked = "a number with or without a percent sign", Examples = ["5 %", "0.05"], Bare = true,
        },
        new QuantityKind<Share>(Share.FromFraction, NumberForm.Percent,
            new Unit(["×", "x", "X"]), new Unit(["%", "percent"], "", -2), new Unit(["‰"], "", -3), new Unit(["ppm"], "", -6))
        {
            Words = "a share", Asked = "a number with or without a percent sign", Examples = ["120 %", "1.2"], Bare = true,
        },
        new QuantityKind<PlainNumber>(PlainNumber.FromNumber, NumberForm.Bare, new Unit(["×", "x", "X"]))
        {
            Words = "a number", Asked = "a number", Examples = ["12", "0.5"], Bare = true,
        },
        new QuantityKind<Decibels>(Decibels.FromStated, NumberForm.Plain, new Unit(["dB", "decibel", "decibels"]))
        {
            Words = "a ratio in decibels", Asked = "a number of decibels", Examples = ["100 dB", "-3 dB"],
        },
        new QuantityKind<Angle>(Angle.FromDegrees, NumberForm.Degrees,
            new Unit(["°", "deg", "degree", "degrees"]), new Unit(["rad", "radian", "radians"], "", 0, 180 / Math.PI))
        {
            Words = "an angle", Asked = "a number of degrees", Examples = ["45°", "45 deg"],
        },
        new QuantityKind<BitCount>(BitCount.FromBits, NumberForm.Count, new Unit(["bit", "bits", "b"]))
        {
            Words = "a number of bits", Asked = "a number of bits", Examples = ["12 bit", "12"], Bare = true,
        },
        new QuantityKind<DataRate>(DataRate.FromBitsPerSecond, NumberForm.Prefixed,
            new Unit(["bit/s", "bits/s", "bps", "b/s", "bit/sec", "bits/sec"], "kMG"),
            new Unit(["B/s", "byte/s", "bytes/s", "Bps", "byte/sec", "bytes/sec"], "kMG", 0, 8),
            new Unit(["KiB/s", "kibibyte/s", "kibibytes/s"], "", 0, 8192))
        {
            Words = "a data rate", Asked = "a number of bits per second", Examples = ["96 kbit/s", "96 kbps"],
        },
        new QuantityKind<VoltageNoiseDensity>(VoltageNoiseDensity.FromVoltsPerRootHertz, NumberForm.Prefixed,
            new Unit(PerRootHertz("V", "volt", "volts"), "fpnµm"))
        {
            Words = "a voltage noise density", Asked = "a number and a unit of voltage noise density",
            Examples = ["50 nV/√Hz", "50 nV/rtHz"],
        },
        new QuantityKind<CurrentNoiseDensity>(CurrentNoiseDensity.FromAmperesPerRootHertz, NumberForm.Prefixed,
            new Unit(PerRootHertz("A", "amp", "amps", "ampere", "amperes"), "afpnµm"))
        {
            Words = "a current noise density", Asked = "a number and a unit of current noise density",
            Examples = ["100 fA/√Hz", "100 fA/rtHz"],
        },
        new QuantityKind<ExcessNoise>(ExcessNoise.FromVoltsSquaredPerHertz, NumberForm.Scientific,
            new Unit(["V²/Hz", "V2/Hz"], "nµm", Power: 2))
        {
            Words = "an excess noise density", Asked = "a number and the unit V²/Hz", Examples = ["2.5e-12 V²/Hz", "2.5e-12 V^2/Hz"],
        },
        new QuantityKind<VoltagePowerDensity>(VoltagePowerDensity.FromVoltsSquaredPerHertz, NumberForm.SecondUnit,
            new Unit(["V²/Hz", "V2/Hz", "V^2/Hz"]), new Unit(["µV²/Hz", "uV²/Hz", "µV2/Hz", "uV2/Hz", "µV^2/Hz", "uV^2/Hz"], "", -12))
        {
            Words = "a power density", Asked = "a number and the unit µV²/Hz", Examples = ["1 µV²/Hz", "1 uV^2/Hz"],
        },
        new QuantityKind<Conductivity>(Conductivity.FromSiemensPerMetre, NumberForm.Prefixed, new Unit(["S/m"], "µm"))
        {
            Words = "a conductivity", Asked = "a number and a unit of conductivity", Examples = ["0.33 S/m", "330 mS/m"],
        },
        new QuantityKind<DipoleMoment>(DipoleMoment.FromAmpereMetres, NumberForm.Prefixed, new Unit(["A·m", "Am"], "pnµm"))
        {
            Words = "a dipole moment", Asked = "a number and a unit of dipole moment", Examples = ["10 nA·m", "10 nAm"],
        },
        new QuantityKind<DipoleDensity>(DipoleDensity.FromAmperesPerMetre, NumberForm.SecondUnit,
            new Unit(["A/m"]), new Unit(["nA·m/mm²", "nAm/mm²", "nA·m/mm2", "nAm/mm2"], "", -3))
        {
            Words = "a dipole density", Asked = "a number and the unit nA·m/mm²", Examples = ["0.1 nA·m/mm²", "0.1 nAm/mm2"],
        },
    ];

    private static readonly Dictionary<Type, QuantityKind> ByType = Table.ToDictionary(kind => kind.Type);

    internal static IReadOnlyList<QuantityKind> All => Table;

    internal static QuantityKind Of(Type type) =>
        Find(type) ?? throw new ArgumentOutOfRangeException(nameof(type), type, "Not a quantity that has a text.");

    internal static QuantityKind? Find(Type type) => ByType.GetValueOrDefault(type);

    /// <summary>The first kind that prints this SI unit; null for none. V finds the plain voltage; K finds none, as a plain number of
    /// kelvins is a difference more often than a temperature.</summary>
    internal static QuantityKind? FindUnit(string siUnit)
    {
        foreach (QuantityKind kind in Table)
        {
            if (string.Equals(kind.Units[0].Spellings[0], siUnit, StringComparison.Ordinal))
            {
                return kind;
            }
        }

        return null;
    }

    private static string[] PerRootHertz(params string[] units) =>
        [.. units.SelectMany(unit => RootHertz.Select(root => $"{unit}/{root}"))];
}
