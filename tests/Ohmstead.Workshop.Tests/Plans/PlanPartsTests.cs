using Ohmstead.Workshop.Drawers;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Plans;
using Ohmstead.Workshop.Tests.Drawers;
using Ohmstead.Workshop.Tests.Readings;

namespace Ohmstead.Workshop.Tests.Plans;

/// <summary>Where the parts of a plan come from.</summary>
public class PlanPartsTests
{
    private static readonly OnTheBench Bench = new OnTheBench()
        .ColdGates()
        .Add(Decided("roller-left", "worn", 5.10m))
        .Add(Decided("roller-right", "worn", 5.10m))
        .Add(Decided("disc-left", "high-drop", 1.40m, "silicon diode"));

    private static PartDecided Decided(string about, string mode, decimal price, string part = "") =>
        new(about, mode, DecidedAct.Replace, part, price, null, "", []);

    private static UnitPlan Of(DrawerDraft draft, Guid unit, DateTimeOffset? now = null) =>
        PlanParts.With(
            UnitPlan.Of(Bench.Unit, OnTheBench.Sheet, Bench.Own, null, OnTheBench.Shop, MinuteBook.Empty),
            draft.Drawer,
            unit,
            Bench.Own,
            OnTheBench.Shop,
            now ?? draft.Now
        );

    private static string[] Words(UnitPlan plan, string about) =>
        [.. plan.Lines.Where(l => l.About.StartsWith(about, StringComparison.Ordinal)).SelectMany(l => l.Parts).Select(p => p.Hand!.Words)];

    [Fact]
    public void Two_rollers_are_wanted_where_two_lines_want_one_and_a_diode_in_the_place_of_a_disc_is_a_diode()
    {
        var (draft, unit) = (new DrawerDraft(), Guid.NewGuid());
        var roller = draft.Bin("C1", "Roller, carbon", 0, part: "roller");
        draft.Receive(roller, 1, "41");
        draft.Bin("C2", "Roller pin", 14);
        draft.Bin("C4", "Whistle disc", 3, part: "disc");
        var diode = draft.Bin("D4", "Diode 8 A", 9);
        var plan = Of(draft, unit);
        Assert.Equal(["1 in bin C1, Acme, lot 41", "to order"], Words(plan, "roller"));
        Assert.Equal(["9 in bin D4"], Words(plan, "disc"));
        Assert.Equal([(roller, 1), (diode, 1)], PlanParts.ToTakeOut(plan).Select(t => (t.Bin, t.Count)).OrderBy(t => t.Bin == diode));
        draft.Do(new DonorSaid(draft.Id(), "0388", null, [new(roller, 2)], ""));
        Assert.Equal("to order, or from donor 0388", Words(Of(draft, unit), "roller")[1]);
        draft.Receive(roller, 1, "52");
        Assert.Equal(["2 in bin C1, Acme, lot 41", "2 in bin C1, Acme, lot 41"], Words(Of(draft, unit), "roller"));
        Assert.Equal((roller, 2), PlanParts.ToTakeOut(Of(draft, unit)).Select(t => (t.Bin, t.Count)).Single(t => t.Bin == roller));
    }

    [Fact]
    public void What_lies_beside_the_unit_is_not_taken_out_again()
    {
        var (draft, unit) = (new DrawerDraft(), Guid.NewGuid());
        var roller = draft.Bin("C1", "Roller, carbon", 3, part: "roller");
        draft.Do(new KitTaken(unit, "F-7", PlanParts.ToTakeOut(Of(draft, unit))));
        Assert.Equal((1, 2), (draft.Drawer.Find(roller)!.Count, draft.Drawer.Find(roller)!.SetAside));
        Assert.Equal(["beside this unit", "beside this unit"], Words(Of(draft, unit), "roller"));
        Assert.Empty(PlanParts.ToTakeOut(Of(draft, unit)));
        Assert.Equal(["1 in bin C1", "to order"], Words(Of(draft, Guid.NewGuid()), "roller"));
    }

    [Fact]
    public void A_suspect_batch_is_not_to_be_fitted()
    {
        var (draft, unit) = (new DrawerDraft(), Guid.NewGuid());
        var roller = draft.Bin("C1", "Roller, carbon", 0, part: "roller");
        var (bad, good) = (draft.Receive(roller, 20, "41"), draft.Receive(roller, 20, "52"));
        var year = draft.Now.AddDays(400);
        for (var n = 0; n < 8; n++)
        {
            draft.Fit(roller, bad, 1, draft.Id(), draft.Now, year.AddDays(-100), failed: n < 6);
            draft.Fit(roller, good, 1, draft.Id(), draft.Now, null, failed: false);
        }
        Assert.All(
            Of(draft, unit, year).Lines.Where(l => l.About.StartsWith("roller", StringComparison.Ordinal)).SelectMany(l => l.Parts),
            p => Assert.Equal("Suspect batch. Do not fit it.", p.Caution)
        );
        Assert.DoesNotContain(PlanParts.ToTakeOut(Of(draft, unit, year)), t => t.Bin == roller);
        draft.Do(new PartsUsed(roller, 12, "thrown away"));
        Assert.All(Of(draft, unit, year).Lines.SelectMany(l => l.Parts), p => Assert.Empty(p.Caution));
    }

    /// <summary>The first batch may be what lies beside the other unit: then the second, a suspect one, is in the bin.</summary>
    [Fact]
    public void Of_what_lies_beside_another_unit_the_batch_is_not_known_and_the_suspect_one_counts()
    {
        var (draft, unit) = (new DrawerDraft(), Guid.NewGuid());
        var roller = draft.Bin("C1", "Roller, carbon", 0, part: "roller");
        var (good, bad) = (draft.Receive(roller, 20, "41"), draft.Receive(roller, 20, "52"));
        var year = draft.Now.AddDays(400);
        for (var n = 0; n < 8; n++)
        {
            draft.Fit(roller, bad, 1, draft.Id(), draft.Now, year.AddDays(-100), failed: n < 6);
            draft.Fit(roller, good, 1, draft.Id(), draft.Now, null, failed: false);
        }
        Assert.All(Of(draft, unit, year).Lines.SelectMany(l => l.Parts), p => Assert.Empty(p.Caution));
        draft.Do(new KitTaken(Guid.NewGuid(), "F-8", [new(roller, 3)]));
        Assert.Contains(Of(draft, unit, year).Lines.SelectMany(l => l.Parts), p => p.Caution == "Suspect batch. Do not fit it.");
    }

    [Fact]
    public void One_in_each_of_two_bins_is_enough_for_two_lines()
    {
        var (draft, unit) = (new DrawerDraft(), Guid.NewGuid());
        var first = draft.Bin("C1", "Roller, carbon", 1, part: "roller");
        var second = draft.Bin("C5", "Roller, carbon, old stock", 1, part: "roller");
        var plan = Of(draft, unit);
        Assert.Equal(["1 in bin C1", "1 in bin C5"], Words(plan, "roller"));
        Assert.Equal([(first, 1), (second, 1)], PlanParts.ToTakeOut(plan).Select(t => (t.Bin, t.Count)).OrderBy(t => t.Bin == second));
    }

    /// <summary>A part that is needed in one job of four stays in the drawer for the others.</summary>
    [Theory]
    [InlineData(25, 0)]
    [InlineData(60, 2)]
    public void Only_what_is_probably_needed_is_taken_out(double percent, int count)
    {
        var (draft, unit) = (new DrawerDraft(), Guid.NewGuid());
        var roller = draft.Bin("C1", "Roller, carbon", 3, part: "roller");
        var plan = Of(draft, unit);
        plan = plan with { Lines = [.. plan.Lines.Select(l => l with { Parts = [.. l.Parts.Select(p => p with { Percent = percent })] })] };
        Assert.Equal(count, PlanParts.ToTakeOut(plan).Where(t => t.Bin == roller).Sum(t => t.Count));
    }

    [Fact]
    public void A_drawer_without_bins_says_nothing_of_any_part() =>
        Assert.All(Of(new DrawerDraft(), Guid.NewGuid()).Lines.SelectMany(l => l.Parts), p => Assert.Null(p.Hand));
}
