using System.Collections.Immutable;
using FrontEnd.Documents;
using FrontEnd.Documents.Reading;

namespace FrontEnd.Terminal;

/// <summary>Looks whether the files of the open designs, and their cards, have changed on the disk.</summary>
/// <remarks>A look compares write times and lengths, and reads only where one of them is another than at the last look. It knows no clock:
/// whoever owns it says when to look.</remarks>
internal sealed class DiskWatch
{
    private readonly Dictionary<int, (DesignDocument Known, IReadOnlyList<Stamp> Stamps)> _seen = [];
    private readonly HashSet<int> _away = [];
    private volatile ImmutableList<OpenDesign> _designs = [];

    /// <summary>What is to be watched from now on. From any thread.</summary>
    public void Note(ImmutableList<OpenDesign> designs) => _designs = designs;

    /// <summary>What was found of the designs of which a file has changed since the last look; at the first look of all of them.</summary>
    public IReadOnlyList<Message.SeenOnDisk> Look()
    {
        List<Message.SeenOnDisk> news = [];
        foreach (OpenDesign design in _designs)
        {
            CardTexts cards = design.Document.Cards;
            IEnumerable<string> paths = cards.Names.Select(name => Path.Combine(cards.Folder!, name));
            List<Stamp> stamps = [.. (design.Path is null ? paths : paths.Prepend(design.Path)).Select(Stamp.Of)];
            if (design.Path is not null && !stamps[0].IsThere)
            {
                // A file that its writer replaces is away for a moment: gone is what is not there at the second look either.
                if (_away.Add(design.Slot))
                {
                    continue;
                }
            }
            else
            {
                _away.Remove(design.Slot);
            }

            // After a save or a take-over all is looked at anew, since what came of a look before it is dropped.
            if (_seen.TryGetValue(design.Slot, out var before) && ReferenceEquals(before.Known, design.Saved) && before.Stamps.SequenceEqual(stamps))
            {
                continue;
            }

            _seen[design.Slot] = (design.Saved, stamps);
            news.Add(new Message.SeenOnDisk(design.Slot, design.Path, Read(design.Path), cards.Read(cards.Names), design.Saved));
        }

        return news;
    }

    private static DesignDocument? Read(string? path) => path is null || !File.Exists(path) ? null : DesignDocument.Read(path);

    private readonly record struct Stamp(string Path, bool IsThere, DateTime Written, long Length)
    {
        /// <summary>The file as it stands now; not there where it cannot be looked at.</summary>
        public static Stamp Of(string path)
        {
            try
            {
                FileInfo file = new(path);
                return file.Exists ? new Stamp(path, true, file.LastWriteTimeUtc, file.Length) : new Stamp(path, false, default, 0);
            }
            catch (Exception error) when (error is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
            {
                return new Stamp(path, false, default, 0);
            }
        }
    }
}
