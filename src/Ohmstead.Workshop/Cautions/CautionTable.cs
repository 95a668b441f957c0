using System.Collections.Immutable;
using Ohmstead.Electrical.TypeSheets;
using static Ohmstead.Workshop.Cautions.Act;

namespace Ohmstead.Workshop.Cautions;

/// <summary>
/// Every caution of the trade, once: what it says, for which part, at which act. Screens, papers and commands ask here.
/// Common practice, no source; a type sheet's own hazards come besides, never instead.
/// </summary>
public static class CautionTable
{
    /// <summary>Stands once, quietly, on every screen, paper and command where mains is concerned.</summary>
    public const string LocalCodes = "Mains work: local codes come first. House wiring and outlets are a licensed electrician’s job.";

    private static readonly Act[] Hands = [TakeOff, Solder, Clean, Replace, Cut];

    /// <summary>The table, the gravest first.</summary>
    public static ImmutableArray<Caution> All { get; } =
    [
        new("mains", "Mains can kill. Pull the plug, and keep it in sight.", [], [.. Hands]),
        new("mains", "Mains on the unit: clips on first, then the plug. Hands off while it is in.", [], [FeedMains]),
        new("mains", "Mains on the unit, case open: cover live parts, one hand only, someone within call.", [], [FeedMainsOpen]),
        new(
            "ground fault",
            "Plug into a ground-fault outlet. It does not guard you between the two blades, or behind the unit’s own coils.",
            [],
            [FeedMainsOpen, SeriesLamp, BringUp]
        ),
        new("variable transformer", "A variable transformer does not isolate. Everything on the mains side stays live.", [], [BringUp]),
        new("back feed", "Feed the plug, never a post. 12 V on a post can put over 200 V on the plug.", [], [FeedLow]),
        new(
            "insulation tester",
            "500 V at the clips: hands off while it reads. Discharge afterward, before you touch anything.",
            ["", "insulation"],
            [TestInsulation, Clean]
        ),
        new(
            "kick",
            "Plug out, blades out of reach: a winding kicks when its DC is broken. Clip on, then switch on. Switch off, then unclip.",
            ["", "winding"],
            [FeedDirect]
        ),
        new(
            "asbestos",
            "Old sleeving may hold asbestos. Do not cut, brush, blow or unpick it. Loose fibers: stop, and follow local rules.",
            ["resistor", "sleeving"],
            [.. Hands]
        ),
        new(
            "selenium",
            "An old disc or stack may hold selenium. Do not heat, file or burn it. Bad smell: leave the room and air it.",
            ["rectifier"],
            [.. Hands]
        ),
        new("lead", "Old solder holds lead, and flux fumes harm lungs. Fan or open window. Wash hands before you eat.", [], [Solder]),
        new(
            "carbon dust",
            "Carbon dust shorts turns. Wipe it up damp or use a filter vacuum. Never blow.",
            ["slider"],
            [Clean, Replace, Cut]
        ),
        new("phenolic dust", "Phenolic dust harms lungs. Keep it wet, wear a mask, wipe it up damp.", ["case"], [Cut]),
        new("eyes", "Chips and pin ends fly. Wear eye protection.", [], [Cut]),
        new("eyes", "Cut pins and crushed carbon fly. Wear eye protection.", ["slider"], [Replace]),
        new("hot", "This part gets hot enough to burn. Let it cool for 3 minutes.", ["resistor", "rectifier", "lamp"], [TakeOff, Replace]),
        new("hot", "The load gets hot enough to burn: hands off, and for 3 minutes after.", [], [Load]),
        new("hot", "The series lamp gets hot enough to burn. Keep it clear of paper and hands.", [], [SeriesLamp]),
        new(
            "polarized plug",
            "A polarized plug fits one way only. It can lock this unit out of step with a second one.",
            ["cord", "plug"],
            [Replace, Run]
        ),
        new(
            "phase",
            "Before two units share a track: measure from hot post to hot post at equal settings. Near 0 V is in step.",
            ["", "cord", "plug"],
            [Replace, Run]
        ),
    ];

    /// <summary>What to heed at an act.</summary>
    /// <param name="part">A kind of part, as <see cref="PartOf"/> names it; empty where no single part is meant.</param>
    public static ImmutableArray<string> For(Act act, string part = "") => [.. All.Where(c => c.IsFor(act, part)).Select(c => c.Words)];

    /// <summary>What to heed at one of several acts on several parts, each line once, the gravest first.</summary>
    public static ImmutableArray<string> ForAny(IReadOnlyCollection<Act> acts, IReadOnlyCollection<string> parts) =>
        [.. All.Where(c => acts.Any(a => parts.Any(p => c.IsFor(a, p)))).Select(c => c.Words).Distinct()];

    /// <summary>
    /// What to heed while a part is mended: cleaned, soldered, replaced. That mains can kill is left out: it stands once for the
    /// whole page.
    /// </summary>
    /// <param name="id">An element or slider of the sheet.</param>
    public static ImmutableArray<string> OfRepair(TypeSheet sheet, string id)
    {
        var part = PartOf(sheet, id);
        Act[] acts =
            part == "slider" ? [Clean, Replace]
            : part == "insulation" ? [Clean]
            : [Solder, Replace];
        return [.. ForAny(acts, [part]).Except(For(TakeOff))];
    }

    /// <summary>What to heed at a step of taking apart, besides the plug: by what it lifts, and by what its title does.</summary>
    public static ImmutableArray<string> OfStep(TypeSheet sheet, TakeApartStep step)
    {
        bool Says(params ReadOnlySpan<string> stems)
        {
            foreach (var stem in stems)
                if (step.Title.Contains(stem, StringComparison.OrdinalIgnoreCase))
                    return true;
            return false;
        }
        List<Act> acts = [TakeOff];
        List<string> parts = [.. step.Lifts.Select(id => PartOf(sheet, id)).Distinct()];
        // A wire that comes loose was soldered, whatever the step is called.
        if (Says("solder") || parts.Exists(p => p is "wire" or "joint" or "cord"))
            acts.Add(Solder);
        if (Says("drill", "rivet", "cut "))
            acts.Add(Cut);
        if (step.Part is "roller" or "shoe")
            (parts, acts) = ([.. parts, "slider"], [.. acts, Clean]);
        if (acts.Contains(Cut))
            parts.Add("case");
        return [.. ForAny(acts, parts.Count > 0 ? parts : [""]).Except(For(TakeOff))];
    }

    /// <summary>
    /// What to heed at a reading, besides its sheet's own hazard. The kick of a winding that is fed with direct current is worked
    /// out for each reading and not among them.
    /// </summary>
    public static ImmutableArray<string> OfReading(ReadingSpec spec)
    {
        List<Act> acts = [];
        if (spec.Quantity == Quantity.InsulationOhms)
            acts.Add(TestInsulation);
        if (spec.State.Source is { IsDirect: false } source)
            acts.Add(
                !source.IsMains ? FeedLow
                : spec.IsOpenCase ? FeedMainsOpen
                : FeedMains
            );
        if (spec.State.Source is { HasLamp: true })
            acts.Add(SeriesLamp);
        if (spec.State.Loads.Any(l => l.Ohms < LeastColdOhms))
            acts.Add(Load);
        return ForAny(acts, [""]);
    }

    /// <summary>
    /// True where one of these cautions says all that a sheet's own hazard says: its words, in their order, with others between.
    /// </summary>
    public static bool Says(IEnumerable<string> cautions, string hazard)
    {
        var own = WordsOf(hazard);
        return cautions.Any(c =>
            own.Length > 0 && WordsOf(c).Aggregate(0, (at, w) => at < own.Length && w == own[at] ? at + 1 : at) == own.Length
        );
    }

    private static string[] WordsOf(string words) =>
        [
            .. words
                .ToLowerInvariant()
                .Split([' ', ',', ':', ';', '.'], StringSplitOptions.RemoveEmptyEntries)
                .Select(w => w == "afterwards" ? "afterward" : w),
        ];

    /// <summary>A load of more ohms than this stays cold: at 20 V it takes 4 W [Ω].</summary>
    private const double LeastColdOhms = 100;

    /// <summary>
    /// The kind of a part for this table: its element's kind, "slider", or "cord" for a wire between the plug and the first
    /// terminal inside.
    /// </summary>
    public static string PartOf(TypeSheet sheet, string id)
    {
        id = sheet.PartsOf(id)[0];
        if (sheet.Sliders.Any(s => s.Id == id))
            return "slider";
        var element = sheet.Elements.FirstOrDefault(e => e.Id == id);
        if (element is null)
            return "";
        var plug = sheet
            .Readings.Where(r => r.State.Source is { IsMains: true })
            .Select(r => r.State.Source!)
            .SelectMany(s => new[] { s.From, s.To })
            .ToHashSet(StringComparer.Ordinal);
        return element.Kind == ElementKind.Wire && (plug.Contains(element.From) || plug.Contains(element.To))
            ? "cord"
            : element.Kind.Word();
    }
}
