using System.Globalization;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Words;

namespace Ohmstead.Workshop.Job;

/// <summary>What a unit can run, in the words of the bench.</summary>
public static class LayoutWords
{
    /// <summary>What a consumer is called: "Smoke unit".</summary>
    public static string Title(string what) => Sentences.Large(One(what));

    /// <summary>So many of it: "2 motors", "1 smoke unit".</summary>
    public static string Counted(string what, long count) => Words.Counted.Of(count, One(what));

    /// <summary>What hangs on a pair of posts: "2 motors, 9 lamps"; empty for nothing.</summary>
    public static string Items(PostBudget post) => string.Join(", ", post.Items.Select(i => Counted(i.What, i.Count)));

    /// <summary>The load against the most: "3.2 of 4.0 A".</summary>
    public static string Amps(PostBudget post) => Amps(post.Load.Amps, post.MostAmps);

    /// <summary>Amps against a most: "3.2 of 4.0 A".</summary>
    public static string Amps(double amps, double most) => string.Create(CultureInfo.InvariantCulture, $"{amps:0.0#} of {most:0.0#} A");

    /// <summary>The fuse for its lead: "fuse 4 A"; what to do where none fits; empty where nothing hangs on it.</summary>
    public static string Fuse(PostBudget post) =>
        post.Load.Amps <= 0 ? ""
        : !post.Load.Within ? "too much: take something off"
        : post.Load.FuseAmps is { } amps ? string.Create(CultureInfo.InvariantCulture, $"fuse {amps:0.#} A")
        : "no fuse fits: take something off";

    /// <summary>The fuse as a sentence.</summary>
    public static string FuseSentence(PostBudget post) =>
        post.Load.Amps <= 0 ? "Nothing on it yet."
        : !post.Load.Within ? $"More than it may carry. Take something off, or move it to another post."
        : post.Load.FuseAmps is { } amps ? string.Create(CultureInfo.InvariantCulture, $"Put a {amps:0.#} A fuse in its lead. No larger.")
        : "No usual fuse lies between this load and what the post may carry. Take something off.";

    /// <summary>The wire, judged; empty where nothing was said of it or nothing hangs on it.</summary>
    public static string Wire(PostBudget post)
    {
        if (post.Wire is not { } wire || post.Load is not { Amps: > 0, WireDropVolts: { } drop })
            return "";
        var said = string.Create(
            CultureInfo.InvariantCulture,
            $"{wire.GaugeAwg} AWG, {wire.FeetOneWay:0.#} ft one way, loses {ValueText.Of(drop, Quantity.AcVolts)}."
        );
        return post.Load.GaugeAwg switch
        {
            null => $"{said} No wire of the usual sizes is thick enough so far. Use a shorter one.",
            // A smaller number is a thicker wire.
            { } gauge when gauge < wire.GaugeAwg => string.Create(CultureInfo.InvariantCulture, $"{said} Too thin: use {gauge} AWG."),
            _ => $"{said} Thick enough.",
        };
    }

    /// <summary>What the train gets.</summary>
    public static string AtTrain(PostBudget post) =>
        $"{ValueText.Of(post.Supply.Volts, Quantity.AcVolts)} with nothing on it, about {ValueText.Of(Math.Max(0, post.Load.VoltsAtTrain), Quantity.AcVolts)} with this load. {(post.Supply.IsRead ? "From this unit’s own readings." : "From the type sheet.")}";

    /// <summary>What there is room for beside it: "Room for 2 motors, or 14 lamps."</summary>
    public static string Room(PostBudget post)
    {
        var room = post.Room.Where(r => r.Count > 0).Select(r => Counted(r.What, r.Count)).ToList();
        return room.Count == 0 ? "No room for more." : $"Room for {string.Join(", or ", room)} more.";
    }

    /// <summary>The whole unit: "6.7 of 8.0 A used, 84 %".</summary>
    public static string Total(LayoutBudget budget) =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"{Amps(budget.Answer.TotalAmps, budget.Question.UsableAmps)} used, {budget.Answer.UsedPercent:0} %"
        );

    private static string One(string what) =>
        what switch
        {
            "smoke" => "smoke unit",
            _ => what,
        };
}
