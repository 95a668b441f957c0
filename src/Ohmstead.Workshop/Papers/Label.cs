using System.Text;
using Ohmstead.Workshop.Words;

namespace Ohmstead.Workshop.Papers;

/// <summary>The label that sticks to the unit, 62 by 29 mm: what was tested and when, or that it is not to be plugged in.</summary>
/// <param name="Tag">The unit's tag.</param>
/// <param name="Title">What the unit is.</param>
/// <param name="Day">When it was last read; for one that is not to be plugged in, when the label was made.</param>
/// <param name="Words">What was tested; or why it is not to be plugged in.</param>
/// <param name="Code">The record's text, for a QR code.</param>
public sealed record Label(string Tag, string Title, string Day, string Words, bool MayBePluggedIn, string Code)
{
    /// <summary>Its name in <see cref="Journal.PaperMade"/> and in addresses.</summary>
    public const string Id = "label";

    /// <summary>The most bytes of text that a code of 57 by 57 squares holds with a fifth of it hidden (QR code version 10, level M).</summary>
    private const int MostCodeBytes = 213;

    /// <summary>Sorts of reading that there is room for, the gravest first.</summary>
    private const int MostSorts = 3;

    /// <summary>The foot of a label of a unit that was tested.</summary>
    public const string Foot = "Tests recorded. No certification.";

    /// <summary>The label of a unit as it is now.</summary>
    public static Label Make(PaperMatter matter)
    {
        var (tag, day) = (matter.Unit.Card.Tag, PaperParts.Day(matter.At));
        var title = OwnerFacts.Title(matter);
        if (!matter.MayBePluggedIn)
            return new(tag, title, day, Why(matter), false, "");
        var sorts = OwnerFacts.Sorts(matter);
        var words = sorts.IsEmpty
            ? "Nothing was read. Waivers are in the record."
            : $"{Sentences.Large(string.Join(", ", sorts.Take(MostSorts)))}: read and recorded";
        var tested = OwnerFacts.TestedOn(matter);
        return new(tag, title, tested, words, true, CodeOf(matter, tag, title, tested));
    }

    /// <summary>The gravest thing that is open, as short as a label wants it.</summary>
    private static string Why(PaperMatter matter) =>
        matter.Failed.FirstOrDefault() is { } failed ? $"{failed.Title}: failed"
        : matter.TooClose.FirstOrDefault() is { } close ? $"{close.Title}: too close for the meter"
        : matter.Doubted.FirstOrDefault() is { } doubted ? $"{doubted.Title}: to be read again"
        : matter.Heat.FirstOrDefault() is { } heat ? heat
        : matter.Skipped.Any() ? "Cold checks not done"
        : OwnerFacts.OpenNow(matter)[0];

    /// <summary>Tag, day, then readings, the gravest first, as many as the code holds.</summary>
    private static string CodeOf(PaperMatter matter, string tag, string title, string day)
    {
        var code = new StringBuilder();
        void Add(string line, int reserve)
        {
            if (Encoding.UTF8.GetByteCount($"{code}\n{line}") + reserve <= MostCodeBytes)
                code.Append(code.Length > 0 ? "\n" : "").Append(line);
        }
        var reserve = Encoding.UTF8.GetByteCount(Foot) + 1;
        Add(tag, reserve);
        // The code has room for readings or for a long title: what stands before its first comma names the unit.
        Add(title.Split(',')[0], reserve);
        Add($"Tested {day}", reserve);
        foreach (var line in matter.Waived)
            Add($"{line.Title}: waived by {line.Waiver!.WaivedBy}", reserve);
        foreach (var line in OwnerFacts.Tested(matter))
            Add($"{line.Title}: {line.Measured}", reserve);
        Add(Foot, 0);
        return code.ToString();
    }
}
