using FrontEnd.Head;
using FrontEnd.Quantities;
using Xunit;

namespace FrontEnd.Tests.Head;

/// <summary>Sites against worked-out values; the fractions of the arcs are those of the public article roth-10-20.</summary>
public class SitesTests
{
    // A head of 36.0, 37.5 and 56.0 cm, worked out by hand from the fractions.
    private static readonly HeadSize Measures = new(Length.FromCentimetres(36), Length.FromCentimetres(37.5), Length.FromCentimetres(56));

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
        Assert.Equal(centimetres, Sites.Along(Sites.Find(site)!, Sites.Find(site)!.Arc, Measures)!.Value.Centimetres, 9);

    [Fact]
    public void AlongRing_T3_IsAQuarter() => Assert.Equal(14.0, Sites.Along(Sites.Find("T3")!, SiteArc.Ring, Measures)!.Value.Centimetres, 9);

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

    /// <summary>The rows by their names: 21 sites of the 10-20 system without the ears, 73 with the 10-10 rows.</summary>
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
        (SiteArc shared, Length along) = Sites.AlongSharedArc(Sites.Find(first)!, Sites.Find(second)!, Measures)!.Value;
        Assert.Equal(arc, shared);
        Assert.Equal(centimetres, along.Centimetres, 9);
    }

    [Fact]
    public void PairsOffTheArcs_ShareNone()
    {
        Assert.Null(Sites.AlongSharedArc(Sites.Find("F3")!, Sites.Find("C3")!, Measures));
        Assert.Null(Sites.AlongSharedArc(Sites.Find("A1")!, Sites.Find("T3")!, Measures));
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
}
