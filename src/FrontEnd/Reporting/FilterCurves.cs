using FrontEnd.AntiAlias;
using FrontEnd.Budgets;
using FrontEnd.Digital;
using FrontEnd.Filters;
using FrontEnd.Results;
using FrontEnd.Topologies;

namespace FrontEnd.Reporting;

/// <summary>The lines of the filters' own plots.</summary>
internal static class FilterCurves
{
    private const string IdealName = ", ideal";
    private const int StepPoints = 400;

    /// <summary>The sections' own answer is shown over as many times its first point, and the first point is the so-manieth of the steps that it is
    /// worked out in: on a logarithmic axis the first steps by themselves are corners that a reader sees.</summary>
    private const int StepSpan = 1600, FirstStep = 64;
    private const int FewestSamples = 64;
    private const int MostSamples = 400_000;

    /// <summary>Anti-alias sections with ideal op-amps and as built, digital filters as designed and as rounded, below half the
    /// rate.</summary>
    public static List<Curve> Response(Evaluation evaluation, PathSweep sweep)
    {
        List<Curve> curves = [];
        Stage[] sections = Sections(evaluation);
        if (sections.Length != 0)
        {
            curves.Add(Line("anti-alias" + IdealName, sweep.Hertz, AsBuiltSection.IdealPower(sections, sweep.Hertz)));
            curves.Add(Line("anti-alias, as built", sweep.Hertz, sweep.SectionPower));
        }

        if (evaluation.Digital.Stages.Count != 0)
        {
            double rate = evaluation.Design.Converter.Rate.Hertz;
            bool rounded = evaluation.Digital.Arithmetic.Word != DigitalWord.Double;
            var designed = SecondOrderSections.Cascade(evaluation.Digital.Designed);
            curves.Add(Line(rounded ? "digital" + IdealName : "digital", sweep.Hertz, Array.ConvertAll(sweep.Hertz, f =>
                f < rate / 2 ? designed.PowerResponse(f, rate) : double.NaN)));
            if (rounded)
            {
                curves.Add(Line($"digital, as rounded to {DigitalArithmetic.WordOf(evaluation.Digital.Arithmetic.Word)}", sweep.Hertz,
                    Array.ConvertAll(sweep.Hertz, f => f < rate / 2 ? evaluation.Digital.Power(f) : double.NaN)));
            }
        }

        return curves;
    }

    /// <summary>As built less ideal, where a response has both.</summary>
    public static List<Curve> Difference(IReadOnlyList<Curve> response)
    {
        List<Curve> curves = [];
        for (int i = 1; i < response.Count; i++)
        {
            Curve ideal = response[i - 1], built = response[i];
            if (ideal.Name.EndsWith(IdealName, StringComparison.Ordinal))
            {
                curves.Add(new Curve(built.Name, "Hz", "dB", built.X, [.. built.Y.Zip(ideal.Y, (b, a) => b - a)]));
            }
        }

        return curves;
    }

    /// <summary>Group delay of the anti-alias sections as built and of the digital filters.</summary>
    public static List<Curve> Delay(Evaluation evaluation, PathSweep sweep)
    {
        List<Curve> curves = [];
        if (Sections(evaluation).Length != 0)
        {
            curves.Add(new Curve("anti-alias, as built", "Hz", "s", sweep.Hertz, sweep.SectionDelay));
        }

        if (evaluation.Digital.Stages.Count != 0)
        {
            double half = evaluation.Design.Converter.Rate.Hertz / 2;
            curves.Add(new Curve("digital", "Hz", "s", sweep.Hertz,
                Array.ConvertAll(sweep.Hertz, f => f < half ? evaluation.Digital.GroupDelay(f) : double.NaN)));
        }

        return curves;
    }

    /// <summary>The sections' answer to a unit step, and the filtered samples of it, on a logarithmic time axis.</summary>
    public static List<Curve> Step(Evaluation evaluation)
    {
        List<Curve> curves = [];
        Stage[] sections = Sections(evaluation);
        var analog = TimeResponse.Of(evaluation.IdealStages.Where((_, stage) => AsBuiltSection.Is(evaluation.Design.Stages[stage])));
        double settled = analog.Settle()?.Seconds ?? 0;
        if (0 < settled)
        {
            const int Fine = StepSpan * FirstStep;
            curves.Add(Thinned("anti-alias", analog, Fine, 2 * settled / Fine, FirstStep));
        }

        if (evaluation.Digital.Stages.Count != 0)
        {
            // Ten of its longest time constants, and twice as long as the sections take.
            double dt = 1 / evaluation.Design.Converter.Rate.Hertz, radius = Math.Min(evaluation.Digital.Sections.PoleRadius, 1 - 1e-9);
            double samples = (2 * settled / dt) + (0 < radius ? -10 / Math.Log(radius) : 0);
            curves.Add(Thinned(sections.Length == 0 ? "digital" : "anti-alias and digital", analog,
                (int)Math.Clamp(samples, FewestSamples, MostSamples), dt, 1, evaluation.Digital.Sections));
        }

        return curves;
    }

    private static Stage[] Sections(Evaluation evaluation) => [.. evaluation.Design.Stages.Where(AsBuiltSection.Is)];

    /// <summary>Against the line's own largest gain.</summary>
    private static Curve Line(string name, double[] hertz, double[] power)
    {
        double top = 0;
        foreach (double one in power)
        {
            top = double.IsFinite(one) ? Math.Max(top, one) : top;
        }

        return new Curve(name, "Hz", "dB", hertz, Array.ConvertAll(power, one => double.IsNaN(one) ? one : CurveMaker.Decibels(Math.Sqrt(one / top))));
    }

    /// <summary>From a sample on, the second at the earliest, which is the first with a place on a logarithmic axis; at most so many points,
    /// evenly spread on it.</summary>
    private static Curve Thinned(string name, TimeResponse response, int samples, double dt, int first, SecondOrderSections? digital = null)
    {
        List<int> kept = new(StepPoints);
        for (int i = 0; i < StepPoints; i++)
        {
            int sample = (int)Math.Round(first * Math.Pow((samples - 1.0) / first, i / (StepPoints - 1.0)));
            if (kept.Count == 0 || kept[^1] != sample)
            {
                kept.Add(sample);
            }
        }

        return new Curve(name, "s", "", [.. kept.ConvertAll(n => n * dt)], response.Step(dt, kept, digital));
    }
}
