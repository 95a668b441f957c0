namespace Ohmstead.App.Demo;

/// <summary>A single-throttle unit in a pressed-steel case.</summary>
internal static class TinCase
{
    public static void Draw(Drawing d)
    {
        d.Shadow(260, 650, 720, 100);
        d.Box(270, 240, 660, 480, 34, 0xFF7E9386, 0xFF3D4D45);
        d.Box(284, 252, 632, 60, 26, 0x60FFFFFF, 0x08FFFFFF);
        d.Box(270, 590, 660, 130, 20, 0xFF47564E, 0xFF29342E);
        for (var n = 0; n < 6; n++)
        {
            d.Box(310, 350 + (n * 34), 120, 14, 7, 0xFF1B241F, 0xFF36443C);
            d.Line(316, 366 + (n * 34), 424, 366 + (n * 34), 3, 0x80B5C7BC);
        }
        d.Disc(620, 440, 138, 0xFF1A221E, 0xFF4A5A52);
        d.Disc(620, 440, 128, 0xFFE9E4D4, 0xFFBEB8A4);
        d.Ticks(620, 440, 98, 118, 9, 0xFF2B2F2C);
        d.Line(620, 440, 692, 356, 36, 0xFF23201E);
        d.Line(616, 432, 684, 352, 9, 0xFF6B6460);
        d.Disc(620, 440, 46, 0xFF3A3532, 0xFF151312);
        d.Disc(620, 440, 16, 0xFFE8CF8E, 0xFF866424);
        d.Disc(836, 380, 34, 0xFF1A1512, 0xFF1A1512);
        d.Disc(836, 376, 28, 0xFFE2705C, 0xFF8E1F14);
        d.Disc(836, 500, 26, 0xFF101010, 0xFF3A3A34);
        d.Disc(836, 498, 20, 0xFFB9F0B4, 0xFF2C7A38);
        using (var rust = Drawing.Path("M880 690 Q900 640 926 660 L928 704 Q900 724 876 716 Z"))
            d.Fill(rust, 0x90A85A2A, 0x90703410);
        using (var scratch = Drawing.Path("M330 300 L402 322 M346 296 L386 310"))
            d.Stroke(scratch, 3, 0x90D8E2DC);
        for (var n = 0; n < 5; n++)
            d.Post(360 + (n * 120), 656);
    }
}
