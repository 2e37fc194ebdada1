namespace FrontEnd.App.Terminal;

/// <summary>Holds the model, takes messages one after another, and hands effects to their performer. Belongs to one thread.</summary>
public sealed class Session
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
            problem => post(() => throw new InvalidOperationException("A piece of work in the background failed.", problem)));
    }

    /// <summary>Everything that the screen shows now.</summary>
    public Model Model { get; private set; }

    /// <summary>The model has changed.</summary>
    public Action? Changed { get; set; }

    /// <summary>The program is to end.</summary>
    public Action? Ended { get; set; }

    /// <summary>Everything is to be drawn anew.</summary>
    public Action? Redraw { get; set; }

    /// <summary>Takes a message in and has its effect performed.</summary>
    public void Send(Message message)
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
            case Effect.Redraw:
                Redraw?.Invoke();
                break;
            default:
                _performer.Perform(effect);
                break;
        }
    }
}
