using System.Diagnostics;
using System.Globalization;

namespace Ohmstead.Mutants;

/// <summary>A running <see cref="Worker"/>.</summary>
internal sealed class WorkerProcess : IDisposable
{
    private static readonly TimeSpan LookEvery = TimeSpan.FromMilliseconds(100);

    /// <summary>What gets no processor time for so long waits for something that will not come.</summary>
    private static readonly TimeSpan Stalled = TimeSpan.FromMinutes(2);

    private readonly Process process;

    /// <param name="folder">Where the tests lie, with the core that has the mistakes and a copy of this program.</param>
    public WorkerProcess(string folder)
    {
        string At(string file) => Path.Combine(folder, file);
        var start = new ProcessStartInfo(
            "dotnet",
            [
                "exec",
                "--depsfile",
                At("Ohmstead.Electrical.Tests.deps.json"),
                "--runtimeconfig",
                At("Ohmstead.Electrical.Tests.runtimeconfig.json"),
                At("Ohmstead.Mutants.dll"),
                Worker.Word,
            ]
        )
        {
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
        };
        // Measuring code costs more here than it earns back; and what grows without end is to fail before the machine is full.
        start.Environment["DOTNET_TieredPGO"] = "0";
        start.Environment["DOTNET_GCHeapHardLimit"] = "80000000";
        process = Process.Start(start)!;
    }

    /// <summary>Classes that ran in it once with every mistake asleep, so that what is made once for all is made soundly.</summary>
    public HashSet<string> Warm { get; } = new(StringComparer.Ordinal);

    /// <summary>False once it broke down or was given up.</summary>
    public bool IsAlive { get; private set; } = true;

    /// <summary>Runs classes, to the first test that fails.</summary>
    /// <param name="mistake">That is awake, or one of the words of <see cref="Worker"/>.</param>
    /// <param name="most">Processor time, and not time on the wall: a busy machine notices no mistake.</param>
    /// <returns>Null when it broke down or did not come to an end.</returns>
    public Answer? Ask(int mistake, IEnumerable<string> classes, TimeSpan most)
    {
        process.StandardInput.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{mistake} {string.Join(' ', classes)}"));
        process.StandardInput.Flush();
        var line = process.StandardOutput.ReadLineAsync();
        var begun = Worked();
        var (worked, since) = (begun, Stopwatch.StartNew());
        while (!line.Wait(LookEvery))
        {
            var now = Worked();
            if (now > worked)
                (worked, since) = (now, Stopwatch.StartNew());
            if (worked - begun >= most || since.Elapsed >= Stalled)
                break;
        }
        if (line.IsCompletedSuccessfully && line.Result is { } answer)
            return Answer.Read(answer);
        Dispose();
        return null;
    }

    public void Dispose()
    {
        if (!IsAlive)
            return;
        IsAlive = false;
        process.Kill(entireProcessTree: true);
        process.WaitForExit();
        process.Dispose();
    }

    private TimeSpan Worked()
    {
        try
        {
            process.Refresh();
            return process.TotalProcessorTime;
        }
        catch (Exception e) when (e is InvalidOperationException or System.ComponentModel.Win32Exception)
        {
            // It ended meanwhile: the answer that will not come says so.
            return TimeSpan.Zero;
        }
    }
}

/// <summary>What came of classes of tests.</summary>
/// <param name="Took">Processor time.</param>
/// <param name="Came">How often each mistake was come by, where that was asked.</param>
internal sealed record Answer(bool Passed, TimeSpan Took, IReadOnlyDictionary<int, int> Came)
{
    public static Answer Read(string line)
    {
        var words = line.Split(' ');
        return new(
            words[0] == "passed",
            TimeSpan.FromMilliseconds(Number(words[1])),
            words[2..].Select(w => w.Split(':')).ToDictionary(w => Number(w[0]), w => Number(w[1]))
        );
    }

    private static int Number(string text) => int.Parse(text, CultureInfo.InvariantCulture);
}
