using System.Globalization;
using static FrontEnd.Findings.Finding;

namespace FrontEnd.Spread;

/// <summary>Wording of what cannot be drawn. Codes FE1185 and FE1186.</summary>
internal static class SpreadMessages
{
    /// <summary>A number outside its range, or none at all; null for one inside.</summary>
    internal static Finding? Outside(string key, double value, double least, double most) =>
        least <= value && value <= most ? null
            : Error("FE1185", key, $"{key} {Number(value)} is outside its range, from {Number(least)} to {Number(most)}", null, "give a number in the range");

    internal static Finding NoDistribution(PartDistribution given) =>
        Error("FE1186", "distribution", $"`{given}` is no distribution of parts", null, $"use one of {string.Join(", ", Enum.GetNames<PartDistribution>())}");

    private static string Number(double value) => value.ToString(Math.Abs(value) < 1e15 ? "0.######" : "G6", CultureInfo.InvariantCulture);
}
