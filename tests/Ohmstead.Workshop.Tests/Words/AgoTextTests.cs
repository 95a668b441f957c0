using Ohmstead.Workshop.Words;

namespace Ohmstead.Workshop.Tests.Words;

public class AgoTextTests
{
    // Half past midnight on 6 January, five hours behind: at the bench it is still the evening of the 5th.
    private static readonly DateTimeOffset Now = new(2026, 1, 6, 0, 30, 0, TimeSpan.Zero);
    private static readonly TimeZoneInfo Bench = TimeZoneInfo.CreateCustomTimeZone("b", TimeSpan.FromHours(-5), "b", "b");

    [Theory]
    [InlineData(0, "just now")]
    [InlineData(1, "1 minute ago")]
    [InlineData(59, "59 minutes ago")]
    [InlineData(60, "1 hour ago")]
    [InlineData(19 * 60, "19 hours ago")]
    [InlineData(20 * 60, "yesterday")]
    [InlineData(44 * 60, "2 days ago")]
    [InlineData(28 * 24 * 60, "28 days ago")]
    [InlineData(29 * 24 * 60, "7 Dec 2025")]
    public void Days_are_counted_from_midnight_to_midnight_at_the_bench(int minutes, string words) =>
        Assert.Equal(words, AgoText.Of(Now.AddMinutes(-minutes), Now, Bench));
}
