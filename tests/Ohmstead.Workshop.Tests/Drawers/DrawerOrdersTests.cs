using Ohmstead.Electrical.Reckoning;
using Ohmstead.Workshop.Drawers;

namespace Ohmstead.Workshop.Tests.Drawers;

/// <summary>What to order today: the sums are those of the question "stock", held elsewhere; here is what is asked and what is said of it.</summary>
public class DrawerOrdersTests
{
    /// <summary>
    /// 24 a year and 35 days: a Poisson mean of 2.3 until they come and 4.27 with 30 days more. The least S with P(demand ≤ S) ≥ 95 %
    /// is summed up here, term by term.
    /// </summary>
    [Fact]
    public void Two_lamps_left_of_two_a_month_and_five_weeks_are_filled_up_and_the_reason_is_said()
    {
        var draft = new DrawerDraft();
        draft.Bin("A2", "Pilot lamp 14 V", 2, leadDays: 35, price: 1.60m, perYear: 24);
        draft.Bin("C2", "Roller pin", 14, leadDays: 7, perYear: 12);
        var line = Assert.Single(DrawerOrders.Of(draft.Drawer, draft.Now).Lines);
        var (mean, least, sum) = (24 * 65 / 365.25, 0, Math.Exp(-24 * 65 / 365.25));
        for (var term = sum; sum < 0.95; sum += term)
            term *= mean / ++least;
        Assert.Equal(least - 2, line.Count);
        Assert.Equal(6, line.Count);
        Assert.Equal(9.60m, line.Sum);
        Assert.Equal("You use 2 a month, they take 5 weeks; 2 are left.", line.Why);
    }

    [Fact]
    public void What_is_ordered_already_is_not_ordered_again()
    {
        var draft = new DrawerDraft();
        var bin = draft.Bin("A2", "Pilot lamp 14 V", 2, leadDays: 35, perYear: 24);
        draft.Do(new PartsOrdered(bin, 6, "", 1.6m));
        Assert.Empty(DrawerOrders.Of(draft.Drawer, draft.Now).Lines);
        Assert.Equal("due Apr 8", DrawerWords.Note(draft.Drawer.Find(bin)!, DrawerOrders.Of(draft.Drawer, draft.Now), TimeZoneInfo.Utc));
    }

    /// <summary>A bin that is a day old and had one part used says little: by the day it would be 365 a year.</summary>
    [Fact]
    public void A_young_bin_is_not_stocked_for_a_rush_of_one_day()
    {
        var draft = new DrawerDraft();
        var bin = draft.Bin("A2", "Pilot lamp 14 V", 3, leadDays: 10);
        draft.Do(new PartsUsed(bin, 1, ""));
        Assert.All(DrawerOrders.Of(draft.Drawer, draft.Now.AddDays(1)).Lines, l => Assert.InRange(l.Count, 1, 3));
    }

    [Fact]
    public void Jobs_possible_are_those_of_the_scarcest_part_and_planned_jobs_reserve_theirs()
    {
        var draft = new DrawerDraft();
        var (cord, grommet) = (draft.Bin("B1", "Cord", 3, perYear: 0.1), draft.Bin("B2", "Grommet", 11, perYear: 0.1));
        var kit = draft.Id();
        draft.Do(new KitSaid(kit, "Cord and plug", [new(cord, 1), new(grommet, 2)], 0));
        Assert.Equal(3, DrawerOrders.Of(draft.Drawer, draft.Now).Kits.Single().Jobs);
        Assert.Empty(DrawerOrders.Of(draft.Drawer, draft.Now).Lines);
        draft.Do(new KitSaid(kit, "Cord and plug", [new(cord, 1), new(grommet, 2)], 5));
        draft.Do(new DonorSaid(draft.Id(), "0388", null, [new(cord, 1)], ""));
        var orders = DrawerOrders.Of(draft.Drawer, draft.Now);
        Assert.Equal(["Cord: 2 short for the planned jobs, 1 of them in donors."], orders.Missing);
        var line = Assert.Single(orders.Lines, l => l.Bin.Id == cord);
        Assert.EndsWith("3 are left. Planned jobs need 5.", line.Why, StringComparison.Ordinal);
    }

    [Fact]
    public void The_question_is_one_that_reckon_takes_also_where_two_bins_and_two_kits_are_called_the_same()
    {
        var draft = new DrawerDraft();
        var (one, two) = (draft.Bin("", "Roller", 3), draft.Bin("", "Roller", 1, perYear: 4));
        foreach (var bin in (Guid[])[one, two])
            draft.Do(new KitSaid(draft.Id(), "Roller job", [new(bin, 1)], 1));
        draft.Do(new DonorSaid(draft.Id(), "9", null, [new(one, 1)], ""), new DonorSaid(draft.Id(), "9", null, [new(two, 1)], ""));
        var read = QuestionFile.Read(DrawerOrders.Question(draft.Drawer, draft.Now), null);
        Assert.Empty(read.Problems);
        Assert.Empty(read.Remarks);
        Assert.Equal([3, 1], DrawerOrders.Of(draft.Drawer, draft.Now).Kits.Select(k => k.Jobs));
    }

    [Fact]
    public void An_empty_drawer_asks_for_nothing() => Assert.Empty(DrawerOrders.Of(new DrawerDraft().Drawer, DrawerDraft.Noon).Notes);
}
