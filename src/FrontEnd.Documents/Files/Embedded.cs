using System.Reflection;
using System.Text;

namespace FrontEnd.Documents.Files;

/// <summary>Texts that come with the program: part cards and the starter design.</summary>
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
}
