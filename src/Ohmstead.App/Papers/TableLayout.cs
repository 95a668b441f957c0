using Ohmstead.Workshop.Job;
using Ohmstead.Workshop.Papers;
using PdfSharp.Drawing;

namespace Ohmstead.App.Papers;

/// <summary>Sets a table: a row is never broken, the header is set again on every page.</summary>
internal sealed class TableLayout(TextLayout text)
{
    private const double Gutter = 10;
    private const double MarkRoom = 13;

    /// <summary>Height of a row with a box to be filled in by pencil.</summary>
    private const double BoxRow = 25;

    /// <summary>Room above and below the words of a row [pt]: less where a single page must hold all.</summary>
    private double RowRoom => text.IsLarge ? 4.5 : 7;

    public IEnumerable<Fragment> Set(Table table, double width)
    {
        var points = text.PointsOf(table.Size);
        var total = table.Columns.Sum(c => c.Share);
        double[] widths = [.. table.Columns.Select(c => (c.Share / total * (width + Gutter)) - Gutter)];
        double[] lefts = [.. widths.Select((_, n) => widths.Take(n).Sum(w => w + Gutter))];
        var header = table.Columns.Any(c => c.Title.Length > 0) ? Header(table, points, widths, lefts, width) : null;
        return
        [
            .. header is null ? Enumerable.Empty<Fragment>() : [header with { KeepsWithNext = true }],
            .. table.Rows.Select(row => SetRow(table, row, points, widths, lefts) with { RepeatedHeader = header }),
            Fragment.Space(8),
        ];
    }

    private Fragment Header(Table table, double points, double[] widths, double[] lefts, double width)
    {
        var style = new TextStyle(text.AtLeast(points - 0.5), true, Inks.Text);
        var cells = table.Columns.Select((c, n) => Cell(c.Title, widths[n], style, c.IsFigure)).ToList();
        var height = cells.Max(c => c.Height) + 6;
        return new Fragment(
            height,
            (page, x, y) =>
            {
                for (var n = 0; n < cells.Count; n++)
                    cells[n].Draw(page, x + lefts[n], y + height - 5 - cells[n].Height);
                page.DrawLine(new XPen(Inks.Text, 0.9), x, y + height - 2, x + width, y + height - 2);
            }
        );
    }

    private Fragment SetRow(Table table, Row row, double points, double[] widths, double[] lefts)
    {
        var last = row.Cells.Length - 1;
        var width = lefts[^1] + widths[^1];
        var room = row.Weight == Weight.None ? 0 : MarkRoom;
        var cells = row
            .Cells.Select(
                (words, n) =>
                    Cell(
                        words,
                        widths[n] - (n == last ? room : 0),
                        new(points, n == 0 || (n == last && row.Weight is Weight.Look or Weight.Stop), Inks.Text),
                        table.Columns[n].IsFigure
                    )
            )
            .ToList();
        var under =
            row.Under.Length == 0
                ? Fragment.Space(0)
                : Fragment.Stack([
                    Fragment.Space(1),
                    .. text.Paragraph(row.Under, width, new(text.AtLeast(points - 0.5), false, Inks.Soft)),
                ]);
        var body = Math.Max(cells.Max(c => c.Height), table.Columns.Any(c => c.IsBlank) ? BoxRow : 0);
        var height = body + under.Height + RowRoom;
        return new Fragment(
            height,
            (page, x, y) =>
            {
                for (var n = 0; n < cells.Count; n++)
                {
                    if (table.Columns[n].IsBlank)
                        page.DrawRectangle(new XPen(Inks.Text, 0.8), x + lefts[n], y + 4, widths[n], 22);
                    else
                        cells[n].Draw(page, x + lefts[n] + (n == last ? room : 0), y + 3);
                }
                if (row.Weight != Weight.None)
                    WeightShape.Draw(page, row.Weight, x + lefts[last] + 4, y + 3 + (points * 0.68), 7.5);
                under.Draw(page, x, y + 3 + body);
                page.DrawLine(new XPen(Inks.Line, 0.5), x, y + height - 0.5, x + width, y + height - 0.5);
            }
        );
    }

    /// <summary>The words of a cell; figures end at its right.</summary>
    private Fragment Cell(string words, double width, TextStyle style, bool isFigure)
    {
        var type = Typeface.Get();
        return Fragment.Stack(
            type.Lines(words, width, style)
                .Select(line => Fragment.Beside((isFigure ? width - type.WidthOf(line, style) : 0, text.Line(line, style))))
        );
    }
}
