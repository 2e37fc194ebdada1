using System.Reflection;
using FrontEnd.Quantities;
using Xunit;

namespace FrontEnd.Tests.Quantities;

/// <summary>What every quantity has in common, and the few operators that physics has.</summary>
public class QuantityTests
{
    public static TheoryData<Type> Structs =>
        [.. typeof(IQuantity).Assembly.GetTypes().Where(type => type.IsValueType && typeof(IQuantity).IsAssignableFrom(type))];

    [Theory]
    [MemberData(nameof(Structs))]
    public void Quantity_Default_IsZeroInItsUnit(Type type)
    {
        IQuantity quantity = (IQuantity)Activator.CreateInstance(type)!;
        Assert.Equal(0, quantity.SiValue);
        Assert.NotEqual("", quantity.SiUnit);
    }

    [Theory]
    [MemberData(nameof(Structs))]
    public void Quantity_EveryFactory_RefusesWhatIsNoNumber(Type type)
    {
        MethodInfo[] factories = [.. type.GetMethods(BindingFlags.Public | BindingFlags.Static).Where(method => method.Name.StartsWith("From", StringComparison.Ordinal) && method.GetParameters() is [{ ParameterType.Name: nameof(Double) }])];
        Assert.NotEmpty(factories);
        foreach (MethodInfo factory in factories)
        {
            foreach (double value in new[] { double.NaN, double.PositiveInfinity })
            {
                TargetInvocationException thrown = Assert.Throws<TargetInvocationException>(() => factory.Invoke(null, [value]));
                Assert.IsType<ArgumentOutOfRangeException>(thrown.InnerException);
            }
        }
    }

    [Theory]
    [MemberData(nameof(Structs))]
    public void Quantity_EveryFactory_HasThePropertyThatUndoesIt(Type type)
    {
        foreach (MethodInfo factory in type.GetMethods(BindingFlags.Public | BindingFlags.Static).Where(method => method.Name.StartsWith("From", StringComparison.Ordinal) && method.GetParameters() is [{ ParameterType.Name: nameof(Double) }]))
        {
            string name = factory.Name[4..];
            PropertyInfo? property = type.GetProperty(name) ?? (name is "Stated" ? type.GetProperty("Value") : name is "VoltageRatio" ? type.GetProperty("VoltageRatio") : null);
            if (name is "PowerRatio")
            {
                continue;   // decibels give back a voltage ratio only
            }

            Assert.True(property is not null, $"{type.Name}.{name}");
            double back = (double)property!.GetValue(factory.Invoke(null, [47.3]))!;
            Assert.True(Math.Abs(back - 47.3) < 1e-12, $"{type.Name}.{name}: {back:r}");
        }
    }

    [Fact]
    public void Factories_PrefixedWholeNumbers_AreTheDoublesThatADecimalTextGives()
    {
        Assert.Equal(2.2e-7, Capacitance.FromNanofarads(220).Farads);
        Assert.Equal(4.7e-11, Capacitance.FromPicofarads(47).Farads);
        Assert.Equal(5e-8, VoltageNoiseDensity.FromNanovoltsPerRootHertz(50).VoltsPerRootHertz);
        Assert.Equal(0.3, Voltage.FromMillivolts(300).Volts);
        Assert.Equal(0.05, Ratio.FromPercent(5).Fraction);
    }

    [Fact]
    public void Operators_OhmsLaw_GivesTheQuantityThatPhysicsSays()
    {
        Assert.Equal(Current.FromMicroamperes(420), Voltage.FromVolts(4.2) / Resistance.FromKilohms(10));
        Assert.Equal(10e3, (Voltage.FromVolts(1) / Current.FromMicroamperes(100)).Ohms, 6);
        Assert.Equal(1e-3, (Current.FromNanoamperes(1) * Resistance.FromMegohms(1)).Volts, 15);
        Assert.Equal(1, (Resistance.FromMegohms(10) * Capacitance.FromNanofarads(100)).Seconds, 15);
        Assert.Equal(25, (Charge.FromMilliampereHours(500) / Current.FromMilliamperes(20)).Hours, 12);
    }

    [Fact]
    public void Decibels_FromVoltageAndPowerRatio_DifferByTwo()
    {
        Assert.Equal(20, Decibels.FromVoltageRatio(10).Value, 12);
        Assert.Equal(10, Decibels.FromPowerRatio(10).Value, 12);
        Assert.Throws<ArgumentOutOfRangeException>(() => Decibels.FromVoltageRatio(0));
    }

    [Fact]
    public void Angle_FromRadians_IsInDegrees() => Assert.Equal(180, Angle.FromRadians(Math.PI).Degrees, 12);

    [Fact]
    public void Temperature_FromCelsius_IsAbsolute() => Assert.Equal(306.15, Temperature.FromCelsius(33).Kelvins, 12);
}
