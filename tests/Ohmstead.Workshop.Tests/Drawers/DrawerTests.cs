using Ohmstead.Workshop.Drawers;

namespace Ohmstead.Workshop.Tests.Drawers;

/// <summary>What lies in the drawer follows from all that was entered, in the order of time, whoever entered it.</summary>
public class DrawerTests
{
    [Fact]
    public void A_count_goes_by_what_was_used_and_came_in_since_it_was_taken()
    {
        var draft = new DrawerDraft();
        var bin = draft.Bin("C1", "Roller", 10);
        draft.Do(new PartsUsed(bin, 3, ""));
        draft.Receive(bin, 5, "1");
        Assert.Equal(12, draft.Drawer.Find(bin)!.Count);
        draft.Do(new BinCounted(bin, 4));
        draft.Do(new PartsUsed(bin, 1, ""));
        var after = draft.Drawer.Find(bin)!;
        Assert.Equal((3, 4), (after.Count, after.Used));
        Assert.Equivalent(after, draft.Backwards.Find(bin));
    }

    [Fact]
    public void More_than_was_there_by_the_count_leaves_none_and_not_less()
    {
        var draft = new DrawerDraft();
        var bin = draft.Bin("C1", "Roller", 1);
        draft.Do(new PartsUsed(bin, 3, ""));
        draft.Receive(bin, 2, "1");
        Assert.Equal((2, 3), (draft.Drawer.Find(bin)!.Count, draft.Drawer.Find(bin)!.Used));
    }

    [Fact]
    public void What_two_windows_change_of_one_bin_both_stays()
    {
        var draft = new DrawerDraft();
        var bin = draft.Bin("C1", "Roller", 10, price: 5.1m);
        draft.Do(new BinSaid(bin) { Name = "Roller, carbon" });
        draft.Do(new BinSaid(bin) { Price = 4.9m });
        draft.Do(new BinSaid(bin) { PerYear = 12 });
        var said = draft.Drawer.Find(bin)!;
        Assert.Equal(("C1", "Roller, carbon", 4.9m, 12.0), (said.Tag, said.Name, said.Price, said.PerYear));
        draft.Do(new BinSaid(bin) { PerYear = -1 });
        Assert.Null(draft.Drawer.Find(bin)!.PerYear);
        draft.Do(new BinSaid(bin) { IsGone = true });
        Assert.Null(draft.Drawer.Find(bin));
    }

    [Fact]
    public void An_order_is_open_until_so_many_came_in_and_is_due_after_the_lead_days_of_the_oldest()
    {
        var draft = new DrawerDraft();
        var bin = draft.Bin("A2", "Pilot lamp", 0, leadDays: 35);
        draft.Do(new PartsOrdered(bin, 6, "Acme", 1.6m));
        var first = draft.Now;
        draft.Do(new PartsOrdered(bin, 4, "Acme", 1.6m));
        var second = draft.Now;
        Assert.Equal((10, first.AddDays(35)), (draft.Drawer.Find(bin)!.OnOrder, draft.Drawer.Find(bin)!.DueAt!.Value));
        draft.Receive(bin, 5, "1");
        Assert.Equal((5, first.AddDays(35)), (draft.Drawer.Find(bin)!.OnOrder, draft.Drawer.Find(bin)!.DueAt!.Value));
        draft.Receive(bin, 2, "2");
        Assert.Equal((3, second.AddDays(35)), (draft.Drawer.Find(bin)!.OnOrder, draft.Drawer.Find(bin)!.DueAt!.Value));
        draft.Receive(bin, 9, "3");
        Assert.Equal(
            (0, (DateTimeOffset?)null, 16),
            (draft.Drawer.Find(bin)!.OnOrder, draft.Drawer.Find(bin)!.DueAt, draft.Drawer.Find(bin)!.Count)
        );
    }

    [Fact]
    public void The_oldest_batch_goes_first_unless_the_repair_named_another()
    {
        var draft = new DrawerDraft();
        var bin = draft.Bin("C1", "Roller", 0);
        var (old, young) = (draft.Receive(bin, 3, "old"), draft.Receive(bin, 4, "young"));
        draft.Fit(bin, young, 1);
        Assert.Equal([(old, 3), (young, 3)], draft.Drawer.Find(bin)!.Batches.Select(b => (b.Id, b.Left)));
        draft.Do(new PartsUsed(bin, 4, ""));
        Assert.Equal([0, 2], draft.Drawer.Find(bin)!.Batches.Select(b => b.Left));
        Assert.Equal((2, 5), (draft.Drawer.Find(bin)!.Count, draft.Drawer.Find(bin)!.Used));
    }

    /// <summary>The unit's journal alone says it: a repair that was undone is not in it.</summary>
    [Fact]
    public void A_part_that_was_fitted_is_out_of_its_bin_and_back_when_the_repair_is_undone()
    {
        var draft = new DrawerDraft();
        var bin = draft.Bin("C1", "Roller", 5);
        draft.Fit(bin, null, 2);
        Assert.Equal(3, draft.Drawer.Find(bin)!.Count);
        Assert.Equal(2, draft.Drawer.WhereUsed(bin).Single().From.Count);
        draft.Unfit();
        Assert.Equal((5, 0), (draft.Drawer.Find(bin)!.Count, draft.Drawer.WhereUsed(bin).Count()));
    }

    [Fact]
    public void Parts_taken_out_for_a_unit_are_fitted_from_beside_it_and_the_rest_goes_back()
    {
        var draft = new DrawerDraft();
        var (bin, unit) = (draft.Bin("C1", "Roller", 6), draft.Id());
        draft.Do(new KitTaken(unit, "F-041", [new(bin, 2)]));
        Assert.Equal((4, 2), (draft.Drawer.Find(bin)!.Count, draft.Drawer.Find(bin)!.SetAside));
        draft.Fit(bin, null, 1, unit);
        Assert.Equal((4, 1), (draft.Drawer.Find(bin)!.Count, draft.Drawer.Find(bin)!.SetAside));
        // Another unit's repair takes from the bin.
        draft.Fit(bin, null, 1);
        Assert.Equal((3, 1), (draft.Drawer.Find(bin)!.Count, draft.Drawer.Find(bin)!.SetAside));
        draft.Do(new KitPutBack(unit, "F-041"));
        Assert.Equal((4, 0, 2), (draft.Drawer.Find(bin)!.Count, draft.Drawer.Find(bin)!.SetAside, draft.Drawer.Find(bin)!.Used));
        Assert.Empty(draft.Drawer.Aside);
        // Two were taken out, three fitted: the third came out of the bin.
        draft.Do(new KitTaken(unit, "F-041", [new(bin, 2)]));
        draft.Fit(bin, null, 3, unit);
        Assert.Equal((1, 0), (draft.Drawer.Find(bin)!.Count, draft.Drawer.Find(bin)!.SetAside));
    }

    /// <summary>Two jobs planned, one kit taken out: one is left to plan for, until it goes back with nothing fitted.</summary>
    [Fact]
    public void A_kit_that_was_taken_out_is_no_longer_planned_and_put_back_whole_it_is_again()
    {
        var draft = new DrawerDraft();
        var (roller, pin, unit, kit) = (draft.Bin("C1", "Roller", 6), draft.Bin("C2", "Roller pin", 6), draft.Id(), draft.Id());
        int Planned() => draft.Drawer.Kits.Single().Planned;
        Guid Take() => draft.Do(new KitTaken(unit, "F-041", [new(roller, 1), new(pin, 1)]) { Kit = kit });
        draft.Do(new KitSaid(kit, "Roller, one track", [new(roller, 1), new(pin, 1)], 2));
        var first = Take();
        Assert.Equal(1, Planned());
        // Three used a year, ten days to get more: with five in the bin and one job planned none is to be ordered.
        Assert.Empty(DrawerOrders.Of(draft.Drawer, draft.Now).Missing);
        draft.Do(new KitPutBack(unit, "F-041"));
        Assert.Equal((2, 6), (Planned(), draft.Drawer.Find(roller)!.Count));
        draft.Do(new EntryUndone(first, true));
        Assert.Equal(2, Planned());
        Take();
        draft.Fit(roller, null, 1, unit);
        draft.Do(new KitPutBack(unit, "F-041"));
        Assert.Equal((1, 5, 6), (Planned(), draft.Drawer.Find(roller)!.Count, draft.Drawer.Find(pin)!.Count));
        Take();
        Assert.Equal(0, Planned());
        // One more than was planned: none is planned then, and none comes back with it.
        Take();
        draft.Do(new KitPutBack(unit, "F-041"));
        Assert.Equal((1, 5), (Planned(), draft.Drawer.Find(roller)!.Count));
    }

    [Fact]
    public void A_roller_that_is_not_there_is_to_order_though_its_pins_are_there()
    {
        var draft = new DrawerDraft();
        draft.Bin("C2", "Roller pin", 14);
        Assert.Equal("no bin for it", draft.Drawer.For("roller").Words);
        draft.Bin("C1", "Roller, carbon", 0, part: "roller");
        Assert.Equal("to order", draft.Drawer.For("roller").Words);
        Assert.Equal("14 in bin C2", draft.Drawer.For("pin").Words);
    }

    [Fact]
    public void At_hand_says_the_batch_that_goes_first_and_what_lies_beside_the_unit_already()
    {
        var draft = new DrawerDraft();
        var (bin, unit) = (draft.Bin("C1", "Roller", 0), draft.Id());
        draft.Receive(bin, 2, "41");
        draft.Receive(bin, 3, "52");
        Assert.Equal("5 in bin C1, Acme, lot 41", draft.Drawer.For("roller").Words);
        draft.Do(new PartsUsed(bin, 2, ""));
        Assert.Equal("3 in bin C1, Acme, lot 52", draft.Drawer.For("roller").Words);
        draft.Do(new KitTaken(unit, "F-041", [new(bin, 1)]));
        Assert.Equal(
            ("beside this unit", "2 in bin C1, Acme, lot 52"),
            (draft.Drawer.For("roller", 1, unit).Words, draft.Drawer.For("roller").Words)
        );
    }

    [Fact]
    public void An_entry_undone_does_not_count_and_counts_again_when_that_is_undone()
    {
        var draft = new DrawerDraft();
        var bin = draft.Bin("C1", "Roller", 5);
        var used = draft.Do(new PartsUsed(bin, 2, ""));
        draft.Do(new EntryUndone(used, true));
        Assert.Equal(5, draft.Drawer.Find(bin)!.Count);
        Assert.Equal(3, draft.Drawer.Entries.Length);
        draft.Do(new EntryUndone(used, false));
        Assert.Equal(3, draft.Drawer.Find(bin)!.Count);
    }

    [Fact]
    public void What_comes_out_of_a_donor_is_in_the_bin_and_no_longer_in_the_donor()
    {
        var draft = new DrawerDraft();
        var (bin, donor) = (draft.Bin("C1", "Roller arm", 0), draft.Id());
        draft.Do(new DonorSaid(donor, "0388", null, [new(bin, 3)], "cover, four posts"));
        draft.Do(new DonorGave(donor, bin, 1));
        Assert.Equal((1, 2), (draft.Drawer.Find(bin)!.Count, draft.Drawer.Donors.Single().Left.Single().Count));
        // Two windows took the last ones: the bin has what was there, and no more.
        draft.Do(new DonorGave(donor, bin, 2));
        draft.Do(new DonorGave(donor, bin, 2));
        Assert.Equal(3, draft.Drawer.Find(bin)!.Count);
        draft.Do(new DonorSaid(donor, "0388", null, [], ""));
        Assert.Empty(draft.Drawer.Donors);
    }

    [Fact]
    public void Whether_a_part_is_at_hand_is_answered_by_its_id_or_its_name_and_in_words()
    {
        var draft = new DrawerDraft();
        var unit = draft.Id();
        var roller = draft.Bin("C1", "Carbon wheel", 2, part: "roller");
        var lamp = draft.Bin("A2", "Pilot lamp 14 V", 0, leadDays: 2);
        Assert.Equal("2 in bin C1", draft.Drawer.For("roller").Words);
        Assert.Equal("to order", draft.Drawer.For("roller", 3).Words);
        Assert.False(draft.Drawer.For("roller", 3).IsThere);
        Assert.Equal("no bin for it", draft.Drawer.For("knob").Words);
        Assert.Equal("to order", draft.Drawer.For("lamp-14v").Words);
        draft.Do(new DonorSaid(draft.Id(), "0388", null, [new(lamp, 1)], ""));
        Assert.Equal("to order, or from donor 0388", draft.Drawer.For("lamp-14v").Words);
        draft.Do(new PartsOrdered(lamp, 6, "", 1.6m));
        Assert.Equal("on order, due Mar 6", draft.Drawer.For("pilot lamp").Words);
        draft.Do(new KitTaken(unit, "F-041", [new(roller, 2)]));
        Assert.Equal(("to order", true), (draft.Drawer.For("roller").Words, draft.Drawer.For("roller", 1, unit).IsThere));
    }

    [Fact]
    public void An_entry_is_read_back_as_it_was_written_and_one_of_a_later_version_is_left_alone()
    {
        var bin = Guid.NewGuid();
        DrawerFact[] facts =
        [
            new BinSaid(bin)
            {
                Tag = "C1",
                Price = 1.60m,
                IsGone = false,
            },
            new BinCounted(bin, 3),
            new PartsUsed(bin, 1, "a friend's"),
            new PartsOrdered(bin, 2, "Acme", 0.85m),
            new PartsReceived(bin, 2, "Acme", "41", new DateOnly(2026, 11, 3)),
            new KitSaid(bin, "Cord", [new(bin, 1)], 2),
            new KitTaken(bin, "F-041", [new(bin, 1)]),
            new KitTaken(bin, "F-041", [new(bin, 1)]) { Kit = bin },
            new KitPutBack(bin, "F-041"),
            new DonorSaid(bin, "0388", bin, [new(bin, 1)], "cover"),
            new DonorGave(bin, bin, 1),
            new EntryUndone(bin, true),
        ];
        var entry = new DrawerEntry(Guid.NewGuid(), DrawerDraft.Noon, "bench", [.. facts]);
        var read = DrawerEntry.Read(entry.DocumentId, entry.Write())!;
        Assert.Equal(entry.Write(), read.Write());
        Assert.Equal((entry.Id, entry.At), (read.Id, read.At));
        Assert.Equivalent(facts, read.Facts);
        Assert.Equal("0badcafe", DrawerEntry.Read(entry.DocumentId, (entry with { Bench = "0badcafe" }).Write())!.Bench);
        // As earlier versions wrote it.
        Assert.Null(read.Bench);
        Assert.DoesNotContain("bench\":", entry.Write(), StringComparison.OrdinalIgnoreCase);
        Assert.Null(DrawerEntry.Read(entry.DocumentId, """{"at":"2026-03-04T12:00:00Z","by":"bench","facts":[{"kind":"of-next-year"}]}"""));
        Assert.Null(DrawerEntry.Read(entry.DocumentId, "{}"));
    }

    [Fact]
    public void A_bin_needs_a_name() =>
        Assert.Equal("Say what lies in the bin.", DrawerEdit.Add(new DrawerDraft().Drawer, Guid.NewGuid(), BinTyped.Empty).Problem);

    [Fact]
    public void What_is_typed_becomes_facts_or_says_what_would_be_right()
    {
        var draft = new DrawerDraft();
        var id = draft.Bin("C1", "Roller", 2);
        var bin = draft.Drawer.Find(id)!;
        Assert.Equal([new BinCounted(bin.Id, 0)], DrawerEdit.Count(bin, "0").Facts);
        Assert.Equal("Whole pieces only.", DrawerEdit.Count(bin, "1,5").Problem);
        Assert.Equal([new PartsUsed(bin.Id, 1, "a friend's")], DrawerEdit.Use(bin, "", " a friend's ").Facts);
        Assert.Equal("Only 2 in the bin. Count it first.", DrawerEdit.Use(bin, "3", "").Problem);
        Assert.Equal("Must be 1 to 100000.", DrawerEdit.Order(bin, "0", "").Problem);
        Assert.Equal([new PartsOrdered(bin.Id, 6, "Acme", 1.6m)], DrawerEdit.Order(bin, "6", "Acme").Facts);
        Assert.Equal("Enter the date on the parts or on the bill.", DrawerEdit.Receive(bin, "6", "Acme", "41", "").Problem);
        Assert.Equal(
            [new PartsReceived(bin.Id, 6, "Acme", "41", new DateOnly(2026, 11, 3))],
            DrawerEdit.Receive(bin, "6", "Acme", "41", "2026-11-03").Facts
        );
        var typed = DrawerEdit.TypedOf(bin);
        Assert.Empty(DrawerEdit.Change(bin, typed).Facts);
        Assert.Equal([new BinSaid(bin.Id) { Price = 2.25m }], DrawerEdit.Change(bin, typed with { Price = "2,25" }).Facts);
        Assert.StartsWith(
            "Price: “free” is not a price",
            DrawerEdit.Change(bin, typed with { Price = "free" }).Problem,
            StringComparison.Ordinal
        );
        Assert.Equal("Say how many of at least one part it takes.", DrawerEdit.Kit(bin.Id, "Cord", [(bin.Id, "")], "").Problem);
        Assert.Equal("Say what is left in it.", DrawerEdit.Donor(bin.Id, "0388", null, [(bin.Id, "0")], "").Problem);
    }
}
