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
        Assert.Equal(centimetres, Sites.Along(Sites.Find(site)!, Sites.Find(site)!.Arc, Head)!.Value.Centimetres, 9);

    [Fact]
    public void AlongRing_T3_IsAQuarter() => Assert.Equal(14.0, Sites.Along(Sites.Find("T3")!, SiteArc.Ring, Head)!.Value.Centimetres, 9);

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

        Assert.Null(Sites.Find("T11"));
        Assert.Null(Sites.Find(""));
    }

    [Fact]
    public void Distance_IsAMetric_AndLeftMirrorsRight()
    {
        Site[] sites = [.. Sites.All.Where(site => site.Arc != SiteArc.Ear && (site.Set == SiteSet.TenTwenty || site.Name.Contains('F', StringComparison.Ordinal)))];
        foreach (Site a in sites)
        {
            foreach (Site b in sites)
            {
                double there = Over(a, b);
                Assert.Equal(there, Over(b, a), 12);
                Assert.Equal(a == b, there < 1e-9);
                Assert.All(sites, c => Assert.True(there <= Over(a, c) + Over(c, b) + 1e-12));

                // A straight line is never longer than the way over the skin, and for near sites hardly shorter.
                double straight = Sites.Straight(a, b, Head)!.Value.Metres;
                Assert.InRange(straight, there * 2 / Math.PI, there);
            }
        }
    }

    /// <summary>Odd numbers stand left and even ones right, each the mirror of the next number; z on the midline.</summary>
    [Fact]
    public void OnSphere_AllSites_OddNumbersMirrorEvenOnes()
    {
        foreach (Site site in Sites.All)
        {
            SpherePoint point = Sites.OnSphere(site);
            Assert.Equal(1, (point.X * point.X) + (point.Y * point.Y) + (point.Z * point.Z), 12);
            if (site.Name[^1] == 'z')
            {
                Assert.Equal(0, point.X, 12);
                continue;
            }

            int number = int.Parse(new string([.. site.Name.Where(char.IsAsciiDigit)]), System.Globalization.CultureInfo.InvariantCulture);
            Assert.Equal(number % 2 == 1, point.X < 0);
            if (number % 2 == 1)
            {
                SpherePoint mirror = Sites.OnSphere(Sites.Find(site.Name.Replace($"{number}", $"{number + 1}", StringComparison.Ordinal))!);
                Assert.Equal(-point.X, mirror.X, 12);
                Assert.Equal(point.Y, mirror.Y, 12);
            }
        }
    }

    /// <summary>The rows by their names: 21 sites of the 10-20 system without the ears, 73 with the 10-10 rows, farther from the midline with every number, farther back with every row.</summary>
    [Fact]
    public void Rows_OfTheTenTenSystem_AreInOrder()
    {
        string[] rows =
        [
            "Nz", "Fp1 Fpz Fp2", "AF7 AF3 AFz AF4 AF8", "F9 F7 F5 F3 F1 Fz F2 F4 F6 F8 F10", "FT9 FT7 FC5 FC3 FC1 FCz FC2 FC4 FC6 FT8 FT10", "T9 T7 C5 C3 C1 Cz C2 C4 C6 T8 T10",
            "TP9 TP7 CP5 CP3 CP1 CPz CP2 CP4 CP6 TP8 TP10", "P9 P7 P5 P3 P1 Pz P2 P4 P6 P8 P10", "PO7 PO3 POz PO4 PO8", "O1 Oz O2", "Iz",
        ];
        Assert.Equal(rows.SelectMany(row => row.Split(' ')), Sites.All.Where(site => site.Arc != SiteArc.Ear).Select(site => site.Alias.Length > 0 ? site.Alias : site.Name));
        Assert.Equal(21, Sites.Of(SiteSet.TenTwenty).Count(site => site.Arc != SiteArc.Ear));
        Assert.Equal(73, Sites.Of(SiteSet.TenTen).Count(site => site.Arc != SiteArc.Ear));
        foreach (string[] row in rows.Select(row => row.Split(' ')))
        {
            double[] x = [.. row.Select(name => Sites.OnSphere(Sites.Find(name)!).X)];
            Assert.Equal(x.Order(), x);
        }

        double[] y = [.. rows.Select(row => Sites.OnSphere(Sites.Find(row.Split(' ').First(name => name[^1] == 'z'))!)).Select(point => point.Y)];
        Assert.Equal(y.OrderDescending(), y);
    }

    /// <summary>Quarters of the way: F1 is as far from Fz as F5 from F7, by plain chords of thirds of a known angle.</summary>
    [Fact]
    public void TenTen_QuartersOfARow_AreEqualSteps()
    {
        foreach ((string middle, string one, string three, string five, string end) in new[] { ("Fz", "F1", "F3", "F5", "F7"), ("FCz", "FC1", "FC3", "FC5", "FT7"), ("CPz", "CP2", "CP4", "CP6", "TP8"), ("Pz", "P2", "P4", "P6", "P8") })
        {
            double step = Over(Sites.Find(middle)!, Sites.Find(one)!);
            Assert.Equal(step, Over(Sites.Find(one)!, Sites.Find(three)!), 12);
            Assert.Equal(step, Over(Sites.Find(three)!, Sites.Find(five)!), 12);
            Assert.Equal(step, Over(Sites.Find(five)!, Sites.Find(end)!), 12);
            Assert.Equal(4 * step, Over(Sites.Find(middle)!, Sites.Find(end)!), 12);
        }
    }

    /// <summary>Worked by hand from the fractions: 7 tenths of the ring less 5 hundredths, 40 % of 37.5 cm, the ring's shorter way.</summary>
    [Theory]
    [InlineData("C3", "C4", SiteArc.Coronal, 15.0)]
    [InlineData("C3", "Cz", SiteArc.Coronal, 7.5)]
    [InlineData("Fz", "Oz", SiteArc.Sagittal, 21.6)]
    [InlineData("Nz", "Iz", SiteArc.Sagittal, 36.0)]
    [InlineData("Fp1", "Fp2", SiteArc.Ring, 5.6)]
    [InlineData("T3", "O1", SiteArc.Ring, 11.2)]
    [InlineData("Fpz", "T4", SiteArc.Ring, 14.0)]
    [InlineData("T9", "T3", SiteArc.Coronal, 3.75)]
    public void AlongSharedArc_WorkedHead_IsTheHandsValue(string first, string second, SiteArc arc, double centimetres)
    {
        (SiteArc shared, Length along) = Sites.AlongSharedArc(Sites.Find(first)!, Sites.Find(second)!, Head)!.Value;
        Assert.Equal(arc, shared);
        Assert.Equal(centimetres, along.Centimetres, 9);
    }

    [Fact]
    public void EarsAndOtherPairs_HaveNoDistanceThatNobodyCanMeasure()
    {
        Assert.Null(Sites.AlongSharedArc(Sites.Find("F3")!, Sites.Find("C3")!, Head));
        Assert.Null(Sites.Distance(Sites.Find("A1")!, Sites.Find("C3")!, Head));
        Assert.Null(Sites.Straight(Sites.Find("C3")!, Sites.Find("M2")!, Head));
    }

    [Fact]
    public void Distance_AlongTheMidline_IsTheArcsFifth()
    {
        // Fz to Cz is 36° of a great circle; straight it is the chord 2R·sin 18°. Half circles of 36 cm and 37.5 cm and a ring at 72° of 56 cm have the radii of which R is the mean.
        double radius = ((36 / Math.PI) + (37.5 / Math.PI) + (56 / (2 * Math.PI * Math.Sin(0.4 * Math.PI)))) / 3;
        Assert.Equal(radius * 0.2 * Math.PI, Sites.Distance(Sites.Find("Fz")!, Sites.Find("Cz")!, Head)!.Value.Centimetres, 9);
        Assert.Equal(2 * radius * Math.Sin(Math.PI / 10), Sites.Straight(Sites.Find("Fz")!, Sites.Find("Cz")!, Head)!.Value.Centimetres, 9);
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

    /// <summary>Every named montage compares sites that there are; those against a reference compare each of the other 18 or 19 once.</summary>
    [Theory]
    [InlineData("vertex", 18)]
    [InlineData("ears", 19)]
    [InlineData("mastoids", 19)]
    public void Pairs_AgainstAReference_ComparesEverySiteOnce(string montage, int count)
    {
        IReadOnlyList<(Site First, Site Second)> pairs = Sites.Pairs(montage, out string? unknown);
        Assert.Null(unknown);
        Assert.Equal(count, pairs.Count);
        Assert.Equal(count, pairs.Select(pair => pair.First).Distinct().Count());

        // Left against left, right against right.
        Assert.All(pairs.Where(pair => pair.Second.Arc == SiteArc.Ear && pair.First.Name[^1] != 'z'), pair => Assert.Equal(pair.First.Name[^1] % 2, pair.Second.Name[^1] % 2));
    }

    private static double Over(Site a, Site b) => Sites.Distance(a, b, Head)!.Value.Metres;
}
