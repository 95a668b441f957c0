using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Mvc;
using Ohmstead.App.Background;
using Ohmstead.App.Components;
using Ohmstead.App.Web;
using Ohmstead.Electrical.Readings;
using Ohmstead.Storage;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Readings;

namespace Ohmstead.App.Phones;

/// <summary>The pages of a paired phone. They hold no live connection: a phone can do what stands here and nothing else.</summary>
internal static class PhoneRoutes
{
    private const string Journalled = "phone";

    /// <summary>A page of a phone has no live connection: its browser asks again after so many seconds.</summary>
    private const string SecondsToNext = "3";

    public static void Map(WebApplication app)
    {
        app.MapGet("/phone", (HttpContext context, Bench bench) => ShowAsync(context, bench, "", "", ""));
        app.MapGet("/phone/show", SecondScreenAsync);
        app.MapPost("/phone/reading", EnterAsync);
        app.MapPost(
            "/phone/photos",
            (Guid entry, HttpContext context, Bench bench) =>
                UnitOf(context) is { } phone
                    ? PhotoRoutes.TakeAsync(context, bench, phone, Journalled, new NewPhoto(entry, "", ""))
                    : NotForPhones
        );
        app.MapGet(
            "/phone/photos/{hash}/small",
            async (string hash, HttpContext context, Bench bench) =>
                UnitOf(context) is { } phone && (await bench.ReadAsync(phone))?.All<PhotoAdded>().Any(p => p.Fact.Photo == hash) == true
                    ? await PhotoRoutes.SendAsync(context, hash, bench.Photos.OpenThumbnailAsync)
                    : await NotForPhones
        );
    }

    /// <summary>The one unit of the phone that asks; null for all others.</summary>
    private static Guid? UnitOf(HttpContext context) => DeviceGate.Of(context)?.UnitId;

    private static Task<IResult> NotForPhones => Task.FromResult(Results.StatusCode(StatusCodes.Status403Forbidden));

    /// <summary>The second screen for a class: what the bench asks for of this unit, fetched again by the browser every few seconds.</summary>
    private static async Task<IResult> SecondScreenAsync(HttpContext context, Bench bench, UnitDiagnoses diagnoses)
    {
        if (UnitOf(context) is not { } phone || await PhoneUnit.ReadAsync(bench, phone) is not { Model: { } model } unit)
            return Results.StatusCode(StatusCodes.Status403Forbidden);
        (Expectation, Meaning?) Judge(ReadingOffer o)
        {
            var band = Expectation.Of(model, o.Spec, o.State, MeterInHand.Of(unit.Unit.Bench, unit.Shop));
            return (band, ShownReading.MeaningOf(o, band, unit.Shop));
        }
        var board = ShownReading.Now(unit.Unit, model, unit.All, bench.Asked.Of(unit.Unit), Judge, diagnoses.Of(phone).Latest);
        context.Response.Headers["Refresh"] = SecondsToNext;
        return new RazorComponentResult<PhoneShow>(new { unit.Unit.Card.Tag, Board = board });
    }

    // The form's token is checked before this is called.
    private static async Task<IResult> EnterAsync([FromForm] string reading, [FromForm] string shown, HttpContext context, Bench bench)
    {
        if (UnitOf(context) is not { } phone)
            return Results.StatusCode(StatusCodes.Status403Forbidden);
        try
        {
            return await TakeAsync(reading, shown, context, bench, phone);
        }
        catch (Exception broken) when (Press.Now is not { IsKept: true })
        {
            // A form without a live connection: the value would be gone with the page. The store is not asked once more.
            var problem = broken is StoreUnusable { IsUnsure: true }
                ? $"It may not be saved. {Mishaps.Why(broken)} Look in the log. If it is not there, enter it again."
                : $"Not saved. {Mishaps.Why(broken)} What you typed is still here. Enter it again.";
            return new RazorComponentResult<PhoneTyped>(
                new
                {
                    Problem = problem,
                    Reading = reading,
                    Typed = shown,
                }
            );
        }
    }

    private static async Task<IResult> TakeAsync(string reading, string shown, HttpContext context, Bench bench, Guid unitId)
    {
        if (await PhoneUnit.ReadAsync(bench, unitId) is not { } unit)
            return Results.StatusCode(StatusCodes.Status403Forbidden);
        if (unit.Offers.FirstOrDefault(o => o.Spec.Id == reading) is not { } offer)
            return await ShowAsync(context, bench, "This reading cannot be taken now.", "", shown);
        var typed = ShownText.Read(shown, offer.Spec.Quantity);
        if (typed.Shown is null)
            return await ShowAsync(context, bench, typed.Problem, reading, shown);
        var taken = ReadingEntry.Enter(offer, typed.Shown, unit.Unit.Bench);
        if (taken.Fact is null)
            return await ShowAsync(context, bench, taken.Refused, reading, shown);
        await bench.EnterAsync(unitId, unit.Unit.LastNumber, Journalled, taken.Fact);
        return Results.Redirect("/phone");
    }

    private static async Task<IResult> ShowAsync(HttpContext context, Bench bench, string problem, string reading, string shown) =>
        UnitOf(context) is { } phone && await PhoneUnit.ReadAsync(bench, phone) is { } unit
            ? new RazorComponentResult<PhonePage>(
                new
                {
                    Unit = unit,
                    Problem = problem,
                    Reading = reading,
                    Typed = shown,
                }
            )
            : Results.StatusCode(StatusCodes.Status403Forbidden);
}
