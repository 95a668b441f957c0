using System.Text.Json.Nodes;

namespace Ohmstead.Simulator;

/// <summary>Draws faults by their chances, the odds scaled so that their mean number is the one expected.</summary>
internal static class FaultDraw
{
    public static List<Fault> Draw(Dice dice, JsonObject sheet, double expected)
    {
        double scale = Scale(sheet, expected);
        List<Fault> faults = [];
        foreach ((JsonObject element, FaultMode[] modes) in FaultCatalogue.Of(sheet))
        {
            double all = 1 + scale * modes.Sum(Odds);
            double at = dice.Between(0, 1);
            foreach (FaultMode mode in modes)
            {
                at -= scale * Odds(mode) / all;
                if (at >= 0)
                    continue;
                faults.Add(new Fault(element.Word("id"), mode.Name, FaultCatalogue.Size(dice, element, mode)));
                break;
            }
        }
        return faults;
    }

    /// <summary>The factor of all odds with which the chances add up to the mean number expected.</summary>
    private static double Scale(JsonObject sheet, double expected)
    {
        double[] odds = [.. FaultCatalogue.Of(sheet).Select(entry => entry.Modes.Sum(Odds))];
        (double low, double high) = (1e-6, 1e6);
        while (high / low > 1 + 1e-12)
        {
            double middle = Math.Sqrt(low * high);
            if (odds.Sum(o => middle * o / (1 + middle * o)) < expected)
                low = middle;
            else
                high = middle;
        }
        return low;
    }

    private static double Odds(FaultMode mode) => mode.Percent / (100 - mode.Percent);
}
