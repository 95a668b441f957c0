using System.Collections.Immutable;
using Ohmstead.Electrical.Planning;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Units;
using Ohmstead.Workshop.Words;

namespace Ohmstead.Workshop.TakeApart;

/// <summary>How far a unit is taken apart: what is off, in which cup, and what went back.</summary>
public sealed class ApartState
{
    private readonly ImmutableArray<TakeApartStep> steps;
    private readonly HashSet<string> off;

    private ApartState(
        ImmutableArray<TakeApartStep> steps,
        ImmutableArray<string> reach,
        ImmutableArray<OffStep> off,
        ImmutableArray<BackStep> back
    )
    {
        (this.steps, Reach, Off, Back) = (steps, reach, off, back);
        this.off = off.Select(o => o.Step.Id).ToHashSet(StringComparer.Ordinal);
    }

    /// <summary>Ids of the steps to reach, as chosen last; empty when nothing is to be reached any more.</summary>
    public ImmutableArray<string> Reach { get; }

    /// <summary>What is off now, in the order in which it came off.</summary>
    public ImmutableArray<OffStep> Off { get; }

    /// <summary>What went back, in that order.</summary>
    public ImmutableArray<BackStep> Back { get; }

    /// <summary>True when a step was ever done.</summary>
    public bool IsBegun => !Off.IsEmpty || !Back.IsEmpty;

    /// <summary>Elements that a step which is off has disconnected.</summary>
    public ImmutableArray<string> LooseWires => [.. Off.SelectMany(o => o.Step.Lifts).Distinct(StringComparer.Ordinal)];

    /// <summary>Cups with something in them.</summary>
    public ImmutableArray<int> OpenCups => [.. Off.Select(o => o.Fact.Cup).Where(c => c > 0).Distinct().Order()];

    /// <summary>Reads the journal; a step that the sheet does not know (any more) stays, under its id.</summary>
    public static ApartState Of(BenchUnit unit, TypeSheet sheet)
    {
        var (reach, off, back) = (ImmutableArray<string>.Empty, new List<OffStep>(), new List<BackStep>());
        foreach (var entry in unit.Standing)
        {
            if (entry.Fact is WayChosen way)
                reach = [.. way.Reach.Where(r => sheet.TakeApart.Any(s => s.Id == r))];
            else if (entry.Fact is TakenOff taken && !off.Exists(o => o.Step.Id == taken.Step))
                off.Add(new(StepOf(taken, sheet), entry, taken, []));
            else if (entry.Fact is PieceNoted noted && off.FindIndex(o => o.Step.Id == noted.Step) is >= 0 and var at)
                off[at] = off[at] with { Noted = off[at].Noted.Add(noted) };
            else if (entry.Fact is PartChanged { Change: PartChange.Renewed or PartChange.Replaced } part)
            {
                for (var n = 0; n < off.Count; n++)
                    if (ReachFor.PartsOf(off[n].Step.Id, sheet).Contains(part.Element))
                        off[n] = off[n] with { NewParts = off[n].NewParts.Add(part.Element) };
            }
            else if (entry.Fact is PutBack put && off.FindIndex(o => o.Step.Id == put.Step) is >= 0 and var from)
            {
                back.Add(new(off[from], entry, put));
                off.RemoveAt(from);
                // Whatever is put back ends the way there: nothing is taken off again by itself.
                reach = [];
            }
        }
        return new ApartState(sheet.TakeApart, reach, [.. off], [.. back]);
    }

    /// <summary>The way to what is to be reached from here.</summary>
    /// <param name="reach">Ids of the steps to reach.</param>
    public TakeApartPlan Plan(IReadOnlyCollection<string> reach, double moneyPerHour) =>
        TakeApartPlanner.Plan(steps, reach, moneyPerHour, Known());

    /// <summary>The next step of the way; null when nothing is left to take off.</summary>
    public TakeApartStep? NextOff(double moneyPerHour = TakeApartPlanner.UsualRate) =>
        Reach.All(off.Contains) ? null : Plan(Reach, moneyPerHour).Steps.FirstOrDefault();

    /// <summary>What goes back next: of what nothing else that is off has to go in before, what came off last.</summary>
    public OffStep? NextBack() => Off.LastOrDefault(o => WaitsFor(o) is null);

    /// <summary>True for a step that is off.</summary>
    public bool IsOff(string step) => off.Contains(step);

    /// <summary>The steps that can be done now.</summary>
    public IEnumerable<TakeApartStep> Within() => steps.Where(s => !off.Contains(s.Id) && CanComeOff(s, off));

    /// <summary>A step that has to go back before this one does; null when it can go back now.</summary>
    public OffStep? WaitsFor(OffStep step)
    {
        var without = off.Where(id => id != step.Step.Id).ToHashSet(StringComparer.Ordinal);
        return Off.LastOrDefault(o => o != step && CanComeOff(o.Step, off) && !CanComeOff(o.Step, without));
    }

    /// <summary>All that is off, in the order of going back.</summary>
    public ImmutableArray<OffStep> BackOrder()
    {
        var (order, left) = (ImmutableArray.CreateBuilder<OffStep>(), this);
        while ((left.NextBack() ?? left.Off.LastOrDefault()) is { } next)
        {
            order.Add(next);
            left = new(steps, [], left.Off.Remove(next), Back);
        }
        return order.ToImmutable();
    }

    private static bool CanComeOff(TakeApartStep step, HashSet<string> done) =>
        step.After.All(done.Contains) && (step.AfterAny.IsEmpty || step.AfterAny.Any(g => g.All(done.Contains)));

    private HashSet<string> Known() => steps.Select(s => s.Id).Where(off.Contains).ToHashSet(StringComparer.Ordinal);

    private static TakeApartStep StepOf(TakenOff taken, TypeSheet sheet) =>
        sheet.TakeApart.FirstOrDefault(s => s.Id == taken.Step)
        ?? new(taken.Step, taken.Title ?? Sentences.Large(PartNames.Step(sheet, taken.Step)), [], [], 0, 0, 0, 0, [], "", 0);
}

/// <summary>A step that is off.</summary>
/// <param name="Entry">The entry that says so.</param>
/// <param name="Noted">What became of its pieces since.</param>
public sealed record OffStep(TakeApartStep Step, Entry Entry, TakenOff Fact, ImmutableArray<PieceNoted> Noted)
{
    /// <summary>Parts of the step that were replaced while it was off.</summary>
    public ImmutableHashSet<string> NewParts { get; init; } = [];

    /// <summary>
    /// Pieces that do not go back as they came off. A part replaced is one, whether its piece was noted or not; both speak of the same
    /// piece.
    /// </summary>
    public int NotAsTheyCame => Math.Min(Math.Max(Noted.Sum(n => n.Pieces), NewParts.Count), Fact.Pieces);
}

/// <summary>A step that went back.</summary>
public sealed record BackStep(OffStep Off, Entry Entry, PutBack Fact)
{
    /// <summary>Pieces that came off and are not accounted for by what went in.</summary>
    public int Remainder => Off.Fact.Pieces - Fact.Old - Fact.New;
}
