using FrontEnd.Catalogue;
using FrontEnd.Designs;
using FrontEnd.Fields;
using FrontEnd.Findings;
using Xunit;

namespace FrontEnd.Documents.Tests;

/// <summary>The worked designs as TOML hold the same values as the plain-number form that an independent program uses.</summary>
public sealed class WorkedDesignTests
{
    // Not in the plain-number form, or words only.
    private static readonly string[] Apart = ["name", "purpose", "caution", "channels", "montage.reference-buffered",

        // The plain form says nothing of the supply; the designs state one that their converters fit.
        "supply.lowest", "supply.highest"];

    [Theory]
    [InlineData("dry-headband")]
    [InlineData("gel-cap")]
    [InlineData("saline-sponge")]
    public void Toml_AndPlainForm_HoldTheSameValues(string name)
    {
        DesignDocument toml = DesignDocument.Read(Path.Combine(Repository.Designs, name + ".toml"));
        DesignDocument plain = DesignDocument.Read(Path.Combine(Repository.Worked, name + ".json"));
        Assert.Empty(toml.Findings);
        Assert.DoesNotContain(plain.Findings, finding => finding.Severity == Severity.Error);

        IReadOnlyList<Field<Design>> fields = DesignFields.Of(toml.Design);
        Assert.Equal(fields.Select(field => field.Key), DesignFields.Of(plain.Design).Select(field => field.Key), StringComparer.Ordinal);
        foreach (Field<Design> field in fields.Where(field => !Apart.Contains(field.Key, StringComparer.Ordinal)))
        {
            if (field.SiValue(plain.Design) is { } expected)
            {
                // A decimal text with a prefix may differ from the bare number in the last bit.
                double actual = field.SiValue(toml.Design) ?? double.NaN;
                Assert.True(Math.Abs(actual - expected) <= 4e-16 * Math.Abs(expected), $"{field.Key}: {actual:R} in TOML, {expected:R} in the plain form");
            }
            else
            {
                Assert.Equal(FieldText.Format(field, field.Get(plain.Design)), FieldText.Format(field, field.Get(toml.Design)));
            }
        }
    }
}
