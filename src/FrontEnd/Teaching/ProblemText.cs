using FrontEnd.Citations;
using FrontEnd.Textbook;

namespace FrontEnd.Teaching;

/// <summary>What a template writes once its numbers are drawn: question, solution, answer and slips.</summary>
internal sealed class ProblemText
{
    // A slip earns half the points: the way was right but for one known step.
    private const double SlipShare = 0.5;

    // Ranges are this far apart, of a value, as marking allows for rounding at their edges.
    private const double Slack = 1e-6;

    private readonly List<Step> _steps = [];
    private readonly List<Slip> _slips = [];
    private Answer? _answer;

    internal ProblemText(string question) => Question = question;

    public string Question { get; }

    public IReadOnlyList<Step> Steps => _steps;

    public IReadOnlyList<Slip> Slips => _slips;

    public Answer Answer => _answer ?? throw new InvalidOperationException("The template gives no answer.");

    internal ProblemText Step(string says, TextbookFigure figure)
    {
        _steps.Add(new Step(says, figure.Formula, figure.Substituted, figure.Source));
        return this;
    }

    internal ProblemText Step(string says, string formula, string substituted, double result, string unit, SourceRef? source = null)
    {
        _steps.Add(new Step(says, formula, $"{substituted} = {QuantityText.Format(result, unit, 4)}", source ?? Sources.Derived));
        return this;
    }

    /// <summary>A step whose numbers have their result with them.</summary>
    internal ProblemText Worked(string says, string formula, string substituted, SourceRef source)
    {
        _steps.Add(new Step(says, formula, substituted, source));
        return this;
    }

    internal ProblemText Say(string says, SourceRef? source = null)
    {
        _steps.Add(new Step(says, "", "", source ?? Sources.Derived));
        return this;
    }

    /// <summary>An answer that may be off by a share of its value.</summary>
    internal ProblemText Answers<T>(double value, double tolerance = 0.02, int digits = 3)
        where T : struct, IQuantity => AnswersWithin<T>(value, Math.Abs(value) * tolerance, digits);

    /// <summary>An answer that may be off by an amount in its unit: decibels, degrees, bits, whole numbers.</summary>
    /// <remarks>Three digits are asked for, so that what rounding to them may move the value is always within: 102 dB for 102.45 dB.</remarks>
    internal ProblemText AnswersWithin<T>(double value, double amount, int digits = 3)
        where T : struct, IQuantity => AnswersWithin(QuantityKind.Of<T>(), value, amount, digits);

    /// <summary>The same for a kind that is known when it runs.</summary>
    internal ProblemText AnswersWithin(QuantityKind kind, double value, double amount, int digits)
    {
        double within = Math.Max(amount, ThreeDigits.HalfUnit(Require.Finite(value)));
        _answer = new QuantityAnswer(kind, value, value - within, value + within, digits);
        return this;
    }

    /// <summary>Says that the answer is a rounded value, a whole number or a part of a series, and what it was before: whoever answers that has
    /// forgotten to round.</summary>
    internal ProblemText RoundedFrom(double unrounded)
    {
        _answer = (QuantityAnswer)Answer with { Unrounded = Require.Finite(unrounded) };
        return this;
    }

    /// <summary>What a known mistake leads to. Left out where it cannot be told from the right answer or from a wrong power of ten.</summary>
    /// <remarks>Where two mistakes lead to the same value, the remark names both; where their ranges meet, each answer belongs to the
    /// nearer one, so that no remark speaks of another mistake.</remarks>
    internal ProblemText Slip(SlipKind kind, double value, double share = SlipShare)
    {
        QuantityAnswer answer = (QuantityAnswer)Answer;
        double half = answer.Value == 0 || answer.Kind.ByDifference
            ? (answer.High - answer.Low) / 2
            : Math.Abs(value) * (answer.High - answer.Low) / 2 / Math.Abs(answer.Value);
        if (!double.IsFinite(value) || value == 0 || Overlap(value, half, answer.Low, answer.High) || IsPowerOfTen(value, half, answer))
        {
            return this;
        }

        int same = _slips.FindIndex(slip => Math.Abs(slip.Value - value) <= half / 4);
        if (0 <= same)
        {
            SlipKind first = _slips[same].Kind;
            bool known = first.Remark.Contains(kind.Remark, StringComparison.Ordinal);
            _slips[same] = known ? _slips[same] : _slips[same] with { Kind = first with { Remark = $"{first.Remark}; or: {kind.Remark}" } };
            return this;
        }

        Slip added = new(kind, value, value - half, value + half, share);
        for (int i = 0; i < _slips.Count; i++)
        {
            Slip other = _slips[i];
            if (Overlap(value, half, other.Low, other.High))
            {
                double middle = (value + other.Value) / 2, gap = Slack * Math.Abs(middle);
                (added, _slips[i]) = value < other.Value
                    ? (added with { High = Math.Min(added.High, middle - gap) }, other with { Low = Math.Max(other.Low, middle + gap) })
                    : (added with { Low = Math.Max(added.Low, middle + gap) }, other with { High = Math.Min(other.High, middle - gap) });
            }
        }

        _slips.Add(added);
        return this;
    }

    /// <summary>Choices in their order, with what is wrong about each of the others.</summary>
    internal ProblemText Chooses(IReadOnlyList<string> options, int right, IReadOnlyList<SlipKind?> slips)
    {
        _answer = new ChoiceAnswer(options, right);
        for (int i = 0; i < options.Count; i++)
        {
            if (i != right && slips[i] is { } slip)
            {
                _slips.Add(new Slip(slip, i, i, i, 0));
            }
        }

        return this;
    }

    // A little wider than the ranges themselves, as marking allows for rounding at their edges.
    private static bool Overlap(double value, double half, double low, double high)
    {
        double slack = Slack * Math.Max(Math.Abs(value), Math.Abs(high));
        return value - half <= high + slack && low - slack <= value + half;
    }

    private static bool IsPowerOfTen(double value, double half, QuantityAnswer answer)
    {
        for (int power = -12; power <= 12; power++)
        {
            double factor = Math.Pow(10, power);
            if (power != 0 && Overlap(value, half, answer.Low * factor, answer.High * factor))
            {
                return true;
            }
        }

        return false;
    }
}
