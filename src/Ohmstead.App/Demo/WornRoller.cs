namespace Ohmstead.App.Demo;

/// <summary>A carbon roller with a flat, on the bared turns of a winding.</summary>
internal static class WornRoller
{
    public static void Draw(Drawing d)
    {
        d.Box(0, 520, 1200, 380, 0, 0xFF3A2418, 0xFF120A06);
        for (var n = 0; n < 26; n++)
        {
            var x = 10 + (n * 47);
            d.Box(x, 500, 40, 400, 18, 0xFF9A5A2A, 0xFF4A2410);
            d.Box(x + 4, 506, 32, 120, 14, n is > 9 and < 17 ? 0xFF6E4A34 : 0xFFF0B078, n is > 9 and < 17 ? 0xFF4A3020 : 0xFFB8702E);
            d.Line(x + 13, 520, x + 13, 612, 4, 0x70FFE4C4);
        }
        using (var arm = Drawing.Path("M1200 90 L760 250 Q690 280 660 350 L620 350 L620 300 Q640 210 740 180 L1200 10 Z"))
            d.Fill(arm, 0xFFEBCF8C, 0xFF8F6A26);
        using (var edge = Drawing.Path("M1200 90 L760 250 Q690 280 660 350"))
            d.Stroke(edge, 6, 0xFF5C4316);
        using (var roller = Drawing.Path("M476 470 A150 150 0 1 1 724 470 L690 500 L520 502 Z"))
        {
            d.Fill(roller, 0xFF5C5C60, 0xFF17171A);
            d.Stroke(roller, 4, 0xFF0C0C0E);
        }
        using (var shine = Drawing.Path("M490 330 Q530 262 612 246"))
            d.Stroke(shine, 14, 0x50FFFFFF);
        d.Line(530, 452, 560, 484, 5, 0xFF0C0C0E);
        d.Line(640, 440, 668, 492, 5, 0xFF0C0C0E);
        d.Disc(600, 382, 44, 0xFFF3D58B, 0xFF7E5A1C);
        d.Disc(600, 382, 20, 0xFF6A4C18, 0xFFD8B76C);
    }
}
