using System.Collections.Immutable;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Shops;
using Ohmstead.Workshop.Units;
using Ohmstead.Workshop.Words;

namespace Ohmstead.Workshop.Plans;

/// <summary>
/// Looks: case, lettering, posts, plating, knobs. What reaches something live is no question of looks: it belongs to the look-over.
/// </summary>
public static class LooksPlan
{
    private const string Prefix = "Looks, ";

    /// <summary>What is usually asked, with minutes and price where it is done. Common practice, no source; prices invented.</summary>
    public static ImmutableArray<LooksNoted> Usual { get; } =
    [
        new("Case", "", false, 20, 1.50m),
        new("Lettering", "", false, 25, 3m),
        new("Posts", "", false, 15, 0.90m),
        new("Plating", "", false, 30, 2m),
        new("Knobs", "", false, 15, 8.50m),
    ];

    /// <summary>The last entry of each part, in the usual order, then in that of the journal.</summary>
    public static ImmutableArray<LooksNoted> Of(BenchUnit unit)
    {
        var noted = unit.All<LooksNoted>().GroupBy(l => l.Fact.Item, StringComparer.Ordinal).Select(g => g.Last().Fact).ToList();
        return [.. Usual.Select(u => noted.Find(n => n.Item == u.Item) ?? u), .. noted.Where(n => !Usual.Any(u => u.Item == n.Item))];
    }

    /// <summary>A note of how a part looks, from what was typed; or what is wrong with it.</summary>
    public static TypedFact Note(string item, string words, bool isToDo, string minutes, string price)
    {
        var (time, money) = (ShopEdit.Number(minutes, 0, 10_000), ShopEdit.Number(price, 0, 1e6));
        return time.Problem.Length > 0 ? new(null, $"Minutes: {time.Problem}")
            : money.Problem.Length > 0 ? new(null, $"Price: {money.Problem}")
            : new(new LooksNoted(item, words.Trim(), isToDo, time.Value, decimal.Round((decimal)money.Value, 2)), "");
    }

    /// <summary>What a line for looks is about, where its heading says already that it is for looks: "Lettering".</summary>
    public static string ItemOf(string line) =>
        Sentences.Large(line.StartsWith(Prefix, StringComparison.Ordinal) ? line[Prefix.Length..] : line);

    /// <summary>Those that are to be done, as lines of a plan.</summary>
    internal static IEnumerable<PlanLine> Lines(BenchUnit unit, MinuteBook book) =>
        Of(unit)
            .Where(l => l.IsToDo)
            .Select(l => new PlanLine(
                PlanLineKind.Looks,
                Prefix + Sentences.Small(l.Item),
                l.Words,
                [new($"looks {l.Item}", $"looks {l.Item}", Math.Max(1, l.Minutes), book[$"looks {l.Item}"], 100)],
                l.Price > 0 ? [new("what it needs", l.Price, 100)] : []
            )
            {
                About = l.Item,
            });
}
