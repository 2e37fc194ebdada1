namespace FrontEnd.Textbook;

/// <summary>A formula as a tree: what is a fraction, a root, an index, a power. Made by <see cref="FormulaReader"/> from the notation in which
/// formulas are written here; set by whatever prints them.</summary>
internal abstract record Formula
{
    private Formula()
    {
    }

    /// <summary>True where setting it in print shows no more than its letters do: a number, a quantity, a name without an index.</summary>
    public bool IsPlain => this switch
    {
        Number or Quantity or Function { Low: "" } => true,
        Symbol symbol => symbol.Low.Length == 0 || !symbol.IsMarked,
        Sum { Terms: [var only] } => only.Value.IsPlain,
        Group group => group.Inner.IsPlain,
        Row row => row.Items.All(item => item.IsPlain),
        _ => false,
    };

    /// <summary>A plain number.</summary>
    /// <param name="Digits">As written.</param>
    public sealed record Number(string Digits) : Formula;

    /// <summary>A number with its unit, which no line may part.</summary>
    public sealed record Quantity(string Digits, string Unit) : Formula;

    /// <summary>A letter, or a word that stands for a value (CMRR, tol).</summary>
    /// <param name="Low">Its index; "" for none.</param>
    /// <param name="IsMarked">The index was written as one (f_c, f₁); false for R1 and Rf, which might be words elsewhere.</param>
    public sealed record Symbol(string Name, string Low = "", bool IsMarked = false) : Formula;

    /// <summary>A function by its name: ln, log10, min.</summary>
    /// <param name="Low">The base of a logarithm; "" for none.</param>
    public sealed record Function(string Name, string Low = "") : Formula;

    /// <summary>A small piece of the variable that is integrated over: df.</summary>
    public sealed record Differential(string Variable) : Formula;

    /// <summary>Factors, two or more.</summary>
    /// <param name="IsTight">Written without signs between (2πRC).</param>
    public sealed record Product(IReadOnlyList<Formula> Factors, bool IsTight) : Formula;

    /// <summary>A fraction.</summary>
    public sealed record Quotient(Formula Over, Formula Under) : Formula;

    /// <summary>Terms with the sign before each; the first one's is "" or a minus.</summary>
    public sealed record Sum(IReadOnlyList<Term> Terms) : Formula;

    /// <summary>Something to a power.</summary>
    public sealed record Power(Formula Base, Formula Exponent) : Formula;

    /// <summary>A square root.</summary>
    public sealed record Root(Formula Inner) : Formula;

    /// <summary>Something in brackets, or between the bars of a size.</summary>
    /// <param name="Open">( or [ or |.</param>
    public sealed record Group(char Open, Formula Inner) : Formula
    {
        public char Close => Open switch { '(' => ')', '[' => ']', _ => Open };
    }

    /// <summary>A function of something.</summary>
    public sealed record Call(Function Of, Formula Argument) : Formula;

    /// <summary>Over all of several (Σ, Π), or an integral (∫).</summary>
    public sealed record Overall(char Sign, Formula Body) : Formula;

    /// <summary>A complex number by its size and angle.</summary>
    public sealed record Polar(Formula Size, Formula Angle) : Formula;

    /// <summary>What is equal to, or compared with, what.</summary>
    public sealed record Relation(Formula Left, string Sign, Formula Right) : Formula;

    /// <summary>Formulas one after the other.</summary>
    /// <param name="Separators">What stands between each and the next: a comma, a colon, a blank, dots.</param>
    public sealed record Row(IReadOnlyList<Formula> Items, IReadOnlyList<string> Separators) : Formula;

    /// <summary>One term of a sum.</summary>
    public sealed record Term(string Sign, Formula Value);
}
