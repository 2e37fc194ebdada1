using System.Text.Json;
using FrontEnd.Citations;
using FrontEnd.Documents.Files;

namespace FrontEnd.Documents.Sheets;

/// <summary>The sources by their keys, as they are printed.</summary>
internal static class SourceList
{
    private static readonly Lazy<IReadOnlyDictionary<string, string>> All = new(Read);

    /// <summary>Author, title, number, year, place, and whether the source itself was seen; the key where the list does not have
    /// it.</summary>
    public static string Of(SourceRef source)
    {
        string text = All.Value.GetValueOrDefault(source.Key) ?? source.Key;
        return source.Place.Length == 0 ? text : $"{text}; {source.Place}";
    }

    public static bool Has(string key) => All.Value.ContainsKey(key);

    private static Dictionary<string, string> Read()
    {
        Dictionary<string, string> all = new(StringComparer.Ordinal);
        if (Embedded.Read("sources.json") is not { } text)
        {
            return all;
        }

        using JsonDocument document = JsonDocument.Parse(text);
        foreach (JsonElement entry in document.RootElement.EnumerateArray())
        {
            string seen = Of(entry, "seen");
            string[] parts = [Of(entry, "author"), Of(entry, "title"), Of(entry, "number"), Of(entry, "year")];
            string printed = string.Join(", ", parts.Where(part => part.Length > 0));
            bool saysIt = seen.Length == 0 || printed.Contains(seen, StringComparison.OrdinalIgnoreCase);
            all[Of(entry, "key")] = saysIt ? printed : $"{printed} ({seen})";
        }

        return all;
    }

    private static string Of(JsonElement entry, string name) =>
        entry.TryGetProperty(name, out JsonElement value) ? value.GetString() ?? "" : "";
}
