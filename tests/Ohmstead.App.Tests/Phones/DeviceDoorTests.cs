using System.Net;
using System.Net.Security;
using System.Net.Sockets;
using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;
using System.Text;
using Ohmstead.App.Phones;
using Ohmstead.App.Tests.Web;
using Ohmstead.Workshop.Journal;

namespace Ohmstead.App.Tests.Phones;

/// <summary>What somebody on the club's network gets without a code, with a cookie alone, with a wrong key; and what a paired tablet gets.</summary>
public sealed class DeviceDoorTests : DoorTest
{
    private static readonly string[] Places =
    [
        "/",
        "/shop",
        "/devices",
        "/search?words=hums",
        "/units/UNIT",
        "/units/UNIT/papers/service-record.pdf",
        "/photos/0000000000000000000000000000000000000000000000000000000000000000",
        "/kinds/twin-175/sheet.json",
        "/ohmstead.css",
        "/ohmstead.js",
        "/blazor.web.js",
        "/devices/certificate.crt",
        "/phone",
        "/proof",
        "/_blazor",
        "/_blazor/negotiate",
        "/_blazor/initializers",
        "/pair",
        "/pair/",
        "/pair/AAAA-AAAA",
        "/nothing",
    ];

    [Fact]
    public async Task Without_a_code_no_address_says_anything()
    {
        foreach (var place in Places.Select(Filled))
        {
            foreach (var method in (string[])["GET", "POST"])
                AssertBare(await SendAsync(method, place, "", null), 403);
            AssertBare(
                await SendAsync("GET", place, $"{DeviceGate.Cookie}=0123456789abcdef; {DeviceGate.Pass}=0123456789abcdef", null),
                403
            );
        }
    }

    [Fact]
    public async Task The_cookie_alone_gets_the_page_on_which_the_key_is_proved_and_nothing_else()
    {
        await PairAsync(Work);
        Tablet.LosePass();
        foreach (var place in Places.Select(Filled).Where(p => !IsOpenToCookies(p)))
        {
            var page = await Tablet.GetAsync(place);
            Assert.Equal(401, page.Status);
            Assert.DoesNotContain("F-7", page.Text, StringComparison.Ordinal);
            Assert.True(page.Text.Length == 0 || page.Text.Contains("proves that it is the device", StringComparison.Ordinal), place);
        }
        AssertBare(await Tablet.PostAsync($"/units/{Site.UnitId}/photos?entry={Guid.CreateVersion7()}"), 401);
        // Whoever copied the cookies has not the key.
        Tablet.LoseKey();
        AssertBare(await Tablet.ProveAsync("page"), 409);
        AssertBare(await Tablet.ProveAsync("live"), 409);
        // Only a device that is let in no more is told so by a bare 403: its page goes by that.
        AssertBare(await Tablet.PostAsync("/proof", "{}"), 400);
        AssertBare(await Tablet.PostAsync("/proof/other"), 404);
        AssertBare(await Tablet.GetAsync("/proof"), 405);
        Assert.Equal(401, (await Tablet.GetAsync("/")).Status);
    }

    [Fact]
    public async Task A_paired_tablet_has_the_bench_until_it_is_shut_out()
    {
        await PairAsync(Work);
        Assert.Contains("F-7", (await Tablet.GetAsync("/")).Text, StringComparison.Ordinal);
        Tablet.LosePass();
        Assert.Equal((200, "/"), Two(await Tablet.ProveAsync("page")));
        Assert.Contains("data-device=\"work\"", (await Tablet.GetAsync($"/units/{Site.UnitId}")).Text, StringComparison.Ordinal);
        Assert.Equal(200, (await Tablet.GetAsync("/devices/certificate.crt")).Status);
        var challenge = await Tablet.ChallengeAsync();
        Site.Get<DeviceBook>().Revoke(Site.Get<DeviceBook>().Devices.Single().Id);
        AssertBare(await Tablet.AnswerAsync("page", challenge, Tablet.Sign($"ohmstead\npage\n{Host}\n{challenge}")), 403);
        AssertBare(await Tablet.PostAsync("/proof/challenge"), 403);
        foreach (var place in Places.Select(Filled))
            AssertBare(await Tablet.GetAsync(place), 403);
    }

    [Fact]
    public async Task A_code_is_used_up_and_a_key_that_does_not_sign_it_gets_nothing()
    {
        var code = Site.Get<PairingCodes>().New(Work).Text;
        Assert.Contains("Pair this device", (await Tablet.GetAsync($"/pair/{code}")).Text, StringComparison.Ordinal);
        Assert.Equal(200, (await Tablet.GetAsync($"/pair/{code}/ohmstead.js")).Status);
        Assert.Equal(400, (await Tablet.PairAsync(code, signed: "something else")).Status);
        Assert.Equal(400, (await Tablet.PairAsync(code, print: new string('0', PairingDesk.PrintLetters))).Status);
        foreach (var here in (string[])["bench", " Bench", "the bench itself"])
            Assert.Contains("another name", (await Tablet.PairAsync(code, here)).Text, StringComparison.Ordinal);
        Assert.Empty(Site.Get<DeviceBook>().Devices);
        Assert.Equal((200, "/"), Two(await Tablet.PairAsync(code, print: PairingDesk.Short(Door.Certificate.Print))));
        AssertBare(await Tablet.PairAsync(code), 403);
        AssertBare(await Tablet.GetAsync($"/pair/{code}"), 403);
        AssertBare(await Tablet.GetAsync($"/pair/{code}/ohmstead.js"), 403);
        Assert.Equal("Tablet at the vise", Assert.Single(Site.Get<DeviceBook>().Devices).Name);
    }

    [Fact]
    public async Task Cookies_go_over_this_way_alone_and_to_no_script()
    {
        var answer = await Tablet.PairAsync(Site.Get<PairingCodes>().New(Work).Text);
        Assert.Equal(2, answer.SetCookies.Count);
        foreach (var cookie in answer.SetCookies)
        {
            Assert.StartsWith("__Host-", cookie, StringComparison.Ordinal);
            foreach (var word in (string[])["secure", "httponly", "samesite=strict", "path=/"])
                Assert.Contains(word, cookie, StringComparison.OrdinalIgnoreCase);
            Assert.DoesNotContain("domain", cookie, StringComparison.OrdinalIgnoreCase);
        }
    }

    [Fact]
    public async Task A_tablet_that_may_only_look_enters_nothing_by_any_way_and_its_page_says_so()
    {
        await PairAsync(Work with { MayWork = false });
        var page = await Tablet.GetAsync($"/units/{Site.UnitId}");
        Assert.Contains("This device may only look.", page.Text, StringComparison.Ordinal);
        var kept = $$"""{"id":"{{Guid.CreateVersion7()}}","reading":"blades","shown":"3.6","secondsAgo":2}""";
        Assert.Equal(403, (await Tablet.PostAsync($"/units/{Site.UnitId}/kept", kept)).Status);
        Assert.Equal(403, (await Tablet.PostAsync($"/units/{Site.UnitId}/photos?entry={Guid.CreateVersion7()}", "photo")).Status);
        Assert.Single((await Site.Bench.ReadAsync(Site.UnitId))!.Journal);
        var book = Site.Get<DeviceBook>();
        book.Let(book.Devices.Single().Id, work: true);
        Assert.Equal(200, (await Tablet.PostAsync($"/units/{Site.UnitId}/kept", kept)).Status);
        var entry = (await Site.Bench.ReadAsync(Site.UnitId))!.All<ReadingEntered>().Single().Entry;
        Assert.Equal((book.Devices.Single().Mark, "Tablet at the vise"), (entry.Bench, entry.By));
        Assert.NotEqual(Site.Bench.Store.Bench, entry.Bench);
    }

    [Fact]
    public async Task The_laptop_lists_what_it_let_in_and_a_device_is_shown_the_certificate_alone()
    {
        await PairAsync(Work with { MayWork = false });
        var here = await Site.Client.GetStringAsync(new Uri("/devices", UriKind.Relative), Stop);
        foreach (
            var said in (string[])
                ["Tablet at the vise", "may only look", "Let it work", "Shut it out", "Show a code", Door.Certificate.RootPrint]
        )
            Assert.Contains(said, here, StringComparison.Ordinal);
        var there = (await Tablet.GetAsync("/devices")).Text;
        Assert.Contains(Door.Certificate.RootPrint, there, StringComparison.Ordinal);
        foreach (var hidden in (string[])["Tablet at the vise", "Let it work", "Shut it out", "Show a code"])
            Assert.DoesNotContain(hidden, there, StringComparison.Ordinal);
        Assert.DoesNotContain("Show a code", (await Tablet.GetAsync($"/units/{Site.UnitId}/phone")).Text, StringComparison.Ordinal);
        Assert.Contains(
            "Show a code",
            await Site.Client.GetStringAsync(new Uri($"/units/{Site.UnitId}/phone", UriKind.Relative), Stop),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public async Task Guessing_codes_ends_after_a_few()
    {
        var code = Site.Get<PairingCodes>().New(Work).Text;
        for (var n = 0; n < PairingCodes.MostOfAddress; n++)
            AssertBare(await Tablet.GetAsync("/pair/AAAA-AAAA"), 403);
        AssertBare(await Tablet.GetAsync($"/pair/{code}"), 403);
        Assert.NotNull(Site.Get<PairingCodes>().Find(code, "another address"));
        // Who sits at the laptop wonders why the right code is not taken.
        var here = await Site.Client.GetStringAsync(new Uri("/devices", UriKind.Relative), Stop);
        Assert.Contains(
            "typed 5 times at the device with the address 127.0.0.1. No code from there is taken until",
            here,
            StringComparison.Ordinal
        );
    }

    private string Filled(string place) => place.Replace("UNIT", Site.UnitId.ToString(), StringComparison.Ordinal);

    /// <summary>Scripts and styles of the page on which the key is proved; where it is proved; where a code is asked for.</summary>
    private static bool IsOpenToCookies(string place) =>
        place is "/ohmstead.css" or "/ohmstead.js" or "/blazor.web.js" or "/proof" || place.StartsWith("/pair", StringComparison.Ordinal);
}
