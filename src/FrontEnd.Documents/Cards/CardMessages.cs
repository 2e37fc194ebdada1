using FrontEnd.Documents.Reading;
using FrontEnd.Fields;
using static FrontEnd.Findings.Finding;

namespace FrontEnd.Documents.Cards;

/// <summary>All wording about cards that are shown or made, and about points that values are fitted to.</summary>
internal static class CardMessages
{
    public const string CardUnknown = "FE1140";
    public const string CellUnreadable = "FE1141";
    public const string PointsUnfit = "FE1142";
    public const string UnitUnclear = "FE1143";
    public const string PhaseUpsideDown = "FE1144";
    public const string FitBeyondPoints = "FE1145";
    public const string FitPoor = "FE1146";
    public const string CardFileName = "FE1147";
    public const string ColumnMissing = "FE1148";
    public const string FitOutside = "FE1149";
    public const string UnitForeign = "FE1180";
    public const string ContactUnseen = "FE1181";
    public const string LeakUnseen = "FE1182";

    private const string Shape = "a point is a line of the table, its columns separated by commas, semicolons, tabs or blanks";

    public static Finding NoCard(string word, string? nearest) =>
        Error(CardUnknown, "which", $"there is neither a kind of cards nor a card `{word}`", nearest is null ? null : $"the nearest is `{nearest}`",
            "`frontend cards` lists them all; a card of yours is named by its file, which ends in .toml");

    public static Finding NoKind(string word, string? nearest) =>
        Error(CardUnknown, "", $"there is no kind of cards `{word}`", nearest is null ? null : $"the nearest is `{nearest}`",
            $"use one of {string.Join(", ", CardPlace.Classes.Select(CardPlace.Word))}");

    /// <summary>A file that does not say which kind of card it is.</summary>
    internal static Finding NoClass(string path, string? word) =>
        Error(CardUnknown, "class", word is null ? "the file is no part card: it has no `class`" : $"`{word}` is no kind of cards", null,
            $"write class = \"…\" with one of {string.Join(", ", CardPlace.Classes.Select(CardPlace.Word))}") with { File = path };

    public static Finding NotToml(string path) =>
        Error(CardFileName, "", "the file of a card ends in .toml", "a design tells by it whether it names a file or a card that comes with the program",
            $"write {Path.ChangeExtension(path, ".toml")}") with { File = path };

    internal static Finding NoColumn(string path, int line, string name, IEnumerable<string> wanted) =>
        Error(ColumnMissing, "", $"there is no column of the {name}", $"the first line names the columns; wanted are {string.Join(", ", wanted)}",
            $"name it `{name}`, its unit in brackets behind it") with { File = path, Line = line };

    internal static Finding Cells(string path, int line, int cells, int wanted) =>
        Error(CellUnreadable, "", $"the line has {cells} columns where the first has {wanted}", Shape, "give each point all its columns; numbers with a decimal comma need semicolons between the columns") with { File = path, Line = line };

    internal static Finding Cell(string path, int line, string name, string text, string why) =>
        Error(CellUnreadable, "", $"the {name} `{text}` {why}", Shape, "write a number above 0 in the column's unit, or a number with its unit") with { File = path, Line = line };

    internal static Finding NoNumber(string path, int line, string name, string text) =>
        Error(CellUnreadable, "", $"the {name} `{text}` is not a number", Shape, "write a number in the column's unit, or a number with its unit") with { File = path, Line = line };

    internal static Finding Few(string path, int points, int least) =>
        Error(PointsUnfit, "", $"{(points == 1 ? "1 point is" : $"{points} points are")} too few: {least} are needed, at two frequencies or more", "as many values as points can be met exactly, and nothing would be left to tell whether they fit",
            "read off more points, several in each decade") with { File = path };

    internal static Finding Many(string path, int most) =>
        Error(PointsUnfit, "", $"there are more than {most} points", "a plot has some tens of points that can be told apart", "keep some in each decade") with { File = path };

    internal static Finding NoUnit(string path, IEnumerable<string> units) =>
        Error(UnitUnclear, "", "the densities have no unit, and their size does not tell it", "a power of ten decides whether the part is any use",
            $"write the unit into the first line: {string.Join(" or ", units.Select(unit => $"`density ({unit})`"))}") with { File = path };

    internal static Finding ForeignUnit(string path, int line, PointColumn column, string unit) =>
        Error(UnitForeign, "", $"`{unit}` is no unit of the {column.Name}", "numbers in another unit would be taken for what they are not",
            $"write the unit of the numbers behind the column's name, such as `{column.Kind.SiUnit}`; leave out what is no unit")
            with { File = path, Line = line };

    internal static Finding PhaseUnit(string path) =>
        Error(UnitUnclear, "", "the phases have no unit, and are as small as radians are", "all are within ±π/2; in degrees that is an electrode that is hardly capacitive at all",
            "write the unit into the first line: `phase (rad)` or `phase (deg)`") with { File = path };

    internal static Finding NoImpedance(string path) =>
        Error(CellUnreadable, "", "a point has no impedance: its real and its imaginary part are 0", Shape, "leave the point out") with { File = path };

    /// <summary>A spectrum of a coil.</summary>
    /// <param name="column">Which column says so: that of the phase or of the imaginary part.</param>
    internal static Finding Inductive(string path, string column) =>
        Error(PhaseUpsideDown, "", $"every {column} is above 0, which is that of a coil", "an electrode is resistive and capacitive: its phase lies between 0 and −90°",
            $"turn the sign round, or name the column `-{column}` if the meter shows it turned round") with { File = path };

    /// <summary>A value that no card may have: a fit of points that do not hold it.</summary>
    internal static Finding Outside(FieldDescription field, string key, string value) =>
        Error(FitOutside, key, $"the points give {key} {value}, which is outside its range, {FieldMessages.RangeWords(field)}", "the points do not reach where the value shows, or their unit is another one",
            "check the units of the columns, and take points further down and up in frequency");

    internal static Finding Beyond(string key, string what) =>
        Warning(FitBeyondPoints, key, what, "a value that was not measured is as good as the model", "take points further down or up in frequency, or change the value by hand");

    /// <summary>Points that a resistance alone describes.</summary>
    internal static Finding NoContact(string key, string alone, string left) =>
        Warning(ContactUnseen, key, $"no contact is seen: a resistance alone, {alone}, leaves {left} rms, which is not clearly more", "resistance and capacitance of the contact are then what the noise of the points makes them",
            "take points further down or up in frequency, where the phase turns");

    /// <summary>An electrode that is a capacitor as far as the points go.</summary>
    internal static Finding NoLeak(string key, string most, string left) =>
        Warning(LeakUnseen, key, $"no resistance in parallel is seen; {most}, the largest that a card may have, stands for it", $"the points are those of a capacitor, from which the card then deviates by up to {left}",
            "take points further down in frequency, or leave it");

    internal static Finding Poor(string key, string what, string why) =>
        Warning(FitPoor, key, what, why, "look at the points that deviate most, and leave out what is mains or a peak");
}
