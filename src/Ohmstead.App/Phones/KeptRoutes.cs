using Ohmstead.App.Web;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Readings;

namespace Ohmstead.App.Phones;

/// <summary>Readings that were typed while a device had no connection, and are sent when it is back.</summary>
internal static class KeptRoutes
{
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
        // How long ago is what a device knows, whatever its clock says.
        var ago = TimeSpan.FromSeconds(Math.Clamp(kept.SecondsAgo, 0, LongestAgo.TotalSeconds));
        await bench.EnterAsync(id, unit.Unit.LastNumber, [new NewEntry(kept.Id, bench.Time.GetUtcNow() - ago, "bench", taken.Fact)]);
        return Results.Ok();
    }

    private static IResult Refuse(string why) => Results.Text(why, statusCode: StatusCodes.Status409Conflict);

    /// <param name="Id">Made where it was typed.</param>
    /// <param name="SecondsAgo">How long ago it was typed [s].</param>
    private sealed record KeptReading(Guid Id, string Reading, string Shown, double SecondsAgo);
}
