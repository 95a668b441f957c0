using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Repair;
using Ohmstead.Workshop.Tests.Readings;

namespace Ohmstead.Workshop.Tests.Repair;

/// <summary>Which earlier readings still count after a repair, and which are asked for again.</summary>
public class UnmovedReadingsTests
{
    private static OnTheBench Read() =>
        new OnTheBench()
            .ColdGates()
            .Read("ohms-left", 0.6)
            .Read("ohms-right", 0.6)
            .Read("lamp-60", 106)
            .Read("left-load", 14.6)
            .Read("right-load", 17.5);

    private static string[] Current(OnTheBench bench) => [.. bench.Unit.CurrentReadings.Select(r => r.Fact.ReadingId)];

    private static OnTheBench After(string element, PartChange change)
    {
        var bench = Read();
        return bench.Add(
            UnmovedReadings.In([new PartChanged(element, change, null, "")], bench.Unit, OnTheBench.Sheet, OnTheBench.Shop)[0]
        );
    }

    /// <summary>The left roller lies in series with the left post alone: its ohms and its loaded volts move, nothing of the right does.</summary>
    [Fact]
    public void A_new_left_roller_moves_the_left_post_and_leaves_the_right_one_and_the_cold_checks()
    {
        var left = Current(After("roller-left", PartChange.Renewed));
        Assert.DoesNotContain("left-load", left);
        Assert.DoesNotContain("ohms-left", left);
        Assert.Contains("right-load", left);
        Assert.Contains("ohms-right", left);
        Assert.Contains("blades", left);
        Assert.Contains("insulation-posts", left);
        // The roller lies on two turns at a time: its contact closes a loop of one turn, which the series lamp sees.
        Assert.DoesNotContain("lamp-60", left);
    }

    [Fact]
    public void Cleaned_instead_of_replaced_it_is_the_same()
    {
        Assert.Equal(Current(After("roller-left", PartChange.Renewed)), Current(After("roller-left", PartChange.Serviced)));
    }

    /// <summary>The cord carries everything: its ohms are in the blade reading, and an open cord leaves nothing anywhere.</summary>
    [Fact]
    public void A_new_cord_moves_every_reading_fed_by_the_plug_and_every_check()
    {
        var left = Current(After("cord-1", PartChange.Renewed));
        Assert.DoesNotContain("blades", left);
        Assert.DoesNotContain("left-load", left);
        Assert.DoesNotContain("lamp-60", left);
        // Nothing of the cord lies between the posts; but solder beside the mains could reach them, so the checks are taken again.
        Assert.DoesNotContain("insulation-core", left);
        Assert.DoesNotContain("insulation-posts", left);
        Assert.DoesNotContain("blades-posts", left);
        Assert.Contains("ohms-left", left);
    }

    [Fact]
    public void A_change_of_an_older_journal_names_nothing_and_all_is_asked_for_again()
    {
        var bench = Read().Add(FactText.Read("""{"kind":"part","element":"roller-left","change":"renewed","part":null,"words":""}"""));
        Assert.Empty(Current(bench));
    }

    [Fact]
    public void What_it_leaves_is_written_into_the_journal_and_read_back()
    {
        var bench = Read();
        var fact = (PartChanged)
            UnmovedReadings.In(
                [new PartChanged("roller-left", PartChange.Renewed, null, "")],
                bench.Unit,
                OnTheBench.Sheet,
                OnTheBench.Shop
            )[0];
        var back = Assert.IsType<PartChanged>(FactText.Read(FactText.Write(fact)));
        Assert.Contains("right-load", back.Keeps);
        Assert.Equal(fact.Keeps.AsEnumerable(), back.Keeps);
    }

    [Fact]
    public void Of_two_changes_together_a_reading_counts_only_if_neither_moves_it()
    {
        var bench = Read();
        foreach (
            var fact in UnmovedReadings.In(
                [
                    new PartChanged("roller-left", PartChange.Renewed, null, ""),
                    new PartChanged("roller-right", PartChange.Renewed, null, ""),
                ],
                bench.Unit,
                OnTheBench.Sheet,
                OnTheBench.Shop
            )
        )
            bench.Add(fact);
        Assert.DoesNotContain("left-load", Current(bench));
        Assert.DoesNotContain("right-load", Current(bench));
        Assert.Contains("blades", Current(bench));
    }

    [Fact]
    public void A_waiver_stays_where_the_repair_cannot_have_moved_its_check_and_falls_where_it_can()
    {
        OnTheBench Waived(string element)
        {
            var bench = new OnTheBench()
                .Read("blades", 4.2)
                .Add(new ReadingWaived("insulation-core", "no tester", "A. Example", "looked at"));
            return bench.Add(
                UnmovedReadings.In([new PartChanged(element, PartChange.Renewed, null, "")], bench.Unit, OnTheBench.Sheet, OnTheBench.Shop)[
                    0
                ]
            );
        }
        Assert.NotEmpty(Waived("roller-left").Unit.CurrentWaivers);
        Assert.Empty(Waived("cord-1").Unit.CurrentWaivers);
    }
}
