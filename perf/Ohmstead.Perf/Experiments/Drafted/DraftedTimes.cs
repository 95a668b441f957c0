using System.Diagnostics;
using System.Globalization;
using System.Text;
using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Electrical.Drafting;
using Ohmstead.Electrical.Readings;
using Ohmstead.Perf.Experiments.Limits;

namespace Ohmstead.Perf.Experiments.Drafted;

/// <summary>
/// How long drafting takes with one unit's readings, and saying which of five types a unit is: in seconds of one core, which a busy
/// machine does not make longer. Both share their work among the cores.
/// </summary>
internal static class DraftedTimes
{
    private const int Types = 5;

    private const double UsualNone = 0.05;

    /// <summary>Measures both on a unit of each trial type.</summary>
    public static Asked[] Run(string root, StringBuilder page)
    {
        var options = new DiagnosisOptions { Threads = Environment.ProcessorCount };
        page.AppendLine("| type | parts | readings taken | draft [core-s] | identify among five [core-s] |\n|---|---|---|---|---|");
        var (drafting, naming, cores) = (0.0, 0.0, Environment.ProcessorCount);
        foreach (var name in TrialType.Names)
        {
            var type = TrialType.Of(root, Path.Combine(root, ".build/drafted"), name, 1);
            var text = type.FaultyReadings(0);
            var readings = ReadingsFile.Read(text, type.Kind.Sheet).Required;
            var draft = Seconds(() => Drafter.Run([new KindReadings(type.Kind, type.Kind.Sheet, [readings])], options));
            PossibleKind[] kinds =
            [
                .. Enumerable
                    .Range(1, Types - 1)
                    .Select(type.LookAlike)
                    .Append(type.True)
                    .Select(s => PossibleKinds.Read(s.Id, 1, s, text).Required),
            ];
            var named = Seconds(() => Identifier.Run([.. kinds], UsualNone, options));
            (drafting, naming) = (Math.Max(drafting, draft), Math.Max(naming, named));
            page.AppendLine(
                CultureInfo.InvariantCulture,
                $"| {name} | {type.Kind.Sheet.Elements.Length} | {readings.Readings.Length} | {draft:F1} | {named:F1} |"
            );
        }
        Asked[] asked =
        [
            Asked.AtMost(
                FormattableString.Invariant($"drafting with one unit's readings, slowest, on {cores} cores [s]"),
                drafting / cores,
                10
            ),
            Asked.AtMost(FormattableString.Invariant($"identifying among five, slowest, on {cores} cores [s]"), naming / cores, 10),
        ];
        page.AppendLine($"\n{Asked.Heading}");
        foreach (var figure in asked)
            page.AppendLine(figure.Row());
        Console.WriteLine(page);
        return asked;
    }

    private static double Seconds(Action work)
    {
        using var process = Process.GetCurrentProcess();
        process.Refresh();
        var start = process.TotalProcessorTime;
        work();
        process.Refresh();
        return (process.TotalProcessorTime - start).TotalSeconds;
    }
}
