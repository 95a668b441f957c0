namespace Ohmstead.App.Demo;

/// <summary>A twin-throttle unit in a moulded case.</summary>
internal static class MouldedCase
{
    public static void Draw(Drawing d)
    {
        d.Shadow(170, 640, 900, 110);
        using (
            var body = Drawing.Path(
                "M230 720 L200 420 Q200 210 420 190 L780 190 Q1000 210 1000 420 L970 720 Q600 750 230 720 Z"
            )
        )
        {
            d.Fill(body, 0xFF55423A, 0xFF1B1412);
            d.Stroke(body, 3, 0xFF120D0B);
        }
        using (var shine = Drawing.Path("M250 330 Q300 235 440 222 L760 222 Q890 232 940 300"))
            d.Stroke(shine, 9, 0x50FFE8D8);
        using (var ledge = Drawing.Path("M222 600 L978 600 L968 716 Q600 744 232 716 Z"))
            d.Fill(ledge, 0xFF2E2420, 0xFF15100E);
        using (var chip = Drawing.Path("M262 280 L292 262 L318 288 L296 306 L274 302 Z"))
            d.Fill(chip, 0xFF7A5F50, 0xFF59443A);
        for (var n = 0; n < 7; n++)
            d.Line(530 + (n * 24), 250, 530 + (n * 24), 300, 9, 0xFF0E0A08);
        Throttle(d, 390, -130);
        Throttle(d, 810, -60);
        d.Box(540, 350, 120, 66, 8, 0xFFD9BC7C, 0xFFA98545);
        d.Line(556, 372, 644, 372, 5, 0xFF5C4420);
        d.Line(556, 392, 622, 392, 5, 0xFF5C4420);
        d.Disc(600, 470, 26, 0xFF101010, 0xFF3A302A);
        d.Disc(600, 468, 20, 0xFFFFD27A, 0xFFC4521C);
        d.Box(578, 520, 44, 70, 14, 0xFFD5CDBE, 0xFF8C8272);
        for (var n = 0; n < 5; n++)
            d.Post(340 + (n * 130), 660);
    }

    private static void Throttle(Drawing d, float x, float degrees)
    {
        d.Disc(x, 430, 132, 0xFF14100E, 0xFF3A2D27);
        d.Disc(x, 430, 122, 0xFFF1E6CD, 0xFFCDBE9C);
        d.Ticks(x, 430, 92, 112, 11, 0xFF33302A);
        d.Disc(x, 430, 62, 0xFF5A1F18, 0xFF2C0D0A);
        var (c, s) = (MathF.Cos(degrees * MathF.PI / 180), MathF.Sin(degrees * MathF.PI / 180));
        d.Line(x, 430, x + (104 * c), 430 + (104 * s), 34, 0xFF7A2A20);
        d.Line(x, 424, x + (98 * c), 424 + (98 * s), 10, 0xFFB65A48);
        d.Disc(x, 430, 22, 0xFFE8CF8E, 0xFF866424);
    }
}
