using Ohmstead.App.Papers;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Papers;
using PdfSharp.Drawing;
using PdfSharp.Pdf;

namespace Ohmstead.App.Tests.Papers;

public class TypefaceTests
{
    private static readonly Typeface Type = Typeface.Get();
    private static readonly TextStyle Plain = new(11, false, XColors.Black);
    private static readonly TextStyle Bold = new(11, true, XColors.Black);

    /// <summary>Bytes set aside are the work that is counted here: seconds are of the machine.</summary>
    private static long WorkFor(string words)
    {
        var before = GC.GetAllocatedBytesForCurrentThread();
        Type.Lines(words, 200, Plain);
        return GC.GetAllocatedBytesForCurrentThread() - before;
    }

    [Fact]
    public void A_word_ten_times_as_long_is_ten_times_the_work()
    {
        WorkFor(new('x', 500));
        Assert.InRange(WorkFor(new('x', 50_000)), 1, 15 * WorkFor(new('x', 5_000)));
        Assert.InRange(WorkFor(new('x', 5_000)), 1, 400_000);
    }

    [Fact]
    public void An_unbroken_word_is_broken_into_full_lines_and_nothing_of_it_is_lost()
    {
        var word = new string('m', 5_000);
        var lines = Type.Lines(word, 200, Plain);
        Assert.Equal(word, string.Concat(lines));
        Assert.All(lines, l => Assert.True(Type.WidthOf(l, Plain) <= 200));
        Assert.All(lines.SkipLast(1), l => Assert.True(Type.WidthOf(l + "m", Plain) > 200));
    }

    [Fact]
    public void Words_fill_a_line_up_to_its_width_and_no_further()
    {
        const string words = "one two three four five six seven eight nine ten eleven twelve";
        var lines = Type.Lines(words, 100, Bold);
        Assert.Equal(words, string.Join(' ', lines));
        Assert.True(lines.Count > 2);
        Assert.All(lines, l => Assert.True(Type.WidthOf(l, Bold) <= 100));
        for (var n = 0; n < lines.Count - 1; n++)
            Assert.True(Type.WidthOf($"{lines[n]} {lines[n + 1].Split(' ')[0]}", Bold) > 100);
        Assert.Equal(["a", "", "b"], Type.Lines("a\n\nb\n", 100, Plain));
    }

    [Theory]
    [InlineData("Post A to post B: 0.42 Ω, 19.6 V", false)]
    [InlineData("Do not plug this in", true)]
    public void Words_are_as_wide_as_PDFsharp_sets_them(string words, bool isBold)
    {
        var own = Type.WidthOf(words, isBold ? Bold : Plain);
        using var document = new PdfDocument();
        using var page = XGraphics.FromPdfPage(document.AddPage());
        var font = new XFont("Paper", 11, isBold ? XFontStyleEx.Bold : XFontStyleEx.Regular);
        Assert.Equal(page.MeasureString(words, font).Width, own, 0.01);
    }

    [Fact]
    public void A_tag_of_brackets_and_control_characters_is_only_words_in_the_pdf_s_own_title()
    {
        const string tag = "F-1) /Evil (x\\ \u001b[2J\u0007\n2";
        var matter = PaperUnits.Matter("solo-110", new TakenIn(tag, "solo-110", "", ""));
        var about = Pdf.About(Pdf.Of(BenchSheet.Make(matter, [])));
        Assert.Contains("F-1) /Evil (x\\  [2J  2", about, StringComparison.Ordinal);
        Assert.DoesNotContain('\u001b', about);
        Assert.DoesNotContain('\u0007', about);
    }
}
