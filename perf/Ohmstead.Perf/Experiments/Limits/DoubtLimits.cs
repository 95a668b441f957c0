using Ohmstead.Perf.Experiments.Doubted;

namespace Ohmstead.Perf.Experiments.Limits;

/// <summary>What is asked of the diagnosis on benches that do not match the sheet.</summary>
internal static class DoubtLimits
{
    /// <summary>Every asked figure.</summary>
    /// <param name="tight">Figures by condition over the sheets whose deviations are those of units about their type.</param>
    /// <param name="wide">The same over sheets made from a plate: there a doubt is not asked, only that nothing sure is false.</param>
    public static IEnumerable<Asked> Of(IReadOnlyDictionary<string, DoubtFigures> tight, IReadOnlyDictionary<string, DoubtFigures> wide)
    {
        var early = tight.Values.Concat(wide.Values).Sum(f => f.EarlyMains);
        return new[] { Asked.AtMost("mains readings proposed while a check is doubted", early, 0) }
            .Concat(tight.SelectMany(p => OfTight(p.Key, p.Value)))
            .Concat(wide.SelectMany(p => OfWide(p.Key, p.Value)))
            .Where(a => !a.IsOpen);
    }

    private static IEnumerable<Asked> OfTight(string condition, DoubtFigures f)
    {
        var rightDoubt = Asked.AtLeast($"{condition}: units with the right doubt", f.Right.Value, 0.7);
        var named = Asked.AtLeast($"{condition}: slips that matter, named", f.Named.Value, condition == "twelve" ? 0.8 : 0.9);
        return condition switch
        {
            "matching" =>
            [
                Asked.AtLeast("matching: mean average precision", f.MeanAveragePrecision, 0.84),
                Asked.AtMost("matching: false sure answers a unit", f.FalselySure.Value, 0.05),
                Asked.AtMost("matching: log loss", f.LogLoss, 3),
                Asked.AtMost("matching: units with a doubt", f.Doubting.Value, 0.02),
            ],
            "batch" =>
            [
                Asked.AtMost("batch: units with a false sure answer", f.UnitsFalselySure.Value, 2 / 24.0),
                Asked.AtMost("batch: log loss", f.LogLoss, 4.5),
                rightDoubt,
            ],
            "meter" or "line" => [rightDoubt],
            "leads" =>
            [
                Asked.AtMost("leads: units with a false sure answer", f.UnitsFalselySure.Value, 1 / 24.0),
                Asked.AtLeast("leads: figure within 0.06 Ω", f.NearLeads.Value, 0.7),
                rightDoubt,
            ],
            "slips" =>
            [
                named,
                Asked.AtLeast("slips: kind right", f.KindRight.Value, 0.8),
                Asked.AtMost("slips: named and not slipped", f.NamedWrongly.Value, 0.05),
            ],
            "unlisted" => [Asked.AtLeast("unlisted: internal shorts found", f.ShortsFound.Value, 0.75)],
            "sibling" => [Asked.AtMost("sibling: false sure answers a unit", f.FalselySure.Value, 0.2)],
            "twelve" => [named, Asked.AtMost("twelve: false sure answers a unit", f.FalselySure.Value, 0.08)],
            _ => [],
        };
    }

    private static IEnumerable<Asked> OfWide(string condition, DoubtFigures f) =>
        condition switch
        {
            "matching" =>
            [
                Asked.AtMost("wide sheets, matching: false sure answers a unit", f.FalselySure.Value, 0.05),
                Asked.AtMost("wide sheets, matching: units with a doubt", f.Doubting.Value, 0.02),
            ],
            "batch" => [Asked.AtMost("wide sheets, batch: units with a false sure answer", f.UnitsFalselySure.Value, 2 / 24.0)],
            "leads" => [Asked.AtMost("wide sheets, leads: units with a false sure answer", f.UnitsFalselySure.Value, 1 / 24.0)],
            "slips" => [Asked.AtMost("wide sheets, slips: named and not slipped", f.NamedWrongly.Value, 0.05)],
            "sibling" => [Asked.AtMost("wide sheets, sibling: false sure answers a unit", f.FalselySure.Value, 0.2)],
            "twelve" => [Asked.AtMost("wide sheets, twelve: false sure answers a unit", f.FalselySure.Value, 0.08)],
            _ => [],
        };
}
