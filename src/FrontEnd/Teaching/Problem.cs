using FrontEnd.Citations;

namespace FrontEnd.Teaching;

/// <summary>One problem with its numbers drawn: what is asked, how it is worked out, what counts as right and which slips lead
/// elsewhere.</summary>
internal sealed record Problem
{
    /// <summary>The template that it is made from.</summary>
    public required string TemplateId { get; init; }

    /// <summary>What it is about.</summary>
    public required Topic Topic { get; init; }

    /// <summary>1: put numbers into one formula; 2: choose the right formula or convert first; 3: several steps or a judgement.</summary>
    public required int Level { get; init; }

    /// <summary>Points for the right answer.</summary>
    public required int Points { get; init; }

    /// <summary>Its heading.</summary>
    public required string Title { get; init; }

    /// <summary>The question, without the given values, which are listed beside it.</summary>
    public required string Text { get; init; }

    /// <summary>What is given, each with symbol and value.</summary>
    public required IReadOnlyList<Given> Givens { get; init; }

    /// <summary>The worked answer, step by step.</summary>
    public required IReadOnlyList<Step> Steps { get; init; }

    /// <summary>The right answer.</summary>
    public required Answer Answer { get; init; }

    /// <summary>Known mistakes and where they lead.</summary>
    public required IReadOnlyList<Slip> Slips { get; init; }
}

/// <summary>A value that a problem gives.</summary>
internal sealed record Given(string Symbol, string Name, IQuantity Value)
{
    /// <summary>The value as it stands on the sheet. No more digits are used than are printed.</summary>
    /// <remarks>A ratio such as f/f_c is a plain number, a tolerance a percentage.</remarks>
    public string Text => Value switch
    {
        Ratio ratio when 1 <= ratio.Fraction || Symbol.Contains('/', StringComparison.Ordinal) =>
            QuantityText.FormatTrimmed(ratio.Fraction, "1", 6),
        _ => QuantityText.FormatPart(Value),
    };
}

/// <summary>One step of the worked solution.</summary>
/// <param name="Says">What is done and why, one sentence.</param>
/// <param name="Formula">The formula in symbols; "" where the step needs none.</param>
/// <param name="Substituted">The formula with the numbers put in and its result.</param>
internal sealed record Step(string Says, string Formula, string Substituted, SourceRef Source);

/// <summary>What counts as right: a quantity within a range, or one of several choices.</summary>
internal abstract record Answer
{
    /// <summary>The right answer as the key prints it.</summary>
    public abstract string Text { get; }
}

/// <summary>A quantity.</summary>
/// <param name="Low">Least value taken as right, in the SI unit.</param>
/// <param name="High">Greatest value taken as right.</param>
/// <param name="Digits">Significant digits that are sensible.</param>
internal sealed record QuantityAnswer(QuantityKind Kind, double Value, double Low, double High, int Digits) : Answer
{
    public override string Text => Write(Value);

    /// <summary>The value before it was rounded to a whole number or a part of a series; null where nothing is to be rounded.</summary>
    public double? Unrounded { get; init; }

    /// <summary>A value of the answer's kind as text.</summary>
    public string Write(double value) => Kind.Is<Ratio>()
        ? QuantityText.FormatTrimmed(value, "1", Digits)
        : QuantityText.FormatTrimmed(Kind.FromSi(value), Digits);
}

/// <summary>One of several choices, named by letters from A.</summary>
/// <param name="Right">Index of the right one.</param>
internal sealed record ChoiceAnswer(IReadOnlyList<string> Options, int Right) : Answer
{
    public override string Text => $"{Letter(Right)}: {Options[Right]}";

    public static string Letter(int index) => ((char)('A' + index)).ToString();
}

/// <summary>A wrong answer that one known mistake leads to.</summary>
/// <param name="Value">The wrong value in the SI unit; for a choice, the index of the option.</param>
/// <param name="Low">Least value that is taken for this slip.</param>
/// <param name="High">Greatest value that is taken for this slip.</param>
/// <param name="Share">Share of the points it still earns.</param>
internal sealed record Slip(SlipKind Kind, double Value, double Low, double High, double Share);

/// <summary>A mistake that is made in many problems.</summary>
/// <param name="Code">Stable word for the class's summary.</param>
/// <param name="Remark">What went wrong, for the student.</param>
internal sealed record SlipKind(string Code, string Remark);
