namespace Ohmstead.Workshop.Journal;

/// <summary>How a part looks, and whether that is mended; of one part the last entry counts.</summary>
/// <param name="Item">Case, lettering, posts, plating, knobs, or a part named by the person.</param>
/// <param name="Words">Its condition, in words.</param>
/// <param name="IsToDo">True where its looks are to be mended.</param>
/// <param name="Minutes">What that takes [min].</param>
/// <param name="Price">Of what is needed, in the shop's money.</param>
public sealed record LooksNoted(string Item, string Words, bool IsToDo, double Minutes, decimal Price) : Fact;
