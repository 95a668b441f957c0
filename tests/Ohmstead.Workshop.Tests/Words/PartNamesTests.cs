using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Faults;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Tests.Readings;
using Ohmstead.Workshop.Words;

namespace Ohmstead.Workshop.Tests.Words;

/// <summary>Ids of a sheet in the words of the bench.</summary>
public class PartNamesTests
{
    private static readonly TypeSheet Twin = OnTheBench.SheetOf("demo/twin-175.sheet.json");
    private static readonly TypeSheet Bare = TypeSheetFile
        .Read(
            """
            { "ohmstead": "type-sheet/1", "id": "bare", "supply": { "volts": 120, "hertz": 60 },
              "cores": [{ "id": "c1", "referenceWinding": "primary", "lossOhms": 1000, "magnetisingHenries": 2 }],
              "controls": [{ "id": "throttle-left", "kind": "throttle" }, { "id": "s1", "kind": "selector", "positions": ["p-1", "b", "full-speed"] }],
              "elements": [
                { "id": "w-0", "kind": "wire", "from": "blade-1", "to": "n1" }, { "id": "w-1", "kind": "wire", "from": "blade-2", "to": "n2" },
                { "id": "primary", "kind": "winding", "from": "n1", "to": "n2", "core": "c1", "turns": 100, "ohms": 4 },
                { "id": "sec-2", "kind": "winding", "from": "lug-1", "to": "lug-2", "core": "c1", "turns": 20, "ohms": 0.2,
                  "taps": [{ "turn": 10, "to": "tap-14" }],
                  "sliders": [{ "id": "sl", "control": "throttle-left", "fromTurn": 5, "toTurn": 15, "to": "arm", "contactOhms": 0.1, "bridgesTurns": 1 }] },
                { "id": "j-14", "kind": "joint", "from": "tap-14", "to": "lug-14" },
                { "id": "w-14", "kind": "wire", "from": "lug-14", "to": "post-c", "colour": "red" },
                { "id": "k1", "kind": "switch", "from": "arm", "to": "post-u-2", "control": "s1", "closedIn": ["b"] },
                { "id": "added", "title": "jumper of post C", "kind": "wire", "from": "post-c", "to": "lug-1" },
                { "id": "i-1", "kind": "insulation", "from": "n1", "to": "n9", "ohms": 1e8 }, { "id": "i-2", "kind": "insulation", "from": "lug-2", "to": "n9", "ohms": 1e8 } ],
              "readings": [ { "id": "r-0", "title": "Between the plug blades", "quantity": "ohms", "between": ["blade-1", "blade-2"] }, { "id": "r-1", "quantity": "ohms", "between": ["post-c", "post-u-2"] } ],
              "takeApart": [ { "id": "st-1" }, { "id": "steel-cover" } ] }
            """
        )
        .Required;

    [Theory]
    [InlineData("w-14", "red wire from lug 14 to post C")]
    [InlineData("j-14", "joint at tap 14")]
    [InlineData("primary", "primary")]
    [InlineData("sec-2", "winding from lug 1 to lug 2")]
    [InlineData("sl", "roller of the left throttle")]
    [InlineData("k1", "switch contact from arm to post U-2")]
    [InlineData("i-1", "insulation, primary to terminal 12")]
    [InlineData("added", "jumper of post C")]
    [InlineData("nowhere-1x", "a part that this type sheet does not have")]
    public void Without_a_title_a_part_is_called_by_its_kind_and_what_it_lies_between(string id, string name) =>
        Assert.Equal(name, PartNames.Of(Bare, id));

    [Theory]
    [InlineData("post-c", "post C")]
    [InlineData("post-u-2", "post U-2")]
    [InlineData("lug-14", "lug 14")]
    [InlineData("n1", "terminal 2")]
    public void A_terminal_whose_name_is_words_is_said_in_words_and_another_by_a_number(string id, string name) =>
        Assert.Equal(name, PartNames.Terminal(Bare, id));

    [Fact]
    public void Controls_positions_ends_readings_and_steps_have_names_too()
    {
        Assert.Equal("left throttle", PartNames.Control(Bare, "throttle-left"));
        Assert.Equal("switch", PartNames.Control(Bare, "s1"));
        Assert.Equal(["position 1", "B", "full speed"], Bare.Controls[1].Positions.Select(p => PartNames.Position(Bare, "s1", p)));
        Assert.Equal("red wire from lug 14 to post C, its end at post C", PartNames.End(Bare, "w-14.to"));
        Assert.Equal("its tap at tap 14", PartNames.EndAlone(Bare, "sec-2.tap-1"));
        Assert.Equal("Ω, post C to post U-2", PartNames.Reading(Bare, "r-1"));
        Assert.Equal("a reading that this type sheet does not have", PartNames.Reading(Bare, "r-9"));
        Assert.Equal(["step 1", "steel cover"], Bare.TakeApart.Select(s => PartNames.Step(Bare, s.Id)));
    }

    [Fact]
    public void A_title_of_the_sheet_comes_before_any_made_name()
    {
        Assert.Equal("red wire of post 1", PartNames.Of(Twin, "w-1"));
        Assert.Equal("red wire of post 1, its end at post 1", PartNames.End(Twin, "w-1.to"));
        Assert.Equal("its 8 V tap", PartNames.EndAlone(Twin, "main.tap-1"));
        Assert.Equal("the 14 V post", PartNames.Terminal(Twin, "post-14"));
        Assert.Equal("toward track 1, step 2", PartNames.Position(Twin, "whistle", "1-step-2"));
        Assert.Equal("the red wire of post 1", PartNames.The(Twin, "w-1"));
        Assert.Equal("post 1", PartNames.The(Twin, "post-1"));
        Assert.Equal("post 0, the 8 V post and the 14 V post", PartNames.Terminals(Twin, ["post-0", "post-8", "post-14"]));
    }

    [Theory]
    [InlineData("roller-1:worn", "Worn roller, track 1")]
    [InlineData("roller-2:open", "Roller not touching, track 2")]
    [InlineData("breaker-1:resistive", "Burnt breaker contact, track 1")]
    [InlineData("breaker-2:bypassed", "Bypassed breaker, track 2")]
    [InlineData("joint-14:resistive", "Cold joint at the 14 V lug")]
    [InlineData("joint-8:open", "Loose joint at the 8 V lug")]
    [InlineData("w-2:open", "Broken blue wire, post 2")]
    [InlineData("cord-1:resistive", "Worn cord wire, blade 1")]
    [InlineData("primary:open", "Open primary")]
    [InlineData("main:shorted-turns", "Shorted turns, main winding")]
    [InlineData("boost:reversed", "Reversed boost winding")]
    [InlineData("disc:high-drop", "Weak whistle disc")]
    [InlineData("disc:leaky", "Leaky whistle disc")]
    [InlineData("ballast:drifted", "Resistance wire off value")]
    [InlineData("pilot:open", "Dead pilot lamp")]
    [InlineData("run-1:resistive", "Dirty whistle rest contact, track 1")]
    [InlineData("kick-2:stuck-open", "Whistle boost contact not closing, track 2")]
    [InlineData("rotary-1-a:stuck-closed", "Direction contact A stuck on, track 1")]
    [InlineData("ins-primary-core:low", "Weak insulation, primary to core")]
    public void A_fault_is_headed_by_its_word_the_part_and_which_one(string fault, string headline) =>
        Assert.Equal(headline, PartNames.Headline(Twin, new FaultCatalogue(new UnitModel(Twin)).Find(fault)!));

    /// <summary>The three sheets that come along, and one without any title: no fault, part, terminal, control or step is said by its id.</summary>
    [Theory]
    [InlineData("demo/solo-110.sheet.json")]
    [InlineData("demo/twin-175.sheet.json")]
    [InlineData("demo/step-230.sheet.json")]
    [InlineData("")]
    public void Every_name_of_a_sheet_is_words(string path)
    {
        var sheet = path.Length == 0 ? Bare : OnTheBench.SheetOf(path);
        var parts = sheet.Elements.Select(e => e.Id).Concat(sheet.Windings.SelectMany(w => w.Sliders).Select(s => s.Id));
        var terminals = sheet.Elements.SelectMany(e => e.OtherTerminals.Append(e.From).Append(e.To)).Distinct();
        var names = parts
            .Select(p => PartNames.The(sheet, p))
            .Concat(terminals.Select(t => PartNames.Terminal(sheet, t)))
            .Concat(sheet.Controls.Select(c => PartNames.Control(sheet, c.Id)))
            .Concat(sheet.Controls.SelectMany(c => c.Positions.Select(p => PartNames.Position(sheet, c.Id, p))))
            .Concat(
                new FaultCatalogue(new UnitModel(sheet)).Modes.SelectMany(m =>
                    new[] { PartNames.Headline(sheet, m), PartNames.Mode(sheet, m) }
                )
            )
            .Concat(sheet.TakeApart.Select(s => PartNames.Step(sheet, s.Id)))
            .ToList();
        Assert.All(names, n => Assert.DoesNotMatch(@"[a-z]-\d|[a-z]{2,}-[a-z]|\.(from|to)\b|resistive|drifted|stuck-", n));
        Assert.All(names, n => Assert.True(n.Length > 0));
    }

    [Fact]
    public void No_two_parts_and_no_two_terminals_of_a_sheet_that_comes_along_are_called_the_same()
    {
        foreach (var path in new[] { "demo/solo-110.sheet.json", "demo/twin-175.sheet.json", "demo/step-230.sheet.json" })
        {
            var sheet = OnTheBench.SheetOf(path);
            var parts = sheet
                .Elements.Select(e => e.Id)
                .Concat(sheet.Windings.SelectMany(w => w.Sliders).Select(s => s.Id))
                .Select(p => PartNames.Of(sheet, p))
                .ToList();
            var terminals = sheet
                .Elements.SelectMany(e => e.OtherTerminals.Append(e.From).Append(e.To))
                .Distinct()
                .Select(t => PartNames.Terminal(sheet, t))
                .ToList();
            Assert.Equal(parts.Distinct(), parts);
            Assert.Equal(terminals.Distinct(), terminals);
        }
    }
}
