using System.Collections.Immutable;
using System.Globalization;
using Ohmstead.Workshop.Drawers;
using Ohmstead.Workshop.Findings;
using Ohmstead.Workshop.Shops;

namespace Ohmstead.Workshop.LookingBack;

/// <summary>A year of the shop, to look at.</summary>
/// <param name="Months">Units that came in and went back, month by month, the oldest first.</param>
/// <param name="Hours">At the bench, by the entries [h].</param>
/// <param name="UsualHours">Of what was done, by the usual minutes [h].</param>
/// <param name="Faults">What was found, the commonest first.</param>
/// <param name="Parts">What came out of the drawer, the most first.</param>
/// <param name="Chances">What this shop learned of the chances of faults.</param>
/// <param name="Learned">Units that they are learned from.</param>
public sealed record ShopYear(
    ImmutableArray<(string Month, int In, int Back)> Months,
    double Hours,
    double UsualHours,
    ImmutableArray<LearnedChance> Faults,
    ImmutableArray<(string Name, int Count)> Parts,
    ImmutableArray<ShopChance> Chances,
    int Learned
)
{
    private const int MonthsBack = 12;

    /// <summary>The sheet's chance counts like so many parts looked at. Common practice, no source.</summary>
    public const double Worth = 40;

    /// <summary>A chance that a sheet puts at nothing can still be found [%].</summary>
    private const double Least = 0.1;

    /// <summary>Units that came in, and that went back, in all of it.</summary>
    public (int In, int Back) Units => (Months.Sum(m => m.In), Months.Sum(m => m.Back));

    /// <summary>The twelve months up to now.</summary>
    public static ShopYear Of(IReadOnlyCollection<UnitYear> units, Drawer drawer, DateTimeOffset now, TimeZoneInfo zone)
    {
        var here = TimeZoneInfo.ConvertTime(now, zone);
        var first = new DateOnly(here.Year, here.Month, 1).AddMonths(1 - MonthsBack);
        DateOnly MonthOf(DateTimeOffset at) =>
            TimeZoneInfo.ConvertTime(at, zone) is var then ? new DateOnly(then.Year, then.Month, 1) : default;
        var ofYear = units.Where(u => MonthOf(u.TakenIn) >= first || (u.Returned is { } back && MonthOf(back) >= first)).ToList();
        var learned = LearnedChance.Of(units, Worth, Least);
        var found = units
            .SelectMany(u => u.Found)
            .Where(f => MonthOf(f.At) >= first)
            .CountBy(f => (f.Kind, f.Mode))
            .ToDictionary(f => f.Key, f => f.Value);
        return new(
            Monthly(units, first, MonthOf),
            ofYear.Sum(u => u.Minutes) / 60,
            ofYear.Sum(u => u.UsualMinutes) / 60,
            [
                .. learned
                    .Select(l => l with { InYear = found.GetValueOrDefault((l.Kind, l.Mode)) })
                    .Where(l => l.InYear > 0)
                    .OrderByDescending(l => l.InYear)
                    .ThenBy(l => l.Name, StringComparer.Ordinal),
            ],
            [
                .. Used(drawer, at => MonthOf(at) >= first)
                    .GroupBy(u => u.Name, StringComparer.Ordinal)
                    .Select(g => (g.Key, g.Sum(u => u.Count)))
                    .OrderByDescending(p => p.Item2)
                    .ThenBy(p => p.Key, StringComparer.Ordinal),
            ],
            [.. learned.Where(l => l.Parts > 0).Select(l => new ShopChance(l.Kind, l.Mode, l.Odds, l.Found, l.Parts))],
            units.Count(u => !u.Looked.IsEmpty)
        );
    }

    private static ImmutableArray<(string Month, int In, int Back)> Monthly(
        IReadOnlyCollection<UnitYear> units,
        DateOnly first,
        Func<DateTimeOffset, DateOnly> monthOf
    ) =>
        [
            .. Enumerable
                .Range(0, MonthsBack)
                .Select(first.AddMonths)
                .Select(m =>
                    (
                        m.ToString("MMM", CultureInfo.InvariantCulture),
                        units.Count(u => monthOf(u.TakenIn) == m),
                        units.Count(u => u.Returned is { } back && monthOf(back) == m)
                    )
                ),
        ];

    private static IEnumerable<(string Name, int Count)> Used(Drawer drawer, Func<DateTimeOffset, bool> isOfYear) =>
        drawer
            .Fitted.Where(f => isOfYear(f.At))
            .Select(f => (f.From.Name, f.From.Count))
            .Concat(
                drawer
                    .Entries.Where(e => isOfYear(e.At) && !drawer.Undone.Contains(e.Id))
                    .SelectMany(e => e.Facts.OfType<PartsUsed>())
                    .Select(u => (drawer.Find(u.Bin)?.Name ?? "", u.Count))
                    .Where(u => u.Item1.Length > 0)
            );
}

/// <summary>How often a fault was found, and what its chance is taken to be by that.</summary>
/// <param name="Name">"Worn roller".</param>
/// <param name="Found">How often, in units that were looked through.</param>
/// <param name="Parts">Parts of that kind in them.</param>
/// <param name="SheetPercent">What the type sheets take it for, on average [%].</param>
/// <param name="Percent">That, shrunk towards what was found [%]: a beta law, the sheet's chance worth some tens of parts.</param>
public sealed record LearnedChance(string Kind, string Mode, string Name, int Found, int Parts, double SheetPercent, double Percent)
{
    /// <summary>How often in the year that is looked at.</summary>
    public int InYear { get; init; }

    /// <summary>Times the odds of the sheets.</summary>
    public double Odds => Percent / (100 - Percent) / (SheetPercent / (100 - SheetPercent));

    /// <summary>Of every fault that was looked for or found.</summary>
    /// <param name="worth">Parts that the sheet's chance counts for; above 0.</param>
    /// <param name="least">The least that a sheet's chance is taken for [%].</param>
    public static ImmutableArray<LearnedChance> Of(IEnumerable<UnitYear> units, double worth, double least)
    {
        var all = units.ToList();
        var found = all.Where(u => !u.Looked.IsEmpty)
            .SelectMany(u => u.Found)
            .CountBy(f => (f.Kind, f.Mode))
            .ToDictionary(f => f.Key, f => f.Value);
        var looked = all.SelectMany(u => u.Looked)
            .GroupBy(l => (l.Kind, l.Mode))
            .ToDictionary(g => g.Key, g => (Parts: g.Count(), Percent: Math.Max(least, g.Average(l => l.Percent))));
        var names = looked.Keys.Union(all.SelectMany(u => u.Found).Select(f => (f.Kind, f.Mode)));
        return
        [
            .. names
                .OrderBy(n => n.Kind, StringComparer.Ordinal)
                .ThenBy(n => n.Mode, StringComparer.Ordinal)
                .Select(n =>
                {
                    var (parts, sheet) = looked.GetValueOrDefault(n, (0, least));
                    var count = Math.Min(parts, found.GetValueOrDefault(n));
                    var percent = ((worth * sheet) + (100.0 * count)) / (worth + parts);
                    return new LearnedChance(n.Kind, n.Mode, NameOf(n.Kind, n.Mode), count, parts, sheet, percent);
                }),
        ];
    }

    private static string NameOf(string kind, string mode) =>
        (
            WhatToDo.Rows.FirstOrDefault(r => r.Kind == kind && r.Mode == mode && r.Role.Length == 0)
            ?? WhatToDo.Rows.FirstOrDefault(r => r.Kind == kind && r.Mode == mode)
        )?.Headline
        ?? "Another fault";
}
