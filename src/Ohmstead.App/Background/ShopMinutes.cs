using System.Collections.Immutable;
using Ohmstead.App.Web;
using Ohmstead.Workshop.Plans;
using Ohmstead.Workshop.Stores;

namespace Ohmstead.App.Background;

/// <summary>What the shop's own units took, step by step, read once and kept until a unit grows.</summary>
public sealed class ShopMinutes(Bench bench)
{
    /// <summary>Units whose minutes are kept at a time.</summary>
    private const int MostUnits = 4096;

    private readonly BoundedCache<Guid, Logged> kept = new("Minutes of units", MostUnits);

    /// <summary>How it stands.</summary>
    public CacheCount Counted => kept.Counted;

    /// <summary>The minutes of every unit but the one that is planned.</summary>
    /// <param name="but">The unit that is planned: what it took itself is no earlier job.</param>
    public async Task<MinuteBook> ReadAsync(Guid but)
    {
        var logged = new List<(string, double)>();
        foreach (var card in (await bench.Store.CardsAsync(true, CancellationToken.None)).OrderBy(c => c.LastAt))
        {
            if (card.Id == but)
                continue;
            var own = kept.Find(card.Id, k => k.LastAt == card.LastAt);
            if (own is null && await bench.Store.ReadAsync(card.Id, CancellationToken.None) is { } unit)
                kept.Keep(
                    card.Id,
                    own = new(card.LastAt, unit.IsPractice ? [] : MinuteBook.LoggedOn(unit, await bench.SheetOfAsync(unit)))
                );
            logged.AddRange(own?.Minutes ?? []);
        }
        return MinuteBook.Of(logged);
    }

    private sealed record Logged(DateTimeOffset LastAt, ImmutableArray<(string, double)> Minutes);
}
