using System.Collections.Immutable;
using Ohmstead.Workshop.Days;

namespace Ohmstead.Workshop.Tests.Days;

/// <summary>Days drawn by a seed: tasks of 5 to 60 minutes, half of them with a wait, a few units due or not ready at once.</summary>
internal static class DrawnDay
{
    public static (ImmutableArray<DayUnit> Units, DayHours Hours) Of(int seed, int units, int most)
    {
#pragma warning disable CA5394 // A drawn day keeps no secret.
        var dice = new Random(seed);
        var drawn = ImmutableArray.CreateBuilder<DayUnit>();
        for (var u = 0; u < units; u++)
        {
            var tasks = Enumerable
                .Range(0, dice.Next(1, most + 1))
                .Select(_ => new DayTask("work", 5 * dice.Next(1, 13), "", dice.Next(2) == 0 ? 0 : 5 * dice.Next(2, 30)))
                .ToImmutableArray();
            drawn.Add(
                new(
                    Guid.Empty,
                    FormattableString.Invariant($"F-{u}"),
                    tasks,
                    dice.Next(4) == 0 ? 540 + (5 * dice.Next(24)) : 0,
                    dice.Next(3) == 0 ? 600 + (5 * dice.Next(80)) : null
                )
            );
        }
        return (drawn.ToImmutable(), dice.Next(3) == 0 ? new([(480, 1200)]) : new([(540, 720), (780, 1080)], 540 + (5 * dice.Next(6))));
#pragma warning restore CA5394
    }
}
