using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Faults;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Findings;
using Ohmstead.Workshop.Tests.Readings;

namespace Ohmstead.Workshop.Tests.Findings;

/// <summary>The table of what to do: every fault of every sheet has its row, and each row says what the trade says.</summary>
public class WhatToDoTests
{
    public static TheoryData<string> Sheets { get; } =
    ["demo/twin-175.sheet.json", "demo/solo-110.sheet.json", "demo/step-230.sheet.json", "tests/Reference/sample/twin-160.sheet.json"];

    /// <summary>docs/words.md: words that no person is to read.</summary>
    private static readonly string[] Never = ["anew", "stands", "gate", "resistive", "drifted", "renew", "hood", "safe", "alike", "told"];

    private static FaultMode Mode(TypeSheet sheet, string name) => new FaultCatalogue(new UnitModel(sheet)).Find(name)!;

    [Theory]
    [MemberData(nameof(Sheets))]
    public void Every_fault_of_a_sheet_has_a_row_of_its_kind_and_mode(string file)
    {
        var sheet = OnTheBench.SheetOf(file);
        foreach (var mode in new FaultCatalogue(new UnitModel(sheet)).Modes)
        {
            var row = WhatToDo.For(sheet, mode);
            Assert.Equal((mode.Kind.Word(), mode.Mode), (row.Kind, row.Mode));
        }
    }

    [Fact]
    public void Every_mode_of_every_kind_has_a_row_even_where_nothing_tells_its_role()
    {
        // Rectifiers, sliders and the insulation of the mains always have a role; the others fall back on the row without one.
        foreach (var (kind, mode) in ElementKinds.All.SelectMany(k => k.Faults(), (k, m) => (k.Word(), m.Mode)))
            Assert.Contains(
                WhatToDo.Rows,
                r => r.Kind == kind && r.Mode == mode && (r.Role.Length == 0 || kind is "rectifier" or "slider")
            );
    }

    [Theory]
    [InlineData("demo/twin-175.sheet.json", "roller-1:worn", "Worn roller", "Clean, then replace")]
    [InlineData("demo/solo-110.sheet.json", "shoe:worn", "Worn shoe", "Clean, then replace")]
    [InlineData("demo/twin-175.sheet.json", "cord-1:open", "Broken cord wire", "Replace the whole cord, no splice")]
    [InlineData("demo/twin-175.sheet.json", "w-1:open", "Broken wire", "Replace or resolder")]
    [InlineData("demo/twin-175.sheet.json", "disc:high-drop", "Weak whistle disc", "Tighten, then replace")]
    [InlineData("demo/step-230.sheet.json", "plate-2:leaky", "Leaky rectifier plate", "Replace the whole stack, not one plate")]
    [InlineData("demo/twin-175.sheet.json", "kick-1:resistive", "Dirty whistle contacts", "Clean")]
    [InlineData("demo/twin-175.sheet.json", "rotary-1-a:resistive", "Dirty direction switch", "Clean, then replace")]
    [InlineData("demo/solo-110.sheet.json", "button:resistive", "Dirty direction button", "Clean")]
    [InlineData("demo/solo-110.sheet.json", "range-high:resistive", "Dirty range switch", "Clean")]
    [InlineData("demo/step-230.sheet.json", "step-3:resistive", "Dirty speed step", "Clean")]
    [InlineData("demo/twin-175.sheet.json", "ballast:open", "Open resistance wire", "Tighten, then replace")]
    [InlineData("demo/solo-110.sheet.json", "dropper:open", "Open dropper", "Replace")]
    [InlineData("demo/twin-175.sheet.json", "primary:open", "Open primary", "Tighten if you can reach it")]
    [InlineData("demo/twin-175.sheet.json", "boost:reversed", "Reversed winding", "Tighten: swap its two ends")]
    [InlineData("demo/twin-175.sheet.json", "main:reversed", "Reversed main winding", "Tighten: move the two end leads back")]
    [InlineData("demo/twin-175.sheet.json", "ins-primary-core:low", "Weak insulation at the mains side", "Leave it unplugged, dry it")]
    [InlineData("demo/twin-175.sheet.json", "ins-main-core:low", "Weak insulation to the core", "Clean")]
    [InlineData("demo/step-230.sheet.json", "ins-run-lights:low", "Weak insulation between windings", "Leave it unplugged, dry it")]
    public void A_part_is_known_by_what_it_is_there_for(string file, string fault, string headline, string act)
    {
        var sheet = OnTheBench.SheetOf(file);
        var row = WhatToDo.For(sheet, Mode(sheet, fault));
        Assert.Equal((headline, act), (row.Headline, row.Act));
    }

    [Fact]
    public void No_row_uses_a_word_that_no_person_is_to_read()
    {
        foreach (var row in WhatToDo.Rows)
        foreach (
            var text in (string[])[row.Headline, row.Means, row.Notices, row.Act, .. row.Do, row.WorkedWhen, row.Caution, row.StopWhen]
        )
        foreach (var word in Never)
            Assert.DoesNotMatch($@"(?i)\b{word}\b", text);
    }

    [Fact]
    public void Minutes_and_prices_are_those_of_a_bench()
    {
        // Common practice, no source: cleaning a roller takes 10 minutes, replacing it 30; a roller costs 4.50 in the invented shop.
        var roller = WhatToDo.Rows.Single(r => r is { Kind: "slider", Mode: "worn", Role: "roller" });
        Assert.Equal("10–30 min", roller.Time);
        Assert.Contains(("roller", 4.5), roller.Parts);
        Assert.All(WhatToDo.Rows, r => Assert.InRange(r.Minutes.From, 1, r.Minutes.To));
        Assert.EndsWith(
            "then 1–2 days to dry",
            WhatToDo.Rows.Single(r => r is { Kind: "insulation", Role: "mains" }).Time,
            StringComparison.Ordinal
        );
    }
}
