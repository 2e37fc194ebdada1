namespace FrontEnd.Terminal;

/// <summary>A worker that always takes the newest job: one runs, one waits, what came between is forgotten.</summary>
/// <param name="failed">Told of a job that threw: a mistake of ours, which must not end in silence.</param>
internal sealed class LatestOnly(Action<Exception> failed) : IDisposable
{
    private readonly Lock _gate = new();
    private Action? _waiting;
    private bool _running;
    private bool _closed;

    /// <summary>Ends when the worker has nothing left to do.</summary>
    public Task Idle { get; private set; } = Task.CompletedTask;

    /// <summary>True while a job runs.</summary>
    public bool IsBusy
    {
        get
        {
            lock (_gate)
            {
                return _running;
            }
        }
    }

    /// <summary>Runs a job after the one that runs, in place of the one that waits.</summary>
    public void Submit(Action job)
    {
        lock (_gate)
        {
            if (_closed)
            {
                return;
            }

            _waiting = job;
            if (!_running)
            {
                _running = true;
                Idle = Task.Run(Work);
            }
        }
    }

    /// <summary>Forgets what waits. What runs already is left to end; its news is dropped by its number.</summary>
    public void Cancel()
    {
        lock (_gate)
        {
            _waiting = null;
        }
    }

    /// <summary>Takes no more jobs.</summary>
    public void Dispose()
    {
        lock (_gate)
        {
            _closed = true;
            _waiting = null;
        }
    }

    private void Work()
    {
        while (true)
        {
            Action job;
            lock (_gate)
            {
                if (_waiting is null)
                {
                    _running = false;
                    return;
                }

                (job, _waiting) = (_waiting, null);
            }

            try
            {
                job();
            }
            // Whatever it is goes to the one who can end the program in good order.
            catch (Exception problem)
            {
                failed(problem);
            }
        }
    }
}
