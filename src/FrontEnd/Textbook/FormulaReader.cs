namespace FrontEnd.Textbook;

/// <summary>Reads the notation in which formulas are written here: one line of text to a tree.</summary>
/// <remarks>
/// What stands side by side without a blank binds closest (2kT/πC is 2kT over πC), then · and /, then + and −, then =, then commas. A fraction
/// of a fraction is one fraction (a/b/c is a over b·c). <c>f_c</c>, <c>f₁</c>, <c>R1</c> and <c>Rf</c> have indices, <c>x²</c> and
/// <c>10^(A/20)</c> powers, <c>√</c> takes the next factor, <c>|…|</c> is a size, <c>[…]</c> a bracket; a function takes what stands in brackets
/// behind it or the next product. A number, a blank and a unit are one quantity. A run of letters is a function, a word that stands for a value
/// (CMRR, tol) or one-letter symbols (kTRB).
/// </remarks>
internal sealed class FormulaReader
{
    private const string Superscripts = "⁰¹²³⁴⁵⁶⁷⁸⁹", Subscripts = "₀₁₂₃₄₅₆₇₈₉", Relations = "=≈<>≤≥≪≫→", Big = "ΣΠ∫∑∏";

    private static readonly HashSet<string> Functions = new(StringComparer.Ordinal)
    {
        "sin", "cos", "tan", "atan", "asin", "acos", "sinh", "cosh", "tanh", "ln", "log", "exp", "min", "max", "round", "Re", "Im",
    };

    /// <summary>Words that stand for a value; other words of small letters are read in a formula, but not out of a sentence.</summary>
    private static readonly HashSet<string> Words = new(StringComparer.Ordinal) { "tol", "pp", "FS" };

    private readonly string _text;
    private readonly bool _isInSentence;
    private readonly IReadOnlyCollection<string> _known;
    private int _at, _depth, _bars, _integrals, _splitUntil;

    private FormulaReader(string text, bool isInSentence, IReadOnlyCollection<string>? known = null) => (_text, _isInSentence, _known) = (text, isInSentence, known ?? []);

    /// <summary>The tree of a formula; null where the text is none.</summary>
    public static Formula? Find(string text) => new FormulaReader(text, isInSentence: false).Whole();

    /// <summary>The tree of a formula that the program itself writes.</summary>
    public static Formula Read(string text) => Find(text) ?? throw new FormatException($"`{text}` is no formula.");

    /// <summary>The same where ordinary words may stand: no lists, no unknown words, no hyphens.</summary>
    /// <param name="known">Words that are names of values; null for none.</param>
    internal static Formula? FindInSentence(string text, IReadOnlyCollection<string>? known) => new FormulaReader(text, isInSentence: true, known).Whole();

    private Formula? Whole()
    {
        Formula? read = Row();
        SkipBlanks();
        return _at == _text.Length ? read : null;
    }

    private char Next => _at < _text.Length ? _text[_at] : '\0';

    private static bool IsBlank(char letter) => letter is ' ' or '\u00A0' or '\u2009' or '\u202F';

    private static bool IsLatin(char letter) => char.IsAsciiLetter(letter);

    private static bool IsGreek(char letter) => letter is (>= 'Α' and <= 'ω' and not ('Σ' or 'Π')) or 'µ' or 'Ω';

    private bool SkipBlanks()
    {
        int from = _at;
        while (IsBlank(Next))
        {
            _at++;
        }

        return from < _at;
    }

    private bool BeginsOperand(char letter) => letter == '|' ? _bars == 0
        : IsLatin(letter) || IsGreek(letter) || char.IsAsciiDigit(letter) || letter is '(' or '[' or '√' or '∞' or '½' or '⅓' or '¼' or '⅔' or '¾' || Big.Contains(letter, StringComparison.Ordinal);

    private Formula? Row()
    {
        if (Relation() is not { } first)
        {
            return null;
        }

        List<Formula> items = [first];
        List<string> separators = [];
        while (true)
        {
            int from = _at;
            bool isApart = SkipBlanks(), isList = !_isInSentence || _depth > 0;
            if (Next == '…' || (isList && Next is ',' or ';' or ':'))
            {
                separators.Add(Next.ToString());
                _at++;
            }
            else if (isApart && !_isInSentence && BeginsOperand(Next))
            {
                separators.Add(" ");
            }
            else
            {
                _at = from;
                return items.Count == 1 ? first : new Formula.Row(items, separators);
            }

            if (Relation() is not { } next)
            {
                return null;
            }

            items.Add(next);
        }
    }

    private Formula? Relation()
    {
        Formula? left = Sum();
        while (left is not null)
        {
            int from = _at;
            SkipBlanks();
            if (!Relations.Contains(Next, StringComparison.Ordinal) || Next == '\0')
            {
                _at = from;
                return left;
            }

            string sign = _text[_at++].ToString();
            left = Sum() is { } right ? new Formula.Relation(left, sign, right) : null;
        }

        return null;
    }

    private Formula? Sum()
    {
        List<Formula.Term> terms = [];
        SkipBlanks();
        string sign = IsSign(Next) ? Sign(_text[_at++]) : "";
        while (true)
        {
            SkipBlanks();
            if (Term() is not { } term)
            {
                return null;
            }

            terms.Add(new Formula.Term(sign, term));
            int from = _at;
            SkipBlanks();
            if (!IsSign(Next))
            {
                _at = from;
                return terms is [{ Sign: "" } only] ? only.Value : new Formula.Sum(terms);
            }

            sign = Sign(_text[_at++]);
        }
    }

    private bool IsSign(char letter) => letter is '+' or '−' or '±' or '∓' || (letter == '-' && !_isInSentence);

    private static string Sign(char letter) => letter == '-' ? "−" : letter.ToString();

    private Formula? Term()
    {
        Formula? read = Tight();
        while (read is not null)
        {
            int from = _at;
            SkipBlanks();
            bool isOver = Next == '/', isTimes = Next is '·' or '×' or '*' or '⋅';
            if (!isOver && !isTimes)
            {
                _at = from;
                return read;
            }

            _at++;
            SkipBlanks();
            if (Tight() is not { } next)
            {
                return null;
            }

            read = isOver ? Over(read, next) : Times(read, next);
        }

        return null;
    }

    private static Formula.Product Times(Formula left, Formula right) =>
        new Formula.Product(left is Formula.Product { IsTight: false } several ? [.. several.Factors, right] : [left, right], IsTight: false);

    private static Formula.Quotient Over(Formula over, Formula under) => over is Formula.Quotient first
        ? new Formula.Quotient(first.Over, Times(Closed(first.Under), under))
        : new Formula.Quotient(Bare(over), Bare(under));

    /// <summary>Without the brackets that a fraction's line, a root or a raised place stands for.</summary>
    private static Formula Bare(Formula formula) => formula is Formula.Group { Open: '(' } group ? group.Inner : formula;

    private static Formula Closed(Formula formula) => formula is Formula.Sum or Formula.Relation or Formula.Row ? new Formula.Group('(', formula) : formula;

    /// <summary>Factors without a sign or a blank between them.</summary>
    private Formula? Tight()
    {
        if (Factor() is not { } first)
        {
            return null;
        }

        // A number stands first: a code such as P6M36 is no product.
        List<Formula> factors = [first];
        while (BeginsOperand(Next) && !char.IsAsciiDigit(Next))
        {
            if (Factor() is not { } next)
            {
                return null;
            }

            factors.Add(next);
        }

        return factors.Count == 1 ? first : new Formula.Product(factors, IsTight: true);
    }

    private Formula? Factor()
    {
        Formula? read = Atom();
        while (read is not null)
        {
            if (Next is '^')
            {
                _at++;
                read = Exponent() is { } exponent ? new Formula.Power(read, exponent) : null;
            }
            else if (Raised() is { } raised)
            {
                read = new Formula.Power(read, raised);
            }
            else if (Next == '∠')
            {
                _at++;
                bool isNegative = Next is '-' or '−';
                _at += isNegative ? 1 : 0;
                read = Atom() is { } angle
                    ? new Formula.Polar(read, isNegative ? new Formula.Sum([new Formula.Term("−", angle)]) : angle)
                    : null;
            }
            else
            {
                return read;
            }
        }

        return null;
    }

    /// <summary>A small raised number or letter: ², ⁻²³, ⁿ; null where none follows.</summary>
    private Formula? Raised()
    {
        int from = _at;
        bool isNegative = Next == '⁻';
        _at += isNegative ? 1 : 0;
        string digits = "";
        while (Superscripts.IndexOf(Next, StringComparison.Ordinal) is var digit and >= 0)
        {
            digits += digit;
            _at++;
        }

        Formula? read = digits.Length > 0 ? new Formula.Number(digits) : null;
        if (read is null && Next == 'ⁿ')
        {
            _at++;
            read = new Formula.Symbol("n");
        }

        if (read is null)
        {
            _at = from;
            return null;
        }

        return isNegative ? new Formula.Sum([new Formula.Term("−", read)]) : read;
    }

    /// <summary>What stands behind ^: a bracket, or a sign and what follows it without a blank.</summary>
    private Formula? Exponent()
    {
        if (Part(Next) is { } part)
        {
            _at++;
            return part;
        }

        if (Next == '(')
        {
            return Atom() is { } group ? Bare(group) : null;
        }

        bool isNegative = Next is '-' or '−';
        _at += isNegative ? 1 : 0;
        List<Formula> factors = [];
        while (IsLatin(Next) || IsGreek(Next) || char.IsAsciiDigit(Next))
        {
            if (Atom() is not { } factor)
            {
                return null;
            }

            factors.Add(factor);
        }

        Formula? read = factors.Count switch { 0 => null, 1 => factors[0], _ => new Formula.Product(factors, IsTight: true) };
        return isNegative && read is not null ? new Formula.Sum([new Formula.Term("−", read)]) : read;
    }

    private Formula? Atom()
    {
        char letter = Next;
        switch (letter)
        {
            case '(' or '[' or '|':
                return Group(letter);
            case '√':
                _at++;
                return Factor() is { } inner ? new Formula.Root(Bare(inner)) : null;
            case '∞' or '…':
                _at++;
                return new Formula.Symbol(letter.ToString());
            case 'Δ' when IsLatin(_at + 1 < _text.Length ? _text[_at + 1] : ' ') || IsGreek(_at + 1 < _text.Length ? _text[_at + 1] : ' '):
                _at++;
                return Atom() is Formula.Symbol symbol ? symbol with { Name = "Δ" + symbol.Name } : null;
            default:
                if (Part(letter) is { } part)
                {
                    _at++;
                    return part;
                }

                return char.IsAsciiDigit(letter) ? Number()
                    : Big.Contains(letter, StringComparison.Ordinal) && letter != '\0' ? Overall()
                    : IsGreek(letter) || IsLatin(letter) ? Name() : null;
        }
    }

    /// <summary>A fraction that is one letter: ½.</summary>
    private static Formula.Quotient? Part(char letter)
    {
        (string Over, string Under)? part = letter switch { '½' => ("1", "2"), '⅓' => ("1", "3"), '¼' => ("1", "4"), '⅔' => ("2", "3"), '¾' => ("3", "4"), _ => null };
        return part is var (over, under) ? new Formula.Quotient(new Formula.Number(over), new Formula.Number(under)) : null;
    }

    private Formula.Group? Group(char open)
    {
        (int bars, int depth) = (_bars, _depth);
        _at++;
        (_bars, _depth) = (open == '|' ? 1 : 0, depth + 1);
        Formula? inner = Row();
        SkipBlanks();
        (_bars, _depth) = (bars, depth);
        char close = open switch { '(' => ')', '[' => ']', _ => '|' };
        if (inner is null || Next != close)
        {
            return null;
        }

        _at++;
        return new Formula.Group(open, inner);
    }

    private Formula Number()
    {
        int from = _at;
        while (char.IsAsciiDigit(Next) || (Next == '.' && _at + 1 < _text.Length && char.IsAsciiDigit(_text[_at + 1])))
        {
            _at++;
        }

        if (Next is 'e' or 'E' && _at + 2 < _text.Length && _text[_at + 1] is '-' or '+' && char.IsAsciiDigit(_text[_at + 2]))
        {
            _at += 2;
            while (char.IsAsciiDigit(Next))
            {
                _at++;
            }
        }

        string digits = _text[from.._at];
        int unit = IsBlank(Next) ? _at + 1 : Next is '°' or '%' ? _at : -1;
        if (unit >= 0 && FormulaUnits.Length(_text, unit) is > 0 and var length)
        {
            _at = unit + length;
            return new Formula.Quantity(digits, _text[unit.._at]);
        }

        return new Formula.Number(digits);
    }

    private Formula.Overall? Overall()
    {
        char sign = _text[_at++] switch { '∑' => 'Σ', '∏' => 'Π', var other => other };
        bool isApart = SkipBlanks();
        if (sign != '∫')
        {
            return (isApart ? Term() : Tight()) is { } body ? new Formula.Overall(sign, body) : null;
        }

        _integrals++;
        Formula? inner = Differential() ?? Tight();
        if (inner is Formula.Differential && Next == '/')
        {
            _at++;
            inner = Tight() is { } under ? Over(inner, under) : null;
        }

        int from = _at;
        SkipBlanks();
        if (inner is not null && Differential() is { } small)
        {
            inner = new Formula.Product([inner, small], IsTight: true);
        }
        else
        {
            _at = from;
        }

        _integrals--;
        return inner is null ? null : new Formula.Overall(sign, inner);
    }

    private Formula.Differential? Differential()
    {
        if (_integrals == 0 || Next != 'd' || _at + 1 >= _text.Length || !(IsLatin(_text[_at + 1]) || IsGreek(_text[_at + 1]))
            || (_at + 2 < _text.Length && char.IsLetterOrDigit(_text[_at + 2])))
        {
            return null;
        }

        _at += 2;
        return new Formula.Differential(_text[_at - 1].ToString());
    }

    private Formula? Name()
    {
        if (IsGreek(Next))
        {
            string greek = _text[_at++].ToString();

            // εr: a Greek letter takes no Latin one as its index but this.
            return greek == "ε" && Next == 'r' && !IsLatin(_at + 1 < _text.Length ? _text[_at + 1] : ' ') ? Low(greek, _text[_at++].ToString()) : Low(greek, "");
        }

        int end = _at;
        while (end < _text.Length && IsLatin(_text[end]))
        {
            end++;
        }

        string run = _text[_at..end];
        if (_splitUntil <= _at)
        {
            if (Functions.Contains(run))
            {
                _at = end;
                return Call(run);
            }

            if (IsWord(run))
            {
                if (_isInSentence && !Words.Contains(run) && !_known.Contains(run) && run.Any(char.IsAsciiLetterLower))
                {
                    return null;
                }

                _at = end;
                return Low(run, "");
            }

            _splitUntil = end;
        }

        int small = 1;
        while (char.IsAsciiLetterUpper(run[0]) && small < run.Length && char.IsAsciiLetterLower(run[small]))
        {
            small++;
        }

        if (_isInSentence && small > 1 && !(run[0] is 'R' or 'C' or 'Z' or 'V' && small < 4))
        {
            return null;
        }

        _at += small;
        return Low(run[..1], run[1..small]);
    }

    /// <summary>A word that stands for a value, not symbols side by side: CMRR, tol, span.</summary>
    private static bool IsWord(string run) => Words.Contains(run)
        || (run.Length >= 3 && run.All(char.IsAsciiLetterUpper))
        || (run.Length >= 2 && run.All(char.IsAsciiLetterLower) && !(run.Length == 2 && run[0] == 'j'))
        || (run.Length >= 4 && char.IsAsciiLetterUpper(run[0]) && run[1..].All(char.IsAsciiLetterLower));

    /// <summary>A symbol with the index that follows it.</summary>
    private Formula.Symbol Low(string name, string low)
    {
        bool isMarked = false;
        if (low.Length == 0 && Next == '_' && _at + 1 < _text.Length && char.IsAsciiLetterOrDigit(_text[_at + 1]))
        {
            int from = ++_at;
            bool isCapital = char.IsAsciiLetterUpper(Next);
            while (char.IsAsciiDigit(Next) || (isCapital ? char.IsAsciiLetterUpper(Next) : char.IsAsciiLetterLower(Next)))
            {
                _at++;
            }

            (low, isMarked) = (_text[from.._at], true);
        }

        while (Subscripts.IndexOf(Next, StringComparison.Ordinal) is var digit and >= 0)
        {
            (low, isMarked) = (low + digit, true);
            _at++;
        }

        while (low.Length == 0 || !isMarked)
        {
            if (!char.IsAsciiDigit(Next) || name.Length > 1)
            {
                break;
            }

            low += _text[_at++];
        }

        return new Formula.Symbol(name, low, isMarked);
    }

    private Formula? Call(string name)
    {
        string low = "";
        while (name == "log" && char.IsAsciiDigit(Next))
        {
            low += _text[_at++];
        }

        Formula.Function function = new(name, low);
        int from = _at;
        if (Next is '(' or '[' or '|')
        {
            return Atom() is { } closed ? new Formula.Call(function, closed) : null;
        }

        SkipBlanks();
        if (BeginsOperand(Next) && Tight() is { } argument)
        {
            return new Formula.Call(function, argument);
        }

        // A function by its name alone: "the logarithm is log2".
        _at = from;
        return function;
    }
}
