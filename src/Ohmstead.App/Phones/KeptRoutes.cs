using Ohmstead.App.Web;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Readings;
using Ohmstead.Workshop.Units;

namespace Ohmstead.App.Phones;

/// <summary>Readings that were typed while a device had no connection, and are sent when it is back.</summary>
internal static class KeptRoutes
{
    /// <summary>So long a press may have been on its way.</summary>
    private static readonly TimeSpan OnItsWay = TimeSpan.FromSeconds(60);

    /// <summary>Nobody works on without a connection for longer: a clock that says so is wrong.</summary>
    private static readonly TimeSpan LongestAgo = TimeSpan.FromDays(7);

    /// <summary>
    /// POST /units/{id}/kept: one reading, under the id that was made where it was typed. Sent again it is kept once, and answered the same.
    /// What cannot be entered is refused in words, and stays where it was typed.
    /// </summary>
    public static void Map(WebApplication app) =>
        app.MapPost("/units/{id:guid}/kept", (Guid id, KeptReading kept, Bench bench) => TakeAsync(id, kept, bench)).DisableAntiforgery();

    private static async Task<IResult> TakeAsync(Guid id, KeptReading kept, Bench bench)
    {
        Asker.MustWork();
        if (await PhoneUnit.ReadAsync(bench, id) is not { } unit)
            return Refuse("This unit is not in the workshop any more.");
        // How long ago is what a device knows, whatever its clock says.
        var at = bench.Time.GetUtcNow() - TimeSpan.FromSeconds(Math.Clamp(kept.SecondsAgo, 0, LongestAgo.TotalSeconds));
        if (unit.Unit.Journal.Any(e => e.Id == kept.Id))
            return Results.Ok();
        if (unit.All.FirstOrDefault(o => o.Spec.Id == kept.Reading) is not { } offer)
            return Refuse("Its type has no such reading any more.");
        var typed = ShownText.Read(kept.Shown, offer.Spec.Quantity);
        if (typed.Shown is null)
            return Refuse(typed.Problem);
        if (kept.WasPressed && IsThere(unit, kept.Reading, typed.Shown, at, bench))
            return Results.Ok();
        var seen = Seen(unit.Unit, kept.Seen, at);
        if (unit.Unit.All<PartChanged>().Any(p => p.Entry.Number > seen && !p.Fact.Keeps.Contains(kept.Reading)))
            return Refuse("A part was changed after this was measured. Take this reading again.");
        if (!offer.IsOpen)
            return Refuse("This reading is locked now. Open it to see what comes first.");
        // The meter and the line as they were when it was measured.
        var then = UnitHistory.Fold([.. unit.Unit.Journal.TakeWhile(e => e.Number <= seen)]).Bench;
        var taken = ReadingEntry.Enter(offer, typed.Shown, then);
        if (taken.Fact is null)
            return Refuse(taken.Refused);
        var entries = new List<NewEntry> { new(kept.Id, at, "bench", taken.Fact) };
        // What is entered after it is measured with what is in hand now.
        if (taken.Fact is ReadingEntered && then != unit.Unit.Bench)
            entries.Add(new(bench.NewId(), bench.Time.GetUtcNow(), "bench", new BenchSet(unit.Unit.Bench)));
        await bench.EnterAsync(id, unit.Unit.LastNumber, entries);
        return Results.Ok();
    }

    /// <summary>
    /// The last entry that stood on the screen on which it was typed. A page that does not say saw none that came after the time at which
    /// it was typed: then a repair too many counts as later, and the reading is taken again.
    /// </summary>
    private static int Seen(BenchUnit unit, int said, DateTimeOffset at) =>
        said > 0 ? Math.Min(said, unit.LastNumber) : Math.Max(1, unit.Journal.TakeWhile(e => e.At <= at).Count());

    /// <summary>It was pressed while the connection went, and did arrive: the same value of the same reading, from the same bench, at that time.</summary>
    private static bool IsThere(PhoneUnit unit, string readingId, Shown shown, DateTimeOffset at, Bench bench)
    {
        var mark = Asker.Now?.Mark ?? bench.Store.Bench;
        return unit
            .Unit.All<ReadingEntered>()
            .Any(r =>
                r.Entry.Bench == mark && (r.Entry.At - at).Duration() <= OnItsWay && (r.Fact.ReadingId, r.Fact.Shown) == (readingId, shown)
            );
    }

    private static IResult Refuse(string why) => Results.Text(why, statusCode: StatusCodes.Status409Conflict);

    /// <param name="Id">Made where it was typed.</param>
    /// <param name="SecondsAgo">How long ago it was typed [s].</param>
    /// <param name="WasPressed">It was entered just before the connection went: nobody knows whether it arrived.</param>
    /// <param name="Seen">Number of the last entry on the screen on which it was typed; 0 where the page does not say.</param>
    private sealed record KeptReading(Guid Id, string Reading, string Shown, double SecondsAgo, bool WasPressed = false, int Seen = 0);
}
