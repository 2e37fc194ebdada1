using FrontEnd.Catalogue;
using FrontEnd.Designs;
using FrontEnd.Electrodes;
using FrontEnd.Fields;
using FrontEnd.Identity;
using FrontEnd.Results;
using FrontEnd.Textbook;

namespace FrontEnd.Teaching;

/// <summary>Stops of a tour through a design, each with its own values and figures; what a design does not have, or whose figure is not a number, has no
/// stop.</summary>
internal static class TourStops
{
    /// <summary>More mains harmonics than any design is worked out for.</summary>
    private const int MostHarmonics = 60;

    /// <summary>A mismatch that leaves room above it; the range ends at 200 %.</summary>
    private const double LargeMismatch = 0.65;

    /// <summary>The stops of a design, in order.</summary>
    public static IReadOnlyList<TourStop> Of(Assessment assessment) =>
    [
        .. new[]
        {
            Offset(assessment), Imbalance(assessment), Skin(assessment), Leads(assessment), Aliases(assessment), AntiAlias(assessment),
            Bits(assessment), SeriesResistor(assessment),
        }.OfType<TourStop>().Where(stop => IsNumber(assessment, stop.Result)),
    ];

    private static TourStop? Offset(Assessment assessment) =>
        Number(assessment.Design, DesignKeys.Amplifier.Gain) is not { } gain || Figure(assessment, ResultIds.Levels.OffsetSurvived) is not { } survived
        ? null
        : new TourStop(
            TourSubject.Offset, "the offset eats the gain",
            $"Two electrodes never have the same half-cell voltage: here {QuantityText.Format(assessment.Design.OffsetStep)} dc is expected beneath signals of {QuantityText.Format(assessment.Design.LargestSignal)} at most. The amplifier must carry both, so the offset, not the signal, limits its gain. With a gain of {gain.Text} it survives ±{survived}. Double the gain.",
            DesignKeys.Amplifier.Gain, [gain.Times(2), gain.Times(0.5)], ResultIds.Levels.OffsetSurvived);

    private static TourStop? Imbalance(Assessment assessment)
    {
        Design design = assessment.Design;
        if (Number(design, DesignKeys.Amplifier.Cmrr) is not { } amplifier || Figure(assessment, ResultIds.Mains.SystemCmrr) is not { } whole)
        {
            return null;
        }

        double mismatch = design.Electrodes.EffectiveMismatch;
        bool large = LargeMismatch < mismatch;
        return new TourStop(
            TourSubject.Imbalance, "the imbalance eats the CMRR",
            $"The amplifier's CMRR of {amplifier.Text} does nothing about what the electrodes have already made unequal: each forms a divider with the input impedance, and the difference between two dividers is signal. With a mismatch of {PercentOf(mismatch)} the whole system rejects {whole}. Make them {(large ? "three times more alike" : "more unequal")}.",
            DesignKeys.Electrodes.Mismatch, [PercentOf(large ? mismatch / 3 : mismatch == 0 ? 1 : 3 * mismatch)], ResultIds.Mains.SystemCmrr);
    }

    private static TourStop? Skin(Assessment assessment)
    {
        if (Figure(assessment, ResultIds.Noise.Electrodes) is not { } electrodes || Figure(assessment, ResultIds.Noise.Total) is not { } total)
        {
            return null;
        }

        bool dry = assessment.Design.Electrodes.Active.EffectiveContact == ContactKind.Dry;
        return new TourStop(
            TourSubject.Skin, "dry skin makes the noise",
            $"A contact's resistance makes noise, √(4kTR·B), and dry metal adds its drift. Here the electrodes make {electrodes}; everything together makes {total}. Put {(dry ? "gel under the active electrode: the noise falls" : "a dry electrode in place of the active one: the noise rises")}, whatever amplifier follows.",
            DesignKeys.Electrodes.ActiveCard, [dry ? "gel-prepared" : "dry-multipin"], ResultIds.Noise.Electrodes);
    }

    private static TourStop? Leads(Assessment assessment)
    {
        if (Number(assessment.Design, DesignKeys.Mains.LeadToMains) is not { } coupling || Figure(assessment, ResultIds.Mains.Leads) is not { } leads
            || Figure(assessment, ResultIds.Mains.Total) is not { } total)
        {
            return null;
        }

        return new TourStop(
            TourSubject.Leads, "the lead is an aerial",
            $"The {coupling.Text} between each lead and the mains drives a current through its electrode: {leads} of this design's {total}. The larger the contact's impedance, the more hum, and no amplifier can tell it from signal. A lead that loses its shield has ten times the coupling.",
            DesignKeys.Mains.LeadToMains, [coupling.IsZero ? "1 fF" : coupling.Times(10)], ResultIds.Mains.Leads);
    }

    private static TourStop? Aliases(Assessment assessment)
    {
        Design design = assessment.Design;
        double mains = design.Mains.Frequency.Hertz;
        (int Order, Result Lands)[] folded =
        [
            .. from order in Enumerable.Range(1, MostHarmonics)
               let lands = assessment.Find(ResultIds.Mains.Harmonic(order).LandsAt)
               where lands is { State: ResultState.Number } && design.Converter.Rate.Hertz / 2 < order * mains
               // In the band beyond doubt: what lands below its edge is there only by the mains' deviation, and is no rhythm.
               orderby lands.LandsInBand != true, lands.Si < design.Band.Low.Hertz, lands.Si
               select (order, lands),
        ];
        if (folded is not [var first, ..] || Number(design, DesignKeys.Converter.Rate) is not { } rate)
        {
            return null;
        }

        return new TourStop(
            TourSubject.Aliases, first.Lands.LandsInBand == true ? "the alias in the band" : "what folds down",
            $"Whatever lies above half the sampling rate folds down. Sampled {rate.Text.Replace("Hz", "times a second", StringComparison.Ordinal)}, the mains harmonic {first.Order}, {QuantityText.Format(Frequency.FromHertz(first.Order * mains))}, lands at {QuantityText.Format(first.Lands.Value)}{(first.Lands.LandsInBand != true ? "" : first.Lands.Si < design.Band.Low.Hertz ? ", and the mains' own deviation carries it into the band" : ", in the band, and looks like a rhythm of the brain")}. Change the rate and see where it goes.",
            DesignKeys.Converter.Rate, [.. ((double[])[2, 0.5, 4, 1.25]).OrderBy(times => !Moves(first.Order * mains, design.Converter.Rate.Hertz, times)).Select(times => rate.Times(times))], ResultIds.Mains.Harmonic(first.Order).LandsAt);
    }

    /// <summary>True where a frequency lands elsewhere once the rate is multiplied.</summary>
    private static bool Moves(double hertz, double rate, double times) =>
        1 < Math.Abs(LandsAt(hertz, rate) - LandsAt(hertz, rate * times));

    private static double LandsAt(double hertz, double rate) => FilterFormulas.LandsAt(Frequency.FromHertz(hertz), Frequency.FromHertz(rate)).Value;

    private static TourStop? AntiAlias(Assessment assessment)
    {
        if (Number(assessment.Design, DesignKeys.Converter.Rate) is not { } rate || Figure(assessment, ResultIds.Alias.FoldFrequency) is not { } fold
            || Figure(assessment, ResultIds.Alias.FoldAttenuation) is not { } attenuation)
        {
            return null;
        }

        return new TourStop(
            TourSubject.AntiAlias, "the filter must be deep in time",
            $"What lies at {fold}, the rate minus the band's edge, folds onto that edge: there the anti-alias filter must already attenuate deeply. Here everything before the samples takes off {attenuation}. At half the rate there is no room left for that.",
            DesignKeys.Converter.Rate, [rate.Times(0.5), rate.Times(2)], ResultIds.Alias.FoldAttenuation);
    }

    private static TourStop? Bits(Assessment assessment)
    {
        ResultId steps = ResultIds.Noise.Source(SourceId.Quantisation);
        if (Number(assessment.Design, DesignKeys.Converter.Bits) is not { } bits || Figure(assessment, steps) is not { } noise
            || Figure(assessment, ResultIds.Noise.Total) is not { } total)
        {
            return null;
        }

        return new TourStop(
            TourSubject.Bits, "bits are not resolution",
            $"Steps far below the noise add no information; steps above it hide the signal. The {bits.Text} bits of this converter add {noise} to a total of {total}: the noise decides how many are needed. Halve the number of bits.",
            DesignKeys.Converter.Bits, [bits.Times(0.5), bits.Times(0.75)], steps);
    }

    private static TourStop? SeriesResistor(Assessment assessment)
    {
        if (Number(assessment.Design, DesignKeys.Input.SeriesResistor) is not { } resistor || Figure(assessment, ResultIds.Safety.FaultCurrent) is not { } current)
        {
            return null;
        }

        return new TourStop(
            TourSubject.SeriesResistor, "a resistor protects the wearer",
            $"If a part fails, the highest voltage in the box, {QuantityText.Format(assessment.Design.Supply.Highest)}, can appear on an electrode. The series resistor, {resistor.Text}, limits the current: {current}. It makes a little noise, but it stays: the program never proposes to lower it. Double it.",
            DesignKeys.Input.SeriesResistor, [resistor.IsZero ? "100 kΩ" : resistor.Times(2)], ResultIds.Safety.FaultCurrent);
    }

    private static bool IsNumber(Assessment assessment, ResultId id) => assessment.Find(id) is { State: ResultState.Number };

    private static string? Figure(Assessment assessment, ResultId id) =>
        assessment.Find(id) is { State: ResultState.Number } result ? QuantityText.Format(result.Value) : null;

    private static string PercentOf(double fraction) => QuantityText.FormatExact(Share.FromFraction(Math.Round(fraction, 3)));

    /// <summary>A field of the design that holds a number; null where it has no such field, or none that is a number.</summary>
    private static FieldNumber? Number(Design design, string key) =>
        DesignFields.IsPresent(design, key) && DesignFields.Find(design, key) is { } field && field.Get(design) is { } value
        && FieldKinds.SiValue(value) is { } si
            ? new FieldNumber(field, FieldText.Format(field, value), si)
            : null;

    /// <param name="Text">Its value as the design states it.</param>
    private readonly record struct FieldNumber(FieldDescription Field, string Text, double Si)
    {
        public bool IsZero => Si == 0;

        /// <summary>The value times a factor, as it is typed.</summary>
        public string Times(double factor)
        {
            // 6.8 kΩ doubled is 13.6 kΩ, not 13.600000000000001 kΩ.
            double value = Field.Kind == FieldKind.Count ? Math.Max(1, Math.Round(Si * factor)) : Rounded(Si * factor);
            return FieldText.FormatSi(Field, value);
        }

        private static double Rounded(double value) => double.Parse(
            value.ToString("E5", System.Globalization.CultureInfo.InvariantCulture), System.Globalization.CultureInfo.InvariantCulture);
    }
}
