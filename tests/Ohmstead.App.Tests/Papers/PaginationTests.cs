using Ohmstead.App.Papers;

namespace Ohmstead.App.Tests.Papers;

/// <summary>What stands on which page, on pages 100 points high.</summary>
public class PaginationTests
{
    private const double Room = 100;

    private static Fragment Part(double height) => new(height, static (_, _, _) => { });

    private static IEnumerable<double[]> Heights(params Fragment[] fragments) =>
        Pagination.Of(fragments, Room).Select(page => page.Select(f => f.Height).ToArray());

    [Fact]
    public void A_page_is_filled_to_its_last_point_and_no_further() =>
        Assert.Equal(
            [
                [60, 40],
                [1],
            ],
            Heights(Part(60), Part(40), Part(1))
        );

    [Fact]
    public void A_heading_goes_to_the_next_page_with_what_it_heads() =>
        Assert.Equal(
            [
                [60],
                [20, 30],
            ],
            Heights(Part(60), Part(20) with { KeepsWithNext = true }, Part(30))
        );

    [Fact]
    public void What_keeps_together_and_is_higher_than_a_page_is_broken_where_it_must_be() =>
        Assert.Equal(
            [
                [30, 60],
                [70],
            ],
            Heights(Part(30), Part(60) with { KeepsWithNext = true }, Part(70))
        );

    [Fact]
    public void A_space_is_left_out_at_the_head_of_a_page_alone() =>
        Assert.Equal(
            [
                [50, 10, 40],
                [20],
            ],
            Heights(Fragment.Space(5), Part(50), Fragment.Space(10), Part(40), Fragment.Space(8), Part(20))
        );

    [Fact]
    public void The_head_of_a_table_is_set_again_where_a_row_begins_a_page_and_takes_its_room()
    {
        var head = Part(15);
        var row = Part(45) with { RepeatedHeader = head };
        Assert.Equal(
            [
                [15, 45],
                [15, 45],
                [15, 45],
            ],
            Heights(head with { KeepsWithNext = true }, row, row, row)
        );
    }

    [Fact]
    public void What_does_not_fit_is_set_in_its_other_way_and_that_in_its_own()
    {
        var narrow = Part(70) with { Alternative = [Part(20), Part(20)] };
        var wide = Part(90) with { Alternative = [narrow] };
        Assert.Equal(
            [
                [90],
            ],
            Heights(wide)
        );
        Assert.Equal(
            [
                [30, 70],
            ],
            Heights(Part(30), wide)
        );
        Assert.Equal(
            [
                [50, 20, 20],
            ],
            Heights(Part(50), wide)
        );
    }

    [Fact]
    public void What_has_a_page_for_itself_stands_alone_between_two_others()
    {
        var own = Part(10) with { OwnPage = new PageSize(200, 300) };
        Assert.Equal(
            [
                [10],
                [10],
                [10],
            ],
            Heights(Part(10), own, Part(10))
        );
        Assert.Equal(
            [
                [10],
            ],
            Heights(own)
        );
    }

    [Fact]
    public void The_end_of_a_page_leaves_no_empty_one()
    {
        var end = Part(0) with { EndsPage = true };
        Assert.Equal(
            [
                [10],
                [20],
            ],
            Heights(end, Part(10), end, end, Part(20), end)
        );
    }
}
