using Ohmstead.Electrical.Reckoning.Proving;
using Ohmstead.Workshop.Job;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Tests.Readings;
using Ohmstead.Workshop.Units;

namespace Ohmstead.Workshop.Tests.Job;

/// <summary>A unit beside the shop's own sound ones of its type, and beside itself of before.</summary>
public class OwnHistoryTests
{
    private static readonly DateTimeOffset Noon = new(2026, 1, 5, 12, 0, 0, TimeSpan.Zero);

    private static BenchUnit Unit(int number, params Fact[] facts)
    {
        var id = new Guid(number, 0, 0, new byte[8]);
        Fact[] all = [new TakenIn(FormattableString.Invariant($"F-{number}"), "twin-160", "", ""), .. facts];
        return UnitHistory.Fold([
            .. all.Select((f, n) => new Entry(new Guid(number, 1, (short)n, new byte[8]), id, n + 1, Noon, "bench", f)),
        ]);
    }

    private static ReadingEntered Blades(double ohms) => new("blades", Shown.Number(ohms), BenchState.AsSheet);

    private static BenchUnit Sound(int number, double ohms) =>
        Unit(number, Blades(99), Blades(ohms), new Returned(ReturnManner.Working, "A. B."));

    private static OwnHistory Of(double ohms, params BenchUnit[] others) =>
        OwnHistory.Of(Unit(1, Blades(ohms)), OnTheBench.Sheet, OnTheBench.Shop, others)!;

    [Fact]
    public void The_last_reading_of_each_sound_unit_is_its_history_and_the_answer_is_own_bands()
    {
        BenchUnit[] others = [Sound(2, 4.00), Sound(3, 4.02), Sound(4, 3.98), Sound(5, 4.01), Sound(6, 3.99)];
        var line = Assert.Single(Of(4.00, others).Lines);
        Assert.Equal((5, "usual"), (line.Band.Count, line.Words));
        // Fed by the command line's own question, the band is the same.
        var asked = new OwnReading("blades", [4.00, 4.02, 3.98, 4.01, 3.99], 3, 5, 4.00);
        var band = new OwnBands([asked]).Answer().Readings[0];
        Assert.InRange(line.Band.Centre, 3.9, 4.1);
        Assert.InRange(band.Centre, 3.9, 4.1);
        Assert.InRange(line.Value, line.Band.Low, line.Band.High);
        var far = Assert.Single(Of(9, others).Lines);
        Assert.True(far.IsUnusual);
        Assert.StartsWith("unusual: ", far.Words, StringComparison.Ordinal);
        Assert.EndsWith("of 100 sound units read as far off", far.Words, StringComparison.Ordinal);
    }

    [Fact]
    public void Below_three_sound_units_there_are_too_few_of_this_type()
    {
        var two = Of(4.0, Sound(2, 4), Sound(3, 4));
        Assert.Equal(2, two.SoundUnits);
        Assert.Equal("too few of this type: 2 of 3", Assert.Single(two.Lines).Words);
        Assert.False(two.Lines[0].IsUnusual);
        Assert.True(Assert.Single(Of(4.0, Sound(2, 4), Sound(3, 4), Sound(4, 4)).Lines).IsJudged);
    }

    [Fact]
    public void Only_units_returned_as_working_count_and_neither_practice_nor_the_unit_itself()
    {
        BenchUnit[] others =
        [
            Unit(1, Blades(4), new Returned(ReturnManner.Working, "A. B.")),
            Unit(2, Blades(4)),
            Unit(3, Blades(4), new Returned(ReturnManner.NotToBePluggedIn, "A. B.")),
            Unit(4, new PracticeBegun(7), Blades(4), new Returned(ReturnManner.Working, "A. B.")),
            Unit(5, Blades(4), new Returned(ReturnManner.Working, "A. B."), new StageClosed(Stage.Papers, false, "")),
        ];
        Assert.Equal(0, Of(4.0, others).SoundUnits);
    }

    [Fact]
    public void What_shows_no_number_is_not_compared()
    {
        var unit = Unit(1, new ReadingEntered("blades", Shown.OverRange, BenchState.AsSheet));
        Assert.Empty(OwnHistory.Of(unit, OnTheBench.Sheet, OnTheBench.Shop, [])!.Lines);
    }

    private static UnitCard Card(int number, string tag, string owner, string sheet = "twin-160", bool isBack = true) =>
        new(
            new Guid(number, 0, 0, new byte[8]),
            tag,
            "",
            sheet,
            owner,
            "",
            "",
            Noon.AddDays(number),
            new(NextAction.Nothing, "", 0, ""),
            isBack
        );

    [Fact]
    public void A_come_back_is_known_by_its_tag_then_by_its_owner_and_its_type()
    {
        UnitCard[] cards =
        [
            Card(1, "F-7", "R. Example"),
            Card(2, "F-8", "r. example "),
            Card(3, "F-9", "R. Example", "solo"),
            Card(4, "f-40", "someone"),
            Card(5, "F-41", "R. Example", isBack: false),
            Card(6, "F-42", ""),
        ];
        string[] Tags(string tag, string owner, string sheet) => [.. ComeBack.Among(cards, tag, owner, sheet).Select(c => c.Tag)];
        Assert.Equal(["f-40", "F-8", "F-7"], Tags("F-40", "R. Example", "twin-160"));
        Assert.Equal(["F-9", "F-8", "F-7"], Tags("F-99", "R. Example", ""));
        Assert.Empty(Tags("F-99", "", "twin-160"));
        Assert.Empty(ComeBack.Among(cards, "F-7", "", "twin-160", cards[0].Id));
    }

    [Fact]
    public void As_left_then_is_the_last_of_then_and_as_found_now_the_first_of_now()
    {
        var then = Unit(2, Blades(5), Blades(4), new Returned(ReturnManner.Working, "A. B."));
        var now = Unit(3, Blades(7), Blades(4.5));
        var line = Assert.Single(ComeBack.Compare(then, now, OnTheBench.Sheet));
        Assert.Equal(("4 Ω", "7 Ω"), (line.Then, line.Now));
        Assert.Equal("not taken", Assert.Single(ComeBack.Compare(then, Unit(4), OnTheBench.Sheet)).Now);
    }
}
