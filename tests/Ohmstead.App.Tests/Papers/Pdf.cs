using System.Diagnostics;
using System.Globalization;
using Ohmstead.App.Papers;
using Ohmstead.Workshop.Papers;
using Ohmstead.Workshop.Shops;

namespace Ohmstead.App.Tests.Papers;

/// <summary>Papers as a reader of PDF sees them.</summary>
internal static class Pdf
{
    public static byte[] Of(Paper paper, string size = Shop.Letter) =>
        PaperPdf.Write(paper, size, new Dictionary<string, byte[]> { [PaperUnits.Photo] = PaperUnits.Bitmap() }, PaperUnits.Noon);

    /// <summary>The words of a PDF, laid out as on its pages, a form feed after each page.</summary>
    public static string Text(byte[] pdf) => Run("pdftotext", pdf, "-layout", "-", "-");

    /// <summary>What pdfinfo tells of it.</summary>
    public static string About(byte[] pdf) => Run("pdfinfo", pdf, "-");

    /// <summary>The sizes of the letters in it [pt].</summary>
    public static double[] Sizes(byte[] pdf)
    {
        var path = Path.Combine(Directory.CreateTempSubdirectory("ohmstead-test-").FullName, "paper.pdf");
        File.WriteAllBytes(path, pdf);
        return
        [
            .. System
                .Text.RegularExpressions.Regex.Matches(
                    Run("pdftohtml", [], "-xml", "-i", "-zoom", "1", "-stdout", path),
                    "<fontspec [^>]*size=\"([0-9.]+)\""
                )
                .Select(m => double.Parse(m.Groups[1].Value, CultureInfo.InvariantCulture)),
        ];
    }

    /// <summary>A page as gray pixels, row by row.</summary>
    public static (int Width, int Height, byte[] Pixels) Pixels(byte[] pdf, int dotsPerInch)
    {
        var folder = Directory.CreateTempSubdirectory("ohmstead-test-").FullName;
        File.WriteAllBytes(Path.Combine(folder, "paper.pdf"), pdf);
        Run(
            "pdftoppm",
            [],
            "-gray",
            "-r",
            dotsPerInch.ToString(CultureInfo.InvariantCulture),
            "-singlefile",
            Path.Combine(folder, "paper.pdf"),
            Path.Combine(folder, "page")
        );
        var bytes = File.ReadAllBytes(Path.Combine(folder, "page.pgm"));
        // P5, width and height, 255, one white space, then the pixels.
        var head = System.Text.RegularExpressions.Regex.Match(
            System.Text.Encoding.ASCII.GetString(bytes, 0, 40),
            @"^P5\s+(\d+)\s+(\d+)\s+255\s"
        );
        var (width, height) = (
            int.Parse(head.Groups[1].Value, CultureInfo.InvariantCulture),
            int.Parse(head.Groups[2].Value, CultureInfo.InvariantCulture)
        );
        return (width, height, bytes[head.Length..]);
    }

    /// <summary>Keeps a PDF for a look at it, where OHMSTEAD_LOOK names a folder.</summary>
    public static void Keep(string name, byte[] pdf)
    {
        if (Environment.GetEnvironmentVariable("OHMSTEAD_LOOK") is { Length: > 0 } folder)
            File.WriteAllBytes(Path.Combine(folder, name), pdf);
    }

    private static string Run(string program, byte[] input, params string[] arguments)
    {
        var start = new ProcessStartInfo(program) { RedirectStandardInput = true, RedirectStandardOutput = true };
        foreach (var a in arguments)
            start.ArgumentList.Add(a);
        using var process = Process.Start(start)!;
        var feed = Task.Run(() =>
        {
            process.StandardInput.BaseStream.Write(input);
            process.StandardInput.Close();
        });
        var text = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        feed.Wait();
        if (process.ExitCode != 0)
            throw new InvalidOperationException(string.Create(CultureInfo.InvariantCulture, $"{program} ended with {process.ExitCode}"));
        return text;
    }
}
