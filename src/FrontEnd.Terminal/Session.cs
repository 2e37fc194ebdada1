namespace FrontEnd.Terminal;

/// <summary>Holds the model, takes messages one after another, and hands effects to their performer. Belongs to one thread.</summary>
internal sealed class Session
{
    private readonly Performer _performer;

    /// <param name="post">Runs an action on the thread that the session belongs to.</param>
    public Session(Model model, Performer performer, Action<Action> post)
    {
        Model = model;
        _performer = performer;
        performer.Watch(model);
        performer.Attach(
            message => post(() => Send(message)),
            fault => post(() => Tell(fault)));
    }

    /// <summary>Everything that the screen shows now.</summary>
    public Model Model { get; private set; }

    /// <summary>The model has changed.</summary>
    public Action? Changed { get; set; }

    /// <summary>The program is to end.</summary>
    public Action? Ended { get; set; }

    /// <summary>Everything is to be drawn anew.</summary>
    public Action? Redraw { get; set; }

    /// <summary>The program is to stop as a job of its shell until it is brought back.</summary>
    public Action? Suspend { get; set; }

    /// <summary>Takes a message. A fault of ours on the way is told and leaves the model, and with it every design, as it was.</summary>
    public void Send(Message message)
    {
        try
        {
            Take(message);
        }
#pragma warning disable CA1031 // Whatever it is: the design is kept and work goes on. A fault in telling of a fault ends the program, which puts the work aside first.
        catch (Exception fault) when (message is not Message.Failed)
#pragma warning restore CA1031
        {
            Tell(fault);
        }
    }

    /// <summary>Says that the program failed.</summary>
    public void Tell(Exception fault) => Send(new Message.Failed(Fault.Of(fault)));

    /// <summary>Leaves a page that cannot be painted and says so; false where there is none to leave.</summary>
    public bool Leave(Exception fault)
    {
        if (Model.Page is null)
        {
            return false;
        }

        Model = Model with { Page = null };
        Tell(fault);
        return true;
    }

    private void Take(Message message)
    {
        (Model next, Effect? effect) = Updater.Update(Model, message);
        bool changed = !ReferenceEquals(next, Model);
        Model = next;
        if (changed)
        {
            _performer.Watch(next);
            Changed?.Invoke();
        }

        if (effect is not null)
        {
            Perform(effect);
        }
    }

    /// <summary>Performs an effect, or hands it on.</summary>
    public void Perform(Effect effect)
    {
        switch (effect)
        {
            case Effect.Several several:
                foreach (Effect one in several.Effects)
                {
                    Perform(one);
                }

                break;
            case Effect.Quit:
                Ended?.Invoke();
                break;
            case Effect.Suspend:
                Suspend?.Invoke();
                break;
            case Effect.Redraw:
                Redraw?.Invoke();
                break;
            default:
                _performer.Perform(effect);
                break;
        }
    }
}
