using System.Collections.Immutable;
using FrontEnd.Designs;
using FrontEnd.Documents;
using FrontEnd.Documents.Teaching;
using FrontEnd.Fields;
using FrontEnd.Findings;
using FrontEnd.Results;

namespace FrontEnd.App.Terminal;

/// <summary>From a model and what happened to the next model and at most one thing to do. Pure.</summary>
public static partial class Updater
{
    private const int Page = 10;

    public static (Model Model, Effect? Effect) Update(Model model, Message message) => StopForgottenStudy(model, Next(model, message));

    private static (Model Model, Effect? Effect) Next(Model model, Message message) => message switch
    {
        Message.Pressed pressed => Press(model with { Status = "", Complaint = null }, pressed.Key),
        Message.Do act => Perform(model with { Status = "", Complaint = null }, act.Act),
        Message.Pasted pasted => (Paste(model, pasted.Text), null),
        Message.Resized size => (model with { Width = size.Width, Height = size.Height }, null),
        Message.GoTo go => (GoTo(model, go.PlaceId), null),
        Message.PickField pick => PickField(model, pick.Row),
        Message.PickResult pick => PickResult(model, pick.Row),
        Message.PickChoice pick => PickChoice(model, pick.Row),
        Message.CursorAt at => (model.Overlay is Overlay.Graph graph ? model with { Overlay = graph with { Cursor = at.Share } } : model, null),
        Message.Scrolled scrolled => Scroll(model, scrolled.Lines),
        Message.Evaluated done => (WithDesign(model, done.Slot, design => done.Run < design.ShownRun || design.Run < done.Run ? design : Shown(design, done)), null),
        Message.Advised done => (WithDesign(model, done.Slot, design => design.ShownRun == done.Run ? design with { Shown = done.Assessment, Advised = true } : design), null),
        Message.Moved moved => (model.Overlay is Overlay.Why why && why.ResultId == moved.ResultId && model.Here.Slot == moved.Slot && model.Here.Run == moved.Run
            ? model with { Overlay = why with { Sensitivities = moved.Sensitivities } } : model, null),
        Message.Progressed progressed => (Progressed(model, progressed), null),
        Message.Studied studied => (Studied(model, studied), null),
        Message.Opened opened => Opened(model, opened),
        Message.Saved saved => Saved(model, saved),
        Message.Listed listed => (model.Overlay is Overlay.FileName file && file.Purpose == listed.Purpose && file.Line.Text == listed.Typed
            ? model with { Overlay = file with { Entries = listed.Entries, Selected = -1 } } : model, null),
        Message.Told told => (model with { Status = told.Text, Complaint = null }, null),
        Message.Failed failed => (Complain(model, failed.Finding), null),
        Message.FoundRecovery found => (Offer(model, found.Designs), null),
        Message.Recover recover => Recover(model, recover.Designs),
        Message.DropRecovery => (model with { Overlay = null }, new Effect.DropRecovery()),
        Message.Close close => Close(model, close.Slot),
        Message.SaveTo save => (model with { Overlay = null }, new Effect.Save(model.Here.Slot, save.Path, model.Here.Document, MayReplace: true)),
        Message.Exists exists => (AskReplace(model, exists), null),
        Message.SheetTo sheet => WriteSheet(model with { Overlay = null }, sheet.Path, mayReplace: true),
        Message.CoefficientsTo file => WriteCoefficients(model with { Overlay = null }, file.Path, mayReplace: true),
        Message.SetCards set => SetCards(model with { Overlay = null }, set),
        Message.Take take => Change(model with { Overlay = null }, take.Document, take.Label, $"done: {take.Label}. u undoes it."),
        Message.LeaveNow => (model with { Quitting = true }, new Effect.Quit()),
        Message.Dismiss => (model with { Overlay = null }, null),
        _ => throw new ArgumentOutOfRangeException(nameof(message), message, "Message is not handled."),
    };

    private static OpenDesign Shown(OpenDesign design, Message.Evaluated done) =>
        design with
        {
            Before = design.ShownRun < done.Run ? design.Shown : design.Before,
            Shown = done.Assessment,
            ShownRun = done.Run,
            Advised = false,
            SavedShown = ReferenceEquals(done.Assessment.Design, design.Saved.Design) ? done.Assessment : design.SavedShown,
        };

    private static (Model, Effect?) Press(Model model, Keystroke key)
    {
        if (model.TooSmall)
        {
            if (model.Overlay is Overlay.Ask question)
            {
                return PressAnswer(model, question, key);
            }

            // Nothing that cannot be seen is changed.
            return KeyMap.Meaning(key) is Act.Quit or Act.Save ? Perform(model, KeyMap.Meaning(key)!.Value) : (model, null);
        }

        if (model.Editing is { } editor)
        {
            return TypeInField(model, editor, key);
        }

        if (model.Overlay is { } overlay && PressOver(model, overlay, key) is var (over, effect))
        {
            return (WithinPage(over), effect);
        }

        if (model.TourStep is { } step && model.Overlay is null && PressInTour(model, step, key) is { } toured)
        {
            return toured;
        }

        if (model is { Overlay: null, OnResults: false } && key is { Key: KeyName.Letter, Alt: false, Ctrl: false } && (char.IsAsciiDigit(key.Letter) || key.Letter is '.' or '"'))
        {
            return BeginTyping(model, key.Letter == '"' ? "" : key.Letter.ToString());
        }

        return KeyMap.Meaning(key) is { } act ? Perform(model, act) : (model, null);
    }

    private static (Model, Effect?) Perform(Model model, Act act)
    {
        switch (act)
        {
            case Act.NextBlock:
                return (Walk(model, +1), null);
            case Act.PreviousBlock:
                return (Walk(model, -1), null);
            case Act.Up:
                return (Step(model, -1), null);
            case Act.Down:
                return (Step(model, +1), null);
            case Act.PageUp:
                return (Step(model, -Page), null);
            case Act.PageDown:
                return (Step(model, +Page), null);
            case Act.First:
                return (Step(model, -10_000), null);
            case Act.Last:
                return (Step(model, +10_000), null);
            case Act.SwitchPane:
                return (model with { OnResults = !model.OnResults, Editing = null }, null);
            case Act.Enter:
                return model.OnResults ? OpenWhy(model) : BeginTyping(model, null);
            case Act.Back:
                return (Back(model), null);
            case Act.StepUp:
                return StepValue(model, up: true);
            case Act.StepDown:
                return StepValue(model, up: false);
            case Act.ToDefault:
                return ToDefault(model);
            case Act.ToSaved:
                return ToSaved(model);
            case Act.Undo:
                return UndoOne(model);
            case Act.Redo:
                return RedoOne(model);
            case Act.ViewNoise:
                return (GoTo(model, "noise"), null);
            case Act.ViewMains:
                return (GoTo(model, "mains"), null);
            case Act.ViewLevels:
                return (GoTo(model, "levels"), null);
            case Act.ViewAliases:
                return (GoTo(model, "aliases"), null);
            case Act.ViewVerdicts:
                return (GoTo(model, Place.Verdicts) with { OnResults = true }, null);
            case Act.ViewSafety:
                return (GoTo(model, "safety"), null);
            case Act.ViewPower:
                return (GoTo(model, "power"), null);
            case Act.ViewSheet:
                return (GoTo(model, "sheet"), null);
            case Act.Plot:
                return (model with { Overlay = new Overlay.Graph(PlaceOf(model).Plot, 0.5, LogX: PlaceOf(model).Plot != PlotKind.Step, LogY: true), Editing = null }, null);
            case Act.AddStage:
                return (model with { Overlay = new Overlay.Insert(Insertions, 0), Editing = null }, null);
            case Act.RemoveStage:
                return RemoveElement(model);
            case Act.MoveEarlier:
                return MoveElement(model, -1);
            case Act.MoveLater:
                return MoveElement(model, +1);
            case Act.Apply:
                return ApplyAdvice(model);
            case Act.Compare:
                return Compare(model);
            case Act.NextDesign:
                return (model with { Current = (model.Current + 1) % model.Designs.Count, FieldRow = 0, ResultRow = 0, Editing = null, Overlay = null }, null);
            case Act.CloseDesign:
                return AskClose(model);
            case Act.Open:
                return (model with { Overlay = new Overlay.FileName(FilePurpose.Open, Line.Of(""), null, -1), Editing = null }, new Effect.List(FilePurpose.Open, ""));
            case Act.Save:
                return model.Here.Path is { } path
                    ? (model, new Effect.Save(model.Here.Slot, path, model.Here.Document, MayReplace: true))
                    : AskName(model, FilePurpose.SaveAs);
            case Act.SaveAs:
                return AskName(model, FilePurpose.SaveAs);
            case Act.WriteSheet:
                return AskName(model, FilePurpose.Sheet);
            case Act.WriteCoefficients:
                return model.Design.Digital.Count > 0 ? AskName(model, FilePurpose.Coefficients) : (Tell(model, "this design has no digital filter; i puts one in"), null);
            case Act.More:
                return (model with { Overlay = new Overlay.More(0), Editing = null }, null);
            case Act.Rates:
                return OpenStudy(model, StudyKind.Rates);
            case Act.Spread:
                return OpenStudy(model, StudyKind.Spread);
            case Act.Sizing:
                return OpenStudy(model, StudyKind.Sizing);
            case Act.Bench:
                return OpenStudy(model, StudyKind.Bench);
            case Act.Sites:
                return (model with { Overlay = new Overlay.Head(new SitesRequest(), new SitesRequest().Work().Answer!, 0, null, 0, 0), Editing = null }, null);
            case Act.Glossary:
                return (model with { Overlay = new Overlay.Terms(Line.Of(""), 0), Editing = null }, null);
            case Act.Tour:
                return StartTour(model);
            case Act.FieldHelp:
                return model.OnResults ? OpenWhy(model) : FieldInHand(model) is { } row ? (model with { Overlay = new Overlay.FieldHelp(row.Field.Key, 0) }, null) : (model, null);
            case Act.Help:
                return (model with { Overlay = new Overlay.Help(0), Editing = null }, null);
            case Act.Copy:
                return AskQuit(model);
            case Act.Quit:
                return AskQuit(model);
            case Act.Redraw:
                return (model, new Effect.Redraw());
            default:
                throw new ArgumentOutOfRangeException(nameof(act), act, "Action is not handled.");
        }
    }

    // --- where we are -------------------------------------------------------------------------------------------

    public static Place PlaceOf(Model model) => Place.Find(model.Design, model.PlaceId);

    public static IReadOnlyList<FormRow> FormOf(Model model) => FormRow.Of(model.Design, PlaceOf(model));

    public static IReadOnlyList<Result> ResultsOf(Model model) => model.Here.Shown is { } shown ? PlaceOf(model).ResultsOf(shown) : [];

    private static FormRow? FieldInHand(Model model) => FormOf(model) is { Count: > 0 } rows ? rows[Math.Clamp(model.FieldRow, 0, rows.Count - 1)] : null;

    private static Result? ResultInHand(Model model) => ResultsOf(model) is { Count: > 0 } rows ? rows[Math.Clamp(model.ResultRow, 0, rows.Count - 1)] : null;

    private static Model GoTo(Model model, string id)
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
            Overlay = null,
        };
    }

    private static Model Walk(Model model, int by)
    {
        IReadOnlyList<Place> blocks = Place.Blocks(model.Design);
        int at = Math.Max(0, blocks.ToList().FindIndex(block => block.Id == Place.Find(model.Design, model.BlockId).Id));

        // From a view across the path the arrows lead back to the block left behind.
        bool across = !PlaceOf(model).IsBlock;
        return GoTo(model, blocks[Math.Clamp(across ? at : at + by, 0, blocks.Count - 1)].Id);
    }

    private static Model Step(Model model, int by) => model.OnResults
        ? model with { ResultRow = Math.Clamp(model.ResultRow + by, 0, Math.Max(0, ResultsOf(model).Count - 1)) }
        : model with { FieldRow = Math.Clamp(model.FieldRow + by, 0, Math.Max(0, FormOf(model).Count - 1)) };

    private static Model Back(Model model)
    {
        if (model.Overlay is not null)
        {
            return model with { Overlay = null };
        }

        if (model.TourStep is not null)
        {
            return model with { TourStep = null, Status = "tour left; t begins it again" };
        }

        return model.OnResults ? model with { OnResults = false } : PlaceOf(model).IsBlock ? model : GoTo(model, model.BlockId);
    }

    private static (Model, Effect?) PickField(Model model, int row)
    {
        Model picked = model with { FieldRow = row, OnResults = false, Editing = null, Status = "", Complaint = null };
        return model.FieldRow == row && !model.OnResults && model.Editing is null ? BeginTyping(picked, null) : (picked, null);
    }

    private static (Model, Effect?) PickResult(Model model, int row)
    {
        Model picked = model with { ResultRow = row, OnResults = true, Editing = null, Status = "", Complaint = null };
        return model.ResultRow == row && model.OnResults ? OpenWhy(picked) : (picked, null);
    }

    private static (Model, Effect?) Scroll(Model model, int lines) => model.Overlay switch
    {
        null => (model.Editing is null ? Step(model, lines) : model, null),
        { } overlay => PressOver(model, overlay, new Keystroke(lines < 0 ? KeyName.Up : KeyName.Down)) is var (over, effect) ? (WithinPage(over), effect) : (model, null),
    };

    // --- why ----------------------------------------------------------------------------------------------------

    private static (Model, Effect?) OpenWhy(Model model) => ResultInHand(model) is { } result && model.Here.Shown is { } shown
        ? (model with { Overlay = new Overlay.Why(result.Id, null, 0) }, new Effect.Move(model.Here.Slot, model.Here.Run, shown, result.Id))
        : (model, null);

    /// <summary>The figure that the change which helps most would be made for: the one in hand; in the form the first that there is a change for.</summary>
    public static Result? FixInHand(Model model) => model switch
    {
        { Overlay: Overlay.Why why } => model.Here.Shown?.Find(why.ResultId),
        { OnResults: true } => ResultInHand(model),
        _ => ResultsOf(model).FirstOrDefault(one => one.Verdict.Improvement is not null),
    };

    private static (Model, Effect?) ApplyAdvice(Model model)
    {
        Result? result = FixInHand(model);
        if (result?.Verdict.Kind == VerdictKind.Pass)
        {
            return (Tell(model, $"{result.Name}: meets its limit already, nothing is changed"), null);
        }

        if (result is not null && result.Verdict.Requirement is null)
        {
            return (Tell(model, $"{result.Name}: no limit is set for it, nothing to mend; up goes to the figures that are judged"), null);
        }

        if (result?.Verdict.Improvement is not { } improvement)
        {
            return (Tell(model, !model.Here.Advised || !model.Here.IsFresh ? "still looking for the change that helps most; try again in a moment" : "no single change was found that helps here"), null);
        }

        if (!model.Here.IsFresh)
        {
            return (Tell(model, "the figures are being worked out anew; try again in a moment"), null);
        }

        return TakeOver(model with { Overlay = null }, improvement.Design, improvement.Change, $"done: {improvement.Change}. u undoes it.");
    }

    /// <summary>Takes another design's values into the document; asks first where the file would have to be written anew.</summary>
    private static (Model, Effect?) TakeOver(Model model, Design wanted, string label, string status)
    {
        TakenOver taken = Edits.TakeOver(model.Here.Document, wanted);
        return taken switch
        {
            { Finding: { } finding } => (Complain(model, finding), null),
            { Comments: > 0 and var comments } => (model with
            {
                Editing = null,
                Overlay = new Overlay.Ask(
                    $"The form of this file leaves no place for the change ({label}): the file would be written anew, and {(comments == 1 ? "its comment" : $"its {comments} comments")} would stand at its end.",
                    [new('y', "yes, write it anew", new Message.Take(taken.Document, label)), new('n', "no, leave it as it is", new Message.Dismiss())]),
            }, null),
            _ => Change(model, taken.Document, label, status),
        };
    }

    // --- several designs ----------------------------------------------------------------------------------------

    private static (Model, Effect?) Compare(Model model)
    {
        if (model.Designs.Count == 1)
        {
            return (model with { Overlay = new Overlay.Compare(null, 0), Editing = null }, null);
        }

        OpenDesign other = model.Designs[(model.Current + 1) % model.Designs.Count];
        return (model with { Overlay = new Overlay.Compare(other.Slot, 0), Editing = null }, null);
    }

    private static (Model, Effect?) Opened(Model model, Message.Opened opened)
    {
        if (opened.Path is not null && model.Designs.FindIndex(design => design.Path == opened.Path) is var known and >= 0)
        {
            return (model with { Current = known, Overlay = null, Status = $"{opened.Path} is open already" }, null);
        }

        OpenDesign design = new() { Slot = model.NextSlot, Document = opened.Document, Saved = opened.Document, Path = opened.Path, Run = 1 };
        Model next = model with
        {
            Designs = model.Designs.Add(design),
            Current = model.Designs.Count,
            NextSlot = model.NextSlot + 1,
            Overlay = null,
            FieldRow = 0,
            ResultRow = 0,
            OnResults = false,
            Status = opened.Document.HasErrors ? "" : $"{opened.Path}: open; k goes to the next design, c compares",
        };
        Finding? worst = opened.Document.Findings.FirstOrDefault(finding => finding.Severity == Severity.Error);
        return (worst is null ? next : Complain(next, worst), new Effect.Evaluate(design.Slot, 1, opened.Document.Design));
    }

    private static (Model, Effect?) AskClose(Model model)
    {
        OpenDesign here = model.Here;
        if (!here.IsChanged)
        {
            return Close(model, here.Slot);
        }

        return (model with
        {
            Editing = null,
            Overlay = new Overlay.Ask($"{here.Title} has changes that are not saved.",
            [
                new('s', "save first", new Message.Do(Act.Save)), new('c', "close without them", new Message.Close(here.Slot)), new('b', "back", new Message.Dismiss()),
            ]),
        }, null);
    }

    private static (Model, Effect?) Close(Model model, int slot)
    {
        if (model.Designs.Count == 1)
        {
            return AskQuit(model with { Overlay = null });
        }

        int at = Math.Max(0, model.Designs.FindIndex(design => design.Slot == slot));
        ImmutableList<OpenDesign> rest = model.Designs.RemoveAt(at);
        return (model with { Designs = rest, Current = Math.Min(model.Current, rest.Count - 1), Overlay = null, Editing = null, FieldRow = 0, ResultRow = 0 }, null);
    }

    // --- files --------------------------------------------------------------------------------------------------

    private static (Model, Effect?) AskName(Model model, FilePurpose purpose)
    {
        string stem = DesignFields.Slug(model.Here.Title) is { Length: > 0 } slug ? slug : "design";
        string beside = model.Here.Path is { } path ? System.IO.Path.ChangeExtension(path, null) : stem;
        string suggestion = purpose switch
        {
            FilePurpose.Sheet => beside + SheetWriting.Extension,
            FilePurpose.Coefficients => beside + CoefficientWriting.Extension,
            _ => model.Here.Path ?? stem + ".toml",
        };
        return (model with { Overlay = new Overlay.FileName(purpose, Line.Of(suggestion), null, -1), Editing = null }, new Effect.List(purpose, suggestion));
    }

    /// <summary>Saves under another name. A plain-number design that becomes a .toml file is written out in that form, one step of undo.</summary>
    private static (Model, Effect?) SaveAs(Model model, string path)
    {
        DesignDocument document = model.Here.Document;
        DocumentFormat format = DesignDocument.FormatOf(path, document.Text);
        if (format == document.Format)
        {
            return (model, new Effect.Save(model.Here.Slot, path, document, MayReplace: path == model.Here.Path));
        }

        if (format == DocumentFormat.Json)
        {
            return (Complain(model, new Finding("FE0191", Severity.Error, "", "a TOML design is not saved as JSON", null, "choose a name that ends in .toml; y writes a sheet that is JSON")), null);
        }

        DesignDocument written = DesignDocument.Parse(DesignWriter.ToToml(document.Design), format, document.File, System.IO.Path.GetDirectoryName(document.File is { } file ? System.IO.Path.GetFullPath(file) : null));
        (Model changed, Effect? effect) = Change(model, written, "written as TOML", "");
        Effect save = new Effect.Save(model.Here.Slot, path, written, MayReplace: false);
        return (changed, effect is null ? save : new Effect.Several([effect, save]));
    }

    private static (Model, Effect?) Saved(Model model, Message.Saved saved)
    {
        Model next = WithDesign(model, saved.Slot, design => design with
        {
            Saved = saved.Document,
            Path = saved.Path,
            SavedShown = design.IsFresh && ReferenceEquals(design.Shown?.Design, saved.Document.Design) ? design.Shown : null,
        });
        return (next with { Status = $"saved {saved.Path}", Complaint = null }, null);
    }

    private static Model AskReplace(Model model, Message.Exists exists) => model with
    {
        Overlay = new Overlay.Ask($"{exists.Path} is there already.",
        [
            new('r', "replace it", exists.Purpose switch
            {
                FilePurpose.Sheet => new Message.SheetTo(exists.Path),
                FilePurpose.Coefficients => new Message.CoefficientsTo(exists.Path),
                _ => new Message.SaveTo(exists.Path),
            }),
            new('b', "back", new Message.Dismiss()),
        ]),
    };

    private static (Model, Effect?) WriteSheet(Model model, string path, bool mayReplace) => model.Here is { Shown: { } shown, IsFresh: true }
        ? (model, new Effect.Sheet(path, model.Here.Document, shown, mayReplace))
        : (Tell(model, "the figures are being worked out anew; try again in a moment"), null);

    private static (Model, Effect?) WriteCoefficients(Model model, string path, bool mayReplace) => (model, new Effect.Coefficients(path, model.Design, mayReplace));

    private static Model Offer(Model model, IReadOnlyList<RecoveredDesign> designs) => model with
    {
        Overlay = new Overlay.Ask(
            $"An earlier session ended without saving: {string.Join(", ", designs.Select(design => design.Path ?? "a design without a file"))}.",
            [new('r', "recover it", new Message.Recover(designs)), new('d', "drop it for good", new Message.DropRecovery()), new('l', "later: keep it and ask again", new Message.Dismiss())]),
    };

    private static (Model, Effect?) Recover(Model model, IReadOnlyList<RecoveredDesign> designs)
    {
        List<Effect> effects = [];
        Model next = model with { Overlay = null, Editing = null, FieldRow = 0, ResultRow = 0 };
        foreach (RecoveredDesign one in designs)
        {
            int open = one.Path is null ? -1 : next.Designs.FindIndex(design => design.Path is { } path && System.IO.Path.GetFullPath(path) == one.Path);
            if (open < 0)
            {
                // What is in the file now is what the recovered text counts as changed against.
                string format = one.Path ?? "";
                DesignDocument saved = DesignDocument.Parse(one.FileText ?? "", DesignDocument.FormatOf(format, one.Text), one.Path, System.IO.Path.GetDirectoryName(one.Path));
                next = next with
                {
                    Designs = next.Designs.Add(new OpenDesign { Slot = next.NextSlot, Document = saved, Saved = saved, Path = one.Path }),
                    NextSlot = next.NextSlot + 1,
                };
                open = next.Designs.Count - 1;
            }

            next = next with { Current = open };
            (next, Effect? effect) = Change(next, next.Here.Document.WithText(one.Text), "recovered", "");
            effects.Add(effect ?? new Effect.Evaluate(next.Here.Slot, next.Here.Run, next.Design));
        }

        // This session keeps it from here on.
        effects.Add(new Effect.DropRecovery());
        return (next with { Status = "recovered; w saves it, u goes back to what the file says" }, new Effect.Several(effects));
    }

    private static (Model, Effect?) AskQuit(Model model)
    {
        List<OpenDesign> changed = [.. model.Designs.Where(design => design.IsChanged)];
        string question = changed.Count == 0 ? "Quit?" : $"Not saved: {string.Join(", ", changed.Select(design => design.Title))}. Quit?";
        Answer[] answers = changed.Count == 0
            ? [new('y', "yes, quit", new Message.LeaveNow()), new('n', "no, stay", new Message.Dismiss())]
            : [new('y', "yes, without saving", new Message.LeaveNow()), new('w', "save this one first", new Message.Do(Act.Save)), new('n', "no, stay", new Message.Dismiss())];
        return (model with { Overlay = new Overlay.Ask(question, answers), Editing = null }, null);
    }

    // --- small helpers ------------------------------------------------------------------------------------------

    private static Model Tell(Model model, string text) => model with { Status = text, Complaint = null };

    private static Model Complain(Model model, Finding finding) => model with { Status = finding.Message, Complaint = finding };

    private static Model WithDesign(Model model, int slot, Func<OpenDesign, OpenDesign> change) => model.Designs.FindIndex(design => design.Slot == slot) is var at and >= 0
        ? model with { Designs = model.Designs.SetItem(at, change(model.Designs[at])) }
        : model;
}
