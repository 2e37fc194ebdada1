using System.Collections.Immutable;
using FrontEnd.Documents;
using FrontEnd.Documents.Coefficients;
using FrontEnd.Documents.Reading;
using FrontEnd.Documents.Sheets;

namespace FrontEnd.Terminal;

/// <summary>Opening, saving, closing, recovering: several designs, each with its file.</summary>
internal static class Files
{
    /// <summary>News about files, and what is wanted of them.</summary>
    public static (Model Model, Effect? Effect) Hear(Model model, Message message) => message switch
    {
        Message.Opened opened => Opened(model, opened),
        Message.Saved saved => Saved(model, saved),
        Message.Exists exists => (AskReplace(model, exists), null),
        Message.SaveTo save => (
            model with { Page = null }, new Effect.Save(model.Here.Slot, save.Path, model.Here.Document, MayReplace: true)),
        Message.SheetTo sheet => WriteSheet(model with { Page = null }, sheet.Path, mayReplace: true),
        Message.CoefficientsTo file => WriteCoefficients(model with { Page = null }, file.Path, mayReplace: true),
        Message.MarksTo marks => (model with { Page = marks.Page }, new Effect.Marks(marks.Path, marks.Page, MayReplace: true)),
        Message.Close close => Close(model, close.Slot),
        _ => throw new ArgumentOutOfRangeException(nameof(message), message, "Message is not about files."),
    };

    /// <summary>Asks which design to open.</summary>
    public static (Model Model, Effect? Effect) AskOpen(Model model) =>
        (model with { Page = new FileNamePage(FilePurpose.Open, Line.Of("")), Editing = null }, new Effect.List(FilePurpose.Open, ""));

    /// <summary>Saves where the design came from; asks for a name where it came from nowhere.</summary>
    public static (Model Model, Effect? Effect) Save(Model model) => model.Here.Path is { } path
        ? (model, new Effect.Save(model.Here.Slot, path, model.Here.Document, MayReplace: true) { Known = model.Here.Saved.Text })
        : AskName(model, FilePurpose.SaveAs);

    /// <summary>Asks where to write the coefficients.</summary>
    public static (Model Model, Effect? Effect) AskCoefficients(Model model) => model.Design.Digital.Count > 0
        ? AskName(model, FilePurpose.Coefficients)
        : (model.Tell("this design has no digital filter; i inserts one"), null);

    private static (Model Model, Effect? Effect) Opened(Model model, Message.Opened opened)
    {
        if (opened.Path is not null && model.Designs.FindIndex(design => design.Path is { } path && Path.GetFullPath(path) == Path.GetFullPath(opened.Path)) is var known and >= 0)
        {
            return (model with { Current = known, Page = null, Status = $"{opened.Path} is already open" }, null);
        }

        OpenDesign design = new() { Slot = model.NextSlot, Document = opened.Document, Saved = opened.Document, Path = opened.Path,
            Run = 1 };
        Model next = model with
        {
            Designs = model.Designs.Add(design),
            Current = model.Designs.Count,
            NextSlot = model.NextSlot + 1,
            Page = null,
            FieldRow = 0,
            ResultRow = 0,
            OnResults = false,
            Status = opened.Document.HasErrors ? "" : $"{opened.Path}: open; k goes to the next design, c compares",
        };
        return (Errors.AtFirst(next), Effect.Evaluate.Of(design.Slot, 1, opened.Document));
    }

    /// <summary>Closes the design in hand; asks first where something would be lost.</summary>
    public static (Model Model, Effect? Effect) AskClose(Model model)
    {
        OpenDesign here = model.Here;
        if (!here.IsChanged)
        {
            return Close(model, here.Slot);
        }

        return (model with
        {
            Editing = null,
            Page = new QuestionPage($"{here.Title} has changes that are not saved.",
            [
                new('b', "back", new Message.Dismiss()), new('s', "save and close", new Message.SaveThen(new Message.Close(here.Slot))),
                new('c', "close without them", new Message.Close(here.Slot)),
            ]),
        }, null);
    }

    private static (Model Model, Effect? Effect) Close(Model model, int slot)
    {
        if (model.Designs.Count == 1)
        {
            return AskQuit(model with { Page = null });
        }

        int at = Math.Max(0, model.Designs.FindIndex(design => design.Slot == slot));
        ImmutableList<OpenDesign> rest = model.Designs.RemoveAt(at);
        Model next = model with { Designs = rest, Current = Math.Min(model.Current, rest.Count - 1), Page = null, Editing = null };
        return (next with { FieldRow = 0, ResultRow = 0 }, null);
    }

    /// <summary>Asks for a file name to write under.</summary>
    public static (Model Model, Effect? Effect) AskName(Model model, FilePurpose purpose)
    {
        string stem = Slug.Of(model.Here.Title) is { Length: > 0 } slug ? slug : "design";
        string beside = model.Here.Path is { } path ? Path.ChangeExtension(path, null) : stem;
        string suggestion = purpose switch
        {
            FilePurpose.Sheet => beside + SheetWriting.Extension,
            FilePurpose.Coefficients => beside + CoefficientWriting.Extension,
            _ => model.Here.Path ?? stem + ".toml",
        };
        return (model with { Page = new FileNamePage(purpose, Line.Of(suggestion)), Editing = null }, new Effect.List(purpose, suggestion));
    }

    /// <summary>Saves under another name. A plain-number design that becomes a .toml file is written out in that form, one step of
    /// undo.</summary>
    public static (Model Model, Effect? Effect) SaveAs(Model model, string path)
    {
        DesignDocument document = model.Here.Document;
        DocumentFormat format = DesignDocument.FormatOf(path, document.Text);
        if (format == document.Format)
        {
            return path == model.Here.Path ? Save(model) : (model, new Effect.Save(model.Here.Slot, path, document, MayReplace: false));
        }

        if (format == DocumentFormat.Json)
        {
            return (model.Complain(new Finding("FE0191", Severity.Error, "", "a TOML design cannot be saved as JSON", null,
                "choose a name that ends in .toml; y writes a JSON sheet")), null);
        }

        DesignDocument written = DesignDocument.Parse(DesignWriter.ToToml(document), format, document.File, document.Cards);
        (Model changed, Effect? effect) = Changes.Change(model, written, "written as TOML", "");
        Effect save = new Effect.Save(model.Here.Slot, path, written, MayReplace: false);
        return (changed, effect is null ? save : new Effect.Several([effect, save]));
    }

    private static (Model Model, Effect? Effect) Saved(Model model, Message.Saved saved)
    {
        Model next = model.WithDesign(saved.Slot, design => design with
        {
            Saved = saved.Document,
            Path = saved.Path,
            FileOnDisk = null,
            IsGone = false,
            SavedShown = design.IsFresh && ReferenceEquals(design.Shown?.Design, saved.Document.Design) ? design.Shown : null,
        });
        next = next with { Status = $"saved {saved.Path}; e saves under another name", Complaint = null };
        return model.AfterSave is { } then && saved.Slot == model.Here.Slot ? Updater.Update(next with { AfterSave = null }, then) : (next, null);
    }

    private static Model AskReplace(Model model, Message.Exists exists) => model with
    {
        Page = new QuestionPage($"{exists.Path} already exists.",
        [
            new('b', "back", new Message.Dismiss()),
            new('r', "replace it", exists.Anyway ?? exists.Purpose switch
            {
                FilePurpose.Sheet => new Message.SheetTo(exists.Path),
                FilePurpose.Coefficients => new Message.CoefficientsTo(exists.Path),
                _ => new Message.SaveTo(exists.Path),
            }),
        ]),
    };

    /// <summary>Has the sheet written.</summary>
    public static (Model Model, Effect? Effect) WriteSheet(Model model, string path, bool mayReplace) =>
        Errors.InTheWay(model.Here) is { } wrong ? (model.Complain(wrong), null)
        : model.Here is { Shown: { } shown, IsFresh: true }
        ? (model, new Effect.Sheet(path, model.Here.Document, shown, mayReplace))
        : (model.Tell("the figures are being recomputed; try again in a moment"), null);

    /// <summary>Has the coefficients written.</summary>
    public static (Model Model, Effect? Effect) WriteCoefficients(Model model, string path, bool mayReplace) =>
        Errors.InTheWay(model.Here) is { } wrong ? (model.Complain(wrong), null) : (model, new Effect.Coefficients(path, model.Design, mayReplace));

    /// <summary>Offers unsaved work of an earlier session.</summary>
    public static Model Offer(Model model, FoundWork work)
    {
        string aside = work.SetAside.Count == 0 ? ""
            : $"a recovery file holds no design that can be read; it is kept as {string.Join(", ", work.SetAside)}";
        Model told = aside.Length == 0 ? model : model with { Status = aside };
        return work.Designs.Count == 0 ? told : told with
        {
            Page = new QuestionPage(
                $"An earlier session ended without saving: {string.Join(", ", work.Designs.Select(design => design.Path ?? "a design without a file"))}.",
                [
                    new('r', "recover it", new Message.Recover(work.Designs)),
                    new('l', "later: keep it and ask again next time", new Message.Dismiss()),
                    new('d', "delete it for good", new Message.DropRecovery()),
                ]),
        };
    }

    /// <summary>Takes unsaved work of an earlier session in hand.</summary>
    public static (Model Model, Effect? Effect) Recover(Model model, IReadOnlyList<RecoveredDesign> designs)
    {
        List<Effect> effects = [];
        Model next = model with { Page = null, Editing = null, FieldRow = 0, ResultRow = 0 };
        foreach (RecoveredDesign one in designs)
        {
            int open = one.Path is null
                ? -1
                : next.Designs.FindIndex(design => design.Path is { } path && Path.GetFullPath(path) == one.Path);
            if (open < 0)
            {
                // What is in the file now is what the recovered text counts as changed against.
                string format = one.Path ?? "";
                DesignDocument saved = DesignDocument.Parse(
                    one.FileText ?? "", DesignDocument.FormatOf(format, one.Text), one.Path, one.Cards);
                next = next with
                {
                    Designs = next.Designs.Add(new OpenDesign { Slot = next.NextSlot, Document = saved, Saved = saved, Path = one.Path }),
                    NextSlot = next.NextSlot + 1,
                };
                open = next.Designs.Count - 1;
            }

            next = next with { Current = open };
            DesignDocument here = next.Here.Document;
            (next, Effect? effect) = Changes.Change(next, here.WithCards(here.Cards.And(one.Cards)).WithText(one.Text), "recovered", "");
            effects.Add(effect ?? Effect.Evaluate.Of(next.Here.Slot, next.Here.Run, next.Here.Document));
        }

        // This session keeps it from here on.
        effects.Add(new Effect.DropRecovery());
        return (next with { Status = "recovered; w saves it, u goes back to what the file says" }, new Effect.Several(effects));
    }

    /// <summary>Quits; asks first where something would be lost.</summary>
    public static (Model Model, Effect? Effect) AskQuit(Model model)
    {
        List<OpenDesign> changed = [.. model.Designs.Where(design => design.IsChanged)];
        if (changed.Count == 0)
        {
            return Updater.Next(model, new Message.LeaveNow());
        }

        Answer[] save = model.Here.IsChanged ? [new('w', changed.Count == 1 ? "save it and quit" : "save this one, and ask again", new Message.SaveThen(new Message.Do(Act.Quit)))] : [];
        return (model with
        {
            Editing = null,
            Page = new QuestionPage($"Not saved: {string.Join(", ", changed.Select(design => design.Title))}. Quit?",
                [new('n', "no, stay", new Message.Dismiss()), .. save, new('y', "yes, without saving", new Message.LeaveNow())]),
        }, null);
    }
}
