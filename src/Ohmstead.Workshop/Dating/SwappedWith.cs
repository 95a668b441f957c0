namespace Ohmstead.Workshop.Dating;

/// <summary>Details that are swapped together with another one, where that one goes or comes.</summary>
internal static class SwappedWith
{
    /// <summary>
    /// A detail whose leader is not there: it may have been swapped with it, which took it along, or alone. So not by both misses of
    /// c and a, 1 − (1 − c)(1 − a).
    /// </summary>
    /// <param name="among">Where its leader is found.</param>
    public static DateDetail Alone(DateDetail detail, IEnumerable<DateDetail> among)
    {
        if (detail.With.Length == 0)
            return detail;
        var leader = among.FirstOrDefault(d => d.Id == detail.With)?.SwappedPercent ?? 0;
        var (together, alone) = (leader / 100, detail.SwappedPercent / 100);
        // Six places are what a person reads again; the product is not exact in binary.
        return detail with { With = "", SwappedPercent = Math.Round(100 * (1 - ((1 - together) * (1 - alone))), 6) };
    }

    /// <summary>A usual detail that was added before the one that it comes with; one whose chance a person has changed stays alone.</summary>
    public static DateDetail Led(DateDetail now, string leader, KindDates dates) =>
        DatesEdit.Usual.FirstOrDefault(u => u.Id == now.Id && u.With == leader) is { } usual
        && now.With.Length == 0
        && Alone(usual, DatesEdit.Usual).SwappedPercent.Equals(now.SwappedPercent)
        && dates.Details.All(d => d.With != now.Id)
            ? now with
            {
                With = leader,
                SwappedPercent = usual.SwappedPercent,
            }
            : now;

    /// <summary>A detail that went with one which is put back now: with it again, if nobody changed it since.</summary>
    /// <param name="leader">Id of the one that is put back.</param>
    public static DateDetail Again(DateDetail now, string leader, KindDates before, KindDates dates) =>
        before.Details.FirstOrDefault(d => d.Id == now.Id && d.With == leader) is { } was
        && now.With.Length == 0
        && Alone(was, before.Details).SwappedPercent.Equals(now.SwappedPercent)
        && dates.Details.All(d => d.With != now.Id)
            ? now with
            {
                With = leader,
                SwappedPercent = was.SwappedPercent,
            }
            : now;
}
