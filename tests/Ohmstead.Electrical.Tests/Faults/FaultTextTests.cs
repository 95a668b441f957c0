using Ohmstead.Electrical.Faults;

namespace Ohmstead.Electrical.Tests.Faults;

/// <summary>A fault as it is written and read: <c>element:mode</c>, with <c>=size</c> where it has one.</summary>
public class FaultTextTests
{
    private static readonly FaultCatalogue Catalogue = new(new BenchUnit(Reference.Twin160).Model);

    [Theory]
    [InlineData("pilot:open", "pilot:open")]
    [InlineData("roller-left:worn=1.5", "roller-left:worn=1.5")]
    // An open winding without a size breaks at no turn that is known; with one it is the turn of the break.
    [InlineData("main:open", "main:open")]
    [InlineData("main:open=12", "main:open=12")]
    public void A_fault_is_written_as_it_was_read(string text, string written)
    {
        Assert.True(Fault.TryParse(text, Catalogue, out var fault, out _, out var reason), reason);
        Assert.Equal(written, fault.ToString());
    }

    [Fact]
    public void A_size_that_was_left_out_is_the_middle_of_the_range_on_a_logarithmic_scale()
    {
        Assert.True(Fault.TryParse("roller-left:worn", Catalogue, out var fault, out var hasSize, out _));
        Assert.False(hasSize);
        Assert.Equal(Math.Sqrt(fault.Mode.Min * fault.Mode.Max), fault.Size, 1e-12);
    }

    [Theory]
    [InlineData("w-5.to~w-17.to:swap", true)]
    [InlineData("w-5.to~w-17.to", false)]
    [InlineData("w-5:swap", false)]
    [InlineData("w-5:open", false)]
    public void An_exchange_has_two_ends_and_its_word(string text, bool isOne) => Assert.Equal(isOne, EndExchange.IsOne(text));
}
