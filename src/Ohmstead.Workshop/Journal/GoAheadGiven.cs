namespace Ohmstead.Workshop.Journal;

/// <summary>The owner said that the repair may go ahead; the last word counts.</summary>
/// <param name="Date">When it was said.</param>
/// <param name="How">By phone, by mail, in person.</param>
/// <param name="Limit">Up to this sum, in the shop's money; null where no limit was named.</param>
/// <param name="Words">The owner's own words; may be empty.</param>
public sealed record GoAheadGiven(DateOnly Date, string How, decimal? Limit, string Words) : Fact;
