using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Electrical.Faults;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Findings;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Readings;
using Ohmstead.Workshop.Repair;
using Ohmstead.Workshop.Tests.Readings;

namespace Ohmstead.Workshop.Tests.Repair;

/// <summary>Which act the findings offer first: what is in doubt before what is found, and a repair before the next search.</summary>
public class FirstActTests
{
    private static readonly OnTheBench Bench = new OnTheBench().ColdGates().Read("ohms-left", 35);

    private static readonly DiagnosisResult Result = new(0, [], [], [], [], [], true, [], new SearchEffort(1, 1, 1, SearchStop.Complete));

    private static readonly ReadingSpec Spec = OnTheBench.Sheet.FindReading("ohms-right")!;

    private static Diagnosed Of(FindingsView view, params NextAdvice[] next) =>
        new(Bench.Unit.LastNumber, Bench.Model, Bench.Readings, Result, Bench.Unit.Doubts, view, [.. next]);

    private static readonly FindingsView Nothing = new([], [], [], 1, true, []);

    private static readonly NextAdvice Next = new(new(Spec, 0.5, 1, []), []);

    private static Finding Finding(string element, Judgement judgement)
    {
        var mode = new FaultCatalogue(Bench.Model).Modes.First(m => m.Element == element);
        return new(mode, element, 0.5, "", "", judgement, [], []) { Remedy = WhatToDo.For(OnTheBench.Sheet, mode), Members = [mode] };
    }

    private static readonly AfterRepair After = new(["roller-left"], [], [(Spec, false)], false);

    private static SlipWords Slip(string reading) =>
        SlipWords.Of(OnTheBench.Sheet, Bench.Readings, new(reading, SlipKind.TimesTen, null, 3.5, 0.95))!;

    [Fact]
    public void With_nothing_found_and_nothing_to_read_the_part_is_got_to_and_else_the_next_reading_is_taken()
    {
        Assert.Equal(FirstAct.GetTo, FirstActs.Of(Of(Nothing), false, [], null));
        Assert.Equal(FirstAct.Next, FirstActs.Of(Of(Nothing, Next), false, [], null));
        Assert.Equal(FirstAct.Next, FirstActs.Of(Of(Nothing, Next), true, [], null));
    }

    [Fact]
    public void What_was_found_by_hand_is_got_to_before_anything_more_is_read()
    {
        var found = Nothing with { Findings = [Finding("roller-left", Judgement.Confirmed)] };
        Assert.Equal(FirstAct.GetTo, FirstActs.Of(Of(found, Next), false, [], null));
        var open = Nothing with { Findings = [Finding("roller-left", Judgement.Open)] };
        Assert.Equal(FirstAct.Next, FirstActs.Of(Of(open, Next), false, [], null));
    }

    [Fact]
    public void What_could_be_either_is_settled_where_the_reading_is_open()
    {
        FindingsView Either(bool isOpen) =>
            Nothing with
            {
                Readings = [new ReadingPoint(Spec, "", 0, "", false, false)],
                Alike =
                [
                    new(
                        [Finding("roller-left", Judgement.Open), Finding("disc-left", Judgement.Open)],
                        [new SettlingReading(Spec, 1, [], isOpen)]
                    ),
                ],
            };
        Assert.Equal(FirstAct.Settle, FirstActs.Of(Of(Either(true), Next), false, [], null));
        Assert.Equal(FirstAct.Next, FirstActs.Of(Of(Either(false), Next), false, [], null));
    }

    [Fact]
    public void A_repair_is_proved_first_but_for_slips_and_for_doubts_that_something_can_be_done_about()
    {
        Assert.Equal(FirstAct.Repair, FirstActs.Of(Of(Nothing, Next), false, [], After));
        Assert.Equal(FirstAct.Next, FirstActs.Of(Of(Nothing, Next), false, [], After with { Readings = [(Spec, true)] }));
        Assert.Equal(FirstAct.Slip, FirstActs.Of(Of(Nothing, Next), false, [Slip("ohms-left")], After));
        Assert.Equal(FirstAct.Slip, FirstActs.Of(Of(Nothing with { Unexplained = [Spec] }, Next), false, [], After));
    }

    [Fact]
    public void A_slip_holds_until_its_reading_is_read_again_or_moved_by_a_repair()
    {
        var diagnosed = Of(Nothing with { Slips = [Slip("ohms-left")] });
        Assert.Equal(["ohms-left"], diagnosed.SlipsOf(Bench.Unit).Select(s => s.Spec.Id));
        OnTheBench Again() => new OnTheBench().ColdGates().Read("ohms-left", 35);
        Assert.Empty(diagnosed.SlipsOf(Again().Read("ohms-left", 3.5).Unit));
        Assert.Empty(diagnosed.SlipsOf(Again().Add(new PartChanged("roller-left", PartChange.Renewed, null, "")).Unit));
    }
}
