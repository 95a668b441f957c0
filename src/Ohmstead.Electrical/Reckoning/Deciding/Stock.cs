using System.Collections.Immutable;

namespace Ohmstead.Electrical.Reckoning.Deciding;

/// <summary>
/// <c>stock</c>: what to order today, when to order again, and for how many jobs the drawer will do. All sums are exact
/// (docs/methods/deciding.md).
/// </summary>
/// <param name="ReviewDays">So often the drawer is looked through.</param>
internal sealed record Stock(
    ImmutableArray<StockItem> Items,
    ImmutableArray<StockKit> Kits,
    ImmutableArray<PlannedKit> Planned,
    ImmutableArray<Donor> Donors,
    double ReviewDays
) : Question
{
    private const double MostCount = 1e9;

    /// <summary>A large shop has so many kinds of parts.</summary>
    private const int MostItems = 5000;

    internal static NumberRange Count { get; } = new(0, MostCount);

    /// <summary>Reads its fields.</summary>
    public static Stock Read(QuestionFields fields)
    {
        var (itemIds, kitIds, tags) = (NewSet(), NewSet(), NewSet());
        var items = fields.List("items", f => StockItem.Read(f, f.NewId("id", itemIds)), most: MostItems);
        ImmutableArray<(string, double)> Counts(QuestionFields f, string name, NumberRange range) =>
            [.. f.Named(name).Select(n => (n.Name, Counted(n, itemIds, range)))];
        var kits = fields.OptionalList(
            "kits",
            f =>
            {
                if (!f.Has("needs"))
                    f.Report("needs", "is missing", "{ item: count } is required");
                return new StockKit(f.NewId("id", kitIds), Counts(f, "needs", new NumberRange(0, MostCount, WithoutLow: true)));
            }
        );
        return new(
            items,
            kits,
            fields.OptionalList("planned", f => new PlannedKit(f.KnownId("kit", kitIds, "kit"), f.Number("count", Count))),
            fields.OptionalList("donors", f => new Donor(f.NewId("tag", tags), Counts(f, "offers", Count))),
            fields.Number("reviewDays", StockItem.Days, 30)
        );
    }

    private static HashSet<string> NewSet() => new(StringComparer.Ordinal);

    private static double Counted((string Name, QuestionFields At) named, HashSet<string> items, NumberRange range)
    {
        if (!items.Contains(named.Name))
            named.At.Report($"\"{named.Name}\" is no item", "name items of the drawer");
        return named.At.AsNumber(range);
    }

    /// <inheritdoc/>
    public override StockAnswer Answer()
    {
        ImmutableArray<StockOfItem> items = [.. Items.Select(Of)];
        var toOrder = items.Count(i => i.OrderNow);
        return new StockAnswer(items, [.. Kits.Select(k => new StockOfKit(k.Id, JobsPossible(k)))])
        {
            Words =
            [
                toOrder == 0 ? "Nothing to order today."
                : toOrder == 1 ? "Order one item today."
                : FormattableString.Invariant($"Order {toOrder} items today."),
                .. Reasons.If(
                    "The chance of being served is common practice, no source: 95 % unless you set it.",
                    Items.Any(i => i.ServicePercent == StockItem.UsualService)
                ),
            ],
            Outside = ["Parts are taken to be used one by one and at random. A run of like jobs uses them in bunches."],
        };
    }

    private StockOfItem Of(StockItem item)
    {
        double Needs(StockKit kit) => kit.Needs.Where(n => n.Item == item.Id).Sum(n => n.Count);
        var reserved = Planned.Sum(p => p.Count * Needs(Kits.First(k => k.Id == p.Kit)));
        var position = item.OnHand + item.OnOrder - reserved;
        var missing = Math.Max(0, reserved - item.OnHand);
        var reorderAt = item.LeastServed(0);
        var isDue = position <= reorderAt;
        return new StockOfItem(
            item.Id,
            item.PerYear,
            item.PerYear * item.MeanLeadDays / StockItem.DaysInYear,
            reorderAt,
            position,
            isDue,
            position < 0 ? 100 : 100 * item.ChanceAbove(position),
            isDue ? Math.Max(1, item.LeastServed(ReviewDays) - position) : 0,
            missing,
            Math.Min(missing, Donors.Sum(d => d.Offers.Where(o => o.Item == item.Id).Sum(o => o.Count))),
            [.. Kits.Where(k => Needs(k) > 0).Select(k => k.Id).Order(StringComparer.Ordinal)]
        );
    }

    /// <summary>From what lies in the drawer alone; null for a kit that needs nothing.</summary>
    private double? JobsPossible(StockKit kit) =>
        kit.Needs.Length > 0 ? kit.Needs.Min(n => Math.Floor(Items.First(i => i.Id == n.Item).OnHand / n.Count)) : null;
}

/// <summary>What a job of some sort takes out of the drawer.</summary>
internal sealed record StockKit(string Id, ImmutableArray<(string Item, double Count)> Needs);

/// <summary>Jobs that are planned: their parts are reserved.</summary>
internal sealed record PlannedKit(string Kit, double Count);

/// <summary>A unit that parts are taken from.</summary>
internal sealed record Donor(string Tag, ImmutableArray<(string Item, double Count)> Offers);

/// <summary>What <c>stock</c> answers.</summary>
public sealed record StockAnswer(ImmutableArray<StockOfItem> Items, ImmutableArray<StockOfKit> Kits) : Answer;

/// <summary>An item of the drawer.</summary>
/// <param name="LeadDemandMean">Used on average until an order comes.</param>
/// <param name="ReorderAt">The least number that lasts until an order comes, with the chance asked for.</param>
/// <param name="Position">In the drawer and ordered, less what planned jobs need.</param>
/// <param name="RunOutPercent">Chance that more is asked for than that before an order of today comes.</param>
/// <param name="OrderQuantity">To order today; 0 for nothing.</param>
/// <param name="Missing">For the planned jobs, from the drawer alone.</param>
/// <param name="FromDonors">So many of these lie in donors.</param>
/// <param name="UsedIn">Kits, sorted.</param>
public sealed record StockOfItem(
    string Id,
    double PerYear,
    double LeadDemandMean,
    double ReorderAt,
    double Position,
    bool OrderNow,
    double RunOutPercent,
    double OrderQuantity,
    double Missing,
    double FromDonors,
    ImmutableArray<string> UsedIn
);

/// <summary>A kit, and for how many jobs the drawer will do.</summary>
public sealed record StockOfKit(string Id, double? JobsPossible);
