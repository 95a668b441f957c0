using Ohmstead.Workshop.Job;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Papers;
using Ohmstead.Workshop.Shops;
using Ohmstead.Workshop.Testing;
using Ohmstead.Workshop.Tests.Readings;

namespace Ohmstead.Workshop.Tests.Testing;

/// <summary>What tests leave behind: facts that are read again as they were written, a stage, a table in the record, and a bar where one failed.</summary>
public class TestRecordTests
{
    private static JudgedUnit Judged(TestedUnit unit) =>
        UnitJudge.Make(unit.Bench.Unit, OnTheBench.Sheet, TestedUnit.Shop, DateTimeOffset.UnixEpoch);

    private static StageView Stage(TestedUnit unit) =>
        StageView.All(unit.Bench.Unit, OnTheBench.Sheet, TestedUnit.Shop, []).Single(s => s.Stage == Workshop.Journal.Stage.Tests);

    [Fact]
    public void Every_fact_of_a_test_is_read_as_it_was_written()
    {
        Fact[] facts =
        [
            new TestRead(
                "touch-current",
                "Touch current",
                TestRead.Of(0.045, 0.061),
                null,
                new(null, 0.25, "mA", "a rule"),
                0.8,
                0.03,
                new("1500-ohm", 60, true)
            ),
            new TestNotTaken("ground", "Ground wire", "none fitted"),
            new HeatRunBegun(new(2026, 3, 4, 12, 0, 0, TimeSpan.Zero), 3.02, 20.5, 6, 65, "a rule", 0.25, 10),
            new HeatUnplugged(10.1),
            new HeatRead(10.1, 20, 3.21, 21),
            new HeatRead(20.1, 20, 3.31, 21) { StaysOut = true },
            new HeatCooled(60, 3.19),
            new HeatRunEnded(0, 0, null, null, null, "go on", "smoke"),
            new LoadForHours(6.7, 30, 11, 22),
            new BreakerStarted("breaker", 20, 67.1, 35.5, null),
            new BreakerTimed("breaker", 20, 43.2, true, ""),
        ];
        foreach (var fact in facts)
        {
            var read = FactText.Read(FactText.Write(fact));
            Assert.Equal(fact.GetType(), read.GetType());
            Assert.Equal(FactText.Write(fact), FactText.Write(read));
            Assert.DoesNotContain("later version", FactWords.Of(read, OnTheBench.Sheet), StringComparison.Ordinal);
        }
        Assert.Equal(
            new HeatRead(10.1, 20, 3.21, 21),
            FactText.Read("""{"kind":"heat-reading","minutes":10.1,"secondsAfter":20,"ohms":3.21,"roomCelsius":21}""")
        );
        Assert.Equal(
            new BreakerTimed("breaker", 20, 43.2, true, ""),
            FactText.Read("""{"kind":"breaker-timed","breaker":"breaker","amps":20,"seconds":43.2,"opened":true,"why":""}""")
        );
    }

    [Fact]
    public void The_stage_counts_what_is_taken_and_what_is_to_do()
    {
        var fresh = Stage(new TestedUnit(isReady: false));
        Assert.Equal((false, "none taken"), (fresh.IsClosed, fresh.Done));
        var unit = new TestedUnit();
        var due = unit.All.Count(t => t.IsDue);
        // The cold checks for insulation are taken over.
        Assert.Equal(("2 tests taken", FormattableString.Invariant($"{due} tests")), (Stage(unit).Done, Stage(unit).Open));
        foreach (var test in unit.All.Where(t => t.IsDue).ToList())
            unit.Add([.. TestEntry.Leave(test, "for this test").Facts]);
        Assert.False(Stage(unit).IsClosed);
        Assert.Equal(
            (FormattableString.Invariant($"2 tests taken, {due} not taken, each with its reason"), ""),
            (Stage(unit).Done, Stage(unit).Open)
        );
    }

    [Fact]
    public void A_test_that_was_left_out_stands_on_the_return_and_in_the_record_as_not_taken_and_bars_nothing()
    {
        var unit = new TestedUnit();
        unit.Add([.. TestEntry.Leave(unit.Get(TestList.Touch), "no proved ground").Facts]);
        unit.Add([.. TestEntry.Leave(unit.Get(TestList.Ground), TestNotTaken.NoGroundWire).Facts]);
        var judged = Judged(unit);
        var open = Assert.Single(judged.Open, o => o.Place == OpenPlace.Tests);
        Assert.Equal((OpenWeight.ToKnow, TestList.Touch, "not taken: no proved ground"), (open.Weight, open.About, open.Words));
        Assert.True(judged.MayBePluggedIn);
        var table = ServiceRecord.Make(judged).Blocks.OfType<Table>().Single(t => t.Columns[0].Title == "Test");
        var row = table.Rows.Single(r => r.Cells[0].StartsWith("Touch current", StringComparison.Ordinal));
        Assert.Equal("not taken", row.Cells[3]);
        Assert.StartsWith("Not taken: no proved ground.", row.Under, StringComparison.Ordinal);
        var untested = OwnerFacts.NotTested(judged, "");
        Assert.Contains("Test not taken: Touch current, the plug both ways. Reason: no proved ground.", untested);
        Assert.DoesNotContain(untested, u => u.Contains("Ground wire", StringComparison.Ordinal));
    }

    [Fact]
    public void The_record_has_one_table_of_tests_with_limit_verdict_and_source_and_the_last_word_certifies_nothing()
    {
        var before = ServiceRecord.Make(Judged(new TestedUnit()));
        Assert.DoesNotContain("Tests recorded. No certification.", before.Text, StringComparison.Ordinal);
        var unit = new TestedUnit();
        unit.TakeTouch(0.045, 0.061, new("1500-ohm", 60, true));
        var paper = ServiceRecord.Make(Judged(unit));
        var table = Assert.Single(paper.Blocks.OfType<Table>(), t => t.Columns[0].Title == "Test");
        var row = table.Rows.Single(r => r.Cells[0].StartsWith("Touch current", StringComparison.Ordinal));
        Assert.Equal(
            ["Touch current, the plug both ways", "at most 0.25 mA", "45 and 61 mV, the plug one way and the other", "pass"],
            row.Cells
        );
        Assert.Contains("Limit from: IEC 60950, class II, as listed.", row.Under, StringComparison.Ordinal);
        Assert.Contains(table.Rows, r => r.Cells[0] == "Both blades to the core, 500 V" && r.Cells[3] == "pass");
        Assert.Contains("Tests recorded. No certification.", paper.Text, StringComparison.Ordinal);
        Assert.DoesNotContain("safe", paper.Text, StringComparison.OrdinalIgnoreCase);
        Assert.True(Judged(unit).MayBePluggedIn);
    }

    [Fact]
    public void Failed_touch_current_keeps_a_unit_from_going_back_as_working_and_the_paper_says_why()
    {
        var unit = new TestedUnit();
        unit.TakeTouch(0.6, 0.045, new("1500-ohm", 60, true));
        var judged = Judged(unit);
        Assert.False(judged.MayBePluggedIn);
        var open = Assert.Single(judged.Open, o => o.Place == OpenPlace.Tests);
        Assert.Equal((OpenWeight.Failed, TestList.Touch), (open.Weight, open.About));
        var notice = ServiceRecord.Make(judged).Blocks.OfType<Notice>().First(n => n.Title == "Do not plug this unit in.");
        Assert.Contains(notice.Lines, l => l.StartsWith("Touch current, the plug both ways: fail: it read ", StringComparison.Ordinal));
        // A whistle that is weak is no danger.
        var weak = new TestedUnit();
        weak.Take(TestList.OfReading("left-first-dc"), [.. Enumerable.Repeat(Shown.Number(1.5), 4)]);
        Assert.Contains(Judged(weak).Tests, t => t.HasFailed);
        Assert.True(Judged(weak).MayBePluggedIn);
    }

    [Fact]
    public void The_card_leads_back_to_a_clock_that_runs()
    {
        var unit = new TestedUnit().Add(new HeatRunBegun(DateTimeOffset.UnixEpoch, 3, 20, 6, 65, "a rule", 0.25, 10));
        Assert.Equal(NextAction.HeatRun, CardOf.Make(unit.Bench.Unit, OnTheBench.Sheet, Shop.Usual).Next.Action);
        unit.Add(HeatEntry.GiveUp("smoke").Fact!);
        Assert.NotEqual(NextAction.HeatRun, CardOf.Make(unit.Bench.Unit, OnTheBench.Sheet, Shop.Usual).Next.Action);
        unit.Add(new BreakerStarted("breaker", 20, 67.1, 35.5, 50));
        Assert.Equal(
            (NextAction.TimeBreaker, "breaker"),
            (
                CardOf.Make(unit.Bench.Unit, OnTheBench.Sheet, Shop.Usual).Next.Action,
                CardOf.Make(unit.Bench.Unit, OnTheBench.Sheet, Shop.Usual).Next.About
            )
        );
    }
}
