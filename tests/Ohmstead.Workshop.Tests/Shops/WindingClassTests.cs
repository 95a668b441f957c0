using Ohmstead.Workshop.Shops;

namespace Ohmstead.Workshop.Tests.Shops;

/// <summary>The rises that a shop may choose from, beside those of the standard’s table.</summary>
public class WindingClassTests
{
    /// <remarks>IEC 61558-1 table 1, from memory: 100, 115 and 120 °C; less a room of 40 °C. Each is 5 K stricter than the usual figure.</remarks>
    [Fact]
    public void The_tables_own_figures_are_five_kelvin_stricter()
    {
        Assert.Equal([60.0, 75, 80], WindingClass.All.Select(c => WindingClass.WarmOf(c.RiseKelvin)).OfType<double>());
        Assert.Equal(
            [5.0, 5, 5],
            WindingClass
                .All.Where(c => WindingClass.WarmOf(c.RiseKelvin) is not null)
                .Select(c => c.RiseKelvin - WindingClass.WarmOf(c.RiseKelvin)!.Value)
        );
    }

    [Fact]
    public void An_isolating_transformer_and_a_limit_of_ones_own_have_none()
    {
        Assert.Null(WindingClass.WarmOf(55));
        Assert.Null(WindingClass.WarmOf(66));
    }
}
