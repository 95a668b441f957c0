namespace Ohmstead.Workshop.Journal;

/// <summary>What the owner was charged; the last bill counts.</summary>
/// <param name="Sum">In the shop's money.</param>
/// <param name="Words">What to remember of it; may be empty.</param>
public sealed record Billed(decimal Sum, string Words) : Fact;
