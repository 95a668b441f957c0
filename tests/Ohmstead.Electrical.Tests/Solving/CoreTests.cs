using System.Numerics;

namespace Ohmstead.Electrical.Tests.Solving;

/// <summary>Cores, leakage and inductive loads at the supply frequency, by phasors worked out in the test.</summary>
public class CoreTests
{
    private const double Omega = 2 * Math.PI * 60;

    private static readonly double[][] Table =
    [
        [0, 0],
        [60, 0.065],
        [110, 0.17],
        [120, 0.215],
        [132, 0.31],
    ];

    /// <summary>Loss in phase, magnetising current a quarter period behind; the table's last slope is carried on.</summary>
    [Theory]
    [InlineData(30, 0.0325)]
    [InlineData(60, 0.065)]
    [InlineData(85, 0.1175)]
    [InlineData(120, 0.215)]
    [InlineData(126, 0.2625)]
    [InlineData(150, 0.4525)]
    public void An_open_winding_draws_loss_and_excitation(double volts, double magnetisingAmps)
    {
        var unit = new SheetDraft().Core("core", "primary", 1420, Table).Winding("primary", "p1", "p2", 384, 1e-6).Unit();
        var state = new
        {
            source = new
            {
                from = "p1",
                to = "p2",
                volts,
            },
        };
        Assert.Equal(volts * volts / 1420, unit.ReadSource("watts", state), 1e-5);
        Assert.Equal(new Complex(volts / 1420, -magnetisingAmps).Magnitude, unit.ReadSource("ac-amps", state), 1e-6);
    }

    [Fact]
    public void Excitation_counts_at_the_induced_volts_not_at_the_terminals()
    {
        // 60 Ω and 0.05 H before the core at 120 V: find E with |E + (60 + jω·0.05)·(E/Rc − jI(E))| = 120 by halving.
        double Magnetising(double e)
        {
            var n = 1;
            while (n < Table.Length - 1 && e > Table[n][0])
                n++;
            return Table[n - 1][1] + ((Table[n][1] - Table[n - 1][1]) / (Table[n][0] - Table[n - 1][0]) * (e - Table[n - 1][0]));
        }
        var z = new Complex(60, Omega * 0.05);
        var (low, high) = (0.0, 120.0);
        for (var k = 0; k < 80; k++)
        {
            var e = (low + high) / 2;
            if ((e + (z * new Complex(e / 1420, -Magnetising(e)))).Magnitude < 120)
                low = e;
            else
                high = e;
        }
        var unit = new SheetDraft()
            .Core("core", "primary", 1420, Table)
            .Winding("primary", "p1", "p2", 384, 60, 0.05)
            .Winding("search", "s1", "s2", 96, 1)
            .Unit();
        var state = new
        {
            source = new
            {
                from = "p1",
                to = "p2",
                volts = 120,
            },
        };
        Assert.Equal(low / 4, unit.Read("ac-volts", ["s1", "s2"], state), 1e-6);
        Assert.Equal(new Complex(low / 1420, -Magnetising(low)).Magnitude, unit.ReadSource("ac-amps", state), 1e-7);
    }

    [Fact]
    public void A_loaded_transformer_is_its_equivalent_circuit()
    {
        var (r1, x1, r2, x2, loss, xm, a) = (3.9, Omega * 0.0038, 0.13, Omega * 6e-5, 1420.0, Omega * 1.4, 6.4);
        var load = new Complex(3, Omega * 0.004);
        var secondary = a * a * (new Complex(r2, x2) + load);
        var shunt = 1 / ((1 / new Complex(loss, 0)) + (1 / new Complex(0, xm)) + (1 / secondary));
        var amps = 120 / (new Complex(r1, x1) + shunt);
        var unit = new SheetDraft()
            .Core("core", "primary", loss, 1.4)
            .Winding("primary", "p1", "p2", 384, r1, 0.0038)
            .Winding("main", "s1", "s2", 60, r2, 6e-5)
            .Unit();
        var state = new
        {
            source = new
            {
                from = "p1",
                to = "p2",
                volts = 120,
            },
            loads = new[]
            {
                new
                {
                    from = "s1",
                    to = "s2",
                    ohms = 3,
                    henries = 0.004,
                },
            },
        };
        Assert.Equal(amps.Magnitude, unit.ReadSource("ac-amps", state), 1e-9);
        Assert.Equal(120 * amps.Real, unit.ReadSource("watts", state), 1e-7);
        Assert.Equal((a * amps * shunt / secondary * load).Magnitude, unit.Read("ac-volts", ["s1", "s2"], state), 1e-9);
    }

    [Fact]
    public void Part_of_a_winding_has_its_share_of_resistance_and_leakage()
    {
        // Fed at the tap of 40 of 100 turns, the rest open; lossless core of no excitation, shorted by another winding.
        var unit = new SheetDraft()
            .Core("core", "coil", 1e12, 1e9)
            .Element(
                "winding",
                "coil",
                "start",
                "end",
                new
                {
                    core = "core",
                    turns = 100,
                    ohms = 10,
                    leakageHenries = 0.02,
                    taps = new[] { new { turn = 40, to = "tap" } },
                }
            )
            .Winding("other", "o1", "o2", 80, 0.8, 0.003)
            .Unit();
        var state = new
        {
            source = new
            {
                from = "start",
                to = "tap",
                volts = 10,
            },
            joined = new[] { new[] { "o1", "o2" } },
        };
        var z = new Complex(4, Omega * 0.008) + (0.25 * new Complex(0.8, Omega * 0.003));
        Assert.Equal(10 / z.Magnitude, unit.ReadSource("ac-amps", state), 1e-8);
        Assert.Equal(100 / z.Magnitude * Math.Cos(z.Phase), unit.ReadSource("watts", state), 1e-7);
    }

    [Fact]
    public void A_resistance_in_the_supply_stands_before_the_unit_and_takes_its_part()
    {
        var unit = new SheetDraft().Resistor("r", "a", "b", 30).Unit();
        var state = new
        {
            source = new
            {
                from = "a",
                to = "b",
                volts = 120,
                seriesOhms = 10,
            },
        };
        Assert.Equal(90, unit.Read("ac-volts", ["a", "b"], state), 1e-9);
        Assert.Equal(3, unit.ReadSource("ac-amps", state), 1e-9);
        Assert.Equal(360, unit.ReadSource("watts", state), 1e-7);
    }
}
