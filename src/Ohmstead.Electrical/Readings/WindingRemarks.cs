using System.Globalization;
using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Readings;

/// <summary>
/// Windings with a slip of the pen in them: one whose ends are exchanged, so that it takes away where it should add; one whose ohms
/// are ten times too high, so that a post drops more with its own load than such units do; one whose ohms are ten times too low, so that
/// its copper would not find room beside the others.
/// </summary>
internal static class WindingRemarks
{
    /// <summary>With its ends exchanged a post shows at least so many times as much (common practice, no source).</summary>
    private const double MuchMore = 1.1;

    /// <summary>Units of this sort drop less than the first under load, and more than the second is odd (common practice, no source).</summary>
    private const double UsualDrop = 0.12;
    private const double OddDrop = 0.2;

    /// <summary>
    /// The copper of a winding, turns² over ohms, against the primary's: makers give both sides about half of the window. More than the first
    /// is odd for one winding, less than the second for all others together (common practice, no source).
    /// </summary>
    private const double MostCopper = 4;
    private const double LeastCopper = 0.15;

    /// <summary>Each with the place of the winding.</summary>
    public static IEnumerable<Problem> Of(UnitModel model)
    {
        var sheet = model.Sheet;
        var posts = sheet.Readings.Where(r => PostRemarks.IsOfAPost(sheet, r)).ToList();
        var windings = sheet
            .Elements.Select((e, n) => (Winding: e as Winding, n))
            .Where(w => w.Winding is { IsOnCore: true })
            .Select(w => (Winding: w.Winding!, w.n))
            .ToList();
        // Of two that are against each other the smaller one is named: it was the one to add.
        var named = new HashSet<string>(StringComparer.Ordinal);
        foreach (var (winding, n) in windings.OrderBy(w => w.Winding.Turns))
            if (Exchanged(model, [.. posts.Where(p => !named.Contains(Pair(p)))], winding, n, named) is { } exchanged)
                yield return exchanged;
        foreach (var (winding, n) in windings)
            if (TenTimes(model, posts, winding, n) is { } tenTimes)
                yield return tenTimes;
        foreach (var crowded in Crowded(windings))
            yield return crowded;
    }

    /// <summary>Ohms that are too low: the winding would be of more copper than the core's window holds beside the others.</summary>
    private static IEnumerable<Problem> Crowded(List<(Winding Winding, int n)> windings)
    {
        if (windings.Count < 2 || windings.Exists(w => w.Winding.Ohms <= 0))
            yield break;
        static double Copper(Winding w) => w.Turns * w.Turns / w.Ohms;
        var primary = windings.MaxBy(w => w.Winding.Turns);
        var others = windings
            .Where(w => w.n != primary.n)
            .Select(w => (w.Winding, w.n, Share: Copper(w.Winding) / Copper(primary.Winding)))
            .ToList();
        foreach (var (winding, n, share) in others.Where(o => o.Share is > MostCopper and < 10 * MostCopper))
            yield return Odd(winding, n, share, winding.Ohms * 10, share / 10);
        if (others.Sum(o => o.Share) is > LeastCopper / 10 and < LeastCopper and var all)
            yield return Odd(primary.Winding, primary.n, 1 / all, primary.Winding.Ohms * 10, 0.1 / all);

        static Problem Odd(Winding winding, int n, double times, double ohms, double then) =>
            new(
                string.Create(CultureInfo.InvariantCulture, $"$.elements[{n}].ohms"),
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"is {winding.Ohms:G3}: with its turns \"{winding.Id}\" would hold {times:G2} times the copper of the other side, and with {ohms:G3} ohms {then:G2} times"
                ),
                "ohms ten times off?"
            );
    }

    /// <summary>
    /// Of a winding without taps and sliders: with these its place in the chain, and not its direction alone, would change. It adds to the
    /// post that it is in series with; alone on its posts it changes nothing.
    /// </summary>
    private static Problem? Exchanged(UnitModel model, List<ReadingSpec> posts, Winding winding, int n, HashSet<string> named)
    {
        if (!winding.Taps.IsEmpty || !winding.Sliders.IsEmpty)
            return null;
        var turned = With(model, n, winding with { From = winding.To, To = winding.From });
        foreach (var post in posts.GroupBy(Pair, StringComparer.Ordinal))
        {
            var (shown, would) = (post.Max(r => Idle(model, r)), post.Max(r => Idle(turned, r)));
            if (shown >= PostRemarks.Least && would <= PostRemarks.Most && would > MuchMore * shown && named.Add(post.Key))
                return new(
                    string.Create(CultureInfo.InvariantCulture, $"$.elements[{n}]"),
                    string.Create(
                        CultureInfo.InvariantCulture,
                        $"takes away from \"{post.First().Id}\": it shows {shown:G3} V at most with nothing connected, and {would:G3} V with the ends of \"{winding.Id}\" exchanged"
                    ),
                    "\"from\" and \"to\" exchanged?"
                );
        }
        return null;
    }

    private static Problem? TenTimes(UnitModel model, List<ReadingSpec> posts, Winding winding, int n)
    {
        if (winding.Ohms <= 0)
            return null;
        var less = With(model, n, winding with { Ohms = winding.Ohms / 10 });
        foreach (var post in posts.Where(r => !r.State.Loads.IsEmpty))
            if (Drop(model, post) is > OddDrop and <= 0.5 and var drop && Drop(less, post) < UsualDrop)
                return new(
                    string.Create(CultureInfo.InvariantCulture, $"$.elements[{n}].ohms"),
                    string.Create(
                        CultureInfo.InvariantCulture,
                        $"is {winding.Ohms:G3}: \"{post.Id}\" would drop from {Idle(model, post):G3} V to {PostRemarks.Volts(model, post, post.State):G3} V with its own load, by {100 * drop:F0} %, and with a tenth of these ohms by {100 * Drop(less, post):F0} %"
                    ),
                    "ohms ten times off?"
                );
        return null;
    }

    private static double Drop(UnitModel model, ReadingSpec post) => 1 - (PostRemarks.Volts(model, post, post.State) / Idle(model, post));

    private static double Idle(UnitModel model, ReadingSpec post) => PostRemarks.Volts(model, post, post.State with { Loads = [] });

    private static UnitModel With(UnitModel model, int n, Winding winding) =>
        new(model.Sheet with { Elements = model.Sheet.Elements.SetItem(n, winding) });

    private static string Pair(ReadingSpec r) => string.Join(' ', new[] { r.From, r.To }.Order(StringComparer.Ordinal));
}
