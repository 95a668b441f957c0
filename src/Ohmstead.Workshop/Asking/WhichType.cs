using System.Collections.Immutable;
using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Electrical.Drafting;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Readings;
using Ohmstead.Workshop.Shops;
using Ohmstead.Workshop.Units;
using Ohmstead.Workshop.Untyped;

namespace Ohmstead.Workshop.Asking;

/// <summary>Which of the workshop's types a unit without a type may be: what the verb <c>identify</c> does with files.</summary>
public static class WhichType
{
    /// <summary>Chance that it is none of them, before any reading: as of the verb. Common practice, no source.</summary>
    private const double None = 0.05;

    /// <summary>Two plates of one type say the same but for rounding; mains is printed as 115 or 120.</summary>
    private const double SameVolts = 0.08,
        SameWatts = 0.03;

    /// <summary>The types whose plate says what the unit's plate says; none where its volts were not read.</summary>
    public static ImmutableArray<TypeSheet> SharingPlate(BenchUnit unit, IEnumerable<TypeSheet> sheets)
    {
        var plate = PlateRule.PlateOf(unit);
        return plate.Volts is not { } volts
            ? []
            :
            [
                .. sheets.Where(s =>
                    Math.Abs(s.SupplyVolts - volts) <= SameVolts * volts
                    && (plate.Watts is not { } watts || s.InputWatts == 0 || Math.Abs(s.InputWatts - watts) <= SameWatts * watts)
                ),
            ];
    }

    /// <summary>How probable each type is by what was read; null where nothing was. Cost: a diagnosis for each type and two more.</summary>
    /// <param name="plain">The unit with nothing carried over (<see cref="CarryOver.Plain"/>).</param>
    public static KindAnswer? Of(BenchUnit plain, IEnumerable<TypeSheet> sheets, Shop shop, DiagnosisOptions options)
    {
        if (!plain.CurrentReadings.Any())
            return null;
        var kinds = sheets.Select(s => Possible(plain, s, shop)).ToImmutableArray();
        return kinds.Any(k => k.Readings is { } r && r.Readings.Any(t => t.IsTaken)) ? Identifier.Run(kinds, None, options) : null;
    }

    private static PossibleKind Possible(BenchUnit plain, TypeSheet sheet, Shop shop)
    {
        var choices = CarryOver.Choices(plain, sheet);
        var posts = UntypedSheet.Posts(plain).Select(p => p.Id).ToHashSet(StringComparer.Ordinal);
        if (choices.FirstOrDefault(c => c.Proposed.Length == 0 && posts.Contains(c.From)) is { } lacking)
            return new(sheet.Id, 1, sheet, null, $"no {lacking.Words}");
        var chosen = choices.ToDictionary(c => c.From, c => c.Proposed, StringComparer.Ordinal);
        Fact[] known = [plain.Card with { SheetId = sheet.Id }, CarryOver.Make(plain, sheet, chosen)];
        var asOne = UnitHistory.Fold([
            .. plain.Journal.Where(e => e.Fact is not CarriedOver),
            .. known.Select((f, n) => new Entry(Guid.Empty, plain.Id, plain.LastNumber + n + 1, plain.Last.At, plain.Last.By, f)),
        ]);
        var readings = BenchReadings.Of(asOne, new UnitModel(sheet), shop);
        return new(sheet.Id, 1, sheet, readings.Value, readings.IsSound ? "" : readings.Problems[0].Wrong);
    }
}
