using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.TakeApart;
using Ohmstead.Workshop.Units;

namespace Ohmstead.Workshop.Wiring;

/// <summary>The lock that a change of the wiring puts on the mains: no mains reading before the wiring check has passed.</summary>
public static class WiringCheck
{
    /// <summary>True for a reading whose source is above 30 V.</summary>
    public static bool IsMains(ReadingSpec reading) => reading.State.Source is { IsMains: true };

    /// <summary>Number of the last entry that moved a wire; 0 when none was.</summary>
    public static int LastWiring(BenchUnit unit, TypeSheet sheet) =>
        unit.All<PartChanged>().Where(p => MovesWire(p.Fact, sheet)).Select(p => p.Entry.Number).DefaultIfEmpty(0).Last();

    /// <summary>A new roller is riveted and a new lamp is screwed in; whatever else is renewed, a cord above all, is soldered.</summary>
    internal static bool MovesWire(PartChanged part, TypeSheet sheet) =>
        part.Change is not (PartChange.Renewed or PartChange.Serviced)
        || part.Change == PartChange.Renewed && sheet.Elements.Any(e => e.Id == part.Element && e is not Lamp);

    /// <summary>
    /// True when no wire is loose, none is recorded where it is not planned, and none was moved; when there is no mains to shut; or
    /// when the check has passed for the wiring and the readings as they are.
    /// </summary>
    public static bool IsOpen(BenchUnit unit, TypeSheet sheet) =>
        sheet.SupplyVolts <= SourceSpec.MostLowVolts
        || (
            ApartState.Of(unit, sheet).LooseWires.IsEmpty
            && WrongEnd.Of(unit, sheet).IsEmpty
            && (LastWiring(unit, sheet) == 0 || Standing(unit, sheet) is not null)
        );

    /// <summary>The check that stands; null when none does.</summary>
    public static RewireChecked? Standing(BenchUnit unit, TypeSheet sheet) =>
        unit.All<RewireChecked>().Select(c => c.Fact).LastOrDefault() is { } last
        && last.RestsOn == MarkOf(unit, sheet)
        && WrongEnd.Of(unit, sheet).IsEmpty
            ? last
            : null;

    /// <summary>The supply as it was last measured since the wiring was changed; null when it was not.</summary>
    public static SupplyStated? Supply(BenchUnit unit, TypeSheet sheet)
    {
        var wiring = LastWiring(unit, sheet);
        return unit.All<SupplyStated>().LastOrDefault(s => s.Entry.Number > wiring).Fact;
    }

    /// <summary>The mark of the wiring and of every cold and low reading since it was changed.</summary>
    public static string MarkOf(BenchUnit unit, TypeSheet sheet)
    {
        var (text, wiring) = (new StringBuilder(), LastWiring(unit, sheet));
        text.Append(wiring.ToString(CultureInfo.InvariantCulture));
        foreach (var (entry, fact) in unit.All<ReadingEntered>())
            if (entry.Number > wiring && sheet.FindReading(fact.ReadingId)?.State.Source is not { IsMains: true })
                text.Append('|').Append(entry.Number.ToString(CultureInfo.InvariantCulture)).Append(FactText.Write(fact));
        return Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text.ToString())))[..16];
    }
}
