using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Electrical.Diagnosis.Hypotheses;
using Ohmstead.Electrical.Diagnosis.Observed;
using Ohmstead.Electrical.Diagnosis.Searching;
using Ohmstead.Electrical.Diagnosis.Sizes;

namespace Ohmstead.Electrical.Tests.Diagnosis.Searching;

/// <summary>A fault that does nearly the same as the one first thought of is tried in its place, whatever company it is in.</summary>
public class ExchangeTests
{
    /// <summary>
    /// A worn roller or the button behind it, a joint or the wire after it: nearly the same ohms in the same path. In company
    /// they do something else than alone, so that what either does alone is no estimate for it.
    /// </summary>
    [Theory]
    [InlineData(
        "roller-right:worn",
        "button-right:resistive=11.9",
        "breaker:resistive=3.8",
        "run-left:stuck-open",
        "kick-right:resistive=2.4",
        "disc-right:high-drop=3.7"
    )]
    [InlineData("roller-right:worn", "button-right:resistive=13.3", "roller-left:worn=13.4", "disc-right:high-drop=1.2")]
    [InlineData("w-common:resistive", "joint-main:resistive=20", "roller-left:worn=7.9")]
    public void What_does_nearly_the_same_is_tried_in_its_place(string thought, string real, params string[] company)
    {
        var unit = new BenchUnit(Reference.Twin160);
        string[] faults = [real, .. company];
        var readings = WireBench.Unit(
            unit,
            [
                .. unit.Model.Sheet.Readings.Select(r =>
                    unit.ReadListed(r.Id, faults) is var v && double.IsFinite(v) ? WireBench.Value(unit, r.Id, v) : WireBench.OL(unit, r.Id)
                ),
            ]
        );
        var library = new ReadingLibrary(unit.Model);
        var (options, evidence) = (new DiagnosisOptions { Threads = 1 }, new Evidence(library, readings, 1e-3));
        var workers = new Workers(evidence.Set, 1);
        var rows = library.Rows(evidence.Set, workers, () => false);
        var classes = ClassBuilder.Build(evidence, rows, unit.Catalogue.Odds(null), workers, out _);
        FaultClass Of(string mode) => classes.First(c => c.Modes.Any(m => m.Name == mode));
        string KeyWith(string mode) =>
            string.Join(',', company.Select(f => Of(f.Split('=')[0])).Append(Of(mode)).Select(c => c.Number).Order());

        var set = company.Select(f => Of(f.Split('=')[0])).Append(Of(thought)).OrderBy(c => c.Number).ToArray();
        var sizes = unit.Faults(faults).ToDictionary(f => f.Mode.Name, f => f.Size, StringComparer.Ordinal);
        sizes[thought] = unit.Faults(real)[0].Size;
        double ShareOf(FaultClass c) =>
            !c.HasSize ? 0 : Math.Log(sizes[c.Modes.First(m => sizes.ContainsKey(m.Name)).Name] / c.Min) / Math.Log(c.Max / c.Min);
        var members = new Members(set, [.. set.Select(ShareOf)]);
        var predicted = workers.One(w => w.Predict(members, new double[evidence.Set.Count]));
        var spread = new SpreadModel(evidence, rows, workers).Of(members, predicted);
        var fit = workers.One(w => SizeFit.From(members, predicted, new(evidence, spread, w)));
        var h = new FittedHypothesis(fit.Members, spread, null)
        {
            Predicted = fit.Predicted,
            LeftOut = fit.LeftOut,
            LogEvidence = fit.LogEvidence,
            Deviations = fit.Deviations,
            Directions = fit.Directions,
        };
        var known = new KnownSets();
        known.Replace(h);
        new Exchanges(new(evidence, classes, rows, workers, options, new Guard(options)), known).Try(h);
        var tried = known.All.SingleOrDefault(k => k.Key == KeyWith(real.Split('=')[0]));
        Assert.NotNull(tried);
        Assert.True(tried.LogPosterior > h.LogPosterior - 3);
    }
}
