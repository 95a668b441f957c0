namespace Ohmstead.Workshop.Shops;

/// <summary>How often this shop found a fault, against what type sheets take it for: every chance of it is weighed by that.</summary>
/// <param name="Kind">Kind of part, as in a type sheet.</param>
/// <param name="Mode">Fault mode.</param>
/// <param name="Odds">Times the odds of the type sheet; above 0.</param>
/// <param name="Found">How often it was found.</param>
/// <param name="Parts">Parts of that kind that were looked at.</param>
public sealed record ShopChance(string Kind, string Mode, double Odds, int Found, int Parts);
