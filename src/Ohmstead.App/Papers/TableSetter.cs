using Ohmstead.Workshop.Papers;
using PdfSharp.Drawing;

namespace Ohmstead.App.Papers;

/// <summary>Sets a table: a row is never broken, the header is set again on every page.</summary>
internal sealed class TableSetter(Setter setter)
{
    private const double Gutter = 10;
    private const double MarkRoom = 13;

    public IEnumerable<Piece> Set(Table table, double width)
    {
        var points = setter.PointsOf(table.Size);
        var total = table.Columns.Sum(c => c.Share);
        double[] widths = [.. table.Columns.Select(c => (c.Share / total * (width + Gutter)) - Gutter)];
        double[] lefts = [.. widths.Select((_, n) => widths.Take(n).Sum(w => w + Gutter))];
        var header = Header(table, setter.AtLeast(points - 0.5), widths, lefts, width);
        var isHeaded = table.Columns.Any(c => c.Title.Length > 0);
        if (isHeaded)
            yield return header with
            {
                HoldsNext = true,
            };
        foreach (var row in table.Rows)
            yield return SetRow(table, row, points, widths, lefts, width) with
            {
                Header = isHeaded ? header : null,
            };
        yield return Piece.Space(8);
    }

    private Piece Header(Table table, double points, double[] widths, double[] lefts, double width)
    {
        var cells = table.Columns.Select((c, n) => Cell(c.Title, widths[n], points, true, Sheet.Ink, c.IsFigure)).ToList();
        var height = cells.Max(c => c.Height) + 6;
        return new Piece(
            height,
            (page, x, y) =>
            {
                for (var n = 0; n < cells.Count; n++)
                    cells[n].Draw(page, x + lefts[n], y + height - 5 - cells[n].Height);
                page.DrawLine(new XPen(Sheet.Ink, 0.9), x, y + height - 2, x + width, y + height - 2);
            }
        );
    }

    private Piece SetRow(Table table, Row row, double points, double[] widths, double[] lefts, double width)
    {
        var last = row.Cells.Length - 1;
        var room = row.Weight == Weight.None ? 0 : MarkRoom;
        var cells = row
            .Cells.Select(
                (words, n) =>
                    Cell(
                        words,
                        widths[n] - (n == last ? room : 0),
                        points,
                        n == 0 || (n == last && row.Weight is Weight.Look or Weight.Stop),
                        Sheet.Ink,
                        table.Columns[n].IsFigure
                    )
            )
            .ToList();
        var under =
            row.Under.Length == 0
                ? Piece.Space(0)
                : Setter.Stack([Piece.Space(1), .. setter.Paragraph(row.Under, width, setter.AtLeast(points - 0.5), false, Sheet.Soft)]);
        var body = cells.Max(c => c.Height);
        var blank = table.Columns.Any(c => c.IsBlank);
        if (blank)
            body = Math.Max(body, 25);
        var height = body + under.Height + setter.RowRoom;
        return new Piece(
            height,
            (page, x, y) =>
            {
                for (var n = 0; n < cells.Count; n++)
                {
                    if (table.Columns[n].IsBlank)
                        page.DrawRectangle(new XPen(Sheet.Ink, 0.8), x + lefts[n], y + 4, widths[n], 22);
                    else
                        cells[n].Draw(page, x + lefts[n] + (n == last ? room : 0), y + 3);
                }
                if (row.Weight != Weight.None)
                    Shapes.Draw(page, row.Weight, x + lefts[last] + 4, y + 3 + (points * 0.68), 7.5);
                under.Draw(page, x, y + 3 + body);
                page.DrawLine(new XPen(Sheet.Line, 0.5), x, y + height - 0.5, x + width, y + height - 0.5);
            }
        );
    }

    private Piece Cell(string words, double width, double points, bool isBold, XColor ink, bool isFigure)
    {
        var type = Typeface.Get();
        var lines = type.Lines(words, width, points, isBold);
        return Setter.Stack([
            .. lines.Select(line =>
            {
                var piece = setter.Line(line, points, isBold, ink);
                var shift = isFigure ? width - type.WidthOf(line, points, isBold) : 0;
                return piece with { Draw = (page, x, y) => piece.Draw(page, x + shift, y) };
            }),
        ]);
    }
}
