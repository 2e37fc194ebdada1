using System.Globalization;
using FrontEnd.Head;
using FrontEnd.Quantities;
using FrontEnd.Tests.Reference;
using FsCheck.Xunit;
using Xunit;

namespace FrontEnd.Tests.Head;

/// <summary>The sphere of three measures: figures of an independent program, and what holds on every head.</summary>
public class HeadSphereTests
{
    private static readonly HeadSphere Usual = Sphere(36, 37, 56);

    private static HeadSphere Sphere(double s, double k, double u) => HeadSphere.Of(Size(s, k, u))!;

    private static HeadSize Size(double s, double k, double u) => new(Length.FromCentimetres(s), Length.FromCentimetres(k), Length.FromCentimetres(u));

    /// <summary>A head as people have them, from three whole numbers.</summary>
    private static HeadSphere Drawn(int a, int b, int c) => Sphere(30 + (Math.Abs(a % 100) * 0.1), 30 + (Math.Abs(b % 100) * 0.1), 48 + (Math.Abs(c % 140) * 0.1));

    public static TheoryData<string> Cases => [.. File.ReadLines(Path.Combine(ReferenceTable.Folder, "head", "geometry.dat")).Where(line => !line.StartsWith('#'))];

    [Theory]
    [MemberData(nameof(Cases))]
    public void Figure_OfTheIndependentProgram_Agrees(string line)
    {
        string[] cells = line.Split(';');
        double[] size = [.. cells[1..4].Select(Number)];
        double[] expected = [.. cells[5].Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(Number)];
        HeadSphere? sphere = HeadSphere.Of(Size(size[0], size[1], size[2]));
        string[] what = cells[4].Split(' ');
        SpherePoint At(int word) => sphere!.Place(Sites.Find(what[word])!);
        double[]? actual = sphere is null ? null : what[0] switch
        {
            "radius" => [sphere.Radius.Centimetres],
            "ring" => [Degrees(sphere.FrontRing), Degrees(sphere.SideRing)],
            "phi" => [Degrees(At(1).Azimuth), Degrees(At(2).Azimuth)],
            "place" => [At(1).X, At(1).Y, At(1).Z],
            "straight" => [sphere.Straight(At(1), At(2)).Centimetres],
            "skin" => [sphere.OverTheSkin(At(1), At(2)).Centimetres],
            "rules" => [sphere.OverTheSkin(At(1), sphere.Place(Sites.Find(what[1])!, SiteRule.Column)).Centimetres],
            _ => throw new InvalidDataException(line),
        };
        if (what[0] is "refused")
        {
            Assert.Null(sphere);
            return;
        }

        Assert.Equal(expected.Length, actual!.Length);
        Assert.All(expected.Zip(actual), pair => Assert.True(Math.Abs(pair.First - pair.Second) <= Math.Max(1e-9, 1e-9 * Math.Abs(pair.First)), $"{line}: {pair.Second}"));
    }

    /// <summary>Closed form: with S = K the ring is a circle, sin a/a = U/(0.8·π·S) and R = 0.4·S/a.</summary>
    [Property]
    public void Radius_OfEqualArcs_IsTheClosedForm(int arc, int ring)
    {
        (double s, double u) = (30 + (Math.Abs(arc % 100) * 0.1), 48 + (Math.Abs(ring % 140) * 0.1));
        double a = Sphere(s, s, u).FrontRing;
        Assert.Equal(u / (0.8 * Math.PI * s), Math.Sin(a) / a, 1e-12);
        Assert.Equal(0.4 * s / a, Sphere(s, s, u).Radius.Centimetres, 1e-9);
    }

    /// <summary>Second way: the ring walked in 40,000 chords is as long as the tape says, and so are its tenths.</summary>
    [Property(MaxTest = 5)]
    public void Ring_WalkedInSmallSteps_IsAsLongAsTheTape(int a, int b, int c)
    {
        HeadSphere sphere = Drawn(a, b, c);
        (double radius, double front, double side) = (sphere.Radius.Centimetres, sphere.FrontRing, sphere.SideRing);
        const int steps = 10_000;
        double[] along = new double[steps + 1];
        SpherePoint last = SpherePoint.At(front, 0);
        for (int i = 1; i <= steps; i++)
        {
            double phi = i * Math.PI / 2 / steps;
            SpherePoint next = SpherePoint.At((front * Math.Cos(phi) * Math.Cos(phi)) + (side * Math.Sin(phi) * Math.Sin(phi)), phi);
            along[i] = along[i - 1] + (radius * last.AngleTo(next));
            last = next;
        }

        double around = sphere.Size.Circumference.Centimetres;
        Assert.Equal(around / 4, along[^1], 1e-6);
        foreach ((string site, double share) in new[] { ("Fp1", 0.05), ("F7", 0.15), ("FT7", 0.2) })
        {
            int nearest = (int)Math.Round(sphere.Place(Sites.Find(site)!).Azimuth / (Math.PI / 2 / steps));
            Assert.Equal(share * around, along[nearest], around / steps);
        }
    }

    /// <summary>The law that caught the former model: straight is never longer than over the skin, and over the skin never longer than the tape.
    /// On the arcs over the vertex tape and skin are the same.</summary>
    [Property(MaxTest = 10)]
    public void Distances_OfTwoSitesOfOneArc_StraightThenSkinThenTape(int a, int b, int c)
    {
        HeadSphere sphere = Drawn(a, b, c);
        (Site Site, SpherePoint Place)[] sites = [.. Sites.All.Select(site => (site, sphere.Place(site)))];
        foreach (((Site first, SpherePoint one), (Site second, SpherePoint two)) in sites.SelectMany(first => sites.Where(second => second.Site != first.Site).Select(second => (first, second))))
        {
            (double straight, double skin) = (sphere.Straight(one, two).Metres, sphere.OverTheSkin(one, two).Metres);
            Assert.True(straight <= skin, $"{first.Name}-{second.Name}");
            if (Sites.AlongSharedArc(first, second, sphere.Size) is var (arc, tape))
            {
                Assert.True(skin <= tape.Metres + 1e-12, $"{first.Name}-{second.Name}: {skin} over the skin, {tape.Metres} by tape");
                if (arc is not SiteArc.Ring && tape.Metres < Math.PI * sphere.Radius.Metres)
                {
                    Assert.Equal(tape.Metres, skin, 1e-12);
                }
            }
        }
    }

    /// <summary>Odd numbers stand left and even ones right, each the mirror of the next number; z on the midline; ears and mastoids too.</summary>
    [Property(MaxTest = 10)]
    public void Places_OfAllSites_MirrorLeftAndRight(int a, int b, int c, bool column)
    {
        HeadSphere sphere = Drawn(a, b, c);
        SiteRule rule = column ? SiteRule.Column : SiteRule.Row;
        foreach (Site site in Sites.All)
        {
            SpherePoint point = sphere.Place(site, rule);
            Assert.Equal(1, (point.X * point.X) + (point.Y * point.Y) + (point.Z * point.Z), 1e-12);
            if (site.Name[^1] == 'z')
            {
                Assert.Equal(0, point.X, 1e-12);
                continue;
            }

            int number = int.Parse(new string([.. site.Name.Where(char.IsAsciiDigit)]), CultureInfo.InvariantCulture);
            Assert.Equal(number % 2 == 1, point.X < 0);
            if (number % 2 == 1)
            {
                SpherePoint mirror = sphere.Place(Sites.Find(site.Name.Replace($"{number}", $"{number + 1}", StringComparison.Ordinal))!, rule);
                Assert.Equal(-point.X, mirror.X, 1e-12);
                Assert.Equal(point.Y, mirror.Y, 1e-12);
                Assert.Equal(point.Z, mirror.Z, 1e-12);
            }
        }
    }

    /// <summary>On the flat map the ring is a circle of 0.8, and nasion, preauricular points, inion and the line through them one of 1.</summary>
    [Property(MaxTest = 10)]
    public void Flat_OfEveryHead_KeepsItsRing(int a, int b, int c)
    {
        HeadSphere sphere = Drawn(a, b, c);
        foreach (Site site in Sites.All)
        {
            (double x, double y) = sphere.Flat(sphere.Place(site));
            double from = Math.Sqrt((x * x) + (y * y));
            if (site.Arc == SiteArc.Ring || site.Name is "Fpz" or "Oz" or "T3" or "T4")
            {
                Assert.Equal(0.8, from, 9);
            }
            else if (site.Arc == SiteArc.Low || site.Name is "Nz" or "Iz" or "T9" or "T10")
            {
                Assert.Equal(1, from, 9);
            }
            else if (site.Arc == SiteArc.Contour)
            {
                Assert.InRange(from, 0, 0.8);
            }
        }
    }

    /// <summary>Rows: quarters of the way along the contour are equal steps; every row goes from left to right, and the midline from nose to inion.</summary>
    [Property(MaxTest = 10)]
    public void Rows_OfEveryHead_AreInOrderAndInEqualSteps(int a, int b, int c)
    {
        HeadSphere sphere = Drawn(a, b, c);
        SpherePoint At(string name) => sphere.Place(Sites.Find(name)!);
        foreach (string row in (string[])["Fp1 Fpz Fp2", "AF7 AF3 AFz AF4 AF8", "F9 F7 F5 F3 F1 Fz F2 F4 F6 F8 F10", "FT9 FT7 FC5 FC3 FC1 FCz FC2 FC4 FC6 FT8 FT10", "P9 P7 P5 P3 P1 Pz P2 P4 P6 P8 P10", "O1 Oz O2"])
        {
            // Where a name goes down the side of a large head it comes back a little: the azimuth still turns.
            double[] turn = [.. row.Split(' ').Select(name => At(name)).Select(point => row[0] == 'P' || row[0] == 'O' ? Math.Atan2(point.X, -point.Y) : Math.Atan2(point.X, point.Y))];
            Assert.All(turn.Zip(turn[1..]), pair => Assert.True(pair.First <= pair.Second + 1e-12, row));
        }

        foreach (string row in (string[])["Fz F1 F3 F5 F7", "FCz FC2 FC4 FC6 FT8", "CPz CP1 CP3 CP5 TP7", "Pz P2 P4 P6 P8"])
        {
            SpherePoint[] points = [.. row.Split(' ').Select(At)];
            double[] steps = [.. points.Zip(points[1..]).Select(pair => pair.First.AngleTo(pair.Second))];
            Assert.All(steps, step => Assert.Equal(steps[0], step, 1e-12));
        }
    }

    [Theory]
    [InlineData(36, 37, 78)]      // a ring longer than any head with these arcs has
    [InlineData(36, 37, 25)]      // and shorter
    [InlineData(20, 60, 56)]      // one arc three times the other
    public void Of_MeasuresOfNoHead_IsNone(double s, double k, double u)
    {
        Assert.Null(HeadSphere.Of(Size(s, k, u)));
        if (HeadSphere.Circumferences(Size(s, k, u)) is var (least, most))
        {
            Assert.False(least.Centimetres < u && u < most.Centimetres);
            Assert.NotNull(HeadSphere.Of(Size(s, k, (0.999 * most.Centimetres) + (0.001 * least.Centimetres))));
            Assert.NotNull(HeadSphere.Of(Size(s, k, (0.001 * most.Centimetres) + (0.999 * least.Centimetres))));
        }
    }

    /// <summary>What the former model got wrong: Fp1 to F7 is 5.6 cm by tape and was 6.4 cm straight.</summary>
    [Fact]
    public void Distances_OfTheUsualHead_AreThoseOfTheUsualSpacing()
    {
        double Skin(string a, string b) => Usual.OverTheSkin(Usual.Place(Sites.Find(a)!), Usual.Place(Sites.Find(b)!)).Centimetres;
        (string, string, double)[] worked = [("Fz", "Cz", 7.20), ("C3", "Cz", 7.40), ("Fp1", "F7", 5.60), ("F3", "Fz", 5.47), ("F3", "C3", 6.72), ("P3", "O1", 5.76), ("O1", "O2", 5.60), ("T7", "A1", 6.20)];
        Assert.All(worked, pair => Assert.Equal(pair.Item3, Skin(pair.Item1, pair.Item2), 0.005));
    }

    private static double Degrees(double radians) => radians * 180 / Math.PI;

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);
}
