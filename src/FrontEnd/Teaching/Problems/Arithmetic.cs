using System.Globalization;

namespace FrontEnd.Teaching.Problems;

/// <summary>An expression of somebody's own: numbers, names of values, + − × / ^, roots, logarithms, angles, and the textbook formulas by name. Worked
/// out in SI units, with its dimension checked beforehand.</summary>
/// <param name="At">Where it begins in its text.</param>
internal abstract record Arithmetic(int At)
{
    private const double Degree = Math.PI / 180;

    /// <summary>Constants that an expression may name.</summary>
    private static readonly IReadOnlyDictionary<string, (double Value, Dimension Dimension)> Constants = new Dictionary<string, (double, Dimension)>(StringComparer.Ordinal)
    {
        ["pi"] = (Math.PI, Dimension.None), ["π"] = (Math.PI, Dimension.None), ["k_B"] = (PhysicalConstants.Boltzmann, Dimension.Of("J").Times(Dimension.Of("K"), -1)),
        ["q_e"] = (PhysicalConstants.ElementaryCharge, Dimension.Of("C")),
    };

    /// <summary>Functions of plain numbers, each of one.</summary>
    private static readonly IReadOnlyDictionary<string, Func<double, double>> PlainFunctions = new Dictionary<string, Func<double, double>>(StringComparer.Ordinal)
    {
        ["ln"] = Math.Log, ["log10"] = Math.Log10, ["log2"] = Math.Log2, ["exp"] = Math.Exp, ["sin"] = Math.Sin, ["cos"] = Math.Cos, ["tan"] = Math.Tan,
        ["atan"] = Math.Atan, ["degrees"] = angle => angle / Degree, ["radians"] = degrees => degrees * Degree,
    };

    /// <summary>Functions that keep the dimension of what they are given.</summary>
    private static readonly IReadOnlyDictionary<string, Func<double, double>> KeepingFunctions = new Dictionary<string, Func<double, double>>(StringComparer.Ordinal)
    {
        ["abs"] = Math.Abs, ["round"] = value => Math.Round(value, MidpointRounding.AwayFromZero), ["floor"] = Math.Floor, ["ceil"] = Math.Ceiling,
    };

    /// <summary>True for a name that no value may have: a constant's or a function's.</summary>
    public static bool IsTaken(string name) => Constants.ContainsKey(name) || FunctionNames.Contains(name, StringComparer.Ordinal);

    /// <summary>All function names, those of the textbook behind.</summary>
    private static IEnumerable<string> FunctionNames => ["sqrt", .. PlainFunctions.Keys, .. KeepingFunctions.Keys, "min", "max", .. NamedFormula.All.Select(formula => formula.Name)];

    /// <summary>Reads an expression; null with what is wrong where it is none.</summary>
    public static Arithmetic? Read(string text, out ArithmeticProblem? problem)
    {
        ArithmeticReader reader = new(text);
        Arithmetic? read = reader.Whole();
        problem = reader.Problem;
        return read;
    }

    /// <summary>The names of values in it, each once.</summary>
    public IEnumerable<string> Names => Parts().OfType<Name>().Select(name => name.Text).Where(name => !Constants.ContainsKey(name)).Distinct(StringComparer.Ordinal);

    /// <summary>The value in SI units.</summary>
    /// <param name="values">The values by their symbols.</param>
    public double Value(IReadOnlyDictionary<string, double> values) => this switch
    {
        Number number => number.Size,
        Literal literal => literal.Quantity.SiValue,
        Name name => Constants.TryGetValue(name.Text, out var constant) ? constant.Value : values[name.Text],
        Negative negative => -negative.Inner.Value(values),
        Binary binary => Work(binary.Sign, binary.Left.Value(values), binary.Right.Value(values)),
        Call { Function: "sqrt" } call => Math.Sqrt(call.Arguments[0].Value(values)),
        Call { Function: "min" } call => call.Arguments.Min(one => one.Value(values)),
        Call { Function: "max" } call => call.Arguments.Max(one => one.Value(values)),
        Call call when PlainFunctions.TryGetValue(call.Function, out Func<double, double>? function) => function(call.Arguments[0].Value(values)),
        Call call when KeepingFunctions.TryGetValue(call.Function, out Func<double, double>? function) => function(call.Arguments[0].Value(values)),
        Call call => NamedFormula.Find(call.Function)!.Work([.. call.Arguments.Select(one => one.Value(values))]).Value,
        _ => throw new ArgumentOutOfRangeException(nameof(values), this, "The expression is not handled."),
    };

    /// <summary>Its dimension; null where something in it does not fit together, and the list says what.</summary>
    /// <param name="known">Dimensions of the values by their symbols.</param>
    /// <param name="problems">What is wrong.</param>
    public Dimension? DimensionOf(IReadOnlyDictionary<string, Dimension> known, List<ArithmeticProblem> problems)
    {
        switch (this)
        {
            case Number:
                return Dimension.None;
            case Literal literal:
                return Dimension.Of(QuantityKind.Of(literal.Quantity));
            case Name name when Constants.TryGetValue(name.Text, out var constant):
                return constant.Dimension;
            case Name name when known.TryGetValue(name.Text, out Dimension dimension):
                return dimension;
            case Name name:
                problems.Add(new(ArithmeticFault.UnknownName, At, $"there is no value `{name.Text}`", Nearest.Of(name.Text, known.Keys), string.Join(", ", [.. known.Keys, .. Constants.Keys])));
                return null;
            case Negative negative:
                return negative.Inner.DimensionOf(known, problems);
            case Binary binary:
                return OfBinary(binary, known, problems);
            case Call call:
                return OfCall(call, known, problems);
            default:
                throw new ArgumentOutOfRangeException(nameof(known), this, "The expression is not handled.");
        }
    }

    /// <summary>The expression in the notation of the textbooks.</summary>
    public string Formula => Written(name => name, 0);

    /// <summary>The expression with the values put in.</summary>
    /// <param name="values">How each value is written.</param>
    public string Substituted(IReadOnlyDictionary<string, string> values) => Written(name => values.GetValueOrDefault(name, name), 0);

    private IEnumerable<Arithmetic> Parts() => this switch
    {
        Negative negative => negative.Inner.Parts().Prepend(this),
        Binary binary => binary.Left.Parts().Concat(binary.Right.Parts()).Prepend(this),
        Call call => call.Arguments.SelectMany(one => one.Parts()).Prepend(this),
        _ => [this],
    };

    private static double Work(char sign, double left, double right) => sign switch
    {
        '+' => left + right,
        '-' => left - right,
        '*' => left * right,
        '/' => left / right,
        '^' => Math.Pow(left, right),
        _ => throw new ArgumentOutOfRangeException(nameof(sign), sign, "The sign is not handled."),
    };

    private static Dimension? OfBinary(Binary binary, IReadOnlyDictionary<string, Dimension> known, List<ArithmeticProblem> problems)
    {
        Dimension? left = binary.Left.DimensionOf(known, problems), right = binary.Right.DimensionOf(known, problems);
        if (left is not { } a || right is not { } b)
        {
            return null;
        }

        switch (binary.Sign)
        {
            case '*':
                return a.Times(b);
            case '/':
                return a.Times(b, -1);
            case '^' when b != Dimension.None:
                problems.Add(new(ArithmeticFault.Dimensions, binary.Right.At, $"an exponent must be a plain number, and this one is in {b}", null, ""));
                return null;
            case '^' when a == Dimension.None:
                return a;
            case '^' when binary.Right.Names.Any():
                problems.Add(new(ArithmeticFault.Dimensions, binary.Right.At, $"what is raised to a power that is drawn must be a plain number, and this is in {a}", null, ""));
                return null;
            case '^':
                Dimension? raised = a.ToThe(binary.Right.Value(NoValues));
                if (raised is null)
                {
                    problems.Add(new(ArithmeticFault.Dimensions, binary.At, $"{a} has no such power", null, ""));
                }

                return raised;
            default:
                if (a != b)
                {
                    string what = binary.Sign == '+' ? "is added to" : "is taken away from";
                    problems.Add(new(ArithmeticFault.Dimensions, binary.SignAt, $"what is in {b} {what} what is in {a}", null, ""));
                    return null;
                }

                return a;
        }
    }

    private static Dimension? OfCall(Call call, IReadOnlyDictionary<string, Dimension> known, List<ArithmeticProblem> problems)
    {
        Dimension?[] arguments = [.. call.Arguments.Select(one => one.DimensionOf(known, problems))];
        NamedFormula? formula = NamedFormula.Find(call.Function);
        if (!FunctionNames.Contains(call.Function, StringComparer.Ordinal))
        {
            problems.Add(new(ArithmeticFault.UnknownName, call.At, $"there is no function `{call.Function}`", Nearest.Of(call.Function, FunctionNames), string.Join(", ", FunctionNames)));
            return null;
        }

        bool many = call.Function is "min" or "max" || formula is { TakesMany: true };
        int wanted = formula?.Parameters.Count ?? 1;
        if (many ? arguments.Length == 0 : arguments.Length != wanted)
        {
            string takes = formula is null ? "one value" : formula.Signature;
            problems.Add(new(ArithmeticFault.Arguments, call.At, $"`{call.Function}` is given {arguments.Length} value{(arguments.Length == 1 ? "" : "s")}", null, takes));
            return null;
        }

        if (!Array.TrueForAll(arguments, one => one is not null))
        {
            return null;
        }

        for (int i = 0; i < arguments.Length; i++)
        {
            Dimension? must = formula is not null ? formula.Parameters[many ? 0 : i].Dimension
                : PlainFunctions.ContainsKey(call.Function) ? Dimension.None
                : many ? arguments[0] : null;
            if (must is { } wants && arguments[i] != wants)
            {
                string place = formula is null ? $"`{call.Function}` takes {(wants == Dimension.None ? "a plain number" : wants.ToString())}" : $"`{formula.Signature}` wants {formula.Parameters[many ? 0 : i].Words}";
                problems.Add(new(ArithmeticFault.Dimensions, call.Arguments[i].At, $"{place}, and this is {(arguments[i] == Dimension.None ? "" : "in ")}{arguments[i]}", null, ""));
                return null;
            }
        }

        return formula?.Dimension ?? (call.Function == "sqrt" ? arguments[0]!.Value.ToThe(1, 2) : PlainFunctions.ContainsKey(call.Function) ? Dimension.None : arguments[0]);
    }

    private static readonly Dictionary<string, double> NoValues = [];

    /// <param name="outer">How closely what stands around binds: 0 nothing, 1 a sum, 2 a product, 3 a power.</param>
    private string Written(Func<string, string> name, int outer)
    {
        (string text, int own) = this switch
        {
            Number number => (number.Digits, 4),
            Literal literal => (OwnTemplate.Put(literal.Quantity), 4),
            Name one => (one.Text == "pi" ? "π" : name(one.Text), 4),
            Negative negative => ($"−{negative.Inner.Written(name, 2)}", 1),
            Binary { Sign: '+' } sum => ($"{sum.Left.Written(name, 1)} + {sum.Right.Written(name, 1)}", 1),
            Binary { Sign: '-' } sum => ($"{sum.Left.Written(name, 1)} − {sum.Right.Written(name, 2)}", 1),
            Binary { Sign: '*' } product => ($"{product.Left.Written(name, 2)}·{product.Right.Written(name, 2)}", 2),
            Binary { Sign: '/' } quotient => ($"{quotient.Left.Written(name, 2)}/{quotient.Right.Written(name, 3)}", 2),
            Binary power => ($"{power.Left.Written(name, 4)}^{power.Right.Written(name, 4)}", 3),
            Call { Function: "sqrt" } call => ($"√({call.Arguments[0].Written(name, 0)})", 4),
            Call { Function: "abs" } call => ($"|{call.Arguments[0].Written(name, 0)}|", 4),
            Call call => ($"{call.Function}({string.Join(", ", call.Arguments.Select(one => one.Written(name, 0)))})", 4),
            _ => throw new ArgumentOutOfRangeException(nameof(name), this, "The expression is not handled."),
        };
        return own < outer ? $"({text})" : text;
    }

    /// <summary>A plain number.</summary>
    /// <param name="Digits">As written.</param>
    public sealed record Number(int At, double Size, string Digits) : Arithmetic(At);

    /// <summary>A quantity with its unit, written in square brackets: [273.15 K].</summary>
    public sealed record Literal(int At, IQuantity Quantity) : Arithmetic(At);

    /// <summary>A value or a constant.</summary>
    public sealed record Name(int At, string Text) : Arithmetic(At);

    /// <summary>Something with a minus before it.</summary>
    public sealed record Negative(int At, Arithmetic Inner) : Arithmetic(At);

    /// <summary>Two parts and what is done with them.</summary>
    /// <param name="Sign">+ - * / or ^.</param>
    public sealed record Binary(int At, char Sign, int SignAt, Arithmetic Left, Arithmetic Right) : Arithmetic(At);

    /// <summary>A function or a named formula with what it is given.</summary>
    public sealed record Call(int At, string Function, IReadOnlyList<Arithmetic> Arguments) : Arithmetic(At);
}

/// <summary>What is wrong with an expression.</summary>
/// <param name="At">Place in its text.</param>
/// <param name="Near">What may have been meant; null for nothing.</param>
/// <param name="Known">What there is, or what is wanted.</param>
internal sealed record ArithmeticProblem(ArithmeticFault Fault, int At, string Message, string? Near, string Known);

/// <summary>The kinds of what may be wrong.</summary>
internal enum ArithmeticFault
{
    /// <summary>It cannot be read.</summary>
    Unread,

    /// <summary>It names a value or a function that there is none of.</summary>
    UnknownName,

    /// <summary>A function is given too many values, or too few.</summary>
    Arguments,

    /// <summary>What is added, compared or put into a function is of another kind.</summary>
    Dimensions,
}

/// <summary>Reads an expression: ^ binds closest, from the right; then a sign; then × and /; then + and −.</summary>
internal sealed class ArithmeticReader(string text)
{
    /// <summary>Brackets in brackets.</summary>
    private const int Deepest = 64;

    private int _at, _depth;

    public ArithmeticProblem? Problem { get; private set; }

    public Arithmetic? Whole()
    {
        Arithmetic? read = Sum();
        Skip();
        if (read is not null && _at < text.Length)
        {
            return Fail(char.IsLetterOrDigit(text[_at]) || text[_at] == '(' ? "write × between two factors" : $"`{text[_at]}` does not belong here");
        }

        return Problem is null ? read : null;
    }

    private char Next
    {
        get
        {
            Skip();
            return _at < text.Length ? text[_at] : '\0';
        }
    }

    private void Skip()
    {
        while (_at < text.Length && char.IsWhiteSpace(text[_at]))
        {
            _at++;
        }
    }

    private Arithmetic? Fail(string message)
    {
        Problem ??= new ArithmeticProblem(ArithmeticFault.Unread, Math.Min(_at, text.Length), message, null, "");
        return null;
    }

    private Arithmetic? Sum()
    {
        Arithmetic? left = Product();
        while (left is not null && Next is '+' or '-' or '−')
        {
            int at = _at;
            char sign = text[_at++] == '+' ? '+' : '-';
            left = Product() is { } right ? new Arithmetic.Binary(left!.At, sign, at, left, right) : null;
        }

        return left;
    }

    private Arithmetic? Product()
    {
        Arithmetic? left = Signed();
        while (left is not null && Next is '*' or '×' or '·' or '⋅' or '/' or '÷')
        {
            int at = _at;
            char sign = text[_at++] is '/' or '÷' ? '/' : '*';
            left = Signed() is { } right ? new Arithmetic.Binary(left!.At, sign, at, left, right) : null;
        }

        return left;
    }

    private Arithmetic? Signed()
    {
        if (Next is '-' or '−')
        {
            int at = _at++;
            return Deeper(Signed) is { } inner ? new Arithmetic.Negative(at, inner) : null;
        }

        return Power();
    }

    private Arithmetic? Power()
    {
        Arithmetic? under = Operand();
        switch (under is null ? '\0' : Next)
        {
            case '²' or '³':
                int place = _at;
                double squared = text[_at++] == '²' ? 2 : 3;
                return new Arithmetic.Binary(under!.At, '^', place, under, new Arithmetic.Number(place, squared, squared.ToString(CultureInfo.InvariantCulture)));
            case '^':
                int at = _at++;
                return Deeper(Signed) is { } power ? new Arithmetic.Binary(under!.At, '^', at, under, power) : null;
            default:
                return under;
        }
    }

    private Arithmetic? Deeper(Func<Arithmetic?> read)
    {
        if (Deepest <= ++_depth)
        {
            return Fail("too many brackets stand in each other");
        }

        Arithmetic? inner = read();
        _depth--;
        return inner;
    }

    private Arithmetic? Operand()
    {
        char next = Next;
        int from = _at;
        if (next == '(')
        {
            _at++;
            return Deeper(Sum) is { } inner && Closed() ? inner : null;
        }

        if (next == '[')
        {
            int end = text.IndexOf(']', _at);
            string written = end < 0 ? "" : text[(from + 1)..end].Trim();
            if (OwnGiven.KindOf(written) is not { } kind || !QuantityText.TryParse(kind, written, out IQuantity? value, out _))
            {
                return Fail(end < 0 ? "a `]` is missing" : $"`{written}` is no number with a unit");
            }

            _at = end + 1;
            return new Arithmetic.Literal(from, value!);
        }

        if (next == '√')
        {
            _at++;
            return Deeper(Operand) is { } inner ? new Arithmetic.Call(from, "sqrt", [inner]) : null;
        }

        if (char.IsAsciiDigit(next) || next == '.')
        {
            return Digits(from);
        }

        if (!char.IsLetter(next))
        {
            return Fail(next == '\0' ? "something is missing at the end" : $"a value is missing before `{next}`");
        }

        while (_at < text.Length && (char.IsLetterOrDigit(text[_at]) || text[_at] == '_' || text[_at] is >= '₀' and <= '₉'))
        {
            _at++;
        }

        string name = text[from.._at];
        return Next == '(' ? Called(from, name) : new Arithmetic.Name(from, name);
    }

    private Arithmetic? Digits(int from)
    {
        while (_at < text.Length && (char.IsAsciiDigit(text[_at]) || text[_at] == '.'))
        {
            _at++;
        }

        if (_at < text.Length && text[_at] is 'e' or 'E')
        {
            int mark = _at++;
            _at += _at < text.Length && text[_at] is '+' or '-' ? 1 : 0;
            int digits = _at;
            while (_at < text.Length && char.IsAsciiDigit(text[_at]))
            {
                _at++;
            }

            _at = digits == _at ? mark : _at;
        }

        string written = text[from.._at];
        return double.TryParse(written, NumberStyles.Float, CultureInfo.InvariantCulture, out double size) && double.IsFinite(size)
            ? new Arithmetic.Number(from, size, written)
            : Fail($"`{written}` is no number");
    }

    private Arithmetic.Call? Called(int from, string name)
    {
        _at++;
        List<Arithmetic> arguments = [];
        while (true)
        {
            if (Deeper(Sum) is not { } argument)
            {
                return null;
            }

            arguments.Add(argument);
            if (Next != ',')
            {
                return Closed() ? new Arithmetic.Call(from, name, arguments) : null;
            }

            _at++;
        }
    }

    private bool Closed()
    {
        if (Next == ')')
        {
            _at++;
            return true;
        }

        Fail(_at < text.Length ? $"a `)` is missing before `{text[_at]}`" : "a `)` is missing at the end");
        return false;
    }
}
