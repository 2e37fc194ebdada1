namespace FrontEnd.Terminal;

/// <summary>What lies over the form and its results: its keys, its picture, its height, its help. A page is one file; its way, an <see
/// cref="Act"/>, is one line in <see cref="KeyMap.Acts"/>.</summary>
public abstract record Page
{
    /// <summary>Rows that a page key goes.</summary>
    protected const int Leap = 10;

    /// <summary>What a key does here; null where it means what it means everywhere.</summary>
    public abstract (Model Model, Effect? Effect)? Press(Model model, Keystroke key);

    /// <summary>Draws the page.</summary>
    public abstract void Paint(Canvas canvas, Model model, Frame frame);

    /// <summary>What the key line says.</summary>
    public virtual IEnumerable<KeyHint> Keys(Model model) =>
        [new("up/dn", "move"), KeyHint.Of(KeyName.Enter, "Enter", "take"), KeyHint.Back];

    /// <summary>What stands at the foot while there is nothing newer to say; "" for nothing.</summary>
    public virtual string Hint(Model model) => "";

    /// <summary>True where the form stays in sight below the page.</summary>
    public virtual bool IsOverTheForm => false;

    /// <summary>True where letters are text, or go through a list, and are no commands.</summary>
    public virtual bool TakesText => false;

    /// <summary>What a click on a row, or Enter on it, does.</summary>
    public virtual (Model Model, Effect? Effect) Pick(Model model, int row) => (model, null);

    /// <summary>What a pasted line does here; null where it goes nowhere.</summary>
    public virtual (Model Model, Effect? Effect)? Paste(Model model, string line) => null;

    /// <summary>The page after news that it asked for, or a click into it; the same page where they are not for it.</summary>
    public virtual Page Hear(Model model, Message news) => this;

    /// <summary>What is asked, for telling one question from another: what was typed before it was on the screen is no answer to it. Null for a page that asks
    /// nothing.</summary>
    public virtual object? Asked => null;

    /// <summary>The model with another page.</summary>
    protected static (Model Model, Effect? Effect) Show(Model model, Page page) => (model with { Page = page }, null);

    /// <summary>The model without a page.</summary>
    protected static (Model Model, Effect? Effect) Close(Model model) => (model with { Page = null }, null);

    /// <summary>Opens a page: nothing is being typed any more.</summary>
    protected static (Model Model, Effect? Effect) Open(Model model, Page page) => (model with { Page = page, Editing = null }, null);

    /// <summary>The row after a key that moves through a list; null for another key.</summary>
    protected static int? Picked(Keystroke key, int selected, int count) => key.Key switch
    {
        KeyName.Up => Math.Max(0, selected - 1),
        KeyName.Down => Math.Min(count - 1, selected + 1),
        KeyName.PageUp => Math.Max(0, selected - Leap),
        KeyName.PageDown => Math.Min(count - 1, selected + Leap),
        KeyName.Home => 0,
        KeyName.End => count - 1,
        _ => null,
    };
}
