using System.Collections.Immutable;
using Ohmstead.Electrical.Carrying;
using Ohmstead.Electrical.Reckoning.Proving;
using Ohmstead.Workshop.Journal;

namespace Ohmstead.Workshop.Job;

/// <summary>What a unit can run of what its owner has: the question <c>load-budget</c> with this unit's own posts, and its answer.</summary>
/// <param name="Question">What was asked.</param>
/// <param name="Answer">What it comes to.</param>
/// <param name="Posts">Each pair of posts, in the order of the sheet.</param>
public sealed record LayoutBudget(LoadBudget Question, LoadBudgetAnswer Answer, ImmutableArray<PostBudget> Posts)
{
    /// <summary>What people run, the usual first: the words of <see cref="LoadBudget.UsualAmps"/>.</summary>
    public static ImmutableArray<string> Consumers { get; } = ["motor", "older motor", "lit car", "lamp", "smoke", "coil", "whistle"];

    /// <summary>What the owner said, of a unit whose posts are known; null where nothing was said or nothing hangs on them.</summary>
    public static LayoutBudget? Of(JudgedUnit judged) =>
        judged.Unit.All<LayoutStated>().Select(l => l.Fact).LastOrDefault() is { } stated
        && Of(judged.Rating, PostSupply.All(judged), stated) is { Answer.TotalAmps: > 0 } budget
            ? budget
            : null;

    /// <summary>
    /// What the whole unit carries for hours: its usable watts at the loaded volts of the pair with the highest, so that a load on a lower
    /// one is never promised more. Rounded down, as what each pair may carry is [A].
    /// </summary>
    internal static double UnitAmps(Rating rating, IEnumerable<OutletLimit> limits) =>
        Math.Max(0.1, Math.Floor((10 * rating.UsableWatts / limits.MaxBy(l => l.IdleVolts)!.LoadedVolts) + 1e-9) / 10);

    /// <summary>The budget of a layout.</summary>
    /// <returns>Null where the posts of the unit are not known.</returns>
    public static LayoutBudget? Of(Rating rating, ImmutableArray<PostSupply> supplies, LayoutStated stated)
    {
        if (supplies.IsEmpty || rating.UsableWatts <= 0)
            return null;
        var usable = UnitAmps(rating, supplies.Select(s => s.Outlet.Limit));
        var said = supplies.Select(s => (Supply: s, Post: PostOf(stated, s.Outlet), Id: IdOf(supplies, s))).ToImmutableArray();
        var question = Asked(usable, said);
        var answer = question.Answer();
        return new(
            question,
            answer,
            [
                .. said.Select(s => new PostBudget(
                    s.Supply,
                    s.Post?.Items ?? [],
                    s.Post?.Wire,
                    answer.Posts.First(p => p.Id == s.Id),
                    question.Posts.First(p => p.Id == s.Id).MostAmps,
                    [.. answer.CanAdd.Where(a => a.Post == s.Id)]
                )),
            ]
        );
    }

    private static LoadBudget Asked(double usableAmps, ImmutableArray<(PostSupply Supply, LayoutPost? Post, string Id)> said) =>
        new(
            usableAmps,
            [
                .. said.Select(s => new LoadPost(
                    s.Id,
                    s.Supply.Volts,
                    s.Supply.SourceOhms,
                    Math.Min(usableAmps, s.Supply.Outlet.MostAmps),
                    WireOf(s.Post),
                    null,
                    5
                )),
            ],
            [
                .. said.SelectMany(s =>
                    (s.Post?.Items ?? []).Select(i => new Consumer(
                        i.What,
                        i.Count,
                        s.Id,
                        LoadBudget.UsualAmps.GetValueOrDefault(i.What),
                        100
                    ))
                ),
            ],
            [.. said.SelectMany(s => Consumers.Select(c => new Consumer(c, 1, s.Id, LoadBudget.UsualAmps[c], 100)))],
            LoadBudget.UsualReservePercent,
            LoadBudget.UsualRatings,
            LoadWire.UsualAmps
        );

    /// <summary>What was said of a pair of posts; null where nothing was.</summary>
    public static LayoutPost? PostOf(LayoutStated stated, Outlet outlet) =>
        stated.Posts.FirstOrDefault(p => p.From == outlet.Spec.From && p.To == outlet.Spec.To);

    private static LoadWire? WireOf(LayoutPost? post) => post?.Wire is { } wire ? new(wire.GaugeAwg, wire.FeetOneWay) : null;

    /// <summary>The posts in words; where two pairs have the same, the later one is numbered.</summary>
    private static string IdOf(ImmutableArray<PostSupply> supplies, PostSupply supply)
    {
        var before = supplies.Take(supplies.IndexOf(supply)).Count(s => s.Outlet.Posts == supply.Outlet.Posts);
        return before == 0 ? supply.Outlet.Posts : FormattableString.Invariant($"{supply.Outlet.Posts} ({before + 1})");
    }
}

/// <summary>A pair of posts with what the owner runs on it.</summary>
/// <param name="Supply">The pair.</param>
/// <param name="Items">What hangs on it.</param>
/// <param name="Wire">The owner's wire; null where nothing was said of it.</param>
/// <param name="Load">What it comes to.</param>
/// <param name="MostAmps">What it may carry for hours: its own most, and never more than the whole unit [A].</param>
/// <param name="Room">How many more of each it would bear, alone.</param>
public sealed record PostBudget(
    PostSupply Supply,
    ImmutableArray<LayoutItem> Items,
    LayoutWire? Wire,
    PostLoad Load,
    double MostAmps,
    ImmutableArray<AddedLoad> Room
)
{
    /// <summary>How much of what it may carry is on it; above 1 where it is too much.</summary>
    public double UsedShare => Load.Amps / MostAmps;
}
