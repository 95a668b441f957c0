using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Journal;

namespace Ohmstead.App.Demo;

/// <summary>Invented units for two tracks.</summary>
internal static class TwinUnits
{
    private static readonly string[] Cold =
    [
        "blades",
        "blades-posts",
        "insulation-core",
        "insulation-posts",
        "ohms-8",
        "ohms-14",
        "ohms-1",
        "ohms-2",
    ];

    private static readonly string[] Live =
    [
        "lamp-60",
        "amps-idle",
        "watts-idle",
        "full-1",
        "load-1",
        "full-2",
        "load-2",
        "whistle-1-1",
        "whistle-1-2",
    ];

    private static readonly BenchState Line = BenchState.AsSheet with { SupplyVolts = 121.4 };

    public static Diary[] All(TypeSheet sheet, DateTimeOffset now, DemoPhotos photos) =>
        [
            HalfRead(sheet, now, photos),
            ToRepair(sheet, now, photos),
            Repaired(sheet, now, photos),
            HandedBack(sheet, now, photos),
            JustIn(now, photos),
        ];

    private static Diary HalfRead(TypeSheet sheet, DateTimeOffset now, DemoPhotos photos)
    {
        var drawn = new DrawnUnit(sheet, 41, ("rotary-1-a:resistive", 0.8), ("disc:high-drop", 2.6), ("roller-2:worn", 1.1));
        var diary = new Diary(41, now.AddDays(-4).AddHours(-3), drawn)
            .Add(
                new TakenIn("F-041", sheet.Id, "M. Alder", "The trains slow down as soon as cars hang behind, and the whistle is weak."),
                new PhotoAdded(photos.Hexagon, "front", ""),
                new DamagePinned(photos.Hexagon, 0.27, 0.37, "a chip in the edge, there when it came")
            )
            .Told(
                ("jumps-when-flexed", Answer.No),
                ("track-1-slow", Answer.Yes),
                ("track-2-slow", Answer.Yes),
                ("whistle-dead-both", Answer.Unsure),
                ("hot-at-rest", Answer.No)
            )
            .Saw(
                ("cord", "stiff; near the plug", Decision.Watch),
                ("plug", "good", Decision.Leave),
                ("strain-relief", "good", Decision.Leave),
                ("posts", "tarnished", Decision.Leave),
                ("case", "scratched", Decision.Leave),
                ("handles", "good", Decision.Leave)
            )
            .Add(new NotLookedAt("sleeves", "the cover is not off yet", "R. Birch"))
            .Close(Stage.LookOver)
            .Read(Cold);
        diary.Bench = Line;
        return diary.Later(TimeSpan.FromMinutes(25)).Add(new BenchSet(Line)).Read("lamp-60", "amps-idle", "watts-idle");
    }

    private static Diary ToRepair(TypeSheet sheet, DateTimeOffset now, DemoPhotos photos)
    {
        var diary = new Diary(36, now.AddDays(-9), new DrawnUnit(sheet, 36, ("disc:leaky", 6)))
            .Add(
                new TakenIn("F-036", sheet.Id, "J. Hazel", "The whistle blows all by itself, or not at all."),
                new PhotoAdded(photos.Hexagon, "front", "")
            )
            .Told(("whistle-dead-both", Answer.Yes), ("track-1-slow", Answer.No), ("track-2-slow", Answer.No))
            .Saw(("cord", "already replaced", Decision.Leave))
            .SawNothingLive()
            .Close(Stage.LookOver)
            .Read(Cold);
        diary.Bench = Line with { SupplyVolts = 119.8 };
        return diary
            .Read(Live)
            .Close(Stage.Readings)
            .Later(TimeSpan.FromDays(1))
            .Add(
                new FindingJudged("disc", "leaky", Judgement.Confirmed, "warm after a minute at the 12 V supply"),
                new Noted("A new disc is ordered.")
            );
    }

    private static Diary Repaired(TypeSheet sheet, DateTimeOffset now, DemoPhotos photos)
    {
        var diary = new Diary(29, now.AddDays(-16), new DrawnUnit(sheet, 29, ("roller-1:worn", 0.9)))
            .Add(
                new TakenIn("F-029", sheet.Id, "S. Linden", "Track 1 is slow with anything behind the engine."),
                new PhotoAdded(photos.Hexagon, "front", ""),
                new PhotoAdded(photos.Roller, "roller 1, a flat and a groove", "flats")
            )
            .Told(("track-1-slow", Answer.Yes), ("track-2-slow", Answer.No))
            .Saw(("cord", "stiff", Decision.Watch), ("flats", "large flats; roller 1", Decision.Renew))
            .SawNothingLive()
            .Close(Stage.LookOver)
            .Read(Cold);
        diary.Bench = Line with { SupplyVolts = 120.6 };
        diary
            .Read(Live)
            .Add(
                new FindingJudged("roller-1", "worn", Judgement.Confirmed, "a flat of 2 mm"),
                new PartChanged("roller-1", PartChange.Renewed, null, "a new carbon roller, arm spring set") { From = DemoDrawer.Roller },
                new Noted("The arm spring presses with 60 g on the kitchen scale.")
            )
            .Later(TimeSpan.FromDays(2));
        var renewed = new Diary(29, now, new DrawnUnit(sheet, 30)) { Bench = BenchState.AsSheet };
        renewed.Read(Cold);
        renewed.Bench = diary.Bench;
        return diary.Add([.. renewed.Read(Live).Entries.Entries.Select(e => e.Fact)]).Close(Stage.Readings).Close(Stage.Findings);
    }

    private static Diary HandedBack(TypeSheet sheet, DateTimeOffset now, DemoPhotos photos)
    {
        var diary = new Diary(22, now.AddDays(-31), new DrawnUnit(sheet, 22))
            .Add(
                new TakenIn("F-022", sheet.Id, "Fernlea club", "To be looked over before the open day."),
                new PhotoAdded(photos.Hexagon, "front", "")
            )
            .Saw(("cord", "good", Decision.Leave))
            .SawNothingLive()
            .Close(Stage.LookOver)
            .Read(Cold);
        diary.Bench = Line with { SupplyVolts = 122.1 };
        return diary
            .Read(Live)
            .Close(Stage.Readings)
            .Close(Stage.Findings)
            .Add(new PaperMade("service-record"))
            .Add(new Returned(ReturnManner.Working, "R. Birch"));
    }

    private static Diary JustIn(DateTimeOffset now, DemoPhotos photos) =>
        new Diary(46, now.AddMinutes(-50), null).Add(
            new TakenIn("F-046", "", "a caller", "From a flea market. Two wheels, the plate is gone."),
            new PhotoAdded(photos.Hexagon, "front", "")
        );
}
