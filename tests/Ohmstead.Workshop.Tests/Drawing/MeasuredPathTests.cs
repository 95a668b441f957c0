using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Drawing;

namespace Ohmstead.Workshop.Tests.Drawing;

public sealed class MeasuredPathTests
{
    private static readonly TypeSheet Twin = DrawnSheets.Sheet("demo/twin-175.sheet.json");

    private static string[] Ids(MeasuredPath? path) => [.. path!.Parts.Select(p => p.Id)];

    [Fact]
    public void From_post_to_post_it_goes_through_roller_breaker_and_contacts_in_their_order() =>
        Assert.Equal(
            ["w-1", "rotary-1-a", "run-1", "breaker-1", "w-arm-1", "roller-1", "main", "joint-main", "w-0"],
            Ids(Between("post-1", "post-0", With("direction-1", "a")))
        );

    [Fact]
    public void It_follows_the_controls()
    {
        var blown = Ids(Between("post-1", "post-0", With("direction-1", "a", "whistle", "1-step-1")));
        Assert.Contains("kick-1", blown);
        Assert.Contains("boost", blown);
        Assert.DoesNotContain("run-1", blown);
    }

    [Fact]
    public void Of_two_ways_it_takes_the_one_of_fewer_ohms_and_names_the_other()
    {
        // The turns from the 14 V tap to the end have some tenths of an ohm, the pilot lamp beside them some sixty.
        var path = Between("post-14", "post-0", With())!;
        Assert.Contains("main", Ids(path));
        Assert.DoesNotContain("pilot", Ids(path));
        Assert.Contains("pilot", path.Also);
        Assert.DoesNotContain("breaker-1", path.Also);
        Assert.DoesNotContain("w-8", path.Also);
    }

    [Fact]
    public void An_open_contact_or_an_insulation_is_said_to_be_one()
    {
        var path = Between("blade-1", "iron", With())!;
        Assert.True(path.Parts.Single(p => p.Kind == ElementKind.Insulation).IsOpen);
        var closed = With("direction-1", "a");
        var step = Between("hub-1", "boost-start", closed)!;
        Assert.True(Assert.Single(step.Parts).IsOpen);
    }

    [Fact]
    public void What_is_taken_out_is_no_way()
    {
        var out14 = With() with { Lifted = ["w-14"] };
        Assert.Null(Between("post-14", "post-0", out14));
        Assert.NotNull(Between("post-14", "post-0", With()));
    }

    [Fact]
    public void Clips_join()
    {
        var clipped = With() with
        {
            Joined =
            [
                ["post-8", "post-14"],
            ],
        };
        var path = Between("post-8", "post-14", clipped)!;
        Assert.Equal<(ElementKind?, string)>((null, ""), (Assert.Single(path.Parts).Kind, path.Parts[0].Id));
    }

    [Theory]
    [MemberData(nameof(DrawnSheets.Each), MemberType = typeof(DrawnSheets))]
    public void Every_path_of_every_sheet_hangs_together_from_lead_to_lead(string file)
    {
        var sheet = DrawnSheets.Sheet(file);
        foreach (var reading in sheet.Readings)
        {
            if (MeasuredPath.Of(sheet, reading) is not { } path)
                continue;
            Assert.Equal(path.First, path.Parts[0].From);
            Assert.Equal(path.Second, path.Parts[^1].To);
            for (var n = 1; n < path.Parts.Length; n++)
                Assert.Equal(path.Parts[n - 1].To, path.Parts[n].From);
            Assert.Equal(path.Parts.Length, path.Parts.Distinct().Count());
            Assert.Empty(path.Also.Intersect(path.Parts.Select(p => p.Id)));
        }
    }

    private static MeasuredPath? Between(string first, string second, ReadingState state) =>
        MeasuredPath.Between(Twin, state, first, second);

    /// <summary>At rest but for these selectors.</summary>
    private static ReadingState With(params string[] set) =>
        new(null, set.Chunk(2).Aggregate(Overlay.None.Controls, (c, s) => c.SetItem(s[0], new(0, s[1]))), [], [], [], 20);
}
