using Microsoft.EntityFrameworkCore;
using Ohmstead.Storage.Rows;
using Ohmstead.Workshop.Job;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Stores;
using Ohmstead.Workshop.Units;

namespace Ohmstead.Storage;

/// <content>The lists of units, and the search.</content>
public sealed partial class Store
{
    /// <summary>A search looks through so many units, those last touched, before it asks which others may have the words.</summary>
    private const int NewestLookedThrough = 1000;

    /// <inheritdoc/>
    public Task<IReadOnlyList<UnitCard>> CardsAsync(bool withHandedBack, CancellationToken cancel) =>
        transactions.ReadAsync<IReadOnlyList<UnitCard>>(
            async context =>
                await context
                    .Units.Where(u => withHandedBack || !u.IsHandedBack)
                    .Select(UnitRow.Light)
                    .OrderByDescending(u => u.LastAt)
                    .ThenBy(u => u.Id)
                    .Select(u => u.Card)
                    .ToListAsync(cancel),
            cancel
        );

    /// <inheritdoc/>
    public Task<FirstCards> OnBenchAsync(int most, CancellationToken cancel) =>
        FirstAsync(isHandedBack: false, most, units => units.OrderBy(u => u.Place).ThenByDescending(u => u.LastAt), cancel);

    /// <inheritdoc/>
    public Task<FirstCards> HandedBackAsync(int most, CancellationToken cancel) =>
        FirstAsync(isHandedBack: true, most, units => units.OrderByDescending(u => u.LastAt), cancel);

    /// <inheritdoc/>
    public Task<IReadOnlyList<UnitCard>> TwiceTaggedAsync(CancellationToken cancel) =>
        transactions.ReadAsync<IReadOnlyList<UnitCard>>(
            async context =>
            {
                var onBench = context.Units.Where(u => !u.IsHandedBack && u.Tag != "");
#pragma warning disable CA1304, CA1311, CA1862, MA0011 // The database does it, which knows no culture.
                var twice = await onBench
                    .GroupBy(u => u.Tag.Trim().ToLower())
                    .Where(tagged => tagged.Count() > 1)
                    .Select(tagged => tagged.Key)
                    .Take(MostTwiceTagged)
                    .ToListAsync(cancel);
                if (twice.Count == 0)
                    return [];
                var cards = onBench.Where(u => twice.Contains(u.Tag.Trim().ToLower())).Select(UnitRow.Light);
#pragma warning restore CA1304, CA1311, CA1862, MA0011
                return await cards.OrderByDescending(u => u.LastAt).ThenBy(u => u.Id).Select(u => u.Card).ToListAsync(cancel);
            },
            cancel
        );

    /// <summary>More tags than a person answers questions of are asked about when the first are answered.</summary>
    private const int MostTwiceTagged = 200;

    /// <inheritdoc/>
    public Task<IReadOnlyDictionary<string, int>> CountOfTypesAsync(string without, CancellationToken cancel) =>
        transactions.ReadAsync<IReadOnlyDictionary<string, int>>(
            async context =>
                await context
                    .Units.Where(u => u.Owner != without)
                    .GroupBy(u => u.SheetId)
                    .Select(units => new { units.Key, Count = units.Count() })
                    .ToDictionaryAsync(c => c.Key, c => c.Count, StringComparer.Ordinal, cancel),
            cancel
        );

    /// <inheritdoc/>
    public Task<IReadOnlyList<Hit>> SearchAsync(string words, int most, CancellationToken cancel)
    {
        var asked = SearchText.Words(words);
        if (asked.Count == 0)
            return Task.FromResult<IReadOnlyList<Hit>>([]);
        return transactions.ReadAsync<IReadOnlyList<Hit>>(
            async context =>
            {
                // Where many units have the words, the newest are there soon; where few have, the database knows which may.
                var newest = context.Units.OrderByDescending(u => u.LastAt).ThenBy(u => u.Id).Take(NewestLookedThrough);
                var units = await FirstWithAsync(newest, asked, most, cancel);
                if (units.Count < most)
                    units = await FirstWithAsync(transactions.MayHave(context, asked), asked, most, cancel);
                var hits = new List<Hit>(units.Count);
                foreach (var unit in units)
                    hits.Add(new Hit(unit.Card, await WhereAsync(context, unit.Card, asked, cancel)));
                return hits;
            },
            cancel
        );
    }

    private Task<FirstCards> FirstAsync(
        bool isHandedBack,
        int most,
        Func<IQueryable<UnitRow>, IOrderedQueryable<UnitRow>> order,
        CancellationToken cancel
    ) =>
        transactions.ReadAsync(
            async context =>
            {
                var units = context.Units.Where(u => u.IsHandedBack == isHandedBack);
                var first = await order(units).ThenBy(u => u.Id).Take(most).Select(UnitRow.Light).ToListAsync(cancel);
                var count = first.Count < most ? first.Count : await units.CountAsync(cancel);
                return new FirstCards(first.ConvertAll(u => u.Card), count);
            },
            cancel
        );

    private static Task<List<UnitRow>> FirstWithAsync(
        IQueryable<UnitRow> units,
        IReadOnlyList<string> asked,
        int most,
        CancellationToken cancel
    )
    {
        foreach (var word in asked)
            units = units.Where(u => u.Search.Contains(word) || u.KindSearch.Contains(word));
        return units.OrderByDescending(u => u.LastAt).ThenBy(u => u.Id).Take(most).Select(UnitRow.Light).ToListAsync(cancel);
    }

    /// <summary>The newest entry with a word that the card does not show; else what the card itself shows.</summary>
    private async Task<string> WhereAsync(WorkshopContext context, UnitCard card, IReadOnlyList<string> asked, CancellationToken cancel)
    {
        var shown = SearchText.Of(string.Join(' ', card.Tag, card.Owner, card.Kind));
        if (asked.FirstOrDefault(w => !shown.Contains(w, StringComparison.Ordinal)) is not { } word)
            return "";
        var json = await context
            .Entries.Where(e => e.UnitId == card.Id && e.Search.Contains(word))
            .OrderByDescending(e => e.Number)
            .Select(e => e.Json)
            .FirstOrDefaultAsync(cancel);
        if (json is null)
            return "";
        var unit = UnitHistory.Fold(await JournalAsync(context, card.Id, cancel));
        return FactWords.Of(FactText.Read(json), await sheets.OfAsync(context, unit, cancel));
    }
}
