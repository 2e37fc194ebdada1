using System.Text.RegularExpressions;

namespace FrontEnd.Documents.Cards;

/// <summary>A column that is wanted.</summary>
/// <param name="IsAboveZero">True where no value of it is 0 or less.</param>
/// <param name="Parts">Pieces of names that mean it.</param>
/// <param name="Names">Whole names that do.</param>
internal sealed record PointColumn(string Name, QuantityKind Kind, bool IsAboveZero, IReadOnlyList<string> Parts, IReadOnlyList<string> Names)
{
    /// <summary>Units that are of another kind and names that mean another unit, in lower case, each with its factor: ω and rad/s for a frequency.</summary>
    public IReadOnlyDictionary<string, double> Scales { get; init; } = new Dictionary<string, double>();

    /// <summary>True where a heading means this column: by its name, in lower case and without its unit, or by a unit of the column's kind alone.</summary>
    public bool IsMeantBy(string name, bool isUnitAlone) =>
        isUnitAlone || Parts.Any(part => name.Contains(part, StringComparison.Ordinal)) || Names.Contains(name.TrimStart('-', '−'), StringComparer.Ordinal);
}

/// <summary>Where a column stands, what a bare number in it is multiplied by, and its unit's factor if one was named.</summary>
internal readonly record struct PointPlace(int At, double Sign, double? Factor);

/// <summary>The line that names the columns of a table of points.</summary>
internal sealed partial record PointHeads(string Path, int Line, string[] Heads)
{
    /// <summary>Where headings are parted from their units.</summary>
    private const string Parting = " _/([,:";

    /// <summary>What stands in brackets behind a name and is a piece of it: Re(Z), |Z(f)|.</summary>
    private static readonly string[] Arguments = ["Z", "z", "f", "ω", "jω", "w", "jw", "s"];

    /// <summary>Units that no column has, and that stand for other numbers altogether.</summary>
    private static readonly string[] Foreign = ["rad", "mrad", "µrad", "grad", "gon", "cycles", "decades", "octaves"];

    /// <summary>True where every column is named by a heading of its own.</summary>
    public bool Name(IReadOnlyList<PointColumn> columns) => Array.TrueForAll(Named(columns), place => place is not null);

    /// <summary>True where at least one is.</summary>
    public bool NamesAny(IReadOnlyList<PointColumn> columns) => Array.Exists(Named(columns), place => place is not null);

    /// <summary>Where the columns stand by their headings; by their order where there are as many as are wanted and no heading says otherwise. Null with
    /// what is wrong.</summary>
    public PointPlace[]? Places(IReadOnlyList<PointColumn> columns, List<Finding> findings)
    {
        int?[] places = Named(columns);
        bool byOrder = Heads.Length == columns.Count && places.Select((place, at) => place is null || place == at).All(one => one);
        int before = findings.Count;
        var found = new PointPlace[columns.Count];
        for (int at = 0; at < columns.Count; at++)
        {
            if ((places[at] ?? (byOrder ? at : null)) is not { } place)
            {
                findings.Add(CardMessages.NoColumn(Path, Line, columns[at].Name, columns.Select(column => column.Name)));
                continue;
            }

            string head = Heads[place];
            double? factor = Split(head, columns[at]).Factor;
            if (factor is null && UnitIn(head) is { } unit)
            {
                findings.Add(CardMessages.ForeignUnit(Path, Line, columns[at], unit));
            }

            found[at] = new PointPlace(place, !columns[at].IsAboveZero && head is ['-' or '−', ..] ? -1 : 1, factor);
        }

        return before < findings.Count ? null : found;
    }

    private int?[] Named(IReadOnlyList<PointColumn> columns)
    {
        int?[] places = new int?[columns.Count];
        // The last first: "phase of the impedance" is a phase.
        for (int at = columns.Count - 1; 0 <= at; at--)
        {
            int place = Enumerable.Range(0, Heads.Length).Where(index => !places.Contains(index)).Cast<int?>().FirstOrDefault(index =>
                Split(Heads[index!.Value], columns[at]) is var (name, factor) && columns[at].IsMeantBy(name, factor is not null && name.Length == 0)) ?? -1;
            places[at] = place < 0 ? null : place;
        }

        return places;
    }

    /// <summary>A heading's name in lower case, "" where it is a unit alone, and the factor of the unit behind it: "f [kHz]", "density_nV/√Hz", "phase (deg)",
    /// "Hz".</summary>
    private static (string Name, double? Factor) Split(string head, PointColumn column)
    {
        for (int at = 0; at < head.Length; at++)
        {
            if (at != 0 && !Parting.Contains(head[at - 1], StringComparison.Ordinal))
            {
                continue;
            }

            string unit = head[at..].Trim(' ', '[', ']');
            unit = unit.EndsWith(')') && unit.Count(letter => letter == ')') != unit.Count(letter => letter == '(') ? unit[..^1] : unit;
            if (FactorOf(unit, column) is { } factor)
            {
                return (head[..at].Trim([.. Parting]).ToLowerInvariant(), factor);
            }
        }

        string name = head.Trim().ToLowerInvariant();
        string? scale = UnitIn(head) is null ? column.Scales.Keys.FirstOrDefault(word => name.Contains(word, StringComparison.Ordinal)) : null;
        return (name, scale is null ? null : column.Scales[scale]);
    }

    private static double? FactorOf(string unit, PointColumn column)
    {
        if (unit.Length == 0 || char.IsAsciiDigit(unit[0]))
        {
            return null;
        }

        foreach (string spelling in new[] { unit, unit.Replace("hz", "Hz", StringComparison.OrdinalIgnoreCase), unit.ToLowerInvariant().TrimEnd('.') })
        {
            if (QuantityText.IsRead(column.Kind, "1 " + spelling, out IQuantity? one))
            {
                return one!.SiValue;
            }
        }

        // Ω is no capital of ω here.
        return !unit.Contains('Ω', StringComparison.Ordinal) && column.Scales.TryGetValue(unit.ToLowerInvariant(), out double factor) ? factor : null;
    }

    /// <summary>What a heading says for a unit: what stands in brackets at its end, or a last word that can be nothing else; null for nothing.</summary>
    private static string? UnitIn(string head)
    {
        string text = head.Trim();
        if (Logarithm().Match(text) is { Success: true } logarithm)
        {
            return logarithm.Value;
        }

        if (text is [.., ')' or ']'])
        {
            int open = Opening(text);
            string inside = open < 0 ? "" : text[(open + 1)..^1].Trim();
            return inside.Length == 0 || (text[^1] == ')' && Arguments.Contains(inside, StringComparer.Ordinal)) ? null : inside;
        }

        string last = text[(text.LastIndexOfAny([' ', '_', ',', ':']) + 1)..], word = last[(last.LastIndexOf('/') + 1)..];
        return last.AsSpan().IndexOfAny("√²Ω°%") is >= 0 || last.EndsWith("/s", StringComparison.Ordinal) ? last
            : word.StartsWith("dB", StringComparison.Ordinal) || Foreign.Contains(word.ToLowerInvariant(), StringComparer.Ordinal) ? word : null;
    }

    [GeneratedRegex(@"(\b|(?<=\d))(log|lg|ln)(10|e)?(?![a-z])", RegexOptions.IgnoreCase | RegexOptions.ExplicitCapture, 5000)]
    private static partial Regex Logarithm();

    /// <summary>Where the bracket opens that the text ends with; -1 where it does not.</summary>
    private static int Opening(string text)
    {
        int depth = 0;
        for (int at = text.Length - 1; 0 <= at; at--)
        {
            depth += text[at] is ')' or ']' ? 1 : text[at] is '(' or '[' ? -1 : 0;
            if (depth == 0)
            {
                return at;
            }
        }

        return -1;
    }
}
