using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Cautions;
using Ohmstead.Workshop.Readings;
using Ohmstead.Workshop.Words;

namespace Ohmstead.Workshop.Tests.Readings;

/// <summary>What to heed at a reading: the sheet's hazard, the kick, and the table; none replaces another.</summary>
public class ReadingCautionsTests
{
    private static (UnitModel Model, TypeSheet Sheet) Of(string name)
    {
        var sheet = OnTheBench.SheetOf($"demo/{name}.sheet.json");
        return (new UnitModel(sheet), sheet);
    }

    private static string All((UnitModel Model, TypeSheet Sheet) unit, string id)
    {
        var spec = unit.Sheet.FindReading(id)!;
        return string.Join(" ", ReadingCautions.Of(unit.Model, spec, spec.State));
    }

    [Fact]
    public void One_amp_through_an_output_says_the_kick_in_millijoules_and_volts_on_the_blades()
    {
        var unit = Of("twin-175");
        var spec = unit.Sheet.FindReading("drop-breaker-1")!;
        var kick = InductiveKick.Of(unit.Model, spec, spec.State)!;
        var all = All(unit, "drop-breaker-1");
        Assert.Contains(
            "Plug out, blades out of reach: a winding kicks when its DC is broken. Clip on, then switch on. Switch off, then unclip.",
            all,
            StringComparison.Ordinal
        );
        Assert.Contains("clamp diode", all, StringComparison.Ordinal);
        Assert.Contains($"up to {ValueText.Number(kick.Joules * 1000)} mJ", all, StringComparison.Ordinal);
        Assert.Contains(
            $"each volt across the break is {ValueText.Number(kick.BladeVoltsPerVolt!.Value)} V between the plug blades",
            all,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void A_sheets_own_hazard_is_added_and_replaces_nothing()
    {
        var unit = Of("step-230");
        var cut = All(unit, "drop-cut-out");
        Assert.Contains(unit.Sheet.FindReading("drop-cut-out")!.Hazard, cut, StringComparison.Ordinal);
        Assert.Contains("mJ", cut, StringComparison.Ordinal);
        var lamp = unit.Sheet.FindReading("lamp-25")!;
        Assert.Contains(lamp.Hazard, All(unit, "lamp-25"), StringComparison.Ordinal);
        Assert.Contains(CautionTable.For(Act.SeriesLamp)[^1], All(unit, "lamp-25"), StringComparison.Ordinal);
    }

    /// <summary>The sheet's own "500 V at the clips: hands off, discharge afterward" is in the table's words; more than that stays.</summary>
    [Theory]
    [InlineData("500 V at the clips: hands off, discharge afterward", true)]
    [InlineData("500 V at the clips; discharge afterwards", true)]
    [InlineData("1000 V at the clips: hands off, discharge afterward", false)]
    [InlineData("500 V at the clips: take the pilot lamp out first", false)]
    [InlineData("discharge before you clip on, 500 V", false)]
    [InlineData("", true)]
    public void What_the_table_says_in_as_many_words_is_not_said_twice(string hazard, bool isSaidOnce)
    {
        var unit = Of("step-230");
        var spec = unit.Sheet.FindReading("insulation-core")! with { Hazard = hazard };
        var cautions = ReadingCautions.Of(unit.Model, spec, spec.State);
        Assert.Equal(CautionTable.For(Act.TestInsulation), cautions.Skip(isSaidOnce ? 0 : 1));
        Assert.Equal(!isSaidOnce, cautions.Contains(hazard));
    }

    [Fact]
    public void No_reading_of_a_sheet_that_comes_along_says_the_insulation_testers_volts_twice()
    {
        foreach (var name in new[] { "solo-110", "step-230", "twin-175" })
        {
            var unit = Of(name);
            Assert.All(
                unit.Sheet.Readings,
                r => Assert.True(System.Text.RegularExpressions.Regex.Count(All(unit, r.Id), "500 V") <= 1, r.Id)
            );
        }
    }

    [Theory]
    [InlineData("solo-110")]
    [InlineData("step-230")]
    [InlineData("twin-175")]
    public void Every_reading_that_drives_a_current_through_a_winding_says_so_and_no_other(string name)
    {
        var unit = Of(name);
        var through = unit.Sheet.Readings.Where(r => All(unit, r.Id).Contains("mJ", StringComparison.Ordinal)).ToList();
        Assert.NotEmpty(through);
        Assert.All(through, r => Assert.True(r.State.Source!.IsDirect));
        Assert.DoesNotContain(
            through,
            r => r.Id.StartsWith("disc-1a", StringComparison.Ordinal) || r.Id.StartsWith("plate-", StringComparison.Ordinal)
        );
        Assert.Contains(through, r => r.Id.StartsWith("drop-", StringComparison.Ordinal));
    }
}
