using System.Collections.Immutable;
using System.Text.Json;
using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Electrical.Faults;
using Ohmstead.Perf.Experiments;
using Ohmstead.Perf.Experiments.Benches;
using Ohmstead.Perf.Experiments.Doubted;
using Ohmstead.Perf.Experiments.Limits;

namespace Ohmstead.Electrical.Tests.Experiments;

/// <summary>Answers made by hand, so that it is plain what the experiment must count.</summary>
public class DoubtFiguresTests
{
    private static readonly UnitModel Twin = new(Reference.Twin160);
    private static readonly FaultCatalogue Catalogue = new(Twin);

    private static DoubtCondition Condition(string name) => DoubtCondition.All.Single(c => c.Name == name);

    /// <summary>A sound unit on the bench of a condition.</summary>
    private static DrawnUnit Sound(string condition) =>
        Enumerable
            .Range(1, 100)
            .Select(n => DrawnUnit.Draw(Twin, n, atNominal: true, bench: Condition(condition).Bench))
            .First(u => u.Truth.Count == 0 && (u.Slips.IsEmpty || u.Slips.Count(s => s.Matters) > 1));

    private static DiagnosisResult Answer(params (string Fault, double Probability)[] faults) =>
        new(
            0,
            [.. faults.Select(f => new FaultProbability(Catalogue.Find(f.Fault)!, f.Probability, null, null, null))],
            [],
            [],
            [],
            [],
            true,
            [],
            new SearchEffort(0, 0, 0, SearchStop.Complete)
        );

    private static Doubt About(DoubtAbout about, double value = 0) => new(about, 0.9, value, [], []);

    private static DoubtFigures Figures(string condition, DrawnUnit unit, DiagnosisResult result)
    {
        var figures = new DoubtFigures(Condition(condition));
        // As it comes back from the disk when a run is taken up again.
        var kept = JsonSerializer.Serialize(JudgedUnit.Of(new DiagnosedUnit(unit, result, 0), Condition(condition)));
        figures.Add(JsonSerializer.Deserialize<JudgedUnit>(kept)!);
        return figures;
    }

    [Fact]
    public void An_answer_is_falsely_sure_from_nine_tenths_on_when_the_fault_is_not_there()
    {
        var unit = Sound("matching") with { Truth = ["pilot:open"] };
        var figures = Figures(
            "matching",
            unit,
            Answer(("pilot:open", 0.99), ("cord-1:open", 0.9), ("cord-2:open", 0.95), ("breaker:open", 0.899))
        );
        Assert.Equal((new Share(2, 1), new Share(1, 1)), (figures.FalselySure, figures.UnitsFalselySure));
    }

    [Theory]
    [InlineData("batch", DoubtAbout.Internal, true)]
    [InlineData("batch", DoubtAbout.Leads, false)]
    [InlineData("meter", DoubtAbout.Unit, true)]
    [InlineData("line", DoubtAbout.Meter, false)]
    [InlineData("sibling", DoubtAbout.Kind, true)]
    public void A_doubt_is_right_when_it_names_what_is_wrong_with_the_bench(string condition, DoubtAbout about, bool isRight)
    {
        var figures = Figures(condition, Sound("matching"), Answer() with { Doubts = [About(about)] });
        Assert.Equal((new Share(isRight ? 1 : 0, 1), new Share(1, 1)), (figures.Right, figures.Doubting));
    }

    [Theory]
    [InlineData(0.355, 1)]
    [InlineData(0.245, 1)]
    [InlineData(0.365, 0)]
    [InlineData(0.235, 0)]
    public void The_figure_of_the_leads_is_near_within_six_hundredths_of_an_ohm(double value, int near) =>
        Assert.Equal(
            new Share(near, 1),
            Figures("leads", Sound("leads"), Answer() with { Doubts = [About(DoubtAbout.Leads, value)] }).NearLeads
        );

    [Fact]
    public void Of_the_slips_that_matter_the_named_ones_count_and_of_those_the_kinds_that_are_right()
    {
        var clean = Sound("matching").Readings.Readings;
        TrueSlip Slip(string id, SpoiledBy by, string with = "", bool matters = true) =>
            new(clean.Single(r => r.Spec.Id == id), by, with, matters);
        ProbableSlip Named(string id, SlipKind kind, string? with = null) => new(id, kind, with, null, 0.9);
        var unit = Sound("matching") with
        {
            Slips =
            [
                Slip("volts-5", SpoiledBy.TimesTen),
                Slip("volts-17", SpoiledBy.Tenth),
                Slip("left-full", SpoiledBy.Exchange, "left-load"),
                Slip("left-load", SpoiledBy.Exchange, "left-full"),
                Slip("blades", SpoiledBy.Place),
                Slip("ohms-5", SpoiledBy.Tenth, matters: false),
            ],
        };
        ProbableSlip[] named =
        [
            Named("volts-5", SlipKind.TimesTen),
            Named("volts-17", SlipKind.TimesTen),
            Named("left-full", SlipKind.Exchanged, "left-load"),
            Named("left-load", SlipKind.Exchanged, "right-load"),
            Named("blades", SlipKind.Unknown),
            Named("ohms-5", SlipKind.Tenth),
            Named("ohms-17", SlipKind.Tenth),
        ];
        var figures = Figures("slips", unit, Answer() with { Slips = [.. named] });
        Assert.Equal((new Share(5, 5), new Share(2, 4), new Share(1, 7)), (figures.Named, figures.KindRight, figures.NamedWrongly));
        Assert.Equal(new Share(0, 5), Figures("slips", unit, Answer()).Named);
    }

    [Fact]
    public void A_short_in_no_list_is_found_by_a_fault_of_its_winding_or_by_a_doubt_of_what_is_within()
    {
        var unit = DrawnUnit.Draw(Twin, 8, bench: Condition("unlisted").Bench);
        Assert.Equal("primary", unit.Unlisted!.Element);
        Share Found(DiagnosisResult result) => Figures("unlisted", unit, result).ShortsFound;
        Assert.Equal(new Share(1, 1), Found(Answer(("primary:shorted-turns", 0.6))));
        Assert.Equal(new Share(0, 1), Found(Answer(("primary:shorted-turns", 0.4), ("main:shorted-turns", 0.9))));
        Assert.Equal(new Share(1, 1), Found(Answer() with { Doubts = [About(DoubtAbout.Internal)] }));
        Assert.Equal(new Share(0, 1), Found(Answer() with { Doubts = [About(DoubtAbout.Meter)] }));
    }

    [Fact]
    public void The_mains_are_proposed_too_early_while_a_check_before_them_is_doubted_and_not_read_again()
    {
        var unit = Sound("matching").Readings;
        NextReading Next(string id, params string[] blockedBy) => new(Twin.Sheet.FindReading(id)!, 1, 1, [.. blockedBy]);
        var slip = new ProbableSlip("blades", SlipKind.Tenth, null, null, 0.9);
        // lamp-60 needs blades at once, watts-idle through lamp-60 too; low-5 needs it and is no mains; volts-5 is not proposed as free.
        var doubted = Answer() with
        {
            Slips = [slip],
            Next = [Next("lamp-60"), Next("watts-idle"), Next("low-5"), Next("volts-5", "blades")],
        };
        Assert.Equal(2, DoubtedCheck.Count(Twin.Sheet, unit, doubted));
        Assert.Equal(2, DoubtedCheck.Count(Twin.Sheet, unit, doubted with { Slips = [], Unexplained = ["blades"] }));
        Assert.Equal(0, DoubtedCheck.Count(Twin.Sheet, unit, doubted with { Slips = [slip with { Id = "volts-17" }] }));
        var again = unit with { Readings = unit.Readings.Add(unit.Readings.Single(r => r.Spec.Id == "blades")) };
        Assert.Equal(0, DoubtedCheck.Count(Twin.Sheet, again, doubted));
        // 3.0 Ω with 0.3 Ω of leads in it is 2.7 Ω, and 2.8 Ω is asked.
        ImmutableArray<Doubt> leads = [About(DoubtAbout.Leads, 0.3)];
        var low = unit with { Readings = [.. unit.Readings.Select(r => r.Spec.Id == "blades" ? r with { Value = 3.0 } : r)] };
        Assert.Equal(2, DoubtedCheck.Count(Twin.Sheet, low, doubted with { Slips = [], Doubts = leads }));
        Assert.Equal(0, DoubtedCheck.Count(Twin.Sheet, low, doubted with { Slips = [] }));
    }

    [Fact]
    public void Every_figure_that_is_missed_is_told_and_fails_the_run()
    {
        // Nothing named, nothing doubted, a false sure answer: what is asked of slips and leads is missed, of the mains it is met.
        Dictionary<string, DoubtFigures> tight = new(StringComparer.Ordinal)
        {
            ["leads"] = Figures("leads", Sound("leads"), Answer(("cord-1:open", 0.95))),
            ["slips"] = Figures("slips", Sound("slips"), Answer()),
        };
        var asked = DoubtLimits.Of(tight, new Dictionary<string, DoubtFigures>(StringComparer.Ordinal)).ToArray();
        Assert.Equal(5, asked.Length);
        Assert.Equal(["mains readings proposed while a check is doubted"], asked.Where(a => a.IsMet).Select(a => a.Figure));
    }
}
