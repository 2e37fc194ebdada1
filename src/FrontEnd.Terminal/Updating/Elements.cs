using FrontEnd.Catalogue;
using FrontEnd.Documents;

namespace FrontEnd.Terminal;

/// <summary>Elements of lists: stages, filters, bands, interferers put in, moved and taken out.</summary>
internal static class Elements
{
    /// <summary>The elements that can be put into a design.</summary>
    public static readonly IReadOnlyList<Insertion> Insertions =
        [.. DesignFields.Lists.SelectMany(list => list.Variants.Select((variant, index) => new Insertion(list.Key, index, variant.Noun)))];

    /// <summary>What stands in a list, in words.</summary>
    public static string NameOf(string listKey) => listKey switch
    {
        "stages" => "stages before the converter",
        "digital" => "digital filters",
        _ => listKey,
    };

    /// <summary>Puts an element in, the last of its list.</summary>
    public static (Model Model, Effect? Effect) Insert(Model model, Insertion insertion)
    {
        EditResult edit = Edits.Insert(model.Here.Document, insertion);
        if (edit.Finding is { } finding)
        {
            return (model.Complain(finding), null);
        }

        (Model next, Effect? effect) = Changes.Change(
            model, edit.Document, $"{insertion.Name} inserted",
            $"{insertion.Name} inserted, last of the {NameOf(insertion.ListKey)}; < moves it forward, u takes it out");

        // To the new element's first field.
        int last = DesignFields.Lists.First(list => list.Key == insertion.ListKey).Count(next.Design);
        return (Whereabouts.AtField(next, $"{insertion.ListKey}[{last}]."), effect);
    }

    /// <summary>Moves the element in hand one place.</summary>
    public static (Model Model, Effect? Effect) Move(Model model, int by)
    {
        if (ElementInHand(model) is not var (list, index, field))
        {
            return (model.Tell("< and > move a gain stage, a filter, a band or an interferer: go to one of its fields first"), null);
        }

        string name = list.NameOf(list.Elements(model.Design)[index]);
        if (index + by < 0 || list.Count(model.Design) <= index + by)
        {
            return (model.Tell($"{name} is already the {(by < 0 ? "first" : "last")}"), null);
        }

        EditResult edit = Edits.Move(model.Here.Document, list, index, by);
        if (edit.Finding is { } finding)
        {
            return (model.Complain(finding), null);
        }

        string label = $"{name} moved {(by < 0 ? "nearer the scalp" : "nearer the samples")}";
        (Model next, Effect? effect) = Changes.Change(model, edit.Document, label, $"{label}; u moves it back");
        return (Whereabouts.AtField(next, $"{list.Key}[{index + by + 1}]{field}"), effect);
    }

    /// <summary>Takes the element in hand out.</summary>
    public static (Model Model, Effect? Effect) Remove(Model model)
    {
        if (ElementInHand(model) is not var (list, index, _))
        {
            return (model.Tell("x removes a gain stage, a filter, a band or an interferer: go to one of its fields first"), null);
        }

        string name = list.NameOf(list.Elements(model.Design)[index]);
        EditResult edit = Edits.Remove(model.Here.Document, list, index);
        return edit.Finding is { } finding
            ? (model.Complain(finding), null)
            : Changes.Change(model, edit.Document, $"{name} removed", $"{name} removed; u brings it back");
    }

    /// <summary>The element of a list whose field is in hand: the list, its number from 0, and the rest of the field's key.</summary>
    private static (DesignList List, int Index, string Field)? ElementInHand(Model model)
    {
        string key = model.OnResults ? "" : Whereabouts.FieldInHand(model)?.Field.Key ?? "";
        int open = key.IndexOf('['), close = key.IndexOf(']');
        return open > 0 && int.TryParse(key.AsSpan(open + 1, close - open - 1), out int number)
            ? (DesignFields.Lists.First(list => list.Key == key[..open]), number - 1, key[(close + 1)..])
            : null;
    }
}
