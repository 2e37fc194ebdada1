using System.Globalization;
using FrontEnd.Documents.Files;
using FrontEnd.Fields;
using static FrontEnd.Findings.Finding;

namespace FrontEnd.Documents.Reading;

/// <summary>All wording about files and their syntax. Wording about values is the core's.</summary>
internal static class ReadingMessages
{
    public const string Syntax = "FE0120";
    public const string UnknownKey = "FE0121";
    public const string KeyOfOtherKind = "FE0122";
    public const string KeyTwice = "FE0123";
    public const string WrongType = "FE0124";
    public const string BareNumber = "FE0125";
    public const string UnknownCard = "FE0126";
    public const string TwoForms = "FE0127";
    public const string NotATable = "FE0128";
    public const string TooDeep = "FE0129";
    public const string CannotEdit = "FE0130";
    public const string UnknownField = "FE0131";
    public const string TooMany = "FE0132";

    public const string CardUnreadable = "FE0145";

    public const string NoDesign = "FE1085";

    public const string KindMissing = "FE0201";
    public const string TopologyMissing = "FE0202";
    public const string EdgeMissing = "FE0203";
    public const string ElectrodeAssumed = "FE0210";
    public const string HighestAssumed = "FE0211";
    public const string ProtectionAssumed = "FE0212";

    /// <summary>True for what is said of a value that the file does not give and a figure of safety rests on.</summary>
    internal static bool IsAssumption(string code) => code is ElectrodeAssumed or HighestAssumed or ProtectionAssumed;

    internal static Finding NotADesign(string? file) =>
        Error(NoDesign, "", file == Sheets.CheckText.StandardInput ? "what came in by the standard input is no design: it has none of a design's tables"
            : $"`{file}` is not a design file: it has none of a design's tables", null,
            "name a design file; `frontend new` writes one to start from") with { File = file };

    /// <param name="command">What reads it, with {0} for its name.</param>
    internal static Finding OtherFile(string? file, string what, string command, string wanted) =>
        Error(NoDesign, "", $"`{file}` is {what}, not {wanted}", null, $"`frontend {string.Format(CultureInfo.InvariantCulture, command, file)}` reads it") with { File = file };

    internal static Finding SyntaxError(string message, string format) =>
        Error(Syntax, "", $"the file is not valid {format}: {FileMessages.Lower(message)}", null,
            string.Equals(format, "TOML", StringComparison.Ordinal)
            ? "a line is `key = value`, a table starts with `[name]`; text is in double quotes"
            : "names and text are in double quotes, values are separated by commas");

    /// <param name="written">The number as it stands in the file, without quotes.</param>
    internal static Finding CommaInNumber(string key, string written) =>
        Error(Messages.DecimalComma, key, $"`{written}` has a comma in its number", "the decimal sign is a point, whatever the language of the machine",
            $"write {NumberMeant.WithoutComma(written, quotes: written.Any(char.IsLetter))}");

    /// <param name="quote">The one that it begins with.</param>
    /// <param name="closed">The text with it.</param>
    internal static Finding NotClosed(string key, string written, char quote, string closed) =>
        NotToml(key, $"the text `{written}` has no closing quote", $"put a `{quote}` at its end: {closed}; text is in double quotes");

    internal static Finding QuotesInside(string key, char quote, string proper) =>
        Error(Syntax, key, $"the file is not valid TOML: a `{quote}` inside the text ends it", "a text ends at the next quote of the kind that it begins with", $"write {proper}");

    internal static Finding Backslash(string key, string proper) =>
        Error(Syntax, key, "the file is not valid TOML: a backslash in double quotes begins a sign of its own", "in single quotes a backslash is one", $"write {proper}");

    internal static Finding TwoInOneLine(string key, string value, string second) =>
        NotToml(key, $"`{Cut(second)}` begins in the same line", $"write {value}, and the second key in a line of its own");

    /// <param name="proper">The list as it is to be written.</param>
    internal static Finding NoBrackets(string key, string proper) => NotToml(key, "several values stand without brackets", $"a list is in square brackets: write {proper}");

    internal static Finding RoundBrackets(string key, string proper) => NotToml(key, "a list is not in round brackets", $"write {proper}");

    internal static Finding ListNotClosed(string key, string proper) => NotToml(key, "the list has no `]` at its end", $"write {proper}");

    internal static Finding NoCommas(string key, string proper) => NotToml(key, "no comma stands between the values of the list", $"write {proper}");

    /// <param name="proper">The value with a comment behind it.</param>
    internal static Finding BehindValue(string key, string rest, string proper) =>
        NotToml(key, $"`{Cut(rest)}` stands behind the value", $"a comment begins with `#`: write {proper}");

    internal static Finding TooLong(string key, string written) =>
        Error(Syntax, key, $"the file is not valid TOML: `{written}` has more digits than a whole number may have", "the largest is 9223372036854775807", "check the number");

    internal static Finding TwoPoints(string key, string written) =>
        Error(Syntax, key, $"the file is not valid TOML: `{written}` has more than one point", NumberMeant.Rule,
            NumberMeant.WithoutGroups(written) is var plain && plain != written ? $"write {plain}" : "write the number with one point, such as 2.5");

    internal static Finding OtherComment(string sign, string proper) => NotToml("", $"`{sign}` begins no comment", $"a comment begins with `#`: write {Cut(proper)}");

    /// <param name="odd">The sign that stands where a blank should, or that nobody sees.</param>
    internal static Finding OddBlank(string key, char odd, string proper) =>
        NotToml(key, FormattableString.Invariant($"a sign that looks like a blank or like nothing stands in the line, U+{(int)odd:X4}"), $"type the line anew: {proper}");

    internal static Finding ValueBelow(string key, string proper) => NotToml(key, "the value stands in the line below its key", $"write both in one line: {proper}");

    /// <param name="proper">Key and value as they are to be written; null where nobody knows.</param>
    internal static Finding NoKeyName(string key, string written, string? proper) =>
        Error(Syntax, key, $"the file is not valid TOML: `{written}` is not how a key is written", "a key has the letters a to z, digits, hyphens and underscores, and no blanks",
            proper is null ? "write one of the table's keys" : $"write {proper}");

    internal static Finding NotFirst(string key, string sign, string proper) => NotToml(key, $"`{sign}` stands before the key", $"a line begins with its key: write {proper}");

    internal static Finding OtherSign(string key, string sign, string? proper) =>
        NotToml(key, $"`{sign}` stands where `=` belongs", proper is null ? "a line is `key = value`: give a value, or remove the line and the default counts" : $"a line is `key = value`: write {proper}");

    internal static Finding NoTableNamed(string written, IReadOnlyList<string> tables) =>
        Error(UnknownKey, "", $"there is no table `{written}`", null, $"use one of {Shortened(tables)}; the keys below it are not read until then");

    internal static Finding OtherLanguage(string what, string remedy) => NotToml("", $"it is {what}", remedy);

    internal static Finding OldLineEnds() => NotToml("", "its lines end in a carriage return alone", "save it with the line ends LF or CRLF");

    private static string Cut(string text) => text.Length <= 40 ? text : text[..40] + "…";

    /// <param name="proper">The value as it is to be written.</param>
    internal static Finding NotOpened(string key, string written, string proper) =>
        NotToml(key, $"`{written}` has no opening quote", $"write {proper}; text is in double quotes");

    internal static Finding OtherQuotes(string key, char quote, string proper) =>
        NotToml(key, $"`{quote}` is not a quote that this file knows", $"write {proper}; text is in straight double quotes");

    /// <param name="plain">The number that is meant.</param>
    internal static Finding NotPlain(string key, string written, string plain) =>
        Error(Syntax, key, $"the file is not valid TOML: `{written}` is not how a number is written",
            NumberMeant.Rule + ", with a digit on either side of it", $"write {plain}");

    /// <param name="sign">What stands there.</param>
    /// <param name="value">The value without it.</param>
    internal static Finding EndsInSign(string key, char sign, string value) => NotToml(key, $"`{sign}` follows the value", $"write {value}: the end of the line ends it");

    internal static Finding NotTrueOrFalse(string key, string written, string meant) =>
        Error(Syntax, key, $"the file is not valid TOML: `{written}` is not a value", "a switch is true or false, in small letters", $"write {meant}; any other word is text in double quotes");

    internal static Finding NoValue(string key) =>
        NotToml(key, "nothing stands behind the `=`", "a line is `key = value`: give a value, or remove the line and the default counts");

    /// <param name="name">The key as written.</param>
    /// <param name="value">What stands behind it; empty for nothing.</param>
    internal static Finding NoEquals(string key, string line, string name, string value) =>
        NotToml(key, $"`{Cut(line)}` has no `=`", value.Length == 0 ? "a line is `key = value`: give a value, or remove the line and the default counts" : $"a line is `key = value`: write {name} = {value}");

    /// <param name="meant">The name with its brackets.</param>
    /// <param name="reason">What keeps the name from being read; null for nothing but its brackets.</param>
    internal static Finding TableName(string line, string meant, string? reason) =>
        Error(Syntax, "", $"the file is not valid TOML: `{line}` is not how a table starts", reason, $"a table starts with `[name]` alone in its line: write {meant}; the keys below it are not read until then");

    private static Finding NotToml(string key, string what, string remedy) => Error(Syntax, key, $"the file is not valid TOML: {what}", null, remedy);

    /// <param name="proper">The text with its quotes.</param>
    internal static Finding NotInQuotes(string key, string written, string proper) =>
        Error(Syntax, key, $"`{written}` is not in quotes", "anything other than a number, true or false is text", $"write {proper}");

    internal static Finding Lookalike(string key, string written) =>
        Error(UnknownKey, key, $"there is no key `{written}`", Lookalikes.Reason(written), $"retype it: `{Lookalikes.ToLatin(written)}`");

    internal static Finding Unknown(string key, string? nearest, IReadOnlyList<string> known, bool isTable) =>
        Error(UnknownKey, key, isTable ? $"there is no table `{key}`" : $"there is no key `{key}`",
            Lookalikes.Reason(key) ?? (nearest is null ? null : $"the nearest is `{nearest}`"),
            nearest is not null ? $"write `{Last(nearest)}` if that is intended, or remove it"
            : $"remove it, or use one of {Shortened(known)}");

    /// <summary>The same of a line whose key is none of its table's.</summary>
    internal static Finding Unlisted(Finding problem, IReadOnlyList<string> known) => problem with { Code = UnknownKey, Help = $"use one of {Shortened(known)}, or remove the line" };

    /// <param name="names">The keys that it does not have.</param>
    internal static Finding OtherKind(string key, string noun, IReadOnlyList<string> names, IReadOnlyList<string> known) =>
        Error(KeyOfOtherKind, key, $"{noun} has no key {Messages.Listed(names)}", $"its keys are {Shortened(known)}",
            "remove the key, or change the element's kind");

    /// <summary>A key of the same name stands before, whatever the two hold.</summary>
    /// <param name="first">What stands there.</param>
    /// <param name="firstLine">Its line.</param>
    /// <param name="line">The line of the second.</param>
    /// <param name="header">True where the second is the head of a table, <c>[key]</c>.</param>
    /// <param name="isElement">True where it is the head of an element, <c>[[key]]</c>.</param>
    internal static Finding Twice(string key, Node first, int firstLine, int line, bool header = false, bool isElement = false)
    {
        string where = firstLine == line ? "earlier in this line" : $"in line {firstLine}";
        bool isList = first is ListNode { Items: [TableNode, ..] };
        return (first, header) switch
        {
            (TableNode, true) when !isElement => Error(KeyTwice, key, $"the table `{key}` is defined twice",
                $"it is already defined {where}; the keys below its second header are ignored",
                $"move them to the first definition, and remove `[{Last(key)}]` here"),
            (_, true) when isList && !isElement => Error(KeyTwice, key, $"`[{key}]` begins a table, but `{key}` is a list of tables",
                $"the list begins {where}; the keys below this header are ignored", $"write `[[{key}]]` to add an element to the list"),
            (_, true) => Error(KeyTwice, key, $"`{key}` is already {Noun(first)}, but a table here",
                $"it is set {where}; the keys below this header are ignored", "remove one of the two"),
            _ => Error(KeyTwice, key, $"`{key}` is set twice", $"it is already set {where}; this value is ignored",
                "remove one of the two"),
        };
    }

    /// <param name="meant">The value as it is to be written; null where only its form is known.</param>
    internal static Finding Type(string key, string what, string wanted, string example, string? meant = null) =>
        Error(WrongType, key, $"{key} is {what}, but {wanted} is expected", null, meant is null ? example.StartsWith("one of", StringComparison.Ordinal) || example is "true or false" || example.StartsWith("a bare number", StringComparison.Ordinal) ? $"write {example}" : $"write a value like {example}" : $"write {meant}");

    internal static Finding NotFinite(string key, string wanted, string example) =>
        Error(WrongType, key, $"{key} is infinite or not a number, but {wanted} is expected", "every value is a finite number",
            $"write a value like {example}; remove the line and the default counts");

    /// <summary>A text where a bare number is expected: the number that is probably meant, where there is one.</summary>
    internal static Finding TextForNumber(string key, string text, string wanted, string example) =>
        Error(WrongType, key, $"{key} is a text, but {wanted} is expected", null, NumberMeant.Remedy(text) ?? $"write a value like {example}");

    internal static Finding Bare(FieldDescription field, string key, string written) =>
        Error(BareNumber, key, $"`{written}` has no unit, but {key} is {FieldKinds.Noun(field)}", null,
            field.Holds<Resistance>() && double.TryParse(written, NumberStyles.Float, CultureInfo.InvariantCulture, out double ohms) && double.IsFinite(ohms)
                ? $"write number and unit in quotes, such as {FieldKinds.Likely(field)}; if ohms are meant, \"{QuantityText.FormatPart(Resistance.FromOhms(ohms))}\""
                : NumberMeant.IsNumber(written) && UnitOf(field, written) is { } unit ? $"write number and unit in quotes: \"{written} {unit}\" if that is the unit"
                : $"write number and unit in quotes, such as {FieldKinds.Likely(field)}");

    /// <summary>The unit that a bare number probably has: the default's, or the one without a prefix where it is written as instruments write SI units.</summary>
    private static string? UnitOf(FieldDescription field, string written) =>
        Messages.IsInPlainUnit(written, field.Quantity!) ? field.Quantity!.Units[0].Spellings[0] : FieldKinds.LikelyUnit(field, written) ?? QuantityText.UnitOfExample(field.Quantity!.Example);

    internal static Finding NoCard(string key, string name, CardClass cardClass, IReadOnlyList<string> known, string? nearest) =>
        Error(UnknownCard, key, $"there is no part card `{name}` for {Noun(cardClass)}", $"the cards are {Messages.Listed(known)}",
            (nearest is null ? "" : $"did you mean `{nearest}`? ")
            + "name one of them, or give the path of a card of your own that ends in .toml");

    internal static Finding BadCard(string key, string path, string why) =>
        Error(CardUnreadable, key, $"the part card `{path}` cannot be used: {why}", null,
            "correct the card; reference/parts/README.md shows how to make one");

    /// <summary>A finding about a card, with the other places that name it.</summary>
    internal static Finding NamedAlso(Finding first, IReadOnlyList<Finding> others)
    {
        string[] places = [.. others.Select(one => one.Line is not { } line ? one.Field
            : string.Equals(one.File, first.File, StringComparison.Ordinal) ? FormattableString.Invariant($"{one.Field} (line {line})")
            : FormattableString.Invariant($"{one.Field} ({one.File}:{line})"))];
        string listed = places.Length == 1 ? places[0] : $"{string.Join(", ", places[..^1])} and {places[^1]}";
        return first with { Note = $"{listed} name{(places.Length == 1 ? "s" : "")} it too{(first.Note is null ? "" : "; " + first.Note)}" };
    }

    internal static Finding BothForms(string key, string first, string second) =>
        Error(TwoForms, key, $"both {first} and {second} are given, but they state the same thing", $"{first} is used",
            "remove one of the two");

    internal static Finding BandAlone(string band, string rms) =>
        Error(UnknownKey, band, $"{band} is given without {rms}", "it is the band that the rms was measured in",
            $"add {rms}, or remove {band}");

    internal static Finding NoTable(string key, string what) =>
        Error(NotATable, key, $"{key} is {what}, but a table is expected", null, $"write `[{key}]` and its keys below");

    internal static Finding NoTableList(string key, string what) =>
        Error(NotATable, key, $"{key} is {what}, but a list of tables is expected", null, $"write `[[{key}]]` once for each");

    internal static Finding Deep(int limit) =>
        Error(TooDeep, "", $"tables and lists are nested more than {limit} deep", null,
            "no design needs more than four; look for brackets that are not closed");

    internal static Finding Many(string key, int limit) =>
        Error(TooMany, key, $"{key} has more than {limit} elements", null, "remove the rest");

    internal static Finding NoKind(string key, IReadOnlyList<string> words, string list) =>
        Error(KindMissing, key, $"{key} has no `kind`", null,
            $"add `kind = \"…\"` to the table of {list}, one of {Messages.Listed(words)}");

    internal static Finding WrongKind(string key, string word, IReadOnlyList<string> words, string? nearest) =>
        Error(Messages.UnknownWord, key, $"`{word}` is not a value of {key}", null,
            (nearest is null ? "" : $"did you mean `{nearest}`? ") + $"write {Messages.Listed(words)}");

    internal static Finding NoTopology(string key, IReadOnlyList<string> words) =>
        Error(TopologyMissing, key, $"{key} is a low-pass, but does not say how it is built", null,
            $"add `topology`, one of {Messages.Listed(words)}");

    internal static Finding NoEdge(string key, string edge) =>
        Error(EdgeMissing, key, $"{key} has no `{edge}`", null,
            $"add `{edge}`, such as {FieldKinds.Example(QuantityKind.Of<Frequency>())}");

    internal static Finding AssumedElectrode(string which, string values) =>
        Warning(ElectrodeAssumed, $"electrodes.{which}", $"the {which} electrode is not described: {values} is assumed",
            "the skin-electrode surrogate of AAMI TIR60 represents a poor gel contact",
            $"set electrodes.{which}.card or electrodes.{which}.contact-resistance and contact-capacitance");

    internal static Finding AssumedHighest(string value) =>
        Warning(HighestAssumed, DesignKeys.Supply.Highest, $"the highest voltage in the box is not given: {value} is assumed",
            "the currents after a fault are computed from it", "set supply.highest; count charger input and converters too");

    /// <param name="leads">The measuring leads that have none: "active", "reference".</param>
    /// <param name="isBuffered">True where the resistor stands at the skin, in front of a buffer.</param>
    internal static Finding NoProtection(string key, IReadOnlyList<string> leads, bool isBuffered) =>
        Warning(ProtectionAssumed, key,
            $"no resistor is given in the {string.Join(" and the ", leads)} electrode's lead{(isBuffered ? ", ahead of its buffer" : "")}: none is assumed",
            "a resistor counts only if it is fitted; without one, nothing limits the dc that a fault drives through that electrode",
            $"set {key} to what is fitted; the result safety.series_resistance_needed is the minimum that the quoted limit allows");

    internal static Finding NotEditable(string key, string why) =>
        Error(CannotEdit, key, $"{key} cannot be changed in this file: {why}", null, "save the design as a new TOML file and change that");

    internal static Finding NoField(string key, string? nearest) =>
        Error(UnknownField, key, $"this design has no field `{key}`", nearest is null ? null : $"the nearest is `{nearest}`",
            "name a field of the key table");

    internal static string Noun(CardClass cardClass) => cardClass switch
    {
        CardClass.Electrode => "an electrode",
        CardClass.Amplifier => "a differential amplifier",
        CardClass.OpAmp => "an op-amp",
        CardClass.Converter => "a converter",
        CardClass.Buffer => "an electrode buffer",
        _ => throw new ArgumentOutOfRangeException(nameof(cardClass), cardClass, "Class is not handled."),
    };

    internal static string Noun(Node node) => node switch
    {
        TextNode => "a text",
        NumberNode => "a number",
        FlagNode => "true or false",
        NullNode => "null",
        ListNode => "a list",
        TableNode => "a table",
        OtherNode other => other.Noun,
        _ => throw new ArgumentOutOfRangeException(nameof(node), node, "Node is not handled."),
    };

    private static string Shortened(IReadOnlyList<string> known) =>
        known.Count <= 16 ? Messages.Listed(known) : $"{Messages.Listed([.. known.Take(16)])} and {known.Count - 16} more";

    private static string Last(string key) => key[(key.LastIndexOf('.') + 1)..];

}
