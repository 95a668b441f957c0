using System.Collections.Immutable;

namespace Ohmstead.Electrical.Reckoning.Proving;

/// <summary>What two and more units on one layout come to, for the person at the bench.</summary>
internal static class TogetherWords
{
    /// <summary>The bare plug comes first.</summary>
    public static ImmutableArray<string> Cautions(TogetherAnswer answer) =>
        [
            FormattableString.Invariant(
                $"Pull one plug while the posts are joined, and its blades carry up to {answer.BarePlug.Max(p => p.BarePlugVolts):0} V. Unplug all of them together, from one strip."
            ),
            .. answer
                .Bridges.Where(b => b.Amps is not null)
                .Select(b =>
                    FormattableString.Invariant(
                        $"{b.A} and {b.B} bridged: {b.Amps:0} A, {b.Watts:0} W. It need not pass the breakers of both."
                    )
                ),
        ];

    public static ImmutableArray<string> Of(TogetherAnswer answer)
    {
        if (answer.Clash)
            return ["These readings contradict one another. Read each pair again, throttles at one setting."];
        var wrong = answer
            .Pairs.Where(p => p.Verdict is PairPhase.Neither or PairPhase.NotPossible)
            .Select(p => $"{p.A} and {p.B}: neither in phase nor opposed. Look for a loose lead or unequal throttles, and read again.")
            .ToImmutableArray();
        if (answer.Missing > 0)
            return
            [
                .. wrong,
                $"{(answer.Missing == 1 ? "One more pair" : FormattableString.Invariant($"{answer.Missing} more pairs"))} to read before you know which plug to turn.",
            ];
        return answer.TurnCord.IsEmpty && answer.ExchangeInside.IsEmpty
            ? [.. wrong, "All are in phase. Paint a dot on each plug and its outlet."]
            :
            [
                .. wrong,
                .. answer.TurnCord.IsEmpty
                    ? ImmutableArray<string>.Empty
                    : [$"Turn the plug of {string.Join(", ", answer.TurnCord)}, then paint a dot on plug and outlet."],
                .. answer.ExchangeInside.IsEmpty
                    ? ImmutableArray<string>.Empty
                    : [$"Swap the cord’s two leads inside {string.Join(", ", answer.ExchangeInside)}: its plug goes in one way only."],
            ];
    }
}
