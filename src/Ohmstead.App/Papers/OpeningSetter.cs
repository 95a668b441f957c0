using Ohmstead.Workshop.Papers;
using PdfSharp.Drawing;

namespace Ohmstead.App.Papers;

/// <summary>Sets the head of a paper: the shop, what the unit is, whose, and a picture of it.</summary>
internal sealed class OpeningSetter(Setter setter, Pictures photos)
{
    public IEnumerable<Piece> Set(Opening opening, double width)
    {
        const double picture = 168;
        const double gutter = 22;
        var text = opening.Photo.Length > 0 ? width - picture - gutter : width;
        List<Piece> left = [];
        if (opening.Shop.Length > 0)
            left.AddRange(setter.Paragraph(opening.Shop, text, 11.5, true, Sheet.Copper));
        if (opening.Address.Length > 0)
            left.AddRange(setter.Paragraph(opening.Address, text, 9.5, false, Sheet.Soft));
        if (left.Count > 0)
            left.Add(Piece.Space(8));
        left.AddRange(setter.Paragraph(opening.Title, text, 19, true, Sheet.Ink));
        left.Add(Piece.Space(5));
        foreach (var pair in opening.Pairs)
            left.Add(SetPair(pair, text));
        var stack = Setter.Stack(left);
        if (opening.Photo.Length == 0)
            return [stack, Rule(width)];
        var photo = photos.Frame(new Photo(opening.Photo, "", []), picture, picture * 0.75);
        var head = new Piece(
            Math.Max(stack.Height, photo.Height),
            (page, x, y) =>
            {
                stack.Draw(page, x, y);
                photo.Draw(page, x + width - picture, y);
            }
        );
        return [head, Rule(width)];
    }

    private static Piece Rule(double width) => new(11, (page, x, y) => page.DrawLine(new XPen(Sheet.Ink, 1.4), x, y + 5, x + width, y + 5));

    private Piece SetPair(Pair pair, double width)
    {
        const double name = 84;
        var points = setter.PointsOf(Size.Usual);
        var value = Setter.Stack([.. setter.Paragraph(pair.Value, width - name, points, false, Sheet.Ink)]);
        var label = setter.Line(Typeface.Get().Clean(pair.Name), points, false, Sheet.Soft);
        return new Piece(
            value.Height + 1,
            (page, x, y) =>
            {
                label.Draw(page, x, y);
                value.Draw(page, x + name, y);
            }
        );
    }
}
