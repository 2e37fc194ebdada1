using FrontEnd.Designs;
using FrontEnd.Identity;

namespace FrontEnd.Results;

/// <summary>What must be said wherever a design is judged: on screens, in the command's output and on sheets.</summary>
internal static class Cautions
{
    /// <summary>Of sheets of problems, whose numbers are no design's.</summary>
    public const string Exercise =
        "These are exercises in calculation, not designs to be built or worn. The resistors, currents and supplies in them are numbers given for the exercise; what a device on a person needs is another matter, "
        + "and nothing here says that a person may be connected to it.";

    /// <summary>What the designs themselves say of their own danger, each sentence once; none for designs that say nothing.</summary>
    public static IReadOnlyList<string> Own(params IEnumerable<Design> designs) =>
        [.. designs.Select(design => design.Caution).Where(caution => caution.Length > 0).Distinct(StringComparer.Ordinal)];

    /// <summary>What is stamped on every page about a design that fails what protects the wearer.</summary>
    public const string Stamp = "not to be worn";

    /// <summary>The judged figures that protect the wearer and are beyond their limit, worst first; none where the design may carry no
    /// <see cref="Stamp"/>.</summary>
    public static IReadOnlyList<Result> AgainstWearing(Assessment assessment) =>
        [.. assessment.Judged.Where(result => result.Verdict.Kind == VerdictKind.Fail && ResultIds.Safety.All.Has(result.Id))];

    /// <summary>The one line that a file carries which travels without the sheet, as a list of parts, a netlist or a drawing: stamp, what
    /// the design says of itself, and what is true of every design.</summary>
    /// <remarks>It is one cell of a table, see <see cref="InOneCell"/>.</remarks>
    public static string OfFile(Assessment assessment) => InOneCell(OfPicture(assessment));

    /// <summary>The same as sentences, for a picture.</summary>
    public static string OfPicture(Assessment assessment)
    {
        string own = assessment.Design.Caution.Trim().TrimEnd('.');
        IEnumerable<string> sentences =
        [
            .. AgainstWearing(assessment) is [var worst, ..] ? (string[])[$"{Stamp.ToUpperInvariant()}: {worst.Name} is above its limit."] : [],
            .. own.Length > 0 ? (string[])[$"Caution: {own}."] : [],
            All[0], All[1],
        ];
        return string.Join(' ', sentences);
    }

    /// <summary>A text that is one cell of a table, quoted or not: no comma, quotation mark or line end is in it.</summary>
    public static string InOneCell(string line) =>
        string.Create(line.Length, line, static (letters, text) =>
        {
            for (int i = 0; i < text.Length; i++)
            {
                letters[i] = text[i] == ',' ? ';' : text[i] is '"' ? '\'' : char.IsControl(text[i]) ? ' ' : text[i];
            }
        });

    /// <summary>The sentences, in their order; each stands for itself.</summary>
    public static readonly IReadOnlyList<string> All =
    [
        "Not a medical device. Design aid only. Local electrical and medical-device rules and a licensed professional decide. Body-connected equipment must be checked by a qualified person.",
        "Battery only; never worn while charging; no wire to a mains-powered computer, scope or charger; a laptop runs on its battery. Prefer radio; a USB isolator is one barrier, not a licence: its leakage and its medical rating matter.",
        "No recording during thunderstorms or near electrosurgery; nothing here withstands a defibrillator.",
        "Touch-proof lead connectors (21 CFR 898.12). Lithium cells with a protection circuit and the right charger.",
        "No reading is a diagnosis. Not on others without their consent; not on people with implants or epilepsy concerns without a clinician. Do not abrade skin; clean the electrodes.",
        "The limits are quoted second-hand, the dc ones from memory; the standard was not read. Buy IEC 60601-1 before any conformity is claimed. Any health claim makes it a medical device in law.",
        "Before anyone wears it: measure the dc from every electrode to common and to every other, supply at its highest, the driven ground forced to each rail.",
    ];
}
