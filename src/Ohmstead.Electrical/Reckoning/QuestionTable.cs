using System.Collections.Immutable;
using Ohmstead.Electrical.Reckoning.Proving;

namespace Ohmstead.Electrical.Reckoning;

/// <summary>Every question that can be asked: the word in the file, and what reads its fields.</summary>
public static class QuestionTable
{
    /// <summary>By word, in the order of the alphabet.</summary>
    public static ImmutableSortedDictionary<string, Func<QuestionFields, Question>> Readers { get; } = new Dictionary<string, Func<QuestionFields, Question>>
    {
        ["regulation"] = Regulation.Read,
    }.ToImmutableSortedDictionary(StringComparer.Ordinal);
}
