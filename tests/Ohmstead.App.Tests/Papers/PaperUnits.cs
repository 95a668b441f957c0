using System.Collections.Immutable;
using System.Globalization;
using System.Text.Json;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Job;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Papers;
using Ohmstead.Workshop.Shops;
using Ohmstead.Workshop.Units;
using Ohmstead.Workshop.Wiring;

namespace Ohmstead.App.Tests.Papers;

/// <summary>Units with a past, for papers.</summary>
internal static class PaperUnits
{
    public static readonly DateTimeOffset Noon = new(2026, 3, 14, 12, 0, 0, TimeSpan.Zero);

    /// <summary>SHA-256 names are 64 digits; which ones does not matter here.</summary>
    public static readonly string Photo = new('a', 64);

    public static readonly string Lost = new('b', 64);

    public static Shop Shop { get; } = Shop.Usual with { Name = "Bench No. 7", Address = "Invented Lane 7, Nowhere" };

    public static TypeSheet Sheet(string name) => TypeSheetFile.Read(File.ReadAllText(Tool.Demo($"{name}.sheet.json"))).Required;

    public static BenchUnit Unit(IEnumerable<Fact> facts)
    {
        var unit = new Guid(1, 0, 0, new byte[8]);
        return UnitHistory.Fold([
            .. facts.Select((f, n) => new Entry(new Guid(n, 1, 0, new byte[8]), unit, n + 1, Noon.AddHours(n - 100), "bench", f)),
        ]);
    }

    public static JudgedUnit Matter(string sheet, params IEnumerable<Fact> facts) => Matter(sheet, Shop, facts);

    public static JudgedUnit Matter(string sheet, Shop shop, IEnumerable<Fact> facts) =>
        UnitJudge.Make(Unit(facts), Sheet(sheet), shop, Noon, _ => true);

    /// <summary>The readings of the demo's readings file as they would have been entered.</summary>
    public static IEnumerable<Fact> DemoReadings(double supplyVolts = 121.4)
    {
        using var file = JsonDocument.Parse(File.ReadAllText(Tool.Demo("twin-175.example.readings.json")));
        var bench = BenchState.AsSheet with { SupplyVolts = supplyVolts, MeterId = "usual" };
        foreach (var reading in file.RootElement.GetProperty("readings").EnumerateArray())
        {
            var value = reading.GetProperty("value");
            var shown = value.ValueKind switch
            {
                JsonValueKind.Number => Shown.Number(value.GetDouble()),
                JsonValueKind.String => Shown.OverRange,
                _ => Shown.NotTaken(reading.GetProperty("why").GetString()!),
            };
            yield return new ReadingEntered(reading.GetProperty("id").GetString()!, shown, bench);
        }
    }

    /// <summary>The same with the check before mains, which the soldering asked for, passed.</summary>
    public static IEnumerable<Fact> Checked(IEnumerable<Fact> facts)
    {
        var before = facts.ToList();
        return [.. before, new RewireChecked(WiringCheck.MarkOf(Unit(before), Sheet("twin-175")), "J. Bench", "the hubs: bare")];
    }

    /// <summary>A unit that was looked over, read, repaired and read again.</summary>
    public static IEnumerable<Fact> Repaired(
        string owner = "R. Example",
        string complaint = "The left train slows down as soon as there are cars behind it."
    ) =>
        [
            new TakenIn("F-041", "twin-175", owner, complaint),
            new CardChanged("F-041", "twin-175", owner, "", complaint, "before the club evening"),
            new PhotoAdded(Photo, "As it came in", ""),
            new ConditionNoted("cord", "crumbling, bare wire showing", Decision.Renew, ""),
            new ConditionNoted("plug", "good", Decision.Leave, ""),
            new ConditionNoted("sleeves", "hard but whole", Decision.Leave, ""),
            new ConditionNoted("case", "scratched", Decision.Leave, ""),
            new ConditionNoted("handles", "good", Decision.Leave, ""),
            new ConditionNoted("posts", "tarnished", Decision.Watch, ""),
            new ConditionNoted("cord", "crumbling, bare wire showing", Decision.Renewed, ""),
            new ConditionNoted("cord", "good", Decision.Renewed, ""),
            new DamagePinned(Photo, 0.3, 0.4, "crack at the boss"),
            new DamagePinned(Photo, 0.7, 0.6, "nut missing"),
            .. DemoReadings(),
            new FindingJudged("disc", "high-drop", Judgement.Confirmed, "2.6 times its usual drop"),
            new FindingJudged("rotary-1-a", "resistive", Judgement.Confirmed, "burnt contact, seen"),
            new FindingJudged("primary", "shorted-turns", Judgement.Dismissed, "cool after an hour"),
            new PartChanged("disc", PartChange.Renewed, null, "disc of the same size from a donor unit"),
            new PartChanged("rotary-1-a", PartChange.Renewed, null, "contact burnished and re-tensioned"),
            new PhotoAdded(Lost, "The new disc in its place", "disc"),
            new Noted("Roller 2 is worn and was left at the owner's wish."),
            .. DemoReadings().Where(f => f is ReadingEntered { ReadingId: not ("low-1" or "whistle-1-1" or "load-1-b") }),
            new ReadingWaived(
                "insulation-posts-core",
                "The tester's second lead is broken",
                "J. Bench",
                "all posts to the core with the ohmmeter: OL"
            ),
        ];

    /// <summary>A picture with four grounds and a cross, 400 by 300, as a Windows bitmap: no encoder is needed to make one.</summary>
    public static byte[] Bitmap()
    {
        const int width = 400;
        const int height = 300;
        var bytes = new byte[54 + (width * height * 3)];
        void Put(int at, int value) => BitConverter.TryWriteBytes(bytes.AsSpan(at), value);
        (bytes[0], bytes[1]) = ((byte)'B', (byte)'M');
        Put(2, bytes.Length);
        Put(10, 54);
        Put(14, 40);
        Put(18, width);
        Put(22, height);
        (bytes[26], bytes[28]) = (1, 24);
        for (var y = 0; y < height; y++)
        for (var x = 0; x < width; x++)
        {
            var isCross = Math.Abs(x - (y * 4 / 3)) < 3 || Math.Abs(width - x - (y * 4 / 3)) < 3;
            var at = 54 + (((y * width) + x) * 3);
            (bytes[at], bytes[at + 1], bytes[at + 2]) = isCross
                ? ((byte)60, (byte)60, (byte)60)
                : ((byte)(150 + (x / 8)), (byte)(180 + (y / 8)), (byte)210);
        }
        return bytes;
    }
}
