using Ohmstead.Workshop.Papers;
using PdfSharp.Drawing;

namespace Ohmstead.App.Papers;

/// <summary>Sets the blocks of a paper as fragments for its pages.</summary>
/// <param name="photos">The photos by hash; one that is missing or no image is said to be.</param>
/// <param name="pageSize">The paper, upright.</param>
/// <param name="text">Sets the words.</param>
internal sealed class BlockLayout(PhotoLayout photos, PageSize pageSize, TextLayout text)
{
    private const double ColumnGutter = 26;

    /// <summary>The fragments of some blocks, in a column of this width.</summary>
    public IEnumerable<Fragment> Set(IEnumerable<Block> blocks, double width) => blocks.SelectMany(b => Set(b, width));

    private IEnumerable<Fragment> Set(Block block, double width) =>
        block switch
        {
            Letterhead l => new LetterheadLayout(text, photos).Set(l, width),
            Masthead m => [new MastheadLayout(text).Set(m, width)],
            Heading { Level: 1 } h => PartHeading(h.Text, width),
            Heading h => SectionHeading(h.Text, width),
            Prose p => [.. text.Paragraph(p.Text, width, text.Plain(p.Size)), Fragment.Space(5)],
            Points p => [.. p.Items.SelectMany(item => Point(item, width, text.Plain(p.Size))), Fragment.Space(3)],
            Notice n => [Framed(n, width), Fragment.Space(10)],
            Table t => new TableLayout(text).Set(t, width),
            Bars b => new BarLayout(text).Set(b, width),
            Photos p => photos.Set(p, width, text),
            Sides s => [Columns(s, width)],
            Signatures s => [new MastheadLayout(text).Sign(s, width)],
            Circuit c => [CircuitPage.Set(c, pageSize, w => Fragment.Stack(PartHeading(c.Title, w)))],
            Lines l => Enumerable.Repeat(Fragment.Rule(30, 29, width, new XPen(Inks.Line, 0.8)), l.Count),
            NewPage => [Fragment.Space(0) with { EndsPage = true }],
            _ => [],
        };

    private IEnumerable<Fragment> PartHeading(string heading, double width) =>
        Kept([.. text.Paragraph(heading, width, new(19, true, Inks.Text)), Fragment.Rule(9, 1, width, new XPen(Inks.Text, 1.4))]);

    private IEnumerable<Fragment> SectionHeading(string heading, double width) =>
        [
            Fragment.Space(6),
            .. Kept(text.Paragraph(heading, width, text.IsLarge ? new(16.5, true, Inks.Text) : new(13, true, Inks.Copper))),
            Fragment.Gap(2),
        ];

    private static IEnumerable<Fragment> Kept(IEnumerable<Fragment> fragments) => fragments.Select(f => f with { KeepsWithNext = true });

    private IEnumerable<Fragment> Point(string item, double width, TextStyle style)
    {
        const double indent = 14;
        var dash = Fragment.Rule(0, style.Points * 0.68, 7, new XPen(Inks.Copper, 1.6));
        var lines = text.Paragraph(item, width - indent, style)
            .Select(
                (line, n) =>
                    Fragment.Beside(n == 0 ? [(0, dash), (indent, line)] : [(indent, line)]) with
                    {
                        KeepsWithNext = line.KeepsWithNext,
                    }
            );
        return [.. lines, Fragment.Space(1.5)];
    }

    private Fragment Framed(Notice notice, double width)
    {
        const double inside = 12;
        const double mark = 20;
        var room = width - (2 * inside) - mark;
        List<Fragment> words = [.. text.Paragraph(notice.Title, room, new(text.AtLeast(13.5), true, Inks.Text))];
        foreach (var line in notice.Lines)
            words.AddRange([Fragment.Space(2), .. text.Paragraph(line, room, text.Plain(Size.Usual))]);
        var stack = Fragment.Stack(words);
        var height = stack.Height + (2 * inside) - 4;
        var frame = new XPen(Inks.Of(notice.Weight), 1.5);
        return new Fragment(
            height,
            (page, x, y) =>
            {
                page.DrawRectangle(frame, new XSolidBrush(Inks.Faint), x + 0.75, y, width - 1.5, height);
                WeightShape.Draw(page, notice.Weight, x + inside + 5, y + inside + 6, 11);
                stack.Draw(page, x + inside + mark, y + inside - 3);
            }
        );
    }

    /// <summary>
    /// The columns in large type where they fit on what is left of the page with what follows them; else in the usual type; else
    /// one under the other.
    /// </summary>
    private Fragment Columns(Sides sides, double width)
    {
        var column = (width - ColumnGutter) / 2;
        return Beside(Large(sides.Left), Large(sides.Right)) with
        {
            Alternative = [Beside(sides.Left, sides.Right) with { Alternative = [.. Set(sides.Left, width), .. Set(sides.Right, width)] }],
        };

        Fragment Beside(IEnumerable<Block> left, IEnumerable<Block> right) =>
            Fragment.Beside((0, Fragment.Stack(Set(left, column))), (column + ColumnGutter, Fragment.Stack(Set(right, column)))) with
            {
                KeepsWithNext = true,
            };
    }

    private static IEnumerable<Block> Large(IEnumerable<Block> blocks) =>
        blocks.Select(b =>
            b switch
            {
                Points { Size: Size.Usual } p => p with { Size = Size.Large },
                Prose { Size: Size.Usual } p => p with { Size = Size.Large },
                Prose { Size: Size.Small } p => p with { Size = Size.Usual },
                Table { Size: Size.Small } t => t with { Size = Size.Usual },
                _ => b,
            }
        );
}
