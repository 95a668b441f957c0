using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Electrical.Faults;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.Solving;
using Ohmstead.Workshop.Findings;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Tests.Readings;

namespace Ohmstead.Workshop.Tests.Findings;

/// <summary>What is probably wrong, and what hand and eye do to it.</summary>
public class FindingsTests
{
    /// <summary>A unit whose left roller is worn: its readings are those of the nominal unit with that fault.</summary>
    private static readonly OnTheBench Worn = WithFault(
        "roller-left:worn=1.2",
        "ohms-left",
        "left-full",
        "left-load",
        "right-load",
        "load-17"
    );

    private static OnTheBench WithFault(string fault, params string[] readings)
    {
        var bench = new OnTheBench().ColdGates().Read("lamp-60", 106);
        var model = bench.Model;
        Assert.True(Fault.TryParse(fault, new FaultCatalogue(model), out var f, out _, out _));
        foreach (var id in readings.Where(id => model.Sheet.FindReading(id) is not null))
        {
            var spec = model.Sheet.FindReading(id)!;
            var values = model.Nominal.Copy();
            f.ApplyTo(values);
            var leads =
                bench.Readings.Meter.For(spec.Quantity) is { LeadOhms: var ohms } && spec.Quantity == Electrical.TypeSheets.Quantity.Ohms
                    ? ohms
                    : 0;
            bench.Read(
                id,
                Math.Round(new ReadingSolver().Solve(new FaultedCircuits(model, spec, spec.State).For([f]), values).Value!.Value + leads, 3)
            );
        }
        return bench;
    }

    private static readonly Lazy<DiagnosisResult> OfWorn = new(() => Run(Worn));

    private static DiagnosisResult Diagnose(OnTheBench bench) => bench == Worn ? OfWorn.Value : Run(bench);

    private static DiagnosisResult Run(OnTheBench bench) =>
        Diagnoser.Run(
            new UnitModel(JudgedSheet.Of(bench.Unit, bench.Own)),
            bench.Readings,
            new DiagnosisOptions { MostExpanded = 8, RankNext = bench == Worn }
        );

    private static double Chance(OnTheBench bench, string fault) => Diagnose(bench).Faults.Single(f => f.Mode.Name == fault).Probability;

    private static FindingsView View(OnTheBench bench) => FindingsView.Of(bench.Unit, bench.Model, bench.Readings, Diagnose(bench));

    [Fact]
    public void A_worn_roller_is_found_with_its_size_and_the_readings_that_speak_for_it()
    {
        var view = View(Worn);
        var finding = view.Findings.Single(f => f.Mode.Name == "roller-left:worn");
        Assert.True(finding.Probability > 0.2);
        Assert.Contains("Ω", finding.Size, StringComparison.Ordinal);
        Assert.Contains(finding.For, s => s.Spec.Id is "left-load" or "ohms-left");
        Assert.Contains(view.Readings, r => r.Spec.Id == "left-load" && r.Deviations < -2);
        Assert.True(view.IsExplained);
    }

    [Fact]
    public void The_reading_that_is_off_names_what_it_points_to_and_a_sound_one_does_not()
    {
        var (model, readings, result) = (Worn.Model, Worn.Readings, Diagnose(Worn));
        string Of(string id)
        {
            var offer = Worn.Offer(id);
            var expected = Expectation.Of(model, offer.Spec, offer.State, readings.Meter);
            return Likely.Of(model, offer.Spec, offer.State, offer.Last!.Value.Fact.Shown, expected, readings.Meter, result);
        }
        Assert.Contains("Worn left roller", Of("left-load"), StringComparison.Ordinal);
        Assert.Empty(Of("blades"));
    }

    [Fact]
    public void Faults_alike_stand_together_with_what_would_tell_them_apart()
    {
        var alike = View(Worn).Alike.First(a => a.Findings.Any(f => f.Mode.Name == "roller-left:worn"));
        Assert.True(alike.Findings.Length > 1);
        Assert.All(alike.SettlingReadings, t => Assert.Equal(2, t.Values.Select(v => v.Value).Distinct().Count()));
    }

    /// <summary>One name for one finding: on its card, on the drawing, after a reading.</summary>
    [Fact]
    public void Each_finding_has_a_letter_and_those_that_could_be_either_share_it()
    {
        var view = View(Worn);
        var letters = view.Cards.Select((card, n) => (card.Findings, Letter: ((char)('A' + n)).ToString())).ToList();
        Assert.Contains(letters, l => l.Findings.Length > 1);
        foreach (var (findings, letter) in letters)
            Assert.Equal(
                findings.Length == 1 ? [letter] : findings.Select((_, n) => letter + "12345"[n]),
                findings.Select(f => view.Tags[f.Mode.Name])
            );
        Assert.Equal(view.Tags["roller-left:worn"], view.PartTags["roller-left"]);
        Assert.Equal("roller-left:worn", view.Lettered.First(l => l.Letter == view.PartTags["roller-left"]).Finding.Mode.Name);
        Assert.Equal(view.Lettered.Select(l => l.Letter).Order(StringComparer.Ordinal), view.Lettered.Select(l => l.Letter));
        Assert.All(view.Lettered, l => Assert.Contains(l.Letter, view.PartTags.Values));
    }

    [Fact]
    public void Faults_alike_are_said_to_be_in_one_place_only_where_all_of_them_are()
    {
        var alike = View(Worn).Alike.First(a => a.Findings.Any(f => f.Mode.Name == "roller-left:worn"));
        var left = alike with
        {
            Findings =
            [
                alike.Findings[0] with
                {
                    Name = "Worn roller, track 1",
                },
                alike.Findings[0] with
                {
                    Name = "Burnt breaker contact, track 1",
                },
            ],
        };
        Assert.Equal("track 1", left.Place);
        Assert.Empty(
            (left with { Findings = left.Findings.SetItem(1, left.Findings[1] with { Name = "Burnt breaker contact, track 2" }) }).Place
        );
        Assert.Empty((left with { Findings = [.. left.Findings.Select(f => f with { Name = "Worn roller" })] }).Place);
    }

    /// <summary>The cold checks speak of cord, primary and insulation: of a roller they say nothing, and its chance is the trade's 25 in 100.</summary>
    [Fact]
    public void What_nothing_taken_speaks_of_is_no_finding()
    {
        var view = View(new OnTheBench().ColdGates());
        Assert.Contains(view.Untested, f => f.Mode.Name == "roller-left:worn");
        Assert.DoesNotContain(view.Cards.SelectMany(c => c.Findings), f => f.Mode.Name == "roller-left:worn");
        Assert.Contains(View(Worn).Cards.SelectMany(c => c.Findings), f => f.Mode.Name == "roller-left:worn");
    }

    /// <summary>Every finding that is shown is in one card and in no other list.</summary>
    [Fact]
    public void A_fault_is_shown_once()
    {
        var view = View(Worn);
        var names = view.Cards.SelectMany(c => c.Findings).Concat(view.Untested).Concat(view.Unlikely).Select(f => f.Mode.Name).ToList();
        Assert.Equal(names.Count, names.Distinct().Count());
        Assert.All(view.Unlikely, f => Assert.True(f.Probability < FindingsView.WorthNaming));
    }

    [Fact]
    public void A_dismissed_fault_is_out_and_what_it_explained_goes_to_others()
    {
        var others = Diagnose(Worn).Faults.First(f => f.Mode.Name != "roller-left:worn" && f.Probability > 0.02).Mode.Name;
        var before = Chance(Worn, others);
        var bench = WithFault("roller-left:worn=1.2", "ohms-left", "left-full", "left-load", "right-load", "load-17");
        bench.Add(new FindingJudged("roller-left", "worn", Judgement.Dismissed, "measured 12 mm, no flat"));
        var result = Diagnose(bench);
        Assert.Equal(0, result.Faults.Single(f => f.Mode.Name == "roller-left:worn").Probability);
        Assert.Contains(
            FindingsView.Of(bench.Unit, bench.Model, bench.Readings, result).Findings,
            f => f.Mode.Name == "roller-left:worn" && f.Judgement == Judgement.Dismissed
        );
        Assert.True(result.Faults.Any(f => f.Probability > before + 0.05), "something else must explain it");
    }

    [Fact]
    public void A_confirmed_fault_is_certain_until_its_part_is_renewed()
    {
        var bench = new OnTheBench().ColdGates().Add(new FindingJudged("roller-right", "worn", Judgement.Confirmed, "a flat"));
        Assert.True(Chance(bench, "roller-right:worn") > 0.99);
        bench.Add(new PartChanged("roller-right", PartChange.Renewed, null, "new roller"));
        Assert.True(Chance(bench, "roller-right:worn") < 0.05);
    }

    [Fact]
    public void A_judgement_taken_back_leaves_the_chances_as_they_were()
    {
        var bench = new OnTheBench()
            .Add(new FindingJudged("roller-right", "worn", Judgement.Confirmed, "a flat"))
            .Add(new FindingJudged("roller-right", "worn", Judgement.Open, ""));
        Assert.Same(bench.Own, JudgedSheet.Of(bench.Unit, bench.Own));
    }
}
