using System.Text.Json;
using FrontEnd.Spread;

namespace FrontEnd.Documents.Sheets;

/// <summary>How the figures of many builds spread, for programs, numbers in SI units, decibels, degrees or bits.</summary>
public static class SpreadJson
{
    public static string Of(SpreadResult result) => JsonText.Of(json =>
    {
        json.WriteStartObject();
        json.WriteString("design", result.Design.Name);
        Members(json, result);
        json.WriteEndObject();
    });

    /// <summary>All but the design's name, into an object that is open.</summary>
    internal static void Members(Utf8JsonWriter json, SpreadResult result)
    {
        json.WriteNumber("builds", result.Options.Builds);
        json.WriteNumber("seed", result.Options.Seed);
        json.WriteString("distribution", result.Options.Distribution == PartDistribution.Normal ? "normal" : "uniform");
        JsonText.Number(json, "yield", result.Yield);
        json.WriteStartArray("ranged");
        foreach (SpreadPart part in result.Parts.Where(part => part.IsRanged))
        {
            json.WriteStringValue(part.Key);
        }

        json.WriteEndArray();
        json.WriteStartArray("figures");
        foreach (SpreadFigure figure in result.Figures)
        {
            Write(json, figure);
        }

        json.WriteEndArray();
    }

    private static void Write(Utf8JsonWriter json, SpreadFigure figure)
    {
        json.WriteStartObject();
        json.WriteString("id", figure.Id.Text);
        json.WriteString("unit", figure.Unit);
        JsonText.Number(json, "nominal", figure.Nominal);
        JsonText.Number(json, "mean", figure.Mean);
        JsonText.Number(json, "standard_deviation", figure.StandardDeviation);
        JsonText.Number(json, "least_corner", figure.Least);
        JsonText.Number(json, "most_corner", figure.Most);
        JsonText.Number(json, "yield", figure.Yield);
        JsonText.Number(json, "limit", figure.Limit);
        json.WriteString("requirement", figure.Requirement);
        json.WriteStartObject("percentiles");
        for (int i = 0; i < figure.Percentiles.Count; i++)
        {
            JsonText.Number(json, SpreadFigure.Percents[i].ToString(System.Globalization.CultureInfo.InvariantCulture), figure.Percentiles[i]);
        }

        json.WriteEndObject();
        if (figure.InBins(SpreadWording.Bins) is { } bins)
        {
            json.WriteStartObject("histogram");
            json.WriteNumber("low", bins.Low);
            json.WriteNumber("high", bins.High);
            json.WriteStartArray("counts");
            foreach (int count in bins.Counts)
            {
                json.WriteNumberValue(count);
            }

            json.WriteEndArray();
            json.WriteEndObject();
        }
        else
        {
            json.WriteNull("histogram");
        }

        json.WriteStartObject("rank_correlation");
        foreach (RankCorrelation rank in figure.Ranks)
        {
            JsonText.Number(json, rank.Key, rank.Coefficient);
        }

        json.WriteEndObject();
        json.WriteEndObject();
    }
}
