using FrontEnd.Catalogue;
using FrontEnd.Numbers;
using FrontEnd.Unknowns;

namespace FrontEnd.Bench;

/// <summary>A recording on a fixture that could be made next, and what it would tell: each of the readings that the file allows is taken as if it had
/// been measured.</summary>
/// <param name="Word">What the option <c>--fixture</c> takes for it.</param>
/// <param name="Fixture">What stands in the electrodes' place.</param>
/// <param name="Share">Share of these readings that make at least one range narrower, 0 to 1.</param>
/// <param name="Narrower">By how much of themselves the ranges become narrower, all added up, on average over the readings.</param>
/// <param name="Keys">The values that become narrower, the most first.</param>
internal sealed record RecordingChoice(string Word, KnownFixture Fixture, double Share, double Narrower, IReadOnlyList<string> Keys)
{
    /// <summary>A recording that more likely than not tells nothing is not proposed (chosen).</summary>
    public static readonly Ratio LeastShare = Ratio.FromFraction(0.5);

    /// <summary>A minute.</summary>
    private static readonly Duration Length = Duration.FromSeconds(60);

    /// <summary>How many of the readings are tried: evenly through all that the draws give.</summary>
    private const int Tried = 40;

    private const int MostKeys = 3;

    /// <summary>Wires, and resistors of which everybody has some; with larger ones hum drowns the noise outside a metal box.</summary>
    private static readonly IReadOnlyList<(string Word, KnownFixture Fixture)> Fixtures =
    [
        (BenchPlan.Shorted, KnownFixture.Shorted), ("10k", KnownFixture.Of(Resistance.FromKilohms(10))), ("100k", KnownFixture.Of(Resistance.FromKilohms(100))),
        ("1M", KnownFixture.Of(Resistance.FromMegohms(1))),
    ];

    /// <summary>The same for a message.</summary>
    public WorthRecording Worth => new(string.Equals(Word, BenchPlan.Shorted, StringComparison.Ordinal) ? Messages.JoinedByWire : Fixture.Words, Word, Ratio.FromFraction(Share), Keys);

    /// <summary>Those that narrow something, what narrows most first; none that narrows nothing.</summary>
    /// <param name="design">What is known of the device.</param>
    /// <param name="cancellation">Ends it.</param>
    public static IReadOnlyList<RecordingChoice> Of(PartlyKnownDesign design, CancellationToken cancellation = default) => Ranked(design, null, cancellation);

    /// <summary>The same after a recording: it is not made again, the readings to be expected are those of the draws that agree with it, and what
    /// these draws know already is not told twice.</summary>
    /// <param name="made">The recording, and what it left.</param>
    /// <param name="cancellation">Ends it.</param>
    public static IReadOnlyList<RecordingChoice> After(Narrowing made, CancellationToken cancellation = default) => Ranked(made.Narrowed, made, cancellation);

    private static IReadOnlyList<RecordingChoice> Ranked(PartlyKnownDesign design, Narrowing? made, CancellationToken cancellation) =>
    [
        .. Fixtures.Where(one => !string.Equals(one.Fixture.Words, made?.Recording.Fixture.Words, StringComparison.Ordinal))
            .Select(one => Of(design, made, one, cancellation))
            .Where(one => LeastShare.Fraction <= one.Share).OrderByDescending(one => one.Narrower),
    ];

    private static RecordingChoice Of(PartlyKnownDesign design, Narrowing? made, (string Word, KnownFixture Fixture) one, CancellationToken cancellation)
    {
        double[][] places = PartlyKnownEvaluator.Places(design.Unknowns.Count);
        int channel = FixtureNoise.ChannelOf(design);
        FixturePrediction middle = new(PartlyKnownEvaluator.Drawn(design, FixtureNoise.Middle(design)), channel, one.Fixture, filtered: true);
        FixtureRecording volt = new(one.Fixture, 1, AreSteps: false, IsFiltered: true)
        {
            Length = Length, Spread = Ratio.FromFraction(middle.Spread(Length)), Lines = [], Taken = "",
        };
        double[] each = Noise(design, places), known = made is null ? each : Noise(made.Design, made.Agreeing), readings = [.. known.Where(double.IsFinite).Order()];
        var moves = new bool?[design.Unknowns.Count];
        var narrower = new double[design.Unknowns.Count];
        int tried = Math.Min(Tried, readings.Length), telling = 0;
        for (int at = 0; at < tried; at++)
        {
            double reading = readings[(((2 * at) + 1) * readings.Length) / (2 * tried)];
            double[][] agreeing = Narrowing.AgreeingOf(places, Array.ConvertAll(each, rms => reading / rms), volt);
            double[][] both = made is null ? [] : Narrowing.AgreeingOf([.. made.Agreeing], Array.ConvertAll(known, rms => reading / rms), volt);
            double[] gains = [.. Narrowing.Over(design, agreeing, field => moves[field] ??= Narrowing.Moves(design, field, channel, volt))
                .Select((field, unknown) => made is null || IsNew(unknown, made.Agreeing, both) ? field.Narrower : 0)];
            telling += gains.Any(gain => 0 < gain) ? 1 : 0;
            for (int field = 0; field < gains.Length; field++)
            {
                narrower[field] += gains[field] / tried;
            }
        }

        int[] told = [.. Enumerable.Range(0, narrower.Length).Where(field => 0 < narrower[field]).OrderByDescending(field => narrower[field]).Take(MostKeys)];
        return new RecordingChoice(one.Word, one.Fixture, tried == 0 ? 0 : (double)telling / tried, narrower.Sum(), [.. told.Select(field => design.Unknowns[field].Key)]);

        // The draws that agree with both recordings leave less of the value than those that agree with the first.
        static bool IsNew(int unknown, IReadOnlyList<double[]> first, double[][] both) =>
            Width(unknown, both) <= Width(unknown, first) * (1 - Narrowing.LeastNarrower.Fraction);

        static double Width(int unknown, IReadOnlyList<double[]> draws)
        {
            double[] sorted = [.. draws.Select(place => place[unknown]).Order()];
            return sorted.Length == 0 ? 0 : Narrowing.Between(sorted, 0.95) - Narrowing.Between(sorted, 0.05);
        }

        double[] Noise(PartlyKnownDesign of, IReadOnlyList<double[]> all) => InParallel.Map(all, place => 1 / Narrowing.RatioOf(of, place, channel, volt), cancellation);
    }
}
