using System.Collections.Immutable;
using System.Diagnostics;
using System.Globalization;
using Ohmstead.Workshop.Days;

namespace Ohmstead.Perf.Days;

/// <summary>Twenty drawn days of twelve units: how long each takes to order, and how near it comes to its own bound.</summary>
internal static class DayFigures
{
    private const int Days = 20;
    private const int Units = 12;
    private const int MustHold = 18;
    private const double MostSeconds = 5;
    private const double MostOver = 0.05;

    public static int Run()
    {
        var held = 0;
        Console.WriteLine("day  tasks  seconds  late  over bound  orders");
        for (var seed = 1; seed <= Days; seed++)
        {
            var (units, hours) = Draw(seed);
            var clock = Stopwatch.StartNew();
            var plan = DayPlanner.Plan(units, hours, DayBudget.Usual, CancellationToken.None);
            var seconds = clock.Elapsed.TotalSeconds;
            var start = hours.Fit(0, 1);
            var over = (double)(plan.EndsAt - plan.NoneEndsBefore) / (plan.NoneEndsBefore - start);
            if (seconds <= MostSeconds && over <= MostOver)
                held++;
            Console.WriteLine(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"{seed, 3}  {plan.Tasks.Length, 5}  {seconds, 7:0.00}  {plan.Late, 4}  {100 * over, 9:0.0}%  {plan.Weighed, 6}"
                )
            );
        }
        Console.WriteLine(
            string.Create(CultureInfo.InvariantCulture, $"{held} of {Days} within {MostSeconds} s and {100 * MostOver} % of their bound")
        );
        return held >= MustHold ? 0 : 1;
    }

    private static (ImmutableArray<DayUnit> Units, DayHours Hours) Draw(int seed)
    {
        var dice = new Random(seed);
        var drawn = ImmutableArray.CreateBuilder<DayUnit>();
        for (var u = 0; u < Units; u++)
            drawn.Add(
                new(
                    Guid.Empty,
                    "",
                    [
                        .. Enumerable
                            .Range(0, dice.Next(2, 7))
                            .Select(_ => new DayTask("work", 5 * dice.Next(1, 13), "", dice.Next(2) == 0 ? 0 : 5 * dice.Next(2, 37))),
                    ],
                    dice.Next(4) == 0 ? 540 + (5 * dice.Next(24)) : 0,
                    dice.Next(3) == 0 ? 660 + (5 * dice.Next(90)) : null
                )
            );
        return (drawn.ToImmutable(), dice.Next(3) == 0 ? new([(480, 1200)]) : new([(540, 720), (780, 1080)]));
    }
}
