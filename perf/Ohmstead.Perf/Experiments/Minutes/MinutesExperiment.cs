using System.Text;
using Ohmstead.Perf.Experiments.Limits;

namespace Ohmstead.Perf.Experiments.Minutes;

/// <summary>Do jobs take less than the quote's P50 and P90 as often as it says, after none, ten and a hundred logged units of a shop?</summary>
internal static class MinutesExperiment
{
    /// <summary>Shops, and units of each: as many again are logged before them.</summary>
    public const int Shops = 20;

    private const int Units = 100;
    private const int Draws = 20_000;

    public static IReadOnlyList<Asked> Run(StringBuilder page)
    {
        page.AppendLine("| units logged before | below P50 | below P90 | P90 over P50, mean |");
        page.AppendLine("|---|---|---|---|");
        var last = (P50: 0.0, P90: 0.0);
        foreach (var logged in new[] { 0, 10, Units })
        {
            var (below50, below90, ratio) = (0, 0, 0.0);
            for (var seed = 1; seed <= Shops; seed++)
            {
                var shop = new MadeShop(seed);
                var first = Enumerable.Range(0, Units).Select(_ => shop.Unit()).ToList();
                var minutes = MadeShop.Quote(first[..logged], Draws).Answer().Finished.Minutes;
                var rest = Enumerable.Range(0, Units).Select(_ => shop.Unit().Sum()).ToList();
                below50 += rest.Count(m => m < minutes.P50);
                below90 += rest.Count(m => m < minutes.P90);
                ratio += minutes.P90!.Value / minutes.P50!.Value / Shops;
            }
            last = (100.0 * below50 / (Shops * Units), 100.0 * below90 / (Shops * Units));
            page.AppendLine(FormattableString.Invariant($"| {logged} | {last.P50:0.0} % | {last.P90:0.0} % | {ratio:0.00} |"));
        }
        Asked[] asked =
        [
            Asked.AtMost("minutes learned from 100 units: below P50, off 50 %, points", Math.Abs(last.P50 - 50), 3),
            Asked.AtMost("minutes learned from 100 units: below P90, off 90 %, points", Math.Abs(last.P90 - 90), 3),
        ];
        page.AppendLine($"\n{Asked.Heading}");
        foreach (var figure in asked)
            page.AppendLine(figure.Row());
        return asked;
    }
}
