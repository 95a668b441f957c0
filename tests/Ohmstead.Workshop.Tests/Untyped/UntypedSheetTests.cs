using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Job;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Readings;
using Ohmstead.Workshop.Shops;
using Ohmstead.Workshop.Untyped;
using Ohmstead.Workshop.Words;

namespace Ohmstead.Workshop.Tests.Untyped;

public class UntypedSheetTests
{
    private static readonly Fact In = new TakenIn("1", "", "", "");
    private static readonly Fact[] Named =
    [
        In,
        new PlateRead(120, 180),
        new TerminalNamed("untyped-post-1", "A", true),
        new TerminalNamed("untyped-post-2", "U", true),
        new TerminalNamed("untyped-lug-1", "brass lug", false),
    ];

    [Fact]
    public void A_unit_of_which_nothing_is_known_has_a_sound_sheet_with_cold_readings_alone()
    {
        var sheet = UntypedSheet.Of(OneUnit.Of(In));
        Assert.Equal(["untyped-blades", "untyped-blades-case", "untyped-insulation-case"], sheet.Readings.Select(r => r.Id));
        Assert.All(sheet.Readings, r => Assert.Null(r.State.Source));
    }

    [Fact]
    public void Every_post_that_is_named_is_read_against_the_blades_and_all_of_them_at_500_V()
    {
        var sheet = UntypedSheet.Of(OneUnit.Of(Named));
        Assert.Equal(
            ["Plug blade to post A", "Plug blade to post U"],
            sheet
                .Readings.Where(r => r.To.StartsWith("untyped-post", StringComparison.Ordinal) && r.Quantity == Quantity.Ohms)
                .Select(r => r.Title)
        );
        var posts = sheet.FindReading("untyped-insulation-posts")!;
        Assert.Equal(Quantity.InsulationOhms, posts.Quantity);
        Assert.Contains(posts.State.Joined, g => g.SequenceEqual(["untyped-post-1", "untyped-post-2"]));
        Assert.Equal(2e6, posts.Limits!.Min);
    }

    /// <summary>It is made without a file, so no reader looked at it: what must hold between the parts of a sheet holds all the same.</summary>
    [Fact]
    public void It_is_a_sound_sheet_with_names_for_all_that_is_in_it()
    {
        var unit = OneUnit.Of([
            .. Named,
            new TakenOff("untyped-off-1", 3, 4, "") { Title = "cover" },
            new TakenOff("untyped-off-2", 0, 1, ""),
            new JointSeen(
                WiringState.Found,
                "untyped-lug-1",
                [new("untyped-wire-1.from", "red"), new("untyped-wire-2.from", "")],
                "",
                0,
                0
            ),
            new JointSeen(WiringState.Found, "untyped-post-1", [new("untyped-wire-1.to", "red")], "", 0, 0),
        ]);
        var sheet = UntypedSheet.Of(unit);
        Assert.Empty(UnitSheet.Of(sheet, [], []).Problems);
        Assert.Equal(("untyped-lug-1", "untyped-post-1"), (sheet.Elements[^2].From, sheet.Elements[^2].To));
        Assert.Equal("a place not seen yet", sheet.Titles[sheet.Elements[^1].To]);
        Assert.All(sheet.Elements.SelectMany(e => new[] { e.Id, e.From, e.To }), id => Assert.True(sheet.Titles.ContainsKey(id), id));
        Assert.Equal("insulation between mains and post U", sheet.Titles["untyped-path-untyped-post-2"]);
    }

    [Fact]
    public void Units_of_which_the_same_is_known_have_an_equal_basis_and_a_word_more_makes_another()
    {
        Assert.Equal(UntypedBasis.Of(OneUnit.Of(Named)), UntypedBasis.Of(OneUnit.Of(Named)));
        Fact[] more =
        [
            new PlateRead(120, 175),
            new TerminalNamed("untyped-post-2", "V", true),
            new TakenOff("untyped-off-1", 3, 4, "") { Title = "cover" },
            new JointSeen(WiringState.Found, "untyped-lug-1", [new("untyped-wire-1.from", "red")], "", 0, 0),
        ];
        Assert.All(more, f => Assert.NotEqual(UntypedBasis.Of(OneUnit.Of(Named)), UntypedBasis.Of(OneUnit.Of([.. Named, f]))));
    }

    /// <summary>The band is the plate's own, 1.6 to 8 Ω for 120 V and 180 W, with the cord's two times 0.05 Ω in it.</summary>
    [Fact]
    public void The_band_between_the_blades_is_the_plates()
    {
        var model = new UnitModel(UntypedSheet.Of(OneUnit.Of(Named)));
        var spec = model.Sheet.FindReading(UntypedIds.Blades)!;
        var band = Expectation.Of(model, spec, spec.State, Meter.Usual);
        // The leads of the usual meter read nothing of their own; its error is under 0.1 Ω here.
        Assert.InRange(band.Low, 1.5, 1.9);
        Assert.InRange(band.High, 7.6, 8.6);
        Assert.Equal(Verdict.Normal, Meaning.Of(Shown.Number(3.1), spec, band, Meter.Usual.For(Quantity.Ohms)).Verdict);
        Assert.NotEqual(Verdict.Normal, Meaning.Of(Shown.Number(31), spec, band, Meter.Usual.For(Quantity.Ohms)).Verdict);
        Assert.NotEqual(Verdict.Normal, Meaning.Of(Shown.OverRange, spec, band, Meter.Usual.For(Quantity.Ohms)).Verdict);
    }

    [Fact]
    public void What_came_off_is_a_step_and_goes_back_last_first()
    {
        var unit = OneUnit.Of([
            .. Named,
            new TakenOff("untyped-off-1", 3, 4, "") { Title = "cover" },
            new TakenOff("untyped-off-2", 0, 1, "") { Title = "left knob" },
        ]);
        var state = Ohmstead.Workshop.TakeApart.ApartState.Of(unit, UntypedSheet.Of(unit));
        Assert.Equal(["cover", "left knob"], state.Off.Select(o => o.Step.Title));
        Assert.Equal("left knob", state.NextBack()!.Step.Title);
        Assert.Equal("Off: cover, cup 3", FactWords.Of(unit.All<TakenOff>().First().Fact, null));
    }

    [Fact]
    public void The_card_leads_on_from_look_over_to_readings_without_a_type()
    {
        var looked = new StageClosed(Stage.LookOver, true, "");
        var unit = OneUnit.Of([.. Named, looked]);
        var card = CardOf.Make(unit, UntypedSheet.Of(unit), Shop.Usual);
        Assert.Equal(("180 W unit, type not known yet", NextAction.TakeReading), (card.Kind, card.Next.Action));
        Assert.Equal(UntypedIds.Blades, card.Next.About);
    }

    [Fact]
    public void A_post_named_again_keeps_its_readings_and_an_empty_list_names_none()
    {
        var again = OneUnit.Of([.. Named, new TerminalNamed("untyped-post-1", "B", true)]);
        Assert.Equal(["B", "U"], UntypedSheet.Posts(again).Select(p => p.Name));
        Assert.Equal(["A", "B"], NamedPosts.Read(" A, B A ").Select(p => p.Name));
        Assert.Empty(NamedPosts.Read("  "));
        Assert.Equal("untyped-post-3", NamedPosts.Add(again, "C", isPost: true).Named!.Id);
        Assert.Contains("named already", NamedPosts.Add(again, " U ", isPost: true).Problem, StringComparison.Ordinal);
    }
}
