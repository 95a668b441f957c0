using Ohmstead.Workshop.Drawers;
using Ohmstead.Workshop.Journal;

namespace Ohmstead.App.Demo;

/// <summary>The drawer of the invented workshop: a dozen bins, a kit, a donor, an order on its way.</summary>
internal static class DemoDrawer
{
    private const double LeadDays = 14;

    private static readonly (string Tag, string Name, string Part, int Count, decimal Price, double PerYear)[] Fronts =
    [
        ("A1", "Pilot lamp 6 V", "lamp-6v", 8, 1.60m, 8),
        ("A2", "Pilot lamp 14 V", "lamp-14v", 2, 1.60m, 24),
        ("B1", "Cord, 18 AWG", "cord-18-2", 3, 7.50m, 9),
        ("B2", "Grommet", "", 11, 0.80m, 9),
        ("C1", "Roller, carbon", "roller", 0, 5.10m, 7),
        ("C2", "Roller pin", "", 14, 0.60m, 7),
        ("C3", "Shoe", "shoe", 4, 6.00m, 4),
        ("C4", "Whistle disc", "disc", 3, 6.50m, 5),
        ("D1", "Breaker 6 A", "breaker-6a", 0, 14.00m, 2),
        ("D2", "Post nut", "", 27, 0.25m, 20),
        ("D3", "Sleeving, feet", "", 15, 0.60m, 30),
        ("D4", "Diode 8 A", "", 9, 1.20m, 3),
    ];

    /// <summary>What the carbon roller of a repaired unit came out of.</summary>
    public static FromDrawer Roller { get; } = new(Id(5), Id(101), 1, "Roller, carbon", "Fernlea Parts, lot 41");

    /// <summary>Its entries.</summary>
    /// <param name="now">When the workshop is looked at.</param>
    public static IEnumerable<DrawerEntry> Entries(DateTimeOffset now) => [.. Bins(now), .. Since(now)];

    private static IEnumerable<DrawerEntry> Bins(DateTimeOffset now)
    {
        for (var n = 0; n < Fronts.Length; n++)
        {
            var (tag, name, part, count, price, perYear) = Fronts[n];
            yield return new(
                Id(50 + n),
                now.AddDays(-200).AddMinutes(n),
                "bench",
                [
                    new BinSaid(Id(n + 1))
                    {
                        Tag = tag,
                        Name = name,
                        Part = part,
                        Price = price,
                        LeadDays = name.Contains("14 V", StringComparison.Ordinal) ? 35 : LeadDays,
                        PerYear = perYear,
                    },
                    new BinCounted(Id(n + 1), count),
                ]
            );
        }
    }

    private static IEnumerable<DrawerEntry> Since(DateTimeOffset now)
    {
        var bought = now.AddDays(-60);
        yield return new(
            Id(101),
            bought,
            "bench",
            [new PartsReceived(Id(5), 6, "Fernlea Parts", "41", DateOnly.FromDateTime(bought.UtcDateTime))]
        );
        yield return new(
            Id(102),
            now.AddDays(-50),
            "bench",
            [
                new KitSaid(Id(200), "Cord and plug", [new(Id(3), 1), new(Id(4), 1)], 0),
                new KitSaid(Id(201), "Roller, one track", [new(Id(5), 1), new(Id(6), 1)], 1),
            ]
        );
        yield return new(Id(103), now.AddDays(-40), "bench", [new DonorSaid(Id(210), "0388", null, [new(Id(10), 4)], "cover, one arm")]);
        yield return new(Id(104), now.AddDays(-9), "bench", [new PartsOrdered(Id(9), 2, "Fernlea Parts", 14.00m)]);
    }

    private static Guid Id(int number) => new(number, 0x5d, 0, new byte[8]);
}
