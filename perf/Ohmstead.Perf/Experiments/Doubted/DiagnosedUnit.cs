using System.Globalization;
using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Perf.Experiments.Benches;

namespace Ohmstead.Perf.Experiments.Doubted;

/// <summary>A drawn unit and what the diagnosis says of it.</summary>
/// <param name="EarlyMains">Readings with the mains that were proposed while a check before them was doubted.</param>
internal sealed record DiagnosedUnit(DrawnUnit Unit, DiagnosisResult Result, int EarlyMains)
{
    /// <summary>From this probability on an answer is sure.</summary>
    public const double Sure = 0.9;

    /// <summary>Sure answers that are not true.</summary>
    public IEnumerable<FaultProbability> FalselySure =>
        Result.Faults.Where(f => f.Probability >= Sure && !Unit.Truth.Contains(f.Mode.Name));

    /// <summary>The slip that is named for a reading, or null.</summary>
    public ProbableSlip? NamedFor(TrueSlip slip) => Result.Slips.FirstOrDefault(s => s.Id == slip.Id);

    /// <summary>
    /// True when it says where a fault of no list sits that heats core or winding: a fault of that winding above a half, or a doubt
    /// about the unit or what it takes within.
    /// </summary>
    public bool FindsInternal =>
        Result.Doubts.Any(d => d.About is DoubtAbout.Internal or DoubtAbout.Unit)
        || (Unit.Unlisted is { IsShort: true } u && Result.Faults.Any(f => f.Mode.Element == u.Element && f.Probability > 0.5));

    /// <summary>True when the kind of a slip that was named is right; null for a slip whose kind is not asked.</summary>
    public static bool? HasRightKind(TrueSlip slip, ProbableSlip named) =>
        slip.By switch
        {
            SpoiledBy.TimesTen => named.Kind == SlipKind.TimesTen,
            SpoiledBy.Tenth => named.Kind == SlipKind.Tenth,
            SpoiledBy.Exchange => named.Kind == SlipKind.Exchanged && named.With == slip.With,
            _ => null,
        };

    /// <summary>One line: the truth, the sure answers (false ones marked), slips, doubts.</summary>
    public string Line()
    {
        var faults = string.Join(' ', Unit.Faults.Select(f => f.ToString()));
        var unlisted = Unit.Unlisted is { } u ? $" + {u.Name} ({u.Element})" : "";
        var off = Unit.Readings.SupplyVolts - Unit.LineVolts;
        var line = off == 0 ? "" : Text($" at {Unit.LineVolts:F1} V noted {off:+0;-0} V");
        var sure = Result
            .Faults.Where(f => f.Probability >= Sure)
            .Select(f => Text($"{(Unit.Truth.Contains(f.Mode.Name) ? "" : "FALSE ")}{f.Mode.Name} {f.Probability:F3}"));
        var slipped = Unit.Slips.Select(s =>
            Text(
                $"{s.Id} {s.By}{(s.With.Length > 0 ? "~" + s.With : "")}{(s.Matters ? "" : " (small)")}{(NamedFor(s) is null ? " MISSED" : "")}"
            )
        );
        var named = Result.Slips.Select(s =>
            Text(
                $"{(Unit.Slips.Any(t => t.Id == s.Id) ? "" : "FALSE ")}{s.Id} {s.Kind}{(s.With is null ? "" : "~" + s.With)} {s.Meant:G4} {s.Probability:F2}"
            )
        );
        var doubts = Result.Doubts.Select(d =>
            Text($"{d.About} {d.Probability:F2} {d.Value:G4} [{string.Join(' ', d.Readings.Concat(d.Parameters).Take(4))}]")
        );
        return $"    true: {faults}{unlisted}{line}; sure: {List(sure)}; slipped: {List(slipped)}; named: {List(named)}; doubts: {List(doubts)}"
            + (Result.IsExplained ? "" : "; NOT EXPLAINED")
            + (Result.Unexplained.IsEmpty ? "" : $"; left out: {string.Join(' ', Result.Unexplained)}")
            + (EarlyMains == 0 ? "" : Text($"; MAINS WHILE DOUBTED {EarlyMains}"));
    }

    private static string List(IEnumerable<string> all) => string.Join(", ", all.DefaultIfEmpty("–"));

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
