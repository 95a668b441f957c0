using System.Globalization;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Outlines;

/// <summary>What must hold between the blocks of an outline whose single values are in order.</summary>
internal static class OutlineChecks
{
    /// <summary>A whole winding may read this share of one of its taps: cheap meters, and a line that nobody noted.</summary>
    private const double LeastOfTap = 0.9;

    private static readonly string[] Taken = ["primary", "pilot", "breaker", "bond"];

    public static void Run(JsonCursor root, Outline outline)
    {
        void Report(int place, string field, string wrong, string right) =>
            root.Report(
                string.Create(CultureInfo.InvariantCulture, $"blocks[{place}]{(field.Length > 0 ? "." : "")}{field}"),
                wrong,
                right
            );
        if (!outline.Posts.Any())
            root.Report("blocks", "have no post", "add the winding with the posts that come out");
        Windings(outline, Report);
        Throttles(outline, Report);
        Posts(outline, Report);
        Whistles(outline, Report);
        Rectifiers(outline, Report);
        Breakers(outline, Report);
        Pilots(outline, Report);
    }

    private delegate void Reporter(int place, string field, string wrong, string right);

    private static void Windings(Outline o, Reporter report)
    {
        foreach (var w in Second(o.Windings, w => w.Id))
            report(w.Place, "id", $"\"{w.Id}\" is a second winding of that name", "every winding needs its own id");
        foreach (var w in o.Windings)
        {
            if (Taken.Contains(w.Id, StringComparer.Ordinal))
                report(w.Place, "id", $"\"{w.Id}\" is the name of another part", "call it main, lamp or another word");
            if (w.Volts is null && w.Posts.IsEmpty && !o.Throttles.Any(t => t.On == w.Id && !t.Volts.IsEmpty))
                report(w.Place, "volts", "are said nowhere", "give the volts of the whole winding, or of its posts");
            var highest = w
                .Posts.Select(p => p.Volts.Value)
                .Concat(o.Throttles.Where(t => t.On == w.Id).SelectMany(t => t.Volts.Select(v => v.Value)))
                .DefaultIfEmpty()
                .Max();
            if (w.Volts is { } whole && whole.Value < LeastOfTap * highest)
                report(
                    w.Place,
                    "volts",
                    $"are {JsonCursor.Show(whole.Value)} for the whole winding, and a part of it gives {JsonCursor.Show(highest)}",
                    "a part cannot give more than the whole: leave them out, or mend one"
                );
            foreach (var p in w.Posts.Where(p => p.Post == w.From))
                report(w.Place, $"posts.{p.Post}", "is the winding's own start", "volts are counted from the start: leave it out");
        }
    }

    private static void Throttles(Outline o, Reporter report)
    {
        foreach (var t in Second(o.Throttles, t => t.Id))
            report(t.Place, "id", $"\"{t.Id}\" is a second throttle of that name", "every throttle needs its own id");
        foreach (var t in o.Throttles)
            if (!o.Windings.Any(w => w.Id == t.On))
                report(t.Place, "on", $"\"{t.On}\" is no winding", Known("a winding", o.Windings.Select(w => w.Id)));
        foreach (var r in o.Ranges)
            OnThrottle(o, r.Place, r.Throttle, report);
        foreach (var r in Second(o.Ranges, r => r.Throttle))
            report(r.Place, "throttle", $"\"{r.Throttle}\" has a range lever already", "one for each throttle");
        foreach (var d in o.Directions)
            OnThrottle(o, d.Place, d.Throttle, report);
        foreach (var d in Second(o.Directions, d => d.Throttle))
            report(d.Place, "throttle", $"\"{d.Throttle}\" has a direction control already", "one for each throttle");
        foreach (var d in o.Directions.Where(d => d.Kind == DirectionKind.Reverses && !o.Rectifiers.Any(r => r.Throttle == d.Throttle)))
            report(
                d.Place,
                "kind",
                "reverses, and no rectifier stands before it",
                "add a rectifier on this throttle, or say interrupts or rotary"
            );
    }

    private static void OnThrottle(Outline o, int place, string throttle, Reporter report)
    {
        if (!o.Throttles.Any(t => t.Id == throttle))
            report(place, "throttle", $"\"{throttle}\" is no throttle", Known("a throttle", o.Throttles.Select(t => t.Id)));
    }

    private static void Posts(Outline o, Reporter report)
    {
        var seen = new HashSet<string>(StringComparer.Ordinal);
        void Once(string post, int place, string field)
        {
            if (!seen.Add(post))
                report(place, field, $"names post {post} a second time", "every post once, as the unit letters it");
        }
        foreach (var w in o.Windings)
        foreach (var p in w.Posts.Where(p => p.Post != w.From))
            Once(p.Post, w.Place, $"posts.{p.Post}");
        foreach (var r in o.PostRectifiers)
            Once(r.Post, r.Place, "post");
        // A start may be a post of another winding, one after the other; never one behind a cell.
        foreach (var w in o.Windings.Where(w => o.PostRectifiers.Any(r => r.Post == w.From)))
            report(w.Place, "from", $"names post {w.From}, which is behind a rectifier", "the post at which the winding starts");
        seen.UnionWith(o.StartPosts);
        foreach (var t in o.Throttles)
        foreach (var p in o.PostsOf(t))
            Once(p, t.Place, "id");
    }

    private static void Whistles(Outline o, Reporter report)
    {
        foreach (var w in o.Whistles)
        {
            foreach (var t in w.Throttles)
                OnThrottle(o, w.Place, t, report);
            if (w.FromWinding && w.Boost.Value == 0)
                report(w.Place, "from", "takes its boost from the winding, and the boost is 0", "give the boost, or leave from out");
            if (w.FromWinding && o.Throttles.Any(t => w.Throttles.Contains(t.Id, StringComparer.Ordinal) && !t.Slides))
                report(
                    w.Place,
                    "from",
                    "takes its boost from a winding on which nothing slides",
                    "say own: this throttle has no bare turns"
                );
        }
        foreach (
            var (w, t) in o
                .Whistles.SelectMany(w => w.Throttles.Select(t => (w, t)))
                .GroupBy(p => p.t, StringComparer.Ordinal)
                .SelectMany(g => g.Skip(1))
        )
            report(w.Place, "throttle", $"\"{t}\" has a whistle already", "one for each throttle");
        foreach (var w in o.Whistles.Where(w => w.IsShared).Skip(1))
            report(w.Place, "throttle", "is a second lever for several throttles", "one shared lever");
    }

    private static void Rectifiers(Outline o, Reporter report)
    {
        foreach (var r in o.Rectifiers.Where(r => r.Post.Length == 0))
            OnThrottle(o, r.Place, r.Throttle, report);
        foreach (var r in Second(o.Rectifiers.Where(r => r.Post.Length == 0), r => r.Throttle))
            report(r.Place, "throttle", $"\"{r.Throttle}\" has a rectifier already", "one for each throttle");
        var fed = o.Windings.SelectMany(w => w.Posts.Select(p => p.Post)).Concat(o.StartPosts).ToHashSet(StringComparer.Ordinal);
        foreach (var r in o.PostRectifiers)
            if (!fed.Contains(r.From))
                report(r.Place, "from", $"\"{r.From}\" is no post of a winding", Known("a post", fed));
        foreach (var b in o.Bonds.Where(b => !o.Posts.Contains(b.Post, StringComparer.Ordinal)))
            report(b.Place, "post", $"\"{b.Post}\" is no post", Known("a post", o.Posts));
        foreach (var b in o.Bonds.Skip(1))
            report(b.Place, "", "is a second bond to the core", "one");
    }

    private static void Breakers(Outline o, Reporter report)
    {
        foreach (var b in Second(o.Breakers, b => b.In))
            report(b.Place, "in", $"is a second breaker in \"{b.In}\"", "one in each place");
        foreach (var b in o.Breakers)
            switch (b.In)
            {
                case "common" when !o.StartPosts.Any():
                    report(
                        b.Place,
                        "in",
                        "is in the common post, and no winding starts at one",
                        "give the winding its from, or another place"
                    );
                    break;
                case "throttle" when o.Throttles.IsEmpty:
                    report(b.Place, "in", "is behind the throttle, and there is none", "add the throttle, or give another place");
                    break;
                case "common" or "throttle" or "primary":
                    break;
                default:
                    if (!o.FixedPosts.Contains(b.In, StringComparer.Ordinal))
                        report(
                            b.Place,
                            "in",
                            $"\"{b.In}\" is no place for a breaker",
                            "common, throttle, primary, or a post that is no throttle's"
                        );
                    else if (b.In == o.StartPosts.FirstOrDefault())
                        report(b.Place, "in", $"names the common post {b.In}", "say common");
                    break;
            }
    }

    private static void Pilots(Outline o, Reporter report)
    {
        foreach (var p in o.Pilots.Skip(1))
            report(p.Place, "", "is a second pilot lamp", "one");
        foreach (var p in o.Pilots)
        {
            if (p.Across.Length == 2)
            {
                foreach (var post in p.Across.Where(x => !o.Posts.Contains(x, StringComparer.Ordinal)))
                    report(p.Place, "across", $"\"{post}\" is no post", Known("two posts", o.Posts));
                continue;
            }
            if (p.Across[0] == "breaker" && o.Breakers.IsEmpty)
                report(p.Place, "across", "is the breaker, and there is none", "add the breaker, or name two posts");
            else if (p.Across[0] != "breaker" && !o.Windings.Any(w => w.Id == p.Across[0]))
                report(
                    p.Place,
                    "across",
                    $"\"{p.Across[0]}\" is no winding",
                    Known("two posts, \"breaker\" or a winding", o.Windings.Select(w => w.Id))
                );
        }
    }

    private static string Known(string what, IEnumerable<string> ids)
    {
        var known = string.Join(", ", ids);
        return known.Length > 0 ? $"{what}: {known}" : $"{what}: there is none yet";
    }

    private static IEnumerable<T> Second<T>(IEnumerable<T> items, Func<T, string> name) =>
        items.GroupBy(name, StringComparer.Ordinal).SelectMany(g => g.Skip(1));
}
