using System.Globalization;

namespace FrontEnd.Documents.Recordings;

/// <summary>Which of a recording's channels is meant.</summary>
internal static class ChannelChoice
{
    /// <summary>Its place among the names; the first where none is asked for. Throws <see cref="BadRecordingException"/> where there is no
    /// such channel.</summary>
    /// <param name="channel">A name, or a number from 1.</param>
    public static int Of(string[] names, string? channel, string path)
    {
        if (channel is null)
        {
            return 0;
        }

        int at = Array.FindIndex(names, name => string.Equals(name, channel, StringComparison.OrdinalIgnoreCase));
        if (0 <= at)
        {
            return at;
        }

        int[] sensors = [.. Enumerable.Range(0, names.Length).Where(one => IsSensor(names[one], channel))];
        if (sensors.Length == 1)
        {
            return sensors[0];
        }

        return int.TryParse(channel, NumberStyles.None, CultureInfo.InvariantCulture, out int number) && 1 <= number
            && number <= names.Length
            ? number - 1
            : throw new BadRecordingException(RecordingMessages.NoChannel(path, channel, Nearest.Of(channel, names), names));
    }

    /// <summary>True for the sensor of a label of EDF+, which is a type, a blank and a sensor with its reference: `Fp1` and `Fp1-A2` of `EEG Fp1-A2`.</summary>
    private static bool IsSensor(string label, string channel)
    {
        int blank = label.IndexOf(' ', StringComparison.Ordinal);
        ReadOnlySpan<char> sensor = label.AsSpan(blank + 1);
        int hyphen = sensor.IndexOf('-');
        return 0 < blank && (sensor.Equals(channel, StringComparison.OrdinalIgnoreCase)
            || (0 < hyphen && sensor[..hyphen].Equals(channel, StringComparison.OrdinalIgnoreCase)));
    }
}
