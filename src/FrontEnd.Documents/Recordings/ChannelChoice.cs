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

        return int.TryParse(channel, NumberStyles.None, CultureInfo.InvariantCulture, out int number) && 1 <= number
            && number <= names.Length
            ? number - 1
            : throw new BadRecordingException(RecordingMessages.NoChannel(path, channel, Nearest.Of(channel, names), names));
    }
}
