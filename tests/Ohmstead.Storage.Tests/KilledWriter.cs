using System.Collections.Concurrent;
using System.Diagnostics;
using System.Globalization;

namespace Ohmstead.Storage.Tests;

/// <summary>The writer that tests kill, as a process.</summary>
internal sealed class KilledWriter : IDisposable
{
    private const string Name = "Ohmstead.Storage.Killed.dll";

    private static readonly string Program = Find();

    private readonly Process process;
    private readonly ConcurrentQueue<string> said = new();
    private readonly TaskCompletionSource writes = new(TaskCreationOptions.RunContinuationsAsynchronously);
    private readonly Task reading;

    /// <param name="folder">Its data folder.</param>
    /// <param name="address">The database; its folder where it is left out.</param>
    /// <param name="heard">Called for each line that it said to its end.</param>
    public KilledWriter(string folder, int seed, string? address = null, Action<string>? heard = null)
    {
        var start = new ProcessStartInfo("dotnet") { RedirectStandardOutput = true };
        foreach (var a in (string?[])[Program, folder, seed.ToString(CultureInfo.InvariantCulture), address])
            if (a is not null)
                start.ArgumentList.Add(a);
        process = Process.Start(start)!;
        reading = Task.Run(async () =>
        {
            while (await process.StandardOutput.ReadLineAsync(CancellationToken.None) is { } line)
            {
                // One that was cut off by the kill does not count.
                if (!line.EndsWith(" ok", StringComparison.Ordinal))
                    continue;
                said.Enqueue(line);
                heard?.Invoke(line);
                if (line.StartsWith("entry", StringComparison.Ordinal))
                    writes.TrySetResult();
            }
            writes.TrySetResult();
        });
    }

    /// <summary>What it said was kept.</summary>
    public IEnumerable<string[]> Said => said.Select(l => l.Split(' '));

    /// <summary>Waits until the first entry is acknowledged, or it ended.</summary>
    public Task WritesAsync(CancellationToken cancel) => writes.Task.WaitAsync(TimeSpan.FromSeconds(60), cancel);

    /// <summary>Kills it, and reads what it still had said.</summary>
    public async Task KillAsync(CancellationToken cancel)
    {
        Assert.False(process.HasExited, "the writer ended by itself");
        process.Kill();
        await process.WaitForExitAsync(cancel);
        await reading;
    }

    /// <summary>Where <c>./test long</c> compiled it ahead it begins three times as fast; not where that is older than what is tested.</summary>
    private static string Find()
    {
        var built = Path.Combine(
            AppContext.BaseDirectory.Replace("Ohmstead.Storage.Tests", "Ohmstead.Storage.Killed", StringComparison.Ordinal),
            Name
        );
        var ahead = Path.Combine(LongRun.Root, ".build", "killed", Name);
        return File.Exists(ahead) && File.GetLastWriteTimeUtc(ahead) >= File.GetLastWriteTimeUtc(typeof(Store).Assembly.Location)
            ? ahead
            : built;
    }

    public void Dispose()
    {
        if (!process.HasExited)
            process.Kill();
        process.Dispose();
    }
}
