using System.Text;
using System.Text.Encodings.Web;
using Microsoft.AspNetCore.Diagnostics;

namespace Ohmstead.App.Web;

/// <summary>What a person is told when a request was refused or went wrong: words, never a trace.</summary>
internal static class Refusals
{
    private const string NotKept = "This address names no unit, kind or page of this workshop.";
    private const string NotUnderstood = "The request could not be understood. Nothing was changed.";

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
        var (css, say) = (
            context.RequestServices.GetRequiredService<Assets>().Url("/ohmstead.css"),
            HtmlEncoder.Default
        );
        return response.WriteAsync(
            $"""
            <!DOCTYPE html>
            <html lang="en"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1">
            <title>{say.Encode(title)} – Ohmstead</title><link rel="stylesheet" href="{css}"></head>
            <body><main><h1>{say.Encode(title)}</h1><p>{say.Encode(
                words
            )}</p><p><a class="do" href="/">To the units</a></p></main></body></html>
            """,
            Encoding.UTF8
        );
    }

    /// <summary>Catches what broke while a request was answered, and what a request had wrong in its form.</summary>
    public static void CatchWhatBreaks(WebApplication app) =>
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
                                ? "It is larger than anything that is taken here. Nothing was kept of it."
                                : NotUnderstood
                        )
                        : WriteAsync(
                            context,
                            StatusCodes.Status500InternalServerError,
                            "Something broke",
                            "The page could not be made. What was entered is kept; what is wrong stands in the window the tool was started from."
                        ),
                SuppressDiagnosticsCallback = failed => failed.Exception is BadHttpRequestException,
            }
        );

    /// <summary>Gives words to refusals that would have none; what a phone may not see stays bare.</summary>
    public static void SayWhy(WebApplication app) =>
        app.UseStatusCodePages(context =>
        {
            var (http, status) = (context.HttpContext, context.HttpContext.Response.StatusCode);
            return status switch
            {
                StatusCodes.Status403Forbidden => Task.CompletedTask,
                StatusCodes.Status404NotFound => WriteAsync(http, status, "Nothing is kept here", NotKept),
                _ => WriteAsync(http, status, "That was refused", NotUnderstood),
            };
        });

    /// <summary>Addresses that name nothing.</summary>
    public static void MapRest(WebApplication app)
    {
        app.MapFallback(
            "/units/{**rest}",
            context =>
                WriteAsync(
                    context,
                    StatusCodes.Status400BadRequest,
                    "That is no unit",
                    "The address of a unit holds its id, as the list of units links to it."
                )
        );
        app.MapFallback(
            "{**rest}",
            context => WriteAsync(context, StatusCodes.Status404NotFound, "Nothing is kept here", NotKept)
        );
    }
}
