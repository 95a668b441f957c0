namespace Ohmstead.App.Demo;

/// <summary>A unit whose speed is set in steps by a rotary.</summary>
internal static class SteppedBox
{
    public static void Draw(Drawing d)
    {
        d.Shadow(230, 660, 770, 96);
        using (var side = Drawing.Path("M250 640 L290 230 L930 230 L960 640 L960 720 L250 720 Z"))
            d.Fill(side, 0xFF3E5874, 0xFF1B2735);
        using (var top = Drawing.Path("M250 640 L290 230 L930 230 L960 640 Z"))
        {
            d.Fill(top, 0xFF6B8AA8, 0xFF3C5670);
            d.Stroke(top, 4, 0xFF22303F);
        }
        d.Disc(520, 430, 168, 0xFF1C2836, 0xFF2C3E52);
        d.Disc(520, 430, 158, 0xFFE6E9EA, 0xFFB6BEC4);
        for (var n = 0; n < 8; n++)
        {
            var angle = (-200 + (n * 220f / 7)) * MathF.PI / 180;
            d.Disc(
                520 + (126 * MathF.Cos(angle)),
                430 + (126 * MathF.Sin(angle)),
                8 + (n * 1.4f),
                0xFFA83A26,
                0xFF74200F
            );
        }
        d.Disc(520, 430, 86, 0xFF2A2A2C, 0xFF0E0E10);
        for (var n = 0; n < 12; n++)
        {
            var angle = n * MathF.PI / 6;
            d.Disc(520 + (84 * MathF.Cos(angle)), 430 + (84 * MathF.Sin(angle)), 11, 0xFF2E2E30, 0xFF121214);
        }
        d.Line(520, 430, 574, 366, 12, 0xFFF2EFE8);
        d.Disc(800, 380, 66, 0xFF1C2836, 0xFF2C3E52);
        d.Disc(800, 380, 56, 0xFF8B2C1E, 0xFF4C120A);
        d.Line(770, 394, 830, 366, 12, 0xFFF2EFE8);
        d.Disc(800, 530, 30, 0xFF101418, 0xFF34404C);
        d.Disc(800, 528, 23, 0xFFFFE7A8, 0xFFD08A24);
        d.Box(310, 590, 160, 34, 6, 0xFFCFC7AE, 0xFFA39A7E);
        for (var n = 0; n < 4; n++)
            d.Post(390 + (n * 140), 682);
    }
}
