namespace FrontEnd.Identity;

/// <summary>Ids of the figures of one named band.</summary>
/// <param name="Noise">The noise in it, which has the band's own id.</param>
public readonly record struct BandIds(ResultId Noise)
{
    private const string RatioFigure = "ratio";

    public ResultId Ratio => Noise.With(RatioFigure);

    public ResultId Sweeps => Noise.With("sweeps");

    public ResultId SweepTime => Noise.With("sweep_time");

    /// <summary>True for a band's ratio of signal to noise.</summary>
    public static bool IsRatio(ResultId id) => ResultIds.Noise.Bands.Has(id.Stem) && id.Figure == RatioFigure;
}

/// <summary>Ids of the figures of one mains harmonic.</summary>
/// <param name="Stem">Their beginning.</param>
public readonly record struct HarmonicIds(ResultId Stem)
{
    public ResultId Input => Stem.With("input");

    public ResultId Converter => Stem.With("converter");

    public ResultId Recorded => Stem.With("recorded");

    public ResultId LandsAt => Stem.With("lands_at");
}

/// <summary>Ids of the figures of something that folds: an image of an edge, a harmonic, an interferer.</summary>
/// <param name="Stem">Their beginning.</param>
public readonly record struct AliasIds(ResultId Stem)
{
    /// <summary>All of them.</summary>
    public ResultFamily Family => new($"{Stem}.");

    public ResultId LandsAt => Stem.With("lands_at");

    public ResultId Attenuation => Stem.With("attenuation");

    public ResultId Residue => Stem.With("residue");

    public ResultId InBand => Stem.With("in_band");
}

/// <summary>Ids of the figures of one block of the analogue path, or of all of it.</summary>
/// <param name="Stem">Their beginning.</param>
public readonly record struct FilterIds(ResultId Stem)
{
    public ResultId MinusThree => Stem.With("minus_3db");

    public ResultId MinusThreeLow => Stem.With("minus_3db_low");

    public ResultId GroupDelay => Stem.With("group_delay");

    public ResultId Settling => Stem.With("settling");

    public ResultId StopBandTurn => Stem.With("stop_band_turn");

    public ResultId StopBandFloor => Stem.With("stop_band_floor");

    public ResultId NotchDepth => Stem.With("notch_depth");

    public ResultId NotchDepthWorst => Stem.With("notch_depth_worst");
}

/// <summary>Ids of the figures of one digital filter.</summary>
/// <param name="Stem">Their beginning.</param>
public readonly record struct DigitalIds(ResultId Stem)
{
    public ResultId GroupDelay => Stem.With("group_delay");

    public ResultId RingTime => Stem.With("ring_time");

    public ResultId NotchDepth => Stem.With("notch_depth");

    public ResultId PoleMovement => Stem.With("pole_movement");

    public ResultId DcGain => Stem.With("dc_gain");

    public ResultId OverflowBits => Stem.With("overflow_bits");

    public ResultId RoundOff => Stem.With("round_off");

    public ResultId SimulatedRoundOff => Stem.With("round_off_simulated");

    public ResultId DeadBand => Stem.With("dead_band");
}

/// <summary>Ids of the figures of one derived channel.</summary>
/// <param name="Stem">Their beginning.</param>
public readonly record struct MontageIds(ResultId Stem)
{
    public ResultId Noise => Stem.With("noise");

    public ResultId Mains => Stem.With("mains");

    public ResultId SharedReference => Stem.With("shared_reference");
}

/// <summary>Ids of what one channel shows of one source.</summary>
/// <param name="Stem">Their beginning.</param>
public readonly record struct SeeIds(ResultId Stem)
{
    public ResultId Seen => Stem.With("seen");

    public ResultId Kept => Stem.With("kept");

    public ResultId ReferenceTakes => Stem.With("reference_takes");

    public ResultId AgainstEars => Stem.With("against_ears");

    public ResultId OfPeak => Stem.With("of_peak");

    public ResultId Density => Stem.With("density");

    public ResultId HalfRegion => Stem.With("half_region");

    /// <summary>The rhythm's rms.</summary>
    public ResultId Signal => Stem.With("signal");

    /// <summary>Which is larger, background or front end.</summary>
    public ResultId LimitedBy => Stem.With("limited_by");

    /// <summary>Background in the source's band.</summary>
    public ResultId Background => Stem.With("background");

    /// <summary>The front end's noise in the source's band.</summary>
    public ResultId FrontEnd => Stem.With("front_end");

    /// <summary>Signal over noise in a band; the band's word last.</summary>
    public ResultId SignalToNoise(string band) => Stem.With("snr").With(Slug.Of(band));

    /// <summary>The same in decibels, where a ratio is asked for.</summary>
    public ResultId SignalToNoiseLevel(string band) => Stem.With("snr_level").With(Slug.Of(band));

    /// <summary>Least to greatest over the skulls.</summary>
    public SpanIds KeptSpan => new(Stem.With("span.kept"));

    /// <summary>Least to greatest over the skulls.</summary>
    public SpanIds SignalToNoiseSpan => new(Stem.With("span.snr"));
}

/// <summary>Ids of a span: the span in words, its ends as numbers.</summary>
/// <param name="Whole">The span in words.</param>
public readonly record struct SpanIds(ResultId Whole)
{
    public ResultId Least => Whole.With("least");

    public ResultId Greatest => Whole.With("greatest");
}

/// <summary>Ids of the distances of two sites on a head.</summary>
/// <param name="Stem">Their beginning.</param>
public readonly record struct DistanceIds(ResultId Stem)
{
    /// <summary>Along a measured arc.</summary>
    public ResultId Tape => Stem.With("tape");

    /// <summary>Over the skin by the sphere model.</summary>
    public ResultId Skin => Stem.With("skin");

    /// <summary>Straight through the head by the sphere model.</summary>
    public ResultId Straight => Stem.With("straight");
}

/// <summary>Ids of the figures at one time after the electrodes were put on.</summary>
/// <param name="Stem">Their beginning.</param>
public readonly record struct ContactTimeIds(ResultId Stem)
{
    public ResultId Resistance => Stem.With("resistance");

    public ResultId Excess => Stem.With("excess");

    public ResultId Noise => Stem.With("noise");

    public ResultId BoardShare => Stem.With("board_share");

    public ResultId MainsRecorded => Stem.With("mains_recorded");
}

/// <summary>Ids of the contact check's readings at one electrode.</summary>
/// <param name="Stem">Their beginning.</param>
public readonly record struct ContactIds(ResultId Stem)
{
    public ResultId Good => Stem.With("good");

    public ResultId Poor => Stem.With("poor");

    public ResultId Open => Stem.With("open");
}
