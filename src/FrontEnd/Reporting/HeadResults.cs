using FrontEnd.Head;
using FrontEnd.Identity;

namespace FrontEnd.Reporting;

/// <summary>The sphere that stands for a head, and distances on it, as results with their ids.</summary>
internal static class HeadResults
{
    public static void AddSphere(ResultList list, HeadSphere sphere)
    {
        list.Number(ResultIds.Head.Radius, "radius of the sphere that matches all three measures", "R", sphere.Radius, Equations.HeadRadius);
        list.Number(ResultIds.Head.RingFront, "from the vertex to the ring in front, at Fpz", "a_S", Angle.FromRadians(sphere.FrontRing), Equations.HeadRingFront);
        list.Number(ResultIds.Head.RingSide, "from the vertex to the ring at the side, at T7", "a_K", Angle.FromRadians(sphere.SideRing), Equations.HeadRingSide);
    }

    /// <summary>Along a shared arc, over the skin and straight; once for two sites.</summary>
    public static void AddDistance(ResultList list, SiteDistance distance)
    {
        DistanceIds ids = ResultIds.Head.Distance(distance.FirstCalled, distance.SecondCalled);
        if (list.Has(ids.Skin))
        {
            return;
        }

        string pair = $"{distance.FirstCalled} to {distance.SecondCalled}";
        if (distance.Along is { } along)
        {
            list.Number(ids.Tape, $"{pair} along the {HeadWords.Of(distance.Arc!.Value)}", "d", along, Equations.HeadTape);
        }

        string? rough = distance.IsRough ? "rough: a sphere has neither ear nor neck" : null;
        list.Number(ids.Skin, $"{pair} over the skin", "d", distance.Over, Equations.HeadSkin, text: rough);
        list.Number(ids.Straight, $"{pair} straight through the head", "d", distance.Straight, Equations.HeadStraight, text: rough);
    }
}
