using System.Collections.Immutable;
using System.Text.Json.Nodes;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Readings;

/// <summary>
/// Readings files in which a reading may be given whole: what was read, between which terminals, in which state. It is then found among
/// those of the sheet by that, whatever it is called, or joins them.
/// </summary>
public static class WholeReadings
{
    /// <summary>A lamp of nearly the same amps is the same lamp.</summary>
    private const double SameLamp = 0.05;

    /// <summary>Reads what was taken on a unit of this sheet.</summary>
    /// <param name="isOfAnySheet">
    /// The file may name another sheet, or none. A reading in it that this sheet calls like a gate and takes otherwise gets another name.
    /// </param>
    /// <returns>The readings, and the sheet with those that it did not have.</returns>
    public static Parsed<AdoptedReadings> Read(string text, TypeSheet sheet, bool isOfAnySheet = false)
    {
        var problems = new List<Problem>();
        if (!JsonCursor.TryOpen(text, problems, out var root))
            return new(null, problems);
        var document = (JsonObject)JsonNode.Parse(text)!;
        if (isOfAnySheet)
            document["sheet"] = sheet.Id;
        if (document["readings"] is JsonArray all)
        {
            var cursors = root.List("readings");
            for (var n = 0; n < cursors.Length && n < all.Count; n++)
                if (all[n] is JsonObject one && one.ContainsKey("quantity") && one.ContainsKey("id"))
                    sheet = Adopt(cursors[n], one, sheet, isOfAnySheet, problems);
        }
        if (problems.Count > 0)
            return new(null, problems);
        var read = ReadingsFile.Read(document.ToJsonString(), sheet);
        return new(read.IsSound ? new AdoptedReadings(sheet, read.Required) : null, read.Problems);
    }

    /// <summary>Finds a whole reading in the sheet, or puts it there; what is its own is written beside its value.</summary>
    private static TypeSheet Adopt(JsonCursor at, JsonObject one, TypeSheet sheet, bool mayRename, List<Problem> problems)
    {
        var before = problems.Count;
        if (ReadingReader.Read(at, sheet.SupplyVolts) is not { } whole || problems.Count > before)
            return sheet;
        if (sheet.FindReading(whole.Id) is { } known && IsSame(sheet, known, whole))
        {
            KeepOwn(one, known, whole);
            return sheet;
        }
        Check(at, sheet, whole);
        if (problems.Count > before)
            return sheet;
        var needed = sheet.Readings.SelectMany(r => r.Needs).ToHashSet(StringComparer.Ordinal);
        if (sheet.FindReading(whole.Id) is { } other && (other.IsGate || needed.Contains(other.Id)))
        {
            if (!mayRename)
            {
                at.Report(
                    "id",
                    $"\"{whole.Id}\" is another reading of the sheet, one that must pass before others",
                    "give this one another name"
                );
                return sheet;
            }
            while (sheet.FindReading(whole.Id) is not null)
                whole = whole with { Id = $"{whole.Id}-as-read" };
            one["id"] = whole.Id;
        }
        var same = sheet.Readings.FirstOrDefault(r => IsSame(sheet, r, whole));
        if (same is not null && (same.IsGate || needed.Contains(same.Id)))
        {
            one["id"] = same.Id;
            KeepOwn(one, same, whole);
            return sheet;
        }
        // What the sheet calls otherwise is called as in the file from here on: it is the same reading.
        var named = same is not null
            ? same with
            {
                Id = whole.Id,
            }
            : whole with
            {
                Needs = NeedsOf(sheet, whole),
                Access = ReadingSpec.Closed,
            };
        if (same is not null)
            KeepOwn(one, same, whole);
        return sheet with { Readings = [.. sheet.Readings.Where(r => r != same && r.Id != whole.Id), named] };
    }

    private static ImmutableArray<string> NeedsOf(TypeSheet sheet, ReadingSpec whole)
    {
        if (whole.State.Source is not { IsDirect: false } source)
            return [];
        var lamp = sheet.Readings.FirstOrDefault(r => r.State.Source is { HasLamp: true } && r.Limits is not null);
        return source.IsMains && lamp is not null
            ? [lamp.Id]
            : [.. sheet.Readings.Where(r => r.IsGate && r.Quantity == Quantity.Ohms).Select(r => r.Id)];
    }

    private static void Check(JsonCursor at, TypeSheet sheet, ReadingSpec whole)
    {
        var terminals = sheet.Elements.SelectMany(e => e.OtherTerminals.Append(e.From).Append(e.To)).ToHashSet(StringComparer.Ordinal);
        var used = new[] { whole.From, whole.To, whole.State.Source?.From ?? "", whole.State.Source?.To ?? "" }
            .Concat(whole.State.Loads.SelectMany(l => new[] { l.From, l.To }))
            .Concat(whole.State.Joined.SelectMany(j => j));
        foreach (var t in used.Where(t => t.Length > 0 && !terminals.Contains(t)).Distinct(StringComparer.Ordinal))
            at.Report($"names {t}, which this unit does not have", "use posts, blades and terminals of the unit");
        foreach (var p in ReadingChecks.ControlProblems(sheet, whole.State.Controls))
            at.Report($"state.controls.{p.Path}", p.Wrong, p.Right);
        foreach (var id in whole.State.Lifted.Where(id => !sheet.Elements.Any(e => e.Id == id)))
            at.Report($"lifts {id}, which this unit does not have", "name parts of the unit");
    }

    /// <summary>The loads, the controls and the low supply that were really so.</summary>
    private static void KeepOwn(JsonObject one, ReadingSpec known, ReadingSpec whole)
    {
        if (!one.ContainsKey("loads") && !whole.State.Loads.SequenceEqual(known.State.Loads) && one["state"]?["loads"] is { } loads)
            one["loads"] = loads.DeepClone();
        if (!one.ContainsKey("celsius") && whole.State.Celsius != known.State.Celsius)
            one["celsius"] = whole.State.Celsius;
        if (
            !one.ContainsKey("supplyVolts")
            && whole.State.Source is { IsDirect: false } own
            && known.State.Source is { } source
            && own.Volts != source.Volts
        )
            one["supplyVolts"] = own.Volts;
    }

    /// <summary>True when two readings are taken at the same terminals in the same state, whatever the ohms of their loads.</summary>
    public static bool IsSame(TypeSheet sheet, ReadingSpec a, ReadingSpec b)
    {
        var isSigned = a.Quantity is Quantity.DcVolts || (a.Quantity == Quantity.Ohms && sheet.Elements.Any(e => e is Rectifier));
        var isBetween =
            (a.From, a.To) == (b.From, b.To)
            || (!isSigned && (a.From, a.To) == (b.To, b.From))
            || a.Quantity is Quantity.AcAmps or Quantity.Watts;
        return a.Quantity == b.Quantity
            && isBetween
            && IsSameSource(a.State.Source, b.State.Source)
            && Places(sheet, a.State).SequenceEqual(Places(sheet, b.State))
            && Straps(a.State).SequenceEqual(Straps(b.State))
            && a.State.Lifted.Order(StringComparer.Ordinal).SequenceEqual(b.State.Lifted.Order(StringComparer.Ordinal))
            && LoadPlaces(a.State).SequenceEqual(LoadPlaces(b.State));
    }

    private static bool IsSameSource(SourceSpec? a, SourceSpec? b)
    {
        if (a is null || b is null)
            return a is null && b is null;
        var isLow = !a.IsMains && !b.IsMains;
        return new[] { a.From, a.To }.Order(StringComparer.Ordinal).SequenceEqual(new[] { b.From, b.To }.Order(StringComparer.Ordinal))
            && a.IsDirect == b.IsDirect
            && (a.IsDirect ? a.DirectAmps == b.DirectAmps && a.From == b.From : isLow || Math.Abs(a.Volts - b.Volts) < 1e-9 * a.Volts)
            && a.SeriesOhms == b.SeriesOhms
            && a.HasLamp == b.HasLamp
            && (!a.HasLamp || Math.Abs(a.LampAmps - b.LampAmps) <= SameLamp * b.LampAmps);
    }

    /// <summary>The positions of the controls that are not at rest.</summary>
    private static IEnumerable<(string, double, string)> Places(TypeSheet sheet, ReadingState state) =>
        state
            .Controls.Where(c =>
                sheet.Controls.FirstOrDefault(k => k.Id == c.Key) is not { } k
                || (k.IsThrottle ? c.Value.Throttle != 0 : c.Value.Selector != k.Rest)
            )
            .Select(c => (c.Key, double.IsNaN(c.Value.Throttle) ? 0 : c.Value.Throttle, c.Value.Selector))
            .OrderBy(c => c.Key, StringComparer.Ordinal);

    private static IEnumerable<string> Straps(ReadingState state) =>
        state.Joined.Select(j => string.Join('~', j.Order(StringComparer.Ordinal))).Order(StringComparer.Ordinal);

    private static IEnumerable<string> LoadPlaces(ReadingState state) =>
        state.Loads.Select(l => string.Join('~', new[] { l.From, l.To }.Order(StringComparer.Ordinal))).Order(StringComparer.Ordinal);
}

/// <summary>What was read on a unit, and the sheet with the readings that were given whole.</summary>
public sealed record AdoptedReadings(TypeSheet Sheet, UnitReadings Readings);
