using System.Collections.Immutable;
using System.Text.Json;
using Ohmstead.Electrical.Reckoning;
using Ohmstead.Electrical.Reckoning.Deciding;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Words;

namespace Ohmstead.Workshop.Drawers;

/// <summary>What to order today, and for how many jobs the drawer will do: the question <c>stock</c>, filled in from the drawer.</summary>
/// <param name="Lines">To order today, the surest to run out first.</param>
/// <param name="Kits">Each kit, and how many such jobs can be done from what lies in the drawer.</param>
/// <param name="Missing">What planned jobs need and the drawer has not, in words.</param>
/// <param name="Notes">What the answer rests on.</param>
public sealed record DrawerOrders(
    ImmutableArray<OrderLine> Lines,
    ImmutableArray<(DrawerKit Kit, int Jobs)> Kits,
    ImmutableArray<string> Missing,
    ImmutableArray<string> Notes
)
{
    private const double DaysInYear = 365.25;

    /// <summary>Until a bin has a history, one in a year is taken to be used. Common practice, no source.</summary>
    private const double PriorUsed = 0.5;

    private const double PriorYears = 0.5;

    /// <summary>Of the drawer as it stands.</summary>
    public static DrawerOrders Of(Drawer drawer, DateTimeOffset now)
    {
        if (drawer.Bins.IsEmpty)
            return new([], [], [], []);
        var read = QuestionFile.Read(Question(drawer, now), null);
        var answer = (StockAnswer)read.Question!.Answer();
        var items = drawer.Bins.Zip(answer.Items).ToList();
        return new(
            [
                .. items
                    .Where(i => i.Second.OrderQuantity > 0)
                    .OrderByDescending(i => i.Second.RunOutPercent)
                    .ThenBy(i => i.First.Tag, StringComparer.Ordinal)
                    .Select(i => new OrderLine(
                        i.First,
                        (int)i.Second.OrderQuantity,
                        Why(i.First, i.Second),
                        (decimal)i.Second.OrderQuantity * i.First.Price
                    )),
            ],
            [.. drawer.Kits.Zip(answer.Kits, (kit, of) => (kit, (int)(of.JobsPossible ?? 0)))],
            [
                .. items
                    .Where(i => i.Second.Missing > 0)
                    .Select(i =>
                        $"{i.First.Name}: {ValueText.Plain(i.Second.Missing)} short for the planned jobs{(i.Second.FromDonors > 0 ? $", {ValueText.Plain(i.Second.FromDonors)} of them in donors" : "")}."
                    ),
            ],
            [
                .. answer.Words.Skip(1),
                "Until a bin has a history, one a year is taken to be used: common practice, no source. Say on the bin how many you use.",
                .. answer.Outside,
            ]
        );
    }

    /// <summary>The question as a file: <c>ohmstead reckon</c> answers the same.</summary>
    public static string Question(Drawer drawer, DateTimeOffset now)
    {
        var names = Names(drawer);
        Dictionary<string, int> Counts(ImmutableArray<BinCount> counts) =>
            counts.Where(c => names.ContainsKey(c.Bin)).GroupBy(c => names[c.Bin]).ToDictionary(g => g.Key, g => g.Sum(c => c.Count));
        return JsonSerializer.Serialize(
            new
            {
                ohmstead = QuestionFile.Mark,
                question = "stock",
                items = drawer.Bins.Select(b => Item(b, names[b.Id], now)),
                kits = drawer.Kits.Select(k => new { id = KitName(k, drawer), needs = Counts(k.Needs) }),
                planned = drawer.Kits.Where(k => k.Planned > 0).Select(k => new { kit = KitName(k, drawer), count = k.Planned }),
                donors = drawer.Donors.Select((d, n) => new { tag = $"{d.Tag} ({ValueText.Plain(n + 1)})", offers = Counts(d.Left) }),
            },
            TypeSheetFile.Indented
        );
    }

    private static Dictionary<string, object> Item(Bin bin, string name, DateTimeOffset now)
    {
        var item = new Dictionary<string, object>
        {
            ["id"] = name,
            ["leadDays"] = bin.LeadDays,
            ["onHand"] = bin.Count,
            ["onOrder"] = bin.OnOrder,
        };
        if (bin.PerYear is { } perYear)
            item["perYear"] = perYear;
        else
        {
            item["history"] = new { used = bin.Used, years = Math.Clamp((now - bin.Since).TotalDays / DaysInYear, 0, 1000) };
            item["prior"] = new { used = PriorUsed, years = PriorYears };
        }
        return item;
    }

    /// <summary>Tag and name; where two are called the same, the place in the list as well.</summary>
    private static Dictionary<Guid, string> Names(Drawer drawer)
    {
        var twice = drawer.Bins.CountBy(b => b.Title).Where(c => c.Value > 1).Select(c => c.Key).ToHashSet(StringComparer.Ordinal);
        return drawer
            .Bins.Select((bin, n) => (bin.Id, Name: twice.Contains(bin.Title) ? $"{bin.Title} ({ValueText.Plain(n + 1)})" : bin.Title))
            .ToDictionary(b => b.Id, b => b.Name);
    }

    private static string KitName(DrawerKit kit, Drawer drawer) =>
        drawer.Kits.Count(k => k.Name == kit.Name) == 1 ? kit.Name : $"{kit.Name} ({ValueText.Plain(drawer.Kits.IndexOf(kit) + 1)})";

    private static string Why(Bin bin, StockOfItem stock)
    {
        var reserved = bin.Count + bin.OnOrder - stock.Position;
        return $"{Rate(stock.PerYear)}, they take {Wait(bin.LeadDays)}; {(bin.Count == 0 ? "none are" : bin.Count == 1 ? "1 is" : $"{ValueText.Plain(bin.Count)} are")} left"
            + (bin.OnOrder > 0 ? $", {ValueText.Plain(bin.OnOrder)} on order" : "")
            + (reserved > 0 ? $". Planned jobs need {ValueText.Plain(reserved)}." : ".");
    }

    private static string Rate(double perYear) =>
        perYear >= 18 ? $"You use {ValueText.Plain(Math.Round(perYear / 12))} a month"
        : perYear >= 0.75 ? $"You use {ValueText.Plain(Math.Round(perYear))} a year"
        : "You use less than one a year";

    private static string Wait(double days) =>
        days < 0.5 ? "no time to get"
        : days < 14 ? Counted.Of((long)Math.Round(days), "day")
        : Counted.Of((long)Math.Round(days / 7), "week");
}

/// <summary>To order today.</summary>
/// <param name="Why">The reason in words.</param>
/// <param name="Sum">What it costs [money].</param>
public sealed record OrderLine(Bin Bin, int Count, string Why, decimal Sum);
