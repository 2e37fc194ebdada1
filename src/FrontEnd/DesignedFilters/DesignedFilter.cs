using FrontEnd.Filters;

namespace FrontEnd.DesignedFilters;

/// <summary>A designed filter with everything that is said of it: what a page, a program and a test read, worked out once.</summary>
public abstract record DesignedFilter
{
    /// <summary>Warnings about the wish and about what it is built of.</summary>
    public IReadOnlyList<Finding> Findings { get; init; } = [];
}

/// <summary>A filter of second-order sections by family and shape, analogue or digital.</summary>
public sealed record DesignedSections : DesignedFilter
{
    /// <summary>The wish, the filter and, where the order was sought, how it was found.</summary>
    public required FilterAnswer Answer { get; init; }

    /// <summary>Sections, −3 dB points, losses at the edges, group delay.</summary>
    public required FilterFigures Figures { get; init; }

    /// <summary>Parts of an analogue low-pass up to order <see cref="BuiltLowPass.MostOrder"/>; null for a digital filter, and where <see
    /// cref="PartFindings"/> say why.</summary>
    public BuiltLowPass? LowPass { get; init; }

    /// <summary>Parts of an analogue notch; null for any other filter or where <see cref="PartFindings"/> say why.</summary>
    public BuiltNotch? Notch { get; init; }

    /// <summary>What the search for parts has to say: warnings, or why there are none; empty for a digital filter. Among <see
    /// cref="DesignedFilter.Findings"/> too.</summary>
    public IReadOnlyList<Finding> PartFindings { get; init; } = [];

    /// <summary>What finite words do to a digital filter; null for an analogue one.</summary>
    public WordStudy? Words { get; init; }

    /// <summary>Everything about a filter. Seeking parts takes some tenths of a second, and so do limit cycles.</summary>
    /// <param name="answer">One that has a filter: <see cref="FilterAnswer.IsUsable"/>.</param>
    /// <param name="parts">What an analogue one is to be built of.</param>
    /// <exception cref="ArgumentException">There is no filter.</exception>
    public static DesignedSections Of(FilterAnswer answer, FilterParts parts)
    {
        var designed = new DesignedSections { Answer = answer, Figures = FilterFigures.Of(answer), Findings = answer.Findings };
        if (answer.Digital is { } digital)
        {
            return designed with { Words = WordStudy.Of(digital.Sections) };
        }

        if (parts.Unknown() is { Count: > 0 } unknown)
        {
            return designed.With(unknown);
        }

        if (answer.AnalogNotch is { } wanted)
        {
            (BuiltNotch? notch, IReadOnlyList<Finding> notchFindings) = BuiltNotch.Of(wanted.Centre, wanted.Q, parts);
            return designed.With(notchFindings) with { Notch = notch };
        }

        if (answer.Wish.Shape != FilterShape.LowPass || BuiltLowPass.MostOrder < answer.Prototype!.Order)
        {
            string what = answer.Wish.Shape != FilterShape.LowPass ? $"a {FilterWords.Of(answer.Wish.Shape)}" : $"a low-pass of order {answer.Prototype!.Order}";
            return designed.With([FilterMessages.NoPartsSought(answer.Wish.Field, what, BuiltLowPass.MostOrder)]);
        }

        (BuiltLowPass? lowPass, IReadOnlyList<Finding> findings) = BuiltLowPass.Of(answer, parts);
        return designed.With(findings) with { LowPass = lowPass };
    }

    private DesignedSections With(IReadOnlyList<Finding> partFindings) =>
        this with { Findings = [.. Findings, .. partFindings], PartFindings = partFindings };
}
