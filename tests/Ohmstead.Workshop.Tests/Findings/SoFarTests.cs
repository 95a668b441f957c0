using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Electrical.Faults;
using Ohmstead.Workshop.Findings;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Tests.Readings;
using Ohmstead.Workshop.Words;

namespace Ohmstead.Workshop.Tests.Findings;

/// <summary>What is said while the search goes on.</summary>
public class SoFarTests
{
    private static readonly OnTheBench Bench = new OnTheBench().ColdGates();
    private static readonly FaultMode[] Modes = [.. new FaultCatalogue(Bench.Model).Modes];

    private static FaultMode Mode(string name) => Modes.Single(m => m.Name == name);

    private static SoFar Said(OnTheBench bench, params EarlyFinding[] findings) =>
        SoFar.Of(bench.Unit, bench.Model.Sheet, new EarlyAnswer(2, [.. findings]));

    [Fact]
    public void Faults_that_the_readings_do_not_tell_apart_are_said_in_one_line()
    {
        var said = Said(
            Bench,
            new([Mode("roller-left:worn")], 0.5),
            new([Mode("roller-right:worn"), Mode("roller-left:open")], 0.45),
            new([Mode("roller-right:open"), .. Modes.Where(m => m.Mode == "shorted").Take(3)], 0.41)
        );
        var sheet = Bench.Model.Sheet;
        Assert.Equal(
            [
                (PartNames.Headline(sheet, Mode("roller-left:worn")), ValueText.Percent(0.5)),
                (
                    $"{PartNames.Headline(sheet, Mode("roller-right:worn"))}; or {PartNames.Fault(sheet, Mode("roller-left:open"))}",
                    ValueText.Percent(0.45)
                ),
                ($"{PartNames.Headline(sheet, Mode("roller-right:open"))}, or 3 more", ValueText.Percent(0.41)),
            ],
            said.Likely.Select(l => (l.Name, l.Percent))
        );
    }

    [Fact]
    public void Three_lines_at_most_and_none_below_what_is_worth_naming()
    {
        EarlyFinding[] many = [.. Modes.Where(m => m.Percent < 2).Take(5).Select(m => new EarlyFinding([m], 0.19))];
        Assert.Equal(5, many.Length);
        Assert.Equal(3, Said(Bench, many).Likely.Length);
        Assert.Single(Said(Bench, many[0] with { Probability = 0.05 }).Likely);
        Assert.Empty(Said(Bench, many[0] with { Probability = 0.0499 }).Likely);
    }

    /// <summary>As among the findings: a chance below 1.3 times that of any unserviced unit is that chance still.</summary>
    [Fact]
    public void A_chance_that_any_unit_has_points_to_nothing()
    {
        var usual = Modes.First(m => m.Percent >= 5);
        Assert.Empty(Said(Bench, new EarlyFinding([usual], 1.3 * usual.Percent / 100)).Likely);
        Assert.Single(Said(Bench, new EarlyFinding([usual], 1.31 * usual.Percent / 100)).Likely);
    }

    [Fact]
    public void What_was_ruled_out_by_hand_is_not_named()
    {
        var bench = new OnTheBench().ColdGates();
        bench.Add(new FindingJudged("roller-left", "worn", Judgement.Dismissed, ""));
        EarlyFinding worn = new([Mode("roller-left:worn")], 0.5);
        Assert.Empty(Said(bench, worn).Likely);
        Assert.Single(Said(Bench, worn).Likely);
        Assert.Single(Said(bench, worn with { Modes = [.. worn.Modes, Mode("roller-left:open")] }).Likely);
    }
}
