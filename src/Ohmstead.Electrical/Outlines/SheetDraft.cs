using System.Collections.Immutable;
using System.Text.Json.Nodes;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Outlines;

/// <summary>Makes a type sheet of an outline: the same names for the same blocks, always.</summary>
internal static class SheetDraft
{
    /// <summary>The sheet's text, and where its numbers come from.</summary>
    public static (JsonObject Sheet, ImmutableArray<DraftedValue> Values) Of(Outline outline)
    {
        var parts = new DraftParts();
        var priors = new Priors(outline);
        parts.Note("supply.volts", new Figure(outline.Volts, outline.VoltsDoubt, Origin.Stated));
        parts.Note("supply.hertz", new Figure(outline.Hertz, 0, outline.LeftOut.Contains("plate.hertz") ? Origin.Assumed : Origin.Stated));
        parts.Note(
            "rating.inputWatts",
            outline.Watts with
            {
                Doubt = outline.Watts.Origin == Origin.Assumed ? Priors.DoubtOfUnknownWatts : outline.Watts.Doubt,
            }
        );
        var windings = new WindingDraft(outline, priors, parts);
        var primary = new PrimaryDraft(outline, priors, windings, parts);
        primary.Primary();
        var core = primary.Core();
        foreach (var w in outline.Windings)
            windings.Winding(w);
        if (outline.LineTaps.IsEmpty && outline.Windings.IsEmpty)
            parts.Name("primary-end", "the outer end of the primary");
        var throttles = new ThrottleDraft(outline, windings, parts);
        foreach (var t in outline.Throttles)
            throttles.Throttle(t);
        foreach (var r in outline.PostRectifiers)
            Cell(r, windings, parts);
        foreach (var p in outline.Pilots)
            Pilot(outline, p, parts);
        foreach (var b in outline.Bonds)
            parts.Wire(
                "bond",
                parts.Leads[b.Post],
                "iron",
                $"bond from {DraftWords.Post(b.Post)} to the core",
                new Figure(0.01, 0, Origin.Assumed)
            );
        Insulation(outline, parts);
        var readings = new ReadingDraft(outline, priors, parts).All();
        return (Sheet(outline, parts, [core, .. throttles.Formers], readings), parts.Values);
    }

    private static JsonObject Sheet(Outline outline, DraftParts parts, IEnumerable<JsonObject> cores, IEnumerable<JsonObject> readings)
    {
        var rating = new JsonObject { ["usableWatts"] = DraftParts.Round(outline.UsableWatts) };
        if (outline.Watts.Origin == Origin.Stated)
            rating["inputWatts"] = DraftParts.Round(outline.Watts.Value);
        return new JsonObject
        {
            ["ohmstead"] = TypeSheetFile.Mark,
            ["id"] = outline.Id,
            ["title"] = outline.Title.Length > 0 ? outline.Title : outline.Id,
            ["supply"] = new JsonObject { ["volts"] = outline.Volts, ["hertz"] = outline.Hertz },
            ["rating"] = rating,
            ["notes"] = "Drafted from an outline: what could be seen, and common practice for the rest.",
            ["cores"] = new JsonArray([.. cores]),
            ["controls"] = new JsonArray([.. parts.Controls]),
            ["elements"] = new JsonArray([.. parts.Elements]),
            ["titles"] = parts.Titles,
            ["near"] = new JsonArray([.. Groups(outline, parts).Select(g => DraftParts.Words(g))]),
            ["readings"] = new JsonArray([.. readings]),
            ["observations"] = new JsonArray([.. ObservationDraft.Of(outline, parts)]),
            ["takeApart"] = new JsonArray([.. TakeApartDraft.Of(outline, parts)]),
        };
    }

    /// <summary>Terminals side by side: the posts in a row, and what the parts said themselves.</summary>
    private static IEnumerable<string[]> Groups(Outline outline, DraftParts parts)
    {
        var posts = outline.Posts.Select(p => $"post-{p}").ToArray();
        return parts.Near.Append(posts).Select(g => g.Distinct(StringComparer.Ordinal).ToArray()).Where(g => g.Length > 1);
    }

    private static void Cell(RectifierBlock r, WindingDraft windings, DraftParts parts)
    {
        var (word, said) = (ThrottleDraft.CellWord(r.Cell), DraftWords.Post(r.Post));
        var (plate, stud) = ($"plate-{r.Post}", $"stud-{r.Post}");
        parts.Joint($"joint-cell-{r.Post}", parts.Leads[r.From], plate, $"joint at the {word} of {said}");
        parts.Cell($"cell-{r.Post}", plate, stud, r.Cell, $"{word} of {said}");
        parts.Name(plate, $"the plate of the {word} of {said}");
        parts.Name(stud, $"the stud of the {word} of {said}");
        parts.Near.Add([plate, stud]);
        var from = stud;
        if (r.Ohms is not null)
        {
            from = $"lead-{r.Post}";
            parts.ResistanceWire($"dropper-{r.Post}", stud, from, r.Ohms, $"dropper of {said}");
        }
        parts.Leads[r.Post] = from;
        windings.PostWire(r.Post, from);
    }

    private static void Pilot(Outline outline, PilotBlock p, DraftParts parts)
    {
        var (from, to) = p.Across switch
        {
            [var a, var b] => (parts.Leads[a], parts.Leads[b]),
            ["breaker"] => Terminals(parts.Elements.First(e => e["kind"]!.GetValue<string>() == "breaker")),
            [var w] => ($"{w}-start", $"{w}-end"),
            _ => throw new InvalidOperationException("A pilot lamp across nothing."),
        };
        var volts = p.Volts ?? new Figure(Priors.PilotVolts * VoltsAcross(outline, p), 0, Origin.Derived);
        var amps = p.Amps ?? new Figure(Priors.PilotAmps, 0.3, Origin.Assumed);
        var lamp = parts.Add("pilot", ElementKind.Lamp, from, to, "pilot lamp");
        lamp["volts"] = DraftParts.Round(volts.Value);
        parts.Note("elements.pilot.volts", volts);
        parts.Set(lamp, "elements.pilot", ElementKind.Lamp, "amps", amps);
        parts.Titles["pilot.from"] = "its tip";
        parts.Titles["pilot.to"] = "its shell";
        parts.Near.Add([from, to]);
    }

    /// <summary>No-load volts that a pilot lamp burns on; of a breaker, when the track is shorted.</summary>
    private static double VoltsAcross(Outline outline, PilotBlock p)
    {
        double Of(string post) =>
            outline.Windings.SelectMany(w => w.Posts).FirstOrDefault(x => x.Post == post)?.Volts.Value
            ?? outline.Throttles.FirstOrDefault(t => outline.PostsOf(t).Contains(post))?.Volts.LastOrDefault()?.Value
            ?? 0;
        double Whole(WindingBlock w) =>
            w
                .Posts.Select(x => x.Volts.Value)
                .Append(w.Volts?.Value ?? 0)
                .Concat(outline.Throttles.Where(t => t.On == w.Id).SelectMany(t => t.Volts.Select(v => v.Value)))
                .Max();
        var volts = p.Across switch
        {
            [var a, var b] => Math.Abs(Of(a) - Of(b)),
            // The drafted one in the primary comes first: an open breaker there has the line across it.
            ["breaker"] when outline.BreakerIn("primary") is not null => outline.Volts,
            ["breaker"] => outline.Windings.Select(Whole).Append(1).Max(),
            [var w] => Whole(outline.Windings.First(x => x.Id == w)),
            _ => 0,
        };
        return Math.Max(volts, 1);
    }

    private static (string, string) Terminals(JsonObject part) => (part["from"]!.GetValue<string>(), part["to"]!.GetValue<string>());

    private static void Insulation(Outline outline, DraftParts parts)
    {
        parts.Insulation("ins-primary-core", "primary-start", "iron", WindingDraft.OhmsToCore, "insulation, primary to core");
        foreach (var w in outline.Windings)
        {
            var said = DraftWords.Winding(w.Id);
            parts.Insulation($"ins-{w.Id}-core", $"{w.Id}-start", "iron", WindingDraft.OhmsToCore, $"insulation, {said} to core");
            parts.Insulation(
                $"ins-primary-{w.Id}",
                "primary-end",
                $"{w.Id}-end",
                WindingDraft.OhmsBetween,
                $"insulation, primary to {said}"
            );
        }
        for (var n = 0; n < outline.Windings.Length; n++)
            foreach (var other in outline.Windings.Skip(n + 1))
                if (!PostsOf(outline.Windings[n]).Intersect(PostsOf(other), StringComparer.Ordinal).Any())
                    parts.Insulation(
                        $"ins-{outline.Windings[n].Id}-{other.Id}",
                        $"{outline.Windings[n].Id}-end",
                        $"{other.Id}-end",
                        WindingDraft.OhmsBetween,
                        $"insulation, {DraftWords.Winding(outline.Windings[n].Id)} to {DraftWords.Winding(other.Id)}"
                    );
        foreach (var t in outline.Throttles.Where(t => t.Kind == ThrottleKind.Rheostat))
            parts.Insulation(
                $"ins-rheostat-{t.Id}",
                $"wire-{t.Id}-free",
                "iron",
                WindingDraft.OhmsToCore,
                $"insulation, resistance wire of {DraftWords.Throttle(t.Id)} to core"
            );
    }

    private static IEnumerable<string> PostsOf(WindingBlock w) => w.Posts.Select(p => p.Post).Append(w.From).Where(p => p.Length > 0);
}
