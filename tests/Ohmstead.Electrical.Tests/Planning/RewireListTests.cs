using System.Collections.Immutable;
using Ohmstead.Electrical.Planning;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;
using static Ohmstead.Electrical.Tests.Planning.TwoWires;

namespace Ohmstead.Electrical.Tests.Planning;

/// <summary>From which distance on a mistake is told, and which readings are asked for, in closed form.</summary>
public class RewireListTests
{
    /// <summary>The distance, in limits, from which a mistake of a chance is told: (1 + √(1 + 2n))² thirds, n nats to bring its odds to the bound.</summary>
    private static double Needed(double percent, double bound)
    {
        var nats = Math.Max(0.7, Math.Log(percent / (100 - percent) / bound));
        return Math.Sqrt(Math.Pow(1 + Math.Sqrt(1 + (2 * nats)), 2) / 3);
    }

    [Theory]
    [InlineData(20)]
    [InlineData(3)]
    [InlineData(0.01)]
    public void A_mistake_is_told_when_five_in_six_right_units_rule_it_out(double percent)
    {
        var (sheet, needed) = (Sheet(0), Needed(percent, 0.005) * Floor);
        foreach (var (far, isTold) in new[] { (0.99, false), (1.01, true) })
        {
            var table = Table(sheet, new Mistake("cold:w-1", percent, [1 + (far * needed)]));
            Assert.Equal(isTold, new Discrimination(table, new Wiring(sheet)).Discriminates(0));
        }
    }

    /// <summary>The size at which right and wrong are nearest decides.</summary>
    [Fact]
    public void A_mistake_of_many_sizes_is_told_by_the_one_that_shows_least()
    {
        var sheet = Sheet(0);
        Assert.False(new Discrimination(Table(sheet, Cold("w-1", 9, 1.05, 30)), new Wiring(sheet)).Discriminates(0));
        Assert.True(new Discrimination(Table(sheet, Cold("w-1", 9, 1.5, 30)), new Wiring(sheet)).Discriminates(0));
    }

    /// <summary>A bypassed breaker has to be told more surely: three in a thousand instead of five.</summary>
    [Fact]
    public void A_dangerous_mistake_must_be_less_probable_still()
    {
        var sheet = new SheetDraft()
            .Element("breaker", "cut", "a", "b", new { ohms = 1, spread = new { ohms = 0 } })
            .Reading("r", "ohms", ["a", "b"])
            .Sheet();
        bool IsTold(double limits)
        {
            var meter = new Meter(Meter.Usual.Errors.SetItem(Quantity.Ohms, new(0, (1 - 1e-3) / limits, 0, 0)));
            var table = new MistakeTable(sheet, [new("bypassed:cut", Percent, [1e-3])], Taken(sheet) with { Meter = meter });
            return new Discrimination(table, new Wiring(sheet)).Discriminates(0);
        }
        Assert.False(IsTold(0.99 * Needed(Percent, 0.003)));
        Assert.True(IsTold(1.01 * Needed(Percent, 0.003)));
        Assert.True(Needed(Percent, 0.003) > 1.04 * Needed(Percent, 0.005));
    }

    /// <summary>Two readings of one wire: the one of fewer minutes is asked for, and the other wire's too.</summary>
    [Theory]
    [InlineData(1, "first second")]
    [InlineData(9, "second again")]
    // The second is the quicker of the two and comes in first; the list stands in the order of the sheet.
    [InlineData(1.5, "first second")]
    public void The_list_takes_what_shows_most_for_its_minutes(double firstMinutes, string list)
    {
        var sheet = Sheet(0, firstMinutes);
        var again = sheet.Readings[0] with { Id = "again", Minutes = 2 };
        sheet = sheet with { Readings = sheet.Readings.Add(again) };
        var table = Table(sheet, Cold("w-1", 9), Cold("w-2", 9));
        var take = new Discrimination(table, new Wiring(sheet)).ShortestList();
        Assert.Equal(list, string.Join(' ', take.Select(t => t.Spec.Id)));
        Assert.All(take, t => Assert.Equal(t.Spec.Minutes, t.Minutes));
        Assert.All(take, t => Assert.Equal(t.Spec.Id == "second" ? "cold:w-2" : "cold:w-1", t.Discriminates.Single().Id));
    }

    /// <summary>A quick reading of the first wire comes in first; the long one of both, which the second wire needs, makes it needless.</summary>
    [Fact]
    public void What_the_others_show_as_well_is_left_out_again()
    {
        var sheet = new SheetDraft()
            .Element("wire", "w-1", "a", "b", new { ohms = 1, spread = new { ohms = 0 } })
            .Element("wire", "w-2", "b", "c", new { ohms = 2, spread = new { ohms = 0 } })
            .Reading("one", "ohms", ["a", "b"])
            .Reading("row", "ohms", ["a", "c"], minutes: 3)
            .Sheet();
        var take = Assert.Single(new Discrimination(Table(sheet, Cold("w-1", 9), Cold("w-2", 9)), new Wiring(sheet)).ShortestList());
        Assert.Equal("row", take.Spec.Id);
        Assert.Equal(["cold:w-1", "cold:w-2"], take.Discriminates.Select(m => m.Id));
    }

    /// <summary>
    /// A mistake of 6 % is ruled out sooner than it is found: where it is there it must be likelier than none, (1 + √(1 + 2·ln(94/6)))² thirds of a
    /// limit away by the list. Where the first reading alone is not so far, the second of the same wire is asked for, and each of the two
    /// is said to show it.
    /// </summary>
    [Theory]
    [InlineData(1.004, "first")]
    [InlineData(0.996, "first again")]
    public void The_list_finds_a_mistake_that_is_there(double far, string list)
    {
        var away = Math.Sqrt(Math.Pow(1 + Math.Sqrt(1 + (2 * Math.Log(94.0 / 6))), 2) / 3);
        Assert.True(away > 1.02 * Needed(6, 0.005));
        var sheet = Sheet(0);
        sheet = sheet with { Readings = sheet.Readings.Add(sheet.Readings[0] with { Id = "again", Minutes = 2 }) };
        var table = Table(sheet, new Mistake("cold:w-1", 6, [1 + (far * away * Floor)]));
        var take = new Discrimination(table, new Wiring(sheet)).ShortestList();
        Assert.Equal(list, string.Join(' ', take.Select(t => t.Spec.Id)));
        Assert.All(take, t => Assert.Equal("cold:w-1", Assert.Single(t.Discriminates).Id));
    }
}
