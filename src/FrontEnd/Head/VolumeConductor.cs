namespace FrontEnd.Head;

/// <summary>A head as a conductor of current: a sphere of one radius filled with shells; gives the potential that a source in its brain puts on
/// the skin.</summary>
/// <remarks>
/// The potential's mean over the whole skin is zero, and that mean is what "far" means here: a closed sphere that is insulated knows no other
/// infinity.
/// <para>Source: derived. Published series for four shells have been misprinted, as naess-2017 (abstract) warns, so this one is not copied.</para>
/// <para>Accuracy: 1e-9 against reference/head/potentials.dat; 1e-12 against the closed form of one conductivity.</para>
/// </remarks>
internal sealed class VolumeConductor(Length radius, Shells shells)
{
    private double[]? _patchKernel;

    public Length Radius => radius;

    public Shells Shells => shells;

    /// <summary>H_n·f^(n−1) of the layer that patches lie in, worked out once.</summary>
    internal double[] PatchKernel => _patchKernel ??= shells.Kernel(shells.PatchRadius);

    /// <summary>1/(4πσ_1R²): what an A·m in the brain is over, in volts.</summary>
    internal double PerMoment => 1 / (4 * Math.PI * shells.Brain.SiemensPerMetre * radius.Metres * radius.Metres);

    /// <summary>The area of the sphere that patches lie in, halved: the largest patch [m²].</summary>
    public Area Hemisphere => Area.FromSquareMetres(2 * Math.PI * Math.Pow(shells.PatchRadius * radius.Metres, 2));

    /// <summary>Potential of a current dipole at a site, against far.</summary>
    /// <remarks>V = 1/(4πσ_1R²)·Σ H_n·f^(n−1)·[n·(p·b̂)·P_n(x) + p·(r̂ − x·b̂)·P_n′(x)], x = r̂·b̂. No division by a sine.</remarks>
    /// <param name="depth">f = b/R: distance from the middle over the head's radius; <see cref="Shells.Holds"/> says what is allowed.</param>
    /// <param name="direction">b̂, from the middle towards the dipole.</param>
    /// <param name="moment">How strong it is.</param>
    /// <param name="towards">Where the moment points, of length 1.</param>
    /// <param name="site">r̂.</param>
    public Voltage Potential(double depth, SpherePoint direction, DipoleMoment moment, SpherePoint towards, SpherePoint site)
    {
        double[] kernel = shells.Kernel(depth);
        double[] radial = new double[kernel.Length];
        for (int n = 1; n <= radial.Length; n++)
        {
            radial[n - 1] = n * kernel[n - 1];
        }

        double x = Math.Clamp(site.Dot(direction), -1, 1), along = towards.Dot(direction), sideways = towards.Dot(site) - (x * along);
        double sum = 0, slopes = 0;
        LegendreSeries.Sums(radial, x, new Span<double>(ref sum));
        LegendreSeries.SlopeSums(kernel, x, new Span<double>(ref slopes));
        return Voltage.FromVolts(PerMoment * moment.AmpereMetres * ((along * sum) + (sideways * slopes)));
    }
}
