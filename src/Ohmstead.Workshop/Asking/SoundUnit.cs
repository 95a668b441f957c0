using System.Collections.Immutable;
using System.Security.Cryptography;
using System.Text.Json;
using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Kinds;
using Ohmstead.Workshop.Readings;
using Ohmstead.Workshop.Shops;
using Ohmstead.Workshop.Units;

namespace Ohmstead.Workshop.Asking;

/// <summary>What was read on a sound unit of a type, as it travels with the type: no owner, no tag, no words.</summary>
/// <param name="Mark">By which the same unit is known when its readings come back; nothing else can be told from it.</param>
/// <param name="Readings">A readings file.</param>
public sealed record SoundUnit(string Mark, JsonElement Readings)
{
    private const int MarkLetters = 16;

    /// <summary>How many readings it has.</summary>
    public int Count => Readings.TryGetProperty("readings", out var all) ? all.GetArrayLength() : 0;

    /// <summary>The mark of a unit.</summary>
    public static string MarkOf(BenchUnit unit) => Convert.ToHexStringLower(SHA256.HashData(unit.Id.ToByteArray()))[..MarkLetters];

    /// <summary>The units that were found sound, with readings.</summary>
    public static ImmutableArray<SoundUnit> Of(IEnumerable<BenchUnit> units, UnitModel model, Shop shop) =>
        [
            .. units
                .Where(u => KindFit.IsFoundSound(u) && KindFit.Unfit(u).Length == 0)
                .Select(u => (Unit: u, Readings: BenchReadings.Of(u, model, shop).Value))
                .Where(u => u.Readings is not null && u.Readings.Readings.Any(ReadingsText.IsTold))
                .Select(u => new SoundUnit(MarkOf(u.Unit), Json(ReadingsText.Write(u.Readings!, model.Sheet)))),
        ];

    /// <summary>Those of two benches: of a unit that both have, what came last.</summary>
    public static ImmutableArray<SoundUnit> Together(IEnumerable<SoundUnit> known, IEnumerable<SoundUnit> came)
    {
        var all = came.ToList();
        return [.. known.Where(k => all.All(c => c.Mark != k.Mark)), .. all];
    }

    /// <summary>The readings as a sheet has them; what it does not ask for is passed over. Null where nothing is left.</summary>
    public UnitReadings? On(TypeSheet sheet) => ReadingsText.Read(Readings.GetRawText(), sheet);

    private static JsonElement Json(string text)
    {
        using var document = JsonDocument.Parse(text);
        return document.RootElement.Clone();
    }
}
