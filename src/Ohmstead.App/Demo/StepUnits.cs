using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Journal;

namespace Ohmstead.App.Demo;

/// <summary>Invented units with stepped taps, for 230 V.</summary>
internal static class StepUnits
{
    private static readonly string[] Cold = ["pins", "pins-posts", "insulation-core", "insulation-posts", "ohms-lights"];

    private static readonly string[] Live =
    [
        "lamp-25",
        "amps-idle",
        "watts-idle",
        "lights",
        "lights-load",
        "speed-1",
        "speed-4",
        "speed-8",
        "reverse-8",
    ];

    private static readonly BenchState Line = BenchState.AsSheet with { SupplyVolts = 233 };

    public static Diary[] All(TypeSheet sheet, DateTimeOffset now, DemoPhotos photos)
    {
        var begun = new Diary(45, now.AddDays(-1), new DrawnUnit(sheet, 45))
            .Add(
                new TakenIn("F-045", sheet.Id, "Fernlea club", "From an attic; not plugged in for thirty years."),
                new PhotoAdded(photos.Ladder, "top", "")
            )
            .Told(("foul-smell", Answer.No));

        var growls = new Diary(39, now.AddDays(-7), new DrawnUnit(sheet, 39, ("plate-2:open", 0)))
            .Add(
                new TakenIn("F-039", sheet.Id, "H. Lark", "Runs slowly and growls, forwards and backwards."),
                new PhotoAdded(photos.Ladder, "top", "")
            )
            .Told(("hums-one-way", Answer.Yes), ("runs-one-way", Answer.No), ("foul-smell", Answer.No))
            .Saw(("cord", "good", Decision.Leave))
            .SawNothingLive()
            .Close(Stage.LookOver)
            .Read(Cold);
        growls.Bench = Line;
        growls.Read(Live).Close(Stage.Readings);

        var sound = new Diary(31, now.AddDays(-13), new DrawnUnit(sheet, 31))
            .Add(new TakenIn("F-031", sheet.Id, "B. Thorne", "A yearly check."), new PhotoAdded(photos.Ladder, "top", ""))
            .Saw(("cord", "already replaced", Decision.Leave))
            .SawNothingLive()
            .Close(Stage.LookOver)
            .Read(Cold);
        sound.Bench = Line with { SupplyVolts = 229 };
        sound
            .Read(Live)
            .Close(Stage.Readings)
            .Close(Stage.Findings)
            .Add(
                new WayChosen(["hood"]),
                new TakenOff("speed-knob", 1, 2, "the set screw faces down at zero"),
                new TakenOff("direction-knob", 2, 1, ""),
                new TakenOff("dial", 3, 3, "two paper washers under it"),
                new TakenOff("foot-screws", 4, 4, ""),
                new TakenOff("rear-clip", 0, 1, ""),
                new PieceNoted("rear-clip", PieceFate.Broke, 1, "the spring tongue"),
                new TakenOff("hood", 6, 1, "")
            );
        return [begun, growls, sound];
    }
}
