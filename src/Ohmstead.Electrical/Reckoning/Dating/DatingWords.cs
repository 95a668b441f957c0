using System.Collections.Immutable;
using System.Globalization;

namespace Ohmstead.Electrical.Reckoning.Dating;

/// <summary>What the dating of a unit comes to, in sentences.</summary>
internal static class DatingWords
{
    /// <summary>A swap that is this probable is said to be probable.</summary>
    private const double Probably = 50;

    /// <summary>The sentences, the range first.</summary>
    public static ImmutableArray<string> Of(DatingAnswer answer, DatingByDetails question)
    {
        string Title(string id) => question.Details.First(d => d.Id == id).Title;
        var words = ImmutableArray.CreateBuilder<string>();
        words.Add(Range(answer, question.Made));
        if (answer.Details.IsEmpty)
            words.Add("Nothing seen so far says more than that.");
        if (answer.Against is { } against)
        {
            var detail = question.Details.First(d => d.Id == against);
            var said = answer.Details.First(d => d.Id == against);
            var shows = detail.Seen < detail.Variants.Length ? detail.Variants[detail.Seen!.Value].Title : "none of those known";
            words.Add($"One detail speaks against these years: {detail.Title} ({shows}).");
            words.Add(
                said.SwappedPercent >= Probably
                    ? $"It was probably swapped later ({InHundred(said.SwappedPercent)}). Photograph it."
                    : $"The chance that it was swapped later is {InHundred(said.SwappedPercent)}. Look at it again, and photograph it."
            );
        }
        if (answer.Next.FirstOrDefault(n => n.Why == NextDetail.TellsMost) is { } next)
            words.Add($"Look at this next, and photograph it: {Title(next.Id)}.");
        return words.ToImmutable();
    }

    private static string Range(DatingAnswer answer, MadeYears made)
    {
        var years = Between(answer.From, answer.To);
        // Where every year is as likely as the others, those of the range are some of many alike.
        var isLikeAll = answer.Details.IsEmpty && made.Chances.All(c => c.Equals(made.Chances[0]));
        return isLikeAll || (answer.From == made.First && answer.To == made.Last)
            ? $"Made {Between(made.First, made.Last)}, like all of its type."
            : $"Probably made {years} ({InHundred(answer.Percent)}).";
    }

    private static string Between(int from, int to) => from == to ? $"in {Year(from)}" : $"between {Year(from)} and {Year(to)}";

    private static string Year(int year) => year.ToString(CultureInfo.InvariantCulture);

    /// <summary>Neither sure nor impossible where it is not.</summary>
    private static string InHundred(double percent) =>
        percent >= 99.5 ? "more than 99 in 100"
        : percent < 0.5 ? "less than 1 in 100"
        : $"{percent.ToString("0", CultureInfo.InvariantCulture)} in 100";
}
