using CsCheck;
using Ohmstead.Electrical.Tests.Circuits;

namespace Ohmstead.Electrical.Tests.Solving;

/// <summary>Laws that every network obeys, on drawn circuits: power, reciprocity, proportion.</summary>
public class NetworkLawTests
{
    private const int Samples = 200;

    [Fact]
    public void The_source_gives_what_resistances_and_cores_lose() => RandomCircuit.Linear.Samples(Samples, c => Balance(c, 1e-10));

    [Fact]
    public void The_source_gives_at_least_what_resistances_and_cores_lose_where_lamps_and_rectifiers_take_the_rest() =>
        RandomCircuit.Any.Samples(
            Samples / 4,
            c =>
            {
                var (given, lost, _) = Power(c);
                return given >= lost * (1 - 1e-3);
            }
        );

    [Fact]
    public void Source_and_probe_can_change_places() =>
        RandomCircuit.Linear.Samples(
            Samples,
            c =>
            {
                var unit = c.Unit();
                var (one, other, ohms) = (c.One, c.Other, c.SomeOhms);
                double Carried((string A, string B) from, (string A, string B) to) =>
                    unit.Read(
                        "ac-volts",
                        [to.A, to.B],
                        new
                        {
                            source = new
                            {
                                from = from.A,
                                to = from.B,
                                volts = 100,
                                seriesOhms = ohms,
                            },
                            loads = new[]
                            {
                                new
                                {
                                    from = to.A,
                                    to = to.B,
                                    ohms,
                                },
                            },
                        }
                    );
                // Where both ports are the same one there is nothing to change.
                return one == other || IsSame(Carried(one, other), Carried(other, one), 1e-7, 1e-9);
            }
        );

    [Fact]
    public void Twice_the_source_is_twice_the_reading_and_four_times_the_power() =>
        RandomCircuit.Linear.Samples(
            Samples,
            c =>
            {
                var (unit, probe) = (c.Unit(), c.One);
                object State(double volts) =>
                    new
                    {
                        source = new
                        {
                            from = "n0",
                            to = "n1",
                            volts,
                        },
                    };
                return IsSame(
                        2 * unit.Read("ac-volts", [probe.A, probe.B], State(60)),
                        unit.Read("ac-volts", [probe.A, probe.B], State(120)),
                        1e-9,
                        1e-9
                    )
                    && IsSame(2 * unit.ReadSource("ac-amps", State(60)), unit.ReadSource("ac-amps", State(120)), 1e-7, 1e-9)
                    && IsSame(4 * unit.ReadSource("watts", State(60)), unit.ReadSource("watts", State(120)), 1e-7, 1e-9);
            }
        );

    [Fact]
    public void A_sum_of_voltages_around_a_loop_is_nothing_at_direct_current() =>
        RandomCircuit.Linear.Samples(
            Samples,
            c =>
            {
                var (unit, one, other) = (c.Unit(), c.One, c.Other);
                var state = new
                {
                    source = new
                    {
                        from = one.A,
                        to = one.B,
                        directAmps = 0.5,
                    },
                };
                double Volts(string a, string b) => a == b ? 0 : unit.Read("dc-volts", [a, b], state);
                var sum = Volts(one.A, other.A) + Volts(other.A, other.B) + Volts(other.B, one.A);
                return Math.Abs(sum) < 1e-9 && Volts(other.A, other.B) == -Volts(other.B, other.A);
            }
        );

    [Fact]
    public void An_ohmmeter_reads_the_same_either_way_round_where_no_rectifier_is() =>
        RandomCircuit.Linear.Samples(
            Samples,
            c =>
            {
                var (unit, pair) = (c.Unit(), c.One);
                return IsSame(unit.Read("ohms", [pair.A, pair.B]), unit.Read("ohms", [pair.B, pair.A]), 1e-12, 0);
            }
        );

    internal static bool IsSame(double a, double b, double relative, double absolute) =>
        a.Equals(b) || Math.Abs(a - b) <= Math.Max(absolute, relative * Math.Max(Math.Abs(a), Math.Abs(b)));

    private static bool Balance(RandomCircuit c, double relative)
    {
        var (given, lost, _) = Power(c);
        return IsSame(given, lost, relative, 1e-9);
    }

    internal static (double Given, double Lost, bool WasPeriodic) Power(RandomCircuit c)
    {
        var unit = c.Unit();
        var state = new { source = c.Source };
        double Square(string a, string b)
        {
            var alternating = unit.Read("ac-volts", [a, b], state);
            var mean = unit.Read("dc-volts", [a, b], state);
            return (alternating * alternating) + (mean * mean);
        }
        var lost =
            c.Losses.Sum(l => Square(l.From, l.To) * l.WattsPerSquareVolt)
            + c.Cores.Sum(k => Square(k.From, k.To) / k.Ratio / k.Ratio / k.LossOhms);
        return (unit.ReadSource("watts", state), lost, unit.WasPeriodic);
    }
}
