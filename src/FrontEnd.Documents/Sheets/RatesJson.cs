using System.Text.Json;
using FrontEnd.Rates;

namespace FrontEnd.Documents.Sheets;

/// <summary>Sampling rates side by side for programs, SI units.</summary>
public static class RatesJson
{
    public static string Of(RateComparison comparison) => JsonText.Of(json =>
    {
        json.WriteStartObject();
        json.WriteString("design", comparison.Design.Name);
        json.WriteNumber("corner", comparison.Corner.Hertz);
        json.WriteString("corner_is", comparison.CornerIs);
        JsonText.Number(json, "pick", comparison.Pick?.Rate.Hertz);
        JsonText.Number(json, "runner_up", comparison.RunnerUp?.Rate.Hertz);
        json.WriteString("because", comparison.Because);
        json.WriteStartArray("rates");
        foreach (RateOption option in comparison.Options)
        {
            Write(json, option);
        }

        json.WriteEndArray();
        JsonText.Findings(json, comparison.Findings);
        json.WriteEndObject();
    });

    private static void Write(Utf8JsonWriter json, RateOption option)
    {
        json.WriteStartObject();
        json.WriteNumber("rate", option.Rate.Hertz);
        json.WriteString("verdict", option.IsWorkedOut ? Wording.Word(option.Verdict) : "not worked out");
        json.WriteString("because", option.Because);
        if (option.IsWorkedOut)
        {
            json.WriteNumber("fold_frequency", option.Fold.Hertz);
            JsonText.Number(json, "fold_attenuation", option.FoldAttenuation?.Value);
            json.WriteNumber("converter_share", option.ConverterShare.Value);
            JsonText.Number(json, "modulator_attenuation", option.ModulatorAttenuation?.Value);
            json.WriteStartObject("orders");
            foreach (OrderNeeded needed in option.Orders)
            {
                JsonText.Number(json, needed.Family, needed.Order);
            }

            json.WriteEndObject();
            json.WriteStartArray("mains");
            foreach (MainsAtRate mains in option.Mains)
            {
                Write(json, mains);
            }

            json.WriteEndArray();
            json.WriteStartArray("interferers");
            foreach (InterfererAtRate interferer in option.Interferers)
            {
                json.WriteStartObject();
                json.WriteString("name", interferer.Name);
                json.WriteString("lands_at", interferer.LandsAt);
                json.WriteNumber("folded", interferer.Folded.Volts);
                JsonText.Number(json, "in_band", interferer.Direct?.Volts);
                json.WriteEndObject();
            }

            json.WriteEndArray();
            json.WriteNumber("droop_low", option.DroopLow.Value);
            json.WriteNumber("droop_high", option.DroopHigh.Value);
            json.WriteNumber("delay", option.Delay.Seconds);
            json.WriteNumber("noise", option.Noise.Volts);
            json.WriteNumber("bit_rate", option.DataRate.BitsPerSecond);
            JsonText.Number(json, "battery_life", option.BatteryLife?.Seconds);
        }

        JsonText.Findings(json, option.Findings);
        json.WriteEndObject();
    }

    private static void Write(Utf8JsonWriter json, MainsAtRate mains)
    {
        json.WriteStartObject();
        json.WriteNumber("frequency", mains.Frequency.Hertz);
        json.WriteNumber("voltage", mains.Voltage.Volts);
        json.WriteNumber("recorded", mains.Recorded.Volts);
        json.WriteNumber("recorded_everywhere", mains.Everywhere.Volts);
        JsonText.Number(json, "comb_samples", mains.Comb);
        json.WriteNumber("skew_leak", mains.Skew.Fraction);
        json.WriteStartArray("harmonics");
        foreach (MainsLanding landing in mains.Landings)
        {
            json.WriteStartObject();
            json.WriteNumber("harmonic", landing.Harmonic);
            json.WriteNumber("frequency", landing.Frequency.Hertz);
            json.WriteNumber("lands_at", landing.LandsAt.Hertz);
            json.WriteNumber("lands_low", landing.Low.Hertz);
            json.WriteNumber("lands_high", landing.High.Hertz);
            json.WriteBoolean("in_band", landing.InBand);
            json.WriteNumber("residue", landing.Residue.Volts);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }
}
