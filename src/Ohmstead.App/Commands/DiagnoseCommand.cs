using System.CommandLine;
using System.Diagnostics;
using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.App.Commands;

/// <summary><c>diagnose SHEET READINGS</c>: the probable faults, with how sure, and the next reading worth taking.</summary>
internal static class DiagnoseCommand
{
    /// <summary>Of the search alone; with starting and ranking the next readings the process stays below 3 s on two cores.</summary>
    private const double DefaultSeconds = 1.5;

    /// <summary>On a machine so slow that the least number of sets takes this many times longer, half of them are enough.</summary>
    private const double LateTimesLonger = 1.2;

    /// <summary>A sheet so large that its readings alone take longer than the search may: by this many times the answer is there.</summary>
    public const double MostTimesLonger = 10;

    private const int DefaultMost = 10;

    public static Command Make()
    {
        var (sheet, unit, json) = (CommonOptions.Sheet(), CommonOptions.Unit(), CommonOptions.Json());
        var readings = new Argument<string>("READINGS") { Description = "What was read on the unit (JSON)." };
        var most = new Option<int>("--most")
        {
            Description = "With --json, at most this many sets of faults.",
            HelpName = "N",
            DefaultValueFactory = _ => DefaultMost,
        };
        var seconds = new Option<double>("--seconds")
        {
            Description = "How long the search for sets of faults may take.",
            HelpName = "S",
            DefaultValueFactory = _ => DefaultSeconds,
        };
        var verb = new Verb(
            "diagnose",
            "Find what is wrong from the readings taken, and the best next reading.",
            "ohmstead diagnose demo/twin-175.sheet.json demo/twin-175.example.readings.json",
            "ohmstead diagnose my.sheet.json unit-7.readings.json --unit unit-7.unit.json",
            "ohmstead diagnose my.sheet.json unit-7.readings.json --seconds 10 --json"
        )
        {
            sheet,
            readings,
            unit,
            most,
            seconds,
            json,
        };
        verb.SetAction(parsed =>
        {
            var (count, time) = (parsed.GetValue(most), parsed.GetValue(seconds));
            if (count < 0)
                throw new RefusedInput("--most: is below 0; a number from 0 up is expected");
            if (!(time is > 0 and <= 3600))
                throw new RefusedInput("--seconds: is out of range; a number above 0, at most 3600, is expected");
            var kind = InputFiles.Sheet(parsed.GetValue(sheet)!, parsed.GetValue(unit));
            var taken = InputFiles.Readings(parsed.GetValue(readings)!, kind);
            var result = Diagnose(kind, taken, time);
            if (parsed.GetValue(json))
                Output.Print(DiagnosisJson.Of(kind, taken, result, count));
            else
                DiagnosisReport.Print(kind, taken, result);
            return ExitCode.Done;
        });
        return verb;
    }

    /// <summary>Diagnoses with a deadline. The first Ctrl-C ends the search and gives what was found; the second ends the process.</summary>
    public static DiagnosisResult Diagnose(TypeSheet sheet, UnitReadings readings, double seconds = DefaultSeconds, double late = LateTimesLonger)
    {
        var clock = Stopwatch.StartNew();
        using var cancel = new CancellationTokenSource();
        void Stop(object? sender, ConsoleCancelEventArgs e)
        {
            e.Cancel = !cancel.IsCancellationRequested;
            cancel.Cancel();
        }
        Console.CancelKeyPress += Stop;
        try
        {
            return Diagnoser.Run(
                new UnitModel(sheet),
                readings,
                new DiagnosisOptions
                {
                    IsTimeUp = () => clock.Elapsed.TotalSeconds > seconds,
                    IsLate = () => clock.Elapsed.TotalSeconds > late * seconds,
                    IsOverdue = () => clock.Elapsed.TotalSeconds > MostTimesLonger * seconds,
                    Cancellation = cancel.Token,
                    Threads = Environment.ProcessorCount,
                    Progress = Console.IsErrorRedirected
                        ? null
                        : share =>
                            Console.Error.Write($"\rlooking for sets of faults {Shown.Bar(share)} Ctrl-C: enough "),
                }
            );
        }
        finally
        {
            Console.CancelKeyPress -= Stop;
            if (!Console.IsErrorRedirected)
                Console.Error.Write("\r" + new string(' ', 60) + "\r");
        }
    }
}
