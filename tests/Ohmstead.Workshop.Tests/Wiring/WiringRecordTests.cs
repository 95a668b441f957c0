using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Faults;
using Ohmstead.Electrical.Solving;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Tests.Readings;
using Ohmstead.Workshop.Wiring;

namespace Ohmstead.Workshop.Tests.Wiring;

/// <summary>The wiring as found, planned and left: what is missing, what differs, and the circuit that comes of it. Common practice, no source.</summary>
public class WiringRecordTests
{
    private static readonly TypeSheet Sheet = OnTheBench.Sheet;

    private static readonly string Photo = new('a', 64);

    /// <summary>Every joint as the circuit has it, but some ends elsewhere.</summary>
    private static OnTheBench Recorded(WiringState state, OnTheBench bench, params (string End, string Terminal)[] elsewhere)
    {
        string At(string end, string home) => Array.Find(elsewhere, e => e.End == end) is { Terminal: { } t } ? t : home;
        foreach (var terminal in WireEnds.Terminals(Sheet))
            bench.Add(
                new JointSeen(
                    state,
                    terminal,
                    [.. WireEnds.Of(Sheet).Where(e => At(e.End, e.Terminal) == terminal).Select(e => new WireEnd(e.End, "red"))],
                    Photo,
                    0.5,
                    0.5
                )
            );
        return bench;
    }

    private static WiringRecord Of(OnTheBench bench, WiringState state = WiringState.Found) => WiringRecord.Of(bench.Unit, Sheet, state);

    [Fact]
    public void A_wiring_seen_as_planned_is_complete_and_differs_in_nothing()
    {
        var record = Of(Recorded(WiringState.Found, new OnTheBench()));
        Assert.Empty(record.Incomplete(Sheet));
        Assert.Empty(record.Against(Sheet));
        Assert.Equal("red", record.ColourOf("w-5.to"));
        Assert.Empty(Of(new OnTheBench()).Against(Sheet));
    }

    [Fact]
    public void A_wire_with_one_end_an_end_on_two_joints_an_empty_joint_and_one_on_no_photo_are_named()
    {
        var bench = Recorded(WiringState.Found, new OnTheBench());
        var wire = Sheet.Elements.First(e => e.Kind == ElementKind.Wire);
        var rest = Of(bench).Joints.First(j => j.Terminal == wire.To);
        bench.Add(rest with { Ends = [.. rest.Ends.Where(e => e.Id != $"{wire.Id}.to")] });
        Assert.Contains(
            Of(bench).Incomplete(Sheet),
            p => p.Contains($"has an end not seen: {Workshop.Words.PartNames.EndAlone(Sheet, $"{wire.Id}.to")}", StringComparison.Ordinal)
        );
        var other = Of(bench).Joints.First(j => j.Terminal != wire.To && j.Terminal != wire.From);
        bench.Add(other with { Ends = other.Ends.Add(new($"{wire.Id}.from", "")) });
        Assert.Contains(
            Of(bench).Incomplete(Sheet),
            p => p.StartsWith($"{WireEnds.Said($"{wire.Id}.from", Sheet)} is on two joints", StringComparison.Ordinal)
        );
        bench.Add(other with { Ends = [], Photo = "" });
        Assert.Contains(
            $"{Workshop.Words.Sentences.Large(Workshop.Words.PartNames.Terminal(Sheet, other.Terminal))}: no wire",
            Of(bench).Incomplete(Sheet)
        );
        Assert.Contains(
            $"{Workshop.Words.Sentences.Large(Workshop.Words.PartNames.Terminal(Sheet, other.Terminal))}: on no photo",
            Of(bench).Incomplete(Sheet)
        );
    }

    /// <summary>An earlier repair that stays makes the unit's own circuit, and the readings follow from it.</summary>
    [Fact]
    public void An_end_that_stays_where_it_was_found_changes_the_circuit_and_what_is_expected_of_it()
    {
        var (a, b) = (Sheet.Elements.First(e => e.Id == "w-5"), Sheet.Elements.First(e => e.Id == "w-17"));
        var bench = Recorded(WiringState.Found, new OnTheBench(), ("w-5.to", b.To), ("w-17.to", a.To));
        var differs = Of(bench).Against(Sheet);
        Assert.Equal(
            [("w-5.to", b.To, a.To), ("w-17.to", a.To, b.To)],
            differs.OrderByDescending(d => d.End, StringComparer.Ordinal).ToArray()
        );
        var before = Shown(bench.Own, "full-17", "low-17");
        foreach (var change in WireEnds.Keep(differs.Select(d => (d.End, d.Seen)), bench.Own))
            bench.Add(change);
        Assert.Empty(Of(bench).Against(bench.Own));
        Assert.NotEqual(before, Shown(bench.Own, "full-17", "low-17"), 1);
        Assert.False(WiringCheck.IsOpen(bench.Unit, bench.Own));
    }

    [Fact]
    public void Found_planned_and_left_are_told_apart_into_what_was_meant_and_what_was_not()
    {
        var (a, b) = (Sheet.Elements.First(e => e.Id == "w-5"), Sheet.Elements.First(e => e.Id == "w-17"));
        // Found exchanged, put right again: meant. Left exchanged: not meant.
        var bench = Recorded(WiringState.Left, Recorded(WiringState.Found, new OnTheBench(), ("w-5.to", b.To)), ("w-17.from", b.To));
        var ends = EndCompared.All(Of(bench), Of(bench, WiringState.Left), Sheet);
        Assert.Equal(["w-5.to"], ends.Where(e => e.IsIntended).Select(e => e.End));
        Assert.Equal(["w-17.from"], ends.Where(e => e.IsWrong).Select(e => e.End));
    }

    [Fact]
    public void A_tap_that_stays_elsewhere_is_kept_in_its_winding_and_an_end_of_no_sheet_is_not()
    {
        var winding = Sheet.Elements.OfType<Winding>().First(w => w.Taps.Length > 0);
        var change = WireEnds.Keep([($"{winding.Id}.tap-1", winding.To)], Sheet).Single();
        Assert.Equal((winding.Id, PartChange.Moved), (change.Element, change.Change));
        Assert.Equal($$"""{"tap-1":"{{winding.To}}"}""", change.Part!.Value.GetRawText());
        Assert.Equal(winding.To, new OnTheBench().Add(change).Own.Elements.OfType<Winding>().First(w => w.Id == winding.Id).Taps[0].To);
        Assert.Empty(WireEnds.Keep([($"{winding.Id}.tap-99", winding.To)], Sheet));
        Assert.Empty(WireEnds.Keep([("no-such.to", winding.To)], Sheet));
    }

    /// <summary>Two ends of one wire said to stay, one after the other: the second says nothing of the first.</summary>
    [Fact]
    public void A_second_end_that_stays_leaves_the_first_where_it_was_kept()
    {
        var (wire, other) = (Sheet.Elements.First(e => e.Id == "w-5"), Sheet.Elements.First(e => e.Id == "w-17"));
        var bench = new OnTheBench();
        foreach (var change in WireEnds.Keep([("w-5.to", other.To), ("w-17.to", wire.To)], bench.Own))
            bench.Add(change);
        foreach (var change in WireEnds.Keep([("w-5.from", other.From), ("w-17.from", wire.From)], bench.Own))
            bench.Add(change);
        var own = bench.Own.Elements.First(e => e.Id == "w-5");
        Assert.Equal((other.From, other.To), (own.From, own.To));
        Assert.NotEqual((wire.From, wire.To), (own.From, own.To));
    }

    /// <summary>A part put in later has its ends like any other, and an end that moved leaves its figures as they are.</summary>
    [Fact]
    public void A_part_put_in_later_and_figures_changed_earlier_come_along()
    {
        var wire = Sheet.Elements.First(e => e.Id == "w-5");
        var bench = new OnTheBench().Add(
            new PartChanged(
                "snubber",
                PartChange.Added,
                Json($$"""{ "id": "snubber", "kind": "resistor", "from": "{{wire.From}}", "to": "{{wire.To}}", "ohms": 470 }"""),
                ""
            )
        );
        var disc = Sheet.Elements.OfType<Rectifier>().First();
        bench.Add(Workshop.Findings.PartDraft.Of(bench.Unit, Sheet, disc.Id)!.AsSilicon().Finish(bench.Unit, Sheet, "diode").Fact!);
        var there = Sheet.Elements.First(e => e.Id == "w-17").To;
        foreach (var change in WireEnds.Keep([("snubber.to", there), ($"{disc.Id}.to", there)], bench.Own))
            bench.Add(change);
        var (snubber, diode) = (
            bench.Own.Elements.Single(e => e.Id == "snubber"),
            bench.Own.Elements.OfType<Rectifier>().First(r => r.Id == disc.Id)
        );
        Assert.Equal((there, 470), (snubber.To, ((Resistive)snubber).Ohms));
        Assert.Equal((there, 1e-9), (diode.To, diode.SaturationAmps));
        Assert.Contains(("ohms", "470"), Workshop.Findings.PartDraft.Of(bench.Unit, Sheet, "snubber")!.Fields);

        // And the other way round: new figures leave the end where it was kept.
        var fact = Workshop
            .Findings.PartDraft.Of(bench.Unit, Sheet, disc.Id)!
            .With("seriesOhms", "0.5")
            .Finish(bench.Unit, Sheet, "")
            .Fact!;
        diode = bench.Add(fact).Own.Elements.OfType<Rectifier>().First(r => r.Id == disc.Id);
        Assert.Equal((there, 0.5, 1e-9), (diode.To, diode.SeriesOhms, diode.SaturationAmps));
    }

    /// <summary>Where its ends are says nothing of its age: an old disc that stays where it was found has its old chances.</summary>
    [Fact]
    public void A_part_that_stays_where_it_was_found_is_no_newer_for_it()
    {
        var disc = Sheet.Elements.OfType<Rectifier>().First();
        var bench = new OnTheBench();
        bench.Add(WireEnds.Keep([($"{disc.Id}.to", Sheet.Elements.First(e => e.Id == "w-17").To)], bench.Own).Single());
        Assert.Equal(disc.Percents, bench.Own.Elements.OfType<Rectifier>().First(r => r.Id == disc.Id).Percents);
        var renewed = new OnTheBench().Add(new PartChanged(disc.Id, PartChange.Renewed, null, ""));
        var before = renewed.Own.Elements.Single(e => e.Id == disc.Id).Percents["high-drop"];
        renewed.Add(WireEnds.Keep([($"{disc.Id}.to", disc.From + "")], renewed.Own).Single() with { Part = Json("{}") });
        Assert.Equal(before, renewed.Own.Elements.Single(e => e.Id == disc.Id).Percents["high-drop"]);
    }

    private static System.Text.Json.JsonElement Json(string text) => System.Text.Json.JsonDocument.Parse(text).RootElement;

    private static double Shown(TypeSheet own, params string[] readings)
    {
        var spec = readings.Select(own.FindReading).First(r => r is not null)!;
        var model = new UnitModel(own);
        return new ReadingSolver().Solve(new FaultedCircuits(model, spec, spec.State).Usual, model.Nominal).Value!.Value;
    }

    [Fact]
    public void What_is_still_to_be_looked_at_is_every_joint_and_end_that_nobody_saw_and_the_joint_in_hand()
    {
        var (first, second) = (WireEnds.Terminals(Sheet)[0], WireEnds.Terminals(Sheet)[1]);
        var ends = WireEnds.On(Sheet, first).ToArray();
        Assert.Equal(WireEnds.Of(Sheet).Where(e => e.Terminal == first).Select(e => e.End), ends);
        var record = Of(new OnTheBench().Add(new JointSeen(WiringState.Found, first, [.. ends.Select(e => new WireEnd(e, ""))], "", 0, 0)));
        Assert.Equal(second, record.Waiting(Sheet, "").First());
        Assert.Equal([first, second], record.Waiting(Sheet, first).Take(2));
        Assert.Empty(record.NotSeen(Sheet).Intersect(ends));
        Assert.Equal(WireEnds.Of(Sheet).Length - ends.Length, record.NotSeen(Sheet).Count());
    }

    [Fact]
    public void The_color_of_a_wire_is_that_of_either_end()
    {
        var wire = Sheet.Elements.First(e => e.Kind == ElementKind.Wire);
        var record = Of(new OnTheBench().Add(new JointSeen(WiringState.Found, wire.From, [new($"{wire.Id}.from", "green")], "", 0, 0)));
        Assert.Equal(("green", "green"), (record.ColourOfWire($"{wire.Id}.to"), record.ColourOfWire($"{wire.Id}.from")));
        Assert.Equal("", record.ColourOfWire("another.from"));
    }
}
