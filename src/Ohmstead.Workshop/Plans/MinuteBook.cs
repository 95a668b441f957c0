using System.Collections.Immutable;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Units;

namespace Ohmstead.Workshop.Plans;

/// <summary>How long the shop's own units took, by the work (<see cref="WorkKey"/>): what a forecast learns from.</summary>
public sealed class MinuteBook
{
    /// <summary>Entered in one go with the one before it, so that nothing is known of its time [min].</summary>
    private const double LeastMinutes = 0.1;

    private readonly Dictionary<string, ImmutableArray<double>> byKey;

    private MinuteBook(Dictionary<string, ImmutableArray<double>> byKey) => this.byKey = byKey;

    /// <summary>Nothing logged yet.</summary>
    public static MinuteBook Empty { get; } = new([]);

    /// <summary>The minutes of each work of some units, in their order.</summary>
    public static MinuteBook Of(IEnumerable<(string Key, double Minutes)> logged) =>
        new(logged.GroupBy(l => l.Key, StringComparer.Ordinal).ToDictionary(g => g.Key, g => g.Select(l => l.Minutes).ToImmutableArray()));

    /// <summary>What was logged of a work, earliest first.</summary>
    public ImmutableArray<double> this[string key] => byKey.TryGetValue(key, out var minutes) ? minutes : [];

    /// <summary>
    /// What one unit tells: each step and each work from the last entry before it that is no photo; a pause of more than 20 minutes tells
    /// nothing. What was undone is no work.
    /// </summary>
    /// <param name="sheet">Its type sheet; null while there is none.</param>
    public static ImmutableArray<(string Key, double Minutes)> LoggedOn(BenchUnit unit, TypeSheet? sheet)
    {
        var logged = ImmutableArray.CreateBuilder<(string, double)>();
        var check = 0.0;
        foreach (var (_, fact, minutes) in LoggedMinutes.Of(unit))
        {
            if (minutes is not { } took || took < LeastMinutes)
                continue;
            var key = fact switch
            {
                TakenOff off => WorkKey.Off(unit.Card.SheetId, off.Step),
                PutBack back => WorkKey.Back(unit.Card.SheetId, back.Step),
                PartChanged part => WorkKey.Of(sheet, part.Element, WorkKey.SortOf(part.Change)),
                ConditionNoted { Decision: Decision.Renewed } noted => WorkKey.Of(sheet, noted.Item, WorkSort.Replace),
                ConditionNoted { Decision: Decision.MadeGood } noted => WorkKey.Of(sheet, noted.Item, WorkSort.Service),
                _ => "",
            };
            if (key.Length > 0)
                logged.Add((key, took));
            else if (fact is RewireChecked or WireChecked or PowerTried or SupplyStated)
                check += took;
        }
        if (check > 0)
            logged.Add((WorkKey.Check, check));
        return logged.ToImmutable();
    }
}
