using Ohmstead.Workshop.Drawers;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Tests.Readings;

namespace Ohmstead.Workshop.Tests.Drawers;

/// <summary>What goes into a unit with a repair: several parts, several of each, no more than there are.</summary>
public class DrawerChoiceTests
{
    private static readonly PartChanged Repair = new("roller-left", PartChange.Renewed, null, "");

    private static DrawerChoice Of(DrawerDraft draft, Guid unit) => DrawerChoice.For(draft.Drawer, unit, "roller-left", OnTheBench.Sheet);

    [Fact]
    public void A_roller_and_two_pins_come_out_of_their_bins_with_one_repair()
    {
        var draft = new DrawerDraft();
        var (roller, pin) = (draft.Bin("C1", "Roller, carbon", 3), draft.Bin("C2", "Roller pin", 5));
        var choice = Of(draft, draft.Id());
        Assert.Empty(choice.Rows);
        Assert.Equal(Repair, choice.On(Repair));
        var fact = choice.Choose(0, 0).Choose(1, 1).With(1, "2").On(Repair);
        Assert.Equal([(roller, 1, "Roller, carbon"), (pin, 2, "Roller pin")], fact.FromTheDrawer.Select(f => (f.Bin, f.Count, f.Name)));
        Assert.Equal((1, 1), (fact.From is null ? 0 : 1, fact.Also.Length));
        // The second is what was the only one once the first is taken away.
        Assert.Equal([pin], choice.Choose(0, 0).Choose(1, 1).Choose(0, -1).On(Repair).FromTheDrawer.Select(f => f.Bin));
    }

    [Fact]
    public void What_lies_beside_the_unit_and_suits_is_chosen_already_and_the_rest_is_not()
    {
        var draft = new DrawerDraft();
        var (roller, pin, lamp) = (
            draft.Bin("C1", "Roller, carbon", 3),
            draft.Bin("C2", "Roller pin", 5),
            draft.Bin("A1", "Pilot lamp 6 V", 5)
        );
        var unit = draft.Id();
        draft.Do(new KitTaken(unit, "F-041", [new(roller, 2), new(pin, 1), new(lamp, 1)]));
        Assert.Equal([(roller, 1), (pin, 1)], Of(draft, unit).On(Repair).FromTheDrawer.Select(f => (f.Bin, f.Count)));
        Assert.Empty(Of(draft, draft.Id()).Rows);
    }

    [Theory]
    [InlineData("4", "Roller, carbon: only 3 by the count. Count the bin first.")]
    [InlineData("0", "Roller, carbon: Must be 1 to 100000.")]
    [InlineData("1.5", "Roller, carbon: Whole pieces only.")]
    [InlineData("3", "")]
    public void More_than_there_are_is_refused_beside_the_count(string count, string problem)
    {
        var draft = new DrawerDraft();
        draft.Bin("C1", "Roller, carbon", 3);
        Assert.Equal(problem, Of(draft, draft.Id()).Choose(0, 0).With(0, count).Problem);
    }
}
