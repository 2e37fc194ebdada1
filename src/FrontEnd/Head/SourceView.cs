namespace FrontEnd.Head;

/// <summary>What derivations show of one source: the answer to "which pair sees it, and what does the reference take?".</summary>
/// <remarks>
/// k = V_d/V_A with the active site's far potential V_A; t = 1 − k. Signal over noise: s·|V_d/V_d0|/√(B²·wᵀρw + e²), s the rhythm's rms in the
/// derivation d0 that it is stated in, e the front end's noise in the derivation. Where |V_A| is less than 0.05 of V_0 a share of it says nothing.
/// <para>Source: derived. Accuracy: 1e-9 against reference/head/potentials.dat.</para>
/// </remarks>
internal sealed class SourceView
{
    /// <summary>|V_A| below this part of V_0: the active site hardly sees the source.</summary>
    public const double HardlySeen = 0.05;

    /// <summary>Of V_0: below this there is nothing but rounding.</summary>
    private const double Nothing = 1e-12;

    private static readonly DipoleDensity Unit = DipoleDensity.FromNanoampereMetresPerSquareMillimetre(1);

    private readonly HeadModel _head;
    private readonly SourcePotentials _potentials;
    private readonly BackgroundField _background;
    private readonly Dictionary<Site, double[]> _volts = [];
    private readonly double[] _peak;
    private readonly double[]? _stated;
    private readonly Dictionary<string, Area> _halves = new(StringComparer.Ordinal);
    private HalfRegion? _half;

    public SourceView(HeadModel head, SourceQuestion question, BackgroundField background, IReadOnlyList<NoisyChannel> channels)
    {
        (_head, Question, _background) = (head, question, background);
        _potentials = new SourcePotentials(question.Source, head.Conductors);
        _potentials.Peak(_peak = new double[_potentials.Count]);
        _stated = question.Statement is { } statement ? Volts(statement.In) : null;
        Channels = [.. channels.Select(Of)];
    }

    private SourceView(SourceView like, SourceQuestion question, IReadOnlyList<NoisyChannel> channels)
    {
        (_head, Question, _background, _potentials, _peak, _volts, _half, _halves) =
            (like._head, question, like._background, like._potentials, like._peak, like._volts, like._half, like._halves);
        _stated = question.Statement is { } statement ? Volts(statement.In) : null;
        Channels = [.. channels.Select(Of)];
    }

    /// <summary>The same source in the same derivations with another amplitude or other noise.</summary>
    internal SourceView With(SourceQuestion question, IReadOnlyList<NoisyChannel> channels) => new(this, question, channels);

    /// <summary>What was asked.</summary>
    public SourceQuestion Question { get; }

    /// <summary>An answer for every derivation, in their order.</summary>
    public IReadOnlyList<SourceInChannel> Channels { get; }

    /// <summary>V_0 for a density of 1 nA·m/mm².</summary>
    public Voltage PeakPerDensity => Voltage.FromVolts(Unit.AmperesPerMetre * _peak[0]);

    /// <summary>m, the sine's peak of the density that makes the rhythm as large as stated; null without a statement or where its derivation sees
    /// nothing of the source. Local cortex has 1 to 2 nA·m/mm² at most (from memory of Murakami and Okada 2015).</summary>
    public DipoleDensity? Density => Statement is { } statement
        ? DipoleDensity.FromAmperesPerMetre(statement.PeakVolts / Math.Abs(_stated![0])) : null;

    /// <summary>True where the derivation that the rhythm is stated in hardly sees its source: what follows from it is then mostly rounding of the
    /// model.</summary>
    public bool StatedWhereHardlySeen => _stated is { } volts && Math.Abs(volts[0]) < HardlySeen * _peak[0];

    /// <summary>The statement, where its derivation sees anything of the source.</summary>
    private RhythmStatement? Statement => _stated is { } volts && 1e-9 * _peak[0] < Math.Abs(volts[0]) ? Question.Statement : null;

    /// <summary>Part of the patches' sphere where moving the patch leaves at least half of the derivation's most; null for a wall, which has a
    /// direction as well.</summary>
    public Area? HalfRegion(Derivation derivation)
    {
        if (Question.Source is SulcalWall || derivation.Weights.Count == 0)
        {
            return null;
        }

        if (!_halves.TryGetValue(derivation.Name, out Area area))
        {
            _half ??= new HalfRegion(_head.Conductor, Question.Source.Extent);
            _halves[derivation.Name] = area = _half.Of([.. derivation.Weights.Select(one => (_head.Place(one.Site), one.Weight))]);
        }

        return area;
    }

    /// <summary>How k falls with the reference's distance: the active site over the patch, the reference every 2 cm over the skin up to the
    /// opposite side; empty for a wall, where it depends on the direction.</summary>
    public IReadOnlyList<KeptAtDistance> ByDistance()
    {
        if (Question.Source is SulcalWall)
        {
            return [];
        }

        const double step = 0.02;
        double radius = _head.Sphere.Radius.Metres;
        SpherePoint away = Question.Source.Centre.Perpendicular;
        double[] volts = new double[_potentials.Count];
        List<KeptAtDistance> points = [];
        for (int i = 0; i * step < Math.PI * radius; i++)
        {
            double angle = i * step / radius;
            _potentials.At((Math.Cos(angle) * Question.Source.Centre) + (Math.Sin(angle) * away), volts);
            points.Add(new(Length.FromMetres(i * step), Share.FromFraction(i == 0 ? 0 : 1 - (volts[0] / _peak[0]))));
        }

        return points;
    }

    /// <summary>What the best of the derivations shows of such a source under each of some sites, as a share of its peak; a wall is turned as
    /// this one is.</summary>
    public IReadOnlyList<(Site Site, Share Seen)> Sensitivity(IReadOnlyList<Site> sites)
    {
        List<(Site, Share)> seen = [];
        Site[] measured = [.. Channels.SelectMany(one => one.Channel.Derivation.Weights).Select(one => one.Site).Distinct()];
        Dictionary<Site, double> volts = [];
        Span<double> here = stackalloc double[1];
        foreach (Site site in sites)
        {
            SpherePoint place = _head.Place(site);
            CorticalSource there = Question.Source with { Centre = place };
            if (there is SulcalWall wall && Math.Sin(place.AngleTo(wall.Towards)) < 1e-6)
            {
                continue;
            }

            SourcePotentials potentials = new(there, [_head.Conductor]);
            foreach (Site one in measured)
            {
                potentials.At(_head.Place(one), here);
                volts[one] = here[0];
            }

            double most = Channels.Max(one => Math.Abs(one.Channel.Derivation.Weights.Sum(weight => weight.Weight * volts[weight.Site])));
            seen.Add((site, Share.FromFraction(most / _peak[0])));
        }

        return seen;
    }

    /// <summary>The share t in words.</summary>
    public static ReferencePart Part(double taken) => taken switch
    {
        < -0.05 => ReferencePart.Adds,
        <= 0.05 => ReferencePart.Quiet,
        <= 0.5 => ReferencePart.TakesPart,
        <= 1 => ReferencePart.CancelsMost,
        _ => ReferencePart.TurnsOver,
    };

    /// <summary>Derivations by signal over noise, from the best; a pair of two sites is written with the one first that sees more of the
    /// source.</summary>
    public static IReadOnlyList<NoisyChannel> Best(HeadModel head, SourceQuestion question, BackgroundField background,
        IReadOnlyList<NoisyChannel> channels)
    {
        SourcePotentials potentials = new(question.Source, [head.Conductor]);
        Dictionary<Site, double> volts = [];
        Span<double> here = stackalloc double[1];
        foreach (Site site in channels.SelectMany(channel => channel.Derivation.Weights).Select(one => one.Site))
        {
            if (!volts.ContainsKey(site))
            {
                potentials.At(head.Place(site), here);
                volts[site] = here[0];
            }
        }

        double activity = background.Activity.Rms(question.Low, question.High).Volts;
        List<(NoisyChannel Channel, double Rank)> ranked = new(channels.Count);
        foreach (NoisyChannel channel in channels)
        {
            Derivation derivation = channel.Derivation;
            double noise = channel.Noise?.Volts ?? 0, signal = 0;
            foreach (SiteWeight one in derivation.Weights)
            {
                signal += one.Weight * volts[one.Site];
            }

            double all = Math.Sqrt((activity * activity * background.Shared(derivation, derivation, 0)) + (noise * noise));
            bool turn = derivation.Turned is { } turned && Math.Abs(volts[derivation.Active]) < Math.Abs(volts[turned.Active]);
            ranked.Add((turn ? channel with { Derivation = derivation.Turned! } : channel, 0 < all ? Math.Abs(signal) / all : 0));
        }

        return [.. ranked.OrderByDescending(one => one.Rank).Select(one => one.Channel)];
    }

    private SourceInChannel Of(NoisyChannel channel)
    {
        Derivation derivation = channel.Derivation;
        double[] seen = Volts(derivation), active = Volts(derivation.Active);
        int count = seen.Length;
        double?[] kept = new double?[count], ratio = new double?[count];
        double site = _background.Activity.Rms(Question.Low, Question.High).Volts, noise = channel.Noise?.Volts ?? 0;
        for (int k = 0; k < count; k++)
        {
            kept[k] = Math.Abs(active[k]) < HardlySeen * _peak[k] ? null : seen[k] / active[k];
            double all = Math.Sqrt((site * site * _background.Shared(derivation, derivation, k)) + (noise * noise));
            ratio[k] = Statement is { } stated && 0 < all ? stated.PeakVolts / Math.Sqrt(2) * Math.Abs(seen[k] / _stated![k]) / all : null;
        }

        double ears = Volts(EarsOf(derivation))[0];
        double? signal = Statement is { } rhythm ? rhythm.PeakVolts * seen[0] / Math.Abs(_stated![0]) : null;
        return new SourceInChannel(channel)
        {
            Seen = signal is { } peak ? Statement!.OfPeak(peak) : null,
            PerDensity = Voltage.FromVolts(Unit.AmperesPerMetre * seen[0]),
            Kept = kept[0] is { } k0 ? Share.FromFraction(k0) : null,
            ReferenceTakes = kept[0] is { } k1 ? Share.FromFraction(1 - k1) : null,
            Part = kept[0] is { } k2 ? Part(1 - k2) : null,
            AgainstEars = kept[0] is null || Math.Abs(ears) < HardlySeen * _peak[0] ? null : Share.FromFraction(seen[0] / ears),
            OfPeak = Share.FromFraction(Math.Abs(seen[0]) / _peak[0]),
            KeptSpan = Span(kept) is var (leastKept, mostKept) ? (Share.FromFraction(leastKept), Share.FromFraction(mostKept)) : null,
            Background = VoltageRms.FromVolts(site * Math.Sqrt(_background.Shared(derivation, derivation, 0))),
            Signal = signal is { } sine ? VoltageRms.FromVolts(Math.Abs(sine) / Math.Sqrt(2)) : null,
            SignalToNoise = ratio[0],
            SignalToNoiseSpan = Span(ratio),
        };
    }

    /// <summary>Over the skulls, which stand behind the head as it is asked about.</summary>
    private static (double Least, double Greatest)? Span(double?[] values) =>
        values.Skip(1).All(value => value is not null) ? (values.Skip(1).Min()!.Value, values.Skip(1).Max()!.Value) : null;

    private static Derivation EarsOf(Derivation derivation) =>
        Derivation.Of("", derivation.Active, SiteWords.Reference(SiteWords.Ears, [])!);

    private double[] Volts(Derivation derivation)
    {
        double[] sum = new double[_potentials.Count];
        foreach (SiteWeight one in derivation.Weights)
        {
            double[] volts = Volts(one.Site);
            for (int k = 0; k < sum.Length; k++)
            {
                sum[k] += one.Weight * volts[k];
            }
        }

        // What rounding leaves of two that are alike is nothing.
        for (int k = 0; k < sum.Length; k++)
        {
            sum[k] = Math.Abs(sum[k]) < Nothing * _peak[k] ? 0 : sum[k];
        }

        return sum;
    }

    private double[] Volts(Site site)
    {
        if (!_volts.TryGetValue(site, out double[]? volts))
        {
            _volts[site] = volts = new double[_potentials.Count];
            _potentials.At(_head.Place(site), volts);
        }

        return volts;
    }
}
