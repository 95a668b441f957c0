using System.Globalization;
using System.Text.RegularExpressions;
using Ohmstead.Electrical.Readings;
using Ohmstead.Workshop.Cautions;
using Ohmstead.Workshop.Job;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.LookOver;
using Ohmstead.Workshop.Papers;
using Ohmstead.Workshop.TakeApart;

namespace Ohmstead.App.Tests.Papers;

/// <summary>Nothing on a paper contradicts anything else on it, or on another paper of the same unit.</summary>
public class PaperFoldTests
{
    private static void AssertAtOne(JudgedUnit matter, string unit)
    {
        var papers = PaperTable.All.SelectMany(p => p.Lengths(matter)).ToList();
        var label = Label.Make(matter, Label.RecordOf(matter.Unit));
        List<PaperFold> folds = [.. papers.Select(PaperFold.Of), PaperFold.Of(label)];
        Assert.All(folds, f => Assert.True(f.Forbids == !matter.MayBePluggedIn, unit));
        Assert.All(folds, f => Assert.False(f.Forbids && f.Promises, unit));
        var (done, toDo) = (folds.SelectMany(f => f.Done).ToHashSet(), folds.SelectMany(f => f.ToDo).ToHashSet());
        Assert.False(done.Overlaps(toDo), $"{unit}: {string.Join(", ", done.Intersect(toDo))}");
        AssertOne(folds, f => f.Read, unit);
        AssertOne(folds, f => f.Ends, unit);
        AssertOne(folds, f => f.Signed, unit);
        AssertOne(folds, f => f.Runs, unit);
        Assert.True(folds.SelectMany(f => f.Watts).Distinct().Count() <= 1, unit);
        Assert.True(
            folds.SelectMany(f => f.Tested).Distinct().Count() <= 1,
            $"{unit}: {string.Join(", ", folds.SelectMany(f => f.Tested).Distinct())}"
        );
        AssertTrue(matter, folds, unit);
        foreach (var paper in papers)
        {
            Assert.Equal("", SillyCounts.In(paper.Text));
            Assert.True(Regex.Count(paper.Text, Regex.Escape(CautionTable.LocalCodes)) == 1, $"{unit}: {paper.Title}");
            AssertOrdered(paper, unit);
        }
        Assert.Equal(label.MayBePluggedIn, !label.Code.Contains("\nDO NOT PLUG IN: ", StringComparison.Ordinal));
    }

    /// <summary>Two papers that speak of the same thing say the same of it.</summary>
    private static void AssertOne(IReadOnlyList<PaperFold> folds, Func<PaperFold, IReadOnlyDictionary<string, string>> of, string unit)
    {
        foreach (var title in folds.SelectMany(f => of(f).Keys).Distinct(StringComparer.Ordinal))
            Assert.True(
                folds.Where(f => of(f).ContainsKey(title)).Select(f => of(f)[title]).Distinct(StringComparer.Ordinal).Count() == 1,
                $"{unit}: {title}: {string.Join(" / ", folds.Where(f => of(f).ContainsKey(title)).Select(f => of(f)[title]).Distinct())}"
            );
    }

    /// <summary>What the papers say is what is known of the unit: nothing is left out of the record, nothing is said that is not so.</summary>
    private static void AssertTrue(JudgedUnit matter, IReadOnlyList<PaperFold> folds, string unit)
    {
        var record = PaperFold.Of(ServiceRecord.Make(matter));
        foreach (var line in matter.Lines.Where(l => l.IsTaken))
        {
            Assert.Equal(line.Measured, record.Read[line.Title]);
            Assert.True(
                line.End switch
                {
                    CheckEnd.Passed => record.Ends[line.Title] == "pass",
                    CheckEnd.Failed => record.Ends[line.Title] == "failed",
                    CheckEnd.TooClose => record.Ends[line.Title] == "too close",
                    _ => true,
                },
                $"{unit}: {line.Title}"
            );
        }
        foreach (var line in matter.Waived)
            Assert.Equal(line.Waiver!.WaivedBy.TrimEnd('.'), record.Signed[line.Title]);
        foreach (var danger in matter.Dangers.Where(d => d.State == Danger.SignedFor))
            Assert.Equal(danger.SignedBy.TrimEnd('.'), record.Signed[danger.Item.Title]);
        // The owner is told of what was signed for, and of what is not normal, not of the good alone.
        if (matter.MayBePluggedIn)
        {
            var owner = PaperFold.Of(OwnerPage.Make(matter, OwnerPage.Choices[0]));
            Assert.True(owner.Signed.IsEmpty == record.Signed.IsEmpty, $"{unit}: signed");
            Assert.True(
                owner.Ends.ContainsValue("off") == matter.Lines.Any(l => l is { IsTaken: true, Weight: Weight.Look }),
                $"{unit}: not normal"
            );
        }
        foreach (var (posts, amps) in folds.SelectMany(f => f.Runs))
            Assert.True(
                double.Parse(amps[..^2], CultureInfo.InvariantCulture) <= matter.Outlets.Single(o => o.Posts == posts).Limit.Amps + 1e-3,
                $"{unit}: {posts}"
            );
        if (matter.Apart is { IsBegun: true } apart)
            AssertCounted(apart, ServiceRecord.Make(matter).Text, unit);
    }

    /// <summary>As many pieces as came off went back, are new, are signed for as left over, or are still off.</summary>
    private static void AssertCounted(ApartState apart, string text, string unit)
    {
        int Of(string pattern) => Regex.Matches(text, pattern).Sum(m => int.Parse(m.Groups[1].Value, CultureInfo.InvariantCulture));
        var off = Of(@"(\d+) pieces? came off\.");
        Assert.True(off == apart.Off.Sum(o => o.Fact.Pieces) + apart.Back.Sum(b => b.Off.Fact.Pieces), $"{unit}: {text}");
        Assert.Equal(
            off,
            Of(@"(\d+) old ones? went back")
                + Of(@"went back, (\d+) new")
                + Of(@"(\d+) pieces? left over, .*?\. Signed by")
                - Of(@"(\d+) pieces? more than came off, .*?\. Signed by")
                + Of(@"Still off, (\d+) pieces?:")
        );
    }

    /// <summary>A heading heads something, and nothing that is to do stands under what was done.</summary>
    private static void AssertOrdered(Paper paper, string unit)
    {
        var blocks = PaperFold.Flat(paper.Blocks).ToList();
        for (var n = 0; n < blocks.Count; n++)
        {
            if (blocks[n] is not Heading heading)
                continue;
            Assert.True(
                n + 1 < blocks.Count && blocks[n + 1] is not (Heading or NewPage or Signatures),
                $"{unit}: {paper.Title}: {heading.Text}"
            );
            if (heading.Text.Contains("done", StringComparison.Ordinal))
                Assert.DoesNotContain("to be ", string.Join('\n', blocks[n + 1].Words), StringComparison.Ordinal);
        }
        Assert.All(blocks.OfType<Points>(), p => Assert.NotEmpty(p.Items));
        Assert.All(blocks.OfType<Table>(), t => Assert.NotEmpty(t.Rows));
        Assert.All(blocks.OfType<Notice>(), n => Assert.NotEmpty(n.Lines));
    }

    [Theory]
    [MemberData(nameof(FilledDemo.Tags), MemberType = typeof(FilledDemo))]
    public async Task The_papers_of_a_unit_of_the_demo_are_at_one(string tag)
    {
        var demo = await FilledDemo.ReadAsync();
        Assert.Equal(
            FilledDemo.Tags().Select(t => t.Data).Order(StringComparer.Ordinal),
            demo.Cards.Select(c => c.Tag).Order(StringComparer.Ordinal)
        );
        var card = demo.Cards.Single(c => c.Tag == tag);
        AssertAtOne(UnitJudge.Make(demo.Units[card.Id], demo.SheetOf(card), demo.Shop, PaperUnits.Noon), tag);
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
        Fact Noted(Ohmstead.Workshop.Shops.LookOverItem item, Decision decision) =>
            new ConditionNoted(item.Id, Any(item.Answers), decision, "");
        List<Fact> facts =
        [
            new TakenIn("F-1", "twin-175", "", Any(["", "hums"])),
            .. Enumerable.Range(0, dice.Next(1, 30)).Select(_ => One()),
        ];
        if (dice.Next(2) == 0)
            facts = [.. facts, .. PaperUnits.DemoReadings().Where(f => f is ReadingEntered { Shown.Kind: ShownKind.Value })];
        foreach (var step in sheet.TakeApart.Take(dice.Next(4)))
        {
            var pieces = dice.Next(1, 5);
            facts.Add(new TakenOff(step.Id, 1, pieces, ""));
            var (old, fresh) = (dice.Next(pieces + 1), dice.Next(2));
            if (dice.Next(2) == 0)
                facts.Add(
                    new PutBack(step.Id, old, fresh, old + fresh == pieces ? "" : "a screw is gone", old + fresh == pieces ? "" : "A. B.")
                );
        }
        if (dice.Next(3) == 0)
            facts.Add(new NotLookedAt(Any(["cord", "plug", "sleeves", "case"]), "not opened", "C. D."));
        var isChecked = dice.Next(2) == 0;
        AssertAtOne(
            UnitJudge.Make(PaperUnits.Unit(isChecked ? PaperUnits.Checked(facts) : facts), sheet, PaperUnits.Shop, PaperUnits.Noon),
            FormattableString.Invariant($"seed {seed}")
        );
    }
}
