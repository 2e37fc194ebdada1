using FrontEnd.Catalogue;
using FrontEnd.Designs;
using FrontEnd.Documents.Reading;
using FrontEnd.Fields;
using Xunit;

namespace FrontEnd.Documents.Tests;

/// <summary>Two changes to one file.</summary>
public class MergingTests
{
    private const string Text = "name = \"before\"  # named\n\n[amplifier]\ngain = 5  # five\n\n[input]\nseries-resistor = \"10 kΩ\"\n\n[[stages]]\nkind = \"gain\"\nname = \"second\"\n";

    private static readonly DesignDocument Before = DesignDocument.Parse(Text, DocumentFormat.Toml);

    private static DesignDocument With(params (string Key, string Value)[] changes) => changes.Aggregate(Before, (document, change) =>
    {
        EditResult edit = document.Set(change.Key, change.Value);
        Assert.Null(edit.Finding);
        return edit.Document;
    });

    [Fact]
    public void Merge_OfDifferentKeys_HasBoth_AndTheirComments()
    {
        DesignDocument theirs = With(("amplifier.gain", "7")).WithText(With(("amplifier.gain", "7")).Text.Replace("# five", "# seven now", StringComparison.Ordinal));
        DesignDocument mine = With(("input.series-resistor", "68 kΩ"), ("converter.rate", "500 Hz"));
        Merging merging = Merging.Of(Before, theirs, mine);

        Assert.False(merging.Collides);
        Assert.Equal(["amplifier.gain", "converter.rate", "input.series-resistor"], merging.Rows.Select(row => row.Key).Order(StringComparer.Ordinal));
        Assert.Equal((7, 68e3, 500), (merging.Merged!.Design.Amplifier.Gain, merging.Merged.Design.Input.SeriesResistor.Ohms, merging.Merged.Design.Converter.Rate.Hertz));
        Assert.Contains("gain = 7  # seven now", merging.Merged.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void Merge_OfOneKey_Collides_ButNotWhereBothSayTheSame()
    {
        Merging merging = Merging.Of(Before, With(("amplifier.gain", "7")), With(("amplifier.gain", "9")));
        Assert.True(merging.Collides);
        Assert.Null(merging.Merged);
        Assert.Equal(new MergeRow("amplifier.gain", "5", "7", "9"), Assert.Single(merging.Rows));

        DesignDocument both = With(("amplifier.gain", "7"));
        Merging same = Merging.Of(Before, both, With(("amplifier.gain", "7")));
        Assert.Empty(same.Rows);
        Assert.Equal(both.Text, same.Merged!.Text);
    }

    [Fact]
    public void Merge_OfAListThatOneHasChanged_HasIt_AndOfOneThatBothHave_Not()
    {
        DesignList stages = DesignFields.Lists.First(list => list.Key == "stages");
        DesignDocument without = Edits.Remove(Before, stages, 0).Document;
        Assert.Empty(without.Design.Stages);
        Assert.Equal(7, Merging.Of(Before, With(("amplifier.gain", "7")), without).Merged!.Design.Amplifier.Gain);
        Assert.Empty(Merging.Of(Before, With(("amplifier.gain", "7")), without).Merged!.Design.Stages);
        Assert.Empty(Merging.Of(Before, without, With(("amplifier.gain", "7"))).Merged!.Design.Stages);

        string key = DesignFields.Of(Before.Design).First(field => field.Key.StartsWith("stages[1].", StringComparison.Ordinal) && field.Kind == FieldKind.Quantity && field.Range is not null).Key;
        Field<Design> field = DesignFields.Find(Before.Design, key)!;
        DesignDocument changed = With((key, FieldText.Format(field, field.FromSi(field.SiValue(Before.Design)!.Value * 2))));
        Assert.Null(Merging.Of(Before, without, changed).Merged);
        Assert.Null(Merging.Of(Before, changed, without).Merged);
    }

    [Fact]
    public void Merge_WithAFileThatHasErrors_IsNone()
    {
        DesignDocument broken = Before.WithText(Text.Replace("gain = 5", "gain = \"3,5\"", StringComparison.Ordinal));
        Merging merging = Merging.Of(Before, broken, With(("input.series-resistor", "68 kΩ")));
        Assert.Null(merging.Merged);
        Assert.Contains(merging.Rows, row => row is { Key: "amplifier.gain", Theirs: "3,5" });
    }

    /// <summary>Any two numbers of a real design, one changed by either: one file has both, and every other key is as it was.</summary>
    [Fact]
    public void Merge_OfAnyTwoKeys_HasBoth()
    {
        DesignDocument before = DesignDocument.Read(Path.Combine(Repository.Root, "designs", "dry-headband.toml"));
        Field<Design>[] fields = [.. DesignFields.Of(before.Design).Where(field => field.Kind == FieldKind.Quantity && field.SiValue(before.Design) is { } si && si != 0
            && (field.Range is not { } range || range.Contains(si * 0.9)))];
        DesignDocument? Changed(Field<Design> field) =>
            before.Set(field.Key, FieldText.Format(field, field.FromSi(field.SiValue(before.Design)!.Value * 0.9))) is { Finding: null, Document.HasErrors: false } edit ? edit.Document : null;
        int merged = 0;
        for (int i = 0; i + 1 < fields.Length; i += 3)
        {
            Field<Design> one = fields[i], other = fields[(i * 7 + 1) % fields.Length];
            if (one.Key == other.Key || Changed(one) is not { } theirs || Changed(other) is not { } mine)
            {
                continue;
            }

            DesignDocument both = Merging.Of(before, theirs, mine).Merged ?? throw new InvalidOperationException($"{one.Key} and {other.Key} do not merge.");
            merged++;
            Assert.Equal(one.SiValue(theirs.Design), one.SiValue(both.Design));
            Assert.Equal(other.SiValue(mine.Design), other.SiValue(both.Design));
        }

        Assert.True(merged > 10, $"{merged}");
    }
}
