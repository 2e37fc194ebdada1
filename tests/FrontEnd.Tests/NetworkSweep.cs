using System.Numerics;
using FrontEnd.Networks;

namespace FrontEnd.Tests;

/// <summary>
/// Solves one network at many frequencies and keeps all transfers: a loop over the groups of <see cref="NetworkLanes"/>. All memory is
/// taken at the start; solving allocates nothing. Not for use by two threads at a time.
/// </summary>
internal sealed class NetworkSweep
{
    private readonly NetworkProgram _program;
    private readonly NetworkLanes _lanes;
    private readonly double[] _omega;
    private readonly double[] _slotRe;
    private readonly double[] _slotIm;
    private readonly double[] _transferRe;
    private readonly double[] _transferIm;

    public NetworkSweep(NetworkProgram program, int capacity)
    {
        _program = program;
        _lanes = new NetworkLanes(program, isChecked: true);
        Capacity = (capacity + NetworkLanes.Width - 1) / NetworkLanes.Width * NetworkLanes.Width;
        _omega = new double[Capacity];
        _slotRe = new double[Capacity * Math.Max(1, program.Slots)];
        _slotIm = new double[_slotRe.Length];
        int transfers = Math.Max(1, program.Ports.Length * program.Outputs.Length);
        _transferRe = new double[Capacity * transfers];
        _transferIm = new double[_transferRe.Length];
    }

    /// <summary>Most lanes at a time; a multiple of the vector width.</summary>
    public int Capacity { get; }

    /// <summary>Lanes that took the pivoted fallback since the sweep was made.</summary>
    public int Fallbacks => _lanes.Fallbacks;

    /// <summary>ω = 2πf [rad/s] of each lane.</summary>
    public Span<double> Omega => _omega;

    public Span<double> SlotReal(int slot) => _slotRe.AsSpan(slot * Capacity, Capacity);

    public Span<double> SlotImaginary(int slot) => _slotIm.AsSpan(slot * Capacity, Capacity);

    /// <summary>Transfer from a port to an output, real part: V per V or V per A.</summary>
    public ReadOnlySpan<double> TransferReal(int output, int port) =>
        _transferRe.AsSpan(((output * _program.Ports.Length) + port) * Capacity, Capacity);

    public ReadOnlySpan<double> TransferImaginary(int output, int port) =>
        _transferIm.AsSpan(((output * _program.Ports.Length) + port) * Capacity, Capacity);

    public Complex Transfer(int output, int port, int lane) => new(TransferReal(output, port)[lane], TransferImaginary(output, port)[lane]);

    /// <summary>Solves the adjoint for outputs 0…<paramref name="outputs"/> − 1 on the first <paramref name="lanes"/> lanes: all ports'
    /// transfers.</summary>
    public void SolveAdjoint(int lanes, int outputs)
    {
        Pad(lanes);
        for (int lane = 0; lane < lanes; lane += NetworkLanes.Width)
        {
            Factor(lane, lanes);
            for (int output = 0; output < outputs; output++)
            {
                _lanes.SolveAdjoint(output);
                for (int port = 0; port < _program.Ports.Length; port++)
                {
                    Store(output, port, lane, _lanes.Transfer(port));
                }
            }
        }
    }

    /// <summary>Solves forward for one port on the first <paramref name="lanes"/> lanes: that port's transfers to all outputs.</summary>
    public void SolveForward(int lanes, int port)
    {
        Pad(lanes);
        for (int lane = 0; lane < lanes; lane += NetworkLanes.Width)
        {
            Factor(lane, lanes);
            _lanes.SolveForward(port);
            for (int output = 0; output < _program.Outputs.Length; output++)
            {
                Store(output, port, lane, _lanes.Output(output));
            }
        }
    }

    private void Factor(int lane, int lanes)
    {
        for (int slot = 0; slot < _program.Slots; slot++)
        {
            _lanes.SetSlot(slot, new ComplexLanes(new(_slotRe, (slot * Capacity) + lane), new(_slotIm, (slot * Capacity) + lane)));
        }

        _lanes.Live = Math.Min(NetworkLanes.Width, lanes - lane);
        _lanes.Factor(new Vector<double>(_omega, lane));
    }

    private void Store(int output, int port, int lane, ComplexLanes transfer)
    {
        int at = (((output * _program.Ports.Length) + port) * Capacity) + lane;
        transfer.Re.CopyTo(_transferRe, at);
        transfer.Im.CopyTo(_transferIm, at);
    }

    /// <summary>The last group of lanes is filled up with copies of the last lane, so that no lane divides by zero.</summary>
    private void Pad(int lanes)
    {
        int end = (lanes + NetworkLanes.Width - 1) / NetworkLanes.Width * NetworkLanes.Width;
        _omega.AsSpan(lanes, end - lanes).Fill(_omega[lanes - 1]);
        for (int slot = 0; slot < _program.Slots; slot++)
        {
            _slotRe.AsSpan((slot * Capacity) + lanes, end - lanes).Fill(_slotRe[(slot * Capacity) + lanes - 1]);
            _slotIm.AsSpan((slot * Capacity) + lanes, end - lanes).Fill(_slotIm[(slot * Capacity) + lanes - 1]);
        }
    }
}

internal static class NetworkSweeps
{
    /// <summary>Room for solving a number of lanes at a time.</summary>
    public static NetworkSweep CreateSweep(this NetworkProgram program, int capacity) => new(program, capacity);
}
