using System.Collections.Immutable;
using System.Globalization;

namespace Ohmstead.Perf.Experiments.Doubted;

/// <summary>What the diagnosis came to on the units of one condition.</summary>
internal sealed class DoubtFigures(DoubtCondition condition)
{
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

    public void Add(JudgedUnit unit)
    {
        score.Add([.. unit.Answers.Select(a => (a.Name, a.Probability))], unit.Truth);
        FalselySure = FalselySure.With(unit.FalselySure, 1);
        UnitsFalselySure = UnitsFalselySure.With(unit.FalselySure > 0);
        Doubting = Doubting.With(unit.IsDoubting);
        Right = Right.With(unit.IsRight);
        NearLeads = NearLeads.With(unit.IsNearLeads);
        NearLine = NearLine.With(unit.IsNearLine);
        foreach (var slip in unit.Slips)
            (Named, KindRight) = (Named.With(slip.IsNamed), KindRight.With(slip.HasRightKind));
        NamedWrongly = NamedWrongly.With(unit.NamedWrongly.Count, unit.NamedWrongly.Of);
        ShortsFound = ShortsFound.With(unit.FindsShort);
        LooseFound = LooseFound.With(unit.FindsLoose);
        EarlyMains += unit.EarlyMains;
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
