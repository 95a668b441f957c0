using System.Collections.Immutable;
using System.Diagnostics;
using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Electrical.Drafting;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Perf.Experiments.Drafted;

/// <summary>What the method makes of the units of one type. Each result is kept as soon as it is there.</summary>
internal sealed class DraftedTrial(TrialType type, KeptResults kept)
{
    /// <summary>Sheets drafted of each type, each from one faulty unit; and again each with some sound ones more.</summary>
    public const int Drafts = 8;

    private const int SoundMore = 3,
        LookAlikes = 3,
        HeldTo = 3;

    /// <summary>Every so many units the type is not among the candidates.</summary>
    private const int EveryStranger = 5;

    private static readonly DiagnosisOptions Usual = new() { RankNext = false, Threads = 1 };

    /// <summary>A drafted sheet, and the seconds that it took.</summary>
    public sealed record DraftKept(string Sheet, double Seconds);

    /// <summary>How many of the readings of sound units lie inside the band, and how wide each band is over that of the true sheet.</summary>
    public sealed record BandKept(int Inside, int Count, double[] Widths);

    /// <summary>Average precision of a unit's faults: with the true sheet, a drafted one, one with sound units more, and the outline; null for a sound unit.</summary>
    public sealed record UnitKept(double? True, double? Drafted, double? More, double? Outline);

    /// <summary>What was said of which type it is.</summary>
    public sealed record NamedKept(double Probability, bool IsRight, bool IsStranger, double Seconds);

    /// <summary>A sheet drafted from one faulty unit, and from sound ones besides.</summary>
    public DraftKept Draft(int k, bool withSound) =>
        kept.Of(
            FormattableString.Invariant($"{type.Name} draft {k}{(withSound ? " sound" : "")}"),
            () =>
            {
                var start = Stopwatch.GetTimestamp();
                string[] texts = [type.FaultyReadings(k), .. withSound ? Enumerable.Range(0, SoundMore).Select(type.SoundReadings) : []];
                var readings = texts.Select(t => ReadingsFile.Read(t, type.Kind.Sheet).Required).ToImmutableArray();
                var draft = Drafter.Run([new KindReadings(type.Kind, type.Kind.Sheet, readings)], Usual);
                return new DraftKept(TypeSheetFile.Write(draft.Sheet), Stopwatch.GetElapsedTime(start).TotalSeconds);
            }
        );

    private TypeSheet SheetOf(int k, bool withSound = false) => TypeSheetFile.Read(Draft(k, withSound).Sheet).Required;

    /// <summary>The bands of a drafted sheet against sound units, and against the true sheet's.</summary>
    public BandKept Bands(int k) =>
        kept.Of(
            FormattableString.Invariant($"{type.Name} bands {k}"),
            () =>
            {
                var (drafted, real) = (new UnitModel(SheetOf(k)), new UnitModel(type.True));
                var (inside, count, widths) = (0, 0, new List<double>());
                for (var n = 0; n < HeldTo; n++)
                {
                    var sound = SoundMore + (((HeldTo * k) + n) % (TrialType.SoundUnits - SoundMore));
                    var readings = ReadingsFile.Read(type.SoundReadings(sound), type.True).Required;
                    var taken = readings.Readings.Where(r => r.Outcome == Outcome.Value).ToList();
                    ImmutableArray<PredictedReading> Predict(UnitModel model) =>
                        Prediction.Run(model, taken.Select(t => (model.Sheet.FindReading(t.Spec.Id)!, t.State)), []);
                    foreach (var ((band, own), reading) in Predict(drafted).Zip(Predict(real)).Zip(taken))
                    {
                        // What no band can be drawn for, or what is nothing by design, says nothing of the bands.
                        var limit = readings.ErrorOf(reading).LimitAt(reading.Value);
                        if (!band.CanJudge || !double.IsFinite(band.High) || !double.IsFinite(own.High) || own.High < limit)
                            continue;
                        count++;
                        if (IsInside(band, reading.Value, limit))
                            inside++;
                        if (own.High > own.Low)
                            widths.Add((band.High - band.Low) / (own.High - own.Low));
                    }
                }
                return new BandKept(inside, count, [.. widths]);
            }
        );

    /// <summary>Inside the band that the meter's error makes a little wider: its limit is that of an even distribution.</summary>
    private static bool IsInside(PredictedReading band, double shown, double limit)
    {
        var meter = 1.96 * limit / Math.Sqrt(3);
        var (below, above) = (band.Value - band.Low, band.High - band.Value);
        return shown >= band.Value - double.Hypot(below, meter) && shown <= band.Value + double.Hypot(above, meter);
    }

    /// <summary>How well the faults of a unit are found: by the true sheet, by sheets drafted from another unit, by the outline.</summary>
    public UnitKept Unit(int n) =>
        kept.Of(
            FormattableString.Invariant($"{type.Name} unit {n}"),
            () =>
            {
                var truth = type.Truth(n);
                if (truth.Count == 0)
                    return new UnitKept(null, null, null, null);
                var (text, k) = (type.FaultyReadings(n), OtherThan(n));
                double Precision(TypeSheet sheet)
                {
                    var taken = ReadingsFile.Read(text, sheet).Required;
                    var found = Diagnoser.Run(new UnitModel(TapAlignment.Of(sheet, taken)), taken, Usual);
                    var score = new Score();
                    score.Add([.. found.Faults.Select(f => (f.Mode.Name, f.Probability))], truth);
                    return score.MeanAveragePrecision;
                }
                return new UnitKept(
                    Precision(type.True),
                    Precision(SheetOf(k)),
                    Precision(SheetOf(k, withSound: true)),
                    Precision(type.Kind.Sheet)
                );
            }
        );

    /// <summary>A draft that was not made from this unit.</summary>
    private static int OtherThan(int n) => (n + 1) % Drafts;

    /// <summary>
    /// Which type a unit is, among look-alikes: its own sheet, as it is or as it was drafted from another unit; of every fifth unit it
    /// is not among them.
    /// </summary>
    public NamedKept Named(int n) =>
        kept.Of(
            FormattableString.Invariant($"{type.Name} named {n}"),
            () =>
            {
                var isStranger = n % EveryStranger == EveryStranger - 1;
                var text = type.FaultyReadings(n);
                var others = Enumerable.Range(1, LookAlikes + (isStranger ? 1 : 0)).Select(type.LookAlike);
                var own = n % 2 == 0 ? type.True : SheetOf(OtherThan(n));
                PossibleKind[] all =
                [
                    .. others.Select(o => PossibleKinds.Read(o.Id, 1, o, text).Required),
                    .. isStranger ? [] : new[] { PossibleKinds.Read(type.Name, 1, own, text).Required },
                ];
                var start = Stopwatch.GetTimestamp();
                var answer = Identifier.Run([.. all], UsualNone, Usual);
                var best = answer.Kinds.MaxBy(k => k.Probability)!;
                var isNone = answer.None > best.Probability;
                return new NamedKept(
                    Math.Max(answer.None, best.Probability),
                    isNone ? isStranger : best.Kind.Name == type.Name,
                    isStranger,
                    Stopwatch.GetElapsedTime(start).TotalSeconds
                );
            }
        );

    /// <summary>The chance that it is none of these, before any reading.</summary>
    private const double UsualNone = 0.05;
}
