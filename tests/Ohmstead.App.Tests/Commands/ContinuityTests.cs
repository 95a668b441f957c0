namespace Ohmstead.App.Tests.Commands;

/// <summary>continuity: the ohmmeter checks that prove the wiring.</summary>
public sealed class ContinuityTests
{
    [Fact]
    public void The_answer_has_the_fields_of_the_format()
    {
        var answer = Tool.Json("continuity", Tool.Sample);
        Assert.Equal(["checks", "pairs", "leftToOthers"], answer.Fields());
        var checks = answer.List("checks").ToList();
        Assert.All(checks, c => Assert.Equal(["kind", "terminals", "ohms", "minutes"], c.Fields()));
        Assert.All(checks, c => Assert.Contains(c.GetProperty("kind").GetString(), (string[])["joined", "apart"]));
        Assert.All(checks, c => Assert.Equal(2, c.List("terminals").Length));
        Assert.Equal(703, answer.Number("pairs"));
        Assert.Contains(answer.List("leftToOthers"), g => g.EnumerateArray().Any(n => n.GetString() == "breaker-out"));
    }

    [Fact]
    public void A_throttle_that_stands_elsewhere_changes_what_the_list_expects() =>
        Assert.NotEqual(Tool.Run("continuity", Tool.Sample).Out, Tool.Run("continuity", Tool.Sample, "--controls", "throttle-left=1").Out);

    [Theory]
    [InlineData("throttle-left", "write ID=POSITION")]
    [InlineData("throttle-lefd=1", "perhaps throttle-left")]
    [InlineData("throttle-left=2", "a number from 0 to 1")]
    [InlineData("whistle-left=nowhere", "has no position \"nowhere\": off, first, second")]
    public void Controls_that_cannot_be_are_refused_in_words(string controls, string said)
    {
        var (code, output, error) = Tool.Run("continuity", Tool.Sample, "--controls", controls);
        Assert.Equal(2, code);
        Assert.Equal("", output);
        Assert.Contains(said, error, StringComparison.Ordinal);
        Assert.Contains("--controls", error, StringComparison.Ordinal);
    }
}
