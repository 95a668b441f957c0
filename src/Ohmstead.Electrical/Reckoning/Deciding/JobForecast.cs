using System.Collections.Immutable;

namespace Ohmstead.Electrical.Reckoning.Deciding;

/// <summary>What of a quote can be summed exactly: means, and how many jobs end where.</summary>
internal sealed class JobForecast
{
    /// <param name="laws">The minutes of the steps.</param>
    public JobForecast(Quote quote, ImmutableArray<MinutesLaw> laws)
    {
        var stopPercents = new double[quote.Stops.Length];
        var (left, fees) = (1.0, 0.0);
        for (var s = 0; s < laws.Length; s++)
        {
            var minutes = quote.Steps[s].Percent / 100 * laws[s].MeanMinutes;
            WholeMinutes += minutes;
            // Who comes so far is decided by chance alone, not by the minutes.
            AllMinutes += left * minutes;
            for (var n = 0; n < quote.Stops.Length; n++)
            {
                if (quote.Stops[n].After != quote.Steps[s].Id)
                    continue;
                var ended = left * quote.Stops[n].Percent / 100;
                (stopPercents[n], left, fees) = (100 * ended, left - ended, fees + (ended * (double)quote.Stops[n].Fee));
            }
        }
        StopPercents = [.. stopPercents];
        FinishedPercent = 100 * left;
        WholeBill = (WholeMinutes * (double)quote.RatePerHour / 60) + quote.Parts.Sum(p => p.Percent / 100 * (double)p.Price);
        AllBill = (left * WholeBill) + fees;
    }

    /// <summary>Mean minutes of a job that is not stopped.</summary>
    public double WholeMinutes { get; }

    /// <summary>Mean bill of a job that is not stopped.</summary>
    public double WholeBill { get; }

    /// <summary>Mean minutes of all jobs.</summary>
    public double AllMinutes { get; }

    /// <summary>Mean bill of all jobs.</summary>
    public double AllBill { get; }

    /// <summary>By stop: jobs that end there, of all.</summary>
    public ImmutableArray<double> StopPercents { get; }

    /// <summary>Jobs that end at no stop.</summary>
    public double FinishedPercent { get; }
}
