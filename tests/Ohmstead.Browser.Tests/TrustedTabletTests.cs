using System.Net.Security;
using System.Net.Sockets;
using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;
using Microsoft.Playwright;

namespace Ohmstead.Browser.Tests;

/// <summary>A tablet that trusts the certificate: what it kept without a network outlives loading the page again.</summary>
public sealed class TrustedTabletTests(OpenBrowser browser)
{
    [Fact, Trait("kind", "long")]
    public async Task A_page_that_is_loaded_without_a_network_says_so_and_sends_what_was_kept_when_it_is_back()
    {
        await using var tool = await RunningTool.StartAsync("--lan");
        await using var laptop = await Window.OpenAsync(browser, tool.Address, Width.Desk);
        await laptop.BringInAsync("twin-175");
        var unit = await laptop.TakeInAsync("twin-175", "It hums.");
        await laptop.GoAsync("/devices");
        if (await laptop.Page.GetByText("on no network").IsVisibleAsync())
            Assert.Skip("this machine is on no network that a tablet could reach");
        await laptop.PressAsync("Show a code");
        var address = new Uri(await laptop.Page.Locator("p.address b").First.InnerTextAsync());
        var profile = Directory.CreateTempSubdirectory("ohmstead-tablet-");
        using var playwright = await Playwright.CreateAsync();
        await using var tablet = await playwright.Chromium.LaunchPersistentContextAsync(
            profile.FullName,
            new()
            {
                ExecutablePath = "/usr/bin/chromium-headless-shell",
                // As a person does who installs the root: this one certificate counts, no other.
                Args = ["--no-sandbox", "--disable-gpu", $"--ignore-certificate-errors-spki-list={await KeyPrintAsync(address)}"],
                ViewportSize = new() { Width = 820, Height = 1180 },
            }
        );
        var page = tablet.Pages[0];
        await page.GotoAsync(address.ToString());
        await page.GetByRole(AriaRole.Button, new() { NameString = "Pair it" }).ClickAsync();
        await Expect(page.Locator("h1")).ToContainTextAsync("On the bench");
        await page.GotoAsync(new Uri(address, $"{unit}/reading/blades-posts").ToString());
        await page.WaitForFunctionAsync("() => navigator.serviceWorker.controller && document.querySelector('main:not([aria-busy])')");
        await tablet.SetOfflineAsync(true);
        await page.FillAsync("#entry", "OL");
        await page.PressAsync("#entry", "Enter");
        await Expect(page.Locator("#unsent")).ToContainTextAsync("also when you load this page again");
        await page.ReloadAsync();
        await Expect(page.Locator("h1")).ToHaveTextAsync("No connection");
        await Expect(page.Locator("#unsent")).ToContainTextAsync("OL");
        await tablet.SetOfflineAsync(false);
        await Expect(page.Locator("h1")).ToContainTextAsync("Both blades to all posts", new() { Timeout = 60_000 });
        await Expect(page.Locator("#unsent")).ToBeHiddenAsync(new() { Timeout = 60_000 });
        await laptop.GoAsync(unit);
        await Expect(laptop.Page.Locator("section", new() { Has = laptop.Page.Locator("#journal") })).ToContainTextAsync("OL");
        await tablet.CloseAsync();
        profile.Delete(recursive: true);
    }

    /// <summary>The hash of the open half of the certificate's key, base 64.</summary>
    private static async Task<string> KeyPrintAsync(Uri address)
    {
        using var tcp = new TcpClient();
        await tcp.ConnectAsync(address.Host, address.Port);
        X509Certificate2? shown = null;
        await using var stream = new SslStream(tcp.GetStream());
        await stream.AuthenticateAsClientAsync(
            new SslClientAuthenticationOptions
            {
                TargetHost = address.Host,
                RemoteCertificateValidationCallback = (_, certificate, _, _) =>
                {
                    shown = X509CertificateLoader.LoadCertificate(certificate!.GetRawCertData());
                    // Whoever it is: its key is only told to the browser, as a person would who installs it.
                    return shown is not null;
                },
            }
        );
        using (shown)
            return Convert.ToBase64String(SHA256.HashData(shown!.PublicKey.ExportSubjectPublicKeyInfo()));
    }
}
