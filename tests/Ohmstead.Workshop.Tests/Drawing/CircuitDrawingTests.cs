using System.Globalization;
using Ohmstead.Workshop.Drawing;

namespace Ohmstead.Workshop.Tests.Drawing;

public sealed class CircuitDrawingTests
{
    [Theory]
    [MemberData(nameof(DrawnSheets.Each), MemberType = typeof(DrawnSheets))]
    public void What_is_drawn_is_the_circuit_of_the_sheet(string file) =>
        Assert.Empty(Trace.Differences(DrawnSheets.Of(file), DrawnSheets.Sheet(file)));

    [Theory]
    [MemberData(nameof(DrawnSheets.Each), MemberType = typeof(DrawnSheets))]
    public void No_sign_name_or_wire_lies_over_another(string file) => Assert.Empty(Clearance.Overlaps(DrawnSheets.Of(file)));

    /// <summary>The pane of the drawing's page in a window 1440 wide: 24 left and right of it.</summary>
    private const double PaneAt1440 = 1392;

    [Theory]
    [MemberData(nameof(DrawnSheets.Each), MemberType = typeof(DrawnSheets))]
    public void Its_smallest_letters_are_fourteen_pixels_in_a_window_of_1440(string file)
    {
        var drawing = DrawnSheets.Of(file);
        var least = drawing.Groups.SelectMany(g => g.Marks.OfType<Text>()).Min(t => t.Size);
        Assert.InRange(least * PaneAt1440 / drawing.Bounds.Width, 14, 40);
    }

    [Theory]
    [MemberData(nameof(DrawnSheets.Each), MemberType = typeof(DrawnSheets))]
    public void Wires_run_level_or_upright(string file) =>
        Assert.DoesNotContain(Trace.Segments(DrawnSheets.Of(file)), s => s.A.X != s.B.X && s.A.Y != s.B.Y);

    /// <summary>Sheets with the most crossings that their drawings have had.</summary>
    public static TheoryData<string, int> Record { get; } =
    [
        .. DrawnSheets
            .Text("tests/Ohmstead.Workshop.Tests/Drawing/crossings.txt")
            .Split('\n')
            .Where(l => l.Length > 0 && l[0] != '#')
            .Select(l => l.Split(' '))
            .Select(l => new TheoryDataRow<string, int>(l[0], int.Parse(l[1], CultureInfo.InvariantCulture))),
    ];

    [Theory]
    [MemberData(nameof(Record))]
    public void No_more_wires_cross_than_on_record(string file, int most) => Assert.InRange(Trace.Crossings(DrawnSheets.Of(file)), 0, most);

    [Fact]
    public void The_sheets_that_people_see_are_on_record() =>
        Assert.Subset(
            Record.Select(r => r.Data.Item1).ToHashSet(StringComparer.Ordinal),
            DrawnSheets.All.Where(f => !f.Contains("random", StringComparison.Ordinal)).ToHashSet(StringComparer.Ordinal)
        );

    [Theory]
    [MemberData(nameof(DrawnSheets.Each), MemberType = typeof(DrawnSheets))]
    public void Mains_are_left_of_the_core_and_posts_right(string file)
    {
        var (drawing, sheet) = (DrawnSheets.Of(file), DrawnSheets.Sheet(file));
        var core = drawing.Groups.First(g => g.Kind == GroupKind.Core).Marks.OfType<Polyline>().First().Points[0].X;
        var source = sheet.Readings.Select(r => r.State.Source).First(s => s is { IsDirect: false } && s.Volts >= sheet.SupplyVolts)!;
        Assert.True(At(source.From) < core && At(source.To) < core);
        Assert.All(sheet.Readings.SelectMany(r => r.State.Loads), l => Assert.True(At(l.From) > core && At(l.To) > core));

        double At(string terminal) => drawing.Groups.Single(g => g.Kind == GroupKind.Terminal && g.Id == terminal).Pins[0].At.X;
    }

    [Fact]
    public void The_two_throttles_of_a_twin_stand_mirrored()
    {
        var drawing = DrawnSheets.Of("tests/Reference/sample/twin-160.sheet.json");
        var pairs = DrawnSheets
            .Sheet("tests/Reference/sample/twin-160.sheet.json")
            .Elements.Where(e => e.Id.EndsWith("-left", StringComparison.Ordinal))
            .Select(e => (Y(e.Id), Y(e.Id[..^5] + "-right")))
            .ToList();
        Assert.All(pairs, p => Assert.True(p.Item1 < p.Item2));
        var (above, below) = (pairs.Select(p => p.Item1).ToList(), pairs.Select(p => p.Item2).ToList());
        Assert.Equal(Ranks(above), Ranks([.. below.Select(y => -y)]));

        double Y(string id) => drawing.Groups.Single(g => g.Kind == GroupKind.Element && g.Id == id).Pins.Average(p => p.At.Y);

        static IEnumerable<int> Ranks(List<double> ys) => ys.Select(y => ys.Distinct().Count(o => o < y));
    }

    [Fact]
    public void The_same_sheet_gives_the_same_drawing()
    {
        var sheet = DrawnSheets.Sheet("demo/twin-175.sheet.json");
        Assert.Equal(SvgText.Write(DrawnSheets.Draw(sheet)), SvgText.Write(DrawnSheets.Draw(sheet)));
    }

    [Fact]
    public void All_marks_lie_within_the_bounds()
    {
        foreach (var file in DrawnSheets.All)
        {
            var drawing = DrawnSheets.Of(file);
            Assert.All(drawing.Marks, m => Assert.True(drawing.Bounds.Holds(m.Extent)));
        }
    }

    [Fact]
    public void Looking_at_two_posts_shows_both_and_less_than_the_whole()
    {
        var drawing = DrawnSheets.Of("demo/solo-110.sheet.json");
        var view = drawing.Around(["post-a", "post-b"]);
        Assert.True(view.Width * view.Height < 0.5 * drawing.Bounds.Width * drawing.Bounds.Height);
        foreach (var group in drawing.Groups.Where(g => g.Id is "post-a" or "post-b" && g.Kind == GroupKind.Terminal))
            Assert.True(view.Holds(group.Extent));
        Assert.Equal(drawing.Bounds, drawing.Around(["no-such-thing"]));
    }
}
