using FrontEnd.Quantities;
using FrontEnd.Teaching;
using Xunit;

namespace FrontEnd.Tests.Teaching;

/// <summary>Sites against worked-out values; the fractions of the arcs are those of the public article roth-10-20.</summary>
public class SitesTests
{
    // A head of 36.0, 37.5 and 56.0 cm, worked out by hand from the fractions.
    private static readonly HeadSize Head = new(Length.FromCentimetres(36), Length.FromCentimetres(37.5), Length.FromCentimetres(56));

    [Theory]
    [InlineData("Fpz", 3.60)]
    [InlineData("Fz", 10.80)]
    [InlineData("Cz", 18.00)]
    [InlineData("Pz", 25.20)]
    [InlineData("Oz", 32.40)]
    [InlineData("T3", 3.75)]
    [InlineData("C3", 11.25)]
    [InlineData("C4", 26.25)]
    [InlineData("T4", 33.75)]
    [InlineData("Fp1", 2.80)]
    [InlineData("F7", 8.40)]
    [InlineData("T5", 19.60)]
    [InlineData("O1", 25.20)]
    public void AlongArc_WorkedHead_IsTheHandsValue(string site, double centimetres) =>
        Assert.Equal(centimetres, Sites.AlongArc(Sites.Find(site)!, Head)!.Value.Centimetres, 9);

    [Fact]
    public void AlongRing_T3_IsAQuarter() => Assert.Equal(14.0, Sites.AlongRing(Sites.Find("T3")!, Head)!.Value.Centimetres, 9);

    /// <summary>Inclination and azimuth on the sphere and the flat map, worked out apart from this program; three decimals printed.</summary>
    [Theory]
    [InlineData("Fp1", 72, 108, -0.247, 0.761)]
    [InlineData("Fp2", 72, 72, 0.247, 0.761)]
    [InlineData("F7", 72, 144, -0.647, 0.470)]
    [InlineData("F3", 51.0, 123.9, -0.316, 0.471)]
    [InlineData("Fz", 36, 90, 0, 0.4)]
    [InlineData("F4", 51.0, 56.1, 0.316, 0.471)]
    [InlineData("F8", 72, 36, 0.647, 0.470)]
    [InlineData("T3", 72, 180, -0.8, 0)]
    [InlineData("T4", 72, 0, 0.8, 0)]
    [InlineData("C3", 36, 180, -0.4, 0)]
    [InlineData("Cz", 0, 0, 0, 0)]
    [InlineData("C4", 36, 0, 0.4, 0)]
    [InlineData("T5", 72, 216, -0.647, -0.470)]
    [InlineData("P3", 51.0, 236.1, -0.316, -0.471)]
    [InlineData("Pz", 36, 270, 0, -0.4)]
    [InlineData("P4", 51.0, 303.9, 0.316, -0.471)]
    [InlineData("T6", 72, 324, 0.647, -0.470)]
    [InlineData("O1", 72, 252, -0.247, -0.761)]
    [InlineData("O2", 72, 288, 0.247, -0.761)]
    public void OnSphere_Table_IsReproduced(string site, double inclination, double azimuth, double x, double y)
    {
        SpherePoint point = Sites.OnSphere(Sites.Find(site)!);
        Assert.Equal(inclination, point.Inclination, 0.051);
        Assert.Equal(azimuth, point.Azimuth, 0.051);
        Assert.Equal(x, point.Flat.X, 0.00051);
        Assert.Equal(y, point.Flat.Y, 0.00051);
    }

    [Fact]
    public void TheTwoRulesForF3_AreEightDegreesApart()
    {
        // 8.3°, about 1.3 cm on a head of 56 cm; worked out apart from this program.
        double degrees = Sites.OnSphere(Sites.Find("F3")!).AngleTo(Sites.OnSphere(Sites.Find("F3")!, SiteRule.Column)) * 180 / Math.PI;
        Assert.Equal(8.3, degrees, 0.051);
    }

    [Fact]
    public void Names_OldAndNew_AreTheSameSites()
    {
        foreach ((string old, string alias) in new[] { ("T3", "T7"), ("T4", "T8"), ("T5", "P7"), ("T6", "P8") })
        {
            Assert.Same(Sites.Find(old), Sites.Find(alias.ToLowerInvariant()));
        }

        Assert.Null(Sites.Find("T9"));
        Assert.Null(Sites.Find(""));
    }

    [Fact]
    public void Distance_IsAMetric_AndLeftMirrorsRight()
    {
        foreach (Site a in Sites.All)
        {
            foreach (Site b in Sites.All)
            {
                double there = Sites.Distance(a, b, Head).Metres;
                Assert.Equal(there, Sites.Distance(b, a, Head).Metres, 12);
                Assert.Equal(a == b, there < 1e-9);
                Assert.All(Sites.All, c => Assert.True(there <= Sites.Distance(a, c, Head).Metres + Sites.Distance(c, b, Head).Metres + 1e-12));
            }
        }

        Assert.Equal(Sites.Distance(Sites.Find("F3")!, Sites.Find("C3")!, Head).Metres, Sites.Distance(Sites.Find("F4")!, Sites.Find("C4")!, Head).Metres, 12);
    }

    [Fact]
    public void Distance_AlongTheMidline_IsTheArcsFifth()
    {
        // Fz to Cz is 36° of a great circle whose ring at 72° measures U: U/(2π·sin 72°)·0.2π.
        Assert.Equal(56 / (2 * Math.PI * Math.Sin(0.4 * Math.PI)) * 0.2 * Math.PI, Sites.Distance(Sites.Find("Fz")!, Sites.Find("Cz")!, Head).Centimetres, 9);
    }

    [Fact]
    public void Pairs_Chain_ComparesNeighbours()
    {
        Assert.Equal(["Fp1-F3", "F3-C3", "Fz-Cz"], Sites.Pairs("Fp1 F3, c3; Fz Cz", out string? none).Select(pair => $"{pair.First.Name}-{pair.Second.Name}"));
        Assert.Null(none);
        Assert.Empty(Sites.Pairs("Fp1 X9", out string? unknown));
        Assert.Equal("X9", unknown);
        Assert.Equal(18, Sites.Pairs("chains", out _).Count);
        Assert.Equal(12, Sites.Pairs("rows", out _).Count);
    }
}
