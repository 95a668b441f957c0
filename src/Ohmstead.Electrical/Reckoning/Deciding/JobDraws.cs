using System.Collections.Immutable;

namespace Ohmstead.Electrical.Reckoning.Deciding;

/// <summary>
/// Drawn jobs. Whether a job is stopped does not depend on its minutes, so that every draw is a whole job, and by a draw of its own
/// one of all jobs too. The same seed draws the same.
/// </summary>
internal sealed record JobDraws(Drawn WholeMinutes, Drawn WholeBills, Drawn AllMinutes, Drawn AllBills, double AboveLinePercent, double AboveWorthPercent)
{
    /// <summary>Draws the jobs of a quote.</summary>
    /// <param name="laws">The minutes of its steps.</param>
    public static JobDraws Of(Quote quote, ImmutableArray<MinutesLaw> laws)
    {
        var random = new Random(quote.Seed);
        var normals = new Normals(random);
        var count = quote.Draws;
        var (wholeMinutes, wholeBills, allMinutes, allBills) = (new double[count], new double[count], new double[count], new double[count]);
        var stopsAfter = quote.Steps.Select(s => quote.Stops.Where(stop => stop.After == s.Id).Select(stop => (Share: stop.Percent / 100, Fee: (double)stop.Fee)).ToArray()).ToArray();
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
        double Above(decimal? line) => 100.0 * allBills.Count(b => b > (double?)line) / count;
        var (line, worth) = (Above(quote.ApproveAbove), Above(quote.WorthUpTo));
        return new(Drawn.Of(wholeMinutes), Drawn.Of(wholeBills), Drawn.Of(allMinutes), Drawn.Of(allBills), line, worth);
    }

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
internal readonly record struct Drawn(double P50, double P90)
{
    /// <summary>Sorts the numbers and takes their shares, between two neighbours along a straight line.</summary>
    public static Drawn Of(double[] numbers)
    {
        Array.Sort(numbers);
        return new(At(numbers, 0.5), At(numbers, 0.9));
    }

    /// <summary>With the mean, which is known exactly.</summary>
    public QuoteSpread With(double mean) => new(P50, P90, mean);

    private static double At(double[] sorted, double share)
    {
        var place = share * (sorted.Length - 1);
        var low = (int)place;
        var high = Math.Min(low + 1, sorted.Length - 1);
        return sorted[low] + ((place - low) * (sorted[high] - sorted[low]));
    }
}
