using FrontEnd.Findings;
using FrontEnd.Sizing;

namespace FrontEnd.Documents.Sheets;

/// <summary>What a search for a design found for programs, SI units; each design as the text of its file.</summary>
public static class SizeJson
{
    public static string Of(SizingRequest request, SizingOutcome outcome, IReadOnlyList<Finding> findings) => JsonText.Of(json =>
    {
        json.WriteStartObject();
        json.WriteString("name", request.Fixed.Name);
        json.WriteNumber("candidates", outcome.Candidates);
        json.WriteNumber("evaluated", outcome.Evaluated);
        json.WriteStartArray("designs");
        foreach (SizedDesign one in outcome.Front)
        {
            json.WriteStartObject();
            json.WriteString("summary", one.Summary);
            json.WriteNumber("noise", one.Noise.Volts);
            json.WriteNumber("board_noise_peak_to_peak", one.BoardNoise.Volts);
            json.WriteNumber("current", one.Current.Amperes);
            json.WriteNumber("parts", one.Parts);
            json.WriteNumber("mains_margin", one.MainsMargin.Value);
            json.WriteString("limited_by", one.LimitedBy);
            json.WriteString("toml", DesignWriter.ToToml(one.Design, request.Stated));
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteStartArray("obstacles");
        foreach (Obstacle obstacle in outcome.Obstacles)
        {
            json.WriteStartObject();
            json.WriteString("requirement", obstacle.Requirement);
            json.WriteNumber("stopped", obstacle.Stopped);
            json.WriteString("text", obstacle.Text);
            json.WriteString("relaxation", obstacle.Relaxation);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        JsonText.Findings(json, findings);
        json.WriteEndObject();
    });
}
