namespace FrontEnd.Documents.Teaching;

/// <summary>What is said of a file of somebody's own problem templates.</summary>
internal static class OwnTemplateMessages
{
    public const string Missing = "FE1114";
    public const string Id = "FE1115";
    public const string KindUnknown = "FE1116";
    public const string NoValues = "FE1117";
    public const string Unread = "FE1118";
    public const string NameUnknown = "FE1119";
    public const string Dimensions = "FE1120";
    public const string OtherAnswer = "FE1121";
    public const string Arguments = "FE1122";
    public const string NoAnswer = "FE1123";
    public const string SlipIsRight = "FE1124";
    public const string FewAnswers = "FE1125";
    public const string Unused = "FE1126";
    public const string NoTemplates = "FE1127";
    public const string Symbol = "FE1128";
    public const string OtherWord = "FE1129";

    public const string FieldUnknown = "FE1138";
    public const string DesignUnusable = "FE1139";
    public const string FigureUnknown = "FE1152";
    public const string OneOrTheOther = "FE1153";
    public const string SomePutBack = "FE1154";
    public const string ByHandOutside = "FE1155";
    public const string NotGivenAway = "FE1076";

    /// <summary>Keys that are named one by one.</summary>
    private const int MostKeys = 6;

    public static Finding NoField(string key, string name, string? nearest) =>
        new(FieldUnknown, Severity.Error, key, $"the design has no value `{name}` that could be given", nearest is null ? null : $"the nearest is `{nearest}`",
            "name a key of a number in the design, as in the table of keys in designs/README.md");

    public static Finding NotGiven(string key, string name) =>
        new(FieldUnknown, Severity.Error, key, $"the design does not set {name} to a number", null, "give values, or least and greatest");

    public static Finding BadDesign(string key, string path, string why) =>
        new(DesignUnusable, Severity.Error, key, $"the design `{path}` cannot be used: {why}", "its figures are the answers", "`frontend check` says all that is wrong with it");

    public static Finding NoFigure(string key, string id, string? nearest, string why) =>
        new(FigureUnknown, Severity.Error, key, why.Length > 0 ? $"the design has no number for `{id}`: {why}" : $"there is no figure `{id}`",
            nearest is null ? null : $"the nearest is `{nearest}`", "`frontend check DESIGN --all --json` lists the figures of a design with their ids");

    public static Finding NotBoth(string key, string one, string other) =>
        new(OneOrTheOther, Severity.Error, key, $"{one} and {other} are both given", "each says where the value comes from", "leave one of them out");

    public static Finding PutBack(string key, int putBack, int looked, string first) =>
        new(SomePutBack, Severity.Warning, key, $"{putBack} of {looked} draws that were looked at have no figure, such as {first}", "a student's numbers are then put back and drawn again",
            "narrow the ranges of the givens if that is not meant");

    public static Finding MissedByHand(string key, int missed, int looked) =>
        new(ByHandOutside, Severity.Warning, key, $"the textbook's formula comes out beyond the tolerance in {missed} of {looked} draws that were looked at",
            "the answer is the figure of the whole circuit, which nobody solves by hand", "widen the tolerance, ask for a figure that the formula meets, or say in the text what is to be counted");

    public static Finding MissingKey(string key, string example) =>
        new(Missing, Severity.Error, key, $"{key} is missing", null, $"add it, as {example}");

    public static Finding BadId(string key, string id, string why) =>
        new(Id, Severity.Error, key, $"`{id}` {why}", "the id fixes a student's numbers and names the template in keys", "use small letters, digits and hyphens that no other template has");

    public static Finding NoKind(string key, string word, string? nearest, IEnumerable<string> known) =>
        new(KindUnknown, Severity.Error, key, $"there is no kind `{word}`", nearest is null ? null : $"the nearest is `{nearest}`", $"use one of {string.Join(", ", known)}");

    public static Finding WantsKind(string key, string text) =>
        new(KindUnknown, Severity.Error, key, $"`{text}` does not say what kind of value it is", null, "add kind, such as kind = \"resistance\"");

    public static Finding Empty(string key, string why, string help) => new(NoValues, Severity.Error, key, why, "a value is drawn from those that are possible", help);

    public static Finding NotRead(string key, string message) =>
        new(Unread, Severity.Error, key, $"the formula cannot be read: {message}", null, "write it with + - × / ^, parentheses, sqrt, ln, log10, exp and the symbols of the givens, such as `V/(R1 + R2)`");

    public static Finding UnknownName(string key, string message, string? nearest, string known) =>
        new(NameUnknown, Severity.Error, key, message, nearest is null ? null : $"the nearest is `{nearest}`", $"there are {known}");

    public static Finding Wrong(string key, string message) => new(Dimensions, Severity.Error, key, message, "only what is measured in the same unit adds up", "look at the symbols and the brackets");

    public static Finding Given(string key, string message, string takes) => new(Arguments, Severity.Error, key, message, null, $"it takes {takes}");

    public static Finding AnswerOf(string key, string what, string wanted, string unit, string has) =>
        new(OtherAnswer, Severity.Error, key, $"{what} is {wanted}, in {unit}, and the formula gives {has}", null, "change the formula, or the kind");

    public static Finding NotWorkedOut(string key, string values) =>
        new(NoAnswer, Severity.Error, key, $"with {values} the formula has no value", "roots of negative numbers, logarithms of nothing, divisions by 0 and an answer of 0 are none", "change the ranges of the givens, or the formula");

    public static Finding SlipNeverTold(string key) =>
        new(SlipIsRight, Severity.Warning, key, "this slip never leads anywhere that can be told from the right answer", null, "leave it out, or make the tolerance smaller");

    public static Finding Few(string key, int answers, int wanted) =>
        new(FewAnswers, Severity.Warning, key, $"the template has {answers} different answer{(answers == 1 ? "" : "s")}, below {wanted}", "in a larger class students get the same answer", "give more values, a wider range or a finer series");

    /// <param name="keys">Values of the design that the sheet does not give.</param>
    public static Finding NotOnSheet(string key, IReadOnlyList<string> keys) =>
        new(NotGivenAway, Severity.Warning, key, $"the answer follows from more of the design than the sheet gives: {string.Join(", ", keys.Take(MostKeys))}{(keys.Count > MostKeys ? $" and {keys.Count - MostKeys} more" : "")}",
            "each of these, by half more or less, moves it beyond the tolerance, and students have the sheet alone",
            $"add them to the givens with their key and a symbol alone, as {{ key = \"{keys[0]}\", symbol = \"x\" }}, ask for a figure that rests on less, or hand the design out with the sheets");

    public static Finding NotUsed(string key, string symbol) =>
        new(Unused, Severity.Warning, key, $"`{symbol}` is given and in no formula", null, "leave it out, unless it is there to be left aside");

    public static Finding Nothing() => new(NoTemplates, Severity.Error, "templates", "the file has no templates", null, "begin each with [[templates]]");

    public static Finding BadSymbol(string key, string symbol, string why) =>
        new(Symbol, Severity.Error, key, $"`{symbol}` cannot be a symbol: {why}", null, "use a letter, then letters, digits and _, such as R, f_c or σ1");

    public static Finding NotOneOf(string key, string word, string? nearest, IEnumerable<string> known) =>
        new(OtherWord, Severity.Error, key, $"`{word}` is none of its words", nearest is null ? null : $"the nearest is `{nearest}`", $"use one of {string.Join(", ", known)}");
}
