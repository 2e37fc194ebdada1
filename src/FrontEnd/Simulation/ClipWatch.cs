using FrontEnd.Identity;

namespace FrontEnd.Simulation;

/// <summary>When which node of which channel was at its limit. Pauses of less than a tenth of a second are no ends.</summary>
internal sealed class ClipWatch(SampleRun run)
{
    private const double Pause = 0.1;

    private readonly Dictionary<NodeId, (long First, long Last)>[] _now = [.. Enumerable.Range(0, run.Design.Channels).Select(_ => new Dictionary<NodeId, (long, long)>())];
    private readonly List<SampleEvent>[] _ended = [.. Enumerable.Range(0, run.Design.Channels).Select(_ => new List<SampleEvent>())];

    /// <summary>A node was at its limit before a sample. Channels may call at the same time, each for itself.</summary>
    public void Saw(int channel, NodeId node, long sample)
    {
        if (_now[channel].TryGetValue(node, out (long First, long Last) known) && sample - known.Last <= Pause * run.Rate.Hertz)
        {
            _now[channel][node] = (known.First, sample);
            return;
        }

        End(channel, node);
        _now[channel][node] = (sample, sample);
    }

    /// <summary>What has ended by the end of a block, in order.</summary>
    public IReadOnlyList<SampleEvent> Found(long first, int count, bool isLast)
    {
        List<SampleEvent> found = [];
        for (int channel = 0; channel < _now.Length; channel++)
        {
            foreach (NodeId node in _now[channel].Where(one => isLast || Pause * run.Rate.Hertz < first + count - one.Value.Last).Select(one => one.Key).ToArray())
            {
                End(channel, node);
            }

            found.AddRange(_ended[channel]);
            _ended[channel].Clear();
        }

        return [.. found.OrderBy(one => one.Start.Seconds)];
    }

    /// <summary>What was before the first sample is nobody's business.</summary>
    public void Forget()
    {
        foreach (Dictionary<NodeId, (long, long)> channel in _now)
        {
            channel.Clear();
        }

        foreach (List<SampleEvent> channel in _ended)
        {
            channel.Clear();
        }
    }

    private void End(int channel, NodeId node)
    {
        if (_now[channel].Remove(node, out (long First, long Last) known))
        {
            double rate = run.Rate.Hertz;
            _ended[channel].Add(new SampleEvent(Duration.FromSeconds(Math.Max(0, known.First) / rate), Duration.FromSeconds((known.Last + 1 - known.First) / rate),
                $"{run.Channels[channel]} clips at {node.Words}", channel));
        }
    }
}
