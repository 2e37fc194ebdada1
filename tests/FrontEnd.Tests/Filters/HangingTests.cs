using FrontEnd.Filters;
using FrontEnd.Quantities;
using Xunit;

namespace FrontEnd.Tests.Filters;

/// <summary>What whole numbers do for ever with nothing at the input: the bound, the search, and a plain run of the rounded recursion from every start.</summary>
public class HangingTests
{
    private static readonly Frequency Rate = Frequency.FromHertz(250);

    public static TheoryData<string, double[]> Small() => new()
    {
        // Sections of short dead bands, so that every start can be tried: b0 b1 b2 a1 a2 each.
        { "one pole", [0.15, 0, 0, -0.85, 0] },
        { "one pole, alternating", [0.15, 0, 0, 0.85, 0] },
        { "complex poles", [0.05, 0.1, 0.05, -1.5, 0.7] },
        { "two one-pole sections", [0.15, 0, 0, -0.85, 0, 0.2, 0, 0, -0.8, 0] },
        { "two sections with gain", [0.5, 0, 0, -0.8, 0, 0.5, 0, 0, -0.75, 0] },
        { "gain before a resonance", [1, 0, 0, -0.7, 0, 0.2, 0.1, 0, -1.2, 0.7] },
        { "resonance before a high-pass", [0.3, 0, 0, -0.9, 0.75, 0.9, -0.9, 0, -0.8, 0] },
    };

    /// <summary>Every start of both outputs of every section from −4 to 4 (one section: −40 to 40): none ends above the bound, and none above what the search has found.</summary>
    [Theory]
    [MemberData(nameof(Small))]
    public void Search_SmallFilters_FindsTheLargestOfEveryStart(string name, double[] coefficients)
    {
        var filter = QuantisedFilter.Of(new SecondOrderSections(coefficients), NumberFormat.Q15);
        double bound = RoundOff.HangingBound(filter);
        LimitCycleSearch search = CycleSearch.Of(filter.Details, NumberFormat.Q15, long.MaxValue);
        Assert.True(search.IsComplete);
        long largest = 0;
        int reach = filter.Details.Count == 1 ? 40 : 4, width = (2 * reach) + 1;
        for (int start = 0; start < Math.Pow(width, 2 * filter.Details.Count); start++)
        {
            long[] state = new long[2 * filter.Details.Count];
            for (int i = 0, rest = start; i < state.Length; i++, rest /= width)
            {
                state[i] = (rest % width) - reach;
            }

            largest = Math.Max(largest, LargestAfterRest(filter, state));
        }

        double found = search.Largest?.Amplitude ?? 0;
        Assert.True(largest <= bound, $"{name}: {largest} LSB is above the bound, {bound}");
        Assert.True(largest <= found && found <= bound, $"{name}: {largest} LSB, found {found}, bound {bound}");
    }

    /// <summary>Three trackers one after the other, each of which stays on 4 LSB by itself (0.5/0.11 = 4.5): together the output stays on 12, for each holds 4 above what the one before it gives.</summary>
    [Fact]
    public void Cascade_OfThreeTrackers_HangsAtThreeTimesOne()
    {
        var section = new Biquad(0.11, 0, 0, -0.89, 0);
        QuantisedFilter one = QuantisedFilter.Of(new SecondOrderSections([section]), NumberFormat.Q31), three = QuantisedFilter.Of(new SecondOrderSections([section, section, section]), NumberFormat.Q31);
        Assert.Equal(4, RoundOff.HangingBound(one));
        Assert.Equal(new LimitCycle(4, 1), CycleSearch.Of(one.Details, NumberFormat.Q31, long.MaxValue).Largest);
        Assert.Equal(new LimitCycle(12, 1), CycleSearch.Of(three.Details, NumberFormat.Q31, long.MaxValue).Largest);
        // By hand: 3·0.5/0.11 = 13.6.
        Assert.Equal(13, RoundOff.HangingBound(three));
        int[] samples = new int[3000];
        Array.Fill(samples, 5000, 0, 1000);
        new FixedRunner(three).Run(samples, samples);
        Assert.Equal(12, samples[^1]);
    }

    /// <summary>The runner itself, in both forms and with bits below the LSB: after a burst of noise and long rest no sample is above the bound, and what the search found can be sat on.</summary>
    [Theory]
    [InlineData(FilterForm.DirectI, 0)]
    [InlineData(FilterForm.TransposedDirectII, 0)]
    [InlineData(FilterForm.DirectI, 3)]
    [InlineData(FilterForm.TransposedDirectII, 3)]
    public void Runner_AfterABurst_StaysBelowTheBound(FilterForm form, int fraction)
    {
        FixedFormat format = NumberFormat.Q31 with { StateFraction = fraction };
        Random random = new(5);
        foreach (SecondOrderSections sections in (SecondOrderSections[])[
            Butterworth.LowPass(4, Frequency.FromHertz(3), Rate).Sections, Butterworth.HighPass(3, Frequency.FromHertz(1), Rate).Sections,
            SecondOrderSections.Cascade(Butterworth.HighPass(2, Frequency.FromHertz(0.5), Rate).Sections, Notch.AtHarmonics(Frequency.FromHertz(50), 30, Frequency.FromHertz(100), Rate))])
        {
            var filter = QuantisedFilter.Of(sections, format);
            double bound = RoundOff.HangingBound(filter);
            int hung = 0;
            for (int trial = 0; trial < 6; trial++)
            {
                int[] samples = new int[20_000];
                for (int n = 0; n < 2000; n++)
                {
                    samples[n] = (trial % 2 == 0 ? 4000 : 0) + random.Next(-3000, 3000);
                }

                new FixedRunner(filter, form).Run(samples, samples);
                int rest = samples.Skip(15_000).Max(Math.Abs);
                Assert.True(rest <= bound, $"{rest} LSB is above the bound, {bound}");
                hung += rest == 0 ? 0 : 1;
            }

            Assert.True(0 < hung || 0 < fraction);
        }
    }

    /// <summary>The bound of one pole by hand: Σ|h| of 1/(1 − p·z⁻¹) is 1/(1 − p); with a section of gain g(0) = b/(1 − q) behind it that much larger, and its own besides. F bits below the LSB divide it by 2^F, and the last rounding may lift it to the next whole number.</summary>
    [Fact]
    public void Bound_OfOnePoleSections_IsTheSumByHand()
    {
        SecondOrderSections sections = new([new Biquad(0.5, 0, 0, -0.96875, 0), new Biquad(0.5, 0, 0, -0.875, 0)]);
        var filter = QuantisedFilter.Of(sections, NumberFormat.Q15);
        // 0.5·(32·(0.5/0.125) + 8) = 68.
        Assert.Equal(68, RoundOff.HangingBound(filter));
        Assert.Equal(16, RoundOff.HangingBound(QuantisedFilter.Of(new SecondOrderSections([sections[0]]), NumberFormat.Q15)));
        // Behind it: 0.5·32·4 = 64.
        Assert.Equal(64, RoundOff.HangingBound(QuantisedFilter.Of(new SecondOrderSections([sections[0]]), NumberFormat.Q15), new SecondOrderSections([sections[1]])));
        Assert.Equal(17, RoundOff.HangingBound(QuantisedFilter.Of(sections, NumberFormat.Q15 with { StateFraction = 2 })));
        Assert.Equal(9, RoundOff.HangingBound(QuantisedFilter.Of(sections, NumberFormat.Q15 with { StateFraction = 3 })));
        Assert.Equal(0, RoundOff.HangingBound(QuantisedFilter.Of(sections, NumberFormat.Q15 with { StateFraction = 8 })));
    }

    /// <summary>The plain recursion in decimals: 300 steps to rest, then the largest of 100.</summary>
    private static long LargestAfterRest(QuantisedFilter filter, long[] state)
    {
        int count = filter.Details.Count;
        long largest = 0;
        for (int n = 0; n < 400; n++)
        {
            long[] next = new long[state.Length];
            for (int i = 0; i < count; i++)
            {
                IReadOnlyList<long> w = filter.Details[i].Words;
                int shift = filter.Details[i].FractionBits!.Value;
                decimal sum = -((decimal)w[3] * state[2 * i]) - ((decimal)w[4] * state[(2 * i) + 1]);
                if (0 < i)
                {
                    sum += ((decimal)w[0] * next[2 * (i - 1)]) + ((decimal)w[1] * state[2 * (i - 1)]) + ((decimal)w[2] * state[(2 * (i - 1)) + 1]);
                }

                next[2 * i] = (long)Math.Floor((sum / (1L << shift)) + 0.5m);
                next[(2 * i) + 1] = state[2 * i];
            }

            if (next.SequenceEqual(state) && next.All(y => y == next[0]))
            {
                return Math.Abs(next[^2]);
            }

            state = next;
            largest = 300 <= n ? Math.Max(largest, Math.Abs(state[^2])) : 0;
        }

        return largest;
    }
}
