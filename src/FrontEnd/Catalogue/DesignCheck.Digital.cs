using FrontEnd.Digital;
using FrontEnd.Filters;
using static FrontEnd.Quantities.Frequency;

namespace FrontEnd.Catalogue;

/// <content>Checks of the digital filters.</content>
public static partial class DesignCheck
{
    private sealed partial class Checker
    {
        public void Filters()
        {
            Frequency half = FromHertz(design.Converter.Rate.Hertz / 2);
            Names("digital", [.. design.Digital.Select(filter => filter.Name)]);
            for (int i = 0; i < design.Digital.Count; i++)
            {
                string key = $"digital[{i + 1}]";
                int before = Findings.Count;
                switch (design.Digital[i])
                {
                    case DigitalHighPass filter:
                        Corner(key + ".corner", "corner", filter.Corner, half);
                        break;
                    case DigitalLowPass filter:
                        Corner(key + ".corner", "corner", filter.Corner, half);
                        break;
                    case DigitalBandPass filter:
                        Corner(key + ".high", "upper edge", filter.High, half);
                        break;
                    case DigitalBandStop filter:
                        Corner(key + ".high", "upper edge", filter.High, half);
                        break;
                    case DigitalNotch filter:
                        Corner(key + ".centre", "centre", filter.Centre, half);
                        if (filter.Centre.Hertz < half.Hertz && 0 < filter.Q && half.Hertz <= filter.Centre.Hertz / filter.Q)
                        {
                            Error(Messages.CornerAboveHalfRate, key + ".q",
                                $"a notch at {Text(filter.Centre)} with Q {filter.Q:0.###} is {Text(FromHertz(filter.Centre.Hertz / filter.Q))} wide, not below half the sampling rate, {Text(half)}",
                                "the width is centre over Q", "raise Q", "converter.rate", key + ".centre");
                        }

                        break;
                    case DigitalSections filter:
                        Rows(key + ".rows", filter);
                        break;
                    default:
                        throw new ArgumentOutOfRangeException(nameof(design), design.Digital[i], "Filter is not handled.");
                }

                // The filter itself can be looked at where every number that it rests on is in its range.
                if (Findings.Count == before && !Findings.Exists(Concerns(key + "."))
                    && !unread.Any(one => one.StartsWith(key + ".", StringComparison.Ordinal) || one is "converter.rate" or "digital-word"))
                {
                    Filter(key, design.Digital[i]);
                }
            }
        }

        private static Predicate<Finding> Concerns(string key) =>
            finding => finding.Severity == Severity.Error
                && (finding.Field.StartsWith(key, StringComparison.Ordinal)
                || finding.Field is "converter.rate" or "digital-state-fraction");

        private void Filter(string key, DigitalStage stage)
        {
            if (stage is DigitalDesigned designed)
            {
                FilterAnswer answer = designed.Wish(design.Converter.Rate, key).Design();
                Findings.AddRange(answer.Findings);
                if (answer.Digital is null)
                {
                    return;
                }
            }

            if (design.Arithmetic.Word != DigitalWord.Double)
            {
                Words(key, stage);
            }
        }

        /// <summary>What rounding the coefficients to the word does to the filter as such.</summary>
        private void Words(string key, DigitalStage stage)
        {
            QuantisedFilter filter = QuantisedFilter.Of(DigitalChain.Realise(stage, design.Converter.Rate), design.Arithmetic.Format);
            string word = DigitalArithmetic.WordOf(design.Arithmetic.Word);
            if (filter.Standing != PoleStanding.InsideCircle)
            {
                Findings.Add(WordMessages.Unstable(key, stage.Name, word, filter.Standing));
            }
            else if (filter.Details.Any(section => section.DcZeroLost))
            {
                Findings.Add(WordMessages.DcZeroLost(key, stage.Name, word));
            }
        }

        private void Corner(string key, string word, Frequency frequency, Frequency half)
        {
            if (half.Hertz <= frequency.Hertz)
            {
                Error(Messages.CornerAboveHalfRate, key,
                    $"the filter's {word} {Text(frequency)} is not below half the sampling rate, {Text(half)}",
                    $"converter.rate is {Text(design.Converter.Rate)}",
                    $"lower the {word}, or raise converter.rate", "converter.rate");
            }
        }

        private void Rows(string key, DigitalSections filter)
        {
            for (int i = 0; i < filter.Rows.Count; i++)
            {
                IReadOnlyList<double> row = filter.Rows[i];
                if (row.Count != 6 || row[3] == 0 || row.Any(number => !double.IsFinite(number)))
                {
                    string what = row.Count == 6 ? "has a0 = 0" : $"has {row.Count} numbers";
                    Error(Messages.BadRow, key, $"row {i + 1} of `{filter.Name}` {what}",
                        "a row is b0, b1, b2, a0, a1, a2; all are divided by a0", "write six numbers, with a0 not 0");
                    continue;
                }

                // Both poles of 1 + a1/z + a2/z² lie inside the unit circle where |a2| < 1 and |a1| < 1 + a2. Derived (Jury's criterion).
                double a1 = row[4] / row[3];
                double a2 = row[5] / row[3];
                if (1 <= Math.Abs(a2) || 1 + a2 <= Math.Abs(a1))
                {
                    Error(Messages.UnstableSection, key,
                        $"row {i + 1} of `{filter.Name}` is unstable: a1/a0 = {a1:0.######}, a2/a0 = {a2:0.######}",
                        "stable sections have |a2/a0| below 1 and |a1/a0| below 1 + a2/a0",
                        "check the order b0, b1, b2, a0, a1, a2 and the signs of a1 and a2");
                }
            }
        }
    }
}
