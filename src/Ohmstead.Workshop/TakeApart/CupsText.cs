using Ohmstead.Workshop.Words;

namespace Ohmstead.Workshop.TakeApart;

/// <summary>The count of what came off against what went in, in words.</summary>
public static class CupsText
{
    /// <summary>"18 pieces came off. 16 old ones went back, 2 new." and what is left over, with who signed for it; then what is still off.</summary>
    public static string Of(ApartState state)
    {
        var (still, off) = (state.Off.Sum(o => o.Fact.Pieces), state.Back.Sum(b => b.Off.Fact.Pieces));
        var (old, renewed) = (state.Back.Sum(b => b.Fact.Old), state.Back.Sum(b => b.Fact.New));
        if (still + off + old + renewed == 0)
            return "No pieces were counted.";
        var words = $"{Sentences.Large(Counted.Of(still + off, "piece"))} came off.";
        if (!state.Back.IsEmpty)
            words += $" {Sentences.Large(Counted.Of(old, "old one"))} went back{(renewed > 0 ? $", {Counted.Bare(renewed)} new" : "")}.";
        foreach (var left in state.Back.Where(b => b.Remainder != 0))
            words +=
                $" {left.Off.Step.Title}: {Counted.Of(Math.Abs(left.Remainder), "piece")} {(left.Remainder > 0 ? "left over" : "more than came off")}, {left.Fact.Why}. Signed by {left.Fact.By}.";
        return state.Off.IsEmpty
            ? words
            : words + $" Still off, {Counted.Of(still, "piece")}: {string.Join(", ", state.Off.Select(o => o.Step.Title))}.";
    }
}
