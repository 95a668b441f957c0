using System.Collections.Immutable;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Readings;
using Ohmstead.Workshop.Shops;

namespace Ohmstead.Workshop.Testing;

/// <summary>Entering what was read in a test: what locks a reading locks its test, and a reading of the sheet is entered as one.</summary>
public static class TestEntry
{
    /// <summary>So many readings of the same say how far they scatter; two or three do not.</summary>
    public const int Several = 4;

    private const int MostWords = 400;

    /// <summary>What is to be entered for a test.</summary>
    /// <param name="shown">Once, or four times and more.</param>
    /// <param name="limit">What it is held against; null where nothing can be judged.</param>
    public static EnteredTest Take(BenchTest test, IReadOnlyList<Shown> shown, BenchState bench, Shop shop, TestBound? limit)
    {
        if (Refusal(test, shown) is { Length: > 0 } refused)
            return new([], refused);
        var facts = ImmutableArray.CreateBuilder<Fact>();
        if (test.Offer is { } offer)
        {
            var mean = shown.Count == 1 ? shown[0] : Shown.Number(shown.Average(s => s.Value));
            var reading = ReadingEntry.Enter(offer, mean, bench);
            if (reading.Fact is null)
                return new([], reading.Refused);
            facts.Add(reading.Fact);
            if (shown.Count == 1)
                return new(facts.ToImmutable(), "");
        }
        return limit is null
            ? new([], "Nothing can be concluded from it here.")
            : new(facts.Append(Read(test, shown, bench, shop, limit, null)).ToImmutableArray(), "");
    }

    /// <summary>Touch current: volts with the plug one way and the other.</summary>
    public static EnteredTest TakeTouch(
        BenchTest test,
        (Shown OneWay, Shown Other) shown,
        TouchSetup setup,
        BenchState bench,
        Shop shop,
        TestBound limit
    ) =>
        !test.Locks.IsEmpty ? new([], $"Locked. {LockReason.Briefly(test.Locks)}")
        : shown.OneWay.Kind != ShownKind.Value || shown.Other.Kind != ShownKind.Value
            ? new([], "Type the volts both ways. Where they are too many for the range, choose a higher one.")
        : new([Read(test, [shown.OneWay, shown.Other], bench, shop, limit, setup)], "");

    /// <summary>A test that is not taken, and why.</summary>
    public static EnteredTest Leave(BenchTest test, string why) =>
        test.IsTaken ? new([], "It was read, and that counts. Read it again, or undo it in the log.")
        : why.Trim().Length is 0 or > MostWords ? new([], "Say in a few words why it is not taken.")
        : new([new TestNotTaken(test.Id, test.Title, why.Trim().TrimEnd('.'))], "");

    /// <summary>False for a check that mains depends on: there the worst counts, and not the mean.</summary>
    public static bool MayRepeat(BenchTest test) => test.Offer?.Spec.Limits is null;

    private static string Refusal(BenchTest test, IReadOnlyList<Shown> shown) =>
        !test.Locks.IsEmpty ? $"Locked. {LockReason.Briefly(test.Locks)}"
        : shown.Count == 0 ? "Type what the meter shows."
        : shown.Count is > 1 and < Several ? "Type it once, or four times."
        : shown.Count > 1 && !MayRepeat(test) ? "Type it once: mains depends on it, and a mean would hide a bad one."
        : shown.Count > 1 && shown.Any(s => s.Kind != ShownKind.Value) ? "OL is typed once. Four readings must be numbers."
        : shown[0].Kind is ShownKind.Jumps && test.Offer is null ? "It jumps: find the loose contact, then read again."
        : shown[0].Kind is ShownKind.NotTaken && test.Offer is null ? "Say below why it is not taken."
        : "";

    private static TestRead Read(
        BenchTest test,
        IReadOnlyList<Shown> shown,
        BenchState bench,
        Shop shop,
        TestBound limit,
        TouchSetup? touch
    )
    {
        var (error, unit) = (TestTaken.ErrorOf(test, bench, shop), test.UnitsPerLimit);
        var isOver = shown[0].Kind == ShownKind.OverRange;
        return new(
            test.Id,
            test.Title,
            isOver ? [] : TestRead.Of([.. shown.Select(s => s.Value / unit)]),
            isOver ? TestTaken.OverRangeOf(test) : null,
            limit,
            error.Percent,
            error.Floor / unit,
            touch
        );
    }
}

/// <summary>What is to be written into the journal, or why nothing is.</summary>
/// <param name="Refused">Why, in words; empty when it was not.</param>
public sealed record EnteredTest(ImmutableArray<Fact> Facts, string Refused);
