using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Electrical.Diagnosis.Candidates;
using Ohmstead.Electrical.Diagnosis.Likelihoods;
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
        var crew = new Crew(evidence.Set, 1);
        var rows = library.Rows(evidence.Set, crew, () => false);
        var classes = ClassBuilder.Build(evidence, rows, unit.Catalogue.Odds(null), crew, out _);
        FaultClass Of(string mode) => classes.First(c => c.Modes.Any(m => m.Name == mode));
        var newcomers = new Newcomers(evidence);
        string KeyWith(string mode) => Hypothesis.KeyOf(company.Select(f => Of(f.Split('=')[0])).Append(Of(mode)).OrderBy(c => c.Number));

        var set = company.Select(f => Of(f.Split('=')[0])).Append(Of(thought)).OrderBy(c => c.Number).ToArray();
        var sizes = unit.Faults(faults).ToDictionary(f => f.Mode.Name, f => f.Size, StringComparer.Ordinal);
        sizes[thought] = unit.Faults(real)[0].Size;
        double ShareOf(FaultClass c) =>
            !c.HasSize ? 0 : Math.Log(sizes[c.Modes.First(m => sizes.ContainsKey(m.Name)).Name] / c.Min) / Math.Log(c.Max / c.Min);
        var h = new Hypothesis(set, [.. set.Select(ShareOf)]);
        h.Predicted = crew.One(w => newcomers.Solve(set, h.Shares, new double[evidence.Set.Count], null, w));
        h.Spread = new SpreadModel(evidence, rows, crew).Of(h);
        crew.One(w =>
        {
            SizeFit.Run(h, h.Spread, evidence, w, (shares, from, changed) => newcomers.Solve(set, shares, from, changed, w));
            return 0;
        });
        var known = new KnownSets();
        known.Register(h);
        new Exchanges(evidence, classes, known, newcomers, crew, options).Try(h);
        var tried = known.All.SingleOrDefault(k => k.Key == KeyWith(real.Split('=')[0]));
        Assert.NotNull(tried);
        Assert.True(tried.LogPosterior > h.LogPosterior - 3);
    }
}
