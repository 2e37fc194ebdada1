namespace FrontEnd.App.Terminal;

/// <summary>Which key does what. One table: keys, the key line and the help are made from it.</summary>
public static class KeyMap
{
    /// <summary>One row: the action, its keys, and what it does in a few words.</summary>
    /// <param name="Letter">Plain letter, for while no field is being typed in; Alt and the letter works always. '\0' for none.</param>
    public sealed record Row(Act Act, char Letter, IReadOnlyList<Keystroke> Others, string Does)
    {
        /// <summary>The letter behind the key of <see cref="Act.More"/>; '\0' for what is not under it.</summary>
        public char Under { get; init; }

        /// <summary>The keys as the help writes them.</summary>
        public string Keys => string.Join(' ', (string[])[.. Letter == '\0' ? (string[])[] : [Letter.ToString()], .. Others.Select(key => key.ToString()), .. Under == '\0' ? (string[])[] : [$"{MoreLetter} {Under}"]]);
    }

    private const char MoreLetter = 'z';

    public static readonly IReadOnlyList<Row> Rows =
    [
        new(Act.PreviousBlock, '\0', [new(KeyName.Left)], "block nearer the scalp"),
        new(Act.NextBlock, '\0', [new(KeyName.Right)], "block nearer the samples"),
        new(Act.Up, '\0', [new(KeyName.Up)], "field or figure above"),
        new(Act.Down, '\0', [new(KeyName.Down)], "field or figure below"),
        new(Act.PageUp, '\0', [new(KeyName.PageUp)], "ten up"),
        new(Act.PageDown, '\0', [new(KeyName.PageDown)], "ten down"),
        new(Act.First, '\0', [new(KeyName.Home)], "first field or figure"),
        new(Act.Last, '\0', [new(KeyName.End)], "last field or figure"),
        new(Act.SwitchPane, '\0', [new(KeyName.Tab)], "between what you may change and what it does"),
        new(Act.Enter, '\0', [new(KeyName.Enter)], "on a field: type or choose; on a figure: why"),
        new(Act.Back, '\0', [new(KeyName.Escape)], "drop, close, go back"),
        new(Act.StepUp, '+', [Keystroke.Of('=')], "next preferred value up"),
        new(Act.StepDown, '-', [], "next preferred value down"),
        new(Act.ToDefault, 'd', [], "back to the default or the card's value"),
        new(Act.ToSaved, 'b', [], "back to the saved value"),
        new(Act.Undo, 'u', [new(KeyName.Letter, 'z', Ctrl: true)], "undo"),
        new(Act.Redo, 'r', [new(KeyName.Letter, 'y', Ctrl: true)], "redo"),
        new(Act.ViewVerdicts, 'v', [], "verdicts and what is asked for"),
        new(Act.ViewNoise, 'n', [], "noise, source by source"),
        new(Act.ViewMains, 'm', [], "mains hum and its harmonics"),
        new(Act.ViewLevels, 'l', [], "levels: offset, headroom, clipping"),
        new(Act.ViewAliases, 'a', [], "aliases: what folds and where it lands"),
        new(Act.ViewSafety, 'f', [], "safety: currents after a fault"),
        new(Act.ViewPower, 'p', [], "power and data rate"),
        new(Act.ViewSheet, 's', [], "the design's name, purpose, montage; write its sheet"),
        new(Act.Plot, 'g', [], "graph over the whole screen"),
        new(Act.AddStage, 'i', [], "insert a gain stage, a filter, a band"),
        new(Act.RemoveStage, 'x', [new(KeyName.Delete)], "remove the stage, filter or band in hand"),
        new(Act.MoveEarlier, '<', [], "move the stage, filter or band in hand one place nearer the scalp"),
        new(Act.MoveLater, '>', [], "move it one place nearer the samples"),
        new(Act.Apply, 'h', [], "make the change that helps most for the figure in hand"),
        new(Act.Compare, 'c', [], "compare two designs; with one open: against its saved file"),
        new(Act.NextDesign, 'k', [], "next open design"),
        new(Act.CloseDesign, '\0', [new(KeyName.Letter, 'w', Ctrl: true)], "close this design"),
        new(Act.Open, 'o', [new(KeyName.Letter, 'o', Ctrl: true)], "open a design"),
        new(Act.Save, 'w', [new(KeyName.Letter, 's', Ctrl: true)], "save"),
        new(Act.SaveAs, 'e', [], "save under another name"),
        new(Act.WriteSheet, 'y', [], "write the sheet"),
        new(Act.More, MoreLetter, [], "more: studies of the design, sites, glossary, files"),
        new(Act.Rates, '\0', [], "sampling rates against each other, with a pick") { Under = 'r' },
        new(Act.Spread, '\0', [], "spread: thousands of builds with drawn parts, yield") { Under = 's' },
        new(Act.Sizing, '\0', [], "size the rest: designs that meet what is asked") { Under = 'z' },
        new(Act.Bench, '\0', [], "bench: fixtures and the readings to expect") { Under = 'b' },
        new(Act.Sites, '\0', [], "sites on the head, distances, montages") { Under = 'e' },
        new(Act.Glossary, '\0', [], "glossary of terms and symbols") { Under = 'g' },
        new(Act.WriteCoefficients, '\0', [], "write the digital filters' coefficients") { Under = 'c' },
        new(Act.TakeFromDisk, '!', [], "take over what has changed on disk: the design's file, its cards") { Under = 'd' },
        new(Act.Tour, 't', [], "guided tour, ten steps"),
        new(Act.FieldHelp, '\0', [new(KeyName.Letter, ' '), new(KeyName.F1)], "the whole help of the field or figure in hand"),
        new(Act.Help, '?', [], "this help"),
        new(Act.Copy, '\0', [new(KeyName.Letter, 'c', Ctrl: true)], "in a field: copy; elsewhere: ask whether to quit"),
        new(Act.Redraw, '\0', [new(KeyName.F5), new(KeyName.Letter, 'l', Ctrl: true)], "draw everything anew"),
        new(Act.Quit, 'q', [new(KeyName.Letter, 'q', Ctrl: true)], "quit"),
    ];

    /// <summary>What stands under the key of <see cref="Act.More"/>, in the order of the table.</summary>
    public static readonly IReadOnlyList<Row> More = [.. Rows.Where(row => row.Under != '\0')];

    private static readonly Dictionary<Keystroke, Act> Plain = Build(plain: true);
    private static readonly Dictionary<Keystroke, Act> Always = Build(plain: false);

    public static Row Of(Act act) => Rows.First(row => row.Act == act);

    /// <summary>What a key means while no field is being typed in; null for nothing.</summary>
    public static Act? Meaning(Keystroke key) => Plain.TryGetValue(key, out Act act) || Plain.TryGetValue(key with { Shift = false }, out act) ? act : null;

    /// <summary>What a key means while a field is being typed in: the Alt forms and the Ctrl keys; null for nothing.</summary>
    public static Act? MeaningWhileTyping(Keystroke key) => Always.TryGetValue(key with { Shift = false }, out Act act) ? act : null;

    private static Dictionary<Keystroke, Act> Build(bool plain)
    {
        Dictionary<Keystroke, Act> map = [];
        foreach (Row row in Rows)
        {
            if (row.Letter != '\0')
            {
                map[new Keystroke(KeyName.Letter, row.Letter, Alt: true)] = row.Act;
                if (plain)
                {
                    map[Keystroke.Of(row.Letter)] = row.Act;
                    if (char.IsAsciiLetterLower(row.Letter))
                    {
                        // Caps lock must not make the keys dead.
                        map[Keystroke.Of(char.ToUpperInvariant(row.Letter))] = row.Act;
                    }
                }
            }

            foreach (Keystroke key in row.Others)
            {
                if (plain || key.Ctrl || key.Key == KeyName.F1)
                {
                    map[key] = row.Act;
                }
            }
        }

        return map;
    }
}
