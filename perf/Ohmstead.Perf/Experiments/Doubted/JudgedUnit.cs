using System.Collections.Immutable;
using Ohmstead.Electrical.Diagnosis;

namespace Ohmstead.Perf.Experiments.Doubted;

/// <summary>What came of one unit on a bench, as far as the figures need it; kept on the disk.</summary>
internal sealed record JudgedUnit
{
    /// <summary>How near the figure of the leads must come [Ω].</summary>
    private const double LeadsWithin = 0.06;

    /// <summary>How near the figure of the line is called near: a quarter of what it is noted off.</summary>
    private const double LineWithin = 0.25;

    /// <summary>Every mode with its probability.</summary>
    public required ImmutableArray<Answer> Answers { get; init; }

    /// <summary>The modes that are there.</summary>
    public required ImmutableHashSet<string> Truth { get; init; }

    /// <summary>Sure answers that are not true.</summary>
    public required int FalselySure { get; init; }

    /// <summary>There is a doubt.</summary>
    public required bool IsDoubting { get; init; }

    /// <summary>A doubt names what is wrong with the bench; null where nothing is wrong with it.</summary>
    public bool? IsRight { get; init; }

    /// <summary>The figure for the leads is near; null where they were taken off.</summary>
    public bool? IsNearLeads { get; init; }

    /// <summary>The figure for the line is near; null where it was noted right.</summary>
    public bool? IsNearLine { get; init; }

    /// <summary>Slips that matter.</summary>
    public required ImmutableArray<JudgedSlip> Slips { get; init; }

    /// <summary>Of all readings that were named as slips, those that are none.</summary>
    public required Share NamedWrongly { get; init; }

    /// <summary>A short in no list is found; null where there is none.</summary>
    public bool? FindsShort { get; init; }

    /// <summary>Loose plates are found; null where there are none.</summary>
    public bool? FindsLoose { get; init; }

    /// <summary>Readings with the mains that were proposed while a check was doubted.</summary>
    public required int EarlyMains { get; init; }

    /// <summary>All of it in one line, for a person.</summary>
    public required string Line { get; init; }

    /// <summary>A mode and its probability.</summary>
    internal sealed record Answer(string Name, double Probability);

    /// <summary>Whether a slip is named, and with the right kind; null where its kind is not asked.</summary>
    internal sealed record JudgedSlip(bool IsNamed, bool? HasRightKind);

    /// <summary>Judges a unit that was diagnosed on such a bench.</summary>
    public static JudgedUnit Of(DiagnosedUnit unit, DoubtCondition condition)
    {
        var (drawn, result) = (unit.Unit, unit.Result);
        bool Says(DoubtAbout about, double so, double within) =>
            result.Doubts.Any(d => d.About == about && Math.Abs(d.Value - so) <= within);
        return new()
        {
            Answers = [.. result.Faults.Select(f => new Answer(f.Mode.Name, f.Probability))],
            Truth = [.. drawn.Truth],
            FalselySure = unit.FalselySure.Count(),
            IsDoubting = !result.Doubts.IsEmpty,
            IsRight = condition.Right.IsEmpty ? null : result.Doubts.Any(d => condition.Right.Contains(d.About)),
            IsNearLeads = condition.Bench.LeadOhms > 0 ? Says(DoubtAbout.Leads, condition.Bench.LeadOhms, LeadsWithin) : null,
            IsNearLine =
                condition.Bench.LineOffVolts > 0
                    ? Says(DoubtAbout.Line, drawn.LineVolts, LineWithin * Math.Abs(drawn.Readings.SupplyVolts - drawn.LineVolts))
                    : null,
            Slips = [.. drawn.Slips.Where(s => s.Matters).Select(s => Judge(unit, s))],
            NamedWrongly = new(result.Slips.Count(n => drawn.Slips.All(s => s.Id != n.Id)), result.Slips.Length),
            FindsShort = drawn.Unlisted is { IsShort: true } ? unit.FindsInternal : null,
            FindsLoose = drawn.Unlisted is { IsLooseCore: true } ? unit.FindsInternal : null,
            EarlyMains = unit.EarlyMains,
            Line = unit.Line(),
        };
    }

    private static JudgedSlip Judge(DiagnosedUnit unit, Benches.TrueSlip slip) =>
        unit.NamedFor(slip) is { } named ? new(true, DiagnosedUnit.HasRightKind(slip, named)) : new(false, null);
}
