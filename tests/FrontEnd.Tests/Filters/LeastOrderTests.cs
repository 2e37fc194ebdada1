using FrontEnd.Filters;
using FrontEnd.Quantities;
using Xunit;

namespace FrontEnd.Tests.Filters;

/// <summary>The least order of band shapes with edges of any symmetry, against a plain search over every centre and width that a band shape has.</summary>
public class LeastOrderTests
{
    public static TheoryData<FilterFamily, FilterShape, bool> Cases()
    {
        TheoryData<FilterFamily, FilterShape, bool> cases = [];
        foreach (FilterFamily family in Enum.GetValues<FilterFamily>())
        {
            foreach (FilterShape shape in (FilterShape[])[FilterShape.BandPass, FilterShape.BandStop])
            {
                cases.Add(family, shape, false);
                cases.Add(family, shape, true);
            }
        }

        return cases;
    }

    [Theory]
    [MemberData(nameof(Cases))]
    public void Order_AsymmetricEdges_MeetsThemAllAndIsLeast(FilterFamily family, FilterShape shape, bool digital)
    {
        Random random = new(((int)family * 10) + (int)shape + (digital ? 5 : 0));
        // The families without a steep edge get farther edges and less to do.
        bool soft = family is FilterFamily.Bessel or FilterFamily.CriticallyDamped;
        int found = 0, refused = 0;
        for (int draw = 0; draw < 40; draw++)
        {
            // Outer edges at distances from the inner ones that differ up to a hundredfold.
            double low = 10 * Math.Pow(4, random.NextDouble()), high = low * (1.05 + (2 * random.NextDouble()));
            double[] inner = [low, high];
            double Apart() => 1 + Math.Pow(10, (soft ? -0.3 : -1.2) + ((soft ? 1.5 : 2) * random.NextDouble()));
            double[] outer = [low / Apart(), high * Apart()];
            if (digital && 495 <= outer[1])
            {
                continue;
            }

            Wish wish = new(
                family, shape == FilterShape.BandPass ? inner : outer, shape == FilterShape.BandPass ? outer : inner,
                ((double[])[0.1, 0.5, 1, 3])[random.Next(4)], soft ? 10 + random.Next(15) : 15 + random.Next(45), digital ? 1000 : null);
            FilterAnswer answer = wish.Design(shape);
            int most;
            if (answer.Filter is { } filter)
            {
                found++;
                Assert.All(wish.Pass, f => Assert.True(-10 * Math.Log10(filter.PowerResponse(f)) <= wish.Ripple + 1e-6, $"{wish}: {-10 * Math.Log10(filter.PowerResponse(f))} dB at {f} Hz"));
                Assert.All(wish.Stop, f => Assert.True(wish.Attenuation - 1e-6 <= -10 * Math.Log10(filter.PowerResponse(f)), $"{wish}: {-10 * Math.Log10(filter.PowerResponse(f))} dB at {f} Hz"));
                most = answer.Prototype!.Order - 1;
            }
            else
            {
                refused++;
                Assert.Equal("FE0609", Assert.Single(answer.Findings).Code);
                most = FilterDesign.MostBandOrder;
            }

            for (int order = family is FilterFamily.Bessel or FilterFamily.CriticallyDamped ? 1 : Math.Max(1, most); order <= most; order++)
            {
                Assert.False(wish.CanBeMetBy(order, shape), $"{wish}: order {order} meets it, and the answer is {answer.Prototype?.Order}");
            }
        }

        Assert.True(5 < found, $"{found} found, {refused} refused");
    }

    /// <summary>8 to 13 Hz with 60 dB at 2 and 16 Hz for an inverse Chebyshev: about the stop edges it takes order 11 (Ω = 14/10.54, 8.276/acosh 1.328 = 10.5), which is refused; about the pass edges 7.
    /// By hand: c = 104, D = 5 at the pass edges, 9.5 at 16 Hz (50 at 2 Hz), Ω = 1.9, acosh(10³/0.5088)/acosh 1.9 = 8.276/1.257 = 6.58.</summary>
    [Fact]
    public void InverseChebyshev_BandPassOfFarLowerStopEdge_IsNoLongerRefused()
    {
        FilterAnswer answer = new Wish(FilterFamily.InverseChebyshev, [8, 13], [2, 16], 1, 60, null).Design(FilterShape.BandPass);
        Assert.Empty(answer.Findings);
        Assert.Equal(7, answer.Prototype!.Order);
        Assert.Equal(6.583, answer.Choice!.Exact!.Value, 5e-4);
    }

    /// <summary>Symmetric edges are met exactly as asked: the corners of the answer are the edges to the bit.</summary>
    [Theory]
    [InlineData(FilterFamily.Chebyshev, FilterShape.BandPass)]
    [InlineData(FilterFamily.Elliptic, FilterShape.BandStop)]
    public void Corners_OfASymmetricRequirement_AreItsPassEdges(FilterFamily family, FilterShape shape)
    {
        double[] inner = [10, 20], outer = [5, 40];
        Wish wish = shape == FilterShape.BandPass ? new(family, inner, outer, 1, 40, null) : new(family, outer, inner, 1, 40, null);
        Assert.Equal(wish.Pass, wish.Design(shape).Response!.Corners.Select(c => c.Hertz));
    }

    private sealed record Wish(FilterFamily Family, double[] Pass, double[] Stop, double Ripple, double Attenuation, double? Rate)
    {
        public override string ToString() => $"{Family} passes {string.Join(", ", Pass)}, stops {string.Join(", ", Stop)} Hz, {Ripple} and {Attenuation} dB at {Rate}";

        internal FilterAnswer Design(FilterShape shape) => new FilterWish
        {
            Family = Family,
            Shape = shape,
            Corners = [.. Pass.Select(Frequency.FromHertz)],
            StopEdges = [.. Stop.Select(Frequency.FromHertz)],
            Ripple = Decibels.FromStated(Ripple),
            Attenuation = Decibels.FromStated(Attenuation),
            Rate = Rate is { } fs ? Frequency.FromHertz(fs) : null,
        }.Design();

        /// <summary>Any centre, from far below the lower edges' product to far above the upper; for each the prototype that just keeps the ripple at the worse pass edge.</summary>
        internal bool CanBeMetBy(int order, FilterShape shape)
        {
            Prototype prototype = Family switch
            {
                FilterFamily.Butterworth => new ButterworthPrototype(order),
                FilterFamily.Chebyshev => new ChebyshevPrototype(order, Decibels.FromStated(Ripple)),
                FilterFamily.InverseChebyshev => new InverseChebyshevPrototype(order, Decibels.FromStated(Attenuation)),
                FilterFamily.Elliptic => new EllipticPrototype(order, Decibels.FromStated(Ripple), Decibels.FromStated(Attenuation)),
                FilterFamily.Bessel => new BesselPrototype(order),
                _ => new CriticallyDampedPrototype(order),
            };
            ZeroPoleGain roots = prototype.Normalised();
            double Loss(double omega) => -20 * Math.Log10(System.Numerics.Complex.Abs(roots.At(new System.Numerics.Complex(0, omega))));

            // Where the prototype has lost the ripple: all families fall beyond their corner, and the inverse Chebyshev before its own.
            double edge = Family is FilterFamily.Chebyshev or FilterFamily.Elliptic ? 1 : MathExtra.Bisect(w => Loss(w) - Ripple, 1e-6, Family == FilterFamily.InverseChebyshev ? 1 : 100);
            double Warp(double f) => Rate is { } fs ? Math.Tan(Math.PI * f / fs) : f;
            double[] pass = [.. Pass.Select(Warp)], stop = [.. Stop.Select(Warp)];
            double from = Math.Min(pass[0], stop[0]), to = Math.Max(pass[1], stop[1]);
            for (int i = 0; i <= 2000; i++)
            {
                double centre = from * from * Math.Pow(to / from, 2 * i / 2000.0);
                double[] dp = [.. pass.Select(w => Math.Abs(w - (centre / w)))], ds = [.. stop.Select(w => Math.Abs(w - (centre / w)))];
                double selectivity = shape == FilterShape.BandPass ? ds.Min() / dp.Max() : dp.Min() / ds.Max();
                // A hundred-thousandth of a decibel: the search steps over the very best centre.
                if (1 < selectivity && Attenuation + 1e-5 <= Loss(edge * selectivity))
                {
                    return true;
                }
            }

            return false;
        }
    }
}
