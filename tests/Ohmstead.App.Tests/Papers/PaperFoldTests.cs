using System.Text.RegularExpressions;
using Ohmstead.Workshop.Cautions;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Papers;
using Ohmstead.Workshop.Readings;

namespace Ohmstead.App.Tests.Papers;

/// <summary>Nothing on a paper contradicts anything else on it, or on another paper of the same unit.</summary>
public class PaperFoldTests
{
    private static List<Paper> Papers(PaperMatter matter) =>
        [
            .. OwnerPage.Choices.Select(most => OwnerPage.Make(matter, most)),
            ServiceRecord.Make(matter),
            BenchSheet.Make(matter, []),
            WiringSheet.Make(matter),
        ];

    private static void AssertAtOne(PaperMatter matter, string unit)
    {
        var papers = Papers(matter);
        var folds = papers.ConvertAll(PaperFold.Of);
        var label = Label.Make(matter);
        Assert.All(folds, f => Assert.True(f.Forbids == !label.MayBePluggedIn, unit));
        Assert.All(folds, f => Assert.False(f.Forbids && f.Promises, unit));
        var (done, toDo) = (folds.SelectMany(f => f.Done).ToHashSet(), folds.SelectMany(f => f.ToDo).ToHashSet());
        Assert.False(done.Overlaps(toDo), $"{unit}: {string.Join(", ", done.Intersect(toDo))}");
        foreach (var title in folds.SelectMany(f => f.Read.Keys).Distinct())
            Assert.Single(folds.Where(f => f.Read.ContainsKey(title)).Select(f => f.Read[title]).Distinct());
        Assert.All(folds.SelectMany(f => f.Amps), amps => Assert.Contains(matter.Outlets, o => amps <= o.Limit.Amps + 1e-3));
        foreach (var paper in papers)
        {
            Assert.Equal("", SillyCounts.In(paper.Text));
            Assert.True(Regex.Count(paper.Text, Regex.Escape(CautionTable.LocalCodes)) == 1, $"{unit}: {paper.Title}");
            AssertOrdered(paper, unit);
        }
        Assert.Equal(label.MayBePluggedIn, label.Code.Length > 0);
    }

    /// <summary>A heading heads something, and nothing that is to do stands under what was done.</summary>
    private static void AssertOrdered(Paper paper, string unit)
    {
        var blocks = PaperFold.Flat(paper.Blocks).ToList();
        for (var n = 0; n < blocks.Count; n++)
        {
            if (blocks[n] is not Heading heading)
                continue;
            Assert.True(n + 1 < blocks.Count && blocks[n + 1] is not (Heading or NewPage or Signatures), $"{unit}: {paper.Title}: {heading.Text}");
            if (heading.Text.Contains("done", StringComparison.Ordinal))
                Assert.DoesNotContain("to be ", string.Join('\n', blocks[n + 1].Words), StringComparison.Ordinal);
        }
        Assert.All(blocks.OfType<Points>(), p => Assert.NotEmpty(p.Items));
        Assert.All(blocks.OfType<Table>(), t => Assert.NotEmpty(t.Rows));
        Assert.All(blocks.OfType<Notice>(), n => Assert.NotEmpty(n.Lines));
    }

    [Fact]
    public async Task The_papers_of_every_unit_of_the_demo_are_at_one()
    {
        var demo = await FilledDemo.ReadAsync();
        Assert.Equal(12, demo.Cards.Count);
        foreach (var card in demo.Cards)
            AssertAtOne(MatterMaker.Make(demo.Units[card.Id], demo.SheetOf(card), demo.Shop, PaperUnits.Noon), card.Tag);
    }

    public static TheoryData<int> Seeds() => [.. Enumerable.Range(1, 24)];

    /// <summary>Facts in any order: parts noted, replaced, resoldered, found, read well and badly, waived.</summary>
    [Theory]
    [MemberData(nameof(Seeds))]
    public void The_papers_of_a_unit_in_any_state_are_at_one(int seed)
    {
        var dice = new Random(seed);
        T Any<T>(IReadOnlyList<T> of) => of[dice.Next(of.Count)];
        var sheet = PaperUnits.Sheet("twin-175");
        string[] parts = ["cord-1", "cord-2", "roller-1", "roller-2", "disc", "breaker-1", "w-0", "pilot"];
        Fact One() =>
            dice.Next(7) switch
            {
                0 or 1 => Noted(Any(PaperUnits.Shop.LookOver), Any(Enum.GetValues<Decision>())),
                2 => new PartChanged(Any(parts), Any([PartChange.Renewed, PartChange.Rewired]), null, Any(["", "from a donor"])),
                3 => new FindingJudged(Any(parts), Any(["open", "worn", "resistive"]), Any(Enum.GetValues<Judgement>()), ""),
                4 => new ReadingWaived("insulation-posts-core", "no tester", "A. B.", ""),
                5 => new ReadingEntered(Any(["insulation-core", "insulation-posts"]), Shown.Number(Any([300e6, 1e6])), BenchState.AsSheet),
                _ => Any([.. PaperUnits.DemoReadings()]),
            };
        Fact Noted(Ohmstead.Workshop.Shops.LookOverItem item, Decision decision) => new ConditionNoted(item.Id, Any(item.Answers), decision, "");
        List<Fact> facts = [new TakenIn("F-1", "twin-175", "", Any(["", "hums"])), .. Enumerable.Range(0, dice.Next(1, 30)).Select(_ => One())];
        if (dice.Next(2) == 0)
            facts = [.. facts, .. PaperUnits.DemoReadings().Where(f => f is ReadingEntered { Shown.Kind: ShownKind.Value })];
        var isChecked = dice.Next(2) == 0;
        AssertAtOne(MatterMaker.Make(PaperUnits.Unit(isChecked ? PaperUnits.Checked(facts) : facts), sheet, PaperUnits.Shop, PaperUnits.Noon), FormattableString.Invariant($"seed {seed}"));
    }
}
