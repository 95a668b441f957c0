using System.Collections.Immutable;

namespace Ohmstead.Electrical.Reckoning.Dating;

/// <summary>
/// Details that are swapped together: the first of them with the others, or each of the others alone. A detail that is swapped with none is
/// the first of a group of one.
/// </summary>
/// <param name="Places">Places of its details; the one that the others come with first.</param>
internal sealed record SharedSwap(ImmutableArray<int> Places)
{
    /// <summary>The groups of some details.</summary>
    public static ImmutableArray<SharedSwap> Of(ImmutableArray<DatedDetail> details) =>
        [
            .. Enumerable
                .Range(0, details.Length)
                .Where(d => details[d].With == d)
                .Select(d => new SharedSwap([d, .. Enumerable.Range(0, details.Length).Where(o => o != d && details[o].With == d)])),
        ];

    /// <summary>How likely is what its details show, by year of the unit?</summary>
    /// <param name="seen">The variant of each detail of the kind; null for none.</param>
    /// <param name="unswapped">A detail of it that must be the original one; null for none.</param>
    public double[] Likelihood(DetailTables of, ReadOnlySpan<int?> seen, int? unswapped = null)
    {
        var first = Places[0];
        var together = of.Details[first].SwappedShare;
        var apart = Filled(of.Made.Chances.Length);
        var same = Filled(of.Made.PartYears);
        foreach (var place in Places)
        {
            if (seen[place] is not { } variant)
                continue;
            var (isNew, swapped) = (of.WhenNew[place][variant], of.WhenSwapped[place][variant]);
            var alone = place == first ? 0 : of.Details[place].SwappedShare;
            for (var z = 0; z < same.Length; z++)
                same[z] *= isNew[z];
            for (var y = 0; y < apart.Length; y++)
                apart[y] *= ((1 - alone) * isNew[y]) + (unswapped == place ? 0 : alone * swapped[y]);
        }
        // All of one swap are of one year, or of one donor.
        var swappedTogether = of.Made.WhenSwapped(same);
        for (var y = 0; y < apart.Length; y++)
            apart[y] = ((1 - together) * apart[y]) + (unswapped is null ? together * swappedTogether[y] : 0);
        return apart;
    }

    private static double[] Filled(int length)
    {
        var all = new double[length];
        Array.Fill(all, 1);
        return all;
    }
}

/// <summary>What the details of a kind show, by year, when they are as they were made and when they were swapped.</summary>
/// <param name="WhenNew">By detail, variant, and year of the part.</param>
/// <param name="WhenSwapped">By detail, variant, and year of the unit.</param>
internal sealed record DetailTables(
    MadeYears Made,
    ImmutableArray<DatedDetail> Details,
    ImmutableArray<double[][]> WhenNew,
    ImmutableArray<double[][]> WhenSwapped,
    ImmutableArray<SharedSwap> Groups
)
{
    /// <summary>Works them out.</summary>
    public static DetailTables Of(MadeYears made, ImmutableArray<DatedDetail> details)
    {
        ImmutableArray<double[][]> isNew = [.. details.Select(d => d.WhenNew(made))];
        return new(made, details, isNew, [.. isNew.Select(d => d.Select(v => made.WhenSwapped(v)).ToArray())], SharedSwap.Of(details));
    }

    /// <summary>Chance of each year together with what was seen: not yet divided by its sum, which is the chance of what was seen.</summary>
    /// <param name="unswapped">A detail that must be the original one; null for none.</param>
    public double[] Joint(ReadOnlySpan<int?> seen, int? unswapped = null)
    {
        var joint = Made.Chances.ToArray();
        foreach (var group in Groups)
        {
            var likely = group.Likelihood(this, seen, unswapped is { } place && group.Places.Contains(place) ? place : null);
            for (var y = 0; y < joint.Length; y++)
                joint[y] *= likely[y];
        }
        return joint;
    }
}
