using System.Reflection;
using System.Text;

namespace FrontEnd.Documents.Files;

/// <summary>Files that come with the program: part cards, the starter design, the font.</summary>
internal static class Embedded
{
    public static string? Read(string name)
    {
        using Stream? stream = Assembly.GetExecutingAssembly().GetManifestResourceStream(name);
        if (stream is null)
        {
            return null;
        }

        using StreamReader reader = new(stream, Encoding.UTF8);
        return reader.ReadToEnd();
    }

    /// <summary>A file that must be there.</summary>
    public static byte[] Bytes(string name)
    {
        using Stream stream = Assembly.GetExecutingAssembly().GetManifestResourceStream(name)
            ?? throw new ArgumentException($"{name} does not come with the program.", nameof(name));
        byte[] bytes = new byte[stream.Length];
        stream.ReadExactly(bytes);
        return bytes;
    }
}
