using System.Collections.Immutable;
using Ohmstead.Workshop.Dating;
using Ohmstead.Workshop.Merging;
using Ohmstead.Workshop.Stores;
using Ohmstead.Workshop.Units;

namespace Ohmstead.App.Web;

/// <summary>What is to be answered after benches were merged, over all units.</summary>
/// <param name="Units">Units with their questions.</param>
/// <param name="Tags">Units that share a tag, two and two.</param>
/// <param name="Types">Types with what is asked of their years and details.</param>
public sealed record OpenQuestions(
    ImmutableArray<(BenchUnit Unit, ImmutableArray<ContradictionWords> Questions)> Units,
    ImmutableArray<(BenchUnit One, BenchUnit Other)> Tags,
    ImmutableArray<(string Id, string Title, ImmutableArray<DatesQuestion> Questions)> Types
)
{
    /// <summary>More units than a person answers at one sitting are read when the first are answered.</summary>
    private const int MostUnits = 40;

    /// <summary>How many there are.</summary>
    public static async Task<int> CountAsync(IStore store) =>
        (await store.ContradictedAsync(CancellationToken.None)).Sum(u => u.Count)
        + (await TagsAsync(store)).Length
        + (await DatesAsync(store)).Sum(t => t.Questions.Length);

    /// <summary>The questions, in words.</summary>
    public static async Task<OpenQuestions> ReadAsync(Bench bench, BenchNames names)
    {
        var units = ImmutableArray.CreateBuilder<(BenchUnit, ImmutableArray<ContradictionWords>)>();
        foreach (var (id, _) in (await bench.Store.ContradictedAsync(CancellationToken.None)).Take(MostUnits))
            if (await bench.ReadAsync(id) is { } unit)
            {
                var sheet = await bench.SheetOfAsync(unit);
                units.Add(
                    (unit, [.. Contradictions.Of(unit).Select(c => ContradictionWords.Of(c, unit, sheet, names, bench.Time.LocalTimeZone))])
                );
            }
        var types = ImmutableArray.CreateBuilder<(string, string, ImmutableArray<DatesQuestion>)>();
        foreach (var (id, questions) in await DatesAsync(bench.Store))
            types.Add((id, await bench.SheetAsync(id) is { Title.Length: > 0 } sheet ? sheet.Title : id, questions));
        return new(units.ToImmutable(), await TagsAsync(bench.Store), types.ToImmutable());
    }

    /// <summary>Types of whose years two benches say different things.</summary>
    private static async Task<ImmutableArray<(string Id, ImmutableArray<DatesQuestion> Questions)>> DatesAsync(IStore store) =>
        [
            .. from document in await store.DocumentsAsync(KindDates.DocumentKind, CancellationToken.None)
            let questions = KindDates.Read(document.Text) is { } dates ? DatesQuestion.Of(dates) : []
            where questions.Length > 0
            select (document.Id, questions),
        ];

    private static async Task<ImmutableArray<(BenchUnit One, BenchUnit Other)>> TagsAsync(IStore store)
    {
        var tags = ImmutableArray.CreateBuilder<(BenchUnit, BenchUnit)>();
        foreach (var (one, other) in TwiceTagged.Candidates(await store.TwiceTaggedAsync(CancellationToken.None)))
            if (
                await store.ReadAsync(one, CancellationToken.None) is { } first
                && await store.ReadAsync(other, CancellationToken.None) is { } second
                && TwiceTagged.IsOpen(first, second)
            )
                tags.Add((first, second));
        return tags.ToImmutable();
    }
}
