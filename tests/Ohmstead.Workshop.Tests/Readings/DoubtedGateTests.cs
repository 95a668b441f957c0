using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Electrical.Readings;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Readings;

namespace Ohmstead.Workshop.Tests.Readings;

/// <summary>A check that passed and that the last diagnosis doubts keeps mains locked until it is read again and the next one does not.</summary>
public class DoubtedGateTests
{
    private static OnTheBench Passed() => new OnTheBench().ColdGates().Read("lamp-60", 105);

    [Fact]
    public void A_doubted_check_locks_mains_with_its_reason()
    {
        Assert.True(Passed().Offer("left-full").IsOpen);
        var offer = Passed().Doubt(SlipKind.TimesTen, ["blades"]).Offer("left-full");
        Assert.False(offer.IsOpen);
        var shut = Assert.Single(offer.Shut);
        Assert.Equal(("blades", CheckEnd.Doubted, false), (shut.Gate.Id, shut.End, shut.CanBeWaived));
        var reason = Assert.Single(offer.Locks);
        Assert.Equal(
            ("Between the plug blades. 4.2 Ω: possible slip, ten times too high", "Read it again.", "Read again: between the plug blades"),
            (reason.What, reason.Act, reason.Button)
        );
        Assert.Null(ReadingEntry.Enter(offer, Shown.Number(17.3), BenchState.AsSheet).Fact);
    }

    /// <summary>2.8 Ω is the least: 3.3 Ω passes with leads of 0.2 Ω taken off, and not with 0.31 Ω more in it.</summary>
    [Fact]
    public void Leads_that_were_not_taken_off_lock_mains_where_they_make_the_check_fail()
    {
        var bench = new OnTheBench().ColdGates().Read("blades", 3.3).Read("lamp-60", 105);
        Assert.True(bench.Offer("left-full").IsOpen);
        var reason = Assert.Single(bench.Doubt(SlipKind.Unknown, [], 0.31).Offer("left-full").Locks);
        Assert.EndsWith("3.3 Ω: test leads probably not taken off, about 0.31 Ω", reason.What, StringComparison.Ordinal);
        Assert.Equal(
            "Touch the leads together and enter what they read under Shop. Then read it again: the leads are taken off for you.",
            reason.Act
        );
        Assert.True(Passed().Doubt(SlipKind.Unknown, [], 0.31).Offer("left-full").IsOpen);
    }

    [Fact]
    public void Read_again_it_stays_locked_until_the_next_diagnosis_says_that_it_fits()
    {
        var bench = Passed().Doubt(SlipKind.TimesTen, ["blades"]).Read("blades", 4.1);
        Assert.False(bench.Offer("left-full").IsOpen);
        Assert.EndsWith("4.1 Ω: read again, and not judged yet", bench.Offer("left-full").Locks[0].What, StringComparison.Ordinal);
        Assert.Equal("Wait a moment for the findings.", bench.Offer("left-full").Locks[0].Act);
        bench.Trouble("It could not be worked out. Open the findings again.");
        Assert.Equal("It could not be worked out. Open the findings again.", bench.Offer("left-full").Locks[0].Act);
        Assert.Equal("", bench.Offer("blades").Doubted);
        Assert.True(bench.Doubt(SlipKind.TimesTen, []).Offer("left-full").IsOpen);
    }

    [Fact]
    public void What_was_left_out_and_is_no_slip_is_not_called_one()
    {
        var bench = Passed().Read("left-full", 15).LeaveOut("left-full", "blades");
        Assert.Equal("it does not fit the rest", bench.Offer("left-full").Doubted);
        Assert.EndsWith("4.2 Ω: it does not fit the rest", bench.Offer("right-full").Locks[0].What, StringComparison.Ordinal);
        Assert.Equal("Read it again.", bench.Offer("right-full").Locks[0].Act);
        Assert.StartsWith(
            "possible slip",
            bench.Doubt(SlipKind.TimesTen, ["left-full"]).Offer("left-full").Doubted,
            StringComparison.Ordinal
        );
    }

    /// <summary>A check doubted for its leads is proposed as that; the leads are taken off once the shop knows them.</summary>
    [Fact]
    public void A_check_that_holds_the_leads_is_read_again_with_them_taken_off()
    {
        var blades = OnTheBench.Sheet.FindReading("blades")!;
        Assert.Equal("Read again, leads taken off", Passed().Doubt(SlipKind.Unknown, [], 0.31).Unit.Doubts.Again(blades));
        Assert.Equal("Read again", Passed().Doubt(SlipKind.TimesTen, ["blades"], 0.31).Unit.Doubts.Again(blades));
    }

    [Fact]
    public void Both_values_of_a_reading_taken_twice_go_to_the_diagnosis()
    {
        var readings = Passed().Doubt(SlipKind.TimesTen, ["blades"]).Read("blades", 4.2).Readings;
        Assert.Equal([4.2, 4.2], readings.Readings.Where(r => r.Spec.Id == "blades").Select(r => r.Value));
    }

    [Fact]
    public void The_reading_itself_says_that_it_is_doubted()
    {
        var bench = Passed().Read("left-full", 173).Doubt(SlipKind.TimesTen, ["blades", "left-full"]);
        var check = Meaning.OfDoubted(bench.Offer("blades").Doubted, bench.Offer("blades").Spec);
        Assert.Equal(
            (Verdict.Doubted, "possible slip, ten times too high", "Read it again. It unlocks nothing until then."),
            (check.Verdict, check.Words, check.Next)
        );
        Assert.Equal("Read it again.", Meaning.OfDoubted(bench.Offer("left-full").Doubted, bench.Offer("left-full").Spec).Next);
        Assert.Equal("", bench.Offer("insulation-core").Doubted);
    }

    [Fact]
    public void A_correction_takes_the_place_of_the_last_value_with_its_conditions()
    {
        var bench = Passed()
            .Read("ohms-left", 1.1, BenchState.AsSheet with { Celsius = 30 })
            .Read("ohms-left", 35, BenchState.AsSheet with { Celsius = 40 });
        bench.Add(ReadingEntry.Correct(bench.Unit, "ohms-left", Shown.Number(3.5))!);
        Assert.Equal(
            [(1.1, 30.0), (3.5, 40.0)],
            bench
                .Unit.CurrentReadings.Where(r => r.Fact.ReadingId == "ohms-left")
                .Select(r => (r.Fact.Shown.Value, r.Fact.Bench.Celsius ?? 0))
        );
        Assert.Null(ReadingEntry.Correct(bench.Unit, "ohms-right", Shown.Number(1)));
    }
}
