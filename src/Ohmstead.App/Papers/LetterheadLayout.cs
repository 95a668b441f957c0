using Ohmstead.Workshop.Papers;
using PdfSharp.Drawing;

namespace Ohmstead.App.Papers;

/// <summary>Sets the head of a paper: the shop, what the unit is, whose, and a picture of it.</summary>
internal sealed class LetterheadLayout(TextLayout text, PhotoLayout photos)
{
    public IEnumerable<Fragment> Set(Letterhead head, double width)
    {
        const double picture = 168;
        const double gutter = 22;
        var hasPhoto = head.Photo.Length > 0;
        var words = Words(head, hasPhoto ? width - picture - gutter : width);
        return
        [
            hasPhoto
                ? Fragment.Beside((0, words), (width - picture, photos.Frame(new Photo(head.Photo, "", []), picture, picture * 0.75)))
                : words,
            Fragment.Rule(11, 5, width, new XPen(Inks.Text, 1.4)),
        ];
    }

    private Fragment Words(Letterhead head, double width)
    {
        List<Fragment> shop = [];
        if (head.Shop.Length > 0)
            shop.AddRange(text.Paragraph(head.Shop, width, new(11.5, true, Inks.Copper)));
        if (head.Address.Length > 0)
            shop.AddRange(text.Paragraph(head.Address, width, new(9.5, false, Inks.Soft)));
        if (shop.Count > 0)
            shop.Add(Fragment.Space(8));
        return Fragment.Stack([
            .. shop,
            .. text.Paragraph(head.Title, width, new(19, true, Inks.Text)),
            Fragment.Space(5),
            .. head.Pairs.Select(p => Pair(p, width)),
        ]);
    }

    private Fragment Pair(Pair pair, double width)
    {
        const double name = 84;
        var style = text.Plain(Size.Usual);
        var label = text.Line(Typeface.Get().Clean(pair.Name), style with { Ink = Inks.Soft });
        var value = Fragment.Stack(text.Paragraph(pair.Value, width - name, style));
        return Fragment.Stack(Fragment.Beside((0, label), (name, value)), Fragment.Space(1));
    }
}
