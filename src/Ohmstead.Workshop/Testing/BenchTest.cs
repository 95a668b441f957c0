using System.Collections.Immutable;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Readings;

namespace Ohmstead.Workshop.Testing;

/// <summary>A test of a unit, as it is asked for now.</summary>
/// <param name="Id">What it is called in the journal and in addresses.</param>
/// <param name="Title">"Post 1, full throttle, no load".</param>
/// <param name="Minutes">With both hands.</param>
/// <param name="Needs">What it takes: "insulation tester", "1.5 kΩ resistor".</param>
/// <param name="Why">Why it is asked for: "Every unit.", "Again: roller of track 1 was changed."</param>
/// <param name="About">The breaker that it is of; empty for none.</param>
public sealed record BenchTest(string Id, TestSort Sort, string Title, double Minutes, string Needs, string Why, string About)
{
    /// <summary>The reading that it is; null where the type sheet has none for it.</summary>
    public ReadingOffer? Offer { get; init; }

    /// <summary>For the drop of a post: its readings, the one with no load among them.</summary>
    public ImmutableArray<ReadingOffer> Pair { get; init; } = [];

    /// <summary>Why it is locked, what to do first first: the same that locks readings.</summary>
    public ImmutableArray<LockReason> Locks { get; init; } = [];

    /// <summary>What was read of the unit as it is now; null where it is to be read.</summary>
    public TestTaken? Taken { get; init; }

    /// <summary>True when it was read.</summary>
    public bool IsTaken => Taken is { NotTaken.Length: 0 };

    /// <summary>True when it was left out, for a reason that is not how the unit is made.</summary>
    public bool IsLeftOut => Taken is { IsLeftOut: true };

    /// <summary>True for one that nothing on this unit asks for: it may be left.</summary>
    public bool IsChoice { get; init; }

    /// <summary>True when it is to be done: not taken, and something asks for it.</summary>
    public bool IsDue => Taken is null && !IsChoice && Sort != TestSort.Regulation;

    /// <summary>True where there may be something to judge: it was taken or left out, or follows from readings by itself.</summary>
    public bool IsToJudge => Taken is not null || Sort == TestSort.Regulation;

    /// <summary>What the meter is set to.</summary>
    public Quantity Quantity =>
        Offer?.Spec.Quantity
        ?? Sort switch
        {
            TestSort.TouchCurrent => Quantity.AcVolts,
            _ => Quantity.Ohms,
        };

    /// <summary>How many of its own units the limit's unit is: insulation is judged in megohms, for nobody counts zeros.</summary>
    public double UnitsPerLimit => Quantity == Quantity.InsulationOhms ? 1e6 : 1;
}
