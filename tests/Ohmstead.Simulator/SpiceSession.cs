using System.Diagnostics;
using System.Globalization;
using System.Text;

namespace Ohmstead.Simulator;

/// <summary>One ngspice process, driven through its pipe mode: load a netlist, give commands, read the numbers.</summary>
internal sealed class SpiceSession : IDisposable
{
    private const int CircuitsAProcess = 400;

    /// <summary>A run that takes longer has lost its way in ever smaller steps, and would take all memory.</summary>
    private const int MostSecondsARun = 20;
    private readonly string file;
    private readonly string waves;
    private readonly StringBuilder complaints = new();
    private Process? process;
    private int circuits;

    public SpiceSession()
    {
        string stem = Path.Combine(Path.GetTempPath(), $"ohmstead-{Environment.ProcessId.Text()}-{Path.GetRandomFileName()}");
        (file, waves) = (stem + ".cir", stem + ".data");
    }

    public void Load(IEnumerable<string> netlist)
    {
        if (circuits >= CircuitsAProcess)
            Stop();
        if (process is null)
            Start();
        if (circuits > 0)
            Send("destroy all", "remcirc");
        circuits++;
        File.WriteAllLines(file, netlist);
        lock (complaints)
            complaints.Clear();
        Send("source " + file);
    }

    /// <summary>Gives the commands and returns every number that they print, in order.</summary>
    public double[] Ask(int expected, params IEnumerable<string> commands)
    {
        Send(commands);
        Send("echo ohmstead-done");
        List<double> numbers = [];
        Process running = process!;
        using Timer watch = new(_ => running.Kill(), null, TimeSpan.FromSeconds(MostSecondsARun), Timeout.InfiniteTimeSpan);
        while (true)
        {
            if (running.StandardOutput.ReadLine() is not { } line)
            {
                Stop();
                throw new SpiceFailure("ngspice ended: " + Complaints()) { HasEnded = true };
            }
            if (line.StartsWith("ohmstead-done", StringComparison.Ordinal))
                break;
            int equals = line.IndexOf('=', StringComparison.Ordinal);
            if (equals < 0 || line.StartsWith("Doing", StringComparison.Ordinal))
                continue;
            string number = line[(equals + 1)..].TrimStart().Split(' ', 2)[0];
            numbers.Add(Fields.Parse(number));
        }
        if (numbers.Count == expected)
            return [.. numbers];
        throw new SpiceFailure($"ngspice gave {numbers.Count.Text()} numbers: {Complaints()}");
    }

    /// <summary>Gives the commands, then takes the waveforms of the expressions.</summary>
    public Waveforms Waves(IEnumerable<string> commands, IReadOnlyList<string> expressions, double end)
    {
        File.Delete(waves);
        Ask(
            0,
            [
                .. commands,
                .. expressions.Select((e, n) => $"let q{n.Text()}=0*time+{e}"),
                $"wrdata {waves} {string.Join(' ', expressions.Select((_, n) => "q" + n.Text()))}",
            ]
        );
        if (!File.Exists(waves))
            throw new SpiceFailure(Complaints());
        Waveforms taken = new(waves, expressions.Count);
        return Math.Abs(taken.End - end) < 1e-6 * end
            ? taken
            : throw new SpiceFailure($"the run ended at {taken.End.Text()} s: {Complaints()}");
    }

    public void Dispose()
    {
        Stop();
        File.Delete(file);
        File.Delete(waves);
    }

    private string Complaints()
    {
        lock (complaints)
            return complaints.ToString();
    }

    private void Send(params IEnumerable<string> commands)
    {
        foreach (string command in commands)
            process!.StandardInput.WriteLine(command);
        process!.StandardInput.Flush();
    }

    private void Start()
    {
        ProcessStartInfo start = new("ngspice", "-p -n")
        {
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        process = Process.Start(start) ?? throw new InvalidDataException("ngspice did not start");
        process.ErrorDataReceived += (_, said) =>
        {
            lock (complaints)
                if (said.Data is { Length: > 0 } text && complaints.Length < 400)
                    complaints.AppendLine(text);
        };
        process.BeginErrorReadLine();
        circuits = 0;
        Send("set noaskquit", "set numdgt=15", "set wr_singlescale");
    }

    private void Stop()
    {
        if (process is null)
            return;
        try
        {
            Send("quit 0");
            if (!process.WaitForExit(5000))
                process.Kill();
        }
        catch (IOException)
        {
            // It has ended already.
        }
        process.Dispose();
        process = null;
        circuits = 0;
    }
}
