namespace FrontEnd.Terminal;

/// <summary>Where the user is: the place, the rows in hand, and the ways from one to another.</summary>
internal static class Whereabouts
{
    /// <summary>The place in hand.</summary>
    public static Place PlaceOf(Model model) => Place.Find(model.Design, model.PlaceId);

    /// <summary>The fields of the place in hand.</summary>
    public static IReadOnlyList<FormRow> FormOf(Model model) => FormRow.Of(model.Design, PlaceOf(model));

    /// <summary>The figures of the place in hand; none until the first are worked out.</summary>
    public static IReadOnlyList<Result> ResultsOf(Model model) => model.Here.Shown is { } shown ? PlaceOf(model).ResultsOf(shown) : [];

    /// <summary>What must be said wherever a design is judged: below the figures of every place, in rows that the smallest screen shows whole;
    /// none until the first figures are worked out.</summary>
    public static IReadOnlyList<string> CautionsOf(Model model) => model.Here.Shown is null ? [] : CautionRows;

    private const int CautionRow = 60;

    private static readonly IReadOnlyList<string> CautionRows = [.. Cautions.All.SelectMany(RowsOf)];

    /// <summary>Rows end where a sentence or clause does: a narrow pane breaks them once more, and a word left over from the first break would
    /// stand alone.</summary>
    private static List<string> RowsOf(string caution)
    {
        List<string> rows = ["-"];
        string clause = "";
        foreach (string word in caution.Split(' '))
        {
            clause += " " + word;
            if (word[^1] is not ('.' or ';' or ',' or ':'))
            {
                continue;
            }

            if (CautionRow < rows[^1].Length + clause.Length && 2 < rows[^1].Length)
            {
                rows.Add(" ");
            }

            rows[^1] += clause;
            clause = "";
        }

        rows[^1] += clause;
        return rows;
    }

    /// <summary>The field in hand; null where the place has none.</summary>
    public static FormRow? FieldInHand(Model model) =>
        FormOf(model) is { Count: > 0 } rows ? rows[Math.Clamp(model.FieldRow, 0, rows.Count - 1)] : null;

    /// <summary>The figure in hand; null where there is none, or a caution is in hand.</summary>
    public static Result? ResultInHand(Model model) =>
        ResultsOf(model) is var rows && 0 <= model.ResultRow && model.ResultRow < rows.Count ? rows[model.ResultRow] : null;

    /// <summary>The model at a place, at its first field.</summary>
    public static Model GoTo(Model model, string id)
    {
        Place place = Place.Find(model.Design, id);
        return model with
        {
            PlaceId = place.Id,
            BlockId = place.IsBlock ? place.Id : model.BlockId,
            FieldRow = 0,
            ResultRow = 0,
            OnResults = false,
            Editing = null,
            Page = null,
        };
    }

    /// <summary>The model one block further along the path.</summary>
    /// <param name="by">−1 towards the scalp, 1 towards the samples.</param>
    public static Model Walk(Model model, int by)
    {
        IReadOnlyList<Place> blocks = Place.Blocks(model.Design);
        int at = Math.Max(0, blocks.ToList().FindIndex(block => block.Id == Place.Find(model.Design, model.BlockId).Id));

        // From a view across the path the arrows lead back to the block left behind.
        bool across = !PlaceOf(model).IsBlock;
        return GoTo(model, blocks[Math.Clamp(across ? at : at + by, 0, blocks.Count - 1)].Id);
    }

    /// <summary>The model some rows further down the form or the figures.</summary>
    public static Model Step(Model model, int by) => model.OnResults
        ? model with { ResultRow = Math.Clamp(model.ResultRow + by, 0, Math.Max(0, ResultsOf(model).Count + CautionsOf(model).Count - 1)) }
        : model with { FieldRow = Math.Clamp(model.FieldRow + by, 0, Math.Max(0, FormOf(model).Count - 1)) };

    /// <summary>Between what may be changed and what it does.</summary>
    public static (Model Model, Effect? Effect) SwitchPane(Model model) =>
        (model with { OnResults = !model.OnResults, Editing = null }, null);

    /// <summary>The next open design in hand.</summary>
    public static Model NextDesign(Model model) =>
        model with { Current = (model.Current + 1) % model.Designs.Count, FieldRow = 0, ResultRow = 0, Editing = null, Page = null };

    /// <summary>One step back: out of the page, the figures, the view across the path.</summary>
    public static Model Back(Model model)
    {
        if (model.Page is not null)
        {
            return model with { Page = null };
        }

        return model.OnResults ? model with { OnResults = false } : PlaceOf(model).IsBlock ? model : GoTo(model, model.BlockId);
    }

    /// <summary>The model at the first field whose key begins like this, here or wherever it stands.</summary>
    public static Model AtField(Model model, string beginning)
    {
        foreach (Place place in Place.Blocks(model.Design).Concat(Place.Views).OrderBy(place => place.Id != model.PlaceId))
        {
            int row = FormRow.Of(model.Design, place).ToList().FindIndex(
                one => one.Field.Key.StartsWith(beginning, StringComparison.Ordinal));
            if (0 <= row)
            {
                return GoTo(model, place.Id) with { FieldRow = row, Status = model.Status };
            }
        }

        return model;
    }
}
