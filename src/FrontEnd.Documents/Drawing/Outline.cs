namespace FrontEnd.Documents.Drawing;

/// <summary>What an outline does next: lift the pen and go on elsewhere, draw a straight line, go back to where it was put down.</summary>
internal enum OutlineStepKind
{
    Move,
    Line,
    Close,
}

/// <param name="X">Where it goes to, with <paramref name="Y"/>, in the picture's units; nothing for a close.</param>
internal readonly record struct OutlineStep(OutlineStepKind Kind, double X, double Y);

/// <summary>Straight lines one after the other, in one or more pieces.</summary>
internal sealed class Outline
{
    private readonly List<OutlineStep> _steps = [];
    private double _x, _y;

    public IReadOnlyList<OutlineStep> Steps => _steps;

    public Outline Move(double x, double y) => To(OutlineStepKind.Move, x, y);

    public Outline Line(double x, double y) => To(OutlineStepKind.Line, x, y);

    /// <summary>The same by so much from where the pen is.</summary>
    public Outline MoveBy(double x, double y) => To(OutlineStepKind.Move, _x + x, _y + y);

    /// <summary>The same by so much from where the pen is.</summary>
    public Outline LineBy(double x, double y) => To(OutlineStepKind.Line, _x + x, _y + y);

    public Outline Close()
    {
        _steps.Add(new OutlineStep(OutlineStepKind.Close, 0, 0));
        return this;
    }

    private Outline To(OutlineStepKind kind, double x, double y)
    {
        (_x, _y) = (x, y);
        _steps.Add(new OutlineStep(kind, x, y));
        return this;
    }
}
