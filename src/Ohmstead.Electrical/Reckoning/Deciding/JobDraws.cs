using System.Collections.Immutable;

namespace Ohmstead.Electrical.Reckoning.Deciding;

/// <summary>
/// Drawn jobs. Whether a job is stopped does not depend on its minutes, so that every draw is a whole job, and by a draw of its own
/// one of all jobs too. The same seed draws the same.
/// </summary>
internal sealed record JobDraws(double[] WholeMinutes, double[] WholeBills, double[] AllMinutes, double[] AllBills)
{
    /// <summary>Draws the jobs of a quote.</summary>
    /// <param name="laws">The minutes of its steps.</param>
    public static JobDraws Of(Quote quote, ImmutableArray<MinutesLaw> laws)
    {
        var random = new Random(quote.Seed);
        var normals = new Normals(random);
        var count = quote.Draws;
        var (wholeMinutes, wholeBills, allMinutes, allBills) = (new double[count], new double[count], new double[count], new double[count]);
        var stopsAfter = quote
            .Steps.Select(s =>
                quote.Stops.Where(stop => stop.After == s.Id).Select(stop => (Share: stop.Percent / 100, Fee: (double)stop.Fee)).ToArray()
            )
            .ToArray();
        var shares = quote.Steps.Select(s => s.Percent / 100).ToArray();
        var parts = quote.Parts.Select(p => (Share: p.Percent / 100, Price: (double)p.Price)).ToArray();
        var (common, own) = (Math.Sqrt(quote.Correlation), Math.Sqrt(1 - quote.Correlation));
        var perMinute = (double)quote.RatePerHour / 60;
        for (var n = 0; n < count; n++)
        {
            var slow = common * normals.Next();
            var (minutes, stopped) = (0.0, false);
            for (var s = 0; s < laws.Length; s++)
            {
                var z = slow + (own * normals.Next());
                if (shares[s] >= 1 || random.NextDouble() < shares[s])
                    minutes += Math.Exp(laws[s].LogCentre + (laws[s].LogSpread * z));
                foreach (var (share, fee) in stopsAfter[s])
                {
                    if (stopped || random.NextDouble() >= share)
                        continue;
                    (stopped, allMinutes[n], allBills[n]) = (true, minutes, fee);
                }
            }
            var bill = minutes * perMinute;
            foreach (var (share, price) in parts)
                if (share >= 1 || random.NextDouble() < share)
                    bill += price;
            (wholeMinutes[n], wholeBills[n]) = (minutes, bill);
            if (!stopped)
                (allMinutes[n], allBills[n]) = (minutes, bill);
        }
        return new(wholeMinutes, wholeBills, allMinutes, allBills);
    }

    /// <summary>Of all jobs, how many have a bill above a line; null without one [%].</summary>
    public double? PercentAbove(decimal? line) => line is { } at ? 100.0 * AllBills.Count(b => b > (double)at) / AllBills.Length : null;

    /// <summary>Standard normal draws, two at a time (key box-muller).</summary>
    private sealed class Normals(Random random)
    {
        private double kept;
        private bool hasKept;

        public double Next()
        {
            if (hasKept)
            {
                hasKept = false;
                return kept;
            }
            var length = Math.Sqrt(-2 * Math.Log(1 - random.NextDouble()));
            var (sin, cos) = Math.SinCos(2 * Math.PI * random.NextDouble());
            (kept, hasKept) = (length * sin, true);
            return length * cos;
        }
    }
}

/// <summary>Shares of drawn numbers.</summary>
internal static class Drawn
{
    /// <summary>The shares of some numbers, between two neighbours along a straight line.</summary>
    /// <param name="mean">Theirs, which is known exactly.</param>
    public static QuoteSpread Of(double[] numbers, double mean)
    {
        var sorted = (double[])numbers.Clone();
        Array.Sort(sorted);
        return new(At(sorted, 0.5), At(sorted, 0.9), mean);
    }

    private static double At(double[] sorted, double share)
    {
        var place = share * (sorted.Length - 1);
        var low = (int)place;
        var high = Math.Min(low + 1, sorted.Length - 1);
        return sorted[low] + ((place - low) * (sorted[high] - sorted[low]));
    }
}
