using Ohmstead.Storage.Rows;
using Ohmstead.Workshop.Job;

namespace Ohmstead.Storage.Tests.Rows;

public class UnitRowTests
{
    private static readonly UnitCard Card = new(
        Guid.Parse("6f1a2b3c-0000-4000-8000-000000000001"),
        "T 7",
        "A 75 W type",
        "sheet-75",
        "R. Moss",
        "abc",
        "Taken in",
        new DateTimeOffset(2026, 3, 4, 12, 0, 0, TimeSpan.Zero),
        new NextThing(NextAction.Repair, "Repair: worn roller", 40, "roller-1"),
        true
    );

    private static UnitRow Filled()
    {
        var row = new UnitRow
        {
            Id = Card.Id,
            LastNumber = 12,
            Doubts = "{}",
            Fitted = "[]",
            Contradictions = 2,
            Search = "t 7",
        };
        row.Take(Card);
        return row;
    }

    [Fact]
    public void A_card_comes_back_from_its_row_with_every_field() => Assert.Equal(Card, Filled().Card);

    [Fact]
    public void A_light_row_has_every_field_but_the_words_that_it_is_found_by_and_what_is_doubted()
    {
        var (full, light) = (Filled(), UnitRow.Light.Compile()(Filled()));
        foreach (var field in typeof(UnitRow).GetProperties().Where(f => f.CanWrite))
        {
            // A field that is empty in the full row could be forgotten unseen.
            Assert.NotEqual(field.GetValue(new UnitRow()), field.GetValue(full));
            Assert.Equal(
                field.Name is nameof(UnitRow.Doubts) or nameof(UnitRow.Fitted) or nameof(UnitRow.Search) or nameof(UnitRow.KindSearch)
                    ? ""
                    : field.GetValue(full),
                field.GetValue(light)
            );
        }
    }
}
