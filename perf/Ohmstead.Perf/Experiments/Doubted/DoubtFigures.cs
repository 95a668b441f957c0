using System.Collections.Immutable;
using System.Globalization;
using Ohmstead.Electrical.Diagnosis;

namespace Ohmstead.Perf.Experiments.Doubted;

/// <summary>What the diagnosis came to on the units of one condition.</summary>
internal sealed class DoubtFigures(DoubtCondition condition)
{
    /// <summary>How near the figure of the leads must come [Ω].</summary>
    private const double LeadsWithin = 0.06;

    /// <summary>How near the figure of the line is called near: a quarter of what it is noted off.</summary>
    private const double LineWithin = 0.25;

    private readonly Score score = new();

    /// <summary>The table's heading.</summary>
    public const string Heading =
        "| bench | units | false sure answers a unit | units with one | log loss | mean average precision | any doubt | the right doubt | slips that matter, named | kind right | named and not slipped | besides | mains while doubted |\n|---|---|---|---|---|---|---|---|---|---|---|---|---|";

    public double LogLoss => score.LogLoss;

    public double MeanAveragePrecision => score.MeanAveragePrecision;

    /// <summary>False sure answers, of the units.</summary>
    public Share FalselySure { get; private set; }

    /// <summary>Units with a false sure answer.</summary>
    public Share UnitsFalselySure { get; private set; }

    /// <summary>Units with any doubt.</summary>
    public Share Doubting { get; private set; }

    /// <summary>Units with a doubt that names what is wrong.</summary>
    public Share Right { get; private set; }

    /// <summary>Units whose figure for the leads is near.</summary>
    public Share NearLeads { get; private set; }

    /// <summary>Units whose figure for the line is near.</summary>
    public Share NearLine { get; private set; }

    /// <summary>Slips that matter and are named.</summary>
    public Share Named { get; private set; }

    /// <summary>Of those the ones whose kind is right, where it is asked.</summary>
    public Share KindRight { get; private set; }

    /// <summary>Slips that are named and are none.</summary>
    public Share NamedWrongly { get; private set; }

    /// <summary>Shorts in no list that are found.</summary>
    public Share ShortsFound { get; private set; }

    /// <summary>Loose plates that are found.</summary>
    public Share LooseFound { get; private set; }

    /// <summary>Readings with the mains that were proposed while a check was doubted.</summary>
    public int EarlyMains { get; private set; }

    public void Add(DiagnosedUnit unit)
    {
        var (drawn, result) = (unit.Unit, unit.Result);
        score.Add([.. result.Faults.Select(f => (f.Mode.Name, f.Probability))], drawn.Truth);
        var falselySure = unit.FalselySure.Count();
        FalselySure = FalselySure.With(falselySure, 1);
        UnitsFalselySure = UnitsFalselySure.With(falselySure > 0);
        Doubting = Doubting.With(!result.Doubts.IsEmpty);
        if (!condition.Right.IsEmpty)
            Right = Right.With(result.Doubts.Any(d => condition.Right.Contains(d.About)));
        if (condition.Bench.LeadOhms > 0)
            NearLeads = NearLeads.With(
                result.Doubts.Any(d => d.About == DoubtAbout.Leads && Math.Abs(d.Value - condition.Bench.LeadOhms) <= LeadsWithin)
            );
        var lineOff = Math.Abs(drawn.Readings.SupplyVolts - drawn.LineVolts);
        if (condition.Bench.LineOffVolts > 0)
            NearLine = NearLine.With(
                result.Doubts.Any(d => d.About == DoubtAbout.Line && Math.Abs(d.Value - drawn.LineVolts) <= LineWithin * lineOff)
            );
        AddSlips(unit);
        if (drawn.Unlisted is { IsShort: true })
            ShortsFound = ShortsFound.With(unit.FindsInternal);
        if (drawn.Unlisted is { IsLooseCore: true })
            LooseFound = LooseFound.With(unit.FindsInternal);
        EarlyMains += unit.EarlyMains;
    }

    private void AddSlips(DiagnosedUnit unit)
    {
        foreach (var slip in unit.Unit.Slips.Where(s => s.Matters))
        {
            var named = unit.NamedFor(slip);
            Named = Named.With(named is not null);
            if (named is not null && DiagnosedUnit.HasRightKind(slip, named) is { } isRight)
                KindRight = KindRight.With(isRight);
        }
        foreach (var named in unit.Result.Slips)
            NamedWrongly = NamedWrongly.With(unit.Unit.Slips.All(s => s.Id != named.Id));
    }

    /// <summary>The table's row.</summary>
    public string Row()
    {
        ImmutableArray<string> besides =
        [
            .. NearLeads.Of > 0 ? [$"figure within 0.06 Ω: {NearLeads}"] : (string[])[],
            .. NearLine.Of > 0 ? [$"figure within a quarter of the 4 V: {NearLine}"] : (string[])[],
            .. ShortsFound.Of > 0 ? [$"shorts found: {ShortsFound}"] : (string[])[],
            .. LooseFound.Of > 0 ? [$"loose plates found: {LooseFound}"] : (string[])[],
        ];
        return string.Create(
            CultureInfo.InvariantCulture,
            $"| {condition.Title} | {score.Units} | {FalselySure.Value:F2} | {UnitsFalselySure} | {LogLoss:F2} | {MeanAveragePrecision:F3} | {Doubting} | {Right} | {Named} | {KindRight} | {NamedWrongly} | {string.Join("; ", besides)} | {EarlyMains} |"
        );
    }
}
