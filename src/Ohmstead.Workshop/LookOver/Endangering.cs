using System.Collections.Immutable;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Shops;
using Ohmstead.Workshop.Units;

namespace Ohmstead.Workshop.LookOver;

/// <summary>
/// A part of the look-over that keeps mains and first power locked. What was found cannot be waived, as a measured failure cannot:
/// the part is replaced or made good, and looked at again. Only for what could not be looked at can somebody sign.
/// </summary>
/// <param name="Item">The part, as the shop asks for it.</param>
/// <param name="Seen">What was seen; empty where nobody looked.</param>
/// <param name="SignedBy">Who answers for what could not be looked at; empty for all else.</param>
/// <param name="Why">Why it could not be looked at.</param>
/// <param name="Entries">The entries that found it: withdrawn together when it was marked by mistake.</param>
public sealed record Endangering(LookOverItem Item, Danger State, string Seen, string SignedBy, string Why, ImmutableArray<Guid> Entries)
{
    /// <summary>True while it keeps the mains locked.</summary>
    public bool IsOpen => State != Danger.SignedFor;

    /// <summary>Every part that keeps the mains locked, in the shop's order.</summary>
    /// <param name="sheet">The unit's sheet; null while its kind is not known.</param>
    public static ImmutableArray<Endangering> Open(BenchUnit unit, TypeSheet? sheet, Shop shop) =>
        [.. All(unit, sheet, shop).Where(e => e.IsOpen)];

    /// <summary>The same, and those that somebody signed for.</summary>
    public static ImmutableArray<Endangering> All(BenchUnit unit, TypeSheet? sheet, Shop shop) =>
        [.. shop.LookOver.Where(i => i.CanEndanger).Select(i => Of(i, unit, sheet)).OfType<Endangering>()];

    /// <summary>The part as the journal leaves it; null when it was looked at and nothing of it endangers.</summary>
    private static Endangering? Of(LookOverItem item, BenchUnit unit, TypeSheet? sheet)
    {
        // An invented unit to practice on has nothing that could be looked at.
        Endangering? now = unit.IsPractice ? null : NotLookedAtYet(item);
        foreach (var entry in unit.Standing)
            now = entry.Fact switch
            {
                ConditionNoted noted when noted.Item == item.Id => After(item, now, noted, entry.Id),
                NotLookedAt signed when signed.Item == item.Id && now is { State: Danger.NotLookedAt or Danger.SignedFor } => now with
                {
                    State = Danger.SignedFor,
                    SignedBy = signed.SignedBy,
                    Why = signed.Why,
                },
                PartChanged { Change: PartChange.Renewed or PartChange.Replaced } part
                    when now is { State: Danger.Found or Danger.SaidGood } && PartsOfItem.IsOf(part.Element, item.Id, sheet) => now with
                {
                    State = Danger.LookAgain,
                },
                _ => now,
            };
        return now;
    }

    private static Endangering NotLookedAtYet(LookOverItem item) => new(item, Danger.NotLookedAt, "", "", "", []);

    private static Endangering? After(LookOverItem item, Endangering? now, ConditionNoted noted, Guid entry)
    {
        var isMended = noted.Decision is Decision.Renewed or Decision.MadeGood;
        var wasFound = now is { State: Danger.Found or Danger.SaidGood or Danger.LookAgain };
        var seen = ConditionWords.Read(noted.Words, item.Known);
        if (item.Endangers(seen.Answer))
            // The same words with "replaced" beside them: mended, and not looked at again yet.
            return new(item, wasFound && isMended ? Danger.LookAgain : Danger.Found, noted.Words, "", "", [.. now?.Entries ?? [], entry]);
        // No words, or "not opened yet": nobody looked.
        if (noted.Words.Length == 0 || seen.Answer == UsualShop.NotOpened)
            return wasFound && isMended ? now! with { State = Danger.LookAgain } : now ?? NotLookedAtYet(item);
        return now switch
        {
            { State: Danger.Found or Danger.SaidGood } when !isMended => now with { State = Danger.SaidGood },
            _ => null,
        };
    }
}

/// <summary>Why a part of the look-over keeps the mains locked.</summary>
public enum Danger
{
    /// <summary>Nobody has looked at it.</summary>
    NotLookedAt,

    /// <summary>It could not be looked at, and somebody answers for that.</summary>
    SignedFor,

    /// <summary>Something live can be touched.</summary>
    Found,

    /// <summary>It was found, and then said to be good; what was done about it is not said.</summary>
    SaidGood,

    /// <summary>It was replaced or made good, and not looked at since.</summary>
    LookAgain,
}
