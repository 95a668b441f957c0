namespace Ohmstead.Workshop.Listening;

/// <summary>One channel as a whole: how loud, and whether it was clipped.</summary>
internal sealed class ChannelSurvey
{
    /// <summary>So many samples in a row at the greatest or the least value are a clipped top.</summary>
    private const int Run = 4;

    /// <summary>Below this no top is a clipped one.</summary>
    private const float LeastLevel = 0.25f;

    private const double MostShare = 0.0005;

    private readonly End top = new();
    private readonly End bottom = new();
    private double sum;
    private double squares;

    public long Count { get; private set; }

    /// <summary>Mean power, without what is constant.</summary>
    public double Power => Count == 0 ? 0 : Math.Max(0, (squares - (sum * sum / Count)) / Count);

    public bool IsClipped => top.Clipped + bottom.Clipped >= MostShare * Count && top.Clipped + bottom.Clipped > 0;

    public void Add(ReadOnlySpan<float> samples, int channel, int channels)
    {
        for (var n = channel; n < samples.Length; n += channels)
        {
            var x = samples[n];
            sum += x;
            squares += x * (double)x;
            top.Add(x);
            bottom.Add(-x);
            Count++;
        }
    }

    /// <summary>The greatest value so far, and the samples in runs of it.</summary>
    private sealed class End
    {
        private float most = float.NegativeInfinity;
        private long clipped;
        private int run;

        public long Clipped => most > LeastLevel ? clipped : 0;

        public void Add(float x)
        {
            if (x < most)
                run = 0;
            else if (x > most)
                (most, clipped, run) = (x, 0, 1);
            else if (++run == Run)
                clipped += Run;
            else if (run > Run)
                clipped++;
        }
    }
}
