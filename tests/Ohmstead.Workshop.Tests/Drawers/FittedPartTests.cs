using Ohmstead.Workshop.Drawers;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Units;

namespace Ohmstead.Workshop.Tests.Drawers;

/// <summary>Where parts of the drawer went and what became of them there, by the journal of the unit.</summary>
public class FittedPartTests
{
    private static readonly FromDrawer From = new(new Guid(7, 0, 0, new byte[8]), null, 1, "Roller", "Acme, lot 41");
    private static readonly PartChanged Fitting = new("roller", PartChange.Renewed, null, "") { From = From };

    private static BenchUnit Unit(params Fact[] facts) =>
        UnitHistory.Fold([
            .. facts
                .Prepend(new CardChanged("F-1", "", "An owner", "by phone", "", ""))
                .Prepend(new TakenIn("F-1", "", "An owner", ""))
                .Select((f, n) => new Entry(new Guid(n + 1, 0, 0, new byte[8]), default, n + 1, DrawerDraft.Noon.AddDays(n), "bench", f)),
        ]);

    private static FindingJudged Worn(Judgement judgement) => new("roller", "worn", judgement, "");

    [Fact]
    public void A_part_is_told_with_its_unit_its_owner_and_its_batch()
    {
        var part = Assert.Single(FittedPart.Of(Unit(Fitting, new PartChanged("cord", PartChange.Renewed, null, "")), null));
        Assert.Equal(("F-1", "An owner", "by phone", From), (part.Tag, part.Owner, part.Contact, part.From));
        Assert.Equal((DrawerDraft.Noon.AddDays(2), null, false), (part.At, part.EndedAt, part.HasFailed));
        Assert.Equal([part], FittedPart.Read(FittedPart.Write([part])));
        Assert.Empty(FittedPart.Read(FittedPart.Write([])));
    }

    /// <summary>The fault that the part was fitted for was found before it; it is no fault of the new part.</summary>
    [Fact]
    public void It_failed_where_a_fault_was_found_on_it_after_it_went_in_and_not_for_one_before()
    {
        Assert.False(FittedPart.Of(Unit(Worn(Judgement.Confirmed), Fitting), null).Single().HasFailed);
        var failed = FittedPart.Of(Unit(Fitting, new Noted("back"), Worn(Judgement.Confirmed)), null).Single();
        Assert.Equal((true, DrawerDraft.Noon.AddDays(4)), (failed.HasFailed, failed.EndedAt!.Value));
        Assert.False(FittedPart.Of(Unit(Fitting, Worn(Judgement.Confirmed), Worn(Judgement.Dismissed)), null).Single().HasFailed);
        Assert.False(FittedPart.Of(Unit(Fitting, new FindingJudged("disc", "worn", Judgement.Confirmed, "")), null).Single().HasFailed);
    }

    [Fact]
    public void One_that_came_out_again_whole_ended_there_and_did_not_fail()
    {
        var parts = FittedPart.Of(Unit(Fitting, new PartChanged("roller", PartChange.Serviced, null, ""), Fitting), null);
        Assert.Equal((false, DrawerDraft.Noon.AddDays(4)), (parts[0].HasFailed, parts[0].EndedAt!.Value));
        Assert.Null(parts[1].EndedAt);
        var failedLater = FittedPart.Of(Unit(Fitting, Fitting, Worn(Judgement.Confirmed)), null);
        Assert.Equal([false, true], failedLater.Select(p => p.HasFailed));
    }

    [Fact]
    public void All_that_went_in_with_one_repair_is_out_of_the_drawer_each_with_its_count()
    {
        var pin = new FromDrawer(new Guid(8, 0, 0, new byte[8]), null, 2, "Roller pin", "");
        var parts = FittedPart.Of(Unit(Fitting with { Also = [pin] }, new Noted("back"), Worn(Judgement.Confirmed)), null);
        Assert.Equal([From, pin], parts.Select(p => p.From));
        Assert.All(parts, p => Assert.True(p.HasFailed));
        Assert.Equal(
            ": replaced, same part, from the drawer: Roller, Acme, lot 41; 2 × Roller pin",
            FactWords.Of(Fitting with { Also = [pin] }, null) is var words
                ? words[words.IndexOf(": replaced", StringComparison.Ordinal)..]
                : ""
        );
        Assert.NotEqual(Fitting, Fitting with { Also = [pin] });
        Assert.Equal(Fitting with { Also = [pin] }, FactText.Read(FactText.Write(Fitting with { Also = [pin] })));
    }

    [Fact]
    public void A_unit_to_practice_on_takes_nothing_out_of_the_drawer() =>
        Assert.Empty(FittedPart.Of(Unit(new PracticeBegun(7), Fitting), null));

    [Fact]
    public void A_repair_undone_is_no_part_fitted() =>
        Assert.Empty(FittedPart.Of(Unit(Fitting, new Corrected(new Guid(3, 0, 0, new byte[8]), null)), null));

    [Fact]
    public void A_kit_knows_its_pieces_and_the_drawer_whether_they_are_there()
    {
        var draft = new DrawerDraft();
        var (rollers, cords) = (draft.Bin("A1", "Roller", 2), draft.Bin("A2", "Cord", 1));
        var kit = new DrawerKit(draft.Id(), "Job", [new(rollers, 2), new(cords, 1), new(rollers, 1)], 1);
        Assert.Equal((4, 3, 1, 0), (kit.Pieces, kit.From(rollers), kit.From(cords), kit.From(Guid.Empty)));
        Assert.Equal((true, false), (draft.Drawer.Has(new(rollers, 2)), draft.Drawer.Has(new(rollers, 3))));
        Assert.False(draft.Drawer.Has(new(Guid.Empty, 0)));
    }
}
