using System.Globalization;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Words;

namespace Ohmstead.Workshop.Journal;

/// <summary>What a person types for what a meter shows: <c>18.6</c>, <c>18,6 V</c>, <c>0.3k</c>, <c>4k7</c>, <c>OL</c>, <c>jumps 3.1 to OL</c>, <c>could not, no clip</c>.</summary>
public static class ShownText
{
    private static readonly string[] OverRangeWords = ["ol", "o.l", "o.l.", "0l", "0.l", "over", "open", "∞"];
    private static readonly string[] JumpWords = ["it jumps", "jumps", "jump"];
    private static readonly string[] NotTakenWords = ["could not, because", "could not because", "could not", "couldn't", "not taken"];

    /// <summary>Reads it, whatever the culture of the machine. A point or a comma may stand before the decimals.</summary>
    /// <returns>What was shown; or why it cannot be told, in words for the person who typed it.</returns>
    public static TypedShown Read(string text, Quantity quantity)
    {
        var typed = text.Trim();
        if (typed.Length == 0)
            return Refused("Type what the meter shows.");
        if (IsOverRange(typed))
            return new TypedShown(Shown.OverRange, "");
        if (After(typed, NotTakenWords) is { } why)
            return why.Length > 0 ? new TypedShown(Shown.NotTaken(why), "") : Refused("Say why it could not be taken.");
        if (After(typed, JumpWords) is { } between)
            return ReadJump(between, quantity);
        var number = NumberText.Read(typed, quantity);
        return number.Problem.Length > 0 ? Refused(number.Problem) : new TypedShown(Shown.Number(number.Value), "");
    }

    /// <summary>What was shown, with its unit, every digit kept: <c>18.6 V</c>, <c>4.7 kΩ</c>, <c>OL</c>.</summary>
    public static string Write(Shown shown, Quantity quantity) =>
        shown.Kind switch
        {
            ShownKind.Value => WriteNumber(shown.Value, quantity),
            ShownKind.OverRange => "OL",
            ShownKind.Jumps when shown.Between.Length > 0 => "jumps, "
                + string.Join(" to ", shown.Between.Select(v => v is { } value ? WriteNumber(value, quantity) : "OL")),
            ShownKind.Jumps => "it jumps",
            _ => shown.Why.Length == 0 ? "could not be taken" : $"could not be taken: {shown.Why}",
        };

    private static string WriteNumber(double value, Quantity quantity)
    {
        var (by, prefix) = quantity is not (Quantity.Ohms or Quantity.InsulationOhms)
            ? (1, "")
            : Math.Abs(value) switch
            {
                >= 1e9 => (1e9, "G"),
                >= 1e6 => (1e6, "M"),
                >= 1e3 => (1e3, "k"),
                _ => (1, ""),
            };
        return $"{(value / by).ToString("0.#####", CultureInfo.InvariantCulture)} {prefix}{ValueText.LetterOf(quantity)}";
    }

    private static TypedShown ReadJump(string between, Quantity quantity)
    {
        if (between.Length == 0)
            return new TypedShown(Shown.Jumps(), "");
        var ends = between.Split([" to ", " and ", "..", "…", "–"], StringSplitOptions.TrimEntries);
        if (ends.Length != 2)
            return Refused("Give the two values between which it jumps: jumps 3.1 to OL.");
        var values = new double?[2];
        for (var i = 0; i < 2; i++)
        {
            if (IsOverRange(ends[i]))
                continue;
            var number = NumberText.Read(ends[i], quantity);
            if (number.Problem.Length > 0)
                return Refused(number.Problem);
            values[i] = number.Value;
        }
        return new TypedShown(Shown.Jumps(values), "");
    }

    private static bool IsOverRange(string typed) => OverRangeWords.Contains(typed, StringComparer.OrdinalIgnoreCase);

    /// <summary>What follows one of the words; null when the text begins with none of them.</summary>
    private static string? After(string typed, string[] words)
    {
        var begin = Array.Find(words, w => typed.StartsWith(w, StringComparison.OrdinalIgnoreCase));
        return begin is null ? null : typed[begin.Length..].Trim(' ', ':', ',', '.');
    }

    private static TypedShown Refused(string problem) => new(null, problem);
}

/// <summary>What a person typed, understood or not.</summary>
/// <param name="Shown">What was shown; null when it cannot be told.</param>
/// <param name="Problem">Why it cannot be told; empty when it can.</param>
public sealed record TypedShown(Shown? Shown, string Problem);
