using System.Diagnostics;
using System.Text;

namespace FrontEnd.Terminal;

/// <summary>Tells a typed word from commands. Where each letter is a command, three letters of which none repeats the one before, each within
/// <see cref="BetweenLetters"/> of the last, are a word: nobody gives commands that fast, and whoever types "hello", or whose terminal pastes
/// without saying so, wants none of them. What its first letters did is taken back, the rest does nothing, and the message line says so.</summary>
/// <remarks>Letters that come more slowly, each within <see cref="BetweenSlowLetters"/>, may be commands or a word: they act, but one that saves, ends or
/// removes does not act as the third or a later one of them (<see cref="Act.StandsAlone"/>), and does when it is pressed once more. No key waits for the next one: a letter acts at once, and is taken back where two more follow it like this. Where the whole word came
/// in one piece its first letter does not act either. The letter behind the key of what else there is belongs to that key.</remarks>
internal sealed class WordWatch
{
    /// <summary>Faster than commands are given, slower than words are typed. Typists take 0.1 to 0.2 s a letter (common knowledge, no source).</summary>
    public static readonly TimeSpan BetweenLetters = TimeSpan.FromMilliseconds(150);

    /// <summary>After it a word is over.</summary>
    public static readonly TimeSpan Pause = TimeSpan.FromMilliseconds(400);

    /// <summary>Slower than anybody looks for the letters of a word, about as fast as commands are given one after the other.</summary>
    public static readonly TimeSpan BetweenSlowLetters = TimeSpan.FromMilliseconds(450);

    private const int Most = 40;

    private readonly StringBuilder _run = new();
    private string _lastThree = "";
    private Model? _before;
    private long _last;
    private bool _isWord;

    /// <summary>What a key says: itself, or that it is part of a word.</summary>
    /// <param name="model">The interface as it stands.</param>
    /// <param name="read">When the key was read [ticks of <see cref="Stopwatch"/>].</param>
    /// <param name="ahead">The letters and blanks that were read in one piece with it and follow it.</param>
    public Message Hear(Keystroke key, Model model, long read, string ahead)
    {
        TimeSpan since = Stopwatch.GetElapsedTime(_last, read);
        _last = read;
        _lastThree = IsLetter(key) ? LastThree((since <= BetweenSlowLetters ? _lastThree : "") + char.ToLowerInvariant(key.Letter)) : "";
        if (_isWord && since < Pause && IsOfAText(key))
        {
            return Word(key);
        }

        bool isLetter = IsLetter(key), goesOn = isLetter || (_run.Length > 0 && key == Keystroke.Of(' '));
        if (_isWord || !goesOn || BetweenLetters < since || model.Page is MorePage)
        {
            (_isWord, _before) = (false, null);
            _run.Clear();
        }

        // A command that opens a line to type in may be followed by its text at once; two that do were a word already.
        bool takesText = (model.Editing is not null || model.Page is { TakesText: true }) && _run.Length < 2;
        if (!goesOn || takesText || model.Page is MorePage || model.Tour is not null)
        {
            return new Message.Pressed(key);
        }

        _before ??= model;
        _isWord = IsWord(_run.ToString() + key.Letter + ahead);
        return _isWord ? Word(key) : Pressed(key);
    }

    /// <summary>A letter with neither Alt nor Ctrl.</summary>
    public static bool IsLetter(Keystroke key) => key is { Key: KeyName.Letter, Alt: false, Ctrl: false } && char.IsLetter(key.Letter);

    private static string LastThree(string letters) => letters.Length > 3 ? letters[^3..] : letters;

    private Message.Pressed Pressed(Keystroke key)
    {
        _run.Append(key.Letter);
        return new Message.Pressed(key, _lastThree.Length == 3 && IsWord(_lastThree));
    }

    private Message.Word Word(Keystroke key)
    {
        if (_run.Length < Most)
        {
            _run.Append(key.Key == KeyName.Letter ? key.Letter : ' ');
        }

        return new Message.Word(_run.ToString().Trim(), _before!);
    }

    private static bool IsOfAText(Keystroke key) =>
        key is { Alt: false, Ctrl: false, Key: KeyName.Letter or KeyName.Enter or KeyName.Tab or KeyName.Backspace };

    /// <summary>Held keys and a key pressed again and again are commands.</summary>
    private static bool IsWord(string text)
    {
        string letters = text.Replace(" ", "", StringComparison.Ordinal);
        int changes = 0;
        for (int at = 1; at < letters.Length; at++)
        {
            changes += letters[at] != letters[at - 1] ? 1 : 0;
        }

        return changes >= 2;
    }
}
