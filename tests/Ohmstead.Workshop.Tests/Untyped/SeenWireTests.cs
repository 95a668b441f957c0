using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Untyped;
using Ohmstead.Workshop.Words;

namespace Ohmstead.Workshop.Tests.Untyped;

public class SeenWireTests
{
    private static readonly Fact[] Named =
    [
        new TakenIn("1", "", "", ""),
        new TerminalNamed("untyped-post-1", "A", true),
        new TerminalNamed("untyped-lug-1", "brass lug", false),
    ];

    [Fact]
    public void A_wire_is_named_by_its_color_at_one_joint_and_found_again_at_the_other()
    {
        var first = SeenWire.Seen(OneUnit.Of(Named), WiringState.Found, "untyped-post-1", [], "red wire, black");
        Assert.Equal(["red", "black"], first.Ends.Select(e => e.Colour));
        var unit = OneUnit.Of([.. Named, first]);
        var offered = SeenWire.On(unit, WiringState.Found, "untyped-lug-1");
        Assert.Equal(["untyped-wire-1.to", "untyped-wire-2.to"], offered.Select(o => o.End));
        Assert.All(offered, o => Assert.False(o.IsHere));
        var second = SeenWire.Seen(unit, WiringState.Found, "untyped-lug-1", ["untyped-wire-1.to"], "");
        unit = OneUnit.Of([.. Named, first, second]);
        Assert.Equal(("red", "untyped-post-1", "untyped-lug-1"), Of(SeenWire.All(unit)[0]));
        Assert.Equal(("black", "untyped-post-1", ""), Of(SeenWire.All(unit)[1]));
        Assert.Equal("Brass lug, as found: red wire", FactWords.Of(second, UntypedSheet.Of(unit)));
        // The wiring as left begins with what was found there.
        Assert.Contains(SeenWire.On(unit, WiringState.Left, "untyped-lug-1"), o => o is { End: "untyped-wire-1.to", IsHere: true });
    }

    [Fact]
    public void The_sheet_stays_sound_with_wires_of_one_end_and_a_wire_from_a_place_to_itself()
    {
        var unit = OneUnit.Of([
            .. Named,
            new JointSeen(
                WiringState.Found,
                "untyped-post-1",
                [new WireEnd("untyped-wire-1.from", ""), new WireEnd("untyped-wire-1.to", ""), new WireEnd("untyped-wire-2.from", "red")],
                "",
                0,
                0
            ),
        ]);
        var sheet = UntypedSheet.Of(unit);
        Assert.Equal("red wire", PartNames.Of(sheet, "untyped-wire-2"));
    }

    [Fact]
    public void What_comes_off_is_asked_for_in_words_with_its_cup_and_pieces()
    {
        var unit = OneUnit.Of(Named);
        Assert.Equal(
            new TakenOff("untyped-off-1", 3, 4, "upside down") { Title = "cover" },
            NextOff.Read(unit, " cover ", "3", " 4 ", "upside down").Off
        );
        Assert.NotEmpty(NextOff.Read(unit, " ", "0", "1", "").Problem);
        Assert.NotEmpty(NextOff.Read(unit, "cover", "x", "1", "").Problem);
        Assert.NotEmpty(NextOff.Read(unit, "cover", "0", "0", "").Problem);
        var off = OneUnit.Of([
            .. Named,
            new TakenOff("untyped-off-1", 0, 1, "") { Title = "cover" },
            new Corrected(new Guid(4, 0, 0, new byte[8]), null),
        ]);
        Assert.Equal("untyped-off-2", NextOff.IdOf(off));
    }

    private static (string, string, string) Of(SeenWire w) => (w.Colour, w.From, w.To);

    [Fact]
    public void A_wire_is_loose_until_both_its_ends_were_seen_and_each_end_knows_the_other_terminal()
    {
        var wire = new SeenWire("untyped-wire-1", "red", "a", "b");
        Assert.Equal(("b", "a"), (wire.Beyond(wire.First), wire.Beyond(wire.Second)));
        Assert.Equal((false, true, true), (wire.IsLoose, (wire with { To = "" }).IsLoose, (wire with { From = "" }).IsLoose));
    }
}
