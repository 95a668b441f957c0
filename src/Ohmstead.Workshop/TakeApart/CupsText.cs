using Ohmstead.Workshop.Words;

namespace Ohmstead.Workshop.TakeApart;

/// <summary>The count of what came off against what went in, in words.</summary>
public static class CupsText
{
    /// <summary>"18 pieces came off: 16 old ones went back, 2 new." and what is left over, with who signed for it.</summary>
    public static string Of(ApartState state)
    {
        var (off, old, renewed) = (state.Back.Sum(b => b.Off.Fact.Pieces), state.Back.Sum(b => b.Fact.Old), state.Back.Sum(b => b.Fact.New));
        var words = off + old + renewed == 0 ? "No pieces were counted." : $"{Sentences.Large(Counted.Of(off, "piece"))} came off: {Counted.Of(old, "old one")} went back{(renewed > 0 ? $", {Counted.Bare(renewed)} new" : "")}.";
        foreach (var left in state.Back.Where(b => b.Remainder != 0))
            words += $" {left.Off.Step.Title}: {Counted.Of(Math.Abs(left.Remainder), "piece")} {(left.Remainder > 0 ? "left over" : "more than came off")}, {left.Fact.Why}. Signed by {left.Fact.By}.";
        return state.Off.IsEmpty ? words : words + $" Still off: {string.Join(", ", state.Off.Select(o => o.Step.Title))}.";
    }
}
