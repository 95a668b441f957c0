using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace Ohmstead.Electrical.Reckoning.Deciding;

/// <summary>A price as the question file that the command line answers the same (docs/formats.md, "Question files").</summary>
public static class QuoteText
{
    private static readonly JsonSerializerOptions Options = new()
    {
        WriteIndented = true,
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    /// <summary>The file.</summary>
    public static string Of(Quote quote) =>
        new JsonObject
        {
            ["ohmstead"] = QuestionFile.Mark,
            ["question"] = "quote",
            ["steps"] = List(quote.Steps, Step),
            ["parts"] = List(
                quote.Parts,
                p => new JsonObject
                {
                    ["id"] = p.Id,
                    ["price"] = p.Price,
                    ["percent"] = p.Percent,
                }
            ),
            ["stops"] = List(
                quote.Stops,
                s => new JsonObject
                {
                    ["after"] = s.After,
                    ["percent"] = s.Percent,
                    ["fee"] = s.Fee,
                }
            ),
            ["ratePerHour"] = quote.RatePerHour,
            ["correlation"] = quote.Correlation,
            ["approveAbove"] = quote.ApproveAbove,
            ["draws"] = quote.Draws,
            ["seed"] = quote.Seed,
        }.ToJsonString(Options);

    private static JsonObject Step(QuotedStep step) =>
        new()
        {
            ["id"] = step.Id,
            ["prior"] = new JsonObject { ["minutes"] = step.PriorMinutes },
            ["records"] = new JsonArray([.. step.Records.Select(r => (JsonNode)r)]),
            ["percent"] = step.Percent,
        };

    private static JsonArray List<T>(IEnumerable<T> items, Func<T, JsonObject> of) => new([.. items.Select(i => (JsonNode)of(i))]);
}
