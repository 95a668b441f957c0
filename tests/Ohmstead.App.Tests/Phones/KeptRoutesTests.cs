using System.Globalization;
using System.Text;
using System.Text.Json;
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

    /// <summary>It would speak of the part that is out by now, and open its gate.</summary>
    [Theory]
    [InlineData(1, 0, 409)]
    [InlineData(2, 0, 200)]
    [InlineData(99, 0, 200)]
    [InlineData(0, 60, 409)]
    [InlineData(0, 10, 200)]
    [InlineData(-1, 60, 409)]
    public async Task A_reading_that_was_measured_before_a_repair_is_taken_again(int seen, double secondsAgo, int status)
    {
        await RepairAsync();
        hand.Turn(TimeSpan.FromSeconds(30));
        var answer = await SendSeenAsync(seen, secondsAgo);
        Assert.Equal(status, answer.Status);
        Assert.Equal(status == 200 ? "" : "A part was changed after this was measured. Take this reading again.", answer.Words);
        Assert.Equal(status == 200 ? 1 : 0, (await site.Bench.ReadAsync(site.UnitId))!.All<ReadingEntered>().Count());
    }

    [Fact]
    public async Task A_repair_that_cannot_have_moved_the_reading_or_was_taken_back_refuses_nothing()
    {
        await RepairAsync("blades");
        Assert.Equal(200, (await SendSeenAsync(1, 5)).Status);
        var other = await RepairAsync("left");
        Assert.Equal(409, (await SendSeenAsync(3, 5)).Status);
        await site.Bench.EnterAsync(site.UnitId, 4, "bench", new Corrected(other, null));
        Assert.Equal(200, (await SendSeenAsync(3, 5)).Status);
    }

    [Fact]
    public async Task It_counts_with_the_line_as_it_was_and_what_comes_after_it_with_the_line_as_it_is()
    {
        await site.Bench.EnterAsync(site.UnitId, 1, "bench", new BenchSet(BenchState.AsSheet with { SupplyVolts = 117 }));
        await site.Bench.EnterAsync(site.UnitId, 2, "bench", new BenchSet(BenchState.AsSheet with { SupplyVolts = 124 }));
        Assert.Equal(200, (await SendSeenAsync(2, 5)).Status);
        var unit = (await site.Bench.ReadAsync(site.UnitId))!;
        Assert.Equal((117d, 124d), (unit.All<ReadingEntered>().Single().Fact.Bench.SupplyVolts!.Value, unit.Bench.SupplyVolts!.Value));
        // Nothing is set where nothing changed.
        Assert.Equal(200, (await SendSeenAsync(unit.LastNumber, 5)).Status);
        Assert.Equal(unit.LastNumber + 1, (await site.Bench.ReadAsync(site.UnitId))!.LastNumber);
    }

    [Fact]
    public async Task What_did_arrive_before_a_repair_is_answered_the_same_after_it()
    {
        await SendAsync(Guid.CreateVersion7(), "blades", "3.6", 0);
        await RepairAsync();
        Assert.Equal((200, ""), await SendSeenAsync(1, 0, wasPressed: true));
        Assert.Single((await site.Bench.ReadAsync(site.UnitId))!.All<ReadingEntered>());
    }

    [Fact]
    public async Task A_strange_page_sends_none()
    {
        Assert.Equal(403, (await SendAsync(Guid.CreateVersion7(), "blades", "3.6", 1, "http://evil.test")).Status);
        Assert.Equal(409, (await SendAsync(Guid.CreateVersion7(), "blades", "3.6", 1, unit: Guid.NewGuid())).Status);
    }

    private async Task<Guid> RepairAsync(params string[] keeps)
    {
        var unit = (await site.Bench.ReadAsync(site.UnitId))!;
        var repair = new PartChanged("disc", PartChange.Renewed, null, "") { Keeps = [.. keeps] };
        return (await site.Bench.EnterAsync(site.UnitId, unit.LastNumber, "bench", repair)).Written.Single().Id;
    }

    private Task<(int Status, string Words)> SendSeenAsync(int seen, double secondsAgo, bool wasPressed = false) =>
        SendAsync(
            JsonSerializer.Serialize(
                new
                {
                    id = Guid.CreateVersion7(),
                    reading = "blades",
                    shown = "3.6",
                    secondsAgo,
                    wasPressed,
                    seen,
                }
            )
        );

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
