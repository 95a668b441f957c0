using Ohmstead.Workshop.Job;
using Ohmstead.Workshop.Shops;
using Ohmstead.Workshop.Testing;

namespace Ohmstead.Workshop.Papers;

/// <summary>The tests in the service record: what each was held against, what it read and how it ended.</summary>
internal static class RecordTests
{
    /// <summary>The table; nothing where no test was taken.</summary>
    public static IEnumerable<Block> Blocks(JudgedUnit judged)
    {
        var done = judged.Tests.Where(t => t.End != TestEnd.ToDo).ToList();
        if (done.Count == 0)
            yield break;
        yield return new Heading("Tests", 1);
        yield return new Table(
            [new("Test", 6), new("Limit", 3.2, IsFigure: true), new("Read", 4), new("Verdict", 2.6)],
            [.. done.Select(t => new Row([t.Test.Title, t.LimitWords, t.Read, TestEndWords.Of(t.End)], WeightOf(t.End), Under(t)))]
        );
        var open = judged.Tests.Where(t => t.End == TestEnd.ToDo && t.Test.IsDue).Select(t => t.Test.Title).ToList();
        if (open.Count > 0)
        {
            yield return new Heading("Tests not taken", 2);
            yield return new Points([.. open], Size.Small);
        }
        yield return new Prose(Ending, Size.Small);
    }

    /// <summary>The last word of every test.</summary>
    public const string Ending = "Tests recorded. No certification.";

    /// <summary>What a limit of the shop does in the tests; null where it does nothing there.</summary>
    public static string? UseOf(JudgedUnit judged, ShopLimit limit) =>
        judged.Tests.Any(t => t.End != TestEnd.ToDo && TestBounds.InShop(t.Test.Sort, judged.Shop) == limit && t.Test.Offer is null)
            ? "used in the tests"
            : null;

    private static string Under(TestResult test) =>
        test.Limit is { Source.Length: > 0 } limit
            ? $"{string.Join(" ", test.Words.Where(w => !w.StartsWith("Limit: ", StringComparison.Ordinal)))} Limit from: {limit.Source}."
            : string.Join(" ", test.Words);

    private static Weight WeightOf(TestEnd end) =>
        end switch
        {
            TestEnd.Pass => Weight.Good,
            TestEnd.ClosePass or TestEnd.CloseFail or TestEnd.NotJudged => Weight.Look,
            TestEnd.Fail => Weight.Stop,
            _ => Weight.Absent,
        };
}
