using System.Text.RegularExpressions;
using Ohmstead.App.Papers;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Job;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Papers;
using Ohmstead.Workshop.Shops;

namespace Ohmstead.App.Tests.Papers;

/// <summary>What the owner runs, on the papers; and the volts behind it, from the unit's own readings.</summary>
public class LayoutPaperTests
{
    private static readonly LayoutStated Layout = new([
        new("post-0", "post-1", [new("motor", 2), new("lamp", 4)], new(18, 20)),
        new("post-0", "post-14", [new("lamp", 9)], null),
    ]);

    private static JudgedUnit Matter(string paper, params Fact[] more) =>
        PaperUnits.Matter("twin-175", PaperUnits.Shop with { Paper = paper }, PaperUnits.Checked([.. PaperUnits.Repaired(), .. more]));

    [Theory]
    [InlineData(Shop.Letter)]
    [InlineData(Shop.A4)]
    public void The_owners_page_has_a_bar_and_a_fuse_for_each_post_on_one_page(string paper)
    {
        var matter = Matter(paper, Layout);
        var page = PaperFiles.OnePage(PaperTable.All.Single(p => p.Id == OwnerPage.Id), matter);
        var bars = Assert.Single(page.Blocks.OfType<Bars>());
        // 2 · 1.25 + 4 · 0.2 A of 6.3 A; 9 · 0.2 A of 7.8 A by its winding, but the whole unit carries 7.2. Fuses of at least 1.2 times as much.
        Assert.Contains(bars.Items, b => b is { Value: "3.3 of 6.3 A", Beside: "fuse 4 A" });
        Assert.Contains(bars.Items, b => b is { Value: "1.8 of 7.2 A", Beside: "fuse 3 A" });
        Assert.Contains(bars.Items, b => b is { Share: 0, Beside: "" });
        Assert.InRange(bars.Items.Single(b => b.Beside == "fuse 4 A").Share, 3.3 / 6.31, 3.3 / 6.29);
        var pdf = Pdf.Of(page, paper);
        Pdf.Keep($"owner-layout-{paper}.pdf", pdf);
        Assert.Matches(@"Pages:\s+1\n", Pdf.About(pdf));
        Assert.All(Pdf.Sizes(pdf), points => Assert.True(points >= 14));
        var text = Regex.Replace(Pdf.Text(pdf), @"\s+", " ");
        Assert.Contains("Black: what you said you run. Put that fuse in the post’s lead, no larger.", text, StringComparison.Ordinal);
        Assert.DoesNotContain("fuse outside", text, StringComparison.Ordinal);
    }

    [Fact]
    public void The_service_record_has_what_hangs_where_with_wire_and_volts()
    {
        var text = ServiceRecord.Make(Matter(Shop.Letter, Layout)).Text;
        Assert.Contains("Yours: 2 motors, 4 lamps. Put a 4 A fuse in its lead. No larger.", text, StringComparison.Ordinal);
        Assert.Contains("| 2 motors, 4 lamps | 3.3 of 6.3 A | fuse 4 A", text, StringComparison.Ordinal);
    }

    /// <summary>The lower posts' own winding carries 7.8 A, the whole unit 7.2 A: one figure on every paper, whether the owner said what he runs or not.</summary>
    [Fact]
    public void A_pair_of_posts_has_the_same_most_amps_on_every_paper()
    {
        foreach (var matter in new[] { Matter(Shop.Letter), Matter(Shop.Letter, Layout) })
        {
            var record = ServiceRecord.Make(matter).Text;
            Assert.DoesNotContain("7.8 A", record, StringComparison.Ordinal);
            Assert.Contains("7.2 A, limited by the whole unit.", record, StringComparison.Ordinal);
            Assert.DoesNotContain("7.8 A", OwnerPage.Make(matter, 5).Text, StringComparison.Ordinal);
            Assert.Contains("7.2 A", OwnerPage.Make(matter, 5).Text, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Nothing_is_said_of_a_layout_to_the_owner_of_a_unit_that_is_not_to_be_plugged_in()
    {
        var matter = PaperUnits.Matter("twin-175", new TakenIn("A-1", "twin-175", "", "dead"), Layout);
        Assert.False(matter.MayBePluggedIn);
        Assert.NotNull(matter.Layout);
        Assert.Empty(OwnerPage.Make(matter, 5).Blocks.OfType<Bars>());
        Assert.DoesNotContain("Yours", ServiceRecord.Make(matter).Text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_layout_without_anything_on_it_changes_no_paper() =>
        Assert.Null(Matter(Shop.Letter, Layout with { Posts = [new("post-0", "post-1", [], new(18, 20))] }).Layout);

    /// <summary>
    /// Two readings at one line voltage s: 19.20 V with nothing on it, 17.60 V with 4 Ω, which are 4.4 A. So 1.6 V / 4.4 A behind the
    /// post, and 19.20 · S/s with nothing on it at the type's own line voltage S.
    /// </summary>
    [Fact]
    public void Volts_and_ohms_of_a_post_come_from_the_units_own_readings()
    {
        var bench = BenchState.AsSheet with { SupplyVolts = 122 };
        Fact Read(string id, double volts) => new ReadingEntered(id, Shown.Number(volts), bench);
        PostSupply Of(params Fact[] facts) =>
            PostSupply
                .All(PaperUnits.Matter("twin-175", [new TakenIn("A-1", "twin-175", "", ""), .. facts]))
                .Single(s => s.Outlet.Spec is { From: "post-0", To: "post-1", Quantity: Quantity.AcVolts });
        var rated = PaperUnits.Sheet("twin-175").SupplyVolts;
        var both = Of(Read("full-1", 19.20), Read("load-1", 17.60));
        Assert.True(both.IsRead);
        Assert.Equal(19.20 * rated / 122, both.Volts, 6);
        Assert.Equal(1.6 / 4.4, both.SourceOhms, 6);
        var one = Of(Read("full-1", 19.20));
        Assert.True(one.IsRead);
        Assert.Equal(19.20 * rated / 122, one.Volts, 6);
        var none = Of();
        Assert.False(none.IsRead);
        Assert.Equal(none.Outlet.Limit.IdleVolts, none.Volts);
        Assert.Equal((none.Outlet.Limit.IdleVolts - none.Outlet.Limit.LoadedVolts) / none.Outlet.Limit.Amps, one.SourceOhms, 9);
        // Another position of the direction switch is another circuit.
        Assert.Equal(one.SourceOhms, Of(Read("full-1", 19.20), Read("load-1-b", 15)).SourceOhms);
    }
}
