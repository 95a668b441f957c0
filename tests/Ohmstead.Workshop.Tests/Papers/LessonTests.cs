using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Papers;
using Ohmstead.Workshop.Units;

namespace Ohmstead.Workshop.Tests.Papers;

/// <summary>Minutes of a lesson: from the entry before, whatever became of that entry.</summary>
public class LessonTests
{
    private static readonly Guid Unit = new(1, 0, 0, new byte[8]);
    private static readonly DateTimeOffset Noon = new(2026, 1, 5, 12, 0, 0, TimeSpan.Zero);

    private static Guid Id(int number) => new(number, 1, 0, new byte[8]);

    private static Lesson Of(params (double Minutes, Fact Fact)[] facts) =>
        Lesson.Of(
            UnitHistory.Fold([.. facts.Select((f, n) => new Entry(Id(n + 1), Unit, n + 1, Noon.AddMinutes(f.Minutes), "bench", f.Fact))])
        );

    private static TakenOff Off(string step) => new(step, 1, 1, "");

    private static readonly (double, Fact) In = (0, new TakenIn("F-1", "twin-160", "an owner", "hums"));

    /// <remarks>Entries at 0, 5, 20, 24, 40: from none to the next is it more than 20 minutes, though the note at 20 and its undoing no longer count.</remarks>
    [Fact]
    public void An_entry_that_was_undone_is_no_pause_and_no_step()
    {
        var lesson = Of(In, (5, Off("cap")), (20, new Noted("wrong unit")), (24, new Corrected(Id(3), null)), (40, Off("cover")));
        Assert.Equal([("cap", 5.0), ("cover", 16.0)], lesson.Steps.Select(s => (s.Step, s.Minutes ?? -1)));
        Assert.Equal((21, 0), (lesson.Minutes, lesson.Pauses));
        var undone = Of(In, (5, Off("cap")), (10, Off("screws")), (12, new Corrected(Id(3), null)), (15, Off("cover")));
        Assert.Equal([("cap", 5.0), ("cover", 3.0)], undone.Steps.Select(s => (s.Step, s.Minutes ?? -1)));
    }

    [Fact]
    public void A_corrected_step_keeps_its_place_and_a_photo_is_no_entry()
    {
        var lesson = Of(
            In,
            (5, Off("cap")),
            (9, new PhotoAdded("ab", "", "cover")),
            (15, Off("screws")),
            (50, new Corrected(Id(4), Off("cover"))),
            (56, new PutBack("cover", 1, 0, "", ""))
        );
        Assert.Equal(
            [("cap", 5.0, 0), ("cover", 10.0, 1), ("cover", 6.0, 0)],
            lesson.Steps.Select(s => (s.Step, s.Minutes ?? -1, s.Photos.Length))
        );
        Assert.Equal(1, lesson.Pauses);
    }

    [Fact]
    public void A_step_that_goes_back_says_in_which_cup_its_pieces_lie()
    {
        var lesson = Of(
            In,
            (5, new TakenOff("cap", 3, 1, "")),
            (9, new TakenOff("cover", 7, 4, "")),
            (12, new PutBack("cover", 4, 0, "", "")),
            (14, new PutBack("cap", 1, 0, "", ""))
        );
        Assert.Equal([3, 7, 7, 3], lesson.Steps.Select(s => s.Cup));
    }
}
