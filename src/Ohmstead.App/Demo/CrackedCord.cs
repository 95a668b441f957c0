namespace Ohmstead.App.Demo;

/// <summary>A cord that has gone hard, its cover broken down to the copper.</summary>
internal static class CrackedCord
{
    private const string Way = "M-40 250 C260 170 330 640 620 480 C800 380 820 560 930 600";

    public static void Draw(Drawing d)
    {
        using (var shadow = Drawing.Path("M-40 282 C260 202 330 672 620 512 C800 412 820 592 930 632"))
            d.Stroke(shadow, 64, 0x50201408);
        using (var cord = Drawing.Path(Way))
        {
            d.Stroke(cord, 62, 0xFF2A1A12);
            d.Stroke(cord, 50, 0xFF5A3A28);
        }
        using (var shine = Drawing.Path("M-40 236 C262 158 336 622 622 466 C800 368 826 546 934 588"))
            d.Stroke(shine, 10, 0x60E8C4A4);
        using (var gap = Drawing.Path("M528 492 L560 470 L604 452 L640 446 L652 478 L626 508 L580 528 L540 532 Z"))
            d.Fill(gap, 0xFF140C08, 0xFF2A1A12);
        for (var n = 0; n < 6; n++)
        {
            using var strand = Drawing.Path(FormattableString.Invariant($"M534 {516 - (n * 5)} Q590 {502 - (n * 7)} 648 {472 - (n * 4)}"));
            d.Stroke(strand, 5, n % 2 == 0 ? 0xFFE39A55u : 0xFFB86A2Au);
        }
        foreach (var (x, y) in ((float, float)[])[(250, 366), (318, 452), (390, 514), (466, 530), (716, 450), (790, 470)])
        {
            using var crack = Drawing.Path(
                FormattableString.Invariant($"M{x - 12} {y - 26} L{x + 4} {y - 8} L{x - 6} {y + 6} L{x + 12} {y + 26}")
            );
            d.Stroke(crack, 5, 0xFF140C08);
        }
        Plug(d);
    }

    private static void Plug(Drawing d)
    {
        d.Shadow(900, 560, 190, 130);
        using (var body = Drawing.Path("M900 566 L1010 520 Q1090 520 1096 606 Q1096 690 1010 690 L900 640 Z"))
            d.Fill(body, 0xFF4A3024, 0xFF1E120C);
        d.Box(1084, 556, 96, 20, 4, 0xFFF3D58B, 0xFF8A6420);
        d.Box(1084, 634, 96, 20, 4, 0xFFF3D58B, 0xFF8A6420);
        d.Disc(1156, 566, 6, 0xFF5A4116, 0xFF5A4116);
        d.Disc(1156, 644, 6, 0xFF5A4116, 0xFF5A4116);
    }
}
