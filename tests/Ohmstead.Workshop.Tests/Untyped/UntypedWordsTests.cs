using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Faults;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Drawing;
using Ohmstead.Workshop.Findings;
using Ohmstead.Workshop.Job;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Readings;
using Ohmstead.Workshop.Shops;
using Ohmstead.Workshop.Units;
using Ohmstead.Workshop.Untyped;
using Ohmstead.Workshop.Wiring;
using Ohmstead.Workshop.Words;

namespace Ohmstead.Workshop.Tests.Untyped;

/// <summary>What is said of a unit whose type is not known is true of it: its plug is the mains, and nothing is made up.</summary>
public class UntypedWordsTests
{
    private const string Insulation = "untyped-insulation-case";

    private static readonly Fact[] Named =
    [
        new TakenIn("1", "", "", ""),
        new PlateRead(120, 90),
        new TerminalNamed("untyped-post-1", "A", true),
    ];

    private static BenchUnit Told(params Fact[] facts) => OneUnit.Of([.. Named, .. facts]);

    private static ReadingEntered Reads(string id, double value) => new(id, Shown.Number(value), BenchState.AsSheet);

    private static Shop With(double ohms) =>
        Shop.Usual with
        {
            Limits = [new ShopLimit("insulation", "", ohms, "Ω", "the shop's own book", "")],
        };

    /// <summary>docs/words.md: weak insulation of the mains is left unplugged; only that of the posts may be tied to the core on purpose.</summary>
    [Theory]
    [InlineData("untyped-path-case")]
    [InlineData("untyped-path-untyped-post-1")]
    public void Weak_insulation_of_the_mains_is_the_mains_before_the_type_is_known(string part)
    {
        var sheet = UntypedSheet.Of(Told());
        var row = WhatToDo.For(sheet, new FaultCatalogue(new UnitModel(sheet)).Find($"{part}:low")!);
        Assert.Equal(("mains", "Leave it unplugged, dry it"), (row.Role, row.Act));
    }

    [Fact]
    public void The_cord_and_the_primary_are_known_by_the_plug()
    {
        var sheet = UntypedSheet.Of(Told());
        Assert.Equal(["blade-1", "blade-2"], LiveSide.Plug(sheet));
        var modes = new FaultCatalogue(new UnitModel(sheet));
        Assert.Equal("cord", PartRole.Of(sheet, modes.Find("untyped-cord-1:open")!));
        Assert.Equal("primary", PartRole.Of(sheet, modes.Find("untyped-primary:open")!));
    }

    [Fact]
    public void The_shops_stricter_limit_binds_the_insulation_of_a_unit_without_a_type()
    {
        var sheet = UntypedSheet.Of(Told());
        Assert.Equal(5e6, ShopLimits.Bind(sheet, With(5e6)).FindReading(Insulation)!.Limits!.Min);
        Assert.Equal(2e6, ShopLimits.Bind(sheet, With(1e6)).FindReading(Insulation)!.Limits!.Min);
    }

    [Fact]
    public void A_limit_that_no_type_sheet_gave_is_not_said_to_be_one_s()
    {
        var sheet = UntypedSheet.Of(Told());
        Assert.Equal("the usual limit, at least 2.00 MΩ", LimitWords.WithSource(sheet.FindReading(Insulation)!));
        Assert.Equal(
            "the shop's limit, at least 5.00 MΩ",
            LimitWords.WithSource(ShopLimits.Bind(sheet, With(5e6)).FindReading(Insulation)!)
        );
    }

    [Fact]
    public void Every_cold_check_is_open_until_it_passes_and_a_failed_one_says_so()
    {
        var open = StillShut.Of(Told(), UntypedSheet.Of(Told()), Shop.Usual);
        Assert.Equal(
            ["untyped-blades-untyped-post-1", "untyped-blades-case", Insulation, "untyped-insulation-posts"],
            open.Select(g => g.Gate.Id)
        );
        var read = Told(Reads(Insulation, 20e3), Reads("untyped-insulation-posts", 300e6));
        var left = StillShut.Of(read, UntypedSheet.Of(read), Shop.Usual);
        Assert.DoesNotContain(left, g => g.Gate.Id == "untyped-insulation-posts");
        var failed = left.Single(g => g.End == CheckEnd.Failed);
        Assert.Equal(Insulation, failed.Gate.Id);
        Assert.StartsWith("20 kΩ: failed the usual limit, at least 2.00 MΩ", failed.Why, StringComparison.Ordinal);
    }

    [Fact]
    public void Turns_and_ohms_that_nobody_knows_are_not_shown()
    {
        var sheet = UntypedSheet.Of(Told());
        Assert.Equal(["from", "to"], PartFigures.Of(sheet, "untyped-primary")!.Values.Select(v => v.Name));
        var spec = sheet.FindReading(UntypedIds.Blades)!;
        var ladder = Ladder.Of(
            sheet,
            MeasuredPath.Of(sheet, spec)!,
            Overlay.None.Controls,
            Overlay.None.Suspicion,
            new Dictionary<string, string>()
        );
        Assert.All(ladder.Rungs, r => Assert.DoesNotContain("turns", r.Says, StringComparison.Ordinal));
        Assert.DoesNotContain("turns", SvgText.Write(CircuitDrawing.Draw(CircuitLayout.Of(sheet), Overlay.None)), StringComparison.Ordinal);
    }

    /// <summary>Nobody marked a fault: that is not the same as that there is none.</summary>
    [Fact]
    public void Readings_without_a_mark_are_not_said_to_have_found_nothing()
    {
        var unit = Told(Reads(Insulation, 20e3));
        var stage = StageView.All(unit, UntypedSheet.Of(unit), Shop.Usual, []).Single(s => s.Stage == Stage.Findings);
        Assert.Equal("nothing marked", stage.Done);
    }

    /// <summary>An item that only this shop asks for keeps its title in the log, whatever becomes of the list.</summary>
    [Fact]
    public void A_shops_own_question_keeps_its_title_in_the_log()
    {
        Assert.Equal(
            "Meter window: cracked",
            FactWords.Of(new ConditionNoted("part-1", "cracked", Decision.Open, "") { Title = "Meter window" }, null)
        );
        Assert.StartsWith(
            "Meter window: not looked at, glued",
            FactWords.Of(new NotLookedAt("part-1", "glued", "A. B.") { Title = "Meter window" }, null),
            StringComparison.Ordinal
        );
        Assert.Equal("Cord: cracked", FactWords.Of(new ConditionNoted("cord", "cracked", Decision.Open, ""), null));
        Assert.Equal(
            new ConditionNoted("part-1", "cracked", Decision.Open, "") { Title = "Meter window" },
            FactText.Read(FactText.Write(new ConditionNoted("part-1", "cracked", Decision.Open, "") { Title = "Meter window" }))
        );
    }

    /// <summary>What was typed from the plate is said as it was typed.</summary>
    [Fact]
    public void The_plate_is_said_as_it_was_typed()
    {
        Assert.Equal("Plate: 120 V, 90 W", FactWords.Of(new PlateRead(120, 90), null));
        Assert.StartsWith(
            "Worked out from 120 V and 90 W on the plate:",
            PlateRule.Words(new PlateRead(120, 90)),
            StringComparison.Ordinal
        );
    }
}
