using Microsoft.Playwright;

[assembly: AssemblyFixture(typeof(Ohmstead.Browser.Tests.OpenBrowser))]
[assembly: AssemblyFixture(typeof(Ohmstead.Browser.Tests.RunningDemo))]
[assembly: AssemblyFixture(typeof(Ohmstead.Browser.Tests.RunningBench))]

// A journey waits for its page half of its time: three at once, whichever class they stand in, keep two processors busy.
[assembly: Xunit.v3.Parallelization(Mode = Xunit.Sdk.ParallelMode.All, MaxThreads = 4)]

namespace Ohmstead.Browser.Tests;

/// <summary>Debian's Chromium without its windows (the shell made for tests: the whole browser draws its own bars for every window too), opened once for all journeys.</summary>
public sealed class OpenBrowser : IAsyncLifetime
{
    private IPlaywright playwright = null!;

    public IBrowser Browser { get; private set; } = null!;

    public async ValueTask InitializeAsync()
    {
        Assertions.SetDefaultExpectTimeout(30_000);
        playwright = await Playwright.CreateAsync();
        Browser = await playwright.Chromium.LaunchAsync(
            new()
            {
                ExecutablePath = "/usr/bin/chromium-headless-shell",
                Args =
                [
                    "--no-sandbox",
                    "--disable-gpu",
                    "--disable-background-networking",
                    "--disable-component-update",
                    "--disable-sync",
                    "--no-first-run",
                ],
            }
        );
    }

    public async ValueTask DisposeAsync()
    {
        await Browser.DisposeAsync();
        playwright.Dispose();
    }
}
