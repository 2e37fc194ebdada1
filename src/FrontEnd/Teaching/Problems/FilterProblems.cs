using FrontEnd.Citations;
using FrontEnd.Textbook;

namespace FrontEnd.Teaching.Problems;

/// <summary>Problems about filters and notches.</summary>
internal static class FilterProblems
{
    public static IReadOnlyList<Template> All { get; } =
    [
        new("filter-rc", Topic.Filters, 1, "Corner of R and C", d =>
        {
            Resistance r = d.Part<Resistance>("R", "resistor", 4.7e3, 470e3, PreferredSeries.E24);
            Capacitance c = d.Part<Capacitance>("C", "capacitor", 10e-9, 470e-9, PreferredSeries.E6);
            TextbookFigure figure = FilterFormulas.RcCorner(r, c);
            return new ProblemText("At which frequency is this first-order low-pass 3 dB down?")
                .Step("There the reactance of the capacitor equals the resistance", figure)
                .Answers<Frequency>(figure.Value)
                .Slip(Slips.NoTwoPi, 2 * Math.PI * figure.Value)
                .Slip(Slips.NoFactorTwo, 2 * figure.Value);
        }),
        new("filter-choose-capacitor", Topic.Filters, 2, "Capacitor from the E12 series", d =>
        {
            Resistance r = d.OneOf<Resistance>("R", "resistor of the low-pass", 1e3, 2.2e3, 4.7e3, 10e3, 15e3, 22e3, 33e3, 47e3, 68e3, 100e3, 150e3, 220e3);
            Frequency corner = d.OneOf<Frequency>("f_c", "corner wanted", 0.5, 1, 2, 5, 10, 20, 40, 60, 70, 100, 150, 200, 400);
            double exact = 1 / (2 * Math.PI * r.Ohms * corner.Hertz);
            double chosen = PreferredValues.Nearest(exact, PreferredSeries.E12);
            double next = chosen < exact
            ? PreferredValues.NextUp(chosen, PreferredSeries.E12) : PreferredValues.NextDown(chosen, PreferredSeries.E12);
            return new ProblemText("Which capacitor of the E12 series comes nearest to this corner, by ratio?")
                .Step("The corner's formula, solved for C", "1/(2πf_c·R)", $"1/(2π · {Put.In(corner)} · {Put.In(r)})", exact, "F",
                    Sources.CommonPractice)
                .Say($"The nearest of the series by ratio is {Put.In(chosen, "F")}", new SourceRef("iec-60063"))
                .Answers<Capacitance>(chosen, 0.005)
                .RoundedFrom(exact)
                .Slip(Slips.NoTwoPi, PreferredValues.Nearest(2 * Math.PI * exact, PreferredSeries.E12))
                .Slip(Slips.NextPreferred, next)
                .Slip(Slips.NotPreferred, exact);
        })
        { FewAnswers = "the E12 series has 12 values a decade" },
        new("filter-sallen-key", Topic.Filters, 2, "Pole frequency of a Sallen–Key section", d =>
        {
            Resistance r1 = d.Part<Resistance>("R₁", "resistor from the input", 10e3, 47e3, PreferredSeries.E24);
            Resistance r2 = d.Part<Resistance>("R₂", "resistor to the amplifier", 10e3, 47e3);
            Capacitance c1 = d.Part<Capacitance>("C₁", "capacitor to the output", 100e-9, 330e-9, PreferredSeries.E6);
            Capacitance c2 = d.Part<Capacitance>("C₂", "capacitor to common", 22e-9, 68e-9, PreferredSeries.E6);
            TextbookFigure figure = FilterFormulas.SallenKeyFrequency(r1, r2, c1, c2);
            return new ProblemText("Which pole frequency has this unity-gain Sallen–Key low-pass?")
                .Step("The geometric mean of the two RC corners", figure)
                .Answers<Frequency>(figure.Value)
                .Slip(Slips.NoTwoPi, 2 * Math.PI * figure.Value)
                .Slip(Slips.OnePair, FilterFormulas.RcCorner(r1, c1).Value)
                .Slip(Slips.NoRoot, 1 / (2 * Math.PI * (r1 * c1).Seconds * (r2 * c2).Seconds));
        }),
        new("filter-sallen-key-q", Topic.Filters, 3, "Q of a Sallen–Key section", d =>
        {
            Resistance r1 = d.Part<Resistance>("R₁", "resistor from the input", 10e3, 47e3);
            Resistance r2 = d.Part<Resistance>("R₂", "resistor to the amplifier", 10e3, 47e3);
            Capacitance c1 = d.Part<Capacitance>("C₁", "capacitor to the output", 100e-9, 330e-9, PreferredSeries.E6);
            Capacitance c2 = d.Part<Capacitance>("C₂", "capacitor to common", 22e-9, 68e-9, PreferredSeries.E6);
            TextbookFigure figure = FilterFormulas.SallenKeyQ(r1, r2, c1, c2);
            return new ProblemText("Which Q has this unity-gain Sallen–Key low-pass?")
                .Step("Only the capacitor to common is loaded by both resistors", figure)
                .Answers<Ratio>(figure.Value)
                .Slip(Slips.SwappedCapacitors, FilterFormulas.SallenKeyQ(r1, r2, c2, c1).Value)
                .Slip(Slips.EqualResistors, Math.Sqrt(c1 / c2) / 2)
                .Slip(Slips.OneResistorOfTwo, Math.Sqrt((r1 * c1).Seconds / (r2 * c2).Seconds));
        }),
        new("filter-butterworth", Topic.Filters, 2, "Attenuation of a Butterworth low-pass", d =>
        {
            int order = (int)d.OneOf<Ratio>("n", "order of the Butterworth low-pass", 2, 3, 4, 5, 6).Fraction;
            Frequency corner = d.OneOf<Frequency>("f_c", "−3 dB corner", 40, 60, 70, 100);
            double times = d.Stepped<Ratio>("f/f_c", "frequency over the corner", 1.2, 4, 0.05).Fraction;
            Frequency f = Frequency.FromHertz(times * corner.Hertz);
            TextbookFigure figure = FilterFormulas.ButterworthAttenuation(order, f, corner);
            return new ProblemText("By how many decibels does the low-pass attenuate this frequency?")
                .Step("The Butterworth magnitude", figure)
                .AnswersWithin<Decibels>(figure.Value, 0.15)
                .Slip(Slips.Asymptote, 20 * order * Math.Log10(times))
                .Slip(Slips.TwentyForTenLog, 2 * figure.Value)
                .Slip(Slips.OnePole, 10 * Math.Log10(1 + (times * times)));
        }),
        new("filter-equal-sections", Topic.Filters, 3, "Equal sections in a row", d =>
        {
            int sections = (int)d.OneOf<Ratio>("n", "sections, with buffers between", 2, 3, 4, 5).Fraction;
            Frequency corner = d.Stepped<Frequency>("f₁", "−3 dB corner of each", 40, 300, 2);
            TextbookFigure factor = FilterFormulas.EqualPoleFactor(sections);
            double value = corner.Hertz / factor.Value;
            return new ProblemText("Equal first-order low-passes stand in a row. At which frequency is the whole 3 dB down?")
                .Step("Each section may be down by 3/n dB only; its corner lies above that frequency by this factor", factor)
                .Step("So the whole is 3 dB down at", "f₁/factor", $"{Put.In(corner)}/{Put.In(factor.Value)}", value, "Hz",
                    Sources.OpAmpsCascade)
                .Answers<Frequency>(value)
                .Slip(Slips.OneSection, corner.Hertz)
                .Slip(Slips.DividedByCount, corner.Hertz / sections)
                .Slip(Slips.Product, corner.Hertz * factor.Value);
        }),
        new("notch-width", Topic.Notch, 1, "Width of a notch", d =>
        {
            Frequency centre = d.OneOf<Frequency>("f₀", "frequency removed", 50, 60, 100, 120, 150, 180);
            Ratio q = d.Stepped<Ratio>("Q", "quality", 4, 60, 1);
            double value = centre.Hertz / q.Fraction;
            return new ProblemText("How far apart are the −3 dB points of the notch?")
                .Step("The quality is the centre over the width", "f₀/Q", $"{Put.In(centre)}/{Put.In(q.Fraction)}", value, "Hz",
                    Sources.Notch)
                .Answers<Frequency>(value)
                .Slip(Slips.BandwidthForHalf, value / 2)
                .Slip(Slips.Product, centre.Hertz * q.Fraction);
        }),
        new("notch-ring", Topic.Notch, 2, "How long a notch rings", d =>
        {
            Frequency centre = d.OneOf<Frequency>("f₀", "frequency removed", 50, 60);
            Ratio q = d.Stepped<Ratio>("Q", "quality", 6, 50, 1);
            Frequency rate = d.OneOf<Frequency>("f_s", "sampling rate", 250, 500, 512, 1000);
            Ratio share = d.OneOf<Ratio>("share", "share of the ringing's amplitude that may be left", 0.01, 0.02, 0.03, 0.05, 0.1);
            TextbookFigure tau = FilterFormulas.NotchTimeConstant(centre, q.Fraction, rate);
            TextbookFigure figure = FilterFormulas.NotchRingTime(centre, q.Fraction, rate, share);
            return new ProblemText("A blink makes a digital notch ring. How long until only this share is left?")
                .Step("The poles' distance from the unit circle sets the time constant, about Q/(πf₀)", tau)
                .Step("An exponential needs ln(1/share) time constants", figure)
                .Answers<Duration>(figure.Value, 0.03)
                .Slip(Slips.OneTimeConstant, tau.Value)
                .Slip(Slips.TenForNaturalLog, tau.Value * Math.Log10(1 / share.Fraction))
                .Slip(Slips.NoPi, q.Fraction / centre.Hertz * Math.Log(1 / share.Fraction))
                .Slip(Slips.TwoTooMuch, figure.Value / 2);
        }),
        new("notch-deviation", Topic.Notch, 3, "A notch beside the real mains", d =>
        {
            Frequency centre = d.OneOf<Frequency>("f₀", "centre of the notch", 50, 60);
            Ratio q = d.Stepped<Ratio>("Q", "quality", 5, 50, 1);
            Frequency off = d.OneOf<Frequency>("Δ", "how far the mains is above the centre", 0.05, 0.08, 0.1, 0.13, 0.15, 0.18, 0.2, 0.25, 0.3, 0.35, 0.4, 0.5);
            Frequency real = Frequency.FromHertz(centre.Hertz + off.Hertz);
            TextbookFigure figure = FilterFormulas.NotchAttenuation(real, centre, q.Fraction);
            double x = q.Fraction * ((real / centre) - (centre / real));
            return new ProblemText("The mains is not exactly where the notch is. By how many decibels is it attenuated? Use the analogue formula.")
                .Step("The notch lets through |x|/√(1 + x²) of what is beside its centre", figure)
                .AnswersWithin<Decibels>(figure.Value, 0.15)
                .Slip(Slips.TwentyForTenLog, 2 * figure.Value)
                .Slip(Slips.NoFactorTwo, 10 * Math.Log10(1 + (4 / (x * x))))
                .Slip(Slips.NoSquare, 10 * Math.Log10(1 + (1 / Math.Abs(x))));
        }),
    ];
}
