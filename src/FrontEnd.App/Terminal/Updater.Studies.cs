using FrontEnd.Documents.Teaching;
using FrontEnd.Findings;
using FrontEnd.Teaching;

namespace FrontEnd.App.Terminal;

/// <summary>Studies, sites and glossary.</summary>
public static partial class Updater
{
    private const int SidewaysStep = 8;

    private static (Model, Effect?) OpenStudy(Model model, StudyKind kind)
    {
        Overlay.Study study = new(kind, new StudyWish(), model.Studies, null, null, 0, 0, 0);
        Model opened = model with { Overlay = study, Editing = null };
        return Studies.WaitsForStart(kind) ? (opened, null) : Start(opened, study);
    }

    private static (Model, Effect?) Start(Model model, Overlay.Study study)
    {
        int number = model.Studies + 1;
        return (model with { Studies = number, Overlay = study with { Number = number, Progress = 0, Outcome = null, Choice = 0, Scroll = 0, Sideways = 0 } }, new Effect.Study(number, study.Kind, study.Wish, model.Design));
    }

    private static Model Progressed(Model model, Message.Progressed news) =>
        model.Overlay is Overlay.Study { Progress: not null } study && study.Number == news.Number ? model with { Overlay = study with { Progress = news.Share } } : model;

    private static Model Studied(Model model, Message.Studied news) =>
        model.Overlay is Overlay.Study { Progress: not null } study && study.Number == news.Number
            ? model with { Overlay = study with { Progress = null, Outcome = news.Outcome, Choice = news.Outcome.Pick } }
            : model;

    /// <summary>A study whose page is left or which is begun anew is worked out for nobody.</summary>
    private static (Model Model, Effect? Effect) StopForgottenStudy(Model before, (Model Model, Effect? Effect) next)
    {
        bool forgotten = before.Overlay is Overlay.Study { Progress: not null } was && !(next.Model.Overlay is Overlay.Study { Progress: not null } now && now.Number == was.Number);
        return !forgotten ? next : (next.Model, next.Effect is null ? new Effect.CancelStudy() : new Effect.Several([new Effect.CancelStudy(), next.Effect]));
    }

    private static (Model, Effect?)? PressStudy(Model model, Overlay.Study study, Keystroke key)
    {
        if (key.Key == KeyName.Escape)
        {
            return study.Progress is null ? (model with { Overlay = null }, null) : (Tell(model with { Overlay = study with { Progress = null } }, "broken off"), null);
        }

        if (study.Outcome is { } outcome && ScrolledPage(model, key, study.Scroll, study.Sideways, outcome.Lines) is var (scroll, sideways))
        {
            return (model with { Overlay = study with { Scroll = scroll, Sideways = sideways } }, null);
        }

        if (key.Key == KeyName.Enter)
        {
            return study switch
            {
                { Progress: not null } => (model, null),
                { Outcome.Choices.Count: > 0 } => TakeChoice(model, study.Outcome.Choices[study.Choice]),
                { Outcome: null } => Start(model, study),
                _ => (model with { Overlay = null }, null),
            };
        }

        if (key is not { Key: KeyName.Letter, Alt: false, Ctrl: false } || study.Progress is not null)
        {
            return null;
        }

        char letter = char.ToLowerInvariant(key.Letter);
        int by = letter is '+' or '=' ? 1 : letter == '-' ? -1 : 0;
        if (by != 0 && study.Outcome is { Choices.Count: > 0 } found)
        {
            return (model with { Overlay = study with { Choice = Math.Clamp(study.Choice + by, 0, found.Choices.Count - 1) } }, null);
        }

        if (study.Outcome is { Choices.Count: > 0 } some && char.IsAsciiDigit(letter))
        {
            int row = letter - '1';
            return (model with { Overlay = study with { Choice = 0 <= row && row < some.Choices.Count ? row : study.Choice } }, null);
        }

        StudyWish? wish = (study.Kind, letter) switch
        {
            (StudyKind.Spread, '+' or '=' or '-') => study.Wish with { Builds = StudyWish.BuildCounts[Math.Clamp(StudyWish.BuildCounts.ToList().IndexOf(study.Wish.Builds) + by, 0, StudyWish.BuildCounts.Count - 1)] },
            (StudyKind.Spread, 'd') => study.Wish with { Normal = !study.Wish.Normal },
            (StudyKind.Spread, 'e') => study.Wish with { Seed = study.Wish.Seed + 1 },
            (StudyKind.Sizing, 'a') => study.Wish with { KeepAmplifier = !study.Wish.KeepAmplifier },
            (StudyKind.Sizing, 'c') => study.Wish with { KeepConverter = !study.Wish.KeepConverter },
            _ => null,
        };
        return wish is null ? null : (model with { Overlay = study with { Wish = wish, Outcome = null } }, null);
    }

    private static (Model, Effect?) TakeChoice(Model model, StudyChoice choice)
    {
        string words = choice.Word.Length > 60 ? choice.Word[..choice.Word.IndexOf(':')] : choice.Word;
        Model closed = model with { Overlay = null };
        (Model next, Effect? effect) = TakeOver(closed, choice.Design, words, $"{words} taken over; u undoes it");
        return next.Overlay is null && next.Complaint is null && ReferenceEquals(next.Here, closed.Here) ? (Tell(closed, $"{words} is already set"), null) : (next, effect);
    }

    private static (Model, Effect?)? PressTerms(Model model, Overlay.Terms terms, Keystroke key)
    {
        int count = Glossary.Search(terms.Line.Text).Count;
        if (key.Key is not (KeyName.Home or KeyName.End) && Picked(key, terms.Selected, Math.Max(1, count)) is { } row)
        {
            return (model with { Overlay = terms with { Selected = row } }, null);
        }

        switch (key)
        {
            case { Key: KeyName.Escape } when terms.Line.Text.Length > 0:
                return (model with { Overlay = new Overlay.Terms(Line.Of(""), 0) }, null);
            case { Key: KeyName.Escape or KeyName.Enter }:
                return (model with { Overlay = null }, null);
            case { Alt: true } or { Ctrl: true, Letter: not ('a' or 'u') } or { Key: KeyName.F1 or KeyName.F5 or KeyName.F10 }:
                return null;
            default:
                return (model with { Overlay = new Overlay.Terms(terms.Line.Press(key), 0) }, null);
        }
    }

    private static (Model, Effect?)? PressHead(Model model, Overlay.Head head, Keystroke key)
    {
        SitesField field = SitesForm.Fields[head.Field];
        string now = field.Get(head.Request);
        if (head.Typing is { } line)
        {
            return key switch
            {
                { Key: KeyName.Escape } => (model with { Overlay = head with { Typing = null } }, null),
                { Key: KeyName.Enter } => Ask(model, head with { Typing = line }, field.Set(head.Request, line.Text.Trim()), 0),
                { Key: KeyName.Tab } => Ask(model, head with { Typing = line }, field.Set(head.Request, line.Text.Trim()), key.Shift ? -1 : 1),
                { Alt: true } => null,
                _ => (model with { Overlay = head with { Typing = line.Press(key) } }, null),
            };
        }

        if (ScrolledPage(model, key, head.Scroll, head.Sideways, head.Answer.Text.Split('\n')) is var (scroll, sideways))
        {
            return (model with { Overlay = head with { Scroll = scroll, Sideways = sideways } }, null);
        }

        int by = key.Letter is '+' or '=' ? 1 : key.Letter == '-' ? -1 : 0;
        return key switch
        {
            { Key: KeyName.Escape } => (model with { Overlay = null }, null),
            { Key: KeyName.Tab } => (model with { Overlay = head with { Field = Around(head.Field + (key.Shift ? -1 : 1)) } }, null),
            { Key: KeyName.Enter } when field.IsWord => Ask(model, head, field.Set(head.Request, Neighbour(field, now, 1)), 0),
            { Key: KeyName.Enter } => (model with { Overlay = head with { Typing = Line.Of(now) } }, null),
            { Alt: false, Ctrl: false } when by != 0 && field.Words.Count > 0 => Ask(model, head, field.Set(head.Request, Neighbour(field, now, by)), 0),
            { Key: KeyName.Letter, Alt: false, Ctrl: false } when !field.IsWord && char.IsLetterOrDigit(key.Letter) => (model with { Overlay = head with { Typing = Line.Of("").Insert(key.Letter.ToString()) } }, null),
            { Key: KeyName.Letter, Alt: false, Ctrl: false } => (model, null),
            _ => null,
        };
    }

    private static int Around(int field) => (field + SitesForm.Fields.Count) % SitesForm.Fields.Count;

    private static string Neighbour(SitesField field, string now, int by) => field.Words[((field.Words.ToList().IndexOf(now) + by) % field.Words.Count + field.Words.Count) % field.Words.Count];

    /// <summary>Asks anew; where the question cannot be answered the line stays open and says why.</summary>
    private static (Model, Effect?) Ask(Model model, Overlay.Head head, SitesRequest request, int step)
    {
        (SitesAnswer? answer, IReadOnlyList<Finding> findings) = request.Work();
        return answer is null
            ? (Complain(model, findings[0]), null)
            : (model with { Overlay = head with { Request = request, Answer = answer, Typing = null, Field = Around(head.Field + step), Scroll = 0 } }, null);
    }

    /// <summary>Where a page of text is after a key; null for a key that does not move it. Tab goes to the next paragraph.</summary>
    private static (int Scroll, int Sideways)? ScrolledPage(Model model, Keystroke key, int scroll, int sideways, IReadOnlyList<string> lines)
    {
        int widest = Math.Max(0, lines.Max(line => line.Length) - model.Width + 2);
        return key switch
        {
            { Alt: true } or { Ctrl: true } => null,
            { Key: KeyName.Left } => (scroll, Math.Max(0, sideways - SidewaysStep)),
            { Key: KeyName.Right } => (scroll, Math.Min(widest, sideways + SidewaysStep)),
            { Key: KeyName.Tab } when model.Overlay is Overlay.Study => (NextParagraph(lines, scroll, key.Shift ? -1 : 1), sideways),
            _ => Scrolled(key, scroll) is { } line ? (line, sideways) : null,
        };
    }

    private static int NextParagraph(IReadOnlyList<string> lines, int scroll, int by)
    {
        for (int at = scroll + by; 0 < at && at < lines.Count; at += by)
        {
            if (lines[at - 1].Length == 0 && lines[at].Length > 0)
            {
                return at;
            }
        }

        return by < 0 ? 0 : scroll;
    }
}
