using System.Numerics;
using FrontEnd.Networks;

namespace FrontEnd.Budgets;

/// <summary>The input network of one channel solved at a frequency of each lane.</summary>
/// <param name="Electrode">The active electrode's admittance [S].</param>
/// <param name="Difference">Transfer of every port to the difference of the amplifier's inputs.</param>
/// <param name="Across">Transfer of every port to the voltage across the active electrode.</param>
internal sealed record InputSolution(ComplexLanes Electrode, ComplexLanes[] Difference, ComplexLanes[] Across);

/// <summary>The input network of one channel, kept by frequency for channels that differ from it in the active electrode alone.</summary>
/// <remarks>
/// Another admittance Y' in the place of Y changes the network by one branch, and the inverse of its matrix by one product (Sherman and Morrison):
/// with T_p the transfer of a port to the output, W_p to the voltage across the electrode, and s the port across the electrode,
/// T'_p = T_p − T_s·W_p·δ/(1 + δ·W_s), δ = Y' − Y. 1 + δ·W_s is (Y' + y)/(Y + y), y what the rest of the network is to the electrode: as far from 1 as
/// the electrodes are from each other, so no more digits are lost than they differ by.
/// </remarks>
internal sealed class InputMemory
{
    private const int Most = 20_000;

    private readonly Dictionary<Vector<double>, InputSolution> _solutions = [];

    public InputSolution? At(Vector<double> hertz) => _solutions.GetValueOrDefault(hertz);

    public void Keep(Vector<double> hertz, InputSolution solution)
    {
        if (_solutions.Count < Most)
        {
            _solutions[hertz] = solution;
        }
    }
}
