using System.Text;
using FrontEnd.Documents.Files;
using FrontEnd.Documents.Reading;
using FrontEnd.Findings;
using Xunit;

namespace FrontEnd.Documents.Tests;

/// <summary>What can be wrong with a file is a finding; a file is never half written.</summary>
public sealed class FileTests
{
    [Fact]
    public void Read_FileThatIsNotThere_IsFinding()
    {
        using TemporaryFolder folder = new();
        Finding finding = Assert.Single(DesignDocument.Read(Path.Combine(folder.Path, "none.toml")).Findings);
        Assert.Equal("FE0140", finding.Code);
        Assert.Equal("FE0144", Assert.Single(DesignDocument.Read(folder.Path).Findings).Code);
    }

    [Fact]
    public void Read_FileThatIsNoText_IsFinding()
    {
        using TemporaryFolder folder = new();
        string path = Path.Combine(folder.Path, "a.toml");
        File.WriteAllBytes(path, [(byte)'a', 0xFF, (byte)'b']);
        Finding finding = Assert.Single(DesignDocument.Read(path).Findings);
        Assert.Equal("FE0143", finding.Code);
        Assert.Contains("0xFF at byte 1", finding.Message, StringComparison.Ordinal);
        File.WriteAllBytes(path, [(byte)'a', 0, (byte)'b']);
        Assert.Contains("a zero byte at byte 1", Assert.Single(DesignDocument.Read(path).Findings).Message, StringComparison.Ordinal);
    }

    /// <summary>What a file is that is no text in UTF-8 is told by its bytes.</summary>
    [Fact]
    public void Read_FileOfAnotherKind_IsToldByItsBytes()
    {
        using TemporaryFolder folder = new();
        string path = Path.Combine(folder.Path, "a.toml"), text = DesignDocument.StarterText;
        void Is(byte[] bytes, string what)
        {
            File.WriteAllBytes(path, bytes);
            Finding finding = Assert.Single(DesignDocument.Read(path).Findings);
            Assert.Equal("FE0143", finding.Code);
            Assert.Contains(what, finding.Message, StringComparison.Ordinal);
        }

        Is([0xFF, 0xFE, .. Encoding.Unicode.GetBytes(text)], "UTF-16");
        Is(Encoding.Unicode.GetBytes(text), "UTF-16");
        Is(Encoding.BigEndianUnicode.GetBytes(text), "UTF-16");
        Is([0x89, (byte)'P', (byte)'N', (byte)'G', 13, 10, 26, 10, 0, 0], "a picture (PNG)");
        Is([(byte)'P', (byte)'K', 3, 4, 20, 0, 0, 0], "packed");
        Is(Encoding.Latin1.GetBytes("name = \"x\"\nsmallest = \"1 µV\"\n"), "0xB5");
        Assert.Equal(2, Assert.Single(DesignDocument.Read(path).Findings).Line);
    }

    [Fact]
    public void Read_FileAboveTheLimit_IsFinding_AndAtTheLimitIsRead()
    {
        using TemporaryFolder folder = new();
        string head = "name = \"x\"\n#";
        Assert.Equal("FE0142", Assert.Single(DesignDocument.Read(folder.Write("a.toml", head + new string(' ', TextFiles.Limit - head.Length + 1))).Findings).Code);
        Assert.Equal("x", DesignDocument.Read(folder.Write("a.toml", head + new string(' ', TextFiles.Limit - head.Length))).Design.Name);
    }

    [Fact]
    public void Read_ByteOrderMark_IsNoPartOfTheText()
    {
        using TemporaryFolder folder = new();
        string path = Path.Combine(folder.Path, "a.toml");
        File.WriteAllBytes(path, [0xEF, 0xBB, 0xBF, .. "name = \"x\"\n"u8]);
        DesignDocument document = DesignDocument.Read(path);
        Assert.Equal("x", document.Design.Name);
        Assert.False(document.HasErrors);
    }

    [Theory]
    [InlineData("a.json", "{\"name\": \"x\"}", DocumentFormat.Json)]
    [InlineData("a.toml", "name = \"x\"", DocumentFormat.Toml)]
    [InlineData("a.txt", "  \n{\"name\": \"x\"}", DocumentFormat.Json)]
    [InlineData("a", "name = \"x\"", DocumentFormat.Toml)]
    public void Read_Format_IsChosenByExtensionThenByContent(string name, string text, DocumentFormat format)
    {
        using TemporaryFolder folder = new();
        DesignDocument document = DesignDocument.Read(folder.Write(name, text));
        Assert.Equal(format, document.Format);
        Assert.Equal("x", document.Design.Name);
    }

    [Fact]
    public void Save_ReplacesTheFile_AndLeavesNothingBeside()
    {
        using TemporaryFolder folder = new();
        string path = folder.Write("a.toml", "name = \"x\"   # kept\n");
        DesignDocument changed = DesignDocument.Read(path).Set("name", "µ").Document;
        Assert.Null(changed.Save(path));
        Assert.Equal("name = \"µ\"   # kept\n", File.ReadAllText(path));
        Assert.Equal([path], Directory.GetFiles(folder.Path), StringComparer.Ordinal);
        Assert.Equal("FE0144", changed.Save(folder.Path)?.Code);
        Assert.Equal("FE0146", changed.Save(Path.Combine(folder.Path, "no", "a.toml"))?.Code);
    }

    /// <summary>Where a limit is passed nothing is said of design files.</summary>
    [Fact]
    public void Read_AboveTheLimit_SpeaksOfNoDesignFile()
    {
        using TemporaryFolder folder = new();
        string file = folder.Write("key.json", "0123456789");
        Assert.Null(TextFiles.ReadOfClass(file, 9, out Finding? finding));
        Assert.Equal(FileMessages.FileTooLarge, finding!.Code);
        Assert.Contains("has 10 bytes, but at most 9 are read", finding.Message, StringComparison.Ordinal);
        Assert.DoesNotContain("design file", finding.Message + finding.Help, StringComparison.Ordinal);
        Assert.Equal("0123456789", TextFiles.ReadOfClass(file, 10, out _));
    }

    /// <summary>A disk that is full refuses once more when the file is closed: nothing is left beside the place, and what was there stays.</summary>
    [Fact]
    public void AtomicFile_OnAFullDisk_LeavesNothing()
    {
        using TemporaryFolder folder = new();
        string path = folder.Write("a.edf", "before");
        Assert.Throws<IOException>(() =>
        {
            using AtomicFile file = new(path, temporary => new FullDisk(temporary, room: 10));
            file.Write(new byte[8]);
            file.Write(new byte[8]);
        });
        Assert.Equal([path], Directory.GetFiles(folder.Path), StringComparer.Ordinal);
        Assert.Equal("before", File.ReadAllText(path));
    }

    [Fact]
    public void Write_IntoAFolder_IsFindingThatSpeaksOfNoDesign()
    {
        using TemporaryFolder folder = new();
        Finding finding = TextFiles.WriteAtomically(folder.Path, "x")!;
        Assert.Equal("FE0144", finding.Code);
        Assert.DoesNotContain("design", finding.Help, StringComparison.Ordinal);
    }

    /// <summary>A file with room for so many bytes; closing it writes again, as a buffered one does.</summary>
    private sealed class FullDisk(string path, int room) : FileStream(path, FileMode.CreateNew, FileAccess.Write)
    {
        private int _written;

        public override void Write(ReadOnlySpan<byte> buffer)
        {
            _written += buffer.Length;
            if (room < _written)
            {
                throw new IOException("No space left on device");
            }

            base.Write(buffer);
        }

        protected override void Dispose(bool disposing)
        {
            base.Dispose(disposing);
            if (disposing && room < _written)
            {
                throw new IOException("No space left on device");
            }
        }
    }
}
