using System.Collections.Immutable;
using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Faults;
using Ohmstead.Electrical.Planning;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;
using static Ohmstead.Electrical.Tests.Planning.TwinMistakes;

namespace Ohmstead.Electrical.Tests.Planning;

/// <summary>A rewire checked before mains: on units drawn with and without a mistake, read by a meter with its error.</summary>
public class RewireCheckTests
{
    [Fact]
    public void Without_readings_the_list_tells_every_mistake_that_can_be_told()
    {
        var result = RewireCheck.Run(Sheet, Nothing, cancellation: TestContext.Current.CancellationToken);
        Assert.Equal(RewireVerdict.NotProved, result.Verdict);
        Assert.Empty(result.Probable);
        Assert.All(result.ToRead, t => Assert.True(t.Spec.State.Source is not { Volts: > 30 }, t.Spec.Id));
        var alone = result
            .ToRead.SelectMany(t => t.Discriminates)
            .Concat(result.Undiscriminated)
            .Select(m => m.Id)
            .ToHashSet(StringComparer.Ordinal);
        Assert.True(alone.Count > 0.9 * result.Mistakes.Length);
    }

    /// <summary>
    /// Ohms from the plug to the posts where a right wiring is open: three of them no listed mistake shows (a bridge counts as 0.1 Ω), and
    /// yet nothing is proved.
    /// </summary>
    [Fact]
    public void What_neither_the_right_wiring_nor_a_mistake_shows_proves_nothing()
    {
        var sound = Read(Sheet, 0, isNominal: true);
        var result = RewireCheck.Run(Table, Plan, SoundWiring, sound);
        Assert.Empty(result.Unexplained);
        Assert.True(result.Verdict == RewireVerdict.NoneLeft || result.WaitsForTheEye);
        var at = sound.Readings.ToList().FindIndex(r => r.Spec.Id == "blades-posts");
        var odd = sound.Readings[at] with { Outcome = Outcome.Value, Value = 3 };
        result = RewireCheck.Run(Table, Plan, SoundWiring, sound with { Readings = sound.Readings.SetItem(at, odd) });
        Assert.NotEqual(RewireVerdict.NoneLeft, result.Verdict);
        Assert.False(result.WaitsForTheEye);
        Assert.Equal(["blades-posts"], result.Unexplained.Select(r => r.Id));
    }

    /// <summary>An open place is open on every rightly wired unit, whatever it leaks: the meter alone tells a cord on a secondary lug.</summary>
    [Fact]
    public void A_path_from_the_plug_to_the_posts_is_told_by_that_reading_alone()
    {
        var moved = MistakeList.Of(Sheet).Single(m => m.Id == "moved:cord-1.to>breaker-in");
        UnitReadings Alone(TypeSheet wired) =>
            Nothing with
            {
                Readings = [Read(wired, 0, isNominal: true).Readings.Single(r => r.Spec.Id == "blades-posts")],
            };
        var wrong = RewireCheck.Run(Table, Plan, SoundWiring, Alone(moved.Make(Sheet, 0)));
        Assert.Equal(RewireVerdict.Mistake, wrong.Verdict);
        Assert.All(wrong.Probable[0].Mistakes, m => Assert.True(SoundWiring.IsDangerous(m.Make(Sheet, m.Sizes[0])), m.Id));
        Assert.Equal(RewireVerdict.NotProved, RewireCheck.Run(Table, Plan, SoundWiring, Alone(Sheet)).Verdict);
    }

    /// <summary>A reversed boost takes five volts off instead of adding them (common practice, no source): the ends to exchange are named.</summary>
    [Fact]
    public void A_reversed_boost_winding_is_named()
    {
        var boost = MistakeList.Of(Sheet).Single(m => m.Id == "reversed:boost-left");
        var result = Check(boost.Make(Sheet, 0), 5);
        Assert.Equal(RewireVerdict.Mistake, result.Verdict);
        Assert.Equal("reversed:boost-left", result.Probable[0].Mistakes.Single().Id);
    }

    [Fact]
    public void Two_mistakes_at_once_are_named_together()
    {
        var all = MistakeList.Of(Sheet);
        var (a, b) = (all.Single(m => m.Id == "off:w-5"), all.Single(m => m.Id == "reversed:boost-right"));
        var result = Check(b.Make(a.Make(Sheet, a.Sizes[0]), 0), 8);
        Assert.Equal(["off:w-5", "reversed:boost-right"], result.Probable[0].Mistakes.Select(m => m.Id));
    }

    [Fact]
    public void A_cord_on_a_secondary_lug_is_dangerous_and_told()
    {
        var moved = MistakeList.Of(Sheet).Single(m => m.Id == "moved:cord-1.to>breaker-in");
        Assert.True(SoundWiring.IsDangerous(moved.Make(Sheet, 0)));
        Assert.False(SoundWiring.IsDangerous(Sheet));
        Assert.Equal(RewireVerdict.Mistake, Check(moved.Make(Sheet, 0), 3).Verdict);
    }

    /// <summary>
    /// Bayes: evidence that is fifty times as likely with the mistake multiplies its odds against the right wiring by fifty (an eye errs
    /// once in fifty: common practice, no source). Nothing else moves, and nothing is proved while it is not answered for.
    /// </summary>
    [Fact]
    public void An_end_seen_on_the_wrong_terminal_makes_the_mistakes_that_put_it_there_fifty_times_as_likely()
    {
        List<(int Reading, double Shown)> read = [(0, Table.Right[0])];
        var there = Table
            .Mistakes.Where(
                (m, n) => m.Id.StartsWith("moved:", StringComparison.Ordinal) && Math.Abs(Table.Wrong[n][0][0] - Table.Right[0]) < 1e-6
            )
            .First()
            .Id;
        var end = there["moved:".Length..there.IndexOf('>', StringComparison.Ordinal)];
        ImmutableArray<SeenEnd> seen = [new(end, there[(there.IndexOf('>', StringComparison.Ordinal) + 1)..])];
        var nothing = new RewireWeights(Table, read, new double[Table.Mistakes.Length]).All();
        var eye = new RewireWeights(Table, read, [.. Table.Mistakes.Select(m => SeenEnd.Nats(seen, m, Sheet))]).All();
        double Odds(List<(int[] Mistakes, double Probability)> all, string id) =>
            all.Single(h => h.Mistakes is [var m] && Table.Mistakes[m].Id == id).Probability
            / all.Single(h => h.Mistakes.Length == 0).Probability;
        Assert.Equal(50, Odds(eye, there) / Odds(nothing, there), 6);
        Assert.Equal(1, Odds(eye, "cold:w-17") / Odds(nothing, "cold:w-17"), 6);
    }

    [Fact]
    public void While_an_end_seen_elsewhere_is_not_answered_for_the_right_readings_prove_nothing()
    {
        var sound = Read(Sheet, 0, isNominal: true);
        var result = RewireCheck.Run(Table, Plan, SoundWiring, sound, [new("w-5.to", Sheet.Elements.Single(e => e.Id == "w-17").To)]);
        Assert.NotEqual(RewireVerdict.NoneLeft, result.Verdict);
        Assert.False(result.WaitsForTheEye);
    }

    /// <summary>Far from its home no listed mistake puts the end: one is added, and weighed.</summary>
    [Fact]
    public void An_end_seen_where_no_listed_mistake_puts_it_is_a_mistake_of_its_own()
    {
        var far = new SeenEnd("main.from", Sheet.Elements.Single(e => e.Id == "w-17").To);
        Assert.DoesNotContain(MistakeList.Of(Sheet), m => m.Id.StartsWith("moved:main.from", StringComparison.Ordinal));
        var result = RewireCheck.Run(Sheet, Nothing, null, [far], cancellation: TestContext.Current.CancellationToken);
        Assert.Single(result.Mistakes, m => m.Id == $"moved:main.from>{far.Terminal}");
    }

    /// <summary>A breaker may be sound at eight milliohms; led around it is not.</summary>
    [Fact]
    public void A_breaker_of_few_milliohms_is_no_danger_until_it_is_bypassed()
    {
        var breaker = Sheet.Elements.OfType<Resistive>().Single(e => e.Id == "breaker");
        var sheet = Sheet with { Elements = Sheet.Elements.Replace(breaker, breaker with { Ohms = 0.008 }) };
        Assert.False(new Wiring(sheet).IsDangerous(sheet));
        Assert.True(
            new Wiring(sheet).IsDangerous(
                sheet with
                {
                    Elements = sheet.Elements.Replace(breaker with { Ohms = 0.008 }, breaker with { Ohms = 0.001 }),
                }
            )
        );
    }

    [Fact]
    public void Exchanging_two_ends_on_one_terminal_is_no_mistake()
    {
        var ids = MistakeList.Of(Sheet).Select(m => m.Id).ToList();
        Assert.Equal(ids.Distinct(), ids);
        Assert.Equal(10, MistakeList.Of(Sheet).Where(m => m.Id.StartsWith("swap:", StringComparison.Ordinal)).Sum(m => m.Percent), 6);
        Assert.Contains("bypassed:breaker", ids);
        Assert.DoesNotContain("reversed:main", ids);
    }
}
