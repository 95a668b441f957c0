namespace Ohmstead.App.Demo;

/// <summary>The invented DC unit: a mustard wedge, its eight speeds as the rungs of a ladder that a bar is hooked into.</summary>
internal static class LadderFront
{
    public static void Draw(Drawing d)
    {
        d.Shadow(230, 690, 760, 80);
        using (var wedge = Drawing.Path("M330 190 L870 190 L990 740 L210 740 Z"))
        {
            d.Fill(wedge, 0xFFE3B94B, 0xFFA87A1C);
            d.Stroke(wedge, 6, 0xFF6A4A0C);
        }
        using (var panel = Drawing.Path("M400 240 L640 240 L640 690 L340 690 Z"))
        {
            d.Fill(panel, 0xFF2F3E52, 0xFF1C2735);
            d.Stroke(panel, 3, 0xFF111923);
        }
        for (var n = 0; n < 8; n++)
        {
            var y = 650 - (n * 54);
            d.Line(430 - (n * 4f), y, 610, y, 13, 0xFFC9D2D8);
            d.Disc(620, y, 6 + (n * 1.3f), 0xFFE9B44C, 0xFFB06E14);
        }
        d.Box(400, 462, 236, 30, 12, 0xFFC63D2B, 0xFF7E2012);
        d.Box(372, 452, 48, 50, 16, 0xFFF2EFE8, 0xFFB9B2A2);
        d.Box(712, 300, 150, 60, 30, 0xFF2F3E52, 0xFF1C2735);
        d.Disc(742, 330, 34, 0xFFF2EFE8, 0xFFB9B2A2);
        d.Disc(800, 460, 28, 0xFF3B2C08, 0xFF3B2C08);
        d.Disc(800, 457, 21, 0xFFFFE7A8, 0xFFD08A24);
        d.Box(700, 540, 190, 34, 6, 0xFFF2EFE8, 0xFFCFC7AE);
        for (var n = 0; n < 4; n++)
            d.Post(700 + (n * 66), 656);
    }
}
