using System.Text;
using System.Text.RegularExpressions;
using Microsoft.AspNetCore.Http;
using Ohmstead.App.Phones;
using Ohmstead.App.Tests.Web;
using Ohmstead.Storage;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Stores;

namespace Ohmstead.App.Tests.Phones;

/// <summary>What another machine of the network sees: nothing, but for a phone that scanned a code, and that sees one unit.</summary>
public sealed class PhoneTests : IAsyncLifetime
{
    private readonly HandClock hand = new();
    private RunningSite site = null!;

    public async ValueTask InitializeAsync() => site = await RunningSite.OnLanAsync(hand);

    public ValueTask DisposeAsync() => site.DisposeAsync();

    private DeviceBook Book => site.Get<DeviceBook>();

    private PairingCodes Codes => site.Get<PairingCodes>();

    [Theory]
    [InlineData("/")]
    [InlineData("/phone")]
    [InlineData("/ohmstead.css")]
    [InlineData("/blazor.web.js")]
    [InlineData("/_blazor")]
    [InlineData("/kinds")]
    [InlineData("/pair/ABCD-EFGH")]
    [InlineData("/pair/ABCD-EFGH/ohmstead.js")]
    [InlineData("/proof")]
    [InlineData("/devices/certificate.crt")]
    [InlineData("/nothing")]
    public async Task Without_a_code_nothing_is_shown(string path) => await RefusedAsync("GET", path, null);

    [Fact]
    public async Task A_phone_sees_the_unit_it_was_paired_for_and_nothing_else()
    {
        var cookie = await PairAsync();
        var page = await PageAsync(cookie);
        Assert.Contains("F-7", page, StringComparison.Ordinal);
        Assert.DoesNotContain("blazor", page, StringComparison.OrdinalIgnoreCase);
        string[] others =
        [
            "/",
            $"/units/{site.UnitId}",
            "/_blazor",
            "/kinds",
            "/shop",
            "/units/new",
            "/search",
            $"/units/{site.UnitId}/papers/service-record.pdf",
            "/phones",
        ];
        foreach (var path in others)
            await RefusedAsync("GET", path, cookie);
        foreach (var path in (string[])["/_blazor/negotiate", $"/units/{site.UnitId}/photos?entry={Guid.CreateVersion7()}"])
            await RefusedAsync("POST", path, cookie);
    }

    [Fact]
    public async Task A_phone_that_is_shut_out_sees_nothing_any_more()
    {
        var cookie = await PairAsync();
        hand.Turn(TimeSpan.FromSeconds(1));
        var other = await PairAsync();
        Book.Revoke(Book.Devices[0].Id);
        await RefusedAsync("GET", "/phone", cookie);
        await RefusedAsync("POST", $"/phone/photos?entry={Guid.CreateVersion7()}", cookie);
        Assert.Contains("F-7", await PageAsync(other), StringComparison.Ordinal);
        hand.Turn(DeviceBook.PhoneLife);
        await RefusedAsync("GET", "/phone", other);
    }

    [Fact]
    public async Task A_tablet_of_the_class_shows_what_the_bench_asks_for_and_can_enter_nothing_there()
    {
        await RefusedAsync("GET", "/phone/show", null);
        var cookie = await PairAsync();
        site.Bench.Asked.Ask(site.UnitId, "blades", 1);
        var answer = await site.FromPhoneAsync("GET", "/phone/show", cookie);
        var page = await TextAsync(answer);
        Assert.Equal("3", answer.Response.Headers["Refresh"]);
        Assert.Contains("Between the plug blades", page, StringComparison.Ordinal);
        Assert.Contains("Should read", page, StringComparison.Ordinal);
        Assert.DoesNotMatch("<(a|button|input|form|script)[ >]", page);
    }

    [Fact]
    public async Task The_laptop_gives_a_phone_another_unit()
    {
        var cookie = await PairAsync();
        Book.Turn(Book.Devices[0].Id, await site.TakeInAsync("F-8"));
        var page = await PageAsync(cookie);
        Assert.Contains("F-8", page, StringComparison.Ordinal);
        Assert.DoesNotContain("F-7", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_photo_of_the_phone_goes_to_its_unit_and_is_shown_back()
    {
        var cookie = await PairAsync();
        var sent = await site.FromPhoneAsync(
            "POST",
            $"/phone/photos?entry={Guid.CreateVersion7()}",
            cookie,
            c => c.Request.Body = new MemoryStream(PhotoRouteTests.Pixel)
        );
        Assert.Equal(200, sent.Response.StatusCode);
        var (entry, photo) = Assert.Single((await site.Bench.ReadAsync(site.UnitId))!.All<PhotoAdded>());
        Assert.Equal("phone", entry.By);
        Assert.Equal(200, (await site.FromPhoneAsync("GET", $"/phone/photos/{photo.Photo}/small", cookie)).Response.StatusCode);
        // A photo of another unit is none of this phone's.
        Book.Turn(Book.Devices[0].Id, await site.TakeInAsync("F-8"));
        await RefusedAsync("GET", $"/phone/photos/{photo.Photo}/small", cookie);
    }

    [Fact]
    public async Task A_reading_of_the_phone_is_entered_when_its_gates_are_open()
    {
        var cookie = await PairAsync();
        Assert.Equal(302, (await PostReadingAsync(cookie, "blades", "3,6")).Response.StatusCode);
        var (entry, reading) = Assert.Single((await site.Bench.ReadAsync(site.UnitId))!.All<ReadingEntered>());
        Assert.Equal(("phone", "blades", 3.6), (entry.By, reading.ReadingId, reading.Shown.Value));
        // Under mains, behind shut gates: not offered, and not taken.
        Assert.DoesNotContain("value=\"full-1\"", await PageAsync(cookie), StringComparison.Ordinal);
        var refused = await PostReadingAsync(cookie, "full-1", "19.4");
        Assert.Contains("cannot be taken now", await TextAsync(refused), StringComparison.Ordinal);
        var wrong = await PostReadingAsync(cookie, "blades", "1,234");
        Assert.Contains("1.234 or 1234", await TextAsync(wrong), StringComparison.Ordinal);
        Assert.Single((await site.Bench.ReadAsync(site.UnitId))!.All<ReadingEntered>());
    }

    [Fact]
    public async Task A_reading_that_the_disk_does_not_take_stays_in_the_phones_box()
    {
        await using var failing = await RunningSite.OnLanAsync(around: Screens.FailingStore.Around);
        (var whole, site) = (site, failing);
        var cookie = await PairAsync();
        Screens.FailingStore.Fail(site.Bench.Store, nameof(Ohmstead.Workshop.Stores.IStore.AppendAsync), Screens.FailingStore.FullDisk);
        var page = await TextAsync(await PostReadingAsync(cookie, "blades", "3.6"));
        site = whole;
        Assert.Contains("Not saved. The disk is full.", page, StringComparison.Ordinal);
        Assert.Contains("value=\"3.6\"", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_value_that_is_sent_while_the_store_is_away_comes_back_in_its_box_without_a_question_to_the_store()
    {
        await using var failing = await RunningSite.OnLanAsync(around: Screens.FailingStore.Around);
        (var whole, site) = (site, failing);
        var cookie = await PairAsync();
        var away = new StoreUnusable("the database club on den does not answer");
        var answer = await PostReadingAsync(
            cookie,
            "blades",
            "3.6",
            () => Screens.FailingStore.Break(site.Bench.Store, nameof(IStore.ReadAsync), away)
        );
        var page = await TextAsync(answer);
        site = whole;
        Assert.Equal(200, answer.Response.StatusCode);
        Assert.Contains("Not saved. The database club on den does not answer.", page, StringComparison.Ordinal);
        Assert.Matches("name=\"reading\" value=\"blades\"", page);
        Assert.Contains("value=\"3.6\"", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_value_that_may_not_be_saved_is_told_so_and_there_once_when_it_is_entered_again()
    {
        await using var telling = await RunningSite.OnLanAsync(around: TellingStore.Around);
        (var whole, site) = (site, telling);
        var cookie = await PairAsync();
        TellingStore.CutNextEnd(site.Bench.Store);
        var page = await TextAsync(await PostReadingAsync(cookie, "blades", "3.6"));
        Assert.Contains("It may not be saved.", page, StringComparison.Ordinal);
        Assert.DoesNotContain("Not saved.", page, StringComparison.Ordinal);
        // The page is read between the two: that is no answer to the person.
        Assert.Equal(302, (await PostReadingAsync(cookie, "blades", "3.6")).Response.StatusCode);
        Assert.Single((await site.Bench.ReadAsync(site.UnitId))!.All<ReadingEntered>());
        site = whole;
    }

    /// <summary>It is on the disk; what breaks is telling the other windows.</summary>
    [Fact]
    public async Task A_reading_that_is_on_the_disk_is_not_called_lost_though_the_answer_broke()
    {
        var cookie = await PairAsync();
        void Break(Guid unit) => throw new FormatException();
        site.Bench.UnitChanged += Break;
        var page = await TextAsync(await PostReadingAsync(cookie, "blades", "3.6"));
        site.Bench.UnitChanged -= Break;
        Assert.Contains("This was saved all the same: do not send it again.", page, StringComparison.Ordinal);
        Assert.DoesNotContain("not saved", page, StringComparison.OrdinalIgnoreCase);
        Assert.Equal(3.6, (await site.Bench.ReadAsync(site.UnitId))!.CurrentReadings.Single().Fact.Shown.Value);
    }

    [Fact]
    public async Task Two_hundred_megabytes_and_what_is_no_picture_are_refused_in_words_from_a_phone_too()
    {
        var cookie = await PairAsync();
        var path = $"/phone/photos?entry={Guid.CreateVersion7()}";
        var large = await site.FromPhoneAsync("POST", path, cookie, c => c.Request.ContentLength = 200_000_000);
        Assert.Equal(413, large.Response.StatusCode);
        Assert.Contains("larger than 40 MB", await TextAsync(large), StringComparison.Ordinal);
        var none = await site.FromPhoneAsync(
            "POST",
            path,
            cookie,
            c => c.Request.Body = new MemoryStream("<svg onload='alert(1)'/>"u8.ToArray())
        );
        Assert.Equal(400, none.Response.StatusCode);
        Assert.Contains("Not saved: ", await TextAsync(none), StringComparison.Ordinal);
        Assert.Empty((await site.Bench.ReadAsync(site.UnitId))!.All<PhotoAdded>());
    }

    [Fact]
    public async Task Script_in_place_of_a_value_or_a_reading_is_text_on_the_phone_and_nothing_is_entered()
    {
        var cookie = await PairAsync();
        foreach (var (reading, shown) in new[] { ("blades", "<script>alert(1)</script>"), ("\"><script>", "3.6"), ("blades", "") })
        {
            var page = await TextAsync(await PostReadingAsync(cookie, reading, shown));
            Assert.DoesNotContain("<script>alert", page, StringComparison.Ordinal);
            Assert.DoesNotContain("\"><script>", page, StringComparison.Ordinal);
        }
        Assert.Empty((await site.Bench.ReadAsync(site.UnitId))!.All<ReadingEntered>());
    }

    [Fact]
    public async Task Another_pages_form_and_another_name_are_refused()
    {
        var cookie = await PairAsync();
        await RefusedAsync(
            "POST",
            $"/phone/photos?entry={Guid.CreateVersion7()}",
            cookie,
            c => c.Request.Headers.Origin = "https://evil.test"
        );
        await RefusedAsync("GET", "/phone", cookie, c => c.Request.Host = new HostString("evil.test"));
        await RefusedAsync("GET", "/phone", cookie, c => c.Request.Host = new HostString("localhost"));
    }

    private async Task<string> PairAsync()
    {
        using var phone = Handheld.Of(site);
        var answer = await phone.PairAsync(Codes.New(new DeviceRights(site.UnitId, MayWork: true, DeviceBook.PhoneLife)).Text);
        Assert.Equal((200, "/phone"), (answer.Status, answer.Text));
        return phone.Cookies;
    }

    private async Task<HttpContext> PostReadingAsync(string cookie, string reading, string shown, Action? between = null)
    {
        var get = await site.FromPhoneAsync("GET", "/phone", cookie);
        var token = Regex.Match(await TextAsync(get), "name=\"__RequestVerificationToken\" value=\"([^\"]+)\"").Groups[1].Value;
        between?.Invoke();
        var antiforgery = get.Response.Headers.SetCookie.ToString().Split(';')[0];
        var form =
            $"__RequestVerificationToken={Uri.EscapeDataString(token)}&reading={Uri.EscapeDataString(reading)}&shown={Uri.EscapeDataString(shown)}";
        return await site.FromPhoneAsync(
            "POST",
            "/phone/reading",
            $"{cookie}; {antiforgery}",
            c =>
            {
                c.Request.ContentType = "application/x-www-form-urlencoded";
                c.Request.Body = new MemoryStream(Encoding.UTF8.GetBytes(form));
            }
        );
    }

    private async Task<string> PageAsync(string cookie)
    {
        var answer = await site.FromPhoneAsync("GET", "/phone", cookie);
        Assert.Equal(200, answer.Response.StatusCode);
        return await TextAsync(answer);
    }

    private static async Task<string> TextAsync(HttpContext answer)
    {
        using var reader = new StreamReader(answer.Response.Body);
        return await reader.ReadToEndAsync();
    }

    private async Task RefusedAsync(string method, string path, string? cookie, Action<HttpContext>? more = null)
    {
        var answer = await site.FromPhoneAsync(method, path, cookie, more);
        Assert.Equal(403, answer.Response.StatusCode);
        Assert.Empty(await TextAsync(answer));
    }
}
