using System.Globalization;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Units;
using Ohmstead.Workshop.Words;

namespace Ohmstead.Workshop.Untyped;

/// <summary>The next thing that comes off a unit whose type is not known, from what was typed.</summary>
public static class NextOff
{
    private const int MostPieces = 9999;

    /// <summary>The id that it will have: photos of it are kept under it before it is off.</summary>
    public static string IdOf(BenchUnit unit) =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"{UntypedIds.Prefix}off-{unit.Journal.Count(e => e.Fact is TakenOff { Title: not null }) + 1}"
        );

    /// <summary>Reads it; null with what is wrong when it cannot be so.</summary>
    public static (TakenOff? Off, string Problem) Read(BenchUnit unit, string what, string cup, string pieces, string words)
    {
        if (what.Trim().Length == 0)
            return (null, "Write what comes off.");
        if (!int.TryParse(cup.Trim(), NumberStyles.None, CultureInfo.InvariantCulture, out var inCup) || inCup > MostPieces)
            return (null, "Cup: a whole number, 0 for none.");
        return int.TryParse(pieces.Trim(), NumberStyles.None, CultureInfo.InvariantCulture, out var count) && count is > 0 and <= MostPieces
            ? (new TakenOff(IdOf(unit), inCup, count, words.Trim()) { Title = what.Trim() }, "")
            : (null, "Pieces: count them, 1 or more.");
    }
}
