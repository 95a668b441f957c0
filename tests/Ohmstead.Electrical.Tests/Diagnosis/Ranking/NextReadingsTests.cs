using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Electrical.Readings;
using static Ohmstead.Electrical.Tests.Diagnosis.WireBench;

namespace Ohmstead.Electrical.Tests.Diagnosis.Ranking;

/// <summary>What is proposed to be read next, and what is not.</summary>
public class NextReadingsTests
{
    private static readonly BenchUnit Row = Parts(("w1", "a", "b", 2), ("w2", "b", "c", 6), ("w3", "c", "d", 1))
        .Reading("first", "ohms", ["a", "b"])
        .Reading("second", "ohms", ["b", "c"])
        .Reading("third", "ohms", ["c", "d"], minutes: 2)
        .Unit();

    private static TakenReading NotTaken(string id, string why, string by) =>
        Value(Row, id, 0) with
        {
            Outcome = Outcome.NotTaken,
            Why = why,
            WaivedBy = by,
        };

    private static string[] Next(params TakenReading[] readings) =>
        [.. Diagnoser.Run(Row.Model, Unit(Row, readings), new DiagnosisOptions { IsBenchAsNoted = true }).Next.Select(n => n.Spec.Id)];

    /// <summary>A wire of 6 % says more than one of 2 % in the same minute, and one of 1 % in two minutes least.</summary>
    [Fact]
    public void The_most_for_its_minutes_comes_first()
    {
        Assert.Equal(["second", "first", "third"], Next());
        Assert.Equal(["first", "third"], Next(Value(Row, "second", 0.01)));
    }

    [Theory]
    [InlineData("", "", true)]
    [InlineData("no room for the probe", "", false)]
    [InlineData("", "the owner", false)]
    public void What_could_not_be_read_or_was_waived_is_not_proposed_again(string why, string by, bool isProposed) =>
        Assert.Equal(isProposed, Next(NotTaken("second", why, by)).Contains("second"));
}
