namespace Ohmstead.Electrical.Reckoning.Proving;

/// <summary>What was done in a heat run, minute by minute: when the power was off, how warm the room was, when the winding was read.</summary>
internal sealed class HeatTimeline
{
    /// <summary>The power was off so long for each reading, or until it was read.</summary>
    private const double OffSeconds = 30;

    private readonly (double From, double To)[] off;
    private readonly (double Minutes, double Celsius)[] room;
    private readonly double end;

    public HeatTimeline(HeatRun run)
    {
        end = run.EndMinutes;
        off = [.. run.During.Select(d => (d.Minutes, d.Minutes + (Math.Max(OffSeconds, d.SecondsAfter) / 60)))];
        room = [(0, run.Cold.Celsius), .. run.During.Select(d => (d.Minutes, d.AmbientCelsius)), (end, run.EndCelsius)];
        Asked = [end, .. run.During.Select(d => d.Minutes + (d.SecondsAfter / 60)), .. run.After.Select(a => end + (a.Seconds / 60))];
        Pieces = [.. Asked.Concat(off.SelectMany(o => new[] { o.From, o.To })).Concat(room.Select(r => r.Minutes)).Distinct().Order()];
    }

    /// <summary>When the winding is asked for: the last switch-off, then each reading.</summary>
    public double[] Asked { get; }

    /// <summary>Between two of these neither power nor slope of the room changes.</summary>
    public double[] Pieces { get; }

    /// <summary>1 with power on, 0 without, over the piece that ends at a time.</summary>
    public double PowerBefore(double from, double to)
    {
        var middle = (from + to) / 2;
        return middle > end || Array.Exists(off, o => middle > o.From && middle < o.To) ? 0 : 1;
    }

    /// <summary>The room, on straight lines between what was read.</summary>
    public double RoomAt(double minutes)
    {
        for (var n = 1; n < room.Length; n++)
        {
            var (a, b) = (room[n - 1], room[n]);
            if (minutes <= b.Minutes)
                return b.Minutes <= a.Minutes
                    ? b.Celsius
                    : a.Celsius + ((b.Celsius - a.Celsius) * (minutes - a.Minutes) / (b.Minutes - a.Minutes));
        }
        return room[^1].Celsius;
    }
}
