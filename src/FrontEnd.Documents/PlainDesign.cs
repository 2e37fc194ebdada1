using System.Buffers;
using System.Text;
using System.Text.Json;
using FrontEnd.Catalogue;
using FrontEnd.Documents.Reading;
using FrontEnd.Fields;

namespace FrontEnd.Documents;

/// <summary>Writes a design in the plain-number form: SI numbers, no units, every field, so that any program can read it and
/// <see cref="DesignDocument"/> reads the same design back.</summary>
internal static class PlainDesign
{
    /// <summary>Writes one JSON object.</summary>
    /// <param name="partly">What is not known of the design; null where all is.</param>
    public static void Write(Utf8JsonWriter json, Design design, PartlyKnownDesign? partly = null)
    {
        Branch root = new();
        design = partly?.Given.Design ?? design;
        foreach (Field<Design> field in DesignFields.Fixed.Where(field => DesignFields.IsPresent(design, field.Key)))
        {
            Put(root, field, field.Get(design), partly?.Find(field.Key));
        }

        if (partly?.Given.Bought is not null)
        {
            foreach (Field<DeviceDraft> field in PartlyKnownDesign.OfBought)
            {
                Put(root, field, field.Get(partly.Given), partly.Find(field.Key));
            }
        }

        foreach (OptionalPart part in DesignFields.OptionalParts.Where(part => !part.IsThere(design)))
        {
            root.Put(part.Key.Replace('-', '_'), "null");
        }

        // Without a list of channels their number stands at its key.
        foreach (DesignList list in DesignFields.Lists.Where(list => list.Key != DesignList.ChannelsKey || 0 < list.Count(design)))
        {
            root.Put(list.Key, list.Elements(design).Select((element, at) => Element(list, element, partly, $"{list.Key}[{at + 1}].")).ToArray());
        }

        root.Write(json);
    }

    /// <summary>The design alone, indented.</summary>
    public static string Text(Design design, PartlyKnownDesign? partly = null)
    {
        ArrayBufferWriter<byte> buffer = new();
        using (Utf8JsonWriter json = new(buffer,
            new JsonWriterOptions { Indented = true, Encoder = System.Text.Encodings.Web.JavaScriptEncoder.UnsafeRelaxedJsonEscaping }))
        {
            Write(json, design, partly);
        }

        return Encoding.UTF8.GetString(buffer.WrittenSpan);
    }

    private static Branch Element(DesignList list, object element, PartlyKnownDesign? partly, string prefix)
    {
        Branch branch = new();
        Variant variant = list.VariantOf(element);
        if (list.HasKinds)
        {
            branch.Put("kind", Literals.Quoted(variant.Kind));
        }

        if (variant.Topology is { } topology)
        {
            branch.Put("topology", Literals.Quoted(topology));
        }

        foreach (ElementPart refused in variant.Parts.Where(part => part.IsRefused(element)))
        {
            branch.Put(refused.Key, "null");
        }

        foreach (Field<object> field in variant.Fields.Where(field => variant.IsPresent(element, field)))
        {
            Put(branch, field, field.Get(element), partly?.Find(prefix + field.Key));
        }

        return branch;
    }

    private static void Put(Branch branch, FieldDescription field, object? value, UnknownField? unknown)
    {
        if (unknown is not null)
        {
            branch.Put(field.JsonKey, UnknownValue.Literal(unknown, DocumentFormat.Json));
            return;
        }

        // A card in a file of the user's is named relative to the design file, and this text may go elsewhere; its values are all here.
        bool isOwnCard = field.Kind == FieldKind.Card && value is string name && !DesignDocument.CardNames(field.CardClass!.Value)
            .Contains(name, StringComparer.Ordinal);

        // No value and no word for it: the key is left out, as in a file where it was never set.
        if (!isOwnCard && value is not PartRanges { All.Count: 0 } && (value is not null || field.NullWord is not null))
        {
            branch.Put(field.JsonKey, Literals.Of(field, value, DocumentFormat.Json));
        }
    }

    /// <summary>An object that is being put together from dotted keys: texts are JSON values, branches and lists of branches
    /// nest.</summary>
    private sealed class Branch
    {
        private readonly List<(string Key, object Value)> _entries = [];

        public void Put(string key, object value)
        {
            int dot = key.IndexOf('.');
            if (dot < 0)
            {
                _entries.Add((key, value));
                return;
            }

            string head = key[..dot];
            int at = _entries.FindIndex(entry => string.Equals(entry.Key, head, StringComparison.Ordinal));
            if (at < 0)
            {
                at = _entries.Count;
                _entries.Add((head, new Branch()));
            }

            ((Branch)_entries[at].Value).Put(key[(dot + 1)..], value);
        }

        public void Write(Utf8JsonWriter json)
        {
            json.WriteStartObject();
            foreach ((string key, object value) in _entries)
            {
                json.WritePropertyName(key);
                switch (value)
                {
                    case Branch branch:
                        branch.Write(json);
                        break;
                    case Branch[] branches:
                        json.WriteStartArray();
                        foreach (Branch branch in branches)
                        {
                            branch.Write(json);
                        }

                        json.WriteEndArray();
                        break;
                    default:
                        json.WriteRawValue((string)value);
                        break;
                }
            }

            json.WriteEndObject();
        }
    }
}
