using System.Text.Json;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Dating;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Kinds;
using Ohmstead.Workshop.Shops;

namespace Ohmstead.Workshop.Stores;

/// <summary>Documents that come from anywhere.</summary>
public static class DocumentFile
{
    /// <summary>
    /// What keeps a document from being taken in. A type sheet may have faults of its own (the checker shows them where it is
    /// edited), a draft need not even be JSON; the shop's settings may not, for every screen reads them.
    /// </summary>
    public static IReadOnlyList<Problem> Check(string kind, string text)
    {
        var problems = new List<Problem>();
        if (kind == KindText.DraftKind)
            return problems;
        if (kind == KindDates.DocumentKind && KindDatesRead.Of(text) is { Dates: null } dates)
        {
            problems.Add(new Problem("$", $"are no years and details of a type: {dates.Problem}", "what ohmstead export writes"));
            return problems;
        }
        if (!JsonCursor.TryOpen(text, problems, out var root) || kind != Shop.DocumentKind)
            return problems;
        try
        {
            root.Element.Deserialize<Shop>(StrictJson.Options);
        }
        catch (JsonException wrong)
        {
            problems.Add(
                new Problem(wrong.Path ?? "$", "is missing or not of the right type", "the shop's settings as ohmstead export writes them")
            );
        }
        return problems;
    }
}
