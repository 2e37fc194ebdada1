using FrontEnd.Filters;
using FrontEnd.Quantities;
using Xunit;

namespace FrontEnd.Tests.Filters;

/// <summary>A Chebyshev's half power over its ripple edge, against its response: half of what passes at 0 Hz, and no less before it.</summary>
public sealed class HalfPowerTests
{
    /// <summary>Ripples above 3.01 dB as well: with those half the power is left before the ripple edge.</summary>
    [Theory]
    [InlineData(0.1)]
    [InlineData(0.5)]
    [InlineData(3)]
    [InlineData(4)]
    [InlineData(6)]
    public void Chebyshev_AtItsHalfPower_PassesHalfOfDc(double ripple)
    {
        for (int order = 1; order <= 7; order++)
        {
            var prototype = new ChebyshevPrototype(order, Decibels.FromStated(ripple));
            double at = prototype.Minus3DbOverRippleEdge, half = prototype.PowerResponse(0) / 2;
            Assert.Equal(half, prototype.PowerResponse(at), 1e-9);
            Assert.InRange(prototype.PowerResponse(at * 1.001), 0, half);
        }
    }
}
