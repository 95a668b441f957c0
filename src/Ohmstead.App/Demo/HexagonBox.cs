namespace Ohmstead.App.Demo;

/// <summary>The invented unit for two tracks: a six-sided slate-green box, a thumb wheel for each track in its front, one paddle below.</summary>
internal static class HexagonBox
{
    public static void Draw(Drawing d)
    {
        d.Shadow(230, 690, 740, 80);
        using (var body = Drawing.Path("M600 150 L900 300 L900 610 L600 760 L300 610 L300 300 Z"))
        {
            d.Fill(body, 0xFF7FA08F, 0xFF46655A);
            d.Stroke(body, 8, 0xFF2F463D);
        }
        using (var face = Drawing.Path("M600 215 L840 335 L840 575 L600 695 L360 575 L360 335 Z"))
        {
            d.Fill(face, 0xFFEDE6D2, 0xFFD3C8AC);
            d.Stroke(face, 4, 0xFF8A7F63);
        }
        using (var chip = Drawing.Path("M306 330 L334 316 L340 344 L318 356 Z"))
            d.Fill(chip, 0xFFCFD8D2, 0xFFA9B8B0);
        Wheel(d, 450, 0.3f);
        Wheel(d, 674, 0.7f);
        using (var paddle = Drawing.Path("M560 545 L640 545 L624 640 L576 640 Z"))
        {
            d.Fill(paddle, 0xFFE4A33A, 0xFFB06E14);
            d.Stroke(paddle, 3, 0xFF6E430A);
        }
        d.Disc(600, 285, 20, 0xFF2C3A34, 0xFF2C3A34);
        d.Disc(600, 283, 15, 0xFFBFE8FF, 0xFF3C8FB8);
        for (var n = 0; n < 5; n++)
            d.Post(440 + (n * 80), 812);
        d.Box(400, 780, 400, 12, 6, 0xFF46655A, 0xFF2F463D);
    }

    /// <summary>A knurled wheel that stands out of a slot.</summary>
    private static void Wheel(Drawing d, float x, float set)
    {
        d.Box(x - 6, 350, 88, 180, 10, 0xFF3A4A43, 0xFF22302A);
        d.Box(x + 4, 340, 68, 200, 22, 0xFFB9C2C6, 0xFF6E7A80);
        for (var n = 0; n < 13; n++)
            d.Line(x + 10, 352 + (n * 15), x + 66, 352 + (n * 15), 4, 0xFF58646A);
        d.Line(x + 8, 352 + (180 * set), x + 68, 352 + (180 * set), 7, 0xFFC63D2B);
    }
}
