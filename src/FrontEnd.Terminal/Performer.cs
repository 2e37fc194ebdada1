using System.Collections.Immutable;
using FrontEnd.Advice;
using FrontEnd.Documents;
using FrontEnd.Documents.Coefficients;
using FrontEnd.Documents.Files;
using FrontEnd.Documents.Sheets;
using FrontEnd.Documents.Teaching;
using FrontEnd.Reporting;
using FrontEnd.Teaching.Problems;

namespace FrontEnd.Terminal;

/// <summary>Performs effects: works designs out, reads and writes files, copies. Sends messages back.</summary>
internal sealed class Performer : IDisposable
{
    private readonly LatestOnly _evaluations;
    private readonly LatestOnly _advice;
    private readonly LatestOnly _moves;
    private readonly LatestOnly _listings;
    private readonly LatestOnly _studies;
    private readonly LatestOnly _cards;
    private readonly LatestOnly _looks;
    private readonly DiskWatch _disk = new();
    private readonly Timer? _looking;
    private readonly RecoveryFiles? _recovery;
    private readonly RecentFiles? _recent;
    private readonly Action<string> _copy;
    private readonly Func<Design, Assessment> _evaluate;
    private readonly TimeSpan _patience;
    private CancellationTokenSource _newer = new();
    private CancellationTokenSource _study = new();
    private Action<Message> _send = _ => { };
    private Action<Exception> _fail = _ => { };
    private readonly Presence? _presence;
    private ImmutableSortedDictionary<int, int> _elsewhere = ImmutableSortedDictionary<int, int>.Empty;
    private Model? _watched;

    /// <param name="recovery">Where unsaved work is kept; null for nowhere.</param>
    /// <param name="recent">Where opened files are remembered; null for nowhere.</param>
    /// <param name="copy">Puts a text on the clipboard.</param>
    /// <param name="patience">How long nothing must change before advice is looked for.</param>
    /// <param name="presence">Tells of other runs of the program; null for none.</param>
    /// <param name="looks">How often the files of the open designs are looked at; null for never by itself.</param>
    public Performer(
        RecoveryFiles? recovery, RecentFiles? recent, Action<string> copy, Func<Design, Assessment>? evaluate = null,
        TimeSpan? patience = null, TimeSpan? looks = null, Presence? presence = null)
    {
        _presence = presence;
        (_recovery, _recent, _copy) = (recovery, recent, copy);
        (_evaluations, _advice, _moves, _listings, _studies, _cards, _looks) = (
            new(Fail), new(Fail), new(Fail), new(Fail), new(Fail), new(Fail), new(Fail));
        _evaluate = evaluate ?? Evaluator.Evaluate;
        _patience = patience ?? TimeSpan.FromMilliseconds(250);
        _looking = looks is { } every ? new Timer(_ => LookAtDisk(), null, every, every) : null;
    }

    /// <summary>True while something is being worked out.</summary>
    public bool IsBusy => _evaluations.IsBusy || _advice.IsBusy || _moves.IsBusy
        || _listings.IsBusy || _studies.IsBusy || _cards.IsBusy || _looks.IsBusy;

    /// <summary>Ends when nothing is being worked out any more.</summary>
    public Task Idle => Task.WhenAll(_evaluations.Idle, _advice.Idle, _moves.Idle, _listings.Idle, _studies.Idle, _cards.Idle, _looks.Idle);

    /// <summary>Where messages go, and what went wrong in our own work. From any thread.</summary>
    public void Attach(Action<Message> send, Action<Exception> fail) => (_send, _fail) = (send, fail);

    /// <summary>Takes note of the model, so that unsaved work outlives the program.</summary>
    public void Watch(Model model)
    {
        if (_watched is null || !ReferenceEquals(_watched.Designs, model.Designs))
        {
            _recovery?.Later(model);
        }

        _disk.Note(model.Designs);
        _watched = model;
    }

    /// <summary>Looks in the background whether the files of the open designs, or their cards, have changed; tells what it finds. From any
    /// thread.</summary>
    public void LookAtDisk() => _looks.Submit(() =>
    {
        LookForOthers();
        foreach (Message.SeenOnDisk seen in _disk.Look())
        {
            _send(seen);
        }
    });

    /// <summary>Tells other runs of the program what is open here, and this one what is open there.</summary>
    private void LookForOthers()
    {
        if (_presence is null || _watched?.Designs is not { } designs)
        {
            return;
        }

        _presence.Note(designs);
        ImmutableSortedDictionary<string, int> others = _presence.Others();
        ImmutableSortedDictionary<int, int> now = designs.Where(design => design.Path is not null && others.ContainsKey(Presence.FullPath(design.Path)))
            .ToImmutableSortedDictionary(design => design.Slot, design => others[Presence.FullPath(design.Path!)]);
        if (!now.SequenceEqual(_elsewhere))
        {
            _elsewhere = now;
            _send(new Message.OpenElsewhere(now));
        }
    }

    /// <summary>Puts unsaved work aside at once: a signal, a crash. Safe from any thread.</summary>
    public void Rescue()
    {
        if (_watched is { Quitting: false } model)
        {
            _recovery?.Now(model);
        }
    }

    /// <summary>The user has left of their own will: nothing is to be recovered.</summary>
    public void Forget() => _recovery?.Drop();

    /// <summary>Performs an effect; what comes of it is sent as messages.</summary>
    public void Perform(Effect effect)
    {
        switch (effect)
        {
            case Effect.Evaluate evaluate:
                Evaluate(evaluate);
                break;
            case Effect.Move move:
                _moves.Submit(
                    () => _send(new Message.Moved(move.Slot, move.Run, move.ResultId, Sensitivity.Of(move.Assessment, move.ResultId))));
                break;
            case Effect.Open open:
                Open(open.Path);
                break;
            case Effect.ReadCards read:
                _cards.Submit(() => _send(new Message.CardsRead(read.Slot, read.Known.Read(read.Names), read.Again)));
                break;
            case Effect.Save save:
                Save(save);
                break;
            case Effect.Sheet sheet:
                Write(
                    FilePurpose.Sheet, sheet.Path, sheet.MayReplace, "sheet",
                    () => SheetWriting.Write(sheet.Path, sheet.Document, sheet.Assessment, Bench.BenchPlan.Of(sheet.Document.Design).Readings));
                break;
            case Effect.Coefficients file:
                Write(
                    FilePurpose.Coefficients, file.Path, file.MayReplace, "coefficients",
                    () => CoefficientWriting.Write(file.Path, file.Design, null));
                break;
            case Effect.Problems problems:
                Write(problems);
                break;
            case Effect.Marks marks:
                Write(marks);
                break;
            case Effect.Study study:
                Study(study);
                break;
            case Effect.CancelStudy:
                _study.Cancel();
                break;
            case Effect.List list:
                _listings.Submit(() => _send(new Message.Listed(list.Purpose, list.Typed, Listing.Of(list.Typed, list.Purpose, _recent))));
                break;
            case Effect.Copy copy:
                _copy(copy.Text);
                break;
            case Effect.DropRecovery:
                // First into this session's own file, so that there is no moment without one.
                Rescue();
                _recovery?.DropFound();
                break;
            default:
                throw new ArgumentOutOfRangeException(nameof(effect), effect, "Effect is not handled.");
        }
    }

    /// <summary>Breaks off what is being worked out.</summary>
    public void Dispose()
    {
        _newer.Cancel();
        _newer.Dispose();
        _study.Cancel();
        _study.Dispose();
        _studies.Dispose();
        _evaluations.Dispose();
        _advice.Dispose();
        _moves.Dispose();
        _listings.Dispose();
        _looking?.Dispose();
        _cards.Dispose();
        _looks.Dispose();
        _presence?.Dispose();
        _recovery?.Dispose();
    }

    private void Evaluate(Effect.Evaluate effect)
    {
        // Not disposed of: whoever still waits on its token may need it. It holds nothing but memory.
        _newer.Cancel();
        _newer = new CancellationTokenSource();
        CancellationToken newer = _newer.Token;
        _advice.Cancel();
        _evaluations.Submit(() =>
        {
            if (FiguresOf(effect) is not { } assessment)
            {
                return;
            }

            _send(new Message.Evaluated(effect.Slot, effect.Run, assessment));
            if (effect.Refused is not null)
            {
                // What would help a design that nobody has described in whole is not looked for.
                return;
            }

            // Advice takes many evaluations; it waits until the user pauses, so that it never stands in the way of a figure.
            _advice.Submit(() =>
            {
                if (!newer.WaitHandle.WaitOne(_patience))
                {
                    Look(effect, assessment, newer);
                }
            });
        });
    }

    /// <summary>The figures; null where working them out fails. Then none are sent, with the fault as the reason, so that none of an older
    /// design stay on the screen.</summary>
    private Assessment? FiguresOf(Effect.Evaluate effect)
    {
        try
        {
            return effect.Figures(_evaluate);
        }
#pragma warning disable CA1031 // Whatever it is, it is told.
        catch (Exception fault)
#pragma warning restore CA1031
        {
            Fail(fault);
            _send(new Message.Evaluated(effect.Slot, effect.Run, Evaluator.WithoutFigures(effect.Design, [Fault.Of(fault)])));
            return null;
        }
    }

    private void Fail(Exception problem) => _fail(problem);

    private void Look(Effect.Evaluate effect, Assessment assessment, CancellationToken newer)
    {
        try
        {
            _send(new Message.Advised(effect.Slot, effect.Run, Advisor.Advise(assessment, newer)));
        }
        catch (OperationCanceledException)
        {
            // A newer change is being worked out; its own advice follows.
        }
    }

    private void Study(Effect.Study study)
    {
        _study.Cancel();
        _study = new CancellationTokenSource();
        CancellationToken cancellation = _study.Token;
        int shown = 0;
        _studies.Submit(() =>
        {
            try
            {
                StudyOutcome outcome = study.Page.Work(study.Design, Tell, cancellation);
                _send(new Message.Studied(study.Number, outcome));
            }
            catch (OperationCanceledException)
            {
                // Broken off: nobody waits for it.
            }
#pragma warning disable CA1031 // The page that waits for it says what happened.
            catch (Exception fault)
#pragma warning restore CA1031
            {
                Fail(fault);
                _send(new Message.Studied(study.Number, new StudyOutcome(width => FindingText.Of(Fault.Of(fault), width), [], 0)));
            }
        });

        void Tell(double share)
        {
            // Whole percents are enough; from several threads one of them may be told twice, which harms nothing.
            int percent = (int)(100 * share);
            if (shown < percent)
            {
                shown = percent;
                _send(new Message.Progressed(study.Number, share));
            }
        }
    }

    private void Open(string path)
    {
        DesignDocument document = DesignDocument.Read(path);
        if (document.IsNoDesign)
        {
            _send(new Message.Failed(document.Findings.First(finding => finding.Severity == Severity.Error)));
            return;
        }

        _recent?.Add(path);
        _send(new Message.Opened(document, path));
    }

    private void Save(Effect.Save save)
    {
        if (IsAsked(FilePurpose.SaveAs, save.Path, save.MayReplace))
        {
            return;
        }

        if (save.Known is { } known && File.Exists(save.Path) && !(TextFiles.Read(save.Path, out _) is { } text
            ? text == known || text == save.Document.Text : save.IsKnownUnreadable))
        {
            _send(new Message.FoundOther(save.Slot, save.Path, DesignDocument.Read(save.Path)));
            return;
        }

        if (save.Document.Save(save.Path) is { } finding)
        {
            _send(new Message.Failed(finding));
            return;
        }

        _recent?.Add(save.Path);
        _send(new Message.Saved(save.Slot, save.Path, save.Document));
    }

    private void Write(FilePurpose purpose, string path, bool mayReplace, string what, Func<Finding?> write)
    {
        if (!IsAsked(purpose, path, mayReplace))
        {
            _send(write() is { } finding ? new Message.Failed(finding) : new Message.Told($"{what} written to {path}"));
        }
    }

    /// <summary>The files that the command writes. A folder that holds answers is left alone.</summary>
    private void Write(Effect.Problems problems)
    {
        List<Finding> findings = [.. HomeworkFolder.Wrong(problems.Folder, problems.Page.Files, again: false)];
        Homework? homework = problems.Page.Draw(problems.Folder, findings);
        Finding? wrong = findings.Find(finding => finding.Severity == Severity.Error);
        IReadOnlyList<string> kept = wrong is null ? HomeworkFolder.Keep(problems.Folder, homework!, out wrong) : [];
        wrong ??= HomeworkFiles.Write(problems.Folder, homework!, SheetLook.Of(problems.Page.Plan));
        string sheets = homework?.Sheets.Count is 1 ? "1 sheet" : $"{homework?.Sheets.Count} sheets";
        string told = string.Concat(findings.Select(finding => $"; {finding.Message}"));
        _send(wrong is not null ? new Message.Failed(wrong)
            : new Message.Told($"{sheets} written to {problems.Folder}{(kept.Count == 0 ? "" : $", {string.Join(", ", kept)} kept")}{told}"));
    }

    private void Write(Effect.Marks marks)
    {
        if (MarkedClass.Wrong(marks.Path, marks.Page.Key, marks.Page.Answers).FirstOrDefault() is { } wrong)
        {
            _send(new Message.Failed(wrong));
        }
        else if (!marks.MayReplace && File.Exists(marks.Path))
        {
            _send(new Message.Exists(FilePurpose.Marks, marks.Path) { Anyway = new Message.MarksTo(marks.Path, marks.Page) });
        }
        else
        {
            List<Finding> findings = [];
            MarkedClass? marked = MarkedClass.Read(marks.Page.Key, marks.Page.Answers, trust: false, marks.Page.Rubric, findings);
            Finding? problem = marked is null ? findings.First(finding => finding.Severity == Severity.Error) : marked.Write(marks.Path, solutions: true, new SheetLook());
            _send(problem is null ? new Message.Told($"marks written to {marks.Path}") : new Message.Failed(problem));
        }
    }

    /// <summary>True where a file is there that may not be replaced unasked; the user is asked.</summary>
    private bool IsAsked(FilePurpose purpose, string path, bool mayReplace)
    {
        if (mayReplace || !File.Exists(path))
        {
            return false;
        }

        _send(new Message.Exists(purpose, path));
        return true;
    }
}
