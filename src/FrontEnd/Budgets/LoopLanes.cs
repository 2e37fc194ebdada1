using System.Numerics;
using FrontEnd.Designs;
using FrontEnd.Networks;

namespace FrontEnd.Budgets;

/// <summary>One surrounding of the driven ground's loop: capacitances to earth [F] and the electrodes' impedance over the nominal
/// one.</summary>
internal readonly record struct LoopSurroundings(double BodyToEarth, double CommonToEarth, double ElectrodeFactor);

/// <summary>The loop of one device in one surrounding: where its gain is 1 [Hz], its margin there [°] and its return ratio there.</summary>
internal sealed record LoopPoint(LoopSurroundings Surroundings, double UnityGainHertz, double MarginDegrees, Complex LoopAtUnity);

/// <summary>The driven ground's loop for a group of lanes: a return ratio T = K·β, positive at dc.</summary>
/// <remarks>T = K·½(v(A2) + v(R2)) with v(D) − v(C) held at 1. The ratio of the mean to the drive in the closed network is the same figure,
/// so the loop need not be opened.</remarks>
internal sealed class LoopLanes(Design design, InputLanes input)
{
    private const int MostRounds = 8;

    /// <summary>|ln|T|| at which the crossing is near enough.</summary>
    private const double NearUnity = 1e-6;

    private readonly GroundDriveGain _gain = new(design);

    /// <summary>The margin of each lane's build in a surrounding in which another device's crossing is known [°]: secant steps on ln|T|
    /// from there.</summary>
    public void Margin(LoopPoint point, Span<double> degrees)
    {
        int width = Vector<double>.Count;
        Span<double> hertz = stackalloc double[width], lastHertz = stackalloc double[width], lastValue = stackalloc double[width];
        hertz.Fill(point.UnityGainHertz);
        (double body, double common, double factor) = point.Surroundings;
        input.Surround(new(body), new(common));
        input.SetElectrodes(new(factor), new(factor), new(factor));
        for (int round = 0; ; round++)
        {
            input.Factor(new Vector<double>(hertz));
            (ComplexLanes mean, ComplexLanes drive) = input.SolveDrive();
            bool done = true;
            for (int lane = 0; lane < width; lane++)
            {
                Complex loop = mean[lane] / drive[lane] * _gain.At(hertz[lane]);
                double value = Math.Log(loop.Magnitude), angle = point.MarginDegrees + ((loop / point.LoopAtUnity).Phase * 180 / Math.PI);
                bool first = round == 0 || Math.Abs(hertz[lane] - lastHertz[lane]) < 1e-9 * hertz[lane];
                double slope = first ? -1 : Math.Clamp((value - lastValue[lane]) / Math.Log(hertz[lane] / lastHertz[lane]), -4, -0.2);
                degrees[lane] = angle;
                (lastValue[lane], lastHertz[lane]) = (value, hertz[lane]);
                done &= Math.Abs(value) < NearUnity;
                hertz[lane] *= Math.Exp(Math.Clamp(-value / slope, -0.5, 0.5));
            }

            if (done || round == MostRounds)
            {
                return;
            }
        }
    }
}
