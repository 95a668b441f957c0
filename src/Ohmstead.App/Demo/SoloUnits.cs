using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Readings;

namespace Ohmstead.App.Demo;

/// <summary>Invented single-throttle units.</summary>
internal static class SoloUnits
{
    private static readonly string[] Cold =
    [
        "blades",
        "blades-posts",
        "insulation-core",
        "insulation-posts",
        "ohms-14",
        "ohms-6",
        "ohms-track",
    ];

    private static readonly string[] Live =
    [
        "lamp-40",
        "amps-idle",
        "watts-idle",
        "volts-14",
        "volts-6",
        "track-full",
        "track-load",
        "dc-load",
    ];

    private static readonly BenchState Line = BenchState.AsSheet with { SupplyVolts = 120.9 };

    public static Diary[] All(TypeSheet sheet, DateTimeOffset now, DemoPhotos photos)
    {
        var dead = new Diary(38, now.AddDays(-6), new DrawnUnit(sheet, 38, ("cord-1:open", 0)))
            .Add(
                new TakenIn("F-038", sheet.Id, "P. Rowan", "Dead. It hummed last winter."),
                new PhotoAdded(photos.Tin, "front", ""),
                new PhotoAdded(photos.Cord, "the cord", "cord"),
                new DamagePinned(photos.Cord, 0.48, 0.53, "copper to be seen")
            )
            .Told(("jumps-when-flexed", Answer.Yes))
            .Saw(("cord", "crumbles, wire to be seen", Decision.Renew), ("plug", "body cracked", Decision.Renew))
            .Close(Stage.LookOver)
            .Read("blades");

        var noTester = new Diary(42, now.AddDays(-2), new DrawnUnit(sheet, 42, ("shoe:worn", 0.7)))
            .Add(
                new TakenIn("F-042", sheet.Id, "T. Maple", "Stops on the grade with four cars."),
                new PhotoAdded(photos.Tin, "front", "")
            )
            .Told(("slows-under-load", Answer.Yes), ("pilot-dark", Answer.No))
            .Saw(("cord", "stiff", Decision.Watch), ("case", "scratched", Decision.Leave))
            .Close(Stage.LookOver)
            .Read("blades", "blades-posts")
            .Add(
                new ReadingWaived(
                    "insulation-core",
                    "the insulation tester is lent out",
                    "R. Birch",
                    "OL on the 200 MΩ range of the hand meter"
                ),
                new ReadingWaived(
                    "insulation-posts",
                    "the insulation tester is lent out",
                    "R. Birch",
                    "OL on the 200 MΩ range of the hand meter"
                )
            )
            .Read("ohms-14", "ohms-6");

        var lookedAt = new Diary(44, now.AddHours(-5), new DrawnUnit(sheet, 44))
            .Add(
                new TakenIn("F-044", sheet.Id, "E. Aspen", "It was my uncle's. Does it still work?"),
                new PhotoAdded(photos.Tin, "front", "")
            )
            .Told(("slows-under-load", Answer.Unsure), ("pilot-dark", Answer.Yes))
            .Saw(("cord", "sticky or gummy", Decision.Renew));

        var sound = new Diary(33, now.AddDays(-20), new DrawnUnit(sheet, 33))
            .Add(
                new TakenIn("F-033", sheet.Id, "N. Willow", "A check before it is given away."),
                new PhotoAdded(photos.Tin, "front", "")
            )
            .Close(Stage.LookOver)
            .Read(Cold);
        sound.Bench = Line;
        sound
            .Read(Live)
            .Close(Stage.Readings)
            .Close(Stage.Findings)
            .Add(new PaperMade("service-record"))
            .Close(Stage.Papers);
        return [dead, noTester, lookedAt, sound];
    }
}
