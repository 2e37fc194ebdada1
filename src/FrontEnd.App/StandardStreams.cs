using FrontEnd.Documents.Files;

namespace FrontEnd.App;

/// <summary>The standard output and the standard error of a call, also where it was given none, as a scheduler or a shell's <c>&gt;&amp;-</c> does.</summary>
internal static class StandardStreams
{
    /// <summary>The system's number for a stream that is not open.</summary>
    private const int NotOpen = 9;

    /// <summary>For results. Where it is closed each write fails as one on a full disk does, so that the call says so.</summary>
    public static Stream Results() => new Standing(Opened(Console.OpenStandardOutput), tells: true);

    /// <summary>For messages. Where nobody can hear them they are lost, and the exit code still says how the call ended.</summary>
    public static Stream Messages() => new Standing(Opened(Console.OpenStandardError), tells: false);

    private static Stream? Opened(Func<Stream> open)
    {
        try
        {
            return open();
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            // What cannot be opened is told when something is to be written there.
            return null;
        }
    }

    /// <summary>A stream that may be closed.</summary>
    /// <param name="to">Null where it is closed.</param>
    /// <param name="tells">Whether a failing write throws.</param>
    private sealed class Standing(Stream? to, bool tells) : WriteOnlyStream
    {
        public override void Write(ReadOnlySpan<byte> buffer)
        {
            try
            {
                if (to is null)
                {
                    throw new IOException(null, NotOpen);
                }

                to.Write(buffer);
            }
            catch (Exception error) when (!tells && error is (IOException or UnauthorizedAccessException))
            {
                // Nobody is left to be told.
            }
            catch (UnauthorizedAccessException)
            {
                // Something of the runtime's own has its number, and takes no writing.
                throw new IOException(null, NotOpen);
            }
        }

        public override void Flush() => to?.Flush();
    }
}
