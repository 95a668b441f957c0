using System.Collections.Immutable;
using System.Diagnostics;
using System.Globalization;
using Ohmstead.Workshop.Days;

namespace Ohmstead.Perf.Days;

/// <summary>
/// Twenty drawn days of twelve units for one person, and twenty of twelve units with ten tasks each for four people with an insulation tester
/// and a load bank: how long each takes to order, and how near it comes to its own bound.
/// </summary>
internal static class DayFigures
{
    private const int Days = 20;
    private const int Units = 12;
    private const int MustHold = 18;
    private const double MostSeconds = 5;
    private const double MostOver = 0.05;

    public static int Run() => Run("one person", DrawAlone) + Run("four people, two tools", DrawClub) == 0 ? 0 : 1;

    private static int Run(string who, Func<int, (ImmutableArray<DayUnit> Units, DayTeam Team)> draw)
    {
        var held = 0;
        Console.WriteLine($"{who}\nday  tasks  seconds  late  over bound  orders");
        for (var seed = 1; seed <= Days; seed++)
        {
            var (units, team) = draw(seed);
            var clock = Stopwatch.StartNew();
            var plan = DayPlanner.Plan(units, team, DayBudget.Usual, CancellationToken.None);
            var seconds = clock.Elapsed.TotalSeconds;
            var start = team.People.Min(p => p.Hours.Fit(0, 1));
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

    private static (ImmutableArray<DayUnit> Units, DayTeam Team) DrawAlone(int seed)
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
        return (drawn.ToImmutable(), DayTeam.Of(dice.Next(3) == 0 ? new([(480, 1200)]) : new([(540, 720), (780, 1080)])));
    }

    /// <summary>Two are there all day, two come later or leave earlier; a heat run keeps the load bank while it runs by itself.</summary>
    private static (ImmutableArray<DayUnit> Units, DayTeam Team) DrawClub(int seed)
    {
        var dice = new Random(seed);
        var units = Enumerable
            .Range(0, Units)
            .Select(_ => new DayUnit(
                Guid.Empty,
                "",
                [.. Enumerable.Range(0, 10).Select(_ => ClubTask(dice))],
                dice.Next(4) == 0 ? 540 + (5 * dice.Next(24)) : 0,
                dice.Next(6) == 0 ? 840 + (5 * dice.Next(60)) : null
            ))
            .ToImmutableArray();
        DayHours hours = dice.Next(3) == 0 ? new([(480, 1200)]) : new([(540, 720), (780, 1140)]);
        return (
            units,
            new(
                [
                    new("", hours),
                    new("", hours),
                    new("", hours.Within(540 + (30 * dice.Next(4)), 1440)),
                    new("", hours.Within(0, 960 + (30 * dice.Next(6)))),
                ],
                [],
                hours.Free[^1].To
            )
        );
    }

    private static DayTask ClubTask(Random dice) =>
        dice.Next(20) switch
        {
            0 or 1 => new("insulation", 10, "", 0, "insulation tester"),
            2 => new("heat run", 10, "runs", 5 * dice.Next(4, 10), "load bank", KeepsTool: true),
            _ => new("work", 5 * dice.Next(1, 6), "", dice.Next(3) > 0 ? 0 : 5 * dice.Next(2, 13)),
        };
}
