using FrontEnd.Documents.Files;
using FrontEnd.Documents.Reading;
using FrontEnd.Fields;
using FrontEnd.Teaching.Problems;

namespace FrontEnd.Documents.Teaching;

/// <summary>A homework's file, TOML with the keys of <see cref="HomeworkFields"/>; checked like a design.</summary>
internal static class HomeworkPlanFile
{
    /// <summary>Null where a finding is an error.</summary>
    /// <param name="path">The homework's file.</param>
    /// <param name="own">Files of own templates that join those which the homework's file names; null for none.</param>
    public static (HomeworkPlan? Plan, IReadOnlyList<Finding> Findings) Read(string path, IReadOnlyList<string>? own = null)
    {
        string? text = TextFiles.Read(path, out Finding? finding);
        return text is null ? (null, [finding!]) : Parse(text, path, own);
    }

    /// <summary>The same of a text.</summary>
    public static (HomeworkPlan? Plan, IReadOnlyList<Finding> Findings) Parse(string text, string? file = null, IReadOnlyList<string>? own = null)
    {
        SourceText source = new(file, text);
        List<Finding> findings = [];
        TableNode root = TomlTree.Read(source, findings, WantedFile.Homework);
        if (findings.Count == 0 && OtherFiles.Of(file, root, WantedFile.Homework) is { } other)
        {
            return (null, [other]);
        }

        HomeworkPlan plan = new HomeworkPlanReader(source, findings).Read(root);
        List<Finding> ofOwn = [];
        plan = plan with { OwnTemplates = OwnTemplateFile.ReadAll(Places(plan, file).Concat(own ?? []).DistinctBy(Path.GetFullPath), ofOwn) };
        findings.AddRange(ofOwn);

        // Which templates there are is not known where own ones cannot be read; what rests on it is not told again.
        bool isKnown = !ofOwn.Exists(finding => finding.Severity == Severity.Error) && (plan.Own.Count > 0 || root.Find(HomeworkFields.OwnKey) is null);
        foreach (Finding finding in isKnown ? plan.Check() : [])
        {
            findings.Add(Find(root, finding.Field) is { } entry ? source.Placed(finding, entry.Value.Span.Start) : finding with { File = file });
        }

        IReadOnlyList<Finding> sorted = [.. findings.OrderBy(finding => finding.Line ?? int.MaxValue)];
        return (findings.Exists(finding => finding.Severity == Severity.Error) ? null : plan, sorted);
    }

    /// <summary>Where the files of own templates lie that a homework's file names: beside it, unless they say otherwise.</summary>
    public static IEnumerable<string> Places(HomeworkPlan plan, string? file) => plan.Own.Select(own => Path.Combine(Path.GetDirectoryName(file) ?? "", own));

    private static Entry? Find(TableNode root, string field)
    {
        Entry? entry = null;
        Node node = root;
        foreach (string key in field.Split('.'))
        {
            entry = (node as TableNode)?.Find(key);
            if (entry is null)
            {
                return null;
            }

            node = entry.Value;
        }

        return entry;
    }
}

/// <summary>Takes a homework's file apart.</summary>
internal sealed class HomeworkPlanReader(SourceText source, List<Finding> findings)
{
    private static readonly string[] Tables = [HomeworkFields.PointsKey, HomeworkFields.RubricKey];

    public HomeworkPlan Read(TableNode root)
    {
        HomeworkPlan plan = Fields(root, "", HomeworkFields.All, new HomeworkPlan(), Tables);
        if (Table(root, HomeworkFields.PointsKey) is { } points)
        {
            plan = plan with { Points = Points(points) };
        }

        return Table(root, HomeworkFields.RubricKey) is { } rubric ? plan with { Rubric = RubricOf(rubric) } : plan;
    }

    /// <summary>What the fields of a table say; other keys than theirs and those of <paramref name="others"/> are told.</summary>
    private T Fields<T>(TableNode table, string path, IReadOnlyList<Field<T>> fields, T owner, IReadOnlyCollection<string> others)
    {
        string[] keys = [.. fields.Select(field => field.Key), .. others];
        SlipRemedy.Apply(table, path, fields, findings);
        foreach (Entry entry in table.Entries.Where(entry => !others.Contains(entry.Key, StringComparer.Ordinal)))
        {
            string key = path + entry.Key;
            if (fields.FirstOrDefault(field => string.Equals(field.Key, entry.Key, StringComparison.Ordinal)) is not { } field)
            {
                findings.Add(source.Placed(ReadingMessages.Unknown(key, Nearest.Of(entry.Key, keys), keys, entry.Value is TableNode), entry.KeySpan.Start));
            }
            else if (NodeValue.Read(field, key, entry.Value, DocumentFormat.Toml, out object? value, out Node place) is { } wrong)
            {
                findings.Add(source.Placed(wrong, place.Span.Start));
            }
            else
            {
                owner = field.Set(owner, value);
            }
        }

        return owner;
    }

    private TableNode? Table(TableNode root, string key)
    {
        if (root.Find(key) is { Value: not TableNode } entry)
        {
            findings.Add(source.Placed(ReadingMessages.NoTable(key, ReadingMessages.Noun(entry.Value)), entry.Value.Span.Start));
        }

        return root.Find(key)?.Value as TableNode;
    }

    private Dictionary<string, int> Points(TableNode table)
    {
        KeyReader keys = new(table, HomeworkFields.PointsKey, source, findings);
        Dictionary<string, int> points = new(StringComparer.Ordinal);
        foreach (Entry entry in table.Entries)
        {
            if (keys.Number(entry.Key, 1, HomeworkFields.MostPoints, isWhole: true, "4") is { } number)
            {
                points[entry.Key] = (int)number;
            }
        }

        return points;
    }

    /// <summary>The shares of all questions, and of those that have a table of their own, which begin with these.</summary>
    private Rubric RubricOf(TableNode table)
    {
        Entry[] own = [.. table.Entries.Where(entry => entry.Value is TableNode)];
        QuestionRubric all = Fields(table, $"{HomeworkFields.RubricKey}.", HomeworkFields.Rubric, new QuestionRubric(), [.. own.Select(entry => entry.Key)]);
        return new Rubric
        {
            All = all,
            Questions = own.ToDictionary(
                entry => entry.Key,
                entry => Fields((TableNode)entry.Value, $"{HomeworkFields.RubricKey}.{entry.Key}.", HomeworkFields.Rubric, all, []), StringComparer.Ordinal)
                .GroupBy(one => one.Key, StringComparer.OrdinalIgnoreCase).ToDictionary(group => group.Key, group => group.First().Value, StringComparer.OrdinalIgnoreCase),
        };
    }
}
