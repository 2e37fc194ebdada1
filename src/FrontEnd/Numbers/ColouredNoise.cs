namespace FrontEnd.Numbers;

/// <summary>What one channel's noise is made of: amplitudes √S at the bins 0 … n/2 of a block, one-sided, S in units squared per hertz.</summary>
/// <param name="Own">What this channel alone has; null for nothing.</param>
/// <param name="Shared">Of each of the sources that channels have in common, with its sign; null where it does not reach this one.</param>
internal sealed record NoiseColour(double[]? Own, IReadOnlyList<double[]?> Shared);

/// <summary>Steady Gaussian noise without end, of several channels, with densities that are given: random amplitudes and random phases.</summary>
/// <remarks>
/// A block is Σ z_k·exp(2πi·kt/n), z_k = √(S(f_k)·fs/(2n))·(a + ib), a and b normal and independent for all k of either sign: real and imaginary
/// part are then two independent real blocks with that density. Blocks overlap by half under sine windows, whose squares add up to 1: the
/// variance is exact, the density is smeared by 1/T of a block, and what lies below 1/T is missing.
/// <para>Source: J. Timmer, M. König, On generating power law noise, Astron. Astrophys. 300 (1995) 707 (abstract read); two blocks from one
/// transform and the windows: derived.</para>
/// </remarks>
internal sealed class ColouredNoise
{
    private readonly int _length;
    private readonly Channel[] _channels;
    private readonly Draw[] _draws;
    private int _at;

    /// <param name="length">n: samples of a block, a power of two.</param>
    /// <param name="rate">fs [Hz].</param>
    /// <param name="colours">One for each channel.</param>
    /// <param name="sources">Names of the sources in common, in the order of <see cref="NoiseColour.Shared"/>: each has a stream of its own, so
    /// that none moves when another is left out.</param>
    /// <param name="seed">Of all streams.</param>
    /// <param name="name">Of this noise, for its streams.</param>
    public ColouredNoise(int length, double rate, IReadOnlyList<NoiseColour> colours, IReadOnlyList<string> sources, ulong seed, string name)
    {
        _length = length;
        double scale = Math.Sqrt(rate / (2.0 * length));
        _draws = [.. sources.Select(source => new Draw(length, SeededRandom.For(seed, name, source).Stream))];
        double[] window = [.. Enumerable.Range(0, length).Select(i => Math.Sin((i + 0.5) * Math.PI / length))];
        _channels = [.. colours.Select((colour, i) => new Channel(window, scale, colour, RandomStream.Numbered(seed, name, i)))];
        _at = length / 2;
    }

    /// <summary>A block's length that holds a number of samples, as a power of two.</summary>
    public static int LengthOf(double samples, int least, int most) =>
        (int)Math.Clamp(System.Numerics.BitOperations.RoundUpToPowerOf2((ulong)Math.Ceiling(samples)), (ulong)least, (ulong)most);

    /// <summary>Adds the next samples to each channel's row.</summary>
    public void AddTo(double[][] rows, int count)
    {
        for (int first = 0; first < count;)
        {
            if (_at == _length / 2)
            {
                Advance();
            }

            int taken = Math.Min(count - first, (_length / 2) - _at);
            for (int channel = 0; channel < _channels.Length; channel++)
            {
                ReadOnlySpan<double> ready = _channels[channel].Ready.AsSpan(_at, taken);
                Span<double> row = rows[channel].AsSpan(first, taken);
                for (int i = 0; i < taken; i++)
                {
                    row[i] += ready[i];
                }
            }

            (_at, first) = (_at + taken, first + taken);
        }
    }

    private void Advance()
    {
        if (_channels[0].IsEmpty)
        {
            foreach (Draw draw in _draws)
            {
                draw.Next();
            }
        }

        InParallel.For(_channels.Length, null, channel => _channels[channel].Advance(_draws));
        _at = 0;
    }

    /// <summary>The random numbers of a source in common, the same for every channel.</summary>
    private sealed class Draw(int length, RandomStream stream)
    {
        private NormalNumbers _numbers = new(stream);

        public double[] Real { get; } = new double[length];

        public double[] Imaginary { get; } = new double[length];

        public void Next() => _numbers.Fill(Real, Imaginary);
    }

    private sealed class Channel
    {
        private readonly int _length;
        private readonly double _scale;
        private readonly NoiseColour _colour;
        private readonly ComplexTransform _transform;
        private readonly double[] _window, _real, _imaginary, _tail;
        private NormalNumbers _numbers;
        private bool _isSecond, _isStarted;

        public Channel(double[] window, double scale, NoiseColour colour, RandomStream stream)
        {
            int length = window.Length;
            (_window, _length, _scale, _colour, _numbers) = (window, length, scale, colour, new NormalNumbers(stream));
            _transform = ComplexTransform.Of(length);
            (_real, _imaginary) = (new double[length], new double[length]);
            (_tail, Ready) = (new double[length / 2], new double[length / 2]);
        }

        /// <summary>The samples that are ready, half a block.</summary>
        public double[] Ready { get; }

        /// <summary>True where the next step needs new random numbers.</summary>
        public bool IsEmpty => !_isSecond;

        /// <summary>Takes the next block of the two that a transform gives; the first of all only leaves its later half.</summary>
        public void Advance(Draw[] draws)
        {
            if (!_isStarted)
            {
                _isStarted = true;
                Make(draws);
                Overlap(_real);
                Overlap(_imaginary);
                return;
            }

            if (!_isSecond)
            {
                Make(draws);
            }

            Overlap(_isSecond ? _imaginary : _real);
            _isSecond = !_isSecond;
        }

        private void Make(Draw[] draws)
        {
            int half = _length / 2;
            _numbers.Fill(_real, _imaginary);
            if (_colour.Own is { } own)
            {
                for (int k = 0; k < _length; k++)
                {
                    double size = own[k <= half ? k : _length - k] * _scale;
                    _real[k] *= size;
                    _imaginary[k] *= size;
                }
            }
            else
            {
                Array.Clear(_real);
                Array.Clear(_imaginary);
            }

            for (int draw = 0; draw < draws.Length; draw++)
            {
                if (_colour.Shared[draw] is { } shared)
                {
                    Add(shared, draws[draw]);
                }
            }

            _transform.Forward(_real, _imaginary);
        }

        private void Add(double[] shared, Draw draw)
        {
            int half = _length / 2;
            for (int k = 0; k < _length; k++)
            {
                double size = shared[k <= half ? k : _length - k] * _scale;
                _real[k] += size * draw.Real[k];
                _imaginary[k] += size * draw.Imaginary[k];
            }
        }

        /// <summary>Ready = the block's first half and what the one before left, each under its window.</summary>
        private void Overlap(double[] block)
        {
            int half = _length / 2;
            for (int i = 0; i < half; i++)
            {
                Ready[i] = _tail[i] + (_window[i] * block[i]);
                _tail[i] = _window[half + i] * block[half + i];
            }
        }
    }
}
