using System.Collections.Immutable;
using System.Globalization;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Words;

namespace Ohmstead.Workshop.Papers;

/// <summary>The first page of the service record: what the owner takes home.</summary>
internal static class OwnerSheet
{
    /// <summary>More untested readings than this are counted, not named.</summary>
    private const int MostNamed = 4;

    public static IEnumerable<Block> Blocks(PaperMatter matter)
    {
        var card = matter.Unit.Card;
        yield return PaperParts.Opening(
            matter,
            [
                new("Tag", card.Tag),
                .. card.Owner.Length > 0 ? new[] { new Pair("For", card.Owner) } : [],
                new("Dates", $"in {PaperParts.Day(matter.Unit.Journal[0].At)}, this paper {PaperParts.Day(matter.At)}"),
            ]
        );
        foreach (var block in PaperParts.Warnings(matter))
            yield return block;
        yield return new Sides(
            [
                new Heading("What was wrong", 2),
                new Points(Wrong(matter)),
                new Heading("What was done", 2),
                new Points(Done(matter)),
                new Heading("Cautions", 2),
                new Points(Advice.Cautions),
            ],
            [
                new Heading("What it can run", 2),
                .. CanRun(matter),
                new Heading("What was not tested", 2),
                new Points(NotTested(matter)),
                new Heading("How to use it", 2),
                new Points(Advice.Use),
            ]
        );
        yield return new Signatures(["For the bench, date", "Received, date"]);
    }

    private static ImmutableArray<string> Wrong(PaperMatter matter)
    {
        var said = matter.Unit.Card.Complaint.Trim();
        var found = matter
            .Unit.All<FindingJudged>()
            .GroupBy(j => (j.Fact.Element, j.Fact.Mode))
            .Select(g => g.Last().Fact)
            .Where(j => j.Judgement == Judgement.Confirmed)
            .Select(j =>
                $"Found: {PaperParts.Fault(matter.Sheet, j.Element, j.Mode)}{PaperParts.After(j.Words)}."
            );
        ImmutableArray<string> all = [.. said.Length > 0 ? new[] { $"You told us: “{said}”" } : [], .. found];
        return all.Length > 0 ? all : ["No complaint is written down, and no fault was confirmed."];
    }

    private static ImmutableArray<string> Done(PaperMatter matter)
    {
        var parts = matter
            .Unit.All<PartChanged>()
            .Select(p =>
                $"{PaperParts.Part(matter.Sheet, p.Fact.Element)}: {PaperParts.Change(p.Fact.Change)}{PaperParts.After(p.Fact.Words)}."
            );
        var conditions = PaperParts
            .LastConditions(matter)
            .Where(c => c.Decision is Decision.Renew or Decision.Renewed or Decision.Watch)
            .Select(c =>
                $"{PaperParts.Item(matter.Shop, c.Item)}{(c.Words.Length > 0 ? $", {c.Words}" : "")}: {c.Decision switch { Decision.Renew => "to be renewed", Decision.Renewed => "renewed", _ => "to be watched" }}."
            );
        ImmutableArray<string> all = [.. parts, .. conditions];
        return all.Length > 0 ? all : ["No part was changed."];
    }

    public static ImmutableArray<string> NotTested(PaperMatter matter)
    {
        var open = matter.Lines.Where(l => !l.IsTaken && l.Waiver is null).ToList();
        // The page is full: what was only looked at is named here and told with the readings.
        var looked = matter.LookedAt is null ? "" : " Some wiring was only looked at.";
        var named =
            open.Count == 0 ? looked.Length == 0 ? [] : [looked.Trim()]
            : open.Count <= MostNamed ? new[] { $"Not taken: {string.Join("; ", open.Select(l => l.Title))}.{looked}" }
            :
            [
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"{open.Count} of {matter.Lines.Length} readings of this kind of unit were not taken{(looked.Length == 0 ? "; the tables say which" : "")}.{looked}"
                ),
            ];
        return [.. named, .. Advice.NeverJudged];
    }

    private static IEnumerable<Block> CanRun(PaperMatter matter)
    {
        if (!matter.MayBePluggedIn)
        {
            yield return new Prose("Nothing, before the checks above have passed.");
            yield break;
        }
        var rating = matter.Rating;
        if (rating.UsableWatts <= 0)
        {
            yield return new Prose("How much it can give is not known: its sheet has no rating.");
            yield break;
        }
        var printed =
            rating.InputWatts > 0
                ? string.Create(
                    CultureInfo.InvariantCulture,
                    $" The {rating.InputWatts:0} W on its plate are what it takes in."
                )
                : "";
        yield return new Prose(
            string.Create(
                CultureInfo.InvariantCulture,
                $"About {rating.UsableWatts:0} W for hours, all posts together.{printed}"
            )
        );
        if (matter.Outlets.Length == 0)
            yield break;
        yield return new Table(
            [
                new("Posts", 5),
                new("idle", 2.6, IsFigure: true),
                new("loaded", 2.8, IsFigure: true),
                new("most", 2.4, IsFigure: true),
            ],
            [
                .. matter.Outlets.Select(o =>
                    Row.Of(
                        o.Posts,
                        Volts(o.IdleVolts),
                        Volts(o.LoadedVolts),
                        string.Create(CultureInfo.InvariantCulture, $"{o.Amps:0.0} A")
                    )
                ),
            ]
        );
        yield return new Prose("Computed, one pair alone. Wires, rollers and breaker may set less.", Size.Small);
    }

    private static string Volts(double volts) => string.Create(CultureInfo.InvariantCulture, $"{volts:0.0} V");
}
