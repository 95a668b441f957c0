using System.Collections.Immutable;
using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Reckoning.Proving;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Readings;
using Ohmstead.Workshop.Shops;
using Ohmstead.Workshop.Units;
using Ohmstead.Workshop.Words;

namespace Ohmstead.Workshop.Job;

/// <summary>A unit against the shop's own sound units of its type, reading by reading: the question <c>own-bands</c>.</summary>
/// <param name="SoundUnits">Units of the type that went back as working.</param>
/// <param name="Lines">Each reading that was taken on this unit and shows a number, in the order of the sheet.</param>
public sealed record OwnHistory(int SoundUnits, ImmutableArray<HistoryLine> Lines)
{
    /// <summary>Fewer than so many say nothing.</summary>
    public const int Fewest = 3;

    /// <summary>True for a unit whose readings are those of a sound one of its type: returned as working, and no practice unit.</summary>
    public static bool IsSound(BenchUnit unit) => unit.HandedBack?.Manner == ReturnManner.Working && !unit.IsPractice;

    /// <summary>Compares a unit with others of its type. Cost: a band of some milliseconds for each reading taken.</summary>
    /// <param name="kind">The type sheet.</param>
    /// <param name="others">Units of the same type; those that are not sound, and the unit itself, are left out.</param>
    public static OwnHistory? Of(BenchUnit unit, TypeSheet kind, Shop shop, IEnumerable<BenchUnit> others)
    {
        if (OwnSheet.OnBench(unit, kind, shop).Value is not { } own)
            return null;
        var model = new UnitModel(own);
        var sound = others.Where(o => o.Id != unit.Id && IsSound(o)).Select(AsLeft).ToList();
        var asked = AsLeft(unit)
            .Where(r => own.FindReading(r.Key) is not null)
            .OrderBy(r => own.Readings.IndexOf(own.FindReading(r.Key)!))
            .Select(r => Asked(model, own.FindReading(r.Key)!, r.Value, shop, sound))
            .OfType<OwnReading>()
            .ToImmutableArray();
        if (asked.IsEmpty)
            return new(sound.Count, []);
        var bands = new OwnBands(asked).Answer().Readings;
        return new(
            sound.Count,
            [.. asked.Zip(bands, (a, b) => new HistoryLine(PartNames.Reading(own, a.Id), own.FindReading(a.Id)!.Quantity, a.New!.Value, b))]
        );
    }

    private static OwnReading? Asked(
        UnitModel model,
        ReadingSpec spec,
        ReadingEntered read,
        Shop shop,
        IReadOnlyList<IReadOnlyDictionary<string, ReadingEntered>> sound
    )
    {
        if (read.Shown.Kind != ShownKind.Value)
            return null;
        var state = BenchConditions.StateOf(model, spec, read.Bench, shop);
        var band = Electrical.Readings.Expectation.Of(model, spec, state, MeterInHand.Of(read.Bench, shop));
        if (!double.IsFinite(band.Low) || !double.IsFinite(band.High) || band.Low >= band.High)
            return null;
        var history = sound
            .Select(s => s.GetValueOrDefault(spec.Id))
            .OfType<ReadingEntered>()
            .Where(r => r.Shown.Kind == ShownKind.Value)
            .Select(r => r.Shown.Value);
        return new(spec.Id, [.. history], band.Low, band.High, read.Shown.Value);
    }

    /// <summary>The last of each reading that speaks of the unit as it is.</summary>
    internal static IReadOnlyDictionary<string, ReadingEntered> AsLeft(BenchUnit unit) =>
        unit
            .CurrentReadings.GroupBy(r => r.Fact.ReadingId, StringComparer.Ordinal)
            .ToDictionary(g => g.Key, g => g.Last().Fact, StringComparer.Ordinal);
}

/// <summary>A reading beside those of sound units.</summary>
/// <param name="Title">What was read.</param>
/// <param name="Quantity">Its quantity.</param>
/// <param name="Value">On this unit.</param>
/// <param name="Band">What the sound units say of it.</param>
public sealed record HistoryLine(string Title, Quantity Quantity, double Value, OwnBand Band)
{
    /// <summary>Enough sound units have this reading.</summary>
    public bool IsJudged => Band.ChancePercent is not null;

    /// <summary>Fewer than one sound unit in a hundred reads as far off.</summary>
    public bool IsUnusual => Band.ChancePercent < 1;

    /// <summary>What it comes to.</summary>
    public string Words =>
        !IsJudged ? $"too few of this type: {Counted.Bare(Band.Count)} of {ValueText.Plain(OwnHistory.Fewest)}"
        : IsUnusual ? $"unusual: {Share(Band.ChancePercent!.Value)} of 100 sound units read as far off"
        : Band.Verdict.Contains(',', StringComparison.Ordinal) ? "usual here, outside the type sheet’s band"
        : "usual";

    private static string Share(double percent) =>
        percent < 0.1 ? "under 0.1" : string.Create(System.Globalization.CultureInfo.InvariantCulture, $"about {percent:0.0}");

    /// <summary>Between which values the next sound unit is expected.</summary>
    public string Usual => ValueText.Band(Band.Low, Band.High, Quantity);
}
