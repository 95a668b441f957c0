using System.Collections.Immutable;

namespace Ohmstead.Workshop.Journal;

/// <summary>
/// The type of a unit became known: what was recorded before is read under the names that the type sheet has for it. The last
/// one for the unit's present type counts.
/// </summary>
/// <param name="SheetId">The type.</param>
/// <param name="Names">From the id of a reading, terminal, wire end, step or part without a type to the sheet's id of it.</param>
public sealed record CarriedOver(string SheetId, ImmutableSortedDictionary<string, string> Names) : Fact
{
    /// <summary>A fact under the sheet's names; what has none there stays as it is.</summary>
    public Fact Translate(Fact fact) =>
        fact switch
        {
            ReadingEntered r => r with { ReadingId = Of(r.ReadingId) },
            ReadingWaived w => w with { ReadingId = Of(w.ReadingId) },
            JointSeen j => j with { Terminal = Of(j.Terminal), Ends = [.. j.Ends.Select(e => e with { Id = Of(e.Id) })] },
            PhotoAdded p => p with { About = Of(p.About) },
            TakenOff o => o with { Step = Of(o.Step) },
            PieceNoted p => p with { Step = Of(p.Step) },
            PutBack b => b with { Step = Of(b.Step) },
            FindingJudged f => f with { Element = Of(f.Element) },
            PartDecided d => d with { About = Of(d.About) },
            PartChanged p => p with { Element = Of(p.Element) },
            _ => fact,
        };

    private string Of(string id) => Names.GetValueOrDefault(id, id);
}
