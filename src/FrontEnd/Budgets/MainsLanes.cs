using System.Numerics;
using FrontEnd.Designs;
using FrontEnd.Inputs;
using FrontEnd.Networks;

namespace FrontEnd.Budgets;

/// <summary>What the mains does at the input at one frequency of each lane, rms RTI [V] unless said otherwise.</summary>
/// <param name="FrontPhasor">From the site to the amplifier's input.</param>
/// <param name="DifferencePhasor">Difference of the amplifier's inputs [V rms, at the amplifier].</param>
/// <param name="Amplifier">The common mode through the amplifier's finite rejection.</param>
/// <param name="Loop">Induced in the leads' loop.</param>
/// <param name="CommonMode">Mean of the amplifier's inputs against common [V rms, at the amplifier].</param>
/// <param name="Drive">Driven ground's output against common [V rms]; 0 without one.</param>
/// <param name="FirstBuffer">Output of the first of the electrodes' buffers that are there [V rms]; 0 without one.</param>
/// <param name="SecondBuffer">Output of the second.</param>
internal readonly record struct MainsLanes(
    ComplexLanes FrontPhasor, ComplexLanes DifferencePhasor, Vector<double> Amplifier, Vector<double> Loop, Vector<double> CommonMode,
    Vector<double> Drive, Vector<double> FirstBuffer, Vector<double> SecondBuffer)
{
    /// <summary>From the site to the amplifier's input, by size.</summary>
    public Vector<double> Front => FrontPhasor.Magnitude;

    /// <summary>Dividers and leads together as phasors at the site; the quarter turn that all frequencies' currents have is left out.</summary>
    public ComplexLanes AtTheSite => DifferencePhasor / FrontPhasor;

    /// <summary>Difference of the amplifier's inputs by size [V rms, at the amplifier].</summary>
    public Vector<double> Difference => DifferencePhasor.Magnitude;

    /// <summary>Dividers and leads together.</summary>
    public Vector<double> Imbalance => Difference / Front;

    public Vector<double> Total => Imbalance + Amplifier + Loop;

    /// <summary>Solves the input network for the mains at one frequency of each lane, with the builds that stand on the lanes; the
    /// difference is the output solved for last.</summary>
    /// <param name="input">The input network.</param>
    /// <param name="design">What is the same for all builds.</param>
    /// <param name="builds">The builds that <paramref name="input"/> has been set to.</param>
    /// <param name="hertz">Frequency [Hz].</param>
    /// <param name="share">Voltage there over the mains voltage.</param>
    /// <param name="fieldShare">Field there over the field at the fundamental.</param>
    /// <param name="withOutputs">False to leave out the outputs of buffers and driven ground.</param>
    public static MainsLanes At(
        InputLanes input, Design design, BuildLanes builds, Vector<double> hertz, Vector<double> share, Vector<double> fieldShare,
        bool withOutputs = true)
    {
        InputModel model = input.Model;
        Vector<double> scale = Scale(builds, hertz, share);
        input.Factor(hertz);
        Vector<double> common = Size(model.Mean), drive = withOutputs && 0 <= model.Drive ? Size(model.Drive) : default;
        Vector<double> first = withOutputs && 0 < model.Buffers.Count ? Size(model.BufferOutputs[0]) : default,
            second = withOutputs && 1 < model.Buffers.Count ? Size(model.BufferOutputs[1]) : default;
        input.SolveDifference();
        Vector<double> front = input.Front.Magnitude, loop = 2 * Math.PI * hertz * fieldShare * builds.LoopFlux;
        double corner = design.Amplifier.CmrrCorner.Hertz;
        Vector<double> x = corner == 0 ? Vector<double>.Zero : hertz * (1 / corner);
        Vector<double> rejection = builds.Cmrr / Vector.SquareRoot(Vector<double>.One + (x * x));
        return new MainsLanes(input.Front, scale * Coupled(input, builds, leads: true), common / rejection / front, loop, common, drive,
            first, second);

        Vector<double> Size(int output)
        {
            input.Solve(output);
            return Coupled(input, builds, leads: true).Magnitude * scale;
        }
    }

    /// <summary>Σ coupling capacitances × transfers to the output last solved for, per volt of mains and per ω; the quarter turn of the
    /// currents is left out, as only sizes and differences count.</summary>
    internal static ComplexLanes Coupled(InputLanes input, BuildLanes builds, bool leads)
    {
        InputModel model = input.Model;
        ComplexLanes sum = (builds.BodyToMains * input.Transfer(model.BodyMainsPort))
            + (builds.CommonToMains * input.Transfer(model.CommonMainsPort));
        return leads
            ? sum + (builds.ActiveLeadToMains * input.Transfer(model.ActiveLeadPort))
                + (builds.ReferenceLeadToMains * input.Transfer(model.ReferenceLeadPort))
            : sum;
    }

    internal static Vector<double> Scale(BuildLanes builds, Vector<double> hertz, Vector<double> share) =>
        builds.MainsVolts * (2 * Math.PI * hertz) * share;
}

/// <summary>What the body's common mode alone becomes, and what the leads add to it, rms RTI [V].</summary>
/// <param name="BodyCommonMode">Body against the amplifier's common, without the leads' own couplings.</param>
/// <param name="Divider">Through the unequal dividers of electrodes and inputs.</param>
/// <param name="Leads">What the leads' couplings add, as phasors.</param>
internal readonly record struct MainsPartsLanes(Vector<double> BodyCommonMode, Vector<double> Divider, Vector<double> Leads)
{
    /// <summary>Rejection of the body's common mode by electrodes and amplifier together, as a voltage ratio.</summary>
    public Vector<double> SystemCmrr(in MainsLanes with) => BodyCommonMode / (Divider + with.Amplifier);

    /// <summary>Solves once more without the leads' couplings, at the same frequencies as <paramref name="with"/>.</summary>
    public static MainsPartsLanes At(InputLanes input, BuildLanes builds, Vector<double> hertz, Vector<double> share, in MainsLanes with)
    {
        Vector<double> scale = MainsLanes.Scale(builds, hertz, share);
        input.SetLeads(Vector<double>.Zero, Vector<double>.Zero);
        input.Factor(hertz);
        input.Solve(input.Model.Body);
        Vector<double> body = MainsLanes.Coupled(input, builds, leads: false).Magnitude * scale;
        input.Solve(input.Model.Difference);
        ComplexLanes plain = scale * MainsLanes.Coupled(input, builds, leads: false);
        input.SetLeads(builds.ActiveLeadToMains, builds.ReferenceLeadToMains);
        return new MainsPartsLanes(body, plain.Magnitude / with.Front, (with.DifferencePhasor - plain).Magnitude / with.Front);
    }
}
