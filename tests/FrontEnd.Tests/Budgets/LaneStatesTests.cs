using FrontEnd.Circuits;
using FsCheck.Xunit;
using Xunit;

namespace FrontEnd.Tests.Budgets;

public sealed class LaneStatesTests
{
    /// <summary>Lane k of group g is what 4g + k steps make of the state, one after the other.</summary>
    [Property(MaxTest = 50)]
    public void Advance_AnySystem_IsOneStepAfterTheOther(int seed)
    {
        var random = new Random(seed);
        int n = random.Next(1, 7), doublings = random.Next(3);
        double[] a = [.. Enumerable.Range(0, n * n).Select(i => (random.NextDouble() - 0.5) / n - (i % (n + 1) == 0 ? 1 : 0))];
        var steps = new TimeSteps(a, n, 0.05);
        double[] state = [.. Enumerable.Range(0, n).Select(_ => random.NextDouble() - 0.5)], plain = [.. state], work = new double[n];
        var lanes = new LaneStates(steps);
        lanes.Begin(state, doublings);
        int width = System.Numerics.Vector<double>.Count;
        for (int step = 0; step < 5 * width; step++)
        {
            if (step != 0 && step % width == 0)
            {
                lanes.Advance();
            }

            for (int i = 0; i < n; i++)
            {
                Assert.Equal(plain[i], lanes.Now[i][step % width], 1e-13);
            }

            steps.Advance(doublings, plain, work);
        }
    }

    [Fact]
    public void CopyBefore_TheFirstLane_IsTheLastOfTheGroupBefore()
    {
        var steps = new TimeSteps([-1.0], 1, 0.5);
        var lanes = new LaneStates(steps);
        lanes.Begin([1.0], steps.FirstDoublings);
        int width = System.Numerics.Vector<double>.Count;
        double[] state = new double[1];
        lanes.CopyBefore(2, state);
        Assert.Equal(Math.Exp(-0.5), state[0], 1e-14);
        lanes.Advance();
        lanes.CopyBefore(0, state);
        Assert.Equal(Math.Exp(-0.5 * (width - 1)), state[0], 1e-14);
    }
}
