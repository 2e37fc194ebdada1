using FrontEnd.Textbook;

namespace FrontEnd.Teaching.Problems;

/// <summary>Problems about sampling and what folds.</summary>
internal static class SamplingProblems
{
    public static IReadOnlyList<Template> All { get; } =
    [
        new("sampling-lands-at", Topic.Sampling, 1, "Where a harmonic lands", d =>
        {
            Frequency rate;
            Frequency line;
            int harmonic;
            TextbookFigure figure;
            do
            {
                line = d.OneOf<Frequency>("f₀", "mains frequency", 50, 60);
                rate = d.Stepped<Frequency>("f_s", "sampling rate", 100, 512, 1);
                harmonic = (int)d.OneOf<Ratio>("h", "harmonic of the mains", 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 17, 19).Fraction;
                figure = FilterFormulas.LandsAt(Frequency.FromHertz(harmonic * line.Hertz), rate);
            }
            while ((figure.Value < 0.5 || (rate.Hertz / 2) - 0.5 < figure.Value || harmonic * line.Hertz < rate.Hertz / 2) && d.Again());   // a landing at 0 Hz or at half the rate teaches nothing, and one below half the rate does not fold

            double frequency = harmonic * line.Hertz;
            return new ProblemText("A harmonic of the mains reaches the converter. At which frequency is it found in the record?")
                .Step("The harmonic", "h·f₀", $"{harmonic} · {Put.In(line)}", frequency, "Hz")
                .Step("Sampling takes it to its distance from the nearest multiple of the rate", figure)
                .AnswersWithin<Frequency>(figure.Value, 0.01 * figure.Value, 4)
                .Slip(Slips.WrongSide, frequency - (rate.Hertz * Math.Floor(frequency / rate.Hertz)))
                .Slip(Slips.WrongSide, (rate.Hertz * Math.Ceiling(frequency / rate.Hertz)) - frequency)
                .Slip(Slips.FoldAtHalf, Math.Abs(frequency - (rate.Hertz / 2)));
        }),
        new("sampling-fold-frequency", Topic.Sampling, 1, "What folds into the band first", d =>
        {
            Frequency rate = d.OneOf<Frequency>("f_s", "sampling rate", 160, 180, 200, 220, 250, 256, 300, 320, 400, 500, 512, 600, 800, 1000);
            Frequency high = d.Stepped<Frequency>("f₂", "high edge of the band", 28, 70, 1);
            TextbookFigure figure = FilterFormulas.FoldFrequency(rate, high);
            return new ProblemText("Which is the lowest frequency above the band that lands inside it after sampling?")
                .Step("The first frequency that folds onto the band's high edge", figure)
                .Answers<Frequency>(figure.Value, 0.01, 4)
                .Slip(Slips.HalfTheRate, rate.Hertz / 2)
                .Slip(Slips.FoldAtHalf, (rate.Hertz / 2) - high.Hertz)
                .Slip(Slips.FoldsLater, rate.Hertz + high.Hertz);
        }),
        new("sampling-order", Topic.Sampling, 2, "Order of the anti-alias filter", d =>
        {
            Decibels attenuation = d.OneOf<Decibels>("A", "attenuation wanted where folding starts", 40, 46, 50, 54, 60);
            Frequency rate = d.OneOf<Frequency>("f_s", "sampling rate", 250, 256, 320, 400, 500, 512, 1000);
            Frequency high = d.OneOf<Frequency>("f₂", "high edge of the band", 30, 35, 40, 45);
            Frequency corner = d.OneOf<Frequency>("f_c", "−3 dB corner of the Butterworth low-pass", 50, 55, 60, 65, 70);
            Frequency stop = Frequency.FromHertz(rate.Hertz - high.Hertz);
            TextbookFigure figure = FilterFormulas.ButterworthOrder(attenuation, stop, corner);
            double order = Math.Ceiling(figure.Value - 1e-9);
            double atHalf = Math.Ceiling(FilterFormulas.ButterworthOrder(attenuation, Frequency.FromHertz(rate.Hertz / 2),
                corner).Value - 1e-9);
            TextbookFigure reached = FilterFormulas.ButterworthAttenuation((int)order, stop, corner);
            double At(double taken) => taken < 1 ? double.NaN : FilterFormulas.ButterworthAttenuation((int)taken, stop, corner).Value;
            return new ProblemText("Choose the lowest order that a Butterworth anti-alias filter may have. By how many decibels does that filter attenuate where folding starts?")
                .Step("Folding into the band starts here", FilterFormulas.FoldFrequency(rate, high))
                .Step("The Butterworth attenuation, solved for the order", figure)
                .Say($"Only whole orders can be built: round up, to {order}")
                .Step("What that order reaches there", reached)
                .AnswersWithin<Decibels>(reached.Value, 0.3)
                .Slip(Slips.RoundedDown, At(order - 1))
                .Slip(Slips.WantedForReached, attenuation.Value)
                .Slip(Slips.HalfTheRateForOrder, At(atHalf))
                .Slip(Slips.TenForTwentyLog, At(Math.Ceiling((figure.Value / 2) - 1e-9)));
        }),
        new("sampling-fold-attenuation", Topic.Sampling, 2, "Attenuation where folding starts", d =>
        {
            int order = (int)d.OneOf<Ratio>("n", "order of the Butterworth low-pass", 1, 2, 3, 4, 5).Fraction;
            Frequency rate = d.OneOf<Frequency>("f_s", "sampling rate", 250, 256, 320, 400, 500, 512, 1000);
            Frequency high = d.OneOf<Frequency>("f₂", "high edge of the band", 30, 35, 40, 45);
            Frequency corner = d.OneOf<Frequency>("f_c", "its −3 dB corner", 60, 70, 80, 100);
            Frequency fold = Frequency.FromHertz(rate.Hertz - high.Hertz);
            TextbookFigure figure = FilterFormulas.ButterworthAttenuation(order, fold, corner);
            return new ProblemText("By how many decibels does the filter attenuate the lowest frequency that folds into the band?")
                .Step("That frequency", FilterFormulas.FoldFrequency(rate, high))
                .Step("The Butterworth attenuation there", figure)
                .AnswersWithin<Decibels>(figure.Value, 0.2)
                .Slip(Slips.HalfTheRate, FilterFormulas.ButterworthAttenuation(order, Frequency.FromHertz(rate.Hertz / 2), corner).Value)
                .Slip(Slips.TwentyForTenLog, 2 * figure.Value)
                .Slip(Slips.OnePole, FilterFormulas.ButterworthAttenuation(1, fold, corner).Value);
        }),
        new("sampling-skew", Topic.Sampling, 3, "Channels sampled one after another", d =>
        {
            Frequency line = d.OneOf<Frequency>("f", "mains frequency", 50, 60);
            Duration skew = d.Part<Duration>("Δt", "time between the two samples", 1e-6, 910e-6, PreferredSeries.E96);
            TextbookFigure leak = MainsFormulas.SkewLeak(line, skew);
            double value = -20 * Math.Log10(leak.Value);
            return new ProblemText("Two channels are sampled one after the other and subtracted later. What rejection of a common-mode voltage is left, in decibels?")
                .Step("The difference of two samples of one sine, a time Δt apart", leak)
                .Step("As a rejection", "−20·log10 leak", $"−20·log10 {Put.In(leak.Value)}", value, "dB")
                .AnswersWithin<Decibels>(value, 0.2)
                .Slip(Slips.TenForTwentyLog, value / 2)
                .Slip(Slips.HalfPhase, -20 * Math.Log10(leak.Value / 2))
                .Slip(Slips.NoTwoPi, -20 * Math.Log10(2 * line.Hertz * skew.Seconds / 2));
        }),
        new("sampling-sinc", Topic.Sampling, 3, "Attenuation of a decimation filter", d =>
        {
            Frequency rate = d.OneOf<Frequency>("f_d", "output rate", 250, 500, 1000);
            int order = (int)d.OneOf<Ratio>("K", "order of the sinc filter", 3, 4, 5).Fraction;
            int decimation = (int)d.OneOf<Ratio>("M", "modulator clocks to one output sample", 128, 256, 512).Fraction;
            double share = d.Stepped<Ratio>("f/f_d", "frequency over the output rate", 0.1, 0.9, 0.01).Fraction;
            TextbookFigure figure = FilterFormulas.SincGain(Frequency.FromHertz(share * rate.Hertz), rate, decimation, order);
            double one = -figure.Value / order;
            return new ProblemText("By how many decibels does a delta-sigma converter's sinc filter attenuate this frequency?")
                .Step("The gain of K moving averages over one output period; the attenuation is its negative", figure)
                .AnswersWithin<Decibels>(-figure.Value, Math.Max(0.05, 0.005 * -figure.Value), 4)
                .Slip(Slips.OneAverage, one)
                .Slip(Slips.TenForTwentyLog, -figure.Value / 2)
                .Slip(Slips.ZeroPhase, figure.Value);
        }),
    ];
}
