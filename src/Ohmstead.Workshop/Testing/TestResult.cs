using System.Globalization;
using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.Reckoning.Proving;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Shops;
using Ohmstead.Workshop.Units;
using Ohmstead.Workshop.Words;

namespace Ohmstead.Workshop.Testing;

/// <summary>A test with what was read in it, held against its limit.</summary>
/// <param name="Limit">What it is held against; null where nothing can be judged.</param>
/// <param name="Read">What was read, in words; empty while it was not.</param>
/// <param name="End">pass, close pass, close fail, fail, not judged, not taken; empty while it is to be done.</param>
/// <param name="Words">The verdict in sentences, the chance of being wrong among them.</param>
/// <param name="Question">What was asked; null for none.</param>
public sealed record TestResult(
    BenchTest Test,
    TestBound? Limit,
    string Read,
    TestEnd End,
    System.Collections.Immutable.ImmutableArray<string> Words,
    TestQuestion? Question
)
{
    /// <summary>True for a test whose failing means that the unit can hurt somebody.</summary>
    public bool IsOfDanger { get; init; } = Test.Sort is TestSort.Insulation or TestSort.TouchCurrent or TestSort.GroundWire;

    /// <summary>True where it was read and is outside its limit.</summary>
    public bool HasFailed => End is TestEnd.Fail or TestEnd.CloseFail;

    /// <summary>The limit in words, before anything is read: "at least 2 MΩ".</summary>
    public string LimitWords => Limit is { } limit ? Said(limit) : "";

    /// <summary>Holds a test against its limit.</summary>
    /// <param name="model">The unit's own sheet.</param>
    /// <param name="band">What sound units show; null where it is not known.</param>
    public static TestResult Of(BenchTest test, BenchUnit unit, UnitModel model, Shop shop, Expectation? band)
    {
        var limit = test.Taken?.Read?.Limit ?? TestBounds.Of(test, shop, band, TestTaken.ErrorOf(test, unit.Bench, shop).LeadOhms);
        if (test.Taken is { NotTaken.Length: > 0 } not)
            return new(test, limit, "", TestEnd.NotTaken, [$"Not taken: {not.NotTaken}."], null);
        if (test.Sort == TestSort.Regulation)
            return PostDrop.Of(test, model, shop) is { } drop && limit is not null
                ? Judged(
                    test,
                    limit,
                    $"{drop.Percent.ToString("0.0", CultureInfo.InvariantCulture)} %",
                    TestQuestion.Verdict(limit, drop.Percent, drop.StandardUncertainty)
                )
                : new(test, limit, "", TestEnd.ToDo, [], null);
        if (test.Taken is not { } taken)
            return new(test, limit, "", TestEnd.ToDo, [], null);
        if (test.Sort == TestSort.HeatRun)
            return HeatCheck.Of(test, limit, unit);
        if (test.Sort == TestSort.Breaker && limit is not null)
            return BreakerCheck.Of(test, limit, unit, model.Sheet, shop);
        if (test.Offer?.Doubted is { Length: > 0 } doubt)
            return new(test, limit, ReadWords(test, taken), TestEnd.NotJudged, [$"Not judged: {doubt}. Read it again."], null);
        return limit is null
            ? new(test, null, ReadWords(test, taken), TestEnd.NotJudged, ["Not judged: nothing can be concluded from it here."], null)
            : Judged(test, limit, ReadWords(test, taken), TestQuestion.Verdict(limit, taken, model.Sheet.SupplyVolts));
    }

    /// <summary>A limit in words: <c>at most 0.25 mA</c>, <c>17.2–18.2 V</c>.</summary>
    public static string Said(TestBound limit) =>
        (limit.Min, limit.Max) switch
        {
            ({ } min, { } max) => $"{TestWords.Number(min)}–{TestWords.Number(max)} {limit.Unit}",
            ({ } min, _) => $"at least {TestWords.Number(min)} {limit.Unit}",
            (_, { } max) => $"at most {TestWords.Number(max)} {limit.Unit}",
            _ => "",
        };

    private static TestResult Judged(BenchTest test, TestBound limit, string read, TestQuestion question)
    {
        var (answer, refused) = question.Ask<VerdictAnswer>();
        return answer is null
            ? new(test, limit, read, TestEnd.NotJudged, [$"Not judged. {refused}"], question)
            : new(test, limit, read, EndOf(answer.Verdict), answer.Words, question);
    }

    private static string ReadWords(BenchTest test, TestTaken taken) =>
        taken.Read is { } read ? TestWords.Read(read)
        : taken.OverRangeAbove is not null ? "OL"
        : ValueText.Read(taken.Values[0] * test.UnitsPerLimit, test.Quantity);

    internal static TestEnd EndOf(string verdict) =>
        verdict switch
        {
            "pass" => TestEnd.Pass,
            "close-pass" => TestEnd.ClosePass,
            "close-fail" => TestEnd.CloseFail,
            "fail" => TestEnd.Fail,
            _ => TestEnd.NotJudged,
        };
}

/// <summary>How a test ended.</summary>
public enum TestEnd
{
    /// <summary>Nothing was read.</summary>
    ToDo,

    /// <summary>This unit does not need it, or it could not be taken.</summary>
    NotTaken,

    /// <summary>Read, and nothing follows from it.</summary>
    NotJudged,

    /// <summary>Inside by more than the meter's error.</summary>
    Pass,

    /// <summary>Inside, but by less than the meter's error.</summary>
    ClosePass,

    /// <summary>Outside, but by less than the meter's error.</summary>
    CloseFail,

    /// <summary>Outside by more than the meter's error.</summary>
    Fail,
}
