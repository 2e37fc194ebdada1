using FrontEnd.Filters;
using MathNet.Numerics.Integration;

namespace FrontEnd.Head;

/// <summary>The sphere on which all three measures of a head are as long as the tape says: nasion, inion and preauricular points lie below its
/// equator, the ring a little below its widest level. The angle that belongs to 10 % of an arc is no constant: it follows from the measures.</summary>
/// <remarks>
/// Ring: α(φ) = a_S·cos²φ + a_K·sin²φ, a_S = 0.4·S/R, a_K = 0.4·K/R; its length to φ is ℓ(φ) = R·∫ √(((a_K − a_S)·sin 2t)² + sin²α(t)) dt, and R
/// solves 4·ℓ(π/2) = U, the ring between 60° and 135° from the vertex. With S = K: sin a/a = U/(0.8·π·S), R = 0.4·S/a.
/// <para>Source: derived. Heads are no spheres: the straight distances of the 19 sites of an ellipsoid 15.5 cm wide and 19.7 cm long with the
/// same three measures differ by 4 % rms, neighbours by 5 % at most, T7 to T8 by 14 %.</para>
/// <para>Accuracy: radius, places and distances to 1e-9 against reference/head/geometry.dat.</para>
/// </remarks>
internal sealed class HeadSphere
{
    /// <summary>Where the ring may lie from the vertex [radians]: beyond that the measures are no head's.</summary>
    private const double HighestRing = Math.PI / 3, LowestRing = 0.75 * Math.PI;

    /// <summary>Of half an arc: from the vertex to the ring 40 % of the whole one.</summary>
    private const double ToRing = 0.4;

    private readonly double _radius;

    private HeadSphere(HeadSize size, double radius) => (Size, _radius) = (size, radius);

    public HeadSize Size { get; }

    /// <summary>R.</summary>
    public Length Radius => Length.FromMetres(_radius);

    /// <summary>a_S: from the vertex to the ring in front, at Fpz [radians].</summary>
    public double FrontRing => ToRing * Size.NasionInion.Metres / _radius;

    /// <summary>a_K: from the vertex to the ring at the side, at T7 [radians].</summary>
    public double SideRing => ToRing * Size.Preauricular.Metres / _radius;

    /// <summary>The sphere of three measures; null where they do not belong to one head.</summary>
    public static HeadSphere? Of(HeadSize size)
    {
        (double least, double most) = Radii(size);
        double around = size.Circumference.Metres;
        return least < most && Around(size, least) < around && around < Around(size, most)
            ? new HeadSphere(size, MathExtra.Bisect(radius => Around(size, radius) - around, least, most))
            : null;
    }

    /// <summary>Which circumferences go with the other two measures on one head; null where none does, because one arc is more than twice the
    /// other.</summary>
    public static (Length Least, Length Most)? Circumferences(HeadSize size)
    {
        (double least, double most) = Radii(size);
        return least < most ? (Length.FromMetres(Around(size, least)), Length.FromMetres(Around(size, most))) : null;
    }

    /// <summary>Where a site lies.</summary>
    public SpherePoint Place(Site site, SiteRule rule = SiteRule.Row)
    {
        switch (site.Arc)
        {
            case SiteArc.Sagittal:
                return SpherePoint.At(Math.Abs(0.5 - site.Share) * Size.NasionInion.Metres / _radius, site.Share <= 0.5 ? 0 : Math.PI);
            case SiteArc.Coronal:
                return Side(SpherePoint.At(Math.Abs(0.5 - site.Share) * Size.Preauricular.Metres / _radius, Math.PI / 2), site.Share <= 0.5);
            case SiteArc.Ring or SiteArc.Low:
                double azimuth = AzimuthAt(Math.Min(site.Share, 1 - site.Share));
                double inclination = Ring(azimuth) * (site.Arc == SiteArc.Low ? 0.5 / ToRing : 1);
                return Side(SpherePoint.At(inclination, azimuth), site.Share <= 0.5);
            case SiteArc.Contour when rule == SiteRule.Column && Sites.Column(site) is var (middle, end, other):
                return SpherePoint.OnContour(Place(middle), Place(end), Place(other), 0.5);
            case SiteArc.Contour:
                SpherePoint onRing = Place(Sites.Find(site.To)!);
                return SpherePoint.OnContour(Place(Sites.Find(site.From)!), onRing, onRing.Mirrored, site.Share);
            case SiteArc.Ear:
                return Side(Ear(site), site.Share == 0);
            default:
                throw new ArgumentOutOfRangeException(nameof(site), site.Arc, "Arc is not handled.");
        }
    }

    /// <summary>Place on the flat head map, the ring at 0.8 and nasion, preauricular points and inion at 1 from the middle.</summary>
    public (double X, double Y) Flat(SpherePoint point)
    {
        double distance = point.Inclination / (0.5 / ToRing * Ring(point.Azimuth));
        return (-distance * Math.Sin(point.Azimuth), distance * Math.Cos(point.Azimuth));
    }

    /// <summary>Over the skin, R·θ.</summary>
    public Length OverTheSkin(SpherePoint first, SpherePoint second) => Length.FromMetres(_radius * first.AngleTo(second));

    /// <summary>Straight through the head, 2R·sin(θ/2), as a caliper reads it.</summary>
    public Length Straight(SpherePoint first, SpherePoint second) =>
        Length.FromMetres(2 * _radius * Math.Sin(first.AngleTo(second) / 2));

    private static SpherePoint Side(SpherePoint left, bool isLeft) => isLeft ? left : left.Mirrored;

    private SpherePoint Ear(Site site)
    {
        (Length down, Length back) = site.Name[0] == 'A' ? (Size.EarLobeDown, default(Length)) : (Size.MastoidDown, Size.MastoidBack);
        double inclination = ((Size.Preauricular.Metres / 2) + down.Metres) / _radius;
        return SpherePoint.At(inclination, (Math.PI / 2) + (back.Metres / (_radius * Math.Sin(inclination))));
    }

    /// <summary>α(φ).</summary>
    private double Ring(double azimuth) => Ring(FrontRing, SideRing, azimuth);

    private static double Ring(double front, double side, double azimuth) =>
        (front * Math.Cos(azimuth) * Math.Cos(azimuth)) + (side * Math.Sin(azimuth) * Math.Sin(azimuth));

    /// <summary>φ of a share of the ring from Fpz, 0 to a half.</summary>
    private double AzimuthAt(double share)
    {
        if (0.25 < share)
        {
            return Math.PI - AzimuthAt(0.5 - share);
        }

        double length = share * Size.Circumference.Metres;
        return share is 0 ? 0 : share is 0.25 ? Math.PI / 2
            : MathExtra.Bisect(azimuth => AlongRing(Size, _radius, azimuth) - length, 0, Math.PI / 2);
    }

    private static (double Least, double Most) Radii(HeadSize size)
    {
        (double s, double k) = (size.NasionInion.Metres, size.Preauricular.Metres);
        return (ToRing * Math.Max(s, k) / LowestRing, ToRing * Math.Min(s, k) / HighestRing);
    }

    private static double Around(HeadSize size, double radius) => 4 * AlongRing(size, radius, Math.PI / 2);

    /// <summary>ℓ(φ) by one rule of 32 points.</summary>
    private static double AlongRing(HeadSize size, double radius, double azimuth)
    {
        (double front, double side) = (ToRing * size.NasionInion.Metres / radius, ToRing * size.Preauricular.Metres / radius);
        return radius * GaussLegendreRule.Integrate(
            t =>
            {
                (double slope, double level) = ((side - front) * Math.Sin(2 * t), Math.Sin(Ring(front, side, t)));
                return Math.Sqrt((slope * slope) + (level * level));
            }, 0, azimuth, 32);
    }
}
