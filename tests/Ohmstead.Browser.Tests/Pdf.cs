using System.Diagnostics;

namespace Ohmstead.Browser.Tests;

/// <summary>What stands on a paper.</summary>
internal static class Pdf
{
    /// <summary>Its text, each run of white space as one blank.</summary>
    public static async Task<string> TextAsync(byte[] pdf)
    {
        using var process = Process.Start(
            new ProcessStartInfo("pdftotext", ["-", "-"]) { RedirectStandardInput = true, RedirectStandardOutput = true }
        )!;
        var output = process.StandardOutput.ReadToEndAsync();
        await process.StandardInput.BaseStream.WriteAsync(pdf);
        process.StandardInput.Close();
        await process.WaitForExitAsync();
        return string.Join(' ', (await output).Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
    }
}
