using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Perf.Experiments.Benches;

/// <summary>Types that are near a sheet's and are not it.</summary>
internal static class OtherTypes
{
    /// <summary>
    /// Another batch: thinner secondary wire (a quarter more ohms), each winding wound 1.5 % more or fewer, a poorer core with 1.6 times
    /// the loss, rectifiers with half as much drop again.
    /// </summary>
    public static TypeSheet AnotherBatch(TypeSheet sheet, Random dice)
    {
        var references = sheet.Cores.Select(c => c.ReferenceWinding).ToHashSet(StringComparer.Ordinal);
        double Side() => dice.Next(2) == 0 ? 1.015 : 1 / 1.015;
        return sheet with
        {
            Cores = [.. sheet.Cores.Select(c => c with { LossOhms = c.LossOhms / 1.6 })],
            Elements =
            [
                .. sheet.Elements.Select(e =>
                    e switch
                    {
                        Winding w => WithTurns(w, Side()) with { Ohms = w.Ohms * (references.Contains(w.Id) ? 1 : 1.25) },
                        Rectifier d => d with { SlopeVolts = d.SlopeVolts * 1.5, SeriesOhms = d.SeriesOhms * 1.5 },
                        _ => e,
                    }
                ),
            ],
        };
    }

    /// <summary>A sibling: turns and ohms of each winding, loss and excitation of each core lie 10 % to 40 % off, each to its own side.</summary>
    public static TypeSheet Sibling(TypeSheet sheet, Random dice)
    {
        double Off() => Math.Pow(1.1 + (0.3 * dice.NextDouble()), dice.Next(2) == 0 ? 1 : -1);
        return sheet with
        {
            Cores = [.. sheet.Cores.Select(c => WithExcitation(c with { LossOhms = c.LossOhms * Off() }, Off()))],
            Elements = [.. sheet.Elements.Select(e => e is Winding w ? WithTurns(w, Off()) with { Ohms = w.Ohms * Off() } : e)],
        };
    }

    /// <summary>A core that takes more or less magnetising current.</summary>
    public static Core WithExcitation(Core core, double times) =>
        core with
        {
            Excitation = [.. core.Excitation.Select(p => (p.Volts, p.Amps * times))],
            MagnetisingHenries = core.MagnetisingHenries / times,
        };

    private static Winding WithTurns(Winding winding, double times) =>
        winding with
        {
            Turns = winding.Turns * times,
            Taps = [.. winding.Taps.Select(t => t with { Turn = t.Turn * times })],
            Sliders = [.. winding.Sliders.Select(s => s with { FromTurn = s.FromTurn * times, ToTurn = s.ToTurn * times })],
        };
}
