using Ohmstead.App.Web;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Readings;

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
        if (!offer.IsOpen)
            return Refuse("This reading is locked now. Open it to see what comes first.");
        var typed = ShownText.Read(kept.Shown, offer.Spec.Quantity);
        if (typed.Shown is null)
            return Refuse(typed.Problem);
        var taken = ReadingEntry.Enter(offer, typed.Shown, unit.Unit.Bench);
        if (taken.Fact is null)
            return Refuse(taken.Refused);
        if (kept.WasPressed && taken.Fact is ReadingEntered read && IsThere(unit, read, at, bench))
            return Results.Ok();
        await bench.EnterAsync(id, unit.Unit.LastNumber, [new NewEntry(kept.Id, at, "bench", taken.Fact)]);
        return Results.Ok();
    }

    /// <summary>It was pressed while the connection went, and did arrive: the same value of the same reading, from the same bench, at that time.</summary>
    private static bool IsThere(PhoneUnit unit, ReadingEntered fact, DateTimeOffset at, Bench bench)
    {
        var mark = Asker.Now?.Mark ?? bench.Store.Bench;
        return unit
            .Unit.All<ReadingEntered>()
            .Any(r =>
                r.Entry.Bench == mark
                && (r.Entry.At - at).Duration() <= OnItsWay
                && (r.Fact.ReadingId, r.Fact.Shown) == (fact.ReadingId, fact.Shown)
            );
    }

    private static IResult Refuse(string why) => Results.Text(why, statusCode: StatusCodes.Status409Conflict);

    /// <param name="Id">Made where it was typed.</param>
    /// <param name="SecondsAgo">How long ago it was typed [s].</param>
    /// <param name="WasPressed">It was entered just before the connection went: nobody knows whether it arrived.</param>
    private sealed record KeptReading(Guid Id, string Reading, string Shown, double SecondsAgo, bool WasPressed = false);
}
