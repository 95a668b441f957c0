using System.CommandLine;
using System.Diagnostics;
using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Electrical.Drafting;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.App.Commands;

/// <summary><c>diagnose SHEET READINGS</c>: the probable faults, with how sure, and the next reading worth taking.</summary>
internal static class DiagnoseCommand
{
    /// <summary>
    /// The last guard, some fifty times what an answer takes: what bounds the search is counted, so a busy machine only takes longer.
    /// </summary>
    private const double DefaultSeconds = 120;

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
            Description = "The longest to wait. An answer cut off by then is marked as not finished.",
            HelpName = "S",
            DefaultValueFactory = _ => DefaultSeconds,
        };
        var verb = new Verb(
            "diagnose",
            "Find what is wrong from the readings taken, and the best next reading.",
            concernsMains: true,
            "ohmstead diagnose demo/twin-175.sheet.json demo/twin-175.example.readings.json",
            "ohmstead diagnose my.sheet.json unit-7.readings.json --unit unit-7.unit.json",
            "ohmstead diagnose my.sheet.json unit-7.readings.json --seconds 600 --json"
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
            var (kind, taken, candidates) = KindAtHand.Read(parsed.GetValue(sheet)!, parsed.GetValue(unit), parsed.GetValue(readings)!);
            if (kind.DraftedFrom.Contains(ReadingsMark.Of(taken)))
                Console.Error.WriteLine(
                    "This type sheet was drafted from these very readings. They count twice: diagnose this unit with the outline instead."
                );
            kind = TapAlignment.Of(kind, taken);
            var result = Diagnose(kind, taken, time);
            taken = taken with { Doubts = Gates.DoubtsOf(taken, result) };
            if (parsed.GetValue(json))
            {
                var answer = DiagnosisJson.Of(kind, taken, result, count);
                if (!candidates.IsEmpty)
                    answer["candidates"] = DraftCommand.Candidates(candidates);
                Output.Print(answer);
            }
            else
                DiagnosisReport.Print(kind, taken, result);
            return ExitCode.Done;
        });
        return verb;
    }

    /// <summary>Diagnoses. The first Ctrl-C ends the search and gives what was found; the second ends the process.</summary>
    public static DiagnosisResult Diagnose(TypeSheet sheet, UnitReadings readings, double seconds = DefaultSeconds)
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
                    IsOverdue = () => clock.Elapsed.TotalSeconds > seconds,
                    Cancellation = cancel.Token,
                    Threads = Environment.ProcessorCount,
                    Progress = Console.IsErrorRedirected
                        ? null
                        : share => Console.Error.Write($"\rlooking for sets of faults {Shown.Bar(share)} Ctrl-C: enough "),
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
