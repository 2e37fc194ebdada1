using System.Diagnostics;
using System.Text;
using FrontEnd.Terminal;
using FrontEnd.Terminal.Screens;
using Terminal.Gui.App;
using Terminal.Gui.Drivers;
using Xunit;

namespace FrontEnd.App.Tests.Terminal;

/// <summary>Whatever a terminal sends: understood, or dropped; never an error, and nothing lost of what comes after it.</summary>
public class InputParserTests
{
    private const string Esc = "\u001b";

    /// <summary>What was heard of bytes after which nothing more came.</summary>
    private static List<Heard> Hear(ReadOnlySpan<byte> bytes, bool oneByOne = false)
    {
        List<Heard> heard = [];
        InputParser parser = new(heard.Add);
        if (oneByOne)
        {
            foreach (byte one in bytes)
            {
                parser.Feed([one]);
            }
        }
        else
        {
            parser.Feed(bytes);
        }

        parser.Quiet();
        Assert.False(parser.IsWaiting);
        return heard;
    }

    private static List<Heard> Hear(string text) => Hear(Encoding.UTF8.GetBytes(text));

    private static string Written(IEnumerable<Heard> heard) => string.Join(' ', heard.Select(one => one switch
    {
        Heard.Key key => key.Stroke.ToString(),
        Heard.Paste paste => $"paste({paste.Text})",
        Heard.Click click => $"click({click.X},{click.Y})",
        Heard.Wheel wheel => $"wheel({wheel.Lines},{wheel.X},{wheel.Y})",
        _ => "?",
    }));

    [Theory]
    [InlineData("nN?µΩ日", "n N ? µ Ω 日")]
    [InlineData("\r\n\t\u007f\b", "Enter Tab Backspace Backspace")]      // a line's end of two bytes is one key
    [InlineData("\u0001\u0003\u001a", "Ctrl+a Ctrl+c Ctrl+z")]
    [InlineData(Esc, "Esc")]
    [InlineData(Esc + Esc, "Esc Esc")]
    [InlineData(Esc + "n", "Alt+n")]
    [InlineData(Esc + "N", "Alt+Shift+n")]
    [InlineData(Esc + "\r", "Alt+Enter")]
    [InlineData(Esc + "O", "Alt+Shift+o")]                               // and nothing after it: no sequence
    [InlineData(Esc + "P", "Alt+Shift+p")]
    [InlineData(Esc + "[A" + Esc + "[B" + Esc + "OC" + Esc + "[D", "Up Down Right Left")]
    [InlineData(Esc + "[1;5A" + Esc + "[1;2H" + Esc + "[Z", "Ctrl+Up Shift+Home Shift+Tab")]
    [InlineData(Esc + Esc + "[A", "Alt+Up")]
    [InlineData(Esc + "[H" + Esc + "[F" + Esc + "OH" + Esc + "OF" + Esc + "[1~" + Esc + "[4~", "Home End Home End Home End")]
    [InlineData(Esc + "[7~" + Esc + "[8~" + Esc + "[7$" + Esc + "[8^" + Esc + "[8@", "Home End Shift+Home Ctrl+End Ctrl+Shift+End")]   // rxvt
    [InlineData(Esc + "[a" + Esc + "Od", "Shift+Up Ctrl+Left")]                                                                        // rxvt
    [InlineData(Esc + "[3~" + Esc + "[5~" + Esc + "[6~" + Esc + "[2~", "Delete PgUp PgDn")]
    [InlineData(Esc + "OP" + Esc + "[11~" + Esc + "[15~" + Esc + "[21~" + Esc + "[[A" + Esc + "[[E", "F1 F1 F5 F10 F1 F5")]
    [InlineData(Esc + "[25~" + Esc + "[26~" + Esc + "[28~" + Esc + "[29~" + Esc + "[31~" + Esc + "[32~" + Esc + "[33~" + Esc + "[34~" + "n", "n")]   // F13 to F20, Menu
    [InlineData(Esc + "Op" + Esc + "Oy" + Esc + "On" + Esc + "OM" + Esc + "Ok", "0 9 . Enter +")]                                      // keypad
    [InlineData(Esc + "[97;5u" + Esc + "[27;3;110~" + Esc + "[13u" + Esc + "[110;1:3u", "Ctrl+a Alt+n Enter")]                         // the last is a release
    [InlineData(Esc + "[?1;2c" + Esc + "[8;24;80t" + Esc + "[12;40R" + Esc + "[I" + Esc + "[?2026;2$y" + "n", "n")]                    // answers
    [InlineData(Esc + "]11;rgb:0/0/0\u0007" + Esc + "]10;x" + Esc + "\\" + Esc + "P1$r0m" + Esc + "\\n", "n")]
    [InlineData(Esc + "[200~47 kΩ\n" + Esc + "[20x" + Esc + "[201~n", "paste(47 kΩ\n" + Esc + "[20x) n")]
    [InlineData(Esc + "[200~lost end", "paste(lost end)")]
    [InlineData(Esc + "[<0;5;7M" + Esc + "[<0;5;7m", "click(4,6)")]
    [InlineData(Esc + "[<0;5;7M" + Esc + "[<0;6;7m" + Esc + "[<35;1;1M" + Esc + "[<2;5;7M" + Esc + "[<2;5;7m", "")]                     // dragged, moved, the right one
    [InlineData(Esc + "[<64;5;7M" + Esc + "[<65;5;7M" + Esc + "[96;5;7M", "wheel(-1,4,6) wheel(1,4,6) wheel(-1,4,6)")]
    [InlineData(Esc + "[M !!" + Esc + "[M#!!", "click(0,0)")]
    [InlineData(Esc + "[<99999999999;99999999999999999999;1M" + Esc + "[<0;4294967297;2M" + Esc + "[999999999999~n", "n")]
    [InlineData(Esc + "[1;2\u0018n" + Esc + "[5" + Esc + "[A", "Ctrl+x n Up")]                                                         // broken off
    public void Sequence_IsTheKeyThatSendsIt(string sent, string heard)
    {
        Assert.Equal(heard, Written(Hear(sent)));
        Assert.Equal(heard, Written(Hear(Encoding.UTF8.GetBytes(sent), oneByOne: true)));
    }

    /// <summary>Every control sequence of up to three parameters, each of what parameters can be, with every intermediate and every last byte, and every SS3: no error,
    /// and the key that follows is heard, whatever it was.</summary>
    [Fact]
    public void Sequences_AllToThreeParameters_AreSurvived_AndTheNextKeyIsHeard()
    {
        string[] parameters = ["", "0", "1", "2", "5", "7", "13", "27", "29", "64", "200", "201", "1:3", "2147483648", "99999999999999999999"];
        string[] prefixes = ["", "<", "?", ">", "="];
        List<string> lists = [""];
        for (int count = 1; count <= 3; count++)
        {
            IEnumerable<string> longer = [""];
            for (int at = 0; at < count; at++)
            {
                int place = at;
                longer = longer.SelectMany(start => parameters.Select(one => place == 0 ? one : $"{start};{one}"));
            }

            lists.AddRange(longer);
        }

        int heard = 0;
        bool last = false;
        InputParser parser = new(what =>
        {
            heard++;
            last = what is Heard.Key { Stroke: { Key: KeyName.Letter, Letter: 'n', Alt: false, Ctrl: false } };
        });
        byte[] buffer = new byte[128];
        foreach (string list in lists.Distinct())
        {
            foreach (string prefix in prefixes)
            {
                foreach (string between in (string[])["", " ", "$"])
                {
                    int length = Encoding.ASCII.GetBytes(Esc + "[" + prefix + list + between, buffer);
                    for (byte end = 0x40; end < 0x7F; end++)
                    {
                        buffer[length] = end;
                        Check(buffer.AsSpan(0, length + 1));
                    }
                }
            }
        }

        for (int end = 0; end < 256; end++)
        {
            foreach (string list in (string[])["", "5", "1;2", "1;2;3", "99999999999"])
            {
                Check([.. Encoding.ASCII.GetBytes(Esc + "O" + list), (byte)end]);
            }
        }

        Assert.True(heard > 100_000, $"{heard}");

        void Check(ReadOnlySpan<byte> sent)
        {
            last = false;
            parser.Feed(sent);

            // A string, a paste or an old mouse report may be open: nothing more comes, and it ends.
            parser.Quiet();
            parser.Feed("n"u8);
            Assert.True(last, Convert.ToHexString(sent));
        }
    }

    /// <summary>A million random bytes, in pieces, and as many that look more like sequences: no error, and the keys after them are heard.</summary>
    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    public void Bytes_AMillionAtRandom_AreSurvived(int seed)
    {
        Random random = new(seed);
        byte[] bytes = new byte[1_000_000];
        random.NextBytes(bytes);
        if (seed == 2)
        {
            ReadOnlySpan<byte> likely = "\u001b[O;<?:0123456789~$^@MmABHRuc\u0007\\\r]P_"u8;
            for (int i = 0; i < bytes.Length; i++)
            {
                bytes[i] = likely[bytes[i] % likely.Length];
            }
        }

        List<Heard> heard = [];
        InputParser parser = new(heard.Add);
        for (int at = 0; at < bytes.Length;)
        {
            int length = Math.Min(random.Next(1, 400), bytes.Length - at);
            parser.Feed(bytes.AsSpan(at, length));
            at += length;
            if (random.Next(50) == 0)
            {
                parser.Quiet();
            }
        }

        parser.Quiet();
        parser.Feed("\u001b[7~n"u8);
        Assert.Equal("Home n", Written(heard.TakeLast(2)));
        Assert.All(heard.OfType<Heard.Key>(), key => Assert.False(char.IsControl(key.Stroke.Letter) && key.Stroke.Key == KeyName.Letter));
    }

    /// <summary>What such bytes mean, done to the model: no key, paste or click of them throws, and it can still be drawn. Files are left alone.</summary>
    [Theory]
    [InlineData(3)]
    [InlineData(4)]
    public void Bytes_AtRandom_LeaveTheModelAlive(int seed)
    {
        Random random = new(seed);
        byte[] bytes = new byte[30_000];
        random.NextBytes(bytes);
        Model start = Setup.Start(Setup.Headband), model = start;
        int heard = 0;
        foreach (Heard what in Hear([.. bytes, .. "\u001b[200~15 %\u001b[201~\u001b[<0;5;8M\u001b[<0;5;8m"u8]))
        {
            Message? message = what switch
            {
                Heard.Key key => new Message.Pressed(key.Stroke),
                Heard.Paste paste => new Message.Pasted(paste.Text),
                Heard.Wheel wheel => new Message.Scrolled(wheel.Lines, Painter.Paint(model, ascii: false).PaneAt(wheel.X, wheel.Y)),
                Heard.Click click => Painter.Paint(model, ascii: false).Hit(click.X, click.Y),
                _ => null,
            };
            if (message is not null)
            {
                (model, Effect? effect) = Updater.Update(model, message);
                model = effect is Effect.Evaluate evaluate
                    ? Updater.Update(model, new Message.Evaluated(evaluate.Slot, evaluate.Run, start.Here.Shown!)).Model
                    : model.Quitting ? start : model;
            }

            if (++heard % 50 == 0)
            {
                Painter.Paint(model, ascii: heard % 100 == 0);
            }
        }

        Assert.True(heard > 3000, $"{heard}");
    }

    /// <summary>The library takes our reader in place of its own; it hears of nothing that the terminal sends.</summary>
    [Fact]
    public void Application_HasOurReader()
    {
        TerminalFactory factory = new();
        using IApplication app = factory.CreateApplication();
        app.Init();
        ITestableInput<char> input = Assert.IsAssignableFrom<ITestableInput<char>>(factory.Input);
        int others = 0;
        app.Driver!.KeyDown += (_, _) => others++;
        foreach (char letter in "\u001b[7~µ")
        {
            input.InjectInput(letter);
        }

        List<Heard> heard = [];
        Stopwatch clock = Stopwatch.StartNew();
        while (heard.Count < 2 && clock.Elapsed < TimeSpan.FromSeconds(20))
        {
            heard.AddRange(factory.Input!.AllHeard().Select(one => one.What));
        }

        app.Driver.GetInputProcessor().ProcessQueue();
        Assert.Equal("Home µ", Written(heard));
        Assert.Equal(0, others);
    }
}
