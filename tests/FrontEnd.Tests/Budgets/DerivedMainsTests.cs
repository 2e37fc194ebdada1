using System.Numerics;
using FrontEnd.Budgets;
using FsCheck.Xunit;
using Xunit;

namespace FrontEnd.Tests.Budgets;

/// <summary>The mains of a derived channel against every choice of signs there is.</summary>
public sealed class DerivedMainsTests
{
    /// <summary>Up to four channels nothing is left out, whatever the phases.</summary>
    [Property(MaxTest = 100)]
    public void Of_UpToFourChannels_IsTheLargestOfAllChoices(int seed)
    {
        var random = new Random(seed);
        int n = random.Next(1, 5);
        MainsChoices[] channels = [.. Enumerable.Range(0, n).Select(_ => new MainsChoices((Any(random), Any(random)), (Any(random), Any(random))))];
        double[] weights = Weights(random, n);
        Assert.Equal(AllChoices(weights, channels), DerivedMains.Of(weights, channels), 1e-12);
    }

    /// <summary>Channels whose phasors differ by size and a little by phase, as electrodes' do.</summary>
    [Property(MaxTest = 50)]
    public void Of_ManyChannels_IsTheLargestOfAllChoices(int seed)
    {
        var random = new Random(seed);
        int n = random.Next(5, 10);
        MainsChoices[] channels = [.. Enumerable.Range(0, n).Select(_ => Electrode(random))];
        double[] weights = Weights(random, n);
        Assert.Equal(1, DerivedMains.Of(weights, channels) / AllChoices(weights, channels), 1e-9);
    }

    [Property(MaxTest = 20)]
    public void Of_ManyChannelsAlike_IsTheLargestOfAllChoices(int seed)
    {
        var random = new Random(seed);
        int n = random.Next(5, 11);
        MainsChoices one = Electrode(random);
        double[] weights = [.. Enumerable.Range(0, n).Select(i => i == 0 ? 1 - (1.0 / n) : -1.0 / n)];
        MainsChoices[] channels = [.. Enumerable.Repeat(one, n)];
        Assert.Equal(1, DerivedMains.Of(weights, channels) / AllChoices(weights, channels), 1e-9);
    }

    [Fact]
    public void Of_ChannelsWithoutWeight_DoNotCount()
    {
        MainsChoices one = new((new(1, 0.5), new(-1, 0.25)), (new(0.5, 0), new(-0.5, 0))), large = new((new(100, 9), new(-100, 9)), (new(100, 9), new(-100, 9)));
        Assert.Equal(3, DerivedMains.Of([2, 0], [one, large]), 1e-12);
    }

    private static MainsChoice Any(Random random) => new(new Complex(random.NextDouble() - 0.5, random.NextDouble() - 0.5), 0.1 * random.NextDouble());

    /// <summary>A divider that the reference's side moves alike for both of a channel's sizes, nearly in one line.</summary>
    private static MainsChoices Electrode(Random random)
    {
        double size = Math.Pow(10, 2 * random.NextDouble()), rest = 0.05 * random.NextDouble();
        Complex phase = Complex.FromPolarCoordinates(1, 0.3 * random.NextDouble()), reference = Complex.FromPolarCoordinates(5, 0.3 * random.NextDouble());
        return new MainsChoices(
            (new((1.5 * size * phase) - (1.5 * reference), rest), new((0.5 * size * phase) - (1.5 * reference), rest)),
            (new((1.5 * size * phase) - (0.5 * reference), rest), new((0.5 * size * phase) - (0.5 * reference), rest)));
    }

    private static double[] Weights(Random random, int n) => [.. Enumerable.Range(0, n).Select(_ => Math.Round((4 * random.NextDouble()) - 2, 2) is var c && c == 0 ? 1 : c)];

    private static double AllChoices(double[] weights, MainsChoices[] channels)
    {
        double most = 0;
        foreach (bool referenceHigh in (bool[])[true, false])
        {
            for (int choice = 0; choice < 1 << weights.Length; choice++)
            {
                Complex sum = 0;
                double rest = 0;
                for (int i = 0; i < weights.Length; i++)
                {
                    (MainsChoice high, MainsChoice low) = referenceHigh ? channels[i].ReferenceHigh : channels[i].ReferenceLow;
                    MainsChoice one = ((choice >> i) & 1) == 0 ? high : low;
                    sum += weights[i] * one.Phasor;
                    rest += Math.Abs(weights[i]) * one.Rest;
                }

                most = Math.Max(most, sum.Magnitude + rest);
            }
        }

        return most;
    }
}
