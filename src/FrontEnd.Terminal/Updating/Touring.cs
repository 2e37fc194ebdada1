using FrontEnd.Catalogue;

namespace FrontEnd.Terminal;

/// <summary>The guided tour.</summary>
public static class Touring
{
    /// <summary>Begins the tour.</summary>
    public static (Model Model, Effect? Effect) Start(Model model) => (Show(model with { Page = null, Editing = null }, 0), null);

    /// <summary>What a key does in a step of the tour; null where it means what it means everywhere.</summary>
    public static (Model Model, Effect? Effect)? Press(Model model, int step, Keystroke key)
    {
        switch (key)
        {
            case { Key: KeyName.Letter, Letter: ' ' }:
                return step + 1 < Tour.Steps.Count
                    ? (Show(model, step + 1), null)
                    : (model with { TourStep = null, Status = "the tour is over; ? shows all keys" }, null);
            case { Key: KeyName.Backspace }:
                return (Show(model, Math.Max(0, step - 1)), null);
            case { Key: KeyName.Letter, Letter: 'j' or 'J', Alt: false, Ctrl: false }:
                return DoStep(model, Tour.Steps[step]);
            default:
                return null;
        }
    }

    private static Model Show(Model model, int step)
    {
        TourStep shown = Tour.Steps[step];
        Model there = Whereabouts.GoTo(model, shown.Place) with { TourStep = step };
        int row = shown.Field.Length == 0
            ? 0
            : Math.Max(0, Whereabouts.FormOf(there).ToList().FindIndex(one => one.Field.Key == shown.Field));
        int result = Math.Max(0, Whereabouts.ResultsOf(there).ToList().FindIndex(one => one.Id == shown.Result));
        return there with { FieldRow = row, ResultRow = result };
    }

    private static (Model, Effect?) DoStep(Model model, TourStep step)
    {
        if (step.Field.Length == 0 || DesignFields.Find(model.Design, step.Field) is not { } field)
        {
            return (model.Tell("nothing to change in this step; Space goes on"), null);
        }

        return Changes.SetValue(model, field, step.Try);
    }
}
