using System.Text.RegularExpressions;
using FrontEnd.Fields;
using FrontEnd.Findings;
using FrontEnd.Quantities;
using FrontEnd.Tests.Reference;
using FrontEnd.Text;
using Xunit;

namespace FrontEnd.Tests.Architecture;

/// <summary>A new quantity is one struct and one row in Text/Kinds.cs: nothing else knows what quantities there are.</summary>
public class QuantityTests
{
    private static readonly Type[] Structs =
        [.. typeof(IQuantity).Assembly.GetTypes().Where(type => type.IsValueType && typeof(IQuantity).IsAssignableFrom(type))];

    [Fact]
    public void Quantities_EachStruct_HasOneRowInItsUnit()
    {
        Assert.Equal(Structs.Select(type => type.Name).Order(StringComparer.Ordinal), QuantityKind.All.Select(kind => kind.Name).Order(StringComparer.Ordinal));
        foreach (QuantityKind kind in QuantityKind.All)
        {
            // The unit that is read without a factor is the one that the struct holds, whatever is printed: K beside °C, a ratio's 1 beside ×.
            string unit = kind.SiUnit is "1" ? "×" : kind.SiUnit;
            Assert.True(QuantityText.TryParse(kind, $"3 {unit}", out IQuantity? value, out ParseProblem? problem), $"{kind}: {problem?.Message}");
            Assert.Equal(3, value!.SiValue);
        }
    }

    [Fact]
    public void Quantities_AFieldOfEachKind_IsDescribedWrittenAndReadAgain()
    {
        foreach (QuantityKind kind in QuantityKind.All)
        {
            Field<string> field = new()
            {
                Key = "key", JsonKey = "key", Kind = FieldKind.Quantity, Quantity = kind, Meaning = "", DefaultText = "", DefaultSource = "", Get = _ => null, Set = (owner, _) => owner,
            };
            object value = field.FromSi(2.5);
            Assert.Equal(kind.Words, FieldKinds.Noun(field));
            Assert.True(FieldText.TryParse(field, FieldText.Format(field, value), out object? again, out Finding? finding), $"{kind}: {finding?.Message}");
            Assert.Equal(value, again);
            Assert.True(FieldText.TryParse(field, FieldKinds.Example(field).Trim('"'), out _, out finding), $"{kind}: {finding?.Message}");
        }
    }

    /// <summary>Files that use many quantities name up to a little over half of them; a list of all is a second table.</summary>
    [Fact]
    public void Quantities_NoOtherFileAndNoEnum_ListsThem()
    {
        HashSet<string> names = [.. Structs.Select(type => type.Name)];
        Assert.All(typeof(IQuantity).Assembly.GetTypes().Where(type => type.IsEnum), type => Assert.True(Enum.GetNames(type).Count(names.Contains) < 3, type.FullName));
        foreach (string path in Directory.EnumerateFiles(Path.Combine(ReferenceTable.Root, "src"), "*.cs", SearchOption.AllDirectories).Where(path => !path.Contains(Path.Combine("obj", ""), StringComparison.Ordinal)))
        {
            string text = File.ReadAllText(path);
            int named = Structs.Count(type => Regex.IsMatch(text, $@"\b{type.Name}(?=[.>)])", RegexOptions.None, TimeSpan.FromSeconds(1)));
            bool table = path.EndsWith(Path.Combine("Text", "Kinds.cs"), StringComparison.Ordinal);
            Assert.True(table || named <= 2 * Structs.Length / 3, $"{path} names {named} of {Structs.Length} quantities");
        }
    }
}
