using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Readings;
using Ohmstead.Workshop.Shops;
using Ohmstead.Workshop.Testing;
using Ohmstead.Workshop.Tests.Readings;
using Ohmstead.Workshop.Units;

namespace Ohmstead.Workshop.Tests.Testing;

/// <summary>Which tests a unit has, which of them are due, and what locks them.</summary>
public class TestListTests
{
    private static IEnumerable<TestSort> SortsOf(string sheet)
    {
        var kind = OnTheBench.SheetOf($"demo/{sheet}.sheet.json");
        var entry = new Entry(
            new Guid(1, 2, 0, new byte[8]),
            new Guid(7, 0, 0, new byte[8]),
            1,
            DateTimeOffset.UnixEpoch,
            "bench",
            new TakenIn("1", kind.Id, "", "")
        );
        return TestList.Of(UnitHistory.Fold([entry]), kind, Shop.Usual).Select(t => t.Sort);
    }

    [Theory]
    [InlineData("twin-175", 2, 1)]
    [InlineData("solo-110", 0, 0)]
    [InlineData("step-230", 0, 0)]
    public void A_unit_without_a_whistle_has_no_whistle_test_and_steps_are_told_apart(string sheet, int first, int second)
    {
        Assert.Equal(first, SortsOf(sheet).Count(s => s == TestSort.WhistleFirst));
        Assert.Equal(second, SortsOf(sheet).Count(s => s == TestSort.WhistleSecond));
    }

    [Theory]
    [InlineData("twin-175", 2, 2, 1)]
    [InlineData("solo-110", 1, 2, 1)]
    [InlineData("step-230", 1, 2, 3)]
    public void Breakers_and_insulation_are_those_of_the_sheet(string sheet, int breakers, int insulation, int secondary)
    {
        var sorts = SortsOf(sheet).ToList();
        Assert.Equal(breakers, sorts.Count(s => s == TestSort.Breaker));
        Assert.Equal(insulation, sorts.Count(s => s == TestSort.Insulation));
        Assert.Equal(secondary, sorts.Count(s => s == TestSort.SecondaryToCore));
        Assert.Single(sorts, s => s == TestSort.TouchCurrent);
        Assert.Single(sorts, s => s == TestSort.HeatRun);
    }

    [Fact]
    public void What_locks_the_mains_readings_locks_every_mains_test_and_nothing_else_does()
    {
        var unit = new TestedUnit(isReady: false);
        var offers = ReadingOffer.All(unit.Bench.Unit, unit.Bench.Model, unit.Bench.Readings, TestedUnit.Shop);
        Assert.All(
            unit.All.Where(t => t.Offer is not null),
            t => Assert.Equal(offers.Single(o => o.Spec.Id == t.Offer!.Spec.Id).Locks, t.Locks)
        );
        var behind = offers.Single(o => o.Spec.Id == "watts-idle").Locks;
        Assert.NotEmpty(behind);
        foreach (var test in unit.All.Where(t => t.Sort is TestSort.TouchCurrent or TestSort.Breaker or TestSort.HeatRun))
        {
            Assert.Equal(behind, test.Locks);
            Assert.StartsWith(
                "Locked. ",
                TestEntry.Take(test, [Shown.Number(1)], BenchState.AsSheet, Shop.Usual, null).Refused,
                StringComparison.Ordinal
            );
        }
        Assert.Empty(unit.Get(TestList.Ground).Locks);
        Assert.Empty(unit.Get(TestList.OfReading("insulation-core")).Locks);
        Assert.All(new TestedUnit().All, t => Assert.Empty(t.Locks));
    }

    [Fact]
    public void A_close_pass_of_insulation_opens_no_mains_test()
    {
        // 2.10 MΩ on 5 % + 0.03 MΩ lies inside 2 MΩ by less than the meter's error: README section 2 keeps the mains shut.
        var unit = new TestedUnit();
        unit.Bench.Read("insulation-core", 2.1e6);
        Assert.Equal(TestEnd.ClosePass, unit.Result(TestList.OfReading("insulation-core")).End);
        Assert.NotEmpty(unit.Get(TestList.Touch).Locks);
        Assert.NotEmpty(unit.Get(TestList.Heat).Locks);
    }

    [Fact]
    public void A_reading_of_the_unit_is_taken_over_and_not_asked_twice()
    {
        var unit = new TestedUnit();
        var test = unit.Get(TestList.OfReading("insulation-posts"));
        Assert.True(test.Taken!.IsTakenOver);
        Assert.False(test.IsDue);
        Assert.Equal(250, test.Taken.Values.Single());
        Assert.True(unit.Get(TestList.OfReading("watts-idle")).IsDue);
        unit.Bench.Read("watts-idle", 10.4);
        Assert.False(unit.Get(TestList.OfReading("watts-idle")).IsDue);
    }

    [Fact]
    public void Insulation_is_due_again_once_the_case_was_closed()
    {
        var unit = new TestedUnit().Add(new TakenOff("cap-left", 1, 1, ""));
        Assert.False(unit.Get(TestList.OfReading("insulation-posts")).IsDue);
        unit.Add(new PutBack("cap-left", 1, 0, "", ""));
        var again = unit.Get(TestList.OfReading("insulation-posts"));
        Assert.True(again.IsDue);
        Assert.Equal("Again, now that it is closed: a wire may be pinched.", again.Why);
        unit.Bench.Read("insulation-posts", 240e6);
        Assert.False(unit.Get(TestList.OfReading("insulation-posts")).IsDue);
    }

    [Fact]
    public void A_changed_roller_asks_for_a_heat_run_and_for_touch_current_again()
    {
        var unit = new TestedUnit();
        unit.TakeTouch(0.045, 0.061, new("1500-ohm", 60, true));
        Assert.False(unit.Get(TestList.Touch).IsDue);
        Assert.True(unit.Get(TestList.Heat).IsChoice);
        unit.Add(new PartChanged("roller-left", PartChange.Renewed, null, ""));
        Assert.True(unit.Get(TestList.Touch).IsDue);
        var heat = unit.Get(TestList.Heat);
        Assert.True(heat.IsDue);
        Assert.EndsWith(" was changed.", heat.Why, StringComparison.Ordinal);
    }

    [Fact]
    public void A_ground_wire_that_is_not_fitted_is_no_failure_and_is_not_asked_again()
    {
        var unit = new TestedUnit();
        Assert.True(unit.Get(TestList.Ground).IsDue);
        unit.Add([.. TestEntry.Leave(unit.Get(TestList.Ground), TestNotTaken.NoGroundWire).Facts]);
        unit.Add(new PartChanged("roller-left", PartChange.Renewed, null, ""));
        Assert.False(unit.Get(TestList.Ground).IsDue);
        Assert.Equal(TestEnd.NotTaken, unit.Result(TestList.Ground).End);
        Assert.False(unit.Result(TestList.Ground).HasFailed);
        Assert.False(unit.Get(TestList.Ground).IsLeftOut, "nothing was left undone");
        // A wire that is there and was not read is another thing.
        var undone = new TestedUnit().Add(new TestNotTaken(TestList.Ground, "Ground wire", "no ohmmeter today"));
        Assert.True(undone.Get(TestList.Ground).IsLeftOut);
        undone.Add(new PartChanged("roller-left", PartChange.Renewed, null, ""));
        Assert.True(undone.Get(TestList.Ground).IsDue);
    }

    [Fact]
    public void A_test_that_was_left_out_with_a_reason_is_asked_no_more_until_something_changes_that_asks_for_it()
    {
        var unit = new TestedUnit().Add(new PartChanged("roller-left", PartChange.Renewed, null, ""));
        string[] left = [TestList.OfReading("left-first-dc"), TestList.Touch, TestList.Heat, TestList.OfBreaker(unit.Breaker.Id)];
        foreach (var id in left)
        {
            Assert.True(unit.Get(id).IsDue, id);
            unit.Add([.. TestEntry.Leave(unit.Get(id), "no load bank.").Facts]);
            Assert.Equal((false, false, true), (unit.Get(id).IsDue, unit.Get(id).IsTaken, unit.Get(id).IsLeftOut));
            Assert.Equal(TestEnd.NotTaken, unit.Result(id).End);
            Assert.Equal(["Not taken: no load bank."], unit.Result(id).Words);
        }
        unit.Add(
            new PartChanged("roller-left", PartChange.Renewed, null, ""),
            new PartChanged(unit.Breaker.Id, PartChange.Renewed, null, "")
        );
        foreach (var id in left)
        {
            Assert.True(unit.Get(id).IsDue, id);
            Assert.StartsWith("Again: ", unit.Get(id).Why, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void A_reading_that_could_not_be_taken_leaves_its_test_out_with_that_reason()
    {
        var unit = new TestedUnit().Add(new ReadingEntered("watts-idle", Shown.NotTaken("no power meter"), BenchState.AsSheet));
        var id = TestList.OfReading("watts-idle");
        Assert.Equal((false, true), (unit.Get(id).IsDue, unit.Get(id).IsLeftOut));
        Assert.Equal(["Not taken: no power meter."], unit.Result(id).Words);
        unit.Bench.Read("watts-idle", 10.4);
        Assert.True(unit.Get(id).IsTaken);
    }

    [Fact]
    public void No_reason_hides_what_was_read()
    {
        var unit = new TestedUnit();
        unit.TakeTouch(0.6, 0.045, new("1500-ohm", 60, true));
        Assert.Equal(
            "It was read, and that counts. Read it again, or undo it in the log.",
            TestEntry.Leave(unit.Get(TestList.Touch), "in a hurry").Refused
        );
        unit.Add(new TestNotTaken(TestList.Touch, "Touch current", "in a hurry"));
        Assert.Equal(TestEnd.Fail, unit.Result(TestList.Touch).End);
        unit.Bench.Read("watts-idle", 60);
        unit.Add(new ReadingEntered("watts-idle", Shown.NotTaken("not today"), BenchState.AsSheet));
        Assert.Equal(TestEnd.Fail, unit.Result(TestList.OfReading("watts-idle")).End);
    }

    /// <summary>A three-wire cord in place of a two-wire one brings the ground wire that there was none of.</summary>
    [Fact]
    public void What_is_so_by_design_is_asked_again_when_the_cord_is_new_and_only_at_its_own_test()
    {
        var unit = new TestedUnit().Add(new TestNotTaken(TestList.Ground, "Ground wire", TestNotTaken.NoGroundWire));
        Assert.Equal((false, false), (unit.Get(TestList.Ground).IsDue, unit.Get(TestList.Ground).IsLeftOut));
        unit.Add(new PartChanged("cord-1", PartChange.Renewed, null, ""));
        Assert.True(unit.Get(TestList.Ground).IsDue);
        unit.Add(new TestNotTaken(TestList.Touch, "Touch current", TestNotTaken.NoGroundWire));
        Assert.True(unit.Get(TestList.Touch).IsLeftOut);
    }

    [Fact]
    public void Where_no_reading_on_mains_is_known_the_mains_stays_locked()
    {
        var locks = TestList.LocksOf([]);
        Assert.NotEmpty(locks);
        Assert.StartsWith(
            "Locked. No reading on mains is known of this unit.",
            HeatEntry
                .Begin(null, locks, new("3", "20", "6", "0", "10", "0.25"), new(null, 65, "K", "a rule"), DateTimeOffset.UnixEpoch)
                .Refused,
            StringComparison.Ordinal
        );
        Assert.Equal(new TestedUnit(isReady: false).Get(TestList.Heat).Locks, TestList.LocksOf(new TestedUnit(isReady: false).All));
        Assert.Empty(TestList.LocksOf(new TestedUnit().All));
    }

    [Fact]
    public void A_unit_without_a_type_has_no_tests()
    {
        var entry = new Entry(
            new Guid(1, 2, 0, new byte[8]),
            new Guid(7, 0, 0, new byte[8]),
            1,
            DateTimeOffset.UnixEpoch,
            "bench",
            new TakenIn("1", "", "", "")
        );
        var unit = UnitHistory.Fold([entry]);
        Assert.Empty(TestList.Of(unit, Workshop.Untyped.UntypedSheet.Of(unit), Shop.Usual));
        Assert.Empty(TestList.Of(unit, null, Shop.Usual));
    }
}
