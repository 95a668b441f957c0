using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Journal;

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

    public static Diary[] All(TypeSheet sheet, DateTimeOffset now, DemoPhotos photos)
    {
        var dead = new Diary(38, now.AddDays(-6), new DrawnUnit(sheet, 38, ("cord-1:open", 0)))
            .Add(
                new TakenIn("F-038", sheet.Id, "P. Rowan", "Dead. It hummed last winter."),
                new PhotoAdded(photos.Can, "front", ""),
                new PhotoAdded(photos.Cord, "the cord", "cord"),
                new DamagePinned(photos.Cord, 0.48, 0.53, "copper showing")
            )
            .Told(("jumps-when-flexed", Answer.Yes))
            .Saw(("cord", "crumbling, bare wire showing", Decision.Renew), ("plug", "body cracked", Decision.Renew))
            .Close(Stage.LookOver)
            .Read("blades")
            .Add(new FindingJudged("cord-1", "open", Judgement.Confirmed, "broken at the plug"), new WayChosen(["cord-joints"]));

        var noTester = new Diary(42, now.AddDays(-2), new DrawnUnit(sheet, 42, ("shoe:worn", 0.7)))
            .Add(new TakenIn("F-042", sheet.Id, "T. Maple", "Stops on the grade with four cars."), new PhotoAdded(photos.Can, "front", ""))
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
                new PhotoAdded(photos.Can, "front", ""),
                new DetailSeen("vents", "round", "Vents", "round holes"),
                new DetailSeen("wire-cover", "rubber", "Wire cover", "rubber"),
                new DetailSeen("cord", "plastic", "Cord", "gray plastic"),
                new DetailSeen("plate", "one-line", "Plate wording", "one patent line"),
                new DetailSeen("plug", DetailSeen.CannotTell, "Plug", "")
            )
            .Told(("slows-under-load", Answer.Unsure), ("pilot-dark", Answer.Yes))
            .Saw(("cord", "sticky or gummy", Decision.Renew));

        var newCord = new Diary(33, now.AddDays(-3), new DrawnUnit(sheet, 33))
            .Add(
                new TakenIn("F-033", sheet.Id, "N. Willow", "A new cord before it is given away."),
                new PhotoAdded(photos.Can, "front", "")
            )
            .Saw(("cord", "sticky or gummy", Decision.Renewed))
            .Close(Stage.LookOver)
            .Add(
                new PartChanged("cord-1", PartChange.Renewed, null, "18 AWG, knot inside"),
                new PartChanged("cord-2", PartChange.Renewed, null, "18 AWG, knot inside")
            )
            .Saw(("cord", "good", Decision.Leave))
            .Read(Cold);
        return [dead, noTester, lookedAt, newCord];
    }
}
