using FrontEnd.Catalogue;
using FrontEnd.Documents.Reading;

namespace FrontEnd.Documents.Sheets;

/// <summary>A value that the design file leaves to the program, or a list of them that stand for one choice.</summary>
/// <param name="Value">"" where the key alone says it.</param>
internal sealed record DefaultUsed(string Key, string Value, string Source)
{
    private const string NotThere = "not given, and left out of the figures";

    /// <summary>The defaults of a design in the order of its fields. A list of which nothing is given is one entry; names and absent part
    /// cards are none.</summary>
    public static IReadOnlyList<DefaultUsed> Of(Sheet sheet)
    {
        List<DefaultUsed> used = [];
        ILookup<string, FieldOrigin> byList = sheet.Document.Origins.ToLookup(origin => ListOf(origin.Key), StringComparer.Ordinal);
        foreach (IGrouping<string, FieldOrigin> group in byList)
        {
            DesignList? list = DesignFields.Lists.FirstOrDefault(one => string.Equals(one.Key, group.Key, StringComparison.Ordinal));
            if (list is not null && group.All(origin => origin.Kind == OriginKind.Default))
            {
                used.Add(new DefaultUsed(list.Key, string.Join(", ", list.Elements(sheet.Design).Select(list.NameOf)), "the usual set"));
                continue;
            }

            used.AddRange(group.Where(origin => origin.Kind == OriginKind.Default && !IsLabel(origin.Key)).Select(One)
                .GroupBy(one => one with { Key = Everywhere(one.Key) }).Select(same => same.Count() == 1 ? same.First() : same.Key));
        }

        return used;
    }

    /// <summary>The defaults in a line for each source, so that what rests on nothing but custom stands together.</summary>
    public static IEnumerable<(string Source, string Texts)> BySource(Sheet sheet) =>
        Of(sheet).GroupBy(one => one.Source, StringComparer.Ordinal)
        .Select(group => (group.Key, string.Join(", ", group.Select(one => one.Value.Length == 0 ? one.Key : $"{one.Key} {one.Value}"))));

    private static DefaultUsed One(FieldOrigin origin) =>
        origin.Text.Length == 0 || string.Equals(origin.Text, "none", StringComparison.Ordinal)
            ? new DefaultUsed(origin.Key, "", NotThere)
            : new DefaultUsed(origin.Key, origin.Text, origin.Source);

    /// <summary>The key with every element's number as a star: what several elements leave to the same default is said once.</summary>
    private static string Everywhere(string key) =>
        key.IndexOf('[') is var open and > 0 && key.IndexOf(']') is var close && open < close
            ? $"{key[..open]}[*]{key[(close + 1)..]}"
            : key;

    private static bool IsLabel(string key) =>
        key is "name" or "purpose" or "caution" || key.EndsWith(".name", StringComparison.Ordinal)
            || key.EndsWith(".card", StringComparison.Ordinal) || key.EndsWith("ranges", StringComparison.Ordinal)
            || key.EndsWith(".over-time", StringComparison.Ordinal)
            || string.Equals(key, "card", StringComparison.Ordinal);

    private static string ListOf(string key) => key.IndexOf('[') is var bracket and > 0 ? key[..bracket] : "";
}
