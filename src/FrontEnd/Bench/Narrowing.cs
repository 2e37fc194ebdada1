using FrontEnd.Catalogue;
using FrontEnd.Designs;
using FrontEnd.Fields;
using FrontEnd.Networks;
using FrontEnd.Numbers;
using FrontEnd.Results;
using FrontEnd.Unknowns;

namespace FrontEnd.Bench;

/// <summary>One unknown value before a recording and after it.</summary>
/// <param name="Before">Its ends as the file, the card or custom has them.</param>
/// <param name="After">The ends over the draws that agree; the same where they tell nothing of it.</param>
internal sealed record NarrowedField(UnknownField Before, UnknownField After)
{
    /// <summary>True where the recording tells something of it.</summary>
    public bool IsNarrower => !ReferenceEquals(Before, After);

    /// <summary>By how much of itself the range became narrower, 0 to 1: in factors where both ends are positive, as it is drawn.</summary>
    public double Narrower => !IsNarrower ? 0
        : 0 < Before.Least ? 1 - (Math.Log(After.Greatest / After.Least) / Math.Log(Before.Greatest / Before.Least))
        : 1 - ((After.Greatest - After.Least) / (Before.Greatest - Before.Least));
}

/// <summary>What a recording on a fixture leaves of what is not known: the draws whose noise agrees, and where the unknown values lie in
/// them.</summary>
/// <remarks>The draws are those of <see cref="PartlyKnownEvaluator"/>. A value is narrowed to the 5th and 95th percentile of the draws that agree where
/// that is narrower than before by a fifth at least, and where so uneven a choice would come about by chance once in a thousand times only
/// (Kolmogorov and Smirnov: the draws' places lie evenly between 0 and 1 if the noise tells nothing of them; from memory). Without that, a few draws
/// that agree would seem to tell of values that are no part of the fixture's circuit.</remarks>
internal sealed record Narrowing(PartlyKnownDesign Design, FixtureRecording Recording)
{
    /// <summary>Fewer draws than this that agree say nothing of a range (chosen).</summary>
    public const int FewestDraws = 8;

    /// <summary>Share by which a range must become narrower to be told (chosen).</summary>
    public static readonly Ratio LeastNarrower = Ratio.FromFraction(0.2);

    /// <summary>√n times the largest distance of n even draws from the straight line, exceeded once in a thousand times: √(ln(2000)/2).</summary>
    private const double Uneven = 1.95;

    /// <summary>By how much a fact that is named as a reason brings the noise nearer to the measured one if it is another: a tenth.</summary>
    private const double LeastNearer = 0.1;

    private const int MostFacts = 3;

    /// <summary>How many draws could be worked out.</summary>
    public required int Drawn { get; init; }

    /// <summary>How many of them agree with the recording.</summary>
    public int Agree => Agreeing.Count;

    /// <summary>Where the unknown values lie in those that do.</summary>
    public required IReadOnlyList<double[]> Agreeing { get; init; }

    /// <summary>The measured noise; a recording in steps is in volts of the design in the middle.</summary>
    public required VoltageRms Measured { get; init; }

    /// <summary>What the draws give, in the same volts.</summary>
    public required Interval Predicted { get; init; }

    /// <summary>The unknown values in their order.</summary>
    public required IReadOnlyList<NarrowedField> Fields { get; init; }

    /// <summary>Why nothing can be narrowed; null where it can.</summary>
    public Finding? Contradiction { get; init; }

    /// <summary>The channel that the recording is held against; null where the channels have no names.</summary>
    public string? Channel { get; init; }

    /// <summary>The design with the narrower ranges.</summary>
    public PartlyKnownDesign Narrowed => Design with { Unknowns = [.. Fields.Select(one => one.After)] };

    /// <summary>Holds every draw against a recording.</summary>
    /// <param name="design">What is known of the device.</param>
    /// <param name="recording">The noise of a recording on a fixture.</param>
    /// <param name="stated">Keys that the file states: what may contradict the recording.</param>
    /// <param name="cancellation">Ends it.</param>
    public static Narrowing Of(PartlyKnownDesign design, FixtureRecording recording, IReadOnlyCollection<string> stated, CancellationToken cancellation = default)
    {
        int channel = FixtureNoise.ChannelOf(design);
        double[][] places = PartlyKnownEvaluator.Places(design.Unknowns.Count);
        double[] ratios = InParallel.Map(places, one => RatioOf(design, one, channel, recording), cancellation);
        double[][] kept = AgreeingOf(places, ratios, recording);
        FixturePrediction middle = new(PartlyKnownEvaluator.Drawn(design, FixtureNoise.Middle(design)), channel, recording.Fixture, recording.IsFiltered);
        double measured = recording.AreSteps ? recording.Rms * middle.VoltsPerStep : recording.Rms;
        double[] predicted = [.. ratios.Where(double.IsFinite).Select(ratio => measured / ratio).Order()];
        bool isContradicted = kept.Length < FewestDraws;
        Interval span = predicted.Length == 0 ? new(0, 0, 0, 0)
            : new(predicted[0], predicted[^1], Between(predicted, 0.05), Between(predicted, 0.95));
        return new Narrowing(design, recording)
        {
            Drawn = predicted.Length, Agreeing = kept, Measured = VoltageRms.FromVolts(measured), Predicted = span,
            Channel = middle.Name(design), Fields = Over(design, kept, field => Moves(design, field, channel, recording)),
            Contradiction = isContradicted ? Messages.Contradicts(Text(measured), Text(span.Least), Text(span.Greatest), kept.Length, predicted.Length, FewestDraws,
                Facts(design, recording, channel, stated)) : null,
        };

        static string Text(double volts) => QuantityText.Format(VoltageRms.FromVolts(volts));
    }

    /// <summary>The draws that agree with a recording.</summary>
    /// <param name="places">All draws.</param>
    /// <param name="ratios">Measured over predicted noise of each.</param>
    /// <param name="recording">The recording.</param>
    internal static double[][] AgreeingOf(double[][] places, double[] ratios, FixtureRecording recording)
    {
        double width = recording.Width.Fraction;
        return [.. places.Where((_, draw) => 1 - width <= ratios[draw] && ratios[draw] <= 1 + width)];
    }

    /// <summary>The unknown values in the draws that agree; as they are where too few do.</summary>
    /// <param name="design">What is known of the device.</param>
    /// <param name="kept">The draws that agree.</param>
    /// <param name="moves">Whether an unknown value, by its number, moves the noise at all.</param>
    internal static IReadOnlyList<NarrowedField> Over(PartlyKnownDesign design, double[][] kept, Func<int, bool> moves) =>
        [.. design.Unknowns.Select((one, at) => new NarrowedField(one, kept.Length < FewestDraws ? one : After(one, [.. kept.Select(place => place[at])], () => moves(at))))];

    /// <summary>Whether an unknown value moves the noise on the fixture, with everything else in its middle: what is no part of the fixture's circuit can only
    /// seem to be told of.</summary>
    internal static bool Moves(PartlyKnownDesign design, int unknown, int channel, FixtureRecording recording)
    {
        double[] there = FixtureNoise.Middle(design);
        double low = RatioAt(0);
        return 1e-6 < Math.Abs((RatioAt(1) / low) - 1);

        double RatioAt(double place)
        {
            there[unknown] = place;
            return RatioOf(design, there, channel, recording);
        }
    }

    /// <summary>Measured over predicted noise of one draw; not a number where there is no such device.</summary>
    internal static double RatioOf(PartlyKnownDesign design, double[] places, int channel, FixtureRecording recording)
    {
        Design drawn = PartlyKnownEvaluator.Drawn(design, places);
        if (DesignCheck.Run(drawn, null, withSources: false).Any(finding => finding.Severity == Severity.Error))
        {
            return double.NaN;
        }

        try
        {
            FixturePrediction one = new(drawn, channel, recording.Fixture, recording.IsFiltered);
            return recording.Rms * (recording.AreSteps ? one.VoltsPerStep : 1) / one.Rms;
        }
        catch (NetworkHasNoAnswer)
        {
            return double.NaN;
        }
    }

    /// <summary>Where a value lies in the draws that agree.</summary>
    /// <param name="before">Its ends.</param>
    /// <param name="places">Its places between them, 0 to 1, in those draws.</param>
    /// <param name="moves">Whether it moves the noise at all.</param>
    private static UnknownField After(UnknownField before, double[] places, Func<bool> moves)
    {
        Array.Sort(places);
        double low = Between(places, 0.05), high = Between(places, 0.95);
        if (before.IsChoice || before.Field.Kind == FieldKind.Count || 1 - LeastNarrower.Fraction < high - low || Distance(places) * Math.Sqrt(places.Length) < Uneven || !moves())
        {
            return before;
        }

        // Outwards to three digits, but no further than before.
        double least = Math.Max(before.Least, Rounded(FieldKinds.SiValue(before.At(low))!.Value, Math.Floor));
        double greatest = Math.Min(before.Greatest, Rounded(FieldKinds.SiValue(before.At(high))!.Value, Math.Ceiling));
        return least < greatest && (before.Least < least || greatest < before.Greatest) ? before with { Least = least, Greatest = greatest, Source = "a recording on a fixture", IsStated = true } : before;
    }

    /// <summary>The largest distance of sorted places from even ones.</summary>
    private static double Distance(double[] places)
    {
        double largest = 0;
        for (int i = 0; i < places.Length; i++)
        {
            largest = Math.Max(largest, Math.Max(places[i] - ((double)i / places.Length), ((i + 1.0) / places.Length) - places[i]));
        }

        return largest;
    }

    /// <summary>A percentile of sorted values, straight between them.</summary>
    internal static double Between(double[] sorted, double share)
    {
        double at = share * (sorted.Length - 1);
        int below = (int)at;
        return below + 1 < sorted.Length ? sorted[below] + ((at - below) * (sorted[below + 1] - sorted[below])) : sorted[below];
    }

    private static double Rounded(double value, Func<double, double> way)
    {
        if (value == 0)
        {
            return 0;
        }

        // A power of ten that is a whole number has no rounding of its own.
        int digits = 2 - (int)Math.Floor(Math.Log10(Math.Abs(value)));
        double scale = Math.Pow(10, Math.Abs(digits));
        return digits < 0 ? way(value / scale) * scale : way(value * scale) / scale;
    }

    /// <summary>What the file states and what, if it were otherwise, would bring the noise nearest to the measured one: with its value, the strongest
    /// first.</summary>
    private static IReadOnlyList<string> Facts(PartlyKnownDesign design, FixtureRecording recording, int channel, IReadOnlyCollection<string> stated)
    {
        double[] middle = FixtureNoise.Middle(design);
        double usual = RatioOf(design, middle, channel, recording);
        List<(double Nearer, string Fact)> facts = [];
        foreach (Field<DeviceDraft> field in DesignFields.Of(design.Given.Design).Select(PartlyKnownDesign.OfDraft).Concat(design.Given.Bought is null ? [] : PartlyKnownDesign.OfBought)
            .Where(field => field.IsNumeric && stated.Contains(field.Key)))
        {
            UnknownField? range = design.Find(field.Key);
            IEnumerable<double> ratios = range is null ? Others(field).Select(other => RatioOf(design with { Given = field.WithSiValue(design.Given, other) }, middle, channel, recording))
                : range.IsStated ? new[] { 0.0, 1 }.Select(place => RatioOf(design, [.. design.Unknowns.Select(one => ReferenceEquals(one, range) ? place : 0.5)], channel, recording))
                : [];
            double nearer = ratios.Select(ratio => Math.Abs(Math.Log(usual)) - Math.Abs(Math.Log(ratio))).Where(double.IsFinite).DefaultIfEmpty(0).Max();
            if (LeastNearer < nearer)
            {
                facts.Add((nearer, $"{field.Key} {(range is null ? FieldText.Format(field, field.Get(design.Given)) : $"{FieldText.Format(field, field.FromSi(range.Least))} to {FieldText.Format(field, field.FromSi(range.Greatest))}")}"));
            }
        }

        return [.. facts.OrderByDescending(one => one.Nearer).Take(MostFacts).Select(one => one.Fact)];

        // Ten times more or less, four of what is counted.
        IEnumerable<double> Others(Field<DeviceDraft> field) => field.SiValue(design.Given) is not { } value || value == 0 ? []
            : new[] { field.Kind == FieldKind.Count ? value + 4 : value * 10, field.Kind == FieldKind.Count ? value - 4 : value / 10 }
                .Where(other => field.Range?.Contains(other) != false);
    }
}
