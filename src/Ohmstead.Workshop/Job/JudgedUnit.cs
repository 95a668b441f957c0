using System.Collections.Immutable;
using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Dating;
using Ohmstead.Workshop.Findings;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.LookOver;
using Ohmstead.Workshop.Readings;
using Ohmstead.Workshop.Shops;
using Ohmstead.Workshop.TakeApart;
using Ohmstead.Workshop.Testing;
using Ohmstead.Workshop.Units;
using Ohmstead.Workshop.Wiring;
using Ohmstead.Workshop.Words;

namespace Ohmstead.Workshop.Job;

/// <summary>What papers are made from: a unit with everything about it already judged.</summary>
/// <param name="Sheet">The sheet of this very unit; null while its kind is not known or its sheet has problems.</param>
/// <param name="Lines">Every reading of the sheet in its order, taken or not.</param>
/// <param name="Earlier">Readings taken before the circuit was last changed.</param>
/// <param name="Outlets">What the posts give.</param>
/// <param name="At">When the paper is made, in the time of the bench.</param>
public sealed record JudgedUnit(
    BenchUnit Unit,
    TypeSheet? Sheet,
    Shop Shop,
    ImmutableArray<ReadingLine> Lines,
    ImmutableArray<ReadingLine> Earlier,
    Rating Rating,
    ImmutableArray<Outlet> Outlets,
    DateTimeOffset At
)
{
    /// <summary>What is doubted of the bench, the type sheet or the inside of the unit, what weakens the findings first.</summary>
    public ImmutableArray<BenchDoubt> Doubts { get; init; } = [];

    /// <summary>When it was made, by what was seen of it; null where its type has no years.</summary>
    public DatedUnit? Dated { get; init; }

    /// <summary>What of the owner's things it can run; null where nothing was said of them, or its posts are not known.</summary>
    public LayoutBudget? Layout { get; init; }

    /// <summary>The tests with their limits, once the first of them was taken; none before.</summary>
    public ImmutableArray<TestResult> Tests { get; init; } = [];

    /// <summary>Tests that failed and whose failing means that the unit can hurt somebody. Insulation of the mains side is a check by itself.</summary>
    public IEnumerable<TestResult> Dangerous =>
        Tests.Where(t => t is { HasFailed: true, IsOfDanger: true, Test.Sort: not TestSort.Insulation });

    /// <summary>Checks that were measured and failed.</summary>
    public IEnumerable<ReadingLine> Failed => Lines.Where(l => l.End == CheckEnd.Failed);

    /// <summary>Checks whose value is too close to a limit for the meter: they count as not passed.</summary>
    public IEnumerable<ReadingLine> TooClose => Lines.Where(l => l.End == CheckEnd.TooClose);

    /// <summary>Checks whose value is probably a slip, or holds the test leads: they count as not passed.</summary>
    public IEnumerable<ReadingLine> Doubted => Lines.Where(l => l.End == CheckEnd.Doubted);

    /// <summary>Readings that are no check and whose value is doubted: probably a slip, or left out.</summary>
    public IEnumerable<ReadingLine> Slipped =>
        Lines.Where(l => l is { IsTaken: true, Limits: "" } && Unit.Doubts.Checks.Readings.Contains(l.Id));

    /// <summary>What is doubted and no bar, named: a bench that is not as noted, readings that are to be read again.</summary>
    public IEnumerable<string> InDoubt => Doubts.Where(d => d.Weakens).Select(d => d.Headline).Concat(Slipped.Select(l => l.Title));

    /// <summary>What the core or a winding takes more than it should, in words: "This unit makes about 11 W more heat than it should".</summary>
    public IEnumerable<string> Heat => Doubts.Where(d => d.About == DoubtAbout.Internal).Select(d => d.Headline);

    /// <summary>Cold checks that were not taken: they count as not passed.</summary>
    public IEnumerable<ReadingLine> Skipped => Lines.Where(l => l is { IsGate: true, End: CheckEnd.NotTaken });

    /// <summary>Checks waived in writing.</summary>
    public IEnumerable<ReadingLine> Waived => Lines.Where(l => l.Waiver is not null);

    /// <summary>What the look-over found or nobody looked at, and nobody can or did sign for.</summary>
    public ImmutableArray<Endangering> Endangering => LookOver.Endangering.Open(Unit, Sheet, Shop);

    /// <summary>The same, with what somebody signed for.</summary>
    public ImmutableArray<Endangering> Dangers => [.. LookOver.Endangering.All(Unit, Sheet, Shop)];

    /// <summary>Wire ends recorded where they are not planned.</summary>
    public ImmutableArray<WrongEnd> WrongEnds => Sheet is null ? [] : WrongEnd.Of(Unit, Sheet);

    /// <summary>All that is open, did not pass, or was waived.</summary>
    public ImmutableArray<OpenThing> Open => OpenThing.All(this);

    /// <summary>True when it went back with the word that it is not to be plugged in.</summary>
    public bool IsReturnedUnplugged => Unit.HandedBack?.Manner == ReturnManner.NotToBePluggedIn;

    /// <summary>True when a wire was moved and the check before mains does not stand.</summary>
    public bool WaitsForCheck => Sheet is not null && !WiringCheck.IsOpen(Unit, Sheet);

    /// <summary>How far it is open; null while its kind is not known.</summary>
    public ApartState? Apart => Sheet is null ? null : ApartState.Of(Unit, Sheet);

    /// <summary>True while something of it lies in a cup.</summary>
    public bool IsOpen => Apart is { Off.IsEmpty: false };

    /// <summary>What the check before mains rests on that no reading tells; null when nothing.</summary>
    public RewireChecked? LookedAt =>
        Sheet is not null && WiringCheck.Standing(Unit, Sheet) is { LookedAt.Length: > 0 } looked ? looked : null;

    /// <summary>False while anything is open, for a unit that went back not to be plugged in, and while its type is not known.</summary>
    public bool MayBePluggedIn => !IsReturnedUnplugged && Sheet is not null && !UntypedIds.IsOne(Sheet) && !Open.Any(o => o.IsOpen);
}

/// <summary>A reading as papers show it.</summary>
/// <param name="Conditions">How the unit stood, in words.</param>
/// <param name="Probes">Where the two probes go, in words.</param>
/// <param name="Expected">The band that this meter shows on sound units.</param>
/// <param name="Measured">What was read; empty when it was not taken.</param>
/// <param name="Verdict">What that means, in words.</param>
/// <param name="End">What became of a check; not taken for what is none.</param>
/// <param name="Limits">Of a check, with who asks for them; empty for what is none.</param>
/// <param name="Meter">The meter's name.</param>
/// <param name="Why">Why it could not be taken.</param>
public sealed record ReadingLine(
    string Id,
    string Title,
    string Probes,
    string Conditions,
    string Expected,
    string Measured,
    string Verdict,
    Weight Weight,
    bool IsGate,
    CheckEnd End,
    string Limits,
    string Hazard,
    string Meter,
    string Why,
    ReadingWaived? Waiver,
    DateTimeOffset? At
)
{
    /// <summary>True when something was read.</summary>
    public bool IsTaken => Measured.Length > 0;

    /// <summary>True where it is doubted, by itself or with the bench it was read on: it is not to be judged until that is settled.</summary>
    public bool IsDoubted { get; init; }

    /// <summary>What sound units show, where that was worked out; else null.</summary>
    public Electrical.Readings.Expectation? Band { get; init; }
}

/// <summary>What is printed on the unit, and what of it can be used.</summary>
/// <param name="InputWatts">Printed watts, which are what it takes in [W]; 0 when not known.</param>
/// <param name="UsableWatts">What it can give for hours, all posts together [W]; 0 when not known.</param>
/// <param name="Source">Where the usable watts come from.</param>
public sealed record Rating(double InputWatts, double UsableWatts, string Source);
