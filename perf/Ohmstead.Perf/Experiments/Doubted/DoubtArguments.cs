using System.Collections.Immutable;
using System.Globalization;

namespace Ohmstead.Perf.Experiments.Doubted;

/// <summary>What a run of the experiment covers.</summary>
/// <param name="Units">Units of each sheet and condition; null for as many as the page has.</param>
/// <param name="Seed">The first unit's seed.</param>
/// <param name="IsFull">Everything on the units of the page: its table may be written.</param>
internal sealed record DoubtArguments(
    ImmutableArray<DoubtSheet> Sheets,
    ImmutableArray<DoubtCondition> Conditions,
    int? Units,
    int Seed,
    bool IsVerbose,
    bool IsFull
)
{
    /// <summary>How it is called.</summary>
    public const string Usage = "experiments doubt [sheet ...] [--units N] [--condition NAME ...] [--seed S] [--verbose]";

    /// <summary>The units of the page. Those from 1 on are for working on the method.</summary>
    private const int PageSeed = 5000;

    /// <summary>Reads them; null when they cannot be read.</summary>
    public static DoubtArguments? Read(IReadOnlyList<string> arguments)
    {
        var (sheets, conditions) = (new List<DoubtSheet>(), new List<DoubtCondition>());
        var (units, seed, isVerbose) = ((int?)null, (int?)null, false);
        for (var n = 0; n < arguments.Count; n++)
        {
            var next = n + 1 < arguments.Count ? arguments[n + 1] : "";
            switch (arguments[n])
            {
                case "--verbose":
                    isVerbose = true;
                    break;
                case "--units" when Number(next) is { } count:
                    (units, n) = (count, n + 1);
                    break;
                case "--seed" when Number(next) is { } first:
                    (seed, n) = (first, n + 1);
                    break;
                case "--condition" when DoubtCondition.All.FirstOrDefault(c => c.Name == next) is { } condition:
                    conditions.Add(condition);
                    n++;
                    break;
                default:
                    if (DoubtSheet.All.FirstOrDefault(s => s.Name == arguments[n]) is not { } sheet)
                        return null;
                    sheets.Add(sheet);
                    break;
            }
        }
        var isFull = sheets.Count == 0 && conditions.Count == 0 && units is null && seed is null;
        return new DoubtArguments(
            sheets.Count == 0 ? DoubtSheet.All : [.. sheets],
            conditions.Count == 0 ? DoubtCondition.All : [.. conditions],
            units,
            seed ?? (isFull ? PageSeed : 1),
            isVerbose,
            isFull
        );
    }

    private static int? Number(string text) =>
        int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var n) && n > 0 ? n : null;
}
