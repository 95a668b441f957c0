using System.Collections.Immutable;
using System.Text.Json.Nodes;
using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Faults;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Cautions;
using Ohmstead.Workshop.Drawing;
using Ohmstead.Workshop.Findings;
using Ohmstead.Workshop.TakeApart;
using Ohmstead.Workshop.Tests.Drawing;
using Ohmstead.Workshop.Words;

namespace Ohmstead.Workshop.Tests.Findings;

/// <summary>What is said and done about faults that parts share, rheostats and capacitors.</summary>
public class NewSortsTests
{
    /// <summary>The demo's controller, whose four plates have aged together.</summary>
    private static TypeSheet Stack(string? title)
    {
        var json = JsonNode.Parse(DrawnSheets.Text("demo/step-230.sheet.json"))!;
        var fault = new JsonObject
        {
            ["id"] = "stack-aged",
            ["elements"] = new JsonArray("plate-1", "plate-2", "plate-3", "plate-4"),
            ["mode"] = "high-drop",
            ["percent"] = 25,
        };
        if (title is not null)
            fault["title"] = title;
        json["sharedFaults"] = new JsonArray(fault);
        return TypeSheetFile.Read(json.ToJsonString()).Required;
    }

    /// <summary>A drawn controller with a rheostat that is off at rest, and a filter.</summary>
    private static TypeSheet Rheostat { get; } = DrawnSheets.Sheet("tests/Reference/ngspice/random/107.sheet.json");

    private static FaultMode Mode(TypeSheet sheet, string name) => new FaultCatalogue(new UnitModel(sheet)).Find(name)!;

    [Fact]
    public void A_shared_fault_is_said_by_its_title_or_by_its_parts_and_never_by_an_id()
    {
        Assert.Equal("Aged stack of plates", PartNames.Headline(Stack("aged stack of plates"), "stack-aged", "high-drop"));
        var made = PartNames.Headline(Stack(null), "stack-aged", "high-drop");
        Assert.EndsWith("weak together", made, StringComparison.Ordinal);
        Assert.DoesNotContain("stack-aged", made, StringComparison.Ordinal);
    }

    /// <summary>Beside the name of one plate "weak" would blame that plate alone.</summary>
    [Fact]
    public void Beside_a_part_that_shares_it_the_whole_fault_is_said()
    {
        var sheet = Stack("aged stack of plates");
        Assert.Equal("aged stack of plates", PartNames.Mode(sheet, Mode(sheet, "stack-aged:high-drop")));
        Assert.Equal("weak", PartNames.Mode(sheet, Mode(sheet, "plate-2:high-drop")));
    }

    [Fact]
    public void What_to_do_about_it_is_what_its_parts_want()
    {
        var sheet = Stack("aged stack of plates");
        var row = WhatToDo.For(sheet, Mode(sheet, "stack-aged:high-drop"));
        Assert.Equal(("plate", "Replace the whole stack, not one plate"), (row.Role, row.Act));
        Assert.Equal(ReachFor.StepFor("plate-1", sheet), ReachFor.StepFor("stack-aged", sheet));
        Assert.Equal(CautionTable.OfRepair(sheet, "plate-1"), CautionTable.OfRepair(sheet, "stack-aged"));
    }

    [Theory]
    [InlineData("brush:worn", "brush", "Worn brush")]
    [InlineData("brush:open", "brush", "Brush not touching")]
    [InlineData("rheostat:open", "rheostat", "Broken rheostat wire")]
    [InlineData("rheostat:shorted", "rheostat", "Shorted rheostat wire")]
    [InlineData("rheostat:drifted", "rheostat", "Rheostat wire off value")]
    [InlineData("filter:leaky", "", "Leaky capacitor")]
    public void Rheostats_and_capacitors_have_rows_of_their_own(string fault, string role, string headline)
    {
        var row = WhatToDo.For(Rheostat, Mode(Rheostat, fault));
        Assert.Equal((role, headline), (row.Role, row.Headline));
    }

    [Fact]
    public void No_closed_path_leads_over_a_brush_that_is_off_and_one_goes_along_the_wire_where_it_touches()
    {
        var brush = Rheostat.Sliders.Single();
        MeasuredPath Path(double at) =>
            MeasuredPath.Between(
                Rheostat,
                Rheostat.FindReading("blades")!.State with
                {
                    Controls = ImmutableDictionary<string, ControlPosition>.Empty.Add(brush.Control, new ControlPosition(at, "")),
                },
                "main-end",
                "arm"
            )!;
        var (off, on) = (Path(brush.OffBelow / 2), Path(0.5));
        Assert.True(brush.OffBelow > 0);
        Assert.DoesNotContain(off.Parts, p => p.Id == brush.Id && !p.IsOpen);
        Assert.Contains(off.Parts, p => p.IsOpen);
        Assert.False(on.Parts.Single(p => p.Id == brush.Id).IsOpen);
        Assert.Contains(on.Parts, p => p is { Id: "rheostat", Kind: ElementKind.Resistor });
    }
}
