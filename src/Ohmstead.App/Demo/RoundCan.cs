namespace Ohmstead.App.Demo;

/// <summary>The invented unit for one track: a round cream can with a brick-red band, its dial flat on top.</summary>
internal static class RoundCan
{
    public static void Draw(Drawing d)
    {
        d.Shadow(280, 680, 640, 90);
        using (var side = Drawing.Path("M290 330 L290 660 C290 770 910 770 910 660 L910 330 Z"))
        {
            d.Fill(side, 0xFFF2E8CF, 0xFFC9B88F);
            d.Stroke(side, 5, 0xFF8C7A52);
        }
        using (var band = Drawing.Path("M290 560 L290 640 C290 750 910 750 910 640 L910 560 C910 670 290 670 290 560 Z"))
            d.Fill(band, 0xFFB4553F, 0xFF7E3324);
        using (var top = Drawing.Path("M290 330 C290 190 910 190 910 330 C910 470 290 470 290 330 Z"))
        {
            d.Fill(top, 0xFFFBF4E2, 0xFFDCCDA8);
            d.Stroke(top, 5, 0xFF8C7A52);
        }
        using (var dial = Drawing.Path("M400 326 C400 244 800 244 800 326 C800 408 400 408 400 326 Z"))
        {
            d.Fill(dial, 0xFF39505F, 0xFF22333F);
            d.Stroke(dial, 4, 0xFF16232C);
        }
        for (var n = 0; n < 16; n++)
        {
            var angle = n * MathF.PI / 8;
            d.Line(
                600 + (170 * MathF.Cos(angle)),
                326 + (52 * MathF.Sin(angle)),
                600 + (194 * MathF.Cos(angle)),
                326 + (60 * MathF.Sin(angle)),
                5,
                0xFFE9DDBD
            );
        }
        d.Line(600, 326, 716, 296, 16, 0xFFE9B44C);
        d.Disc(600, 322, 26, 0xFFE8CF8E, 0xFF866424);
        d.Disc(820, 505, 24, 0xFF4A2A20, 0xFF4A2A20);
        d.Disc(820, 502, 18, 0xFFF08A72, 0xFF9E2415);
        d.Box(350, 470, 120, 34, 17, 0xFF39505F, 0xFF22333F);
        d.Disc(376, 487, 22, 0xFFF2E8CF, 0xFFB9A678);
        using (var rust = Drawing.Path("M870 690 Q884 650 900 664 L898 692 Q884 704 866 704 Z"))
            d.Fill(rust, 0x90A85A2A, 0x90703410);
        for (var n = 0; n < 5; n++)
            d.Post(
                440 + (n * 80),
                560
                    + (
                        n is 0 or 4 ? -14
                        : n == 2 ? 6
                        : 0
                    )
            );
    }
}
