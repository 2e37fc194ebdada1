using System.Buffers;
using System.Text;

namespace FrontEnd.Terminal;

/// <summary>What a terminal sends, byte by byte, as keys, pastes, clicks and turns of the wheel. What it does not understand it drops: no
/// bytes make it fail, and none keep it from understanding what comes after them.</summary>
/// <remarks>The forms of control sequences and strings are those of ECMA-48, 5.4 and 5.6. Which key sends which sequence is from memory: xterm
/// and what follows it, rxvt (<c>7~</c> Home, <c>8~</c> End, <c>^ $ @</c> for Ctrl and Shift), the Linux console (<c>[[A</c>). Answers of the
/// terminal to questions are dropped too.</remarks>
/// <param name="hear">Takes what was understood.</param>
internal sealed class InputParser(Action<Heard> hear)
{
    /// <summary>A pasted text is cut here: longer than any design.</summary>
    private const int MostPasted = 1 << 20;

    /// <summary>Longer than the parameters of any key or report.</summary>
    private const int MostParameters = 48;

    private const byte Esc = 0x1B, Delete = 0x7F;

    private readonly byte[] _letter = new byte[4];
    private readonly byte[] _parameters = new byte[MostParameters];
    private readonly ArrayBufferWriter<byte> _pasted = new();
    private State _state;
    private bool _alt, _between, _tooLong, _afterReturn;
    private int _escapes, _lettersSoFar, _count, _left, _matched;
    private byte _opener;
    private (int X, int Y)? _down;

    private enum State
    {
        Ground,
        Escape,
        Csi,
        Ss3,
        ConsoleKey,
        OldMouse,
        Text,
        TextEscape,
        Paste,
    }

    private static ReadOnlySpan<byte> PasteEnd => "\u001b[201~"u8;

    /// <summary>True within a pasted text.</summary>
    public bool IsPasting => _state == State.Paste;

    /// <summary>True where more must come, or <see cref="Quiet"/>, before what came last is understood.</summary>
    public bool IsWaiting => _state != State.Ground || _lettersSoFar > 0;

    /// <summary>Takes what the terminal sent next.</summary>
    public void Feed(ReadOnlySpan<byte> bytes)
    {
        foreach (byte one in bytes)
        {
            Take(one);
        }
    }

    /// <summary>Nothing has come for so long that nothing more belongs to what came last: a lone Esc is the key.</summary>
    public void Quiet()
    {
        State state = _state;
        (_state, _lettersSoFar, _alt) = (State.Ground, 0, false);
        switch (state)
        {
            case State.Escape:
                for (int i = 0; i < _escapes; i++)
                {
                    Press(new Keystroke(KeyName.Escape));
                }

                break;
            case State.Ss3 when _count == 0:
                AltLetter((byte)'O');
                break;
            case State.Text when _count == 0:
                AltLetter(_opener);
                break;
            case State.Paste:
                EndPaste(_pasted.WrittenCount);
                break;
        }
    }

    private void Take(byte one)
    {
        switch (_state)
        {
            case State.Ground:
                Plain(one);
                break;
            case State.Escape:
                AfterEscape(one);
                break;
            case State.Csi:
                InSequence(one);
                break;
            case State.Ss3:
                AfterSs3(one);
                break;
            case State.ConsoleKey:
                _state = State.Ground;
                Press(one == 'A' ? new Keystroke(KeyName.F1) : one == 'E' ? new Keystroke(KeyName.F5) : default);
                break;
            case State.OldMouse:
                OldMouse(one);
                break;
            case State.Text:
                _count++;
                _state = one == Esc ? State.TextEscape : one is 0x07 or 0x18 or 0x1A ? State.Ground : State.Text;
                break;
            case State.TextEscape when one == '\\':
                _state = State.Ground;
                break;
            case State.TextEscape:
                _escapes = 1;
                AfterEscape(one);
                break;
            case State.Paste:
                InPaste(one);
                break;
        }
    }

    /// <summary>A byte outside any sequence: a letter, or a control key.</summary>
    private void Plain(byte one)
    {
        if (_lettersSoFar > 0)
        {
            if ((one & 0xC0) == 0x80)
            {
                GoOn(one);
                return;
            }

            _lettersSoFar = 0;
            _alt = false;
        }

        bool secondHalf = one == '\n' && _afterReturn;
        _afterReturn = one == '\r';
        switch (one)
        {
            case Esc:
                BeginEscape();
                break;
            case < 0x20 or Delete:
                // Some terminals send a line's end as two bytes: one key.
                Press(secondHalf ? default : OfControl(one));
                break;
            case < 0x80:
                Press(Keystroke.Of((char)one));
                break;
            case >= 0xC2 and < 0xF5:
                _letter[0] = one;
                (_lettersSoFar, _left) = (1, one < 0xE0 ? 2 : one < 0xF0 ? 3 : 4);
                break;
            default:
                _alt = false;
                break;
        }
    }

    /// <summary>The second to fourth byte of a letter beyond ASCII.</summary>
    private void GoOn(byte one)
    {
        _letter[_lettersSoFar++] = one;
        if (_lettersSoFar < _left)
        {
            return;
        }

        ReadOnlySpan<byte> whole = _letter.AsSpan(0, _lettersSoFar);
        _lettersSoFar = 0;

        // With Alt only the letters of the keys mean anything.
        bool known = Rune.DecodeFromUtf8(whole, out Rune rune, out int length) == OperationStatus.Done && length == whole.Length && !_alt;
        _alt = false;
        Press(known ? OfRune(rune.Value) : default);
    }

    private void BeginEscape() => (_state, _escapes, _alt) = (State.Escape, 1, false);

    private void AfterEscape(byte one)
    {
        if (one == Esc)
        {
            if (_escapes == 2)
            {
                Press(new Keystroke(KeyName.Escape));
            }

            _escapes = 2;
            _state = State.Escape;
            return;
        }

        bool sequence = one is (byte)'[' or (byte)'O';
        if (_escapes == 2 && !sequence)
        {
            Press(new Keystroke(KeyName.Escape));
        }

        _alt = sequence && _escapes == 2;
        (_count, _between, _tooLong, _opener) = (0, false, false, one);
        switch (one)
        {
            case (byte)'[':
                _state = State.Csi;
                break;
            case (byte)'O':
                _state = State.Ss3;
                break;
            case (byte)']' or (byte)'P' or (byte)'X' or (byte)'^' or (byte)'_':
                _state = State.Text;
                break;
            default:
                _state = State.Ground;
                AltLetter(one);
                break;
        }
    }

    /// <summary>A key with Alt: the byte after an Esc.</summary>
    private void AltLetter(byte one)
    {
        _alt = true;
        if (one < 0x20 || one >= Delete)
        {
            Plain(one);
            return;
        }

        Press(OfKey(one, new Modifiers(Alt: true)));
    }

    private void InSequence(byte one)
    {
        switch (one)
        {
            case >= 0x30 and < 0x40:
                Keep(one);
                break;
            case (byte)'$' when _count > 0 && !_parameters.AsSpan(0, _count).ContainsAnyExceptInRange((byte)'0', (byte)'9'):
                End(one);
                break;
            case >= 0x20 and < 0x30:
                _between = true;
                break;
            case (byte)'[' when _count == 0 && !_between:
                _state = State.ConsoleKey;
                break;
            case (byte)'M' when _count == 0 && !_between:
                _state = State.OldMouse;
                break;
            case >= 0x40 and < Delete:
                End(one);
                break;
            default:
                // Not of a sequence: what came of it is dropped, and this stands for itself.
                (_state, _alt) = (State.Ground, false);
                Plain(one);
                break;
        }
    }

    private void Keep(byte one)
    {
        if (_count < MostParameters)
        {
            _parameters[_count++] = one;
        }
        else
        {
            _tooLong = true;
        }
    }

    /// <summary>The last byte of a control sequence.</summary>
    private void End(byte last)
    {
        _state = State.Ground;
        bool alt = _alt;
        _alt = false;
        if (_between || _tooLong)
        {
            return;
        }

        if (_count > 0 && _parameters[0] == '<')
        {
            (int Value, int Event)[] report = Numbers(1);
            if (report.Length == 3 && last is (byte)'M' or (byte)'m')
            {
                Mouse(report[0].Value, report[1].Value, report[2].Value, released: last == 'm');
            }

            return;
        }

        if (_count > 0 && _parameters[0] > ';')
        {
            return;
        }

        (int Value, int Event)[] numbers = Numbers(0);
        if (last == '~' && numbers is [(200, _)])
        {
            (_state, _matched) = (State.Paste, 0);
            _pasted.ResetWrittenCount();
            return;
        }

        if (last == 'M' && numbers.Length == 3)
        {
            Mouse(numbers[0].Value - 32, numbers[1].Value, numbers[2].Value, released: (numbers[0].Value & 3) == 3);
            return;
        }

        _alt = alt;
        Press(OfSequence(last, numbers));
    }

    private static Keystroke OfSequence(byte last, (int Value, int Event)[] numbers)
    {
        (int first, int second) = (numbers is [var one, ..] ? one.Value : 0, numbers is [_, var two, ..] ? two.Value : 0);
        if (numbers.Length > 3 || numbers is [_, (_, 3), ..] || Modifiers.Of(second) is not { } held)
        {
            // The release of a key, or a modifier that no key here has.
            return default;
        }

        return last switch
        {
            (byte)'u' when numbers.Length > 0 => OfKey(first, held),
            (byte)'~' when first == 27 && numbers.Length == 3 => OfKey(numbers[2].Value, held),
            (byte)'~' when numbers.Length is 1 or 2 => held.On(OfNumber(first)),
            (byte)'^' when numbers.Length == 1 => new Modifiers(Ctrl: true).On(OfNumber(first)),
            (byte)'$' when numbers.Length == 1 => new Modifiers(Shift: true).On(OfNumber(first)),
            (byte)'@' when numbers.Length == 1 => new Modifiers(Ctrl: true, Shift: true).On(OfNumber(first)),
            >= (byte)'a' and <= (byte)'d' when numbers.Length == 0 => new Modifiers(Shift: true).On(OfFinal((byte)(last - 0x20))),
            (byte)'Z' when numbers.Length < 2 => new Keystroke(KeyName.Tab, Shift: true),
            _ when numbers.Length < 3 && first < 2 => held.On(OfFinal(last)),
            _ => default,
        };
    }

    /// <summary>A key of the keypad or an arrow after ESC O; some terminals put a modifier before the last byte.</summary>
    private void AfterSs3(byte one)
    {
        if (one is >= (byte)'0' and <= (byte)'9' or (byte)';')
        {
            Keep(one);
            return;
        }

        bool alt = _alt;
        (_state, _alt) = (State.Ground, false);
        if (one is < 0x20 or >= Delete)
        {
            if (_count == 0)
            {
                AltLetter((byte)'O');
            }

            Plain(one);
            return;
        }

        (int Value, int Event)[] numbers = Numbers(0);
        if (_tooLong || numbers.Length > 2 || Modifiers.Of(numbers is [.., var last] ? last.Value : 0) is not { } held)
        {
            return;
        }

        _alt = alt;
        Press(held.On(one switch
        {
            (byte)'M' => new Keystroke(KeyName.Enter),
            (byte)'I' => new Keystroke(KeyName.Tab),
            (byte)' ' or (byte)'=' => Keystroke.Of((char)one),
            (byte)'X' => Keystroke.Of('='),
            >= (byte)'j' and <= (byte)'y' => Keystroke.Of("*+,-./0123456789"[one - 'j']),
            >= (byte)'a' and <= (byte)'d' => new Modifiers(Ctrl: true).On(OfFinal((byte)(one - 0x20))),
            _ => OfFinal(one),
        }));
    }

    private void InPaste(byte one)
    {
        _matched = one == PasteEnd[_matched] ? _matched + 1 : one == Esc ? 1 : 0;
        bool ended = _matched == PasteEnd.Length;
        if (_pasted.WrittenCount < MostPasted)
        {
            _pasted.GetSpan(1)[0] = one;
            _pasted.Advance(1);
            if (ended)
            {
                EndPaste(_pasted.WrittenCount - PasteEnd.Length);
            }
        }
        else if (ended)
        {
            EndPaste(_pasted.WrittenCount);
        }
    }

    private void EndPaste(int length)
    {
        (_state, _matched) = (State.Ground, 0);
        hear(new Heard.Paste(Encoding.UTF8.GetString(_pasted.WrittenSpan[..length])));
        _pasted.ResetWrittenCount();
    }

    /// <summary>Three bytes: button, column and row, each 32 more than it is.</summary>
    private void OldMouse(byte one)
    {
        _parameters[_count++] = one;
        if (_count == 3)
        {
            _state = State.Ground;
            int button = _parameters[0] - 32;
            Mouse(button, _parameters[1] - 32, _parameters[2] - 32, released: (button & 3) == 3);
        }
    }

    /// <param name="button">Bits: 0 and 1 the button, 2 to 4 modifiers, 5 a move, 6 the wheel.</param>
    private void Mouse(int button, int column, int row, bool released)
    {
        const int Buttons = 3, Move = 32, Wheel = 64, Further = 128;
        if (button < 0 || button >= Further || (button & Move) != 0 || column < 1 || row < 1)
        {
            return;
        }

        (int X, int Y) at = (column - 1, row - 1);
        if ((button & Wheel) != 0)
        {
            if (!released && (button & Buttons) < 2)
            {
                hear(new Heard.Wheel((button & Buttons) == 0 ? -1 : 1, at.X, at.Y));
            }
        }
        else if (released)
        {
            bool here = _down == at;
            _down = null;
            if (here)
            {
                hear(new Heard.Click(at.X, at.Y));
            }
        }
        else
        {
            _down = (button & Buttons) == 0 ? at : null;
        }
    }

    /// <summary>The parameters from a place on, each with what stands behind its colon; an empty one is 0, one that is too large the largest.</summary>
    private (int Value, int Event)[] Numbers(int from)
    {
        if (_count <= from)
        {
            return [];
        }

        List<(int Value, int Event)> numbers = [];
        ReadOnlySpan<byte> text = _parameters.AsSpan(from, _count - from);
        foreach (Range part in text.Split((byte)';'))
        {
            ReadOnlySpan<byte> one = text[part];
            int colon = one.IndexOf((byte)':');
            numbers.Add(colon < 0 ? (Number(one), 0) : (Number(one[..colon]), Number(one[(colon + 1)..])));
        }

        return [.. numbers];

        static int Number(ReadOnlySpan<byte> digits)
        {
            const int Most = 100_000_000;
            int value = 0;
            foreach (byte digit in digits)
            {
                value = digit is < (byte)'0' or > (byte)'9' || value > Most ? Most + 1 : (10 * value) + digit - '0';
            }

            return value;
        }
    }

    private void Press(Keystroke key)
    {
        bool alt = _alt;
        _alt = false;
        if (key.Key != KeyName.None)
        {
            hear(new Heard.Key(alt ? key with { Alt = true } : key));
        }
    }

    private static Keystroke OfControl(int code) => code switch
    {
        '\t' => new Keystroke(KeyName.Tab),
        '\r' or '\n' => new Keystroke(KeyName.Enter),
        '\b' or Delete => new Keystroke(KeyName.Backspace),
        Esc => new Keystroke(KeyName.Escape),
        > 0 and < Esc => new Keystroke(KeyName.Letter, (char)(code + 'a' - 1), Ctrl: true),
        _ => default,
    };

    private static Keystroke OfRune(int code) =>
        code is >= 0xA0 and <= 0xFFFF and not (>= 0xD800 and < 0xF900) ? Keystroke.Of((char)code) : default;

    /// <summary>A key by the code of its character.</summary>
    private static Keystroke OfKey(int code, Modifiers held)
    {
        if (code is < 0x20 or Delete)
        {
            return code is '\t' or '\r' or '\b' or Esc or Delete ? held.On(OfControl(code)) : default;
        }

        if (code >= Delete)
        {
            return held.Alt || held.Ctrl ? default : OfRune(code);
        }

        // With Ctrl or Alt the character is the letter of the key.
        char letter = (char)code;
        bool large = char.IsAsciiLetterUpper(letter);
        return held.Alt || held.Ctrl ? held.On(Keystroke.Of(char.ToLowerInvariant(letter)) with { Shift = large })
            : Keystroke.Of(held.Shift && !large ? char.ToUpperInvariant(letter) : letter);
    }

    private static Keystroke OfNumber(int number) => new(number switch
    {
        1 or 7 => KeyName.Home,
        4 or 8 => KeyName.End,
        3 => KeyName.Delete,
        5 => KeyName.PageUp,
        6 => KeyName.PageDown,
        11 => KeyName.F1,
        15 => KeyName.F5,
        21 => KeyName.F10,
        _ => KeyName.None,
    });

    private static Keystroke OfFinal(byte last) => new(last switch
    {
        (byte)'A' => KeyName.Up,
        (byte)'B' => KeyName.Down,
        (byte)'C' => KeyName.Right,
        (byte)'D' => KeyName.Left,
        (byte)'H' => KeyName.Home,
        (byte)'F' => KeyName.End,
        (byte)'P' => KeyName.F1,
        _ => KeyName.None,
    });

    /// <summary>The keys that are held with another one.</summary>
    private readonly record struct Modifiers(bool Alt = false, bool Ctrl = false, bool Shift = false)
    {
        /// <summary>From a sequence's number: one more than the sum of 1 Shift, 2 Alt, 4 Ctrl, 32 Meta, 64 and 128 locks; null where another
        /// key is held, or it is none of these.</summary>
        public static Modifiers? Of(int number)
        {
            const int shift = 1, alt = 2, ctrl = 4, meta = 32, all = 256, foreign = 8 | 16;
            int held = Math.Max(0, number - 1);
            return held >= all || (held & foreign) != 0
                ? null
                : new Modifiers((held & (alt | meta)) != 0, (held & ctrl) != 0, (held & shift) != 0);
        }

        public Keystroke On(Keystroke key) => key.Key == KeyName.None
            ? key
            : key with { Alt = key.Alt || Alt, Ctrl = key.Ctrl || Ctrl, Shift = key.Shift || Shift };
    }
}
