using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Units;
using Ohmstead.Workshop.Words;

namespace Ohmstead.Workshop.Readings;

/// <summary>Entering, waiving and taking back readings: the rules of the gates, wherever the entry comes from.</summary>
public static class ReadingEntry
{
    private const int MostWords = 400;

    /// <summary>Enters what was shown. Behind a shut gate only "could not" can be entered.</summary>
    public static TypedFact Enter(ReadingOffer offer, Shown shown, BenchState bench)
    {
        if (!offer.IsOpen && shown.Kind != ShownKind.NotTaken)
            return new(null, $"Locked. {LockReason.Briefly(offer.Locks)}");
        if (shown.Kind == ShownKind.NotTaken && shown.Why.Trim().Length is 0 or > MostWords)
            return new(null, "Say in a few words why it could not be taken.");
        if (shown.Kind == ShownKind.OverRange && !IsResistance(offer.Spec.Quantity))
            return new(null, "OL is for resistance only. Where a voltage or current is too much for the range, choose a higher one.");
        return BenchProblem(bench) is { Length: > 0 } problem
            ? new(null, problem)
            : new(
                new ReadingEntered(offer.Spec.Id, shown, bench) { Title = UntypedIds.IsOwn(offer.Spec.Id) ? offer.Spec.Title : null },
                ""
            );
    }

    /// <summary>Waives a gate for want of an instrument, in writing. A measured failure is never waived.</summary>
    public static TypedFact Waive(ReadingOffer gate, string why, string by, string instead)
    {
        if (gate.IsMeasured)
            return new(null, "It was measured: what was measured cannot be waived.");
        if (gate.Spec.Limits is null)
            return new(null, "No other reading is locked by this one. There is nothing to waive.");
        string[] words = [why.Trim(), by.Trim(), instead.Trim()];
        if (words.Any(w => w.Length is 0 or > MostWords))
            return new(null, "Say which instrument is missing, who answers for it, and what was done instead.");
        return new(new ReadingWaived(gate.Spec.Id, words[0], words[1], words[2]), "");
    }

    /// <summary>Takes back the last reading or waiver that still counts; null when there is none.</summary>
    public static (Corrected Fact, Entry Undone)? Undo(BenchUnit unit) =>
        unit.Standing.LastOrDefault(e => e.Fact is ReadingEntered or ReadingWaived) is { } last
            ? (new Corrected(last.Id, null), last)
            : null;

    /// <summary>Puts what was meant in the place of the last value of a reading; null where it is not taken.</summary>
    public static Corrected? Correct(BenchUnit unit, string readingId, Shown meant) =>
        unit.CurrentReadings.LastOrDefault(r => r.Fact.ReadingId == readingId) is { Entry: { } entry, Fact: { } fact }
            ? new Corrected(entry.Id, fact with { Shown = meant })
            : null;

    internal static bool IsResistance(Quantity quantity) => quantity is Quantity.Ohms or Quantity.InsulationOhms;

    /// <summary>What is wrong with a state of the bench; empty when nothing is.</summary>
    public static string BenchProblem(BenchState bench)
    {
        if (bench.SupplyVolts is { } v && !(v is >= 1 and <= 1000))
            return "The line volts must be from 1 to 1000.";
        if (bench.LowVolts is { } low && !(low is >= 1 and <= SourceSpec.MostLowVolts))
            return "The low supply's volts must be from 1 to 30.";
        if (bench.Celsius is { } c && !(c is >= -60 and <= 250))
            return "The windings' temperature must be from -60 to 250 °C.";
        return bench.Throttles.Values.Any(t => !(t is >= 0 and <= 1)) ? "Set a throttle between 0 and 100 %." : "";
    }
}
