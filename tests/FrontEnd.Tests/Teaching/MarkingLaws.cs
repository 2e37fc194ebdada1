using System.Globalization;
using FrontEnd.Quantities;
using FrontEnd.Teaching;
using FrontEnd.Teaching.Problems;
using FrontEnd.Text;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using Xunit;

namespace FrontEnd.Tests.Teaching;

/// <summary>Laws of marking, over drawn questions and spellings put together at random.</summary>
public class MarkingLaws
{
    private static readonly Lazy<KeyQuestion[]> Drawn = new(() =>
        [.. Homework.Make([], null, TemplateSet.All.Count, 11, [.. Enumerable.Range(1, 6).Select(i => new Student($"s{i}", ""))]).Sheets
            .SelectMany(sheet => Key.Of(sheet).Questions)]);

    /// <summary>A question for a quantity, with a way to write values.</summary>
    public sealed record Asked
    {
        internal Asked(KeyQuestion question, Spelling spelling) => (Question, Spelling) = (question, spelling);

        public Spelling Spelling { get; }

        internal KeyQuestion Question { get; }

        public override string ToString() => $"{Question}, {Spelling}";
    }

    /// <summary>Pieces that a spelling is put together from.</summary>
    public sealed record Spelling(int Prefix, int Power, int Before, int Between, int After, bool Comma, bool InFull)
    {
        private static readonly string[] Befores = ["", "", "V = ", "x ≈ ", "answer: ", "about ", "(", "= ", "  ", "'"];
        private static readonly string[] Betweens = [" ", "", "\u00A0", "\u2009", "\u202F", "  "];
        private static readonly string[] Afters = ["", "", ".", " .", "?", " (worked out)", " in total", ";", " !", "\u200B"];
        private static readonly (double Factor, string Sign, string Word)[] Prefixes =
        [
            (1, "", ""), (1e-9, "n", "nano"), (1e-6, "µ", "micro"), (1e-6, "u", "micro"), (1e-6, "μ", "micro"), (1e-3, "m", "milli"), (1e3, "k", "kilo"),
            (1e-12, "p", "pico"), (1e6, "M", "mega"),
        ];

        /// <summary>Null where the kind takes no such unit.</summary>
        public string? Write(QuantityKind kind, double si)
        {
            (double factor, string sign, string word) = Prefixes[Prefix % Prefixes.Length];
            bool isBare = kind.Is<Ratio>();
            string unit = isBare ? "" : kind.SiUnit;
            if (isBare || kind.ByDifference)
            {
                (factor, sign, word) = (1, "", "");
            }

            unit = (InFull, unit) switch
            {
                (true, "V") => word + "volts",
                (true, "A") => word + "amperes",
                (true, "Ω") => word + "ohms",
                (true, "F") => word + "farads",
                (true, "Hz") => word + "hertz",
                (true, "s") => word + "seconds",
                (true, "dB") => "decibels",
                (true, "bit/s") => word + "bits per second",
                (true, "V/√Hz") => word + "volts per root hertz",
                _ => sign + unit,
            };
            return QuantityText.TryParse(kind, isBare ? "1" : "1 " + unit.Replace(" per second", "/s").Replace(" per root hertz", "/√Hz"), out _, out _)
                ? Around(Number(si / factor) + (unit.Length == 0 ? "" : Betweens[Between % Betweens.Length] + unit))
                : null;
        }

        private string Around(string text)
        {
            string before = Befores[Before % Befores.Length];
            return before + text + (before == "(" ? ")" : "") + Afters[After % Afters.Length];
        }

        /// <summary>All digits of a number, in one of the ways that powers of ten are written.</summary>
        private string Number(double value)
        {
            int exponent = value == 0 ? 0 : (int)Math.Floor(Math.Log10(Math.Abs(value)));
            string digits = value.ToString("E14", CultureInfo.InvariantCulture), mantissa = digits[..digits.IndexOf('E')];
            string power = (Power % 8) switch
            {
                0 => "e" + exponent,
                1 => "E" + exponent.ToString("+00;-00", CultureInfo.InvariantCulture),
                2 => "×10^" + exponent,
                3 => " x 10^" + exponent,
                4 => "·10" + Raised(exponent),
                5 => "*10**" + exponent,
                6 => " × 10^(" + exponent + ")",
                _ => "e" + exponent.ToString(CultureInfo.InvariantCulture).Replace('-', '−'),
            };
            return (Comma ? mantissa.Replace('.', ',') : mantissa) + power;
        }

        private static string Raised(int exponent) => string.Concat(exponent.ToString(CultureInfo.InvariantCulture).Select(letter => letter == '-' ? '⁻' : "⁰¹²³⁴⁵⁶⁷⁸⁹"[letter - '0']));
    }

    public sealed class Questions
    {
        public static Arbitrary<Asked> Quantities() =>
            (from at in Gen.Choose(0, int.MaxValue - 1)
             from pieces in Gen.Choose(0, 1000).ArrayOf(5)
             from flags in Gen.Choose(0, 3)
             let fitting = Drawn.Value.Where(one => one.Kind is not null).ToArray()
             select new Asked(fitting[at % fitting.Length], new Spelling(pieces[0], pieces[1], pieces[2], pieces[3], pieces[4], flags % 2 == 1, flags / 2 == 1)))
            .ToArbitrary();
    }

    [Property(Arbitrary = [typeof(Questions)], MaxTest = 4000)]
    public void Marks_OfTheSameValue_AreTheSameHoweverItIsWritten(Asked asked, int which)
    {
        KeyQuestion question = asked.Question;
        double[] values = [question.Value, question.Low, question.High, question.Value * 1.31, question.Value * 0.97, -question.Value, .. question.Slips.Select(slip => slip.Value)];
        double value = values[(int)((uint)which % values.Length)];
        if (asked.Spelling.Write(question.Kind!, value) is not { } text)
        {
            return;
        }

        string plain = FormattableString.Invariant($"{value:R} {(question.Kind!.Is<Ratio>() ? "" : question.Kind.SiUnit)}");
        (double points, string slip, _) = Marker.Judge(question, plain);
        (double written, string writtenSlip, string remark) = Marker.Judge(question, text);
        Assert.True((points, slip) == (written, writtenSlip), $"`{text}` earns {written} ({remark}), `{plain}` {points}, for {question.Answer}");
    }

    [Property(Arbitrary = [typeof(Questions)], MaxTest = 4000)]
    public void WrongPowerOfTen_HoweverItIsWritten_EarnsNothing(Asked asked, int which, int edge)
    {
        int[] powers = [-12, -9, -6, -3, -2, -1, 1, 2, 3, 6, 9, 12];
        double[] edges = [asked.Question.Value, asked.Question.Low, asked.Question.High];
        double value = edges[(int)((uint)edge % 3)] * Math.Pow(10, powers[(int)((uint)which % powers.Length)]);
        if (asked.Spelling.Write(asked.Question.Kind!, value) is { } text)
        {
            Assert.True(Marker.Judge(asked.Question, text).Points == 0, $"`{text}` for {asked.Question.Answer}: {Marker.Judge(asked.Question, text)}");
        }
    }

    /// <summary>A question whose sheet asks for its answer in any kind of quantity and any of its units: more than the program's templates have.</summary>
    public sealed record AskedInAnyUnit
    {
        internal AskedInAnyUnit(KeyQuestion question) => Question = question;

        internal KeyQuestion Question { get; }

        public override string ToString() => Question.ToString();
    }

    public sealed class AnyUnits
    {
        public static Arbitrary<AskedInAnyUnit> Questions() =>
            (from kind in Gen.Elements(QuantityKind.All.ToArray())
             from digits in Gen.Choose(1000, 9999)
             from power in Gen.Choose(-14, 6)
             let value = digits * (kind.ByDifference || kind.Is<Temperature>() ? 0.03 : Math.Pow(10, power))
             let answer = new QuantityAnswer(kind, value, value * 0.98, value * 1.02, 3)
             select new AskedInAnyUnit(new KeyQuestion("q1", "any", 4, answer.Text, [new KeySlip("half", "the half was taken", value / 2, value * 0.49, value * 0.51, 2)])
             {
                 Kind = kind, Value = value, Low = answer.Low, High = answer.High,
             })).ToArbitrary();
    }

    /// <summary>One rule for every template and unit: a number alone is read in the unit that the sheet asks for, and one that is right in the SI unit instead
    /// earns the share of a unit left out, with one remark.</summary>
    [Property(Arbitrary = [typeof(Questions), typeof(AnyUnits)], MaxTest = 2000)]
    public void NumberWithoutUnit_OfAnyQuestion_IsReadInTheUnitAskedFor(Asked asked, AskedInAnyUnit any)
    {
        foreach (KeyQuestion question in new[] { asked.Question, any.Question })
        {
            AskedUnit unit = AskedUnit.Of(question.Kind!, question);
            double value = double.Parse(question.Value.ToString("E9", CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
            Assert.True(Marker.Judge(question, unit.Number(value)) == (question.Points, "", ""), $"`{unit.Number(value)}` for {question}: {Marker.Judge(question, unit.Number(value))}");

            string inSi = FormattableString.Invariant($"{value:R}");
            (double points, string slip, string remark) = Marker.Judge(question, inSi);
            Assert.True(unit.IsSi ? points == question.Points : (points, slip) == (question.Points / 2.0, Marker.UnitLeftOut), $"`{inSi}` for {question}: {points}, {remark}");
            string si = question.Kind!.SiUnit is "1" ? "as a plain number" : $"in {question.Kind.SiUnit}";
            Assert.Equal(unit.IsSi ? "" : $"the number is right {si}, but a number without its unit is read in {unit.Name}, as the sheet asks", remark);
        }
    }

    /// <summary>Any other power of ten than the two is wrong for a number alone too.</summary>
    [Property(Arbitrary = [typeof(AnyUnits)], MaxTest = 3000)]
    public void NumberWithoutUnit_OfAnotherPowerOfTen_EarnsNothing(AskedInAnyUnit any, int power)
    {
        // A share of a temperature is counted from absolute zero, so that a tenth of 3 °C is within 2 %.
        KeyQuestion question = any.Question;
        if (question.Kind!.Is<Temperature>())
        {
            return;
        }

        AskedUnit unit = AskedUnit.Of(question.Kind!, question);
        int tens = 1 + (int)((uint)power % 12);
        foreach (double factor in new[] { Math.Pow(10, tens), Math.Pow(10, -tens) })
        {
            double number = double.Parse(unit.Number(question.Value), CultureInfo.InvariantCulture) * factor;
            bool isSi = Math.Abs((number / question.Value) - 1) < 0.05;
            string text = FormattableString.Invariant($"{number:R}");
            Assert.True(isSi || Marker.Judge(question, text).Points == 0, $"`{text}` for {question}: {Marker.Judge(question, text)}");
        }
    }

    /// <summary>The same number in farads and in ohms.</summary>
    [Fact]
    public void NumberWithoutUnit_InFaradsAndInOhms_EarnsTheSame()
    {
        KeyQuestion farads = new("q1", "t", 4, "40.1 nF", []) { Kind = QuantityKind.Of<Capacitance>(), Value = 4.015e-8, Low = 3.93e-8, High = 4.1e-8 };
        KeyQuestion ohms = new("q1", "t", 4, "91 kΩ", [new KeySlip("half", "the half was taken", 45.5e3, 45e3, 46e3, 2)])
        {
            Kind = QuantityKind.Of<Resistance>(), Value = 91e3, Low = 90.9e3, High = 91.1e3,
        };
        Assert.Equal((2.0, Marker.UnitLeftOut), Pair(Marker.Judge(farads, "4.015e-8")));
        Assert.Equal((2.0, Marker.UnitLeftOut), Pair(Marker.Judge(ohms, "91000")));
        Assert.Equal((4.0, ""), Pair(Marker.Judge(farads, "40.15")));
        Assert.Equal((4.0, ""), Pair(Marker.Judge(ohms, "R = 91")));
        Assert.Equal((4.0, ""), Pair(Marker.Judge(ohms, "91 kΩ = 91000")));
        Assert.Equal((2.0, "half"), Pair(Marker.Judge(ohms, "45.5")));
        Assert.Equal((1.0, "half"), Pair(Marker.Judge(ohms, "45500")));
        Assert.Equal((0.0, Marker.PowerOfTen), Pair(Marker.Judge(ohms, "9100")));
        Assert.Equal((0.0, Marker.UnitLeftOut), Pair(Marker.Judge(ohms, "91000", Rubric.RightOnly)));
    }

    /// <summary>Three digits are asked for: whatever is rounded to them, or to more, is right.</summary>
    [Property(Arbitrary = [typeof(Questions)], MaxTest = 4000)]
    public void TheKeysValue_RoundedToTheDigitsAskedFor_IsFull(Asked asked, int more)
    {
        KeyQuestion question = asked.Question;
        string format = "E" + (2 + ((uint)more % 6));
        double value = double.Parse(question.Value.ToString(format, CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
        if (asked.Spelling.Write(question.Kind!, value) is { } text)
        {
            Assert.True(Marker.Judge(question, text).Points == question.Points, $"`{text}` for {question.Answer} ({question.Low} to {question.High}): {Marker.Judge(question, text)}");
        }
    }

    /// <summary>102 dB for 102.45 dB, whose window was 0.3 dB to each side.</summary>
    [Fact]
    public void EveryValue_RoundedToThreeDigits_IsInItsWindow()
    {
        foreach (Template template in TemplateSet.All.Where(one => !one.Id.Contains("judge", StringComparison.Ordinal)))
        {
            for (ulong seed = 1; seed <= 150; seed++)
            {
                if (template.For(seed, "").Answer is QuantityAnswer answer)
                {
                    double rounded = double.Parse(answer.Value.ToString("E2", CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
                    Assert.True(answer.Low - (1e-9 * Math.Abs(rounded)) <= rounded && rounded <= answer.High + (1e-9 * Math.Abs(rounded)),
                        $"{template.Id}: {rounded} for {answer.Value}, {answer.Low} to {answer.High}");
                }
            }
        }
    }

    /// <summary>A whole number or a part of a series is asked for, and the value from before that rounding was answered.</summary>
    [Theory]
    [InlineData("noise-sweeps", Marker.NotRounded)]
    [InlineData("safety-resistor", "not-preferred")]
    [InlineData("filter-choose-capacitor", "not-preferred")]
    public void UnroundedValue_WhereRoundingIsAskedFor_IsToldAndEarnsHalf(string template, string slip)
    {
        int told = 0;
        for (ulong seed = 1; seed <= 60; seed++)
        {
            KeyQuestion question = Of(template, seed);
            double unrounded = question.Unrounded!.Value;
            string text = FormattableString.Invariant($"{unrounded:G5} {(question.Kind!.Is<Ratio>() ? "" : question.Kind.SiUnit)}");
            (double points, string code, _) = Marker.Judge(question, text);
            bool isFar = ThreeDigits.HalfUnit(question.Value) * 1.1 < Math.Abs(unrounded - question.Value);
            Assert.True(!isFar || (points == question.Points / 2.0 && (code == slip || code == Marker.NotRounded)), $"`{text}` for {question.Answer}: {points}, {code}");
            told += code == slip ? 1 : 0;
            Assert.Equal(question.Points, Marker.Judge(question, question.Answer).Points);
        }

        Assert.InRange(told, 10, 60);
    }

    /// <summary>Two digits were kept on the way: 4.8·10⁻⁸ for 5.0·10⁻⁸ of several steps, not where there is one step alone.</summary>
    [Fact]
    public void ValueSomewhatOff_WhereThereAreValuesOnTheWay_IsRoundedEarly()
    {
        KeyQuestion question = new("q1", "t", 4, "50 nV rms", [])
        {
            Kind = QuantityKind.Of<VoltageRms>(), Value = 50e-9, Low = 49e-9, High = 51e-9, HasIntermediates = true,
        };
        Assert.Equal((2.0, Marker.RoundedEarly), Pair(Marker.Judge(question, "48 nV")));
        Assert.Equal((0.0, ""), Pair(Marker.Judge(question, "47 nV")));
        Assert.Equal((0.0, ""), Pair(Marker.Judge(question with { HasIntermediates = false }, "48 nV")));
        Assert.Equal((4.0, ""), Pair(Marker.Judge(question, "49 nV")));
    }

    [Fact]
    public void Rubric_OfOneQuestion_LeavesTheOthers()
    {
        KeyQuestion question = new("q1", "t", 4, "50 nV rms", [new KeySlip("half", "half", 25e-9, 24e-9, 26e-9, 2)])
        {
            Kind = QuantityKind.Of<VoltageRms>(), Value = 50e-9, Low = 49e-9, High = 51e-9,
        };
        Rubric rubric = new() { Questions = new Dictionary<string, QuestionRubric> { ["q1"] = new() { Slip = 0.25, UnitLeftOut = 0 } } };
        Assert.Equal((1.0, "half"), Pair(Marker.Judge(question, "25 nV", rubric)));
        Assert.Equal((0.0, Marker.UnitLeftOut), Pair(Marker.Judge(question, "5e-8", rubric)));
        Assert.Equal((2.0, Marker.WrongSign), Pair(Marker.Judge(question, "-50 nV", rubric)));
        Assert.Equal((2.0, "half"), Pair(Marker.Judge(question with { Id = "q2" }, "25 nV", rubric)));
        Assert.Equal((2.0, Marker.UnitLeftOut), Pair(Marker.Judge(question with { Id = "q2" }, "5e-8", rubric)));
    }

    private static (double Points, string Slip) Pair((double Points, string Slip, string Remark) mark) => (mark.Points, mark.Slip);

    private static KeyQuestion Of(string template, ulong seed) =>
        Key.Of(new ProblemSheet(null, [new Question("q1", TemplateSet.Find(template)!.For(seed, ""))], "")).Questions[0];

    [Fact]
    public void TheKeysAnswer_OfEveryQuestion_IsFull() => Assert.All(Drawn.Value, question =>
    {
        Assert.Equal((question.Points, "", ""), Marker.Judge(question, question.Answer));
        Assert.Equal((question.Points, "", ""), Marker.Judge(question, question.Answer, Rubric.RightOnly));
    });

    [Property(MaxTest = 3000)]
    public void AnyText_IsMarkedAndNeverThrows(string? text, int at)
    {
        KeyQuestion question = Drawn.Value[(int)((uint)at % Drawn.Value.Length)];
        Assert.InRange(Marker.Judge(question, text ?? "").Points, 0, question.Points);
    }

    [Property(Arbitrary = [typeof(Questions)], MaxTest = 1000)]
    public void NoHalfPoints_LeaveNothingBetweenNoneAndAll(Asked asked, int which)
    {
        KeyQuestion question = asked.Question;
        double[] values = [question.Value, question.Value * 1.03, -question.Value, .. question.Slips.Select(slip => slip.Value)];
        string text = asked.Spelling.Write(question.Kind!, values[(int)((uint)which % values.Length)]) ?? FormattableString.Invariant($"{question.Value}");
        double points = Marker.Judge(question, text, Rubric.RightOnly).Points;
        Assert.True(points == 0 || points == question.Points);
    }
}
