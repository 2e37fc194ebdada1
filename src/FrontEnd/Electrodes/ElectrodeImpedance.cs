using System.Numerics;

namespace FrontEnd.Electrodes;

/// <summary>One electrode's impedance for many lanes of the solver at once.</summary>
internal static class ElectrodeImpedance
{
    /// <summary>
    /// Admittance 1/Z and Re Z of one electrode on the first <paramref name="lanes"/> lanes; spans are padded to the vector width.
    /// Z is the electrode's own times the lane's factor, which keeps the time constants.
    /// </summary>
    public static void Admittance(
        Electrode electrode, ReadOnlySpan<double> omega, ReadOnlySpan<double> factor, int lanes, Span<double> admittanceRe,
        Span<double> admittanceIm, Span<double> resistance)
    {
        // A contact of no resistance at all would be a division by zero; 1 mΩ is a short circuit to every figure shown.
        double rs = Math.Max(electrode.SeriesResistance.Ohms, electrode.ContactResistance.Ohms == 0 ? 1e-3 : 0);
        double rd = electrode.ContactResistance.Ohms, tau = rd * electrode.ContactCapacitance.Farads;
        double rd2 = electrode.SecondResistance?.Ohms ?? 0, tau2 = rd2 * (electrode.SecondCapacitance?.Farads ?? 0);
        for (int lane = 0; lane < lanes; lane += Vector<double>.Count)
        {
            var w = new Vector<double>(omega[lane..]);
            Vector<double> x = w * tau;
            Vector<double> g = new Vector<double>(rd) / (Vector<double>.One + (x * x));
            Vector<double> re = g + new Vector<double>(rs);
            Vector<double> im = -g * x;
            if (rd2 != 0)
            {
                x = w * tau2;
                g = new Vector<double>(rd2) / (Vector<double>.One + (x * x));
                re += g;
                im -= g * x;
            }

            var scale = new Vector<double>(factor[lane..]);
            re *= scale;
            im *= scale;
            Vector<double> inverse = Vector<double>.One / ((re * re) + (im * im));
            (re * inverse).CopyTo(admittanceRe[lane..]);
            (-im * inverse).CopyTo(admittanceIm[lane..]);
            re.CopyTo(resistance[lane..]);
        }
    }
}
