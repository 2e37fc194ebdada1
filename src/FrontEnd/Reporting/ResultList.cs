using FrontEnd.Citations;
using FrontEnd.Identity;
using FrontEnd.Results;
using FrontEnd.Textbook;

namespace FrontEnd.Reporting;

/// <summary>Collects results in their order.</summary>
internal sealed class ResultList
{
    /// <summary>A ratio beyond this many decibels counts as unbounded.</summary>
    public const double UnboundedDecibels = 300;

    private const double NoticeableShare = 0.005;
    private const double NoticeablePlain = 0.05;
    private const double SameFigure = 1e-9;

    private readonly List<Result> _results = new(256);
    private readonly Dictionary<ResultId, int> _index = new(256);

    public IReadOnlyList<Result> Results => _results;

    /// <summary>Where each one stands among them.</summary>
    public Dictionary<ResultId, int> Index => _index;

    public Result this[ResultId id] => _results[_index[id]];

    public bool Has(ResultId id) => _index.ContainsKey(id);

    /// <summary>Adds a number; a hand figure is compared with it.</summary>
    public void Number(
        ResultId id, string name, string symbol, IQuantity value, Equation equation, Func<string>? substituted = null,
        TextbookFigure? hand = null, Assumption assumption = default, string? text = null) =>
        Add(new Result
        {
            Id = id,
            Name = name,
            Symbol = symbol,
            Value = value,
            Unit = value.SiUnit,
            Equation = equation,
            Numbers = substituted is null && hand is not null && IsTheFigure(value, hand) ? () => hand.Substituted : substituted,
            Hand = hand is null || !double.IsFinite(hand.Value) ? null : Compare(value, hand, assumption),
            Text = text,
        });

    public void Word(ResultId id, string name, string text, Equation equation) =>
        Add(new Result { Id = id, Name = name, Symbol = "", Unit = "", State = ResultState.Word, Text = text, Equation = equation });

    /// <summary>Adds a figure without bound.</summary>
    /// <param name="below">True where it is below every number.</param>
    public void Unbounded(ResultId id, string name, string symbol, string unit, Equation equation, string text, bool below = false) =>
        Add(new Result { Id = id, Name = name, Symbol = symbol, Unit = unit, State = ResultState.Unbounded, Text = text,
            Equation = equation, IsBelowAll = below });

    public void Missing(ResultId id, string name, string symbol, string unit, Equation equation, string findingCode) =>
        Add(new Result { Id = id, Name = name, Symbol = symbol, Unit = unit, State = ResultState.Missing, Equation = equation,
            FindingCode = findingCode });

    /// <summary>Adds a ratio in decibels, or "unbounded" where there is nothing to divide by or it is beyond 300 dB.</summary>
    public void Decibel(ResultId id, string name, string symbol, double ratio, Equation equation,
        string unboundedText, TextbookFigure? hand = null, Assumption assumption = default, string? text = null)
    {
        if (double.IsNaN(ratio) || ratio <= 0 || UnboundedDecibels < 20 * Math.Log10(ratio))
        {
            Unbounded(id, name, symbol, "dB", equation, unboundedText, below: ratio <= 0);
        }
        else
        {
            Number(id, name, symbol, Decibels.FromVoltageRatio(ratio), equation, hand: hand, assumption: assumption, text: text);
        }
    }

    /// <summary>Puts a verdict on a result.</summary>
    public void Judge(ResultId id, Verdict verdict) => _results[_index[id]] = this[id] with { Verdict = verdict };

    /// <summary>Says of the numbers added from a place on which channel they are of.</summary>
    public void SayChannel(int from, string channel)
    {
        string words = $"channel {channel}";
        for (int i = from; i < _results.Count; i++)
        {
            Result result = _results[i];
            if (result.State is ResultState.Number or ResultState.Unbounded)
            {
                _results[i] = result with { Channel = channel, Text = string.IsNullOrEmpty(result.Text) ? words : $"{result.Text}; {words}" };
            }
        }
    }

    /// <summary>Shows a result's equation with the numbers put in.</summary>
    public void PutIn(ResultId id, Func<string> numbers) => _results[_index[id]] = this[id] with { Numbers = numbers };

    /// <summary>Says of a result which share of a total's variance it has.</summary>
    public void Share(ResultId id, double? ofVariance) => _results[_index[id]] = this[id] with { ShareOfVariance = ofVariance };

    /// <summary>Says of a frequency that sampling folds whether it lands in the band.</summary>
    public void Lands(ResultId id, bool inBand) => _results[_index[id]] = this[id] with { LandsInBand = inBand };

    /// <summary>Says of a frequency that sampling folds what lands there.</summary>
    public void Lands(ResultId id, string what) => _results[_index[id]] = this[id] with { WhatLands = what };

    /// <summary>True where the textbook's formula is how the figure is worked out: then its numbers are the figure's.</summary>
    private static bool IsTheFigure(IQuantity value, TextbookFigure hand) =>
        Math.Abs(hand.Value - value.SiValue) <= SameFigure * Math.Abs(value.SiValue);

    /// <summary>The difference is a share for quantities with a scale and plain for decibels, degrees and bits.</summary>
    private static HandFigure Compare(IQuantity value, TextbookFigure hand, Assumption assumption)
    {
        QuantityKind kind = QuantityKind.Of(value);
        bool plain = kind.ByDifference;
        double network = value.SiValue;
        double difference = plain || network == 0 ? hand.Value - network : (hand.Value / network) - 1;

        // The assumption is named where it shows: below that the formula holds.
        string? failed = (plain ? NoticeablePlain : NoticeableShare) < Math.Abs(difference) ? assumption.Words : null;
        return new HandFigure(kind.FromSi(hand.Value), hand.Formula, hand.Source, difference, failed) { Numbers = () => hand.Substituted };
    }

    private void Add(Result result)
    {
        _index.Add(result.Id, _results.Count);
        _results.Add(result);
    }
}

/// <summary>What a hand formula takes for granted: in words, or what makes them, asked only where the figures differ.</summary>
internal readonly struct Assumption
{
    private readonly string? _words;
    private readonly Func<string>? _make;

    public Assumption(Func<string> make) => _make = make;

    private Assumption(string? words) => _words = words;

    /// <summary>The words; null for none.</summary>
    public string? Words => _words ?? _make?.Invoke();

    public static implicit operator Assumption(string? words) => new(words);
}
