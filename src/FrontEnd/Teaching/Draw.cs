using FrontEnd.Numbers;

namespace FrontEnd.Teaching;

/// <summary>Where a template's numbers come from: a student's stream, a walk through all of them, or values given one by one, as for a
/// textbook's own example.</summary>
/// <remarks>Every value is a preferred number or one of a list before anything is worked out with it, so that the sheet shows all its
/// digits.</remarks>
internal sealed class Draw
{
    private readonly SeededRandom? _random;
    private readonly Walk? _walk;
    private readonly IReadOnlyDictionary<string, double>? _values;
    private readonly List<Given> _givens = [];

    private Draw(SeededRandom? random, Walk? walk, IReadOnlyDictionary<string, double>? values) =>
        (_random, _walk, _values) = (random, walk, values);

    /// <summary>What has been drawn, in the order in which it is printed.</summary>
    public IReadOnlyList<Given> Givens => _givens;

    public static Draw From(SeededRandom random) => new(random, null, null);

    /// <summary>Values in SI units by their symbols; options of a choice stay in the template's order.</summary>
    public static Draw Fixed(IReadOnlyDictionary<string, double> values) => new(null, null, values);

    internal static Draw From(Walk walk) => new(null, walk, null);

    /// <summary>A member of a series of preferred values between two limits, each as likely as another.</summary>
    public T Part<T>(string symbol, string name, double least, double greatest, PreferredSeries series = PreferredSeries.E12)
        where T : struct, IQuantity =>
        _values is null
            ? OneOf<T>(symbol, name, PreferredValues.Between(least, greatest, series).ToArray())
            : Give<T>(symbol, name, _values[symbol]);

    /// <summary>One of a ladder of values from a least to a greatest in equal steps, each as likely as another.</summary>
    /// <remarks>In decimal arithmetic, so that the value is the double of the digits that are printed.</remarks>
    public T Stepped<T>(string symbol, string name, double least, double greatest, double step)
        where T : struct, IQuantity
    {
        decimal first = (decimal)least, width = (decimal)step;
        int count = (int)(((decimal)greatest - first) / width) + 1;
        return Give<T>(symbol, name, _values is null ? (double)(first + (Index(count) * width)) : _values[symbol]);
    }

    /// <summary>One of a list of values in SI units.</summary>
    public T OneOf<T>(string symbol, string name, params ReadOnlySpan<double> values)
        where T : struct, IQuantity =>
        Give<T>(symbol, name, _values is null ? values[Index(values.Length)] : _values[symbol]);

    /// <summary>The same for a kind that is known when it runs.</summary>
    internal IQuantity OneOf(QuantityKind kind, string symbol, string name, IReadOnlyList<double> values)
    {
        IQuantity quantity = kind.FromSi(_values is null ? values[Index(values.Count)] : _values[symbol]);
        _givens.Add(new Given(symbol, name, quantity));
        return quantity;
    }

    /// <summary>A value that no one draws, or that follows from what was drawn, printed with the others.</summary>
    public T Give<T>(string symbol, string name, double value)
        where T : struct, IQuantity
    {
        T quantity = (T)QuantityKind.Of<T>().FromSi(value);
        _givens.Add(new Given(symbol, name, quantity));
        return quantity;
    }

    /// <summary>A number out of 0…count − 1 that is not printed; 0 for given values.</summary>
    internal int Index(int count) => _random?.NextBelow(count) ?? _walk?.Next(count) ?? 0;

    /// <summary>An order of 0…count − 1 (Fisher and Yates); the natural one for given values and on a walk.</summary>
    internal int[] Order(int count)
    {
        int[] order = [.. Enumerable.Range(0, count)];
        for (int i = count - 1; _random is not null && 0 < i; i--)
        {
            int other = _random.NextBelow(i + 1);
            (order[i], order[other]) = (order[other], order[i]);
        }

        return order;
    }

    /// <summary>Forgets what was drawn, for a template that must draw again; false where the values are given and would be the same, and at
    /// the end of a walk.</summary>
    internal bool Again()
    {
        if (_random is null && _walk?.Advance() != true)
        {
            return false;
        }

        _givens.Clear();
        return true;
    }
}
