using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using FrontEnd.Catalogue;
using FrontEnd.Documents.Reading;
using FrontEnd.Fields;
using FrontEnd.Sizing;
using FrontEnd.Teaching.Problems;

namespace FrontEnd.Documents;

/// <summary>What an editor needs to know of a design file, of a file of requirements or of a homework to complete and check it while it is typed: a JSON Schema, made from the catalogue so
/// that it cannot say anything else.</summary>
/// <remarks>Only keywords of draft 7 (json-schema.org, draft-07): several editors know no later one. A schema sees keys, words, units and
/// kinds of values; what holds between fields the program alone sees.</remarks>
internal static class DesignSchema
{
    private const string Draft = "http://json-schema.org/draft-07/schema#";

    /// <summary>The schema of a design file in TOML.</summary>
    public static string OfDesign() => Write(Root("a design", "A design file: one analogue front end, from electrodes to digital filters.", []));

    /// <summary>The schema of a file of requirements, from which a design is sized.</summary>
    public static string OfSizing() => Write(Root("requirements", "A file of requirements, from which the rest of a design is sized.",
        [(SizingFields.Table, Table(SizingFields.All))]));

    /// <summary>The schema of a homework's file.</summary>
    public static string OfHomework()
    {
        JsonObject root = Table(HomeworkFields.All), rubric = Shares();
        Properties(root)[HomeworkFields.PointsKey] = new JsonObject
        {
            ["type"] = "object", ["additionalProperties"] = new JsonObject { ["type"] = "integer", ["minimum"] = 1, ["maximum"] = HomeworkFields.MostPoints },
        };

        // A table for all questions, and in it one like it for each question that differs.
        rubric["additionalProperties"] = Shares();
        Properties(root)[HomeworkFields.RubricKey] = rubric;
        root["$schema"] = Draft;
        root["title"] = "FrontEnd: a homework";
        root["definitions"] = Definitions();
        return Write(root);

        static JsonObject Shares() => Table(HomeworkFields.Rubric);
    }

    private static JsonObject Root(string title, string description, IEnumerable<(string Name, JsonObject Table)> besides)
    {
        JsonObject root = Table(DesignFields.Fixed);
        JsonObject properties = Properties(root);
        properties[DesignFields.AntiAliasKey] = Table(DesignFields.AntiAlias);
        properties[PartlyKnownDesign.BoughtKey] = Table(PartlyKnownDesign.BoughtTable);
        foreach (DesignList list in DesignFields.Lists)
        {
            JsonObject parent = properties;
            string[] path = list.Key.Split('.');
            foreach (string name in path[..^1])
            {
                parent = Properties((JsonObject)parent[name]!);
            }

            JsonObject elements = new() { ["type"] = "array", ["items"] = Elements(list) };
            parent[path[^1]] = parent[path[^1]] is JsonObject number ? AnyOf((JsonObject)number.DeepClone(), elements) : elements;
        }

        foreach ((string name, JsonObject table) in besides)
        {
            properties[name] = table;
        }

        JsonObject definitions = Definitions();
        JsonNode shared = Shared(properties, definitions);
        return new JsonObject
        {
            ["$schema"] = Draft, ["title"] = $"FrontEnd: {title}", ["description"] = description, ["type"] = "object",
            ["properties"] = shared, ["additionalProperties"] = false, ["definitions"] = definitions,
        };
    }

    /// <summary>The same with tables that stand in several places moved among the definitions: the op-amps of all stages are one.</summary>
    private static JsonNode Shared(JsonNode node, JsonObject definitions)
    {
        Dictionary<string, (string Name, int Count)> tables = new(StringComparer.Ordinal);
        Dictionary<string, string> names = definitions.ToDictionary(one => one.Key, _ => "", StringComparer.Ordinal);
        Count(node, "table");
        return Replaced(node);

        void Count(JsonNode? at, string name)
        {
            if (at is JsonObject table)
            {
                if (table.ContainsKey("properties") && table.ContainsKey("type"))
                {
                    string text = table.ToJsonString();
                    tables[text] = tables.TryGetValue(text, out var known) ? (known.Name, known.Count + 1) : (name, 1);
                }

                foreach ((string key, JsonNode? inner) in table)
                {
                    Count(inner, key is "properties" or "items" or "then" or "anyOf" ? name : key);
                }
            }
            else if (at is JsonArray list)
            {
                foreach (JsonNode? inner in list)
                {
                    Count(inner, name);
                }
            }
        }

        JsonNode Replaced(JsonNode at)
        {
            switch (at)
            {
                case JsonObject table:
                    string text = table.ContainsKey("properties") && table.ContainsKey("type") ? table.ToJsonString() : "";
                    if (text.Length > 0 && tables[text] is { Count: > 1 } often)
                    {
                        string name = Named(often.Name, text);
                        return new JsonObject { ["$ref"] = $"#/definitions/{name}" };
                    }

                    return Inside(table);
                case JsonArray list:
                    JsonArray all = [];
                    foreach (JsonNode? inner in list)
                    {
                        all.Add(inner is null ? null : Replaced(inner));
                    }

                    return all;
                default:
                    return at.DeepClone();
            }
        }

        JsonObject Inside(JsonObject table) =>
            new(table.Select(one => KeyValuePair.Create(one.Key, one.Value is null ? null : Replaced(one.Value))));

        string Named(string wanted, string text)
        {
            for (int number = 1; ; number++)
            {
                string name = number == 1 ? wanted : $"{wanted}-{number}";
                if (names.TryGetValue(name, out string? known))
                {
                    if (string.Equals(known, text, StringComparison.Ordinal))
                    {
                        return name;
                    }

                    continue;
                }

                names[name] = text;
                definitions[name] = Inside((JsonObject)JsonNode.Parse(text)!);
                return name;
            }
        }
    }

    /// <summary>One branch for each variant, chosen by its words, so that an editor tells of the one that is meant.</summary>
    private static JsonObject Elements(DesignList list)
    {
        if (!list.HasKinds)
        {
            return Table(list.Variants[0].Fields);
        }

        JsonArray branches = [];
        foreach (Variant variant in list.Variants)
        {
            JsonObject table = Table(variant.Fields);
            Properties(table)["kind"] = Spelt([variant.Kind]);
            JsonArray required = new("kind");
            JsonObject asked = new() { ["kind"] = Spelt([variant.Kind]) };
            if (variant.Topology is { } topology)
            {
                Properties(table)["topology"] = Spelt([topology]);
                asked["topology"] = Spelt([topology]);
                if (!variant.IsDefault)
                {
                    required.Add((JsonNode)"topology");
                }
            }

            branches.Add((JsonNode)new JsonObject { ["if"] = new JsonObject { ["properties"] = asked, ["required"] = required }, ["then"] = table });
        }

        // A kind that is built in several ways, none of them taken where nothing is said, says which.
        foreach (IGrouping<string, Variant> kind in list.Variants.GroupBy(variant => variant.Kind, StringComparer.Ordinal).Where(kind => kind.All(variant => variant is { Topology: not null, IsDefault: false })))
        {
            branches.Add((JsonNode)new JsonObject
            {
                ["if"] = new JsonObject { ["properties"] = new JsonObject { ["kind"] = Spelt([kind.Key]) }, ["required"] = new JsonArray("kind") },
                ["then"] = new JsonObject { ["required"] = new JsonArray("topology") },
            });
        }

        JsonObject words = new() { ["kind"] = Kinds(list.Variants.Select(variant => variant.Kind)) };
        if (list.Variants.Select(variant => variant.Topology).OfType<string>().Distinct(StringComparer.Ordinal).ToList() is { Count: > 0 } topologies)
        {
            words["topology"] = Kinds(topologies);
        }

        return new JsonObject { ["type"] = "object", ["required"] = new JsonArray("kind"), ["properties"] = words, ["allOf"] = branches };
    }

    /// <summary>A table of fields by their dotted keys, with the tables inside it.</summary>
    private static JsonObject Table(IEnumerable<FieldDescription> fields)
    {
        JsonObject table = new() { ["type"] = "object", ["properties"] = new JsonObject(), ["additionalProperties"] = false };
        foreach (FieldDescription field in fields)
        {
            string[] path = field.Key.Split('.');
            JsonObject at = Properties(table);
            foreach (string name in path[..^1])
            {
                if (at[name] is not JsonObject)
                {
                    at[name] = Inner();
                }

                at = Properties((JsonObject)at[name]!);
            }

            at[path[^1]] = Value(field);
            if (field.Holds<ExcessNoise>())
            {
                at[Last(ExcessForms.Rms.Key)] = Value(ExcessForms.Rms);
                at[Last(ExcessForms.Band.Key)] = Value(ExcessForms.Band);
            }
        }

        return table;
    }

    /// <summary>A part: its table, a card's name or a site in its place, or the words that leave it out.</summary>
    private static JsonObject Inner() => new()
    {
        ["type"] = new JsonArray("object", "string", "boolean"), ["properties"] = new JsonObject(), ["additionalProperties"] = false,
    };

    private static JsonObject Properties(JsonObject table) => (JsonObject)table["properties"]!;

    private static string Last(string key) => key[(key.LastIndexOf('.') + 1)..];

    /// <summary>What a field takes, with all that is known about it as the text that an editor shows.</summary>
    private static JsonObject Value(FieldDescription field)
    {
        JsonObject value = Kind(field);
        List<JsonObject> others = [];
        IReadOnlyList<string> words = field.Kind is FieldKind.Choice or FieldKind.Flag or FieldKind.Card ? [] : FieldText.Words(field);
        if (words.Count > 0)
        {
            others.Add(AnyCase(words));
        }

        if (field.IsNumeric || field.Kind is FieldKind.Choice or FieldKind.Flag)
        {
            others.Add(AnyCase([UnknownValue.Word]));
        }

        if (field.IsNumeric)
        {
            others.Add(new JsonObject { ["type"] = "array", ["items"] = Kind(field), ["minItems"] = 2, ["maxItems"] = 2 });
        }

        JsonObject all = others.Count == 0 ? value : AnyOf([value, .. others]);
        all["description"] = Description(field);
        if (field.DefaultIsValue && field.DefaultText.Length > 0 && field.Kind is FieldKind.Quantity or FieldKind.Choice)
        {
            all["default"] = field.DefaultText.Trim('"');
        }

        return all;
    }

    private static string Description(FieldDescription field)
    {
        StringBuilder text = new(field.Meaning);
        if (FieldMessages.RangeWords(field) is { Length: > 0 } range)
        {
            text.Append("\nrange: ").Append(range);
        }

        if (field.DefaultText.Length > 0)
        {
            text.Append("\ndefault: ").Append(field.DefaultText).Append(" (").Append(field.DefaultSource).Append(')');
        }

        return text.Append("\nwrite: ").Append(FieldKinds.Example(field)).ToString();
    }

    private static JsonObject Kind(FieldDescription field) => field.Kind switch
    {
        FieldKind.Quantity when field.Holds<Ratio>() => AnyOf(Bounded("number", field), Reference(field)),
        FieldKind.Quantity => Reference(field),
        FieldKind.Number => Bounded("number", field),
        FieldKind.Count => Bounded("integer", field),
        FieldKind.Flag => Type("boolean"),
        FieldKind.Text => Type("string"),
        FieldKind.Choice => AnyCase(field.Choices.SelectMany(choice => (string[])[choice.Word, .. choice.Aliases]).Concat(FieldText.Words(field)).Distinct(StringComparer.Ordinal)),
        FieldKind.Card => AnyOf(Words([.. CardShelf.Names(field.CardClass!.Value), ""]), new JsonObject { ["type"] = "string", ["pattern"] = "\\.toml$" }),
        FieldKind.FrequencyRange => new JsonObject { ["type"] = "array", ["items"] = Reference(QuantityKind.Of<Frequency>()), ["minItems"] = 2, ["maxItems"] = 2 },
        FieldKind.NumberList => new JsonObject { ["type"] = "array", ["items"] = Bounded("number", field) },
        FieldKind.TextList => new JsonObject { ["type"] = "array", ["items"] = Type("string") },
        FieldKind.SectionRows => new JsonObject
        {
            ["type"] = "array", ["items"] = new JsonObject { ["type"] = "array", ["items"] = Type("number"), ["minItems"] = 6, ["maxItems"] = 6 },
        },
        FieldKind.NamedNumbers => new JsonObject { ["type"] = "object", ["additionalProperties"] = Type("number") },
        FieldKind.ContactOverTime => new JsonObject { ["type"] = "array", ["items"] = Type("object") },
        FieldKind.Ranges => new JsonObject
        {
            ["type"] = "object", ["additionalProperties"] = false,
            ["properties"] = new JsonObject(field.Ranged.Select(one => KeyValuePair.Create<string, JsonNode?>(
                one.Key, new JsonObject { ["type"] = "array", ["items"] = Kind(one), ["minItems"] = 2, ["maxItems"] = 2 }))),
        },
        _ => throw new ArgumentOutOfRangeException(nameof(field), field.Kind, "Kind is not handled."),
    };

    private static JsonObject Reference(QuantityKind kind) => new() { ["$ref"] = $"#/definitions/{kind.Name}" };

    /// <summary>A field's kind; where no value below zero is legal, the one without a sign.</summary>
    private static JsonObject Reference(FieldDescription field) => field is { Range.Least: >= 0, Quantity: { ZeroNeedsNoUnit: true } kind }
        ? new() { ["$ref"] = $"#/definitions/{kind.Name}{NotBelowZero}" } : Reference(field.Quantity!);

    private const string NotBelowZero = "-not-below-zero";

    private static JsonObject Definitions() => new(QuantityKind.All.SelectMany(kind => new[]
    {
        KeyValuePair.Create<string, JsonNode?>(kind.Name, new JsonObject { ["type"] = "string", ["pattern"] = QuantityPattern.Of(kind) }),
        KeyValuePair.Create<string, JsonNode?>(kind.Name + NotBelowZero, new JsonObject
        {
            ["allOf"] = new JsonArray(Reference(kind)), ["not"] = new JsonObject { ["pattern"] = @"^\s*[\-−].*[1-9]" },
        }),
    }));

    /// <summary>A bare number within the field's range.</summary>
    private static JsonObject Bounded(string type, FieldDescription field)
    {
        JsonObject number = Type(type);
        if (field.Range is { } range)
        {
            number[range.LeastOpen ? "exclusiveMinimum" : "minimum"] = range.Least;
            number[range.GreatestOpen ? "exclusiveMaximum" : "maximum"] = range.Greatest;
        }

        return number;
    }

    /// <summary>Words that are read in capitals and in small letters: an editor proposes them as they stand, and takes them either way.</summary>
    private static JsonObject AnyCase(IEnumerable<string> words)
    {
        List<string> all = [.. words];
        return AnyOf(Words(all), Pattern(all.Select(word => string.Concat(word.Select(Letter)))));
    }

    /// <summary>Words of which hyphens, underscores and blanks do not count either.</summary>
    private static JsonObject Kinds(IEnumerable<string> words)
    {
        List<string> all = [.. words.Distinct(StringComparer.Ordinal)];
        return AnyOf(Words(all), Spelt(all));
    }

    private static JsonObject Spelt(IEnumerable<string> words) =>
        Pattern(words.Select(word => string.Join("[-_ ]*", word.Where(letter => letter is not ('-' or '_' or ' ')).Select(Letter))));

    private static JsonObject Pattern(IEnumerable<string> words) => new() { ["type"] = "string", ["pattern"] = $@"^\s*(?:{string.Join('|', words)})\s*$" };

    private static string Letter(char letter) =>
        char.IsAsciiLetter(letter) ? $"[{char.ToUpperInvariant(letter)}{char.ToLowerInvariant(letter)}]" : letter is '.' or '+' or '(' or ')' or '*' ? $"\\{letter}" : $"{letter}";

    private static JsonObject Type(string name) => new() { ["type"] = name };

    private static JsonObject Words(IEnumerable<string> words)
    {
        JsonArray all = [];
        foreach (string word in words)
        {
            all.Add((JsonNode)word);
        }

        return new JsonObject { ["enum"] = all };
    }

    private static JsonObject AnyOf(params IEnumerable<JsonObject> forms)
    {
        JsonArray all = [];
        foreach (JsonObject form in forms)
        {
            all.Add((JsonNode)form);
        }

        return new JsonObject { ["anyOf"] = all };
    }

    private static string Write(JsonObject schema)
    {
        using MemoryStream text = new();
        using (Utf8JsonWriter writer = new(text, new JsonWriterOptions { Indented = true, Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping, NewLine = "\n" }))
        {
            schema.WriteTo(writer);
        }

        return Encoding.UTF8.GetString(text.ToArray()) + "\n";
    }
}
