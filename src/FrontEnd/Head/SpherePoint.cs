namespace FrontEnd.Head;

/// <summary>A point on the unit sphere: x to the right ear, y to the nose, z to the vertex.</summary>
internal readonly record struct SpherePoint(double X, double Y, double Z)
{
    /// <summary>Angle from the vertex, α [radians].</summary>
    public double Inclination => Math.Atan2(Math.Sqrt((X * X) + (Y * Y)), Z);

    /// <summary>Angle around the vertex from the nose towards the left ear, φ [radians, −π to π].</summary>
    public double Azimuth => Math.Atan2(-X, Y);

    /// <summary>The same point on the other side of the head.</summary>
    public SpherePoint Mirrored => new(-X, Y, Z);

    /// <summary>A point 90° away.</summary>
    internal SpherePoint Perpendicular
    {
        get
        {
            SpherePoint other = Cross(Math.Abs(Z) < 0.5 ? new(0, 0, 1) : new(1, 0, 0));
            return (1 / Math.Sqrt(other.Dot(other))) * other;
        }
    }

    /// <summary>Angle to another point along the great circle, θ [radians].</summary>
    public double AngleTo(SpherePoint other)
    {
        SpherePoint cross = Cross(other);
        return Math.Atan2(Math.Sqrt(cross.Dot(cross)), Dot(other));
    }

    internal static SpherePoint At(double inclination, double azimuth)
    {
        double level = Math.Sin(inclination);
        return new(-level * Math.Sin(azimuth), level * Math.Cos(azimuth), Math.Cos(inclination));
    }

    /// <summary>The point at a share of the way from <paramref name="middle"/> to <paramref name="end"/> on the contour through both and
    /// <paramref name="other"/>: the curve in which their plane cuts the sphere, which is no great circle.</summary>
    internal static SpherePoint OnContour(SpherePoint middle, SpherePoint end, SpherePoint other, double share)
    {
        SpherePoint normal = (other - middle).Cross(end - middle);
        normal = (1 / Math.Sqrt(normal.Dot(normal))) * normal;
        SpherePoint centre = normal.Dot(middle) * normal, u = middle - centre, w = end - centre, turn = u.Cross(w);
        if (turn.Dot(normal) < 0)
        {
            normal = -1 * normal;
        }

        double angle = share * Math.Atan2(Math.Sqrt(turn.Dot(turn)), u.Dot(w));
        return centre + (Math.Cos(angle) * u) + (Math.Sin(angle) * normal.Cross(u));
    }

    public static SpherePoint operator +(SpherePoint a, SpherePoint b) => new(a.X + b.X, a.Y + b.Y, a.Z + b.Z);

    public static SpherePoint operator -(SpherePoint a, SpherePoint b) => new(a.X - b.X, a.Y - b.Y, a.Z - b.Z);

    public static SpherePoint operator *(double factor, SpherePoint a) => new(factor * a.X, factor * a.Y, factor * a.Z);

    internal double Dot(SpherePoint other) => (X * other.X) + (Y * other.Y) + (Z * other.Z);

    private SpherePoint Cross(SpherePoint other) =>
        new((Y * other.Z) - (Z * other.Y), (Z * other.X) - (X * other.Z), (X * other.Y) - (Y * other.X));
}
