using System.Diagnostics;
using System.Runtime.InteropServices;

namespace Ohmstead.Perf.Stores;

/// <summary>A process on one core that runs a third of the time: 10 ms on, twice as long as that stopped. Linux only.</summary>
internal sealed class SlowedProcess : IAsyncDisposable
{
    private const int Stop = 19;
    private const int Continue = 18;
    private const int TimesSlower = 3;
    private readonly Thread halting;
    private volatile bool isOver;

    /// <param name="core">Number of the core that it and all that it starts may use.</param>
    /// <param name="command">Program and arguments.</param>
    public SlowedProcess(int core, params string[] command)
    {
        // A session of its own, so that one signal halts it with all that it starts.
        var start = new ProcessStartInfo("taskset") { RedirectStandardOutput = true };
        string[] before = ["-c", core.ToString(System.Globalization.CultureInfo.InvariantCulture), "setsid"];
        foreach (var a in (string[])[.. before, .. command])
            start.ArgumentList.Add(a);
        Running = Process.Start(start)!;
        halting = new Thread(Halt) { IsBackground = true };
        halting.Start();
    }

    /// <summary>The process itself.</summary>
    public Process Running { get; }

    /// <summary>The time that it had the core [s].</summary>
    public double CoreSeconds
    {
        get
        {
            Running.Refresh();
            return Running.TotalProcessorTime.TotalSeconds;
        }
    }

    /// <summary>The most memory that it held [MB].</summary>
    public double Megabytes
    {
        get
        {
            Running.Refresh();
            return Running.PeakWorkingSet64 / 1e6;
        }
    }

    public async ValueTask DisposeAsync()
    {
        isOver = true;
        halting.Join();
        Running.Kill(entireProcessTree: true);
        await Running.WaitForExitAsync();
        Running.Dispose();
    }

    private void Halt()
    {
        while (!isOver)
        {
            var began = Stopwatch.GetTimestamp();
            Thread.Sleep(10);
            // Until the new session is there, nothing is halted: a millisecond.
            _ = Signal(-Running.Id, Stop);
            // As long as it truly ran, times two: a sleep may last longer than it was asked to.
            Thread.Sleep(Stopwatch.GetElapsedTime(began) * (TimesSlower - 1));
            _ = Signal(-Running.Id, Continue);
        }
    }

    [DllImport("libc", EntryPoint = "kill")]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int Signal(int process, int signal);
}
