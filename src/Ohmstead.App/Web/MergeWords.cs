using Ohmstead.Storage.Merging;
using Ohmstead.Workshop.Merging;
using Ohmstead.Workshop.Words;

namespace Ohmstead.App.Web;

/// <summary>What a merge brought, in lines for a person.</summary>
internal static class MergeWords
{
    /// <summary>The lines, the first says whether it is done.</summary>
    public static IEnumerable<string> Lines(MergeOutcome outcome, BenchNames names)
    {
        var from = names.Of(outcome.Bench);
        yield return outcome.IsStopped
            ? $"Stopped after {ValueText.Plain(outcome.Progress.Done)} of {Counted.Of(outcome.Progress.All, "unit")}. Merge again to go on."
            : $"Merged with {from}: {Counted.Of(outcome.Progress.All, "unit")} looked at.";
        yield return $"{Sentences.Large(Counted.Of(outcome.NewUnits, "new unit"))}, {Counted.Of(outcome.GrownUnits, "unit")} with new entries, {Counted.Of(outcome.NewEntries, "new entry", "new entries")}, {Counted.Of(outcome.NewPhotos, "new photo")}, {Counted.Of(outcome.NewDocuments, "new type sheet or drawer entry", "new type sheets and drawer entries")}.";
        if (outcome.HasOtherShop)
            yield return $"The Shop settings of {from} differ from yours. Yours are used.";
        if (outcome.MissingPhotos > 0)
            yield return $"{Sentences.Large(Counted.Of(outcome.MissingPhotos, "photo"))} of {from} did not come along. Merge the whole folder to get them.";
        if (outcome.AlteredEntries > 0)
            yield return $"{Sentences.Large(Counted.Of(outcome.AlteredEntries, "entry", "entries"))} of {from} were changed by hand outside Ohmstead. Compare them with the log.";
        foreach (var (_, clock) in outcome.WrongClocks)
            yield return Clock(clock, names);
        foreach (var tag in outcome.TypesToLookAt)
            yield return $"Look at the type of unit {tag}. It keeps an older version. That version may differ between your benches.";
        if (outcome.Backup.Length > 0)
            yield return $"A backup from before is in {outcome.Backup}.";
    }

    /// <summary>A clock that was wrong.</summary>
    public static string Clock(WrongClock clock, BenchNames names) =>
        $"The clock of {names.Of(clock.Entry.Bench)} was {(clock.IsFuture ? "ahead" : "set back, or wrong for a while")}. Its entries stay in their own order. Set that clock.";
}
