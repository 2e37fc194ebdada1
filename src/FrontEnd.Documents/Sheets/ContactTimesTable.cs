using FrontEnd.Documents.Reading;
using FrontEnd.Identity;

namespace FrontEnd.Documents.Sheets;

/// <summary>Contact, noise and mains at the times after the electrodes were put on.</summary>
internal static class ContactTimesTable
{
    public const string Title = "contact over time";

    private const string Key = "over-time";

    /// <summary>Null for a design of which no electrode says how its contact changes.</summary>
    public static BudgetTable? Of(Assessment assessment, HashSet<ResultId> taken)
    {
        List<Row> rows = [];
        foreach (Duration time in assessment.Design.ContactTimes)
        {
            string words = Fields.ContactOverTime.Words(time);
            ContactTimeIds ids = ResultIds.Contact.After(words);
            ResultId[] cells = [ids.Resistance, ids.Excess, ids.Noise, ids.BoardShare, ids.MainsRecorded];
            if (assessment.Find(ids.Noise) is null)
            {
                return null;
            }

            taken.UnionWith(cells);
            rows.Add(new Row([ResultIds.Contact.Times.Rest(ids.Stem), .. cells.Select(id => assessment.Find(id) is { } result ? Wording.Value(result) : "")]));
        }

        return rows.Count == 0 ? null : new BudgetTable(Title, ResultIds.Contact.Times + "*",
            [new("after", true), new("contact"), new("excess"), new("noise"), new("board"), new("mains")], rows)
        {
            Notes =
            [
                "Every electrode's contact at that time after it was put on; mismatch and offset are unchanged.",
                "Contact and excess: the active electrode's resistance, and its excess noise in the band. Noise: the total, and the board's share without the electrodes' excess. Mains: as recorded in the band.",
            ],
        };
    }

    /// <summary>Where the factors come from, the electrodes that have the same together.</summary>
    public static IReadOnlyList<ContactSource> Sources(Sheet sheet) =>
    [
        .. sheet.Document.Origins.Where(origin => origin.Kind != OriginKind.Default && origin.Key.EndsWith($".{Key}", StringComparison.Ordinal) && origin.Text.Length > 0)
            .Where(origin => sheet.Assessment.Find(ResultIds.Contact.After(Fields.ContactOverTime.Words(FirstTime(sheet))).Noise) is not null)
            .GroupBy(origin => origin.Source, StringComparer.Ordinal)
            .Select(same => new ContactSource([.. same.Select(origin => origin.Key[..^(Key.Length + 1)])], same.Key)),
    ];

    private static Duration FirstTime(Sheet sheet) => sheet.Design.ContactTimes is [var first, ..] ? first : default;

    /// <summary>The table with what is known of its factors below it.</summary>
    public static BudgetTable WithSources(BudgetTable table, Sheet sheet) => table with
    {
        Notes = [.. table.Notes, .. Sources(sheet).Select(one => $"Factors of {string.Join(", ", one.Electrodes)}: {one.Source}.")],
    };
}

/// <summary>Where the factors of some electrodes' contact come from.</summary>
/// <param name="Electrodes">Their tables in the design.</param>
internal sealed record ContactSource(IReadOnlyList<string> Electrodes, string Source);
