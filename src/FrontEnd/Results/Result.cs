using FrontEnd.Citations;
using FrontEnd.Identity;

namespace FrontEnd.Results;

/// <summary>One figure that follows from a design, with everything needed to answer "why?".</summary>
public sealed record Result
{
    /// <summary>Which figure it is.</summary>
    public required ResultId Id { get; init; }

    /// <summary>What it is, in words of the trade, with its kind: "noise at the electrodes, rms".</summary>
    public required string Name { get; init; }

    /// <summary>Of the frequency at which something lands: what lands there, "mains harmonic 3" or the interferer's name. Null for every
    /// other figure.</summary>
    public string? WhatLands { get; init; }

    /// <summary>The formula symbol, such as σ or G.</summary>
    public required string Symbol { get; init; }

    /// <summary>The figure; null where <see cref="State"/> says that there is no number.</summary>
    public IQuantity? Value { get; init; }

    /// <summary>Whether there is a number, and if not, why.</summary>
    public ResultState State { get; init; } = ResultState.Number;

    /// <summary>Where the figure lies, where <see cref="State"/> is <see cref="ResultState.Interval"/>; else null.</summary>
    public Interval? Interval { get; init; }

    /// <summary>Of a figure without bound: true where it is below every number, such as a level of nothing in decibels, false where it is above every
    /// one.</summary>
    public bool IsBelowAll { get; init; }

    /// <summary>The unit's symbol, also where there is no number; "" for a word.</summary>
    public required string Unit { get; init; }

    /// <summary>The result itself where it is a word, else a remark to be shown beside the number; null for none.</summary>
    public string? Text { get; init; }

    /// <summary>Of channels that have names the one that the figure is of; null for a figure of the whole device, and where they have none.</summary>
    public string? Channel { get; init; }

    /// <summary>Share of the variance of the total that it is a part of, 0 to 1; null for what is no part of such a total, and where the
    /// total is 0.</summary>
    public double? ShareOfVariance { get; init; }

    /// <summary>Of the frequency at which a mains harmonic lands: whether that lies in the band at some mains frequency within its
    /// deviation. Null for every other figure.</summary>
    public bool? LandsInBand { get; init; }

    /// <summary>How it is worked out, and where that is written.</summary>
    public required Equation Equation { get; init; }

    /// <summary>The equation with this design's numbers put in, made when it is first read; "" where the network was solved and no formula
    /// is short enough.</summary>
    public string Substituted => field ??= Numbers?.Invoke() ?? "";

    /// <summary>Makes <see cref="Substituted"/>; null for nothing.</summary>
    internal Func<string>? Numbers { get; init; }

    /// <summary>The same figure by the textbook formula, where there is one.</summary>
    public HandFigure? Hand { get; init; }

    /// <summary>What is to be said about it against its limit.</summary>
    public Verdict Verdict { get; init; } = Verdict.NotJudged;

    /// <summary>The code of the finding that says why the value is missing; null unless <see cref="State"/> is <see
    /// cref="ResultState.Missing"/>.</summary>
    public string? FindingCode { get; init; }

    /// <summary>The value in SI units; throws where there is no number.</summary>
    public double Si => Value?.SiValue ?? throw new InvalidOperationException($"{Id} has no number: {State}.");
}

/// <summary>Whether a result is a number, a word, a ratio without bound, an interval, or could not be computed.</summary>
public enum ResultState
{
    Number,

    /// <summary>The result is <see cref="Result.Text"/>.</summary>
    Word,

    /// <summary>Without bound (a ratio also beyond 300 dB): <see cref="UnboundedWords"/> says which way, <see cref="Result.Text"/> why.</summary>
    Unbounded,

    /// <summary>The design leaves values open that the figure rests on: <see cref="Result.Interval"/> says where it lies.</summary>
    Interval,

    /// <summary>Could not be computed; <see cref="Result.FindingCode"/> says why.</summary>
    Missing,
}
