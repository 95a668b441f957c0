using System.Text;
using System.Text.Encodings.Web;
using Microsoft.AspNetCore.Diagnostics;
using Ohmstead.Storage;
using Ohmstead.Workshop.Readings;

namespace Ohmstead.App.Web;

/// <summary>What a person is told when a request was refused or went wrong: words, never a trace.</summary>
internal static class Refusals
{
    private const string NotKept = "No unit, type or page of this workshop has this address.";
    private const string NotUnderstood = "Ohmstead did not understand this request. Nothing was changed.";

    /// <summary>Answers with words: a page for a browser's address bar, plain text for a script.</summary>
    public static Task WriteAsync(HttpContext context, int status, string title, string words)
    {
        var response = context.Response;
        // What broke took the headers with it.
        Guard.PutHeaders(context);
        response.StatusCode = status;
        if (!context.Request.Headers.Accept.ToString().Contains("text/html", StringComparison.Ordinal))
        {
            response.ContentType = "text/plain; charset=utf-8";
            return response.WriteAsync(words, Encoding.UTF8);
        }
        response.ContentType = "text/html; charset=utf-8";
        var (css, say) = (context.RequestServices.GetRequiredService<Assets>().Url("/ohmstead.css"), HtmlEncoder.Default);
        return response.WriteAsync(
            $"""
            <!DOCTYPE html>
            <html lang="en"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1">
            <title>{say.Encode(title)} – Ohmstead</title><link rel="stylesheet" href="{css}"></head>
            <body><main><h1>{say.Encode(title)}</h1><p>{say.Encode(
                words
            )}</p><p><a class="do" href="/">On the bench</a></p></main></body></html>
            """,
            Encoding.UTF8
        );
    }

    /// <summary>Catches what broke while a request was answered, and what a request had wrong in its form.</summary>
    public static void CatchWhatBreaks(WebApplication app)
    {
        app.Use(
            (context, next) =>
            {
                // A form or a file that is sent is a press too; those of a live screen begin in the screen.
                if (
                    !HttpMethods.IsGet(context.Request.Method)
                    && !context.Request.Path.StartsWithSegments("/_blazor", StringComparison.Ordinal)
                )
                    Press.Begin();
                return next(context);
            }
        );
        app.UseExceptionHandler(
            new ExceptionHandlerOptions
            {
                ExceptionHandler = context =>
                    context.Features.Get<IExceptionHandlerFeature>()?.Error is BadHttpRequestException bad
                        ? WriteAsync(
                            context,
                            bad.StatusCode,
                            "That was refused",
                            bad.StatusCode == StatusCodes.Status413PayloadTooLarge
                                ? "It is too large. Nothing of it was saved."
                                : NotUnderstood
                        )
                        : WriteAsync(
                            context,
                            Status(context),
                            "Something went wrong here",
                            $"{Mishaps.Why(Broken(context))} {Became(context)}What was saved before is still there."
                        ),
                SuppressDiagnosticsCallback = failed => failed.Exception is BadHttpRequestException or NotAllowed,
            }
        );
    }

    /// <summary>A store that is away comes back: a page in the address bar asks again by itself.</summary>
    private static int Status(HttpContext context)
    {
        if (Broken(context) is NotAllowed)
            return StatusCodes.Status403Forbidden;
        if (Broken(context) is not StoreUnusable || !HttpMethods.IsGet(context.Request.Method))
            return StatusCodes.Status500InternalServerError;
        context.Response.Headers["Refresh"] = "3";
        return StatusCodes.Status503ServiceUnavailable;
    }

    /// <summary>What became of what was sent: it may be on the disk although the answer broke.</summary>
    private static string Became(HttpContext context) =>
        HttpMethods.IsGet(context.Request.Method) ? ""
        : Broken(context) is StoreUnusable { IsUnsure: true } ? "It may not be saved. Look in the log. "
        : Press.Now is { IsKept: true } ? "This was saved all the same: do not send it again. "
        : "This was not saved. ";

    private static Exception Broken(HttpContext context) =>
        context.Features.Get<IExceptionHandlerFeature>()?.Error ?? new InvalidOperationException();

    /// <summary>Gives words to refusals that would have none; what a device may not see stays bare.</summary>
    public static void SayWhy(WebApplication app) =>
        app.UseStatusCodePages(context =>
        {
            var (http, status) = (context.HttpContext, context.HttpContext.Response.StatusCode);
            return status switch
            {
                StatusCodes.Status403Forbidden => Task.CompletedTask,
                StatusCodes.Status404NotFound => WriteAsync(http, status, "Not found", NotKept),
                _ => WriteAsync(http, status, "That was refused", NotUnderstood),
            };
        });

    /// <summary>Addresses that name nothing.</summary>
    public static void MapRest(WebApplication app)
    {
        app.MapFallback(
            "/units/{**rest}",
            context => WriteAsync(context, StatusCodes.Status400BadRequest, "No unit has this address", "Open the unit from the bench.")
        );
        app.MapFallback("{**rest}", context => WriteAsync(context, StatusCodes.Status404NotFound, "Not found", NotKept));
    }
}
