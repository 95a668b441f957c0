using System.Text;
using System.Text.RegularExpressions;
using Ohmstead.App.Papers;
using Ohmstead.Workshop.Job;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Papers;
using Ohmstead.Workshop.Shops;
using QRCoder;
using ZXing;

namespace Ohmstead.App.Tests.Papers;

public class LabelTests
{
    private static byte[] Written(Label label, string name)
    {
        var pdf = LabelPdf.Write(label, PaperUnits.Noon);
        Pdf.Keep(name, pdf);
        return pdf;
    }

    private static Label Good => Made(PaperUnits.Matter("twin-175", PaperUnits.Checked(PaperUnits.Repaired())));

    private static Label Bad => Made(PaperUnits.Matter("solo-110", new TakenIn("A-1", "solo-110", "J. Owner", "dead")));

    private static Label Made(JudgedUnit matter) => Label.Make(matter, Label.RecordOf(matter.Unit));

    private static string Flat(byte[] pdf) => Regex.Replace(Pdf.Text(pdf), @"\s+", " ");

    [Fact]
    public void It_is_one_page_of_62_by_29_millimeters()
    {
        // 62 mm and 29 mm at 72/25.4 points a millimeter.
        foreach (var pdf in (byte[][])[Written(Good, "label.pdf"), Written(Bad, "label-not-plugged.pdf")])
        {
            Assert.Matches(@"Page size:\s+175\.7\d* x 82\.2\d* pts", Pdf.About(pdf));
            Assert.Matches(@"Pages:\s+1\n", Pdf.About(pdf));
        }
    }

    [Fact]
    public void A_tested_unit_s_label_says_tag_day_and_what_was_tested()
    {
        var text = Flat(Written(Good, "label.pdf"));
        string[] said = ["F-041", "Tested 13 Mar 2026", "Insulation, load, series lamp", "Tests recorded. No certification."];
        Assert.All(said, words => Assert.Contains(words, text, StringComparison.Ordinal));
        Assert.DoesNotContain("plug this in", text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_unit_that_has_not_passed_gets_the_label_that_forbids_the_plug()
    {
        var text = Flat(Written(Bad, "label-not-plugged.pdf"));
        Assert.Contains("Do not plug this in", text, StringComparison.Ordinal);
        Assert.Contains("A-1", text, StringComparison.Ordinal);
        Assert.Contains("14 Mar 2026", text, StringComparison.Ordinal);
        Assert.DoesNotContain("Tested", text, StringComparison.Ordinal);
    }

    /// <summary>As a phone reads it: the label in dots, through a reader of bar codes.</summary>
    [Fact]
    public void A_reader_of_codes_reads_the_record_s_text_off_the_printed_label()
    {
        var label = Good;
        var (width, height, pixels) = Pdf.Pixels(LabelPdf.Write(label, PaperUnits.Noon), 300);
        Assert.Equal(
            label.Code,
            new BarcodeReaderGeneric().Decode(new RGBLuminanceSource(pixels, width, height, RGBLuminanceSource.BitmapFormat.Gray8))?.Text
        );
    }

    /// <summary>Each square of the code is looked at in its middle, at 600 dots an inch, against the code's own matrix.</summary>
    [Fact]
    public void The_code_on_it_is_the_record_s_text()
    {
        var label = Good;
        Assert.StartsWith("OHMSTEAD 1\nF-041 twin-175\ntested 2026-03-1", label.Code, StringComparison.Ordinal);
        Assert.Matches(@"\nread \d+ of \d+\n", label.Code);
        Assert.Contains(
            $"\nrecord {Label.RecordOf(PaperUnits.Unit(PaperUnits.Checked(PaperUnits.Repaired())))[..16]}\n",
            label.Code,
            StringComparison.Ordinal
        );
        Assert.EndsWith("\ntests recorded, no certification", label.Code, StringComparison.Ordinal);
        Assert.InRange(Encoding.UTF8.GetByteCount(label.Code), 100, 150);
        using var code = QRCodeGenerator.GenerateQrCode(label.Code, QRCodeGenerator.ECCLevel.M, forceUtf8: true);
        var (width, height, pixels) = Pdf.Pixels(LabelPdf.Write(label, PaperUnits.Noon), 600);
        const double dots = 600 / 72.0;
        var (size, rows) = (68 * dots, code.ModuleMatrix.Count);
        var (left, top) = (width - size - (5 * dots), (height - size) / 2);
        for (var y = 0; y < rows; y++)
        for (var x = 0; x < rows; x++)
        {
            var at = ((int)(top + ((y + 0.5) * size / rows)) * width) + (int)(left + ((x + 0.5) * size / rows));
            Assert.Equal(code.ModuleMatrix[y][x], pixels[at] < 128);
        }
    }

    [Fact]
    public void A_unit_not_to_be_plugged_in_says_so_on_the_line_after_its_tag_and_never_whose_it_is()
    {
        var lines = Bad.Code.Split('\n');
        Assert.Equal("A-1 solo-110", lines[1]);
        Assert.StartsWith("DO NOT PLUG IN: ", lines[2], StringComparison.Ordinal);
        Assert.DoesNotContain("Owner", Bad.Code, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(400, 4)]
    [InlineData(4, 400)]
    public void A_code_is_never_longer_than_its_squares_allow(int tag, int sheet)
    {
        var label = Made(
            UnitJudge.Make(
                PaperUnits.Unit([new TakenIn(new string('ß', tag), new string('x', sheet), "", "dead")]),
                null,
                PaperUnits.Shop,
                PaperUnits.Noon
            )
        );
        Assert.InRange(Encoding.UTF8.GetByteCount(label.Code), 100, 150);
        Assert.Contains("\nDO NOT PLUG IN: ", label.Code, StringComparison.Ordinal);
        Assert.EndsWith("\ntests recorded, no certification", label.Code, StringComparison.Ordinal);
    }

    /// <summary>ISO/IEC 18004: level M, squares of 0.4 mm or more, four of them white all round.</summary>
    [Fact]
    public void The_code_s_squares_are_large_enough()
    {
        using var code = QRCodeGenerator.GenerateQrCode(new string('x', 150), QRCodeGenerator.ECCLevel.M, forceUtf8: true);
        Assert.Equal(49 + 8, code.ModuleMatrix.Count);
        Assert.True(LabelLayout.CodeSize / code.ModuleMatrix.Count * 25.4 / 72 >= 0.4);
        Assert.All(code.ModuleMatrix.Take(4), row => Assert.DoesNotContain(true, row.Cast<bool>()));
    }

    /// <summary>
    /// As photographed in the hand: turned by so many degrees, half the dots, blurred; and at an angle. A label that leans by 45° a foot in
    /// front of a camera shows its far end, 31 mm from its middle, smaller by 31·sin 45°/305, a fourteenth; a seventh and a fifth are closer, steeper shots.
    /// </summary>
    [Theory]
    [InlineData(0, 1, 0)]
    [InlineData(12, 2, 0)]
    [InlineData(-20, 2, 0)]
    [InlineData(90, 2, 0)]
    [InlineData(0, 1, 0.2)]
    [InlineData(12, 1, 0.14)]
    [InlineData(-20, 1, 0.14)]
    public void A_turned_tilted_and_blurred_picture_of_the_label_is_read(int degrees, int blur, double tilt)
    {
        foreach (var label in (Label[])[Good, Bad])
        {
            var (side, photo) = LabelPhoto.Of(LabelPng.Write(label), degrees, blur, tilt);
            var read = new BarcodeReaderGeneric { Options = { TryHarder = true, PossibleFormats = [BarcodeFormat.QR_CODE] } }.Decode(
                new RGBLuminanceSource(photo, side, side, RGBLuminanceSource.BitmapFormat.Gray8)
            );
            Assert.Equal(label.Code, read?.Text);
        }
    }

    [Fact]
    public void Names_without_end_stay_on_it()
    {
        var label = Good with { Tag = new string('W', 300), Title = new string('m', 5_000), Words = new string('i', 5_000) };
        var pdf = Written(label, "label-long.pdf");
        Assert.Matches(@"Pages:\s+1\n", Pdf.About(pdf));
        Assert.Contains("Tests recorded. No certification.", Flat(pdf), StringComparison.Ordinal);
        Assert.Matches(
            @"Pages:\s+1\n",
            Pdf.About(Written(Bad with { Tag = new string('W', 300), Words = new string('i', 5_000) }, "label-not-long.pdf"))
        );
    }
}
