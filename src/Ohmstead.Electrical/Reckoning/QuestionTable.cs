using System.Collections.Immutable;
using Ohmstead.Electrical.Reckoning.Deciding;
using Ohmstead.Electrical.Reckoning.Proving;

namespace Ohmstead.Electrical.Reckoning;

/// <summary>Every question that can be asked: the word in the file, and what reads its fields.</summary>
public static class QuestionTable
{
    /// <summary>By word, in the order of the alphabet.</summary>
    public static ImmutableSortedDictionary<string, Func<QuestionFields, Question>> Readers { get; } = new Dictionary<string, Func<QuestionFields, Question>>
    {
        ["batch"] = Batch.Read,
        ["cord"] = Cord.Read,
        ["lamp"] = LampInPlace.Read,
        ["now-or-later"] = RenewalChoice.Read,
        ["quote"] = Quote.Read,
        ["rectifier"] = RectifierChoice.Read,
        ["regulation"] = Regulation.Read,
        ["resistance-wire"] = ResistanceWire.Read,
        ["roller"] = Roller.Read,
        ["stock"] = Stock.Read,
    }.ToImmutableSortedDictionary(StringComparer.Ordinal);
}
