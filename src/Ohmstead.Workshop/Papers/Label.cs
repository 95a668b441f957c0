using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using Ohmstead.Workshop.Job;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Units;
using Ohmstead.Workshop.Words;

namespace Ohmstead.Workshop.Papers;

/// <summary>The label that sticks to the unit, 62 by 29 mm: what was tested and when, or that it is not to be plugged in.</summary>
/// <param name="Tag">The unit's tag.</param>
/// <param name="Title">What the unit is.</param>
/// <param name="Day">When it was last read; for one that is not to be plugged in, when the label was made.</param>
/// <param name="Words">What was tested; or why it is not to be plugged in.</param>
/// <param name="Code">What its QR code says.</param>
public sealed record Label(string Tag, string Title, string Day, string Words, bool MayBePluggedIn, string Code)
{
    /// <summary>Its name in <see cref="Journal.PaperMade"/> and in addresses.</summary>
    public const string Id = "label";

    /// <summary>The most bytes of text that a code of 57 by 57 squares holds with its margin (QR code version 8, level M, holds 152).</summary>
    private const int MostCodeBytes = 150;

    /// <summary>First line of a code: what wrote it.</summary>
    private const string Mark = "OHMSTEAD 1";

    /// <summary>Last line of a code.</summary>
    private const string CodeFoot = "tests recorded, no certification";

    private const string NotPlugged = "DO NOT PLUG IN: ";

    /// <summary>Sorts of reading that there is room for, the gravest first.</summary>
    private const int MostSorts = 3;

    /// <summary>The foot of a label of a unit that was tested.</summary>
    public const string Foot = "Tests recorded. No certification.";

    /// <summary>The label of a unit as it is now.</summary>
    /// <param name="recordSha256">Of the unit's journal file; the code names it, so that a record can be told from another.</param>
    public static Label Make(JudgedUnit judged, string recordSha256)
    {
        var (tag, day) = (judged.Unit.Card.Tag, PaperParts.Day(judged.At));
        var title = OwnerFacts.Title(judged);
        if (!judged.MayBePluggedIn)
            return new(tag, title, day, Why(judged), false, CodeOf(judged, recordSha256, Why(judged)));
        var sorts = OwnerFacts.Sorts(judged);
        var words = sorts.IsEmpty
            ? "Nothing was read. Waivers are in the record."
            : $"{Sentences.Large(string.Join(", ", sorts.Take(MostSorts)))}: read and recorded";
        var tested = PaperParts.Day(OwnerFacts.TestedOn(judged));
        return new(tag, title, tested, words, true, CodeOf(judged, recordSha256, ""));
    }

    /// <summary>The gravest thing that is open, as short as a label wants it.</summary>
    private static string Why(JudgedUnit judged) =>
        judged.Failed.FirstOrDefault() is { } failed ? $"{failed.Title}: failed"
        : judged.TooClose.FirstOrDefault() is { } close ? $"{close.Title}: too close for the meter"
        : judged.Doubted.FirstOrDefault() is { } doubted ? $"{doubted.Title}: to be read again"
        : judged.Heat.FirstOrDefault() is { } heat ? heat
        : judged.Skipped.Any() ? "Cold checks not done"
        : OwnerFacts.OpenNow(judged, PageSpeaker.English)[0];

    /// <summary>SHA-256 of the journal file as <c>export</c> writes it, hexadecimal.</summary>
    public static string RecordOf(BenchUnit unit) =>
        Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(JournalFile.Write(unit.Id, unit.Journal))));

    /// <summary>
    /// What the code says, to be read with no program and no net: mark, tag and type sheet, why it is not to be plugged in, when, what was
    /// read and what was not, which record. Never the owner.
    /// </summary>
    private static string CodeOf(JudgedUnit judged, string recordSha256, string why)
    {
        var day = judged.Unit.Last.At.UtcDateTime.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
        List<string> end = [$"record {recordSha256[..16]}", CodeFoot];
        var read = judged.Lines.Count(l => l.IsTaken);
        var counted = string.Create(CultureInfo.InvariantCulture, $"read {read} of {judged.Lines.Length}");
        var fixedBytes = Bytes([Mark, "", $"tested {day}", counted, .. end]) + 1;
        var stop = why.Length == 0 ? "" : NotPlugged + why;
        // The tag names the unit and the warning guards it: a long sheet id gives way first, then the reason.
        var (tag, least) = (Cut(OneLine(judged.Unit.Card.Tag), why.Length == 0 ? 40 : 18), NotPlugged.Length + 20);
        var room = MostCodeBytes - fixedBytes - Encoding.UTF8.GetByteCount(tag);
        var sheet = Cut(
            OneLine(judged.Unit.Card.SheetId),
            Math.Max(0, room - 1 - (stop.Length == 0 ? 0 : Math.Min(Encoding.UTF8.GetByteCount(stop), least) + 1))
        );
        room -= 1 + Encoding.UTF8.GetByteCount(sheet);
        stop = stop.Length == 0 ? "" : Whole(OneLine(stop), Math.Max(0, room - 1));
        List<string> lines =
        [
            Mark,
            $"{tag} {sheet}".TrimEnd(),
            .. stop.Length > 0 ? [stop] : Array.Empty<string>(),
            $"tested {day}",
            counted,
            .. end,
        ];
        // Sorts of reading where there is still room for them.
        foreach (var sort in OwnerFacts.Sorts(judged))
        {
            var at = lines.IndexOf(counted) + 1;
            var with = lines[at].StartsWith("read: ", StringComparison.Ordinal)
                ? [.. lines[..at], $"{lines[at]}, {sort}", .. lines[(at + 1)..]]
                : (List<string>)[.. lines[..at], $"read: {sort}", .. lines[at..]];
            if (Bytes(with) > MostCodeBytes)
                break;
            lines = with;
        }
        return string.Join('\n', lines);
    }

    private static int Bytes(IReadOnlyCollection<string> lines) => lines.Sum(Encoding.UTF8.GetByteCount) + lines.Count - 1;

    private static string OneLine(string words) => string.Join(' ', words.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));

    /// <summary>As many whole words as fit into so many bytes, of the first as many letters.</summary>
    private static string Whole(string words, int most)
    {
        var cut = Cut(words, most);
        var end = cut.Length == words.Length || words[cut.Length] == ' ' ? -1 : cut.LastIndexOf(' ');
        return end <= NotPlugged.Length ? cut : cut[..end].TrimEnd(' ', ',', ':');
    }

    /// <summary>As many whole letters as fit into so many bytes.</summary>
    private static string Cut(string words, int most)
    {
        var kept = new StringBuilder();
        foreach (var letter in words.EnumerateRunes())
        {
            if ((most -= letter.Utf8SequenceLength) < 0)
                break;
            kept.Append(letter);
        }
        return kept.ToString().TrimEnd();
    }
}
