using System.Globalization;
using System.Text;
using Ohmstead.App.Tests.Web;
using Ohmstead.Workshop.Journal;

namespace Ohmstead.App.Tests.Phones;

/// <summary>Readings that were typed without a connection come in once, in order, with the time at which they were typed; or stay with a reason.</summary>
public sealed class KeptRoutesTests : IAsyncLifetime
{
    private readonly HandClock hand = new();
    private RunningSite site = null!;

    private static CancellationToken Stop => Xunit.TestContext.Current.CancellationToken;

    public async ValueTask InitializeAsync() => site = await RunningSite.OnPortAsync(hand);

    public ValueTask DisposeAsync() => site.DisposeAsync();

    [Fact]
    public async Task Sent_again_it_is_kept_once_and_answered_the_same()
    {
        var id = Guid.CreateVersion7();
        Assert.Equal((200, ""), await SendAsync(id, "blades", "3,6", 90));
        Assert.Equal((200, ""), await SendAsync(id, "blades", "3,6", 95));
        // What came in between and locks it changes nothing for one that is there already.
        Assert.Equal((200, ""), await SendAsync(id, "no-such", "", 99));
        var (entry, reading) = Assert.Single((await site.Bench.ReadAsync(site.UnitId))!.All<ReadingEntered>());
        Assert.Equal((id, "blades", 3.6), (entry.Id, reading.ReadingId, reading.Shown.Value));
        Assert.Equal(hand.GetUtcNow().AddSeconds(-90), entry.At);
    }

    [Fact]
    public async Task Two_values_of_one_reading_both_stand_in_the_order_in_which_they_were_sent()
    {
        await SendAsync(Guid.CreateVersion7(), "blades", "3.6", 60);
        await SendAsync(Guid.CreateVersion7(), "blades", "3.8", 30);
        var unit = (await site.Bench.ReadAsync(site.UnitId))!;
        Assert.Equal([3.6, 3.8], unit.All<ReadingEntered>().Select(r => r.Fact.Shown.Value));
        Assert.Equal(3.8, unit.CurrentReadings.Last().Fact.Shown.Value);
    }

    [Theory]
    [InlineData("blades", "1,234", "1.234 or 1234")]
    [InlineData("blades", "", "")]
    [InlineData("full-1", "19.4", "This reading is locked now.")]
    [InlineData("no-such", "3.6", "has no such reading")]
    public async Task What_cannot_be_entered_is_refused_in_words_and_nothing_is_kept(string reading, string shown, string why)
    {
        var (status, words) = await SendAsync(Guid.CreateVersion7(), reading, shown, 1);
        Assert.Equal(409, status);
        Assert.Contains(why, words, StringComparison.Ordinal);
        Assert.NotEmpty(words);
        Assert.Empty((await site.Bench.ReadAsync(site.UnitId))!.All<ReadingEntered>());
    }

    [Theory]
    [InlineData(-500, 0)]
    [InlineData(1e12, 7 * 86400)]
    public async Task A_clock_that_runs_wild_dates_nothing_into_the_future_nor_years_back(double said, double meant)
    {
        Assert.Equal(200, (await SendAsync(Guid.CreateVersion7(), "blades", "3.6", said)).Status);
        var entry = (await site.Bench.ReadAsync(site.UnitId))!.All<ReadingEntered>().Single().Entry;
        Assert.Equal(hand.GetUtcNow().AddSeconds(-meant), entry.At);
    }

    [Theory]
    [InlineData("3.6", 50, 1)]
    [InlineData("3.7", 50, 2)]
    [InlineData("3.6", 70, 2)]
    public async Task What_was_entered_as_the_connection_went_is_not_kept_twice_where_it_did_arrive(
        string shown,
        int secondsLater,
        int stand
    )
    {
        await SendAsync(Guid.CreateVersion7(), "blades", "3.6", 0);
        hand.Turn(TimeSpan.FromSeconds(600));
        var ago = (600 - secondsLater).ToString(CultureInfo.InvariantCulture);
        var body = $$"""{"id":"{{Guid.CreateVersion7()}}","reading":"blades","shown":"{{shown}}","secondsAgo":{{ago}},"wasPressed":true}""";
        Assert.Equal((200, ""), await SendAsync(body));
        Assert.Equal(stand, (await site.Bench.ReadAsync(site.UnitId))!.All<ReadingEntered>().Count());
    }

    [Fact]
    public async Task A_strange_page_sends_none()
    {
        Assert.Equal(403, (await SendAsync(Guid.CreateVersion7(), "blades", "3.6", 1, "http://evil.test")).Status);
        Assert.Equal(409, (await SendAsync(Guid.CreateVersion7(), "blades", "3.6", 1, unit: Guid.NewGuid())).Status);
    }

    private Task<(int Status, string Words)> SendAsync(
        Guid id,
        string reading,
        string shown,
        double secondsAgo,
        string? origin = null,
        Guid? unit = null
    ) =>
        SendAsync(
            string.Create(
                CultureInfo.InvariantCulture,
                $$"""{"id":"{{id}}","reading":"{{reading}}","shown":"{{shown}}","secondsAgo":{{secondsAgo}}}"""
            ),
            origin,
            unit
        );

    private async Task<(int Status, string Words)> SendAsync(string body, string? origin = null, Guid? unit = null)
    {
        using var request = new HttpRequestMessage(HttpMethod.Post, $"/units/{unit ?? site.UnitId}/kept");
        request.Headers.Add("Origin", origin ?? site.Address.GetLeftPart(UriPartial.Authority));
        request.Content = new StringContent(body, Encoding.UTF8, "application/json");
        using var answer = await site.Client.SendAsync(request, Stop);
        return ((int)answer.StatusCode, await answer.Content.ReadAsStringAsync(Stop));
    }
}
