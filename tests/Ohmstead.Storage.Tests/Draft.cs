using System.Globalization;
using Ohmstead.Workshop.Journal;
using SkiaSharp;

namespace Ohmstead.Storage.Tests;

/// <summary>Invented entries and pictures; ids come from a counter, so that a test reads the same every time.</summary>
internal sealed class Draft(int seed = 1)
{
    private int ids;

    public static DateTimeOffset Noon { get; } = new(2026, 3, 4, 12, 0, 0, TimeSpan.Zero);

    public Guid Id() => new(seed, 0, 0, [.. BitConverter.GetBytes(++ids), 0, 0, 0, 0]);

    public NewEntry Entry(Fact fact, string by = "bench") => new(Id(), Noon.AddMinutes(ids), by, fact);

    public NewEntry TakenIn(string tag = "tag 12", string sheetId = "", string owner = "A. Brass") =>
        Entry(new TakenIn(tag, sheetId, owner, "Trains slow down"));

    public NewEntry Note(string words) => Entry(new Noted(words));

    public NewEntry Reading(string id, double value) => Entry(new ReadingEntered(id, Shown.Number(value), BenchState.AsSheet));

    /// <summary>A picture that differs with its number.</summary>
    public static byte[] Picture(int number, int width = 64, int height = 48, SKEncodedImageFormat format = SKEncodedImageFormat.Jpeg)
    {
        using var bitmap = new SKBitmap(width, height);
        bitmap.Erase(new SKColor((uint)(0xFF000000 | (number * 2654435761L & 0xFFFFFF))));
        using var canvas = new SKCanvas(bitmap);
        using var paint = new SKPaint { Color = SKColors.Black };
        for (var bit = 0; bit < 24; bit++)
            if ((number >> bit & 1) == 1)
                canvas.DrawRect(bit % 6 * 10, bit / 6 * 10, 8, 8, paint);
        using var encoded = bitmap.Encode(format, 80);
        return encoded.ToArray();
    }

    public static string Name(int number) => number.ToString("D4", CultureInfo.InvariantCulture);
}
