using Ohmstead.Workshop.Papers;
using PdfSharp.Drawing;
using Words = Ohmstead.App.Papers.Typeface;

namespace Ohmstead.App.Papers;

/// <summary>Sets the blocks of a paper as pieces for pages of one width.</summary>
/// <param name="photos">The photos by hash; one that is missing or no image is said to be.</param>
/// <param name="sheet">The paper, upright.</param>
/// <param name="isLarge">No letter is smaller than <see cref="LeastLarge"/>.</param>
internal sealed class Setter(Pictures photos, Sheet sheet, bool isLarge = false)
{
    /// <summary>The smallest letters of a page that is read without glasses [pt].</summary>
    public const double LeastLarge = 14;

    private const double Leading = 1.27;
    private const double ColumnGutter = 26;
    private readonly Words type = Typeface.Get();

    /// <summary>The pieces of some blocks, in a column of this width.</summary>
    public IEnumerable<Piece> Set(IEnumerable<Block> blocks, double width) => blocks.SelectMany(b => Set(b, width));

    private IEnumerable<Piece> Set(Block block, double width) =>
        block switch
        {
            Opening o => new OpeningSetter(this, photos).Set(o, width),
            Masthead m => [new MastheadSetter(this).Set(m, width)],
            Heading h => SetHeading(h, width),
            Prose p => [.. Paragraph(p.Text, width, PointsOf(p.Size), false, Sheet.Ink), Piece.Space(5)],
            Points p => SetPoints(p, width),
            Notice n => [Framed(n, width), Piece.Space(10)],
            Table t => new TableSetter(this).Set(t, width),
            Photos p => SetPhotos(p, width),
            Sides s => SetSides(s, width),
            Signatures s => [new MastheadSetter(this).Sign(s, width)],
            Circuit c => [CircuitSetter.Set(this, c, sheet)],
            Lines l => Enumerable.Repeat(
                new Piece(30, (page, x, y) => page.DrawLine(new XPen(Sheet.Line, 0.8), x, y + 29, x + width, y + 29)),
                l.Count
            ),
            NewPage => [Piece.Space(0) with { EndsPage = true }],
            _ => [],
        };

    /// <summary>Letters of a size [pt].</summary>
    public double PointsOf(Size size) =>
        AtLeast(
            size switch
            {
                Size.Large => 13.5,
                Size.Usual => 11,
                _ => 9.5,
            }
        );

    /// <summary>Room above and below the words of a row [pt]: less where a single page must hold all.</summary>
    public double RowRoom => isLarge ? 4.5 : 7;

    /// <summary>Letters as large as asked for, or as this page needs them [pt].</summary>
    public double AtLeast(double points) => isLarge ? Math.Max(points, LeastLarge) : points;

    /// <summary>Lines of words, each a piece.</summary>
    public IEnumerable<Piece> Paragraph(string words, double width, double points, bool isBold, XColor ink)
    {
        var lines = type.Lines(words, width, points, isBold);
        // No line of a paragraph of two or three is left alone; of a longer one the first two hold together.
        return lines.Select(
            (line, n) => Line(line, points, isBold, ink) with { HoldsNext = lines.Count > 1 && (n == 0 || n == lines.Count - 2) }
        );
    }

    /// <summary>One line of clean words.</summary>
    public Piece Line(string line, double points, bool isBold, XColor ink) =>
        new(points * Leading, (page, x, y) => type.Draw(page, line, x, y + points, points, isBold, ink));

    /// <summary>Pieces drawn as one.</summary>
    public static Piece Stack(IReadOnlyList<Piece> pieces) =>
        new(
            pieces.Sum(p => p.Height),
            (page, x, y) =>
            {
                foreach (var piece in pieces)
                {
                    piece.Draw(page, x, y);
                    y += piece.Height;
                }
            }
        );

    private IEnumerable<Piece> SetHeading(Heading heading, double width)
    {
        if (heading.Level == 1)
        {
            foreach (var line in Paragraph(heading.Text, width, 19, true, Sheet.Ink))
                yield return line with
                {
                    HoldsNext = true,
                };
            yield return new Piece(9, (page, x, y) => page.DrawLine(new XPen(Sheet.Ink, 1.4), x, y + 1, x + width, y + 1), HoldsNext: true);
            yield break;
        }
        yield return Piece.Space(6);
        foreach (var line in Paragraph(heading.Text, width, isLarge ? 16.5 : 13, true, isLarge ? Sheet.Ink : Sheet.Copper))
            yield return line with
            {
                HoldsNext = true,
            };
        yield return Piece.Gap(2);
    }

    private IEnumerable<Piece> SetPoints(Points points, double width)
    {
        const double indent = 14;
        var size = PointsOf(points.Size);
        foreach (var item in points.Items)
        {
            var first = true;
            foreach (var line in Paragraph(item, width - indent, size, false, Sheet.Ink))
            {
                var hasDash = first;
                first = false;
                yield return line with
                {
                    Draw = (page, x, y) =>
                    {
                        if (hasDash)
                            page.DrawLine(new XPen(Sheet.Copper, 1.6), x, y + (size * 0.68), x + 7, y + (size * 0.68));
                        line.Draw(page, x + indent, y);
                    },
                };
            }
            yield return Piece.Space(1.5);
        }
        yield return Piece.Space(3);
    }

    private Piece Framed(Notice notice, double width)
    {
        const double inside = 12;
        var text = width - (2 * inside) - 20;
        List<Piece> pieces = [.. Paragraph(notice.Title, text, AtLeast(13.5), true, Sheet.Ink)];
        foreach (var line in notice.Lines)
            pieces.AddRange([Piece.Space(2), .. Paragraph(line, text, PointsOf(Size.Usual), false, Sheet.Ink)]);
        var stack = Stack(pieces);
        var ink = Shapes.Ink(notice.Weight);
        return new Piece(
            stack.Height + (2 * inside) - 4,
            (page, x, y) =>
            {
                var height = stack.Height + (2 * inside) - 4;
                page.DrawRectangle(new XPen(ink, 1.5), new XSolidBrush(Sheet.Faint), x + 0.75, y, width - 1.5, height);
                Shapes.Draw(page, notice.Weight, x + inside + 5, y + inside + 6, 11);
                stack.Draw(page, x + inside + 20, y + inside - 3);
            }
        );
    }

    private IEnumerable<Piece> SetPhotos(Photos block, double width)
    {
        const double gutter = 18;
        var column = (width - gutter) / 2;
        foreach (var pair in block.Items.Chunk(2))
        {
            var cells = pair.Select(p =>
                    Stack([
                        photos.Frame(p, column, column * 0.75),
                        Piece.Space(3),
                        .. Paragraph(p.Caption, column, PointsOf(Size.Small), false, Sheet.Soft),
                    ])
                )
                .ToList();
            yield return new Piece(
                cells.Max(c => c.Height),
                (page, x, y) =>
                {
                    for (var n = 0; n < cells.Count; n++)
                        cells[n].Draw(page, x + (n * (column + gutter)), y);
                }
            );
            yield return Piece.Space(12);
        }
    }

    /// <summary>
    /// The columns in large type where they fit on what is left of the page with what follows them; else in the usual type; else
    /// one under the other.
    /// </summary>
    private IEnumerable<Piece> SetSides(Sides sides, double width)
    {
        List<Piece> under = [.. Set(sides.Left, width), .. Set(sides.Right, width)];
        var usual = Beside(Set(sides.Left, ColumnOf(width)), Set(sides.Right, ColumnOf(width)), width, under);
        yield return Beside(Set(Large(sides.Left), ColumnOf(width)), Set(Large(sides.Right), ColumnOf(width)), width, [usual]);
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

    private static double ColumnOf(double width) => (width - ColumnGutter) / 2;

    private static Piece Beside(IEnumerable<Piece> left, IEnumerable<Piece> right, double width, IReadOnlyList<Piece> instead)
    {
        var (one, other) = (Stack([.. left]), Stack([.. right]));
        return new Piece(
            Math.Max(one.Height, other.Height),
            (page, x, y) =>
            {
                one.Draw(page, x, y);
                other.Draw(page, x + ColumnOf(width) + ColumnGutter, y);
            },
            HoldsNext: true,
            Instead: instead
        );
    }
}
