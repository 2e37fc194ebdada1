namespace FrontEnd.Designs;

/// <summary>How the recorded channels are made from the electrodes.</summary>
public enum MontageKind
{
    /// <summary>Each site against the reference electrode.</summary>
    Referential,

    /// <summary>Each site against the next, computed from the recorded channels.</summary>
    Bipolar,

    /// <summary>Each site against the mean of all recorded sites, itself included.</summary>
    Average,

    /// <summary>Each site against the mean of the others.</summary>
    MeanOfOthers,
}

/// <summary>Which derived channels are computed from the recorded ones.</summary>
public sealed record Montage
{
    /// <summary>How channels are formed.</summary>
    public MontageKind Kind { get; init; } = MontageKind.Referential;

    /// <summary>Names of the recorded sites, one a channel; empty for "1", "2", ….</summary>
    public IReadOnlyList<string> Sites { get; init; } = [];

    /// <summary>The reference's site.</summary>
    public string Reference { get; init; } = "ref";

    /// <summary>The sites of so many channels: as named, else their numbers.</summary>
    public IReadOnlyList<string> SitesOf(int channels) =>
        [.. Enumerable.Range(0, channels).Select(i => i < Sites.Count ? Sites[i] : $"{i + 1}")];

    /// <summary>Names of the channels that are derived from so many recorded ones, in their order.</summary>
    public IReadOnlyList<string> ChannelNames(int channels)
    {
        IReadOnlyList<string> sites = SitesOf(channels);
        return Kind switch
        {
            MontageKind.Referential => [.. sites.Select(site => $"{site}-{Reference}")],
            MontageKind.Bipolar => [.. sites.Zip(sites.Skip(1), (site, next) => $"{site}-{next}")],
            MontageKind.Average => [.. sites.Select(site => $"{site}-average")],
            MontageKind.MeanOfOthers => channels < 2 ? [] : [.. sites.Select(site => $"{site}-others")],
            _ => throw new InvalidOperationException($"Montage {Kind} is not handled."),
        };
    }

    /// <summary>True where one buffer stands between the reference electrode and all channels' inputs.</summary>
    public bool ReferenceBuffered { get; init; }

    /// <summary>Weights of the recorded channels in each derived one, in the order of <see cref="ChannelNames"/>.</summary>
    public static IEnumerable<double[]> Weights(MontageKind kind, int channels)
    {
        int n = channels, rows = kind == MontageKind.Bipolar ? n - 1 : kind == MontageKind.MeanOfOthers && n < 2 ? 0 : n;
        for (int i = 0; i < rows; i++)
        {
            double others = kind switch
            {
                MontageKind.Average => -1.0 / n,
                MontageKind.MeanOfOthers => -1.0 / (n - 1),
                _ => 0,
            };
            double[] row = [.. Enumerable.Repeat(others, n)];
            row[i] = kind == MontageKind.Average ? 1 + others : 1;
            if (kind == MontageKind.Bipolar)
            {
                row[i + 1] = -1;
            }

            yield return row;
        }
    }
}
