using Ohmstead.Workshop.Papers;
using PdfSharp.Drawing;

namespace Ohmstead.App.Papers;

/// <summary>Sets bars: the name, the bar in ink with a full frame, its value and what stands beside it. It reads in black and white.</summary>
internal sealed class BarLayout(TextLayout text)
{
    private const double Gutter = 10;
    private const double BarHeight = 15;

    /// <summary>Shares of the width: name, bar, value, what stands beside.</summary>
    private static readonly double[] Shares = [4, 4.4, 3, 4];

    public IEnumerable<Fragment> Set(Bars bars, double width)
    {
        double[] widths = [.. Shares.Select(s => (s / Shares.Sum() * (width + Gutter)) - Gutter)];
        double[] lefts = [.. widths.Select((_, n) => widths.Take(n).Sum(w => w + Gutter))];
        return [.. bars.Items.Select(b => Bar(b, widths, lefts)), Fragment.Space(5)];
    }

    private Fragment Bar(Bar bar, double[] widths, double[] lefts)
    {
        var plain = text.Plain(Size.Usual);
        Fragment Words(string words, int at, bool isBold) =>
            Fragment.Stack(text.Paragraph(words, widths[at], plain with { IsBold = isBold }));
        var (name, value, beside) = (Words(bar.Title, 0, true), Words(bar.Value, 2, false), Words(bar.Beside, 3, false));
        var height = Math.Max(BarHeight, new[] { name, value, beside }.Max(f => f.Height)) + 4;
        return new Fragment(
            height,
            (page, x, y) =>
            {
                name.Draw(page, x, y);
                var (left, top) = (x + lefts[1], y + ((plain.Points * 1.27) - BarHeight) / 2 + 1);
                page.DrawRectangle(
                    new XSolidBrush(Inks.Text),
                    left,
                    top,
                    Math.Max(0.01, widths[1] * Math.Clamp(bar.Share, 0, 1)),
                    BarHeight
                );
                page.DrawRectangle(new XPen(Inks.Text, 1.3), left, top, widths[1], BarHeight);
                value.Draw(page, x + lefts[2], y);
                beside.Draw(page, x + lefts[3], y);
            }
        );
    }
}
