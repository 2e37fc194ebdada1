namespace FrontEnd.Text;

/// <summary>All that is known about writing and reading one kind of quantity: a row of <see cref="Kinds"/>.</summary>
public abstract class QuantityKind
{
    private UnitReadings? _readings;

    /// <summary>Every kind of quantity, one for each struct in FrontEnd.Quantities.</summary>
    public static IReadOnlyList<QuantityKind> All => Kinds.All;

    /// <summary>The struct's name, by which files name the kind: "VoltageRms".</summary>
    public string Name => Type.Name;

    /// <summary>The struct.</summary>
    public abstract Type Type { get; }

    /// <summary>The unit of <see cref="FromSi"/>, as <see cref="IQuantity.SiUnit"/>: "V", "1" for a ratio.</summary>
    public string SiUnit => FromSi(0).SiUnit;

    /// <summary>What is expected, in words: "a voltage".</summary>
    public required string Words { get; init; }

    /// <summary>An example of how a quantity of this kind is written, as <c>4.7 kΩ</c>.</summary>
    public string Example => Examples[0];

    /// <summary>True where a change is told as a difference, not as a share: decibels, degrees, bits.</summary>
    public bool ByDifference => Form is NumberForm.Plain or NumberForm.Degrees or NumberForm.Count;

    /// <summary>How it is written, and a second spelling.</summary>
    public required IReadOnlyList<string> Examples { get; init; }

    /// <summary>What to write: "a number and a voltage unit".</summary>
    public required string Asked { get; init; }

    internal Unit[] Units { get; private protected init; } = [];

    internal NumberForm Form { get; private protected init; }

    /// <summary>" rms" or " p-p", after the unit in print.</summary>
    internal string Suffix { get; init; } = "";

    /// <summary>Power of ten down to which numbers below 1 are printed with decimals and no prefix: a band begins at 0.5 Hz in every book, not at
    /// 500 mHz. 0 where prefixes begin below 1.</summary>
    internal int PlainDownTo { get; init; }

    /// <summary>True where a number without unit is read in the SI unit.</summary>
    internal bool Bare { get; init; }

    /// <summary>Prefix letters that are read without unit, as 220n.</summary>
    internal string BarePrefixes { get; init; } = "";

    /// <summary>Letters of the IEC 60062 code, each with its power of ten; null where the code is not in use.</summary>
    internal IReadOnlyDictionary<char, int>? CodeLetters { get; init; }

    /// <summary>True where zero is the same in every unit, so that it may be written without one.</summary>
    internal bool ZeroNeedsNoUnit => Units[0].Offset == 0;

    /// <summary>Units to name to someone who left the unit out; all of them where they differ in their zero.</summary>
    internal IReadOnlyList<string> UnitExamples =>
        ZeroNeedsNoUnit ? [QuantityText.UnitOfExample(Example)] : [.. Units.Select(unit => unit.Spellings[0])];

    internal UnitReadings Readings => _readings ??= new UnitReadings(Units, BarePrefixes);

    /// <summary>A quantity of this kind from its value in <see cref="SiUnit"/>.</summary>
    public abstract IQuantity FromSi(double si);

    /// <summary>The kind of a quantity's type.</summary>
    public static QuantityKind Of<T>()
        where T : struct, IQuantity => Kinds.Of(typeof(T));

    /// <summary>The kind of a quantity.</summary>
    public static QuantityKind Of(IQuantity quantity) => Kinds.Of(quantity.GetType());

    /// <summary>True for a quantity whose changes are told as differences, see <see cref="ByDifference"/>.</summary>
    public static bool IsByDifference(IQuantity? quantity) => quantity is not null && Of(quantity).ByDifference;

    /// <summary>The kind of this struct; null where the type is no quantity.</summary>
    public static QuantityKind? Find(Type type) => Kinds.Find(type);

    /// <summary>The kind of this <see cref="Name"/>; null for none.</summary>
    public static QuantityKind? Find(string? name) =>
        Kinds.All.FirstOrDefault(kind => string.Equals(kind.Name, name, StringComparison.Ordinal));

    /// <summary>True for the kind of this struct.</summary>
    public bool Is<T>()
        where T : struct, IQuantity => Type == typeof(T);

    public override string ToString() => Name;
}

/// <summary>The kind of one struct.</summary>
internal sealed class QuantityKind<T> : QuantityKind
    where T : struct, IQuantity
{
    private readonly Func<double, T> _make;

    internal QuantityKind(Func<double, T> make, NumberForm form, params Unit[] units) => (_make, Form, Units) = (make, form, units);

    public override Type Type => typeof(T);

    public override IQuantity FromSi(double si) => _make(si);
}
