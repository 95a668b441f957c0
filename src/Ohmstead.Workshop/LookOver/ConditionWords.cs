using System.Collections.Immutable;

namespace Ohmstead.Workshop.LookOver;

/// <summary>What is seen of a part: one of the usual answers, own words, or both with a semicolon between.</summary>
/// <param name="Answer">One of the usual answers; empty for none.</param>
/// <param name="Own">The person's own words; may be empty.</param>
public sealed record ConditionWords(string Answer, string Own)
{
    private const string Between = "; ";

    /// <summary>Tells the answer from own words.</summary>
    public static ConditionWords Read(string words, ImmutableArray<string> answers)
    {
        // The longest first: one answer may begin as another does.
        foreach (var answer in answers.OrderByDescending(a => a.Length))
        {
            if (words == answer)
                return new(answer, "");
            if (words.StartsWith(answer + Between, StringComparison.Ordinal))
                return new(answer, words[(answer.Length + Between.Length)..]);
        }
        return new("", words);
    }

    /// <summary>Both as one line.</summary>
    public override string ToString() => string.Join(Between, new[] { Answer, Own.Trim() }.Where(w => w.Length > 0));
}
