using Ohmstead.Electrical.Faults;

namespace Ohmstead.Electrical.Tests.Faults;

/// <summary>Two ends exchanged by mistake.</summary>
public class EndExchangeTests
{
    [Fact]
    public void Two_ends_change_places()
    {
        var sheet = EndExchange.Apply(Reference.Twin160, "w-5.to~w-17.to:swap", out _)!;
        Assert.Equal("post-17", sheet.Elements.Single(e => e.Id == "w-5").To);
        Assert.Equal("post-5", sheet.Elements.Single(e => e.Id == "w-17").To);
        Assert.Equal("lead-5", sheet.Elements.Single(e => e.Id == "w-5").From);
    }

    [Fact]
    public void The_readings_of_two_posts_change_places_with_their_wires()
    {
        var (unit, swapped) = (
            new BenchUnit(Reference.Twin160),
            new BenchUnit(EndExchange.Apply(Reference.Twin160, "w-5.to~w-17.to:swap", out _)!)
        );
        Assert.Equal(unit.ReadListed("volts-17"), swapped.ReadListed("volts-5"), 1e-4);
        Assert.Equal(unit.ReadListed("volts-5"), swapped.ReadListed("volts-17"), 1e-4);
    }

    [Fact]
    public void Exchanged_twice_the_sheet_is_as_it_was()
    {
        var once = EndExchange.Apply(Reference.Twin160, "cord-1.from~w-5.to:swap", out _)!;
        var twice = EndExchange.Apply(once, "cord-1.from~w-5.to:swap", out _)!;
        Assert.Equal(Reference.Twin160.Elements.Select(e => (e.Id, e.From, e.To)), twice.Elements.Select(e => (e.Id, e.From, e.To)));
    }

    [Theory]
    [InlineData("w-5.to~w-18.to:swap")]
    [InlineData("w-5.to:swap")]
    [InlineData("w-5.middle~w-17.to:swap")]
    [InlineData("~:swap")]
    public void What_names_no_two_ends_is_refused_with_a_reason(string text)
    {
        Assert.Null(EndExchange.Apply(Reference.Twin160, text, out var reason));
        Assert.NotEmpty(reason);
    }

    [Fact]
    public void An_end_of_an_element_with_a_dot_in_its_id_is_found()
    {
        var sheet = new SheetDraft().Wire("w.1", "a", "b", 1).Wire("w.2", "c", "d", 2).Sheet();
        Assert.Equal("d", EndExchange.Apply(sheet, "w.1.to~w.2.to:swap", out _)!.Elements[0].To);
    }
}
