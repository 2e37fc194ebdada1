namespace FrontEnd.Teaching.Problems;

/// <summary>What an answer still earns that is not simply right, as shares of its question's points, 0 to 1.</summary>
internal sealed record QuestionRubric
{
    /// <summary>A known slip; null for what its template gives it. A wrong choice earns nothing.</summary>
    public double? Slip { get; init; }

    /// <summary>A value that was not rounded as asked, or off by what rounding on the way explains.</summary>
    public double Rounding { get; init; } = 0.5;

    /// <summary>A number without a unit that is right in the SI unit, where the sheet asks for another one, or a right one with a part of its unit.</summary>
    public double UnitLeftOut { get; init; } = 0.5;

    /// <summary>A right number of another kind: rms where peak-to-peak was asked for, or the like.</summary>
    public double OtherKind { get; init; } = 0.5;

    /// <summary>Right but for the sign.</summary>
    public double WrongSign { get; init; } = 0.5;

    /// <summary>Nothing but the right answer earns points.</summary>
    public static QuestionRubric RightOnly { get; } = new() { Slip = 0, Rounding = 0, UnitLeftOut = 0, OtherKind = 0, WrongSign = 0 };

    /// <summary>The problem with what its slips earn by this; a slip that earns nothing stays one.</summary>
    public Problem On(Problem problem) => Slip is not { } share ? problem
        : problem with { Slips = [.. problem.Slips.Select(slip => slip.Share == 0 ? slip : slip with { Share = share })] };
}

/// <summary>What answers earn that are not simply right: for all questions, and for single ones by their id.</summary>
internal sealed record Rubric
{
    /// <summary>Half the points where the way was right.</summary>
    public static Rubric Usual { get; } = new();

    /// <summary>No half points: nothing but the right answer earns any.</summary>
    public static Rubric RightOnly { get; } = new() { All = QuestionRubric.RightOnly };

    public QuestionRubric All { get; init; } = new();

    /// <summary>By the question's id, q1, q2, …; what is not listed goes by <see cref="All"/>.</summary>
    public IReadOnlyDictionary<string, QuestionRubric> Questions { get; init; } =
        new Dictionary<string, QuestionRubric>(StringComparer.OrdinalIgnoreCase);

    /// <summary>True where it says nothing but what is usual.</summary>
    public bool IsUsual => All == Usual.All && Questions.Count == 0;

    public QuestionRubric Of(string question) => Questions.GetValueOrDefault(question, All);
}
